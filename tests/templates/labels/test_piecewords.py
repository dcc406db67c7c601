"""The words on the labels of pieces: what they are, their sizes, which edge goes where."""

import pytest
from msgspec.structs import replace

from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.piece import Piece, band_for
from jigs.given.confirming import open_numbers
from jigs.given.hardware import SlideRecord
from templates.labels.labelwords import LabelWords, words_of_side_label
from templates.labels.piecewords import words_of_piece_label
from tests.jigs.sample import side_of
from tests.jobtexts import box_text
from tests.templates.kitchens import labels_of, workshop
from tests.templates.printed import laid_out

LAYOUT = workshop()
PIECES = {piece.id: piece for piece in cut_list(LAYOUT)}


def said(words: LabelWords) -> list[str]:
    return [line.ways[0] for line in words.lines]


def of(name: str, number: int = 1) -> LabelWords:
    return words_of_piece_label(LAYOUT, PIECES[name], number)


def test_a_bottom_says_where_it_goes_and_both_sizes() -> None:
    """Golden: 420.6 wide; 559.2 deep with its band of 0.6, so 558.6 on the saw. That it is a bottom
    its ID says."""
    assert said(of("B1-BOTTOM")) == [
        "NORTH WALL, BOX B1",
        "CUT 420.6 x 558.6 x 18.3",
        "CUT 16 9/16 x 22- x 23/32 in",
        "FINISHED 420.6 x 559.2 WITH BAND",
        "STICK ON UNDERSIDE",
    ]
    assert of("B1-BOTTOM").arrow == "FRONT"


def test_a_side_says_its_cut_size_before_the_finished_one() -> None:
    """774.7 x 584.2 with its band of 0.6: 583.6 on the saw, 22 31/32 in; 584.2 is 23 in, and a
    side sawn to it is 0.6 too deep. A partition's label sticks on its left face."""
    words = words_of_side_label(LAYOUT, side_of(LAYOUT, "B1-SIDE-L"), PIECES["B1-SIDE-L"])
    assert said(words)[2:5] == [
        "CUT 774.7 x 583.6 x 18.3",
        "CUT 30 1/2 x 22 31/32+ x 23/32 in",
        "FINISHED 774.7 x 584.2 WITH BAND",
    ]
    assert words.code == side_of(LAYOUT, "B1-SIDE-L").code
    (partition,) = [w for w in labels_of(LAYOUT) if w.part == "S1-PARTITION-1"]
    assert said(partition)[0] == "PARTITION 1, THIS FACE LEFT, BETWEEN COLUMNS 1 AND 2"
    assert (partition.stripe and partition.stripe.end) == "right"


@pytest.mark.parametrize(
    ("name", "end", "words"),
    [
        ("B1-BOTTOM", "top", "THIS EDGE FRONT, BANDED"),
        ("T1-SHELF-1", "top", "THIS EDGE FRONT, BANDED"),
        ("B1-STRETCHER-1", "top", "THIS EDGE FRONT, BANDED"),
        # Seen from the back, a left panel's front edge is on the left, as inside a left side.
        ("S1-PANEL-L", "left", "THIS END TO THE FRONT"),
        ("B1-PANEL-R", "right", "THIS END TO THE FRONT"),
        # Closed on the right, free on the left: from behind that is right.
        ("B3-BLIND", "right", "THIS END BANDED"),
        ("NORTH-FILLER-L", "top", "SCRIBE THIS EDGE TO THE WALL"),
    ],
)
def test_a_stripe_is_on_the_edge_that_it_names(name: str, end: str, words: str) -> None:
    """Along the top of what lies, its arrow to the front; along an end of what stands."""
    stripe = of(name).stripe
    assert stripe is not None
    assert (stripe.end, stripe.ways[0]) == (end, words)


@pytest.mark.parametrize(
    "name", ["B1-STRETCHER-2", "B1-BACK", "B1-NAILER", "B1-1-BOX-SIDE", "NORTH-FILLER-R"]
)
def test_what_has_no_front_edge_has_no_stripe(name: str) -> None:
    """The rear stretcher, backs, nailers, drawer boxes; a filler in a corner is not scribed."""
    assert of(name).stripe is None


