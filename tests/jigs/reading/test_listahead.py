"""All that a list asks is told at once, with one line that answers it."""

import re
from pathlib import Path

import pytest

from jigs.ground.errors import JigsheetError, ReadingError
from jigs.reading.frontlist import read_front_list
from jigs.reading.listgiven import parse_columns

LIST = (
    "Kast;Front;Maat;Aantal;Draairichting;Opmerking\n"
    "A1;lade;597x140;1;;\n;deur;597x570;1;links;\nA2;dubbele deur;447 x 713;1;;\n"
    "A4;deur;397x713;1;links;\nA4;deur;397x713;1;rechts;\nA5;deur;597x1.397;1;links;optie\n"
)


def ahead(folder: Path, text: str, columns: str = "", *, bare: bool = True) -> str:
    path = folder / "list.csv"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(ReadingError) as caught:
        read_front_list(path, listed=parse_columns(columns), bare=bare)
    assert caught.value.ahead
    return caught.value.ahead()


def test_one_line_answers_every_round(tmp_path: Path) -> None:
    """What is asked only once sizes and hands are known is told with the rest; the first of each
    answer reads the list whole."""
    told = ahead(tmp_path, LIST)
    assert "Asked next, as far as can be seen:" in told
    assert "a left and a right door of one size on box 'A4'" in told
    line = told.splitlines()[-1].removeprefix('--columns "').removesuffix('"')
    assert set(line.split(",")) == {
        "hinged=E|nothing=E", "row.7=nothing|front", "order=width-first|height-first",
        "pairs=one-leaf|both-leaves|pieces", "empty_box=above|own", "both_hands=pair|stack",
    }  # fmt: skip
    answers = re.sub(r"\|[^,]*", "", line)
    read = read_front_list(tmp_path / "list.csv", listed=parse_columns(answers))
    assert [row.spec.kind for row in read.rows] == ["drawer", "door", "pair", "pair"]


def test_the_line_itself_is_refused(tmp_path: Path) -> None:
    """Nobody answers by pasting it."""
    line = ahead(tmp_path, LIST).splitlines()[-1].removeprefix('--columns "').removesuffix('"')
    with pytest.raises(JigsheetError, match=re.escape("'width-first|height-first' given")):
        parse_columns(line)


def test_what_was_said_stays_in_the_line(tmp_path: Path) -> None:
    """One line is enough the next time, too."""
    told = ahead(tmp_path, LIST, "order=width-first,hinged=E")
    assert '--columns "hinged=E,order=width-first,row.7=nothing|front' in told.splitlines()[-1]


def test_a_job_has_its_table(tmp_path: Path) -> None:
    """The same, as `[list]` takes it."""
    table = ahead(tmp_path, LIST, bare=False).partition("[list]\n")[2].splitlines()
    assert table[:4] == [
        'order = "width-first|height-first"', 'pairs = "one-leaf|both-leaves|pieces"',
        'empty_box = "above"', 'both_hands = "pair|stack"',
    ]  # fmt: skip
    assert 'row = { 7 = "nothing|front" }' in table
    assert 'columns = { "hinged|nothing" = "E" }' in table


def test_one_question_says_so_itself(tmp_path: Path) -> None:
    """No line is needed for it."""
    assert ahead(tmp_path, "Kast;Type;Breedte;Hoogte\nA1;deur;597;1.397\n") == ""
