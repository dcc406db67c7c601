"""What is a part's own in the work on it: lines, boards laid together, cautions."""

import pytest
from msgspec.structs import replace

from jigs.ground.geometry import Fitting, Hole, Purpose
from templates.cards.blank import Blanks
from templates.cards.card import make_cards
from templates.faces.faceview import FaceView
from templates.faces.views import view_of_side, views_of_front
from templates.sheets.sums import sums
from templates.words.holewords import HOLE_WORDS
from templates.words.ownwords import box_first, cautions_here, own_words
from templates.words.wording import side_words
from tests.jigs.sample import front_of
from tests.templates.printed import laid_out
from tests.templates.worked import only_cards
from tests.uneven import PLAIN, UNEVEN

ROOMS = ((1e4, 1e4),)


def own(view: FaceView) -> str:
    """Give a face's own words, its cards as large as they would be."""
    return " ".join(
        own_words(view, [r for card in make_cards(view, ROOMS, Blanks()) for r in card.index])
    )


def of_board(boxes: str, board: str, drilled: str = "") -> str:
    """Give the own words of a board's face."""
    (side,) = [
        side
        for side in laid_out(boxes).sides
        if side.board == board and drilled in side_words(side)
    ]
    view = view_of_side(side, "mm")
    assert view is not None
    return own(view)


THREE = UNEVEN.replace(
    "columns = [{width = 400}, {share = 1}]", "columns = [{width = 240}, {share = 1}, {share = 1}]"
).replace("width = 900", "width = 1200") + (
    '[[box.front]]\nkind = "drawer"\ncolumn = 3\nslide = "undermount-457"\n'
)


@pytest.mark.parametrize(("part", "face", "purpose"), [
    ("B3-2", "back", "cup"),
    ("B3-2", "front", "pull"),
    ("B1-4", "back", "front-fixing"),
    ("B3-1-BOX", "box-front", "clearance"),
    ("B3-SIDE-L", "inside", "plate"),
])  # fmt: skip
def test_the_caution_of_an_operation_stands_on_its_page(
    part: str, face: str, purpose: Purpose
) -> None:
    """In one line, once."""
    said = cautions_here(only_cards(part, face)[0].view)
    assert said.count(HOLE_WORDS[purpose].caution) == 1


def test_holes_by_hand_beside_cups_have_their_own_caution() -> None:
    """Both are said."""
    view = only_cards("B3-2", "back")[0].view
    hole = Hole(purpose="manual", face="back", x=100.0, y=300.0, diameter=3.0, depth=12.0)
    by_hand = Fitting(kind="manual", index=1, count=1, part=view.part, record=None, holes=(hole,))
    said = cautions_here(replace(view, fittings=(*view.fittings, by_hand)))
    assert HOLE_WORDS["cup"].caution in said
    assert HOLE_WORDS["manual"].caution in said


def test_the_lines_of_cards_are_named_in_the_parts_own_figures() -> None:
    """The top hinge's card of a door 613 high; its bottom one and the pull's are folded."""
    cards = [card for card in only_cards("B3-2", "back") if card.index]
    (line,) = (reference for card in cards for reference in card.index)
    said = own(cards[0].view)
    assert f"STRIKE from BOTTOM EDGE: {line.value / 25.4:.0f} in ({line.value:.1f})." in said
    assert own(only_cards("B3-2", "front")[0].view) == ""


def test_a_middle_is_marked_at_half_the_width() -> None:
    """A drawer front 454.0 wide: 227.0."""
    view = only_cards("B3-1", "front")[0].view
    assert "MIDDLE: half YOUR width (227.0)" in own(view)


def test_a_side_and_a_partition_are_struck_with_an_offcut_under_the_partition() -> None:
    """A partition stands on the bottom panel, 18.3: ends on one stop would set its lines 18.3
    lower than the side's. Both sheets say the same, each of its own board."""
    side = of_board(UNEVEN, "B1-SIDE-L")
    assert (
        "Lay it and the LEFT FACE OF PARTITION 1 together, front edges touching: this bottom on "
        "the stop, an offcut of the bottom's board (18.3) between stop and the partition's."
    ) in side
    partition = of_board(UNEVEN, "B1-PARTITION-1", "left face")
    assert (
        "Lay it and the LEFT SIDE together, front edges touching: the side's bottom on the stop, "
        "an offcut of the bottom's board (18.3) between stop and this one."
    ) in partition
    for words in (side, partition):
        assert "bottoms on one stop" not in words


def test_two_partitions_stand_on_one_stop() -> None:
    """Both stand on the panel; the two sides of a box without one lie as the guide page says."""
    assert (
        "Lay it and the LEFT FACE OF PARTITION 2 together, front edges touching, bottoms on one "
        "stop"
    ) in of_board(THREE, "B1-PARTITION-1", "right face")
    assert "Lay it" not in of_board(PLAIN, "B1-SIDE-R")


def test_on_legs_a_block_lifts_the_partition() -> None:
    """By the legs and the bottom's board: 101.6 + 18.3 = 119.9."""
    tall = UNEVEN.replace("height = 774.7", "height = 876.3\nlegs = 101.6")
    assert "a block 119.9 long between stop and the partition's" in (
        of_board(tall.replace("above_floor = 100\n", ""), "B1-SIDE-L")
    )


def test_the_place_of_a_drawer_box_is_said_once_where_its_ends_are_equal() -> None:
    """Each end's own figure beside a partition."""
    even = front_of(laid_out(PLAIN), "B1-2")
    assert " mm from each end, " in own(views_of_front(even, "mm", pilots=True)[0])
    uneven = front_of(laid_out(UNEVEN), "B1-1")
    said = own(views_of_front(uneven, "mm", pilots=True)[0])
    assert "mm in from the LEFT end as you look, " in said
    assert "each end" not in said


def test_a_front_that_is_marked_through_its_box_names_box_and_bit() -> None:
    """3 dia, 12 deep in 19.05; a box that its maker bored is measured."""
    view = views_of_front(front_of(laid_out(UNEVEN), "B1-1"), "mm")[0]
    assert box_first(view, 12) == "BORE B1-1-BOX FIRST: page 12."
    assert box_first(view, None) == "BORE B1-1-BOX FIRST."
    assert "Where marked: Pilot 3 dia, 12 deep, BLIND, leaves 7.1." in own(view)
    layout = laid_out(f"{UNEVEN}\n[build]\ndrawer_bored = true\n")
    view = views_of_front(front_of(layout, "B1-1"), "mm")[0]
    assert box_first(view, None) == ""
    assert "3 dia, 12 deep" in own(view)
    assert "Measure its maker's holes: 25 from the pull's screws." in " ".join(sums(view))
