"""The delivered list: its columns, sizes in two places, and its faults told at once."""

from pathlib import Path

import pytest
import xlsxwriter
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.given.measured import DeliveredList
from jigs.ground.lengths import Unit
from jigs.order.naming import with_ids
from jigs.reading.deliveredlist import SYNONYMS, read_delivered


def read(tmp_path: Path, text: str | bytes, unit: Unit = "mm") -> DeliveredList:
    """Read a list of this text."""
    path = tmp_path / "delivered.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_delivered(path, unit)


def faults(tmp_path: Path, text: str) -> list[str]:
    """Give the faults of a list, without its folder."""
    named = with_ids(read(tmp_path, text), ("B1-1", "B1-2"))
    return [str(f).replace(f"{tmp_path}/", "") for f in named.faults]


def test_a_measured_list_is_read(tmp_path: Path) -> None:
    """Every column; an ID in small letters; the row as it is told."""
    text = (
        "Front ID,Width top,Width bottom,H,Height right,D1,D2,T,Qty,Remarks\n"
        "b1-2,454,454.5,613,613.4,762.8,763.2,19.1,2,scratched\n"
    )
    piece = read(tmp_path, text).pieces[0]
    assert (piece.id, piece.row, piece.count, piece.note) == ("B1-2", "row 2", 2, "scratched")
    assert (piece.width, piece.height) == ((454.0, 454.5), (613.0, 613.4))
    assert (piece.across, piece.up) == ((454.0, 454.5), (613.0, 613.4))
    assert (piece.diagonals, piece.thickness) == ((762.8, 763.2), 19.1)


def test_two_sizes_may_stand_in_one_cell(tmp_path: Path) -> None:
    """`17 7/8; 17 29/32`: 17.875 and 17.90625 inches; a size taken once holds in both places."""
    text = "id,width,height,diagonals\nB1-1,17 7/8; 17 29/32,6,479 mm; 480 mm\n"
    piece = read(tmp_path, text, "in").pieces[0]
    assert piece.across == pytest.approx((17.875 * 25.4, 17.90625 * 25.4))
    assert piece.up == (152.4, 152.4)
    assert piece.diagonals == (479.0, 480.0)


def test_a_list_may_only_tick_what_came(tmp_path: Path) -> None:
    """IDs without sizes have arrived, unmeasured."""
    pieces = read(tmp_path, "id,note\nB1-1,\nB1-2,box dented\n").pieces
    assert [piece.is_measured for piece in pieces] == [False, False]


def test_the_header_names_the_unit(tmp_path: Path) -> None:
    """`width (in)` overrules the job's unit; other columns of an order may stay."""
    text = "ID;Kind;Width (in);Height (in);Finish\nB1-1;drawer;17,25;6;white\n"
    piece = read(tmp_path, text).pieces[0]
    assert piece.width == pytest.approx((17.25 * 25.4,))


def test_a_packing_list_in_the_supplier_s_words(tmp_path: Path) -> None:
    """Headings of front lists serve here too; prices and positions are left alone."""
    text = (
        "Pos;Kennung;Breite (mm);Höhe (mm);Stk.;E-Preis;Bemerkung\n"
        "1;B1-1;454,0;152,4;1 Stk;9;Riss\n"
    )
    piece = read(tmp_path, text).pieces[0]
    assert (piece.id, piece.width, piece.height, piece.count, piece.note) == (
        "B1-1", (454.0,), (152.4,), 1, "Riss",
    )  # fmt: skip


def test_all_faults_are_told_at_once(tmp_path: Path) -> None:
    """Each with its row and column, the value and what is allowed."""
    text = (
        "id,width,width 2,hieght,diagonal 1,count\n"
        "B1-1,wide,,,,\n"
        "B1-2,454; 455; 456,,,,\n"
        "B1-3,454; 455,456,,,\n"
        "B1-4,,455,,,\n"
        "B1-5,454,,,700,0\n"
        "B1-1,454,,,,\n"
        ",454,,,,\n"
    )
    found = faults(tmp_path, text)
    starts = [
        "delivered.csv: row 1, column hieght: unknown column",
        "delivered.csv: row 2, column width: not a length ('wide' given)",
        "delivered.csv: row 3, column width: more than two sizes ('454; 455; 456' given)",
        "delivered.csv: row 4, column width: more than two sizes ('454; 455' given)",
        "delivered.csv: row 5, column width: missing; width 2 ('455' given) stands without it",
        "delivered.csv: row 6, column diagonal 1: one diagonal alone ('700' given)",
        "delivered.csv: row 6, column count: not a count ('0' given)",
        "delivered.csv: row 8, column height: missing; a row without an ID gives width and height",
        "delivered.csv: row 7: duplicate ID ('B1-1', first at delivered.csv: row 2)",
    ]
    assert len(found) == len(starts), found
    for said, start in zip(found, starts, strict=True):
        assert said.startswith(start)
    assert "did you mean 'height'?" in found[0]


