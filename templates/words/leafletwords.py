"""What an appliance's panel says on its sheets: that the appliance's own sheet rules, and what of
it was stated."""

from jigs.box.parts import Front, Layout
from jigs.given.stated import NOTED, Leaflet
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length

RULES = "APPLIANCE'S PANEL: the appliance's own sheet rules over every number here."


def leaflet_facts(layout: Layout, front: Front) -> tuple[str, ...]:
    """Say what rules over a panel; nothing for any other front."""
    if front.kind != "panel":
        return ()
    spec = next(s for s in layout.box_of[front.box].fronts if s.id == front.id)
    if spec.leaflet is None or spec.leaflet == NOTED:
        return (RULES,)
    return (f"{RULES} It allows: {_stated(spec.leaflet, layout.job.shown)}.",)


def _stated(leaflet: Leaflet, unit: Unit) -> str:
    words = [
        f"width {range_words(leaflet.width_min, leaflet.width_max, unit)}",
        f"height {range_words(leaflet.height_min, leaflet.height_max, unit)}",
    ]
    words += [
        f"{place} at least {format_length(gap, unit)}"
        for place, gap in (
            ("gap on the left", leaflet.gap_left),
            ("on the right", leaflet.gap_right),
            ("above", leaflet.gap_top),
            ("below", leaflet.gap_bottom),
        )
        if gap is not None
    ]
    words += [f"weight at most {leaflet.weight_max:g} kg"] if leaflet.weight_max else []
    words += [f"pull {leaflet.pull}"] if leaflet.pull else []
    return "; ".join(words)


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
