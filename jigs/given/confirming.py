"""Open numbers: what differs from make to make, and nobody has yet looked up or measured.

A number of a record is open until the record's `confirmed` covers it, whatever its standing; how
that is written stands at `jigs.reading.fieldkeys`. An open number keeps nothing back: it is
told, with its value, on whatever rests on it.

>>> from jigs.given.hardware import HingeRecord
>>> mine = HingeRecord(name="mine", confirmed={"constant": "leaflet", "plates": "leaflet"})
>>> open_keys(mine)
('fixing_spacing', 'fixing_inboard', 'cup_depth')
>>> [(one.key, one.value) for one in open_numbers(mine, "inside")]
[]
"""

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Literal

from msgspec import Struct

from jigs.given.hardware import (
    HINGE_RESTS,
    PULL_RESTS,
    SIDE_ALONE,
    SLIDE_RESTS,
    UNDER_ALONE,
    Confirmed,
    HingeRecord,
    PullRecord,
    SlideRecord,
)
from jigs.ground.keys import Rests

Record = HingeRecord | SlideRecord | PullRecord
"""Any piece of hardware."""
RecordKind = Literal["hinge", "slide", "pull"]
"""What a record is, as its table in the job file is called."""
_BARE = re.compile(r"[A-Za-z0-9_-]+")
"""A name that a table's heading takes without quotes (TOML 1.0, keys)."""
_RESTS: dict[RecordKind, Mapping[str, frozenset[Rests]]] = {
    "hinge": HINGE_RESTS, "slide": SLIDE_RESTS, "pull": PULL_RESTS,
}  # fmt: skip
"""What rests on each number of a record."""
_TURNS = {
    key: turn for turn, key in enumerate(dict.fromkeys(key for t in _RESTS.values() for key in t))
}
"""In which order numbers are told."""
NumberValue = float | tuple[float, ...] | None
"""A number of a record, or several; mm. None where there is none yet."""


def heading_of(kind: RecordKind, name: str) -> str:
    """Write the heading of a record's table as it stands in the job.

    >>> heading_of("pull", "long-bar"), heading_of("pull", "bügel")
    ('[pull.long-bar]', '[pull."bügel"]')
    """
    return f"[{kind}.{name}]" if _BARE.fullmatch(name) else f'[{kind}."{name}"]'


class OpenNumber(Struct, frozen=True, kw_only=True):
    """One open number of a record: its key there, and the value that is drawn with; mm."""

    kind: RecordKind
    record: str
    key: str
    value: NumberValue


class StandIn(Struct, frozen=True):
    """What stands in for a number or a name that nobody gave."""

    key: str
    """Its key in the job (`Job.assumed`), or `five_piece.NAME` of a front's own frame."""
    figure: float | str | None = None
    """A length in mm, or a name; None where the key says all."""


def record_kind(record: Record) -> RecordKind:
    """Say what a record is."""
    match record:
        case HingeRecord():
            return "hinge"
        case SlideRecord():
            return "slide"
        case PullRecord():
            return "pull"


def numbers_that_matter(record: Record) -> Mapping[str, frozenset[Rests]]:
    """Give the numbers of a record that differ from make to make, with what rests on each.

    What a piece of hardware has not is no number: a knob's centres, places that are marked through
    a slide that has none, hooks.
    """
    match record:
        case HingeRecord():
            return HINGE_RESTS
        case SlideRecord():
            foreign = SIDE_ALONE if record.mount == "under" else UNDER_ALONE
            return {
                key: rests
                for key, rests in SLIDE_RESTS.items()
                if key not in foreign and getattr(record, key) not in (None, ())
            }
        case PullRecord():
            return {} if record.centers is None else PULL_RESTS


def how_confirmed(record: Record, key: str) -> Confirmed | None:
    """Say how one number of a record was confirmed; None where nobody did."""
    return record.confirmed.get(key)


def open_numbers(record: Record, *rests: Rests) -> tuple[OpenNumber, ...]:
    """Give the open numbers of a record on which one of `rests` rests; all of them for none."""
    return tuple(
        OpenNumber(
            kind=record_kind(record), record=record.name, key=key, value=getattr(record, key)
        )
        for key, on in numbers_that_matter(record).items()
        if not how_confirmed(record, key) and (not rests or on & set(rests))
    )


def rests_on(number: OpenNumber, *rests: Rests) -> bool:
    """Tell whether one of `rests` rests on an open number."""
    return not _RESTS[number.kind][number.key].isdisjoint(rests)


@lru_cache(maxsize=256)  # asked for every face of every part, which have few answers
def resting(numbers: tuple[OpenNumber, ...], *rests: Rests) -> tuple[OpenNumber, ...]:
    """Give those of some open numbers on which one of `rests` rests."""
    return tuple(number for number in numbers if rests_on(number, *rests))


def open_keys(record: Record, *rests: Rests) -> tuple[str, ...]:
    """Name the open numbers of a record by their keys."""
    return tuple(number.key for number in open_numbers(record, *rests))


def by_record(numbers: Iterable[OpenNumber]) -> dict[tuple[RecordKind, str], list[OpenNumber]]:
    """Put open numbers together by their records, each number once, in the order of the tables."""
    found: dict[tuple[RecordKind, str], list[OpenNumber]] = {}
    for number in sorted(dict.fromkeys(numbers), key=lambda number: _TURNS[number.key]):
        found.setdefault((number.kind, number.record), []).append(number)
    return found


def value_words(value: NumberValue) -> str:
    """Say a number with its unit: `15 mm`, `37, 165 mm`; `none stated` where there is none."""
    values = value if isinstance(value, tuple) else () if value is None else (value,)
    if not values:
        return "none stated"
    return f"{', '.join(f'{item:g}' for item in values)} mm"


def number_words(numbers: Iterable[OpenNumber]) -> str:
    """Say open numbers with their values: `constant 15 mm, plates 0, 3 mm`."""
    return ", ".join(f"{number.key} {value_words(number.value)}" for number in numbers)
