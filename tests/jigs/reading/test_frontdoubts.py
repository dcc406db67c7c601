"""What stands about the fronts of a list: titles that name a unit or a box, rows that are crossed
out or cancelled, counts among words, the side of the handle, single rows. All lists are invented;
what their words mean is common usage, no source.
"""

import io
import zipfile
from pathlib import Path

import pytest
import xlsxwriter

from jigs.ground.errors import ReadingError
from jigs.reading.frontlist import FrontList, read_front_list
from jigs.reading.listgiven import parse_columns
from tests.jigs.reading.test_supplierlists import fronts

DUTCH = (
    "Offerte 2026-114;;;;;;;\n;;;;;;;\n"
    "Nr.;Kast;Omschrijving;Breedte (mm);Hoogte (mm);Aantal;Draairichting;Prijs p. st.\n"
    "1;OK1;Ladefront;597;140;1 stuk;;22,50\n"
    "2;OK1;2 lades;597;283,5;;;31,00\n"
    "3;OK2;Draaideur;447;1.397;1 stuk;rechtsdraaiend;48,00\n"
    "4;BK1;Klepdeur;897;357;1 stuk;naar boven;61,00\n"
    "5;BK2;Deur;597;713;1 stuk;links;48,00\n"
    "6;BK2;Glasdeur, optie;597;713;1 stuk;links;95,00\n"
    "7;;Passtuk;80;2.100;2 stuks;;20,00\n"
    ";;;;;Totaal incl. btw;;817,36\nLevertijd: 4 weken;;;;;;;\n"
)


def read(folder: Path, text: str, columns: str = "", *, bare: bool = True) -> FrontList:
    path = folder / "list.csv"
    path.write_text(text, encoding="utf-8")
    return read_front_list(path, listed=parse_columns(columns), bare=bare)


def faults(folder: Path, text: str, columns: str = "", *, bare: bool = True) -> list[str]:
    with pytest.raises(ReadingError) as caught:
        read(folder, text, columns, bare=bare)
    return [str(fault).removeprefix(f"{folder / 'list.csv'}: ") for fault in caught.value.faults]


def test_a_dutch_offer(tmp_path: Path) -> None:
    """Its hands, its option and its two drawers of one row are seen; the rest is as it stands."""
    hands, dropped = faults(tmp_path, DUTCH)
    assert "unknown column (G) of hands (rechtsdraaiend, naar boven" in hands
    assert "row 9 ('Glasdeur, optie'): ordered, or not? --columns row.9=nothing" in dropped
    found = read(tmp_path, DUTCH, "hinged=G,row.9=nothing")
    assert fronts(found) == [
        ("OK1", "drawer", 597, 140, 1, ""), ("OK1", "drawer", 597, 283.5, 2, ""),
        ("OK2", "door", 447, 1397, 1, "right"), ("BK1", "lift", 897, 357, 1, ""),
        ("BK2", "door", 597, 713, 1, "left"),
    ]  # fmt: skip
    assert "Row 5: 2 alike ('2 lades')." in found.told
    assert "Row 9 'Glasdeur, optie': left alone, as said." in found.told


