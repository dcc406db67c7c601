"""The drawers of a box planned: each drawer box's size and place, and its slides' hole line."""

from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.carcass import Carcass
from jigs.box.columns import THROUGH, reveal_under
from jigs.box.drawerbox import DrawerBox
from jigs.box.drawers import (
    BOTTOM_RISE,
    CLEAR_OF_DRAWER,
    CLEAR_OF_RAIL,
    DrawerPlace,
    DrawerSpace,
    choose_height,
    place_drawers,
)
from jigs.box.fronts import FrontStack, PlacedFront
from jigs.fittings.fixing import HIGH_FRONT, LEAST_RAIL, ONE_ROW_BELOW, Backing
from jigs.fittings.slide import (
    drawer_length,
    hook_fittings,
    outside_width,
    recess_and_notch,
    rise_above_front,
)
from jigs.given.hardware import SlideRecord
from jigs.given.job import Job
from jigs.ground.geometry import SLACK


class DrawerPlan(Struct, frozen=True, kw_only=True):
    """One drawer planned: the room it has, its place there, its drawer box (no holes yet)."""

    space: DrawerSpace
    place: DrawerPlace
    drawer: DrawerBox

    @property
    def record(self) -> SlideRecord:
        """The slide it runs on."""
        return self.space.record

    @property
    def backing(self) -> Backing:
        """The drawer box as what its front is screwed to."""
        box = self.drawer
        return Backing(
            x=box.x, y=box.y, width=box.width, height=box.height, side=box.side, floor=box.floor
        )


def plan_drawers(
    column: FrontStack,
    carcass: Carcass,
    job: Job,
    *,
    records: Mapping[str, SlideRecord],
    start: float,
) -> dict[str, DrawerPlan]:
    """Plan the drawers of a column, by front ID; `records` holds those that run on slides.

    `start` is the height of the first grid hole.
    """
    fronts = [front for front in reversed(column.fronts) if front.id in records]
    if not fronts:
        return {}
    reveal = reveal_under(column.fronts[-1], carcass.side, job.reveal)
    spaces = [_space_of(front, column, carcass, records=records, reveal=reveal) for front in fronts]
    places = place_drawers(
        spaces,
        side=carcass.side,
        reveal_bottom=reveal,
        units=job.units,
        start=start,
        on_grid=job.grid.slides,
        legs=carcass.box.legs,
    )
    return {
        front.id: _plan(front, carcass, job, space=space, place=place)
        for front, space, place in zip(fronts, spaces, places, strict=True)
    }


def _space_of(
    front: PlacedFront,
    column: FrontStack,
    carcass: Carcass,
    *,
    records: Mapping[str, SlideRecord],
    reveal: float,
) -> DrawerSpace:
    """Give the room that a drawer has in its column; `reveal` below the lowest front, mm."""
    record = records[front.id]
    rise = rise_above_front(record, side=carcass.side, reveal_bottom=reveal)
    above = next((other for other in column.fronts if other.place.row == front.place.row - 1), None)
    ceiling = None
    if above is None:
        ceiling = carcass.ceiling
    elif above.id not in records:
        ceiling = _ceiling_under(front, above, rise, carcass)
    underside = front.place.y + rise
    return DrawerSpace(
        record=record,
        front_bottom=front.place.y,
        front_top=front.top,
        ceiling=ceiling,
        shelf_above=min((low for low, _ in carcass.shelves if low > underside), default=None),
        shelf_below=max((high for low, high in carcass.shelves if low <= underside), default=None),
        front_above=None if above is None or above.kind == "opening" else above.place.y,
        height=front.spec.drawer_box.drawer_height,
    )


def _plan(
    front: PlacedFront, carcass: Carcass, job: Job, *, space: DrawerSpace, place: DrawerPlace
) -> DrawerPlan:
    """Give the drawer box that stands at a place behind its front."""
    record = space.record
    side, width = job.material.drawer_side, front.spec.drawer_box.drawer_width
    if width is None:
        width = outside_width(record, carcass.opening, side, job.units)
    recess, notch = recess_and_notch(record)
    drawer = DrawerBox(
        id=f"{front.id}-BOX",
        front=front.id,
        box=carcass.box.id,
        width=width,
        height=place.height,
        length=drawer_length(record),
        side=side,
        x=carcass.middle - width / 2 - front.place.x,
        y=place.rise,
        code="",
        recess=recess,
        floor=(recess or BOTTOM_RISE) + job.build.drawer_bottom,
        notch=notch,
        slide=record.name,
        slide_length=record.length,
        rear=hook_fittings(record, part=front.id, width=width, height=place.height, side=side),
        maker_bored=job.build.drawer_bored,
    )
    return DrawerPlan(space=space, place=place, drawer=drawer)


def false_backing(front: PlacedFront, carcass: Carcass, job: Job, record: SlideRecord) -> Backing:
    """Give what a false front is screwed to, in the columns of a drawer's screws.

    The rail behind it, where that is high enough for both rows and the front not so high that it
    would hang from it alone; else blocks, where the drawer box of such a drawer would stand, or
    all over its height where that were too low for two rows.
    """
    rise = rise_above_front(
        record,
        side=carcass.side,
        reveal_bottom=carcass.side + job.reveal.inset
        if front.place.overlay == "inset"
        else job.reveal.bottom,
    )
    width = outside_width(record, carcass.opening, job.material.drawer_side, job.units)
    place = Backing(
        x=carcass.middle - width / 2 - front.place.x,
        y=0.0,
        width=width,
        height=front.height,
        side=job.material.drawer_side,
    )
    if carcass.rail is not None and front.height <= HIGH_FRONT + SLACK:
        low, high = max(carcass.rail[0], front.place.y), min(carcass.rail[1], front.top)
        if high - low >= LEAST_RAIL - SLACK:
            return replace(place, y=low - front.place.y, height=high - low)
    top = min(carcass.flat_ceiling, front.place.y + _room_top(front, rise))
    height = choose_height(top - CLEAR_OF_RAIL - front.place.y - rise, job.units)
    return place if height < ONE_ROW_BELOW else replace(place, y=rise, height=height)


def _ceiling_under(front: PlacedFront, above: PlacedFront, rise: float, carcass: Carcass) -> float:
    """Give the ceiling of a drawer under a front that is no drawer.

    An opening stands on a fixed shelf of the sides' board, level with its bottom edge, and so
    does what stands across other columns than the drawer. What stands behind another front is
    not known: the drawer gets the room it would have under another drawer. Common practice.
    """
    divider = above.place.span != front.place.span and (
        front.place.span > 1 or above.kind in THROUGH
    )
    if above.kind == "opening" or divider:
        return min(carcass.ceiling, above.place.y - carcass.side)
    return min(carcass.ceiling, above.place.y + rise - CLEAR_OF_DRAWER + CLEAR_OF_RAIL)


def _room_top(front: PlacedFront, rise: float) -> float:
    return front.height + front.gaps.top + rise - CLEAR_OF_DRAWER + CLEAR_OF_RAIL
