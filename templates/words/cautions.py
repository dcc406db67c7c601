"""Cautions: what a careful foreman says before the drill is switched on.

The full list stands in front of a pack; the short caution of each operation stands beside it on
the sheet (`templates/words/holewords.py`). All of it is common practice of the trade, no source.
"""

from collections.abc import Iterable

from jigs.given.job import BoxKind

NO_CODE = "The tool does not check code: building, electrical and gas rules are yours to look up."
"""What the tool leaves to its user, to be quoted by itself."""

PAINT = (
    "Spray and brush finish with exhaust running and nothing near that can ignite it; "
    "put rags in a closed can."
)
TWO_PEOPLE = "Lift tall and wall boxes with two people."
FASTEN = (
    "Screw wall boxes into studs or solid blocking, never into board alone; "
    "fix tall units to the structure before you load them."
)
PROBE = "Probe a wall before you drill it."
APPLIANCES = (
    "Range, oven, hood, dishwasher, sockets: licensed trades, the appliance's instructions and "
    "local code."
)
SPRUNG = "A lift's arms are sprung: never release one without its door."
"""What stands where a lift is set out."""

CAUTIONS: tuple[str, ...] = (
    "Clamp every part; a hand is no clamp.",
    "Set a depth stop. Try every bit and stop on scrap first.",
    "Wear eye and ear protection; no gloves, loose sleeves or long hair near a spindle.",
    "Draw off wood and MDF dust at the tool; wear a respirator that fits.",
    PAINT,
    "Punch lightly, look, then firmly. Painted face: 2 mm pilot first, a backing "
    "block clamped behind.",
    TWO_PEOPLE,
    FASTEN,
    PROBE,
    "Gas, new circuits, ducts and appliance clearances belong to licensed trades, "
    "the appliance's instructions and local code.",
    NO_CODE,
)
"""The cautions in full, in the order of the work."""


def cautions_of(kinds: Iterable[BoxKind]) -> tuple[str, ...]:
    """Give what is to be known of boxes of these kinds before they are cut, bought or hung."""
    heavy = {"wall", "tall"} & set(kinds)
    return (TWO_PEOPLE, FASTEN, APPLIANCES) if heavy else (APPLIANCES,)