def spanish_workbook(folder: Path) -> Path:
    """Centimetres said in a merged title, formulas, a row crossed out, a comment, a hidden row."""
    path = folder / "presupuesto.xlsx"
    book = xlsxwriter.Workbook(path)
    sheet = book.add_worksheet("Presupuesto")
    crossed = book.add_format({"font_strikeout": True})
    sheet.merge_range(0, 2, 0, 3, "Medidas en cm", book.add_format({"bold": True}))
    sheet.write_row(1, 0, ["Mueble", "Frente", "Ancho", "Alto", "Uds.", "Apertura", "Importe"])
    sheet.write_row(2, 0, ["B1", "Frente de cajón", 59.7, 14, 1, ""])
    sheet.write_row(3, 0, ["B1", "Puerta", 59.7, 57, 1, "Izda."])
    sheet.write_row(4, 0, ["B2", "Puerta", 44.7, 71.3, 1, "Drcha."], crossed)
    sheet.write_row(5, 0, ["B3", "Puerta de cocina", 39.7, 71.3, 1, "Dcha."])
    sheet.write_row(6, 0, ["B4", "Gaveta", 89.7, 35.5, 2, ""])
    for row in range(3, 8):
        sheet.write_formula(row - 1, 6, f"=C{row}*D{row}*E{row}*0.0145", None, 55.2)
    sheet.write_comment(3, 2, "59,2?")
    sheet.set_row(6, None, None, {"hidden": True})
    sheet.write_row(8, 0, ["Total", "", "", "", 5])
    book.close()
    return path


def test_a_spanish_workbook(tmp_path: Path) -> None:
    """The title's centimetres hold; the row that is crossed out is asked about, not made; what is
    hidden or commented is told."""
    path = spanish_workbook(tmp_path)
    with pytest.raises(ReadingError) as caught:
        read_front_list(path)
    kinds, hands, dropped = (str(fault) for fault in caught.value.faults)
    assert "unknown column (B) of kinds (Frente de cajón, Puerta" in kinds
    assert "unknown column (F) of hands (Izda., Drcha., Dcha.)" in hands
    assert "row 5 ('B2', crossed out): ordered, or not? --columns row.5=nothing" in dropped
    found = read_front_list(path, listed=parse_columns("kind=B,hinged=F,row.5=nothing"))
    assert fronts(found) == [
        ("B1", "drawer", 597, 140, 1, ""), ("B1", "door", 597, 570, 1, "left"),
        ("B3", "door", 397, 713, 1, "right"), ("B4", "drawer", 897, 355, 2, ""),
    ]  # fmt: skip
    assert "Sizes in cm, as 'Medidas en cm' says above them." in found.told
    assert "A comment is pinned to C4, and not read" in found.told
    assert "Row 7 is hidden in the workbook" in found.told


def norwegian_sheet(folder: Path) -> Path:
    """An OpenDocument sheet (ISO/IEC 26300): a style that is struck through, an annotation, sizes
    in one cell with thousands apart, in two units."""
    urn = "urn:oasis:names:tc:opendocument:xmlns"

    def row(*cells: str, style: str = "") -> str:
        named = f' table:style-name="{style}"' if style else ""
        return "<table:table-row>{}</table:table-row>".format(
            "".join(
                f'<table:table-cell{named} office:value-type="string">'
                f"<text:p>{cell}</text:p></table:table-cell>"
                for cell in cells
            )
        )

    noted = "<office:annotation><text:p>målt 14.5.</text:p></office:annotation><text:p>1 stk"
    rows = (
        row("Tilbud 4471"),
        row("Skap", "Type", "Mål B x H x T", "Antall", "Hengsling"),
        row("U1", "Skuffefront", "59,7 cm x 140 mm x 19 mm", "1 stk", ""),
        row("U2", "Dør", "447 x 713 x 19", "1 stk", "venstre", style="ce2"),
        row("H1", "Dør", "597 x 1 397 x 19", "1 stk", "høyre").replace("<text:p>1 stk", noted),
        row("", "Foringslist", "60 x 2 400 x 19", "2", ""),
    )
    content = (
        f'<office:document-content xmlns:office="{urn}:office:1.0" xmlns:table="{urn}:table:1.0" '
        f'xmlns:text="{urn}:text:1.0" xmlns:style="{urn}:style:1.0"><office:automatic-styles>'
        '<style:style style:name="ce2" style:family="table-cell"><style:text-properties '
        'style:text-line-through-style="solid"/></style:style></office:automatic-styles>'
        '<office:body><office:spreadsheet><table:table table:name="Ark1">'
        f"{''.join(rows)}</table:table></office:spreadsheet></office:body>"
        "</office:document-content>"
    )
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w") as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("content.xml", content)
        archive.writestr("META-INF/manifest.xml", "<manifest/>")
    path = folder / "tilbud.ods"
    path.write_bytes(stream.getvalue())
    return path


