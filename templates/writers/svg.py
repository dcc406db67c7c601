"""The SVG writer: a page of marks in, the text of one drawing out (SVG 1.1, W3C).

The user unit is the millimetre: `width` and `height` are given in mm and the view box counts in
them, so that the drawing opens at its true size. SVG counts y downwards from the top; here, and
nowhere else, it is flipped. Numbers are rounded to 0.001 mm. The same page gives the same bytes.

A mark's `layer` becomes its class; its `name` stands in `data-part`, and in `id` as well on the
first mark that has it (a later one is told apart by a number behind a full stop).

>>> from templates.page.marks import Outline, Page
>>> front = Outline(points=((10, 5), (32, 5), (32, 40), (10, 40)), layer="front", name="B1-1")
>>> print(write_svg(Page(width=50, height=60, marks=(front,))).splitlines()[5].strip())
<rect class="front" data-part="B1-1" height="35" id="B1-1" width="22" x="10" y="20"/>
"""

import io
import math
import re
import unicodedata
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from templates.page.marks import Area, Circle, Dash, Line, Mark, Outline, Page, Qr, Text
from templates.page.typeface import EM_PER_CAP, text_width, with_times
from templates.writers.qr import qr_matrix

if TYPE_CHECKING:
    from svgwrite import Drawing

FACES = (
    "'Fira Sans Condensed', 'Roboto Condensed', 'Arial Narrow', 'Liberation Sans Narrow', "
    "sans-serif"
)
"""The printed face and what stands in for it where it is not installed. Each line of text is held
to the width it has in the printed face, whichever of them draws it. As in print, letters are not
moved together (CSS Fonts 3, 6.3, 6.4)."""

_DASHES: dict[Dash, tuple[float, ...]] = {"": (), "dashed": (12, 3), "axis": (24, 3, 1, 3)}
"""In line widths, as the PDF has them (ISO 128)."""

_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_.-]*")
"""An ID that XML allows (NCName, its ASCII part)."""


def write_svg(page: Page, *, title: str = "") -> str:
    """Write a page as one SVG drawing at its true size; a drawing's `title` shows in a browser.

    Raises ValueError for a number that is not finite.
    """
    # Imported here: the library is slow to load.
    from svgwrite import Drawing

    width, height = _number(page.width), _number(page.height)
    across, up = page.scale
    drawing = Drawing(
        size=(f"{_number(page.width * across)}mm", f"{_number(page.height * up)}mm"),
        viewBox=f"0 0 {width} {height}",
        debug=False,
    )
    if page.scale != (1.0, 1.0):
        drawing["preserveAspectRatio"] = "none"
    if title or page.entry:
        drawing.set_desc(title=plain_text(title or page.entry))
    writer = _Writer(drawing, page.height)
    drawing.add(drawing.rect((0, 0), (width, height), fill="white", class_="paper"))
    strokes = drawing.add(
        drawing.g(
            fill="none",
            stroke="black",
            stroke_width=_number(0.18),
            font_family=FACES,
            style="font-kerning: none; font-variant-ligatures: none",
        )
    )
    for mark in page.marks:
        strokes.add(writer.element(mark))
    text = io.StringIO()
    drawing.write(text, pretty=True, indent=1)
    return text.getvalue()


