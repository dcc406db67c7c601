"""How many hinges a door needs, and where they stand: one answer for every door.

Their number goes by its height, its weight and its width. The limits are common practice of the
trade and vary by maker; published ones of 1000 mm for two hinges and of 6.8, 13.6, 20.4 and 27.2 kg
are met too. Both tables are data, so that another pair can be given.

>>> count_hinges(width=454.0, height=771.5, mass=4.5)
2

All heights are counted from the bottom end of the box side, so that the plates of a side and the
cups of its door are set out from one end. The lowest hinge and the highest are placed first, the
others in equal steps between them; each takes the nearest free place of the 32 mm grid, or, where
none is free, the nearest free whole millimetre. Every limit below is common practice of the
trade, no source.

>>> placed = place_hinges(Door(bottom=1.6, height=771.5, count=2), grid=19.35,
...                       panels=((0, 18.3), (774.7 - 18.3, 774.7)))
>>> [round(height, 2) for height in placed.heights]
[99.35, 675.35]
"""

from collections.abc import Iterator, Sequence
from math import hypot
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.given.job import FrontMaterial
from jigs.ground.geometry import SLACK
from jigs.ground.grid import PITCH, centres_agree, hinge_place, nearest_place

CountTable = tuple[tuple[float, int], ...]
"""Rows of an upper limit and the number of hinges up to it."""

BY_HEIGHT: CountTable = ((900.0, 2), (1500.0, 3), (2000.0, 4), (2400.0, 5))
"""Door height up to, mm, and hinges (common practice, no source)."""
BY_MASS: CountTable = ((6.0, 2), (12.0, 3), (17.0, 4), (22.0, 5))
"""Door mass up to, kg, and hinges (common practice, no source)."""
MOST = 6
"""Hinges of a door beyond both tables; it comes with a warning (common practice)."""
WIDE = 600.0
"""A door wider than this, mm, gets one hinge more (common practice) ..."""
WIDE_FROM_HEIGHT = 400.0
"""... if it is at least this high, mm."""
DENSITIES: dict[FrontMaterial, float] = {
    "mdf": 750.0, "hardwood": 720.0, "softwood": 500.0, "plywood": 650.0,
}  # fmt: skip
"""Densities in kg/m3, used where the job states none (MDF: common practice; the others: from
memory, on the heavy side of the kinds sold for fronts)."""


class HingeTables(Struct, frozen=True, kw_only=True):
    """The two tables that decide how many hinges a door gets."""

    by_height: CountTable = BY_HEIGHT
    by_mass: CountTable = BY_MASS


COMMON_TABLES = HingeTables()


def compute_mass(width: float, height: float, thickness: float, density: float) -> float:
    """Give the mass of a slab front in kg; lengths in mm, density in kg/m3."""
    return width * height * thickness * 1e-9 * density


def look_up(table: CountTable, value: float) -> int | None:
    """Give the number of the first row that reaches `value`; None beyond the table."""
    return next((count for limit, count in table if value <= limit + SLACK), None)


def beyond_tables(height: float, mass: float, tables: HingeTables = COMMON_TABLES) -> bool:
    """Tell whether a door is higher or heavier than the tables reach."""
    return look_up(tables.by_height, height) is None or look_up(tables.by_mass, mass) is None


def count_hinges(
    *, width: float, height: float, mass: float, tables: HingeTables = COMMON_TABLES
) -> int:
    """Give the number of hinges: the larger of the two tables, one more for a wide door.

    mm and kg. Beyond either table it is 6, and the door deserves a warning.
    """
    by_height = look_up(tables.by_height, height)
    by_mass = look_up(tables.by_mass, mass)
    if by_height is None or by_mass is None:
        return MOST
    wide = width > WIDE + SLACK and height >= WIDE_FROM_HEIGHT - SLACK
    return max(by_height, by_mass) + (1 if wide else 0)


FROM_PANEL = 35.0
"""A hinge's height from the inner face of bottom, top, rail and fixed shelf; mm."""
FROM_END = 35.0
"""A hinge's height from either end of its door; mm."""
BETWEEN = 64.0
"""Between two hinges of one door; mm."""
OUTER_WINDOW = 30.0
"""How far the lowest and the highest hinge may stand from their targets; mm."""
INNER_WINDOW = 48.0
"""How far the others may; mm."""
SHORT_SPREAD = 150.0
"""Outer hinges nearer to each other than this deserve a warning; mm."""
END_RANGE = (55.0, 100.0)
"""The outer targets lie (H - 160) / 2 from the door's ends, kept within this; mm."""
TIE = 2 * SLACK * PITCH
"""Two grid places whose distances differ by no more than this are a tie; mm."""


class Door(Struct, frozen=True, kw_only=True):
    """What a door asks of its side: its bottom edge above the side's bottom end, its height, and
    its number of hinges; `plate_line` (x) and `plate_spacing` of the holes it brings. mm."""

    bottom: float
    height: float
    count: int
    plate_line: float = 37.0
    plate_spacing: float = 32.0


class HingeHeights(Struct, frozen=True, kw_only=True):
    """The heights found, from the bottom up, from the side's bottom end; mm.

    `off_grid` lists those that found no free place on the grid that was wanted. `no_room`: at
    least one hinge found no place at all, and there are no heights. `proposed`: heights that the
    person may choose then, the outer hinges set past the rail or shelf that is in their way.
    """

    heights: tuple[float, ...]
    off_grid: tuple[float, ...] = ()
    no_room: bool = False
    proposed: tuple[float, ...] = ()


Obstacle = Literal["panel", "hinge", "hole"]
"""What a hinge stands against: a panel, a rail or its door's end; another hinge; a hole."""


