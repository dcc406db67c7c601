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
    own = replace(
        front,
        drawer=None if front.drawer is None else _share_drawer(shared, front.drawer),
        fittings=_share_fittings(shared, front.fittings),
    )
    return shared.fields(
        own, "place", "gaps", "make", "screws", "code", "hinge", "least_reveal", "assumed"
    )


def share_side(shared: Shared, side: Side) -> Side:
    """Give a board's face that shares what it has alike with others."""
    own = replace(side, fittings=_share_fittings(shared, side.fittings))
    return shared.fields(own, "code", "ends", "shelves", "assumed")


def share_problem(shared: Shared, problem: Problem) -> Problem:
    """Give a finding that shares its figures with those that have the same."""
    return shared.fields(problem, "values")


def _share_drawer(shared: Shared, drawer: DrawerBox) -> DrawerBox:
    own = replace(
        drawer,
        fittings=_share_fittings(shared, drawer.fittings),
        rear=_share_fittings(shared, drawer.rear),
    )
    return shared.fields(own, "code", "notch", "assumed")


def _share_fittings(shared: Shared, fittings: Iterable[Fitting]) -> tuple[Fitting, ...]:
    return tuple(shared.fields(fitting, "holes", "outline") for fitting in fittings)
