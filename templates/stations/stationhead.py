"""The title of a station's pages: what is drilled, with which bit and stop, and its caution."""

from collections.abc import Sequence

from msgspec import Struct

from jigs.bench.station import Station
from templates.page.marks import Mark, Qr, Text
from templates.page.pieces import GAP, MarkBlock, moved, paragraph
from templates.page.typeface import text_width
from templates.stations.openbook import open_book
from templates.stations.stationrows import open_at
from templates.words.openwords import open_line
from templates.words.payload import spell
from templates.words.stationwords import (
    bit_words,
    cautions,
    hand_words,
    lying_words,
    station_title,
)
from templates.writers.qr import qr_side

MODULE = 0.6
"""Side of a QR module, mm."""
BOOK = 82.0
"""What the picture of a pair of boards takes of a page's width, mm."""


def station_payload(station: Station) -> str:
    """Say in a QR symbol which station it is, its code, and how many parts it serves."""
    parts = len({row.part.id for row in station.rows})
    return f"{spell(station_title(station))} STATION / {parts} PARTS / CODE {station.code}"


class StationHead(Struct, frozen=True, kw_only=True):
    """What the titles of a station's pages are made from; `faces`: which are drilled at it;
    `reason`: what tells it from its like; `told`: its steps."""

    station: Station
    faces: str
    reason: str
    told: Sequence[str] = ()

    def across(self, width: float, number: int) -> MarkBlock:
        """Lay a page's title across it: on the station's first one in full, its QR symbol at the
        right, on further ones what must be known there."""
        if number:
            title = _title(self.station, 5.0, width, again=True)
            block = _stacked([title, self._face(width, again=True), self._bits(width)])
            return MarkBlock(height=block.height + 1.5, marks=block.marks)
        payload = station_payload(self.station)
        side = qr_side(payload, MODULE)
        room = width - side - 2.0
        title = _title(self.station, 7.0, room)
        block = _stacked([title, self._face(room), *self._told(room), self._steps(width)])
        symbol = Qr(x=width - side + 4 * MODULE, y=4 * MODULE - side, text=payload, module=MODULE)
        return MarkBlock(height=max(block.height, side) + 1.5, marks=(*block.marks, symbol))

    def beside(self, width: float, number: int) -> MarkBlock:
        """Lay a page's title down a column, beside cards as high as the page."""
        name, behind = station_title(self.station), _behind(self.station, again=number > 0)
        return _stacked(
            [
                paragraph(name, width, size=5.0, bold=True),
                *([paragraph(behind, width, bold=True)] if behind else []),
                self._face(width, again=number > 0),
                *([self._bits(width)] if number else [*self._told(width), *self._numbered(width)]),
            ]
        )

    def _face(self, width: float, *, again: bool = False) -> MarkBlock:
        drill = "DRILL" if again else "DRILL THIS FACE"
        return paragraph(f"{drill}: {self.faces}", width, size=3.5, bold=True)

    def _bits(self, width: float) -> MarkBlock:
        bits = " ".join(bit_words(bit, brief=True) for bit in self.station.bits)
        return paragraph(bits, width, bold=True)

    def _numbered(self, width: float) -> list[MarkBlock]:
        return [
            paragraph(step, width, hang=str(row) if len(self.told) > 1 else "")
            for row, step in enumerate(self.told, 1)
        ]

    def _steps(self, width: float) -> MarkBlock:
        """Set the steps, of boards beside the picture of how a pair lies."""
        if not self.station.in_pairs:
            return _stacked(self._numbered(width))
        book, steps = open_book(), _stacked(self._numbered(width - BOOK))
        marks = (*book.marks, *moved(steps.marks, BOOK, 0.0))
        return MarkBlock(height=max(book.height, steps.height), marks=marks)

    def _told(self, width: float) -> list[MarkBlock]:
        """How the parts lie, what tells it from its like, bits, open numbers, cautions."""
        lies = filter(None, (lying_words(self.station), self.reason))
        bits = (bit_words(bit) for bit in self.station.bits)
        line = open_line(open_at(self.station), "page 1", brief=True)
        return [
            paragraph(" ".join(lies), width),
            paragraph(" ".join(bits), width, bold=True),
            *([paragraph(line, width, bold=True)] if line else []),
            paragraph(" ".join(cautions(self.station)), width),
        ]


def _title(station: Station, size: float, width: float, *, again: bool = False) -> MarkBlock:
    """Write the title, and behind it on which hand and the station's code, smaller where both find
    no room so; `again`: on a further page."""
    name, behind = station_title(station), _behind(station, again=again)
    room = width - 4.0 - text_width(behind, 2.5, True)
    size = next((s for s in (size, 5.0, 3.5) if text_width(name, s, True) <= room), 2.5)
    marks: list[Mark] = [Text(x=0.0, y=-size * 1.12, text=name, size=size, bold=True)]
    if behind:
        x = text_width(name, size, True) + 4.0
        marks.append(Text(x=x, y=-size * 1.12, text=behind, bold=True))
    return MarkBlock(height=size * 1.6, marks=tuple(marks))


def _behind(station: Station, *, again: bool) -> str:
    """Say behind a title what the hand is and the station's code; on a further page the hand
    alone: what stands there, rows and cards, has codes of its own."""
    code = "" if again else f"code {station.code}"
    return ", ".join(filter(None, (hand_words(station), code)))


def _stacked(pieces: list[MarkBlock]) -> MarkBlock:
    marks: list[Mark] = []
    down = 0.0
    for piece in pieces:
        marks += moved(piece.marks, 0.0, -down)
        down += piece.height + GAP
    return MarkBlock(height=down, marks=tuple(marks))
