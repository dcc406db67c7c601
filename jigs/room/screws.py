"""Which screw of which front is turned, which way and how far, so that gaps that were measured come
to their plan; and what no screw reaches.

A door that leans is straightened first, by turning its side screws unlike; then each row and each
column of fronts is brought as near to its plan as the adjusters let it (`jigs.room.even`). As a
side screw turns, the door's hinge edge keeps its height: what the door's middle gains or loses in
height by its lean falls to the height screws. Small angles throughout. Along the wall to the right
and up are above 0, a lean to the right too; mm.
"""

from collections.abc import Iterator, Mapping, Sequence, Set
from typing import Literal

from msgspec import Struct, field

from jigs.box.parts import Front, Layout
from jigs.given.job import Job
from jigs.given.measured import DEPTH, MeasuredGap, MeasuredGaps
from jigs.ground.errors import Fault, ReadingError
from jigs.ground.geometry import SLACK, Axis, FaceEdge
from jigs.room.beside import Meeting
from jigs.room.budget import Budget
from jigs.room.depth import StandsOut, depth_moves, match_depths
from jigs.room.edgelines import Parted, parted_edges
from jigs.room.even import Spare, level
from jigs.room.hung import HungFront, hung_fronts
from jigs.room.otherplate import OtherPlate, other_plate
from jigs.room.reckoning import GapBudgets

SEEN = 0.5
"""A gap that departs from its plan by more, or at its ends from itself, is seen; mm (common
practice, no source)."""
AT_END = 0.05
"""A screw that has no more left than this is at its end; mm."""

Screw = Literal["height", "side", "depth"]
Why = Literal["place", "size", "square", "fixed"]
"""What is wrong where no screw helps: a front's place, sizes along the row, a right angle, or a
front that has no screws."""


class Pose(Struct, frozen=True):
    """How a front moves: its middle to the right and up, mm; and how far it leans to the right, mm
    on a mm of height."""

    right: float = 0.0
    up: float = 0.0
    lean: float = 0.0


class Turn(Struct, frozen=True, kw_only=True):
    """One screw, or those that are turned alike."""

    front: Front
    screw: Screw
    at: int | None
    """The hinge, from the top; of a front on screws 1 its upper edge, 2 its lower; None: all."""
    move: float
    """How far the front moves there, up, to the right or out, below 0 down, to the left or in;
    mm."""

    @property
    def overlay(self) -> float | None:
        """By how much a door then laps more over the side that it hangs on, below 0 less; None of
        what is no side screw of a hinge; mm."""
        if self.screw != "side" or not self.front.swings:
            return None
        return self.move if self.front.hinged == "right" else -self.move


class GapAsHung(Struct, frozen=True, kw_only=True):
    """A gap as it was measured and as it comes out: at top and bottom, or left and right; mm."""

    budget: Budget
    now: tuple[float, float]
    both: bool
    """Whether both ends were measured."""
    then: tuple[float, float]

    @property
    def off(self) -> float:
        """How much wider than planned it comes out, mm."""
        return sum(self.then) / 2 - self.budget.gap.nominal

    @property
    def tight(self) -> bool:
        """Whether it comes out narrower than it needs to open."""
        least = self.budget.least.width
        return least is not None and min(self.then) < least - SLACK


class Beyond(Struct, frozen=True, kw_only=True):
    """A gap that no screw brings to its plan, why, and the fronts that are at their end."""

    taped: GapAsHung
    why: Why
    fronts: tuple[Front, ...]
    plates: Mapping[str, OtherPlate] = field(default_factory=dict)
    """The plates that would bring these doors over, each its share, by their IDs."""


class Adjustment(Struct, frozen=True, kw_only=True):
    """All that the measured gaps of a job ask for."""

    gaps: tuple[GapAsHung, ...]
    turns: tuple[Turn, ...]
    beyond: tuple[Beyond, ...]
    depths: tuple[StandsOut, ...] = ()
    """The fronts of which it was measured how far they stand out."""
    parted: tuple[Parted, ...] = ()
    """Edges at the measured gaps that then still part from their neighbours'."""


def plan_turns(layout: Layout, found: GapBudgets, listed: MeasuredGaps) -> Adjustment:
    """Say which screws to turn. Raises ReadingError with all faults of the list."""
    hung = hung_fronts(layout)
    given, depths = match_rows(found.budgets, listed, hung)
    poses = pose_fronts(hung, given)
    gaps = tuple(
        GapAsHung(
            budget=budget, now=_ends(row), both=row.second is not None,
            then=moved_ends(budget.gap, _ends(row), hung, poses),
        )
        for budget, row in given
    )  # fmt: skip
    turns = [turn for name, pose in poses.items() for turn in _turns(hung[name], pose)]
    turns += [turn for each in depths for turn in _depth_turns(each, hung[each.front.id])]
    return Adjustment(
        gaps=gaps, turns=tuple(turns), beyond=tuple(_beyond(gaps, hung, poses, layout.job)),
        depths=depths,
        parted=tuple(
            parted_edges((each.gap for each in found.budgets), {name: hung[name] for name in poses})
        ),
    )  # fmt: skip


