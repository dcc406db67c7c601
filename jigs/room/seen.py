"""What stands along a wall, and what is seen of it: boxes with their fronts and openings, end
panels, fillers, appliances.

x runs along the wall from the left, y up from the finished floor; mm. Boxes are counted from
the left as seen from the room: what hangs by itself, above what stands on the floor.

>>> box = BoxSpec(id="B1", kind="base", width=600, height=720, depth=560, above_floor=100)
>>> Seen(box=box, x=600.0).top
820
"""

from collections.abc import Mapping
from typing import Literal

from msgspec import Struct

from jigs.box.parts import Front
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import HIGHEST, place_job, row_of
from jigs.ground.geometry import SLACK

Swing = Literal["left", "right", "top"]
"""The edge that a front turns on."""


class SeenFront(Struct, frozen=True, kw_only=True):
    """A front with its lower left corner on the wall; mm. `swing`: the edge that it turns on,
    None where it is drawn out, is fixed, or its hand is not stated."""

    front: Front
    x: float
    y: float
    swing: Swing | None = None


class SeenOpening(Struct, frozen=True, kw_only=True):
    """A place in a box without a front, on the wall; `words` say what is for it. mm."""

    id: str
    x: float
    y: float
    width: float
    height: float
    words: str = "opening"


class SeenStrip(Struct, frozen=True, kw_only=True):
    """An end panel or a filler beside a box, on the wall, or what is hidden between a blind box and
    the room's wall, where no filler is; mm. `covered`: fronts pass before the panel's front edge,
    the other run stands before what is hidden. `id` is empty but for a panel."""

    kind: Literal["panel", "filler", "hidden"]
    x: float
    y: float
    width: float
    height: float
    covered: bool = False
    id: str = ""


class SeenShelf(Struct, frozen=True, kw_only=True):
    """The upper face of a fixed shelf, from board to board, on the wall; mm. `hidden`: a front
    stands before its middle."""

    x: float
    y: float
    width: float
    hidden: bool


class Seen(Struct, frozen=True, kw_only=True):
    """A box with its left end at `x` along the wall, its fronts, its openings, its fixed shelves,
    and the panels and fillers beside it; mm."""

    box: BoxSpec
    x: float
    fronts: tuple[SeenFront, ...] = ()
    openings: tuple[SeenOpening, ...] = ()
    strips: tuple[SeenStrip, ...] = ()
    shelves: tuple[SeenShelf, ...] = ()

    def is_behind(self, strip: SeenStrip) -> bool:
        """Tell whether a panel or filler beside it is out of sight: what is hidden at a blind end,
        an end panel whose front edge one of its fronts reaches over."""
        middle = strip.x + strip.width / 2
        return strip.covered and (
            strip.kind == "hidden"
            or any(front.x < middle < front.x + front.front.width for front in self.fronts)
        )

    @property
    def right(self) -> float:
        """Its right end along the wall, mm."""
        return self.x + self.box.width

    @property
    def bottom(self) -> float:
        """Its bottom above the floor, mm."""
        return self.box.above_floor

    @property
    def top(self) -> float:
        """Its top above the floor, mm."""
        return self.box.above_floor + self.box.height

    @property
    def hangs(self) -> bool:
        """Whether it hangs on the wall, above the others, or stands on another box."""
        return self.box.kind == "wall" or self.bottom > HIGHEST

    @property
    def on_platform(self) -> bool:
        """Whether a toe platform carries it: a box that stands above the floor, on no legs of
        its own. An appliance's place has none."""
        legs, place = self.box.legs, self.box.is_place
        return not self.hangs and self.bottom > SLACK and not legs and not place

    @property
    def ends(self) -> tuple[float, ...]:
        """Its own ends along the wall, and those of what stands beside it; mm."""
        beside = (end for strip in self.strips for end in (strip.x, strip.x + strip.width))
        return (self.x, self.right, *beside)

    @property
    def extent(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of all that is seen of it, mm."""
        parts = [(self.x, self.bottom, self.right, self.top)]
        parts += [(f.x, f.y, f.x + f.front.width, f.y + f.front.height) for f in self.fronts]
        parts += [(s.x, s.y, s.x + s.width, s.y + s.height) for s in self.strips]
        left, bottom, right, top = zip(*parts, strict=True)
        return min(left), min(bottom), max(right), max(top)


class SeenAppliance(Struct, frozen=True, kw_only=True):
    """An appliance with its lower left corner on the wall; `words` say what it is. mm."""

    id: str
    x: float
    y: float
    width: float
    height: float
    words: str

    @property
    def hangs(self) -> bool:
        """Whether it hangs above what stands on the floor."""
        return self.y > HIGHEST


class Along(Struct, frozen=True, kw_only=True):
    """A box's place along its wall."""

    box: BoxSpec
    number: int
    """From the left, from 1, among those that hang or those that stand."""
    hangs: bool
    height: float | None
    """Of its underside above the floor, where it hangs and the job says so; mm."""


_last: list[tuple[Job, Mapping[str, Along]]] = []
"""The job last asked about: it is too large to be hashed for every part, so it is recognised by
identity."""


def along_wall(job: Job, box: str | None) -> Along | None:
    """Give the place of a box by its ID; None where it belongs to no wall, or stands nowhere."""
    if not _last or _last[0][0] is not job:
        _last[:] = [(job, _count(job))]
    return None if box is None else _last[0][1].get(box)


def _count(job: Job) -> dict[str, Along]:
    left = place_job(job)
    placed = [box for box in job.boxes if box.wall and not box.inferred]
    placed.sort(key=lambda box: (left[box.id], box.above_floor))
    found: dict[str, Along] = {}
    counted: dict[tuple[str, bool], int] = {}
    for box in placed:
        row = row_of(box)
        counted[row] = counted.get(row, 0) + 1
        said = row[1] and f"box.{box.id}.above_floor" not in job.assumed
        found[box.id] = Along(
            box=box, number=counted[row], hangs=row[1], height=box.above_floor if said else None
        )
    return found
