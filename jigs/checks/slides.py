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
from jigs.box.drawerbox import AnyDrawer
from jigs.box.drawers import LEAST_HEIGHT
from jigs.fittings.slide import depth_needed, depth_short, expected_load, width_error
from jigs.given.build import BACK_SET_IN
from jigs.given.catalogue import generic_slides
from jigs.given.hardware import SlideRecord
from jigs.given.job import BoxSpec
from jigs.ground.geometry import SLACK
from jigs.ground.grid import WOOD_BETWEEN
from jigs.ground.lengths import (
    CAREFUL,
    MM_PER_INCH,
    is_beyond,
)
from jigs.ground.problems import Problem, error, warning


def check_slide_depth(
    part: str,
    carcass: Carcass,
    record: SlideRecord,
    set_back: float = 0.0,
) -> Iterator[Problem]:
    """Find a slide of a drawer or rollout that is longer than the box is deep behind its front, as
    planned or as built; an inset front stands `set_back` in it, mm."""
    inside = carcass.inside_depth - set_back
    if not depth_short(record, inside):
        yield from _check_depth_as_built(part, carcass, record, inside)
        return
    shorter = _shorter(record, inside)
    yield error(
        "slide-too-long",
        part,
        slide=record.name,
        needed=depth_needed(record),
        box=carcass.box.id,
        depth=carcass.box.depth,
        back=carcass.back,
        set_in=BACK_SET_IN,
        set_back=set_back,
        inside=inside,
        shorter=shorter.name if shorter else None,
        length=shorter.length if shorter else None,
    )


def _shorter(record: SlideRecord, inside: float) -> SlideRecord | None:
    """Give the slide that goes in: of the generic slides of this mount, and of this one's series
    (whole inches or not), the longest that fits."""
    fitting = [
        slide
        for slide in generic_slides().values()
        if slide.mount == record.mount
        and _whole_inches(slide.length) == _whole_inches(record.length)
        and slide.length + record.depth_allowance <= inside + SLACK
    ]
    return max(fitting, key=lambda slide: slide.length, default=None)


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
    yield warning("slide-load", part, expected=expected, slide=record.name, bears=record.load)


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
    packed = miss < 0 and given
    yield (warning if packed else error)(
        "drawer-not-as-built",
        part,
        case="packed" if packed else "wide",
        width=width,
        box=box.id,
        planned=box.width,
        built=box.width + off,
        left=planned + off,
        columns=carcass.bay is not None,
        slide=record.name,
        wanted=planned + off - record.width_less,
        inside=record.mount == "under",
        miss=abs(miss),
        too_wide=miss > 0,
        also=also,
    )


def _check_depth_as_built(
    part: str, carcass: Carcass, record: SlideRecord, inside: float
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
    yield error(
        "drawer-not-as-built",
        part,
        case="deep",
        slide=record.name,
        needed=depth_needed(record),
        box=box.id,
        built=box.measured.depth,
        depth=box.depth,
        inside=inside,
    )


def check_hooks(
    part: str,
    box: AnyDrawer,
    record: SlideRecord,
    also: tuple[str, ...] = (),
) -> Iterator[Problem]:
    """Find hook holes that leave the back of a drawer box, fall into its notch, or are asked
    deeper than its back is thick.

    Left and right are alike, so the left one speaks for both.
    """
    if not box.rear:
        return
    if record.hook_depth is not None and record.hook_depth > box.side + SLACK:
        yield warning("hook-through", part, depth=record.hook_depth, thick=box.side, also=also)
    hole, radius = box.rear[0].holes[0], box.rear[0].holes[0].diameter / 2
    right, top = box.width / 2 - WOOD_BETWEEN + SLACK, box.height - WOOD_BETWEEN + SLACK
    inner, (wide, high) = box.rear[0].outline[0][1][0], box.notch or (0.0, 0.0)
    beside, over = hole.x + radius > right, hole.y + radius > top
    if beside or (over and box.height >= LEAST_HEIGHT - SLACK):  # a lower box is told as too low
        yield error(
            "hook-outside",
            part,
            wide=2 * radius,
            height=hole.y,
            wood=WOOD_BETWEEN,
            box_width=box.width,
            box_height=box.height,
            also=also,
        )
    elif box.notch and hole.y - radius < high - SLACK and hole.x - radius < inner + wide - SLACK:
        yield error("hook-in-notch", part, wide=2 * radius, height=hole.y, notch=high, also=also)
