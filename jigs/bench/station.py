"""A station: all that is drilled into one face with the same bits and stops, whatever the parts.

Its cards are small templates, each a pattern of holes in a frame of its own: the origin lies where
the lines cross that the card is set by, x to the right, y up, mm, as the driller sees the face.
Along each axis a card is set by an edge of the part, which it is folded over or butted to, or else
by a line struck on the part. A row is one part and what it serves; each of its settings places one
card on it.

A setting's holes are the card's, the card's edges laid on the part's and its lines on the values
that the setting gives. Turned half round, a card's left edge lies on the part's right one, its top
edge on the bottom one.

>>> Offset(start="middle-x").of(454.0, 613.0), Offset(start="top", value=63.5).of(454.0, 613.0)
(227.0, 549.5)

Cut as a plate, a card guides by its holes: a punch through 2 mm, or the bit itself.

>>> guide_diameter(Hole(purpose="cup", face="back", x=22.5, y=100, diameter=35, depth=13))
2.0
>>> guide_diameter(Hole(purpose="shelf", face="inside", x=37, y=100, diameter=5.0, depth=12))
5.0
"""

from collections.abc import Mapping, Sequence
from functools import cached_property
from itertools import pairwise
from typing import Literal

from msgspec import Struct

from jigs.bench.benchpart import BenchPart, Marks
from jigs.bench.storystick import Spacer
from jigs.given.confirming import OpenNumber
from jigs.ground.geometry import SLACK, Axis, Face, FaceEdge, Hand, Hole, Polygon, Purpose
from jigs.ground.grouped import grouped
from jigs.ground.problems import Problem

Start = Literal["left", "right", "bottom", "top", "middle-x", "middle-y"]
"""Where a figure is counted from: an edge of the face as seen, or the middle between two."""
How = Literal["fold", "butt", "panel"]
"""How a card lies on an edge: its flap folded over it, or its cut end butted to a block there or,
on sheets, stood on the panel of a box already together."""

Work = Literal[
    "sides", "drawer-boxes", "rear-hooks", "cups", "pulls", "fronts-on-boxes", "false-fronts",
    "pulls-through", "by-hand",
]  # fmt: skip
"""What a station does, in the order of the work."""


class Bit(Struct, frozen=True, kw_only=True):
    """A bit with its stop."""

    purposes: tuple[Purpose, ...]
    """What the holes are for that it bores."""
    diameter: float
    """mm."""
    depth: float | None
    """Of the stop, mm; None: right through."""
    leaves: float | None
    """The least wood that is left under it in any of the station's parts, mm; None: none."""


class CardEdge(Struct, frozen=True, kw_only=True):
    """An edge of a part that a card is set by; it runs through the card's origin."""

    edge: FaceEdge
    """Which one, on the card as it lies unturned."""
    by: How
    inside: float = 0.0
    """How far inside the face's own end it lies, mm: a front edge whose band is still to come."""


class Corner(Struct, frozen=True, kw_only=True):
    """A lower corner of a drawer box: that on its left or on its right as seen, and where; mm."""

    side: Hand
    x: float
    y: float


class StationCard(Struct, frozen=True, kw_only=True):
    """A card: a pattern of holes, and what it is set by."""

    letter: str
    code: str
    """Of this pattern and its hand: on the loose card, and on the plate made from it."""
    edges: tuple[CardEdge, ...]
    lines: tuple[Axis, ...]
    """The axes along which it is set on a line through its origin: `y` is a line across."""
    holes: tuple[Hole, ...]
    """In its own frame, mm; from below, then from the left."""
    outline: tuple[Polygon, ...] = ()
    """Of the hardware that lies on it, in its own frame."""
    one_way: bool = False
    """Whether that lies so on the unturned card alone."""
    carry: tuple[float, ...] = ()
    """Further x places on the line that are not on paper: carried on with a square, or marked
    through the slide itself; mm in its own frame."""
    stands: Corner | None = None
    """Of a card that places a drawer box on its front: where the box's corner lies on it."""
    numbered: bool = False
    """Whether its holes are crosses with numbers, of which a setting uses some."""
    records: tuple[str, ...] = ()
    """The hardware that it is drawn for."""
    settings: int = 0
    """How often it is set."""
    critical: bool = True
    """Whether its place is: then it wears (`jigs.bench.station`)."""
    copies: int = 1
    """How many of it are to be cut."""

    @property
    def folds(self) -> int:
        """How many flaps are folded on one copy of it."""
        return sum(edge.by == "fold" for edge in self.edges)


class Offset(Struct, frozen=True, kw_only=True):
    """A figure on a part: from which end or middle of the face as seen, and how far, mm."""

    start: Start
    value: float = 0.0

    def of(self, width: float, height: float) -> float:
        """Give its coordinate on a face of this size as seen, mm."""
        match self.start:
            case "left" | "bottom":
                return self.value
            case "right":
                return width - self.value
            case "top":
                return height - self.value
            case "middle-x":
                return width / 2 + self.value
            case "middle-y":
                return height / 2 + self.value


class Setting(Struct, frozen=True, kw_only=True):
    """One placing of a card."""

    card: str
    copy: int = 1
    """Which copy of it, as they wear in the order of the bench; 1-based."""
    turned: bool = False
    """Half round: left and right, top and bottom exchange."""
    x: Offset | None = None
    """Where the card's line down lies; None where an edge says it."""
    y: Offset | None = None
    """Where the card's line across lies; None where an edge says it."""
    holes: tuple[int, ...] | None = None
    """Which of the card's holes are drilled, 0-based; None: all."""


