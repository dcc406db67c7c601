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


def test_given_twice_both_hold(tmp_path: Path) -> None:
    """As one line; where they say two things of one key, none is chosen."""
    offer = tmp_path / "offer.csv"
    offer.write_text(OFFER.replace("Tür", "Twig"), encoding="utf-8")
    both = run("check", offer, "--columns", "kinds.Twig=door", "--columns", "order=width-first")
    assert "3 fronts: 1 door, 2 drawers" in both.stdout
    twice = run("check", offer, "--columns", "order=width-first", "--columns", "order=height-first")
    assert twice.exit_code == 2
    assert "order stands twice ('height-first' given the second time)" in twice.stderr


def test_a_column_is_told_in_the_unit_that_its_cells_say(tmp_path: Path) -> None:
    """Before its order is known too; a bare number among them is in the list's unit."""
    offer = tmp_path / "offer.csv"
    offer.write_text('Kind;Size W / H\ndoor;"11 7/8"" x 35 7/8"""\n', encoding="utf-8")
    assert "B 'Size W / H' size (in)" in run("check", offer, "--columns", "size=B").stderr
    offer.write_text('Kind;Size\ndoor;"11 7/8"" x 35 7/8"""\ndoor;300 x 900\n', encoding="utf-8")
    assert "B 'Size' size (mm)" in run("check", offer).stderr
    offer.write_text('Kind;w;h\ndoor;"11 7/8 in";"91,1 cm"\n', encoding="utf-8")
    told = run("check", offer).stderr
    assert "B 'w' width (in), C 'h' height (cm)" in told
