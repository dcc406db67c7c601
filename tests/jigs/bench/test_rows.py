"""What is held back stands at its stations with its reason and without figures."""

import pytest

from jigs.bench.station import Row, Station
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import BoxKind, FrontSpec
from jigs.ground.geometry import Hand
from tests.jigs.sample import box, lay


def kitchen(*others: FrontSpec) -> Layout:
    """Two sound fronts, and others in a box of their own."""
    sound = box(
        FrontSpec(id="A-1", kind="drawer", height=163.5),
        FrontSpec(id="A-2", kind="door", hinged="left"),
        name="A",
    )
    return lay(sound, box(*others, name="B"))


def held_at(layout: Layout) -> dict[str, list[Row]]:
    """Give the held rows of each station that has some."""
    stations: tuple[Station, ...] = plan_stations(layout)
    return {
        station.name: held
        for station in stations
        if (held := [row for row in station.rows if row.withheld])
    }


def test_a_door_without_a_hand_stands_at_no_station_for_doors() -> None:
    """Nobody knows yet which side its cups come on; its sides wait for it."""
    layout = kitchen(FrontSpec(id="B-1", kind="door"))
    held = held_at(layout)
    assert all(row.part.id != "B-1" for rows in held.values() for row in rows)


def test_a_drawer_too_low_is_held_at_its_stations() -> None:
    """Its box, its front and its slides' lines: HOLD and why."""
    layout = kitchen(
        FrontSpec(id="B-1", kind="drawer", height=40.0), FrontSpec(id="B-2", kind="drawer")
    )
    held = held_at(layout)
    assert {row.serves for rows in held.values() for row in rows} == {"B-1"}
    assert set(held) == {"sides", "drawer-boxes", "pulls-b", "fronts-on-boxes"}
    assert [row.part.id for row in held["sides"]] == ["B-SIDE-L", "B-SIDE-R"]
    for rows in held.values():
        for row in rows:
            assert "drawer-too-low" in [problem.code for problem in row.held]
            assert row.settings == ()
            assert row.closing == ()


def test_a_held_row_stands_with_its_box() -> None:
    """Behind the last row of the same box, so that whoever drills the box sees it."""
    layout = kitchen(
        FrontSpec(id="B-1", kind="drawer", height=40.0), FrontSpec(id="B-2", kind="drawer")
    )
    (sides,) = [station for station in plan_stations(layout) if station.name == "sides"]
    boxes = [row.part.box for row in sides.rows]
    assert boxes == sorted(boxes)


def test_nothing_is_held_in_a_sound_kitchen() -> None:
    """No row without figures."""
    assert held_at(kitchen(FrontSpec(id="B-1", kind="door", hinged="right"))) == {}


@pytest.mark.parametrize("kind", ["base", "wall"])
@pytest.mark.parametrize("hinged", ["left", "right"])
def test_a_held_door_stands_at_the_one_station_of_its_pull(kind: BoxKind, hinged: Hand) -> None:
    """That of the doors with its hand, in boxes of its kind: their pulls are at the same corner."""
    boxes: list[tuple[str, BoxKind, Hand, float | None]] = [
        ("L", "base", "left", None), ("R", "base", "right", None),
        ("WL", "wall", "left", None), ("WR", "wall", "right", None),
        ("H", kind, hinged, 45.0),
    ]  # fmt: skip
    doors = [
        box(FrontSpec(id=f"{name}-1", kind="door", hinged=hand, height=height),
            FrontSpec(id=f"{name}-2", kind="door", hinged=hand),
            name=name, kind=each, wall=each)
        for name, each, hand, height in boxes
    ]  # fmt: skip
    layout = lay(*doors)
    stations = [station for station in plan_stations(layout) if station.work == "pulls"]
    held = [
        station.name
        for station in stations
        for row in station.rows
        if row.withheld and row.part.id == "H-1"
    ]
    own = [
        station.name
        for station in stations
        for row in station.rows
        if row.part.id == f"{'W' if kind == 'wall' else ''}{hinged[0].upper()}-1"
    ]
    assert len(stations) > 1
    assert held == own
