"""Holes worked out from the cards as data alone, as a person at the bench comes to them: each card
laid on each of its parts; a drawer box set on its corners, its own holes marking the front.

Written from the meaning of the data; nothing is taken from the functions that make it.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from tests.stationholes import Found, Where, compare, listed_in

WITHIN = 0.05
"""mm."""
Spot = tuple[float, float]


def by_part(data: dict[str, Any]) -> list[dict[str, Any]]:
    """Give each card once for each part that it serves, with the holes that are bored there: of a
    card with numbered crosses some, and the card may be turned half round."""
    return [
        {**card, **of_part, "holes": _used(card, of_part)} if of_part else card
        for card in data["cards"]
        for of_part in card.get("parts", [None])
    ]


def _used(card: dict[str, Any], of_part: dict[str, Any]) -> list[dict[str, Any]]:
    used = of_part.get("holes")
    return list(card["holes"]) if used is None else [card["holes"][index] for index in used]


def unlike_holes(
    data: dict[str, Any], listed: dict[str, Any], *, pilots: bool = False
) -> tuple[list[Found], list[Found]]:
    """Give the holes of the list that the cards do not come to, and what is too much or stands
    elsewhere; cards as data say no depth. What sets a card agrees with where it is said to lie."""
    wanted = [replace(hole, depth=None) for hole in listed_in(listed, pilots=pilots)]
    return compare(wanted, _set_out(data, listed))


def _set_out(data: dict[str, Any], listed: dict[str, Any]) -> Iterator[Found]:
    """Give every hole that the cards come to, in the axes of its part, whose size as seen is that
    of the list."""
    sizes: dict[Where, tuple[float, float]] = {}
    for part in (*listed["fronts"], *listed["boxes"], *listed["sides"]):
        name = part.get("id") or part.get("part") or part["board"]
        for face in {hole.get("face", "inside") for hole in part["holes"]}:
            where = (name, face, part.get("column"), part.get("side"))
            sizes[where] = part.get("depth_mm") or part["width_mm"], part["height_mm"]
    for card in by_part(data):
        where = (card["part"], card["face"], card.get("column"), card.get("side"))
        if not card["holes"]:
            continue
        width, height = sizes[where]
        way = -1 if card.get("turned") else 1
        x0, y0 = card["origin_mm"]
        for line in card["index"]:
            upright = line["from"] in ("left", "right", "middle-x")
            at = (line["at_mm"] - (x0 if upright else y0)) * way
            length = width if upright else height
            value = length / 2 if line["value_mm"] is None else line["value_mm"]
            told = length - value if line["from"] in ("right", "top") else value
            assert abs(told - at) <= WITHIN, (where, line)
        behind = card["face"] in ("back", "box-back") or card.get("side") == "right"
        for hole in card["holes"]:
            x, y = (hole["x_mm"] - x0) * way, (hole["y_mm"] - y0) * way
            yield Found(
                where=where,
                purpose=hole["purpose"],
                x=width - x if behind else x,
                y=y,
                diameter=hole["diameter_mm"],
                depth=None,
            )


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
        (left, low), (right, up) = sorted(corners)
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
    """Where the cards for a front stand its box, mm on its back as seen, in any order: each
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
