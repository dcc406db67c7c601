"""Labels, read back from the printed page: symbols, words, and that nothing overlaps."""

import io
from dataclasses import replace
from typing import Any

import numpy as np
import pdfplumber
import pypdfium2
import pytest
import zxingcpp
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from jigs.job import FrontSpec
from jigs.labelstock import Stock
from jigs.parts import Layout
from templates.labels import label_pages
from templates.marks import Area, Page, Qr, Text
from templates.pdf import POINT, write_pdf
from templates.qr import QUIET, qr_side
from templates.stocks import STOCKS
from tests.jigs.sample import box, lay

LABELS = {name: stock for name, stock in STOCKS.items() if stock.bore is None}
EVERY = pytest.mark.parametrize("stock", LABELS.values(), ids=LABELS)


def galley(name: str = "B3", wall: str = "North") -> Layout:
    """Give a box with a drawer over a door, a wall box beside it, and one front held."""
    layout = lay(
        box(
            FrontSpec(id=f"{name}-1", kind="drawer", height=152.4),
            FrontSpec(id=f"{name}-2", kind="door", hinged="left"),
            name=name,
            wall=wall,
        ),
        box(FrontSpec(id="W1-1", kind="pair"), name="W1", kind="wall", wall=wall, width=914.4,
            above_floor=1370),
        box(FrontSpec(id="B9-1", kind="door"), name="B9", wall=wall),
    )  # fmt: skip
    assert [front.id for front in layout.fronts if front.withheld] == ["B9-1"]
    return layout


def names_of(layout: Layout) -> list[str]:
    """Give the IDs in the order of the labels."""
    names = []
    for one in layout.boxes:
        fronts = [front for front in layout.fronts if front.box == one.id]
        names += [front.id for front in fronts]
        names += [front.drawer.id for front in fronts if front.drawer]
        names += [side.board for side in layout.sides if side.box == one.id]
    return names


def where(stock: Stock, layout: Layout, part: str) -> tuple[int, int]:
    """Give a part's page, counted from 0, and its place on it."""
    page, place = divmod(names_of(layout).index(part), stock.places)
    return page, place + 1


def label_of(stock: Stock, place: int) -> tuple[float, float, float, float]:
    x, y = stock.corner(place)
    return x, y, x + stock.width, y + stock.height


@EVERY
def test_every_symbol_reads_at_300_dpi_and_begins_with_its_parts_id(stock: Stock) -> None:
    """An independent reader finds each symbol on its own label."""
    layout = galley()
    read = []
    document = pypdfium2.PdfDocument(write_pdf(label_pages(layout, stock)))
    for number in range(len(document)):
        pixels = document[number].render(scale=300 / 72, grayscale=True).to_numpy()
        dots = pixels.shape[1] / stock.sheet.width
        for symbol in zxingcpp.read_barcodes(np.ascontiguousarray(pixels.squeeze())):
            part = symbol.text.split(" ", 1)[0]
            read.append(part)
            page, place = where(stock, layout, part)
            x0, y0, x1, y1 = label_of(stock, place)
            corner = symbol.position.top_left
            assert page == number
            assert x0 <= corner.x / dots <= x1
            assert y0 <= stock.sheet.height - corner.y / dots <= y1
    assert sorted(read) == sorted(names_of(layout))


def boxes_of(things: list[dict[str, Any]], shrink: float) -> Any:
    """Give the extents of things on a page in mm, each edge drawn in by `shrink`."""
    corners = np.array([[t["x0"], t["y0"], t["x1"], t["y1"]] for t in things]).reshape(-1, 4)
    return corners / POINT + np.array([shrink, shrink, -shrink, -shrink])


def meet(a: Any, b: Any) -> Any:
    """Tell of every pair of extents whether they overlap."""
    return (
        (a[:, None, 0] < b[None, :, 2])
        & (b[None, :, 0] < a[:, None, 2])
        & (a[:, None, 1] < b[None, :, 3])
        & (b[None, :, 1] < a[:, None, 3])
    )


def check_page(page: Page, stock: Stock) -> None:
    """Nothing leaves its label; no letter lies on another or on anything drawn."""
    with pdfplumber.open(io.BytesIO(write_pdf([page]))) as pdf:
        read = pdf.pages[0]
        chars = boxes_of([c for c in read.chars if c["text"].strip()], 0.05)
        drawn = boxes_of([*read.rects, *read.curves, *read.lines], 0.0)
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


def check_quiet_zones(page: Page) -> None:
    """Four modules of white stay round every symbol."""
    with pdfplumber.open(io.BytesIO(write_pdf([page]))) as pdf:
        read = pdf.pages[0]
        chars = boxes_of(read.chars, 0.05)
        drawn = boxes_of([*read.curves, *read.lines], 0.0)
    for mark in page.marks:
        if isinstance(mark, Qr):
            side = qr_side(mark.text, mark.module)
            x, y = mark.x - QUIET * mark.module, mark.y - QUIET * mark.module
            zone = np.array([[x + 0.01, y + 0.01, x + side - 0.01, y + side - 0.01]])
            assert not meet(zone, chars).any()
            assert not meet(zone, drawn).any()


@pytest.mark.parametrize("wall", ["", "Südwestliche Längswand am Herd, Кухня"])
@EVERY
def test_nothing_overlaps_or_leaves_its_label(stock: Stock, wall: str) -> None:
    """For doors, drawers, sides, drawer boxes and held parts, on short and long walls."""
    for page in label_pages(galley(wall=wall), stock):
        check_page(page, stock)
        check_quiet_zones(page)


PLACES = st.text(
    alphabet=st.characters(codec="utf-8", categories=("L", "N", "P", "Zs")), max_size=30
)


