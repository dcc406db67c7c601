"""All that a list asks, told at once: what it would ask next is found by answering it, and one line
holds the answers to all of it, each with what is allowed.

>>> from jigs.given.listspec import ListSpec
>>> order = AskedBack("", (("", "order=width-first"), ("", "order=height-first")))
>>> hand = AskedBack("", (("", "hinged=E"), ("", "nothing=E")))
>>> print(answer_line(ListSpec(), [order, hand], bare=True))
--columns "order=width-first|height-first,hinged=E|nothing=E"
>>> print(answer_line(ListSpec(), [order, hand], bare=False))
[list]
order = "width-first|height-first"
columns = { "hinged|nothing" = "E" }
"""

from collections.abc import Callable, Iterable, Sequence

from jigs.given.listspec import SETTINGS, ListSpec
from jigs.ground.errors import AskedBack, Fault, JigsheetError
from jigs.reading.listgiven import (
    WORDED,
    inline_table,
    join_specs,
    pair_of,
    parse_columns,
    parts_of,
    text_of,
    unquoted,
    write_columns,
)

ROUNDS = 4
"""How often what is asked next is looked for: an answer that brings a new question each time is
none that one line helps with."""
MOST_TRIED = 3
"""Choices of which each is tried; of more (what a word means) the first stands for all."""
MOST_ROWS_TRIED = 400
"""Rows of a list that is read once for each choice: a longer one is not waited for."""

FaultsBy = Callable[[ListSpec], Sequence[Fault]]
"""Reads a list as a person says, and gives what is wrong then."""


def find_later(
    read: FaultsBy, spec: ListSpec, faults: Sequence[Fault], *, trying: bool
) -> list[Fault]:
    """Find what a list asks once it is told what it asks now (`faults`): each question is answered
    by its first choice, or, `trying`, by the first of those that leave the fewest faults."""
    later: list[Fault] = []
    known = {_key(fault) for fault in faults}
    now = [fault for fault in faults if fault.asked]
    for _ in range(ROUNDS):
        for fault in now:
            spec = _answered(read, spec, fault, trying)
        now = [f for f in read(spec) if f.asked and _key(f) not in known]
        if not now:
            break
        known |= {_key(fault) for fault in now}
        later += now
    return later


def _key(fault: Fault) -> object:
    """Tell a question from others, by what answers it: its rows may become more."""
    return fault.asked.choices[0][1] if fault.asked and fault.asked.choices else fault.what


def _answered(read: FaultsBy, spec: ListSpec, fault: Fault, trying: bool) -> ListSpec:
    """Give what is said of a list with the likeliest answer to one question."""
    assert fault.asked is not None
    tried: list[ListSpec] = []
    for _, said in fault.asked.choices:
        try:
            tried.append(join_specs(spec, parse_columns(said)))
        except JigsheetError:
            continue
    if not tried or not trying or len(tried) > MOST_TRIED:
        return tried[0] if tried else spec
    return min(tried, key=lambda one: len(read(one)))


def ahead(faults: Sequence[Fault], later: Sequence[Fault], spec: ListSpec, *, bare: bool) -> str:
    """Say what is asked next, and write the line that answers all of it; "" where the one question
    says so itself."""
    asked = [fault.asked for fault in (*faults, *later) if fault.asked and fault.asked.choices]
    if len(asked) < 2:
        return ""
    lines = ["Asked next, as far as can be seen:", *map(str, later)] if later else []
    one = "in one line" if bare else "in the job"
    lines.append(f"All answers {one}, of what | parts keep one:")
    return "\n".join([*lines, answer_line(spec, asked, bare=bare)])


def answer_line(spec: ListSpec, asked: Iterable[AskedBack], *, bare: bool) -> str:
    """Write the answers to all questions as they are given, with what is allowed parted by |, so
    that it is refused until one is kept of each."""
    asked, said = tuple(asked), parts_of(write_columns(spec))
    if not bare:
        pairs = [pair for each in asked for pair in _pairs(each)]
        return _table([*map(pair_of, said), *dict.fromkeys(pairs)])
    line = ",".join([*said, *dict.fromkeys(map(_alternatives, asked))])
    quote = "'" if '"' in line else '"'
    return f"--columns {quote}{line}{quote}"


def _alternatives(asked: AskedBack) -> str:
    """Write the answers to one question in one: those of one key as `key=one|other`.

    >>> both = (("", "width=C,height=D"), ("", "width=D,height=C"))
    >>> _alternatives(AskedBack("", both))
    'width=C|D,height=D|C'
    """
    ways = _ways(asked)
    if len({tuple(key for key, _ in way) for way in ways}) == 1:
        return ",".join(
            f"{pairs[0][0]}={'|'.join(dict.fromkeys(value for _, value in pairs))}"
            for pairs in zip(*ways, strict=True)
        )
    return "|".join(said for _, said in asked.choices)


def _ways(asked: AskedBack) -> list[list[tuple[str, str]]]:
    """Give each answer to a question as keys with what they hold."""
    return [[pair_of(part) for part in parts_of(said)] for _, said in asked.choices]


def _pairs(asked: AskedBack) -> list[tuple[str, str]]:
    """Give the answers to one question in one, as keys of a table with what they hold.

    >>> _pairs(AskedBack("", (("", "left=E,right=F"), ("", "nothing=E,nothing=F"))))
    [('left|nothing', 'E'), ('right|nothing', 'F')]
    """
    found = []
    for pairs in zip(*_ways(asked), strict=True):
        keys, values = (dict.fromkeys(each) for each in zip(*pairs, strict=True))
        found.append(("|".join(keys), "|".join(values)))
    return found


def _table(pairs: Iterable[tuple[str, str]]) -> str:
    """Write `[list]` of a job file."""
    tables: dict[str, dict[str, object]] = {}
    lines = []
    for key, value in pairs:
        named = next((name for name, (begun, _) in WORDED.items() if key.startswith(begun)), "")
        if named:
            word = unquoted(key[len(WORDED[named][0]) :])
            tables.setdefault(named, {})[word] = value
        elif key in SETTINGS:
            lines.append(f"{key} = {text_of(value)}")
        else:
            columns = tables.setdefault("columns", {})
            columns[key] = [columns[key], value] if key in columns else value
    lines += [f"{name} = {inline_table(said)}" for name, said in tables.items()]
    return "\n".join(["[list]", *lines])
