"""The steps of the work."""

from dataclasses import replace

import pytest

from jigs.ground.geometry import Fitting, Hole, Purpose
from templates.faces.faceview import FaceView
from templates.faces.views import view_of_side, views_of_front
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.sheets.partwords import words_of_front
from templates.sheets.pattern import SheetWords
from templates.sheets.sheet import draw_plan, plan_face
from templates.sheets.steps import steps_again, steps_for
from templates.words.holewords import HOLE_WORDS, PARTITION_HOLES
from templates.words.wording import side_words
from tests.templates.printed import laid_out
from tests.templates.worked import only_cards
from tests.uneven import PLAIN, UNEVEN

FACES: list[tuple[str, str, Purpose, str]] = [
    ("B3-2", "back", "cup", "Hold it at its box"),
    ("B3-2", "front", "pull", "Lay the pull on the drawing"),
    ("B3-1", "back", "front-fixing", "Stand the real drawer box on its drawing"),
    ("B3-1-BOX", "box-front", "clearance", "each hole over its pilot"),
    ("B3-SIDE-L", "inside", "plate", "Lay LEFT and RIGHT together"),
]


def view_of(part: str, face: str) -> FaceView:
    return only_cards(part, face)[0].view


@pytest.mark.parametrize(("part", "face", "purpose", "words"), FACES)
def test_the_steps_are_those_of_the_face(
    part: str, face: str, purpose: Purpose, words: str
) -> None:
    """They begin with the bars, and say what is peculiar to the face."""
    steps = steps_for(view_of(part, face))
    assert steps[0].startswith("Measure both bars")
    assert any(words in step for step in steps)
    assert 5 <= len(steps) <= 13


@pytest.mark.parametrize(("part", "face", "purpose", "words"), FACES[1:])
def test_the_caution_stands_at_its_operation(
    part: str, face: str, purpose: Purpose, words: str
) -> None:
    """In the step that bores."""
    boring = [step for step in steps_for(view_of(part, face)) if step.startswith("Bore")]
    assert len(boring) == 1
    assert HOLE_WORDS[purpose].caution in boring[0]


def test_a_cup_is_bored_with_a_stop_clamped() -> None:
    """After a bore in scrap."""
    steps = " ".join(steps_for(view_of("B3-2", "back")))
    for words in ("scrap", "Clamp the door", "stop set from the bit's rim"):
        assert words in steps


def test_the_rule_checks_two_figures_of_a_door() -> None:
    """513.75 - 97.75 from punch to punch, and 22.5 from the hinge edge (worked example)."""
    steps = " ".join(steps_for(view_of("B3-2", "back")))
    assert "416.0 and 22.5 with the rule" in steps


@pytest.mark.parametrize(("part", "hand"), [("B1-SIDE-L", "LEFT"), ("B1-SIDE-R", "RIGHT")])
def test_a_side_lies_with_its_front_edge_on_its_own_hand(part: str, hand: str) -> None:
    """Its top end away."""
    assert f"FRONT edge on your {hand}" in " ".join(steps_for(view_of(part, "inside")))


def test_a_further_sheet_has_the_steps_in_short() -> None:
    """With the caution that cannot be left out."""
    again = steps_again(view_of("B3-2", "back"))
    assert again.startswith("STEPS")
    assert HOLE_WORDS["cup"].caution in again


def steps_of_board(boxes: str, board: str, drilled: str = "") -> str:
    """Give the steps of a board's face in one text."""
    (side,) = [
        side
        for side in laid_out(boxes).sides
        if side.board == board and drilled in side_words(side)
    ]
    view = view_of_side(side, "mm")
    assert view is not None
    return " ".join(steps_for(view))


THREE = UNEVEN.replace(
    "columns = [{width = 400}, {share = 1}]", "columns = [{width = 240}, {share = 1}, {share = 1}]"
).replace("width = 900", "width = 1200") + (
    '[[box.front]]\nkind = "drawer"\ncolumn = 3\nslide = "undermount-457"\n'
)


def test_a_side_and_a_partition_are_struck_with_an_offcut_under_the_partition() -> None:
    """A partition stands on the bottom panel, 18.3: ends on one stop would set its lines 18.3
    lower than the side's. Both sheets say the same, each of its own board."""
    side = steps_of_board(UNEVEN, "B1-SIDE-L")
    assert (
        "Lay it and the LEFT FACE OF PARTITION 1 together, front edges touching: this bottom on "
        "the stop, an offcut of the bottom's board (18.3) between stop and the partition's; draw "
        "the SLIDE lines"
    ) in side
    partition = steps_of_board(UNEVEN, "B1-PARTITION-1", "left face")
    assert (
        "Lay it and the LEFT SIDE together, front edges touching: the side's bottom on the stop, "
        "an offcut of the bottom's board (18.3) between stop and this one; draw the SLIDE lines"
    ) in partition
    for steps in (side, partition):
        assert "bottoms on one stop" not in steps


def test_two_partitions_stand_on_one_stop() -> None:
    """Both stand on the panel; so do both sides of a box without a partition."""
    steps = steps_of_board(THREE, "B1-PARTITION-1", "right face")
    assert (
        "Lay it and the LEFT FACE OF PARTITION 2 together, front edges touching, bottoms on one "
        "stop"
    ) in steps
    assert "Lay LEFT and RIGHT together, front edges touching, bottoms on one stop" in (
        steps_of_board(PLAIN, "B1-SIDE-R")
    )


