"""The title of a station's pages: what is drilled, with which bit and stop, and its caution."""

from jigs.bench.station import Station
from templates.page.marks import Mark, Qr, Text
from templates.page.pieces import GAP, MarkBlock, moved, paragraph
from templates.page.typeface import text_width
from templates.stations.openbook import open_book
from templates.stations.stationrows import open_at
from templates.stations.stationview import Shop
from templates.words.openwords import open_line
from templates.words.payload import spell
from templates.words.stationwords import (
    bit_words,
    cautions,
    drilled_line,
    lying_words,
    station_title,
)
from templates.writers.qr import qr_side

MODULE = 0.6
"""Side of a QR module, mm."""


def station_payload(station: Station) -> str:
    """Say in a QR symbol which station it is, its code, and how many parts it serves."""
    parts = len({row.part.id for row in station.rows})
    return f"{spell(station_title(station))} STATION / {parts} PARTS / CODE {station.code}"


def full_head(shop: Shop, station: Station, width: float, reason: str) -> MarkBlock:
    """Lay the title across a station's first page, its QR symbol at the right."""
    payload = station_payload(station)
    side = qr_side(payload, MODULE)
    room = width - side - 2.0
    block = _stacked(
        [
            _title(station, 7.0, room),
            *_face(shop, station, room),
            *_told(station, room, reason),
            *([open_book()] if _in_pairs(station) else []),
        ]
    )
    symbol = Qr(x=width - side + 4 * MODULE, y=-side + 4 * MODULE, text=payload, module=MODULE)
    return MarkBlock(height=max(block.height, side) + 1.5, marks=(*block.marks, symbol))


def short_head(shop: Shop, station: Station, width: float) -> MarkBlock:
    """Lay what must be known on every further page across it."""
    bits = " ".join(bit_words(bit, brief=True) for bit in station.bits)
    block = _stacked(
        [
            _title(station, 5.0, width),
            *_face(shop, station, width),
            paragraph(bits, width, bold=True),
        ]
    )
    return MarkBlock(height=block.height + 1.5, marks=block.marks)


def beside_head(shop: Shop, station: Station, width: float, reason: str) -> MarkBlock:
    """Lay the title down a column, beside cards as high as the page."""
    return _stacked(
        [
            *_wrapped_title(station, width),
            *_face(shop, station, width),
            *_told(station, width, reason),
        ]
    )


def beside_again(shop: Shop, station: Station, width: float) -> MarkBlock:
    """Lay what must be known on every further page down a column."""
    bits = [paragraph(bit_words(bit, brief=True), width, bold=True) for bit in station.bits]
    return _stacked([*_wrapped_title(station, width), *_face(shop, station, width), *bits])


def _told(station: Station, width: float, reason: str) -> list[MarkBlock]:
    """How the parts lie, what tells this station from its like, bits, open numbers, cautions."""
    return [
        paragraph(" ".join(filter(None, (lying_words(station), reason))), width),
        paragraph(" ".join(bit_words(bit) for bit in station.bits), width, bold=True),
        *_open(station, width),
        paragraph(" ".join(cautions(station)), width),
    ]


def _open(station: Station, width: float) -> list[MarkBlock]:
    line = open_line(open_at(station), "page 1")
    return [paragraph(line, width, bold=True)] if line else []


def _in_pairs(station: Station) -> bool:
    """Tell whether a station's boards are laid in pairs: those of boxes not yet together."""
    boards = [row.part.board for row in station.rows if row.part.board is not None]
    return station.work == "sides" and any(not board.assembled for board in boards)


def _title(station: Station, size: float, width: float) -> MarkBlock:
    """Write the title and the station's code behind it, smaller where both find no room so."""
    name, code = station_title(station), f"station code {station.code}"
    room = width - 4.0 - text_width(code, 2.5, True)
    size = next((s for s in (size, 5.0, 3.5) if text_width(name, s, True) <= room), 2.5)
    marks: tuple[Mark, ...] = (
        Text(x=0.0, y=-size * 1.12, text=name, size=size, bold=True),
        Text(x=text_width(name, size, True) + 4.0, y=-size * 1.12, text=code, bold=True),
    )
    return MarkBlock(height=size * 1.6, marks=marks)


def _wrapped_title(station: Station, width: float) -> list[MarkBlock]:
    return [
        paragraph(station_title(station), width, size=5.0, bold=True),
        paragraph(f"station code {station.code}", width, bold=True),
    ]


def _face(shop: Shop, station: Station, width: float) -> list[MarkBlock]:
    return [paragraph(drilled_line(station, shop.views_of(station)), width, size=3.5, bold=True)]


def _stacked(pieces: list[MarkBlock]) -> MarkBlock:
    marks: list[Mark] = []
    down = 0.0
    for piece in pieces:
        marks += moved(piece.marks, 0.0, -down)
        down += piece.height + GAP
    return MarkBlock(height=down, marks=tuple(marks))
