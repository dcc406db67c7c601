"""What is said of a front list: `[list]` in a job file, and the same in one line, `--columns`.

The line is parted by commas, each part a key, an equals sign and what it holds. A key is a column,
or one of the settings of `ListSpec` (`order`, `empty_box`, ...); `kinds.WORD` says what a word of
the list means, `hands.WORD` which hand, `rows.BOX` from which end a box's rows stand, `row.14`
what that row is. A
column stands at a spreadsheet's letter, at a number from 1, or is
called by its heading, and may name its unit behind it: `width=C (in)`. A heading that looks like a
letter or a number, and a heading or a word with a comma in it, stands between quotes, one of these
quotes in it twice: `kinds.'Door, upper'=pair`. `nothing` are columns that are left alone.

>>> spec = parse_columns("width=C, height=4 (in), order=width-first, kinds.Klappe=lift")
>>> spec.columns["height"], spec.order, spec.kinds
(('4 (in)',), 'width-first', {'Klappe': 'lift'})
"""

import re
from collections.abc import Mapping, Sequence
from typing import Any, get_args

from msgspec.structs import replace

from jigs.given.hangsat import RowsFrom
from jigs.given.job import FRONT_KINDS, FrontKind
from jigs.given.listspec import NOTHING, SETTINGS, HandMeant, KindMeant, ListSpec, RowMeant
from jigs.ground.errors import JigsheetError
from jigs.ground.keys import keys_of
from jigs.ground.lengths import show_value
from jigs.ground.nearest import suggest
from jigs.reading.fieldkeys import read_keys
from jigs.reading.headings import LIST_COLUMNS
from jigs.reading.tomltables import TomlTable

COLUMN_KEYS: tuple[str, ...] = (*LIST_COLUMNS, NOTHING)
KINDS_MEANT: tuple[KindMeant, ...] = (*FRONT_KINDS, "nothing")
ROW_MEANT: tuple[RowMeant, ...] = ("front", *KINDS_MEANT)
HANDS_MEANT: tuple[HandMeant, ...] = ("left", "right", "nothing")
ROWS_FROM: tuple[RowsFrom, ...] = ("from-top", "from-bottom")
WORDED: Mapping[str, tuple[str, tuple[str, ...]]] = {
    "kinds": ("kinds.", KINDS_MEANT),
    "hands": ("hands.", HANDS_MEANT),
    "box_rows": ("rows.", ROWS_FROM),
    "row": ("row.", ROW_MEANT),
}
"""The tables by words of the list: how a key of theirs begins in one line, what it may hold."""
_QUOTED = r"""(?:"(?:[^"]|"")*"|'(?:[^']|'')*')"""
_BEGUN = rf"(?:(?<=[.=])|(?<=[.=] )){_QUOTED}"
"""Quotes stand around a word or a heading: in the middle of one a quote is a sign as any other."""
_PART = rf"(?:{_BEGUN}|[^,])+"
_KEY = rf"(?s)((?:{_BEGUN}|[^=])+?)\s*=\s*(.*)"


def parse_columns(text: str) -> ListSpec:
    """Read the line of `--columns`. Raises JigsheetError with everything that is wrong in it."""
    columns: dict[str, tuple[str, ...]] = {}
    worded: dict[str, dict[str, Any]] = {name: {} for name in WORDED}
    settings: dict[str, Any] = {}
    wrong: list[str] = []
    for part in parts_of(text):
        found = re.fullmatch(_KEY, part)
        if not found or not found[2]:
            wrong.append(f"not a key with what it holds ({show_value(part)} given); width=C is one")
            continue
        key, value = " ".join(found[1].lower().split()), found[2].strip()
        if table := next((name for name in WORDED if key.startswith(WORDED[name][0])), ""):
            begun, meant = WORDED[table]
            word = unquoted(found[1].strip()[len(begun) :].strip())
            if value.lower() not in meant:
                wrong.append(_not_allowed(found[1].strip(), value, meant))
            elif not word:
                wrong.append(f"no word behind {begun} ({show_value(part)} given)")
            elif table == "row" and not is_row(word):
                wrong.append(f"{found[1].strip()}: {NO_ROW} ({show_value(word)} given)")
            elif worded[table].setdefault(word, value.lower()) != value.lower():
                wrong.append(_twice(found[1].strip(), value))
        elif key == "sheet":
            if settings.setdefault(key, unquoted(value)) != unquoted(value):
                wrong.append(_twice(key, value))
        elif (name := re.sub("[ -]", "_", key)) in SETTINGS:
            allowed = keys_of(ListSpec)[name].allowed
            if value.lower() not in allowed:
                wrong.append(_not_allowed(name, value, allowed))
            elif settings.setdefault(name, value.lower()) != value.lower():
                wrong.append(_twice(name, value))
        elif key in COLUMN_KEYS:
            if key in columns and key != NOTHING:
                wrong.append(_twice(key, value))
            columns[key] = (*columns.get(key, ()), value)
        else:
            wrong.append(
                f"no column or setting ({show_value(key)} given); "
                f"{suggest(key, (*COLUMN_KEYS, *SETTINGS))}"
            )
    if wrong:
        raise JigsheetError("\n".join(wrong))
    said: dict[str, Any] = {**worded, **settings}
    return ListSpec(columns=columns, **said)


def parts_of(line: str) -> list[str]:
    """Part a line at its commas, but for those in a word between quotes."""
    return [part for part in (part.strip() for part in re.findall(_PART, line)) if part]


def pair_of(part: str) -> tuple[str, str]:
    """Part a key from what it holds, both as they stand."""
    found = re.fullmatch(_KEY, part)
    return (found[1].strip(), found[2].strip()) if found else (part, "")


