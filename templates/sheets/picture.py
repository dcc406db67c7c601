"""The small picture of a sheet: the whole face, where its cards lie, and which way is up."""

from templates.cards.card import Card
from templates.faces.faceview import FaceView
from templates.page.bars import up_arrow
from templates.page.marks import MEDIUM, Area, Outline, Text
from templates.page.pieces import MarkBlock
from templates.page.space import Space
from templates.page.typeface import text_width


def picture_room(view: FaceView, width: float) -> MarkBlock:
    """Give the room that a face's picture takes, undrawn: for words that are only measured."""
    return MarkBlock(height=_height(view.height * _scale(view, width)) + 0.3, marks=())


def _scale(view: FaceView, width: float) -> float:
    return min((width - 30.0) / view.width, 21.5 / view.height)


def _height(drawn: float) -> float:
    """How high the picture of a face drawn so high is: the arrow beside it has its own, mm."""
    return max(drawn + 6.0, 27.4)


def picture(view: FaceView, cards: tuple[Card, ...], width: float) -> MarkBlock:
    """Draw the whole face in small with its cards and holes, and a large UP arrow."""
    scale = _scale(view, width)
    w, h = view.width * scale, view.height * scale
    height = _height(h)
    left = 18.0 + (width - 30.0 - w) / 2
    bottom = -(height + h) / 2
    space = Space()
    space.add(*up_arrow(6.0, -height / 2 - 12.6, 25.0))
    space.add(
        Outline(
            points=(
                (left, bottom),
                (left + w, bottom),
                (left + w, bottom + h),
                (left, bottom + h),
            ),
            width=MEDIUM,
        )
    )
    if view.opening:
        points = tuple((left + x * scale, bottom + y * scale) for x, y in view.opening)
        space.add(Outline(points=points))
    if view.marks is not None and view.drawer_outline:
        points = tuple((left + x * scale, bottom + y * scale) for x, y in view.drawer_outline)
        space.add(Outline(points=points))
    edge = view.hinge_edge or view.front_edge
    if edge in ("left", "right"):
        x = left - 1.2 if edge == "left" else left + w + 0.2
        space.add(
            Area(
                points=(
                    (x, bottom),
                    (x + 1.0, bottom),
                    (x + 1.0, bottom + h),
                    (x, bottom + h),
                )
            )
        )
        words = "HINGES" if view.hinge_edge else "FRONT"
        if h > text_width(words, 2.5) + 1.0:
            at = left - 2.3 if edge == "left" else left + w + 4.6
            space.add(Text(x=at, y=bottom + h / 2, text=words, anchor="middle", angle=90))
    for fitting in view.fittings:
        for hole in fitting.holes:
            x, y = left + hole.x * scale, bottom + hole.y * scale
            space.add(
                Area(
                    points=(
                        (x - 0.35, y - 0.35),
                        (x + 0.35, y - 0.35),
                        (x + 0.35, y + 0.35),
                        (x - 0.35, y + 0.35),
                    )
                )
            )
    for card in cards:
        x0, y0 = left + max(card.box[0], 0.0) * scale, bottom + max(card.box[1], 0.0) * scale
        x1 = left + min(card.box[2], view.width) * scale
        y1 = bottom + min(card.box[3], view.height) * scale
        space.add(Outline(points=((x0, y0), (x1, y0), (x1, y1), (x0, y1)), dash="dashed"))
    for card in cards:
        y0, y1 = (
            bottom + max(card.box[1], 0.0) * scale,
            bottom + min(card.box[3], view.height) * scale,
        )
        cx = left + (max(card.box[0], 0.0) + min(card.box[2], view.width)) / 2 * scale
        cy = bottom + (max(card.box[1], 0.0) + min(card.box[3], view.height)) / 2 * scale
        beside = left - 2.2 if cx < left + w / 2 else left + w + 2.2
        further = left - 7.0 if cx < left + w / 2 else left + w + 7.8
        space.add_where_free(
            (
                Text(x=x, y=y, text=str(card.number), bold=True, anchor="middle")
                for x, y in (
                    (cx, cy - 1.2),
                    (cx, y1 + 0.9),
                    (cx, y0 - 3.6),
                    (cx, bottom + h + 1.2),
                    (cx, bottom - 3.8),
                    (beside, cy - 1.2),
                    (further, cy - 1.2),
                    (further, cy + 1.6),
                    (further, cy - 4.0),
                )
            ),
            (13.0, -height, width, 0.0),
        )
    return MarkBlock(height=height + 0.3, marks=tuple(space.marks))
