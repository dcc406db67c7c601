"""Drawer slides: where their holes stand on the box side, the drawer box that fits them, the hooks
at its back, and the load it is reckoned to carry.

Two numbers, measured with the slide set on a flat board, give every height: `fixing_height`
(a), the fixing hole above the floor line, and `drawer_rise` (b), the underside of the drawer
side above it. The lowest drawer stands on the bottom panel, and every drawer box stands equally
far above its own front's bottom edge, so one fixing layout serves all fronts.

The golden box, side 18.3, bottom reveal 1.6, a 33, b 14:

>>> runner = SlideRecord(name="runner", fixing_height=33.0, drawer_rise=14.0)
>>> rise = rise_above_front(runner, side=18.3, reveal_bottom=1.6)
>>> round(rise, 4), round(1.6 + rise + hole_above_drawer(runner), 4)
(30.7, 51.3)

At each end of the back, inside the drawer side, a hook of an undermount slide enters it above the
notch in which the slide lies. Where they stand says the slide's leaflet; a record without its
numbers has none. The places are given in the axes of the back: x from its left end as seen from the
room, y from the drawer box's underside.

>>> runner = SlideRecord(name="runner", hook_diameter=6.0, hook_depth=10.0, hook_height=24.0,
...                      hook_inset=8.0)
>>> [(round(hole.x, 1), hole.y) for fitting in hook_fittings(runner, part="B1-1", width=409.6,
...  height=101.6, side=15.9) for hole in fitting.holes]
[(23.9, 24.0), (385.7, 24.0)]

A drawer is reckoned to carry its area at 15 lb/ft2, without the box itself; 30 x 21 in are 4.375
square feet, 66 lb:

>>> load = expected_load(30 * 25.4, 21 * 25.4)
>>> round(load, 1), round(load / KG_PER_POUND)
(29.8, 66)
"""

from jigs.given.hardware import SlideRecord
from jigs.ground.geometry import SLACK, Fitting, Hole, Polygon, mirror_x, rectangle, round_down
from jigs.ground.lengths import MM_PER_INCH, Unit

SIDE_LEAST = 12.7
"""A side-mount slide needs at least this on each side; mm. Common practice, no source."""

SLIDE_SET_BACK = 2.0
"""The slide's front end behind the finished front edge; mm. From memory: for the outline only."""

WIDTH_STEP: dict[Unit, float] = {"in": MM_PER_INCH / 16, "mm": 1.0}
"""What a drawer box's outside width rounds down to; mm. Common practice, no source."""


def opening_width(box_width: float, side: float) -> float:
    """Give the opening between the sides (LW) from the box's width and true side thickness; mm."""
    return box_width - 2 * side


def depth_needed(record: SlideRecord) -> float:
    """Give the least inside depth that takes the slide; mm."""
    return record.length + record.depth_allowance


def depth_short(record: SlideRecord, inside: float) -> float:
    """Give by how much the slide is too long for the inside depth, 0 where it fits; mm."""
    short = depth_needed(record) - inside
    return short if short > SLACK else 0.0


def drawer_length(record: SlideRecord) -> float:
    """Give the drawer box's length for the slide; mm."""
    return record.length - record.drawer_shorter


def recess_and_notch(record: SlideRecord) -> tuple[float, tuple[float, float] | None]:
    """Give the recess under a drawer's bottom panel, and width and height of the notches in its
    back, that its slides ask for; mm. A side mount asks for neither.

    A notch is as high as the recess, and 35 to 38 wide (common practice, no source), unless the
    record says otherwise.
    """
    if record.mount == "side":
        return 0.0, None
    high = record.recess if record.notch_height is None else record.notch_height
    return record.recess, (record.notch_width, high)


def nominal_outside(record: SlideRecord, opening: float, drawer_side: float) -> float:
    """Give the drawer box's outside width before rounding; mm.

    Undermount: the width inside the drawer sides governs, so their thickness is measured.
    Side mount: the outside width governs.
    """
    if record.mount == "under":
        return opening - record.width_less + 2 * drawer_side
    return opening - record.width_less


def outside_width(record: SlideRecord, opening: float, drawer_side: float, units: Unit) -> float:
    """Give the drawer box's outside width to build, rounded down to 1/16 in or 1 mm; mm."""
    return round_down(nominal_outside(record, opening, drawer_side), WIDTH_STEP[units])


