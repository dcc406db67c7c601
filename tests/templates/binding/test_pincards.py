"""Shelf pins on sheets: one card, and a table of lines on each board's page."""

import json
from functools import cache
from typing import Any

import pytest

from jigs.box.parts import Layout
from templates.binding.jobsheets import Sheets, make_sheets
from templates.binding.sheetdata import sheets_json
from templates.lists.holelist import holes_json
from templates.page.ownpaper import named_paper
from templates.page.paper import PAPERS
from templates.writers.pdf import write_pdf
from tests.cardreading import faults_on_paper
from tests.cardwords import faults_in_words
from tests.jobtexts import box_text
from tests.readback import PrintedPage, read_pages
from tests.sheetholes import unlike_holes
from tests.templates.printed import laid_out
from tests.uneven import UNEVEN

COMMON = PAPERS["common"]
DOOR = 'kind = "door"\nhinged = "left"'
SHELF = "shelf = [{{adjustable = true, from = {}, to = {}}}]"
TOGETHER = box_text("P2", "base", DOOR, more="assembled = true\n" + SHELF.format(200, 600))
RAW = box_text("P3", "base", DOOR, more='band = "later"\n' + SHELF.format(200, 600))
PANTRY = (
    box_text("P1", "tall", DOOR, more=SHELF.format(150, 1900)).replace("774.7", "2200")
    + TOGETHER + RAW
)  # fmt: skip
"""A pantry of 2.2 m, a box that is together, and one whose band comes later."""


@cache
def layout_of(text: str) -> Layout:
    return laid_out(text)


@cache
def sheets_of(text: str, *, each: bool = False) -> Sheets:
    return make_sheets(layout_of(text), COMMON, each=each)


def data_of(text: str, *, each: bool = False) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(sheets_json(sheets_of(text, each=each)))
    return data


@cache
def pages_of(text: str) -> tuple[PrintedPage, ...]:
    return read_pages(write_pdf(sheets_of(text).pages))


def pin_cards(data: dict[str, Any]) -> list[dict[str, Any]]:
    return [card for card in data["cards"] if any(h["purpose"] == "shelf" for h in card["holes"])]


def faults_in(data: dict[str, Any], text: str) -> tuple[list[Any], list[Any]]:
    return unlike_holes(data, json.loads(holes_json(layout_of(text))))


@pytest.mark.parametrize("text", [PANTRY, UNEVEN])
@pytest.mark.parametrize("each", [False, True])
def test_every_hole_comes_out_once_from_the_data_alone(text: str, each: bool) -> None:
    """Within 0.05 mm, whichever way the card lies: left and right, front and rear, on a partition,
    in a box that is together, before its band."""
    assert faults_in(data_of(text, each=each), text) == ([], [])


@pytest.mark.parametrize(
    ("text", "paper", "strip"),
    [
        (RAW, "common", True), (PANTRY, "a3", False), (TOGETHER, "roll-914", False),
        (RAW, "roll-914", False), pytest.param(PANTRY, "roll-914", False, marks=pytest.mark.slow),
        pytest.param(PANTRY, "common", True, marks=pytest.mark.slow),
    ],
)  # fmt: skip
def test_pins_that_a_long_card_has_are_on_no_pin_card(text: str, paper: str, strip: bool) -> None:
    """Of a board with a strip the front row is on it; on a whole face all are."""
    made = make_sheets(layout_of(text), named_paper(paper), strip=strip)
    assert faults_in(json.loads(sheets_json(made)), text) == ([], [])


@pytest.mark.parametrize("wrong", ["line", "turned", "crosses", "part"])
def test_a_setting_that_is_wrong_is_caught(wrong: str) -> None:
    """A line moved by 0.3, a card turned, other crosses, another board."""
    data = data_of(PANTRY)
    (card, *_) = pin_cards(data)
    first = next(each for each in card["parts"] if len(each["holes"]) < 6)
    match wrong:
        case "line":
            first["origin_mm"][1] += 0.3
            first["index"][0]["value_mm"] -= 0.3
        case "turned":
            first["turned"] = not first["turned"]
            first["index"] = []
        case "crosses":
            first["holes"] = [(index + 1) % 7 for index in first["holes"]]
        case "part":
            other = next(each for each in card["parts"] if each["part"] != first["part"])
            first["part"], first["side"] = other["part"], other["side"]
    missing, more = faults_in(data, PANTRY)
    assert missing
    assert more


def test_one_card_serves_all_rows_until_it_is_worn() -> None:
    """After 24 settings a fresh copy is taken up; a board never has a card for each few pins."""
    data = data_of(PANTRY)
    cards = pin_cards(data)
    settings = sum(len(card["parts"]) for card in cards)
    assert max(len(card["parts"]) for card in cards) == 24
    assert len(cards) <= settings / 24 + 3  # three kinds: front and rear edge, on lines, raw edge
    boards = {(part["part"], part["side"]) for card in cards for part in card["parts"]}
    assert len(boards) == 6


def test_each_board_by_itself_has_its_own_card() -> None:
    """With --each no card serves two boards."""
    for card in pin_cards(data_of(PANTRY, each=True)):
        assert len({part["part"] for part in card["parts"]}) == 1


PARTED = box_text(
    "B1", "open", 'kind = "opening"',
    more="columns = [{width = 400}, {share = 1}]\n" + SHELF.format(200, 500),
).replace("width = 457.2", "width = 900")  # fmt: skip
"""Pins at the same heights in both columns meet in their partition of 18.3."""


@pytest.mark.parametrize("each", [False, True])
def test_a_partition_bored_through_is_set_from_each_face(each: bool) -> None:
    """Each face has its own paper, with --each its own card too."""
    data = data_of(PARTED, each=each)
    assert faults_in(data, PARTED) == ([], [])
    faces = [(part["part"], part["side"]) for card in pin_cards(data) for part in card["parts"]]
    assert {side for part, side in faces if part == "B1-PARTITION-1"} == {"left", "right"}


def test_paper_alone_says_where_every_pin_is_bored() -> None:
    """Lines, crosses and edges as they are read on the boards' pages, the card as it lies."""
    assert faults_on_paper(pages_of(PANTRY), layout_of(PANTRY)) == []
    assert faults_in_words(pages_of(PANTRY), layout_of(PANTRY)) == []


def test_the_lines_are_struck_once_for_front_and_rear() -> None:
    """And counted so: of the pantry's left side each line of the table is one."""
    words = " ".join(page.text for page in pages_of(PANTRY))
    assert "front and rear edge; at each line, its crosses:" in words
    cost = sheets_of(PANTRY).cost
    struck = {line for _, placed in sheets_of(PANTRY).cards for line in placed.card.struck}
    assert cost.lines == len(struck)
    pins = {
        (part["part"], line["from"], line["value_mm"])
        for card in pin_cards(data_of(PANTRY))
        for part in card["parts"]
        for line in part["index"]
    }
    assert {(line[0], *line[-2:]) for line in struck} >= {
        (part, start, round(value, 1)) for part, start, value in pins
    }
