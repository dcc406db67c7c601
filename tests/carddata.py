"""The cards as data, compared with the cards on paper."""

from typing import Any

from jigs.box.parts import Layout
from tests.cardreading import (
    Wanted,
    corners_of,
    face_of,
    faces_on,
    ruler_across,
    ruler_up,
    wanted_faces,
)
from tests.pinreading import black_left, card_number
from tests.readback import PrintedCard, PrintedPage


def faults_in_data(
    pages: tuple[PrintedPage, ...], data: dict[str, Any], layout: Layout
) -> list[str]:
    """Compare the cards as data with the cards on paper, within 0.001 mm."""
    wanted = wanted_faces(layout)
    printed = {
        (page.number, round(card.box[0], 2), round(card.box[1], 2)): (field, card)
        for page in pages
        for field in page.fields
        for card in field.cards
    }
    faults: list[str] = []
    for entry in data["cards"]:
        key = (entry["page"], round(entry["x_mm"], 2), round(entry["y_mm"], 2))
        near = [
            spot
            for spot in printed
            if all(abs(a - b) < 0.02 for a, b in zip(spot, key, strict=True))
        ]
        where = f"page {key[0]}: the card at {key[1]}, {key[2]}"
        if not near:
            faults.append(f"{where} is not on paper")
            continue
        field, card = printed.pop(near[0])
        if card_number(card) is not None:
            faults += [f"{where} {fault}" for fault in _pins_unlike(card, entry)]
            continue
        face = face_of(field, wanted)
        parts = entry.get("parts") or [{"part": entry["part"], "origin_mm": entry["origin_mm"]}]
        faces = [] if face is None else faces_on(card, face, wanted)
        if [each.part for each in faces] != [each["part"] for each in parts] or any(
            each.face != entry["face"] for each in faces
        ):
            faults.append(f"{where} is for another part or face")
            continue
        assert face is not None
        if face.board != ((entry["column"], entry["side"]) if "side" in entry else None):
            faults.append(f"{where} is for another side of a column")
        if not same_numbers(_as_data(card, entry, face), entry):
            faults.append(f"{where} differs from its data")
        for each, told in zip(faces, parts, strict=True):
            origin = each.place(0.0, 0.0, ruler_across(card), ruler_up(card))
            if any(abs(a + b) > 0.01 for a, b in zip(origin, told["origin_mm"], strict=True)):
                faults.append(f"{where} has another origin for {each.part}")
    return faults + [f"page {spot[0]}: a card without data" for spot in printed]


def _pins_unlike(card: PrintedCard, entry: dict[str, Any]) -> list[str]:
    """Compare a pin card with its data: border, black, crosses, and the line of each setting; where
    it is set, the tables of the boards say."""
    found = {
        **entry,
        **_border(card),
        "edges": [_black_as_data(card)] if card.bands else [],
        "holes": _rings_as_data(card, entry),
    }
    faults = [] if same_numbers(found, entry) else ["differs from its data"]
    zero = min(
        card.rings, key=lambda ring: abs(ring.y - sum(r.y for r in card.rings) / len(card.rings))
    )
    for each in entry["parts"]:
        for line in each["index"]:
            at = zero.x if line["from"] in ("left", "right") else zero.y
            if abs(line["at_mm"] - at) > 0.001:
                faults.append(f"has another line for {each['part']}")
    return faults


def _black_as_data(card: PrintedCard) -> dict[str, Any]:
    """Give the edge that a pin card goes over."""
    band = min(card.bands)
    if black_left(card):
        return {"edge": "left", "at_mm": band[2], "by": "fold"}
    return {"edge": "right", "at_mm": band[0], "by": "fold"}


def _border(card: PrintedCard) -> dict[str, float]:
    return {
        "x_mm": card.box[0],
        "y_mm": card.box[1],
        "width_mm": card.box[2] - card.box[0],
        "height_mm": card.box[3] - card.box[1],
    }


def _rings_as_data(card: PrintedCard, entry: dict[str, Any]) -> list[dict[str, Any]]:
    """Give the circles on paper in the order of the data's holes, which are put in order too."""
    holes = sorted(
        entry["holes"], key=lambda hole: (round(hole["x_mm"], 2), round(hole["y_mm"], 2))
    )
    rings = sorted(
        ((r.x, r.y, r.diameter) for r in card.rings),
        key=lambda ring: (round(ring[0], 2), round(ring[1], 2)),
    )
    entry["holes"] = holes
    return [
        {**hole, "x_mm": x, "y_mm": y, "diameter_mm": diameter}
        for hole, (x, y, diameter) in zip(holes, rings, strict=True)
    ]


def _as_data(card: PrintedCard, entry: dict[str, Any], face: Wanted) -> dict[str, Any]:
    """Say what is on paper in the words of the data; purposes and names are the data's own. An
    index line is counted from the edge of the face, whatever its words count from."""
    edges: list[dict[str, Any]] = []
    index: list[dict[str, Any]] = []
    for axis, ruler in (("x", ruler_across(card)), ("y", ruler_up(card))):
        near, far = ("left", "right") if axis == "x" else ("bottom", "top")
        edge = far if ruler.from_far else near
        if ruler.kind == "edge":
            by = _how(card, edge)
            edges.append({"edge": edge, "at_mm": ruler.at, "by": by})
            edges += _further_bands(card, axis, by)
        elif ruler.kind == "middle":
            index.append({"from": f"middle-{axis}", "value_mm": None, "at_mm": ruler.at})
        else:
            value = face.from_edge(ruler, axis)
            index.append({"from": edge, "value_mm": value, "at_mm": ruler.at})
    found: dict[str, Any] = {
        **entry,
        **_border(card),
        "edges": edges,
        "index": index,
    }
    true_top = [s.y1 for s in card.strokes if s.y1 == s.y2 and abs(s.line - 0.35) < 0.001]
    found.pop("ladder", None)
    if true_top:
        found["ladder"] = {"edge": "top", "at_mm": true_top[0]}
    found.pop("stands", None)
    corners = corners_of(card)
    if corners:
        stands = [{"x_mm": x, "y_mm": y} for x, y in corners]
        found["stands"] = stands if len(stands) > 1 else stands[0]
    found["holes"] = _rings_as_data(card, entry)
    return found


def _how(card: PrintedCard, edge: str) -> str:
    """Read how a card lies on an edge: what its flap says."""
    if edge == "bottom" and "STAND" in card.text:
        return "panel"
    return "butt" if "BUTT" in card.text else "fold"


def _further_bands(card: PrintedCard, axis: str, by: str) -> list[dict[str, Any]]:
    """Give the right or upper black edge of a whole face, which has one at each side."""
    low, high, name = (0, 2, "right") if axis == "x" else (1, 3, "top")
    bands = [band for band in card.bands if band[high] - band[low] < 3.5]
    return (
        [{"edge": name, "at_mm": max(band[low] for band in bands), "by": by}] if bands[1:] else []
    )


def same_numbers(a: Any, b: Any) -> bool:
    """Compare data, numbers within 0.001."""
    if isinstance(a, dict):
        return a.keys() == b.keys() and all(same_numbers(a[key], b[key]) for key in a)
    if isinstance(a, list):
        return len(a) == len(b) and all(map(same_numbers, a, b))
    if isinstance(a, float | int) and isinstance(b, float | int):
        return abs(a - b) < 0.001
    return bool(a == b)
