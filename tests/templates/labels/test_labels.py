"""Labels, read back from the printed page: symbols, words, and that nothing overlaps."""

import io
from collections.abc import Sequence
from functools import cache
from typing import Any

import numpy as np
import pdfplumber
import pypdfium2
import pytest
import zxingcpp
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.given.job import FrontSpec
from jigs.given.labelstock import Stock
from jigs.given.stated import FrontWords
from jigs.ground.problems import error
from templates.labels.labelwords import LabelWords
from templates.labels.stocks import STOCKS
from templates.page.marks import Area, Mark, Outline, Page, Qr, Text
from templates.page.typeface import known, text_box
from templates.writers.pdf import POINT, write_pdf
from templates.writers.qr import QUIET, qr_side
from tests.anytext import ANY
from tests.jigs.sample import box, lay
from tests.letters import drawn_on, letters_of, strokes_of
from tests.readback import Box, PrintedPage, read_pages
from tests.said import reason_of
from tests.templates.kitchens import (
    galley,
    labels_of,
    one_of_each,
    pages_of,
    workshop,
    workshop_looks,
)
from tests.templates.labelpages import label_pages

QR_ALONE = zxingcpp.BarcodeFormats(zxingcpp.BarcodeFormat.QRCode)
LABELS = {name: stock for name, stock in STOCKS.items() if stock.bore is None}
AT_ONCE = {"letter-3x10", "roll-102x51"}
"""Small labels on a sheet, large ones off a roll; the others at length."""
EVERY = pytest.mark.parametrize(
    "stock",
    [
        pytest.param(stock, id=name, marks=() if name in AT_ONCE else pytest.mark.slow)
        for name, stock in LABELS.items()
    ],
)


@cache
def workshop_pages(name: str) -> tuple[tuple[Page, ...], bytes]:
    """Give the labels of each look on a stock, and the same as they are printed."""
    pages = label_pages(workshop(), workshop_looks(), LABELS[name])
    return pages, write_pdf(pages)


def label_of(stock: Stock, place: int) -> tuple[float, float, float, float]:
    x, y = stock.corner(place)
    return x, y, x + stock.width, y + stock.height


