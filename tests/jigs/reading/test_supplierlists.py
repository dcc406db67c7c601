"""Lists as suppliers send them: invented offers in nine languages' habits, each held against the
fronts that a person reads in it, written down beside it. None is retyped: it is read, or it ends
in questions that one line of `--columns` answers.
"""

import io
import zipfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest
import xlsxwriter

from jigs.ground.errors import ReadingError
from jigs.reading.frontlist import FrontList, read_front_list
from jigs.reading.listgiven import parse_columns

INCH = 25.4  # NIST SP 811, Appendix B

Row = tuple[str, str, float, float, int, str]
"""Box, kind, width and height in mm, how many alike, hand: as a person reads the offer."""


@dataclass(frozen=True)
class Offer:
    """One list: how it is written, the questions in which it ends, their answer, its fronts."""

    write: Callable[[Path], Path]
    rows: list[Row]
    columns: str = ""
    asked: tuple[str, ...] = ()
    named: tuple[str, ...] = ()
    """What the message names: what was left alone, what was made of words."""


def text(name: str, content: str, encoding: str = "utf-8") -> Callable[[Path], Path]:
    """Write a list as text."""

    def write(folder: Path) -> Path:
        path = folder / name
        path.write_bytes(content.encode(encoding))
        return path

    return write


def german_workbook(folder: Path) -> Path:
    """A workbook with titles, units in a row of their own, merged box cells, prices, a sum."""
    path = folder / "angebot.xlsx"
    book = xlsxwriter.Workbook(path)
    sheet = book.add_worksheet("Angebot")
    book.add_worksheet("Bedingungen").write(0, 0, "Lieferung frei Haus")
    sheet.write(0, 0, "Werkstatt am Deich")
    sheet.write_row(1, 0, ["Angebot", "20-1187", "", "Datum", "01.12.2026"])
    heads = ["Pos.", "Schrank", "Bezeichnung", "Fertigbreite", "Fertighöhe", "Stk.", "Bandseite",
             "Farbe", "E-Preis", "Gesamt"]  # fmt: skip
    sheet.write_row(3, 0, heads)
    sheet.write_row(4, 3, ["[mm]", "[mm]"])
    sheet.write_row(5, 0, [1, "US 1", "Schubkastenfront", 597, 140, 1, "", "weiß", 22, 22])
    sheet.write_row(6, 0, [2, "", "Drehtür", 597, 570, 1, "links", "weiß", 48, 48])
    sheet.write_row(7, 0, [3, "US 2", "Schubkastenfront", 447, 284.5, 2, "", "weiß", 31, 62])
    sheet.write_row(8, 0, [4, "HS 1", "Drehtüre", 597, 1277, 1, "rechts", "weiß", 80, 80])
    sheet.merge_range(5, 1, 6, 1, "US 1")
    sheet.write_row(9, 2, ["Summe netto", "", "", 5, "", "", "", 212])
    sheet.write(11, 0, "Lieferzeit ca. 4 Wochen")
    book.close()
    return path


def swedish_sheet(folder: Path) -> Path:
    """An OpenDocument sheet (ISO/IEC 26300) whose box cells are merged over two rows."""
    urn = "urn:oasis:names:tc:opendocument:xmlns"

    def row(*cells: str, down: int = 1, covered: bool = False) -> str:
        first, *rest = cells
        span = f' table:number-rows-spanned="{down}"' if down > 1 else ""
        head = (
            "<table:covered-table-cell/>"
            if covered
            else f'<table:table-cell office:value-type="string"{span}><text:p>{first}</text:p>'
            "</table:table-cell>"
        )
        others = "".join(
            f'<table:table-cell office:value-type="string"><text:p>{cell}</text:p>'
            "</table:table-cell>"
            for cell in rest
        )
        return f"<table:table-row>{head}{others}</table:table-row>"

    rows = "".join(
        (
            row("Offert 31", "", "", "", "", ""),
            row("Skåp", "Benämning", "Bredd (mm)", "Höjd (mm)", "Antal", "Gångjärn"),
            row("K1", "Lådfront", "396", "140", "1 st", "", down=2),
            row("", "Lucka", "396", "572", "1 st", "vänster", covered=True),
            row("K2", "Lucka", "296,5", "715", "1 st", "höger"),
            row("Summa", "", "", "", "3", ""),
        )
    )
    content = (
        f'<office:document-content xmlns:office="{urn}:office:1.0" xmlns:table="{urn}:table:1.0" '
        f'xmlns:text="{urn}:text:1.0"><office:body><office:spreadsheet>'
        f'<table:table table:name="Offert">{rows}</table:table>'
        "</office:spreadsheet></office:body></office:document-content>"
    )
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("content.xml", content)
        archive.writestr("META-INF/manifest.xml", "<manifest/>")
    path = folder / "offert.ods"
    path.write_bytes(stream.getvalue())
    return path


