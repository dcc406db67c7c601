"""A whole face on one card: its outline at full scale, all its holes, all four edges.

White meets black on each edge. The edges that figures are counted from set the paper, as on any
card; the others must then lie on the part's own, which shows a part of another size and paper
that has grown. The top end of a hinged door has its ladder instead of a band.
"""

from jigs.ground.geometry import Axis, FaceEdge
from templates.cards.card import Card
from templates.cards.cardborder import ladder
from templates.cards.carddraw import draw_hardware, draw_holes
from templates.cards.cardplan import BAND, LADDER
from templates.cards.figures import (
    draw_slide_lines,
    figures_of,
    free_spot,
    write_block,
    write_corner,
    write_figures,
    write_name,
)
from templates.cards.flap import FLAP, cross_out, flap_texts, flap_words, fullest
from templates.cards.lettering import block
from templates.cards.setout import choose_references
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.marks import Area, Outline
from templates.page.space import Box, Space
from templates.words.facewords import edge_words

HEADING = 69.0
"""Width of the card's own words, mm."""
NAME = "WHOLE FACE"


def whole_size(view: FaceView) -> tuple[float, float]:
    """Give width and height of a whole face with its flaps, mm."""
    x0, y0, x1, y1 = _border(view, edges_of(view))
    return x1 - x0, y1 - y0


def whole_card(view: FaceView, number: int) -> Card | None:
    """Draw a whole face as one card, number so many.

    None where its figures find no room, and for the side of a box that is together, into which
    no whole paper goes.
    """
    if view.state.stand:
        return None
    edges = edges_of(view)
    border = _border(view, edges)
    inside = (edges["left"].at, edges["bottom"].at, edges["right"].at, edges["top"].at)
    references = {
        id(fitting): tuple(_whole(r, edges) for r in choose_references(view, fitting))
        for fitting in view.fittings
    }
    setting = {r.edge for pair in references.values() for r in pair if r.kind == "edge"}
    space = Space()
    for edge, reference in edges.items():
        if edge == "top" and view.ladder:
            space.add(*ladder(view, inside[0], inside[2], view.height))
        elif edge != view.bevel:
            _draw_band(space, view, reference, inside, border, sets=edge in setting)
    _cross_corners(space, view, setting, inside, border)
    x0, y0, x1, y1 = border
    space.add(Outline(points=((x0, y0), (x1, y0), (x1, y1), (x0, y1))))
    top = inside[3] - (9.0 if view.ladder else 1.5)
    room = (inside[0] + 1.5, inside[1] + 1.5, inside[2] - 1.5, top)
    # A drawer box that is stood on its outline is drawn first: words keep off its corners.
    stood_on = view.marks is not None
    if stood_on:
        draw_hardware(space, view, view.fittings, inside)
    if not _write(space, view, references, room, number):
        return None
    if not stood_on:
        draw_hardware(space, view, view.fittings, inside)
    _draw_lines(space, view, references, inside)
    return Card(
        number=number,
        view=view,
        fittings=view.fittings,
        box=border,
        edges=tuple(r for edge, r in edges.items() if _banded(view, edge)),
        index=(),
        ladder=view.height if view.ladder else None,
        drawn=tuple(space.marks),
    )


def edges_of(view: FaceView) -> dict[FaceEdge, Reference]:
    """Give the four edges of a face that distances are counted from."""
    datums = view.datums
    places: tuple[tuple[Axis, FaceEdge, float, int], ...] = (
        ("x", "left", datums.get("left", 0.0), 1),
        ("x", "right", view.width - datums.get("right", 0.0), -1),
        ("y", "bottom", datums.get("bottom", 0.0), 1),
        ("y", "top", view.height, -1),
    )
    return {
        edge: Reference(
            axis=axis, kind="edge", edge=edge, value=0.0, at=at, inward=1 if inward > 0 else -1
        )
        for axis, edge, at, inward in places
    }


def _whole(reference: Reference, edges: dict[FaceEdge, Reference]) -> Reference:
    """Give the edge that an index line is counted from; the middle stays the middle."""
    return reference if reference.kind == "middle" else edges[reference.edge]


def _banded(view: FaceView, edge: FaceEdge) -> bool:
    return edge != view.bevel and not (edge == "top" and view.ladder)


def _border(view: FaceView, edges: dict[FaceEdge, Reference]) -> Box:
    """Give the card's cut line: flaps outside the edges, the ladder above."""
    above = FLAP if _banded(view, "top") else LADDER
    return (
        edges["left"].at - FLAP,
        edges["bottom"].at - (FLAP if _banded(view, "bottom") else LADDER),
        edges["right"].at + FLAP,
        edges["top"].at + above,
    )


