"""Will the drawer run? Its slide, its box's width and height, its place in the column."""

import math
from collections.abc import Iterator

from jigs.box.carcass import Carcass
from jigs.box.drawerplan import DrawerPlan
from jigs.box.drawers import (
    CLEAR_OF_RAIL,
    GRID_SLACK,
    LEAST_HEIGHT,
    LEAST_INSIDE,
    DrawerPlace,
    DrawerSpace,
    into_shelf,
    least_height,
)
from jigs.box.fronts import PlacedFront
from jigs.checks.slides import (
    check_as_built,
    check_hooks,
    check_slide_depth,
    check_slide_load,
)
from jigs.fittings.slide import nominal_outside, rise_above_floor_line, width_error
from jigs.given.catalogue import SLIDE_SERIES
from jigs.given.hardware import SlideRecord
from jigs.given.job import Job
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import MM_PER_INCH, Unit
from jigs.ground.problems import Problem, error, warning

UNDER_SIDE_MOUNT = 15.0
"""Clearance under a side-mounted lowest drawer; mm (common practice, no source)."""


def check_drawer(
    front: PlacedFront, carcass: Carcass, job: Job, plan: DrawerPlan
) -> Iterator[Problem]:
    """List what keeps a drawer from running."""
    record, place, drawer = plan.record, plan.place, plan.drawer
    set_back = front.set_back(job.thickness_of(front.spec))
    yield from check_slide_depth(front.id, carcass, record, set_back)
    wide = tuple(check_drawer_width(front, carcass, record, drawer.width, drawer.side))
    yield from wide
    if not any(problem.code == "drawer-no-width" for problem in wide):
        yield from check_as_built(
            front.id,
            carcass,
            record,
            drawer.width,
            drawer.side,
            given=front.spec.drawer_box.drawer_width is not None,
            also=(drawer.id,),
        )
        yield from check_hooks(front.id, drawer, record, (drawer.id,))
    yield from check_slide_load(front.id, record, drawer.width, drawer.length)
    yield from check_drawer_shelves(front, plan.space, place)
    yield from check_drawer_height(front, plan.space, place, job.units)
    said = _has_own_slide(front, job) or front.spec.drawer_box.drawer_height is not None
    if front.kind == "pullout" and not said:
        listed = front.spec.row.listed
        yield warning("pullout-drawer-box", front.id, height=drawer.height, listed=listed)
    if front.place.row == front.place.rows:
        yield from check_drawer_clearance(front, carcass, record, place)


def _has_own_slide(front: PlacedFront, job: Job) -> bool:
    """Tell whether the person named a slide for a front. Where nobody named one for the job, a
    generic one, not the job's, may have been chosen by the depth of its box."""
    slide = front.spec.slide
    chosen = (
        "use.slide" in job.assumed and slide != job.use.slide and slide in SLIDE_SERIES[job.units]
    )
    return slide is not None and not chosen


def check_drawer_width(
    front: PlacedFront,
    carcass: Carcass,
    record: SlideRecord,
    width: float,
    drawer_side: float,
) -> Iterator[Problem]:
    """Find a drawer box, `width` mm outside, that its slide does not take, or that is none.

    A computed width rounds down, which may cost more than the slide's tolerance; that is left
    to packing, and only a given width is called too narrow.
    """
    miss = width_error(record, carcass.opening, drawer_side, width)
    nominal = nominal_outside(record, carcass.opening, drawer_side)
    if width - 2 * drawer_side < LEAST_INSIDE - SLACK:
        yield error(
            "drawer-no-width",
            front.id,
            opening=carcass.opening,
            outside=max(0.0, width),
            least=LEAST_INSIDE,
            also=(f"{front.id}-BOX",),
        )
        return
    given = front.spec.drawer_box.drawer_width is not None
    if miss > 0:
        yield error(
            "drawer-too-wide",
            front.id,
            width=width,
            side=drawer_side,
            miss=miss,
            slide=record.name,
            most=width - miss,
            also=(f"{front.id}-BOX",),
        )
        return
    if miss < 0 and given:
        yield warning(
            "drawer-too-narrow",
            front.id,
            width=width,
            miss=-miss,
            slide=record.name,
            nominal=nominal,
            also=(f"{front.id}-BOX",),
        )
        return


