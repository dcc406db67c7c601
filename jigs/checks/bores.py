"""Is every hole inside its part, with wood around it and under it?"""

import math
from collections.abc import Iterable, Sequence
from itertools import combinations

from jigs.fittings.kinds import HOLES
from jigs.ground.finding import error, warning
from jigs.ground.geometry import SLACK, Fitting, Hole
from jigs.ground.grid import WOOD_BETWEEN, first_clash, holes_agree
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem


def check_bores(
    part: str,
    fittings: Sequence[Fitting],
    *,
    width: float,
    height: float,
    thickness: float,
    unit: Unit,
) -> tuple[Problem, ...]:
    """List the holes of a front that leave it, come through it, or meet each other; mm."""
    problems: list[Problem] = []
    holes = [hole for fitting in fittings for hole in fitting.holes]
    for hole in holes:
        problems.extend(_check_edges(part, hole, width, height, unit))
        problems.extend(_check_depth(part, hole, thickness, unit))
    for one, other in combinations(fittings, 2):
        clash = _meeting(one.holes, other.holes, thickness)
        if clash:
            problems.append(_too_near(part, *clash, unit))
    return tuple(problems)


def check_side_bores(
    part: str,
    board: str,
    fittings: Sequence[Fitting],
    others: Iterable[Fitting],
    *,
    height: float,
    depth: float,
    thickness: float,
    unit: Unit,
) -> tuple[Problem, ...]:
    """List the holes that a front brings into a box side and that do not suit it; mm.

    `others` are the fittings that other fronts have there.
    """
    problems: list[Problem] = []
    for fitting in fittings:
        for hole in fitting.holes:
            problems.extend(_check_edges(part, hole, depth, height, unit, board))
            problems.extend(_check_depth(part, hole, thickness, unit, board))
    mine = [hole for fitting in fittings for hole in fitting.holes]
    clash = first_clash(mine, (hole for fitting in others for hole in fitting.holes))
    if clash:
        problems.append(_too_near(part, *clash, unit, board))
    return tuple(problems)


def _check_edges(
    part: str, hole: Hole, width: float, height: float, unit: Unit, board: str | None = None
) -> tuple[Problem, ...]:
    wood = min(hole.x, width - hole.x, hole.y, height - hole.y) - hole.diameter / 2
    if wood >= WOOD_BETWEEN - SLACK:
        return ()
    place = f"{_name(hole)} at x {format_length(hole.x, unit)}, y {format_length(hole.y, unit)}"
    where = f" of {board}" if board else ""
    also = (board,) if board else ()
    if wood < -SLACK:
        return (
            error(
                "hole-outside",
                part,
                f"{place} leaves the part{where}, {format_length(width, unit)} x "
                f"{format_length(height, unit)}",
                "take a shorter pull or a knob for this front: pull = with its record's name"
                if hole.purpose == "pull"
                else "check the sizes and the hardware's numbers",
                also,
            ),
        )
    return (
        error(
            "hole-near-edge",
            part,
            f"{place} leaves {format_length(wood, unit)} of wood at the edge{where}; "
            f"{format_length(WOOD_BETWEEN, unit)} is the least",
            "move it inward",
            also,
        ),
    )


def _check_depth(
    part: str, hole: Hole, thickness: float, unit: Unit, board: str | None = None
) -> tuple[Problem, ...]:
    if hole.depth is None or hole.depth <= thickness - WOOD_BETWEEN + SLACK:
        return ()
    if hole.purpose == "cup":
        # The skin under a cup has a limit and a finding of its own.
        return ()
    also = (board,) if board else ()
    text = (
        f"{_name(hole)} is {format_length(hole.depth, unit)} deep in "
        f"{format_length(thickness, unit)} of {board or 'front'}"
    )
    if hole.depth >= thickness - SLACK:
        return (error("bored-through", part, f"{text}: it comes out", "bore it shallower", also),)
    return (
        warning(
            "bored-deep", part, f"{text}: it will show", "bore it shallower, with a stop", also
        ),
    )


def _meeting(
    holes: Sequence[Hole], others: Sequence[Hole], thickness: float
) -> tuple[Hole, Hole] | None:
    """Give two holes of a front that come too near, whichever faces they start from."""
    for hole in holes:
        for other in others:
            if _reach_each_other(hole, other, thickness) and not holes_agree(hole, other):
                return hole, other
    return None


def _reach_each_other(one: Hole, other: Hole, thickness: float) -> bool:
    if one.face == other.face or one.depth is None or other.depth is None:
        return True
    return one.depth + other.depth > thickness - WOOD_BETWEEN + SLACK


def _too_near(part: str, one: Hole, other: Hole, unit: Unit, board: str | None = None) -> Problem:
    distance = math.hypot(one.x - other.x, one.y - other.y)
    return error(
        "holes-too-near",
        part,
        f"{_name(one)} and {_name(other)} are {format_length(distance, unit)} apart at x "
        f"{format_length(one.x, unit)}, y {format_length(one.y, unit)}"
        + (f" of {board}" if board else ""),
        "move one of them: system holes coincide or keep 12.5 mm, others keep 2 mm of wood",
        (board,) if board else (),
    )


def _name(hole: Hole) -> str:
    return f"a {HOLES[hole.purpose]} hole"
