"""How answers are read, and what is said of those that cannot be."""

import pytest
from hypothesis import given as for_any
from hypothesis import strategies as st

from jigs.asking.forms import (
    CellForm,
    ChoiceForm,
    CountForm,
    Form,
    LengthForm,
    LengthsForm,
    WordOrLength,
    write_length,
)
from jigs.ground.believable import BOARD, PLATE, TAB, Range
from jigs.ground.errors import JigsheetError
from jigs.ground.lengths import MM_PER_INCH, Unit, parse_length

BOARDS = LengthForm(BOARD, "in")
CELL = CellForm(
    LengthForm(Range(-12, 25, least=1), "in"), LengthForm(TAB, "in"), LengthForm(PLATE, "in"),
    LengthForm(Range(-30, 30), "in"),
)  # fmt: skip


@pytest.mark.parametrize(
    ("form", "text", "said"),
    [
        (BOARDS, "18.3", "18.3 mm? write the unit"),
        (BOARDS, "3/5", "no tape shows 5 parts"),
        (BOARDS, "", "empty"),
        (LengthForm(BOARD, "mm", below=20.0), "20 mm", "not less than 20.0 mm"),
        (LengthsForm(PLATE, "mm"), "0; zwei", "not a length ('zwei' given)"),
        (LengthsForm(Range(9, 800), "mm", up_to=500), "37; 37", "do not rise"),
        (LengthsForm(Range(9, 800), "mm", up_to=500), "37; 501", "beyond the slide"),
        (ChoiceForm(("leaflet", "measured")), "leaflt", "did you mean 'leaflet'?"),
        (ChoiceForm(("mdf", "measured")), "m", "allowed: mdf, measured"),
        (CountForm(20), "21", "from 0 to 20"),
        (CountForm(20), "²", "from 0 to 20"),
        (CELL, "5 mm; 0 mm", "neither one length nor three"),
        (WordOrLength(("knob",), BOARDS), "nob", "or one of: knob"),
    ],
)
def test_what_cannot_be_read_is_refused_with_what_is_allowed(
    form: Form[object], text: str, said: str
) -> None:
    """Each says what was given or what is allowed."""
    with pytest.raises(JigsheetError) as error:
        form.read(text)
    assert said in str(error.value)


def test_first_letters_of_a_word_will_do() -> None:
    """Where they are those of one word alone."""
    assert ChoiceForm(("edge", "gap")).read("E") == "edge"
    assert ChoiceForm(("mdf", "mdf-thin")).read("mdf") == "mdf"


@for_any(st.integers(1, 64 * 200), st.sampled_from(["in", "mm"]))
def test_inches_of_a_tape_are_written_as_fractions_and_read_back(parts: int, unit: Unit) -> None:
    """Sixty-fourths read back as they were, in either unit."""
    mm = parts / 64 * MM_PER_INCH
    text = write_length(mm, unit)
    assert parse_length(text, unit) == pytest.approx(mm, abs=1e-4)
    assert ("mm" in text) == (unit == "mm")


@for_any(st.integers(1, 99_999))
def test_tenths_of_a_millimetre_read_back(tenths: int) -> None:
    """In an inch job too."""
    assert parse_length(write_length(tenths / 10, "in"), "in") == pytest.approx(tenths / 10)
