"""Is an appliance's panel as the appliance's own leaflet allows it? The leaflet wins."""

from jigs.checks.finding import error, warning
from jigs.fronts import PlacedFront
from jigs.geometry import SLACK
from jigs.leaflet import Leaflet
from jigs.lengths import Unit, format_length
from jigs.problems import Problem


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
            faults.append(f"it is {format_length(value, unit)} {size}; {_range(low, high, unit)}")
    for place, gap, least in _gaps(front, leaflet):
        if least is not None and gap < least - SLACK:
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
    return (*problems, _stated(front, leaflet, mass, unit))


def _gaps(front: PlacedFront, leaflet: Leaflet) -> tuple[tuple[str, float, float | None], ...]:
    return (
        ("on its left", front.gap_left, leaflet.gap_left),
        ("on its right", front.gap_right, leaflet.gap_right),
        ("above it", front.gap_top, leaflet.gap_top),
        ("below it", front.gap_bottom, leaflet.gap_bottom),
    )


def _stated(front: PlacedFront, leaflet: Leaflet, mass: float, unit: Unit) -> Problem:
    """Say, for the panel's sheet, what was stated of the leaflet, and what was not."""
    words = [
        f"width {_range(leaflet.width_min, leaflet.width_max, unit)}",
        f"height {_range(leaflet.height_min, leaflet.height_max, unit)}",
    ]
    least = [
        f"{place} {format_length(gap, unit)}"
        for place, _, gap in _gaps(front, leaflet)
        if gap is not None
    ]
    words += [f"gaps of at least {', '.join(least)}"] if least else []
    if leaflet.weight_max is not None:
        words.append(f"at most {leaflet.weight_max:g} kg, this one {mass:.1f} without its pull")
    if leaflet.pull is not None:
        words.append(f"pull {leaflet.pull}")
    unsaid = [
        name
        for name, said in (
            ("gaps", bool(least)),
            ("weight", leaflet.weight_max is not None),
            ("pull", leaflet.pull is not None),
        )
        if not said
    ]
    rest = f"; not stated: {', '.join(unsaid)}" if unsaid else ""
    return warning(
        "leaflet-rules",
        front.id,
        f"the appliance's leaflet rules, as stated: {'; '.join(words)}{rest}",
        "compare what is not stated, and the places of its holes, with that sheet",
    )


def _range(low: float | None, high: float | None, unit: Unit) -> str:
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
