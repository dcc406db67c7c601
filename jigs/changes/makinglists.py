"""The rows of the stations, the lines of the order and the walls of a job, as plain values."""

from collections.abc import Iterator, Mapping

from jigs.bench.station import Offset, Row, Setting, Station
from jigs.box.parts import Layout
from jigs.changes.made import (
    MadeNeed,
    MadeRow,
    MadeStation,
    MadeWall,
    Value,
    all_steps,
    steps,
)
from jigs.cutlist.cutlist import Cut
from jigs.cutlist.totals import add_boards
from jigs.ground.problems import OPEN_CODES, Problem
from jigs.order.buying import Order
from jigs.room.elevation import Elevation
from jigs.room.wallmeasures import boxes_of, find_strikes

PASSING = (*OPEN_CODES, "not-delivered")
"""Warnings that are no reason to print anew as soon as they come or go: what is open stands with
its part; what has not arrived yet is bored by the figures of its order all the same."""


def told_figures(problem: Problem) -> str:
    """Give a finding as a word that is another one where any of its figures is."""
    values = (
        f"{name}={round(value, 4) if isinstance(value, float) else value!r}"
        for name, value in problem.values
    )
    return " ".join((problem.code, problem.case, *values))


def station_rows(station: Station, told: Mapping[str, tuple[Value, ...]]) -> MadeStation:
    return MadeStation(
        name=station.name,
        code=station.code,
        work=station.work,
        pattern=station.pattern,
        cards=tuple(f"{card.letter}{card.code}" for card in station.cards),
        rows=tuple(_row(row, told.get(row.part.id, ())) for row in station.rows),
    )


def _row(row: Row, told: tuple[Value, ...]) -> MadeRow:
    """Give a row; `told`: what its board's heights are told by, or how its front is made."""
    figures: list[Value] = [*all_steps(row.part.width, row.part.height), row.bored, row.withheld]
    figures.append(told)
    figures += map(told_figures, row.held)
    figures += [told_figures(each) for each in row.warnings if each.code not in PASSING]
    figures += [(each.start, each.above, *all_steps(*each.terms)) for each in row.closing]
    if row.marks is not None:
        marks = row.marks
        figures += [(marks.box, *all_steps(marks.in_left, marks.in_right, marks.up, marks.width))]
    if row.spacer is not None:
        figures += [all_steps(row.spacer.above_end, row.spacer.above_panel)]
    return MadeRow(
        part=row.part.id,
        code=row.part.code,
        serves=row.serves or "",
        cards=tuple(f"{setting.card}{setting.copy}" for setting in row.settings),
        settings=tuple(_setting(setting) for setting in row.settings),
        figures=tuple(figures),
    )


def _setting(setting: Setting) -> Value:
    holes = () if setting.holes is None else tuple(float(hole) for hole in setting.holes)
    return (setting.turned, *_place(setting.x), *_place(setting.y), holes)


def _place(place: Offset | None) -> tuple[Value, ...]:
    return ("",) if place is None else (place.start, steps(place.value))


def list_needs(layout: Layout, cut: Cut, order: Order) -> Iterator[MadeNeed]:
    for front in order.fronts:
        yield MadeNeed(
            what="front", name=front.front.id, unit="piece", buy=1.0,
            sizes=all_steps(front.width, front.height, front.thickness),
        )  # fmt: skip
    for box in () if order.boxes_made else order.drawer_boxes:
        yield MadeNeed(
            what="drawer-box", name=box.slide, unit="piece", buy=float(len(box.parts)),
            sizes=all_steps(box.width, box.height, box.length, box.side),
        )  # fmt: skip
    for item in order.items:
        sizes = [size for size in (item.size, item.board) if size is not None]
        yield MadeNeed(
            what=item.group, name=item.name, unit="piece", buy=float(item.count + item.spare),
            sizes=all_steps(*sizes),
        )  # fmt: skip
    for band in order.banding:
        yield MadeNeed(
            what="band", name="", unit="m", buy=round(band.to_buy / 1000, 1),
            sizes=all_steps(band.band, band.board),
        )  # fmt: skip
    for need in order.paint:
        yield MadeNeed(
            what="paint", name=need.finish, unit="litre", buy=round(need.litres, 1), sizes=()
        )
    for board in add_boards(cut.to_cut, layout.job.units):
        yield MadeNeed(
            what="board", name=board.stuff, unit="sheet", buy=float(board.sheets),
            sizes=all_steps(board.thickness),
        )  # fmt: skip


def wall_lines(elevation: Elevation) -> MadeWall:
    shown: list[Value] = []
    for seen in elevation.boxes:
        box = seen.box
        shown.append((box.id, *all_steps(seen.x, seen.bottom, box.width, box.height)))
        for front in seen.fronts:
            shown.append((
                front.front.id, front.front.hinged or "",
                *all_steps(front.x, front.y, front.front.width, front.front.height),
            ))  # fmt: skip
        shown += [(o.id, *all_steps(o.x, o.y, o.width, o.height)) for o in seen.openings]
        shown += [(s.id, *all_steps(s.x, s.y, s.width, s.height)) for s in seen.strips]
    for each in elevation.appliances:
        shown.append((each.id, *all_steps(each.x, each.y, each.width, each.height)))
    return MadeWall(
        name=elevation.wall,
        lines=tuple(
            (steps(line.up), tuple(name for _, names in line.serves for name in names))
            for line in find_strikes(elevation)
        ),
        boxes=tuple((s.box.id, steps(s.x), steps(s.bottom)) for s in boxes_of(elevation)),
        drawn=tuple(shown),
    )
