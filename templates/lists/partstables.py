"""The cut list for people: board by board, and on each board box by box.

The screws' places and the grooves are many and alike: each pattern is written once, under the
tables, by a short name (P1, G1).
"""

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct, field

from jigs.box.bypart import OpenCuts
from jigs.cutlist.cutlist import PartsList
from jigs.cutlist.piece import Piece
from jigs.cutlist.totals import STUFF_ORDER
from jigs.ground.lengths import Unit, format_inches, format_mm, in_both
from templates.lists.listing import (
    Column,
    Group,
    Listing,
    Section,
    Table,
    TableRow,
    Words,
    shown,
    sizes_shown,
)
from templates.lists.listtext import listing_text
from templates.words.cautions import cautions_of
from templates.words.findings import before_cutting
from templates.words.openwords import STAMP
from templates.words.partswords import (
    SLIDES,
    assumed_in,
    assumed_words,
    board_title,
    box_title,
    built_words,
    counting_words,
    cut_head,
    groove_words,
    left_out_words,
    legend_words,
    made_here_words,
    open_sizes_words,
    slides_words,
    totals_words,
    trap_words,
    wall_of_pieces,
)
from templates.words.piecenotes import note_words


class _Patterns(Struct, kw_only=True):
    """Short names for places that many pieces share, each with what it stands for."""

    unit: Unit
    screws: dict[str, str] = field(default_factory=dict)
    grooves: dict[str, str] = field(default_factory=dict)

    def of_screws(self, piece: Piece) -> str:
        """Name the places of a piece's pocket screws."""
        if not piece.pockets and not piece.pockets_top:
            return ""
        words = self._places(piece.pockets) or "none"
        if piece.pockets_top is not None:
            words = f"foot {words}; top {self._places(piece.pockets_top) or 'none'}"
        return self.screws.setdefault(words, f"P{len(self.screws) + 1}")

    def of_groove(self, piece: Piece) -> str:
        """Name a piece's groove."""
        if piece.groove is None:
            return ""
        words = groove_words(piece.groove, self.unit, in_side=piece.kind == "side")
        return self.grooves.setdefault(words, f"G{len(self.grooves) + 1}")

    def _places(self, places: Sequence[float]) -> str:
        return ", ".join(
            in_both(format_mm(place), format_inches(place), self.unit) for place in places
        )


def parts_text(parts: PartsList) -> str:
    """Give the whole cut list for a terminal."""
    return listing_text(parts_listing(parts))


def parts_listing(parts: PartsList) -> Listing:
    """Give the whole cut list, the job's unit first, with its totals and a legend."""
    job = parts.layout.job
    patterns = _Patterns(unit=job.shown)
    boxes = parts.list_boxes()
    fronts = {f.id for f in parts.layout.fronts if f.box in boxes}
    walls = {box.wall for box in parts.layout.boxes if box.id in boxes}
    tables = list(_boards(parts, patterns)) or [Section(blocks=(Words(text="Nothing to cut."),))]
    totals = [Words(text=text, indent=2) for text in totals_words(parts)]
    if totals:
        totals += [Words(text=text, indent=2, hang=0) for text in counting_words(parts)]
    slides = [Words(text=text, indent=2) for text in slides_words(parts)]
    slides += [Words(text=text, indent=2, stamp=True) for text in open_sizes_words(parts)]
    sections = (
        Section(
            blocks=_sentences(before_cutting(parts.layout, boxes | fronts | walls), stamp=True)
        ),
        *tables,
        *(
            Section(title=title, blocks=(_legend(named),))
            for title, named in (("Pocket screws", patterns.screws), ("Grooves", patterns.grooves))
            if named
        ),
        *([Section(title="To buy", blocks=tuple(totals))] if totals else []),
        *([Section(title=SLIDES, blocks=tuple(slides))] if slides else []),
        Section(
            blocks=(
                *(Words(text=text, hang=0) for text in filter(None, [trap_words(parts)])),
                *_sentences([built_words(parts)]),
                *_sentences(left_out_words(parts), stamp=True),
            )
        ),
        Section(
            blocks=(
                *_sentences(legend_words()),
                *_sentences([assumed_words(parts)], stamp=True),
                *_sentences([made_here_words(parts)]),
                *_sentences(cautions_of(box.kind for box in parts.layout.boxes)),
            )
        ),
    )
    return Listing(title="Cut list", job=job.name, sections=sections)


def _sentences(texts: Iterable[str], *, stamp: bool = False) -> tuple[Words, ...]:
    return tuple(Words(text=text, stamp=stamp) for text in texts if text)


def _legend(named: dict[str, str]) -> Table:
    """List what short names stand for."""
    return Table(
        columns=(Column(head="name"), Column(head="where", measured=True, runs_on=True)),
        groups=(
            Group(rows=tuple(TableRow(cells=shown(name, words)) for words, name in named.items())),
        ),
        heads=False,
    )


def _boards(parts: PartsList, patterns: _Patterns) -> Iterator[Section]:
    """Give a table for each board, the pieces under their boxes and walls."""
    job = parts.layout.job
    titles = {box.id: box_title(box) for box in parts.layout.boxes}
    codes = {piece.id: code for piece, code in parts.coded()}
    cuts = OpenCuts(parts.layout)
    for stuff in STUFF_ORDER:
        for thickness in dict.fromkeys(p.thickness for p in parts.pieces if p.stuff == stuff):
            places: dict[str, list[TableRow]] = {}
            for piece in parts.pieces:
                if (piece.stuff, piece.thickness) != (stuff, thickness):
                    continue
                stamps = [STAMP] if cuts.of(piece.id) else []
                stamps += ["ASSUMED"] if assumed_in(piece, job) else []
                title = titles.get(piece.box or "") or wall_of_pieces(piece.wall)
                row = _row(piece, codes[piece.id], ", ".join(stamps), patterns)
                places.setdefault(title, []).append(row)
            groups = (Group(title=title, rows=tuple(rows)) for title, rows in places.items())
            table = Table(columns=_columns(job.shown), groups=tuple(groups))
            yield Section(title=board_title(job, stuff, thickness), blocks=(table,))


def _columns(unit: Unit) -> tuple[Column, ...]:
    return (
        Column(head="cut", paper=True, ticks="each"),
        Column(head="piece"),
        Column(head="code", paper=True),
        Column(head="n", right=True),
        Column(head=cut_head(unit), measured=True),
        Column(head="finished"),
        Column(head="band", ticks="filled"),
        Column(head="screws"),
        Column(head="groove"),
        Column(head="stamp", paper=True),
    )


def _row(piece: Piece, code: str, stamps: str, patterns: _Patterns) -> TableRow:
    unit = patterns.unit
    finished = sizes_shown((piece.finished_length, piece.finished_width), unit, named=False)
    return TableRow(
        cells=(
            *shown("", piece.id, code, str(piece.count)),
            sizes_shown((piece.length, piece.width), unit, named=False),
            *shown(
                finished.text if piece.band else "",
                ", ".join(piece.banded),
                patterns.of_screws(piece),
                patterns.of_groove(piece),
                stamps,
            ),
        ),
        note=note_words(piece.notes),
    )
