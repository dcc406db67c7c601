"""A drawer beside a partition, its left reveal its own: it stands 17.8 and 13.05 in from the ends
of its front. Whatever is mirrored, or said of both ends at once, is wrong here.
"""

import re

import pytest
from msgspec.structs import replace

from jigs.box.parts import Front
from templates.binding.jobsheets import make_sheets
from templates.faces.views import views_of_front
from templates.page.paper import PAPERS
from templates.writers.pdf import write_pdf
from tests.cardreading import corners_of, ruler_across
from tests.jigs.sample import front_of
from tests.readback import read_pages
from tests.templates.printed import laid_out
from tests.uneven import IN_LEFT, IN_RIGHT, RISE, UNEVEN


def drawer_front() -> Front:
    return front_of(laid_out(UNEVEN), "B1-1")


def test_the_figures_differ() -> None:
    """As seen from the back they change places."""
    assert pytest.approx((17.8, 13.05)) == (IN_LEFT, IN_RIGHT)
    front = drawer_front()
    assert front.drawer
    assert front.drawer.x == pytest.approx(IN_LEFT)
    assert front.width - front.drawer.x - front.drawer.width == pytest.approx(IN_RIGHT)


def test_both_ends_are_said_as_the_driller_sees_them() -> None:
    """The left end on the back is the right one from the room; no word says it of both ends."""
    layout = replace(laid_out(UNEVEN), fronts=(drawer_front(),), sides=())
    sheets = make_sheets(layout, PAPERS["common"])
    pages = read_pages(write_pdf(sheets.pages, title="Uneven"))
    words = " ".join(run.text for page in pages for run in page.runs)
    assert "Its box: 13.1 LEFT + 389.0 + 17.8 RIGHT = 419.9" in words
    assert words.count("WIDE GAP ON YOUR RIGHT; 30.7") == 1
    said = next(page for page in pages if "WIDE GAP ON YOUR RIGHT" in page.text)
    (number,) = re.findall(r"BORE B1-1-BOX FIRST: page (\d+)\.", said.text)
    assert "FRONT OF DRAWER BOX" in pages[int(number) - 1].text
    assert int(number) <= said.number
    assert "each end" not in words


def test_beside_pilots_too() -> None:
    """Each card says where the drawer box stands."""
    layout = replace(laid_out(UNEVEN), fronts=(drawer_front(),), sides=())
    sheets = make_sheets(layout, PAPERS["common"], pilots=True)
    words = " ".join(run.text for page in read_pages(write_pdf(sheets.pages)) for run in page.runs)
    stands = "13.1 mm in from the LEFT end as you look, 17.8 from the RIGHT, 30.7 mm up"
    assert words.count(stands) == 1
    assert "each end" not in words


def test_the_outline_is_turned_over_with_the_face() -> None:
    """A drawing that is not mirrored would stand 13.05 from the wrong end."""
    back = views_of_front(drawer_front(), "in")[0]
    assert back.face == "back"
    xs = [x for x, _ in back.drawer_outline]
    assert min(xs) == pytest.approx(IN_RIGHT)
    assert back.width - max(xs) == pytest.approx(IN_LEFT)
    assert [fitting.stands for fitting in back.fittings] == [
        pytest.approx((IN_RIGHT, RISE)), pytest.approx((back.width - IN_LEFT, RISE)),
    ]  # fmt: skip
    back = views_of_front(drawer_front(), "in", pilots=True)[0]
    inset = 15.9 + 32
    screws = sorted({round(hole.x, 4) for f in back.fittings for hole in f.holes})
    assert screws == pytest.approx([IN_RIGHT + inset, back.width - IN_LEFT - inset])


def drawn_at(front: Front) -> list[float]:
    """Print a front, and read where the corners of its drawer box stand on its back; mm from the
    left end as the driller sees it."""
    layout = replace(laid_out(UNEVEN), fronts=(front,), sides=())
    sheets = make_sheets(layout, PAPERS["common"], only=(front.id,))
    found = set()
    for page in read_pages(write_pdf(sheets.pages, title="Uneven")):
        for card in page.cards:
            if "BACK OF DRAWER FRONT" not in card.text:
                continue
            for x, _ in corners_of(card):
                found.add(round(ruler_across(card).place(x, front.width), 2))
    return sorted(found)


def test_the_drawer_box_is_drawn_where_it_stands() -> None:
    """On paper as on the front: from the folded ends as seen from behind."""
    front = drawer_front()
    wanted = [IN_RIGHT, front.width - IN_LEFT]
    assert drawn_at(front) == pytest.approx(wanted, abs=0.06)


def test_a_mirrored_outline_is_found() -> None:
    """The comparison can fail: a box that stands as far from the other end is 4.75 off."""
    front = drawer_front()
    assert front.drawer
    mirrored = front.width - front.drawer.x - front.drawer.width
    screws = tuple(
        replace(
            fitting,
            holes=tuple(
                replace(hole, x=hole.x - front.drawer.x + mirrored) for hole in fitting.holes
            ),
        )
        for fitting in front.fittings
        if fitting.kind == "front-fixing"
    )
    turned = replace(front, drawer=replace(front.drawer, x=mirrored), fittings=screws)
    assert drawn_at(turned) == pytest.approx([IN_LEFT, front.width - IN_RIGHT], abs=0.06)
