"""Do the drawer boxes fit the box as it is built? They are reckoned for the sizes in the job.

A drawer box is cut to a millimetre by the opening between the sides. Where the tape found another
width than the job says, the box is wrong before it is cut: it is held back until the job has the
measured width, from which it then follows. So is one whose slide the measured depth does not take.

>>> from jigs.given.job import BoxSpec
>>> from jigs.given.taped import TapedBox
>>> box = BoxSpec(id="B1", kind="base", width=600.0, height=762.0, depth=584.0, above_floor=100.0,
...               built=True, measured=TapedBox(width=(598.0, 597.0)))
>>> off_as_built(box)
-3.0
"""

from jigs.box.carcass import Carcass
from jigs.fittings.slide import depth_needed, depth_short, width_error
from jigs.given.hardware import SlideRecord
from jigs.given.job import BoxSpec
from jigs.ground.finding import error, warning
from jigs.ground.lengths import Unit, format_inches, format_length, format_mm
from jigs.ground.limits import CAREFUL, is_beyond
from jigs.ground.problems import Problem


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
) -> tuple[Problem, ...]:
    """Find a drawer box, `width` mm outside, that the box as built does not take.

    `spacers`: what stands under its slides in all; `given`: its width is the job's own, so a box
    too narrow for its slides is packed out. In a box of several columns the whole difference is
    taken to be in each: nobody measured where it went.
    """
    box = carcass.box
    off = off_as_built(box)
    planned = carcass.opening - spacers
    if not off or width_error(record, planned, drawer_side, width) > 0:
        return ()
    miss = width_error(record, planned + off, drawer_side, width)
    if not is_beyond(miss, 0.0):
        return ()
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
        return (warning("drawer-not-as-built", part, text, "pack the slides out", also),)
    return (error("drawer-not-as-built", part, text, remedy, also),)


def check_depth_as_built(
    part: str, carcass: Carcass, record: SlideRecord, unit: Unit, set_back: float = 0.0
) -> tuple[Problem, ...]:
    """Find a slide that the box as built is not deep enough for, behind an inset front that
    stands `set_back` in it; mm. Its depth as planned takes it."""
    box = carcass.box
    if not box.built or box.measured.depth is None:
        return ()
    off = box.measured.depth - box.depth
    inside = carcass.inside_depth - set_back + off
    if not is_beyond(off, CAREFUL) or not depth_short(record, inside):
        return ()
    built = format_length(box.measured.depth, unit)
    return (
        error(
            "drawer-not-as-built",
            part,
            f"slide '{record.name}' takes {format_length(depth_needed(record), unit)} of inside "
            f"depth; box {box.id} is {built} deep as built, not {format_length(box.depth, unit)}, "
            f"and leaves {format_length(inside, unit)}",
            f"put depth = {_quoted(box.measured.depth, unit)} into box {box.id}, and take a "
            "shorter slide",
        ),
    )


def _quoted(mm: float, unit: Unit) -> str:
    """Write a length as it stands in a job file, good to 0.1 mm."""
    inches = format_inches(mm)
    if unit == "in" and inches[-1] not in "+-":
        return f'"{inches} in"'
    return f'"{format_mm(mm)} mm"'
