"""Which parts depend on hardware whose numbers are open: neither looked up nor measured yet?"""

from collections.abc import Sequence

from jigs.given.confirming import (
    Record,
    RecordKind,
    heading_of,
    number_words,
    open_numbers,
    record_kind,
)
from jigs.ground.keys import Rests
from jigs.ground.problems import Problem, warning

BORED: tuple[Rests, ...] = ("inside", "order")
"""What still rests on the hinge of a door whose cups are bored already."""
OPEN_CODE: dict[RecordKind, str] = {
    "hinge": "unconfirmed-hinge",
    "slide": "unconfirmed-slide",
    "pull": "unconfirmed-pull",
}


def check_confirmed(
    front: str, record: Record, also: Sequence[str] = (), *, bored: bool = False
) -> tuple[Problem, ...]:
    """Find a front that depends on hardware with open numbers; `also`: the boards and the drawer
    box that are concerned too."""
    numbers = open_numbers(record, *(BORED if bored else ()))
    if not numbers:
        return ()
    kind = record_kind(record)
    keys = tuple(number.key for number in numbers)
    found = warning(
        OPEN_CODE[kind],
        front,
        also=tuple(also),
        kind=kind,
        record=record.name,
        numbers=number_words(numbers),
        several=len(keys) > 1,
        keys=keys[:-1],
        last=keys[-1],
        own=heading_of(kind, record.name),
        generic=record.like is None,
    )
    return (found,)
