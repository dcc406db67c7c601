"""Fronts that stand out from their neighbours, or behind them: which depth screw brings them level.

It is measured with a straight edge over a front and those beside it, at the edge by which a door
hangs: what stands out at its free edge is a warped door or a bumper, and no screw's. Out, into the
room, is above 0; mm.
"""

from collections.abc import Iterable, Iterator, Mapping
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.parts import Front
from jigs.given.measured import MeasuredGap
from jigs.ground.errors import Fault
from jigs.ground.geometry import SLACK
from jigs.room.hung import HungFront

Unreached = Literal["no-screw", "free-edge", "too-far"]


class StandsOut(Struct, frozen=True, kw_only=True):
    """How far a front stands out, as measured."""

    front: Front
    ends: tuple[float, float]
    """At its top and at its bottom."""
    both: bool
    """Whether both ends were measured."""
    why: Unreached | None = None
    """Why no screw brings it level; None where one does."""

    def at(self, height: float) -> float:
        """Give how far it stands out so far above its middle, mm."""
        top, bottom = self.ends
        return (top + bottom) / 2 + (top - bottom) * height / self.front.height


def match_depths(
    rows: Iterable[MeasuredGap], hung: Mapping[str, HungFront]
) -> tuple[tuple[StandsOut, ...], list[Fault]]:
    """Find the front of each row, and what is wrong with the rows."""
    found: dict[str, tuple[StandsOut, str]] = {}
    faults: list[Fault] = []
    for row in rows:
        wrong = _wrong(row, hung, {name: where for name, (_, where) in found.items()})
        if wrong:
            faults.append(Fault(row.where, wrong))
            continue
        found[row.front] = _stands(hung[row.front], row), row.where
    return tuple(standing for standing, _ in found.values()), faults


def _wrong(row: MeasuredGap, hung: Mapping[str, HungFront], first: Mapping[str, str]) -> str:
    if row.front not in hung:
        return f"no such front ('{row.front}' given); a depth is that of one front"
    if row.front in first:
        return (
            f"measured twice ({row.words()!r} given, first at {first[row.front]}); one row a front"
        )
    if row.other or row.beside:
        return (
            f"a depth is that of one front ({row.words()!r} given): how far it stands out from "
            "those beside it; leave the other cells of its row empty"
        )
    if row.edge in ("top", "bottom"):
        return f"'{row.edge}' given; a depth is measured at an upright edge: left, right"
    return ""


def _stands(hung: HungFront, row: MeasuredGap) -> StandsOut:
    front = hung.front
    second = row.first if row.second is None else row.second
    standing = StandsOut(front=front, ends=(row.first, second), both=row.second is not None)
    why: Unreached | None = None
    if not front.swings:
        why = "no-screw"
    elif row.edge not in ("", front.hinged):
        why = "free-edge"
    elif max(map(abs, depth_moves(standing, hung))) > hung.reach + SLACK:
        why = "too-far"
    return replace(standing, why=why)


def depth_moves(standing: StandsOut, hung: HungFront) -> Iterator[float]:
    """Give how far each hinge of a door is to bring it out, below 0 in, from the top; mm."""
    return (-standing.at(height) for height in hung.points)
