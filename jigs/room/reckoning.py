"""What of a job bears on its gaps, cause by cause, and the budget of each gap.

How far a box's error moves a gap is the part of the box's size that the gap takes: between two
fronts of one box what lies between their middles, at its end what lies between the last middle and
the end. What was measured stands in place of its tolerance.
"""

from collections.abc import Iterator, Mapping, Sequence, Set
from math import sqrt

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.frontgaps import held_from_edge
from jigs.box.fronts import as_hung
from jigs.box.inhand import Measured, lean_of
from jigs.box.parts import Front, Layout
from jigs.box.unchecked import LeftOut, list_left_out
from jigs.given.build import film_of
from jigs.given.job import BoxSpec, Job
from jigs.given.stated import Both, Taped
from jigs.ground.geometry import Axis, FaceEdge
from jigs.room.beside import EDGES, Meeting, find_gaps
from jigs.room.budget import Budget, Cause, Left, least_of, verdict_of, weigh, with_cure
from jigs.room.wood import (
    BOARD_MOVES,
    USUAL_STILE,
    change_of,
    coefficient,
    is_valid,
    moisture_in,
)  # fmt: skip

ADJUSTS = 2.0
"""How far the side screws of its hinges move a door either way; mm (from memory)."""
SHIFTS = 0.5
"""How far a screwed front moves in its clearance holes of 5 about screws of 4, either way; mm
(derived)."""


class GapBudgets(Struct, frozen=True, kw_only=True):
    """All gaps of a job, and what of it was left out of the sums because nobody says it."""

    budgets: tuple[Budget, ...]
    left_out: tuple[LeftOut, ...]
    outside: tuple[float, ...]
    """Moistures at which the wood's coefficients do not hold, %: movement is rough there."""


def reckon_gaps(layout: Layout) -> GapBudgets:
    """Reckon the budget of every gap of a job."""
    reckoner = Reckoner.of(layout)
    return GapBudgets(
        budgets=tuple(with_cure(reckoner.budget(gap), layout.job) for gap in find_gaps(layout)),
        left_out=tuple(list_left_out(layout.job)),
        outside=reckoner.outside,
    )


def choose_gaps(found: GapBudgets, names: Set[str] | None) -> GapBudgets:
    """Give the gaps of the parts, boxes and walls that are named, in capitals; None for all."""
    if names is None:
        return found

    def is_chosen(gap: Meeting) -> bool:
        boxes = {front.box for front, _ in gap.sides}
        return not names.isdisjoint({*gap.names, *boxes, gap.wall.upper()})

    return replace(found, budgets=tuple(b for b in found.budgets if is_chosen(b.gap)))


