"""A card drawn: holes, figures, heading, notes and the outline of the hardware."""

from collections.abc import Sequence
from itertools import pairwise

from jigs.given.kinds import kind_of
from jigs.ground.geometry import FaceEdge, Fitting, Hole, rectangle
from templates.cards.cardborder import draw_ladder, draw_line, draw_middle_names, draw_references
from templates.cards.cardplan import ARM, CardPlan
from templates.cards.lettering import bit_note, hole_note
from templates.faces.faceview import FaceView
from templates.page.bars import bar_of_50, box_of_50
from templates.page.marks import MEDIUM, THIN, Circle, Dash, Line, Mark, Outline, Text
from templates.page.pieces import moved
from templates.page.space import Box, Space
from templates.page.typeface import text_width
from templates.words.cardwords import DRAWER_BOX, SECOND_CHECK
from templates.words.facewords import edge_words

_SET_ON: tuple[Dash, float] = ("", MEDIUM)
"""How a drawer box is drawn that is stood on its drawing."""
_LYING: tuple[Dash, float] = ("dashed", THIN)
"""How hardware is drawn that is laid on for a check."""


def draw_card(plan: CardPlan, number: int) -> tuple[Mark, ...]:
    """Draw a planned card, number so many: what must stand first, then what gives way to it."""
    space = Space()
    draw_references(space, plan)
    draw_holes(space, plan.fitting.holes)
    if plan.inner:
        _draw_inner_figures(space, plan)
    else:
        _draw_column(space, plan)
    _draw_strip(space, plan)
    _draw_heading(space, plan, number)
    draw_ladder(space, plan)
    draw_middle_names(space, plan)
    _draw_notes(space, plan)
    _draw_outlines(space, plan)
    space.add(Outline(points=rectangle(*plan.box)))
    return tuple(space.marks)


def draw_holes(space: Space, holes: Sequence[Hole]) -> None:
    """Draw each hole's circle, and its cross of 10 mm."""
    for hole in holes:
        space.add(
            Circle(x=hole.x, y=hole.y, diameter=hole.diameter),
            Line(x1=hole.x - ARM, y1=hole.y, x2=hole.x + ARM, y2=hole.y),
            Line(x1=hole.x, y1=hole.y - ARM, x2=hole.x, y2=hole.y + ARM),
        )


def _draw_column(space: Space, plan: CardPlan) -> None:
    for v, centre, label in zip(plan.rows, plan.row_centres, plan.row_labels, strict=True):
        us = [u for u, w in plan.places if abs(w - v) < 1e-5]
        if plan.low_column:
            start, bend = min(us) - ARM - 0.8, plan.column_start
            end, text = bend - 3.5, bend - 4.2
        else:
            start, bend = max(us) + ARM + 0.8, plan.column_start
            end, text = bend + 3.5, bend + 4.2
        if abs(bend - start) > 0.3:
            draw_line(space, plan, start, v, bend, v)
        draw_line(space, plan, bend, v, end, centre)
        grows_right = (plan.across.inward > 0) != plan.low_column
        left = plan.x(text) if grows_right else plan.x(text) - label.width
        space.add(*label.marks(left, plan.y(centre) + label.height / 2))


def _draw_inner_figures(space: Space, plan: CardPlan) -> None:
    v, label, u = plan.rows[0], plan.row_labels[0], plan.inner_u
    x, y = plan.at(u, v)
    space.add(Line(x1=x - 1.0, y1=y - 1.0, x2=x + 1.0, y2=y + 1.0))
    if plan.inner_above:
        centre = v + 7.0 + label.height / 2
    else:
        centre = (plan.gap_start + v - 8.0) / 2
        if plan.heading_low:
            centre = v - 8.0 - label.height / 2
    left = plan.x(u + 1.5) if plan.across.inward > 0 else plan.x(u + 1.5) - label.width
    space.add(*label.marks(left, plan.y(centre) + label.height / 2))


