"""What a list is asked about, and what is taken without: nothing wrong in silence."""

from pathlib import Path

import pytest
import xlsxwriter

from jigs.given.listspec import ListSpec
from jigs.ground.errors import ReadingError
from jigs.ground.lengths import Unit
from jigs.reading.frontlist import read_front_list
from jigs.reading.listgiven import parse_columns


def write(folder: Path, content: str) -> Path:
    """Write a list as text."""
    path = folder / "fronts.csv"
    path.write_text(content, encoding="utf-8")
    return path


def refuse(folder: Path, content: str, spec: ListSpec | None = None) -> list[str]:
    """Give the faults of a list that is not taken."""
    path = write(folder, content)
    with pytest.raises(ReadingError) as caught:
        read_front_list(path, listed=spec)
    return [str(fault).removeprefix(f"{folder}/") for fault in caught.value.faults]


@pytest.mark.parametrize(
    ("content", "words"),
    [
        # Width and height would be exchanged.
        ("kind,size\ndoor,713 x 597\n", "which of '713 x 597' (row 2) is the width?"),
        ("kind;Länge;Breite\nTür;713;597\n", "is a length a front's height"),
        ("kind,L,W\ndoor,713,597\n", "is a length a front's height"),
        # A column of money, or of anything else, is no size.
        ("kind,Price,height\ndoor,597,713\n", "no column 'width'"),
        ("kind;Gesamtbreite;Höhe\nTür;1200;713\n", "no column 'width'"),
        ("kind,Heigth,W\ndoor,713,597\n", "is it 'Heigth' (B)? --columns height=B"),
        # Weight is not the height.
        ("kind,W,Weight\ndoor,597,713\n", "no column 'height'"),
        # Inches, centimetres, thousands.
        ("kind,w,h\ndoor,23.5,28\n", "all sizes fit only another unit"),
        ("kind,w,h\ndoor,597,713\ndoor,59.7,71.3\n", "59.7 mm given, and 75 to 1300 mm is usual"),
        ("kind;w;h\ndoor;597;1.950\n", "does the point part thousands?"),
        # Two columns for one thing, one hidden in a strange word.
        ("kind,w,h,width\ndoor,597,713,600\n", "a second column for width"),
        ("kind;w;h;Ilość\ndoor;597;713;2\ndoor;447;713;1\n", "unknown column (D) of whole num"),
        # Words that are no front's, or two.
        ("kind,w,h\ndrawer box,500,120\n", "unknown kind ('drawer box' given)"),
        ("kind,w,h\nsliding door,500,1200\n", "unknown kind ('sliding door' given)"),
        ("kind;w;h\nPorte 2 vantaux;500;1200\n", "unknown kind ('Porte 2 vantaux' given)"),
        ("w,h\n500,1200\n", "no column 'kind'"),
        ("kind,w,h,qty,note\ndoor,500,700,3,1L + 1R\n", "2 hands for 3 doors"),
    ],
)  # fmt: skip
def test_nothing_wrong_is_taken_silently(tmp_path: Path, content: str, words: str) -> None:
    """What may be wrong is asked about, and the question stands alone."""
    faults = refuse(tmp_path, content)
    assert any(words in fault for fault in faults), faults


def test_what_is_understood_is_told_beside_what_is_not(tmp_path: Path) -> None:
    """The rows that are understood stay understood; the others are listed with their reason."""
    path = write(tmp_path, "kind,w,h\ndoor,597,713\ndoor,597,x\nporch,597,713\n")
    with pytest.raises(ReadingError) as caught:
        read_front_list(path)
    lines = caught.value.told.splitlines()
    assert lines[0] == (
        "Columns read (header: row 1): A 'kind' kind, B 'w' width (mm), C 'h' height (mm)."
    )
    assert "As read, row 2: door, 597.0 mm (23 1/2 in) wide, 713.0 mm" in lines[2]
    assert lines[-1] == "1 of 3 rows understood; 2 not, and to be answered:"
    assert [fault.where.rpartition("row ")[2] for fault in caught.value.faults] == [
        "3, column h", "4, column kind",
    ]  # fmt: skip


