"""A pull drawn in its two places: the corner of a door, and a drawer front; reduced. mm."""

from jigs.given.hardware import PullRecord
from jigs.ground.geometry import rectangle
from templates.page.dimensions import SCALES, across, frame, upward
from templates.page.marks import WIDE, Circle, Line, Mark, Outline, Text
from templates.words.hardwarewords import lettered

DRAWER_FRONT = (400.0, 140.0)
"""A drawer front that stands in, mm; wider for a long pull."""


def pull_corner(record: PullRecord, room: float) -> list[Mark]:
    """The upper corner of a door; (0, 0) is `room` mm below it, at the left."""
    span = (record.centers or 0.0) + record.door_corner
    scale = next(
        (s for s in SCALES if (span + 20.0) / s <= room and record.door_inset / s <= 75), SCALES[-1]
    )
    near, apart = record.door_corner / scale, (record.centers or 0.0) / scale
    edge, foot = 90.0, record.foot / scale
    x, dot = edge - record.door_inset / scale, record.hole_diameter / scale
    holes = [room - near] if record.centers is None else [room - near, room - near - apart]
    marks: list[Mark] = [
        Line(x1=0.0, y1=room, x2=edge, y2=room, width=WIDE),
        Line(x1=edge, y1=0.0, x2=edge, y2=room, width=WIDE),
        *(Circle(x=x, y=y, diameter=dot) for y in holes),
        Line(x1=x, y1=holes[-1] - foot / 2 - 4.0, x2=x, y2=room - 2.0, dash="axis"),
        *(Line(x1=x - foot, y1=y, x2=x + foot, y2=y) for y in holes),
        Outline(
            points=rectangle(
                x - foot / 2, holes[-1] - foot / 2, x + foot / 2, holes[0] + foot / 2
            ),
            dash="dashed",
        ),
        *across(x, edge, room + 8.0, lettered(record, "door_inset"), from1=room, from2=room,
                beside="left"),
        *upward(holes[0], room, edge + 12.0, lettered(record, "door_corner"),
                from1=x + foot, from2=edge),
        Text(x=0.0, y=-6.0, text=f"SCALE 1:{scale}"),
    ]  # fmt: skip
    if record.centers is not None:
        marks += upward(holes[1], holes[0], x - foot - 14.0, lettered(record, "centers"),
                        from1=x - foot, from2=x - foot)  # fmt: skip
    return marks


def pull_on_drawer(record: PullRecord) -> list[Mark]:
    """A drawer front from the room; (0, 0) is its lower left corner."""
    centers = record.centers or 0.0
    wide, high = max(DRAWER_FRONT[0], centers + 150.0), DRAWER_FRONT[1]
    scale = next((s for s in SCALES if wide / s <= 120.0 and high / s <= 32.0), SCALES[-1])
    down, words = {
        "center": (high / 2, "half"),
        "upper-third": (high / 3, "a third"),
    }.get(str(record.drawer), (0.0, ""))
    if isinstance(record.drawer, float):
        down, words = min(record.drawer, high - 10.0), f"{record.drawer:g}"
    w, h, y = wide / scale, high / scale, (high - down) / scale
    half, foot = centers / 2 / scale, record.foot / scale
    left, right = w / 2 - half, w / 2 + half
    marks: list[Mark] = [
        frame(0.0, 0.0, w, h),
        Line(x1=w / 2, y1=-3.0, x2=w / 2, y2=h + 3.0, dash="axis"),
        *(Circle(x=x, y=y, diameter=record.hole_diameter / scale) for x in {left, right}),
        *(Line(x1=x, y1=y - foot, x2=x, y2=y + foot) for x in {left, right}),
        Line(x1=left - foot, y1=y, x2=right + foot, y2=y, dash="axis"),
        frame(left - foot / 2, y - foot / 2, right + foot / 2, y + foot / 2, 0.18),
        *upward(y, h, w + 10.0, words, from1=right + foot, from2=w),
    ]  # fmt: skip
    if record.centers is not None:
        marks += across(
            left,
            right,
            h + 8.0,
            lettered(record, "centers"),
            from1=y + foot,
            from2=y + foot,
        )
    first = f"SCALE 1:{scale}."
    if not isinstance(record.drawer, float):
        first += f" {words.capitalize()}: of the front's height."
    two = f"From a width of {record.two_from:g} two, each a quarter of it from its end."
    return [
        *marks,
        Text(x=0.0, y=-6.5, text=f"{first} {two}"),
    ]
