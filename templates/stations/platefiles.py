"""A plate as a file at true size: SVG in mm, or DXF in mm, its origin where the card's is.

SVG has the layers as classes, DXF as layers in capitals: `CUT_OUTLINE`, `ENGRAVE_TEXT`.
"""

import math

from templates.page.marks import Circle, Line, Outline, Page, Text
from templates.page.pieces import moved
from templates.stations.plate import Plate
from templates.writers.dxf import Drawing, DxfText, write_dxf
from templates.writers.svg import write_svg

MARGIN = 5.0
"""Free round a plate in an SVG, mm."""


def plate_svg(plate: Plate) -> str:
    """Write a plate as SVG."""
    x0, y0, x1, y1 = plate.box
    page = Page(
        # A page of whole tenths: y is counted from its top, which rounding must not move.
        width=math.ceil((x1 - x0 + 2 * MARGIN) * 10) / 10,
        height=math.ceil((y1 - y0 + 2 * MARGIN) * 10) / 10,
        marks=tuple(moved(plate.marks, MARGIN - x0, MARGIN - y0)),
        entry=plate.title,
    )
    return write_svg(page)


def plate_dxf(plate: Plate) -> bytes:
    """Write a plate as DXF."""
    circles = [
        (_layer(mark), mark.x, mark.y, mark.diameter)
        for mark in plate.marks
        if isinstance(mark, Circle)
    ]
    lines = [
        (_layer(mark), mark.points if isinstance(mark, Outline) else _ends(mark))
        for mark in plate.marks
        if isinstance(mark, Outline | Line)
    ]
    texts = [
        DxfText(layer=_layer(mark), x=mark.x, y=mark.y, text=mark.text, height=mark.size,
              angle=mark.angle, middle=mark.anchor == "middle")
        for mark in plate.marks
        if isinstance(mark, Text)
    ]  # fmt: skip
    return write_dxf(Drawing(circles=tuple(circles), lines=tuple(lines), texts=tuple(texts)))


def _ends(line: Line) -> tuple[tuple[float, float], ...]:
    return ((line.x1, line.y1), (line.x2, line.y2))


def _layer(mark: Circle | Outline | Line | Text) -> str:
    return mark.layer.upper().replace(" ", "_")