def test_until_a_pair_is_answered_its_width_is_no_fault(tmp_path: Path) -> None:
    """A false front over two leaves is twice as wide as one: right for a pair, wrong for a
    stack."""
    rows = "B1,false front,797,140,\nB1,door,396.9,571,L\nB1,door,396.9,571,R\n"
    path = write(tmp_path, f"box,kind,w,h,hand\n{rows}")
    with pytest.raises(ReadingError) as caught:
        read_front_list(path)
    assert len(caught.value.faults) == 1
    assert len(read_front_list(path, listed=parse_columns("both_hands=pair")).rows) == 2
    with pytest.raises(ReadingError, match="different widths in box B1"):
        read_front_list(path, listed=parse_columns("both_hands=stack"))


def test_a_pair_in_a_note(tmp_path: Path) -> None:
    """Without a box each hangs on its own; on one box it is asked how, in one row or in two."""
    for content in (
        "box,kind,w,h,qty,note\nB1,door,447,713,2,one left and one right\n",
        "box,kind,w,h,hand\nB1,door,447,713,L\nB1,door,447,713,R\n",
    ):
        path = write(tmp_path, content)
        with pytest.raises(ReadingError, match="side by side, or one above the other"):
            read_front_list(path)
        (row,) = read_front_list(path, listed=parse_columns("both_hands=pair")).rows
        assert (row.spec.kind, row.spec.hinged, row.count) == ("pair", None, 1)
        rows = read_front_list(path, listed=parse_columns("both_hands=stack")).rows
        assert [(row.spec.kind, row.spec.hinged) for row in rows] == [
            ("door", "left"), ("door", "right"),
        ]  # fmt: skip
    path = write(tmp_path, "id,kind,w,h,qty,note\nD1,door,447,713,3,1L 2R\n")
    rows = read_front_list(path).rows
    assert [(row.spec.id, row.spec.hinged, row.count) for row in rows] == [
        ("D1-L", "left", 1), ("D1-R", "right", 2),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("content", "words"),
    [
        ("B;H;D;Art\n597;713;22;Tür\n", "unknown column (C) of sizes (22): is it 'thickness'?"),
        ("Door/Drawer,w,h\nDoor,597,713\n", "unknown column (A) of kinds (Door): is it 'kind'?"),
        ("w,h,kind,Draairichting\n597,713,deur,links\n", "unknown column (D) of hands (links)"),
    ],
)
def test_a_column_that_looks_like_one(tmp_path: Path, content: str, words: str) -> None:
    """What its cells look like is asked, not taken."""
    assert words in refuse(tmp_path, content)[0]


def test_kinds_under_another_heading(tmp_path: Path) -> None:
    """Names that are kinds and nothing else are kinds; names that have a kind in them say it."""
    path = write(tmp_path, "Front,w,h\nDoor,597,713\nDrawer,597,140\nDoor,597,713\n")
    read = read_front_list(path)
    assert [(row.spec.id, row.spec.kind) for row in read.rows] == [
        ("", "door"), ("", "drawer"), ("", "door"),
    ]  # fmt: skip
    assert "A 'Front' kind" in read.told
    path = write(tmp_path, "Part,w,h\nDoor 1,597,713\nDrawer front 2,597,140\n")
    assert [(row.spec.id, row.spec.kind) for row in read_front_list(path).rows] == [
        ("DOOR-1", "door"), ("DRAWER-FRONT-2", "drawer"),
    ]  # fmt: skip


def test_what_both_leaves_measure(tmp_path: Path) -> None:
    """Across both leaves with their gap of 3.2: (900 - 3.2) / 2 each."""
    path = write(tmp_path, "kind;w;h\nDoppeltür;900;713\n")
    (row,) = read_front_list(path, listed=parse_columns("pairs=both-leaves"), between=3.2).rows
    assert row.spec.kind == "pair"
    assert row.spec.width == pytest.approx((900 - 3.2) / 2)