def test_a_norwegian_sheet(tmp_path: Path) -> None:
    """A row struck through by its style is asked about; whoever wants it says so."""
    path = norwegian_sheet(tmp_path)
    with pytest.raises(ReadingError) as caught:
        read_front_list(path)
    (fault,) = (str(fault) for fault in caught.value.faults)
    assert "row 4 ('Dør', crossed out): ordered, or not?" in fault
    found = read_front_list(path, listed=parse_columns("row.4=front"))
    assert fronts(found) == [
        ("U1", "drawer", 597, 140, 1, ""), ("U2", "door", 447, 713, 1, "left"),
        ("H1", "door", 597, 1397, 1, "right"),
    ]  # fmt: skip
    assert "A comment is pinned to D5, and not read" in found.told
    assert "Sheet Ark1, row 4 'Dør': read as it stands, as said." in found.told


HEAD = "Kast;Type;Breedte;Hoogte;Aantal;Scharnier;Opmerking\n"


@pytest.mark.parametrize(
    ("row", "count"),
    [
        ("A1;2x lade;597;140;;;", 2), ("A1;Lade (3 stuks);597;140;;;", 3),
        ("A1;lade;597;140;;;2 st.", 2), ("A1;lade;597;140;;;2x gespoten", 1),
        ("A1;lade 2;597;140;;;", 1), ("A1;2 lades;597;140;2;;", 2),
        ("A1;3 lades, wit;597;140;;;", 3), ("A1;3 drawer base;597;140;;;", 1),
        ("A1;3 drawer base;597;140;1;;", 1),
    ],
)  # fmt: skip
def test_a_count_among_words(tmp_path: Path, row: str, count: int) -> None:
    """It is taken, and told; what only looks like one is none."""
    (front,) = read(tmp_path, HEAD + row).rows
    assert front.count == count


def test_a_count_that_two_cells_say_otherwise(tmp_path: Path) -> None:
    """Nobody may choose between them."""
    (fault,) = faults(tmp_path, HEAD + "A1;2x lade;597;140;1;;")
    assert fault == "row 2, column Aantal: 1 given, and '2x lade' says 2: keep one"


@pytest.mark.parametrize(
    ("heading", "cell", "note", "hand"),
    [
        ("Greepzijde", "links", "", "right"), ("Handle side", "right", "", "left"),
        ("Griffseite", "", "", None), ("Kleur", "wit", "Griff links", "right"),
        ("Kleur", "wit", "tirador a la derecha", "left"), ("Kleur", "wit", "greep boven", None),
    ],
)  # fmt: skip
def test_hinges_are_across_from_the_handle(
    tmp_path: Path, heading: str, cell: str, note: str, hand: str | None
) -> None:
    """A column or a note that says where the handle is says the hand, the other way round."""
    text = f"Kast;Type;Breedte;Hoogte;{heading};Opmerking\nA1;deur;597;713;{cell};{note}\n"
    (front,) = read(tmp_path, text).rows
    assert front.spec.hinged == hand


def test_a_handle_and_a_hinge_on_one_side(tmp_path: Path) -> None:
    """One of the two is wrong."""
    (fault,) = faults(tmp_path, HEAD + "A1;deur;597;713;1;links;greep links")
    assert "it hangs left by 'links' and right by the handle ('greep links')" in fault


TITLED = "Type;Breedte;Hoogte\nOnderkast A1;;\nlade;597;140\ndeur;597;570\nKast 3;;\ndeur;447;713\n"


