"""What boxes have alike is kept once."""

from pathlib import Path

import pytest

import templates.demo
from jigs.box.drawerbox import DrawerBox
from jigs.box.parts import Front, Layout, Side
from jigs.given.job import BoxSpec, FrontSpec
from jigs.ground.geometry import Fitting
from jigs.ground.shared import Shared
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests.jigs.sample import box, lay


def plain_box(number: int) -> BoxSpec:
    """Give a box with a drawer over a door."""
    name = f"B{number}"
    drawer = FrontSpec(id=f"{name}-1", kind="drawer", height=152.4)
    return box(drawer, FrontSpec(id=f"{name}-2", kind="door", hinged="left"), name=name)


def row_of(boxes: int) -> Layout:
    """Lay out so many boxes alike."""
    return lay(*map(plain_box, range(1, boxes + 1)))


def fittings_of(layout: Layout) -> list[Fitting]:
    """Give all that is drilled into fronts, their drawer boxes and sides."""
    drawers = [front.drawer for front in layout.fronts if front.drawer is not None]
    whole: list[Front | DrawerBox | Side] = [*layout.fronts, *drawers, *layout.sides]
    return [fitting for part in whole for fitting in part.fittings]


@pytest.mark.parametrize("boxes", [2, 5])
def test_the_holes_of_boxes_alike_are_kept_once(boxes: int) -> None:
    """However many boxes: as many rows of holes and outlines as a single one has."""
    one, several = fittings_of(row_of(1)), fittings_of(row_of(boxes))
    assert len(several) == boxes * len(one)
    for field in ("holes", "outline"):
        assert len({id(getattr(each, field)) for each in several}) == len(
            {getattr(each, field) for each in one}
        )


def test_a_box_in_a_row_is_as_it_is_alone() -> None:
    """Of its names nothing is taken from another box."""
    row = row_of(3)
    for number in (1, 2, 3):
        alone = lay(plain_box(number))
        assert alone.fronts == tuple(f for f in row.fronts if f.box == f"B{number}")
        assert alone.sides == tuple(s for s in row.sides if s.box == f"B{number}")


def test_what_is_shared_is_what_was_planned(monkeypatch: pytest.MonkeyPatch) -> None:
    """To the last digit and sign: 0.0 and -0.0 are equal, and printed otherwise."""
    job = read_job(Path(templates.demo.__path__[0]) / "job.toml")
    shared = lay_out(job)
    monkeypatch.setattr(Shared, "one", lambda self, value: value)
    apart = lay_out(job)
    assert repr(shared) == repr(apart)
