"""Front lists: what is read from a row, and every fault that a list can have."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.given.job import FRONT_KINDS
from jigs.given.listspec import clear_width
from jigs.ground.errors import ReadingError
from jigs.ground.lengths import Unit
from jigs.reading.frontlist import FrontList, read_front_list
from tests.anytext import ANY

INCH = 25.4  # NIST SP 811, Appendix B


def read(folder: Path, text: str, units: Unit | None = None, *, bare: bool = True) -> FrontList:
    """Write a list and read it."""
    path = folder / "fronts.csv"
    path.write_text(text, encoding="utf-8")
    return read_front_list(path, units, bare=bare)


def refuse(folder: Path, text: str, units: Unit | None = None, *, bare: bool = True) -> list[str]:
    """Give the faults of a list that is refused, without the folder's name."""
    with pytest.raises(ReadingError) as caught:
        read(folder, text, units, bare=bare)
    return [str(fault).removeprefix(f"{folder}/") for fault in caught.value.faults]


def test_a_row_is_read_whole(tmp_path: Path) -> None:
    """Every column finds its place in the front."""
    front_list = read(
        tmp_path,
        "id,box,kind,width,height,count,hinged,thickness,stile,pull,finish,note\n"
        "d1,b1,Drawer,454,713,2,,22,57,bar,white,left of the range\n",
    )
    (row,) = front_list.rows
    assert (row.spec.id, row.box, row.count, row.spec.kind) == ("D1", "B1", 2, "drawer")
    assert (row.spec.width, row.spec.height) == (454.0, 713.0)
    assert (row.spec.thickness, row.spec.five_piece.stile) == (22.0, 57.0)
    assert row.spec.opened_by.pull == "bar"
    assert (row.spec.words.finish, row.spec.words.note) == ("white", "left of the range")
    assert row.where.endswith("fronts.csv: row 2")


def test_how_a_front_is_made(tmp_path: Path) -> None:
    """Frame, edges and boring; columns for the supplier's eyes
    are left alone."""
    (row, other) = read(
        tmp_path,
        "kind,width,height,hinged,stile,rail,groove,panel,glass,edge radius (mm),profile,bored,"
        "hinges at,bored tab,place,pieces to make,grain,state,description\n"
        'door,454,713,left,57,60,0,6,Yes,1/8 in,Finger-bevel,yes,"613; 100 ;358",5,B1,1,,,x\n'
        "door,454,713,left,57,,9.5,,no,,,no,,,,,,,\n",
    ).rows
    spec = row.spec
    assert (
        spec.five_piece.stile,
        spec.five_piece.rail,
        spec.five_piece.groove,
        spec.five_piece.panel,
        spec.five_piece.glass,
    ) == (57, 60, 0, 6, True)
    assert spec.edges.edge_radius == pytest.approx(INCH / 8)
    assert spec.edges.profile == "finger-bevel"
    assert (spec.boring.bored, spec.hung.hinges_at, spec.boring.bored_tab) == (
        True,
        (100.0, 358.0, 613.0),
        5.0,
    )
    spec = other.spec
    assert (
        spec.five_piece.rail,
        spec.five_piece.groove,
        spec.five_piece.glass,
        spec.boring.bored,
    ) == (
        None,
        9.5,
        False,
        False,
    )
    assert (spec.hung.hinges_at, spec.edges.edge_radius, spec.edges.profile) == (None, None, None)


@pytest.mark.parametrize(
    ("column", "cell", "words"),
    [
        ("rail", "60", "stands without stile"),
        ("panel", "6", "stands without stile"),
        ("groove", "0", "stands without stile"),
        ("glass", "maybe", "not yes or no ('maybe' given); allowed: yes, no"),
        ("bored", "=1", "not yes or no ('=1' given)"),
        ("bored tab", "5", "stands without bored"),
        ("profile", "ogee", "unknown profile ('ogee' given); allowed: finger-bevel"),
        ("hinges at", "100; 100", "a height stands twice ('100; 100' given)"),
        ("hinges at", "100; low", "not a length ('low' given)"),
        ("edge radius", "-3", "-3"),
        ("borde", "no", "unknown column ('borde' given); did you mean 'bored'?"),
    ],
)
def test_how_a_front_cannot_be_made(tmp_path: Path, column: str, cell: str, words: str) -> None:
    """Each with its row and column."""
    (fault,) = refuse(tmp_path, f"kind,width,height,hinged,{column}\ndoor,454,713,left,{cell}\n")
    assert words in fault
    row = 1 if words.startswith("unknown column") else 2
    assert fault.startswith(f"fronts.csv: row {row}, column {column}: ")


