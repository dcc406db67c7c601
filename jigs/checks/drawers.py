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
from jigs.given.hardware import SlideRecord
from jigs.given.job import Job
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import MM_PER_INCH, Unit, format_length, telling_unit
from jigs.ground.problems import Problem, error, warning

UNDER_SIDE_MOUNT = 15.0
"""Clearance under a side-mounted lowest drawer; mm (common practice, no source)."""


def check_drawer(
    front: PlacedFront, carcass: Carcass, job: Job, plan: DrawerPlan
) -> Iterator[Problem]:
    """List what keeps a drawer from running."""
    record, place, drawer, unit = plan.record, plan.place, plan.drawer, job.shown
    set_back = front.set_back(job.thickness_of(front.spec))
    yield from check_slide_depth(front.id, carcass, record, unit, set_back)
    wide = tuple(check_drawer_width(front, carcass, record, drawer.width, drawer.side, unit))
    yield from wide
    if not any(problem.code == "drawer-no-width" for problem in wide):
        yield from check_as_built(
            front.id,
            carcass,
            record,
            drawer.width,
            drawer.side,
            unit,
            given=front.spec.drawer_box.drawer_width is not None,
            also=(drawer.id,),
        )
        yield from check_hooks(front.id, drawer, record, unit, (drawer.id,))
    yield from check_slide_load(front.id, record, drawer.width, drawer.length)
    yield from check_drawer_shelves(front, plan.space, place, unit)
    yield from check_drawer_height(front, plan.space, place, unit, job.units)
    if front.place.row == front.place.rows:
        yield from check_drawer_clearance(front, carcass, record, place, unit)


def check_drawer_width(
    front: PlacedFront,
    carcass: Carcass,
    record: SlideRecord,
    width: float,
    drawer_side: float,
    unit: Unit,
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
            f"{format_length(carcass.opening, unit)} between the sides leave a drawer box "
            f"{format_length(max(0.0, width), unit)} wide outside; less than "
            f"{format_length(LEAST_INSIDE, unit)} inside is not worth building",
            'make the box wider, or the front a pullout on a kit: fixing = "kit"',
            (f"{front.id}-BOX",),
        )
        return
    given = front.spec.drawer_box.drawer_width is not None
    if miss > 0:
        yield error(
            "drawer-too-wide",
            front.id,
            f"a drawer box {format_length(width, unit)} wide with sides of "
            f"{format_length(drawer_side, unit)} is {format_length(miss, unit)} too wide for "
            f"slide '{record.name}'; at most {format_length(width - miss, unit)}",
            "measure the drawer sides, then build it narrower",
            (f"{front.id}-BOX",),
        )
        return
    if miss < 0 and given:
        yield warning(
            "drawer-too-narrow",
            front.id,
            f"a drawer box {format_length(width, unit)} wide is {format_length(-miss, unit)} "
            f"too narrow for slide '{record.name}'; {format_length(nominal, unit)} wanted",
            "pack the slides out, or build it wider",
            (f"{front.id}-BOX",),
        )
        return


def check_drawer_height(
    front: PlacedFront, space: DrawerSpace, place: DrawerPlace, unit: Unit, units: Unit
) -> Iterator[Problem]:
    """Find a drawer box that is too low to build, higher than its room, or than its front.

    A drawer box given higher than its own front only shows above it. Each millimetre more of front
    is one more of room, whether the drawer below sinks by it or the front above rises.
    """
    room = format_length(max(0.0, place.greatest), unit)
    if place.too_low:
        stated = (
            f" and it would be {format_length(place.height, unit)}" if place.height > SLACK else ""
        )
        least = least_height(units)
        front_least = _rounded_up(front.height + least - place.greatest - place.moved, units)
        shelf = space.shelf_above
        if place.greatest > least - SLACK:
            remedy = f"give drawer_height at least {format_length(LEAST_HEIGHT, unit)}, or none"
        elif shelf is not None and shelf - CLEAR_OF_RAIL - place.bottom < least - SLACK:
            remedy = "move the shelf above it, or make it a false front"
        else:
            remedy = (
                f"give its front at least {format_length(front_least, unit)}, or make it a false "
                "front"
            )
        yield error(
            "drawer-too-low",
            front.id,
            f"there is room for a drawer box {room} high{stated}; less than "
            f"{format_length(LEAST_HEIGHT, unit)} is not worth building",
            remedy,
            (f"{front.id}-BOX",),
        )
        return
    if place.too_high:
        yield error(
            "drawer-too-high",
            front.id,
            f"a drawer box {format_length(place.height, unit)} high strikes {_struck(place)}: "
            f"there is room for {room}",
            "give a smaller drawer_height, or none",
            (f"{front.id}-BOX",),
        )
        return
    above = place.rise + place.height - front.height
    if front.spec.drawer_box.drawer_height is not None and above > SLACK:
        yield warning(
            "drawer-above-front",
            front.id,
            f"a drawer box {format_length(place.height, unit)} high stands "
            f"{format_length(above, unit)} above its own front's top edge",
            "give a smaller drawer_height, unless it is meant so",
            (f"{front.id}-BOX",),
        )
        return


