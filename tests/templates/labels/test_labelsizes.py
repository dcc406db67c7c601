"""The sizes on labels: what the saw is set to, in both units, read back from the marks."""

import re
from functools import cache

from jigs.box.bypart import OpenCuts
from jigs.cutlist.cutlist import cut_list
from jigs.given.labelstock import Stock
from jigs.ground.lengths import format_mm
from templates.labels.labelwords import LabelWords
from templates.page.marks import Text
from tests.templates.kitchens import labels_of, workshop, workshop_looks
from tests.templates.labelpages import label_pages
from tests.templates.labels.test_labels import EVERY


@EVERY
def test_inches_are_never_larger_than_millimetres(stock: Stock) -> None:
    """Nor do they stand before them."""
    for words in workshop_looks():
        (page,) = label_pages(workshop(), [words], stock)
        texts = [mark for mark in page.marks if isinstance(mark, Text)]
        mm, inches = (
            [
                mark
                for mark in texts
                for line in words.lines
                if getattr(line, kind)
                for way in line.ways
                if mark.text in way.split("\n") and mark.text != "CUT"
            ]
            for kind in ("large", "small")
        )
        if inches:
            assert mm, words.part
            assert max(mark.size for mark in inches) <= min(mark.size for mark in mm)
            assert max(mark.y for mark in inches) < min(mark.y for mark in mm)


@cache
def workshop_pieces() -> tuple[LabelWords, ...]:
    """Give the labels of the pieces to cut in the workshop."""
    return labels_of(workshop(), kinds="pieces")


@EVERY
def test_a_side_has_its_cut_size_in_both_units_on_every_stock(stock: Stock) -> None:
    """Whoever saws reads CUT, in mm or in inches; a finished size never stands without its word
    (774.7 x 583.6 on the saw, 584.2 with the band of 0.6)."""
    labels = [words for words in workshop_pieces() if words.part == "B1-SIDE-L"]
    (page,) = label_pages(workshop(), labels, stock)
    texts = [mark.text for mark in page.marks if isinstance(mark, Text)]
    together = " ".join(texts).replace('"', "")
    assert "CUT 774.7 x 583.6" in together
    assert "CUT 30 1/2 x 22 31/32+" in together
    for text in texts:
        if "584.2" in text or "x 23 " in f"{text} ":
            assert text.startswith("FINISHED")


@EVERY
def test_every_piece_has_its_cut_size_in_mm_and_says_what_is_open(stock: Stock) -> None:
    """What its ID spells goes before a size does, inches go before mm, on the smallest stocks
    alone; where OPEN has no row it stands by the code."""
    layout = workshop()
    labels = workshop_pieces()
    pieces = {piece.id: piece for piece in cut_list(layout)}
    cuts, wrong = OpenCuts(layout), []
    for words in labels:
        piece = pieces.get(words.part)
        if piece is None or words.part in {side.board for side in layout.sides}:
            continue
        (page,) = label_pages(layout, (words,), stock)
        together = " ".join(mark.text for mark in page.marks if isinstance(mark, Text))
        length, width = (
            re.escape(format_mm(size).removesuffix(".0")) for size in (piece.length, piece.width)
        )
        cut = re.search(rf"CUT {length}(\.0)? x {width}\b", together)
        if not cut or (stock.height > 30.0 and together.count("CUT ") != 2):
            wrong.append((words.part, together))
        if ("OPEN" in together) is not bool(cuts.of(piece.id)):
            wrong.append((words.part, together))
    assert len(labels) > 50
    assert wrong == []
