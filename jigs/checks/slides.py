"""Do the slides go into the box, as planned and as built, do they bear the drawer, and do their
rear hooks find wood?

The load is asked only where a record says what the pair bears. A drawer box is cut to a millimetre
by the opening between the sides. Where the tape found another width than the job says, the box is
wrong before it is cut: it is held back until the job has the measured width, from which it then
follows. So is one whose slide the measured depth does not take.

>>> from jigs.given.stated import TapedBox
>>> box = BoxSpec(id="B1", kind="base", width=600.0, height=762.0, depth=584.0, above_floor=100.0,
...               built=True, measured=TapedBox(width=(598.0, 597.0)))
>>> off_as_built(box)
-3.0
"""

from collections.abc import Iterator

from jigs.box.carcass import Carcass
from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.box.drawers import LEAST_HEIGHT
from jigs.fittings.catalogue import generic_slides
from jigs.fittings.slide import (
    BACK_SET_IN,
    KG_PER_POUND,
    depth_needed,
    depth_short,
    expected_load,
    width_error,
)
from jigs.given.hardware import SlideRecord
from jigs.given.job import BoxSpec
from jigs.ground.geometry import SLACK
from jigs.ground.grid import WOOD_BETWEEN
from jigs.ground.lengths import (
    CAREFUL,
    MM_PER_INCH,
    Unit,
    format_inches,
    format_length,
    format_mm,
    is_beyond,
    telling_unit,
)
from jigs.ground.problems import Problem, error, warning


def check_slide_depth(
    part: str,
    carcass: Carcass,
    record: SlideRecord,
    unit: Unit,
    set_back: float = 0.0,
) -> Iterator[Problem]:
    """Find a slide of a drawer or rollout that is longer than the box is deep behind its front, as
    planned or as built; an inset front stands `set_back` in it, mm."""
    inside = carcass.inside_depth - set_back
    if not depth_short(record, inside):
        yield from _check_depth_as_built(part, carcass, record, inside, unit)
        return
    unit = telling_unit(unit, depth_needed(record), inside)
    yield error(
        "slide-too-long",
        part,
        f"slide '{record.name}' takes {format_length(depth_needed(record), unit)} of inside "
        f"depth; box {carcass.box.id}: {_depth_left(carcass, inside, set_back, unit)}",
        _shorter(record, inside, unit),
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
) -> Iterator[Problem]:
    """Find a drawer or rollout, its box `width` by `length` mm, too large for its slides' load."""
    expected = expected_load(width, length)
    if record.load is None or expected <= record.load + SLACK:
        return
    yield warning(
        "slide-load",
        part,
        f"full, it is reckoned to carry {_weight(expected)} (15 lb/ft2 of its area, KCMA "
        f"A161.1, second hand; the box itself comes on top); slide '{record.name}' bears "
        f"{_weight(record.load)}",
        "take slides that bear more, or keep light things in it",
    )


def _weight(kg: float) -> str:
    return f"{kg:.1f} kg ({kg / KG_PER_POUND:.0f} lb)"


def off_as_built(box: BoxSpec) -> float:
    """Give how far a finished box is off the job's width where it is narrowest, 0 within careful
    work; mm, below 0 narrower."""
    if not box.built or box.measured.width is None:
        return 0.0
    off = min(box.measured.width) - box.width
    return off if is_beyond(off, CAREFUL) else 0.0


def check_as_built(
    part: str,
    carcass: Carcass,
    record: SlideRecord,
    width: float,
    drawer_side: float,
    unit: Unit,
    *,
    spacers: float = 0.0,
    given: bool = False,
    also: tuple[str, ...] = (),
) -> Iterator[Problem]:
    """Find a drawer box, `width` mm outside, that the box as built does not take.

    `spacers`: what stands under its slides in all; `given`: its width is the job's own, so a box
    too narrow for its slides is packed out. In a box of several columns the whole difference is
    taken to be in each: nobody measured where it went.
    """
    box = carcass.box
    off = off_as_built(box)
    planned = carcass.opening - spacers
    if not off or width_error(record, planned, drawer_side, width) > 0:
        return
    miss = width_error(record, planned + off, drawer_side, width)
    if not is_beyond(miss, 0.0):
        return
    built = box.width + off
    inside = planned + off - record.width_less
    left = f"{format_length(planned + off, unit)} {'may be left' if carcass.bay else 'are left'}"
    wants = "inside" if record.mount == "under" else "outside"
    text = (
        f"its drawer box, {format_length(width, unit)} wide outside, is reckoned for box {box.id} "
        f"{format_length(box.width, unit)} wide, which is {format_length(built, unit)} as built: "
        f"{left} for it, so slide '{record.name}' wants {format_length(inside, unit)} {wants}; "
        f"it is {format_length(abs(miss), unit)} too {'wide' if miss > 0 else 'narrow'}"
    )
    remedy = f"put width = {_quoted(built, unit)} into box {box.id}, then its drawer boxes follow"
    if miss < 0 and given:
        yield warning("drawer-not-as-built", part, text, "pack the slides out", also)
        return
    yield error("drawer-not-as-built", part, text, remedy, also)


