"""What is held back, at the stations where it will be drilled: HOLD and why, no figures.

A door without a hand stands at none: which one it will be, nobody knows yet.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from jigs.bench.benchpart import BenchPart, board_face, drawer_face, front_face
from jigs.bench.cups import hinge_edge
from jigs.bench.station import Row, Station, Work
from jigs.box.parts import Layout
from jigs.ground.geometry import Purpose
from jigs.ground.problems import Problem


def with_held(layout: Layout, stations: Sequence[Station]) -> tuple[Station, ...]:
    """Add the rows of what is held back."""
    rows: dict[str, list[Row]] = {}
    for name, row in _held(layout, stations):
        rows.setdefault(name, []).append(row)
    return tuple(
        replace(station, rows=_among(station.rows, rows.get(station.name, ())))
        for station in stations
    )


def _among(rows: Sequence[Row], held: Sequence[Row]) -> tuple[Row, ...]:
    """Put held rows behind those of the same box, or last."""
    result = list(rows)
    for row in held:
        same = [at for at, other in enumerate(result) if other.part.box == row.part.box]
        result.insert(same[-1] + 1 if same else len(result), row)
    return tuple(result)


def _held(layout: Layout, stations: Sequence[Station]) -> Iterator[tuple[str, Row]]:
    reasons = {unit.id: unit.held for unit in layout.units if unit.held}
    doors = {front.id for front in layout.fronts if front.swings}
    for front in layout.fronts:
        if not front.held:
            continue
        back = front_face(front, "back")
        if front.swings and not front.bored:
            record = front.hinge.record if front.hinge else None
            hand = [station for station in _of(stations, "cups")
                    if station.hand == hinge_edge(front)]  # fmt: skip
            for station in _drawn_for(hand, record) or hand[:1]:
                yield station.name, _row(back, front.id, "cup", front.held)
        for station in _drawn_for(_of(stations, "pulls"), front.pull):
            alike = any((row.part.id in doors) == front.swings for row in station.rows)
            if alike:
                face = front_face(front, "front")
                yield station.name, _row(face, front.id, "pull", front.held)
        if front.drawer is not None:
            box = drawer_face(front.drawer, "box-front")
            for station in _of(stations, "drawer-boxes")[:1]:
                yield station.name, _row(box, front.id, "clearance", front.held)
            box = drawer_face(front.drawer, "box-back")
            for station in _drawn_for(_of(stations, "rear-hooks"), front.drawer.slide):
                yield station.name, _row(box, front.id, "hook", front.held)
            for station in _of(stations, "fronts-on-boxes")[:1]:
                yield station.name, _row(back, front.id, "front-fixing", front.held)
        if front.kind == "false-front":
            for station in _of(stations, "false-fronts")[:1]:
                yield station.name, _row(back, front.id, "front-fixing", front.held)
    for rollout in layout.rollouts:
        for station in _drawn_for(_of(stations, "rear-hooks"), rollout.slide):
            if rollout.held:
                box = drawer_face(rollout, "box-back")
                yield station.name, _row(box, rollout.id, "hook", rollout.held)
    for side in layout.sides:
        for name in side.missing:
            part = board_face(side)
            sides = _of(stations, "sides")
            served = [each for each in sides if any(row.part == part for row in each.rows)]
            for station in (served or sides)[:1]:
                purpose: Purpose = "plate" if name in doors else "slide"
                if name in reasons:
                    yield station.name, _row(part, name, purpose, reasons[name])


def _of(stations: Sequence[Station], work: Work) -> list[Station]:
    return [station for station in stations if station.work == work]


def _drawn_for(stations: Sequence[Station], record: str | None) -> list[Station]:
    """The stations with a card for a piece of hardware."""
    return [
        station
        for station in stations
        if record is not None and any(record in card.records for card in station.cards)
    ]


def _row(part: BenchPart, serves: str, purpose: Purpose, held: tuple[Problem, ...]) -> Row:
    return Row(part=part, serves=serves, purpose=purpose, held=held)
