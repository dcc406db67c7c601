"""The drawers of a column: how high each box stands, and how high it may be.

Every drawer box stands equally far above its own front's bottom edge; its height is what the
next drawer, stretcher or top above it leaves, and it stays below the bottom edge of the front
above it, which it would strike as it is pulled out. A gap wider than usual gives nothing more, or
the box would be seen above its own front: it ends 2 below where a front one usual gap of 3.2 above
its own would begin, so no more than 1.2 above its own front's top edge (derived). With the grid on
for slides a drawer is raised until its hole line meets the 32 mm grid, where that costs nothing.

The golden box's top drawer, over a door (a 33, b 14):

>>> from jigs.given.hardware import SlideRecord
>>> runner = SlideRecord(name="runner", fixing_height=33.0, drawer_rise=14.0)
>>> top = DrawerSpace(record=runner, front_bottom=619.1, front_top=771.5,
...                   ceiling=774.7 - 18.3)
>>> (place,) = place_drawers([top], side=18.3, reveal_bottom=1.6, units="in", start=19.35,
...                          on_grid=False)
>>> [round(y, 4) for y in (place.bottom, place.hole, place.greatest, place.height)]
[649.8, 668.8, 96.6, 88.9]
"""

import math
from collections.abc import Sequence

from msgspec import Struct

from jigs.fittings.slide import hole_above_drawer, rise_above_floor_line, rise_above_front
from jigs.given.hardware import SlideRecord
from jigs.ground.geometry import SLACK, round_down
from jigs.ground.grid import PITCH, hole_at_or_above
from jigs.ground.lengths import MM_PER_INCH, Unit

CLEAR_OF_DRAWER = 25.0
"""A drawer box's top to the next drawer's underside; mm. Common practice, no source."""

CLEAR_OF_FRONT = 2.0
"""A drawer box's top to the bottom edge of the front above it, under which it is pulled out; mm.
Common practice, no source."""

USUAL_GAP = 3.2
"""Between two fronts of a column; mm. Common practice, no source."""

ABOVE_FRONT = USUAL_GAP - CLEAR_OF_FRONT
"""How far a drawer box may stand above its own front's top edge at most; mm. Derived."""

CLEAR_OF_RAIL = 10.0
"""A drawer box's top to a stretcher, top or rail above it; mm. Common practice, no source."""

BOTTOM_RISE = 13.0
"""A drawer's bottom panel above its underside on side-mount slides; mm. Common practice."""

LEAST_HEIGHT = 50.0
"""A drawer box lower than this is not worth building; mm. Common practice, no source."""

LEAST_INSIDE = 50.0
"""A drawer box or rollout narrower inside than this is not worth building; mm. Common practice,
no source."""

GRID_SLACK = 0.5
"""A slide may drop this much to meet a grid hole: the accuracy asked of left to right; mm."""

HEIGHT_STEP: dict[Unit, float] = {"in": MM_PER_INCH / 2, "mm": 5.0}
"""What a drawer box's height rounds down to; mm. Common practice, no source."""


def choose_height(greatest: float, units: Unit) -> float:
    """Give the drawer box height to build, rounded down to 1/2 in or 5 mm, never below 0; mm."""
    return max(0.0, round_down(greatest, HEIGHT_STEP[units]))


def off_grid(y_hole: float, start: float) -> float:
    """Give how far a hole line lies above (below: negative) its nearest grid hole; mm."""
    steps = math.floor((y_hole - start) / PITCH + 0.5 + SLACK)
    return y_hole - (start + PITCH * max(0, steps))


def next_grid_hole(y_hole: float, start: float) -> float:
    """Give the first grid hole at or above the hole line less 0.5; mm."""
    return max(start, hole_at_or_above(start, y_hole - GRID_SLACK))


def least_height(units: Unit) -> float:
    """Give the lowest drawer box that is worth building in whole steps; mm.

    >>> least_height("mm"), round(least_height("in"), 1)
    (50.0, 50.8)
    """
    step = HEIGHT_STEP[units]
    return math.ceil(LEAST_HEIGHT / step - SLACK) * step


class DrawerSpace(Struct, frozen=True, kw_only=True):
    """One drawer of a column before it is placed; heights from the side's bottom end, mm.

    `front_bottom`, `front_top`: its front's lower and upper edge. `ceiling`: underside of the
    stretcher, top or rail next above it; None where that is the next drawer of the column.
    `shelf_above`: underside of the lowest fixed shelf above its underside; `shelf_below`: upper
    face of the highest other one; None where there is none. `front_above`: bottom edge of the
    front next above it, None where there is none. `height`: the drawer box's, where it is given.
    """

    record: SlideRecord
    front_bottom: float
    front_top: float
    ceiling: float | None = None
    shelf_above: float | None = None
    shelf_below: float | None = None
    front_above: float | None = None
    height: float | None = None


