"""How a finding becomes a fact and a remedy: its figures put into the sentences of its code.

The sentences are data, in `findings.toml`. One names its values in braces. A length is written in
the job's unit; behind a colon stands how else a value is written: `mm` bare in millimetres, `g` a
plain number, `d` a count, `metric` in mm first, `left` what is left of a gap, `quoted` as the job
file takes it, `weight` in kg and pounds, `about` a range of plain numbers, `range` one of lengths,
`name` a code as words; and what joins several: `and`, `to`, else a comma, of pairs `xy`, `at`,
`off`. What has a bar is one of two wordings: the first where there is such a value, and it is not
0. Lengths that differ, and have to as they are written, stand together under `apart`; where inches
would write them alike the whole finding is in mm.

>>> from jigs.ground.problems import warning
>>> say(warning("hinges-close", "B1-1", spread=100.0, least=150.0), "mm").fact
'its outer hinges are 100.0 mm (3 15/16 in) apart, less than 150.0 mm (5 29/32 in)'
"""

import re
import tomllib
from collections import defaultdict
from collections.abc import Iterable, Mapping
from functools import cache, lru_cache
from pathlib import Path
from string import Formatter
from typing import Any, NamedTuple

from jigs.fittings.slide import KG_PER_POUND
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_inches, format_length, format_mm, telling_unit
from jigs.ground.problems import Open, Problem, Told
from templates.words.leafletwords import range_words

JOINED = {"and": " and ", "to": " to "}
"""What stands between several values; a comma otherwise."""
PAIRS = {"xy": (", ", "x {}, y {}"), "at": ("; ", "{} at {}"), "off": (" and ", "{} {}")}
"""What stands between several pairs, and how each is written."""
_BAR = "\0"
"""Stands for a bar in a name till the sentence is made: it parts no wordings."""


class Said(NamedTuple):
    """A finding in words."""

    fact: str
    remedy: str


class _Sentence(Formatter):
    """Write values as sentences ask for them."""

    def __init__(self, unit: Unit) -> None:
        self._unit = unit

    def format_field(self, value: Told, spec: str) -> str:
        """Write one value."""
        if "|" in spec:
            return spec.split("|")[0 if value else 1]
        match value:
            case None:
                return ""
            case str():
                return (value.replace("-", " ") if spec == "name" else value).replace("|", _BAR)
            case Open(mm=mm):
                return f"about {self._number(mm, '')} (open: the leaflet's own figure rules)"
            case (float(low), float(high)) if spec == "about":
                return f"about {low:g}" if low == high else f"{low:g} to {high:g}"
            case ((float() | int() | None) as low, (float() | int() | None) as high) if (
                spec == "range"
            ):
                return range_words(low, high, self._unit)
            case tuple() if spec in PAIRS:
                joined, pair = PAIRS[spec]
                return joined.join(
                    pair.format(*(self.format_field(one, "") for one in each))
                    for each in value
                    if isinstance(each, tuple)
                )
            case tuple():
                joined, own = (JOINED[spec], "") if spec in JOINED else (", ", spec)
                return joined.join(self.format_field(each, own) for each in value)
            case _:
                return self._number(value, spec)

    def _number(self, number: float, spec: str) -> str:
        match spec:
            case "":
                return format_length(number, self._unit)
            case "mm":
                return format_mm(number)
            case "left":
                return format_length(number, self._unit) if number > SLACK else "nothing"
            case "metric":
                return format_length(number, "mm")
            case "quoted":
                inches = format_inches(number)
                whole = self._unit == "in" and inches[-1] not in "+-"
                return f'"{inches} in"' if whole else f'"{format_mm(number)} mm"'
            case "weight":
                return f"{number:.1f} kg ({number / KG_PER_POUND:.0f} lb)"
            case _:
                return format(number, spec)


WORDS = Path(__file__).with_name("findings.toml")


@cache
def _tables() -> Mapping[str, str]:
    """Give the tables of every finding as they are written, by its code: a run says a few of them,
    and to read them all takes as long as to read its job file three times."""
    tables: defaultdict[str, str] = defaultdict(str)
    for table in re.split(r"^(?=\[)", WORDS.read_text(encoding="utf-8"), flags=re.MULTILINE)[1:]:
        code, _, _ = table[1:].partition("]")[0].partition(".")
        tables[code] += table
    return dict(tables)


@cache
def words_of(code: str) -> Mapping[str, Any]:
    """Give the words of a finding with those of its cases."""
    words: dict[str, Any] = tomllib.loads(_tables()[code])[code]
    return words


def entry_of(code: str, case: str = "") -> Mapping[str, Any]:
    """Give the words of one finding: of a case its own, and what it shares with the others."""
    shared = words_of(code)
    return {**shared, **shared[case]} if case else shared


@lru_cache(maxsize=4096)
def say(problem: Problem, unit: Unit) -> Said:
    """Say a finding; `unit`: that of the job, in which its lengths are written."""
    words, values = entry_of(problem.code, problem.case), dict(problem.values)
    for names in words.get("apart", ()):
        unit = telling_unit(unit, *(mm for name in names for mm in _lengths(values[name])))
    sentence = _Sentence(unit)
    fact, remedy = (sentence.vformat(words[each], (), values) for each in ("fact", "remedy"))
    return Said(fact.replace(_BAR, "|"), remedy.replace(_BAR, "|"))


def _lengths(value: Told) -> tuple[float, ...]:
    match value:
        case float() | int():
            return (value,)
        case Open(mm=mm):
            return (mm,)
        case tuple():
            return tuple(mm for each in value for mm in _lengths(each))
        case _:
            return ()


def fact_of(problem: Problem, unit: Unit) -> str:
    """Say what was found."""
    return say(problem, unit).fact


def facts_of(problems: Iterable[Problem], unit: Unit) -> str:
    """Say all that was found of a part, one after the other."""
    return " ".join(fact_of(problem, unit) for problem in problems)


def finding_name(problem: Problem) -> str:
    """Say a finding's code as words: `hinge off grid`."""
    return problem.code.replace("-", " ")


def reason_of(problem: Problem, unit: Unit) -> str:
    """Say why a part is held back, in one line: the finding's name, then the fact."""
    return f"{finding_name(problem)}: {fact_of(problem, unit)}"


def reasons_of(problems: Iterable[Problem], unit: Unit) -> tuple[str, ...]:
    """Say why a part is held back, each reason once."""
    return tuple(dict.fromkeys(reason_of(problem, unit) for problem in problems))