def _draw_band(
    space: Space, view: FaceView, edge: Reference, inside: Box, border: Box, *, sets: bool
) -> None:
    """Draw the black outside an edge, and what is done there."""
    x0, y0, x1, y1 = inside
    at, out = edge.at, edge.at - edge.inward * BAND
    if edge.axis == "x":
        # A rounded part's corners are cut away with the black, the others are crossed.
        low = y0 - (BAND if view.rounded and _banded(view, "bottom") else 0.0)
        high = y1 + (BAND if view.rounded and _banded(view, "top") else 0.0)
        points = ((at, low), (out, low), (out, high), (at, high))
        length = y1 - y0
    else:
        points = ((x0, at), (x0, out), (x1, out), (x1, at))
        length = x1 - x0
    space.add(Area(points=points))
    name = edge_words(view, edge.edge)
    check = ((f"CHECK: {name} MUST LIE HERE",), (f"CHECK: {name}",), ("CHECK",))
    lines = fullest(flap_words(name, view.rounded) if sets else check, length)
    middle = (out + (border[0 if edge.axis == "x" else 1] if edge.inward > 0 else
                     border[2 if edge.axis == "x" else 3])) / 2  # fmt: skip
    along = (y0 + y1) / 2 if edge.axis == "x" else (x0 + x1) / 2
    space.add(*flap_texts(lines, edge.axis, middle, along))


def _cross_corners(
    space: Space, view: FaceView, setting: set[FaceEdge], inside: Box, border: Box
) -> None:
    """Cross the corners where a flap that goes down meets another, or the paper of a check."""
    if view.rounded:
        return
    xs: tuple[tuple[FaceEdge, float, float], ...] = (
        ("left", border[0], inside[0]), ("right", inside[2], border[2])
    )  # fmt: skip
    ys: tuple[tuple[FaceEdge, float, float], ...] = (
        ("bottom", border[1], inside[1]), ("top", inside[3], border[3])
    )  # fmt: skip
    for side, x0, x1 in xs:
        for end, y0, y1 in ys:
            if _banded(view, end) and setting & {side, end}:
                cross_out(space, (x0, y0, x1, y1))


def _write(
    space: Space,
    view: FaceView,
    references: dict[int, tuple[Reference, ...]],
    room: Box,
    number: int,
) -> bool:
    """Draw the holes and write all that belongs to them; say whether there was room."""
    draw_holes(space, [hole for fitting in view.fittings for hole in fitting.holes])
    for fitting in view.fittings:
        across, up = references[id(fitting)]
        if fitting.stands is not None and not write_corner(space, view, fitting, across, up, room):
            return False
        for hole in fitting.holes:
            inward = across.inward
            if across.kind == "middle" and hole.x > view.width / 2:
                inward = -1
            figures = figures_of(view, fitting, hole, across, up)
            if not write_figures(space, hole, figures, inward, room):
                return False
    heading = block(view, NAME, (), HEADING, with_bar=True)
    centre = ((room[0] + room[2]) / 2, (room[1] + room[3]) / 2)
    spot = free_spot(space, heading.width, heading.height, centre, room)
    if spot is None:
        return False
    space.add(*heading.marks(*spot, number))
    if not all(write_name(space, view, fitting, room) for fitting in view.fittings):
        return False
    if view.bevel is not None:
        y = room[3] if view.bevel == "top" else room[1]
        words = f"{edge_words(view, view.bevel)}: bevelled, no reference"
        return write_block(space, [(words, False)], (centre[0], y), room)
    return True


def _draw_lines(
    space: Space, view: FaceView, references: dict[int, tuple[Reference, ...]], inside: Box
) -> None:
    """Draw the middle, the lines of slides, a bevelled edge, and the bottom panel's face."""
    if any(r.kind == "middle" for pair in references.values() for r in pair):
        middle = view.width / 2
        space.add_between_texts(((middle, -1e4), (middle, 1e4)), inside, "axis", 0.18)
    draw_slide_lines(space, view, view.fittings, inside)
    if view.bevel is not None:
        y = 0.0 if view.bevel == "bottom" else view.height
        space.add_between_texts(((-1e4, y), (1e4, y)), inside, "dashed", 0.25)
    if view.state.panel is not None:
        space.add_between_texts(
            ((-1e4, view.state.panel), (1e4, view.state.panel)), inside, "dashed", 0.25
        )
