"""The steps of the work."""

import pytest

from jigs.cautions import CAUTION_FOR
from templates.cards.faces import FaceView, view_of_side
from templates.steps import steps_again, steps_for
from templates.wording import side_words
from tests.templates.printed import laid_out
from tests.templates.worked import only_cards
from tests.uneven import PLAIN, UNEVEN

FACES = [
    ("B3-2", "back", "cup", "Hold it at its box"),
    ("B3-2", "front", "pull", "Lay the pull on the drawing"),
    ("B3-1", "back", "front-fixing", "Stand the real drawer box on its drawing"),
    ("B3-1-BOX", "box-front", "clearance", "each hole over its pilot"),
    ("B3-SIDE-L", "inside", "plate", "Lay LEFT and RIGHT together"),
]


def view_of(part: str, face: str) -> FaceView:
    return only_cards(part, face)[0].view


@pytest.mark.parametrize(("part", "face", "purpose", "words"), FACES)
def test_the_steps_are_those_of_the_face(part: str, face: str, purpose: str, words: str) -> None:
    """They begin with the bars, and say what is peculiar to the face."""
    steps = steps_for(view_of(part, face))
    assert steps[0].startswith("Measure both bars")
    assert any(words in step for step in steps)
    assert 5 <= len(steps) <= 13


@pytest.mark.parametrize(("part", "face", "purpose", "words"), FACES[1:])
def test_the_caution_stands_at_its_operation(
    part: str, face: str, purpose: str, words: str
) -> None:
    """In the step that bores."""
    boring = [step for step in steps_for(view_of(part, face)) if step.startswith("Bore")]
    assert len(boring) == 1
    assert CAUTION_FOR[purpose] in boring[0]  # type: ignore[index]


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
    assert CAUTION_FOR["cup"] in again


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