def test_columns_of_words_and_sums_are_left_alone(tmp_path: Path) -> None:
    """They are named, and no piece is made of them."""
    text = "id,width,height,Packer\nB1-1,454,612.8,Ada\nTotal,,,\n,454,140,Bo\n,Total,,,\n"
    said = read(tmp_path, text)
    assert not said.faults
    assert [piece.id for piece in said.pieces] == ["B1-1", ""]
    assert said.told.endswith(": D 'Packer', row 3 'Total', row 5 'Total'.")
    assert read(tmp_path, "id,width\nB1-1,454\n").told == ""


@pytest.mark.parametrize(
    ("column", "cell"), [("As found", "453"), ("Wdith", ""), ("Width", "453"), ("W found", "453.1")]
)
def test_a_column_that_may_be_of_sizes_is_a_fault(tmp_path: Path, column: str, cell: str) -> None:
    """The width that was ordered must not stand in for the one that was measured."""
    (fault,) = faults(tmp_path, f"id,width,height,{column}\nB1-1,454,612.8,{cell}\n")
    assert f"'{column}' given" in fault


def test_a_merged_count_is_a_fault(tmp_path: Path) -> None:
    """Of several rows with one count nobody knows how many came of each."""
    path = tmp_path / "delivered.xlsx"
    book = xlsxwriter.Workbook(path)
    sheet = book.add_worksheet()
    sheet.write_row(0, 0, ["width", "height", "count"])
    sheet.write_row(1, 0, [454, 612.8])
    sheet.write_row(2, 0, [454, 140])
    sheet.merge_range(1, 2, 2, 2, 4)
    book.close()
    found = [str(fault) for fault in read_delivered(path, "mm").faults]
    assert len(found) == 2
    assert all("one merged cell for several rows ('4' given)" in fault for fault in found)


@pytest.mark.parametrize(
    ("text", "said"),
    [("", "the file is empty"), ("a,b\n1,2\n", "no header row found"),
     ("id,width\n", "a list without rows"),
     ("count,note\n1,x\n", "no column 'width'"),
     ("id,width,height\nB1,17.9,24\n", "all sizes fit only another unit (24 mm given"),
     (f"id,width\n{'B' * 41},454\n", "not an ID"),
     ("width,height,count\n" + "454,613,100\n" * 201, "over 20000 pieces")],
)  # fmt: skip
def test_what_is_no_list_is_refused(tmp_path: Path, text: str, said: str) -> None:
    """What cannot be a delivered list says why."""
    assert said in "\n".join(faults(tmp_path, text))


def test_millimetres_in_a_job_in_inches_are_told_once(tmp_path: Path) -> None:
    """Read as inches they would be longer than any front."""
    listing = read(tmp_path, "id,width,height\nB1-1,454,152.4\nB1-2,454,615.9\n", "in")
    (fault,) = listing.faults
    assert (
        "(454 in given first, and 10 to 1700 mm is usual): mm? Say so in the header" in fault.what
    )
    assert not read(tmp_path, "id,w (mm),h (mm)\nB1-1,454,152.4\n", "in").faults


def test_a_workbook_is_read_as_well(tmp_path: Path) -> None:
    """Numbers in cells, and the sheet's name where a row is told."""
    path = tmp_path / "delivered.xlsx"
    with xlsxwriter.Workbook(str(path)) as book:
        sheet = book.add_worksheet("Van 2")
        sheet.write_row(0, 0, ["id", "width", "height", "qty"])
        sheet.write_row(1, 0, ["b1-1", 454, "152.4; 152.6", 1])
    piece = read_delivered(path, "mm").pieces[0]
    assert (piece.id, piece.width, piece.height) == ("B1-1", (454.0,), (152.4, 152.6))
    assert piece.row == "sheet Van 2, row 2"


def test_no_synonym_means_two_columns() -> None:
    """Each name stands for one column."""
    names = [name for column, others in SYNONYMS.items() for name in (column, *others)]
    assert len(names) == len(set(names))


@given(st.binary(max_size=200))
@settings(max_examples=60)
def test_garbage_is_told_as_faults(tmp_path_factory: pytest.TempPathFactory, data: bytes) -> None:
    """Whatever bytes there are, they are a list or they have faults."""
    folder = tmp_path_factory.mktemp("garbage")
    for start in (b"", b"id,width,height\n"):
        listing = read(folder, start + data)
        assert listing.faults or listing.pieces