@EVERY
def test_every_symbol_reads_at_300_dpi_on_its_own_label(stock: Stock) -> None:
    """An independent reader finds each where it belongs; it begins with its part's ID. That nothing
    else on a label looks like a symbol of another kind, test_raster.py says."""
    labels = workshop_looks()
    read: dict[tuple[int, int], list[str]] = {}
    document = pypdfium2.PdfDocument(workshop_pages(stock.name)[1])
    for number in range(len(document)):
        pixels = document[number].render(scale=300 / 72, grayscale=True).to_numpy().squeeze()
        dots, high = pixels.shape[1] / stock.sheet.width, pixels.shape[0]
        for place in range(1, stock.places + 1):
            x0, y0, x1, y1 = (round(each * dots) for each in label_of(stock, place))
            field = np.ascontiguousarray(pixels[max(0, high - y1) : high - y0, x0:x1])
            seen = zxingcpp.read_barcodes(field, formats=QR_ALONE)
            found = [symbol.text.split(" ")[0] for symbol in seen]
            read |= {(number, place): found} if found else {}
    assert read == {
        (at // stock.places, at % stock.places + 1): [words.part] for at, words in enumerate(labels)
    }


def extents_of(boxes: Sequence[Box], shrink: float = 0.0) -> Any:
    """Give boxes as an array, each edge drawn in by `shrink`; mm."""
    corners = np.array(boxes, dtype=float).reshape(-1, 4)
    return corners + np.array([shrink, shrink, -shrink, -shrink])


def meet(a: Any, b: Any) -> Any:
    """Tell of every pair of extents whether they overlap."""
    return (
        (a[:, None, 0] < b[None, :, 2])
        & (b[None, :, 0] < a[:, None, 2])
        & (a[:, None, 1] < b[None, :, 3])
        & (b[None, :, 1] < a[:, None, 3])
    )


def check_pages(pages: Sequence[Page], pdf: bytes, stock: Stock) -> None:
    """Nothing leaves its label; no letter lies on another or on anything drawn; four modules of
    white stay round every symbol."""
    for page, read in zip(pages, read_pages(pdf), strict=True):
        check_page(page, read, stock)


def check_page(page: Page, read: PrintedPage, stock: Stock) -> None:
    chars, drawn = extents_of(letters_of(read), 0.05), extents_of(drawn_on(read))
    written = "".join(mark.text for mark in page.marks if isinstance(mark, Text))
    assert len(chars) == len("".join(known(written).split()))
    places = np.array([label_of(stock, place + 1) for place in range(stock.places)])
    for extents in (chars, drawn):
        inside = (
            (extents[:, None, :2] >= places[None, :, :2] - 0.01)
            & (extents[:, None, 2:] <= places[None, :, 2:] + 0.01)
        ).all(axis=2)
        assert inside.any(axis=1).all()
    pairs = meet(chars, chars)
    assert not pairs[~np.eye(len(chars), dtype=bool)].any()
    assert not meet(chars, drawn).any()
    filled = [
        (
            min(x for x, _ in mark.points),
            min(y for _, y in mark.points),
            max(x for x, _ in mark.points),
            max(y for _, y in mark.points),
        )
        for mark in page.marks
        if isinstance(mark, Area | Outline)
    ]
    around = extents_of([*strokes_of(read), *filled])
    for mark in page.marks:
        if isinstance(mark, Qr):
            side = qr_side(mark.text, mark.module)
            x, y = mark.x - QUIET * mark.module, mark.y - QUIET * mark.module
            zone = np.array([[x + 0.01, y + 0.01, x + side - 0.01, y + side - 0.01]])
            assert not meet(zone, chars).any()
            assert not meet(zone, around).any()


def same_boxes(one: Any, other: Any) -> bool:
    """Tell whether each box of either has its like in the other, within 0.001 mm."""
    off = abs(one[:, None] - other[None]).max(axis=2)
    return len(one) == len(other) and max(off.min(axis=0).max(), off.min(axis=1).max()) < 0.001


@pytest.mark.slow
def test_a_second_library_finds_the_same_boxes() -> None:
    """Letters, lines, curves, rectangles of some labels, lying and standing."""
    layout = workshop()
    pages = label_pages(layout, workshop_looks()[::4], STOCKS["letter-2x5"])
    pdf = write_pdf(pages)
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        for own, page in zip(read_pages(pdf), document.pages, strict=True):
            letters = [char for char in page.chars if char["text"].strip()]
            drawn = [*page.rects, *page.curves, *page.lines]
            for theirs, ours in ((letters, letters_of(own)), (drawn, drawn_on(own))):
                boxes = [[each[side] / POINT for side in ("x0", "y0", "x1", "y1")]
                         for each in theirs]  # fmt: skip
                assert same_boxes(extents_of(ours), np.array(boxes))


@EVERY
def test_nothing_overlaps_or_leaves_its_label(stock: Stock) -> None:
    """For fronts, drawer boxes, their pieces and held parts, on short and long walls."""
    layouts = [galley(wall=wall) for wall in ("", "Südwestliche Längswand am Herd, Кухня")]
    pages = [page for each in layouts for page in label_pages(each, one_of_each(each), stock)]
    check_pages(pages, write_pdf(pages), stock)


@EVERY
def test_no_stripe_arrow_or_plan_overlaps(stock: Stock) -> None:
    """For every kind of piece, lying, standing and turned."""
    check_pages(*workshop_pages(stock.name), stock)


PLACES = st.text(alphabet=st.characters(categories=("L", "N", "P", "Zs")), max_size=30)


@pytest.mark.slow
@given(
    st.from_regex(r"[A-Z0-9][A-Z0-9-]{0,13}", fullmatch=True, alphabet=ANY),
    PLACES,
    st.floats(150, 1800),
    st.floats(400, 2400),
    st.text(ANY, max_size=120),
    st.sampled_from(sorted(LABELS)),
)
# Found cases are not made smaller: each costs the drawing of some pages.
@settings(max_examples=3)
def test_whatever_the_names_and_sizes_nothing_overlaps(
    name: str, wall: str, width: float, height: float, reason: str, stock: str
) -> None:
    """Long IDs, other scripts and odd sizes are set without a clash."""
    layout = lay(
        box(
            FrontSpec(id=f"{name}-1", kind="drawer", height=152.4),
            FrontSpec(id=f"{name}-2", kind="door", hinged="left"),
            name=name,
            wall=wall,
            width=width,
            height=height,
        )
    )
    first = replace(
        layout.fronts[0],
        held=(error("pull-aim", None, case="nobody", key=reason, nearest="x"),),
        fittings=(),
    )
    for version in (layout, replace(layout, fronts=(first, *layout.fronts[1:]))):
        pages = label_pages(version, one_of_each(version), STOCKS[stock])
        check_pages(pages, write_pdf(pages), STOCKS[stock])


@cache
def galley_labels() -> dict[str, LabelWords]:
    """Give the labels of the small kitchen by their parts."""
    return {words.part: words for words in labels_of(galley())}


def marks_of(stock: str, part: str) -> tuple[Mark, ...]:
    """Give what is drawn on one part's label in the small kitchen, the first on its sheet."""
    (page,) = label_pages(galley(), [galley_labels()[part]], STOCKS[stock])
    return page.marks


def texts_of(stock: str, part: str) -> list[Text]:
    """Give the texts on one part's label."""
    return [mark for mark in marks_of(stock, part) if isinstance(mark, Text)]


def test_a_doors_label_says_all_that_it_must() -> None:
    """ID, kind and hand, place with neighbour, both sizes, code, arrow."""
    layout = galley()
    door = next(front for front in layout.fronts if front.id == "B3-2")
    words = [mark.text for mark in texts_of("letter-2x5", "B3-2")]
    for wanted in (
        "B3-2",
        "DOOR, HINGES LEFT",
        "NORTH WALL, BOX B3, UNDER B3-1",
        f"454.0 x {door.height:.1f} x 19.1",
        f"code {door.code}",
        "UP",
    ):
        assert wanted in words
    assert any(text.startswith("17 7/8 x ") and text.endswith(" in") for text in words)


@EVERY
def test_the_id_is_the_largest_and_whole(stock: Stock) -> None:
    """It is never cut, though it may take two lines, and no other word on the label is larger,
    but for HOLD; on a narrow one it is 1.8 mm high at least (ISO 3098)."""
    layout = workshop()
    for words in workshop_looks():
        (page,) = label_pages(layout, [words], stock)
        texts = [mark for mark in page.marks if isinstance(mark, Text)]
        lines = [mark for mark in texts if mark.text == words.part]
        if not lines:
            lines = [mark for mark in texts if mark.text and mark.text in words.part][:2]
        assert "".join(mark.text for mark in lines) == words.part
        assert min(mark.size for mark in lines) >= (3.0 if stock.width > 60 else 1.8)
        if stock.width <= 60:
            continue
        others = (mark.size for mark in texts if mark not in lines and mark.text != "HOLD")
        assert lines[0].size >= max(others)


@EVERY
def test_a_held_parts_label_says_hold_large_and_why(stock: Stock) -> None:
    """A door without a hand: HOLD at 4.5 mm or more, the finding's name, no code."""
    layout = galley()
    texts = texts_of(stock.name, "B9-1")
    assert max(mark.size for mark in texts if mark.text == "HOLD") >= 4.5
    held = next(front for front in layout.fronts if front.id == "B9-1").held[0]
    assert any(
        reason_of(held).startswith(mark.text.rstrip("…")) for mark in texts if len(mark.text) > 4
    )
    assert not any(mark.text.startswith("code") for mark in texts)


@pytest.mark.parametrize(("part", "end"), [("B3-SIDE-L", "right"), ("B3-SIDE-R", "left")])
@EVERY
def test_the_stripe_is_on_the_end_that_goes_to_the_front(stock: Stock, part: str, end: str) -> None:
    """Outside face seen from outside, upright: a left side has its front on the right."""
    x0, _, x1, _ = label_of(stock, 1)
    texts = texts_of(stock.name, part)
    if words := [text for text in texts if text.text == "THIS END TO THE FRONT"]:
        assert (words[0].x > (x0 + x1) / 2) == (end == "right")
    elif words := [text for text in texts if text.text == "FRONT"]:
        # The label is narrow: an arrow to the stripe says so, or two lines.
        pointed = (words[0].x > (x0 + x1) / 2) == (end == "right")
        assert "STRIPE TO" in {text.text for text in texts} or pointed
    else:
        raise AssertionError(texts)
    edge = x1 if end == "right" else x0
    reaches = [
        min(abs(edge - x) for x, _ in mark.points)
        for mark in marks_of(stock.name, part)
        if isinstance(mark, Area) and len(mark.points) == 4
    ]
    assert min(reaches) < 25.4 / 203  # a roll's page ends at the last whole dot


HIGH = [name for name, stock in LABELS.items() if stock.height >= 36]


@pytest.mark.parametrize("name", HIGH)
def test_every_label_that_is_high_enough_has_its_plan(name: str) -> None:
    """The symbol makes way for it where it would say all that it might; not where what no label
    leaves out wants more than 61 characters."""
    layout = workshop()
    short = [words for words in workshop_looks() if len(words.payload.core) <= 61]
    assert len(short) > 25
    for words in short:
        (page,) = label_pages(layout, [words], STOCKS[name])
        assert any(isinstance(mark, Outline) for mark in page.marks), words.part


def test_labels_start_where_the_sheet_was_left() -> None:
    """The first label stands at the first free place; a place off the sheet is refused."""
    layout, stock = galley(), STOCKS["a4-2x7"]
    first, second, *_ = pages_of(layout, stock, start=13)
    _, y0, *_ = label_of(stock, 13)
    assert min(mark.y for mark in first.marks if isinstance(mark, Qr)) >= y0
    assert sum(isinstance(mark, Qr) for mark in first.marks) == 2
    assert sum(isinstance(mark, Qr) for mark in second.marks) == 14
    with pytest.raises(ValueError, match="places 1 to 14"):
        pages_of(layout, stock, start=15)


def test_nothing_wanted_is_no_page() -> None:
    """No label, no sheet."""
    assert label_pages(galley(), (), STOCKS["a4-3x7"]) == ()


def test_size_outranks_the_walls_name_and_accents_keep_clear_of_the_line_above() -> None:
    """A short place would grow before the size; a comma above an accent would touch it. Its own
    note stands whole, what is longer with the finish is cut short."""
    told = FrontWords(note="für Jörg – zawiasy", finish="Grün „Łąka“, Ölfarbe ΣΔ")
    door = FrontSpec(id="B1-1", kind="door", hinged="left", words=told)
    layout = lay(box(door, wall="Łódź-Wand"))
    [label] = [words for words in labels_of(layout) if words.part == "B1-1"]
    [page] = label_pages(layout, [label], STOCKS["a4-2x7"])
    texts = [mark for mark in page.marks if isinstance(mark, Text)]
    rows = sorted((text for text in texts if text.anchor == "start"), key=lambda text: -text.y)
    [wall] = [row for row in rows if "ŁÓDŹ-WAND" in row.text]
    size = next(row for row in rows if " x " in row.text)
    assert wall.size <= size.size
    over = rows[rows.index(wall) - 1]
    assert text_box(wall)[3] <= text_box(over)[1] + 0.05
    assert any(row.text.startswith("für Jörg – zawiasy; Grün") for row in rows)
