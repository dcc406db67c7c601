"""Where a card is set."""

import math
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates.cards.setout import CLEAR
from templates.faces.reference import FOLD_REACH, REACH, Reference, choose_reference


def up(
    low: float, high: float, length: float, step: float = 25.4, *, reach: float = FOLD_REACH
) -> Reference:
    return choose_reference(
        "y", low, high, length, "low", step=step, clear=CLEAR, fallback="low", reach=reach
    )


@pytest.mark.parametrize(
    ("line", "inches", "tens"),
    [
        # A worked example of our own: four slides on the left side of box B1,
        # 774.7 high; the lowest from the bottom edge, the next two from 10 in and 17 in.
        (51.3, 0, 0),
        (275.3, 10, 25),
        (467.3, 17, 44),
        # 25 in (635.0): 659.3 - 635 = 24.3 remain, 26 in would lie above the line of 659.3.
        (659.3, 25, 63),
    ],
)
def test_slides_stand_over_round_figures_from_the_bottom_end(
    line: float, inches: int, tens: int
) -> None:
    """A whole inch in inch jobs, a whole 10 mm in metric ones."""
    for step, steps in ((25.4, inches), (10.0, tens)):
        reference = up(line, line, 774.7, step)
        assert reference.value == pytest.approx(step * steps)
        assert reference.kind == ("index" if steps else "edge")
        assert reference.edge == "bottom"
        assert reference.distance(line) == pytest.approx(line - step * steps)


def test_an_edge_within_reach_is_the_best_reference() -> None:
    """The paper is folded over an edge up to 160 mm away where that spares a line; 150, as far as
    a line may be, where other cards stand on that line too."""
    assert up(FOLD_REACH - 32.0, FOLD_REACH, 700.0).kind == "edge"
    assert up(FOLD_REACH - 32.0, FOLD_REACH + 0.001, 700.0).kind == "index"
    assert up(REACH - 32.0, REACH, 700.0, reach=REACH).kind == "edge"
    assert up(REACH - 32.0, REACH + 0.001, 700.0, reach=REACH).kind == "index"


def test_an_edge_serves_a_fitting_that_itself_reaches_further() -> None:
    """A slide's holes at 37 and 165 are set out from the front edge: 128 apart, no line of its
    own could bring both within reach."""
    assert up(37.0, 165.0, 584.2).kind == "edge"


def test_the_near_edge_is_taken_where_either_will_do() -> None:
    """Nearer the right end, distances run in from the right."""
    reference = choose_reference("x", 403.2, 403.2, 454.0, "near", step=25.4, clear=CLEAR)
    assert (reference.kind, reference.edge, reference.inward) == ("edge", "right", -1)
    assert reference.distance(403.2) == pytest.approx(454.0 - 403.2)


def test_the_middle_is_half_of_the_part() -> None:
    """Distances run both ways from it."""
    reference = choose_reference("x", 147.0, 307.0, 454.0, "middle", step=25.4, clear=CLEAR)
    assert (reference.kind, reference.at) == ("middle", 454.0 / 2)
    assert (reference.distance(147.0), reference.distance(307.0)) == (-80.0, 80.0)


def test_an_index_line_is_to_be_had_where_an_edge_would_serve() -> None:
    """For a card that fits no page with the fold."""
    reference = choose_reference(
        "y", 140.0, 140.0, 700.0, "low", step=10.0, clear=CLEAR, fallback="low", edge=False
    )
    assert (reference.kind, reference.value) == ("index", 120.0)


@given(
    st.floats(0, 2300),
    st.floats(0, 400),
    st.floats(5, 500),
    st.sampled_from((10.0, 25.4)),
    st.sampled_from(("low", "high", "near")),
    st.sampled_from(("low", "near")),
)
def test_a_reference_is_an_edge_or_a_round_figure_within_reach(
    low: float,
    extent: float,
    beyond: float,
    step: float,
    wish: Literal["low", "high", "near"],
    fallback: Literal["low", "near"],
) -> None:
    """No index line lies nearer to a hole than the words along it need, and no hole further
    from its line than 150 mm, unless its fitting itself reaches that far."""
    high, length = low + extent, low + extent + beyond
    found = choose_reference(
        "y", low, high, length, wish, step=step, clear=CLEAR, fallback=fallback
    )
    near, far = sorted((found.distance(low), found.distance(high)))
    assert math.isclose(found.value / step, round(found.value / step), abs_tol=1e-9)
    if found.kind == "index":
        assert near >= CLEAR - 1e-6
        assert near < CLEAR + step
    if extent <= REACH - step - CLEAR:
        assert far <= (REACH if found.kind == "index" else FOLD_REACH) + 1e-6