def _draw_strip(space: Space, plan: CardPlan) -> None:
    side = -1.0 if plan.strip_low_side else 1.0
    edge = plan.figure_v0 - 0.5 if plan.strip_low_side else plan.figure_v1 + 0.5
    for u, centre, label in zip(plan.columns, plan.column_centres, plan.column_labels, strict=True):
        vs = [v for w, v in plan.places if abs(w - u) < 1e-5]
        start = (min(vs) - ARM - 0.8) if plan.strip_low_side else (max(vs) + ARM + 0.8)
        if abs(edge - start) > 0.3:
            draw_line(space, plan, u, start, u, edge)
        draw_line(space, plan, u, edge, centre, edge + side * 2.8)
        extent = label.width if plan.turned else label.height
        near = plan.y(edge + side * 3.4)
        top = near if (side * plan.up.inward < 0) else near + extent
        if plan.turned:
            space.add(*label.turned_marks(plan.x(centre), top - extent))
        else:
            space.add(*label.marks(plan.x(centre) - label.width / 2, top))


def _draw_heading(space: Space, plan: CardPlan, number: int) -> None:
    middle = plan.bar_in_strip()
    if middle is not None:
        v = plan.figure_v1 + plan.strip_height / 2
        start = min(plan.x(middle - 30.0), plan.x(middle + 30.0)), plan.y(v)
        space.add(*bar_of_50(*start))
        space.keep(box_of_50(*start))
    left = min(plan.x(plan.heading_u0), plan.x(plan.heading_u0 + plan.heading_width))
    v = plan.heading_v
    if plan.heading_low and plan.strip_low_side:
        v = plan.gap_start + 0.5
    y = plan.y(v) if plan.up.inward < 0 else plan.y(v + plan.heading.height)
    space.add(*plan.heading.marks(left, y, number))
    if plan.ticks_v is not None:
        v = plan.ticks_v - (plan.ticks.height if plan.up.inward < 0 else 0.0)
        space.add(*moved(plan.ticks.marks, left, plan.y(v)))
    bar = plan.heading.bar_box(left, y)
    if bar is not None:
        space.keep(bar)


def _draw_notes(space: Space, plan: CardPlan) -> None:
    """Where holes differ, each bit beside one of them, as far as there is room; the heading says
    how deep it goes. Where one bit bores to several depths, these too."""
    holes = plan.fitting.holes
    if len({(hole.diameter, hole.depth) for hole in holes}) == 1:
        return
    several = len({hole.diameter for hole in holes}) == 1
    noted: set[str] = set()
    # A crowded place is taken only where no hole of the kind has a better one.
    for hole, beside in [(hole, beside) for beside in (2.0, 0.0) for hole in holes]:
        words = hole_note(hole) if several else bit_note(hole)
        if words in noted:
            continue
        width, out = text_width(words, 2.5), hole.diameter / 2 + 1.2
        spots = [
            (hole.x + sx * max(out, 1.5) - (width if sx < 0 else 0.0), hole.y + dy)
            for dy in (1.6, -3.9, 6.0, -9.0)
            for sx in (1, -1)
        ]
        spots += [(hole.x - width / 2, hole.y + dy) for dy in (ARM + 1.8, -ARM - 4.2)]
        if hole.diameter > 25.0:
            spots = [(hole.x + 1.5, hole.y - 5.0), (hole.x - 1.5 - width, hole.y - 5.0), *spots]
        texts = (Text(x=x, y=y, text=words) for x, y in spots)
        if space.add_where_free(texts, plan.inside, beside=beside):
            noted.add(words)


