"""The picture of a part as it is held at its place: an arrow says which way it goes.

A front is seen from the room, a board of a box from inside it, a drawer box from the room; a piece
that lies from above, its front edge towards you.
"""

from collections.abc import Iterable

from jigs.box.parts import Front, Side
from jigs.cutlist.piece import Block, Piece
from jigs.ground.geometry import FaceEdge, Hole, rectangle
from templates.page.marks import Circle, Line, Mark, Outline
from templates.scan.facepicture import LEAST_HOLE, band, drawing, up_marks
from templates.scan.markup import Html

WIDE, HIGH = 180.0, 150.0
"""The most that a part takes, in the drawing's unit: a pixel of a telephone."""
LEFT, RIGHT, EDGE = 10.0, 62.0, 8.0
"""Room left of a part, for the arrow beside it, and over and under it."""
LOW = 64.0
"""The least height of a drawing: its arrow's."""


def front_stand(front: Front, alt: str) -> Html:
    """Draw a front from the room: its holes, dashed those in its back, and the edge it hangs by."""
    drawn = _Stand(front.width, front.height)
    if front.make.frame is not None:
        drawn.add(Outline(points=drawn.points(front.make.frame.opening), layer="hidden"))
    if front.hinged is not None and front.kind == "door":
        drawn.hinges(front.hinged)
    drawn.holes(front.holes, behind="back")
    return drawn.picture(alt)


def side_stand(side: Side, alt: str) -> Html:
    """Draw a board from inside its box: a left side has its front edge on the left."""
    drawn = _Stand(side.depth, side.height)
    drawn.edge(side.side)
    turned = side.side == "right"
    drawn.dots((side.depth - hole.x if turned else hole.x, hole.y) for hole in side.holes)
    return drawn.picture(alt)


def drawer_stand(width: float, height: float, holes: Iterable[Hole], alt: str) -> Html:
    """Draw a drawer box from the room."""
    drawn = _Stand(width, height)
    drawn.holes((hole for hole in holes if hole.face == "box-front"), behind="box-back")
    return drawn.picture(alt)


def piece_stand(piece: Piece, block: Block | None, alt: str) -> Html:
    """Draw a piece by the room that it fills: from above where it lies, edge on where it stands
    along the depth, else from the room."""
    if block is None:
        return _Stand(piece.finished_width, piece.finished_length).picture(alt, arrow=False)
    if block.dy == min(block.dx, block.dy, block.dz):
        return _Stand(block.dx, block.dz).picture(alt, word="FRONT", turns=-1)
    if block.dx < block.dz:
        drawn = _Stand(block.dz, block.dy)
        # Seen from outside, a left board has its front edge on the right.
        drawn.edge("right" if piece.hand == "left" else "left")
        return drawn.picture(alt)
    return _Stand(block.dx, block.dy).picture(alt)


class _Stand:
    """A drawing of one part; `width`, `height` in mm as it is seen."""

    def __init__(self, width: float, height: float) -> None:
        # What is held back for want of room may have no size at all.
        self._scale = min(WIDE / max(width, 1.0), HIGH / max(height, 1.0))
        self._wide, self._high = width * self._scale, height * self._scale
        self._height = max(self._high + 2 * EDGE, LOW)
        self._foot = (self._height - self._high) / 2
        self._marks: list[Mark] = []
        self.add(
            Outline(
                points=rectangle(LEFT, self._foot, LEFT + self._wide, self._foot + self._high),
                layer="edge",
            )
        )

    def add(self, mark: Mark) -> None:
        """Add a mark in the drawing's own unit."""
        self._marks.append(mark)

    def points(self, polygon: Iterable[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
        """Give places on the part, mm, as they are drawn."""
        return tuple((LEFT + x * self._scale, self._foot + y * self._scale) for x, y in polygon)

    def edge(self, edge: FaceEdge) -> None:
        """Mark the edge that a part is known by."""
        self.add(band(edge, LEFT, self._foot, self._wide, self._high))

    def hinges(self, edge: FaceEdge) -> None:
        """Mark the edge a door hangs by: two lines meet there (as on the elevations)."""
        self.edge(edge)
        at, away = (LEFT, LEFT + self._wide) if edge == "left" else (LEFT + self._wide, LEFT)
        middle = self._foot + self._high / 2
        for y in (self._foot, self._foot + self._high):
            self.add(Line(x1=away, y1=y, x2=at, y2=middle, layer="swing"))

    def holes(self, holes: Iterable[Hole], behind: str) -> None:
        """Draw holes in the axes of the part as it is seen; those in the face behind are dashed."""
        for hole in holes:
            self.hole(hole.x, hole.y, hole.diameter, "behind" if hole.face == behind else "hole")

    def hole(self, x: float, y: float, diameter: float, layer: str) -> None:
        """Draw a hole."""
        [(at_x, at_y)] = self.points([(x, y)])
        size = max(diameter * self._scale, LEAST_HOLE)
        self.add(Circle(x=at_x, y=at_y, diameter=size, layer=layer))

    def dots(self, places: Iterable[tuple[float, float]]) -> None:
        """Draw small holes, of which a board may have a hundred, as dots."""
        for x, y in self.points(places):
            self.add(Line(x1=x, y1=y, x2=x, y2=y, layer="dot"))

    def picture(self, alt: str, *, word: str = "UP", turns: int = 1, arrow: bool = True) -> Html:
        """Make the picture, its arrow at the right."""
        marks = list(self._marks)
        if arrow:
            length = min(max(self._high, 40.0), 70.0) - 16.0
            middle = self._height / 2 + (8.0 if turns > 0 else -8.0)
            marks += up_marks(LEFT + self._wide + 34.0, middle, length, word, turns)
        return drawing(marks, LEFT + self._wide + RIGHT, self._height, "stand", alt)
