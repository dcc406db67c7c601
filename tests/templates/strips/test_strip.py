"""Strips read back from paper, and joined as a person joins them."""

import json
import re
from functools import lru_cache
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from cli.jobs import read_in_hand
from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import Sheets, make_sheets
from templates.binding.sheetdata import sheets_json
from templates.page.ownpaper import named_paper
from templates.page.paper import PAPERS
from templates.page.scales import OVERLAP, VERNIER_AT
from templates.writers.pdf import write_pdf
from tests.carddata import faults_in_data
from tests.cardreading import face_of, faults_on_paper, ruler_across, ruler_up, wanted_faces
from tests.cardwords import faults_in_words
from tests.clashes import clashes_of_print
from tests.jobs import jobs
from tests.readback import PrintedCard, PrintedPage, Stroke, read_pages
from tests.templates.drawnonce import DrawnOnce, draw_once

DEMO = Path(__file__).parents[3] / "templates" / "demo" / "job.toml"
PIECE = re.compile(r"STRIP, PIECE (\d+) OF (\d+)")
TALL = """
schema = 1
units = "mm"
[material]
side = 18
front = 19
band = 1
[hinge.own]
like = "cup35-full"
constant = 14.5
plates = [0, 2, 4]
[use]
hinge = "own"
[[box]]
id = "T1"
kind = "tall"
width = 600
height = 2303
depth = 560
  [[box.front]]
  kind = "door"
  hinged = "left"
"""
Found = dict[tuple[str, str], list[PrintedCard]]


@lru_cache
def _demo() -> Layout:
    """Give a base box, a drawer box and a wall box of the demo."""
    layout = lay_out(read_in_hand(DEMO))
    boxes = {"B1", "B2", "W1"}
    return replace(
        layout,
        boxes=tuple(box for box in layout.boxes if box.id in boxes),
        fronts=tuple(front for front in layout.fronts if front.box in boxes),
        sides=tuple(side for side in layout.sides if side.box in boxes),
        rollouts=(),
    )


@lru_cache
def _sheets(name: str) -> DrawnOnce:
    return draw_once(make_sheets(_demo(), named_paper(name), strip=True))


@lru_cache
def _printed(name: str) -> tuple[PrintedPage, ...]:
    return read_pages(write_pdf(_sheets(name).pages))


def _pieces(pages: tuple[PrintedPage, ...], layout: Layout) -> Found:
    """Give the pieces of each strip by part and face, in their order."""
    wanted, found = wanted_faces(layout), dict[tuple[str, str], list[PrintedCard]]()
    for page in pages:
        for card in page.cards:
            if "STRIP" in card.text:
                face = face_of(page, wanted)
                assert face is not None
                pieces = found.setdefault((face.part, face.words), [])
                pieces.append(card)
                numbers = PIECE.search(card.text)
                assert int(numbers[1] if numbers else 1) == len(pieces)
    return found


def _join_line(card: PrintedCard) -> float:
    """Read where the next piece is set: the line right across, below the words of the tab."""
    lines = [
        s.y1
        for s in card.strokes
        if s.y1 == s.y2 and abs(s.line - 0.25) < 0.01 and not s.dashed
        and s.length > 0.95 * (card.box[2] - card.box[0])
    ]  # fmt: skip
    (line,) = lines
    return line


def _check(sheets: Sheets, pages: tuple[PrintedPage, ...]) -> None:
    layout, data = sheets.layout, json.loads(sheets_json(sheets))
    for card in data["cards"]:
        card.pop("strip", None)
    assert faults_on_paper(pages, layout) == []
    assert faults_in_data(pages, data, layout) == []
    assert faults_in_words(pages, layout) == []
    assert [clash for page in pages for clash in clashes_of_print(page)] == []


@pytest.mark.slow
def test_joined_pieces_give_each_hole_its_place() -> None:
    """Each foot on the join line before it, measured from the first piece's black end, and from
    the black edge: within 0.02 mm, left and right hand, back faces as seen."""
    layout = _demo()
    wanted, checked = wanted_faces(layout), 0
    for key, pieces in _pieces(_printed("common"), layout).items():
        face = wanted[key]
        start = ruler_up(pieces[0])
        assert start.kind == "edge"
        reached = 0.0
        for number, piece in enumerate(pieces):
            foot = start.at if number == 0 else piece.box[1]
            across = ruler_across(piece)
            assert across.kind == "edge"
            for ring in piece.rings:
                x, y = across.place(ring.x, face.width), reached + ring.y - foot
                x += face.shift[0]
                assert any(
                    abs(x - hole[0]) < 0.02 and abs(y - hole[1]) < 0.02 for hole in face.holes
                ), (key, x, y)
                checked += 1
            if number + 1 < len(pieces):
                reached += _join_line(piece) - foot
    assert checked > 25


def test_each_hole_stands_once_on_a_strip_or_on_a_card() -> None:
    """The whole of the sheets, read without the joins: a piece is set on the line that its foot
    names, too."""
    _check(_sheets("common"), _printed("common"))


