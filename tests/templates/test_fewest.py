"""The fewest pages, against integer programming and against cards cut from one full page."""

import random
from collections.abc import Sequence
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st

import templates.demo
from jigs.job import Job
from jigs.layout import lay_out
from jigs.parts import Layout
from jigs.reading.inputs import read_job
from templates import page
from templates.fewest import NoRoomError, Sharing, fewest_pages
from templates.packing import Room, Size, pack
from templates.paper import PAPERS, Paper
from templates.sheets import make_sheets
from tests.jobs import jobs, papers
from tests.optimum import Optimum, fit_by_program

GAP = 2.0


def faults_of(
    sizes: tuple[Size, ...], places: tuple[Size, ...], room: Room, gap: float
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

PINWHEEL: tuple[Size, ...] = ((60.0, 40.0), (40.0, 60.0), (60.0, 40.0), (40.0, 60.0), (20.0, 20.0))


def test_a_pinwheel_is_found() -> None:
    """Four cards round a fifth: no cut goes right across, and a search by rows never finds it."""
    places = pack(PINWHEEL, Room(100.0, 100.0), 0.0)
    assert places is not None
    assert faults_of(PINWHEEL, places, Room(100.0, 100.0), 0.0) == []
    assert pack((*PINWHEEL[:4], (20.0, 20.1)), Room(100.0, 100.0), 0.0) is None


def cut_up(rng: random.Random, width: float, height: float, pieces: int) -> list[Size]:
    """Cut a rectangle right across again and again: what is cut fits together again."""
    parts = [(width, height)]
    while len(parts) < pieces:
        w, h = parts.pop(rng.randrange(len(parts)))
        share = rng.uniform(0.2, 0.8)
        parts += [(w * share, h), (w - w * share, h)] if rng.random() < 0.5 else [
            (w, h * share), (w, h - h * share)
        ]  # fmt: skip
    rng.shuffle(parts)
    return parts


@pytest.mark.parametrize("seed", range(40))
def test_what_was_cut_from_a_page_fits_it_again_and_no_smaller_one(seed: int) -> None:
    """No paper left over: the hardest cards there are."""
    rng = random.Random(seed)
    parts = tuple(cut_up(rng, 180.0, 250.0, 2 + seed % 5))
    room = Room(180.0, 250.0)
    places = pack(parts, room, 0.0)
    assert places is not None
    assert faults_of(parts, places, room, 0.0) == []
    assert pack(parts, Room(180.0, 249.9), 0.0) is None


@st.composite
def hard_cards(draw: st.DrawFn) -> tuple[tuple[Size, ...], Room]:
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
    return tuple(sizes), Room(190.0, 250.0, ((0.0, place - 4.0, a), (place, 190.0, b)))


def agree(case: tuple[tuple[Size, ...], Room]) -> None:
    sizes, room = case
    places = pack(sizes, room, GAP)
    assert (places is not None) == fit_by_program(sizes, (room,), GAP)
    if places is not None:
        assert faults_of(sizes, places, room, GAP) == []


@given(hard_cards())
@settings(max_examples=60, deadline=None, derandomize=True)
def test_the_search_and_the_program_agree(case: tuple[tuple[Size, ...], Room]) -> None:
    """Whether cards find room beside words."""
    agree(case)


@pytest.mark.slow
@given(hard_cards())
@settings(max_examples=1500, deadline=None, derandomize=True)
def test_the_search_and_the_program_agree_at_length(case: tuple[tuple[Size, ...], Room]) -> None:
    """The same, at length."""
    agree(case)


def test_the_program_can_differ() -> None:
    """A room a tenth lower, and the search is told that it was wrong."""
    sizes = ((90.0, 120.0), (90.0, 120.0))
    assert pack(sizes, Room(182.0, 120.0), GAP) is not None
    assert not fit_by_program(sizes, (Room(182.0, 119.9),), GAP)
    assert not fit_by_program(sizes, (Room(182.0, 160.0, ((0.0, 95.0, 39.0),)),), GAP)


def test_a_card_that_no_page_holds_is_named() -> None:
    """By its number."""
    with pytest.raises(NoRoomError) as fault:
        fewest_pages(((50.0, 50.0), (101.0, 50.0)), (), (Room(100.0, 100.0),), GAP)
    assert fault.value.card == 1


def test_pages_in_order_are_not_always_the_fewest() -> None:
    """6 + 3 leaves 1 over, 6 + 4 and 3 + 3 + 4 fill two pages: found though it is out of order."""
    page_ = Room(10.0, 10.0)
    sizes = tuple((10.0, height) for height in (6.0, 3.0, 4.0, 3.0, 4.0))
    sharing = fewest_pages(sizes, (page_,), (page_,), 0.0)
    assert len(sharing.pages) == sharing.least == 2


# --- the sheets -------------------------------------------------------------------------------

Case = tuple[tuple[Size, ...], tuple[Room, ...], tuple[Room, ...], Sharing]


def shared_faces(
    layout: Layout, paper: Paper, monkeypatch: pytest.MonkeyPatch
) -> tuple[list[Case], int]:
    """Plan all sheets; give what was asked of the search for faces of several pages, and the
    number of pages in all."""
    cases: list[Case] = []

    def watched(
        sizes: tuple[Size, ...], first: tuple[Room, ...], further: tuple[Room, ...], gap: float
    ) -> Sharing:
        sharing = fewest_pages(sizes, first, further, gap)
        cases.append((sizes, first, further, sharing))
        return sharing

    with monkeypatch.context() as patch:
        patch.setattr(page, "fewest_pages", watched)
        pages = sum(1 for sheet in make_sheets(layout, paper) if sheet.cards)
    return cases, pages


LARGEST = 8
"""Faces of more cards are too much for the program: the search's own proof must do for them, and
where it gave up, its lower bound."""


def check_optimum(cases: Sequence[Case], every: int = 1) -> None:
    """Each face lies well on its pages, and could not do with one page less: by the search's own
    word, and, of so many faces one, by the program's."""
    for row, (sizes, first, further, sharing) in enumerate(dict.fromkeys(cases)):
        pages, proven = len(sharing.pages), sharing.least == len(sharing.pages)
        if len(sizes) > LARGEST:
            assert proven or pages <= sharing.least * 1.15 + 1, sizes
        elif pages > 1 and (row % every == 0 or not proven):
            assert not Optimum(sizes, first, further, GAP).possible(pages - 1), sizes
        for shared in sharing.pages:
            room = (first if shared.first else further)[shared.room]
            mine = tuple(sizes[card] for card, _ in shared.cards)
            assert faults_of(mine, tuple(place for _, place in shared.cards), room, GAP) == []
        found = sorted(card for shared in sharing.pages for card, _ in shared.cards)
        assert found == list(range(len(sizes)))


@cache
def demo_layout() -> Layout:
    return lay_out(read_job(Path(templates.demo.__file__).parent / "job.toml"))


def test_the_demo_has_the_fewest_pages(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every part on the common paper, of which some are proven anew here."""
    cases, pages = shared_faces(demo_layout(), PAPERS["common"], monkeypatch)
    assert len(cases) > 20
    assert pages > 100
    assert all(sharing.least == len(sharing.pages) for _, _, _, sharing in cases)
    check_optimum(cases, every=9)


@pytest.mark.slow
@pytest.mark.parametrize("paper", list(PAPERS))
def test_every_part_of_the_demo_has_the_fewest_pages(
    paper: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All of them proven anew, on every paper."""
    cases, _ = shared_faces(demo_layout(), PAPERS[paper], monkeypatch)
    assert all(sharing.least == len(sharing.pages) for _, _, _, sharing in cases)
    check_optimum(cases)


def check_jobs(start: int, count: int, every: int) -> None:
    patch = pytest.MonkeyPatch()

    @seed(start)
    @given(jobs(most_boxes=1), papers)
    @settings(
        max_examples=count, deadline=None, database=None, phases=[Phase.generate],
        suppress_health_check=[HealthCheck.too_slow],
    )  # fmt: skip
    def check(job: Job, paper: Paper) -> None:
        check_optimum(shared_faces(lay_out(job), paper, patch)[0], every)

    check()


def test_generated_jobs_have_the_fewest_pages() -> None:
    """Whatever a box has, on any paper."""
    check_jobs(start=1, count=4, every=3)


@pytest.mark.slow
@pytest.mark.parametrize("start", range(20))
def test_five_hundred_generated_jobs_have_the_fewest_pages(start: int) -> None:
    """25 jobs for each start, hard ones among them: many cards, each near half a page."""
    check_jobs(start=start, count=25, every=1)


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
    sheets = make_sheets(lay_out(read_job(job)), PAPERS["common"])
    assert any(sheet.part == "B1-1-2" for sheet in sheets)
