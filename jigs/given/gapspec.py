"""What decides, beside the reveals, whether gaps stay open: how true boxes are built, what wood the
fronts are of, and how dry and damp the room becomes.

How true fronts are made is `[fronts] tolerance`, how they are painted `[paint]`. What nobody said
of wood and room has no default: it is left out of the sum, and named.
"""

from dataclasses import dataclass, field
from typing import Annotated, Literal

from jigs.ground.believable import Range
from jigs.ground.keys import Key

Species = Literal[
    "sugar maple", "red oak", "white oak", "black cherry", "yellow birch", "yellow-poplar",
    "eastern white pine", "ponderosa pine", "white fir",
]  # fmt: skip
Sawn = Literal["flat", "quarter"]
Grain = Literal["vertical", "horizontal"]
Construction = Literal["slab", "five-piece", "mdf"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Exactness:
    """How true boxes and joints come out; mm, all common practice without a source."""

    box: Annotated[float, Key(Range(0.1, 3, zero=True), called="how true boxes are built, +-")] = (
        0.8
    )
    """A box may be wider or higher by this, or less; 0.5 where it is built with care."""
    joint: Annotated[float, Key(Range(0.1, 3, zero=True), called="joint between boxes, up to")] = (
        0.5
    )
    """The most that stays open between two boxes."""
    square: Annotated[float, Key(Range(0.1, 3, zero=True), called="gap out of square, +-")] = 0.4
    """A gap may be wider or narrower by this at one end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wood:
    """The wood of solid fronts, or of the frames of five-piece fronts."""

    species: Annotated[Species | None, Key()] = None
    """What tree it is of."""
    construction: Annotated[Construction | None, Key()] = None
    """How the fronts are made; else as `front_kind` and each front's `stile` say; frames that
    give none have stiles of 57 mm."""
    sawn: Annotated[Sawn, Key()] = "flat"
    """How its boards are sawn: flat moves more."""
    grain: Annotated[Grain | None, Key()] = None
    """How the grain of slabs runs; else along the longer side of each."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomAir:
    """How damp the air of the room becomes, and the wood that fronts are made of."""

    driest: Annotated[float | None, Key(Range(10, 60, unit="%"), most=100.0)] = None
    """Humidity in the driest season, % RH."""
    dampest: Annotated[float | None, Key(Range(30, 90, unit="%"), most=100.0)] = None
    """Humidity in the dampest season, % RH."""
    temperature: Annotated[float, Key(Range(10, 32, unit="C"), most=60.0)] = 21.0
    """Temperature of the room, in degrees Celsius; `"70 F"` is read too."""
    made_at: Annotated[float, Key(Range(5, 16, unit="%"), most=30.0)] = 8.0
    """Moisture of the wood when the fronts are made, %; 8 is common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GapSpec:
    """All that a job says of what its gaps hang on."""

    exact: Exactness = field(default_factory=Exactness)
    """How true boxes and joints come out."""
    wood: Wood = field(default_factory=Wood)
    """What the fronts are of."""
    air: RoomAir = field(default_factory=RoomAir)
    """How damp the room becomes."""
    fronts_in_hand: bool = False
    """Whether all fronts are there already, measured or not: none is to be ordered."""
