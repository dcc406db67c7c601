"""Holes that are marked through drawer boxes, worked out from the cards as data alone, as a person
at the bench comes to them: the box is set on its corners, and its own holes mark the front.

Written from the meaning of the data; nothing is taken from the functions that make it.
"""

from typing import Any

WITHIN = 0.05
"""mm."""
Spot = tuple[float, float]


def by_part(data: dict[str, Any]) -> list[dict[str, Any]]:
    """Give each card once for each part that it serves."""
    return [
        {**card, **of_part} if of_part else card
        for card in data["cards"]
        for of_part in card.get("parts", [None])
    ]


def faults_of_marks(data: dict[str, Any], listed: dict[str, Any]) -> list[str]:
    """Compare the holes that are marked through drawer boxes with those of the list of holes."""
    faults: list[str] = []
    for front in listed["fronts"]:
        wanted = [(hole["x_mm"], hole["y_mm"]) for hole in front["holes"] if "marked_from" in hole]
        if not wanted:
            continue
        (box,) = {hole["marked_from"] for hole in front["holes"] if "marked_from" in hole}
        size = next(each for each in listed["boxes"] if each["part"] == box)
        corners = _corners(data, front)
        if len(corners) != 2:
            faults.append(f"{front['id']}: {len(corners)} corners")
            continue
        (left, low), (right, up) = corners
        if abs(right - left - size["width_mm"]) > WITHIN or abs(up - low) > WITHIN:
            faults.append(f"{front['id']}: no box stands on {corners}")
        found = [
            (front["width_mm"] - (left + size["width_mm"] - x), low + y)
            for x, y in _bored(data, box)
        ]
        faults += _unlike(front["id"], wanted, found)
    return faults


def _corners_of(card: dict[str, Any]) -> list[dict[str, float]]:
    """The corners that a card stands a box on: one, or both on a whole face's."""
    stands = card["stands"]
    return stands if isinstance(stands, list) else [stands]


def _corners(data: dict[str, Any], front: dict[str, Any]) -> list[Spot]:
    """Where the cards for a front stand its box, the left one first, mm on its back as seen: each
    card laid by its own edges and lines."""
    cards = [card for card in by_part(data) if card["part"] == front["id"] and "stands" in card]
    return [
        (
            corner["x_mm"] - _origin(card, "left", "right", front["width_mm"]),
            corner["y_mm"] - _origin(card, "bottom", "top", front["height_mm"]),
        )
        for card in cards
        for corner in _corners_of(card)
    ]


def _bored(data: dict[str, Any], box: str) -> list[Spot]:
    """The clearance holes that the cards of a drawer box bore, mm on its front as seen."""
    return [
        (hole["x_mm"] - card["origin_mm"][0], hole["y_mm"] - card["origin_mm"][1])
        for card in by_part(data)
        if (card["part"], card["face"]) == (box, "box-front")
        for hole in card["holes"]
    ]


def _origin(card: dict[str, Any], low: str, high: str, length: float) -> float:
    """Where the low end of the face lies on the page along one axis, from what sets the card."""
    rests = [(edge["edge"], 0.0, edge["at_mm"]) for edge in card["edges"]]
    rests += [(line["from"], line["value_mm"], line["at_mm"]) for line in card["index"]]
    place, *others = [
        at - value if end == low else at + value - length
        for end, value, at in rests
        if end in (low, high)
    ]
    assert all(abs(other - place) <= WITHIN for other in others)  # a whole face has both ends
    return float(place)


def _unlike(part: str, wanted: list[Spot], found: list[Spot]) -> list[str]:
    """Pair what is wanted with what is found; say what is left over."""
    left, faults = list(found), list[str]()
    for x, y in wanted:
        near = [at for at in left if max(abs(at[0] - x), abs(at[1] - y)) <= WITHIN]
        if near:
            left.remove(near[0])
        else:
            faults.append(f"{part}: nothing marked at {x:.2f}, {y:.2f}")
    return [*faults, *(f"{part}: a mark at {x:.2f}, {y:.2f}" for x, y in left)]
