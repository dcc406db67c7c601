"""Holes by hand on paper: one edge for all that belong together, the leaflet's own figures, and
no figure over the bottom panel that is none."""

import re

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.ground.errors import ReadingError
from templates.binding.jobsheets import make_sheets
from templates.page.paper import PAPERS
from templates.writers.pdf import write_pdf
from tests.cardreading import faults_on_paper, ruler_up
from tests.cardwords import faults_in_words
from tests.jobtexts import box_text
from tests.readback import PrintedCard, PrintedPage, read_pages
from tests.templates.printed import laid_out

LIFT = """kind = "lift"
height = 360
[[box.front.hole]]
face = "back"
x = 60
y = 28
diameter = 5
depth = 11
purpose = "bracket"
from = "top"
[[box.front.hole]]
face = "back"
x = 60
y = 220
diameter = 5
depth = 11
purpose = "bracket"
from = "top"
"""


def arm(y: float, x: float = 37.0, more: str = "") -> str:
    """Write one hole of a lift's arm in both boards beside it."""
    return (
        f'[[box.hole]]\nside = "both"\nx = {x}\ny = {y}\ndiameter = 5\ndepth = 12\n'
        f'purpose = "arm"\nfront = "B1-1"\n{more}\n'
    )


def wall_box(*holes: str, more: str = "") -> str:
    """Write a wall box 400 high with one lift-up door, and holes in its sides."""
    text = box_text("B1", "wall", LIFT.replace("height = 360\n", ""), more=more)
    text = text.replace("height = 774.7", "height = 400").replace("depth = 584.2", "depth = 320")
    return text.replace("above_floor = 100", "above_floor = 1370") + "".join(holes)


def pages_of_sides(layout: Layout) -> tuple[PrintedPage, ...]:
    """Print the sheets of a box's boards alone."""
    boards = {side.board for side in layout.sides}
    sheets = make_sheets(layout, PAPERS["common"], only=boards)
    return read_pages(write_pdf(sheets.pages))


def figures(card: PrintedCard) -> set[str]:
    """The large figures of a card."""
    return {run.text for run in card.runs if run.size > 3.0 and re.fullmatch(r"\d+\.\d", run.text)}


def test_a_hole_set_from_the_top_has_no_figure_over_the_panel() -> None:
    """150 from the top of a side of 400, as stated: 150.0; the panel's 18.3 are not taken off
    that: it stands 250 - 18.3 = 231.7 over the panel, and 131.7 is nowhere."""
    layout = laid_out(wall_box(arm(150, more='from = "top"')))
    pages = pages_of_sides(layout)
    (left,) = [card for page in pages for card in page.cards if "B1-SIDE-L" in card.text]
    assert "150.0" in figures(left)
    assert "131.7" not in left.text
    assert faults_in_words(pages, layout) == []


def test_a_hole_set_from_the_bottom_has_its_figure_over_the_panel() -> None:
    """90 up: 71.7 over a panel of 18.3; one below a side's panel, on legs, has none."""
    layout = laid_out(wall_box(arm(90)))
    (left, _) = [card for page in pages_of_sides(layout) for card in page.cards]
    assert "71.7 over panel" in left.text


@pytest.mark.parametrize("end", ["top", "bottom"])
def test_the_paper_counts_from_the_end_that_the_leaflet_does(end: str) -> None:
    """Stated 170 from the top of 400, set from the top with 170.0; 170 from the bottom likewise.
    Neither stands in reach of its end: the nearer one does not matter."""
    layout = laid_out(wall_box(arm(170, more=f'from = "{end}"'), arm(230, more=f'from = "{end}"')))
    pages = pages_of_sides(layout)
    side = layout.sides[0]
    heights = [170.0, 230.0] if end == "bottom" else [400.0 - 230.0, 400.0 - 170.0]
    assert sorted(hole.y for hole in side.holes) == pytest.approx(heights)
    cards = [card for page in pages for card in page.cards]
    assert set().union(*(figures(card) for card in cards)) >= {"170.0", "230.0"}
    for card in cards:
        assert ruler_up(card).from_far is (end == "top")
        assert f"from {end} end" in card.text
    assert faults_on_paper(pages, replace(layout, fronts=())) == []
    assert faults_in_words(pages, layout) == []


