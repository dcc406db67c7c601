"""Whole walls of generated kitchens: parts, front sizes and reveals add up to the box and to the
wall, in inches and in millimetres, whatever is rounded on the way."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.box.parts import Front, Layout
from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.piece import Piece
from jigs.given.job import BoxSpec, ColumnSpec, FrontKind, FrontSpec, Job, Reveal
from jigs.given.stated import EndPanels, PanelKind, Portion
from jigs.given.wallspec import Appliance, WallEnd, WallSpec
from jigs.ground.lengths import Unit
from jigs.layout.layout import lay_out
from tests.jigs.sample import box, job

NEAR = 1e-6
STEP: dict[Unit, float] = {"in": 25.4 / 64, "mm": 0.125}
"""What people measure to: 1/64 in, an eighth of a millimetre."""
INCREMENTS: dict[Unit, tuple[float | None, ...]] = {
    "in": (None, 25.4 / 32, 25.4 / 16), "mm": (None, 0.5, 1.0),
}  # fmt: skip
COUNTER = 38.1
ROUNDED = 25.4 / 16
"""The coarsest increment: two fronts in one column may begin that much apart; mm."""


@dataclass(frozen=True, kw_only=True)
class Kitchen:
    """A job of one wall, which its boxes, panels, appliances and fillers fill from end to end."""

    job: Job
    wall: WallSpec


def _sizes(units: Unit, low: float, high: float) -> st.SearchStrategy[float]:
    step = STEP[units]
    return st.integers(round(low / step), round(high / step)).map(lambda n: n * step)


@st.composite
def _stacks(draw: st.DrawFn, name: str, column: int) -> list[FrontSpec]:
    """Fronts of one column from the top: given heights, shares, and what takes the rest."""
    kinds: list[FrontKind] = draw(
        st.lists(st.sampled_from(("drawer", "door", "pair", "false-front")), min_size=1, max_size=4)
    )
    made = []
    for number, kind in enumerate(kinds, start=1):
        last = number == len(kinds)
        height = None if last else draw(st.sampled_from((None, 100.0, 127.0, 139.7, 152.4)))
        made.append(
            FrontSpec(
                id=f"{name}-{column}{number}", kind=kind, height=height, column=column,
                portion=Portion(
                    share=draw(st.sampled_from((None, 2.0))) if height is None else None
                ),
                hinged="left" if kind == "door" else None,
            )
        )  # fmt: skip
    return made


@st.composite
def kitchens(draw: st.DrawFn) -> Kitchen:
    """One to five boxes beside each other, with end panels and appliances between them."""
    units: Unit = draw(st.sampled_from(("in", "mm")))
    panels: st.SearchStrategy[PanelKind | None] = st.sampled_from((None, None, "flush", "covered"))
    height = draw(_sizes(units, 650, 950))
    boxes: list[BoxSpec] = []
    appliances: list[Appliance] = []
    count = draw(st.integers(1, 5))
    for number in range(1, count + 1):
        columns = draw(st.sampled_from((1, 1, 2, 3)))
        name = f"B{number}"
        fronts = [f for k in range(1, columns + 1) for f in draw(_stacks(name, k))]
        made = box(*fronts, name=name, width=draw(_sizes(units, 300, 700)) * columns, height=height)
        boxes.append(
            replace(
                made,
                columns=(ColumnSpec(), ColumnSpec(share=2.0), ColumnSpec())[:columns]
                if columns > 1
                else (),
                panels=EndPanels(left=draw(panels), right=draw(panels)),
            )
        )  # fmt: skip
        # Beside an appliance no filler is cut: at both ends stands a box.
        if number < count and draw(st.booleans()):
            wide = draw(_sizes(units, 400, 900))
            appliances.append(Appliance(id=f"A{number}", width=wide, height=850.0, after=name))
    left, right = draw(_sizes(units, 0, 90)), draw(_sizes(units, 0, 90))
    made_job = job(
        *boxes, units=units, increment=draw(st.sampled_from(INCREMENTS[units])),
        reveal=draw(st.sampled_from((Reveal(top=3.2), Reveal(side=0.8, top=3.0, between=1.6)))),
    )  # fmt: skip
    thick = made_job.material.front
    length = left + right + sum(a.width for a in appliances)
    for each in boxes:
        length += each.width + thick * (bool(each.panels.left) + bool(each.panels.right))
    wall = WallSpec(
        name="north", appliances=tuple(appliances), length=length, ceiling=2500.0,
        counter=101.6 + height + COUNTER, counter_thickness=COUNTER,
        left=WallEnd(stands="wall", filler=left), right=WallEnd(stands="wall", filler=right),
    )  # fmt: skip
    return Kitchen(job=replace(made_job, walls=(wall,)), wall=wall)


def across(fronts: Iterable[Front], y: float) -> list[Front]:
    """The fronts of a box that a level line meets, from the left."""
    return sorted(
        (f for f in fronts if f.place.y < y < f.place.y + f.height), key=lambda f: f.place.x
    )


def upright(fronts: Iterable[Front], x: float) -> list[Front]:
    """The fronts of a box that a plumb line meets, from the bottom."""
    return sorted(
        (f for f in fronts if f.place.x < x < f.place.x + f.width), key=lambda f: f.place.y
    )


def covered(row: list[Front]) -> float:
    """What a row takes with all its gaps. A gap that two state is theirs, but over a partition
    each was rounded by itself: there a front states the least of what it leaves to several."""
    wide = row[0].gaps.left + row[-1].gaps.right + sum(f.width for f in row)
    for one, other in pairwise(row):
        gap = other.place.x - one.place.x - one.width
        within = NEAR if one.place.column == other.place.column else ROUNDED
        assert 0.0 - NEAR <= gap - one.gaps.right <= within
        assert 0.0 - NEAR <= gap - other.gaps.left <= within
        wide += gap
    return wide


def stacked(column: list[Front]) -> float:
    """What a stack takes with all its gaps."""
    for one, other in pairwise(column):
        assert one.gaps.top == pytest.approx(other.gaps.bottom, abs=NEAR)
        assert one.place.y + one.height + one.gaps.top == pytest.approx(other.place.y, abs=NEAR)
    return column[0].gaps.bottom + sum(f.height + f.gaps.top for f in column)


def _by_box(layout: Layout) -> dict[str, list[Front]]:
    found: dict[str, list[Front]] = {}
    for front in layout.fronts:
        found.setdefault(front.box, []).append(front)
    return found


@pytest.mark.slow
@given(kitchens())
@settings(max_examples=30)
def test_fronts_and_reveals_are_the_boxes_and_the_wall(kitchen: Kitchen) -> None:
    """Along any level line the fronts and gaps of a box are its width, along any plumb line its
    height; with panels, appliances and fillers they are the wall, with floor and counter its
    height; and the check says so."""
    layout = lay_out(kitchen.job)
    codes = {problem.code for problem in layout.problems}
    assert not codes & {"wall-short", "wall-gap", "same-place", "counter-height"}
    thick, wall = kitchen.job.material.front, kitchen.wall
    along = wall.left.filler + wall.right.filler + sum(a.width for a in wall.appliances)
    boxes = {each.id: each for each in layout.boxes}
    for name, fronts in _by_box(layout).items():
        made = boxes[name]
        # A level line may pass through a gap of another column; just above the lowest edges not.
        levels = [min(f.place.y for f in fronts) + 1.0, *(f.place.y + f.height / 2 for f in fronts)]
        met = [across(fronts, level) for level in levels]
        full = [
            row for row in met if len({f.place.column for f in row}) == len(made.columns or (1,))
        ]
        rows = [covered(row) for row in full]
        assert full[:1] == met[:1]
        assert rows == pytest.approx([made.width] * len(rows), abs=NEAR)
        # A plumb line a third in is clear of the gap between two leaves above or below.
        stacks = [stacked(upright(fronts, f.place.x + f.width / 3)) for f in fronts]
        assert stacks == pytest.approx([made.height] * len(fronts), abs=NEAR)
        assert wall.counter is not None
        assert made.above_floor + stacks[0] + COUNTER == pytest.approx(wall.counter, abs=NEAR)
        along += rows[0] + thick * (bool(made.panels.left) + bool(made.panels.right))
    assert along == pytest.approx(wall.length, abs=NEAR)


@pytest.mark.slow
@given(kitchens())
@settings(max_examples=20)
def test_parts_are_the_boxes_and_the_wall(kitchen: Kitchen) -> None:
    """A bottom and two sides are a box's width, its finished sides its height; with the panels'
    thickness, the appliances and the fillers less what is scribed off they are the wall."""
    layout = lay_out(kitchen.job)
    made: dict[str, list[Piece]] = {}
    for piece in cut_list(layout):
        made.setdefault(piece.kind, []).append(piece)
    side, scribe = kitchen.job.material.side, kitchen.job.build.scribe
    along = sum(a.width for a in kitchen.wall.appliances)
    for bottom, spec in zip(made["bottom"], layout.boxes, strict=True):
        assert bottom.box == spec.id
        assert bottom.length + 2 * side == pytest.approx(spec.width, abs=NEAR)
        along += bottom.length + 2 * side
    for board in made["side"]:
        (spec,) = [each for each in layout.boxes if each.id == board.box]
        assert board.finished_length == pytest.approx(spec.height, abs=NEAR)
        assert board.finished_width == pytest.approx(spec.depth, abs=NEAR)
    along += sum(panel.thickness for panel in made.get("end-panel", []))
    along += sum(min(f.length, f.width) - scribe for f in made.get("filler", []))
    assert along == pytest.approx(kitchen.wall.length, abs=NEAR)
    toes = sum(piece.length for piece in made["toe-front"])
    assert toes <= (kitchen.wall.length or 0.0) + NEAR


def test_the_sum_can_fail() -> None:
    """A front a tenth too wide, or a wall a millimetre too long, is found."""
    layout = lay_out(
        job(box(FrontSpec(id="B1-1", kind="drawer"), FrontSpec(id="B1-2", kind="drawer")))
    )
    front = replace(layout.fronts[0], width=layout.fronts[0].width + 0.1)
    assert covered([front]) != pytest.approx(457.2, abs=NEAR)
    wall = WallSpec(
        name="north", length=458.2, left=WallEnd(stands="wall"), right=WallEnd(stands="wall")
    )
    found = lay_out(replace(layout.job, walls=(wall,))).problems
    assert "wall-gap" in {problem.code for problem in found}
