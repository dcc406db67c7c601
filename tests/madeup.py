"""A kind of fitting that the tool does not have: a catch, pressed into a hole 8 wide and 12 deep
in a door's back or a box side. What a real next kind would need stands in the two tables and
their words; here a test puts it there.
"""

import pytest

from jigs.given.kinds import HOLES, KINDS, Bore, Kind
from templates.words.cardwords import numbered
from templates.words.fittingwords import FITTING_WORDS, CountWords, FittingWords
from templates.words.holewords import HOLE_WORDS, HoleWords

BORE = Bore(8.0, 12.0)


def add_catch(patch: pytest.MonkeyPatch) -> None:
    """Add the kind to the tables, and to nothing else."""
    patch.setitem(
        KINDS,
        "catch",
        Kind(
            holes=("catch",),  # type: ignore[arg-type]
            record=None,
            across="as-stated",
            up="as-stated",
            bought="each-hole",
            bore=BORE,
        ),
    )
    patch.setitem(HOLES, "catch", "catch")
    patch.setitem(
        FITTING_WORDS,
        "catch",
        FittingWords(
            heading=numbered("CATCH"),
            stick="catch",
            lay="Lay the catch on the drawing.",
            label=CountWords("CATCH", "CATCHES"),
            bought="catch, pressed in",
        ),
    )
    patch.setitem(
        HOLE_WORDS,
        "catch",
        HoleWords(name="Catch", caution="Clamp the part; a catch sits tight once only."),
    )
