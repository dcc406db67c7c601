"""Keys that stand beside the fields of a value (`jigs.ground.keys`), read one after the other;
where the sizes of a kind of box or front are believed; and which numbers of a record are confirmed.

The sizes that boxes and fronts of each kind have in kitchens are common practice without a source,
and generous; mm. An open box may be as wide as a wall.

`confirmed` in a record says which of its numbers were looked up or measured. A word, `"leaflet"` or
`"measured"`, speaks for the numbers that are written in this record: what it inherits by `like`
nobody has looked up. A list of keys, or a table that says how each was found, speaks for these
alone, inherited ones too.
"""

from collections.abc import Collection, Mapping
from typing import Any, TypeVar

from msgspec import Struct
from msgspec.structs import replace

from jigs.given.hardware import Confirmed
from jigs.given.job import BoxKind, FrontKind
from jigs.ground.believable import PANEL_HEIGHT, PANEL_WIDTH, Range
from jigs.ground.keys import FieldKey, keys_of
from jigs.ground.nearest import suggest
from jigs.reading.tomltables import TomlTable

_ANY_DEPTH = Range(60, 1500)
_ANYWHERE = Range(-100, 2400, least=10)
_STANDS = Range(-60, 1500, least=15)


class BelievedSizes(Struct, frozen=True):
    """The sizes that are believed of one kind; `depth` and `above_floor` of boxes alone."""

    width: Range
    height: Range
    depth: Range = _ANY_DEPTH
    above_floor: Range = _ANYWHERE


BOXES: Mapping[BoxKind, BelievedSizes] = {
    "base": BelievedSizes(Range(70, 1600), Range(200, 1200), Range(200, 900), _STANDS),
    "drawer": BelievedSizes(Range(120, 1600), Range(100, 1600), Range(200, 900), _STANDS),
    "sink": BelievedSizes(Range(200, 1600), Range(300, 1200), Range(200, 900), _STANDS),
    "wall": BelievedSizes(Range(70, 1600), Range(150, 1600), Range(150, 900), Range(300, 2600)),
    "tall": BelievedSizes(Range(70, 1600), Range(600, 2700), Range(150, 900), _STANDS),
    "open": BelievedSizes(Range(60, 3000), Range(60, 2700)),
}

FRONTS: Mapping[FrontKind, BelievedSizes] = {
    "door": BelievedSizes(Range(75, 1300), Range(120, 2700)),
    "pair": BelievedSizes(Range(75, 900), Range(120, 2700)),
    "drawer": BelievedSizes(Range(120, 1600), Range(50, 900)),
    "pullout": BelievedSizes(Range(50, 1000), Range(120, 2700)),
    "false-front": BelievedSizes(Range(50, 1600), Range(30, 900)),
    "panel": BelievedSizes(PANEL_WIDTH, PANEL_HEIGHT),
    "lift": BelievedSizes(Range(150, 1700), Range(100, 1000)),
    "opening": BelievedSizes(Range(80, 1700), Range(60, 2400)),
}

ANY_FRONT = BelievedSizes(Range(10, 1700), Range(30, 2800))
"""A front of which nobody says what it is."""


ValueT = TypeVar("ValueT")


def read_over(table: TomlTable, standard: ValueT) -> ValueT:
    """Give a value with what a table says in place of its fields; what is wrong is noted, and stays
    as it was."""
    return replace(standard, **read_keys(table, type(standard)))  # type: ignore[type-var]


def read_keys(table: TomlTable, values: type) -> dict[str, Any]:
    """Read the fields of a value that a table states, by their names."""
    read = {name: _read(table, name, field) for name, field in keys_of(values).items()}
    return {name: value for name, value in read.items() if value is not None}


def _read(table: TomlTable, name: str, field: FieldKey) -> object:
    within, most = field.within, field.key.most
    match field.holds:
        case "length":
            return table.length(name, within)
        case "lengths":
            return table.lengths(name, within)
        case "number":
            return table.number(name, within, most=most)
        case "whole":
            return table.whole(name, usual=int(within.high), most=int(most))
        case "flag":
            return table.flag(name)
        case "text":
            return table.text(name)
        case "choice":
            return table.choice(name, field.allowed)
        case "other":
            return None


def numbers_of(values: type) -> tuple[str, ...]:
    """Name the keys that hold numbers of a record: what its leaflet or a caliper may confirm."""
    return tuple(
        name for name, field in keys_of(values).items() if field.key.stated and not field.allowed
    )


CONFIRMED = ("leaflet", "measured")
"""How a number was found: what may be written in a job file."""


def read_confirmed(
    table: TomlTable,
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


def _is_number(table: TomlTable, key: Any, keys: Collection[str]) -> bool:
    if isinstance(key, str) and key in keys:
        return True
    shown = f"'{key[:40]}'" if isinstance(key, str) else "no key"
    near = suggest(key, keys) if isinstance(key, str) else "name its keys in quotes"
    table.note("confirmed", f"not a number of this record ({shown} given); {near}")
    return False