class Closing(Struct, frozen=True, kw_only=True):
    """Figures along a part that add up to its size: `places` are counted from its `start`, in
    rising order, and all lie on a length of `length`; mm. What lies between two of them is the
    same from punch to punch."""

    start: FaceEdge
    places: tuple[float, ...]
    length: float
    above: float = 0.0
    """How far above the face's own end they start: the bottom panel's upper face in a box already
    together."""

    @property
    def terms(self) -> tuple[float, ...]:
        """The distances that are added, the last one up to the far end; mm."""
        ends = (0.0, *self.places, self.length)
        return tuple(after - before for before, after in pairwise(ends))

    @property
    def between(self) -> tuple[float, ...]:
        """The distances from punch to punch, mm."""
        return self.terms[1:-1]


class Row(Struct, frozen=True, kw_only=True):
    """A part at a station, and what is drilled into it for one other part or for itself."""

    part: BenchPart
    serves: str | None
    """The part that is served; the part itself where it serves none; None for shelf pins."""
    purpose: Purpose
    settings: tuple[Setting, ...] = ()
    closing: tuple[Closing, ...] = ()
    """The sums that close: up the part, then across it where there is one."""
    marks: Marks | None = None
    spacer: Spacer | None = None
    """The board that holds a drawer's slides level while they are screwed on."""
    bored: bool = False
    """Whether its holes are there already, bored through once from a partition's other face."""
    held: tuple[Problem, ...] = ()
    """Why nothing is set: the errors that hold back what is served."""
    warnings: tuple[Problem, ...] = ()
    """What the check says of the part, where it is not held back."""
    open: tuple[OpenNumber, ...] = ()
    """The open numbers that its holes here rest on."""

    @property
    def withheld(self) -> bool:
        """Whether it is held back: then it has no settings."""
        return bool(self.held)


class Station(Struct, frozen=True, kw_only=True, dict=True):
    """All that is drilled into one face with the same bits and stops."""

    name: str
    """Purpose, hand, and a letter where there are several: `cups-right`, `pulls-b`."""
    stem: str
    """The name without that letter."""
    work: Work
    face: Face
    hand: Hand | None
    """The side of the hinge edge as seen on the drilled face, where the station has one."""
    pattern: str
    """What tells it from others that do the same on the same hand: of a pull's holes the corner
    (`top-left`), `line` or `middle`."""
    code: str
    """From its patterns and its hand, whatever parts they serve."""
    bits: tuple[Bit, ...]
    """The widest first."""
    cards: tuple[StationCard, ...]
    rows: tuple[Row, ...]

    @property
    def purpose(self) -> Purpose:
        """What its widest bit is for."""
        return self.bits[0].purposes[0]

    @property
    def marked(self) -> bool:
        """Whether its fronts are marked through their drawer boxes, which its cards place."""
        return any(card.stands is not None for card in self.cards)

    @property
    def in_pairs(self) -> bool:
        """Whether boards are laid in pairs at it: sides of boxes that are not together yet."""
        boards = [row.part.board for row in self.rows if row.part.board is not None]
        return self.work == "sides" and any(not board.assembled for board in boards)

    @cached_property
    def rests_alike(self) -> bool:
        """Whether all its rows that are not held back rest on the same open numbers."""
        return len({frozenset(row.open) for row in self.rows if not row.withheld}) == 1

    @cached_property
    def rows_of_part(self) -> Mapping[str, Sequence[Row]]:
        """The rows of each part, by its ID."""
        return grouped((row.part.id, row) for row in self.rows)

    @cached_property
    def rows_under(self) -> Mapping[tuple[str, bool], Sequence[Row]]:
        """The rows that a card is set on, by its letter and whether it is turned."""
        return grouped(
            (way, row)
            for row in self.rows
            for way in dict.fromkeys((each.card, each.turned) for each in row.settings)
        )

    def card(self, letter: str) -> StationCard:
        """Find a card by its letter."""
        return next(card for card in self.cards if card.letter == letter)


SETTINGS_A_CARD = 8
"""So often a card is set before its folds are worn, where the place is critical (our choice)."""
SETTINGS_A_PIN_CARD = 24
"""The same of a card of shelf pins, which a shelf lies on with some play (our choice)."""


def settings_of(card: StationCard) -> int | None:
    """Give after how many settings a copy of a card is worn; None: never, since any place within 2
    mm does for a clearance hole."""
    if not card.critical:
        return None
    return SETTINGS_A_PIN_CARD if card.numbered else SETTINGS_A_CARD


PUNCHED = 2.0
"""A hole that an awl or a transfer punch of this size goes through; mm (our choice)."""
BIT_GUIDED: frozenset[Purpose] = frozenset({"shelf", "clearance"})
"""Rows of many holes, and holes with play: there the plate guides the bit. All else must be true
to 0.5 or less, and a bit soon widens its hole in hardboard (common practice, no source)."""


def is_guided(hole: Hole) -> bool:
    """Tell whether the bit goes through the plate's own hole."""
    return hole.purpose in BIT_GUIDED or hole.diameter <= PUNCHED + SLACK


def guide_diameter(hole: Hole) -> float:
    """Give the diameter of a plate's hole for a hole in the part, mm."""
    return hole.diameter if is_guided(hole) else PUNCHED