def test_holes_in_a_board_count_from_its_bottom_end_where_nothing_is_stated() -> None:
    """340 and 180 up a side of 400: the upper one is nearer to the top, and counts from the bottom
    with the lower one, as all else in a board, and as at its station."""
    layout = laid_out(wall_box(arm(340), arm(180)))
    cards = [card for page in pages_of_sides(layout) for card in page.cards]
    assert len(cards) == 4
    assert not any(ruler_up(card).from_far for card in cards)


def test_brackets_at_both_ends_of_a_front_each_fold_over_their_own_end() -> None:
    """60 in from the left and 60 from the right of 454: no line is struck 394 away from an end
    that the paper could fold over, and the mirrored one stands as far from its own end. Up they
    count from one edge, the top."""
    holes = LIFT.replace('from = "top"', "mirror = true").replace("y = 28", "y = 367.2")
    layout = laid_out(box_text("B1", "wall", holes.replace("height = 360\n", "")))
    pages = read_pages(write_pdf(make_sheets(layout, PAPERS["common"], only={"B1-1"}).pages))
    cards = [card for page in pages for card in page.cards if "HOLES BY HAND" in card.text]
    ends = [{end for end in ("LEFT END", "RIGHT END") if end in card.text} for card in cards]
    assert sorted(map(sorted, ends)) == [["LEFT END"], ["LEFT END"], ["RIGHT END"], ["RIGHT END"]]
    assert all("60.0" in figures(card) for card in cards)
    assert not any("394.0" in card.text for card in cards)


def test_in_a_box_already_together_paper_reaches_the_panel_alone() -> None:
    """No fold over a top end, nor a line from it; the leaflet's figure stands beside: 60 from the
    top is 340 up, 321.7 from the upper face of a panel of 18.3."""
    layout = laid_out(wall_box(arm(60, more='from = "top"'), more="assembled = true"))
    cards = [card for page in pages_of_sides(layout) for card in page.cards]
    assert len(cards) == 2
    for card in cards:
        assert not ruler_up(card).from_far
        assert "321.7" in figures(card)
        assert "60.0 from top of the sides" in card.text
        assert "TOP END" not in card.text


def test_on_a_partition_the_leaflets_figure_counts_from_the_sides() -> None:
    """A partition that stands 18.3 up and ends 18.3 below the sides' top: 60 down is 41.7."""
    columns = "columns = [{width = 400}, {share = 1}]"
    text = wall_box(arm(60, more='from = "top"'), more=columns)
    other = '[[box.front]]\nkind = "door"\nhinged = "right"\ncolumn = 2\n'
    layout = laid_out(
        text.replace("width = 457.2", "width = 900").replace(
            "[[box.hole]]", f"{other}[[box.hole]]", 1
        )
    )
    partition = next(side for side in layout.sides if side.partition and side.side == "right")
    assert (partition.ends.base, partition.ends.below) == pytest.approx((18.3, 18.3))
    (card,) = [
        card for page in pages_of_sides(layout) for card in page.cards
        if "LEFT FACE OF PARTITION 1" in card.text and "HOLES BY HAND" in card.text
    ]  # fmt: skip
    assert "41.7" in figures(card)
    assert "60.0 from top of the sides" in card.text


def test_a_front_in_hand_keeps_its_holes_from_its_own_top() -> None:
    """Ordered 395.2 high and come 398: 28 and 220 below its top edge all the same."""
    measured = "measured_width = [454, 454]\nmeasured_height = [398, 398]\n"
    layout = laid_out(wall_box().replace('kind = "lift"\n', f'kind = "lift"\n{measured}'))
    (front,) = layout.fronts
    backs = sorted(hole.y for hole in front.holes if hole.face == "back")
    assert front.height == pytest.approx(398.0)
    assert backs == pytest.approx([398.0 - 220.0, 398.0 - 28.0])


def test_an_end_that_is_none_is_a_fault_of_the_file() -> None:
    """Named with what is allowed."""
    with pytest.raises(ReadingError) as caught:
        laid_out(wall_box(arm(60, more='from = "above"')))
    assert "allowed: bottom, top" in str(caught.value.faults[0])
