"""Cards laid on pages: none touches another or the words, none is lost, and few pages do."""

from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import templates.demo
from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from jigs.order.matching import read_in_hand
from templates.binding.jobsheets import make_sheets
from templates.page.packing import CardRoom, Size, pack
from templates.page.paper import PAPERS, Paper
from templates.sheets import sheet as page
from templates.sheets.sharing import NoRoomError, Shared, share_cards
from tests.jobs import jobs, papers

GAP = 2.0


def faults_of(
    sizes: tuple[Size, ...], places: tuple[Size, ...], room: CardRoom, gap: float
) -> list[str]:
    """What is wrong with an arrangement, told from its places alone."""
    faults: list[str] = []
    boxes = [(x, y, x + w, y + h) for (w, h), (x, y) in zip(sizes, places, strict=True)]
    for row, (x0, y0, x1, y1) in enumerate(boxes):
        if x0 < -1e-6 or y0 < -1e-6 or x1 > room.width + 1e-6 or y1 > room.height + 1e-6:
            faults.append(f"{row} outside")
        for start, end, depth in room.blocks:
            clear = x1 + gap <= start + 1e-6 or end + gap <= x0 + 1e-6
            if not clear and y1 + gap > room.height - depth + 1e-6:
                faults.append(f"{row} in the words")
        for other, (a0, b0, a1, b1) in enumerate(boxes[:row]):
            if (x0 < a1 + gap - 1e-6 and a0 < x1 + gap - 1e-6) and (
                y0 < b1 + gap - 1e-6 and b0 < y1 + gap - 1e-6
            ):
                faults.append(f"{row} on {other}")
    return faults


# --- rectangles alone -------------------------------------------------------------------------


@st.composite
def hard_cards(draw: st.DrawFn) -> tuple[tuple[Size, ...], CardRoom]:
    """A few cards near half, a third or all of a room, and a room with words of two heights."""
    step = draw(st.sampled_from((60.0, 90.0)))
    sizes = draw(
        st.lists(
            st.tuples(st.integers(-3, 40), st.integers(-3, 90)).map(
                lambda off: (step + off[0], step + off[1])
            ),
            min_size=2,
            max_size=5,
        )
    )
    a, b = draw(st.integers(0, 150)), draw(st.integers(0, 150))
    place = draw(st.integers(40, 150))
    return tuple(sizes), CardRoom(190.0, 250.0, ((0.0, place - 4.0, a), (place, 190.0, b)))


def check_pack(case: tuple[tuple[Size, ...], CardRoom]) -> None:
    sizes, room = case
    places = pack(sizes, room, GAP)
    if places is not None:
        assert faults_of(sizes, places, room, GAP) == []
    for size in sizes:
        assert (pack((size,), room, GAP) is not None) == room.grown(GAP).holds(
            (size[0] + GAP, size[1] + GAP)
        )


@given(hard_cards())
@settings(max_examples=60, deadline=None, derandomize=True)
def test_what_is_laid_lies_clear(case: tuple[tuple[Size, ...], CardRoom]) -> None:
    """Clear of each other and of the words; a single card lies wherever there is room for it."""
    check_pack(case)


@pytest.mark.slow
@given(hard_cards())
@settings(max_examples=400, deadline=None, derandomize=True)
def test_what_is_laid_lies_clear_at_length(case: tuple[tuple[Size, ...], CardRoom]) -> None:
    """The same, at length."""
    check_pack(case)


@pytest.mark.parametrize("order", [(0, 1, 2), (2, 1, 0), (1, 2, 0)])
def test_whatever_the_order_a_page_without_a_gap_left_is_filled(order: tuple[int, ...]) -> None:
    """Two at the left, one above the other, and one at the right: 60 + 40 and 50 + 50 are 100."""
    cards = ((60.0, 50.0), (60.0, 50.0), (40.0, 100.0))
    sizes = tuple(cards[row] for row in order)
    assert pack(sizes, CardRoom(100.0, 100.0), 0.0) is not None
    assert pack(sizes, CardRoom(100.0, 99.9), 0.0) is None


def test_beside_the_words_there_is_room_up_to_them() -> None:
    """The lower words hang 39 down at the right of 95 + 2: the second card stands under them."""
    sizes = ((90.0, 120.0), (90.0, 120.0))
    assert pack(sizes, CardRoom(182.0, 160.0, ((93.0, 182.0, 38.0),)), GAP) == ((0, 0), (92, 0))
    assert pack(sizes, CardRoom(182.0, 160.0, ((93.0, 182.0, 39.0),)), GAP) is None


# --- pages ------------------------------------------------------------------------------------


def test_a_card_that_no_page_holds_is_named() -> None:
    """By its number."""
    with pytest.raises(NoRoomError) as fault:
        share_cards(((50.0, 50.0), (101.0, 50.0)), (), (CardRoom(100.0, 100.0),), GAP)
    assert fault.value.card == 1


def test_a_first_page_that_holds_no_card_is_none() -> None:
    """Its words leave 20, the card is 50 high."""
    shared = share_cards(
        ((50.0, 50.0),),
        (CardRoom(100.0, 100.0, ((0.0, 100.0, 80.0),)),),
        (CardRoom(100.0, 100.0),),
        GAP,
    )
    assert [page_.first for page_ in shared] == [False]


FULL = CardRoom(10.0, 10.0)