def _draw_outlines(space: Space, plan: CardPlan) -> None:
    """The hardware as it lies, and the part's other edges: a second check, never a cut."""
    view = plan.view
    if plan.fitting.stands is None:
        name_drawer_box(space, view, plan.lined, plan.inside)
    draw_hardware(space, view, (plan.fitting,), plan.drawn_on)
    referenced = {r.edge for r in (plan.across, plan.up) if r.kind == "edge"}
    if plan.ladder_v is not None:
        referenced.add("top")
    lines: tuple[tuple[FaceEdge, Run], ...] = (
        ("left", ((0.0, -1e4), (0.0, 1e4))),
        ("right", ((view.width, -1e4), (view.width, 1e4))),
        ("bottom", ((-1e4, 0.0), (1e4, 0.0))),
        ("top", ((-1e4, view.height), (1e4, view.height))),
    )
    for edge, run in lines:
        if edge not in referenced:
            name = edge_words(view, edge)
            ways = tuple(way.format(name) for way in SECOND_CHECK)
            name_line(space, run, ways, plan.lined, plan.inside)
            space.add_between_texts(run, plan.lined, "dashed", 0.25)
    if plan.inner:
        u, v = plan.inner_u, plan.rows[0]
        line = (plan.at(u, 0.0), plan.at(u, v))
        space.add_between_texts(line, plan.inside, "", 0.18)
    for fitting_line in _axes(plan):
        space.add_between_texts(fitting_line, plan.inside, "axis", 0.18)
    if plan.across.kind == "middle" and not plan.half:
        middle = ((plan.x(0.0), -1e4), (plan.x(0.0), 1e4))
        space.add_between_texts(middle, plan.inside, "axis", 0.18)


Run = tuple[tuple[float, float], tuple[float, float]]
"""A straight line from one place to another, mm."""


def name_drawer_box(space: Space, view: FaceView, lined: Box, inside: Box) -> None:
    """Name the outline of the drawer box behind a front, on a card that does not place it."""
    box = view.drawer_outline
    for a, b in pairwise((*box, box[0]) if box else ()):
        if name_line(space, (a, b), (DRAWER_BOX,), lined, inside):
            break


def name_line(space: Space, run: Run, ways: Sequence[str], lined: Box, inside: Box) -> bool:
    """Name a line drawn up or across a card, as far as it is `lined`, beside it in the fullest way
    there is room for `inside`; say whether there was any."""
    upright = run[0][0] == run[1][0]
    across, along = (0, 1) if upright else (1, 0)
    at = run[0][across]
    if not lined[across] < at < lined[across + 2]:
        return False
    low = max(lined[along], min(end[along] for end in run)) + 2.0
    high = min(lined[along + 2], max(end[along] for end in run)) - 2.0
    for words in ways:
        wide = text_width(words, 2.5)
        starts = [high - wide, low, (low + high - wide) / 2] if low + wide <= high else []
        spots = [
            Text(x=at + beside, y=start, text=words, angle=90)
            if upright
            else Text(x=start, y=at - beside, text=words)
            for beside in (-1.6, 3.9)
            for start in starts
        ]
        if space.add_where_free(spots, inside, beside=1.0):
            return True
    return False


def draw_hardware(space: Space, view: FaceView, fittings: Sequence[Fitting], inside: Box) -> None:
    """Draw the outlines of hardware, of the drawer box behind a front, and of its thin panel."""
    placed = any(fitting.stands is not None for fitting in fittings)
    polygons = [polygon for fitting in fittings for polygon in fitting.outline]
    for polygon in (*polygons, view.drawer_outline, view.opening):
        if polygon:
            set_on = placed and polygon is view.drawer_outline
            dash, width = _SET_ON if set_on else _LYING
            space.add_between_texts((*polygon, polygon[0]), inside, dash, width)


def _axes(plan: CardPlan) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    """A slide's centre line, from hole to hole and on to the back of the side."""
    if not kind_of(plan.fitting).lined:
        return []
    v = plan.rows[0]
    ends = [*(u - ARM - 0.8 for u in plan.columns[1:]), plan.u_high]
    return [
        (plan.at(u + ARM + 0.8, v), plan.at(end, v))
        for u, end in zip(plan.columns, ends, strict=True)
    ]