def width_error(record: SlideRecord, opening: float, drawer_side: float, width: float) -> float:
    """Give by how much a drawer box of this outside width leaves what the slide takes; mm.

    Above 0 too wide, below 0 too narrow, 0 within the slide's limits.
    """
    over = width - nominal_outside(record, opening, drawer_side)
    most = max(0.0, record.width_less - 2 * SIDE_LEAST) if record.mount == "side" else 0.0
    if over > most + SLACK:
        return over - most
    if over < -record.width_tolerance - SLACK:
        return over + record.width_tolerance
    return 0.0


def rise_above_front(record: SlideRecord, *, side: float, reveal_bottom: float) -> float:
    """Give d_fb, the drawer box's underside above its own front's bottom edge; mm.

    `side` is the bottom panel's thickness, the same board as the sides.
    """
    return side + record.drawer_rise - reveal_bottom


def rise_above_floor_line(record: SlideRecord) -> float:
    """Give how far the drawer's underside stands above what its slides stand on; mm.

    Undermount: b. A side mount hangs beside the drawer, and nothing of it stands lower.
    """
    return record.drawer_rise if record.mount == "under" else 0.0


def hole_above_drawer(record: SlideRecord) -> float:
    """Give the fixing holes' line above the drawer box's underside; mm.

    Undermount: a - b. Side mount: the centre line that both members share.
    """
    if record.mount == "side":
        return record.centre_height
    return record.fixing_height - record.drawer_rise


def slide_fitting(
    record: SlideRecord,
    y_hole: float,
    *,
    part: str,
    index: int = 1,
    count: int = 1,
    set_back: float = 0.0,
    spacer: float = 0.0,
) -> Fitting:
    """Give a slide's holes in a box side, on the line `y_hole` above its bottom end; mm.

    An inset front sets the whole slide back by its thickness, `set_back`; that of a
    rollout may sit on a `spacer`.

    A slide too short for a place of its record does not have that hole. The outline is the
    slide itself: an undermount stands on the floor line, a side mount about its centre line.
    """
    holes = tuple(
        Hole(
            purpose="slide",
            face="inside",
            x=x + set_back,
            y=y_hole,
            diameter=record.fixing_diameter,
            depth=record.fixing_depth,
        )
        for x in record.fixing_at
        if x <= record.length + SLACK
    )
    below = record.end_height / 2
    if record.mount == "under" and record.fixing_height <= record.end_height:
        below = record.fixing_height
    return Fitting(
        kind="slide",
        index=index,
        count=count,
        part=part,
        record=record.name,
        holes=holes,
        outline=(
            rectangle(
                SLIDE_SET_BACK + set_back,
                y_hole - below,
                SLIDE_SET_BACK + set_back + record.length,
                y_hole - below + record.end_height,
            ),
        ),
        carry=tuple(x + set_back for x in record.carry_at if x <= record.length + SLACK),
        spacer=spacer,
    )


def hook_fittings(
    record: SlideRecord, *, part: str, width: float, height: float, side: float
) -> tuple[Fitting, ...]:
    """Give the left and the right hook's hole in the back of a drawer box of this outside width
    and height, whose boards are `side` thick; mm. () where the record says nothing of hooks.

    A hole as deep as the back goes right through. The outlines are the end of the drawer side
    and the notch beside it.
    """
    if record.hook_diameter is None or record.hook_height is None or record.hook_inset is None:
        return ()
    deep = record.hook_depth
    _, notch = recess_and_notch(record)
    left = (
        rectangle(0.0, 0.0, side, height),
        *((rectangle(side, 0.0, side + notch[0], notch[1]),) if notch else ()),
    )
    right: tuple[Polygon, ...] = tuple(
        tuple((mirror_x(x, width), y) for x, y in polygon) for polygon in left
    )
    x = side + record.hook_inset
    return tuple(
        Fitting(
            kind="hook",
            index=index,
            count=2,
            part=part,
            record=record.name,
            holes=(
                Hole(
                    purpose="hook",
                    face="box-back",
                    x=at,
                    y=record.hook_height,
                    diameter=record.hook_diameter,
                    depth=None if deep is None or deep >= side - SLACK else deep,
                ),
            ),
            outline=outline,
        )
        for index, (at, outline) in enumerate(((x, left), (mirror_x(x, width), right)), start=1)
    )


KG_PER_POUND = 0.45359237
"""Exact by definition."""

DRAWER_LOAD = 15 * KG_PER_POUND / 304.8**2
"""What a drawer is to bear on its area; kg/mm2 (KCMA A161.1, second hand: 15 lb/ft2)."""


def expected_load(width: float, length: float) -> float:
    """Give what a drawer box of this outside width and length (mm) is reckoned to carry; kg."""
    return width * length * DRAWER_LOAD