def test_a_band_that_comes_later_is_said_to_come() -> None:
    """The edge is still raw when the box is drilled."""
    stripe = words_of_piece_label(LAYOUT, PIECES["B1-BOTTOM"], later=True).stripe
    assert stripe is not None
    assert stripe.ways[0] == "THIS EDGE FRONT, BAND TO COME"


@pytest.mark.parametrize(
    ("name", "toward"), [("NORTH-FILLER-L", "left"), ("NORTH-FILLER-R", "right")]
)
def test_a_fillers_label_lies_along_it(name: str, toward: str) -> None:
    """It is narrower than a label. Seen from the back the wall is right of a left filler, so the
    label's top, turned there, leaves its left end up."""
    assert of(name).toward == toward


def test_several_alike_have_a_label_each() -> None:
    """A piece of which there are two has two labels, each with its number, in words and symbol."""
    labels = [words for words in labels_of(LAYOUT) if words.part == "T1-SHELF-1"]
    assert [said(words)[0] for words in labels] == ["1 OF 2", "2 OF 2"]
    assert all(f" / {n} OF 2 / " in words.payload.text for n, words in enumerate(labels, 1))
    assert labels[0].payload.fit(122) == (
        "T1-SHELF-1 / NORTH WALL / 1ST BOX FROM LEFT / 1 OF 2 / CUT 417.6X534.2X18.3 / "
        f"THEN BAND FRONT / CODE {labels[0].code}"
    )


def test_the_number_among_its_like_is_never_cut_short() -> None:
    """The name grows shorter before it."""
    assert all(way.endswith("2 OF 2") for way in of("B1-1-BOX-SIDE", 2).lines[0].ways)


def test_sizes_that_hang_on_what_nobody_gave_say_so() -> None:
    """A board whose thickness is assumed is measured before it is cut."""
    words = words_of_piece_label(LAYOUT, PIECES["B1-BOTTOM"], assumed=True)
    assert said(words)[1] == "SIZE ASSUMED: MEASURE FIRST"


@pytest.mark.parametrize(
    "change",
    [
        {"length": 421.0},
        {"width": 558.0},
        {"thickness": 18.0},
        {"band": band_for(1.0, 421.0)},
        {"pockets": (50.0, 300.0)},
    ],
)
def test_a_piece_cut_to_other_figures_has_another_code(change: dict[str, float]) -> None:
    """A label of yesterday's job is told by its code; equal pieces share theirs."""
    bottom: Piece = PIECES["B1-BOTTOM"]
    assert replace(bottom, **change).code != bottom.code
    assert replace(bottom, id="B9-BOTTOM").code == bottom.code


def test_a_fillers_arrow_names_the_end_that_it_points_to() -> None:
    """Sideways, `UP` would be read wrong."""
    fillers = [piece for piece in PIECES.values() if piece.kind == "filler"]
    assert fillers
    for piece in fillers:
        words = words_of_piece_label(LAYOUT, piece)
        assert (words.arrow, words.toward in ("left", "right")) == ("TOP END", True)
        assert said(words)[-1] == "STICK ALONG BACK FACE, ARROW TO ITS TOP END"


def test_a_partition_s_label_tells_of_either_face() -> None:
    """A door hangs on its right face alone: the label does not say NO HOLES, and names what is
    open in that face."""
    plain, door = (f'kind = "door"\nhinged = "left"\ncolumn = {column}' for column in (1, 2))
    columns = "columns = [{width = 300}, {share = 1}]"
    text = box_text("B1", "base", plain, door, more=columns)
    layout = laid_out(text.replace("width = 457.2", "width = 900"))
    numbers = open_numbers(SlideRecord(name="runner"))
    sides = tuple(
        replace(side, open=numbers) if side.partition and side.side == "left" else side
        for side in layout.sides
    )
    (words,) = [w for w in labels_of(replace(layout, sides=sides)) if w.part == "B1-PARTITION-1"]
    assert "NO HOLES" not in said(words)
    assert "OPEN: slide runner, 6 numbers" in said(words)
