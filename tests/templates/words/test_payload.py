"""The QR text: dense, short, the ID first, and what is worth least goes first."""

from itertools import pairwise

import pytest
from msgspec.structs import replace

from templates.words.payload import Payload, spell

DOOR = Payload(
    part="W2-2",
    words=("DOOR",),
    hand=("HINGES", "LEFT"),
    wall="NORTH WALL",
    place=("3RD UPPER BOX FROM LEFT", "3RD UPPER FROM LEFT"),
    phrases=(("UNDER W2-1", 4), ("HANGS AT 1370", 5), ("CUPS LEFT 97.8 513.8 UP", 3),
             ("PULLS B", 2), ("THEN PAINT AND HANG", 1)),
    code="Q8RD",
)  # fmt: skip
GOES = ("THEN PAINT", "PULLS B", "CUPS LEFT", "UNDER W2-1", "HANGS AT", " BOX ", "/ CODE", "DOOR ")


@pytest.mark.parametrize(
    ("name", "spelt"),
    [
        ("Südwand", "SUDWAND"),
        ("Łódź/straße", "LODZ STRASSE"),
        ("www.galley.example", "WWW GALLEY EXAMPLE"),
        ("Кухня", "KUKHNYA"),
        ("北の壁", ""),
        ("wall: 2", "WALL 2"),
    ],
)
def test_names_are_spelt_in_the_dense_alphabet(name: str, spelt: str) -> None:
    """Accents go, alphabets are written in ours, other signs vanish, dots and colons become
    spaces."""
    assert spell(name) == spelt


def test_a_wall_whose_tag_the_id_has_goes_where_nothing_else_fits() -> None:
    """Pieces of a wall are called by the first six letters of its name (`HARBOU-TOE-1`): these tell
    the wall, before modules are made smaller for it."""
    toe = Payload(
        part="HARBOU-TOE-1-SLEEPER", words=(), wall="HARBOURSIDE WALL",
        place=("UNDER 1ST TO 3RD BOX FROM LEFT", "UNDER 1ST TO 3RD FROM LEFT"), code="W5QC",
    )  # fmt: skip
    assert " / HARBOURSIDE WALL UNDER 1ST TO 3RD FROM LEFT / CODE " in toe.fit(80)
    assert toe.fit(61) == "HARBOU-TOE-1-SLEEPER / UNDER 1ST TO 3RD FROM LEFT CODE W5QC"
    assert toe.core == toe.fit(61)
    other = replace(toe, part="QUAY-TOE-1-SLEEPER")
    assert "HARBOURSIDE WALL" in other.core


def test_what_is_worth_least_goes_first() -> None:
    """The next step, the station, the lines, the neighbour, the height; then the core is said in
    short. ID, kind, hand, wall, place and code stay."""
    texts = list(dict.fromkeys(DOOR.fit(longest) for longest in range(200, len(DOOR.core) - 1, -1)))
    assert len(texts) == len(GOES) + 1
    for gone, (before, after) in enumerate(pairwise(texts)):
        assert GOES[gone] in before
        assert not any(each in after for each in GOES[: gone + 1])
        assert all(each in after for each in GOES[gone + 1 :])
    assert texts[-1] == DOOR.core
    assert DOOR.core == "W2-2 HINGES LEFT / NORTH WALL 3RD UPPER FROM LEFT CODE Q8RD"


def test_of_two_that_are_worth_the_same_the_later_goes() -> None:
    """What is done first stays."""
    both = Payload(part="B1", words=(), phrases=(("PULLS A", 2), ("PULLS B", 2)))
    assert both.fit(15) == "B1 / PULLS A"


def test_the_smallest_symbols_keep_id_and_code() -> None:
    """A tag has no room for the place; the wall goes letter by letter, the word WALL with it."""
    assert DOOR.fit(38) == "W2-2 DOOR HINGES LEFT / CODE Q8RD"
    assert " / NORT WALL 3RD" in DOOR.fit(len(DOOR.core) - 1)
    assert DOOR.fit(5) == "W2-2"


def test_what_the_id_spells_of_the_wall_comes_after_the_place() -> None:
    """What is read first says nothing twice."""
    toe = Payload(part="NORTH-TOE-1-BACK", words=(), wall="NORTH WALL", place=("A", "A"), code="X")
    assert toe.text == "NORTH-TOE-1-BACK / A / NORTH WALL / CODE X"
    assert toe.core == "NORTH-TOE-1-BACK / A CODE X"
