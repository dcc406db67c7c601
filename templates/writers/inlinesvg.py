"""The writer of drawings within a page: marks in, the elements of an `<svg>` out.

How a line looks, its width, its colour by day and by night, says the page's style sheet: a mark's
`layer` becomes its class, and its own width and name are passed over. y is flipped here; figures
are rounded to a tenth of the drawing's unit.

>>> from templates.page.marks import Line
>>> draw_inline([Line(x1=0, y1=0, x2=12.34, y2=5, layer="edge")], 50.0)
'<path class="edge" d="M0 50L12.3 45"/>'
"""

from collections.abc import Iterable, Sequence
from html import escape
from itertools import groupby

from templates.page.marks import Area, Circle, Line, Mark, Outline, Qr, Text
from templates.page.typeface import EM_PER_CAP
from templates.writers.svg import plain_text


def draw_inline(marks: Iterable[Mark], height: float) -> str:
    """Draw marks on a sheet of this height; what follows each other and looks alike is written
    together: lines as one path, circles and texts as one group."""
    return "".join(_together(list(run), look, height) for look, run in groupby(marks, _look))


def _look(mark: Mark) -> tuple[str, str]:
    """Give the element of a mark, and the attributes that it shares with others like it."""
    match mark:
        case Line() | Outline() | Area():
            return "path", _class(mark.layer)
        case Circle():
            return "circle", _class(mark.layer)
        case Text():
            anchor = f' text-anchor="{mark.anchor}"' if mark.anchor != "start" else ""
            size = _figure(mark.size * EM_PER_CAP)
            return "text", f'{_class(mark.layer)} font-size="{size}"{anchor}'
        case Qr():
            raise NotImplementedError("a page on a screen carries no symbol")


def _together(run: Sequence[Mark], look: tuple[str, str], height: float) -> str:
    element, attributes = look
    if element == "path":
        return f'<path{attributes} d="{"".join(_stretch(mark, height) for mark in run)}"/>'
    if len(run) == 1:
        return _single(run[0], attributes, height)
    return f"<g{attributes}>{''.join(_single(mark, '', height) for mark in run)}</g>"


def _stretch(mark: Mark, height: float) -> str:
    """Give a line's stretch of a path (SVG 1.1, 8.3)."""
    match mark:
        case Line():
            return f"M{_points(((mark.x1, mark.y1), (mark.x2, mark.y2)), height)}"
        case Outline() | Area():
            return f"M{_points(mark.points, height)}z"
        case Circle() | Text() | Qr():
            raise AssertionError("no line")


def _points(points: Iterable[tuple[float, float]], height: float) -> str:
    return "L".join(f"{_figure(x)} {_figure(height - y)}" for x, y in points)


def _single(mark: Mark, attributes: str, height: float) -> str:
    """Give a circle or a text."""
    if isinstance(mark, Circle):
        at = f'cx="{_figure(mark.x)}" cy="{_figure(height - mark.y)}"'
        return f'<circle{attributes} {at} r="{_figure(mark.diameter / 2)}"/>'
    assert isinstance(mark, Text), "a line is a stretch of a path"
    x, y = _figure(mark.x), _figure(height - mark.y)
    turned = f' transform="rotate({-mark.angle} {x} {y})"' if mark.angle else ""
    words = escape(plain_text(mark.text))
    return f'<text{attributes} x="{x}" y="{y}"{turned}>{words}</text>'


def _class(layer: str) -> str:
    return f' class="{escape(layer)}"' if layer else ""


def _figure(value: float) -> str:
    """Write a figure to a tenth, a whole one as such; never a negative nothing."""
    rounded = round(value, 1) + 0.0
    return str(int(rounded)) if rounded == int(rounded) else str(rounded)
