"""Boxes that share what they have alike: a long job then takes half the memory."""

from collections.abc import Iterable

from msgspec.structs import replace

from jigs.box.drawerbox import DrawerBox
from jigs.box.parts import Front, Side
from jigs.ground.geometry import Fitting
from jigs.ground.problems import Problem
from jigs.ground.shared import Shared


def share_front(shared: Shared, front: Front) -> Front:
    """Give a front that shares what it has alike with others."""
    return replace(
        front,
        place=shared.one(front.place),
        gaps=shared.one(front.gaps),
        make=shared.one(front.make),
        screws=shared.one(front.screws),
        code=shared.one(front.code),
        hinge=shared.one(front.hinge),
        least_reveal=shared.one(front.least_reveal),
        drawer=None if front.drawer is None else _share_drawer(shared, front.drawer),
        fittings=_share_fittings(shared, front.fittings),
        assumed=shared.one(front.assumed),
    )


def share_side(shared: Shared, side: Side) -> Side:
    """Give a board's face that shares what it has alike with others."""
    return replace(
        side,
        code=shared.one(side.code),
        ends=shared.one(side.ends),
        fittings=_share_fittings(shared, side.fittings),
        shelves=shared.one(side.shelves),
        assumed=shared.one(side.assumed),
    )


def share_problem(shared: Shared, problem: Problem) -> Problem:
    """Give a finding that shares its figures with those that have the same."""
    return replace(problem, values=shared.one(problem.values))


def _share_drawer(shared: Shared, drawer: DrawerBox) -> DrawerBox:
    return replace(
        drawer,
        code=shared.one(drawer.code),
        notch=shared.one(drawer.notch),
        fittings=_share_fittings(shared, drawer.fittings),
        rear=_share_fittings(shared, drawer.rear),
        assumed=shared.one(drawer.assumed),
    )


def _share_fittings(shared: Shared, fittings: Iterable[Fitting]) -> tuple[Fitting, ...]:
    return tuple(
        replace(fitting, holes=shared.one(fitting.holes), outline=shared.one(fitting.outline))
        for fitting in fittings
    )
