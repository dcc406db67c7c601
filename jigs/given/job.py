"""The job as it was read: what the person gave, in mm, before anything is computed.

A value that was not given and has a default carries the default here, and its key stands in
`Job.assumed` (`material.side`, `reveal.top`, `box.B1.depth`, ...), so that the sheets it touches
can be stamped ASSUMED. A size that is None is computed from box and reveals.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Annotated, Literal

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.given.build import Build, Exactness, GapSpec, MovesAs, Paint
from jigs.given.confirming import Record, RecordKind
from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.given.labelstock import Stock
from jigs.given.measured import DeliveredList, Delivery
from jigs.given.printer import Printer
from jigs.given.stated import (
    BlindEnd,
    BoardHole,
    Boring,
    BoxRead,
    DrawerSize,
    EndPanels,
    FivePieceSpec,
    FrontEdges,
    FrontWords,
    HandHole,
    Hung,
    Leaflet,
    OpenedBy,
    OwnReveals,
    Portion,
    RolloutSpec,
    RowRead,
    Taped,
    TapedBox,
)
from jigs.given.wallspec import WallSpec
from jigs.ground.believable import (
    BOARD,
    END_REVEAL,
    FRONT_BOARD,
    RAIL,
    REVEAL,
    THIN_BOARD,
    Doubt,
    Range,
)
from jigs.ground.geometry import Hand
from jigs.ground.keys import Key, called
from jigs.ground.lengths import LONGEST, Unit

FrontKind = Literal["door", "pair", "drawer", "pullout", "false-front", "panel", "lift", "opening"]
BoxKind = Literal["base", "drawer", "sink", "wall", "tall", "open"]
FrontMaterial = Literal["mdf", "hardwood", "softwood", "plywood"]
SideMaterial = Literal["plywood", "mdf", "particleboard", "solid"]
Overlay = Literal["full", "half", "inset"]

FRONT_KINDS: tuple[FrontKind, ...] = (
    "door", "pair", "drawer", "pullout", "false-front", "panel", "lift", "opening",
)  # fmt: skip
BandState = Literal["on", "later"]
BOX_KINDS: tuple[BoxKind, ...] = ("base", "drawer", "sink", "wall", "tall", "open")
COUNTER_BOXES: tuple[BoxKind, ...] = ("base", "drawer", "sink")
"""Boxes that stand under a counter."""
OVERLAYS: tuple[Overlay, ...] = ("full", "half", "inset")

MOST_COLUMNS = 12
"""Columns that one box may have."""
COLUMNS = Range(1, MOST_COLUMNS, unit="")
UNDER = "top reveal under a counter"
ACCEPTED = 1.6
"""A delivered size may differ from the order by this much; mm (common practice, no source)."""


class Material(Struct, frozen=True, kw_only=True):
    """True thicknesses, measured with a caliper; mm."""

    side: Annotated[float, Key(BOARD, called="side thickness")] = 18.0
    """Thickness of the boxes' sides."""
    front: Annotated[float, Key(FRONT_BOARD, called="front thickness")] = 19.0
    """Thickness of the fronts."""
    front_kind: Annotated[FrontMaterial, Key(called="front material")] = "mdf"
    """What the fronts are; picks pilot holes and weight."""
    back: Annotated[float, Key(THIN_BOARD, called="back thickness")] = 6.0
    """Thickness of the boxes' backs."""
    band: Annotated[float, Key(Range(0.2, 4, zero=True), called="edge band")] = 0.0
    """Thickness of the edge band."""
    drawer_side: Annotated[float, Key(Range(6, 30), called="drawer side thickness")] = 15.9
    """Thickness of the drawers' sides."""
    partition: Annotated[float | None, Key(BOARD)] = None
    """Thickness of the partitions, if they are another board than the sides."""
    side_kind: Annotated[SideMaterial | None, Key()] = None
    """What the sides' board is; shelves are cut of it: says how far they sag."""
    front_density: Annotated[float | None, Key(Range(250, 1200, unit="kg/m3"), most=5000.0)] = None
    """Density of the fronts, kg/m3; says the weight better than `front_kind`."""

    @property
    def partition_board(self) -> float:
        """True thickness of the partitions: the sides' board where it is not stated; mm."""
        return self.side if self.partition is None else self.partition


