"""`jigsheet sheets --format svg, outlines, dxf`: folders of files."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run

FORMS = ("svg", "outlines", "dxf")


def names(folder: str) -> set[str]:
    return {path.name for path in Path(folder).iterdir()}


def test_pages_are_numbered_files(run: Run, small: Path) -> None:
    """They sort as the printed sheets do."""
    result = run("sheets", small, "--format", "svg", "--only", "B1-2")
    assert result.exit_code == 0, result.output
    files = names("sheets-svg")
    assert "001-first-page.svg" in files
    assert any(name.endswith("-B1-2.svg") for name in files)
    assert f"sheets-svg: {len(files)} files." in result.stderr


def test_faces_are_named_by_part_and_face(run: Run, small: Path) -> None:
    """Both bare forms have the same names, and the same bytes a second time."""
    for form, kind in (("outlines", "svg"), ("dxf", "dxf")):
        for folder in ("a", "b"):
            words = ("--format", form, "-o", f"{form}-{folder}")
            assert run("sheets", small, *words).exit_code == 0
        assert {f"B1-2-BACK.{kind}", f"B1-SIDE-L-INSIDE.{kind}"} <= names(f"{form}-a")
        for path in Path(f"{form}-a").iterdir():
            assert path.read_bytes() == (Path(f"{form}-b") / path.name).read_bytes()


@pytest.mark.parametrize("form", FORMS)
def test_a_held_part_has_no_file_and_an_older_one_is_named(
    form: str, run: Run, small: Path, held: Path
) -> None:
    """What an earlier run left of it is not silently taken for good."""
    assert run("sheets", small, "--format", form, "-o", "out").exit_code == 0
    before = names("out")
    result = run("sheets", held, "--format", form, "-o", "new")
    assert result.exit_code == 1
    assert not any("B1-2-" in name or "-B1-2." in name for name in names("new"))
    told = run("sheets", held, "--format", form, "-o", "out").stderr
    stale = before - names("new")
    assert stale
    assert all(name in told.partition("Of an earlier run")[2] for name in stale)


@pytest.mark.parametrize("form", FORMS)
def test_a_folder_does_not_go_to_standard_output(form: str, run: Run, small: Path) -> None:
    """It is wrong usage; a file in the folder's place is told too."""
    result = run("sheets", small, "--format", form, "-o", "-")
    assert result.exit_code == 2
    assert "folder" in result.stderr
    before = small.read_bytes()
    result = run("sheets", small, "--format", form, "-o", small)
    assert result.exit_code == 1
    assert small.read_bytes() == before


@pytest.mark.parametrize("form", ["outlines", "dxf"])
def test_bare_faces_know_no_printer(form: str, run: Run, small: Path) -> None:
    """A correction that is not made is not passed over in silence."""
    assert run("sheets", small, "--format", form, "--printer", "garage").exit_code == 2


@pytest.mark.slow
@pytest.mark.parametrize("form", FORMS)
def test_a_folder_of_drawings_appears_together(form: str, run: Run, small: Path) -> None:
    """Where the last of them cannot be written, none is, and an older set stays as it was."""
    assert run("sheets", small, "--format", form, "-o", "out").exit_code == 0
    *others, last = sorted(Path("out").iterdir())
    for path in others:
        path.write_text("older")
    last.unlink()
    last.mkdir()
    result = run("sheets", small, "--format", form, "-o", "out")
    assert result.exit_code == 1
    assert last.name in result.stderr
    assert {path.read_text() for path in others} == {"older"}
    assert names("out") == {path.name for path in (*others, last)}
