"""Do the slides go into the box, and do they bear the drawer? The load is asked only where a
record says what the pair bears."""

from jigs.box.carcass import Carcass
from jigs.fittings.catalogue import generic_slides
from jigs.fittings.slide import BACK_SET_IN, depth_needed, depth_short
from jigs.fittings.slideload import KG_PER_POUND, expected_load
from jigs.given.hardware import SlideRecord
from jigs.ground.finding import error, warning
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import MM_PER_INCH, Unit, format_length, telling_unit
from jigs.ground.problems import Problem


def check_slide_depth(
    part: str,
    carcass: Carcass,
    record: SlideRecord,
    unit: Unit,
    set_back: float = 0.0,
) -> tuple[Problem, ...]:
    """Find a slide of a drawer or rollout that is longer than the box is deep behind its front."""
    inside = carcass.inside_depth - set_back
    if not depth_short(record, inside):
        return ()
    unit = telling_unit(unit, depth_needed(record), inside)
    return (
        error(
            "slide-too-long",
            part,
            f"slide '{record.name}' takes {format_length(depth_needed(record), unit)} of inside "
            f"depth; box {carcass.box.id}: {_depth_left(carcass, inside, set_back, unit)}",
            _shorter(record, inside, unit),
        ),
    )


def _depth_left(carcass: Carcass, inside: float, set_back: float, unit: Unit) -> str:
    """Say where a box's depth goes."""
    less = [f"the back {format_length(carcass.back, unit)}"]
    less += [f"its set-in {format_length(BACK_SET_IN, unit)}"]
    less += [f"the inset front {format_length(set_back, unit)}"] if set_back else []
    return (
        f"{format_length(carcass.box.depth, unit)} less {', '.join(less[:-1])} and {less[-1]} "
        f"leaves {format_length(inside, unit)}"
    )


def _shorter(record: SlideRecord, inside: float, unit: Unit) -> str:
    """Say which length goes in: of the generic slides of this mount, and of this one's series
    (whole inches or not), the longest that fits."""
    fitting = [
        slide
        for slide in generic_slides().values()
        if slide.mount == record.mount
        and _whole_inches(slide.length) == _whole_inches(record.length)
        and slide.length + record.depth_allowance <= inside + SLACK
    ]
    if not fitting:
        return "make the box deeper: no usual slide is so short"
    longest = max(fitting, key=lambda slide: slide.length)
    return (
        f"take a shorter slide: {format_length(longest.length, unit)} is the longest usual length "
        f"that fits ('{longest.name}'), or make the box deeper"
    )


def _whole_inches(length: float) -> bool:
    """Tell whether a nominal length in whole mm is a number of inches."""
    return abs(length - round(length / MM_PER_INCH) * MM_PER_INCH) <= 0.5


def check_slide_load(
    part: str, record: SlideRecord, width: float, length: float
) -> tuple[Problem, ...]:
    """Find a drawer or rollout, its box `width` by `length` mm, too large for its slides' load."""
    expected = expected_load(width, length)
    if record.load is None or expected <= record.load + SLACK:
        return ()
    return (
        warning(
            "slide-load",
            part,
            f"full, it is reckoned to carry {_weight(expected)} (15 lb/ft2 of its area, KCMA "
            f"A161.1, second hand; the box itself comes on top); slide '{record.name}' bears "
            f"{_weight(record.load)}",
            "take slides that bear more, or keep light things in it",
        ),
    )


def _weight(kg: float) -> str:
    return f"{kg:.1f} kg ({kg / KG_PER_POUND:.0f} lb)"
