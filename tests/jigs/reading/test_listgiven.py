"""What is stated of a list: the line of `--columns`, and `[list]` in a job file."""

import shlex
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.given.listspec import HandMeant, KindMeant, ListSpec
from jigs.ground.errors import JigsheetError, ReadingError
from jigs.reading.frontlist import read_front_list
from jigs.reading.inputs import read_job
from jigs.reading.listgiven import parse_columns, write_columns, write_list_table
from tests.anytext import ANY

SPEC = ListSpec(
    columns={"width": ("C (in)",), "box": ("Schrank, links",), "nothing": ("F", "7")},
    kinds={"Klappe": "lift", "Fall front": "panel"},
    units="cm",
    order="height-first",
    empty_box="above",
    unnamed="door",
    pairs="pieces",
    thousands="point",
    sheet="Blatt 1",
)
JOB = """\
schema = 1
units = "mm"
fronts_file = "offer.csv"
{list}
[[box]]
id = "B1"
kind = "base"
width = 600
height = 720
depth = 560
"""


def test_each_key_is_read() -> None:
    """Columns, words for kinds, settings; spaces and capitals make no difference."""
    line = (
        'Width=C (in), box="Schrank, links",nothing=F, nothing=7, kinds.Klappe = lift,'
        "kinds.Fall front=panel,units=CM,order=height-first,Empty-Box=above,unnamed=door,"
        "pairs=pieces,thousands=point,sheet='Blatt 1'"
    )
    found = parse_columns(line)
    assert found.columns == {**SPEC.columns, "box": ('"Schrank, links"',)}
    assert (found.kinds, found.units, found.order, found.empty_box) == (
        SPEC.kinds, "cm", "height-first", "above",
    )  # fmt: skip
    assert (found.unnamed, found.pairs, found.thousands, found.sheet) == (
        "door", "pieces", "point", "Blatt 1",
    )  # fmt: skip
    assert parse_columns(write_columns(found)) == found


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("widht=C", "no column or setting ('widht' given); did you mean 'width'?"),
        ("width", "not a key with what it holds ('width' given)"),
        ("width=", "not a key with what it holds ('width=' given)"),
        ("order=across", "order: not known ('across' given); allowed: width-first, height-first"),
        ("kinds.Klappe=flap", "kinds.Klappe: not known ('flap' given); allowed: door, pair"),
        ("pairs=pieces,pairs=one-leaf", "pairs stands twice ('one-leaf' given the second time)"),
        ("kinds.A=door,kinds.A=lift", "kinds.A stands twice ('lift' given the second time)"),
        ("kinds.''=door", "no word behind kinds. (\"kinds.''=door\" given)"),
        ("width=C,width=D", "width stands twice ('D' given the second time)"),
    ],
)
def test_what_is_wrong_in_the_line(line: str, words: str) -> None:
    """Everything at once, with what is allowed."""
    with pytest.raises(JigsheetError) as caught:
        parse_columns(f"{line},units=ell")
    assert words in str(caught.value)
    assert "units: not known ('ell' given); allowed: mm, cm, in" in str(caught.value)


@settings(max_examples=50)
@given(st.text(alphabet="ab=,.\"' ()7C\n", max_size=20))
def test_no_line_raises_anything_else(line: str) -> None:
    """It is read, or told what is wrong."""
    with suppress(JigsheetError):
        assert isinstance(parse_columns(line), ListSpec)


WORDS = st.text(alphabet=st.one_of(st.sampled_from(",=.'\" ()"), ANY), min_size=1).filter(str.strip)


@settings(max_examples=100)
@given(st.dictionaries(WORDS, st.sampled_from(["door", "pair", "nothing"]), max_size=3), WORDS)
def test_a_line_written_is_the_line_read(kinds: dict[str, KindMeant], sheet: str) -> None:
    """Whatever signs stand in a list's words and a sheet's name."""
    hands: dict[str, HandMeant] = dict.fromkeys(kinds, "left")
    spec = ListSpec(columns={"width": ("'C, 1' (in)",)}, kinds=kinds, hands=hands, sheet=sheet)
    assert parse_columns(write_columns(spec)) == spec


def test_a_word_is_quoted_with_either_quote() -> None:
    """A comma, an equals sign or a quote in it is then a sign as any other."""
    line = """kinds."Door, up"=pair,kinds.'a=b'=lift, hands.'Bob''s'=left,kinds.Bo's=door,width=C"""
    spec = parse_columns(line)
    assert spec.kinds == {"Door, up": "pair", "a=b": "lift", "Bo's": "door"}
    assert (spec.hands, spec.columns) == ({"Bob's": "left"}, {"width": ("C",)})


