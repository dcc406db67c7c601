"""A kind or a purpose that a table misses is named by the type checker."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
GEOMETRY = "jigs/ground/geometry.py"
TABLES = {
    "jigs/given/kinds.py": ('"manual": Kind,', '"manual": str,'),
    "templates/words/fittingwords.py": ('"manual": FittingWords,',),
    "templates/words/holewords.py": ('"manual": HoleWords,',),
}
"""The modules of the tables, with the last name in each table's type."""
CHECKED = (
    "jigs.given.kinds", "jigs.checks.faces", "templates.words.fittingwords",
    "templates.words.holewords",
)  # fmt: skip
"""The tables, and a module that looks into the one that its own module does not look into."""


def complaints(folder: Path, *, typed: bool) -> list[str]:
    """Give what the type checker says of a new kind and purpose without entries; `typed`: with
    their names in the tables' types."""
    for package in ("jigs", "templates"):
        shutil.copytree(ROOT / package, folder / package)
    shutil.copy(ROOT / "pyproject.toml", folder)
    changes = [(GEOMETRY, '"manual",\n]'), (GEOMETRY, '"manual"\n]')]
    if typed:
        changes += [(name, line) for name, lines in TABLES.items() for line in lines]
    for name, line in changes:
        path = folder / name
        text = path.read_text(encoding="utf-8")
        assert text.count(line) == 1, (name, line)
        more = '"catch", ' if name == GEOMETRY else line.replace("manual", "catch") + " "
        path.write_text(text.replace(line, f"{more}{line}"), encoding="utf-8")
    said = subprocess.run(
        [sys.executable, "-m", "mypy", *(word for name in CHECKED for word in ("-m", name))],
        cwd=folder, capture_output=True, text=True, check=False,
    )  # fmt: skip
    return [line for line in said.stdout.splitlines() if "error:" in line]


@pytest.mark.slow
@pytest.mark.parametrize("typed", [False, True])
def test_what_the_tables_miss_is_named(tmp_path: Path, typed: bool) -> None:
    """First that the table's type does not know the name, then that the table has no entry."""
    found = complaints(tmp_path, typed=typed)
    for table in ("_Kinds", "_Holes", "_ByKind", "_ByPurpose"):
        missed = f'TypedDict "{table}" has no key "catch"'
        if typed:
            missed = f'Missing key "catch" for TypedDict "{table}"'
        assert any(missed in line for line in found), found
