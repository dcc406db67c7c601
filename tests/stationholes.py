"""Holes worked out from the values of stations alone, as a person at the bench comes to them, and
compared with the list of holes: what is missing, what is too much.

Written from the meaning of the data (edges, lines, half a turn), not with the functions that make
it: a mistake there must not be made here again.
"""

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from jigs.bench.station import Offset, Row, Setting, Station, StationCard
from jigs.box.parts import Layout
from templates.lists.holelist import holes_json

WITHIN = 0.05
"""mm."""
Where = tuple[str, str, int | None, str | None]
"""Part, face, column, side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """A hole in the axes of its part, as the list of holes has it; mm."""

    where: Where
    purpose: str
    x: float
    y: float
    diameter: float
    depth: float | None


def listed(layout: Layout, *, pilots: bool = False) -> list[Found]:
    """Give the holes of the list that stations must set: not those that are marked through a
    drawer box, unless `pilots`."""
    return listed_in(json.loads(holes_json(layout)), pilots=pilots)


def listed_in(data: dict[str, Any], *, pilots: bool = False) -> list[Found]:
    """Give the same from the data of the list of holes."""
    holes: list[Found] = []
    for front in data["fronts"]:
        holes += [
            _listed((front["id"], hole["face"], None, None), hole)
            for hole in front["holes"]
            if pilots or "marked_from" not in hole
        ]
    for side in data["sides"]:
        where = (side["board"], "inside", side["column"], side["side"])
        holes += [_listed(where, hole) for hole in side["holes"]]
    for box in data["boxes"]:
        holes += [_listed((box["part"], hole["face"], None, None), hole) for hole in box["holes"]]
    return holes


def listed_marked(layout: Layout) -> list[Found]:
    """Give the holes that are marked through a box; each names the box in the place of a face."""
    return [
        _listed((front["id"], hole["marked_from"], None, None), hole)
        for front in json.loads(holes_json(layout))["fronts"]
        for hole in front["holes"]
        if "marked_from" in hole
    ]


def _listed(where: Where, hole: dict[str, Any]) -> Found:
    return Found(
        where=where,
        purpose=hole["purpose"],
        x=hole["x_mm"],
        y=hole["y_mm"],
        diameter=hole["diameter_mm"],
        depth=hole["depth_mm"],
    )


def set_out(stations: Iterable[Station]) -> list[Found]:
    """Give every hole that the settings of some stations come to."""
    return [
        hole
        for station in stations
        for row in station.rows
        for setting in row.settings
        for hole in _of_setting(station, row, setting)
    ]


def _of_setting(station: Station, row: Row, setting: Setting) -> Iterator[Found]:
    part = row.part
    card = next(card for card in station.cards if card.letter == setting.card)
    x, y = _origin(card, row, setting)
    way = -1 if setting.turned else 1
    used = range(len(card.holes)) if setting.holes is None else setting.holes
    for index in used:
        hole = card.holes[index]
        across, up = x + way * hole.x, y + way * hole.y
        from_behind = part.face in ("back", "box-back") or (
            part.board is not None and part.board.side == "right"
        )
        yield Found(
            where=(
                part.id,
                part.face,
                part.board.column if part.board else None,
                part.board.side if part.board else None,
            ),
            purpose=hole.purpose,
            x=part.width - across if from_behind else across,
            y=up,
            diameter=hole.diameter,
            depth=hole.depth,
        )


def _origin(card: StationCard, row: Row, setting: Setting) -> tuple[float, float]:
    """Where the card's own origin comes to lie on the face as seen: its edges on the part's edges,
    its lines on the values."""
    size = {"x": row.part.width, "y": row.part.height}
    at: dict[str, float] = {}
    for edge in card.edges:
        axis = "x" if edge.edge in ("left", "right") else "y"
        high = edge.edge in ("right", "top")
        if setting.turned:
            high = not high
        at[axis] = size[axis] - edge.inside if high else edge.inside
    for axis, place in (("x", setting.x), ("y", setting.y)):
        assert (place is None) == (axis not in card.lines), f"{row.part.id}: {card.letter}: {axis}"
        if place is not None:
            assert axis not in at, f"{row.part.id}: {card.letter}: an edge and a line along {axis}"
            at[axis] = _counted(place, size[axis])
    return at["x"], at["y"]


def _counted(place: Offset, length: float) -> float:
    if place.start in ("right", "top"):
        return length - place.value
    if place.start in ("middle-x", "middle-y"):
        assert place.value == 0.0
        return length / 2
    return place.value


def marked(stations: Iterable[Station]) -> list[Found]:
    """Give the holes that come into fronts through their drawer boxes, standing where the marks
    say, bored with the station's bit; each names the box in the place of a face."""
    holes = set_out(station for station in stations if station.face == "box-front")
    found: list[Found] = []
    for station in stations:
        for row in station.rows:
            if row.marks is None:
                continue
            marks, width = row.marks, row.part.width
            assert abs(marks.in_left + marks.width + marks.in_right - width) < WITHIN
            for hole in holes:
                if hole.where[0] == marks.box:
                    seen = marks.in_left + marks.width - hole.x
                    (bit,) = station.bits
                    found.append(
                        Found(
                            where=(row.part.id, marks.box, None, None),
                            purpose="front-fixing",
                            x=width - seen,
                            y=marks.up + hole.y,
                            diameter=bit.diameter,
                            depth=bit.depth,
                        )
                    )
            _check_corners(station, row)
    return found


def _check_corners(station: Station, row: Row) -> None:
    """Both corner cards place the box where the figures say."""
    marks = row.marks
    assert marks is not None
    corners: dict[str, tuple[float, float]] = {}
    for setting in row.settings:
        card = station.card(setting.card)
        if card.stands is None:
            continue
        x, y = _origin(card, row, setting)
        way = -1 if setting.turned else 1
        assert not setting.turned, row.part.id
        corners[card.stands.side] = (x + way * card.stands.x, y + way * card.stands.y)
    wanted = {"left": marks.in_left, "right": marks.in_left + marks.width}
    assert set(corners) == set(wanted), row.part.id
    for side, (x, y) in corners.items():
        assert max(abs(x - wanted[side]), abs(y - marks.up)) <= WITHIN, row.part.id


def compare(wanted: Iterable[Found], got: Iterable[Found]) -> tuple[list[Found], list[Found]]:
    """Give the holes that are missing, and those that are too much or stand elsewhere."""
    left: dict[tuple[object, ...], list[Found]] = {}
    for hole in got:
        left.setdefault(_kind(hole), []).append(hole)
    missing: list[Found] = []
    for hole in wanted:
        mates = left.get(_kind(hole), [])
        near = min(
            mates, key=lambda mate: max(abs(mate.x - hole.x), abs(mate.y - hole.y)), default=None
        )
        if near is None or max(abs(near.x - hole.x), abs(near.y - hole.y)) > WITHIN:
            missing.append(hole)
        else:
            mates.remove(near)
    return missing, [hole for each in left.values() for hole in each]


def _kind(hole: Found) -> tuple[object, ...]:
    depth = None if hole.depth is None else round(hole.depth, 3)
    return (hole.where, hole.purpose, round(hole.diameter, 3), depth)
