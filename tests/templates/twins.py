"""Boxes that are alike, and the sets of sheets that serve them."""

from collections.abc import Iterable
from dataclasses import replace
from functools import cache

from jigs.box.parts import Front, Layout
from jigs.given.job import BoxSpec, FrontSpec
from jigs.ground.geometry import Hole
from templates.binding.alike import Batch
from templates.binding.jobsheets import Sheets, make_sheets
from templates.page.marks import Text
from templates.page.paper import PAPERS, Paper
from tests.jigs.sample import box, lay
from tests.jobs import renamed
from tests.templates.drawnonce import DrawnOnce, draw_once

COMMON = PAPERS["common"]
BASE = box(
    FrontSpec(id="B3-1", kind="drawer", height=152.4),
    FrontSpec(id="B3-2", kind="door", height=613.0, hinged="left"),
    name="B3",
)


@cache
def several(times: int, base: BoxSpec = BASE) -> Layout:
    """A job of boxes that are alike: B3, B3R, B3S, ..."""
    return lay(*(renamed(base, number) for number in range(times)))


def sheets(layout: Layout, paper: Paper = COMMON) -> Sheets:
    return make_sheets(layout, paper, same=True)


@cache
def sheets_of(times: int) -> DrawnOnce:
    """The sheets of boxes that are alike."""
    return draw_once(sheets(several(times)))


def batches(layout: Layout) -> list[Batch]:
    return list(sheets(layout)._batches(True))


def sets(layout: Layout, face: str = "") -> list[tuple[str, ...]]:
    """The parts of each set, or of each set for one face."""
    return [
        tuple(part for _, part in batch.parts)
        for batch in batches(layout)
        if not face or face in [view.face for view in batch.views]
    ]


def words_of(marks: Iterable[object]) -> str:
    return " ".join(mark.text for mark in marks if isinstance(mark, Text))


def changed(layout: Layout, part: str, **values: object) -> Layout:
    """Give the layout with some values of one front another."""
    fronts = tuple(
        replace(front, **values) if front.id == part else front  # type: ignore[arg-type]
        for front in layout.fronts
    )
    return replace(layout, fronts=fronts)


def with_holes(front: Front, **values: object) -> Front:
    """Give a front with one of its holes in the back changed."""
    (fitting, *others) = front.fittings
    hole: Hole = replace(fitting.holes[0], **values)  # type: ignore[arg-type]
    return replace(front, fittings=(replace(fitting, holes=(hole, *fitting.holes[1:])), *others))


DOOR = next(front for front in several(2).fronts if front.id == "B3R-2")
