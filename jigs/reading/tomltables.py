"""Tables of a job file, read key by key; every fault is noted at its line and reading goes on.

Each number is read with the range in which it is believed. A getter gives None, or its default,
where a value is missing or wrong; the fault is in the book.
`close` reports what was never asked for. Nothing may be made from a book that has faults.
"""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from functools import cached_property
from typing import TypeVar

from msgspec import Struct, field

from jigs.given.ids import check_id
from jigs.ground.believable import Doubt, KeyPath, Range, measure, word_unit, write_path
from jigs.ground.errors import Ahead, Fault, JigsheetError, LengthError, ReadingError
from jigs.ground.lengths import Unit, show_value
from jigs.ground.nearest import suggest, suggest_near
from jigs.ground.quantities import parse_quantity
from jigs.reading.tomlindex import find_line, index_lines

WordT = TypeVar("WordT", bound=str)

_INSIDE = {
    "front": "[[box.front]] below its [[box]]",
    "shelf": "[[box.shelf]] below its [[box]]",
    "rollout": "[[box.rollout]] below its [[box]]",
    "hole": "[[box.front.hole]] below its front, or [[box.hole]] below its box",
    "appliance": "[[wall.appliance]] below its [[wall]]",
}
"""Tables that stand in another one, and how they are written."""

LONGEST_TEXT = 200
"""Characters of a name, a note, a finish."""


class FaultBook(Struct, frozen=True, kw_only=True, dict=True):
    """The faults of one file with some text, and what is doubted in it; `top` are the keys that
    stand above its first table."""

    file: str
    text: str
    top: Sequence[str] = ()
    faults: list[tuple[int, Fault]] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)

    @cached_property
    def _lines(self) -> Mapping[KeyPath, int]:
        """The lines of its keys: a file without a fault is never asked for them."""
        return index_lines(self.text)

    def place(self, path: KeyPath) -> str:
        """Write where a path stands: `job.toml:12: box[1].width`."""
        line = f"{self.file}:{find_line(self._lines, path)}"
        return f"{line}: {write_path(path)}" if path else line

    def note(self, path: KeyPath, what: str) -> None:
        """Note a fault at a path."""
        self.faults.append((find_line(self._lines, path), Fault(self.place(path), what)))

    def raise_noted(
        self, more: Sequence[Fault] = (), told: str = "", ahead: Ahead | None = None
    ) -> None:
        """Raise ReadingError with all that was noted, in the order of the lines; `told`: what was
        understood of the job's list; `ahead`: what that asks besides."""
        noted = sorted(self.faults, key=lambda item: item[0])
        if noted or more:
            raise ReadingError([*(fault for _, fault in noted), *more], told if more else "", ahead)