def choose_turns(plan: Adjustment, names: Set[str] | None) -> Adjustment:
    """Give what concerns the parts, boxes and walls that are named, in capitals; None for all."""
    if names is None:
        return plan

    def is_named(front: Front) -> bool:
        return not names.isdisjoint({front.id, front.box, front.wall.upper()})

    def is_at(each: GapAsHung) -> bool:
        return any(is_named(front) for front, _ in each.budget.gap.sides)

    return Adjustment(
        gaps=tuple(each for each in plan.gaps if is_at(each)),
        turns=tuple(turn for turn in plan.turns if is_named(turn.front)),
        beyond=tuple(each for each in plan.beyond if is_at(each.taped)),
        depths=tuple(each for each in plan.depths if is_named(each.front)),
        parted=tuple(each for each in plan.parted if is_named(each.lower) or is_named(each.higher)),
    )


def match_rows(
    budgets: Sequence[Budget], listed: MeasuredGaps, hung: Mapping[str, HungFront]
) -> tuple[tuple[tuple[Budget, MeasuredGap], ...], tuple[StandsOut, ...]]:
    """Find the gap, or the front, of each row. Raises ReadingError with all faults of the list."""
    given, wrong = _match_gaps(budgets, [row for row in listed.rows if row.axis != DEPTH])
    depths, astray = match_depths([row for row in listed.rows if row.axis == DEPTH], hung)
    faults = [*listed.faults, *wrong, *astray]
    if not (given or depths or faults):
        faults.append(
            Fault(
                "the list of gaps",
                "no gap in it was measured; write how wide one is, at least, into its row",
            )
        )
    if faults:
        raise ReadingError(faults)
    return given, depths


def _match_gaps(
    budgets: Sequence[Budget], rows: Sequence[MeasuredGap]
) -> tuple[tuple[tuple[Budget, MeasuredGap], ...], list[Fault]]:
    """Find the gap of each row, and what is wrong with the rows."""
    faults: list[Fault] = []
    first: dict[int, str] = {}
    given: list[tuple[Budget, MeasuredGap]] = []
    for row in rows:
        near = [each for each in budgets if row.front in each.gap.names]
        meant = [each for each in near if _is_meant(each.gap, row)]
        if len(meant) == 1 and id(meant[0]) not in first:
            first[id(meant[0])] = row.where
            given.append((meant[0], row))
        elif len(meant) == 1:
            what = f"measured twice ({row.words()!r} given, first at {first[id(meant[0])]})"
            faults.append(Fault(row.where, f"{what}; one row a gap"))
        else:
            known = meant or near
            what = "more than one gap is so named" if meant else "no such gap"
            names = "; ".join(_named(each.gap, row.front) for each in known)
            allowed = names or "a front as 'gaps --format csv' lists it"
            faults.append(Fault(row.where, f"{what} ({row.words()!r} given); allowed: {allowed}"))
    return tuple(given), faults


def _is_meant(gap: Meeting, row: MeasuredGap) -> bool:
    """Tell whether a gap is the one that a row names, as far as it does."""
    edge = gap.edge if row.front == gap.one.id else gap.facing
    others = [name for name in gap.names if name != row.front]
    return (
        (not row.other or row.other in others)
        and row.beside in ("", gap.beside)
        and row.axis in ("", gap.axis)
        and row.edge in ("", edge)
    )


def _named(gap: Meeting, front: str) -> str:
    """Name a gap as a row would, from one of its fronts."""
    edge = gap.edge if front == gap.one.id else gap.facing
    others = [name for name in gap.names if name != front]
    return " ".join((front, gap.beside, *others, gap.axis, edge))


def _ends(row: MeasuredGap) -> tuple[float, float]:
    return row.first, row.first if row.second is None else row.second


def pose_fronts(
    hung: Mapping[str, HungFront], given: Sequence[tuple[Budget, MeasuredGap]]
) -> dict[str, Pose]:
    """Give how each front at a measured gap is to move."""
    names = {front.id: hung[front.id] for budget, _ in given for front, _ in budget.gap.sides}
    leans = level(
        {name: 1000 * each.leans for name, each in names.items()},
        [_slope(budget.gap, row) for budget, row in given if row.second is not None],
    )
    poses = {name: Pose(lean=lean / 1000) for name, lean in leans.items()}
    axes: tuple[Axis, Axis] = ("x", "y")
    across, along = (
        level(
            {name: each.reach - _taken(each, poses[name], axis) for name, each in names.items()},
            [
                _off(budget.gap, row, hung, poses)
                for budget, row in given
                if budget.gap.axis == axis
            ],
        )
        for axis in axes
    )
    return {name: Pose(across[name], along[name], pose.lean) for name, pose in poses.items()}


def _before_behind(gap: Meeting) -> tuple[str | None, str | None]:
    """Give the front at the left of a gap, or below it, and the one at its right, or above."""
    other = gap.other.id if gap.other else None
    return (gap.one.id, other) if gap.edge in ("right", "top") else (other, gap.one.id)


