"""Bare faces at full size, for a plotter, a laser or a router: outline, holes, and what they are.

A face is drawn as the driller sees it, as on its sheet: the back of a front is already turned
over. Words stand outside the part, so that nothing is ever engraved into a face that shows. What
lies on the face without being cut or drilled (`lines_on`) is marked, each kind by a name of its
own, so that it can be seen, or turned off.

>>> from jigs.ground.geometry import Hole
>>> hole_class(Hole(purpose="cup", face="back", x=22.5, y=100, diameter=35, depth=13))
'cup-35-13'
"""

import math
import re

from jigs.ground.geometry import Hole, Polygon
from templates.faces.faceview import FaceView
from templates.page.marks import THIN, Circle, Line, Mark, Outline, Page, Text
from templates.page.typeface import text_width
from templates.words.facewords import drilled_words
from templates.words.openwords import STAMP, open_line
from templates.writers.dxf import Drawing, DxfText, write_dxf

MARGIN = 10.0
"""Free round the part, mm: room for the words."""
TEXT = 5.0
"""Height of a capital, mm (ISO 3098)."""


def face_name(view: FaceView) -> str:
    """Name part and face, as their file is called: `B1-2-BACK`; of a drawer box `B1-1-BOX-FRONT`,
    as its piece in the cut list."""
    face = f"column-{view.column}" if view.partition else view.face.removeprefix("box-")
    return f"{view.part}-{face.upper()}"


def figure(value: float) -> str:
    """Give a size to 0.01 mm, without noughts that say nothing."""
    return f"{round(value, 2):.2f}".rstrip("0").rstrip(".")


def operation(hole: Hole) -> str:
    """Give a hole's purpose as one word: whoever writes a hole by hand calls it what they like
    (`kit's slide`), and neither a class nor a layer may have spaces or any sign in its name."""
    return re.sub(r"[^\w-]+", "-", hole.purpose.strip()).strip("-") or "hole"


def hole_class(hole: Hole) -> str:
    """Name operation, diameter and depth: `pull-5-through`. A point would end a class name in a
    style sheet, so 2.5 is written 2_5."""
    depth = "through" if hole.depth is None else figure(hole.depth)
    return f"{operation(hole)}-{figure(hole.diameter)}-{depth}".replace(".", "_")


def words_beside(view: FaceView) -> tuple[tuple[float, float, str], ...]:
    """Give the words outside the part, and where they begin; mm from its lower left corner."""
    bevel = ", FINGER BEVEL"
    below = face_name(view) + (bevel if view.bevel == "bottom" else "")
    above = "UP" + (bevel if view.bevel == "top" else "")
    if view.open:
        # A narrow part takes the word alone.
        full = f"{above}, {open_line(view.open, 'see the check')}"
        fits = text_width(full, TEXT) <= view.width + MARGIN
        above = full if fits else f"{above}, {STAMP}"
    return ((0.0, -TEXT - 2.0, below), (0.0, view.height + 2.0, above))


def lines_on(view: FaceView) -> tuple[tuple[str, Polygon], ...]:
    """Give what lies on the face, mm from the part's lower left corner: `frame`, the inner edges
    of a five-piece front's stiles and rails; `drawer-box`, where the drawer box stands behind its
    front; `bevel`, the edge that is bevelled for the fingers, from end to end."""
    found: list[tuple[str, Polygon]] = []
    if view.opening:
        found.append(("frame", view.opening))
    if view.drawer_outline:
        found.append(("drawer-box", view.drawer_outline))
    if view.bevel is not None:
        y = view.height if view.bevel == "top" else 0.0
        found.append(("bevel", ((0.0, y), (view.width, y))))
    return tuple(found)


def outline_page(view: FaceView) -> Page:
    """Draw one face: the outline is of class `cut`, holes `drill` and their own, words `mark`,
    lines on the face `mark` and their own name."""
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
    for name, line in lines_on(view):
        points = tuple((MARGIN + x, MARGIN + y) for x, y in line)
        layer = f"mark {name}"
        if len(points) > 2:
            marks.append(Outline(points=points, dash="dashed", layer=layer))
        else:
            (x1, y1), (x2, y2) = points
            marks.append(Line(x1=x1, y1=y1, x2=x2, y2=y2, dash="dashed", layer=layer))
    for x, y, words in words_beside(view):
        marks.append(Text(x=MARGIN + x, y=MARGIN + y, text=words, size=TEXT, layer="mark"))
    # A page of whole tenths: y is counted from its top, which rounding must not move.
    return Page(
        width=math.ceil((view.width + 2 * MARGIN) * 10) / 10,
        height=math.ceil((view.height + 2 * MARGIN) * 10) / 10,
        marks=tuple(marks),
        entry=f"{face_name(view)}: {drilled_words(view)}",
    )


def layer_name(hole: Hole) -> str:
    """Name a hole's layer: operation, diameter, depth in mm."""
    depth = "THROUGH" if hole.depth is None else f"D{figure(hole.depth)}"
    return f"{operation(hole).upper().replace('-', '_')}_{figure(hole.diameter)}_{depth}"


def face_dxf(view: FaceView) -> bytes:
    """Write one face as a drawing of its own, its lower left corner the origin."""
    w, h = view.width, view.height
    holes = [hole for fitting in view.fittings for hole in fitting.holes]
    return write_dxf(
        Drawing(
            lines=(
                ("OUTLINE", ((0.0, 0.0), (w, 0.0), (w, h), (0.0, h))),
                *((name.upper().replace("-", "_"), line) for name, line in lines_on(view)),
            ),
            circles=tuple((layer_name(hole), hole.x, hole.y, hole.diameter) for hole in holes),
            texts=tuple(
                DxfText(layer="TEXT", x=x, y=y, text=words, height=TEXT)
                for x, y, words in words_beside(view)
            ),
        )
    )
