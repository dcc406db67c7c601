"""Is an appliance's panel as the appliance's own leaflet allows it? The leaflet wins."""

from jigs.box.fronts import PlacedFront
from jigs.given.leaflet import Leaflet
from jigs.ground.finding import error, warning
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length, telling_unit
from jigs.ground.problems import Problem


def check_leaflet(
    front: PlacedFront, *, mass: float, pulled: bool, unit: Unit
) -> tuple[Problem, ...]:
    """Hold a panel against the stated numbers of its leaflet.

    `mass` in kg, without its pull; `pulled`: whether holes of a pull stand in its face.
    """
    leaflet = front.spec.appliance
    if front.kind != "panel" or leaflet is None:
        return ()
    faults: list[str] = []
    for size, value, low, high in (
        ("wide", front.width, leaflet.width_min, leaflet.width_max),
        ("high", front.height, leaflet.height_min, leaflet.height_max),
    ):
        if (low is not None and value < low - SLACK) or (high is not None and value > high + SLACK):
            unit = telling_unit(unit, value, *(end for end in (low, high) if end is not None))
            allowed = range_words(low, high, unit)
            faults.append(f"it is {format_length(value, unit)} {size}; {allowed}")
    for place, gap, least in _gaps(front, leaflet):
        if least is not None and gap < least - SLACK:
            unit = telling_unit(unit, gap, least)
            faults.append(
                f"the gap {place} is {format_length(gap, unit)}; at least "
                f"{format_length(least, unit)}"
            )
    if leaflet.weight_max is not None and mass > leaflet.weight_max + SLACK:
        faults.append(f"it weighs {mass:.1f} kg; at most {leaflet.weight_max:g} kg")
    problems = [
        error(
            "leaflet-not-met",
            front.id,
            f"{fault} by the appliance's leaflet",
            "order another panel, or change the opening: the leaflet wins",
        )
        for fault in faults
    ]
    if leaflet.pull == "none" and pulled:
        problems.append(
            error(
                "leaflet-not-met",
                front.id,
                "it has holes for a pull, and the appliance's leaflet allows none",
                "leave the pull out, and holes by hand in its face",
            )
        )
    if leaflet.unstated:
        names = ", ".join(leaflet.unstated)
        problems.append(
            warning(
                "leaflet-in-part",
                front.id,
                f"of the appliance's leaflet these are not stated: {names}",
                "compare them with that sheet before drilling, and state them",
            )
        )
    return tuple(problems)


def _gaps(front: PlacedFront, leaflet: Leaflet) -> tuple[tuple[str, float, float | None], ...]:
    return (
        ("on its left", front.gaps.left, leaflet.gap_left),
        ("on its right", front.gaps.right, leaflet.gap_right),
        ("above it", front.gaps.top, leaflet.gap_top),
        ("below it", front.gaps.bottom, leaflet.gap_bottom),
    )


def range_words(low: float | None, high: float | None, unit: Unit) -> str:
    """Say what a leaflet allows a size to be."""
    if low is None and high is None:
        return "any"
    if low is None or high is None:
        return (
            f"at least {format_length(low, unit)}"
            if low is not None
            else f"at most {format_length(high or 0.0, unit)}"
        )
    if high - low <= SLACK:
        return f"exactly {format_length(low, unit)}"
    return f"{format_length(low, unit)} to {format_length(high, unit)}"