def _slope(gap: Meeting, row: MeasuredGap) -> Spare:
    """Give how a gap's width grows upwards, or to the right, in mm on 1000."""
    first, second = _ends(row)
    before, behind = _before_behind(gap)
    if gap.axis == "x":
        return before, behind, 1000 * (first - second) / gap.length
    # A front that leans to the right sinks at its right.
    return behind, before, 1000 * (second - first) / gap.length


def _taken(hung: HungFront, pose: Pose, axis: Axis) -> float:
    """Give what a front's lean takes from the reach of its screws; mm."""
    if axis == "x":
        return abs(pose.lean) * max(map(abs, hung.points))
    return abs(pose.lean) * (abs(hung.edge) if hung.front.swings else hung.front.width / 2)


def _off(
    gap: Meeting, row: MeasuredGap, hung: Mapping[str, HungFront], poses: Mapping[str, Pose]
) -> Spare:
    """Give how much wider than planned a gap is in its middle, once its fronts stand straight."""
    first, second = moved_ends(gap, _ends(row), hung, poses)
    return (*_before_behind(gap), (first + second) / 2 - gap.nominal)


def moved_ends(
    gap: Meeting,
    ends: tuple[float, float],
    hung: Mapping[str, HungFront],
    poses: Mapping[str, Pose],
) -> tuple[float, float]:
    """Give how wide a gap is at its ends once the fronts at it have moved; mm."""
    half = gap.length / 2
    places = (
        [(gap.x, gap.y + half), (gap.x, gap.y - half)]
        if gap.axis == "x"
        else [(gap.x - half, gap.y), (gap.x + half, gap.y)]
    )
    before, behind = _before_behind(gap)

    def moves(name: str | None, x: float, y: float) -> float:
        if name is None:
            return 0.0
        pose, own = poses[name], hung[name]
        if gap.axis == "x":
            return pose.right + pose.lean * (y - own.y)
        return pose.up - pose.lean * (x - own.x)

    first, second = (
        width + moves(behind, *place) - moves(before, *place)
        for width, place in zip(ends, places, strict=True)
    )
    return first, second


def _turns(hung: HungFront, pose: Pose) -> Iterator[Turn]:
    """Give the turns of a front, in their order: all that are alike as one."""
    front = hung.front
    if hung.reach <= SLACK:
        return
    yield Turn(front=front, screw="height", at=None, move=pose.up - pose.lean * hung.edge)
    yield from _each(front, "side", [pose.right + pose.lean * y for y in hung.points])


def _depth_turns(standing: StandsOut, hung: HungFront) -> Iterator[Turn]:
    """Give the depth screws that bring a front level with those beside it."""
    if standing.why is None:
        yield from _each(standing.front, "depth", [*depth_moves(standing, hung)])


def _each(front: Front, screw: Screw, moves: Sequence[float]) -> Iterator[Turn]:
    """Give a turn for each hinge, or one where all are alike."""
    if max(moves) - min(moves) <= AT_END:
        yield Turn(front=front, screw=screw, at=None, move=sum(moves) / len(moves))
        return
    for at, move in enumerate(moves, start=1):
        yield Turn(front=front, screw=screw, at=at, move=move)


def _beyond(
    gaps: Sequence[GapAsHung], hung: Mapping[str, HungFront], poses: Mapping[str, Pose], job: Job
) -> Iterator[Beyond]:
    for taped in gaps:
        if abs(taped.off) > SEEN:
            sides = taped.budget.gap.sides
            ended = tuple(
                f for f, edge in sides if _is_at_end(hung[f.id], poses[f.id], edge, taped)
            )
            screwed = any(hung[front.id].reach > SLACK for front, _ in sides)
            why: Why = "place" if ended else "size" if screwed else "fixed"
            along = taped.budget.gap.axis == "x"
            doors = [(f, edge) for f, edge in sides if along and f in ended and f.swings]
            plates = {
                f.id: plate
                for f, edge in doors
                if (
                    plate := other_plate(
                        f, job, poses[f.id].right + _wanted(edge, taped.off / len(doors))
                    )
                )
            }
            yield Beyond(taped=taped, why=why, fronts=ended, plates=plates)
        elif abs(taped.then[0] - taped.then[1]) > SEEN:
            yield Beyond(taped=taped, why="square", fronts=())


def _is_at_end(hung: HungFront, pose: Pose, edge: FaceEdge, taped: GapAsHung) -> bool:
    """Tell whether a front would have to go further than it can to bring a gap to its plan."""
    if hung.reach <= SLACK:
        return False
    axis = taped.budget.gap.axis
    moved = pose.right if axis == "x" else pose.up
    wanted = 1.0 if _wanted(edge, taped.off) > 0 else -1.0
    return hung.reach - _taken(hung, pose, axis) - wanted * moved <= AT_END


def _wanted(edge: FaceEdge, off: float) -> float:
    """Give how far a front would go to the right, or up, to take so much that a gap at its edge is
    wider than planned; mm."""
    return -off if edge in ("left", "bottom") else off
