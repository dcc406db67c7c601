"""Boxes, fronts and walls in a line, and what is refused."""

import contextlib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.asking.forms import Form
from jigs.asking.notation import BoxForm, FixesForm, WallsForm
from jigs.ground.errors import JigsheetError
from tests.anytext import ANY

BOX = BoxForm("in", frozenset({"B0"}))
FIXES = FixesForm("in", ["B1", "W1"])
WALLS = WallsForm("in", ["B1", "W1"])


def test_a_decimal_comma_parts_no_fronts() -> None:
    """A comma parts them where a kind of front follows, or how many."""
    box = BoxForm("mm", ()).read("b1 Drawer 600×720x560: drawer 140,5, 2 drawer; drawer")
    assert (box.id, box.kind, box.width.mm) == ("B1", "drawer", 600)
    assert [(front.count, front.height and front.height.mm) for front in box.fronts] == [
        (1, 140.5), (2, None), (1, None),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("form", "text", "said"),
    [
        (BOX, "B1 base", "not a whole box"),
        (BOX, "B0 base 18 x 30", "the ID is taken"),
        (BOX, "Bß base 18 x 30", "not an ID"),
        (BOX, "B1 bass 18 x 30", "did you mean 'base'?"),
        (BOX, "B1 base 18 x 30 x 23 x 4", "2 lengths"),
        (BOX, "B1 base 457 x 720", "mm? write the unit"),
        (BOX, "B1 base 18 x 30: dor left", "did you mean 'door'?"),
        (BOX, "B1 base 18 x 30: drawer left", "is for doors"),
        (BOX, "B1 base 18 x 30: 0 drawer", "not a count"),
        (FIXES, "B2 wall", "no such box"),
        (FIXES, "B1", "nothing said of it"),
        (FIXES, "B1 wal", "did you mean 'wall'?"),
        (FIXES, "B1 18", "2 lengths"),
        (WALLS, "B1 W1", "not a wall"),
        (WALLS, "north: B1", "on no wall: W1"),
        (WALLS, "north: B1 B1 W1", "named twice"),
        (WALLS, "north: B1; north: W1", "a wall twice"),
        (WALLS, "north: B1 W1 range", "range=30x36"),
        (WALLS, "north: B1 W1 range=30", "2 lengths"),
        (WALLS, "north: B1=30x36 W1", "a box is called so"),
        (WALLS, "north: B1 W1; east: r=30x36", "no box stands on it"),
        (WALLS, "north: B1 W1@", "not a length"),
        (WALLS, "nor\x1bth: B1 W1", "not a name"),
    ],
)
def test_what_is_no_such_line_is_refused(form: Form[object], text: str, said: str) -> None:
    """Each says what is wrong in it."""
    with pytest.raises(JigsheetError) as error:
        form.read(text)
    assert said in str(error.value)


PIECES = st.sampled_from(
    ["B1", "W1", "base", "wall", "18", "30 1/2", "x", " ", ":", ";", ",", "@", "=", "left", "door",
     "drawer", "3", "-", "1/0", "ß", "\u2028", "18x30", "north", "range=30x36", "1e9", "²"],
)  # fmt: skip


@settings(max_examples=300)
@given(text=st.lists(PIECES, max_size=9).map("".join) | st.text(ANY, max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    """Nothing else comes of one."""
    for form in (BOX, FIXES, WALLS):
        with contextlib.suppress(JigsheetError):
            form.read(text)


def test_a_box_is_turned_and_its_kind_said_in_another_language() -> None:
    """`turn` stands before the kind."""
    turned, named = FixesForm("mm", ("H1", "W1")).read("H1 turn; W1 Oberschrank")
    assert (turned.turned, turned.kind) == (True, None)
    assert (named.turned, named.kind) == (False, "wall")


def test_a_wall_takes_a_box_by_its_name_in_the_list() -> None:
    """`Høj1` of a list is HOJ1 everywhere else, and may be called either; one that could be either
    of two boxes is not guessed.
    """
    (wall,) = WallsForm("mm", ["HOJ1", "U1"]).read("nordvæg: Høj1 u1")
    assert wall.boxes == ("HOJ1", "U1")
    (wall,) = WallsForm("mm", ["BOVEN-1", "U1"]).read("noord: U1 'Bóven 1'")
    assert wall.boxes == ("U1", "BOVEN-1")
    with pytest.raises(JigsheetError, match="not an ID"):
        WallsForm("mm", ["HOJ1", "HOJ1-2"]).read("nordvæg: Høj1 HOJ1-2")