def _rounded_up(height: float, units: Unit) -> float:
    """Give a height rounded up to 1/16 in or 0.1 mm, so that what is printed is enough; mm."""
    step = MM_PER_INCH / 16 if units == "in" else 0.1
    return math.ceil(height / step - SLACK) * step


def check_drawer_shelves(
    front: PlacedFront, space: DrawerSpace, place: DrawerPlace, unit: Unit
) -> Iterator[Problem]:
    """Find a fixed shelf, or another column's board, where a drawer's slides or its box run.

    It stands at or below the slides' floor line (side mount: the drawer's underside), or leaves
    a drawer box above that line its least height and the room over it (derived).
    """
    under = into_shelf(space, place.bottom)
    above = space.shelf_above
    if under:
        line = place.bottom - rise_above_floor_line(space.record)
        what = "the floor line of its slides" if line < place.bottom - SLACK else "its drawer box"
        text = (
            f"a fixed shelf stands where its slides run: {what} is "
            f"{format_length(line, unit)} above the side's bottom end, the shelf's upper face "
            f"{format_length(under, unit)} higher"
        )
        remedy = f"move the shelf: its upper face at {format_length(line, unit)} or lower"
    elif above is not None and above - CLEAR_OF_RAIL - place.bottom < LEAST_HEIGHT - SLACK:
        text = (
            f"a fixed shelf's underside is {format_length(above, unit)} above the side's bottom "
            f"end, {format_length(above - place.bottom, unit)} above its drawer box's underside"
        )
        least = place.bottom + LEAST_HEIGHT + CLEAR_OF_RAIL
        remedy = f"move the shelf: its underside at {format_length(least, unit)} or higher"
    else:
        return
    yield error("drawer-into-shelf", front.id, text, remedy, (f"{front.id}-BOX",))


def _struck(place: DrawerPlace) -> str:
    """Name what a drawer box that is too high strikes."""
    if place.greatest < place.room - SLACK:
        return "the front above it when it is pulled out"
    return "what is above it"


def check_drawer_clearance(
    front: PlacedFront, carcass: Carcass, record: SlideRecord, place: DrawerPlace, unit: Unit
) -> Iterator[Problem]:
    """Find a lowest drawer that stands too near to the bottom panel, or whose undermount slide
    does not lie on it."""
    rise = place.bottom - carcass.floor
    least = record.least_rise
    if record.mount == "side":
        # The half millimetre that the grid may take does not count.
        rise, least = rise - min(0.0, place.moved), UNDER_SIDE_MOUNT
    if rise >= least - SLACK:
        yield from _off_panel(front, carcass, record, place, unit)
        return
    unit = telling_unit(unit, rise, least)
    yield warning(
        "drawer-clearance",
        front.id,
        f"{format_length(rise, unit)} under the drawer; slide '{record.name}' needs "
        f"{format_length(least, unit)}",
        "set the slide higher, and its drawer_rise with it",
        carcass.boards,
    )


def _off_panel(
    front: PlacedFront, carcass: Carcass, record: SlideRecord, place: DrawerPlace, unit: Unit
) -> Iterator[Problem]:
    off = place.bottom - carcass.floor - record.drawer_rise
    if record.mount != "under" or abs(off) <= GRID_SLACK + SLACK:
        return
    where = "above" if off > 0 else "below"
    yield warning(
        "drawer-off-panel",
        front.id,
        f"its slide '{record.name}' stands {format_length(abs(off), unit)} {where} the bottom "
        "panel, where the lowest one lies on it",
        "pack it up by as much" if off > 0 else "check the bottom reveal and drawer_rise",
        carcass.boards,
    )
