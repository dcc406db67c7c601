"""`confirmed` in a record of a job file: which of its numbers were looked up or measured.

A word, `"leaflet"` or `"measured"`, speaks for the numbers that are written in this record: what
it inherits by `like` nobody has looked up. A list of keys, or a table that says how each was
found, speaks for these alone, inherited ones too.
"""

from collections.abc import Collection, Mapping
from typing import Any

from jigs.given.hardware import Confirmed
from jigs.ground.nearest import suggest
from jigs.reading.tomltables import Table

CONFIRMED = ("leaflet", "measured")
"""How a number was found: what may be written in a job file."""


def read_confirmed(
    table: Table,
    keys: Collection[str],
    written: Collection[str],
    *,
    same: Mapping[str, str] | None = None,
) -> Mapping[str, Confirmed]:
    """Give how each number of a record was found, for those that `confirmed` covers.

    `keys` are its numbers, `written` the fields that this record gives itself; `same` are other
    names that it gives a number by.
    """
    names = {**{key: key for key in keys}, **(same or {})}
    value = table.pick("confirmed")
    if isinstance(value, list):
        said = [names[item] for item in value if _is_number(table, item, names)]
        return dict.fromkeys(said, "confirmed")
    if isinstance(value, dict):
        given: dict[str, Confirmed] = {}
        inner = table.table("confirmed")
        assert inner is not None, "it was picked as a table"
        for key in value:
            if not _is_number(table, key, names):
                continue
            if (word := _word(inner.choice(key, CONFIRMED))) is not None:
                given[names[key]] = word
        return given
    word = _word(table.choice("confirmed", CONFIRMED))
    return {} if word is None else {key: word for key in keys if key in written}


def _word(text: str | None) -> Confirmed | None:
    if text is None:
        return None
    return "leaflet" if text == "leaflet" else "measured"


def _is_number(table: Table, key: Any, keys: Collection[str]) -> bool:
    if isinstance(key, str) and key in keys:
        return True
    shown = f"'{key[:40]}'" if isinstance(key, str) else "no key"
    near = suggest(key, keys) if isinstance(key, str) else "name its keys in quotes"
    table.note("confirmed", f"not a number of this record ({shown} given); {near}")
    return False
