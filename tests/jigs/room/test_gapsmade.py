"""The gaps that fronts' sizes make, shown before they are bought."""

from dataclasses import replace

import pytest

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_job
from jigs.given.job import ColumnSpec, FrontSpec, Reveal
from jigs.layout.layout import lay_out
from jigs.order.buying import make_order
from jigs.room.gapsmade import measure_gaps
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
