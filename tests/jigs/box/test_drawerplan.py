"""Drawers of a box: their boxes, their ceilings, and what a false front is screwed to."""

import pytest
from msgspec.structs import astuple, replace

from jigs.box.carcass import Carcass
from jigs.box.drawerplan import DrawerPlan, false_backing, plan_drawers
from jigs.fittings.fixing import Backing
from jigs.given.job import BoxKind, BoxSpec, FrontKind, FrontSpec, Reveal
from jigs.ground.grid import balanced_start
from tests.jigs.sample import GOLDEN, SLIDE, UNDER_COUNTER, box, job, one_column


def plan(
    *rows: tuple[FrontKind, float | None], kind: BoxKind = "base", reveal: Reveal = UNDER_COUNTER
) -> dict[str, DrawerPlan]:
    """Plan the drawers among these rows of the golden box, from the top."""
    fronts = [
        FrontSpec(id=f"B1-{i}", kind=row, height=height)
        for i, (row, height) in enumerate(rows, start=1)
    ]
    spec = box(*fronts, kind=kind)
    column = one_column(spec, reveal)
    records = {f.id: SLIDE for f in column.fronts if f.kind == "drawer"}
    return plan_drawers(
        column,
        Carcass(box=spec, side=18.3, back=6.0),
        job(spec, reveal=reveal),
        records=records,
        start=balanced_start(774.7),
    )


def test_drawer_over_a_door() -> None:
    """6 in front: drawer bottom 649.8, hole line 668.8, at most 96.6 high: 88.9 is chosen."""
    drawer = plan(("drawer", 152.4), ("door", None))["B1-1"]
    assert drawer.place.bottom == pytest.approx(619.1 + 30.7)
    assert drawer.place.hole == pytest.approx(668.8)
    assert drawer.place.greatest == pytest.approx(774.7 - 18.3 - 10 - 649.8)
    assert drawer.drawer.height == pytest.approx(88.9)
    assert drawer.drawer.x == pytest.approx((454 - 409.575) / 2)
    assert drawer.drawer.length == 533


@pytest.mark.parametrize(
    ("front", "room_top", "room_other"),
    [(60, 2.6, 38), (80, 23, 58), (110, 53, 88), (140, 83, 118)],
)
def test_space_by_front_height(front: float, room_top: float, room_other: float) -> None:
    """Room for the top drawer and for the others (derived, as written below)."""
    plans = plan(("drawer", front), ("drawer", front), ("door", None), reveal=GOLDEN)
    assert plans["B1-1"].place.room == pytest.approx(front + 1.6 - 18.3 - 10 - (18.3 + 14 - 1.6))
    assert plans["B1-1"].place.room == pytest.approx(room_top, abs=0.5)
    assert plans["B1-2"].place.room == pytest.approx(front + 3.2 - 25)
    assert plans["B1-2"].place.room == pytest.approx(room_other, abs=0.5)


def test_ceilings() -> None:
    """Under a rail on edge, under another front, under an opening's shelf."""
    sink = plan(("drawer", None), kind="sink", reveal=GOLDEN)["B1-1"]
    assert sink.place.greatest == pytest.approx(774.7 - 100 - 10 - (1.6 + 30.7))
    door = plan(("door", None), ("drawer", 200.0))["B1-2"]
    assert door.place.room == pytest.approx(200 + 3.2 - 25)
    assert door.place.greatest == pytest.approx(200 + 3.2 - 2 - 30.7)
    shelf = plan(("opening", None), ("drawer", 200.0))["B1-2"]
    assert shelf.place.greatest == pytest.approx(200 + 3.2 - 18.3 - 10 - 30.7)


def false(height: float, **given: object) -> tuple[BoxSpec, Backing]:
    """Give what a false front of the golden box is screwed to, and that box."""
    spec = replace(
        box(
            FrontSpec(id="B1-1", kind="false-front", height=height),
            FrontSpec(id="B1-2", kind="door"),
        ),
        **given,
    )
    front = one_column(spec, UNDER_COUNTER).fronts[0]
    carcass = Carcass(box=spec, side=18.3, back=6.0)
    return spec, false_backing(front, carcass, job(spec, reveal=UNDER_COUNTER), SLIDE)


def test_blocks_behind_a_false_front_stand_where_a_drawer_would() -> None:
    """The group of a 6 in drawer front."""
    drawer = plan(("drawer", 152.4), ("door", None))["B1-1"].backing
    _, backing = false(152.4)
    assert astuple(backing) == pytest.approx(astuple(replace(drawer, floor=0.0)))


@pytest.mark.parametrize(
    ("height", "given", "y", "high"),
    [
        # A sink's rail is 100 high; 3.2 of it stand above the front.
        (152.4, {"kind": "sink"}, 152.4 - 96.8, 96.8),
        (152.4, {"rail": 120.0}, 152.4 - 116.8, 116.8),
        # All of a low front lies on it.
        (80.0, {"kind": "sink"}, 0.0, 80.0),
        # 56.8 are too few for two rows 15 from both edges: blocks, where a drawer would stand.
        (152.4, {"rail": 60.0}, 30.7, 88.9),
        # So high a front does not hang from its top alone.
        (260.0, {"kind": "sink"}, 30.7, 203.2),
        # Too low for a drawer with two rows of screws: blocks all over its height.
        (60.0, {}, 0.0, 60.0),
        (120.0, {}, 0.0, 120.0),
    ],
)
def test_what_a_false_front_is_screwed_to(
    height: float, given: dict[str, object], y: float, high: float
) -> None:
    """The rail, where it takes two rows of screws, or blocks (derived)."""
    _, backing = false(height, **given)
    assert (backing.y, backing.height, backing.floor) == pytest.approx((y, high, 0.0))
