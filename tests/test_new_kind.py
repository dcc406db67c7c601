"""A made-up kind of fitting goes from the job file to hole, card, step, stick, station, label,
list and order, with nothing changed but the tables and their words.
"""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from cli.main import main
from jigs.bench.stations import plan_stations
from jigs.bench.storystick import find_sticks
from jigs.box.parts import Front, Layout, Side
from jigs.ground.errors import ReadingError
from jigs.layout.layout import lay_out
from jigs.reading.jobfile import read_job_file
from templates.cards.blank import Blanks
from templates.cards.card import make_cards
from templates.faces.views import view_of_side, views_of_front
from templates.page.paper import PAPERS
from templates.sheets.guide import guides_for
from templates.words.fittingwords import card_lines, fitting_heading
from templates.words.guidewords import guide_steps
from templates.words.ownwords import cautions_here
from templates.words.scanwords import front_payload, side_payload, station_phrases
from tests.jobtexts import HEAD, box_text
from tests.madeup import add_catch
from tests.readback import read_pages

ROOMS = ((180.0, 250.0),)
JOB = (
    HEAD
    + box_text("B1", "base", 'kind = "door"\nhinged = "left"', more="built = true")
    + '[[box.front.hole]]\nface = "back"\nx = 400\ny = 740\npurpose = "catch"\n'
    + '[[box.hole]]\nside = "right"\nfront = "B1-1"\nx = 20\ny = 700\npurpose = "catch"\n'
)


@pytest.fixture
def job(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """Give the file of a box with a catch in its door and one in its side."""
    add_catch(monkeypatch)
    path = tmp_path / "job.toml"
    path.write_text(JOB, encoding="utf-8")
    return path


@pytest.fixture
def layout(job: Path) -> Layout:
    """Give the same laid out."""
    return lay_out(read_job_file(job))


def the_front(layout: Layout) -> Front:
    """Give the door."""
    (front,) = layout.fronts
    return front


def the_side(layout: Layout) -> Side:
    """Give the side with the catch."""
    return next(side for side in layout.sides if side.side == "right")


def run(*words: object) -> str:
    """Run a command, and give what it prints."""
    result = CliRunner().invoke(main, [str(word) for word in words])
    assert not isinstance(result.exception, Exception), result.exception
    return result.stdout


def test_its_hole_has_the_bit_and_depth_of_the_table(layout: Layout) -> None:
    """8 wide and 12 deep, where the job says neither; no note repeats its name."""
    for part in (the_front(layout), the_side(layout)):
        (catch,) = [fitting for fitting in part.fittings if str(fitting.kind) == "catch"]
        (hole,) = catch.holes
        assert (hole.purpose, hole.diameter, hole.depth) == ("catch", 8.0, 12.0)
        assert (catch.index, catch.count, catch.part, catch.note) == (1, 1, "B1-1", "")


def test_a_job_may_state_another_depth(job: Path) -> None:
    """What is written goes before what the table has."""
    job.write_text(JOB.replace('"catch"\n[', '"catch"\ndepth = 10\n['), encoding="utf-8")
    front = the_front(lay_out(read_job_file(job)))
    assert [(h.diameter, h.depth) for h in front.holes if str(h.purpose) == "catch"] == [(8, 10)]


def test_without_the_kind_the_job_asks_for_bit_and_depth(tmp_path: Path) -> None:
    """A purpose that no kind has is a note on holes by hand."""
    path = tmp_path / "job.toml"
    path.write_text(JOB, encoding="utf-8")
    with pytest.raises(ReadingError, match="diameter"):
        read_job_file(path)


def test_its_card_is_named_and_set_out(layout: Layout) -> None:
    """On the door and on the side; the steps of the face speak of it too."""
    back = views_of_front(the_front(layout), "mm")[0]
    inside = view_of_side(the_side(layout), "mm")
    assert inside is not None
    for view, named in ((back, "CATCH"), (inside, "CATCH for B1-1")):
        cards = make_cards(view, ROOMS, Blanks())
        (card,) = [card for card in cards if str(card.fitting.kind) == "catch"]
        assert fitting_heading(view, card.fitting) == named
        assert card_lines(view, card.fitting)[0].startswith("Catch: 8 dia, 12 deep, BLIND")
        guides = guides_for([view], 2, PAPERS["common"])
        assert "by-hand" in guides.at
        said = " ".join(guide_steps("by-hand", (), guides.wanted["by-hand"].kinds))
        assert "Catch: Lay the catch on the drawing." in said
        assert "a catch sits tight once only" in cautions_here(view)


def test_it_is_on_the_stick_and_at_a_station(layout: Layout) -> None:
    """Its height in the side is struck as a catch's; its holes are bored with a bit of 8."""
    lines = [line for stick in find_sticks(layout) for line in stick.lines]
    assert [line.y for line in lines if str(line.kind) == "catch"] == [700.0]
    assert "purpose='catch'" in repr(plan_stations(layout))


def test_labels_count_it(layout: Layout) -> None:
    """The text of a QR symbol has it beside the plates; on the front its station's name stands."""
    front, work = the_front(layout), station_phrases(plan_stations(layout))
    assert f"BY HAND {front.id}" in front_payload(layout, front, work[front.id]).fit(122)
    assert "1 CATCH 2 PLATES" not in side_payload(layout, the_side(layout)).text
    assert "1 CATCH" in side_payload(layout, the_side(layout)).text


def test_lists_and_the_order_name_it(job: Path) -> None:
    """Two catches are bought, and one more: one to each ten begun."""
    for form in ("text", "csv", "json"):
        assert run("holes", job, "--format", form).count("catch") == 2
    order = json.loads(run("order", job, "--format", "json"))
    (item,) = [item for item in order["hardware"] if item["what"] == "catch"]
    assert (item["record"], item["needed"], item["buy"]) == (None, 2, 3)
    assert "catch, pressed in" in run("order", job)
    assert "catch, pressed in" in run("order", job, "--format", "csv")


def test_its_sheet_prints_it(job: Path, tmp_path: Path) -> None:
    """Its card's name, operation and caution stand on paper, and a circle 8 wide."""
    paper = tmp_path / "sheets.pdf"
    run("sheets", job, "-o", paper)
    said = " ".join(page.text for page in read_pages(paper.read_bytes()))
    for words in ("CATCH for B1-1", "Catch: 8 dia", "a catch sits tight"):
        assert words in said
