"""How the boxes are built and their fronts made and painted, beyond true thicknesses and sizes:
what the cut list, the order and the gap budget need.

The usual frameless box: sides run from end to end, bottom, top and stretchers stand between
them, the back slides into grooves in both sides and covers the rear edges of bottom and top, and
nailers stand behind it. All numbers are common practice, no source; a job may state each.

Beside the reveals it decides whether gaps stay open how true boxes are built, what wood the fronts
are of, what film of paint they have, and how dry and damp the room becomes. How true fronts are
made is `[fronts] tolerance`. What nobody said of wood, paint and room has no default: it is left
out of the sum, and named.

>>> round(painted_area(454.0, 613.0, 19.05), 4)
0.5973
>>> film_of(Paint(method="sprayed", sizes="before"))
(0.1, 0.15)
>>> film_of(Paint(method="sprayed", sizes="after"))
(0.0, 0.0)
"""

from typing import Annotated, Literal

from msgspec import Struct, field

from jigs.ground.believable import BOARD, RAIL, SPARE, THIN_BOARD, Range
from jigs.ground.keys import Key

MovesAs = Literal["mdf", "plywood", "wood"]
Making = Literal["made", "ordered"]
Method = Literal["sprayed", "brushed"]
SizesAre = Literal["before", "after"]
FrontsCome = Literal["raw", "painted"]
MOST_NAILERS = 4
BACK_SET_IN = 19.0
"""The back stands this far in from the box's rear edge; mm. Common practice, no source."""


class Build(Struct, frozen=True, kw_only=True):
    """The build of all boxes of a job; mm."""

    sold_as: Annotated[float | None, Key(BOARD)] = None
    """What the sides' board is called in the shop; else the nearest trade size."""
    groove: Annotated[float, Key(Range(3, 20))] = 8.0
    """Depth of the back's groove in each side."""
    back_play: Annotated[float, Key(Range(0.3, 6, zero=True))] = 1.0
    """How much the back is narrower than its grooves."""
    stretcher: Annotated[float, Key(RAIL)] = 100.0
    """Width of a stretcher."""
    nailer: Annotated[float, Key(RAIL)] = 100.0
    """Width of a nailer."""
    nailers: Annotated[int | None, Key(Range(1, MOST_NAILERS, unit=""), most=MOST_NAILERS)] = None
    """How many nailers a box has; else 1, wall and tall boxes 2."""
    shelf_play: Annotated[float, Key(Range(0.5, 10, zero=True))] = 3.0
    """How much an adjustable shelf is shorter than the opening."""
    shelf_back: Annotated[float, Key(SPARE)] = 25.0
    """How far it stands behind the front edge."""
    toe_back: Annotated[float, Key(Range(20, 150, zero=True))] = 75.0
    """How far the toe platform stands behind the boxes' front edges."""
    sleepers: Annotated[float, Key(Range(200, 1200))] = 600.0
    """The greatest distance of its sleepers."""
    scribe: Annotated[float, Key(SPARE)] = 12.0
    """Spare width of a filler."""
    panel_scribe: Annotated[float, Key(SPARE)] = 15.0
    """Spare width of an end panel at a wall."""
    bumper: Annotated[float, Key(Range(0.5, 6, zero=True))] = 2.0
    """Thickness of what holds fronts off the boxes."""
    drawer_bottom: Annotated[float, Key(THIN_BOARD)] = 6.0
    """Thickness of a drawer's bottom."""
    drawer_groove: Annotated[float, Key(Range(2, 15))] = 6.0
    """Depth of its grooves."""
    drawer_boxes: Annotated[Making | None, Key()] = None
    """Whether drawer boxes are made from the cut list, or ordered."""
    drawer_bored: Annotated[bool, Key()] = False
    """Whether drawer boxes come with the holes for their fronts' screws: none are bored in their
    fronts here, and none set out on the back of a front, which is marked through them."""


