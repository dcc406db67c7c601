"""The table of a station: a row for each part, in the order of the bench.

Each row has the part's ID and code, its size with blanks for what is measured, the height of every
line with boxes to tick, and sums that close on the part; what a row has like the one above it, its
kind and its wall, stands once. Rows are blocks that flow down the page.
"""

from collections.abc import Container, Iterator, Sequence
from collections.abc import Set as AbstractSet

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.bench.station import Row, Setting, Start, Station
from jigs.given.confirming import OpenNumber
from templates.page.marks import Text
from templates.page.pieces import MarkBlock, paragraph
from templates.page.typeface import text_width
from templates.stations.rowblocks import Chip, RowWords, alike, row_block, rows_block
from templates.stations.rowfacts import open_line_of, said_above, said_in_row
from templates.stations.stationview import Shop
from templates.stations.tablepieces import (
    Span,
    TableBlock,
    joined,
    set_spans,
    spans_width,
)
from templates.words.facewords import edge_words
from templates.words.markingwords import marks_words
from templates.words.rowwords import (
    NEXT,
    UP,
    kind_and_place,
    kind_of,
    setting_name,
    sum_words,
    wall_of,
)
from templates.words.saying import facts_of
from templates.words.stationwords import STRUCK_WORDS, names_kind, setting_figure

MIDDLES: frozenset[Start] = frozenset({"middle-x", "middle-y"})
"""They have no figure that would stand in a row."""
TOGETHER = 8
"""So many parts that are alike stand in one block at most, so that it finds room on a page."""


def rows_of(shop: Shop, station: Station, width: float) -> Iterator[TableBlock]:
    """Give the rows of a station's table as blocks."""
    usual = _usual_starts(station)
    above = said_above(shop, station)
    told = {text for texts in above.values() for text in texts}
    words_of = [*_words_of(shop, station, usual, told)]
    low = dict.fromkeys(edge_words(view, "bottom") for view in shop.views_of(station))
    head = _captions(station, usual, width, low=" / ".join(low))
    if told:  # on each page that the table goes on to
        words = " ".join(who + " ".join(texts) for who, texts in above.items())
        head = joined(paragraph(words, width, bold=True), head)
    runs: list[list[RowWords]] = []
    for row in words_of:
        if runs and len(runs[-1]) < TOGETHER and alike([*runs[-1], row]):
            runs[-1].append(row)
        else:
            runs.append([row])
    for run in runs:
        for block, first in _blocks(run, width):
            yield TableBlock(block=block, head=head, first=first)


def _blocks(rows: Sequence[RowWords], width: float) -> Iterator[tuple[MarkBlock, MarkBlock]]:
    """Lay out rows that are alike together where they find room so, else each by itself; each
    block as it goes on, and as it stands first on its page."""
    if len(rows) > 1:
        together = (rows_block(rows, width, first=False), rows_block(rows, width, first=True))
        if together[0] is not None and together[1] is not None:
            yield together[0], together[1]
            return
    for row in rows:
        yield row_block(row, width, first=False), row_block(row, width, first=True)


class NextCard(Struct):
    """Which copies of the cards were taken up, in the order of a table."""

    _taken: dict[str, int] = field(default_factory=dict)

    def is_next(self, setting: Setting) -> bool:
        """Tell whether a fresh copy is to be taken for a setting."""
        before = self._taken.get(setting.card, 1)
        self._taken[setting.card] = max(before, setting.copy)
        return setting.copy > before


def _usual_starts(station: Station) -> frozenset[Start]:
    """Give whence all lines of a station are struck, where none can be taken for another: up from
    the bottom, on the middle. It is said in the captions and in no row; else each says its own."""
    settings = [setting for row in station.rows for setting in row.settings]
    places = [[each.x for each in settings], [each.y for each in settings]]
    starts = [{place.start if place else None for place in along} for along in places]
    middles = {start for along in starts if len(along) == 1 for start in along if start in MIDDLES}
    figures = {start for along in starts for start in along if start} - MIDDLES
    return frozenset(middles | figures if figures <= {"bottom"} else middles)


def _captions(station: Station, usual: frozenset[Start], width: float, *, low: str) -> MarkBlock:
    """Say once a page what the rows of a table have."""
    y = -3.2
    pieces = caption_spans(station, usual, low)
    size = "yours"
    marks = set_spans(pieces, 0.0, y)
    if spans_width(pieces) + text_width(size, 2.5) + 3.0 < width:
        marks.append(Text(x=width, y=y, text=size, anchor="end"))
    return MarkBlock(height=-y + 1.2, marks=tuple(marks))


