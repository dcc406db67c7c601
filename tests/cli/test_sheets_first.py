"""`jigsheet sheets --first`: what it takes to try one door and one drawer on scrap."""

from pathlib import Path

from tests.cli.conftest import HELD, Run


def test_only_the_parts_that_are_tried_are_drawn(run: Run, small: Path) -> None:
    """Cover, pass marks, the fronts and sides; the same job gives the same bytes."""
    assert run("sheets", small, "--first").exit_code == 0
    first = Path("sheets.pdf").read_bytes()
    assert run("sheets", small, "--first", "-o", "b.pdf").exit_code == 0
    assert Path("b.pdf").read_bytes() == first


def test_it_chooses_by_itself(run: Run, small: Path) -> None:
    """With --only it is wrong usage."""
    assert run("sheets", small, "--first", "--only", "B1").exit_code == 2


def test_a_job_with_nothing_to_try_says_so(run: Run, tmp_path: Path) -> None:
    """A door held back alone leaves nothing, and no file is written."""
    path = tmp_path / "bare.toml"
    path.write_text(
        HELD.replace('  [[box.front]]\n  kind = "drawer"\n  height = "6"\n', ""), encoding="utf-8"
    )
    result = run("sheets", path, "--first")
    assert result.exit_code == 1
    assert "Nothing to try" in result.stderr
    assert list(Path().iterdir()) == []


def test_the_story_stick_is_drawn_by_itself(run: Run, small: Path) -> None:
    """Into a file of its own; not together with the trial sheets, nor as data."""
    result = run("sheets", small, "--stick")
    assert result.exit_code == 0, result.output
    assert Path("stick.pdf").read_bytes().startswith(b"%PDF")
    assert "steel tape" in result.stderr
    assert run("sheets", small, "--stick", "--first").exit_code == 2
    assert run("sheets", small, "--stick", "--format", "json").exit_code == 2


def test_a_stick_is_the_same_however_the_job_is_shown(run: Run, small: Path) -> None:
    """--units changes what the terminal says, not a byte of what is printed."""
    assert run("sheets", small, "--stick", "--only", "B1", "-o", "a.pdf").exit_code == 0
    shown = run("sheets", small, "--stick", "--only", "B1", "--units", "mm", "-o", "b.pdf")
    assert shown.exit_code == 0
    assert Path("a.pdf").read_bytes() == Path("b.pdf").read_bytes()