class Reckoner(Struct, frozen=True, kw_only=True):
    """What of a job decides how its gaps come out."""

    job: Job
    boxes: Mapping[str, BoxSpec]
    taped: Mapping[str, Taped]
    """What was measured of the fronts in hand."""
    film: tuple[float, float] | None
    rise: float | None
    """By how much the wood is damper in the dampest season than as it was made; % of moisture."""
    fall: float | None = None
    """The same of the driest season, below 0 where it is drier."""
    outside: tuple[float, ...] = ()

    @classmethod
    def of(cls, layout: Layout) -> "Reckoner":
        """Take from a job what its gaps hang on."""
        job, air = layout.job, layout.job.gaps.air

        def comes_to(humidity: float | None) -> float | None:
            if humidity is None:
                return None
            return moisture_in(humidity=humidity, temperature=air.temperature)

        damp, dry = comes_to(air.dampest), comes_to(air.driest)
        solid = job.moves_as == "wood"
        seasons = [moisture for moisture in (dry, damp) if moisture is not None]
        reached = (air.made_at, *seasons) if seasons and solid else ()
        return cls(
            job=job,
            boxes={box.id: box for box in layout.boxes},
            taped={
                name: spec.measured
                for box in layout.boxes
                for front in box.fronts
                for name, spec in as_hung(front)
            },
            film=film_of(job.paint),
            rise=None if damp is None else damp - air.made_at,
            fall=None if dry is None else dry - air.made_at,
            outside=tuple(moisture for moisture in reached if not is_valid(moisture)),
        )

    def budget(self, gap: Meeting) -> Budget:
        """Reckon one gap."""
        causes, least = tuple(self.causes(gap)), least_of(gap)
        left = weigh(gap.nominal, causes)
        return Budget(
            gap=gap, least=least, causes=causes, left=left,
            verdict=verdict_of(left, least.width),
            dry=self._dry(gap, left, causes),
            adjust=sum(adjusts(front, gap.axis) for front, _ in gap.sides),
        )  # fmt: skip

    def causes(self, gap: Meeting) -> Iterator[Cause]:
        """Give all that moves a gap."""
        if gap.in_one_box:
            assert gap.other is not None, "two fronts are in one box"
            shares = self._centre(gap.other, gap.axis) - self._centre(gap.one, gap.axis)
            yield from self._box(gap.one.box, gap.axis, shares)
        else:
            for front, edge in gap.sides:
                centre = self._centre(front, gap.axis)
                share = 1.0 - centre if edge in ("right", "top") else centre
                yield from self._box(front.box, gap.axis, share)
            if gap.beside in ("front", "box", "panel", "filler"):
                half = self.job.gaps.exact.joint / 2
                boxes = " ".join(sorted({gap.one.box, gap.other.box if gap.other else gap.beside}))
                yield Cause("joint", f"joint {boxes} {gap.edge}", half, half)
        for front, edge in gap.sides:
            yield from self._front(front, edge)

    def _centre(self, front: Front, axis: Axis) -> float:
        """Give where a front's middle is in its box, a part of the box's size."""
        box, place = self.boxes[front.box], front.place
        if axis == "x":
            return (place.x + front.width / 2) / box.width
        return (place.y + front.height / 2) / box.height

    def _box(self, name: str, axis: Axis, share: float) -> Iterator[Cause]:
        """Give what a box does to a gap that takes such a share of its size."""
        box = self.boxes[name]
        source = f"box {name} {axis}"
        taped = box.measured.width if axis == "x" else box.measured.height
        if taped is None:
            yield Cause("box-size", source, 0.0, self.job.gaps.exact.box * share)
            return
        size = box.width if axis == "x" else box.height
        off, taper = (sum(taped) / 2 - size) * share, abs(taped[0] - taped[1]) / 2 * share
        if off or taper:
            yield Cause("box-as-built", source, off, taper)

    def _front(self, front: Front, edge: FaceEdge) -> Iterator[Cause]:
        """Give what a front does to the gap at one of its edges."""
        axis, taped = EDGES[edge], self.taped.get(front.id, Taped())
        across = _in_hand(taped, front, axis)
        source = f"front {front.id} {axis}"
        if across is None:
            yield Cause("front-size", source, 0.0, -self.job.tolerance / 2)
        elif across[0] != across[1]:
            yield Cause("front-as-measured", source, 0.0, -abs(across[0] - across[1]) / 4)
        # Of two fronts that meet each has its part, so that both together are the whole.
        lean = self.job.gaps.exact.square / sqrt(2)
        if taped.diagonals is not None and across is not None:
            size = Measured(width=front.width, height=front.height)
            lean = lean_of(taped.diagonals, size) / 2
        yield Cause("out-of-square", f"square {front.id} {edge}", 0.0, lean)
        if self.film is not None and self.film[1] > 0:
            low, high = self.film
            yield Cause("paint-film", f"film {front.id}", -(low + high) / 2, -(high - low) / 2)
        yield from self._season(front, edge)

    def _season(self, front: Front, edge: FaceEdge) -> Iterator[Cause]:
        """Give by how much a front grows at an edge till the dampest season."""
        least, most = self._growth(front, edge, self.rise)
        if most or least:
            yield Cause("seasons", f"season {front.id}", -(least + most) / 2, -(most - least) / 2)

    def _dry(self, gap: Meeting, left: Left, causes: Sequence[Cause]) -> float | None:
        """Give what a gap likely comes to in the driest season, mm; None where nobody says how
        dry it becomes. MDF and what is unknown are as they were made."""
        if self.fall is None:
            return None
        grown = sum(cause.shift for cause in causes if cause.name == "seasons")
        fall = self.fall if self.job.moves_as != "mdf" else None
        shrunk = sum(max(self._growth(front, edge, fall)) for front, edge in gap.sides)
        return left.middle - grown - shrunk

    def _growth(self, front: Front, edge: FaceEdge, rise: float | None) -> tuple[float, float]:
        """Give by how much a front grows at an edge with so much more moisture, least and most;
        mm."""
        made_of, wood = self.job.moves_as, self.job.gaps.wood
        size = front.width if EDGES[edge] == "x" else front.height
        least = most = 0.0
        moving = size
        if rise is None:
            return 0.0, 0.0
        if made_of == "mdf":
            least, most = (size * part for part in BOARD_MOVES)
        elif made_of == "wood" and wood.species is not None:
            moving = self._across_grain(front, EDGES[edge])
            least = most = change_of(moving, coefficient(wood.species, wood.sawn), rise)
        share = self._share(front, edge, moving)
        return least * share, most * share

    def _share(self, front: Front, edge: FaceEdge, moving: float) -> float:
        """Give the part of a front's growth that comes out at one of its edges: a door is held at
        its cups, so that nearly all goes to its free edge; other fronts about their middle."""
        if front.kind != "door" or front.hinged is None or EDGES[edge] == "y" or moving <= 0:
            return 0.5
        held = min(held_from_edge(front, self.job) / moving, 1.0)
        return held if edge == front.hinged else 1.0 - held

    def _across_grain(self, front: Front, axis: Axis) -> float:
        """Give how much of a front's size is wood across the grain, mm."""
        frame = front.make.frame
        if frame is not None:
            return 2 * (frame.stile if axis == "x" else frame.rail)
        if self.job.gaps.wood.construction == "five-piece":
            return 2 * USUAL_STILE
        upright = front.height >= front.width
        if self.job.gaps.wood.grain is not None:
            upright = self.job.gaps.wood.grain == "vertical"
        if axis == "x":
            return front.width if upright else 0.0
        return 0.0 if upright else front.height


def _in_hand(taped: Taped, front: Front, axis: Axis) -> Both | None:
    """Give a front's size as measured, where it stands there so: what was refused does not."""
    found, size = (taped.width, front.width) if axis == "x" else (taped.height, front.height)
    return found if found and abs(sum(found) / 2 - size) < 0.01 else None


def adjusts(front: Front, axis: Axis) -> float:
    """Give how far a front can be moved along an axis once it is in its place, mm either way."""
    if front.kind == "door":
        return ADJUSTS if axis == "x" and front.hinged is not None else 0.0
    return SHIFTS if front.kind in ("drawer", "false-front") else 0.0
