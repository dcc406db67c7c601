"""`--columns`: what is said of a list on the way, and what a list that is asked about ends in."""

from pathlib import Path

from click.testing import CliRunner, Result

from cli.main import main

OFFER = "Pos;Art;Maß (mm);Stk\n1;Tür;597 x 713;1\n2;Schublade;597 x 140;2\n;Summe;;3\n"


def run(*words: object) -> Result:
    """Run a command line."""
    return CliRunner().invoke(main, [str(word) for word in words])


def test_a_list_ends_in_one_question(tmp_path: Path) -> None:
    """What is understood is told first; nothing is made, and the answer makes it."""
    offer = tmp_path / "offer.csv"
    offer.write_text(OFFER, encoding="utf-8")
    asked = run("holes", offer, "-o", tmp_path / "holes.txt")
    assert asked.exit_code == 1
    assert "C 'Maß (mm)' size (mm)" in asked.stderr
    assert "2 of 2 rows understood; to be answered:" in asked.stderr
    assert "--columns order=width-first or order=height-first" in asked.stderr
    assert not (tmp_path / "holes.txt").exists()
    told = run("check", offer, "--columns", "order=width-first")
    assert "As read, row 2: door, 597.0 mm (23 1/2 in) wide" in told.stderr
    assert "3 fronts: 1 door, 2 drawers, on 3 boxes (inferred)" in told.stdout
    # The line that it names for what else is said has the same answer in it.
    again = run("labels", offer, "--columns", "order=width-first", "-o", tmp_path / "l.pdf")
    assert f"jigsheet check {offer} --columns order=width-first" in again.stderr


def test_wrong_words_are_wrong_usage(tmp_path: Path) -> None:
    """As any option is; a job file says it in itself."""
    offer, job = tmp_path / "offer.csv", tmp_path / "job.toml"
    offer.write_text(OFFER, encoding="utf-8")
    wrong = run("check", offer, "--columns", "widht=C,order=up")
    assert wrong.exit_code == 2
    assert "did you mean 'width'?" in wrong.stderr
    assert "allowed: width-first, height-first" in wrong.stderr
    job.write_text("schema = 1\n")
    said = run("check", job, "--columns", "order=width-first")
    assert said.exit_code == 1
    assert "a job file says in [list] how its list is read, not --columns" in said.stderr
