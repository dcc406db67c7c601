"""Label stocks in a job: what is read, and each thing that cannot be right."""

from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.given.job import Job
from jigs.given.labelstock import LEAST_LABEL, Stock, faults_of_stock
from jigs.ground.errors import ReadingError
from jigs.ground.sheetsizes import SHEET_SIZES
from jigs.reading.jobfile import read_job_file
from tests.cli.conftest import SMALL

OWN = """
[stock.mine]
sheet = "letter"
label_width = "2 5/8"
label_height = "1"
columns = 3
rows = 10
pitch_x = "2 3/4"
left = "3/16"
top = "1/2"
"""
ROLL = """
[stock.tape]
roll = true
label_width = "54 mm"
label_height = "30 mm"
dots = 203
"""


def read(tmp_path: Path, more: str) -> Job:
    path = tmp_path / "job.toml"
    path.write_text(SMALL + more, encoding="utf-8")
    return read_job_file(path)


def test_a_sheet_of_ones_own(tmp_path: Path) -> None:
    """Lengths in the job's unit; a pitch that is not stated is the label's size."""
    stock = read(tmp_path, OWN).stocks["mine"]
    assert stock.own
    assert stock.places == 3 * 10
    assert (stock.width, stock.pitch_x, stock.pitch_y) == pytest.approx(
        (2.625 * 25.4, 2.75 * 25.4, 25.4)
    )
    x, y = stock.corner(5)  # second row, second column
    assert (x, y) == pytest.approx(((3 / 16 + 2.75) * 25.4, (11 - 0.5 - 2) * 25.4))


def test_a_page_of_ones_own(tmp_path: Path) -> None:
    """By its width and height, where it has no name."""
    text = OWN.replace('sheet = "letter"', 'page_width = "220 mm"\npage_height = "300 mm"')
    sheet = read(tmp_path, text).stocks["mine"].sheet
    assert (sheet.width, sheet.height) == (220.0, 300.0)


def test_a_roll_of_ones_own(tmp_path: Path) -> None:
    """The page is the label."""
    stock = read(tmp_path, ROLL).stocks["tape"]
    assert (stock.sheet.width, stock.sheet.height, stock.places) == (54.0, 30.0, 1)
    assert stock.dots == 203
    assert stock.corner(1) == (0.0, 0.0)


def test_a_tag_for_another_bore(tmp_path: Path) -> None:
    """A bore of 40 takes a square of 27: 38.2 from corner to corner."""
    text = """
[stock.big-tag]
sheet = "common"
bore = "40 mm"
label_width = "27 mm"
label_height = "27 mm"
columns = 6
rows = 8
pitch_x = "30 mm"
pitch_y = "30 mm"
left = "5 mm"
top = "16 mm"
"""
    assert read(tmp_path, text).stocks["big-tag"].bore == 40.0


@pytest.mark.parametrize(
    ("before", "after", "line", "words"),
    [
        ('pitch_x = "2 3/4"', 'pitch_x = "2 1/2"', 9, "the labels overlap: 63.5 mm from one"),
        ("columns = 3", "columns = 4", 7, "the last column leaves the page: it ends at 281.0 mm"),
        ("rows = 10", "rows = 11", 8, "the last row leaves the page: it ends at 292.1 mm"),
        ('label_height = "1"', 'label_height = "1/2"', 6, "too small (66.67 x 12.7 mm given)"),
        ('label_width = "2 5/8"', 'label_width = "1"', 5, "too small (25.4 x 25.4 mm given)"),
        ('left = "3/16"\n', "", 3, "left is missing"),
        ("rows = 10\n", "", 3, "rows is missing"),
        ('sheet = "letter"\n', "", 3, "its page is missing; write sheet (a4, a3, letter"),
        ('sheet = "letter"', 'sheet = "leter"', 4, "did you mean 'letter'"),
        ('sheet = "letter"', 'page_width = "8 1/2"', 3, "page_height is missing"),
        ('sheet = "letter"', 'sheet = "letter"\npage_width = "9"', 5, "names the page already"),
        ('top = "1/2"', 'top = "1/2"\ndots = 150', 12, "203, 300, 600 per inch are allowed"),
        ('top = "1/2"', 'top = "1/2"\ndots = "203"', 12, "not the dots of a printer ('203' given)"),
        ('top = "1/2"', 'top = "1/2"\nround = true', 12, "only a tag is round"),
        ('top = "1/2"', 'top = "1/2"\nmargin = "1/4"', 12, "too wide (6.4 mm given); up to 5 mm"),
        ('top = "1/2"', 'top = "1/2"\nheight = "1"', 12, "unknown key ('height' given)"),
        ("[stock.mine]", "[stock.MINE]", 3, "not a stock's name ('MINE' given)"),
        ("columns = 3", "columns = 0", 7, "not a whole number from 1 to 100"),
    ],
)
def test_a_fault_is_told_at_its_line(
    before: str, after: str, line: int, words: str, tmp_path: Path
) -> None:
    """Each with the line of its key, or of its table where the key is missing."""
    assert before in OWN
    with pytest.raises(ReadingError) as raised:
        read(tmp_path, OWN.replace(before, after))
    at = SMALL.count("\n") + line - 1
    assert any(
        str(fault).startswith(f"{tmp_path / 'job.toml'}:{at}: stock.") and words in str(fault)
        for fault in raised.value.faults
    ), str(raised.value)


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ("columns = 2", "a roll has one label a page"),
        ('pitch_x = "54 mm"', "a roll has one label a page"),
        ('sheet = "a4"', "a roll has one label a page"),
        ('bore = "35 mm"', "tags are cut out of sheets"),
    ],
)
def test_what_a_roll_has_no_use_for(more: str, words: str, tmp_path: Path) -> None:
    """Keys of a sheet on a roll would be without effect: they are refused."""
    with pytest.raises(ReadingError, match=words):
        read(tmp_path, f"{ROLL}{more}\n")


