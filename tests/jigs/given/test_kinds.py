"""The table of kinds."""

from typing import get_args

from jigs.given.kinds import HOLES, KINDS, by_rank
from jigs.ground.geometry import FittingKind, Purpose
from templates.words.fittingwords import FITTING_WORDS

NAMES: tuple[FittingKind, ...] = get_args(FittingKind)


def test_every_kind_has_its_entry_and_its_words() -> None:
    """And no entry is without a kind."""
    assert set(KINDS) == set(FITTING_WORDS) == set(NAMES)


def test_every_hole_belongs_to_one_kind() -> None:
    """A purpose is named once."""
    purposes = [purpose for kind in NAMES for purpose in KINDS[kind].holes]
    assert sorted(purposes) == sorted(HOLES) == sorted(get_args(Purpose))


def test_kinds_follow_each_other_as_in_the_table() -> None:
    """Cups before pulls, what is stated by hand last."""
    assert by_rank(NAMES[::-1]) == tuple(KINDS)
    assert by_rank(["manual", "pull", "manual", "hinge"]) == ("hinge", "pull", "manual")