OFFERS = {
    "German workbook": Offer(
        german_workbook,
        [
            ("US-1", "drawer", 597, 140, 1, ""), ("US-1", "door", 597, 570, 1, "left"),
            ("US-2", "drawer", 447, 284.5, 2, ""), ("HS-1", "door", 597, 1277, 1, "right"),
        ],
        named=("A 'Pos.'", "I 'E-Preis'", "row 10 'Summe netto'", "row 12 'Lieferzeit ca. 4 W"),
    ),
    "Swedish sheet": Offer(
        swedish_sheet,
        [
            ("K1", "drawer", 396, 140, 1, ""), ("K1", "door", 396, 572, 1, "left"),
            ("K2", "door", 296.5, 715, 1, "right"),
        ],
        named=("row 6 'Summa'", "'Lucka' door"),
    ),
    "French text": Offer(
        text(
            "devis.csv",
            "Devis n° 2208;;;;;;\n;;;;;;\n"
            "Repère;Désignation;Dimensions (mm);Qté;Charnières;P.U. HT;Total HT\n"
            "F1;Porte battante;597 x 713;1;gauche;41,50;41,50\n"
            "F2;Façade de tiroir;597 x 140,5;3;;19,00;57,00\n"
            "F3;Porte battante;397 x 1277;2;1 G + 1 D;66,00;132,00\n"
            ";;;;;Total HT;230,50\n;;;;;TVA 20 %;46,10\n",
            "cp1252",
        ),
        [
            ("", "door", 597, 713, 1, "left"), ("", "drawer", 597, 140.5, 3, ""),
            ("", "door", 397, 1277, 1, "left"), ("", "door", 397, 1277, 1, "right"),
        ],
        "order=width-first",
        ("which of '597 x 713' (row 4) is the width?",),
        ("Row 6: 1 hinged left, 1 hinged right", "row 7 'Total HT'", "F 'P.U. HT'"),
    ),
    "inches": Offer(
        text(
            "quote.csv",
            "Quote 77,,,,,,\n"
            "Item,Cabinet,Type,Size (W x H x T),Qty,Hinge side,Unit price\n"
            '1,B1,Drawer front,"17-7/8"" x 6"" x 3/4""",1,-,21.00\n'
            '2,,Door,"17-7/8"" x 22 1/4"" x 3/4""",1,L,39.00\n'
            '3,B2,Double doors,"14 15/16"" x 28 3/8"" x 3/4""",2 pcs,-,78.00\n'
            ",,,Subtotal,4,,138.00\n",
        ),
        [
            ("B1", "drawer", 17.875 * INCH, 6 * INCH, 1, ""),
            ("B1", "door", 17.875 * INCH, 22.25 * INCH, 1, "left"),
            ("B2", "pair", 14.9375 * INCH, 28.375 * INCH, 1, ""),
        ],
        "pairs=pieces,empty_box=above",
        ("is its width that of one leaf, or across both", "no box in row 4, below a filled one"),
        ("row 6 'Subtotal'", "G 'Unit price'", "'Double doors' pair"),
    ),
    "Italian text": Offer(
        text(
            "preventivo.csv",
            "Preventivo 88\nRif.;Descrizione;L x H (cm);Pezzi;Apertura\n"
            "A1;Anta laccata;59,7x71,3;1;sx\nA2;Frontale cassetto;59,7x14,05;2;\n",
        ),
        [("", "door", 597, 713, 1, "left"), ("", "drawer", 597, 140.5, 2, "")],
        "hinged=E",
        ("unknown column (E) of hands (sx): is it 'hinged'?",),
    ),
    "Spanish text": Offer(
        text(
            "oferta.tsv",
            "Módulo\tTipo\tLongitud\tAncho\tCantidad\tBisagra\n"
            "M1\tFrente de cajón\t140\t597\t1\t\nM1\tPuerta\t570\t597\t1\tizq.\n"
            "M2\tCostado\t720\t560\t2\t\n",
        ),
        [
            ("M1", "drawer", 597, 140, 1, ""), ("M1", "door", 597, 570, 1, "left"),
        ],
        "width=D,height=Longitud",
        ("is a length a front's height, as it hangs, or its width?",),
    ),
    "Dutch text without a header": Offer(
        text("lijst.csv", "597;713;deur;1;links\n597;140;ladefront;2;\n"),
        [("", "door", 597, 713, 1, "left"), ("", "drawer", 597, 140, 2, "")],
        "width=1,height=2,kind=3,count=4,hinged=5",
        ("no header row found",),
    ),
    "Danish text": Offer(
        text(
            "tilbud.csv",
            "Pos;Skab;Type;Bredde;Højde;Antal;Hængselside\n"
            "1;S1;Låge;597;1.950;1;højre\n2;S2;Klap;897;357;1;\n",
        ),
        [("S1", "door", 597, 1950, 1, "right"), ("S2", "lift", 897, 357, 1, "")],
        "thousands=point",
        ("'1.950' (row 2): does the point part thousands?",),
    ),
    "sections": Offer(
        text(
            "confirmation.csv",
            "Order 5,,,\nRef,Finished width (mm),Finished height (mm),Pcs\nDOORS,,,\n"
            "D 1,597,713,1\nD 2,447,713,1\nDRAWER FRONTS,,,\nF 1,597,140,3\n"
            "Page 1 of 1,,,\n",
        ),
        [
            ("", "door", 597, 713, 1, ""), ("", "door", 447, 713, 1, ""),
            ("", "drawer", 597, 140, 3, ""),
        ],
        named=("'D 1' is D-1", "row 8 'Page 1 of 1'"),
    ),
}  # fmt: skip