class Paint(Struct, frozen=True, kw_only=True):
    """How the fronts are painted."""

    coats: Annotated[int, Key(Range(1, 8, unit=""), most=20)] = 2
    """How many coats."""
    spread: Annotated[float, Key(Range(3, 20, unit="m2 a litre"), most=100.0)] = 10.0
    """What one litre covers in one coat, m2; the tin says it; 10 is common practice, no source."""
    method: Annotated[Method | None, Key()] = None
    """How it is laid on: brushed, a film is thicker."""
    sizes: Annotated[SizesAre | None, Key()] = None
    """Whether the fronts have their sizes before they are painted, or after."""
    fronts_come: Annotated[FrontsCome | None, Key()] = None
    """Whether the fronts come raw, to be painted here when they are bored, or painted; raw if
    nothing says so."""

    @property
    def here(self) -> bool:
        """Whether the fronts are painted here, after they are bored."""
        return self.fronts_come != "painted"


class PaintNeed(Struct, frozen=True, kw_only=True):
    """Paint of one finish ("" where none is stated): its fronts, their area in m2, the litres."""

    finish: str
    fronts: int
    area: float
    litres: float


def painted_area(width: float, height: float, thickness: float) -> float:
    """Give the area of a front, both faces and four edges, sizes in mm; m2 (derived)."""
    return (2 * width * height + 2 * (width + height) * thickness) / 1e6


def litres_for(area: float, paint: Paint) -> float:
    """Give the litres that an area (m2) takes in all coats."""
    return area * paint.coats / paint.spread


Species = Literal[
    "sugar maple", "red oak", "white oak", "black cherry", "yellow birch", "yellow-poplar",
    "eastern white pine", "ponderosa pine", "white fir",
]  # fmt: skip
Sawn = Literal["flat", "quarter"]
Grain = Literal["vertical", "horizontal"]
Construction = Literal["slab", "five-piece", "mdf"]


class Exactness(Struct, frozen=True, kw_only=True):
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


class Wood(Struct, frozen=True, kw_only=True):
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


class RoomAir(Struct, frozen=True, kw_only=True):
    """How damp the air of the room becomes, and the wood that fronts are made of."""

    driest: Annotated[float | None, Key(Range(10, 60, unit="%"), most=100.0)] = None
    """Humidity in the driest season, % RH."""
    dampest: Annotated[float | None, Key(Range(30, 90, unit="%"), most=100.0)] = None
    """Humidity in the dampest season, % RH."""
    temperature: Annotated[float, Key(Range(10, 32, unit="C"), most=60.0)] = 21.0
    """Temperature of the room, in degrees Celsius; `"70 F"` is read too."""
    made_at: Annotated[float, Key(Range(5, 16, unit="%"), most=30.0)] = 8.0
    """Moisture of the wood when the fronts are made, %; 8 is common practice, no source."""


class GapSpec(Struct, frozen=True, kw_only=True):
    """All that a job says of what its gaps hang on."""

    exact: Exactness = field(default_factory=Exactness)
    """How true boxes and joints come out."""
    wood: Wood = field(default_factory=Wood)
    """What the fronts are of."""
    air: RoomAir = field(default_factory=RoomAir)
    """How damp the room becomes."""
    fronts_in_hand: bool = False
    """Whether all fronts are there already, measured or not: none is to be ordered."""


FILM: dict[Method, tuple[float, float]] = {"sprayed": (0.10, 0.15), "brushed": (0.15, 0.30)}
"""What a finished film adds at an edge, least and most; mm (common practice, no source)."""
USUAL_COATS = 2
"""The coats of such a film; of more or fewer it is so much thicker or thinner (our own choice)."""


def film_of(paint: Paint) -> tuple[float, float] | None:
    """Give what the film adds at each edge of a front, least and most, mm; None where the job does
    not say how it is painted, or when it is measured."""
    if paint.sizes == "after":
        return 0.0, 0.0
    if paint.sizes is None or paint.method is None:
        return None
    low, high = FILM[paint.method]
    share = paint.coats / USUAL_COATS
    return low * share, high * share


def inside_depth(box_depth: float, back: float) -> float:
    """Give the depth from the finished front edge to the back's face; mm."""
    return box_depth - BACK_SET_IN - back
