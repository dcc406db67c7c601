"""Confirmed numbers: which of a fitting's numbers were looked up or measured, one by one.

`confirmed = "leaflet"` or `"measured"` speaks for the whole record; a list of keys, or a table
that says how each was found, speaks for these alone. Some numbers matter more than others: a
hole, or the plate that is bought, depends on them. Those that nobody confirmed are told by name.

>>> from jigs.hardware import HingeRecord
>>> open_numbers(HingeRecord(name="mine", confirmed_numbers={"constant": "leaflet"}))
('fixing_spacing', 'fixing_inboard')
"""

from collections.abc import Collection, Sequence
from typing import Any

from jigs.hardware import Confirmed, HingeRecord, PullRecord, SlideRecord
from jigs.reading.nearest import suggest
from jigs.reading.tomltables import Table

CONFIRMED = ("leaflet", "measured")
"""How a number was found: what may be written in a job file."""

HINGE_NUMBERS = ("constant", "fixing_spacing", "fixing_inboard")
"""What a hinge's holes and plates depend on."""
SLIDE_NUMBERS = ("fixing_height", "drawer_rise")
"""What an undermount slide's holes depend on; a side mount has `centre_height` instead of a."""
PULL_NUMBERS = ("centers",)

_NAMES = {"centers": "hole centres"}


HOOK_NUMBERS = ("hook_height", "hook_inset")
"""What the holes of a slide's rear hooks depend on, where it has any."""


def number_name(key: str) -> str:
    """Give a number's name in words: `fixing height`."""
    return _NAMES.get(key, key.replace("_", " "))


def numbers_that_matter(record: HingeRecord | SlideRecord | PullRecord) -> tuple[str, ...]:
    """Name the numbers of a record on which its holes depend."""
    match record:
        case HingeRecord():
            return HINGE_NUMBERS
        case SlideRecord(mount="side"):
            return ("centre_height", "drawer_rise")
        case SlideRecord():
            return SLIDE_NUMBERS if record.hook_diameter is None else SLIDE_NUMBERS + HOOK_NUMBERS
        case PullRecord():
            return () if record.centers is None else PULL_NUMBERS


def how_confirmed(record: HingeRecord | SlideRecord | PullRecord, key: str) -> Confirmed | None:
    """Say how one number of a record was confirmed; None where nobody did."""
    return record.confirmed_numbers.get(key) or record.confirmed


def open_numbers(record: HingeRecord | SlideRecord | PullRecord) -> tuple[str, ...]:
    """Name the numbers that matter and that nobody has confirmed."""
    return tuple(key for key in numbers_that_matter(record) if not how_confirmed(record, key))


def open_words(record: HingeRecord | SlideRecord) -> str:
    """Say the open numbers with their values: `constant 15 mm, pattern 45/9.5 mm`."""
    return ", ".join(f"{name} {value}" for name, value in _open_pairs(record))


def open_names(record: HingeRecord | SlideRecord) -> str:
    """Say the open numbers by name alone: `constant, pattern`."""
    return ", ".join(name for name, _ in _open_pairs(record))


def _open_pairs(record: HingeRecord | SlideRecord) -> list[tuple[str, str]]:
    keys = open_numbers(record)
    pairs: list[tuple[str, str]] = []
    for key in keys:
        if key in HINGE_NUMBERS[1:] and set(HINGE_NUMBERS[1:]) <= set(keys):
            if key == "fixing_spacing":
                a, b = (getattr(record, name) for name in HINGE_NUMBERS[1:])
                pairs.append(("pattern", f"{a:g}/{b:g} mm"))
        else:
            pairs.append((number_name(key), f"{getattr(record, key):g} mm"))
    return pairs


def read_confirmed(table: Table, keys: Sequence[str]) -> dict[str, Any]:
    """Read `confirmed` of a record whose numbers are `keys`: a word, a list, or a table."""
    value = table.pick("confirmed")
    if isinstance(value, list):
        said = [item for item in value if _is_number(table, item, keys)]
        return {"confirmed_numbers": dict.fromkeys(said, "confirmed")}
    if isinstance(value, dict):
        given: dict[str, Confirmed] = {}
        inner = table.table("confirmed")
        assert inner is not None, "it was picked as a table"
        for key in value:
            if not _is_number(table, key, keys):
                continue
            word = inner.choice(key, CONFIRMED)
            if word is not None:
                given[key] = "leaflet" if word == "leaflet" else "measured"
        return {"confirmed_numbers": given}
    word = table.choice("confirmed", CONFIRMED)
    return {} if word is None else {"confirmed": word}


def _is_number(table: Table, key: object, keys: Collection[str]) -> bool:
    if isinstance(key, str) and key in keys:
        return True
    shown = f"'{key[:40]}'" if isinstance(key, str) else "no key"
    near = suggest(key, keys) if isinstance(key, str) else "name its keys in quotes"
    table.note("confirmed", f"not a number of this record ({shown} given); {near}")
    return False
