"""IDs: what may be one, the defaults, and clashes after expansion."""

from itertools import islice

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jigs.given.ids import (
    LONGEST_NAME,
    check_id,
    find_clashes,
    name_boxes,
    name_fronts,
    name_leaves,
    name_parts,
    names_board,
)
from jigs.ground.errors import JigsheetError
from tests.anytext import ANY


@pytest.mark.parametrize(
    ("text", "wanted"),
    [("B1", "B1"), ("b1-2", "B1-2"), ("  d7 ", "D7"), ("12", "12"), ("A" * 16, "A" * 16)],
)
def test_an_id_is_upper_cased_and_trimmed(text: str, wanted: str) -> None:
    """An ID is given back upper-cased, without the spaces around it."""
    assert check_id(text) == wanted


@pytest.mark.parametrize(
    "text",
    ["", "  ", "A" * 17, "B 1", "B_1", "B1.2", "TÜR", "ß", "ı", "B1\n2", "B1/2", "٣", "Ａ"],
)
def test_anything_else_is_refused(text: str) -> None:
    """A refused ID is shown, with what is allowed."""
    with pytest.raises(JigsheetError, match="A-Z, 0-9 and - are allowed, at most 16"):
        check_id(text)


def test_a_refusal_shows_the_value() -> None:
    """The message names the value given, shortened where it runs on."""
    with pytest.raises(JigsheetError, match="'B 1' given"):
        check_id("B 1")
    with pytest.raises(JigsheetError) as caught:
        check_id("X" * 1000)
    assert len(str(caught.value)) < 200


@given(st.text(ANY, max_size=30))
def test_whatever_passes_is_an_id(text: str) -> None:
    """Any text is refused, or becomes an ID that stays itself."""
    try:
        checked = check_id(text)
    except JigsheetError:
        return
    assert checked.isascii()
    assert len(checked) <= LONGEST_NAME
    assert check_id(checked) == checked


def test_defaults_count_from_the_top() -> None:
    """A front without an ID is named by its box and its place."""
    assert name_fronts("", box="B1", place=1) == ("B1-1",)
    assert name_fronts("D4", box="B1", place=1) == ("D4",)


def test_a_count_adds_numbers() -> None:
    """Several of a kind are numbered behind the row's ID, given or not."""
    assert name_fronts("D4", box="B1", place=1, count=3) == ("D4-1", "D4-2", "D4-3")
    assert name_fronts("", box="B1", place=2, count=2) == ("B1-2-1", "B1-2-2")


def test_what_a_front_brings_into_the_job() -> None:
    """A pair is two leaves; a drawer brings its box."""
    assert name_leaves("B1-2") == ("B1-2L", "B1-2R")
    assert name_parts("B1-2", "pair") == ("B1-2L", "B1-2R")
    assert name_parts("B1-1", "drawer") == ("B1-1", "B1-1-BOX")
    assert name_parts("B1-1", "door") == ("B1-1",)
    assert name_parts("B1-1", "opening") == ("B1-1",)


def test_boxes_are_numbered_past_those_taken() -> None:
    """Default box names leave out those that the person gave."""
    assert list(islice(name_boxes({"B2", "B3"}), 3)) == ["B1", "B4", "B5"]


@pytest.mark.parametrize(
    ("part", "wanted"),
    [
        ("B1-SIDE-L", True),
        ("B1-BOTTOM", True),
        ("B1-SHELF-1", True),
        ("B2-SIDE-L", False),
        ("B1-1", False),
        ("SIDE-L", False),
        ("A-B-BACK", True),
    ],
)
def test_names_of_box_parts_are_taken(part: str, wanted: bool) -> None:
    """An ID that reads like a part of a box of the job is recognised."""
    assert names_board(part, {"B1", "A-B"}) is wanted


def test_a_clash_names_both_places() -> None:
    """A duplicate is reported where it stands, with the place it was first used."""
    assert find_clashes([("A", "row 2"), ("B", "row 3")]) == ()
    (fault,) = find_clashes([("A", "row 2"), ("B", "row 3"), ("A", "row 4")])
    assert fault.where == "row 4"
    assert "'A', first at row 2" in fault.what


def test_a_leaf_clashes_with_a_given_id() -> None:
    """The leaves of a pair clash like any other part."""
    claims = [*((p, "row 2") for p in name_parts("P1", "pair")), ("P1L", "row 3")]
    assert [fault.where for fault in find_clashes(claims)] == ["row 3"]


def test_two_drawers_of_one_name_clash_once() -> None:
    """A drawer and its box are one clash between two rows."""
    rows = ("row 2", "row 3", "row 4")
    claims = [(part, row) for row in rows for part in name_parts("D", "drawer")]
    assert [fault.where for fault in find_clashes(claims)] == ["row 3", "row 4"]


def test_a_letter_that_looks_like_another_is_named() -> None:
    """A Greek capital beta looks like a B: the message names it and its place."""
    with pytest.raises(JigsheetError, match="character 2 is 'Β', GREEK CAPITAL LETTER BETA"):
        check_id("XΒ1")