class Reveal(Struct, frozen=True, kw_only=True):
    """Reveals: gaps beside a front, from its edge; mm."""

    side: Annotated[float, Key(REVEAL, called="side reveal")] = 1.6
    """To the outside of its own box at the side."""
    top: Annotated[float, Key(END_REVEAL, called="top reveal")] = 1.6
    """To the outside of its own box at the top."""
    under_counter: Annotated[float | None, Key(END_REVEAL, called=UNDER)] = None
    """The same of base, drawer and sink boxes alone; where `top` alone is said theirs is that."""
    bottom: Annotated[float, Key(END_REVEAL, called="bottom reveal")] = 1.6
    """To the outside of its own box at the bottom."""
    between: Annotated[float, Key(REVEAL, called="gap between fronts")] = 3.2
    """Between two fronts of one box."""
    inset: Annotated[float, Key(REVEAL, called="gap round an inset front")] = 2.0
    """Round a front that stands inside its box."""

    def top_of(self, kind: BoxKind) -> float:
        """Give the top reveal of a box of this kind; mm."""
        own = self.under_counter if kind in COUNTER_BOXES else None
        return self.top if own is None else own


class Grid(Struct, frozen=True, kw_only=True):
    """The 32 mm grid of the box sides: who keeps to it, and where it starts (None: balanced)."""

    hinges: bool = True
    slides: bool = False
    start: float | None = None


class Use(Struct, frozen=True, kw_only=True):
    """Names of the hardware records used where a front does not say otherwise. `other_hinges`: of
    other kinds than `hinge`, for the doors that hang so."""

    hinge: Annotated[str | None, Key(called="hinge")] = None
    """A hinge, or a list."""
    other_hinges: tuple[str, ...] = ()
    slide: Annotated[str | None, Key(called="slide")] = None
    """A slide."""
    drawer_pull: Annotated[str | None, Key(called="pull of drawers")] = None
    """A pull of drawers, or "none"."""
    door_pull: Annotated[str | None, Key(called="pull of doors")] = None
    """A pull of doors, or "none"."""

    @property
    def hinge_names(self) -> tuple[str, ...]:
        """The names of all hinges, one for each way that a door hangs."""
        return () if self.hinge is None else (self.hinge, *self.other_hinges)


class FrontSpec(Struct, frozen=True, kw_only=True):
    """One front as given: None where it is to be computed or taken from the job."""

    id: str
    """What it is called on sheets and labels."""
    kind: FrontKind
    """What it is."""
    width: float | None = None
    """Its width, of a pair that of one leaf; mm."""
    height: float | None = None
    """Its height, mm."""
    portion: Portion = field(default_factory=Portion)
    """Its height, where it has none of its own."""
    hinged: Hand | None = None
    """The side on which a door hangs."""
    thickness: Annotated[float | None, Key(FRONT_BOARD)] = None
    """Its thickness where it is another board than the job's."""
    five_piece: FivePieceSpec = field(default_factory=FivePieceSpec)
    """Its frame."""
    edges: FrontEdges = field(default_factory=FrontEdges)
    """How its edges are worked."""
    measured: Taped = field(default_factory=Taped)
    """What a tape said of it in hand."""
    leaves: "tuple[Measures, Measures] | None" = None
    """What was measured of the leaves of a pair, left and right, where they are measured apart."""
    boring: Boring = field(default_factory=Boring)
    """Where its cups are bored."""
    hung: Hung = field(default_factory=Hung)
    """How it hangs."""
    slide: str | None = None
    """The name of its slide."""
    opened_by: OpenedBy = field(default_factory=OpenedBy)
    """What it is opened by."""
    leaflet: Leaflet | None = None
    """The leaflet of its appliance, of a panel; None where nobody has it."""
    by_kit: bool = False
    """Whether it hangs, or stands, on a kit whose holes are given by hand: no hinge, no slide, no
    drawer box, no screws by rule."""
    drawer_box: DrawerSize = field(default_factory=DrawerSize)
    """The drawer box behind it."""
    words: FrontWords = field(default_factory=FrontWords)
    """What is said of it in words."""
    holes: tuple[HandHole, ...] = ()
    """The holes given by hand in it."""
    overlay: Overlay | None = None
    """How it lies on its box; None: as the box says."""
    reveals: OwnReveals = field(default_factory=OwnReveals)
    """Its own gaps."""
    column: Annotated[int, Key(COLUMNS, most=MOST_COLUMNS)] = 1
    """The column before which it stands, counted from 1 at the left."""
    span: Annotated[int, Key(COLUMNS, most=MOST_COLUMNS)] = 1
    """How many columns it stands before."""
    row: RowRead = field(default_factory=RowRead)
    """What came of reading it."""


