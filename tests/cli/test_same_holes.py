"""`--same-holes`: one set of sheets for parts that are alike, and what the summary says of it."""

import json
import re
from pathlib import Path

import pypdfium2
import pytest

from tests.cli.conftest import SMALL, Run

TWIN = SMALL[SMALL.index("[[box]]") :].replace('id = "B1"', 'id = "B2"')
"""The same box once more."""


@pytest.fixture
def twins(tmp_path: Path) -> Path:
    """Give a job of two boxes that are alike."""
    path = tmp_path / "twins.toml"
    path.write_text(SMALL + TWIN, encoding="utf-8")
    return path


def count_pages(path: str) -> int:
    return len(pypdfium2.PdfDocument(path))


def test_both_summaries_count_the_pages_that_there_are(run: Run, twins: Path) -> None:
    """With and without, each names the other's; half of all but the first page at least is
    saved."""
    apart = run("sheets", twins, "-o", "apart.pdf")
    shared = run("sheets", twins, "--same-holes", "-o", "shared.pdf")
    assert (apart.exit_code, shared.exit_code) == (0, 0), shared.output
    many, few = count_pages("apart.pdf"), count_pages("shared.pdf")
    assert 1 < few <= 1 + (many - 1) / 2
    assert f"{many} pages ({few} with --same-holes)." in apart.stderr
    assert f"{few} pages ({many} without --same-holes)." in shared.stderr


def test_the_pack_says_it_too_and_makes_it(run: Run, twins: Path) -> None:
    """On standard output, as its closing summary."""
    few = re.search(r"(\d+) with --same-holes", run("pack", twins, "-o", "a").stdout)
    assert few is not None
    result = run("pack", twins, "--same-holes", "-o", "b")
    assert result.exit_code == 0, result.output
    assert count_pages("b/sheets.pdf") == int(few[1])
    assert f"{few[1]} pages (" in result.stdout


def test_the_parts_chosen_share_among_themselves(run: Run, twins: Path) -> None:
    """--only two doors: one set; --only one of them: nothing to save."""
    both = run("sheets", twins, "--same-holes", "--only", "B1-2", "--only", "B2-2")
    one = run("sheets", twins, "--only", "B1-2", "-o", "one.pdf")
    assert both.exit_code == one.exit_code == 0
    assert count_pages("sheets.pdf") <= count_pages("one.pdf")
    assert "(--same-holes saves none)" in one.stderr


def test_the_cards_as_data_list_their_parts(run: Run, twins: Path) -> None:
    """`part` is the first of them; the summary goes nowhere."""
    result = run("sheets", twins, "--same-holes", "--format", "json")
    cards = json.loads(result.stdout)["cards"]
    doors = [card for card in cards if card["part"] == "B1-2"]
    assert doors
    assert all(card["parts"] == ["B1-2", "B2-2"] for card in doors)
    assert not any(card["part"].startswith("B2") for card in cards)


def test_a_delivered_front_that_measures_otherwise_falls_out(run: Run, twins: Path) -> None:
    """The door that came 1 mm wider has a set of its own; those that came alike share one."""
    layout = json.loads(run("holes", twins, "--format", "json").stdout)
    sizes = {f["id"]: (f["width_mm"], f["height_mm"]) for f in layout["fronts"]}
    for off, shared in ((1.0, False), (0.0, True)):
        rows = [
            f"{name},{width + (off if name == 'B2-2' else 0.0)},{height}"
            for name, (width, height) in sizes.items()
        ]
        Path("came.csv").write_text("\n".join(["id,width (mm),height (mm)", *rows]))
        words = ("--delivered", "came.csv", "--same-holes", "--format", "json")
        result = run("sheets", twins, *words)
        assert result.exit_code == 0, result.output
        parts = {tuple(c.get("parts", [c["part"]])) for c in json.loads(result.stdout)["cards"]}
        assert (("B1-2", "B2-2") in parts) is shared
        assert (("B2-2",) in parts) is not shared
        assert ("B1-1", "B2-1") in parts


def test_svg_pages_are_named_by_the_first_part(run: Run, twins: Path) -> None:
    """And how many are alike; the files are counted both ways."""
    result = run("sheets", twins, "--same-holes", "--only", "B1-2", "--only", "B2-2",
                 "--format", "svg", "-o", "svg")  # fmt: skip
    assert result.exit_code == 0, result.output
    names = sorted(path.name for path in Path("svg").iterdir())
    assert names[:2] == ["001-first-page.svg", "002-B1-2-and-1-alike.svg"]
    apart = run("sheets", twins, "--only", "B1-2", "--only", "B2-2", "--format", "svg", "-o", "a")
    many = len(list(Path("a").iterdir()))
    assert f"svg: {len(names)} files ({many} without --same-holes)." in result.stderr
    assert f"a: {many} files ({len(names)} with --same-holes)." in apart.stderr


def test_the_trial_on_scrap_may_share_too(run: Run, twins: Path) -> None:
    """Its parts are one of each: nothing changes but that it is asked for."""
    assert run("sheets", twins, "--first", "-o", "a.pdf").exit_code == 0
    assert run("sheets", twins, "--first", "--same-holes", "-o", "b.pdf").exit_code == 0
    assert count_pages("a.pdf") == count_pages("b.pdf")


def test_the_same_job_gives_the_same_bytes(run: Run, twins: Path) -> None:
    """Shared sheets too."""
    for name in ("a.pdf", "b.pdf"):
        assert run("sheets", twins, "--same-holes", "-o", name).exit_code == 0
    assert Path("a.pdf").read_bytes() == Path("b.pdf").read_bytes()


def test_a_stick_and_bare_faces_are_told_why_not(run: Run, twins: Path) -> None:
    """One stick serves all equal sides; a bare face is a file for its part."""
    assert "already" in run("sheets", twins, "--same-holes", "--stick").stderr
    assert "each face" in run("sheets", twins, "--same-holes", "--format", "dxf").stderr
