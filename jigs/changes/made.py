"""What a job makes, as values that outlive the job: what two of them are compared by.

Lengths are in mm and rounded to 0.0001, as all data is; what is a word here is compared as a whole
and never looked into.
"""

from collections.abc import Mapping

from msgspec import Struct, field

from jigs.ground.geometry import Face, Hand, Purpose

Value = str | float | bool | tuple["Value", ...]
"""What was given: a word, a number, a choice, or several of them."""
Sizes = tuple[float, ...]


def steps(value: float) -> float:
    """Round to 0.0001, as data is; never -0.

    >>> steps(-0.00001), steps(454.02503)
    (0.0, 454.025)
    """
    return round(value, 4) + 0.0


def all_steps(*values: float) -> Sizes:
    """Round several so."""
    return tuple(steps(value) for value in values)


class MadeHole(Struct, frozen=True, kw_only=True):
    """A hole in the axes of its part (`jigs.ground.geometry`); mm."""

    purpose: Purpose
    face: Face
    x: float
    y: float
    diameter: float
    depth: float | None
    """None: through."""
    serves: str = ""
    """The part that it is drilled for, "" where it is for none or for its own."""
    side: Hand | None = None
    """Of a board: on which side of its column the face is; a partition has two."""
    work: str = ""
    """What the station does that bores it; "" where none does."""


class DrilledFor(Struct, frozen=True, kw_only=True):
    """The hardware that a part is drilled or cut for."""

    records: tuple[str, ...] = ()
    """Each with its kind before it: `hinge main`."""
    fit: Sizes = ()
    """A door's tab and plate, mm."""


class Unsure(Struct, frozen=True, kw_only=True):
    """What of a part nobody looked up, measured or gave."""

    open: tuple[str, ...] = ()
    """The open numbers that it rests on: `hinge.main.constant`."""
    assumed: tuple[str, ...] = ()
    """What is assumed of it."""


class MadePart(Struct, frozen=True, kw_only=True):
    """A part with a label."""

    id: str
    kind: str
    """A front's, a piece's; `drawer-box`, `rollout`."""
    code: str
    """As on its label; "" while it is held back."""
    wall: str = ""
    boxes: tuple[str, ...] = ()
    hinged: str = ""
    """The edge that it hangs by; "" where it hangs by none, or nobody said."""
    count: int = 1
    """How many are alike under its ID."""
    size: Sizes = ()
    """Finished: a front's width, height, thickness; a drawer box's width, height, length, side; a
    piece's length, width, thickness; a built box's board depth, height, thickness; mm."""
    cut: Sizes = ()
    """Length, width, thickness on the saw; none of what is not cut; mm."""
    stuff: str = ""
    """The board that it is cut from."""
    band: tuple[str, ...] = ()
    """The edges that are banded."""
    banding: float = 0.0
    """The thickness of that band, mm."""
    joined: Sizes = ()
    """Grooves, notches and pocket screws, one figure after the other; mm."""
    holes: tuple[MadeHole, ...] = ()
    frame: Sizes = ()
    """Of a board: what its heights are told by, its bottom panel, ends, legs and fixed shelves,
    and its doors' plates; of a front its own frame, its edges and the gaps about it; mm."""
    stands: Sizes = ()
    """Of a front where its drawer box stands, its left end and underside from the corner of the
    front; of a rollout the same from the corner of its box; mm."""
    drilled_for: DrilledFor = field(default_factory=DrilledFor)
    """What it is drilled or cut for."""
    held: tuple[str, ...] = ()
    """The errors that hold it back, each with its figures."""
    ready: bool = False
    """Whether it came bored, or stands in a box that is built."""
    in_hand: bool = False
    """Whether its size is that of the part as it was measured in hand."""
    said: tuple[str, ...] = ()
    """What else stands on its label: note, finish, its place among others."""
    state: tuple[str, ...] = ()
    """What stands on its sheet too: whose holes are to come, whether its band is on, its grain."""
    stations: tuple[str, ...] = ()
    """Where it is drilled."""
    unsure: Unsure = field(default_factory=Unsure)
    """What it rests on that nobody has made sure of."""
    front: str = ""
    """The front that it is of, or behind which it stands."""


class MadeRow(Struct, frozen=True, kw_only=True):
    """A row of a station."""

    part: str
    code: str
    serves: str
    cards: tuple[str, ...]
    """The card of each setting, by letter and copy."""
    settings: tuple[Value, ...]
    """How each of them is set."""
    figures: tuple[Value, ...]
    """What else its line has: sizes, sums, spacers, why it is held, what is warned of."""


class MadeStation(Struct, frozen=True, kw_only=True):
    """A station: its page."""

    name: str
    code: str
    work: str
    pattern: str
    cards: tuple[str, ...]
    """Letter and code of each, together."""
    rows: tuple[MadeRow, ...]


class MadeNeed(Struct, frozen=True, kw_only=True):
    """A line of the order; `sizes` in mm, by which it is bought."""

    what: str
    name: str
    sizes: Sizes
    unit: str
    buy: float


class MadeWall(Struct, frozen=True, kw_only=True):
    """A wall: its lines, where its boxes stand, and all that its elevation shows; mm."""

    name: str
    lines: tuple[tuple[float, tuple[str, ...]], ...]
    """Each level line above the floor's high point, and the boxes that it is for."""
    boxes: tuple[tuple[str, float, float], ...]
    """Each box, its left end along the wall, its bottom above the floor."""
    drawn: tuple[Value, ...]


class Given(Struct, frozen=True, kw_only=True):
    """A value that was given, or stands in for one: whose it is, under which key."""

    kind: str
    """`job`, `box`, `front`, `hinge`, `slide`, `pull`, `wall`."""
    name: str
    """"" of the job itself."""
    key: str
    """Its key in the job file, with the table where it is in one: `material.side`."""
    value: Value
    box: str = ""
    """Of a front: the box that it stands before."""


class Made(Struct, frozen=True, kw_only=True):
    """All that a job makes."""

    job: str
    tool: str
    """The version that made it."""
    reach: float = 0.0
    """How far a hole may lie from what its card is set by, on the paper that its stations were
    planned for, mm; 0 where nobody said."""
    parts: Mapping[str, MadePart] = field(default_factory=dict)
    stations: tuple[MadeStation, ...] = ()
    order: tuple[MadeNeed, ...] = ()
    walls: tuple[MadeWall, ...] = ()
    lists: Mapping[str, str] = field(default_factory=dict)
    """Of the files of a pack that are lists, what they say: of each a digest."""
    given: tuple[Given, ...] = ()
    whole: bool = True
    """False of an older pack, which kept nothing but the codes of its parts."""
