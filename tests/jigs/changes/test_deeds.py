"""Marks: whether a part was worked on by the figures of before."""

import pytest

from jigs.bench.kept import Kept
from jigs.changes.boring import compare_holes
from jigs.changes.deeds import Deeds
from jigs.changes.made import MadeHole, MadePart
from jigs.changes.parting import PartChange

WAS = MadeHole(purpose="cup", face="back", x=22.5, y=98, diameter=35, depth=13, work="cups")
NOW = MadeHole(purpose="cup", face="back", x=24.5, y=98, diameter=35, depth=13, work="cups")
CHANGE = PartChange(
    lot="changed", before=MadePart(id="B1-2", kind="door", code="7K4F", holes=(WAS,)),
    after=MadePart(id="B1-2", kind="door", code="Q8RD", holes=(NOW,)),
    holes=compare_holes([WAS], [NOW]),
)  # fmt: skip


@pytest.mark.parametrize(
    ("marks", "by"),
    [
        ({"bored-cups": "7K4F"}, "before"),
        ({"bored-cups": "Q8RD"}, "now"),
        ({"bored-cups": "M2QX"}, "neither"),
        ({"bored-cups": ""}, "unknown"),
        ({"bored-pulls": "7K4F"}, "not-marked"),
        ({}, "not-marked"),
    ],
)
def test_a_mark_tells_by_its_code(marks: dict[str, str], by: str) -> None:
    """What was bored by the new figures is not spoilt by the old ones."""
    deeds = Deeds(kept={"B1-2": Kept(marks=marks)}, times={("B1-2", "bored-cups"): "2026-12-03"})
    deed = deeds.of_hole(CHANGE, CHANGE.holes[0])
    assert deed.by == by
    assert deed.sure == (by == "before")
    assert deed.at == ("2026-12-03" if "bored-cups" in marks else "")


def test_without_marks_nobody_says() -> None:
    """None were ever kept."""
    assert Deeds().of_hole(CHANGE, CHANGE.holes[0]).by == "nothing-kept"
