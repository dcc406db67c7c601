"""The cards of a job's sheets as data, for whoever checks or redraws them.

Everything is in mm on the page, from its lower left corner, to 0.0001. What an index line is from
an edge is counted from the edge of the face itself, whatever stands there: of a box already
together, from its sides' bottom ends.
"""

import json
from typing import Any

from jigs.ground.geometry import SLACK
from templates.binding.jobsheets import Sheets
from templates.cards.ticks import Member
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.sheets.sheet import Placed
from templates.words.openwords import open_data


def sheets_json(sheets: Sheets) -> str:
    """Give the cards of all sheets as JSON text."""
    cards = [_card(page, placed) for page, placed in sheets.cards]
    return json.dumps(
        {"schema": 1, "paper": sheets.paper.name, "cards": cards}, indent=1, ensure_ascii=False
    )


def _round(value: float) -> float:
    return round(value, 4) + 0.0


def _card(page: int, placed: Placed) -> dict[str, Any]:
    card, dx, dy = placed.card, placed.dx, placed.dy
    numbers = [card.view.open, *(member.view.open for member in card.members)]
    resting = tuple(dict.fromkeys(number for each in numbers for number in each))
    data: dict[str, Any] = {
        "page": page,
        **_whose(placed),
        "face": card.view.face,
        **({} if card.own_frame else _board(card.view)),
        **({"open": open_data(resting)} if resting else {}),
        "x_mm": _round(card.box[0] + dx),
        "y_mm": _round(card.box[1] + dy),
        "width_mm": _round(card.width),
        "height_mm": _round(card.height),
        "edges": [
            {
                "edge": reference.edge,
                "at_mm": _round(_on_page(reference, placed)),
                "by": card.by(reference),
            }
            for reference in card.edges
        ],
        "index": [_index(reference, placed) for reference in card.index],
    }
    if card.ladder is not None:
        data["ladder"] = {"edge": "top", "at_mm": _round(card.ladder + dy)}
    if card.pieces:
        data["strip"] = {"piece": card.piece, "pieces": card.pieces}
    corners = [fitting.stands for fitting in card.fittings if fitting.stands is not None]
    if corners:
        stands = [{"x_mm": _round(x + dx), "y_mm": _round(y + dy)} for x, y in sorted(corners)]
        data["stands"] = stands if len(stands) > 1 else stands[0]  # two on a whole face's card
    data["holes"] = [
        {
            "purpose": hole.purpose,
            "x_mm": _round(hole.x + dx),
            "y_mm": _round(hole.y + dy),
            "diameter_mm": _round(hole.diameter),
        }
        for hole in card.holes
    ]
    return data


def _whose(placed: Placed) -> dict[str, Any]:
    """Say which part a card is for and where the lower left corner of its face lies, or which
    parts and where for each."""
    card, dx, dy = placed.card, placed.dx, placed.dy
    if not card.members:
        return {"part": card.view.part, "origin_mm": [_round(dx), _round(dy)]}
    return {"parts": [{"part": member.part, **_set(member, dx, dy)} for member in card.members]}


def _set(member: Member, dx: float, dy: float) -> dict[str, Any]:
    """Say how a card with its own origin at (dx, dy) on the page lies on a face: of a pin card also
    which board's, whether half round, on which lines, and which of its holes are bored."""
    setting = member.setting
    if setting is None:
        return {"origin_mm": [_round(dx - member.dx), _round(dy - member.dy)]}
    way = -1 if setting.turned else 1
    lines = [
        {"from": place.start, "value_mm": _round(place.value), "at_mm": _round(at)}
        for place, at in ((setting.x, dx), (setting.y, dy))
        if place is not None
    ]
    return {
        **_board(member.view),
        "origin_mm": [_round(dx - way * member.dx), _round(dy - way * member.dy)],
        "turned": setting.turned,
        "index": lines,
        "holes": [*setting.holes] if setting.holes is not None else None,
    }


def _board(view: FaceView) -> dict[str, Any]:
    """Say which face of a board a card is for, in the words of the list of holes."""
    return {} if view.side is None else {"column": view.column, "side": view.side}


def _on_page(reference: Reference, placed: Placed) -> float:
    return reference.at + (placed.dx if reference.axis == "x" else placed.dy)


def _index(reference: Reference, placed: Placed) -> dict[str, Any]:
    at = _round(_on_page(reference, placed))
    if reference.kind == "middle":
        return {"from": f"middle-{reference.axis}", "value_mm": None, "at_mm": at}
    assert reference.value > SLACK
    value = reference.value + placed.card.view.datums.get(reference.edge, 0.0)
    return {"from": reference.edge, "value_mm": _round(value), "at_mm": at}