def test_what_is_not_given_stays_open(tmp_path: Path) -> None:
    """Blank cells and absent columns are None, or one front."""
    (row,) = read(tmp_path, "kind,width,height,hinged,count\ndoor,454,713\n").rows
    assert (row.spec.id, row.box, row.count) == ("", "", 1)
    assert (row.spec.hinged, row.spec.thickness, row.spec.opened_by.pull) == (None, None, None)


@pytest.mark.parametrize("text", ["left", "L", "lh", "Left", "LH"])
def test_hands_to_the_left(tmp_path: Path, text: str) -> None:
    """The usual ways of writing a hand are known."""
    (row,) = read(tmp_path, f"kind,w,h,hand\ndoor,454,713,{text}\n").rows
    assert row.spec.hinged == "left"


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        *((kind, kind) for kind in FRONT_KINDS),
        ("False Front", "false-front"),
        ("false_front", "false-front"),
        ("pull-out", "pullout"),
        ("DRAWER", "drawer"),
    ],
)
def test_kinds(tmp_path: Path, text: str, kind: str) -> None:
    """Kinds are matched without case, spaces or hyphens."""
    (row,) = read(tmp_path, f"kind,w,h\n{text},454,713\n").rows
    assert row.spec.kind == kind


@pytest.mark.parametrize(
    ("header", "units", "cell", "mm", "unit"),
    [
        ("width,height", None, "454", 454.0, "mm"),
        ("width,height", "in", "17 7/8", 17.875 * INCH, "in"),
        ("width (in),height (in)", None, "17 7/8", 17.875 * INCH, "in"),
        ("width (in),height", None, "17 7/8", 17.875 * INCH, "in"),
        ("width (cm),height (cm)", None, "45.4", 454.0, "mm"),
        ("Width [cm],height cm", None, "45.4", 454.0, "mm"),
        ("width (in),height (in)", "mm", "454", 454.0, "mm"),
        ("width,height", None, "17 7/8 in", 17.875 * INCH, "in"),
        ('width ("),height (")', None, '17 7/8"', 17.875 * INCH, "in"),
    ],
)
def test_the_unit_of_bare_numbers(
    tmp_path: Path, header: str, units: Unit | None, cell: str, mm: float, unit: Unit
) -> None:
    """The units asked for rule, then the header's, then that of all cells, then mm."""
    front_list = read(tmp_path, f"kind;{header.replace(',', ';')}\ndoor;{cell};{cell}\n", units)
    assert front_list.unit == unit
    assert front_list.rows[0].spec.width == pytest.approx(mm)
    assert front_list.rows[0].spec.height == pytest.approx(mm)


def test_a_column_may_differ_from_the_list(tmp_path: Path) -> None:
    """Thickness in mm beside sizes in inches is common in shops."""
    text = "kind,width (in),height (in),thickness (mm)\ndoor,17 7/8,28,19\n"
    assert read(tmp_path, text).rows[0].spec.thickness == 19.0


def test_decimal_commas_titles_and_blank_lines(tmp_path: Path) -> None:
    """A list as a spreadsheet saves it on the Continent, with a title, is read."""
    text = "Küche\n\nid;kind;width;height\nF1;door;396,9;714,4\n\nF2;door;396,9;714,4\n"
    rows = read(tmp_path, text).rows
    assert [row.where.rpartition(" ")[2] for row in rows] == ["4", "6"]
    assert rows[0].spec.width == 396.9


