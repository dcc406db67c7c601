"""The thickness trap."""

import pytest
from msgspec.structs import replace

from jigs.cutlist.totals import find_trap, guess_trade_size
from jigs.given.build import Build
from jigs.ground.lengths import Unit
from tests.jigs.sample import box, job


def test_golden_trap() -> None:
    """Bottoms of 457.2 - 2 x 19.05 = 419.1 between sides of 18.3: 419.1 + 36.6 = 455.7, 1.5
    lost (derived)."""
    trap = find_trap(job(box()), {"B1"})
    assert trap is not None
    assert trap.guessed
    assert trap.nominal == pytest.approx(19.05)
    assert trap.bottom == pytest.approx(419.1)
    assert trap.comes_to == pytest.approx(455.7)
    assert trap.lost == pytest.approx(1.5)
    assert trap.takes_a_reveal


@pytest.mark.parametrize(
    ("true", "units", "size"),
    [
        (18.3, "in", 19.05), (18.0, "in", 19.05), (12.0, "in", 12.7), (17.5, "in", None),
        (18.3, "mm", 18.0), (18.8, "mm", 19.0), (15.9, "mm", 16.0), (29.0, "mm", None),
    ],
)  # fmt: skip
def test_trade_sizes(true: float, units: Unit, size: float | None) -> None:
    """The nearest of the job's own unit, within 1.2."""
    assert guess_trade_size(true, units) == size


def test_what_the_job_says_goes_before_a_guess() -> None:
    """sold_as in [build]."""
    made = replace(job(box()), build=Build(sold_as=19.0))
    trap = find_trap(made, {"B1"})
    assert trap is not None
    assert not trap.guessed
    assert trap.lost == pytest.approx(2 * (19.0 - 18.3))


def test_no_trap_without_a_box() -> None:
    """The first of the boxes that are asked for; an appliance's place is no box."""
    made = job(box(), box(name="B2", width=600.0))
    assert find_trap(made, ()) is None
    trap = find_trap(made, {"B2"})
    assert trap is not None
    assert trap.width == 600.0
