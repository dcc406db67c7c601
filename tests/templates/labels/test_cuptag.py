"""Cup tags, read back from the page: they go into the bore, and say whose door it is."""

import math
from typing import Any, Literal

import numpy as np
import pypdfium2
import pytest
import zxingcpp
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.given.labelstock import Stock
from jigs.given.stated import Boring, HandHole, Hung
from templates.labels.cuptag import find_tagged, tag_pages, tell_tags
from templates.labels.stocks import STOCKS
from templates.page.marks import Page, Qr, Text
from templates.page.raster import Raster
from templates.writers.pdf import write_pdf
from templates.writers.qr import QUIET, qr_side
from tests.jigs.sample import box, lay
from tests.letters import drawn_on, letters_of
from tests.readback import read_pages
from tests.templates.kitchens import galley
from tests.templates.labels.test_labels import extents_of, meet

TAGS = {name: stock for name, stock in STOCKS.items() if stock.bore is not None}
EVERY = pytest.mark.parametrize("stock", TAGS.values(), ids=TAGS)


def tags(layout: Layout, stock: Stock, dots: int | None = None, **more: Any) -> tuple[Page, ...]:
    fronts, _ = find_tagged(layout, stock)
    return tag_pages(layout, fronts, stock, Raster(dots=dots), **more)


def long_names() -> Layout:
    """Doors with the longest ID there may be."""
    return lay(box(FrontSpec(id="SCULLERY-NORTH-2", kind="pair"), name="S1", width=914.4))


@EVERY
def test_a_tag_goes_into_its_bore(stock: Stock) -> None:
    """A square of 24 is 33.9 from corner to corner; a bore is 35 (common practice)."""
    across = stock.width if stock.round else math.hypot(stock.width, stock.height)
    assert across <= 35 - 0.5


@pytest.mark.parametrize("dots", [None, 203, 300, 600])
@pytest.mark.parametrize("layout", [galley(), long_names()], ids=["galley", "long"])
@EVERY
def test_nothing_leaves_its_tag_or_lies_on_another(
    stock: Stock, layout: Layout, dots: int | None
) -> None:
    """Every letter and stroke lies within the cut line; no letter on a symbol or its white."""
    for page in tags(layout, stock, dots):
        (read,) = read_pages(write_pdf([page]))
        head = page.height - stock.top + 1.0
        letters = extents_of([char for char in letters_of(read) if char[1] < head], 0.05)
        drawn = extents_of(drawn_on(read))
        places = [stock.corner(place + 1) for place in range(stock.places)]
        for x0, y0, x1, y1 in (*letters, *drawn):
            assert any(
                lies_on(stock, x, y - (stock.sheet.height - page.height), x0, y0, x1, y1)
                for x, y in places
            )
        assert not meet(letters, letters)[~np.eye(len(letters), dtype=bool)].any()
        for mark in (mark for mark in page.marks if isinstance(mark, Qr)):
            side, white = qr_side(mark.text, mark.module), QUIET * mark.module
            x, y = mark.x - white + 0.01, mark.y - white + 0.01
            zone = np.array([[x, y, x + side - 0.02, y + side - 0.02]])
            assert not meet(zone, letters).any()


def lies_on(stock: Stock, x: float, y: float, x0: float, y0: float, x1: float, y1: float) -> bool:
    """Tell whether a rectangle lies on the tag whose corner is (x, y): a round tag's own cut
    line is known by its size."""
    if stock.round and (x1 - x0) < stock.width - 0.1:
        r = stock.width / 2
        corners = ((a, b) for a in (x0, x1) for b in (y0, y1))
        return all(math.hypot(a - x - r, b - y - r) <= r for a, b in corners)
    slack = 0.02
    return (
        x - slack <= x0
        and y - slack <= y0
        and x1 <= x + stock.width + slack
        and y1 <= y + stock.height + slack
    )


@pytest.mark.slow
@pytest.mark.parametrize("dots", [203, 300, 600])
@EVERY
def test_every_symbol_reads_at_the_printers_own_dots(stock: Stock, dots: int) -> None:
    """It begins with the door's ID and carries its code; a module is 0.5 mm or more."""
    layout = galley()
    fronts, _ = find_tagged(layout, stock)
    read = []
    for page in tags(layout, stock, dots):
        assert all(mark.module >= 0.5 for mark in page.marks if isinstance(mark, Qr))
        pixels = pypdfium2.PdfDocument(write_pdf([page]))[0].render(
            scale=dots / 72, grayscale=True
        ).to_numpy()  # fmt: skip
        burnt = np.where(pixels.squeeze() < 128, 0, 255).astype(np.uint8)
        read += [symbol.text for symbol in zxingcpp.read_barcodes(burnt)]
    assert {text.split(" ")[0] for text in read} == {front.id for front in fronts}
    for front in fronts:
        assert any(text.startswith(front.id) and f"CODE {front.code}" in text for text in read)


