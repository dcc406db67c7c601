"""The demo: an invented galley that has everything, and that never costs anybody their work."""

import re
from pathlib import Path

import pytest

from cli.jobs import read_in_hand
from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.given.job import BOX_KINDS, FRONT_KINDS
from jigs.layout.layout import lay_out
from templates.demo import demo_files
from templates.words.assumedwords import assumed_lines
from templates.words.coverwords import SHEETS
from templates.words.findings import ready_words
from tests.cli.conftest import Run


def test_it_writes_the_job_and_its_pack(run: Run) -> None:
    """Without a folder it goes into jigsheet-demo, and by itself it has no errors. What is there
    of it already and untouched is written anew without a word."""
    name, data = next(iter(demo_files().items()))
    Path("jigsheet-demo").mkdir()
    (Path("jigsheet-demo") / name).write_bytes(data)
    result = run("demo")
    assert result.exit_code == 0
    files = {path.relative_to("jigsheet-demo").as_posix()
             for path in Path("jigsheet-demo").rglob("*") if path.is_file()}  # fmt: skip
    made = (
        "plan.pdf",
        "stations.pdf",
        "sheets.pdf",
        "labels.pdf",
        "heights.pdf",
        "elevations.pdf",
        "lists.pdf",
        "holes.csv",
        "parts.csv",
        "order.csv",
        "fronts.csv",
        "contents.json",
    )
    pack = {f"pack/{name}" for name in made}
    assert files == pack | set(demo_files())
    assert "none held" in result.stdout
    assert "hinge 'spare' (constant, plates, fixing_spacing" in result.stdout
    counts = re.search(r"stations.pdf: (\d+) pages, .* sheets.pdf: (\d+) pages", result.stdout)
    assert counts is not None
    assert int(counts[1]) < int(counts[2]) / 2


@pytest.mark.parametrize("name", demo_files())
def test_a_changed_file_is_left_alone(name: str, run: Run) -> None:
    """Somebody may have begun their own kitchen in it."""
    Path("galley").mkdir()
    (Path("galley") / name).write_text("mine", encoding="utf-8")
    result = run("demo", "galley")
    assert result.exit_code == 1
    assert "left alone" in result.stderr
    assert [path.name for path in Path("galley").iterdir()] == [name]
    assert (Path("galley") / name).read_text(encoding="utf-8") == "mine"


def test_a_file_in_place_of_the_folder(run: Run) -> None:
    """It is not replaced by a folder."""
    Path("galley").touch()
    assert run("demo", "galley").exit_code == 1


def test_it_shows_every_kind_of_front_and_box(demo_job: Path) -> None:
    """A newcomer finds an example of each, bored fronts and holes by hand among them."""
    job = read_in_hand(demo_job)
    fronts = [front for box in job.boxes for front in box.fronts]
    assert {front.kind for front in fronts} == set(FRONT_KINDS)
    assert {box.kind for box in job.boxes} == set(BOX_KINDS)
    assert any(front.boring.bored and front.hung.hinges_at for front in fronts)
    assert any(front.holes for front in fronts)
    assert any(
        front.five_piece.stile and front.five_piece.groove and front.five_piece.panel
        for front in fronts
    )
    assert any(front.edges.edge_radius for front in fronts)
    assert {slide.mount for slide in job.slides.values()} == {"under", "side"}
    assert {pull.centers for pull in job.pulls.values()} == {160.0, None}


def test_it_has_warnings_but_nothing_is_assumed(demo_job: Path) -> None:
    """It is honest about what is doubtful, and leaves no number out."""
    layout = lay_out(read_in_hand(demo_job))
    assert {problem.level for problem in layout.problems} == {"warning"}
    assert len([p for p in layout.problems if not p.code.startswith("unconfirmed")]) < 12
    assert assumed_lines(layout.job) == ()


def test_whoever_copies_it_keeps_its_stamps_until_they_write_the_word(demo_job: Path) -> None:
    """Its records are written out in full and invented: `confirmed` stands in comments alone, and
    every number that differs from make to make is open. Of 27 fronts all rest on some but a
    false front without a pull; the one rollout is no front."""
    text = demo_job.read_text(encoding="utf-8")
    assert [line for line in text.splitlines() if re.match(r" *confirmed", line)] == []
    assert "\n# confirmed = " in text
    job = read_in_hand(demo_job)
    records: list[HingeRecord | SlideRecord | PullRecord] = [
        *job.hinges.values(),
        *job.slides.values(),
        *job.pulls.values(),
    ]
    assert len(records) == 6
    assert not any(record.confirmed for record in records)
    assert ready_words(lay_out(job), SHEETS.ready) == (
        "27 fronts have sheets. 26 and 1 rollout depend on open numbers."
    )
