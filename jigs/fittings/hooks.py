"""Rear hooks: the holes in a drawer box's back that hold an undermount slide's rear ends.

At each end, inside the drawer side, a hook of the slide enters the back above the notch in which
the slide lies. Where they stand says the slide's leaflet; a record without its numbers has none.
The places are given in the axes of the back: x from its left end as seen from the room, y from
the drawer box's underside.

>>> from jigs.given.hardware import SlideRecord
>>> runner = SlideRecord(name="runner", hook_diameter=6.0, hook_depth=10.0, hook_height=24.0,
...                      hook_inset=8.0)
>>> [(round(hole.x, 1), hole.y) for fitting in hook_fittings(runner, part="B1-1", width=409.6,
...  height=101.6, side=15.9) for hole in fitting.holes]
[(23.9, 24.0), (385.7, 24.0)]
"""

from jigs.fittings.slide import recess_and_notch
from jigs.given.hardware import SlideRecord
from jigs.ground.geometry import SLACK, Fitting, Hole, Polygon, mirror_x, rectangle

HOOK_KEYS = ("hook_diameter", "hook_depth", "hook_height", "hook_inset")
"""The numbers of a hook's hole; none of them says anything without the others."""


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
