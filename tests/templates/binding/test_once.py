"""Cards that are the same for several parts, each printed once."""

import json
from collections import Counter
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from msgspec.structs import replace

import templates.demo
from cli.jobs import read_in_hand
from jigs.box.parts import Front, Layout
from jigs.given.confirming import OpenNumber
from jigs.given.job import BoxSpec, FrontSpec, Job, ShelfSpec
from jigs.given.measured import DeliveredList, DeliveredPiece
from jigs.given.stated import Taped
from jigs.layout.layout import lay_out
from jigs.order.matching import with_delivery
from templates.binding.jobsheets import Sheets, make_sheets
from templates.binding.sheetdata import sheets_json
from templates.cards.blank import Blanks
from templates.cards.card import Card, share_card
from templates.cards.ticks import MOST_ON_CARD
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.sheets.panel import set_in
from templates.words.guidewords import guide_steps
from templates.words.wording import LADDER, LADDER_OF_SEVERAL
from templates.writers.pdf import write_pdf
from tests.cardreading import faults_on_paper
from tests.cardwords import faults_in_words
from tests.clashes import clashes_of_print
from tests.jigs.sample import box, job, lay
from tests.jobs import jobs, renamed
from tests.jobtexts import box_text
from tests.readback import read_pages
from tests.templates.printed import laid_out

COMMON = PAPERS["common"]
BASE = box(
    FrontSpec(id="B3-1", kind="drawer", height=152.4),
    FrontSpec(id="B3-2", kind="door", height=613.0, hinged="left"),
    name="B3",
)


@cache
def several(times: int, base: BoxSpec = BASE) -> Layout:
    """A job of boxes that are alike: B3, B3R, B3S, ..."""
    return lay(*(renamed(base, number) for number in range(times)))


def cards(layout: Layout, *, each: bool = False) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = json.loads(sheets_json(make_sheets(layout, COMMON, each=each)))[
        "cards"
    ]
    return found


def changed(layout: Layout, part: str, **values: object) -> Layout:
    """Give the layout with some values of one front another."""
    fronts = tuple(
        replace(front, **values) if front.id == part else front for front in layout.fronts
    )
    return replace(layout, fronts=fronts)


def sharing(layout: Layout, part: str) -> list[list[str]]:
    """The parts of each shared card of the back of a front."""
    return [
        [member["part"] for member in card["parts"]]
        for card in cards(layout)
        if card["face"] == "back" and part in str(card.get("parts"))
    ]


def test_boxes_that_are_alike_have_each_card_once() -> None:
    """As many as one of them, each for all; with --each as many as they have together."""
    alone = len(cards(several(1)))
    together = cards(several(3))
    assert len(together) == alone
    assert all(len(card["parts"]) == 3 for card in together)
    assert len(cards(several(3), each=True)) == 3 * alone
    assert not any("parts" in card for card in cards(several(3), each=True))


def test_a_card_serves_eight_parts() -> None:
    """Nine have a second one, which serves one alone."""
    counts = [len(card.get("parts", [0])) for card in cards(several(MOST_ON_CARD + 1))]
    assert set(counts) == {MOST_ON_CARD, 1}
    assert counts.count(1) == counts.count(MOST_ON_CARD)


def test_every_hole_of_every_part_is_on_paper_once() -> None:
    """Read back from where white meets black, for each part with a box to tick; each card has the
    names and codes of all."""
    layout = several(3)
    pages = read_pages(write_pdf(make_sheets(layout, COMMON).pages))
    assert faults_on_paper(pages, layout) == []
    assert faults_in_words(pages, layout) == []


def with_hole(front: Front, **values: Any) -> Front:
    (fitting, *others) = front.fittings
    hole = replace(fitting.holes[0], **values)
    return replace(front, fittings=(replace(fitting, holes=(hole, *fitting.holes[1:])), *others))


@pytest.mark.parametrize(
    ("values", "alike"),
    [
        ({"x": 22.5 + 0.02}, False),
        ({"x": 22.5 + 0.0001}, True),
        ({"depth": 12.5}, False),
        ({"diameter": 34.0}, False),
    ],
)
def test_holes_keep_cards_apart(values: dict[str, float], alike: bool) -> None:
    """Places, depth and diameter, from 0.005 mm on; the other hinge is the same still."""
    layout = several(2)
    door = next(front for front in layout.fronts if front.id == "B3R-2")
    other = changed(layout, "B3R-2", fittings=with_hole(door, **values).fittings)
    assert len(sharing(other, "B3R-2")) == (2 if alike else 1)


def test_a_taller_door_shares_what_its_height_does_not_change() -> None:
    """The bottom hinge; the top one's card has the ladder at the door's height."""
    layout = changed(several(2), "B3R-2", height=613.5)
    assert len(sharing(layout, "B3R-2")) == 1


