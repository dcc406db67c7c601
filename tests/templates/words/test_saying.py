"""Every finding has its words, and each word its value."""

import tomllib
from collections.abc import Iterator
from string import Formatter
from typing import Any

import pytest

from jigs.ground.problems import Open, Problem, Told, warning
from templates.words.saying import WORDS, entry_of, say, words_of
from tests.findingcalls import all_stated


def all_words() -> dict[str, dict[str, Any]]:
    """Give the words of every finding, by its code."""
    return tomllib.loads(WORDS.read_text(encoding="utf-8"))


def test_the_words_of_one_finding_are_those_of_the_file() -> None:
    """Each finding's tables are read by themselves, with all their cases."""
    assert {code: words_of(code) for code in all_words()} == all_words()


def asked_by(sentence: str) -> Iterator[str]:
    """Give the names of the values that a sentence asks for, those within a wording too."""
    for _, name, spec, _ in Formatter().parse(sentence):
        if name is not None:
            yield name
            yield from asked_by(spec or "")


def asked_for(code: str, case: str) -> set[str]:
    """Give the names of all values that a finding's words ask for."""
    words = entry_of(code, case)
    names = {name for each in ("fact", "remedy") for name in asked_by(words[each])}
    return names.union(*words.get("apart", ()))


def test_every_finding_has_its_words_and_every_value_that_they_name() -> None:
    """A value that none of the wordings asks for, which a line may state, is a leftover."""
    for stated in all_stated():
        asked = asked_for(stated.code, stated.case)
        assert asked <= stated.values, (stated, asked - stated.values)
    used: dict[tuple[int, frozenset[str]], set[str]] = {}
    for stated in all_stated():
        told = used.setdefault((stated.line, stated.values), set())
        told |= asked_for(stated.code, stated.case)
    left = {line: values - told for (line, values), told in used.items() if values - told}
    assert left == {}


def test_no_words_are_left_over() -> None:
    """Each code and each case is stated somewhere."""
    stated = {(each.code, each.case) for each in all_stated()}
    written = {
        (code, case)
        for code, words in all_words().items()
        for case in ("", *words)
        if (isinstance(words[case], dict) if case else {"fact", "remedy"} <= words.keys())
    }
    assert written == stated


@pytest.mark.parametrize(
    ("unit", "gap", "least", "fact"),
    [
        ("mm", 1.0, Open(1.5), "1.0 mm (1/32+ in); needs about 1.5 mm (1/16 in)"),
        ("in", 1.0, 3.0, "1/32+ in (1.0 mm); needs 1/8- in (3.0 mm)"),
        ("in", 1.2, 1.5, "1.2 mm (1/16- in); needs 1.5 mm (1/16 in)"),
    ],
)
def test_lengths_are_told_apart(unit: str, gap: float, least: Told, fact: str) -> None:
    """In the job's unit, but in mm where inches would write two different lengths alike."""
    found = warning("hinge-edge-reveal", "B1-1", gap=gap, thick=19.05, least=least)
    said = say(found, "mm" if unit == "mm" else "in").fact
    first, second = fact.split("; needs ")
    assert f"hinge edge is {first}; a front" in said
    assert f"thick needs {second}" in said
    assert ("the leaflet's own figure rules" in said) is isinstance(least, Open)


def aimed(wall: str) -> Problem:
    """Give a finding on a pull that cannot line up with one of a wall."""
    return warning("pull-aim", "B1-1", case="other-wall", key="x", wall=wall)


def test_a_name_with_a_bar_parts_no_wordings() -> None:
    """Whatever stands in a name, it stands in the sentence."""
    assert say(aimed("a|b"), "mm").fact == "x names a front that stands on wall 'a|b'"
    assert say(aimed(""), "mm").fact == "x names a front that stands on another wall"
