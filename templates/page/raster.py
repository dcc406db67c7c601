"""What a printer asks of a page of labels: its correction, its offset, and its whole dots.

A page is drawn times `scale` (see `marks.Page`); a dot stands in the printer, after that. So a
place is on a whole dot if it is one *times* the scale, counted from the page's lower left corner.
The page is cut down to whole dots too: then its upper edge, from which a printer counts, is on
one as well.

>>> thermal = Raster(dots=203)
>>> [round(side, 4) for side in thermal.module(0.6)]
[0.6256, 0.6256]
>>> round(thermal.page(50.0, 25.0)[0] / (25.4 / 203), 2)
399.0
"""

import math

from msgspec import Struct

from jigs.given.printer import Printer
from jigs.ground.dotpitch import MODULE, dot, dots_of_module
from templates.page.marks import Qr

SHORT = 0.004
"""By so much of a module dark ones end before their dots do, where the dots are known. Every dot
is painted that a shape touches (ISO 32000-1:2008, 10.6.5, from memory), so that a rounding beyond
the edge between two dots would make each module a dot larger."""

_HAIR = 0.0005
"""Taken off a page of whole dots, mm: a writer's rounding must not make one dot more of it."""


class Raster(Struct, frozen=True, kw_only=True):
    """`dots` per inch, None where they do not count; `scale` across and up; `shift`: how far
    labels are moved to the right and up, mm."""

    dots: int | None = None
    scale: tuple[float, float] = (1.0, 1.0)
    shift: tuple[float, float] = (0.0, 0.0)

    def module(self, wanted: float = MODULE) -> tuple[float, float]:
        """Give width and height of a QR module that is to be `wanted` mm, or the nearest to it in
        whole dots; alike but for a corrected printer's dots."""
        if self.dots is None:
            return wanted, wanted
        count = dots_of_module(self.dots, max(self.scale), module=wanted)
        across, up = self.scale
        return count * dot(self.dots) / across, count * dot(self.dots) / up

    def symbol(self, x: float, y: float, text: str, wanted: float = MODULE) -> Qr:
        """Give the QR symbol of a text with its lower left corner on the next whole dot."""
        across, up = self.module(wanted)
        x, y = self.to_dot(x, y)
        return Qr(
            x=x,
            y=y,
            text=text,
            module=across,
            rise=None if up == across else up,
            short=0.0 if self.dots is None else SHORT,
        )

    @property
    def slack(self) -> float:
        """What it may cost to move a mark to a whole dot, mm."""
        return 0.0 if self.dots is None else dot(self.dots) / min(self.scale)

    def to_dot(self, x: float, y: float) -> tuple[float, float]:
        """Move a place to the next whole dot to the right and up; mm."""
        if self.dots is None:
            return x, y
        pitch = dot(self.dots)
        across, up = (pitch / scale for scale in self.scale)
        return math.ceil(x / across - 1e-6) * across, math.ceil(y / up - 1e-6) * up

    def page(self, width: float, height: float) -> tuple[float, float]:
        """Give the size at which a sheet is drawn: times the scale it is the sheet again, or as
        many whole dots as it holds; mm."""
        if self.dots is not None:
            pitch = dot(self.dots)
            width, height = (
                math.floor(size / pitch + 1e-6) * pitch - _HAIR for size in (width, height)
            )
        return width / self.scale[0], height / self.scale[1]


def raster_of(printer: Printer | None, dots: int | None) -> Raster:
    """Give the raster of a printer; `dots` where something else says them."""
    if printer is None:
        return Raster(dots=dots)
    return Raster(
        dots=dots or printer.dots,
        scale=(printer.scale_across, printer.scale_along),
        shift=(printer.labels_right, printer.labels_up),
    )
