"""Bare faces at full size, for a plotter, a laser or a router: outline, holes, and what they are.

A face is drawn as the driller sees it, as on its sheet: the back of a front is already turned
over. Words stand outside the part, so that nothing is ever engraved into a face that shows.

>>> from jigs.geometry import Hole
>>> hole_class(Hole(purpose="cup", face="back", x=22.5, y=100, diameter=35, depth=13))
'cup-35-13'
"""

from jigs.geometry import Hole
from templates.faces import FaceView
from templates.marks import THIN, Circle, Mark, Outline, Page, Text

MARGIN = 10.0
"""Free round the part, mm: room for the words."""
TEXT = 5.0
"""Height of a capital, mm (ISO 3098)."""


def face_name(view: FaceView) -> str:
    """Name part and face, as their file is called: `B1-2-BACK`."""
    face = view.face if view.column is None else f"column-{view.column}"
    return f"{view.part}-{face.upper()}"


def figure(value: float) -> str:
    """Give a size to 0.01 mm, without noughts that say nothing."""
    return f"{round(value, 2):.2f}".rstrip("0").rstrip(".")


def hole_class(hole: Hole) -> str:
    """Name operation, diameter and depth: `pull-5-through`. A point would end a class name in a
    style sheet, so 2.5 is written 2_5."""
    depth = "through" if hole.depth is None else figure(hole.depth)
    return f"{hole.purpose}-{figure(hole.diameter)}-{depth}".replace(".", "_")


def words_beside(view: FaceView) -> tuple[tuple[float, float, str], ...]:
    """Give the words outside the part, and where they begin; mm from its lower left corner."""
    return ((0.0, -TEXT - 2.0, face_name(view)), (0.0, view.height + 2.0, "UP"))


def outline_page(view: FaceView) -> Page:
    """Draw one face: the outline is of class `cut`, holes `drill` and their own, words `mark`."""
    w, h = MARGIN + view.width, MARGIN + view.height
    corners = ((MARGIN, MARGIN), (w, MARGIN), (w, h), (MARGIN, h))
    marks: list[Mark] = [Outline(points=corners, layer="cut", name=view.part)]
    for fitting in view.fittings:
        for hole in fitting.holes:
            marks.append(
                Circle(
                    x=MARGIN + hole.x,
                    y=MARGIN + hole.y,
                    diameter=hole.diameter,
                    width=THIN,
                    layer=f"drill {hole_class(hole)}",
                )
            )
    for x, y, words in words_beside(view):
        marks.append(Text(x=MARGIN + x, y=MARGIN + y, text=words, size=TEXT, layer="mark"))
    return Page(
        width=view.width + 2 * MARGIN,
        height=view.height + 2 * MARGIN,
        marks=tuple(marks),
        entry=f"{face_name(view)}: {view.drilled}",
    )
