"""Holes worked out from the JSON of stations alone, and cards found again on printed paper.

Written from what the data is said to mean, not with the functions that make it.
"""

from collections.abc import Iterable, Iterator
from typing import Any

from tests.stationholes import Found

BEHIND = ("back", "box-back")
"""Faces that are seen from behind: their axes are stated as from the room."""


def holes_of(data: dict[str, Any]) -> list[Found]:
    """Give every hole that the settings come to."""
    return [
        hole
        for station in data["stations"]
        for row in station["rows"]
        for setting in row["settings"]
        for hole in _of_setting(station, row, setting)
    ]


def card_of(station: dict[str, Any], letter: str) -> dict[str, Any]:
    """Find a card; copies differ by place alone."""
    found: list[dict[str, Any]] = [each for each in station["cards"] if each["card"] == letter]
    return found[0]


def origin(
    card: dict[str, Any], row: dict[str, Any], setting: dict[str, Any]
) -> tuple[float, float]:
    """Give by how much the page's axes are moved so that the card lies on the face; of a card
    that is turned, the page is turned half round first."""
    way = -1 if setting["turned"] else 1
    size = {"x": row["width_mm"], "y": row["height_mm"]}
    move: dict[str, float] = {}
    for edge in card["edges"]:
        axis = "x" if edge["edge"] in ("left", "right") else "y"
        high = (edge["edge"] in ("right", "top")) != setting["turned"]
        inside = edge.get("inside_mm", 0.0)
        at = size[axis] - inside if high else inside
        move[axis] = at - way * edge["at_mm"]
    for line in card["lines"]:
        axis = line["axis"]
        place = setting[axis]
        at = {
            "left": lambda v: v, "bottom": lambda v: v,
            "right": lambda v: size["x"] - v, "top": lambda v: size["y"] - v,
            "middle-x": lambda v: size["x"] / 2, "middle-y": lambda v: size["y"] / 2,
        }[place["from"]](place["value_mm"])  # fmt: skip
        assert axis not in move
        move[axis] = at - way * line["at_mm"]
    return move["x"], move["y"]


def _of_setting(
    station: dict[str, Any], row: dict[str, Any], setting: dict[str, Any]
) -> Iterator[Found]:
    card = card_of(station, setting["card"])
    dx, dy = origin(card, row, setting)
    way = -1 if setting["turned"] else 1
    used = range(len(card["holes"])) if setting["holes"] is None else setting["holes"]
    for index in used:
        hole = card["holes"][index]
        x, y = way * hole["x_mm"] + dx, way * hole["y_mm"] + dy
        behind = station["face"] in BEHIND or row["side"] == "right"
        yield Found(
            where=(row["part"], station["face"], row["column"], row["side"]),
            purpose=hole["purpose"],
            x=row["width_mm"] - x if behind else x,
            y=y,
            diameter=hole["diameter_mm"],
            depth=hole["depth_mm"],
        )


def title_of(name: str, parts: Iterable[str]) -> str:
    """Give the title that a station of this name has on paper: capitals, words apart; of one by
    hand the ID, one of these `parts`, as it stands on its label."""
    title = name.upper()
    plain = title.removeprefix("BY-HAND-")
    if plain == title:
        return title.replace("-", " ")
    part = max((each for each in parts if plain.startswith(each.upper())), key=len)
    return f"BY HAND {part}{plain[len(part) :].replace('-', ' ')}"
