"""What an elevation shows of the room itself: ceiling, counters, appliances, the floor's high
point, and the heights of all these in words.

A counter is drawn from its top to its underside, or as one line where its thickness is not known.
What is not built, as an appliance, stands dashed.
"""

from collections.abc import Iterator

from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length
from jigs.room.elevation import Elevation
from jigs.room.seen import SeenAppliance
from templates.elevations.elevationbox import Scale
from templates.page.marks import MEDIUM, Line, Mark, Outline, Text
from templates.page.typeface import shorten, text_width

_LARGE, _SMALL = 2.5, 1.8
_CLEAR = 0.8


def draw_room(elevation: Elevation, scale: Scale) -> Iterator[Mark]:
    """Draw the ceiling, the counters, the appliances and the floor's high point."""
    for appliance in elevation.appliances:
        yield from _draw_appliance(appliance, scale)
    spec = elevation.spec
    if spec is None:
        return
    left, _, right, _ = elevation.extent
    x1, x2 = scale.across(left), scale.across(right)
    if spec.ceiling is not None:
        y = scale.up(spec.ceiling)
        yield Line(x1=x1, y1=y, x2=x2, y2=y, width=MEDIUM, layer="ceiling")
    if spec.floor_high > SLACK:
        y = scale.up(spec.floor_high)
        yield Line(x1=x1, y1=y, x2=x2, y2=y, dash="dashed", layer="floor-high")
    if spec.counter is not None:
        under = spec.counter if spec.underside is None else spec.underside
        for start, end in elevation.counters():
            yield Outline(
                points=scale.area(start, under, end - start, spec.counter - under),
                width=MEDIUM,
                layer="counter",
            )


def room_notes(elevation: Elevation, unit: Unit) -> Iterator[str]:
    """Say the heights of ceiling, counter and floor; nothing where none is given."""
    spec = elevation.spec
    if spec is None:
        return
    said = []
    if spec.counter is not None:
        thick = spec.counter_thickness
        also = f", {format_length(thick, unit)} thick" if thick is not None else ""
        said.append(f"counter {format_length(spec.counter, unit)} high{also}")
    if spec.ceiling is not None:
        said.append(f"ceiling {format_length(spec.ceiling, unit)} high")
    if said:
        words = "; ".join(said)
        yield f"{words[0].upper()}{words[1:]}."
    if spec.floor_high > SLACK:
        yield (
            f"The floor's high point is {format_length(spec.floor_high, unit)} above the line "
            "that heights count from: set the boxes from there, shim the toe, never the fronts."
        )


def _draw_appliance(seen: SeenAppliance, scale: Scale) -> Iterator[Mark]:
    """Draw an appliance, its ID and what it is in its middle, as far as they find room."""
    place = scale.area(seen.x, seen.y, seen.width, seen.height)
    yield Outline(points=place, dash="dashed", layer="appliance", name=seen.id)
    (x0, y0), _, (x1, y1), _ = place
    room, middle = x1 - x0 - 2 * _CLEAR, (x0 + x1) / 2
    size = _LARGE if text_width(seen.id, _LARGE, True) <= room else _SMALL
    name = shorten(seen.id, size, True, room)
    if len(name) < 2 or y1 - y0 < size + 2 * _CLEAR:
        return
    words = shorten(seen.words, _SMALL, False, room)
    both = len(words) > 2 and y1 - y0 >= size + 2.0 * _SMALL + 2 * _CLEAR
    base = (y0 + y1) / 2 - (0.0 if both else size * 0.36)
    yield Text(x=middle, y=base, text=name, size=size, bold=True, anchor="middle", layer="id")
    if both:
        yield Text(
            x=middle, y=base - 1.5 * _SMALL, text=words, size=_SMALL, anchor="middle",
            layer="words",
        )  # fmt: skip
