"""Every finding has a rank, kept in one table beside its code."""

import ast

import pytest

from jigs.ground.problems import RANKS, error, warning
from tests.findingcalls import all_stated, stated_in


def test_every_code_has_a_rank_and_every_rank_a_code() -> None:
    """A finding without a rank could not be told; a rank without a finding is a leftover."""
    assert {each.code for each in all_stated()} == RANKS.keys()


def test_rank_1_is_never_a_warning() -> None:
    """What has rank 1 in the table is an error alone; each other code is somewhere a warning."""
    warnings = {each.code for each in all_stated() if each.level == "warning"}
    assert warnings == {code for code, rank in RANKS.items() if rank > 1}


def test_an_error_has_rank_1() -> None:
    """Where a code is an error here and a warning there, the rank goes with the level."""
    assert error("size-differs", "B1-1").rank == 1
    assert warning("size-differs", "B1-1").rank == 2
    assert warning("sight-line", "B1-1").rank == 3


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ('error("a", None)', {("error", "a", "")}),
        ('warning("a" if x else "b", None)', {("warning", "a", ""), ("warning", "b", "")}),
        ('WHAT = "a"\nerror(WHAT, None)', {("error", "a", "")}),
        ('T = {1: "a", 2: "b"}\nerror(T[x], None)', {("error", "a", ""), ("error", "b", "")}),
        (
            '(error if x else warning)("a", None, case="b" if x else "c")',
            {(level, "a", case) for level in ("error", "warning") for case in "bc"},
        ),
        (
            'def f():\n case = "b"\n yield error("a", None, case=case)\n'
            'def g():\n case = "c"\n found = warning\n yield found("a", None, case=case)',
            {("error", "a", "b"), ("warning", "a", "c")},
        ),
    ],
)
def test_codes_are_found(source: str, found: set[tuple[str, str, str]]) -> None:
    """The reader of the source sees a code and its case, one of two, and a name."""
    tree = ast.parse(f"from jigs.ground.problems import error, warning\n{source}")
    assert {(each.level, each.code, each.case) for each in stated_in(tree)} == found


def test_a_code_that_cannot_be_read_is_told() -> None:
    """No code hides in a sum of words."""
    tree = ast.parse('from jigs.ground.problems import error\nerror("a" + x, None)')
    with pytest.raises(AssertionError):
        list(stated_in(tree))