def fronts(front_list: FrontList) -> list[Row]:
    """Give what was read, as a person writes it down."""
    return [
        (
            row.box,
            row.spec.kind,
            round(row.spec.width or 0, 6),
            round(row.spec.height or 0, 6),
            row.count,
            row.spec.hinged or "",
        )
        for row in front_list.rows
    ]


@pytest.mark.parametrize("name", OFFERS)
def test_an_offer_is_read_without_retyping(tmp_path: Path, name: str) -> None:
    """As it came, or with the answer to what it was asked; nothing wrong is taken."""
    offer = OFFERS[name]
    path = offer.write(tmp_path)
    spec = None
    if offer.columns:
        with pytest.raises(ReadingError) as caught:
            read_front_list(path)
        faults = [str(fault) for fault in caught.value.faults]
        assert len(faults) == len(offer.asked), faults
        for fault, words in zip(faults, offer.asked, strict=True):
            assert words in fault
        spec = parse_columns(offer.columns)
    read = read_front_list(path, listed=spec)
    wanted = [(*row[:2], round(row[2], 6), round(row[3], 6), *row[4:]) for row in offer.rows]
    assert fronts(read) == wanted
    for words in offer.named:
        assert words in read.told


@pytest.mark.parametrize("word", ["end panel", "Wange weiß", "joue de finition", "fianco"])
def test_end_panels_are_told_with_what_makes_them_pieces(tmp_path: Path, word: str) -> None:
    """They are no fronts; a filler beside them is told of no box's key."""
    path = tmp_path / "offer.csv"
    path.write_text(
        f"box,kind,w,h\nB1,drawer,450,140\nB1,{word},580,720\nB1,filler,60,720\n", encoding="utf-8"
    )
    read = read_front_list(path)
    assert len(read.rows) == 1
    [told] = [line for line in read.told.splitlines() if "panel_left" in line]
    assert told.startswith("Row 3 is an end panel: ")
    path.write_text("box,kind,w,h\nB1,drawer,450,140\nB1,filler,60,720\n", encoding="utf-8")
    assert "panel_left" not in read_front_list(path).told