@pytest.mark.parametrize("off", [0.0, 0.5])
@pytest.mark.parametrize("delivered", [False, True])
def test_a_front_in_hand_falls_out_unless_it_measures_true(off: float, delivered: bool) -> None:
    """Half a millimetre higher by the tape or by the list of what came, the top hinge's card is
    its own; as ordered it shares again."""
    first, other, last = (renamed(BASE, number) for number in range(3))
    high = (613.0 + off, 613.0 + off)
    if not delivered:
        door = replace(other.fronts[1], measured=Taped(height=high))
        other = replace(other, fronts=(other.fronts[0], door))
    asked = job(first, other, last)
    if delivered:
        came = DeliveredPiece(where="row 1", row="row 1", id="B3R-2", width=(454.0,), height=high)
        asked = with_delivery(asked, DeliveredList(file=Path("came.csv"), pieces=(came,)))
    layout = lay_out(asked)
    both = [["B3-2", "B3R-2", "B3S-2"]] * 2
    assert sharing(layout, "B3R-2") == (both[:1] if off else both)
    assert sharing(layout, "B3-2") == ([both[0], ["B3-2", "B3S-2"]] if off else both)


@pytest.mark.parametrize("hinged", ["left", "right"])
def test_hands_are_never_the_same(hinged: Any) -> None:
    """Nor are the sides of a box."""
    other = box(
        FrontSpec(id="B4-1", kind="drawer", height=152.4),
        FrontSpec(id="B4-2", kind="door", height=613.0, hinged=hinged),
        name="B4",
    )
    shared = [card for card in cards(lay(BASE, other)) if card["face"] == "back"]
    doors = [c for c in shared if "B3-2" in str(c) and "B4-2" in str(c)]
    assert len(doors) == (2 if hinged == "left" else 0)
    for card in cards(several(2)):
        names = {member["part"][-2:] for member in card["parts"]}
        assert card["face"] != "inside" or names in ({"-L"}, {"-R"})


def _said(card: Card) -> list[object]:
    """All that a card says, but for names and codes, from its own corner."""
    x0, y0, x1, y1 = card.box
    own = {card.view.part, card.view.code, *(f.part or "" for f in card.view.fittings)}
    found: list[object] = [(round(x1 - x0, 2), round(y1 - y0, 2))]
    for mark in card.marks:
        if isinstance(mark, Text):
            words = mark.text
            for name in sorted(own - {""}, key=len, reverse=True):
                words = words.replace(name, "*")
            found.append((words, mark.bold, mark.angle))
    return found


def _places(card: Card) -> list[tuple[float, float]]:
    return [place for fitting in card.fittings for place in fitting.places]


def _check(layout: Layout) -> None:
    """Each card that serves several parts is what each of them would have by itself, and, with
    the boxes to tick of all, what it would be if it were drawn for another of them."""
    alone: dict[tuple[object, ...], list[Card]] = {}
    for _, placed in make_sheets(layout, COMMON, each=True).cards:
        card = replace(placed.card, number=1)
        view = card.view
        alone.setdefault((view.part, view.face, view.column, view.side), []).append(card)
    for _, placed in make_sheets(layout, COMMON).cards:
        view, places = placed.card.view, _places(placed.card)
        said, drawn = [], []
        for member in placed.card.members:
            own = alone[member.part, view.face, view.column, view.side]
            (same,) = [
                card
                for card in own
                if len(_places(card)) == len(places)
                and all(
                    abs(a - c - member.dx) < 0.006 and abs(b - d - member.dy) < 0.006
                    for (a, b), (c, d) in zip(_places(card), places, strict=True)
                )
            ]
            said.append(_said(same))
            together = share_card(same, placed.card.members, Blanks())
            drawn.append(Counter(type(mark).__name__ for mark in together.marks))
        assert all(words == said[0] for words in said)
        assert all(marks == drawn[0] for marks in drawn), placed.card.parts


@given(jobs(most_boxes=1))
@settings(max_examples=2)
def test_a_shared_card_is_what_each_part_would_have(job: Job) -> None:
    """In any job: same size, same words, but for names and codes."""
    _check(lay_out(replace(job, boxes=(*job.boxes, *(renamed(each, 1) for each in job.boxes)))))


@pytest.mark.slow
def test_in_the_demo_too() -> None:
    """Boxes that are not alike, with cards that are."""
    _check(lay_out(read_in_hand(Path(templates.demo.__file__).parent / "job.toml")))


@pytest.mark.slow
@given(jobs())
@settings(max_examples=1)
def test_in_many_jobs_too(job: Job) -> None:
    """The same, at length."""
    _check(lay_out(replace(job, boxes=(*job.boxes, *(renamed(each, 1) for each in job.boxes)))))


