"""The key plan: the wall in small, seen from the room, with one part black.

The boxes of the part's wall stand as they do along the wall; only the part's own box shows its
fronts. Of a long wall the boxes round about are shown.
"""

from jigs.cutlist.piece import Piece
from jigs.geometry import rectangle
from jigs.job import BoxSpec
from jigs.parts import Front, Layout, Side
from jigs.walls import place_job
from templates.boxparts import parts_of_box
from templates.marks import MEDIUM, THIN, Area, Line, Mark, Outline

REACH = 1500.0
"""How far the plan shows the wall to either side of the part's box, mm."""

STRIPE = 0.9
"""Least width of a black part on paper, mm."""


class KeyPlan:
    """The walls of a job, ready to be drawn in small."""

    def __init__(self, layout: Layout) -> None:
        self._layout = layout
        self._left = place_job(layout.job)
        self._walls: dict[str, list[BoxSpec]] = {}
        self._boxes = {box.id: box for box in layout.boxes}
        for box in layout.boxes:
            if not box.inferred:
                self._walls.setdefault(box.wall, []).append(box)
        for wall in self._walls.values():
            wall.sort(key=lambda box: self._left[box.id])
        self._rank = {box.id: at for wall in self._walls.values() for at, box in enumerate(wall)}

    def marks(
        self, black: Front | Side | Piece, x: float, y: float, width: float, height: float
    ) -> tuple[Mark, ...]:
        """Draw the plan within a rectangle whose lower left corner is (x, y), mm."""
        if black.box is None or (isinstance(black, Piece) and not black.blocks):
            return ()  # a plan with nothing black would tell nothing
        own = self._boxes[black.box]
        shown = self._around(own)
        fronts = parts_of_box(self._layout, own.id).fronts
        # Fronts may hang below their box; those that do not fit it may stand out anywhere.
        start, foot = self._left[own.id], own.above_floor
        left = min(
            *(self._left[box.id] for box in shown), *(start + front.x for front in fronts), start
        )
        right = max(
            *(self._left[box.id] + box.width for box in shown),
            *(start + front.x + front.width for front in fronts),
            start,
        )
        top = max(
            *(box.above_floor + box.height for box in shown),
            *(foot + front.y + front.height for front in fronts),
            foot,
        )
        standing = any(box.kind != "wall" for box in shown) and not own.inferred
        low = min(*(box.above_floor for box in shown), *(foot + front.y for front in fronts), foot)
        bottom = min(0.0, low) if standing else low
        scale = min(width / (right - left), height / (top - bottom))
        # Centred in the room it is given.
        x += (width - (right - left) * scale) / 2 - left * scale
        y += (height - (top - bottom) * scale) / 2 - bottom * scale

        def corners(
            x0: float, y0: float, wide: float, high: float
        ) -> tuple[tuple[float, float], ...]:
            return rectangle(
                x + x0 * scale,
                y + y0 * scale,
                x + (x0 + wide) * scale,
                y + (y0 + high) * scale,
            )

        marks: list[Mark] = []
        if standing:
            marks.append(Line(x1=x + left * scale, y1=y, x2=x + right * scale, y2=y, width=MEDIUM))
        for box in shown:
            place = corners(self._left[box.id], box.above_floor, box.width, box.height)
            marks.append(Outline(points=place, width=MEDIUM if box is own else THIN))
        for front in fronts:
            place = corners(start + front.x, foot + front.y, front.width, front.height)
            marks.append(Area(points=place) if front is black else Outline(points=place))
        if isinstance(black, Side):
            wide = max(black.thickness, STRIPE / scale)
            at = start + min(black.x, own.width - wide)
            marks.append(Area(points=corners(at, foot + black.base, wide, black.height)))
        if isinstance(black, Piece):
            for block in black.blocks:
                wide, high = max(block.dx, STRIPE / scale), max(block.dy, STRIPE / scale)
                across = start + max(0.0, min(block.x, own.width - wide))
                up = foot + max(0.0, min(block.y, own.height - high))
                marks.append(Area(points=corners(across, up, wide, high)))
        return tuple(marks)

    def _around(self, own: BoxSpec) -> list[BoxSpec]:
        if own.inferred:
            return [own]
        wall, here = self._walls[own.wall], self._left[own.id]
        if len(wall) > 40:  # a job of thousands: look no further than needed
            at = self._rank[own.id]
            wall = wall[max(0, at - 20) : at + 21]
        return [
            box
            for box in wall
            if self._left[box.id] + box.width > here - REACH
            and self._left[box.id] < here + own.width + REACH
        ]
