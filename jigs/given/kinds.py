"""What each kind of fitting is to the rest of the tool: one entry a kind.

A new kind is a new name in `FittingKind` and `Purpose` (`jigs/ground/geometry.py`), an entry
here, and its words in `templates/words/fittingwords.py`. The type checker names the tables that
miss it. What no other kind does stands in a module of the kind's own.

>>> KINDS["plate"].record, KINDS["shelf"].record
('hinge', None)
>>> by_rank(["manual", "plate", "slide"])
('slide', 'plate', 'manual')
"""

from collections.abc import Iterable, Mapping
from typing import Literal, TypedDict, cast

from msgspec import Struct

from jigs.given.confirming import RecordKind
from jigs.ground.geometry import Fitting, FittingKind, Purpose

AcrossFrom = Literal["hinge-edge", "front-edge", "nearer-edge", "middle", "as-stated"]
"""Which edge a fitting is set out from across its part: that of a door's hinges; a side's front
edge; the nearer one, but of a box already together the front edge; a front's own middle where it
stands about it; the one that a leaflet counts from."""
Up = Literal["bottom", "free-end", "nearer-end", "as-stated"]
"""Which end it is set out from: the bottom; on a door the end it is near, on another front the
top; each hole from the end it is near, where another part is marked through it, else the bottom;
the one that its holes were stated from."""


Bought = Literal["each-hole", "own-rule", "not"]
"""How an order counts it: a piece and no screw for each of its holes; by a rule that
`jigs/order/needed.py` has for it; it is bought with another kind, or comes with a kit."""


class Bore(Struct, frozen=True):
    """Bit and depth; mm. `depth` None means right through."""

    diameter: float
    depth: float | None


class Kind(Struct, frozen=True, kw_only=True):
    """One kind of fitting."""

    holes: tuple[Purpose, ...]
    """What its holes are for, the one that names the work first."""
    record: RecordKind | None
    """The kind of hardware record whose numbers decide its holes; None: no record does."""
    across: AcrossFrom
    up: Up
    bought: Bought
    bore: Bore | None = None
    """What is bored for it where a job states its holes, one a piece, and neither bit nor depth:
    `purpose` in `[[box.front.hole]]` or `[[box.hole]]` names the kind. None: no job states it."""
    side_by_side: bool = False
    """Its cards follow each other across the part, not up it."""
    loose: bool = False
    """No piece of hardware holds the places of its holes to each other."""
    lined: bool = False
    """The line of its holes is drawn on to the rear edge."""
    on_crosses: bool = False
    """Its holes stand in rows that one card with numbered crosses sets, line after line."""
    framed: Literal["always", "one-hole", "never"] = "never"
    """Whether its card keeps room for its hardware's outline: always, or with one hole alone."""
    rests: tuple[str, ...] = ()
    """The keys of a job, `use.KEY` or a box's own, that the holes of a side with it follow from,
    beside the side's."""

    @property
    def stated(self) -> bool:
        """Whether a job states where its holes are: the tool moves none of them."""
        return self.up == "as-stated"


_Kinds = TypedDict("_Kinds", {
    "hinge": Kind, "slide": Kind, "plate": Kind, "shelf": Kind, "pull": Kind,
    "front-fixing": Kind, "clearance": Kind, "hook": Kind, "manual": Kind,
})  # fmt: skip

KINDS: _Kinds = {
    "hinge": Kind(
        holes=("cup", "cup-fixing"), record="hinge", across="hinge-edge", up="bottom",
        bought="own-rule", framed="always",
    ),
    "slide": Kind(
        holes=("slide",), record="slide", across="front-edge", up="bottom",
        bought="own-rule", lined=True, rests=("use.slide", "spacers"),
    ),
    "plate": Kind(
        holes=("plate",), record="hinge", across="front-edge", up="bottom",
        bought="own-rule", rests=("use.hinge",),
    ),
    "shelf": Kind(
        holes=("shelf",), record=None, across="nearer-edge", up="bottom",
        bought="own-rule", on_crosses=True, rests=("shelf", "pins"),
    ),
    "pull": Kind(
        holes=("pull",), record="pull", across="middle", up="free-end",
        bought="own-rule", side_by_side=True, framed="one-hole",
    ),
    "front-fixing": Kind(
        holes=("front-fixing",), record="slide", across="middle", up="bottom",
        bought="own-rule", side_by_side=True, loose=True,
    ),
    "clearance": Kind(
        holes=("clearance",), record="slide", across="middle", up="nearer-end", bought="not",
        side_by_side=True, loose=True,
    ),
    "hook": Kind(
        holes=("hook",), record="slide", across="nearer-edge", up="bottom", bought="not",
        side_by_side=True,
    ),
    "manual": Kind(
        holes=("manual",), record=None, across="as-stated", up="as-stated", bought="not",
    ),
}  # fmt: skip
"""Every kind, in the order in which cards, steps and lines of a stick follow each other."""

_Holes = TypedDict("_Holes", {
    "cup": str, "cup-fixing": str, "front-fixing": str, "pull": str, "plate": str, "slide": str,
    "shelf": str, "clearance": str, "hook": str, "manual": str,
})  # fmt: skip

HOLES: _Holes = {
    "cup": "hinge cup", "cup-fixing": "hinge screw", "front-fixing": "fixing screw",
    "pull": "pull", "plate": "hinge plate", "slide": "slide", "shelf": "shelf",
    "clearance": "clearance", "hook": "hook", "manual": "hand-given",
}  # fmt: skip
"""What a hole is called in a finding."""


def kind_of(fitting: Fitting) -> Kind:
    """Give the entry of a fitting's kind."""
    return KINDS[fitting.kind]


def stated_kind(purpose: object) -> FittingKind:
    """Give the kind of a hole that a job states: the one that its purpose names, or by hand."""
    for kind, entry in cast("Mapping[FittingKind, Kind]", KINDS).items():
        if kind == purpose and entry.bore is not None:
            return kind
    return "manual"


def rank_of(kind: FittingKind) -> int:
    """Give a kind's place in the order of the table."""
    return [*KINDS].index(kind)


def by_rank(kinds: Iterable[FittingKind]) -> tuple[FittingKind, ...]:
    """Give each of some kinds once, in the order of the table."""
    return tuple(sorted(set(kinds), key=rank_of))