class TomlTable:
    """One table of a job file at its path; `unit` is what a bare number is read in."""

    def __init__(
        self, values: Mapping[str, object], path: KeyPath, book: FaultBook, unit: Unit
    ) -> None:
        self._values = values
        self._asked: list[str] = []
        self._hints: dict[str, str] = {}
        self.path = path
        self.book = book
        self.unit = unit

    def __contains__(self, key: str) -> bool:
        return key in self._values

    @property
    def keys(self) -> tuple[str, ...]:
        """The keys that it has, in the order of the file."""
        return tuple(self._values)

    def hint(self, keys: Iterable[str], where: str) -> None:
        """Say behind each fault of some keys where more is to be seen of them."""
        self._hints |= dict.fromkeys(keys, where)

    def note(self, key: str, what: str) -> None:
        """Note a fault at one key of this table."""
        self._note((key,), what)

    def _note(self, steps: KeyPath, what: str) -> None:
        self.book.note((*self.path, *steps), f"{what}{self._hints.get(str(steps[0]), '')}")

    def given(self, key: str) -> str:
        """Show the value given for a key."""
        return show_value(self._values.get(key))

    def length(self, key: str, within: Range) -> float | None:
        """Take a length, in mm; `within` says where it is believed."""
        value = self._take(key)
        return None if value is None else self._measure((key,), value, within)

    def lengths(self, key: str, within: Range, *, places: int = 1) -> tuple[float, ...] | None:
        """Take a list of one or more lengths, in mm; `within` says where each is believed, `places`
        in how many a size of the list is measured."""
        value = self._take(key)
        if value is None:
            return None
        if not isinstance(value, list) or not value:
            alike = ", ".join([_as_toml(value)] * places)
            one = "" if isinstance(value, list | dict) else f": {key} = [{alike}]"
            what = f"not a list ({show_value(value)} given); a list of lengths is allowed{one}"
            self.note(key, what)
            return None
        found = [self._measure((key, i), item, within) for i, item in enumerate(value, start=1)]
        return tuple(mm for mm in found if mm is not None)

    def choice(self, key: str, allowed: Sequence[WordT]) -> WordT | None:
        """Take one word of a list."""
        value = self._take(key)
        if value is None:
            return None
        for word in allowed:
            if value == word:
                return word
        near = suggest_near(value, allowed) if isinstance(value, str) else ""
        hint = f"{near} " if near else ""
        self.note(
            key,
            f"not known ({show_value(value)} given); {hint}allowed: {', '.join(allowed)}",
        )
        return None

    def part_id(self, key: str) -> str | None:
        """Take an ID, upper-cased; whether there is such a part shows when all are read."""
        text = self.text(key)
        if text is None:
            return None
        try:
            return check_id(text)
        except JigsheetError as error:
            self.note(key, str(error))
            return None

    def text(self, key: str) -> str | None:
        """Take a line of text; a tab, or several blanks, are one space, as in a list."""
        value = self._take(key)
        if value is None:
            return None
        if not isinstance(value, str):
            self.note(key, f"not a text ({show_value(value)} given); a text in quotes is allowed")
            return None
        text = " ".join(value.split())
        if len(text) > LONGEST_TEXT or not text.isprintable():
            self.note(
                key,
                f"not one short line ({show_value(value)} given); "
                f"at most {LONGEST_TEXT} printable characters are allowed",
            )
            return None
        return text

    def flag(self, key: str) -> bool | None:
        """Take true or false."""
        value = self._take(key)
        if value is None or isinstance(value, bool):
            return value
        self.note(key, f"neither true nor false ({show_value(value)} given)")
        return None

    def whole(self, key: str, *, usual: int, most: int) -> int | None:
        """Take a whole number from 1 to `most`, of which up to `usual` are believed."""
        value = self._take(key)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int) or not 1 <= value <= most:
            self.note(
                key,
                f"not a whole number from 1 to {most} ({show_value(value)} given)",
            )
            return None
        return int(self._believe(key, value, Range(1, usual, unit="")))

    def number(self, key: str, within: Range, *, most: float) -> float | None:
        """Take a number over 0 and up to `most`; `within` says where it is believed. A weight or a
        density may have a unit of its own."""
        value = self._take(key)
        if value is None:
            return None
        if isinstance(value, str) and (found := parse_quantity(value, within.unit)):
            value = Decimal(repr(found))
        if isinstance(value, int | Decimal) and not isinstance(value, bool):
            finite = not isinstance(value, Decimal) or value.is_finite()
            if finite and Decimal("1e-6") <= value <= most:
                return self._believe(key, float(value), within)
        self.note(key, f"not a number over 0, up to {most:g} ({show_value(value)} given)")
        return None

    def table(self, key: str) -> "TomlTable | None":
        """Take a table inside this one."""
        value = self._take(key)
        if value is None:
            return None
        if not isinstance(value, dict):
            self.note(key, f"not a table ({show_value(value)} given); write [{key}] above its keys")
            return None
        return TomlTable(value, (*self.path, key), self.book, self.unit)

    def tables(self, key: str) -> "list[TomlTable]":
        """Take a list of tables, `[[key]]`."""
        value = self._take(key)
        if value is None:
            return []
        if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
            name = ".".join([*(s for s in self.path if isinstance(s, str)), key])
            self.note(
                key, f"not a list of tables ({show_value(value)} given); write [[{name}]] for each"
            )
            return []
        return [
            TomlTable(item, (*self.path, key, place), self.book, self.unit)
            for place, item in enumerate(value, start=1)
        ]

    def named_tables(self) -> "dict[str, TomlTable]":
        """Take every key of this table as a table: `[hinge.mine]`."""
        found = {key: self.table(key) for key in self._values}
        return {key: table for key, table in found.items() if table is not None}

    def pick(self, key: str) -> object:
        """Take a value as it stands, for a reader that allows more than one type."""
        return self._take(key)

    def peek(self, key: str) -> object:
        """Give a value as it stands, for a look before it is taken."""
        return self._values.get(key)

    def measure(self, key: str, value: object, within: Range) -> float | None:
        """Read a picked value as a length, in mm; `within` says where it is believed."""
        return self._measure((key,), value, within)

    def doubt(self, key: str, value: float, within: Range, nominal: str = "") -> None:
        """Note that a number is not usual, or is a trade's name for it."""
        doubt = Doubt(path=(*self.path, key), value=value, within=within, nominal=nominal)
        self.book.doubts.append(doubt)

    def take_doubts(self) -> tuple[Doubt, ...]:
        """Take what is doubted in this table and in those inside it out of the book."""
        depth = len(self.path)
        own = [doubt for doubt in self.book.doubts if doubt.path[:depth] == self.path]
        self.book.doubts[:] = [doubt for doubt in self.book.doubts if doubt not in own]
        return tuple(own)

    def require(self, *keys: str, **allowed: Sequence[str]) -> None:
        """Note each of the keys that is missing; `allowed`: the words that a key may have."""
        for key in (*keys, *allowed):
            if key not in self._values:
                what = f"allowed: {', '.join(allowed[key])}" if key in allowed else ""
                self.book.note(self.path, f"{key} is missing; {what or 'it must be given'}")

    def close(self) -> None:
        """Note every key that was not asked for."""
        for key in self._values:
            if key in self._asked:
                continue
            if self.path and key in self.book.top:
                self.note(
                    key,
                    f"'{key}' belongs at the top of the file, above the first [table]: what stands "
                    "below a table belongs to that table; move it up",
                )
            elif not self.path and key in _INSIDE:
                self.note(key, f"'{key}' is no table by itself; write {_INSIDE[key]}")
            else:
                self.note(
                    key,
                    f"unknown key ('{key[:40]}' given); {suggest(key, dict.fromkeys(self._asked))}",
                )

    def _take(self, key: str) -> object:
        self._asked.append(key)
        return self._values.get(key)

    def _believe(self, key: str, value: float, within: Range) -> float:
        """Give a number, and note where it is not usual."""
        if not within.holds(value):
            self.doubt(key, value, within)
        return value

    def _measure(self, steps: KeyPath, value: object, within: Range) -> float | None:
        """Read a length. One in another unit is a fault; what it was meant to be goes on."""
        try:
            found = measure(value, self.unit, within)
        except LengthError as error:
            self._note(steps, str(error))
            return None
        if found.meant:
            given = str(value).strip()
            wrong = word_unit(given, self.unit, within, found.meant)
            self._note(steps, wrong)
        elif not found.usual:
            self.book.doubts.append(Doubt(path=(*self.path, *steps), value=found.mm, within=within))
        return found.mm


def _as_toml(value: object) -> str:
    """Write a value as a job file has it."""
    if not isinstance(value, str):
        return show_value(value)
    mark = "'" if '"' in value else '"'
    return f"{mark}{value}{mark}"
