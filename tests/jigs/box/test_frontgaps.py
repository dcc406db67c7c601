"""The gaps that fronts' sizes make, shown before they are bought.

What a front needs beside it, against a door that is turned.
"""

from math import cos, sin

import pytest
from msgspec.structs import replace
from shapely import affinity, geometry

from jigs.box.frontgaps import measure_gaps, swing_of_edge
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_job
from jigs.given.job import ColumnSpec, FrontSpec, Reveal
from jigs.layout.layout import lay_out
from jigs.order.buying import make_order
from templates.elevations.elevation import draw_elevations
from templates.lists.ordertables import order_text
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.words.findings import check_text
from templates.words.gapwords import gap_words
from tests.jigs.sample import box, job


def two_boxes(side: float, between: float) -> Layout:
    """Lay out a drawer over a pair, and a door beside them."""
    reveal = Reveal(side=side, top=3.2, bottom=1.6, between=between)
    first = box(
        FrontSpec(id="B1-1", kind="drawer", height=152.4),
        FrontSpec(id="B1-2", kind="pair"),
        width=900.0,
    )
    second = box(FrontSpec(id="B2-1", kind="door", hinged="right"), name="B2")
    return lay_out(job(first, second, reveal=reveal, units="mm"))


def test_both_kinds_of_gap_are_measured() -> None:
    """1.6 at each edge makes 3.2 between two boxes; 1.6 between fronts of one box is another."""
    gaps = measure_gaps(two_boxes(1.6, 1.6))
    assert gaps.one_box == pytest.approx((1.6, 1.6))
    assert gaps.two_boxes == pytest.approx((1.6 + 1.6, 1.6 + 1.6))
    assert gap_words(gaps, "mm").endswith("of two boxes 3.2 mm (1/8 in): meant so?")


def test_gaps_that_are_alike_are_not_asked_about() -> None:
    """3.2 here and there: the figures alone."""
    gaps = measure_gaps(two_boxes(1.6, 3.2))
    assert not gaps.differ
    assert "meant so" not in gap_words(gaps, "mm")


def test_a_front_of_its_own_width_shows_in_the_gaps() -> None:
    """A door 4 narrower stands centred: 2 more at either edge."""
    layout = two_boxes(1.6, 3.2)
    spec = replace(layout.boxes[1].fronts[0], width=457.2 - 3.2 - 4.0)
    wider = replace(layout.boxes[1], fronts=(spec,))
    gaps = measure_gaps(lay_out(replace(layout.job, boxes=(layout.boxes[0], wider))))
    assert gaps.two_boxes == pytest.approx((3.2 + 2.0, 3.2 + 2.0))
    assert gaps.differ


def test_one_front_makes_no_gap() -> None:
    """Nothing is said where no two fronts meet."""
    layout = lay_out(job(box(FrontSpec(id="B1-1", kind="door", hinged="left"))))
    assert gap_words(measure_gaps(layout), "mm") == ""


def test_check_order_and_elevations_say_it() -> None:
    """Wherever the sizes are shown before the fronts are bought."""
    layout = two_boxes(1.6, 1.6)
    words = gap_words(measure_gaps(layout), "mm")
    assert words in " ".join(check_text(layout).split())
    order = order_text(make_order(layout, cut_job(layout)), layout.job)
    assert words in " ".join(order.split())
    (drawn,) = draw_elevations(layout, PAPERS["a4"])
    assert words in " ".join(m.text for m in drawn.page.marks if isinstance(m, Text))


def test_a_board_between_inset_fronts_is_no_gap() -> None:
    """Two columns: a stack stands 3.2 apart, and beside it is a partition."""
    fronts = [
        FrontSpec(id=f"B1-{number}", kind="drawer", column=column)
        for number, column in enumerate((1, 1, 2, 2), start=1)
    ]
    columns = (ColumnSpec(share=1), ColumnSpec(share=1))
    spec = replace(box(*fronts, width=900.0), overlay="inset", columns=columns)
    gaps = measure_gaps(lay_out(job(spec, units="mm")))
    assert gaps.one_box == pytest.approx((3.2, 3.2))


@pytest.mark.parametrize(
    ("width", "tab", "thickness"),
    [(454.0, 5.0, 19.05), (300.0, 3.0, 22.0), (150.0, 7.0, 26.0), (605.0, 5.0, 16.0)],
)
def test_the_swing_of_a_free_edge(width: float, tab: float, thickness: float) -> None:
    """A rectangle turned about the rim of its cup, on its back, reaches furthest by as much as the
    formula says; turned step by step (shapely)."""
    door = geometry.box(0.0, 0.0, width, thickness)
    pivot = (tab, 0.0)
    furthest = max(
        affinity.rotate(door, -angle / 50, origin=pivot).bounds[2] for angle in range(90 * 50)
    )
    assert furthest - width == pytest.approx(
        swing_of_edge(width, tab=tab, thickness=thickness), abs=1e-4
    )


def test_it_is_the_diagonals_turn() -> None:
    """At the angle where the far corner is level with the pivot (derived)."""
    width, tab, thickness = 454.0, 5.0, 19.05
    most = max((width - tab) * cos(a / 1e5) + thickness * sin(a / 1e5) for a in range(10_000))
    assert swing_of_edge(width, tab=tab, thickness=thickness) == pytest.approx(
        most - (width - tab), abs=1e-6
    )