def test_doors_and_sides_have_strips_and_other_faces_cards() -> None:
    """Along the hinge edge and the front edge; of a face of one fitting there is none."""
    found = {key[0]: key[1] for key in _pieces(_printed("common"), _demo())}
    assert found["B1-2"] == "BACK OF DOOR"
    assert found["B1-SIDE-L"] == "INSIDE OF LEFT SIDE"
    assert found["B2-SIDE-R"] == "INSIDE OF RIGHT SIDE"
    assert "B1-1" not in found
    assert "B1-SIDE-R" not in found


@pytest.mark.slow
def test_a_tall_door_has_a_strip_though_figures_ask_for_room(tmp_path: Path) -> None:
    """Where figures find no room beside a join, the joins stand further off; five hinges."""
    job = tmp_path / "tall.toml"
    job.write_text(TALL, encoding="utf-8")
    sheets = draw_once(make_sheets(lay_out(read_in_hand(job)), PAPERS["common"], strip=True))
    pages = read_pages(write_pdf(sheets.pages))
    assert ("T1-1", "BACK OF DOOR") in _pieces(pages, sheets.layout)
    _check(sheets, pages)


def test_no_figure_of_the_scale_is_struck_by_the_edge_ladder(tmp_path: Path) -> None:
    """A door of 2305.8 - 2 * 1.6 = 2302.6: the figure 2300 would lie on the line for 2300.6."""
    job = tmp_path / "tall.toml"
    job.write_text(TALL.replace("height = 2303", "height = 2305.8"), encoding="utf-8")
    layout = lay_out(read_in_hand(job))
    (door,) = layout.fronts
    assert door.height == pytest.approx(2302.6)
    sheets = make_sheets(layout, named_paper("roll-610"), only=["T1-1"], strip=True)
    pages = read_pages(write_pdf(sheets.pages))
    assert ("T1-1", "BACK OF DOOR") in _pieces(pages, layout)
    assert [clashes_of_print(page) for page in pages] == [[]] * len(pages)


@pytest.mark.slow
def test_off_a_roll_a_strip_is_one_piece() -> None:
    """No join, so nothing to slip; it ends where the part does."""
    layout = _demo()
    found = _pieces(_printed("roll-610"), layout)
    assert found
    for (part, _), pieces in found.items():
        assert len(pieces) == 1
        assert "JOIN" not in pieces[0].text, part
    _check(_sheets("roll-610"), _printed("roll-610"))


def test_no_fitting_is_parted_and_no_join_is_near_a_hole() -> None:
    """A plate's two holes, or a cup and its screws, stand on one piece."""
    layout = _demo()
    for (part, words), pieces in _pieces(_printed("common"), layout).items():
        if words.startswith("BACK"):
            cups = [sum(ring.diameter > 20 for ring in piece.rings) for piece in pieces]
            rings = [len(piece.rings) for piece in pieces]
            assert rings == [3 * cup for cup in cups], part
        for piece in pieces[:-1]:
            line = _join_line(piece)
            assert all(line - ring.y > ring.diameter / 2 + 10.0 for ring in piece.rings)
        for piece in pieces[1:]:
            assert all(ring.y - piece.box[1] > ring.diameter / 2 + 10.0 for ring in piece.rings)


def _marks(card: PrintedCard, near: tuple[float, float], upright: bool) -> list[Stroke]:
    """Give the five marks of a vernier's half that begin beside a point."""
    return sorted(
        (
            s
            for s in card.strokes
            if abs(s.line - 0.18) < 0.01
            and (s.x1 == s.x2) is upright
            and 2.9 < s.length < 6.1
            and abs(s.x1 - near[0]) < (4.1 if upright else 0.05)
            and abs(s.y1 - near[1]) < (0.05 if upright else 4.1)
        ),
        key=lambda s: s.x1 if upright else s.y1,
    )


@pytest.mark.parametrize("slip", [0.0, 0.3, -0.3, 0.6])
def test_the_marks_at_a_join_show_a_slip_of_three_tenths(slip: float) -> None:
    """Read from paper: the long marks in line where the foot lies on the line, the next pair at
    0.3, the one after at 0.6; along the strip and across it."""
    joins = 0
    for pieces in _pieces(_printed("common"), _demo()).values():
        for lower, upper in pairwise(pieces):
            line, foot = _join_line(lower), upper.box[1]
            band = next(b for b in lower.bands if b[2] - b[0] < 3.5)
            left = band[0] - lower.box[0] < lower.box[2] - band[2]  # the edge is at the left
            free = 2 if left else 0
            inward = -6.0 if left else 6.0
            edge = (band[2], 8.0) if left else (band[0], -8.0)
            for upright, first, second in (
                (
                    False,
                    _marks(lower, (lower.box[free] + inward, line + VERNIER_AT), False),
                    _marks(upper, (upper.box[free] + inward, foot + VERNIER_AT), False),
                ),
                (
                    True,
                    _marks(lower, (edge[0] + edge[1], line), True),
                    _marks(upper, (edge[0] - lower.box[0] + upper.box[0] + edge[1], foot), True),
                ),
            ):
                assert len(first) == len(second) == 5
                if upright:
                    shift = lower.box[0] - upper.box[0]
                    pairs = [
                        (a.x1, b.x1 + shift + slip) for a, b in zip(first, second, strict=True)
                    ]
                else:
                    pairs = [
                        (a.y1 - line, b.y1 - foot + slip)
                        for a, b in zip(first, second, strict=True)
                    ]
                inline = [n for n, (a, b) in enumerate(pairs, start=-2) if abs(a - b) < 0.02]
                assert inline == [-round(slip / 0.3)]
                longest = max(range(5), key=lambda n: first[n].length)
                assert longest == 2
            joins += 1
    assert joins > 8


