"""An asymmetric drawer: beside a partition, over a right-hand door, its right reveal its own.

Whatever is mirrored, or said of both ends at once, is wrong here. All figures are derived, from
the left edge of the box: the partition, 18.3, stands at 318.3 to 336.6; the drawer's opening ends
at 914.4 - 18.3; its front runs from half a gap beyond the partition's middle to 6 before the
box's edge.
"""

from dataclasses import replace
from functools import cache

import pytest

from jigs.job import ColumnSpec, FrontSpec
from jigs.parts import Front, Layout
from templates.cards.faces import views_of_front
from templates.paper import PAPERS
from templates.pdf import write_pdf
from templates.sheets import make_sheets
from templates.steps import steps_for
from tests.cardreading import ruler_across
from tests.jigs.sample import box, front_of, lay
from tests.readback import read_pages

LEFT = 18.3 + 300 + 18.3 / 2 + 3.2 / 2
RIGHT = 914.4 - 6
OPENING = (18.3 + 300 + 18.3, 914.4 - 18.3)
DRAWER_WIDTH = 346 * 25.4 / 16
"""559.5 - 42 + 2 x 15.9 = 549.3, rounded down to 1/16 in."""
FROM_LEFT = sum(OPENING) / 2 - DRAWER_WIDTH / 2 - LEFT
FROM_RIGHT = RIGHT - sum(OPENING) / 2 - DRAWER_WIDTH / 2


@cache
def asymmetric() -> Layout:
    fronts = (
        FrontSpec(id="D1", kind="door", hinged="right"),
        FrontSpec(id="D2", kind="drawer", height=152.4, column=2, reveal_right=6.0),
        FrontSpec(id="D3", kind="door", hinged="right", column=2),
    )
    spec = replace(box(*fronts, width=914.4), columns=(ColumnSpec(width=300.0), ColumnSpec()))
    return lay(spec)


def drawer_front() -> Front:
    return front_of(asymmetric(), "D2")


def test_the_figures_differ() -> None:
    """12.7 and 17.4: as seen from the back they change places."""
    assert pytest.approx((12.6625, 17.4125)) == (FROM_LEFT, FROM_RIGHT)
    front = drawer_front()
    assert front.drawer
    assert front.drawer.x == pytest.approx(FROM_LEFT)
    assert front.width - front.drawer.x - front.drawer.width == pytest.approx(FROM_RIGHT)


def test_both_ends_are_said_as_the_driller_sees_them() -> None:
    """The left end on the back is the right one from the room; no word says it of both ends."""
    layout = replace(asymmetric(), fronts=(drawer_front(),), sides=())
    sheets = make_sheets(layout, PAPERS["common"])
    pages = read_pages(write_pdf(sheets.pages, title="Asymmetric"))
    words = " ".join(run.text for page in pages for run in page.runs)
    stands = "17.4 mm in from the LEFT end as you look, 12.7 from the RIGHT, 30.7 mm up"
    assert words.count(stands) == 2
    assert "drawing: 17.4 in on the LEFT, 12.7 on the RIGHT?" in words
    for wrong in ("each end", "both ends?"):
        assert wrong not in words


def test_the_outline_is_turned_over_with_the_face() -> None:
    """A drawing that is not mirrored would stand 17.4 from the wrong end."""
    back = views_of_front(drawer_front(), "in")[0]
    assert back.face == "back"
    xs = [x for x, _ in back.drawer_outline]
    assert min(xs) == pytest.approx(FROM_RIGHT)
    assert back.width - max(xs) == pytest.approx(FROM_LEFT)
    inset = 15.9 + 32
    screws = sorted({round(hole.x, 4) for f in back.fittings for hole in f.holes})
    assert screws == pytest.approx([FROM_RIGHT + inset, back.width - FROM_LEFT - inset])


def drawn_at(front: Front) -> list[float]:
    """Print a front, and read where the upright dashed lines stand on its back; mm from the left
    end as the driller sees it."""
    layout = replace(asymmetric(), fronts=(front,), sides=())
    sheets = make_sheets(layout, PAPERS["common"], only=(front.id,))
    found = set()
    for page in read_pages(write_pdf(sheets.pages, title="Asymmetric")):
        for card in page.cards:
            if "BACK OF DRAWER FRONT" not in card.text:
                continue
            for line in card.strokes:
                if line.dashed and abs(line.x1 - line.x2) < 0.01:
                    found.add(round(ruler_across(card).place(line.x1, front.width), 1))
    return sorted(found)


def test_the_drawer_box_is_drawn_where_it_stands() -> None:
    """On paper as on the front: from the folded ends as seen from behind."""
    front = drawer_front()
    wanted = [FROM_RIGHT, front.width - FROM_LEFT]
    assert drawn_at(front) == pytest.approx(wanted, abs=0.06)


def test_a_mirrored_outline_is_found() -> None:
    """The comparison can fail: a box that stands as far from the other end is 4.8 off."""
    front = drawer_front()
    assert front.drawer
    mirrored = front.width - front.drawer.x - front.drawer.width
    turned = replace(front, drawer=replace(front.drawer, x=mirrored))
    wanted = [FROM_RIGHT, front.width - FROM_LEFT]
    assert drawn_at(turned) != pytest.approx(wanted, abs=0.06)


def test_equal_ends_are_said_once() -> None:
    """In the middle of its front the box is as far in at both ends."""
    front = front_of(lay(box(FrontSpec(id="B1-1", kind="drawer"))), "B1-1")
    steps = " ".join(steps_for(views_of_front(front, "in")[0]))
    assert "as far in at both ends?" in steps
