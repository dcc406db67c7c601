"""A box as an elevation shows it: fronts with their IDs, sizes, swing lines and pulls.

The two swing lines of a front run, dashed, from the corners of its free edge to the middle of the
edge it turns on: the point is at the hinges (common drafting practice, no source). A fixed shelf is
a line along its upper face, dashed behind a front as any hidden edge (ISO 128). A line gives way
where a word stands. Fronts lie in 0.25, all else in 0.18 (ISO 128 widths).
"""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from jigs.ground.geometry import Fitting, rectangle
from jigs.room.seen import Seen, SeenFront
from templates.elevations.elevationheld import hatch
from templates.elevations.frontwords import (
    inside_of,
    span_of,
    swing_lines,
    write_fronts,
    write_opening,
)
from templates.elevations.scale import Scale, Style
from templates.page.marks import MEDIUM, THIN, Area, Circle, Dash, Line, Mark, Outline
from templates.page.space import Box, Space

BAR = 0.3
"""Least width of a pull on paper, mm."""


def draw_boxes(boxes: Sequence[Seen], style: Style) -> list[Mark]:
    """Draw boxes with their fronts and openings. All that has a place of its own comes first, then
    the words where there is room, then the lines that give way to them.

    Boxes that stand clear of each other may be drawn one by one.
    """
    space, scale = Space(), style.scale
    fronts = [
        (front, scale.area(front.x, front.y, front.front.width, front.front.height))
        for box in boxes
        for front in box.fronts
    ]
    openings = [
        (opening, scale.area(opening.x, opening.y, opening.width, opening.height))
        for box in boxes
        for opening in box.openings
    ]
    for box in boxes:
        space.add(*_draw_body(box, scale))
    for opening, place in openings:
        space.add(Outline(points=place, layer="opening", name=opening.id))
    for front, place in fronts:
        space.add(Outline(points=place, width=MEDIUM, layer="front", name=front.front.id))
    for front, _ in fronts:
        for fitting in front.front.fittings:
            if fitting.kind == "pull":
                space.add(*_draw_pull(fitting, front, scale))
    for opening, place in openings:
        write_opening(space, opening, inside_of(place))
    write_fronts(space, fronts, {box.box.id: box for box in boxes}, style)
    marks = space.marks[:]
    for _, place in openings:
        for ends in ((place[0], place[2]), (place[3], place[1])):
            marks += _give_way(space, ends, span_of(place), "", "opening")
    for box in boxes:
        for shelf in box.shelves:
            left, right = scale.across(shelf.x), scale.across(shelf.x + shelf.width)
            line, dash = [(left, scale.up(shelf.y)), (right, scale.up(shelf.y))], shelf.hidden
            within = span_of(scale.area(box.x, box.bottom, box.box.width, box.box.height))
            marks += _give_way(space, line, within, "dashed" if dash else "", "shelf")
    for front, place in fronts:
        frame = front.front.make.frame
        if frame is not None and frame.closes:
            corners = [(scale.across(front.x + x), scale.up(front.y + y)) for x, y in frame.opening]
            marks += _give_way(space, [*corners, corners[0]], span_of(place), "", "frame")
        lines = swing_lines(front.swing, place)
        marks += _give_way(space, lines, span_of(place), "dashed", "swing")
    for front, place in fronts:
        if front.front.withheld:
            marks += hatch(space, span_of(place))
    return marks


def _draw_body(seen: Seen, scale: Scale) -> Iterator[Mark]:
    box = seen.box
    dash: Dash = "dashed" if box.kind == "open" else ""
    place = scale.area(seen.x, seen.bottom, box.width, box.height)
    yield Outline(points=place, dash=dash, layer="box", name=box.id)
    if box.legs:
        legs = scale.area(seen.x, seen.bottom, box.width, box.legs)
        yield Outline(points=legs, layer="legs")
    for strip in seen.strips:
        yield Outline(
            points=scale.area(strip.x, strip.y, strip.width, strip.height),
            dash="dashed" if seen.is_behind(strip) else "",
            layer=strip.kind,
            name=strip.id,
        )


def _give_way(
    space: Space, points: Sequence[tuple[float, float]], within: Box, dash: Dash, layer: str
) -> list[Mark]:
    """Give a run of lines, left out where words stand."""
    before = len(space.marks)
    space.add_between_texts(points, within, dash, THIN)
    return [replace(mark, layer=layer) for mark in space.marks[before:] if isinstance(mark, Line)]


def _draw_pull(fitting: Fitting, seen: SeenFront, scale: Scale) -> Iterator[Mark]:
    """Draw a bar from end to end over its holes, a knob as a circle; both at their true size."""
    corners = [corner for polygon in fitting.outline for corner in polygon]
    xs, ys = zip(*((seen.x + x, seen.y + y) for x, y in corners), strict=True)
    x0, x1 = scale.across(min(xs)), scale.across(max(xs))
    y0, y1 = scale.up(min(ys)), scale.up(max(ys))
    if len(fitting.holes) == 1:
        yield Circle(x=(x0 + x1) / 2, y=(y0 + y1) / 2, diameter=x1 - x0, width=MEDIUM, layer="pull")
        return
    # A foot is as wide as the outline; the bar over it half as wide, or as thin as paper shows.
    if x1 - x0 > y1 - y0:
        middle, half = (y0 + y1) / 2, max((y1 - y0) / 2, BAR) / 2
        yield Area(points=rectangle(x0, middle - half, x1, middle + half), layer="pull")
    else:
        middle, half = (x0 + x1) / 2, max((x1 - x0) / 2, BAR) / 2
        yield Area(points=rectangle(middle - half, y0, middle + half, y1), layer="pull")
