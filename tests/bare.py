"""What the bare library takes to draw the marks of some pages: `tests/bench.py` compares.

It draws the very same marks, each with the library's own call for it. A count of lines, circles and
texts is no measure: a text's letters, its embedded face and a symbol's size are what costs time.
"""

import io
import time
from collections.abc import Iterable, Sequence
from typing import Any

import qrcode
from reportlab.pdfbase.pdfmetrics import registerFont
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from templates.page.marks import Area, Circle, Dash, Line, Outline, Page, Qr, Text
from templates.page.typeface import EM_PER_CAP, font_path

POINT = 72 / 25.4
DASHES: dict[Dash, tuple[float, ...]] = {"": (), "dashed": (12, 3), "axis": (24, 3, 1, 3)}
"""In line widths, as the writer has them."""


class Bare:
    """The bare library drawing marks as they are, one call each, as whoever knows it would: faces
    embedded, width, dash and font set where they change, a symbol in one path. It plans nothing,
    measures nothing, and keeps nothing from one page to the next."""

    def __init__(self) -> None:
        for name, bold in (("plain", False), ("bold", True)):
            registerFont(TTFont(name, str(font_path(bold))))
        self.canvas: Any = Canvas(io.BytesIO(), invariant=1)
        self.now: dict[str, object] = {}

    def draw(self, page: Page) -> None:
        self.canvas.setPageSize((page.width * POINT, page.height * POINT))
        self.now = {}
        for mark in page.marks:
            match mark:
                case Text():
                    self._text(mark)
                case Line():
                    self._pen(mark.width, mark.dash)
                    ends = (mark.x1, mark.y1, mark.x2, mark.y2)
                    self.canvas.line(*(end * POINT for end in ends))
                case Circle():
                    self._pen(mark.width, "")
                    self.canvas.circle(mark.x * POINT, mark.y * POINT, mark.diameter / 2 * POINT)
                case Outline():
                    self._pen(mark.width, mark.dash)
                    self.canvas.drawPath(self._polygon(mark.points))
                case Area():
                    self._set("setFillGray", 0 if mark.fill == "black" else 1)
                    self.canvas.drawPath(self._polygon(mark.points), stroke=0, fill=1)
                    self._set("setFillGray", 0)
                case Qr():
                    self._symbol(mark)
        self.canvas.showPage()

    def _set(self, what: str, *values: object) -> None:
        if self.now.get(what) != values:
            self.now[what] = values
            getattr(self.canvas, what)(*values)

    def _pen(self, width: float, dash: Dash) -> None:
        self._set("setLineWidth", width * POINT)
        self._set("setDash", [length * width * POINT for length in DASHES[dash]])

    def _polygon(self, points: Sequence[tuple[float, float]]) -> object:
        path = self.canvas.beginPath()
        for row, (x, y) in enumerate(points):
            (path.lineTo if row else path.moveTo)(x * POINT, y * POINT)
        path.close()
        return path

    def _text(self, mark: Text) -> None:
        self._set("setFont", "bold" if mark.bold else "plain", mark.size * EM_PER_CAP * POINT)
        ways = {"start": "drawString", "middle": "drawCentredString", "end": "drawRightString"}
        write = getattr(self.canvas, ways[mark.anchor])
        x, y = mark.x * POINT, mark.y * POINT
        if not mark.angle:
            write(x, y, mark.text)
            return
        self.canvas.saveState()
        self.canvas.translate(x, y)
        self.canvas.rotate(mark.angle)
        write(0, 0, mark.text)
        self.canvas.restoreState()

    def _symbol(self, mark: Qr) -> None:
        code = qrcode.QRCode(
            border=0,
            error_correction=qrcode.constants.ERROR_CORRECT_M,
            mask_pattern=3,  # as ours
        )
        code.add_data(mark.text)
        code.make()
        path = self.canvas.beginPath()
        module = mark.module * POINT
        for y, row in enumerate(reversed(code.get_matrix())):
            for x, dark in enumerate(row):
                if dark:
                    corner = (mark.x * POINT + x * module, mark.y * POINT + y * module)
                    path.rect(*corner, module, module)
        self.canvas.drawPath(path, stroke=0, fill=1)


def draw_bare(pages: Iterable[Page]) -> float:
    """Draw the same marks with the bare library; give the time, in seconds."""
    started = time.process_time()
    bare = Bare()
    for page in pages:
        bare.draw(page)
    bare.canvas.save()
    return time.process_time() - started