def join_specs(one: ListSpec, other: ListSpec) -> ListSpec:
    """Add what is said of a list to what was said; the later of two that say otherwise holds."""
    said: dict[str, Any] = {
        name: {**getattr(one, name), **getattr(other, name)} for name in ("columns", *WORDED)
    }
    left = (*one.columns.get(NOTHING, ()), *other.columns.get(NOTHING, ()))
    if left:
        said["columns"][NOTHING] = tuple(dict.fromkeys(left))
    said |= {key: value for key in SETTINGS if (value := getattr(other, key))}
    return replace(one, **said)


def read_list_table(table: TomlTable | None) -> ListSpec:
    """Read `[list]` of a job file; what is wrong is noted."""
    if table is None:
        return ListSpec()
    columns: dict[str, tuple[str, ...]] = {}
    worded: dict[str, dict[str, Any]] = {}
    if inner := table.table("columns"):
        for key in COLUMN_KEYS:
            value = inner.pick(key)
            texts = value if isinstance(value, list) and key == NOTHING else [value]
            if value is None:
                continue
            if all(isinstance(text, str | int) and not isinstance(text, bool) for text in texts):
                columns[key] = tuple(str(text).strip() for text in texts)
            else:
                inner.note(key, f"not a column ({inner.given(key)} given); {WHERE}")
        inner.close()
    for name, (_, meant) in WORDED.items():
        given = table.peek(name)
        found = worded.setdefault(name, {})
        if inner := table.table(name):
            for word in given if isinstance(given, dict) else ():
                if name == "row" and not is_row(word):
                    inner.note(word, f"{NO_ROW} ({show_value(word)} given)")
                if value := inner.choice(word, meant):
                    found[word] = value
    said: dict[str, Any] = {**worded, **read_keys(table, ListSpec)}
    spec = ListSpec(columns=columns, **said)
    table.close()
    return spec


NO_ROW = "no row's number; a row is called by the number that a spreadsheet shows, as row.14"


def is_row(word: str) -> bool:
    """Tell whether a word is the number of a row."""
    return re.fullmatch(r"[1-9][0-9]{0,5}", word) is not None


WHERE = 'a letter ("C"), a number from 1, or a heading is allowed, with a unit behind it or not'


def write_columns(spec: ListSpec) -> str:
    """Write in one line what is stated, as `parse_columns` reads it.

    >>> write_columns(parse_columns("width = C (in),nothing=F, kinds.Klappe=lift"))
    'width=C (in),nothing=F,kinds.Klappe=lift'
    """
    parts = [f"{key}={where}" for key, places in spec.columns.items() for where in places]
    for name, (begun, _) in WORDED.items():
        parts += [f"{begun}{key_of(word)}={is_}" for word, is_ in getattr(spec, name).items()]
    parts += [f"{key}={key_of(value)}" for key in SETTINGS if (value := getattr(spec, key))]
    return ",".join(parts)


def write_list_table(spec: ListSpec) -> str:
    """Write `[list]` of a job file, with the lines that say something; "" where none does.

    >>> print(write_list_table(parse_columns("width=C,nothing=F,nothing=Preis,kinds.Klappe=lift")))
    [list]
    columns = { width = "C", nothing = ["F", "Preis"] }
    kinds = { Klappe = "lift" }
    """
    lines = []
    if spec.columns:
        columns = {
            key: list(places) if key == NOTHING else places[0]
            for key, places in spec.columns.items()
        }
        lines.append(f"columns = {inline_table(columns)}")
    for name in WORDED:
        if said := getattr(spec, name):
            lines.append(f"{name} = {inline_table(said)}")
    lines += [f"{key} = {text_of(value)}" for key in SETTINGS if (value := getattr(spec, key))]
    return "\n".join(["[list]", *lines]) if lines else ""


def inline_table(values: Mapping[str, object]) -> str:
    """Write a table in one line."""
    pairs = (f"{_bare_key(key)} = {text_of(value)}" for key, value in values.items())
    return f"{{ {', '.join(pairs)} }}"


def _bare_key(key: str) -> str:
    return key if re.fullmatch(r"[A-Za-z0-9_-]+", key) else text_of(key)


def text_of(value: object) -> str:
    """Write a text as TOML has it."""
    import json  # few lists are told in one line

    # What JSON escapes in a text, TOML reads alike.
    return json.dumps(value, ensure_ascii=False)


def key_of(word: str) -> str:
    """Write a word so that the signs which part a line stand in it for themselves: in single
    quotes, for the line stands in double ones in the shell.

    >>> print(key_of("Klappe"), key_of("Door, upper"), key_of("Bob's door"))
    Klappe 'Door, upper' 'Bob''s door'
    """
    if word == word.strip() and not any(sign in word for sign in ",.=\"'"):
        return word
    doubled = word.replace("'", "''")
    return f"'{doubled}'"


def unquoted(text: str) -> str:
    """Give a word without the quotes that it stands between."""
    if not re.fullmatch(_QUOTED, text):
        return text
    return text[1:-1].replace(text[0] * 2, text[0])


def _twice(key: str, value: str) -> str:
    return f"{key} stands twice ({show_value(value)} given the second time)"


def _not_allowed(key: str, value: str, allowed: Sequence[str]) -> str:
    return f"{key}: not known ({show_value(value)} given); allowed: {', '.join(allowed)}"


assert set(SETTINGS) == set(keys_of(ListSpec)), "each setting is read by its key"
assert get_args(FrontKind) == FRONT_KINDS
