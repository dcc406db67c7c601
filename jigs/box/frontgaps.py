"""The gaps beside fronts: those that their sizes make, and the least that a front needs to open.

A sixteenth of reveal means two things, a sixteenth at each edge or a sixteenth between two fronts,
and only the gaps themselves show which was meant.

A hinge edge moves into its gap by the hinge's own least reveal; a free edge swings out by delta, a
drawer passes; a door or a drawer passes under a counter. What never moves needs nothing of its own.

>>> round(swing_of_edge(454.0, tab=5.0, thickness=19.05), 3)
0.404
"""

from collections.abc import Iterable, Iterator, Sequence
from math import hypot

from msgspec import Struct

from jigs.box.parts import Front, Layout
from jigs.fittings.hinge import USUAL_TAB, cup_from_edge
from jigs.given.hardware import HingeRecord
from jigs.given.job import COUNTER_BOXES, BoxSpec, Job
from jigs.given.walls import neighbours, place_job
from jigs.ground.geometry import SLACK, Hand

BESIDE = 40.0
"""Fronts further apart have something else between them; mm (our own choice)."""
SAME_GAP = 0.1
"""Gaps nearer to each other than this are shown as one; mm."""


class GapsMade(Struct, frozen=True, kw_only=True):
    """Least and greatest gap between two fronts of one box, and of two boxes side by side; mm.
    None where no two fronts stand so."""

    one_box: tuple[float, float] | None
    two_boxes: tuple[float, float] | None

    @property
    def differ(self) -> bool:
        """Whether no gap of the one kind is like one of the other."""
        if self.one_box is None or self.two_boxes is None:
            return False
        (low, high), (least, most) = self.one_box, self.two_boxes
        return max(low - most, least - high) > SAME_GAP + SLACK


def measure_gaps(layout: Layout) -> GapsMade:
    """Measure the gaps between the fronts of a layout as their sizes make them."""
    by_box: dict[str, list[Front]] = {box.id: [] for box in layout.boxes}
    for front in layout.fronts:
        by_box[front.box].append(front)
    beside = [
        one.gaps.right + other.gaps.left
        for left, right in neighbours(layout.boxes, place_job(layout.job))
        for one in at_end(by_box[left.id], "right")
        for other in at_end(by_box[right.id], "left")
        if _level(left, one, right, other)
        and "inset" not in (one.place.overlay, other.place.overlay)
    ]
    return GapsMade(
        one_box=_range(gap for fronts in by_box.values() for gap in _within(fronts)),
        two_boxes=_range(beside),
    )


def _within(fronts: Sequence[Front]) -> Iterator[float]:
    """Give the gaps between the fronts of one box, beside and above each other; mm.

    Between inset fronts of two columns stands a board, and no gap.
    """
    for one in fronts:
        for other in fronts:
            if _overlap(one.place.y, one.height, other.place.y, other.height):
                if one.place.column != other.place.column and "inset" in (
                    one.place.overlay,
                    other.place.overlay,
                ):
                    continue
                gap = other.place.x - one.place.x - one.width
            elif _overlap(one.place.x, one.width, other.place.x, other.width):
                gap = other.place.y - one.place.y - one.height
            else:
                continue
            if 0.0 <= gap < BESIDE:
                yield gap


def _overlap(start: float, length: float, other: float, other_length: float) -> bool:
    return max(start, other) < min(start + length, other + other_length) - SLACK


def _level(left: BoxSpec, one: Front, right: BoxSpec, other: Front) -> bool:
    return _overlap(
        left.above_floor + one.place.y, one.height, right.above_floor + other.place.y, other.height
    )


def _range(gaps: Iterable[float]) -> tuple[float, float] | None:
    found = list(gaps)
    return (min(found), max(found)) if found else None


def at_end(fronts: Sequence[Front], hand: Hand) -> list[Front]:
    """Give the fronts of a box that have no other between them and one of its sides."""

    def behind(one: Front, other: Front) -> bool:
        level = max(one.place.y, other.place.y) < min(
            one.place.y + one.height, other.place.y + other.height
        )
        return level and (
            other.place.x < one.place.x if hand == "left" else other.place.x > one.place.x
        )

    return [front for front in fronts if not any(behind(front, other) for other in fronts)]


LEAST_EDGE = 0.5
"""Left between a door's free edge, as it swings, and what stands there; mm (common practice, no
source)."""
LEAST_DRAWER = 1.0
"""Left between a drawer and what stands beside it; mm (common practice, no source)."""
UNDER_COUNTER = 3.0
"""Least reveal above a front that closes under a counter; mm (common practice, no source)."""
HIGHEST_COUNTER = 1050.0
"""An appliance's place higher than this has no counter over it; mm (common practice, no source)."""


def swing_of_edge(width: float, *, tab: float, thickness: float) -> float:
    """Give how far a door's free edge swings out beyond its place, mm (derived).

    Conservative: about a fixed pivot at the rim of the cup.
    """
    radius = width - tab
    return hypot(radius, thickness) - radius


def least_at_free_edge(front: Front) -> float:
    """Give the least gap at a door's free edge; mm."""
    swing = swing_of_edge(front.width, tab=_tab(front), thickness=front.make.thickness)
    return LEAST_EDGE + swing


def held_from_edge(front: Front, job: Job) -> float:
    """Give how far from its hinge edge a door is held, at the middle of its cups; mm."""
    record = job.hinges.get(front.hinge.record) if front.hinge else None
    return cup_from_edge(record or HingeRecord(name=""), _tab(front))


def _tab(front: Front) -> float:
    return front.hinge.tab if front.hinge else USUAL_TAB


def stands_under_counter(box: BoxSpec) -> bool:
    """Tell whether a counter lies on a box, or over the appliance whose place it is."""
    low = box.above_floor + box.height <= HIGHEST_COUNTER + SLACK
    return box.kind in COUNTER_BOXES or (
        box.kind == "open" and low and any(front.kind == "panel" for front in box.fronts)
    )