def test_on_legs_a_block_lifts_the_partition() -> None:
    """By the legs and the bottom's board: 101.6 + 18.3 = 119.9."""
    tall = UNEVEN.replace("height = 774.7", "height = 876.3\nlegs = 101.6")
    assert "a block 119.9 long between stop and the partition's" in (
        steps_of_board(tall.replace("above_floor = 100\n", ""), "B1-SIDE-L")
    )


def test_a_further_sheet_without_flaps_speaks_of_none() -> None:
    """It folds nothing: its cards stand on lines; where some of a face have a flap it says both.
    What is said without flaps is never longer, and finds the room that was measured."""
    view = view_of("B3-2", "back")
    alone = steps_again(view, flaps=False)
    assert "fold" not in alone
    assert "flap" not in alone
    assert "lay each card on the lines it names" in alone
    assert len(alone) < len(steps_again(view)) - 40
    high = next(
        view
        for front in laid_out(UNEVEN).fronts
        if front.id == "B1-2"
        for view in views_of_front(front, "mm")
        if view.face == "front"
    )
    assert "a card without one on the lines it names" in steps_again(high)
    assert "a card without one" not in steps_again(view)


def test_each_sheet_tells_of_its_own_cards() -> None:
    """Drawn as further ones: the sheet of a pull's card on the middle and a line folds nothing,
    that of two cards on edges does."""
    layout, paper = laid_out(PLAIN), PAPERS["common"]
    (front,) = (front for front in layout.fronts if front.id == "B1-2")
    for view, told in zip(views_of_front(front, "mm"), ("fold each flap", "lay each"), strict=True):
        words = SheetWords(
            view=view,
            part=words_of_front(layout, front),
            steps=steps_for(view),
            again=steps_again(view),
            unfolded=steps_again(view, flaps=False),
        )
        plan = replace(plan_face(words, paper)[-1], first=False)
        assert any(placed.card.edges for placed in plan.cards) is (view.face == "back")
        marks = draw_plan(plan, paper, 1, "sheet 2 of 2").page.marks
        said = " ".join(mark.text for mark in marks if isinstance(mark, Text))
        assert ("fold each flap" in said, "lay each card" in said) == (
            told == "fold each flap",
            told != "fold each flap",
        )


def test_the_first_sheet_of_a_face_without_flaps_speaks_of_none() -> None:
    """A pull's card on the middle and a line: its steps cut and lay it, and neither fold nor cross
    a corner; those of the back, whose cards stand on edges, do."""
    layout, paper = laid_out(PLAIN), PAPERS["common"]
    (front,) = (front for front in layout.fronts if front.id == "B1-2")
    for view in views_of_front(front, "mm"):
        words = SheetWords(
            view=view,
            part=words_of_front(layout, front),
            steps=steps_for(view),
            again=steps_again(view),
            unfolded=steps_again(view, flaps=False),
        )
        plan = plan_face(words, paper)[0]
        assert plan.first
        marks = draw_plan(plan, paper, 1, "sheet 1 of 1").page.marks
        said = " ".join(mark.text for mark in marks if isinstance(mark, Text))
        folds = view.face == "back"
        assert any(placed.card.edges for placed in plan.cards) is folds
        for word in ("Fold", "flap", "crossed corners"):
            assert (word in said) is folds, word
        assert ("Mark the lines and middles that the cards name" in said) is not folds


def test_a_partition_has_no_outside() -> None:
    """Its caution says where a hole too deep comes out, in the steps and in short."""
    for side in laid_out(UNEVEN).sides:
        view = view_of_side(side, "mm")
        assert view is not None
        for said in (" ".join(steps_for(view)), steps_again(view)):
            assert ("shows outside" in said) is not bool(side.partition)
            assert ("Clamp the side" in said) is not bool(side.partition)
            assert (PARTITION_HOLES in said) is bool(side.partition)


def test_holes_by_hand_beside_hinges_have_a_step_of_their_own() -> None:
    """The hinges' steps speak of cups alone; a bracket beside them is no cup."""
    view = view_of("B3-2", "back")
    hole = Hole(purpose="manual", face="back", x=60.0, y=300.0, diameter=5.0, depth=12.0)
    bracket = Fitting(kind="manual", index=1, count=1, part="B3-2", record=None, holes=(hole,))
    steps = steps_for(replace(view, fittings=(*view.fittings, bracket)))
    (step,) = set(steps) - set(steps_for(view))
    assert step.startswith("By hand: Check each place against the leaflet.")
    assert HOLE_WORDS["manual"].caution in step


def test_further_sheets_have_the_caution_of_each_kind() -> None:
    """Holes by hand beside cups are bored by their own."""
    view = view_of("B3-2", "back")
    hole = Hole(purpose="manual", face="back", x=100.0, y=300.0, diameter=3.0, depth=12.0)
    by_hand = Fitting(kind="manual", index=1, count=1, part=view.part, record=None, holes=(hole,))
    again = steps_again(replace(view, fittings=(*view.fittings, by_hand)))
    assert again.startswith(steps_again(view))
    assert again.endswith(HOLE_WORDS["manual"].caution)
    assert HOLE_WORDS["cup"].caution in again
