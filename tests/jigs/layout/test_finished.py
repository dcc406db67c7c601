"""Reversible or not, and codes that follow the holes."""

import pytest

from jigs.given.job import FrontSpec
from jigs.given.stated import Hung
from tests.jigs.sample import box, lay


@pytest.mark.parametrize(
    ("heights", "reversible"),
    [((97.75, 673.75), True), ((97.75, 673.7), True), ((97.75, 672.25), False)],
)
def test_a_door_is_reversible_within_a_tenth(
    heights: tuple[float, float], reversible: bool
) -> None:
    """Cups 97.75 from both ends of a door of 771.5 suit either hand; 1.5 beside do not."""
    door = FrontSpec(id="B1-1", kind="door", hinged="left", hung=Hung(hinges_at=heights))
    assert lay(box(door)).fronts[0].reversible is reversible


def test_held_parts_are_never_reversible() -> None:
    """A part without holes is not called reversible."""
    (door,) = lay(box(FrontSpec(id="B1-1", kind="door"))).fronts
    assert not door.reversible
    assert (door.screws.pull, door.screws.through_box) == (None, False)


def test_a_held_part_has_the_code_of_its_size() -> None:
    """The label of a held part differs from that of the drilled one."""
    held = lay(box(FrontSpec(id="B1-1", kind="door"))).fronts[0]
    drilled = lay(box(FrontSpec(id="B1-1", kind="door", hinged="left"))).fronts[0]
    assert held.code != drilled.code