def test_parts_whose_cards_all_stand_with_another_have_a_row_there() -> None:
    """Two of three doors that are alike: their lines are those of the first, and said once."""
    plans = make_sheets(several(3), COMMON).told
    told = [spot.field.words for plan in plans for spot in plan.spots]
    (words,) = [each for each in told if each.view.face == "back" and each.view.hinge_edge]
    marks = [mark for piece in set_in(words.body(), 80.0) for mark in piece.marks]
    text = " ".join(mark.text for mark in marks if isinstance(mark, Text))
    assert words.view.part == "B3-2"
    assert text.count("STRIKE ") == 1
    for part in ("B3R-2", "B3S-2"):
        assert f"ALSO {part}, sheet 1/2, code" in text


LONG = replace(
    box(FrontSpec(id="LONGNAMEDBOX-01-1", kind="door", hinged="left"), name="LONGNAMEDBOX-01"),
    shelves=(ShelfSpec(count=3),),
)


def _find_room(made: Sheets) -> None:
    """Each part has its pages, and each card lies on its own, whatever it serves."""
    assert made.no_room == ()
    pages = {row: (p.width, p.height) for row, p in enumerate(made.plans, len(made.before) + 1)}
    for page, placed in made.cards:
        x0, y0, x1, y1 = placed.card.box
        wide, high = pages[page]
        assert 0.0 <= x0 + placed.dx < x1 + placed.dx <= wide
        assert 0.0 <= y0 + placed.dy < y1 + placed.dy <= high


@pytest.mark.parametrize("below", [61, 72, 83, 90])
def test_a_card_below_a_ladder_serves_no_more_parts_than_it_has_room_to_name(below: int) -> None:
    """A top hinge so far below the end of two doors: its words and boxes keep off its holes."""
    hinged = f'kind = "door"\nhinged = "left"\nhinges_at = [100, {770 - below}]'
    layout = laid_out(box_text("B1", "base", hinged) + box_text("B2", "base", hinged))
    doors = {front.id for front in layout.fronts}
    made = make_sheets(layout, COMMON, only=doors)
    tops = [placed.card for _, placed in made.cards if placed.card.ladder is not None]
    assert {part for card in tops for part in card.parts} == doors
    for page in read_pages(write_pdf(made.pages)):
        assert clashes_of_print(page) == []


def test_a_card_serves_as_many_parts_as_its_page_has_room_to_name() -> None:
    """Long names make it higher than the page beside its words: further parts have one more."""
    layout = several(MOST_ON_CARD, LONG)
    left = {side.board for side in layout.sides if side.side == "left"}
    made = make_sheets(layout, COMMON, only=left)
    _find_room(made)
    counts = [len(placed.card.parts) for _, placed in made.cards]
    assert max(counts) == MOST_ON_CARD > min(counts)


@pytest.mark.slow
@given(jobs())
@settings(max_examples=2, deadline=None, suppress_health_check=list(HealthCheck))
def test_every_part_of_any_job_finds_room(job: Job) -> None:
    """With names of 16 characters, and a box more that is like each."""
    long = [replace(each, id=f"{each.id:-<14}") for each in map(renamed, job.boxes, range(9))]
    boxes = [renamed(each, number) for each in long for number in (0, 1)]
    layout = lay_out(replace(job, boxes=tuple(boxes)))
    for name in ("common", "a3"):
        _find_room(make_sheets(layout, PAPERS[name]))


def test_the_data_of_a_shared_card_name_what_is_open_for_any_of_its_parts() -> None:
    """B3R-2 alone rests on a number that nobody confirmed; its card is drawn for B3-2."""
    record = next(iter(several(2).job.hinges))
    number = OpenNumber(kind="hinge", record=record, key="constant", value=5.0)
    layout = changed(several(2), "B3R-2", open=(number,))
    shared = [card for card in cards(layout) if card["face"] == "back" and "B3R-2" in str(card)]
    assert shared
    assert all({"B3-2"} < {member["part"] for member in card["parts"]} for card in shared)
    assert all([each["record"] for each in card["open"]] == [record] for card in shared)


def test_a_ladder_for_several_doors_is_cut_for_the_tallest_first() -> None:
    """They may differ by what the ladder allows for: cut lower first, it would be spoilt."""
    for times, words in ((1, LADDER), (3, LADDER_OF_SEVERAL)):
        made = make_sheets(several(times), COMMON)
        (top,) = [placed.card for _, placed in made.cards if placed.card.ladder is not None]
        said = [mark.text for mark in top.marks if isinstance(mark, Text)]
        assert [text for text in said if text in (LADDER, LADDER_OF_SEVERAL)] == [words]
    steps = " ".join(guide_steps("hinges", (), ()))
    assert "of several doors the tallest first, cut again for each shorter one" in steps
