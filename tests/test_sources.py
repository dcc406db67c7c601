"""Sources that stand beside numbers: each can be found by whoever reads it."""

import re
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[1]
FOLDERS = ("cli", "jigs", "templates", "tests")
NOT_HERE = re.compile(r"trade\s+notes|project's\s+notes|textbook|another\s+maker", re.IGNORECASE)
CLAUSE = re.compile(r"(ISO(?:/IEC)? (?:32000-1|18004))(:\d{4})?[,;]?\s+(?:\d|annex|table|clause)")


@cache
def texts() -> dict[str, str]:
    """Give the text of each module and each page of prose, without this one."""
    paths = [path for folder in FOLDERS for path in (ROOT / folder).rglob("*.py")]
    paths += [*ROOT.glob("*.md"), *ROOT.glob("*/*.md")]
    return {
        str(path.relative_to(ROOT)): path.read_text("utf-8")
        for path in paths
        if path != Path(__file__)
    }


def test_no_source_is_one_that_nobody_can_open() -> None:
    """A number is derived, published under a name, common practice, or from memory."""
    assert [name for name, text in texts().items() if NOT_HERE.search(text)] == []


def test_a_clause_is_of_an_edition() -> None:
    """Clauses are numbered anew from edition to edition."""
    found = [
        f"{name}: {clause[0]}"
        for name, text in texts().items()
        for clause in CLAUSE.finditer(text)
        if not clause[2]
    ]
    assert found == []


def test_what_is_second_hand_is_called_so_everywhere() -> None:
    """Neither standard was read: both are quoted from what others say of them."""
    for standard in ("EN 1116", "KCMA A161.1"):
        for name, text in texts().items():
            assert not re.search(rf"published: {standard}", text), name
