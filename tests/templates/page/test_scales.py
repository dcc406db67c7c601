"""Ruled scales and verniers."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates.page.scales import COARSE, FINE, SLIP, numbers, ticks, vernier


def test_a_millimetre_scale_has_a_tick_at_each() -> None:
    """Ten to a centimetre, the fives longer, the tens longest; from where the scale begins."""
    marks = ticks(10.0, 20.0, 155.0, 175.0, along="up", side=1)
    assert [mark.y1 for mark in marks] == pytest.approx([20.0 + step for step in range(21)])
    assert {mark.x1 for mark in marks} == {10.0}
    lengths = {round(mark.y1 - 20.0 + 155.0): mark.x2 - mark.x1 for mark in marks}
    assert lengths[160] == lengths[170] > lengths[155] == lengths[165] > lengths[156]


def test_an_inch_scale_has_sixteen_ticks_to_the_inch() -> None:
    """Halves, quarters, eighths and sixteenths, each shorter than the one before."""
    marks = ticks(0.0, 0.0, 0.0, 2 * 25.4, along="right", side=-1, unit="in")
    assert [mark.x1 for mark in marks] == pytest.approx([25.4 / 16 * n for n in range(33)])
    reach = [mark.y1 - mark.y2 for mark in marks]
    assert reach[16] > reach[8] > reach[4] > reach[2] > reach[1] > 0


def test_figures_stand_at_their_ticks() -> None:
    """Downwards too, every twenty where so asked; inches in whole ones."""
    found = list(numbers(5.0, 100.0, 0.0, 60.0, along="down", anchor="start", every=20))
    assert [(value, text.text) for value, text in found] == [
        (0, "0"), (20, "20"), (40, "40"), (60, "60"),
    ]  # fmt: skip
    assert [text.y for _, text in found] == pytest.approx([98.75, 78.75, 58.75, 38.75])
    inches = numbers(0.0, 0.0, 203.2, 260.0, along="right", anchor="middle", unit="in")
    assert [(round(value, 1), text.text, round(text.x, 1)) for value, text in inches] == [
        (203.2, "8", 0.0), (228.6, "9", 25.4), (254.0, "10", 50.8),
    ]  # fmt: skip


@given(st.sampled_from(("up", "right")), st.integers(-2, 2))
def test_a_slip_of_so_many_times_three_tenths_brings_that_pair_in_line(
    along: str, slip: int
) -> None:
    """The half on the piece moves against the one on the tab; in line is who is within 0.01."""

    def places(step: float, moved: float) -> list[float]:
        marks = vernier(7.0, 40.0, 6.0, step, along="up" if along == "up" else "right")
        return [moved + (mark.y1 if along == "up" else mark.x1) for mark in marks]

    pairs = zip(places(COARSE, 0.0), places(FINE, slip * SLIP), strict=True)
    inline = [place for place, (a, b) in enumerate(pairs, start=-2) if abs(a - b) < 0.01]
    assert inline == [slip]


def test_the_middle_mark_is_the_longest() -> None:
    """So that it is known which pair was in line before the slip."""
    lengths = [abs(mark.x2 - mark.x1) for mark in vernier(0.0, 0.0, -6.0, FINE)]
    assert lengths[2] == max(lengths) > lengths[1] == lengths[3]
    assert pytest.approx(0.3) == SLIP