class Against(Struct, frozen=True, kw_only=True):
    """A height given by hand, from the side's bottom end in mm, and what stands in its way."""

    height: float
    obstacle: Obstacle


def end_distance(height: float) -> float:
    """Give the outer hinges' target from the ends of a door, mm: 100 from a height of 360 up."""
    return min(max((height - 160.0) / 2, END_RANGE[0]), END_RANGE[1])


def is_free(
    height: float,
    door: Door,
    *,
    panels: Sequence[tuple[float, float]],
    holes: Sequence[tuple[float, float]],
    placed: Sequence[float],
) -> bool:
    """Tell whether a hinge may stand at `height`.

    35 from each of `panels` (its lower and upper face) and from the door's ends, 64 from the
    hinges already `placed`; both plate holes coincide with or keep 12.5 from each of the side's
    `holes` (x, y).
    """
    if any(low - FROM_PANEL + SLACK < height < high + FROM_PANEL - SLACK for low, high in panels):
        return False
    if height - door.bottom < FROM_END - SLACK:
        return False
    if door.bottom + door.height - height < FROM_END - SLACK:
        return False
    if any(abs(height - other) < BETWEEN - SLACK for other in placed):
        return False
    half = door.plate_spacing / 2
    return all(
        centres_agree(hypot(x - door.plate_line, y - plate))
        for plate in (height - half, height + half)
        for x, y in holes
    )


def find_against(
    heights: Sequence[float],
    door: Door,
    *,
    panels: Sequence[tuple[float, float]],
    holes: Sequence[tuple[float, float]],
) -> tuple[Against, ...]:
    """Give those of a door's heights that break the rule for places, and what each meets first."""
    found: list[Against] = []
    for index, height in enumerate(heights):
        others = [*heights[:index], *heights[index + 1 :]]
        obstacle: Obstacle
        if not is_free(height, door, panels=panels, holes=(), placed=()):
            obstacle = "panel"
        elif not is_free(height, door, panels=(), holes=(), placed=others):
            obstacle = "hinge"
        elif not is_free(height, door, panels=(), holes=holes, placed=()):
            obstacle = "hole"
        else:
            continue
        found.append(Against(height=height, obstacle=obstacle))
    return tuple(found)


def place_hinges(
    door: Door,
    *,
    grid: float | None,
    panels: Sequence[tuple[float, float]] = (),
    holes: Sequence[tuple[float, float]] = (),
) -> HingeHeights:
    """Place the hinges of a door on its side.

    `grid` is the first hole's height, None where plates need not keep to the grid; `panels`
    the lower and upper faces of bottom, top, rail and fixed shelves, `holes` the places (x, y) of
    the holes that the side's face already has. All in mm from the bottom end.
    """
    end = end_distance(door.height)
    targets = (door.bottom + end, door.bottom + door.height - end)
    placing = _place(door, targets, grid, panels, holes)
    if not placing.no_room:
        return placing
    low, high = targets
    beyond = (clear_of_panels(low, panels, 1), clear_of_panels(high, panels, -1))
    return replace(placing, proposed=_place(door, beyond, grid, panels, holes).heights)


def _place(
    door: Door,
    targets: tuple[float, float],
    grid: float | None,
    panels: Sequence[tuple[float, float]],
    holes: Sequence[tuple[float, float]],
) -> HingeHeights:
    """Place the outer hinges by their targets, then the others between them."""
    placed: list[float] = []
    off_grid: list[float] = []

    def take(target: float, window: float) -> bool:
        def free(height: float) -> bool:
            return is_free(height, door, panels=panels, holes=holes, placed=placed)

        if grid is not None:
            for height in _grid_places(grid, target, window):
                if free(height):
                    placed.append(height)
                    return True
        for height in _whole_steps(target, window):
            if free(height):
                placed.append(height)
                if grid is not None:
                    off_grid.append(height)
                return True
        return False

    if not all(take(target, OUTER_WINDOW) for target in targets):
        return HingeHeights(heights=(), no_room=True)
    lowest, highest = placed
    for number in range(1, door.count - 1):
        target = lowest + (highest - lowest) * number / (door.count - 1)
        if not take(target, INNER_WINDOW):
            return HingeHeights(heights=(), no_room=True)
    return HingeHeights(heights=tuple(sorted(placed)), off_grid=tuple(sorted(off_grid)))


def clear_of_panels(target: float, panels: Sequence[tuple[float, float]], inward: int) -> float:
    """Give an outer hinge's target beyond the panels and rails that it falls on, towards the
    door's middle: `inward` is 1 upwards, -1 downwards; mm."""
    for low, high in sorted(panels, reverse=inward < 0):
        if low - FROM_PANEL + SLACK < target < high + FROM_PANEL - SLACK:
            target = high + FROM_PANEL if inward > 0 else low - FROM_PANEL
    return target


def _grid_places(grid: float, target: float, window: float) -> Iterator[float]:
    """Yield the grid's hinge places within `window` of `target`, nearest first, a tie up."""
    nearest = nearest_place(grid, target)
    reach = int(window / PITCH) + 1
    places = [hinge_place(grid, nearest + step) for step in range(-reach, reach + 1)]
    places = [place for place in places if abs(place - target) <= window + SLACK]

    def rank(place: float) -> tuple[float, float]:
        return abs(place - target) - (TIE if place > target else 0.0), -place

    yield from sorted(places, key=rank)


def _whole_steps(target: float, window: float) -> Iterator[float]:
    """Yield the target, then whole millimetres from it, up before down, within `window`."""
    yield target
    for step in range(1, int(window + SLACK) + 1):
        yield target + step
        yield target - step
