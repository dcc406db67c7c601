"""What a job file may say in the place of a field: said once, beside that field.

A field that is read from a file is `Annotated[float, Key(...)]`. Its name is the key, its type says
what is read there, its default is taken where nothing is said, and its docstring says what it is.
The reader (`jigs.reading.fieldkeys`), the ranges, the list of what is assumed and the tables of
JOBFILE.md (`tests.jobfilepage`) all come from there.

>>> from jigs.given.job import Material
>>> band = keys_of(Material)["band"]
>>> band.holds, str(band.within), band.default, band.called
('length', '0.2 to 4 mm', 0.0, 'edge band')
"""

from collections.abc import Mapping
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from msgspec import Struct
from msgspec.structs import fields

from jigs.ground.believable import Range
from jigs.ground.geometry import Face
from jigs.ground.lengths import LONGEST

Rests = Face | Literal["cut", "order"]
"""What rests on a number: the holes of a face or what is mounted there, a cut, what is bought."""
Holds = Literal["length", "lengths", "number", "whole", "flag", "text", "choice", "other"]
"""What is read at a key; `other` by its own reader alone."""
ANY_LENGTH = Range(0.0, LONGEST)


class Key(Struct, frozen=True):
    """What stands beside a field."""

    within: Range = ANY_LENGTH
    """Where its number is believed, or each of its numbers."""
    most: float = 0.0
    """The most that is read, of a number that is no length; in the unit of `within`."""
    stated: bool = True
    """Whether a file states it; else it stands here for what it is called alone."""
    called: str = ""
    """What it is called among what is assumed; "" where it is not told there."""
    rests: tuple[Rests, ...] = ()
    """What rests on a number that differs from make to make."""


class FieldKey(Struct, frozen=True, kw_only=True):
    """A key with what its field says of it."""

    key: Key
    holds: Holds
    allowed: tuple[str, ...]
    """The words that may stand there."""
    default: object
    """What is taken where nothing is said; NODEFAULT where it must be given."""

    @property
    def within(self) -> Range:
        """Where its number is believed."""
        return self.key.within

    @property
    def called(self) -> str:
        """What it is called among what is assumed."""
        return self.key.called


@cache
def keys_of(values: type) -> Mapping[str, FieldKey]:
    """Give the keys of a value's class by their names, in the order of its fields."""
    return {
        field.name: _field_key(field.type, field.default)
        for field in fields(values)
        if get_origin(field.type) is Annotated
    }


def called(values: type, table: str) -> dict[str, str]:
    """Give what the keys of a table are called among what is assumed: `material.side`."""
    return {
        f"{table}.{name}": field.called for name, field in keys_of(values).items() if field.called
    }


def _field_key(hint: Any, default: object) -> FieldKey:
    stated, key = get_args(hint)
    options = [
        option
        for option in (get_args(stated) if get_origin(stated) in (Union, UnionType) else (stated,))
        if option is not NoneType
    ]
    words = tuple(word for option in options for word in _words(option))
    return FieldKey(key=key, holds=_holds(options, key, words), allowed=words, default=default)


def _words(option: Any) -> tuple[str, ...]:
    return get_args(option) if get_origin(option) is Literal else ()


def _holds(options: list[Any], key: Key, words: tuple[str, ...]) -> Holds:
    if not key.stated or len(options) != 1:
        return "other"
    if words:
        return "choice"
    plain: dict[Any, Holds] = {
        bool: "flag",
        int: "whole",
        str: "text",
        float: "length" if key.within.unit == "mm" else "number",
        tuple[float, ...]: "lengths",
    }
    return plain.get(options[0], "other")
