"""`jigsheet hardware`: listed, drawn, and what is refused."""

from pathlib import Path

from tests.cli.conftest import Run


def test_without_a_name_the_records_are_listed(run: Run) -> None:
    """Nothing is written to a file."""
    result = run("hardware")
    assert result.exit_code == 0
    assert "cup35-full" in result.stdout
    assert "undermount-533" in result.stdout
    assert "bar-160" in result.stdout
    assert list(Path().iterdir()) == []


def test_a_record_is_drawn_and_its_numbers_said(run: Run) -> None:
    """The drawing goes to a file of the record's name; the same record gives the same bytes."""
    result = run("hardware", "cup35-full")
    assert result.exit_code == 0, result.output
    assert "constant" in result.stdout
    first = Path("cup35-full.pdf").read_bytes()
    assert first.startswith(b"%PDF")
    assert run("hardware", "cup35-full", "-o", "b.pdf").exit_code == 0
    assert Path("b.pdf").read_bytes() == first


def test_a_job_brings_its_own(run: Run, demo_job: Path) -> None:
    """They stand first in the list; the job itself is never written over."""
    result = run("hardware", "--job", demo_job)
    assert result.exit_code == 0
    assert result.stdout.index("  main ") < result.stdout.index("  cup35-full ")
    drawn = run("hardware", "main", "--job", demo_job, "-o", demo_job)
    assert drawn.exit_code != 0
    assert "not overwritten" in drawn.output


def test_an_unknown_name_is_wrong_usage(run: Run) -> None:
    """The message names the nearest record."""
    result = run("hardware", "undermount-530")
    assert result.exit_code == 2
    assert "undermount-533" in result.stderr


def test_a_drawing_on_standard_output_leaves_the_words_to_the_other_stream(run: Run) -> None:
    """A pipe gets the PDF alone."""
    result = run("hardware", "knob", "-o", "-")
    assert result.exit_code == 0
    assert result.stdout_bytes.startswith(b"%PDF")
    assert "knob" in result.stderr


def test_the_bench_sheet_is_for_any_hardware(run: Run) -> None:
    """It needs neither a name nor a job."""
    result = run("hardware", "--bench", "--paper", "a4")
    assert result.exit_code == 0, result.output
    assert Path("bench.pdf").read_bytes().startswith(b"%PDF")
    assert run("hardware", "--bench", "knob").exit_code == 2


def test_a_drawing_takes_the_boards_of_its_job(run: Run, demo_job: Path) -> None:
    """The same record on another job's boards is another drawing."""
    assert run("hardware", "cup35-full", "-o", "usual.pdf").exit_code == 0
    assert run("hardware", "cup35-full", "--job", demo_job, "-o", "own.pdf").exit_code == 0
    assert Path("usual.pdf").read_bytes() != Path("own.pdf").read_bytes()
