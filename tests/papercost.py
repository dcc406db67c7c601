"""What paper costs at the bench, counted from what is printed: `python -m tests.papercost JOB`.

For stations and for sheets: pages, cards to cut, flaps to fold, lines to strike, and words a page,
off the cards and on each of them; a word is what stands between blanks and has a
letter or a figure: signs alone, as + and = of a sum, are none.
"""

import json
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.layout.layout import as_printed, lay_out
from jigs.reading.inputs import read_job
from templates.binding.jobsheets import make_sheets
from templates.binding.jobstations import bind_stations
from templates.binding.sheetdata import sheets_json
from templates.page.marks import Page
from templates.page.paper import PAPERS, Paper
from templates.stations.stationset import stations_json
from templates.writers.pdf import write_pdf
from tests.readback import PrintedPage, read_pages

Data = dict[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperCost:
    """What some printed pages ask for."""

    pages: int
    cards: int
    """To cut; each copy is one."""
    folds: int
    lines: int
    """To strike on parts, middles counted."""
    words_off: float
    """Off the cards, a page."""
    words_on: float
    """On each card."""


def cost_of_stations(layout: Layout, paper: Paper) -> PaperCost:
    """Count what the stations of a job ask for."""
    file = bind_stations(layout, plan_stations(layout), paper)
    data = json.loads(stations_json(file.laid))
    cards = [card for each in data["stations"] for card in each["cards"]]
    return _count(file.pages, cards, file.cost.lines)


def cost_of_sheets(layout: Layout, paper: Paper) -> PaperCost:
    """Count what the sheets of a job ask for."""
    made = make_sheets(as_printed(layout), paper)
    cards = json.loads(sheets_json(made))["cards"]
    return _count((sheet.page for sheet in made), cards, len(set(_struck(cards))))


def _struck(cards: Iterable[Data]) -> Iterator[tuple[object, ...]]:
    """Name the lines that cards are set on: one that two cards share is one line."""
    for card in cards:
        parts = [part["part"] if isinstance(part, dict) else part
                 for part in card.get("parts", [card.get("part")])]  # fmt: skip
        for part in parts:
            face = (part, card["face"], card.get("column"), card.get("side"))
            for index in card["index"]:
                yield (*face, index["from"], index["value_mm"])


def _count(pages: Iterable[Page], cards: list[Data], lines: int) -> PaperCost:
    printed = read_pages(write_pdf(pages))
    off, on = _count_words(printed, cards)
    return PaperCost(
        pages=len(printed),
        cards=len(cards),
        folds=sum(
            edge.get("by", "fold") == "fold" for card in cards for edge in card["edges"]
        ),
        lines=lines,
        words_off=off / max(1, len(printed)),
        words_on=on / max(1, len(cards)),
    )  # fmt: skip


def _count_words(pages: Iterable[PrintedPage], cards: Iterable[Data]) -> tuple[int, int]:
    """Count all words off and on cards."""
    boxes: dict[int, list[tuple[float, float, float, float]]] = {}
    for card in cards:
        x, y = card["x_mm"], card["y_mm"]
        box = (x, y, x + card["width_mm"], y + card["height_mm"])
        boxes.setdefault(card["page"], []).append(box)
    off = on = 0
    for page in pages:
        for run in page.runs:
            x, y = (run.box[0] + run.box[2]) / 2, (run.box[1] + run.box[3]) / 2
            words = sum(any(map(str.isalnum, word)) for word in run.text.split())
            if any(b[0] <= x <= b[2] and b[1] <= y <= b[3] for b in boxes.get(page.number, [])):
                on += words
            else:
                off += words
    return off, on


def main() -> None:
    """Print both costs of a job."""
    layout = lay_out(read_job(Path(sys.argv[1])))
    for name, count in (("stations", cost_of_stations), ("sheets", cost_of_sheets)):
        cost = count(layout, PAPERS["common"])
        print(
            f"{name}: {cost.pages} pages, {cost.cards} cards, {cost.folds} folds, {cost.lines} "
            f"lines; words: {cost.words_off:.0f} a page off the cards, {cost.words_on:.0f} a card"
        )


if __name__ == "__main__":
    main()