def test_empty_box_cells_are_never_filled_unasked(tmp_path: Path) -> None:
    """They hang on the box above, or on their own, as the person says."""
    path = write(tmp_path, "box,kind,w,h\nB1,drawer,597,140\n,door,597,570\n")
    for said, boxes in (("above", ["B1", "B1"]), ("own", ["B1", ""])):
        read = read_front_list(path, listed=parse_columns(f"empty_box={said}"))
        assert [row.box for row in read.rows] == boxes


def test_a_hand_that_is_open_stays_open(tmp_path: Path) -> None:
    """L/R says neither; a number of hinges is no hand."""
    path = write(tmp_path, "kind,w,h,hinge\ndoor,597,713,L/R\ndoor,597,713,R\n")
    assert [row.spec.hinged for row in read_front_list(path).rows] == [None, "right"]
    path = write(tmp_path, "kind,w,h,hinges\ndoor,597,713,2\ndoor,597,1900,4\n")
    assert [row.spec.hinged for row in read_front_list(path).rows] == [None, None]


def test_a_unit_that_is_no_box(tmp_path: Path) -> None:
    """`Unit` is a box in one list and what the count is of in another."""
    path = write(tmp_path, "kind,w,h,qty,unit\ndoor,597,713,1,pcs\ndrawer,597,140,2,pcs\n")
    assert [row.box for row in read_front_list(path).rows] == ["", ""]
    path = write(tmp_path, "kind,w,h,unit\ndoor,597,713,K1\n")
    assert [row.box for row in read_front_list(path).rows] == ["K1"]


def test_rows_that_are_no_fronts(tmp_path: Path) -> None:
    """Handles and delivery stand in an offer too; a word of theirs leaves them alone."""
    content = (
        "Bezeichnung;Breite;Höhe;Menge\nTür;597;713;2\nGriff Edelstahl;160;12;4\nVersand;;;1\n"
    )
    faults = refuse(tmp_path, content)
    assert any("unknown kind ('Griff Edelstahl' given)" in fault for fault in faults)
    spec = parse_columns("kinds.Griff=nothing")
    read = read_front_list(tmp_path / "fronts.csv", listed=spec)
    assert [(row.spec.kind, row.count) for row in read.rows] == [("door", 2)]
    assert "No fronts: row 3 'Griff Edelstahl', row 4 'Versand'." in read.told


def test_metres(tmp_path: Path) -> None:
    """A heading may say so; a point before three digits is a decimal's there."""
    path = write(tmp_path, "kind,width (m),height (m)\ndoor,0.597,0.713\n")
    (row,) = read_front_list(path).rows
    assert [row.spec.width, row.spec.height] == pytest.approx([597, 713])


@pytest.mark.parametrize(
    "cell", ["597 x 713", "W597 x H713", "H 713 x B 597", "H 713, W 597", "713 (H) × 597 (W)",
             "59,7x71,3 cm", "597*713*19", "Door 597x713"],
)  # fmt: skip
def test_sizes_in_one_cell(tmp_path: Path, cell: str) -> None:
    """What the cell says of itself goes before what was said of the list."""
    path = write(tmp_path, f"kind;size\ndoor;{cell}\n")
    (row,) = read_front_list(path, listed=parse_columns("order=width-first")).rows
    assert [row.spec.width, row.spec.height] == pytest.approx([597, 713])


def test_two_sheets_are_asked_about(tmp_path: Path) -> None:
    """Which of them is said by its name."""
    path = tmp_path / "fronts.xlsx"
    book = xlsxwriter.Workbook(path)
    for name, width in (("Old", 500), ("New", 597)):
        sheet = book.add_worksheet(name)
        sheet.write_row(0, 0, ["kind", "width", "height"])
        sheet.write_row(1, 0, ["door", width, 713])
    book.close()
    with pytest.raises(ReadingError, match="more than one sheet holds a front list"):
        read_front_list(path)
    read = read_front_list(path, listed=parse_columns("sheet=New"))
    assert read.rows[0].spec.width == 597
    with pytest.raises(ReadingError, match="no such sheet"):
        read_front_list(path, listed=parse_columns("sheet=Nwe"))