@pytest.mark.parametrize(
    "word",
    ["Twig, upper, LH/RH", "Bob's $HOME `twig`", 'Twig 15 3/4" L', "a=b\\c!", "Twig ”x”"],
)
def test_the_answer_in_a_fault_works_as_it_stands(tmp_path: Path, word: str) -> None:
    """Typed in a POSIX shell: `shlex` parts a line as one does (of `$` and a back quote, which it
    does not read, there are none)."""
    cell = word.replace('"', '""')
    content = f'kind,width,height\n"{cell}",597,713\n'
    with pytest.raises(ReadingError) as caught:
        read_offer(tmp_path, "", content)
    [fault] = caught.value.faults
    typed = fault.what[fault.what.index("--columns ") :].split(" says what it is")[0]
    assert not set("$`!\\”") & set(typed)
    option, line = shlex.split(typed)
    assert option == "--columns"
    assert read_offer(tmp_path, line.replace("KIND", "door"), content) == [[597, 713]]


def read_offer(folder: Path, line: str, content: str) -> list[list[float]]:
    """Give the sizes of a list read with a line."""
    path = folder / "offer.csv"
    path.write_text(content, encoding="utf-8")
    rows = read_front_list(path, listed=parse_columns(line)).rows
    return [[row.spec.width or 0, row.spec.height or 0] for row in rows]


@pytest.mark.parametrize(
    ("line", "content"),
    [
        ("width=B,height=C", "kind,x,y\ndoor,597,713\n"),
        ("width=2,height=3", "kind,x,y\ndoor,597,713\n"),
        ("width=x one,height='y'", "kind,x one,y\ndoor,597,713\n"),
        ("width=B (cm),height=C (mm)", "kind,x,y\ndoor,59.7,713\n"),
        # What the header says is overruled.
        ("width=height,height=width", "kind,height,width\ndoor,597,713\n"),
        ("units=mm", "kind,width (in),height (in)\ndoor,597,713\n"),
        ("width=C,height=B", "kind,width,height\ndoor,713,597\n"),
        ("nothing=B", "kind,width,w,height\ndoor,900,597,713\n"),
        ("size=B,order=height-first", "kind,x\ndoor,713 x 597\n"),
        ("units=cm", "kind,w,h\ndoor,59.7,71.3\n"),
        ("unnamed=door", "w,h\n597,713\n"),
        ("thousands=point", "kind;w;h\ndoor;597,000;713,0\n"),
    ],
)
def test_a_column_is_where_it_is_said_to_be(tmp_path: Path, line: str, content: str) -> None:
    """By letter, number or heading, with a unit or without."""
    assert read_offer(tmp_path, line, content) == [pytest.approx([597, 713])]


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("width=Q", "width: no such column ('Q' given); the list's last column is C; a heading "),
        ("width=0", "width: no such column ('0' given)"),
        ("width=Breite", "width: no such column ('Breite' given); known: kind, w, h"),
        ("width=hh", "width: no such column ('hh' given)"),
    ],
)
def test_a_column_that_is_not_there(tmp_path: Path, line: str, words: str) -> None:
    """With how many there are, or what they are called."""
    with pytest.raises(ReadingError) as caught:
        read_offer(tmp_path, line, "kind,w,h\ndoor,597,713\n")
    assert any(words in str(fault) for fault in caught.value.faults)


def test_a_job_says_the_same(tmp_path: Path) -> None:
    """`[list]` as `write_list_table` writes it is read as what it was made of."""
    (tmp_path / "offer.csv").write_text(
        "cab;what;x;y\nB1;Klappe;140;597\n;door;570;597\n", encoding="utf-8"
    )
    line = "height=C,width=D,kind=B,kinds.Klappe=drawer,empty_box=above"
    job = tmp_path / "job.toml"
    job.write_text(JOB.format(list=write_list_table(parse_columns(line))), encoding="utf-8")
    read = read_job(job)
    [box] = read.boxes
    assert [(front.kind, front.width, front.height) for front in box.fronts] == [
        ("drawer", 597, 140), ("door", 597, 570),
    ]  # fmt: skip
    assert "C 'x' height (mm), D 'y' width (mm)" in read.list_told
    job.write_text(JOB.format(list=""), encoding="utf-8")
    with pytest.raises(ReadingError) as caught:
        read_job(job)
    [fault] = caught.value.faults
    assert 'say where its columns are: columns = { width = "C", height = "D" } in [list]' in str(
        fault
    )


def test_a_written_table_is_read_back(tmp_path: Path) -> None:
    """Every key, through TOML."""
    (tmp_path / "offer.csv").write_text("kind,w,h\ndoor,597,713\n", encoding="utf-8")
    job = tmp_path / "job.toml"
    wrong = '[list]\ncolumns = { widht = "C", nothing = [true] }\nkinds = { x = "flap" }\nodd = 1'
    job.write_text(JOB.format(list=wrong), encoding="utf-8")
    with pytest.raises(ReadingError) as caught:
        read_job(job)
    told = "\n".join(map(str, caught.value.faults))
    assert "job.toml:5: list.columns.widht: unknown key ('widht' given)" in told
    assert "job.toml:5: list.columns.nothing: not a column ([true] given); a letter" in told
    assert "job.toml:6: list.kinds.x: not known ('flap' given)" in told
    assert "job.toml:7: list.odd: unknown key ('odd' given)" in told
    assert write_list_table(ListSpec()) == ""
