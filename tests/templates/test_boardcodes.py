"""One code a board: on sheet, label and in the lists; and never that of the board of the other
hand, whose sheet fits it mirrored."""

import csv
import io
import json
import re
from collections.abc import Iterable, Iterator

import pytest

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import choose_parts, cut_job
from templates.binding.jobsheets import make_sheets
from templates.labels.stocks import STOCKS
from templates.lists.holelist import holes_csv, holes_json
from templates.lists.partslist import parts_csv, parts_json
from templates.page.marks import Mark, Page, Text
from templates.page.paper import PAPERS
from tests.templates.kitchens import labels_of
from tests.templates.labelpages import label_pages
from tests.templates.printed import laid_out
from tests.uneven import PLAIN, UNEVEN

CODE = re.compile(r"code ([0-9A-Z]{4})")


def on_sheets(layout: Layout) -> Iterator[tuple[str, str]]:
    """Give board and code as each sheet, and each card on it, has them; a pin card has a code of
    its own, and names no board."""
    boards = {side.board for side in layout.sides}
    sheets = make_sheets(layout, PAPERS["common"], only=boards)
    pins = [placed.card for _, placed in sheets.cards if placed.card.own_frame]
    others = {code for card in pins for code in codes_in(card.marks)}
    for sheet in sheets:
        if len(sheet.parts) == 1:
            yield from ((sheet.parts[0], code) for code in codes_on(sheet.page) - others)


def on_labels(layout: Layout) -> Iterator[tuple[str, str]]:
    """Give board and code as each label has them, each printed by itself."""
    boards = {side.board for side in layout.sides}
    for words in labels_of(layout, only=boards):
        (page,) = label_pages(layout, (words,), STOCKS["letter-2x5"])
        yield from ((words.part, code) for code in codes_on(page) if words.part in boards)


def codes_on(page: Page) -> set[str]:
    """Give all codes that are written on a page."""
    return codes_in(page.marks)


def codes_in(marks: Iterable[Mark]) -> set[str]:
    return {*CODE.findall("\n".join(mark.text for mark in marks if isinstance(mark, Text)))}


def in_lists(layout: Layout) -> Iterator[tuple[str, str]]:
    """Give board and code from the lists of holes and of parts."""
    parts = choose_parts(layout, cut_job(layout))
    for text, column in ((holes_csv(layout), "part"), (parts_csv(parts), "part")):
        yield from ((row[column], row["code"]) for row in csv.DictReader(io.StringIO(text)))
    for side in json.loads(holes_json(layout))["sides"]:
        yield side["board"], side["code"]
    for piece in json.loads(parts_json(parts))["parts"]:
        yield piece["id"], piece["code"]


@pytest.mark.parametrize("boxes", [PLAIN, UNEVEN], ids=["plain", "uneven"])
def test_a_left_sheet_on_a_right_side_is_caught_by_its_code(boxes: str) -> None:
    """Sheet, label and lists agree for each board, and no two boards agree."""
    layout = laid_out(boxes)
    boards = {side.board for side in layout.sides}
    told: dict[str, set[str]] = {board: set() for board in boards}
    for source in (on_sheets(layout), on_labels(layout), in_lists(layout)):
        seen = {pair for pair in source if pair[0] in boards}
        assert {board for board, _ in seen} == boards
        for board, code in seen:
            told[board].add(code)
    assert all(len(codes) == 1 for codes in told.values()), told
    assert len({code for codes in told.values() for code in codes}) == len(boards)


def test_both_sides_of_a_plain_box_have_the_same_holes() -> None:
    """So that only the hand tells their codes apart."""
    layout = laid_out(PLAIN)
    left, right = layout.sides
    assert [(h.x, h.y) for h in left.holes] == [(h.x, h.y) for h in right.holes]
