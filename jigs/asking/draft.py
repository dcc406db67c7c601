"""A job file before it is text: its tables in order, each key with its value, or open.

>>> DraftLine("side", "18.3 mm").open, DraftLine("side", "18 mm", open=True).open
(False, True)
"""

from collections.abc import Mapping
from typing import NamedTuple

from msgspec import Struct, field

from jigs.asking.forms import TypedLength
from jigs.given.job import BoxKind, FrontKind
from jigs.ground.geometry import Hand

RUNNING: tuple[FrontKind, ...] = ("drawer", "pullout")
"""Fronts that run on slides."""
HUNG: tuple[FrontKind, ...] = ("door", "pair")
"""Fronts that hang on hinges."""

DraftValue = str | int | bool | tuple[str, ...] | Mapping[str, str]


class DraftLine(Struct, frozen=True):
    """A key with its value."""

    key: str
    value: DraftValue
    open: bool = False
    """Whether nobody knows it yet: it stands there to be filled in, with what is taken for it."""
    wanted: bool = False
    """Whether it is told at the end as still open."""
    topic: str = ""
    """By what its comment is found; "" for its table and key."""


class DraftTable(Struct, frozen=True, kw_only=True):
    """A table of the file."""

    name: str
    """Its name as it stands there: `material`, `box.front`; "" for what stands above all."""
    own: str = ""
    """What stands behind that, of a record: `mine`."""
    many: bool = False
    """Whether it is one of several of that name."""
    lines: tuple[DraftLine, ...] = ()
    """What stands in it."""
    open: bool = False
    """Whether the whole table is still to be filled in."""

    @property
    def path(self) -> str:
        """Its whole name, as it is said: `hinge.mine`."""
        return f"{self.name}.{self.own}" if self.own else self.name


class Draft(Struct, frozen=True, kw_only=True):
    """What a job file will say."""

    sections: tuple[DraftTable, ...]
    listed_by: str = ""
    """The table that says how its list is read, as it will stand there."""

    @property
    def still_open(self) -> tuple[str, ...]:
        """The keys that somebody has to look up or measure: `material.side`."""
        return tuple(
            f"{section.path}.{line.key}"
            for section in self.sections
            for line in section.lines
            if line.wanted
        )


class FrontDraft(Struct, frozen=True, kw_only=True):
    """A front of a box that is asked for."""

    kind: FrontKind
    height: TypedLength | None = None
    hinged: Hand | None = None
    count: int = 1
    pull: str = ""
    """The pull that its list names."""


class BoxDraft(Struct, frozen=True, kw_only=True):
    """A box as far as it is known."""

    id: str
    kind: BoxKind
    width: TypedLength
    height: TypedLength
    depth: TypedLength | None = None
    usual_depth: bool = False
    """Whether that is as usual, because nobody has measured it."""
    fronts: tuple[FrontDraft, ...] = ()
    listed: bool = False
    """Whether its fronts stand in a list."""
    unseen: bool = False
    """Whether its kind was worked out from them, and nobody has looked at it."""
    turned: bool = False
    """Whether they hang the other way round than that was read."""

    @property
    def hung(self) -> bool:
        """Whether it hangs on the wall."""
        return self.kind == "wall"

    def holds(self, *kinds: FrontKind) -> bool:
        """Tell whether it has a front of one of these kinds."""
        return any(front.kind in kinds for front in self.fronts)


class BoxPlace(NamedTuple):
    """Where a box stands."""

    wall: str
    x: str = ""
    """Its left end along the wall, where it does not follow the box before it."""


class StandingThing(NamedTuple):
    """What stands between boxes and is none: a range."""

    id: str
    width: TypedLength
    height: TypedLength


class WallDraft(Struct, frozen=True, kw_only=True):
    """A wall with what stands along it from the left."""

    name: str
    things: tuple[str | StandingThing, ...] = field(default=())
    """The IDs of boxes, and appliances."""
    at: Mapping[str, TypedLength] = field(default_factory=dict)
    """The left ends of boxes that say it, along the wall."""

    @property
    def boxes(self) -> tuple[str, ...]:
        """The IDs of its boxes."""
        return tuple(thing for thing in self.things if isinstance(thing, str))
