"""Keys that stand beside the fields of a value (`jigs.ground.keys`), read one after the other."""

from dataclasses import replace
from typing import Any, TypeVar

from jigs.ground.keys import FieldKey, keys_of
from jigs.reading.tomltables import Table

Value = TypeVar("Value")


def read_over(table: Table, standard: Value) -> Value:
    """Give a value with what a table says in place of its fields; what is wrong is noted, and stays
    as it was."""
    return replace(standard, **read_keys(table, type(standard)))  # type: ignore[type-var]


def read_keys(table: Table, values: type) -> dict[str, Any]:
    """Read the fields of a value that a table states, by their names."""
    read = {name: _read(table, name, field) for name, field in keys_of(values).items()}
    return {name: value for name, value in read.items() if value is not None}


def _read(table: Table, name: str, field: FieldKey) -> object:
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