def test_the_running_scale_counts_from_the_end() -> None:
    """Its ticks stand at whole sixteenths above the bottom end, piece after piece; the demo is in
    inches."""
    for pieces in _pieces(_printed("common"), _demo()).values():
        for number, piece in enumerate(pieces):
            ruler = ruler_up(piece)
            ticks = [s for s in piece.strokes if abs(s.line - 0.13) < 0.01]
            assert len(ticks) > 40
            for tick in ticks:
                height = ruler.value + tick.y1 - ruler.at
                sixteenths = height / 25.4 * 16
                assert sixteenths == pytest.approx(round(sixteenths), abs=0.002)
                assert number == 0 or height > ruler.value + OVERLAP


def test_the_pages_say_what_joins_add() -> None:
    """On each page of a strip in pieces, in the steps or in short."""
    for page in _printed("common"):
        if "STRIP, PIECE" in page.text:
            words = "Each join may add 0.3 mm: check every hole by its written distance"
            assert words in page.text


def test_a_door_ends_at_its_ladder_and_a_side_at_its_end() -> None:
    """Where the last piece is cut at the height measured; of a side, where the end must lie."""
    layout = _demo()
    for (_, words), pieces in _pieces(_printed("common"), layout).items():
        wanted = "EDGE LADDER" if words.startswith("BACK") else "TOP END COMES HERE, a second check"
        assert wanted in pieces[-1].text
        assert all(wanted not in piece.text for piece in pieces[:-1])


def _changed(folder: Path, kind: str, more: str) -> Layout:
    path = folder / "job.toml"
    text = f"""
schema = 1
units = "mm"
[material]
side = "18.3 mm"
front = "19 mm"
band = "0.6 mm"
[[box]]
id = "B1"
kind = "{kind}"
width = 457
height = 900
depth = 320
{more}
"""
    path.write_text(text, encoding="utf-8")
    return lay_out(read_in_hand(path))


@pytest.mark.slow
@pytest.mark.parametrize(
    ("kind", "more", "origin"),
    [
        ("base", 'assembled = true\n[[box.front]]\nkind = "door"\nhinged = "right"', "PANEL"),
        ("base", 'band = "later"\n[[box.front]]\nkind = "door"\nhinged = "right"', "BOTTOM END"),
        (
            "wall",
            '[[box.front]]\nkind = "door"\nhinged = "left"\nprofile = "finger-bevel"',
            "TOP EDGE",
        ),
        ("base", '[[box.front]]\nkind = "door"\nhinged = "left"\nedge_radius = 3', "BOTTOM EDGE"),
    ],
    ids=["assembled", "raw", "bevel-below", "rounded"],
)
def test_boxes_and_fronts_in_hand_have_strips_too(
    kind: str, more: str, origin: str, tmp_path: Path
) -> None:
    """Stood on the panel of a box already together, set on the raw edge, set from the top where
    the bottom edge is bevelled, and butted to a block where edges are rounded."""
    sheets = draw_once(make_sheets(_changed(tmp_path, kind, more), PAPERS["common"], strip=True))
    pages = read_pages(write_pdf(sheets.pages))
    assert _pieces(pages, sheets.layout)
    assert any(
        "STRIP" in card.text and origin in card.text for page in pages for card in page.cards
    )
    _check(sheets, pages)


@pytest.mark.slow
@given(jobs(most_boxes=1), st.sampled_from(("common", "a3", "letter", "roll-610")))
@settings(max_examples=2)
def test_any_job_can_be_read_back_with_strips(job: Job, name: str) -> None:
    """Every hole exactly once, on a strip or a card; nothing clashes."""
    _check_job(job, name)


@pytest.mark.slow
@given(jobs(), st.sampled_from(("common", "a3", "letter", "roll-610")))
@settings(max_examples=3)
def test_any_of_many_jobs_can_be_read_back_with_strips(job: Job, name: str) -> None:
    """The same, at length."""
    _check_job(job, name)


def _check_job(job: Job, name: str) -> None:
    sheets = draw_once(make_sheets(lay_out(job), named_paper(name), strip=True))
    _check(sheets, read_pages(write_pdf(sheets.pages)))