class _Writer:
    """Makes the elements of one drawing; `height` is the page's, from which y is flipped."""

    def __init__(self, drawing: "Drawing", height: float) -> None:
        self._drawing = drawing
        self._height = height
        self._names: dict[str, int] = {}

    def element(self, mark: Mark) -> Any:
        """Give the element of a mark."""
        make = self._drawing
        match mark:
            case Line():
                start, end = self._point(mark.x1, mark.y1), self._point(mark.x2, mark.y2)
                return make.line(start, end, **self._stroke(mark))
            case Circle():
                radius = _number(mark.diameter / 2)
                return make.circle(self._point(mark.x, mark.y), radius, **self._stroke(mark))
            case Outline():
                return self._closed(mark.points, self._stroke(mark))
            case Area():
                return self._closed(
                    mark.points, {"fill": mark.fill, "stroke": "none", **self._said(mark)}
                )
            case Text():
                return self._text(mark)
            case Qr():
                return make.path(self._symbol(mark), fill="black", stroke="none", class_="qr")

    def _point(self, x: float, y: float) -> tuple[float | int, float | int]:
        return _number(x), _number(self._height - y)

    def _said(self, mark: Line | Circle | Area | Outline | Text) -> dict[str, Any]:
        """Give class, part and ID of a mark."""
        said: dict[str, Any] = {}
        if mark.layer:
            said["class_"] = plain_text(mark.layer)
        if mark.name:
            name = plain_text(mark.name)
            said["data-part"] = name
            known = name if _NAME.fullmatch(name) else "_" + re.sub(r"[^A-Za-z0-9_-]", "_", name)
            count = self._names[known] = self._names.get(known, 0) + 1
            said["id"] = known if count == 1 else f"{known}.{count}"
        return said

    def _stroke(self, mark: Line | Circle | Outline) -> dict[str, Any]:
        given = self._said(mark)
        if mark.width != 0.18:
            given["stroke_width"] = _number(mark.width)
        if not isinstance(mark, Circle) and mark.dash:
            given["stroke_dasharray"] = " ".join(
                str(_number(part * mark.width)) for part in _DASHES[mark.dash]
            )
        return given

    def _closed(self, points: Sequence[tuple[float, float]], given: dict[str, Any]) -> Any:
        """Give a closed polygon, as a rectangle where it is one, unless it is dashed: the dashes
        of a rectangle would begin at a corner of SVG's own choice."""
        corners = _corners(points)
        if corners is None or "stroke_dasharray" in given:
            return self._drawing.polygon([self._point(*point) for point in points], **given)
        x0, y0, x1, y1 = corners
        # The sizes are rounded as such: as a difference of rounded ends they would be less true.
        size = (_number(x1 - x0), _number(y1 - y0))
        return self._drawing.rect(self._point(x0, y1), size, **given)

    def _text(self, mark: Text) -> Any:
        text = plain_text(with_times(mark.text))
        x, y = self._point(mark.x, mark.y)
        given = self._said(mark)
        given |= {"fill": "black", "stroke": "none", "font_size": _number(mark.size * EM_PER_CAP)}
        if mark.bold:
            given["font_weight"] = 600
        if mark.anchor != "start":
            given["text_anchor"] = mark.anchor
        if len(text) > 1:
            given["textLength"] = _number(text_width(mark.text, mark.size, mark.bold))
            given["lengthAdjust"] = "spacingAndGlyphs"
        if mark.angle:
            given["transform"] = f"rotate({-mark.angle} {x} {y})"
        element = self._drawing.text(text, insert=(x, y), **given)
        if "  " in text:  # which XML else makes one space of
            element["xml:space"] = "preserve"
        return element

    def _symbol(self, mark: Qr) -> str:
        """Give the runs of dark modules as one path: filled apart, they would show seams."""
        matrix = qr_matrix(mark.text)
        rise = mark.module if mark.rise is None else mark.rise
        runs: list[str] = []
        for row, modules in enumerate(matrix):
            start = None
            for at, dark in enumerate((*modules, False)):
                if dark and start is None:
                    start = at
                elif not dark and start is not None:
                    x, y = self._point(
                        mark.x + (start + mark.short) * mark.module,
                        mark.y + (len(matrix) - row - mark.short) * rise,
                    )
                    wide = (at - start - 2 * mark.short) * mark.module
                    high = (1 - 2 * mark.short) * rise
                    runs.append(f"M{x} {y}h{_number(wide)}v{_number(high)}h{_number(-wide)}z")
                    start = None
        return "".join(runs)


def _corners(points: Sequence[tuple[float, float]]) -> tuple[float, float, float, float] | None:
    """Give the lower left and upper right corner of an upright rectangle, None for another."""
    if len(points) != 4:
        return None
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = points
    lying = ay == by and bx == cx and cy == dy and dx == ax
    standing = ax == bx and by == cy and cx == dx and dy == ay
    if not (lying or standing):
        return None
    return min(ax, cx), min(ay, cy), max(ax, cx), max(ay, cy)


def _number(value: float) -> float | int:
    """Give a number to 0.001, whole ones as such; never a negative nothing."""
    if not math.isfinite(value):
        raise ValueError(f"a number that is not finite in a drawing: {value}")
    rounded = round(value, 3)
    return int(rounded) if rounded == int(rounded) else rounded


def plain_text(text: str) -> str:
    """Give a text without what XML forbids: control characters go, white space becomes a space."""
    kept = []
    for character in unicodedata.normalize("NFC", text):
        if character.isspace():
            kept.append(" ")
        elif unicodedata.category(character) not in ("Cc", "Cf", "Cs", "Co", "Cn"):
            kept.append(character)
    return "".join(kept)
