"""Marks on a page, in mm from its lower left corner, x to the right and y up.

Cards, sheets and labels are made of these; a writer turns them into a file and knows nothing
else. Only a writer whose format counts downwards flips y.

A mark may say what it draws: `layer` is its kind (`front`, `pull`, `swing`, ...), `name` the ID of
the part. A writer whose format knows names and classes passes them on, for whoever looks for one
part or turns off one kind; on paper they are not seen.

A kitchen asks for some 80,000 of them, which hold nothing that could lead back to them: the
collector of garbage leaves them out (`gc=False`).
"""

from typing import Literal

from msgspec import Struct

Dash = Literal["", "dashed", "axis"]
"""Line style: continuous, dashed (hidden edges, outlines), long-dashed dotted (axes); ISO 128."""

THIN = 0.18
"""Crosses, dimension and extension lines; mm (ISO 128 line widths)."""
MEDIUM = 0.25
"""The small picture, frames; mm."""
WIDE = 0.35
"""Hole circles, and no other circle; mm."""


class Line(Struct, frozen=True, gc=False):
    """A straight line from (x1, y1) to (x2, y2)."""

    x1: float
    y1: float
    x2: float
    y2: float
    width: float = THIN
    dash: Dash = ""
    layer: str = ""
    name: str = ""


class Circle(Struct, frozen=True, gc=False):
    """The outline of a hole at its true diameter: the only circle on a sheet."""

    x: float
    y: float
    diameter: float
    width: float = WIDE
    layer: str = ""
    name: str = ""


class Area(Struct, frozen=True, gc=False):
    """A filled polygon, black or white."""

    points: tuple[tuple[float, float], ...]
    fill: Literal["black", "white"] = "black"
    layer: str = ""
    name: str = ""


class Outline(Struct, frozen=True, gc=False):
    """A closed polygon, not filled."""

    points: tuple[tuple[float, float], ...]
    width: float = THIN
    dash: Dash = ""
    layer: str = ""
    name: str = ""


class Text(Struct, frozen=True, gc=False):
    """One line of text. `size` is the height of a capital in mm (ISO 3098: 2.5, 3.5, 5, 7 ...);
    (x, y) is the base line's point at `anchor`; `angle` 0, 90 to read from the right, or 180
    to read with the page turned half round."""

    x: float
    y: float
    text: str
    size: float = 2.5
    bold: bool = False
    anchor: Literal["start", "middle", "end"] = "start"
    angle: Literal[0, 90, 180] = 0
    layer: str = ""
    name: str = ""


class Qr(Struct, frozen=True, gc=False):
    """A QR symbol of `text`; (x, y) is the lower left corner of its dark modules' square and
    `module` the side of one module. The quiet zone of 4 modules is the caller's to keep free.
    `rise`: the height of a module where a printer's correction makes that another length.
    `short`: by so much of a module dark ones end before their edges, for printers that burn
    every dot that is touched."""

    x: float
    y: float
    text: str
    module: float = 0.5
    rise: float | None = None
    short: float = 0.0


Mark = Line | Circle | Area | Outline | Text | Qr


class Page(Struct, frozen=True, kw_only=True):
    """One page. `entry` is its line in the document's outline: the first page of each entry is
    the one the outline points at. `scale` is what a printer's error asks for, across and up: a
    writer draws everything, the page itself too, times it, and nothing else is ever scaled."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    entry: str = ""
    scale: tuple[float, float] = (1.0, 1.0)
