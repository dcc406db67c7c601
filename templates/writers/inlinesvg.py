"""The writer of drawings within a page: marks in, the elements of an `<svg>` out.

How a line looks, its width, its colour by day and by night, says the page's style sheet: a mark's
`layer` becomes its class, and its own width and name are passed over. y is flipped here; figures
are rounded to a tenth of the drawing's unit.

>>> from templates.page.marks import Line
>>> draw_inline([Line(x1=0, y1=0, x2=12.34, y2=5, layer="edge")], 50.0)
'<path class="edge" d="M0 50L12.3 45"/>'
"""

from collections.abc import Iterable
from html import escape

from templates.page.marks import Area, Circle, Line, Mark, Outline, Qr, Text
from templates.page.typeface import EM_PER_CAP
from templates.writers.svg import plain_text


def draw_inline(marks: Iterable[Mark], height: float) -> str:
    """Draw marks on a sheet of this height; lines of one class that follow each other are one
    path."""
    found: list[str] = []
    run: list[str] = []
    layer = ""

    def end_run() -> None:
        if run:
            found.append(f'<path{_class(layer)} d="{"".join(run)}"/>')
            run.clear()

    for mark in marks:
        match mark:
            case Line() | Outline() | Area():
                if mark.layer != layer:
                    end_run()
                layer = mark.layer
                run.append(_run(mark, height))
            case Circle():
                end_run()
                at = f'cx="{_figure(mark.x)}" cy="{_figure(height - mark.y)}"'
                radius = _figure(mark.diameter / 2)
                found.append(f'<circle{_class(mark.layer)} {at} r="{radius}"/>')
            case Text():
                end_run()
                found.append(_text(mark, height))
            case Qr():
                raise NotImplementedError("a page on a screen carries no symbol")
    end_run()
    return "".join(found)


def _run(mark: Line | Outline | Area, height: float) -> str:
    """Give a line's stretch of a path (SVG 1.1, 8.3)."""
    if isinstance(mark, Line):
        return f"M{_points(((mark.x1, mark.y1), (mark.x2, mark.y2)), height)}"
    return f"M{_points(mark.points, height)}z"


def _points(points: Iterable[tuple[float, float]], height: float) -> str:
    return "L".join(f"{_figure(x)} {_figure(height - y)}" for x, y in points)


def _text(mark: Text, height: float) -> str:
    x, y = _figure(mark.x), _figure(height - mark.y)
    turned = f' transform="rotate({-mark.angle} {x} {y})"' if mark.angle else ""
    anchor = f' text-anchor="{mark.anchor}"' if mark.anchor != "start" else ""
    size = _figure(mark.size * EM_PER_CAP)
    return (
        f'<text{_class(mark.layer)} x="{x}" y="{y}" font-size="{size}"{anchor}{turned}>'
        f"{escape(plain_text(mark.text))}</text>"
    )


def _class(layer: str) -> str:
    return f' class="{escape(layer)}"' if layer else ""


def _figure(value: float) -> str:
    """Write a figure to a tenth, a whole one as such; never a negative nothing."""
    rounded = round(value, 1) + 0.0
    return str(int(rounded)) if rounded == int(rounded) else str(rounded)
