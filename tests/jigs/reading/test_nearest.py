"""The names that messages suggest."""

import pytest

from jigs.given.catalogue import generic_hinges, generic_pulls, generic_slides
from jigs.ground.nearest import suggest_id, suggest_record

NAMES = (*generic_slides(), *generic_pulls())


@pytest.mark.parametrize(
    ("asked", "answer"),
    [
        ("undermount-530", "did you mean 'undermount-533'?"),
        ("Undermount-440", "did you mean 'undermount-450'?"),
        ("sidemount-505", "did you mean 'sidemount-508'?"),
        ("undermount530x", "did you mean 'undermount-533'?"),
        ("cup35-full-50", "did you mean 'cup35-full-48'?"),
        ("bar-10in", "did you mean 'bar-8in'?"),
        ("bar-150", "did you mean 'bar-160'?"),
        ("undermonut-533", "did you mean 'undermount-533'?"),
    ],
)
def test_a_records_family_and_number_are_looked_at(asked: str, answer: str) -> None:
    """Nearest by its number within its family; letters alone would find another."""
    assert suggest_record(asked, (*NAMES, *generic_hinges())) == answer


def test_families_are_named_by_their_ends() -> None:
    """Where nothing is near, every family is named, and none is hidden behind a count."""
    said = suggest_record("zzz", NAMES)
    assert said == (
        "known: undermount-229 to undermount-750, sidemount-250 to sidemount-711, "
        "bar-64 to bar-480, bar-3in to bar-18in, knob"
    )


@pytest.mark.parametrize(
    ("family", "said"),
    [
        ("undermount", "which of them: undermount-229 to undermount-750?"),
        ("bar", "which of them: bar-64 to bar-480, bar-3in to bar-18in?"),
    ],
)
def test_of_a_family_without_a_number_none_is_picked(family: str, said: str) -> None:
    """No letters say which size is meant."""
    assert suggest_record(family, NAMES) == said


def test_the_nearest_id_is_named_where_the_list_is_cut_short() -> None:
    """Nothing is like it, and the one with most letters in common is the last of fourteen."""
    ids = [f"B{n}" for n in range(1, 14)]
    said = suggest_id("WESTWALL", [*ids, "T-WEST-LOW-99"])
    assert said.endswith("and 2 more, of which 'T-WEST-LOW-99' comes nearest")
    assert suggest_id("WESTWALL", ["B1"]) == "known: B1"
