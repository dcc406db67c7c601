"""Holes before and after: which is which, how far it went, and what saves the wood."""

import pytest
from msgspec.structs import replace

from jigs.changes.boring import FAR, HAND, compare_holes
from jigs.changes.made import MadeHole

PULL = MadeHole(purpose="pull", face="front", x=50.0, y=76.2, diameter=5.0, depth=None)
CUP = MadeHole(purpose="cup", face="back", x=22.5, y=97.8, diameter=35.0, depth=13.0)
PIN = MadeHole(purpose="shelf", face="inside", x=37.0, y=200.0, diameter=5.0, depth=12.0)


@pytest.mark.parametrize(
    ("before", "after", "kind", "by", "cure"),
    [
        (PIN, replace(PIN, y=200 + HAND), "moved", HAND, "by-hand"),
        (PIN, replace(PIN, y=200 + HAND, depth=13.0), "deeper", 1.0, "bore-on"),
        (PIN, replace(PIN, y=200 + HAND, diameter=3.0), "narrower", 2.0, "plug"),
        (PIN, replace(PIN, y=204.9), "moved", 4.9, "plug"),  # 5 apart they touch
        (PIN, replace(PIN, y=205.1), "moved", 5.1, "beside"),
        (CUP, replace(CUP, x=24.5), "moved", 2.0, "plug"),
        (CUP, replace(CUP, y=97.8 + 36), "moved", 36.0, "beside"),
        (PULL, replace(PULL, x=82.0), "moved", 32.0, "shows"),
        (PULL, None, "gone", 0.0, "shows"),
        (PIN, None, "gone", 0.0, "leave"),
        (CUP, None, "gone", 0.0, "beside"),
        (None, CUP, "new", 0.0, "bore"),
        (PIN, replace(PIN, depth=13.0), "deeper", 1.0, "bore-on"),
        (PIN, replace(PIN, depth=10.5), "shallower", 1.5, "leave"),
        (PIN, replace(PIN, depth=None), "through", 0.0, "bore-on"),
        (PULL, replace(PULL, depth=12.0), "blind", 0.0, "shows"),
        (PIN, replace(PIN, diameter=8.0), "wider", 3.0, "bore-out"),
        (PIN, replace(PIN, diameter=3.0), "narrower", 2.0, "plug"),
    ],
)
def test_a_change_says_what_is_done_where_the_hole_is_bored(
    before: MadeHole | None, after: MadeHole | None, kind: str, by: float, cure: str
) -> None:
    """Deeper is bored on, wider bored out; what cuts into the old hole is plugged first."""
    [change] = compare_holes([before] if before else [], [after] if after else [])
    assert (change.kind, change.cure) == (kind, cure)
    assert change.by == pytest.approx(by)


def test_what_no_figure_on_paper_tells_is_the_same_hole() -> None:
    """Half of the tenth that is printed."""
    assert compare_holes([PIN], [replace(PIN, x=37.05, depth=12.05)]) == ()
    assert len(compare_holes([PIN], [replace(PIN, x=37.06)])) == 1


def test_a_row_that_moves_stays_a_row() -> None:
    """Each hole is taken for the nearest; one that stayed is never taken for another."""
    row = [replace(PIN, y=200.0 + 64 * each) for each in range(4)]
    aside = compare_holes(row, [replace(hole, x=39.0) for hole in row])
    assert [change.by for change in aside] == [2.0] * 4
    longer = compare_holes(row, [*row, replace(PIN, y=200.0 + 64 * 4)])
    assert [(change.kind, change.hole.y) for change in longer] == [("new", 456.0)]


def test_a_hole_far_off_is_another_one() -> None:
    """A cup at the other edge is one less here and one more there."""
    changes = compare_holes([CUP], [replace(CUP, x=CUP.x + FAR + 1)])
    assert sorted(change.kind for change in changes) == ["gone", "new"]


def test_holes_in_two_faces_of_a_partition_are_not_one() -> None:
    """Same place, other face."""
    left, right = replace(PIN, side="left"), replace(PIN, side="right")
    assert [c.kind for c in compare_holes([left], [right])] == ["gone", "new"]


def test_a_new_hole_that_cuts_into_an_old_one_wants_a_plug() -> None:
    """Whatever the old one was for."""
    screw = replace(CUP, purpose="cup-fixing", diameter=3.0, depth=11.0, x=30.0)
    gone, new = compare_holes([CUP], [screw])
    assert (gone.kind, new.kind, new.cure) == ("gone", "new", "plug")