@pytest.mark.parametrize(
    ("sizes", "first", "further", "pages"),
    [
        # 6 + 3 leaves 1 over; 6 + 4 and 3 + 3 + 4 fill two pages: the largest first.
        (tuple((10.0, h) for h in (6.0, 3.0, 4.0, 3.0, 4.0)), (FULL,), FULL, 2),
        # 271 - 122 = 149 and 271 - 52 = 219 high: the second and the fourth, 91 + 2 + 121 = 214
        # under the shorter words; the first and the third beside a column of 139, as
        # 107 + 2 + 117 = 226 <= 271 and 64 + 91 = 155 <= 189.
        (
            ((186.0, 107.0), (186.0, 91.0), (91.0, 117.0), (91.0, 121.0)),
            (CardRoom(189.0, 271.0, ((0.0, 92.0, 52.0), (96.0, 189.0, 122.0))),),
            CardRoom(189.0, 271.0, ((0.0, 62.0, 139.0),)),
            2,
        ),
        # 93 + 2 + 88 = 183 <= 271 - 87 - 2 = 182 fails, 88 + 2 + 78 = 168 does not; then
        # 107 + 2 + 93 = 202 <= 271 - 64 - 2 = 205.
        (
            ((186.0, 107.0), (186.0, 93.0), (186.0, 88.0), (186.0, 78.0)),
            (CardRoom(189.0, 271.0, ((0.0, 189.0, 87.0),)),),
            CardRoom(189.0, 271.0, ((0.0, 189.0, 64.0),)),
            2,
        ),
        # Two of 184 lie side by side, 200 wide, on a page that lies; the small ones, 95 + 2 + 95
        # high, go before, beside the words, and not the first card under them.
        (
            ((99.0, 184.0), (99.0, 95.0), (99.0, 184.0), (99.0, 95.0)),
            (
                CardRoom(189.0, 271.0, ((0.0, 189.0, 85.0),)),
                CardRoom(189.0, 271.0, ((0.0, 62.0, 216.0),)),
            ),
            CardRoom(276.0, 184.0, ((0.0, 62.0, 134.0),)),
            2,
        ),
    ],
)
def test_another_order_is_tried_where_it_may_spare_a_page(
    sizes: tuple[Size, ...], first: tuple[CardRoom, ...], further: CardRoom, pages: int
) -> None:
    """Each needs a page more with the cards in order."""
    gap = 0.0 if further == FULL else GAP
    shared = share_cards(sizes, first, (further,), gap)
    assert len(shared) == pages
    check_sharing(sizes, first, (further,), shared, gap)


# --- the sheets -------------------------------------------------------------------------------


def check_sharing(
    sizes: tuple[Size, ...],
    first: tuple[CardRoom, ...],
    further: tuple[CardRoom, ...],
    pages: tuple[Shared, ...],
    gap: float,
) -> None:
    """Each card lies on one page, well."""
    for shared in pages:
        room = (first if shared.first else further)[shared.room]
        mine = tuple(sizes[card] for card, _ in shared.cards)
        assert faults_of(mine, tuple(place for _, place in shared.cards), room, gap) == []
    found = sorted(card for shared in pages for card, _ in shared.cards)
    assert found == list(range(len(sizes)))
    assert not any(shared.first for shared in pages[1:])


def check_faces(layout: Layout, paper: Paper, monkeypatch: pytest.MonkeyPatch) -> int:
    """Plan all sheets, with each face of several pages checked; give the number of pages."""

    def watched(
        sizes: tuple[Size, ...],
        first: tuple[CardRoom, ...],
        further: tuple[CardRoom, ...],
        gap: float,
    ) -> tuple[Shared, ...]:
        pages = share_cards(sizes, first, further, gap)
        check_sharing(sizes, first, further, pages, gap)
        return pages

    with monkeypatch.context() as patch:
        patch.setattr(page, "share_cards", watched)
        return make_sheets(layout, paper).count()


@cache
def demo_layout() -> Layout:
    return lay_out(read_in_hand(Path(templates.demo.__file__).parent / "job.toml"))


@pytest.mark.parametrize("paper", ["common", "a3"])
def test_every_card_of_the_demo_lies_well(paper: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """On every page of every face, on paper with room for one card and for several."""
    check_faces(demo_layout(), PAPERS[paper], monkeypatch)


@pytest.mark.slow
@given(jobs(), papers)
@settings(
    max_examples=40, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow]
)
def test_every_card_of_generated_jobs_lies_well(job: Job, paper: Paper) -> None:
    """Whatever a box has: many cards, each near half a page, among them."""
    check_faces(lay_out(job), paper, pytest.MonkeyPatch())


NARROW = """
schema = 1
name = "Galley"
units = "in"
[material]
front = "19 mm"
front_kind = "mdf"
back = "6 mm"
band = "0 mm"
drawer_side = "15.9 mm"
[reveal]
top = "1.6 mm"
bottom = "1.6 mm"
between = "3.2 mm"
inset = "2 mm"
[use]
slide = "undermount-450"
drawer_pull = "bar-160"
door_pull = "bar-160"
[[box]]
id = "B1"
wall = "north"
kind = "base"
width = "222.5 mm"
height = "280 mm"
depth = "584.2 mm"
overlay = "inset"
  [[box.front]]
  id = "B1-1-1"
  kind = "drawer"
  height = "80 mm"
  [[box.front]]
  id = "B1-1-2"
  kind = "drawer"
"""


def test_a_card_that_would_touch_the_words_is_made_smaller(tmp_path: Path) -> None:
    """A page holds a card only with the gutter that parts it from the words."""
    job = tmp_path / "narrow.toml"
    job.write_text(NARROW, encoding="utf-8")
    sheets = make_sheets(lay_out(read_in_hand(job)), PAPERS["common"])
    assert any(sheet.part == "B1-1-2" for sheet in sheets)