def test_a_repeated_header_is_no_front(tmp_path: Path) -> None:
    """A header printed again on each page is passed over."""
    assert len(read(tmp_path, "kind,w,h\ndoor,454,713\nkind,w,h\ndoor,454,713\n").rows) == 2


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("kind,w,h\ndoor,454,seven\n", "row 2, column h: not a length ('seven' given)"),
        ("kind,w,h\ndoor,454,0\n", "row 2, column h: a size must be over 0 ('0' given)"),
        ("kind,w,h\ndoor,-454,713\n", "row 2, column w: a size cannot be negative ('-454' given)"),
        ("kind,w,h\ndoor,454,20000\n", "row 2, column h: longer than 10 m ('20000' given)"),
        (
            'kind;w;h\ndoor;454;"1,234"\n',
            "row 1: '1,234' (row 2): does the comma part thousand",
        ),
        ("kind,w,h\ndoor,,713\n", "row 2, column w: missing"),
        ("kind,w,h\ndoor,454,\n", "row 2, column h: missing"),
        ("kind,w,h\n,454,713\n", "row 2, column kind: missing; allowed: door, pair"),
        ("kind,w,h\ndoar,454,713\n", "row 2, column kind: unknown kind ('doar' given); did you m"),
        ("kind,w,h\nporthole,454,713\n", "unknown kind ('porthole' given); known: door, pair"),
        ("kind,w,h,hand\ndoor,454,713,up\n", "row 2, column hand: not a hand ('up' given); allow"),
        ("kind,w,h,qty\ndoor,454,713,0\n", "row 2, column qty: not a count ('0' given); allowed"),
        ("kind,w,h,qty\ndoor,454,713,two\n", "not a count ('two' given); allowed: 1 to 100"),
        ("kind,w,h,qty\ndoor,454,713,101\n", "not a count ('101' given); allowed: 1 to 100"),
        ("kind,w,h,qty\ndoor,454,713,1.5\n", "not a count ('1.5' given)"),
        ("id,kind,w,h\n北,door,454,713\n", "row 2, column id: not an ID ('北' given): its char"),
        ("kind,w,h,t\ndoor,454,713,x\n", "row 2, column t: not a length ('x' given)"),
        ("kind,w,h,quanity\ndoor,454,713,1\n", "did you mean 'count'? --columns count=D, or"),
        ("kind,w,heigth\ndoor,454,713\n", "no column 'height'; a list without a job file gives"),
        ("kind,w,h,width\ndoor,454,713,1\n", "row 1, column width: a second column for width"),
        ("w,h\n454,713\n", "row 1: no column 'kind'; allowed: door, pair"),
        ("kind,h\ndoor,713\n", "row 1: no column 'width'"),
        ("kind,w\ndoor,454\n", "row 1: no column 'height'"),
        ("kind,w,h\n", "row 1: a list without rows"),
        ("a,b\n1,2\n", "fronts.csv: no header row found"),
        ("kind,w,h\ndoor,454,713,5,9\n", "row 2, column 4: a cell without a heading ('5' given)"),
        ("kind,w,h\ndoor,17.9,28\n", "row 1: all sizes fit only another unit (17.9 mm given first"),
        ("id,kind,w,h\nA,door,454,713\na,door,454,713\n", "row 3: duplicate ID ('A', first at "),
        ("id,kind,w,h\nA,pair,454,713\nAL,door,454,713\n", "row 3: duplicate ID ('AL'"),
        (
            "id,kind,w,h,qty\nA,door,454,713,2\nA-2,door,454,713,1\n",
            "row 3: duplicate ID ('A-2'",
        ),
        (
            "box,kind,w,h\nB1,drawer,454,140\nB1,door,400,570\n",
            "row 3: different widths in box B1 (400.0 mm",
        ),
    ],
)
def test_each_fault_names_its_place_and_value(tmp_path: Path, text: str, wanted: str) -> None:
    """A fault says where it is, what was given and what is allowed."""
    faults = refuse(tmp_path, text)
    assert len(faults) == 1
    assert faults[0].startswith("fronts.csv: ")
    assert wanted in faults[0]


