"""Cautions: what a careful foreman says before the drill is switched on.

The full list stands in front of a pack, the short one beside its operation on the sheet. All of
it is common practice of the trade, no source.
"""

from collections.abc import Iterable, Mapping

from jigs.given.job import BoxKind
from jigs.ground.geometry import Purpose

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
APPLIANCES = (
    "Range, oven, hood, dishwasher, sockets: licensed trades, the appliance's instructions and "
    "local code."
)
CARE = "CLAMP; eye, ear, dust protection; NO GLOVES where a spindle turns."
"""What stands on every page that has holes, in one line."""

SPRUNG = "A lift's arms are sprung: never release one without its door."
"""What stands where a lift is set out."""

CAUTIONS: tuple[str, ...] = (
    "Clamp the part before you drill it; a hand is no clamp.",
    "Set a depth stop, and try every bit, stop and bore on scrap first.",
    "Wear eye and ear protection; no gloves, loose sleeves or long hair near a spindle.",
    "Draw off wood and MDF dust at the tool, and wear a respirator that fits your face.",
    PAINT,
    "Punch lightly, look, then firmly; on a painted face drill a 2 mm pilot first, "
    "with a backing block clamped behind.",
    TWO_PEOPLE,
    FASTEN,
    "Probe a wall before you drill it.",
    "Gas, new circuits, ducts and appliance clearances belong to licensed trades, "
    "the appliance's instructions and local code.",
    NO_CODE,
)
"""The cautions in full, in the order of the work."""

_SIDE_HOLES = "Clamp the side; set the stop and try it on scrap: a hole through shows outside."

PARTITION_HOLES = "Clamp it; set the stop and try it on scrap: a hole through shows behind."
"""What stands for the holes of a side where they are a partition's: it has no outside."""

CAUTION_FOR: Mapping[Purpose, str] = {
    "cup": "Clamp the door; stop set from the bit's rim; first bore in scrap.",
    "cup-fixing": "Stop on the bit: a pilot too deep comes out in the face.",
    "front-fixing": "Stop on the bit, and measure the screw: too long, and it shows in the face.",
    "pull": "Drill from the face, backing block clamped behind; painted: 2 mm pilot first.",
    "plate": _SIDE_HOLES,
    "slide": _SIDE_HOLES,
    "shelf": _SIDE_HOLES,
    "clearance": "Clamp a block behind; hold the drawer box still, not with your hand.",
    "hook": "Stop on the bit; clamp a block inside the back, so that it does not split out.",
    "manual": "Clamp the part; check every figure against the leaflet before you drill.",
}
"""The short caution for each operation, to stand beside its step."""


def cautions_of(kinds: Iterable[BoxKind]) -> tuple[str, ...]:
    """Give what is to be known of boxes of these kinds before they are cut, bought or hung."""
    heavy = {"wall", "tall"} & set(kinds)
    return (TWO_PEOPLE, FASTEN, APPLIANCES) if heavy else (APPLIANCES,)
