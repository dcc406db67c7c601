"""A whole face on one card: its outline at full scale, all its holes, all four edges.

White meets black on each edge. The edges that figures are counted from set the paper, as on any
card; the others must then lie on the part's own, which shows a part of another size and paper
that has grown. The top end of a hinged door has its ladder instead of a band.
"""

from jigs.ground.geometry import Axis, FaceEdge
from templates.cards.card import Card
from templates.cards.cardborder import edge_flap, ladder
from templates.cards.carddraw import name_line
from templates.cards.cardplan import LADDER
from templates.cards.figures import write_block
from templates.cards.flap import BAND, FLAP, cross_out, draw_edge
from templates.cards.setout import choose_references
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.marks import Outline
from templates.page.space import Box, Space
from templates.strips.longcard import SetOut, fill_card
from templates.words.cardwords import BEVELLED, SECOND_CHECK
from templates.words.facewords import PANEL, edge_words

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
    fittings: list[SetOut] = []
    for fitting in view.fittings:
        across, up = choose_references(view, fitting)
        fittings.append((fitting, _whole(across, edges), _whole(up, edges)))
    setting = {r.edge for _, *pair in fittings for r in pair if r.kind == "edge"}
    space = Space()
    for edge, reference in edges.items():
        if edge == "top" and view.ladder:
            space.add(*ladder(view, inside[0], inside[2], view.height))
        elif edge != view.bevel:
            _draw_band(space, view, reference, inside, sets=edge in setting)
    _cross_corners(space, view, setting, inside, border)
    x0, y0, x1, y1 = border
    space.add(Outline(points=((x0, y0), (x1, y0), (x1, y1), (x0, y1))))
    top = inside[3] - (9.0 if view.ladder else 1.5)
    room = (inside[0] + 1.5, inside[1] + 1.5, inside[2] - 1.5, top)
    if view.bevel is not None:
        words = BEVELLED.format(edge_words(view, view.bevel))
        end = room[3] if view.bevel == "top" else room[1]
        if not write_block(space, [(words, False)], ((room[0] + room[2]) / 2, end), room):
            return None
    if not fill_card(space, view, fittings, (NAME, number), room, inside):
        return None
    if view.state.panel is not None:
        y = view.state.panel
        name_line(space, ((-1e4, y), (1e4, y)), (PANEL,), inside, room)
        space.add_between_texts(((-1e4, y), (1e4, y)), inside, "dashed", 0.25)
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


def _draw_band(space: Space, view: FaceView, edge: Reference, inside: Box, *, sets: bool) -> None:
    """Draw the black outside an edge, and what is done there."""
    x0, y0, x1, y1 = inside
    run, black = (x0, x1), (x0, x1)
    if edge.axis == "x":
        # A rounded part's corners are cut away with the black, the others are crossed.
        low = y0 - (BAND if view.rounded and _banded(view, "bottom") else 0.0)
        high = y1 + (BAND if view.rounded and _banded(view, "top") else 0.0)
        run, black = (y0, y1), (low, high)
    name = edge_words(view, edge.edge)
    check = tuple((way.format(name),) for way in SECOND_CHECK)
    draw_edge(space, edge, run, FLAP, edge_flap(view, edge) if sets else check, black=black)


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
