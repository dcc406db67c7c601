"""Every finding has a rank, kept in one table beside its code."""

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from jigs.ground.problems import RANKS, error, warning

ROOT = Path(__file__).parents[3]


def codes(tree: ast.Module) -> Iterator[tuple[str, str]]:
    """Each call that words a finding: the level, and each code that it may have."""
    assigned: dict[str, list[ast.expr]] = {}
    imported: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Assign):
            for target in node.targets:
                if isinstance(target, ast.Name):
                    assigned.setdefault(target.id, []).append(node.value)
        if isinstance(node, ast.ImportFrom) and node.module == "jigs.ground.problems":
            imported |= {alias.name for alias in node.names} & {"error", "warning"}
    for node in ast.walk(tree):
        match node:
            case ast.Call(func=ast.Name(id=level)) if level in imported:
                for code in values(node.args[0], assigned):
                    yield level, code


def values(expr: ast.expr, assigned: dict[str, list[ast.expr]]) -> Iterator[str]:
    """The strings that an expression may be: a word, one of two, or what a name was set to."""
    match expr:
        case ast.Constant(value=str(word)):
            yield word
        case ast.IfExp():
            yield from values(expr.body, assigned)
            yield from values(expr.orelse, assigned)
        case ast.Name() if expr.id in assigned:
            for value in assigned[expr.id]:
                yield from values(value, assigned)
        case _:
            raise AssertionError(f"line {expr.lineno}: the code of a finding cannot be read")


@cache
def worded() -> frozenset[tuple[str, str]]:
    """Each level and code that the project words."""
    texts = [
        path.read_text(encoding="utf-8")
        for room in ("jigs", "templates", "cli")
        for path in (ROOT / room).rglob("*.py")
    ]
    trees = [ast.parse(text) for text in texts if "jigs.ground.problems" in text]
    return frozenset(found for tree in trees for found in codes(tree))


def test_every_code_has_a_rank_and_every_rank_a_code() -> None:
    """A finding without a rank could not be told; a rank without a finding is a leftover."""
    assert {code for _, code in worded()} == RANKS.keys()


def test_rank_1_is_never_a_warning() -> None:
    """What has rank 1 in the table is an error alone; each other code is somewhere a warning."""
    warnings = {code for level, code in worded() if level == "warning"}
    assert warnings == {code for code, rank in RANKS.items() if rank > 1}


def test_an_error_has_rank_1() -> None:
    """Where a code is an error here and a warning there, the rank goes with the level."""
    assert error("size-differs", "B1-1", "", "").rank == 1
    assert warning("size-differs", "B1-1", "", "").rank == 2
    assert warning("sight-line", "B1-1", "", "").rank == 3


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ('error("a", None, "", "")', ["a"]),
        ('warning("a" if x else "b", None, "", "")', ["a", "b"]),
        ('WHAT = "a"\nerror(WHAT, None, "", "")', ["a"]),
    ],
)
def test_codes_are_found(source: str, found: list[str]) -> None:
    """The reader of the source sees a code, one of two, and a name."""
    tree = ast.parse(f"from jigs.ground.problems import error, warning\n{source}")
    assert [code for _, code in codes(tree)] == found


def test_a_code_that_cannot_be_read_is_told() -> None:
    """No code hides in a sum of words."""
    tree = ast.parse('from jigs.ground.problems import error\nerror("a" + x, None, "", "")')
    with pytest.raises(AssertionError):
        list(codes(tree))
