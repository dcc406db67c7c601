"""`jigsheet hang`: a page a wall or text, the walls that are chosen, what is refused."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.readback import read_pages


def test_a_page_for_each_wall_and_how_it_is_done(run: Run, demo_job: Path) -> None:
    """The walls first, each on one page; then the pages of the work."""
    result = run("hang", demo_job)
    assert result.exit_code == 0, result.output
    pages = read_pages(Path("hang.pdf").read_bytes())
    assert f"hang.pdf: {len(pages)} pages, 2 walls." in result.stderr
    assert ["WALL: lines and order" in page.text for page in pages[:3]] == [True, True, False]


@pytest.mark.parametrize("name", ["south", "S1", "S1-1", "S1-SIDE-L"])
def test_only_takes_the_wall_of_any_part(name: str, run: Run, demo_job: Path) -> None:
    """The same words for each, and none of the other wall."""
    result = run("hang", demo_job, "--format", "text", "--only", name)
    assert result.exit_code == 0, result.output
    assert "SOUTH WALL. Lines to strike" in result.stdout
    assert "NORTH" not in result.stdout
    assert "B1-2" not in result.stdout


def test_the_unit_of_the_terminal_changes_no_byte_on_paper(run: Run, small: Path) -> None:
    """Paper has millimetres large; a terminal has the unit that is asked for first."""
    for name, units in (("a.pdf", "mm"), ("b.pdf", "in")):
        assert run("hang", small, "--units", units, "-o", name).exit_code == 0
    assert Path("a.pdf").read_bytes() == Path("b.pdf").read_bytes()


def test_where_no_box_stands_nothing_is_written(run: Run, small: Path) -> None:
    """A dishwasher's place alone is no box to set."""
    head = small.read_text("utf-8").partition("  [[box.front]]")[0].replace('"base"', '"open"')
    front = '  [[box.front]]\n  kind = "panel"\n  leaflet = "noted"\n'
    small.write_text(head + front, encoding="utf-8")
    result = run("hang", small)
    assert result.exit_code == 0, result.output
    assert "Nothing to set" in result.stderr
    assert not Path("hang.pdf").exists()


def test_text_is_on_no_paper_and_for_no_printer(run: Run, small: Path) -> None:
    """Wrong usage; nothing is written."""
    for more in (("--paper", "a3"), ("--printer", "garage")):
        result = run("hang", small, "--format", "text", *more)
        assert result.exit_code == 2
        assert result.stdout == ""