def test_all_faults_are_reported_at_once(tmp_path: Path) -> None:
    """A list is refused once, with everything that is wrong in it."""
    faults = refuse(
        tmp_path,
        "id,box,kind,w,h,colr\n"
        "A,B1,door,454,x,red\n"
        "B,B1,porch,y,713\n"
        "C,B2,drawer,454,140\n"
        "C,B2,drawer,300,140,,9\n",
    )
    assert len(faults) == 7
    assert sum("row 3" in fault for fault in faults) == 2
    assert sum(": row 5" in fault.split(" (")[0] for fault in faults) == 3


def test_sizes_under_100_with_their_own_unit_are_meant(tmp_path: Path) -> None:
    """Only bare numbers raise the question of inches."""
    (row,) = read(tmp_path, "kind,w,h\npanel,90 mm,80 mm\n").rows
    assert row.spec.width == 90.0
    (fault,) = refuse(tmp_path, "kind,w,h\npanel,90,80\n", "mm")
    assert "cm or in? Say so in the header with 'width (cm)' or 'width (in)'" in str(fault)


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        # Under (in) the sizes are millimetres: the whole list's fault, said once.
        (
            "kind,width (in),height (in)\ndoor,454,613\ndrawer,454,152\ndrawer,454,95\n",
            ["row 1: all sizes fit only another unit (454 in given first, and 75 to 1300 mm is "
             "usual): mm? Say so in the header with 'width (mm)'"],
        ),
        # One row in cm, one in inches, among rows in mm.
        (
            "kind,width,height\ndoor,454,613\ndoor,45.4,61.3\ndrawer,17 7/8,6\n",
            ["row 3, column width: 45.4 mm given, and 75 to 1300 mm is usual; 45.4 cm or 45.4 in?",
             "row 3, column height: 61.3 mm given, and 120 to 2700 mm is usual; 61.3 cm or 61.3 in",
             "row 4, column width: 17 7/8 mm given, and 120 to 1600 mm is usual; 17 7/8 cm or 17 ",
             "row 4, column height: 6 mm given, and 50 to 900 mm is usual; 6 cm or 6 in? write"],
        ),
        # Neither size alone tells: no front measures 60 x 72 mm.
        (
            "kind,width,height\npanel,600,720\npanel,60,72\n",
            ["row 3, column width: 60 mm given, and 100 to 1700 mm is usual; 60 cm or 60 in? wri"],
        ),
        # A row in mm among rows in inches.
        (
            "kind,width (in),height (in)\ndoor,17 7/8,24\ndoor,454,613\n",
            ["row 3, column width (in): 454 in is 11531.6 mm, and 75 to 1300 mm is usual; 454",
             "row 3, column height (in): 613 in is 15570.2 mm, and 120 to 2700 mm is usual; 613"],
        ),
        # A column of its own in another unit, once.
        (
            "kind,width (in),height (in),thickness (in)\ndoor,17 7/8,24,19\ndoor,17 7/8,24,19\n",
            ["row 1: all of column thickness (in) fits only another unit (19 in given first, and "],
        ),
    ],
)  # fmt: skip
def test_rows_in_another_unit(tmp_path: Path, text: str, faults: list[str]) -> None:
    """Where a size would be right in another unit alone, its row is at fault."""
    told = refuse(tmp_path, text)
    assert len(told) == len(faults), told
    for fault, words in zip(told, faults, strict=True):
        assert words in fault


def test_a_size_with_its_unit_is_only_unusual(tmp_path: Path) -> None:
    """A door 60 mm wide is doubted at its row's front; so are forty alike."""
    text = "kind,width,height,count\ndoor,454,613,\ndoor,60 mm,613,\ndoor,454,613,40\n"
    rows = read(tmp_path, text).rows
    assert [[(d.path, d.value) for d in row.spec.row.doubts] for row in rows] == [
        [], [(("width",), 60.0)], [(("count",), 40)],
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("x" * 201, "not one short line"),
        ("up\u202enwod", r"not one short line ('up\u202enwod' given)"),
        ("ring\x7f", r"not one short line ('ring\x7f' given)"),
    ],
)
@pytest.mark.parametrize("column", ["note", "finish", "pull"])
def test_texts_are_one_short_line(tmp_path: Path, text: str, what: str, column: str) -> None:
    """As in a job file: 200 characters, none that a terminal would obey."""
    (fault,) = refuse(tmp_path, f"kind,width,height,{column}\ndoor,454,613,{text}\n")
    assert fault.startswith(f"fronts.csv: row 2, column {column}: {what}")


