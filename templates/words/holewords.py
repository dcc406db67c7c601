"""What a person reads of holes, by what they are for: one entry a purpose."""

from typing import TypedDict

from msgspec import Struct

from jigs.ground.geometry import Hole, Purpose
from jigs.ground.lengths import format_mm

SIDE_HOLES = "Try the stop: a hole through shows."


class HoleWords(Struct, frozen=True, kw_only=True):
    """What is said of holes for one purpose."""

    name: str
    """What they are called in an operation."""
    caution: str
    """The short caution beside its step (common practice, no source)."""


_ByPurpose = TypedDict("_ByPurpose", {
    "cup": HoleWords, "cup-fixing": HoleWords, "front-fixing": HoleWords, "pull": HoleWords,
    "plate": HoleWords, "slide": HoleWords, "shelf": HoleWords, "clearance": HoleWords,
    "hook": HoleWords, "manual": HoleWords,
})  # fmt: skip

HOLE_WORDS: _ByPurpose = {
    "cup": HoleWords(name="Cup", caution="Stop from the bit's rim; bore scrap first."),
    "cup-fixing": HoleWords(
        name="Fixing", caution="Stop on the bit: a pilot too deep comes out in the face."
    ),
    "front-fixing": HoleWords(
        name="Pilot",
        caution="Stop on the bit; too long a screw shows in the face.",
    ),
    "pull": HoleWords(
        name="Pull",
        caution="Block behind; painted: 2 mm pilot first.",
    ),
    "plate": HoleWords(name="Plate", caution=SIDE_HOLES),
    "slide": HoleWords(name="Slide", caution=SIDE_HOLES),
    "shelf": HoleWords(name="Shelf pin", caution=SIDE_HOLES),
    "clearance": HoleWords(
        name="Clearance",
        caution="Clamp the box, a block behind.",
    ),
    "hook": HoleWords(
        name="Hook",
        caution="Stop on the bit; block clamped inside.",
    ),
    "manual": HoleWords(
        name="By hand",
        caution="Check every figure against the leaflet first.",
    ),
}


def operations(holes: tuple[Hole, ...], thickness: float) -> list[str]:
    """Say each kind of hole once."""
    first: dict[tuple[Purpose, float, float | None], Hole] = {}
    for hole in holes:
        first.setdefault((hole.purpose, hole.diameter, hole.depth), hole)
    return [
        f"{HOLE_WORDS[purpose].name}: {bore_words(hole, thickness)}."
        for (purpose, *_), hole in first.items()
    ]


def bore_words(hole: Hole, thickness: float) -> str:
    """Say one operation in full: `35 dia, 13 deep, BLIND, leaves 6.1`."""
    if hole.depth is None:
        return f"{bare_mm(hole.diameter)} dia, THROUGH"
    return (
        f"{bare_mm(hole.diameter)} dia, {bare_mm(hole.depth)} deep, BLIND, "
        f"leaves {bare_mm(thickness - hole.depth)}"
    )


def bare_mm(value: float) -> str:
    """Write a length without an empty decimal; mm."""
    return format_mm(value).removesuffix(".0")


LIST_LEGEND = (
    "x of a front or drawer box from its left end, seen from the room, whichever face is "
    "drilled; of a side\nfrom its finished front edge. y from the bottom edge, bottom end or "
    "underside. Diameter and depth in mm.\nA + or - after inches: a little more or less."
)
"""What the places in a list of holes count from, and how its figures are read."""
