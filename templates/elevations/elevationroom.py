"""What an elevation shows of the room itself: the ground that the boxes stand on and the walls at
both ends; ceiling, counters, appliances, the floor's high point, and the heights of all these in
words.

The floor is a wide line, hatched below; so is a wall, hatched behind. Round an inside corner the
next run of boxes stands: its line is drawn, not hatched. Toe platforms lie back in their shade. A
counter is drawn from its top to its underside, or as one line where its thickness is not known.
What is not built, as an appliance, stands dashed.
"""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from jigs.given.walls import NO_CORNER
from jigs.given.wallspec import EndKind
from jigs.ground.geometry import HANDS, SLACK
from jigs.ground.lengths import Unit, format_length
from jigs.room.elevation import SAME_LEVEL, Elevation
from jigs.room.seen import Seen, SeenAppliance
from templates.elevations.scale import Scale
from templates.page.dimensions import hatching
from templates.page.marks import MEDIUM, Line, Mark, Outline, Text
from templates.page.typeface import shorten, text_width

GROUND = 2.6
"""Width of the hatch, mm."""
BUILT = ("wall", "casing")
"""What is hatched at the end of a run."""
OFF = 4.0
"""From what is drawn to the first line beside it, mm."""

_LARGE, _SMALL = 2.5, 1.8
_CLEAR = 0.8


def end_width(stands: EndKind | None) -> float:
    """Give what is drawn beyond an end of a wall; mm."""
    return GROUND if stands in BUILT else 0.0


def draw_ground(elevation: Elevation, scale: Scale) -> Iterator[Mark]:
    """Draw the floor, the walls at its ends, and the toe platforms, set back."""
    left, _, right, top = elevation.extent
    floor, roof = scale.up(0.0), scale.up(top)
    ends: list[float] = []
    for stands, x, out in (
        (elevation.ends_at("left"), scale.across(left), -1.0),
        (elevation.ends_at("right"), scale.across(right), 1.0),
    ):
        ends.append(x if stands in BUILT else x + out * OFF / 2)
        if stands in BUILT or stands == "corner":
            yield Line(x1=x, y1=floor, x2=x, y2=roof, width=0.5, layer="wall")
        if stands in BUILT:
            outer = x + out * GROUND
            yield from _hatch(min(x, outer), floor - GROUND, max(x, outer), roof)
    yield Line(x1=ends[0], y1=floor, x2=ends[1], y2=floor, width=0.5, layer="floor")
    yield from _hatch(ends[0], floor - GROUND, ends[1], floor)
    for run in _runs([box for box in elevation.boxes if box.on_platform]):
        start, end = _toe_ends(run)
        high = min(elevation.floor_high, run[0].bottom)
        toe = scale.area(start, high, end - start, run[0].bottom - high)
        yield Outline(points=toe, layer="toe")
        y1 = scale.up(run[0].bottom)
        step = scale.up(high) + 0.8
        while step < y1 - 0.4:
            yield Line(
                x1=scale.across(start), y1=step, x2=scale.across(end), y2=step,
                layer="toe",
            )  # fmt: skip
            step += 0.8


def _toe_ends(run: Sequence[Seen]) -> tuple[float, float]:
    """Give from where to where a run's toe is seen: under the fillers beside its end boxes too."""
    start, end = run[0].x, run[-1].right
    fillers = [
        strip for seen in (run[0], run[-1]) for strip in seen.strips if strip.kind == "filler"
    ]
    for strip in fillers:
        if abs(strip.x + strip.width - run[0].x) < SLACK:
            start = strip.x
        if abs(strip.x - run[-1].right) < SLACK:
            end = strip.x + strip.width
    return start, end


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


def room_notes(elevation: Elevation, unit: Unit, chained: Sequence[float]) -> Iterator[str]:
    """Say the heights of ceiling, counter and floor; nothing where none is given; and of
    boxes that hang and are not among the `chained` heights."""
    yield from _unchained_notes(elevation, chained, unit)
    yield from _corner_notes(elevation, unit)
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


def _corner_notes(elevation: Elevation, unit: Unit) -> Iterator[str]:
    """Say what is drawn at an inside corner, and from where `x` of wall boxes counts there."""
    corners = dict(elevation.corners)
    for hand in HANDS:
        if (elevation.left if hand == "left" else elevation.right) != "corner":
            continue
        line = corners.get(hand, NO_CORNER).beyond
        words = f"Corner on the {hand}: "
        if hand in elevation.blind:
            words += "the room's wall, behind the boxes round it"
        else:
            words += "its line is no wall but the front edges of the base boxes round it"
        if hand == "left" and elevation.hanging and abs(line) > SLACK:
            far = f"{format_length(abs(line), unit)} {'beyond' if line > 0.0 else 'before'} it"
            words += f"; x of wall boxes counts from their own line, {far}"
        yield f"{words}."


def _unchained_notes(elevation: Elevation, chained: Sequence[float], unit: Unit) -> Iterator[str]:
    """Say the heights of boxes that hang and whose ends are not among the chained ones; mm."""
    for box in elevation.hanging:
        ends = (box.bottom, box.top)
        if any(all(abs(end - at) > SAME_LEVEL for at in chained) for end in ends):
            low, high = (format_length(end, unit) for end in ends)
            yield f"{box.box.id}: from {low} to {high} above the floor."


def _hatch(x0: float, y0: float, x1: float, y1: float) -> Iterator[Mark]:
    for mark in hatching(x0, y0, x1, y1, 2.5):
        yield replace(mark, layer="ground") if isinstance(mark, Line) else mark


def _runs(boxes: Sequence[Seen]) -> list[list[Seen]]:
    """Give the boxes that stand end to end at one height, run by run."""
    runs: list[list[Seen]] = []
    for box in boxes:
        last = runs[-1][-1] if runs else None
        if last and abs(last.right - box.x) < 1.0 and abs(last.bottom - box.bottom) < SLACK:
            runs[-1].append(box)
        else:
            runs.append([box])
    return runs


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
