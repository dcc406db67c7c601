"""The words of a sheet."""

import pytest
from msgspec.structs import replace

from templates.page.marks import Mark, Qr, Text
from templates.page.typeface import text_box
from templates.sheets.panel import (
    PartWords,
    body,
    figures_of,
    head_across,
    head_down,
    heights_in,
    notes_of,
    set_in,
    title,
)
from templates.sheets.partwords import words_of_front
from templates.words.sentence import Sentence
from templates.writers.qr import QUIET, qr_side
from tests.jigs.sample import front_of
from tests.templates.worked import only_cards, worked_layout


def door_words() -> PartWords:
    layout = worked_layout("in")
    return words_of_front(layout, front_of(layout, "B3-2"))


def lines(marks: tuple[Mark, ...]) -> list[str]:
    return [mark.text for mark in marks if isinstance(mark, Text)]


@pytest.mark.parametrize("part", ["B3-2", "PANTRY-NORTH-12-SIDE-R", "ABCDEFGHIJKLMNOP-BOX"])
@pytest.mark.parametrize("width", [62.0, 86.0, 120.0])
def test_the_title_names_the_part_in_full(part: str, width: float) -> None:
    """Part and code are never shortened, whatever else is; nothing runs into the symbol."""
    words = replace(
        door_words(),
        part=part,
        kind="LIFT-UP DOOR, " * 9,
        place="FENSTERWAND SÜD GRÖSSER RAUM WALL, BOX B3, UNDER B3-1, " * 3,
        job="Ферма Заречная, a job whose name goes on and on " * 3,
    )
    piece = title(words, "sheet 12/13", width)
    found = lines(piece.marks)
    assert part in found
    assert f"sheet 12/13, code {words.code}" in found
    symbol = next(mark for mark in piece.marks if isinstance(mark, Qr))
    assert symbol.text == words.payload
    quiet = QUIET * symbol.module
    side = qr_side(words.payload, symbol.module)
    assert symbol.x - quiet + side <= width + 1e-9
    for mark in piece.marks:
        if isinstance(mark, Text):
            assert text_box(mark)[2] <= symbol.x - quiet
            assert text_box(mark)[1] >= -piece.height


@pytest.mark.parametrize("down", [True, False])
def test_the_head_says_what_must_be_on_every_sheet(down: bool) -> None:
    """Across the sheet or down a column: face, how it lies, size, blanks and sum."""
    cards = tuple(only_cards("B3-2", "back"))
    view, words = cards[0].view, door_words()
    marks: tuple[Mark, ...]
    if down:
        pieces = head_down(view, words, figures_of(view, words), cards, "sheet 1/2", 62.0)
        marks = tuple(mark for piece in pieces for mark in piece.marks)
    else:
        marks = head_across(view, words, figures_of(view, words), cards, "sheet 1/2", 188.0).marks
    text = " ".join(lines(marks))
    for needed in (
        "B3-2",
        "DOOR, HINGES LEFT",
        "sheet 1/2",
        "DRILL THIS FACE: BACK OF DOOR",
        "hinge edge on your RIGHT",
        "NOT REVERSIBLE",
        "454.0 × 613.0",
        "Yours ____",
        "97.8 + 416.0 + 99.2 = 613.0",
        "UP",
    ):
        assert needed in text
    turned = replace(view, reversible=True)
    piece = head_across(turned, words, figures_of(turned, words), cards, "sheet 1/2", 188.0)
    assert "NOT REVERSIBLE" not in " ".join(lines(piece.marks))


def test_the_body_says_what_applies() -> None:
    """What is the part's own in the work, the caution, facts of the face and notes of the part; on
    a further sheet without the facts."""
    view = only_cards("B3-2", "back")[0].view
    incomplete = Sentence("INCOMPLETE: holes to come.", bold=True)
    words = replace(door_words(), notes=(incomplete, Sentence("ASSUMED: side 18.")))
    said: dict[bool, str] = {}
    for first in (True, False):
        own = ("STEPS: page 2.", "STRIKE 7 in.")
        below = body(view, own, notes_of(view, words, first=first))
        pieces = set_in(below, 80.0)
        assert heights_in(below, 80.0) == [piece.height for piece in pieces]
        marks = [mark for piece in pieces for mark in piece.marks if isinstance(mark, Text)]
        said[first] = " ".join(mark.text for mark in marks)
        for needed in (
            "STEPS: page 2.",
            "STRIKE 7 in.",
            "bore scrap first",
            "ASSUMED: side 18.",
        ):
            assert needed in said[first]
        assert any(mark.bold for mark in marks if mark.text.startswith("INCOMPLETE"))
    assert "Plates 3.0 high" in said[True]
    assert "Plates 3.0" not in said[False]