@given(
    st.from_regex(r"[A-Z0-9][A-Z0-9-]{0,13}", fullmatch=True),
    PLACES,
    st.floats(150, 1800),
    st.floats(400, 2400),
    st.text(max_size=120),
    st.sampled_from(sorted(LABELS)),
)
# Found cases are not made smaller: each costs the drawing of some pages.
@settings(
    max_examples=12,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow],
    phases=[Phase.explicit, Phase.generate],
)
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
    first = replace(layout.fronts[0], held=(f"screw length: {reason}",), fittings=())
    for version in (layout, replace(layout, fronts=(first, *layout.fronts[1:]))):
        for page in label_pages(version, STOCKS[stock]):
            check_page(page, STOCKS[stock])


def texts_of(layout: Layout, stock: str, part: str) -> list[Text]:
    """Give the texts on one part's label."""
    page, place = where(STOCKS[stock], layout, part)
    x0, y0, x1, y1 = label_of(STOCKS[stock], place)
    return [
        mark
        for mark in label_pages(layout, STOCKS[stock])[page].marks
        if isinstance(mark, Text) and x0 <= mark.x <= x1 and y0 <= mark.y <= y1
    ]


def test_a_doors_label_says_all_that_it_must() -> None:
    """ID, kind and hand, place with neighbour, both sizes, code, arrow."""
    layout = galley()
    door = next(front for front in layout.fronts if front.id == "B3-2")
    words = [mark.text for mark in texts_of(layout, "letter-2x5", "B3-2")]
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
    """It is never cut, on one line or broken after a hyphen, and no other word on the label is
    larger, but for HOLD."""
    layout = galley()
    for part in names_of(layout):
        texts = texts_of(layout, stock.name, part)
        at = next(i for i, mark in enumerate(texts) if part.startswith(mark.text))
        names = texts[at : at + 1 if texts[at].text == part else at + 2]
        assert "".join(mark.text for mark in names) == part
        assert {mark.size for mark in names} == {names[0].size}
        assert names[0].size >= 3.5
        others = (mark.size for mark in texts if mark not in names and mark.text != "HOLD")
        assert names[0].size >= max(others)


@EVERY
def test_a_held_parts_label_says_hold_large_and_why(stock: Stock) -> None:
    """A door without a hand: HOLD at 4.8 mm or more, the finding's name, no code."""
    layout = galley()
    texts = texts_of(layout, stock.name, "B9-1")
    assert max(mark.size for mark in texts if mark.text == "HOLD") >= 4.8
    held = next(front for front in layout.fronts if front.id == "B9-1").held[0]
    assert any(held.startswith(mark.text.rstrip("…")) for mark in texts if len(mark.text) > 4)
    assert not any(mark.text.startswith("code") for mark in texts)


@pytest.mark.parametrize(("part", "end"), [("B3-SIDE-L", "right"), ("B3-SIDE-R", "left")])
@EVERY
def test_the_stripe_is_on_the_end_that_goes_to_the_front(stock: Stock, part: str, end: str) -> None:
    """Outside face seen from outside, upright: a left side has its front on the right."""
    layout = galley()
    x0, _, x1, _ = label_of(stock, where(stock, layout, part)[1])
    texts = texts_of(layout, stock.name, part)
    if words := [text for text in texts if text.text == "THIS END TO THE FRONT"]:
        assert (words[0].x > (x0 + x1) / 2) == (end == "right")
    else:  # the label is too narrow: its lines say so
        assert {"STRIPE TO", "FRONT"} <= {text.text for text in texts}
    page = label_pages(layout, stock)[where(stock, layout, part)[0]]
    edge = x1 if end == "right" else x0
    assert any(
        isinstance(mark, Area) and len(mark.points) == 4 and edge in {x for x, _ in mark.points}
        for mark in page.marks
    )


def test_labels_start_where_the_sheet_was_left() -> None:
    """The first label stands at the first free place; a place off the sheet is refused."""
    layout, stock = galley(), STOCKS["a4-2x7"]
    first, second = label_pages(layout, stock, start=13)
    _, y0, *_ = label_of(stock, 13)
    assert min(mark.y for mark in first.marks if isinstance(mark, Qr)) >= y0
    assert sum(isinstance(mark, Qr) for mark in first.marks) == 2
    assert sum(isinstance(mark, Qr) for mark in second.marks) == len(names_of(layout)) - 2
    with pytest.raises(ValueError, match="places 1 to 14"):
        label_pages(layout, stock, start=15)


@pytest.mark.parametrize(
    ("wish", "labels"),
    [
        ({"B3-2"}, ["B3-2"]),
        ({"B3-1"}, ["B3-1", "B3-1-BOX"]),
        ({"B3-1-BOX"}, ["B3-1-BOX"]),
        ({"B3"}, ["B3-1", "B3-2", "B3-1-BOX", "B3-SIDE-L", "B3-SIDE-R"]),
        ({"w1-side-l"}, ["W1-SIDE-L"]),
        (None, None),
        ({"NORTH"}, None),
    ],
)
def test_only_picks_parts_boxes_and_walls(wish: set[str] | None, labels: list[str] | None) -> None:
    """A front brings its drawer box; None is everything."""
    layout = galley()
    pages = label_pages(layout, STOCKS["a4-3x7"], only=wish)
    symbols = [mark for page in pages for mark in page.marks if isinstance(mark, Qr)]
    assert [mark.text.split(" ")[0] for mark in symbols] == (labels or names_of(layout))


def test_nothing_wanted_is_no_page() -> None:
    """A name that is no part gives no sheet at all."""
    assert label_pages(galley(), STOCKS["a4-3x7"], only={"B77"}) == ()