def check_drawer_height(
    front: PlacedFront, space: DrawerSpace, place: DrawerPlace, units: Unit
) -> Iterator[Problem]:
    """Find a drawer box that is too low to build, higher than its room, or than its front.

    A drawer box given higher than its own front only shows above it. Each millimetre more of front
    is one more of room, whether the drawer below sinks by it or the front above rises.
    """
    if place.too_low:
        least = least_height(units)
        front_least = _rounded_up(front.height + least - place.greatest - place.moved, units)
        shelf = space.shelf_above
        if place.greatest > least - SLACK:
            case = "given"
        elif shelf is not None and shelf - CLEAR_OF_RAIL - place.bottom < least - SLACK:
            case = "shelf"
        else:
            case = "front"
        yield error(
            "drawer-too-low",
            front.id,
            case=case,
            room=max(0.0, place.greatest),
            stated=place.height if place.height > SLACK else None,
            least=LEAST_HEIGHT,
            front=front_least,
            also=(f"{front.id}-BOX",),
        )
        return
    if place.too_high:
        yield error(
            "drawer-too-high",
            front.id,
            height=place.height,
            pulled_out=place.greatest < place.room - SLACK,
            room=max(0.0, place.greatest),
            also=(f"{front.id}-BOX",),
        )
        return
    above = place.rise + place.height - front.height
    if front.spec.drawer_box.drawer_height is not None and above > SLACK:
        yield warning(
            "drawer-above-front",
            front.id,
            height=place.height,
            above=above,
            also=(f"{front.id}-BOX",),
        )
        return


def _rounded_up(height: float, units: Unit) -> float:
    """Give a height rounded up to 1/16 in or 0.1 mm, so that what is printed is enough; mm."""
    step = MM_PER_INCH / 16 if units == "in" else 0.1
    return math.ceil(height / step - SLACK) * step


def check_drawer_shelves(
    front: PlacedFront, space: DrawerSpace, place: DrawerPlace
) -> Iterator[Problem]:
    """Find a fixed shelf, or another column's board, where a drawer's slides or its box run.

    It stands at or below the slides' floor line (side mount: the drawer's underside), or leaves
    a drawer box above that line its least height and the room over it (derived).
    """
    under = into_shelf(space, place.bottom)
    above = space.shelf_above
    also = (f"{front.id}-BOX",)
    if under:
        line = place.bottom - rise_above_floor_line(space.record)
        yield error(
            "drawer-into-shelf",
            front.id,
            case="under",
            slides=line < place.bottom - SLACK,
            line=line,
            over=under,
            also=also,
        )
    elif above is not None and above - CLEAR_OF_RAIL - place.bottom < LEAST_HEIGHT - SLACK:
        least = place.bottom + LEAST_HEIGHT + CLEAR_OF_RAIL
        yield error(
            "drawer-into-shelf",
            front.id,
            case="over",
            underside=above,
            room=above - place.bottom,
            least=least,
            also=also,
        )


def check_drawer_clearance(
    front: PlacedFront, carcass: Carcass, record: SlideRecord, place: DrawerPlace
) -> Iterator[Problem]:
    """Find a lowest drawer that stands too near to the bottom panel, or whose undermount slide
    does not lie on it."""
    rise = place.bottom - carcass.floor
    least = record.least_rise
    if record.mount == "side":
        # The half millimetre that the grid may take does not count.
        rise, least = rise - min(0.0, place.moved), UNDER_SIDE_MOUNT
    if rise >= least - SLACK:
        yield from _off_panel(front, carcass, record, place)
        return
    yield warning(
        "drawer-clearance", front.id, rise=rise, slide=record.name, least=least, also=carcass.boards
    )


def _off_panel(
    front: PlacedFront, carcass: Carcass, record: SlideRecord, place: DrawerPlace
) -> Iterator[Problem]:
    off = place.bottom - carcass.floor - record.drawer_rise
    if record.mount != "under" or abs(off) <= GRID_SLACK + SLACK:
        return
    yield warning(
        "drawer-off-panel",
        front.id,
        slide=record.name,
        off=abs(off),
        above=off > 0,
        also=carcass.boards,
    )