def test_a_break_in_a_text_is_a_space(tmp_path: Path) -> None:
    """Spreadsheets have cells of several lines."""
    (row,) = read(tmp_path, 'kind,width,height,note\ndoor,454,613,"left of\nthe range"\n').rows
    assert row.spec.words.note == "left of the range"


def test_exchanged_sizes_of_a_row_are_asked_about(tmp_path: Path) -> None:
    """Its height is the width of its box."""
    text = "box,kind,w,h\nB1,drawer,454,600\nB1,drawer,140,454\nB1,drawer,440,140\n"
    first, second = refuse(tmp_path, text)
    assert "row 3: width and height exchanged? different widths in box B1" in first
    assert "row 4: different widths in box B1" in second


def test_a_pair_gives_the_width_of_one_leaf(tmp_path: Path) -> None:
    """A drawer over a pair spans both leaves and their gap."""
    text = f"box,kind,w,h\nB1,drawer,{2 * 454 + 3.2},140\nB1,pair,454,570\n"
    rows = read(tmp_path, text).rows
    assert clear_width(rows[1].spec, 3.2) == pytest.approx(clear_width(rows[0].spec, 3.2))
    (fault,) = refuse(tmp_path, "box,kind,w,h\nB1,drawer,454,140\nB1,pair,454,570\n")
    assert "a pair's row gives the width of one leaf" in fault


def test_leaves_rounded_to_the_supplier_s_increment_agree(tmp_path: Path) -> None:
    """Leaves ordered a sixteenth short still belong under their drawer."""
    assert read(tmp_path, "box,kind,w,h\nB1,drawer,911.2,140\nB1,pair,452.5,570\n").rows


def test_an_opening_needs_no_width(tmp_path: Path) -> None:
    """A height without a front takes the width of its box."""
    text = "box,kind,w,h\nB1,opening,,600\nB1,drawer,596,140\n"
    assert read(tmp_path, text).rows[0].spec.width is None


def test_a_list_beside_a_job_may_leave_sizes_open(tmp_path: Path) -> None:
    """With a job file's boxes sizes may be computed, but each row names its box."""
    (row,) = read(tmp_path, "box,kind,height\nB1,door,\n", bare=False).rows
    assert row.spec.width is row.spec.height is None
    assert "no column 'box'" in refuse(tmp_path, "id,kind\nA,door\n", bare=False)[0]
    assert "row 2, column box: missing" in refuse(tmp_path, "box,kind\n,door\n", bare=False)[0]


cells = st.text(ANY, max_size=12) | st.sampled_from(["door", "454", "B1", "2"])
any_rows = st.lists(st.lists(cells, max_size=8), max_size=4)


@settings(max_examples=30)
@given(any_rows)
def test_no_cells_raise_anything_else(tmp_path: Path, rows: list[list[str]]) -> None:
    """Whatever stands below a header is a list or a ReadingError."""
    check_cells(tmp_path, rows)


@pytest.mark.slow
@settings(max_examples=60)
@given(any_rows)
def test_none_of_many_cells_raise_anything_else(tmp_path: Path, rows: list[list[str]]) -> None:
    """The same, at length."""
    check_cells(tmp_path, rows)


def check_cells(folder: Path, rows: list[list[str]]) -> None:
    """Read cells below a header."""
    path = folder / "fronts.csv"
    lines = ["id;kind;w;h;qty;hand;box", *(";".join(row) for row in rows)]
    path.write_bytes("\n".join(lines).encode("utf-8", "surrogatepass"))
    try:
        front_list = read_front_list(path)
    except ReadingError:
        return
    assert front_list.rows