class Measures(Struct, frozen=True, kw_only=True):
    """What the delivered list says of a front in hand."""

    measured: Taped = field(default_factory=Taped)
    """Its sizes."""
    thickness: float | None = None
    """Its thickness, None where it was not measured; mm."""
    note: str = ""
    """What was seen on it."""

    def apply(self, spec: FrontSpec) -> FrontSpec:
        """Give a front with what was measured of it; the rest stays as it was stated."""
        return replace(
            spec,
            measured=self.measured.over(spec.measured),
            thickness=self.thickness or spec.thickness,
            words=replace(spec.words, note="; ".join(filter(None, (spec.words.note, self.note)))),
        )


class ColumnSpec(Struct, frozen=True):
    """One column of a box: its clear width between the boards in mm, or its share of the rest."""

    width: float | None = None
    share: float = 1.0


class ShelfSpec(Struct, frozen=True, kw_only=True):
    """A shelf: fixed with its upper face `at` this height, or adjustable (`at` None) between
    `low` and `high`; all from the side's bottom end, mm. `column` None: in every column.
    `count`: how many adjustable shelves."""

    at: float | None = None
    low: float | None = None
    high: float | None = None
    column: int | None = None
    count: int = 1


class BoxSpec(Struct, frozen=True, kw_only=True):
    """One box as given; mm.

    Its fields are the keys of a `[[box]]` table; those that belong together are one value (its end
    panels, what the tape says of it). The others are each by itself, and may be given alone.
    """

    id: str
    """What it is called on sheets and labels."""
    kind: BoxKind
    """What it is."""
    width: float
    """Outside, from side to side."""
    height: float
    """From its sides' bottom end to its top."""
    depth: float
    """From its back to the finished front edges of its sides."""
    above_floor: float
    """Its sides' bottom end above the finished floor."""
    wall: Annotated[str, Key()] = ""
    """The wall it stands at."""
    x: Annotated[float | None, Key(Range(-2000, LONGEST))] = None
    """Its left end along the wall; else it follows the box before it."""
    fronts: tuple[FrontSpec, ...] = ()
    """Its fronts from top to bottom."""
    overlay: Overlay = "full"
    """How its fronts lie: over its sides, over half of them, or between them."""
    assembled: Annotated[bool, Key()] = False
    """Whether its sides are drilled in the box."""
    band: Annotated[BandState | None, Key()] = None
    """Whether the edge band on its sides is on, or comes later."""
    legs: Annotated[float, Key(Range(30, 260))] = 0.0
    """Where its sides run on to the floor: the underside of its bottom panel above their end."""
    columns: tuple[ColumnSpec, ...] = ()
    """Its columns from left to right, parted by partitions; none: one column."""
    shelves: tuple[ShelfSpec, ...] = ()
    """Its shelves."""
    no_shelf: bool = False
    """Whether it is stated that it has none."""
    slide: str | None = None
    """The slide of its drawers, pullouts and rollouts that name none: a box may be shallower."""
    rollouts: tuple[RolloutSpec, ...] = ()
    """What rolls out from behind its doors."""
    rail: Annotated[float | None, Key(RAIL)] = None
    """The height of a rail on edge at its top front; else as usual for its kind."""
    blind: BlindEnd | None = None
    """The end of a corner box that is closed."""
    panels: EndPanels = field(default_factory=EndPanels)
    """The panels beside and behind it."""
    built: bool = False
    """Whether it is put together."""
    measured: TapedBox = field(default_factory=TapedBox)
    """What the tape says of it then."""
    holes: tuple[BoardHole, ...] = ()
    """The holes given by hand in its sides and partitions."""
    read: BoxRead = field(default_factory=BoxRead)
    """What came of reading it."""

    @property
    def inferred(self) -> bool:
        """Whether it was worked out from a bare front list."""
        return self.read.inferred

    @property
    def is_place(self) -> bool:
        """Whether it is only the place of an appliance."""
        return self.kind == "open" and any(front.kind == "panel" for front in self.fronts)