@EVERY
def test_only_doors_with_a_cup_have_a_tag(stock: Stock) -> None:
    """Not the drawer over the door; and not the door that is held back, which is said."""
    fronts, without = find_tagged(galley(), stock)
    assert [front.id for front in fronts] == ["B3-2", "W1-1L", "W1-1R"]
    assert [(entry.parts, entry.why) for entry in without] == [(("B9-1",), "held back")]
    assert "No tag for B9-1: held back." in tell_tags(fronts, without, stock)
    assert find_tagged(galley(), stock, {"w1"})[0] == fronts[1:]


def test_a_cup_smaller_than_the_tag_is_told() -> None:
    """A cup of 26 mm does not take a tag for 35."""
    layout = galley()
    door = next(front for front in layout.fronts if front.id == "B3-2")
    small = replace(
        door,
        fittings=tuple(
            replace(fit, holes=tuple(replace(hole, diameter=26.0) for hole in fit.holes))
            for fit in door.fittings
        ),
    )
    layout = replace(
        layout, fronts=tuple(small if front is door else front for front in layout.fronts)
    )
    fronts, without = find_tagged(layout, STOCKS["cup-tag"])
    assert "B3-2" not in [front.id for front in fronts]
    assert without[0].parts == ("B3-2",)
    assert "26 mm is smaller than the tag's bore of 35 mm" in without[0].why


def test_a_door_bored_by_its_supplier_has_a_tag() -> None:
    """Its cups are bored all the same; a supplier's bore is as wide as the hinge's cup."""
    bored = FrontSpec(
        id="B1-1",
        kind="door",
        hinged="left",
        boring=Boring(bored=True, bored_tab=5.0),
        hung=Hung(hinges_at=(100.0, 670.0)),
    )
    layout = lay(box(bored))
    assert not [hole for hole in layout.fronts[0].holes if hole.face == "back"]
    fronts, without = find_tagged(layout, STOCKS["cup-tag"])
    assert [front.id for front in fronts] == ["B1-1"]
    assert without == ()


def test_a_cup_by_hand_takes_a_tag_too() -> None:
    """A lift-up door's holes come from its kit's leaflet; a pilot hole is no cup."""
    cup = HandHole(x=100.0, y=30.0, diameter=35.0, depth=13.0, face="back", purpose="manual")
    pilot = replace(cup, diameter=5.0)
    for hole, tagged in ((cup, ["W1-1"]), (pilot, []), (replace(cup, depth=None), [])):
        layout = lay(box(FrontSpec(id="W1-1", kind="lift", holes=(hole,)), name="W1", kind="wall",
                         above_floor=1370.0))  # fmt: skip
        fronts, without = find_tagged(layout, STOCKS["cup-tag"])
        assert [front.id for front in fronts] == tagged
        assert bool(without) == (not tagged)


@EVERY
def test_start_and_copies(stock: Stock) -> None:
    """Three doors, two tags each, from the last place but one: two on the first page."""
    first, second = tags(galley(), stock, start=stock.places - 1, copies=2)
    counts = [sum(isinstance(mark, Qr) for mark in page.marks) for page in (first, second)]
    assert counts == [2, 3 * 2 - 2]


def test_it_prints_on_the_common_page() -> None:
    """Plain paper, A4 or letter: 198 x 267 mm lies inside both."""
    for stock in TAGS.values():
        page = tags(galley(), stock)[0]
        assert (page.width, page.height) == (198.0, 267.0)


@pytest.mark.parametrize("hand", ["left", "right"])
def test_a_round_tag_names_the_hinge_side_in_its_middle(hand: Literal["left", "right"]) -> None:
    """At the same place for either hand, as seen from the room: at an edge it would seem to
    stand at the hinges."""
    front = FrontSpec(id="B1-1", kind="door", hinged=hand)
    stock = TAGS["cup-tag-round"]
    (page,) = tags(lay(box(front)), stock)
    x, _ = stock.corner(1)
    found = {mark.text: mark for mark in page.marks if isinstance(mark, Text)}
    said, seen = found[f"HINGES {hand.upper()}"], found["FROM ROOM"]
    for mark in (said, seen):
        assert (mark.x, mark.anchor, mark.angle) == (x + stock.width / 2, "middle", 0)
        assert mark.size >= 1.8
    assert said.y > seen.y
