"""`jigsheet labels`: how many, which, and in which order, as the person is told and as printed."""

import csv
import re
from pathlib import Path

import pypdfium2
import pytest

from tests.cli.conftest import SMALL, Run


def codes_of(labels: Path) -> list[str]:
    """Give the codes on labels, in their order on paper."""
    document = pypdfium2.PdfDocument(labels)
    pages = (document[number].get_textpage().get_text_range() for number in range(len(document)))
    return [code for page in pages for code in re.findall(r"code (\w{4})", page)]


def list_of(run: Run, job: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(run("parts", job, "--format", "csv").stdout.splitlines()))


def test_every_part_has_a_label_and_its_code_stands_in_the_cut_list(
    run: Run, small: Path, tmp_path: Path
) -> None:
    """Two fronts, one drawer box, and each piece as often as it is cut."""
    out = tmp_path / "labels.pdf"
    result = run("labels", small, "-o", out)
    assert result.exit_code == 0, result.output
    pieces = [row["code"] for row in list_of(run, small) for _ in range(int(row["count"]))]
    codes = codes_of(out)
    assert len(codes) == len(pieces) + 2 + 1
    assert f"{len(codes)} labels on 2 sheets. Print at 100 % on letter-2x5 labels." in result.stderr
    for code in set(pieces):
        assert codes.count(code) >= pieces.count(code)


def test_cutting_follows_the_saw(run: Run, small: Path, tmp_path: Path) -> None:
    """The codes stand in the order of the cut list, sorted by thickness, then length."""
    out = tmp_path / "labels.pdf"
    assert run("labels", small, "--for", "pieces", "--order", "cut", "-o", out).exit_code == 0
    rows = sorted(
        list_of(run, small),
        key=lambda row: [-float(row[f"{size}_mm"]) for size in ("thickness", "length", "width")],
    )
    wanted = [row["code"] for row in rows for _ in range(int(row["count"]))]
    assert codes_of(out)[: len(wanted)] == wanted


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["--for", "fronts"], "2 labels on 1 sheet"),
        (["--only", "b1-bottom"], "1 label on 1 sheet"),
        (["--only", "B1-1-BOX-SIDE", "--stock", "letter-3x10"], "2 labels on 1 sheet"),
        (["--only", "north", "--for", "fronts"], "2 labels on 1 sheet"),
    ],
)
def test_what_is_asked_for_is_printed(
    run: Run, small: Path, tmp_path: Path, words: list[str], told: str
) -> None:
    """Fronts alone, one piece by its ID, a piece that is cut twice."""
    out = tmp_path / "labels.pdf"
    result = run("labels", small, *words, "-o", out)
    assert result.exit_code == 0, result.output
    assert told in result.stderr
    assert len(codes_of(out)) == int(told.split()[0])


def test_nothing_to_label_is_no_file(run: Run, small: Path, tmp_path: Path) -> None:
    """A bottom is no front: the message says what would find it."""
    out = tmp_path / "labels.pdf"
    result = run("labels", small, "--only", "B1-BOTTOM", "--for", "fronts", "-o", out)
    assert result.exit_code == 1
    assert "No label: what was chosen has no fronts; --for all takes every part." in result.stderr
    assert not out.exists()


def test_the_pack_holds_every_label_and_says_how_many(
    run: Run, small: Path, tmp_path: Path
) -> None:
    """The same count as the command's own."""
    assert run("labels", small, "-o", tmp_path / "labels.pdf").exit_code == 0
    count = len(codes_of(tmp_path / "labels.pdf"))
    packed = run("pack", small, "-o", tmp_path / "pack")
    assert f"labels.pdf: {count} labels, one for every front, drawer box and cut piece, on " in (
        packed.stdout
    )
    assert len(codes_of(tmp_path / "pack" / "labels.pdf")) == count


def _metric(job: str) -> str:
    """Say the small job in mm."""
    inches = {"3/4": "19", "18": "457", "30 1/2": "775", "23": "584", "6": "152"}
    for inch, mm in inches.items():
        job = job.replace(f'"{inch}"', f'"{mm}"')
    return job.replace('units = "in"', 'units = "mm"')


@pytest.mark.parametrize("command", ["labels", "pack"])
def test_the_usual_stock_follows_the_jobs_units(run: Run, tmp_path: Path, command: str) -> None:
    """A4 for a job in mm; that of the inch jobs is tested above."""
    job = tmp_path / "job.toml"
    job.write_text(_metric(SMALL), encoding="utf-8")
    result = run(command, job, "-o", tmp_path / "out")
    assert "on a4-2x7 labels." in result.output
