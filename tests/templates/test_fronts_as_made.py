"""The sheets of fronts that are not plain slabs, read back from print."""

from pathlib import Path

import pytest

from jigs.jobfile import read_job_file
from jigs.layout import lay_out
from jigs.parts import Layout
from templates.paper import PAPERS
from templates.pdf import write_pdf
from templates.sheets import make_sheets
from tests.cardreading import faults_on_paper
from tests.cardwords import faults_in_words
from tests.clashes import clashes_of_print
from tests.jobtexts import HEAD, box_text
from tests.readback import PrintedPage, read_pages

FIVE_PIECE = (
    box_text("B1", "base", 'kind = "drawer"\nheight = 152.4\nstile = 57\nrail = 38',
             'kind = "door"\nhinged = "left"\nstile = 57')
    + box_text("B2", "wall", 'kind = "door"\nhinged = "right"\nstile = 57\nglass = true')
)  # fmt: skip


def printed(folder: Path, boxes: str) -> tuple[Layout, tuple[PrintedPage, ...]]:
    """Print the sheets of some boxes, and read them."""
    path = folder / "job.toml"
    path.write_text(HEAD + boxes, encoding="utf-8")
    layout = lay_out(read_job_file(path))
    return layout, read_pages(write_pdf(make_sheets(layout, PAPERS["common"]).pages))


@pytest.mark.parametrize("boxes", [FIVE_PIECE])
def test_sheets_hold_every_hole_and_nothing_clashes(tmp_path: Path, boxes: str) -> None:
    """Every hole in its true place, every figure written, no text on a text or a line."""
    layout, pages = printed(tmp_path, boxes)
    assert not any(front.withheld for front in layout.fronts)
    assert faults_on_paper(pages, layout) == []
    assert faults_in_words(pages, layout) == []
    assert [clash for page in pages for clash in clashes_of_print(page)] == []


def test_the_lines_of_stile_and_rail_are_dashed(tmp_path: Path) -> None:
    """A dashed line runs 57 from the free edge on the card of the door's pull."""
    layout, pages = printed(tmp_path, FIVE_PIECE)
    text = " ".join(page.text for page in pages)
    assert "Five-piece: stiles 57.0, rails 57.0 (dashed), groove 11.0," in text
    assert "NO HOLE IN GLASS" in text
    door = next(front for front in layout.fronts if front.id == "B1-2")
    page = next(p for p in pages if "DOOR, HINGES LEFT" in p.text and "FRONT FACE" in p.text)
    black = max((b for b in page.blacks if abs(b[2] - b[0] - 3.0) < 0.01), key=lambda b: b[0])
    inner = [s for s in page.strokes if s.dashed and abs(s.x1 - s.x2) < 0.01]
    assert door.frame is not None
    assert any(abs(black[0] - 57.0 - stroke.x1) < 0.01 for stroke in inner)
