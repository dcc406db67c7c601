"""Patterns about as long as a page is high: each finds a page, whatever its paper and printer."""

from pathlib import Path

import pytest

from jigs.bench.stations import plan_stations
from jigs.given.printer import Printer
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from templates.binding.jobstations import StationFile, bind_stations, reach_on
from templates.page.paper import PAPERS, Paper
from tests.clashes import clashes_of_marks
from tests.jobtexts import HEAD, box_text

DOOR = 'kind = "door"\nhinged = "{}"'
DRAWER = 'kind = "drawer"\nheight = 200'
BOXES = "".join(
    [
        box_text("B1", "base", DOOR.format("left")),
        box_text("W1", "wall", DOOR.format("right")),
        box_text("W2", "wall", DOOR.format("left")),
        box_text("B2", "drawer", DRAWER, 'kind = "drawer"'),
    ]
)
"""Pulls at a top and at a bottom corner, whose card is turned, and at the middle of drawers."""
SHORT = Printer(name="garage", across=180, along=198)
"""A printer along whose feed 200 come out as 198: its page is lower by 1 %."""
WITHIN = [192, 228]
"""Screw to screw, mm: a usual one (a multiple of 32), and one that hardly finds room."""


def file_of(centers: float, far: float, paper: Paper, folder: Path) -> StationFile:
    text = HEAD.replace("centers = 160", f"centers = {centers}")
    path = folder / "job.toml"
    path.write_text(text.replace("[37, 165]", f"[37, {far}]") + BOXES, encoding="utf-8")
    layout = lay_out(read_job(path))
    return bind_stations(layout, plan_stations(layout, reach=reach_on(paper)), paper)


def check(centers: float, paper: Paper, folder: Path) -> None:
    """Pulls of this length, slides with a hole as far back."""
    file = file_of(centers, centers, paper, folder)
    cards = [placed.drawn.card for sheet in file.laid.sheets for placed in sheet.cards]
    assert len(cards) == file.cost.cards
    assert file.laid.sheets
    for page in file.pages:
        assert clashes_of_marks(page) == []


@pytest.mark.parametrize("centers", [161, 224])
def test_a_card_as_high_as_a_page_finds_room(centers: float, tmp_path: Path) -> None:
    check(centers, PAPERS["common"], tmp_path)


@pytest.mark.slow
@pytest.mark.parametrize("centers", WITHIN)
@pytest.mark.parametrize("paper", [PAPERS["letter"], *(PAPERS[n].corrected(SHORT) for n in PAPERS)])
def test_whatever_the_paper(centers: float, paper: Paper, tmp_path: Path) -> None:
    check(centers, paper, tmp_path)