class Job(Struct, frozen=True, kw_only=True):
    """A whole job as read. `assumed` holds the keys of the defaults that stand in for numbers
    the person did not give.

    `units` is the job's own: what it is built to goes by it (rounding, series, stock lengths).
    `shown_in` changes only how findings are worded, None for `units`. `sources` are the files
    that the job was read from. `tolerance`: how far a delivered front may be off its order, mm.
    `delivered`: the list of what has arrived as it was read; `delivery`: the same, matched with the
    fronts. `walls`: what stands at their
    ends. `doubts`: numbers that are not usual, but for those of boxes and fronts."""

    name: str
    units: Unit
    boxes: tuple[BoxSpec, ...]
    material: Material = field(default_factory=Material)
    reveal: Reveal = field(default_factory=Reveal)
    increment: float | None = None
    grid: Grid = field(default_factory=Grid)
    use: Use = field(default_factory=Use)
    hinges: Mapping[str, HingeRecord] = field(default_factory=dict)
    slides: Mapping[str, SlideRecord] = field(default_factory=dict)
    pulls: Mapping[str, PullRecord] = field(default_factory=dict)
    assumed: frozenset[str] = field(default_factory=frozenset)
    shown_in: Unit | None = None
    sources: tuple[Path, ...] = ()
    build: Build = field(default_factory=Build)
    tolerance: float = ACCEPTED
    delivered: DeliveredList | None = None
    delivery: Delivery | None = None
    walls: tuple[WallSpec, ...] = ()
    paint: Paint = field(default_factory=Paint)
    gaps: GapSpec = field(default_factory=GapSpec)
    printers: Mapping[str, "Printer"] = field(default_factory=dict)
    stocks: Mapping[str, Stock] = field(default_factory=dict)
    doubts: tuple[Doubt, ...] = ()
    list_told: str = ""
    """What the columns of its front list were taken for, in words."""

    def thickness_of(self, front: FrontSpec) -> float:
        """Give a front's thickness, its own or the job's; mm."""
        return self.material.front if front.thickness is None else front.thickness

    @property
    def records(self) -> Mapping[RecordKind, Mapping[str, Record]]:
        """Its hardware, by kind and name."""
        return {"hinge": self.hinges, "slide": self.slides, "pull": self.pulls}

    @property
    def moves_as(self) -> MovesAs:
        """What its fronts move as from season to season: `[wood] construction` says it, else the
        board they are of."""
        construction, kind = self.gaps.wood.construction, self.material.front_kind
        if construction is not None:
            return "mdf" if construction == "mdf" else "wood"
        return kind if kind in ("mdf", "plywood") else "wood"

    @property
    def shown(self) -> Unit:
        """The unit that lengths are shown in first, on the terminal and in findings."""
        return self.shown_in or self.units


MATERIAL_WORDS = called(Material, "material")
REVEAL_WORDS = called(Reveal, "reveal")
USE_WORDS = called(Use, "use")
EXACT_WORDS = called(Exactness, "gaps")
"""Keys of a job in the words of the trade, as they stand in `Job.assumed`. Of the last none decides
a hole: they are told beside gaps alone."""