class DrawerPlace(Struct, frozen=True, kw_only=True):
    """One drawer placed; heights from the side's bottom end, mm.

    `bottom`: the drawer box's underside. `rise`: the same above its own front's bottom edge
    (d_fb). `hole`: the line of the slide's holes. `room`: the box height that the clearances
    leave; `greatest`: the one that also passes under the front above and, where none is given, is
    not seen above its own; `height`: the one given, or chosen. `moved`: how far the grid raised it.
    """

    bottom: float
    rise: float
    hole: float
    room: float
    greatest: float
    height: float
    moved: float = 0.0

    @property
    def too_low(self) -> bool:
        """Whether the drawer box is lower than 50."""
        return self.height < LEAST_HEIGHT - SLACK

    @property
    def too_high(self) -> float:
        """By how much a given height exceeds its room, 0 where it fits; mm."""
        over = self.height - self.greatest
        return over if over > SLACK else 0.0


def place_drawers(
    drawers: Sequence[DrawerSpace],
    *,
    side: float,
    reveal_bottom: float,
    units: Unit,
    start: float,
    on_grid: bool,
    legs: float = 0.0,
) -> tuple[DrawerPlace, ...]:
    """Place the drawers of one column, given and returned from the bottom up; mm.

    With `on_grid` each hole line goes to the first grid hole at or above it less 0.5, and the
    drawer with it, if that costs no clearance and no standard box height; otherwise it stays.
    The last drawer has a `ceiling`. `legs`: how far the bottom panel's underside stands above
    the side's end.
    """
    rises = [
        rise_above_front(drawer.record, side=side, reveal_bottom=reveal_bottom)
        for drawer in drawers
    ]
    natural = [drawer.front_bottom + rise for drawer, rise in zip(drawers, rises, strict=True)]
    bottoms = list(natural)
    wanted = [
        _first_given(drawer.height, choose_height(_greatest(drawers, bottoms, place), units))
        for place, drawer in enumerate(drawers)
    ]
    if on_grid:
        bottoms = _meet_grid(drawers, natural, wanted, floor=legs + side, start=start)
    places = []
    for place, drawer in enumerate(drawers):
        hole = bottoms[place] + hole_above_drawer(drawer.record)
        greatest = _greatest(drawers, bottoms, place)
        places.append(
            DrawerPlace(
                bottom=bottoms[place],
                rise=bottoms[place] - drawer.front_bottom,
                hole=hole,
                room=_room(drawers, bottoms, place),
                greatest=greatest,
                height=_first_given(drawer.height, choose_height(greatest, units)),
                moved=bottoms[place] - natural[place],
            )
        )
    return tuple(places)


def _meet_grid(
    drawers: Sequence[DrawerSpace],
    natural: Sequence[float],
    wanted: Sequence[float],
    *,
    floor: float,
    start: float,
) -> list[float]:
    """Give the drawers' undersides with all on the grid that lose nothing by it; mm."""
    bottoms = list(natural)
    # From the top, so that a raised drawer has already made room for the one below it.
    for place in reversed(range(len(drawers))):
        record = drawers[place].record
        hole = natural[place] + hole_above_drawer(record)
        trial = list(bottoms)
        trial[place] += next_grid_hole(hole, start) - hole
        sunk = natural[place] - trial[place]
        concerned = [place]
        if sunk > 0 and place > 0 and drawers[place - 1].ceiling is None:
            concerned.append(place - 1)
        on_panel = abs(natural[place] - floor - record.drawer_rise) < SLACK
        if on_panel and record.drawer_rise - sunk < record.least_rise - SLACK:
            continue
        if sunk > 0 and into_shelf(drawers[place], trial[place]):
            continue
        if all(wanted[each] <= _greatest(drawers, trial, each) + SLACK for each in concerned):
            bottoms = trial
    return bottoms


def _first_given(given: float | None, chosen: float) -> float:
    return chosen if given is None else given


def _greatest(drawers: Sequence[DrawerSpace], bottoms: Sequence[float], place: int) -> float:
    drawer, bottom = drawers[place], bottoms[place]
    greatest = _room(drawers, bottoms, place)
    if drawer.front_above is not None:
        greatest = min(greatest, drawer.front_above - CLEAR_OF_FRONT - bottom)
    if drawer.height is None:
        greatest = min(greatest, drawer.front_top + ABOVE_FRONT - bottom)
    return greatest


def into_shelf(drawer: DrawerSpace, bottom: float) -> float:
    """Give by how much the fixed shelf under a drawer stands above the floor line of its slides,
    the drawer's underside at `bottom`; 0 where it does not; mm.

    A side-mounted drawer has no floor line: the shelf stays below its underside (derived).
    """
    if drawer.shelf_below is None:
        return 0.0
    under = drawer.shelf_below - (bottom - rise_above_floor_line(drawer.record))
    return under if under > SLACK else 0.0


def _room(drawers: Sequence[DrawerSpace], bottoms: Sequence[float], place: int) -> float:
    drawer, bottom = drawers[place], bottoms[place]
    room = (
        bottoms[place + 1] - CLEAR_OF_DRAWER - bottom
        if drawer.ceiling is None
        else drawer.ceiling - CLEAR_OF_RAIL - bottom
    )
    if drawer.shelf_above is None:
        return room
    return min(room, drawer.shelf_above - CLEAR_OF_RAIL - bottom)