def test_a_tag_that_does_not_go_into_its_bore(tmp_path: Path) -> None:
    """A square of 25 is 35.4 from corner to corner; a round one of 34.5 has no play."""
    text = """
[stock.tag]
sheet = "common"
bore = "35 mm"
label_width = "25 mm"
label_height = "25 mm"
columns = 1
rows = 1
left = "5 mm"
top = "5 mm"
"""
    with pytest.raises(ReadingError, match=r"35\.4 mm from corner to corner; a bore of 35\.0 mm"):
        read(tmp_path, text)
    with pytest.raises(ReadingError, match=r"34\.8 mm across"):
        read(tmp_path, text.replace('"25 mm"', '"34.8 mm"') + "round = true\n")
    with pytest.raises(ReadingError, match="want 23 mm on a square tag"):
        read(tmp_path, text.replace('"25 mm"', '"20 mm"'))
    with pytest.raises(ReadingError, match="as high as wide"):
        read(tmp_path, text.replace('height = "25 mm"', 'height = "23 mm"'))


def test_all_faults_of_a_job_are_told_at_once(tmp_path: Path) -> None:
    """Two stocks at fault, and a front."""
    with pytest.raises(ReadingError) as raised:
        read(tmp_path, OWN.replace("columns = 3", "columns = 4") + ROLL + "rows = 3\n")
    assert len(raised.value.faults) == 2


@given(
    st.integers(1, 6),
    st.integers(1, 14),
    st.tuples(st.floats(40, 120), st.floats(20, 60)),
    st.tuples(st.floats(35, 130), st.floats(18, 65)),
    st.tuples(st.floats(0, 30), st.floats(0, 40)),
)
@settings(max_examples=100)
def test_whatever_has_no_fault_lies_on_its_sheet_apart(
    columns: int,
    rows: int,
    size: tuple[float, float],
    pitch: tuple[float, float],
    corner: tuple[float, float],
) -> None:
    """And what leaves the sheet, or overlaps, has a fault."""
    stock = Stock(
        name="any", sheet=SHEET_SIZES["a4"], columns=columns, rows=rows,
        width=size[0], height=size[1],
        pitch_x=pitch[0], pitch_y=pitch[1], left=corner[0], top=corner[1], margin=0.0,
    )  # fmt: skip
    places = [stock.corner(place) for place in range(1, stock.places + 1)]
    within = all(
        x >= 0 and y >= -1e-6 and x + size[0] <= 210 + 1e-6 and y + size[1] <= 297 + 1e-6
        for x, y in places
    )
    apart = all(
        abs(ax - bx) >= size[0] - 1e-6 or abs(ay - by) >= size[1] - 1e-6
        for (ax, ay), (bx, by) in combinations(places, 2)
    )
    large = any(size[0] >= wide and size[1] >= high for wide, high in LEAST_LABEL)
    assert (faults_of_stock(stock) == ()) == (within and apart and large)
