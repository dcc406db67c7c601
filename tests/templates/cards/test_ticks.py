"""What stands on the sheets of a set: boxes to tick, names, codes, how a jig is made."""

import json
import re

from jigs.given.printer import Printer
from templates.binding.sheetdata import sheets_json
from templates.page.marks import Qr, Text
from templates.words.payload import LONGEST
from templates.writers.pdf import write_pdf
from tests.readback import read_pages
from tests.templates.twins import COMMON, DOOR, several, sheets, sheets_of, words_of


def test_every_page_of_a_set_has_a_box_for_each_part() -> None:
    """On the first with blanks for its size where there is room, on the others close."""
    for sheet in sheets_of(4):
        if sheet.part is None:
            continue
        bold = [m.text for m in sheet.page.marks if isinstance(m, Text) and m.bold]
        parts = [f"B3{letter}{sheet.part.removeprefix('B3')}" for letter in ("", "R", "S", "T")]
        assert all(bold.count(part) == 1 for part in parts)
        assert sheet.page.entry == ", ".join(parts)


def test_cards_name_all_their_parts() -> None:
    """A loose card is never taken for one part's alone."""
    pages = read_pages(write_pdf(sheets_of(4).pages))
    for page in pages[1:]:
        for card in page.cards:
            assert "+ 3 ALIKE" in card.text
            assert "FOR B3-" in card.text
            assert "B3T-" in card.text


def test_sides_name_what_they_serve_part_by_part() -> None:
    """The facts list the fronts, a card's heading counts them."""
    said = [
        words_of(sheet.page.marks)
        for sheet in sheets_of(4)
        if sheet.part and "SIDE-L" in sheet.part
    ]
    text = " ".join(said)
    assert "BOTTOM PLATE for B3-2 + 3" in text
    assert "Plates 3.0 high for B3-2, B3R-2, B3S-2, B3T-2." in text


def test_the_symbol_says_the_set() -> None:
    """IDs first, as many as find room, then the face and the code."""
    for times in (2, 10):
        for sheet in sheets_of(times):
            (symbol,) = [m.text for m in sheet.page.marks if isinstance(m, Qr)] or [""]
            assert len(symbol) <= LONGEST
            assert re.fullmatch(r"[0-9A-Z $%*+./:-]*", symbol)  # ISO/IEC 18004: alphanumeric mode
            if sheet.part == "B3-2":
                assert symbol.startswith("B3-2 B3R-2")
                assert "ONE SET / " in symbol
                assert f"CODE {DOOR.code}" in symbol


def test_the_first_page_lists_each_part_and_tells_how() -> None:
    """B3R-2 stands on the pages of B3-2."""
    pages = [sheet.page for sheet in sheets_of(2)]
    first = words_of(pages[0].marks)
    assert "ONE SET OF SHEETS SERVES ALL PARTS" in first
    numbers = [n for n, page in enumerate(pages, start=1) if page.entry == "B3-2, B3R-2"]
    span = f"{numbers[0]}-{numbers[-1]}" if len(numbers) > 1 else f"{numbers[0]}"
    for part in ("B3-2", "B3R-2"):
        assert f"{part} {span}" in first


def test_a_jig_is_told_where_it_costs_no_page() -> None:
    """And once for the faces of one set; a part alone has none."""
    told = [
        sum("A JIG OF A CARD" in words_of(s.page.marks) for s in sheets_of(times))
        for times in (1, 4)
    ]
    assert told[0] == 0
    assert told[1] >= 1


def test_the_data_list_the_parts_of_a_shared_card() -> None:
    """`part` stays the first; a part alone has no list."""
    cards = json.loads(sheets_json(sheets_of(2)))["cards"]
    assert {tuple(card["parts"]) for card in cards if card["part"] == "B3-2"} == {("B3-2", "B3R-2")}
    assert not any("parts" in card for card in json.loads(sheets_json(sheets_of(1)))["cards"])


def test_a_printers_correction_changes_nothing_of_it() -> None:
    """The same sets on as many pages, each drawn by the printer's factors."""
    paper = COMMON.corrected(Printer(name="garage", across=179.5, along=199.4))
    true, drawn = list(sheets_of(4)), list(sheets(several(4), paper))
    assert [sheet.page.entry for sheet in drawn] == [sheet.page.entry for sheet in true]
    assert all(sorted(sheet.page.scale) == sorted(paper.scale) for sheet in drawn)