def merged_counts(folder: Path, first: int = 4) -> Path:
    """Write a workbook with one cell of counts for a door and the drawer above it."""
    path = folder / "fronts.xlsx"
    book = xlsxwriter.Workbook(path)
    sheet = book.add_worksheet()
    sheet.write_row(0, 0, ["box", "kind", "w", "h", "qty"])
    sheet.write_row(1, 0, ["B1", "drawer", 450, 140])
    sheet.write_row(2, 0, ["B1", "panel", 450, 570])
    sheet.merge_range(1, 4, 2, 4, first)
    book.close()
    return path


def test_a_merged_count_is_asked_about(tmp_path: Path) -> None:
    """Four of each, or four in all: twice as many fronts or not."""
    path = merged_counts(tmp_path)
    with pytest.raises(ReadingError, match=r"one merged cell.*--columns merged_count=each"):
        read_front_list(path)
    rows = read_front_list(path, listed=parse_columns("merged_count=each")).rows
    assert [row.count for row in rows] == [4, 4]


@pytest.mark.parametrize(
    ("size", "words"),
    [("2 x 450 x 720", "the last is no board ('2 x 450 x 720' given)"), ("450 x 720 x 19", "")],
)
def test_a_count_before_sizes(tmp_path: Path, size: str, words: str) -> None:
    """Of three sizes the last is a board's thickness, else the first is a count."""
    path = write(tmp_path, f"kind,size\ndoor,{size}\n")
    spec = ListSpec(order="width-first")
    if words:
        assert words in refuse(tmp_path, path.read_text(), spec)[0]
    else:
        assert read_front_list(path, listed=spec).rows[0].spec.thickness == 19


def test_sizes_out_of_descriptions(tmp_path: Path) -> None:
    """A list of positions, descriptions and counts alone is one; two groups of sizes are none."""
    spec = ListSpec(order="width-first")
    head = "item,description,qty\n"
    path = write(tmp_path, f"{head}1,Drawer front 597 x 140,2\n,Doors,\n2,Door 447x713 white,1\n")
    rows = read_front_list(path, listed=spec).rows
    assert [(r.spec.kind, r.spec.width, r.count) for r in rows] == [
        ("drawer", 597, 2), ("door", 447, 1),
    ]  # fmt: skip
    content = f"{head}1,Drawer 597x140,1\n2,Door 597x713 (box 600x720),2\n"
    assert any("no two sizes" in fault for fault in refuse(tmp_path, content, spec))


@pytest.mark.parametrize(
    ("head", "units", "row", "unit"),
    [
        ("w,h", None, '"17 7/8""","30"""', "in"),
        ("w,h", None, "17 7/8 In,30 inches", "in"),
        ("w,h", "mm", '"17 7/8""","30"""', "mm"),
        ("w (mm),h", None, '"17 7/8""","30"""', "mm"),
        ("w,h", None, '"17 7/8""",762', "mm"),
        ("w,h", None, "45.4 cm,76.2 cm", "mm"),
    ],
)
def test_the_unit_of_a_list_of_signs(
    tmp_path: Path, head: str, units: Unit | None, row: str, unit: Unit
) -> None:
    """Where all sizes say that they are in inches, the job is, if nobody says otherwise."""
    path = write(tmp_path, f"kind,{head}\npanel,{row}\n")
    assert read_front_list(path, units).unit == unit


def test_three_decimals_are_taken_where_they_are_usual_of_that_kind(tmp_path: Path) -> None:
    """A drawer of 60 1/8 in is; a door would be too wide, and 60,125 of anything is no front."""
    head = "kind,w (in),h (in)\n"
    path = write(tmp_path, f"{head}drawer,60.125,12\n")
    assert read_front_list(path).rows[0].spec.width == pytest.approx(60.125 * 25.4)
    assert "does the point part thousands?" in refuse(tmp_path, f"{head}door,60.125,12\n")[0]