@pytest.mark.parametrize("bare", [True, False])
def test_titles_that_name_boxes(tmp_path: Path, bare: bool) -> None:
    """They are asked about: fronts would each get a box of its own."""
    (*_, fault) = faults(tmp_path, TITLED, bare=bare)
    assert "does 'Onderkast A1' (rows 2, 5) name that of the rows below it?" in fault
    boxes = [row.box for row in read(tmp_path, TITLED, "titles=boxes", bare=bare).rows]
    assert boxes == ["A1", "A1", "3"]
    apart = read(tmp_path, TITLED, "titles=nothing")
    assert [row.box for row in apart.rows] == ["", "", ""]
    assert "No column says on which box a front hangs: each gets one of its own." in apart.told


def test_a_title_names_the_unit(tmp_path: Path) -> None:
    """Of sizes that would do in millimetres too; a heading's own unit stands before it."""
    title = "Alle maten in cm\n"
    (front,) = read(tmp_path, f"{title}Type;Breedte;Hoogte\ndeur;120;204\n").rows
    assert (front.spec.width, front.spec.height) == (1200, 2040)
    (front,) = read(tmp_path, f"{title}Type;Breedte (mm);Hoogte (mm)\ndeur;120;204\n").rows
    assert (front.spec.width, front.spec.height) == (120, 204)
    (front,) = read(tmp_path, "Dikte 2 cm\nType;Breedte;Hoogte\ndeur;120;204\n").rows
    assert front.spec.width == 120


def test_a_second_header(tmp_path: Path) -> None:
    """The same columns again are passed over; others are one fault, and nothing is read by the
    first header that stands below the second."""
    text = HEAD + "A1;lade;597;140;1;;\nKast;Soort;Breedte;Hoogte;Stuks;Scharnier;Opm.\n"
    again = text.replace("Opm.", "Opmerking").replace("Soort", "Type") + "A2;lade;597;140;1;;\n"
    assert [row.box for row in read(tmp_path, again).rows] == ["A1", "A2"]
    other = text.replace("Kast;Soort;Breedte;Hoogte;Stuks;Scharnier;Opm.", "Kast;Hoogte;Breedte")
    (fault,) = faults(tmp_path, other + "A2;140;597\n")
    assert fault.startswith("row 3: a second header, whose columns or units are others")


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("Breedte (mm);Hoogte (mm)", "Breedte (cm);Hoogte (cm)"),
        ("Breedte;Hoogte", "Breedte (cm);Hoogte (cm)"),
        ("Maat (b x h);Kleur", "Maat (h x b);Kleur"),
    ],
)
def test_a_second_header_in_another_unit(tmp_path: Path, first: str, second: str) -> None:
    """159.7 cm below a header in mm would be a front a tenth as wide; sizes the other way round
    would lie on their side."""
    rows = ("A1;deur", "A2;deur") if "Maat" in first else ("A1;deur;597;713", "A2;deur;159.7;171.3")
    sized = [f"{row};597 x 713;wit" if "Maat" in first else row for row in rows]
    text = f"Kast;Type;{first}\n{sized[0]}\nKast;Type;{second}\n{sized[1]}\n"
    (fault,) = faults(tmp_path, text)
    assert fault.startswith("row 3: a second header")
    assert len(read(tmp_path, text.replace(second, first)).rows) == 2


def test_single_rows(tmp_path: Path) -> None:
    """A row is what the person says, told again; one that is not there is a fault."""
    text = HEAD + "A1;lade;597;140;1;;\nA2;klap?;897;357;1;;\nA3;deur;597;713;1;;\n"
    found = read(tmp_path, text, "row.3=lift,row.4=nothing")
    assert [row.spec.kind for row in found.rows] == ["drawer", "lift"]
    assert "Row 3 'klap?': lift, as said." in found.told
    assert "Row 4 'deur': left alone, as said." in found.told
    (fault,) = faults(tmp_path, text, "row.3=lift,row.9=nothing")
    assert fault == "row 9: row.9: no such row; rows 2 to 4 below its header"
