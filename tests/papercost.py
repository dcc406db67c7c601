"""What paper costs at the bench, as the tool counts it, and its words, counted from what is
printed: `python -m tests.papercost JOB`.

For stations and for sheets: pages, cards to cut, flaps to fold, lines to strike, and words a page,
off the cards and on each of them; a word is what stands between blanks and has a
letter or a figure: signs alone, as + and = of a sum, are none.
"""

import json
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from jigs.bench.cost import PaperCost
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
class Counted:
    """What a file asks for, and its words."""

    cost: PaperCost
    words_off: float
    """Off the cards, a page."""
    words_on: float
    """On each card."""


def cost_of_stations(layout: Layout, paper: Paper) -> Counted:
    """Count what the stations of a job ask for."""
    file = bind_stations(layout, plan_stations(layout), paper)
    data = json.loads(stations_json(file.laid))
    cards = [card for each in data["stations"] for card in each["cards"]]
    return _count(file.pages, cards, file.cost)


def cost_of_sheets(layout: Layout, paper: Paper) -> Counted:
    """Count what the sheets of a job ask for."""
    made = make_sheets(as_printed(layout), paper)
    cards = json.loads(sheets_json(made))["cards"]
    return _count(made.pages, cards, made.cost)


def _count(pages: Iterable[Page], cards: list[Data], cost: PaperCost) -> Counted:
    printed = read_pages(write_pdf(pages))
    off, on = _count_words(printed, cards)
    return Counted(
        cost=cost,
        words_off=off / max(1, len(printed)),
        words_on=on / max(1, len(cards)),
    )


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
        counted = count(layout, PAPERS["common"])
        cost = counted.cost
        print(
            f"{name}: {cost.pages} pages, {cost.cards} cards, {cost.folds} folds, {cost.lines} "
            f"lines; words: {counted.words_off:.0f} a page off the cards, "
            f"{counted.words_on:.0f} a card"
        )


if __name__ == "__main__":
    main()