def _check_depth_as_built(
    part: str, carcass: Carcass, record: SlideRecord, inside: float, unit: Unit
) -> Iterator[Problem]:
    """Find a slide that the box as built is not deep enough for, though it is with the `inside`
    depth that was planned; mm."""
    box = carcass.box
    if not box.built or box.measured.depth is None:
        return
    off = box.measured.depth - box.depth
    inside += off
    if not is_beyond(off, CAREFUL) or not depth_short(record, inside):
        return
    built = format_length(box.measured.depth, unit)
    yield error(
        "drawer-not-as-built",
        part,
        f"slide '{record.name}' takes {format_length(depth_needed(record), unit)} of inside "
        f"depth; box {box.id} is {built} deep as built, not {format_length(box.depth, unit)}, "
        f"and leaves {format_length(inside, unit)}",
        f"put depth = {_quoted(box.measured.depth, unit)} into box {box.id}, and take a "
        "shorter slide",
    )


def _quoted(mm: float, unit: Unit) -> str:
    """Write a length as it stands in a job file, good to 0.1 mm."""
    inches = format_inches(mm)
    if unit == "in" and inches[-1] not in "+-":
        return f'"{inches} in"'
    return f'"{format_mm(mm)} mm"'


def check_hooks(
    part: str,
    box: DrawerBox | Rollout,
    record: SlideRecord,
    unit: Unit,
    also: tuple[str, ...] = (),
) -> Iterator[Problem]:
    """Find hook holes that leave the back of a drawer box, fall into its notch, or are asked
    deeper than its back is thick.

    Left and right are alike, so the left one speaks for both.
    """
    if not box.rear:
        return
    if record.hook_depth is not None and record.hook_depth > box.side + SLACK:
        yield warning(
            "hook-through",
            part,
            f"the holes for its slide's hooks are to be {format_length(record.hook_depth, unit)} "
            f"deep, and its back is {format_length(box.side, unit)} thick: they come out behind",
            "correct hook_depth from the slide's leaflet, or see that a hole right through "
            "serves the hook",
            also,
        )
    hole, radius = box.rear[0].holes[0], box.rear[0].holes[0].diameter / 2
    holes = (
        f"the holes for its slide's hooks, {format_length(2 * radius, unit)} wide and "
        f"{format_length(hole.y, unit)} above the underside"
    )
    right, top = box.width / 2 - WOOD_BETWEEN + SLACK, box.height - WOOD_BETWEEN + SLACK
    inner, (wide, high) = box.rear[0].outline[0][1][0], box.notch or (0.0, 0.0)
    beside, over = hole.x + radius > right, hole.y + radius > top
    if beside or (over and box.height >= LEAST_HEIGHT - SLACK):  # a lower box is told as too low
        yield error(
            "hook-outside",
            part,
            f"{holes}, do not find {format_length(WOOD_BETWEEN, unit)} of wood round them: "
            f"the drawer box is {format_length(box.width, unit)} wide and "
            f"{format_length(box.height, unit)} high",
            "make the drawer box higher or wider, or correct hook_height and hook_inset",
            also,
        )
    elif box.notch and hole.y - radius < high - SLACK and hole.x - radius < inner + wide - SLACK:
        yield error(
            "hook-in-notch",
            part,
            f"{holes}, fall into the notch, which is {format_length(high, unit)} high: "
            "no wood is there",
            "correct hook_height, or notch_height and notch_width, from the slide's leaflet",
            also,
        )
