"""`jigsheet order`: its formats, and what is refused."""

import json
from pathlib import Path

from tests.cli.conftest import Run


def test_its_formats(run: Run, small: Path) -> None:
    """Text, CSV and data go to standard output, the workbook to a file."""
    assert "Fronts are of finished size, WIDTH x HEIGHT" in run("order", small).stdout
    assert run("order", small, "--format", "csv").stdout.startswith(
        "what,part,box,record,width_mm,"
    )
    assert json.loads(run("order", small, "--format", "json").stdout)["schema"] == 1
    assert run("order", small, "--fronts").stdout.startswith(
        "id,box,pieces to make,kind,width (mm),"
    )
    result = run("order", small, "--format", "xlsx")
    assert result.exit_code == 0, result.output
    assert Path("order.xlsx").read_bytes().startswith(b"PK")
    result = run("order", small, "--format", "pdf")
    assert result.exit_code == 0, result.output
    assert "order.pdf: 1 page." in result.stderr or "order.pdf: 2 pages." in result.stderr
    assert Path("order.pdf").read_bytes().startswith(b"%PDF")


def test_it_warns_before_the_boxes_are_measured(run: Run, small: Path) -> None:
    """Until a box says built = true."""
    assert "Not marked as built and measured: B1." in run("order", small).stderr
    small.write_text(small.read_text().replace('depth = "23"', 'depth = "23"\nbuilt = true'))
    assert "Not marked" not in run("order", small).stderr


def test_what_an_order_delivers_matches_itself(run: Run, small: Path) -> None:
    """The supplier's list, come back as delivered, has nothing missing and nothing off."""
    assert run("order", small, "--fronts", "-o", "fronts.csv").exit_code == 0
    result = run("check", small, "--delivered", "fronts.csv")
    assert result.exit_code == 0, result.output
    assert "2 of 2 fronts" in result.stdout


def test_the_pack_has_the_suppliers_list(run: Run, small: Path) -> None:
    """fronts.csv is what order --fronts prints, and JOB of a check by itself."""
    assert run("pack", small).exit_code == 0
    packed = small.parent / "pack" / "fronts.csv"
    assert run("order", small, "--fronts").stdout == packed.read_text(encoding="utf-8")
    result = run("check", packed)
    assert result.exit_code == 0, result.output
    assert "2 fronts: 1 door, 1 drawer, on 1 box (inferred)" in result.stdout


def test_what_has_arrived_is_not_ordered_again(run: Run, small: Path) -> None:
    """--delivered leaves in the list what is missing; the cut list takes it, and stays."""
    Path("came.csv").write_text("id,width,height\nB1-1,17 7/8,6\n", encoding="utf-8")
    told = run("order", small, "--delivered", "came.csv").stdout
    assert "In hand, not ordered again: B1-1." in told
    rows = run("order", small, "--delivered", "came.csv", "--fronts").stdout.splitlines()
    assert [row.partition(",")[0] for row in rows] == ["id", "B1-2"]
    plain = run("parts", small, "--format", "csv")
    assert run("parts", small, "--format", "csv", "--delivered", "came.csv").stdout == plain.stdout


def test_a_front_list_is_csv(run: Run, small: Path) -> None:
    """--fronts with another format is wrong usage."""
    assert run("order", small, "--fronts", "--format", "xlsx").exit_code == 2