def caption_spans(station: Station, usual: AbstractSet[Start], low: str) -> list[Span]:
    """Say what is ticked in each row, and from where its figures count; `low`: what the lower end
    of the parts is called."""
    if station.marked:
        return [Span("cards:"), Span("set", tick=True)]
    settings = [setting for row in station.rows for setting in row.settings]
    card = f"CARD {one}" if (one := one_card(station, usual)) else "CARD"
    pieces = [Span(f"{card}, line on the MIDDLE:" if usual & MIDDLES else f"{card}:")]
    if "bottom" in usual:
        pieces.append(Span(f"{UP} UP FROM {low}:", bold=True))
    if any(setting.x is not None or setting.y is not None for setting in settings):
        pieces.append(Span("struck", tick=True))
    pieces.append(Span("bored", tick=True))
    return pieces


def one_card(station: Station, usual: AbstractSet[Start]) -> str:
    """Give the letter of a station's only card where each setting has a figure of its own: it is
    said in the captions and in no row; else ""."""
    settings = [setting for row in station.rows for setting in row.settings]
    figures = (
        any(place and place.start not in usual & MIDDLES for place in (each.x, each.y))
        for each in settings
    )
    return station.cards[0].letter if len(station.cards) == 1 and all(figures) else ""


def open_at(station: Station) -> tuple[OpenNumber, ...]:
    """Give the open numbers of all rows of a station: its title names them."""
    return tuple(dict.fromkeys(number for row in station.rows for number in row.open))


def _words_of(
    shop: Shop, station: Station, usual: AbstractSet[Start], told: Container[str]
) -> Iterator[RowWords]:
    """Give the words of each row. `told`: what is said above of all."""
    taken = NextCard()
    one = one_card(station, usual)
    kind_told = names_kind(station, shop.views_of(station))
    layout, before = shop.layout, ("", "")
    for row in station.rows:
        part = row.part
        here = (kind_of(layout, part), wall_of(layout, part))
        names = [
            kind_and_place(
                layout, part, row.serves,
                kind_told=kind_told or same[0], wall_told=same[1],
            )
            for same in ((here[0] == before[0], here[1] == before[1]), (False, False))
        ]  # fmt: skip
        before = here
        stamp = open_line_of(station, row.open)
        words = RowWords(
            part=part,
            named=names[0],
            in_full=names[1],
            open="" if stamp in told else stamp,
        )
        if row.held:
            yield replace(words, hold=facts_of(row.held, layout.job.shown))
            continue
        chips: list[Chip] = [
            tuple(setting_spans(setting, usual, taken, told=one)) for setting in row.settings
        ]
        if row.marks is not None:
            chips += [(Span("marked", tick=True),), (Span("bored", tick=True),)]
        yield replace(
            words,
            chips=tuple(chips),
            copies=tuple(setting.copy for setting in row.settings),
            closed=(marks_words(row.marks),) if row.marks else _sums(row),
            more=tuple(text for text in said_in_row(shop, row) if text not in told),
        )


def _sums(row: Row) -> tuple[str, ...]:
    return tuple(dict.fromkeys(map(sum_words, row.closing)))


def setting_spans(
    setting: Setting, usual: AbstractSet[Start], taken: NextCard, *, told: str = ""
) -> list[Span]:
    """Say one setting: card, where its lines are struck, and what is ticked when it is done;
    whence the lines are struck only where that is not `usual`, the card's letter unless it is
    `told` above."""
    pieces = [Span(NEXT, bold=True, loose=True)] if taken.is_next(setting) else []
    if name := setting_name(setting, told=told):
        pieces.append(Span(name, bold=True))
    told_above = usual & MIDDLES
    places = [each for each in (setting.y, setting.x) if each and each.start not in told_above]
    for number, place in enumerate(places):
        if number:
            pieces[-1] = replace(pieces[-1], text=f"{pieces[-1].text},")
        if place.start in MIDDLES:
            pieces.append(Span("MIDDLE", 3.5, True))
            continue
        mm, inches = setting_figure(place)
        way = f"{UP} " if place.start == "bottom" else ""
        pieces += [Span(f"{way}{mm}", 3.5, True), Span(inches)]
        if place.start not in usual:
            pieces.append(Span(STRUCK_WORDS[place.start], bold=True))
    if setting.x is not None or setting.y is not None:
        pieces.append(Span("", tick=True))
    pieces.append(Span("", tick=True))
    return pieces
