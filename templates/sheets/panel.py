"""The words of a sheet: title, face, picture, sizes, sum, steps and what applies.

The head says what the part is and which face is drilled; it lies across the sheet, or in pieces
down one column. The steps and notes follow it in columns.
"""

from collections.abc import Iterable, Sequence
from typing import Protocol

from msgspec import Struct

from jigs.ground.geometry import Face
from templates.faces.faceview import FaceView
from templates.page.marks import Mark, Qr, Text
from templates.page.pieces import (
    GAP,
    MarkBlock,
    moved,
    paragraph,
    paragraph_height,
    stacked,
    stacked_height,
)
from templates.page.typeface import PITCH, CutText, cut_text, shorten, text_width, wrap
from templates.sheets.picture import Numbered, picture, picture_room
from templates.sheets.sums import sums
from templates.words.facewords import NOT_REVERSIBLE, drilled_words, seen_words
from templates.words.openwords import open_line
from templates.words.ownwords import cautions_here
from templates.words.sentence import Sentence
from templates.writers.qr import qr_side

PICTURE = 66.0
"""Width of the picture in a head that lies across, mm."""
YOURS = "Yours ________ ________"
"""Blanks for what the person measures."""
MODULE = 0.5
"""Side of a QR module, mm: read by telephones at arm's length (common practice, no source)."""


class PartWords(Struct, frozen=True, kw_only=True):
    """What a part's sheets say besides its holes; texts are ready to print.

    `kind` as on the label (`DOOR, HINGES LEFT`), `place` (`NORTH WALL, BOX B3, UNDER B3-1`),
    `measure` the size of its face (`454.0 x 613.0.`), `payload` the text of its QR
    symbol, `facts` what holds for the work on one face, `notes` what applies to the part,
    `face_notes` what of it on the face of a front, where all of it does not; None for all.
    """

    part: str
    kind: str
    place: str
    job: str
    code: str
    measure: str
    payload: str
    facts: dict[Face, tuple[Sentence, ...]]
    notes: tuple[Sentence, ...]
    face_notes: tuple[Sentence, ...] | None = None


def title(words: PartWords, sheet: str, width: float) -> MarkBlock:
    """The part's name, kind, place, sheet number and code, and its QR symbol."""
    side = qr_side(words.payload, MODULE)
    room = width - side - 1.0
    size = next((s for s in (7.0, 5.0, 3.5) if text_width(words.part, s, True) <= room), 2.5)
    name, *more = wrap(words.part, size, True, room)  # the part's ID is never shortened
    marks: list[Mark] = [
        Qr(x=width - side + 4 * MODULE, y=-side + 4 * MODULE, text=words.payload, module=MODULE)
    ]
    y = -size * 1.12
    marks.append(Text(x=0.0, y=y, text=name, size=size, bold=True))
    for line in more:
        y -= PITCH
        marks.append(Text(x=0.0, y=y, text=line, size=size, bold=True))
    y -= size * 0.45 + 3.0
    kind_size = 3.5 if text_width(words.kind, 3.5, True) <= room else 2.5
    kind = wrap(words.kind, kind_size, True, room)
    for row, text in enumerate(kind):
        marks.append(Text(x=0.0, y=y - 0.6 - row * PITCH, text=text, size=kind_size, bold=True))
    y -= 5.2 + (len(kind) - 1) * PITCH
    place = wrap(words.place, 2.5, False, room)
    if len(place) > 2:
        place = [place[0], shorten(" ".join(place[1:]), 2.5, False, room)]
    # The code is never cut.
    *numbers, number = wrap(f"{sheet}{', ' if sheet else ''}code {words.code}", 2.5, True, room)
    place += numbers
    after = text_width(number, 2.5, True) + 2.0
    if after < room:
        job = shorten(words.job, 2.5, False, room - after)
        if len(job) > 6 or job == words.job:
            marks.append(Text(x=after, y=y - PITCH * len(place), text=job))
    rows = len(place) - len(numbers)
    for text, bold in (*((line, row >= rows) for row, line in enumerate(place)), (number, True)):
        marks.append(Text(x=0.0, y=y, text=shorten(text, 2.5, bold, room), bold=bold))
        y -= PITCH
    return MarkBlock(height=max(side, -y - PITCH + 1.5) + 1.0, marks=tuple(marks))


def _face_pieces(view: FaceView, width: float) -> list[MarkBlock]:
    """Say which face is drilled, how it lies, and whether it may be turned round."""
    line = f"DRILL THIS FACE: {drilled_words(view)}"
    size = 3.5 if text_width(line, 3.5, True) <= width else 2.5
    seen = seen_words(view)
    if view.reversible is False:
        seen = f"{seen} {NOT_REVERSIBLE}"
    return [paragraph(line, width, size=size, bold=True), paragraph(seen, width)]


def figures_of(view: FaceView, words: PartWords) -> list[str]:
    """Give a part's size, the blanks for what is measured, the sums that close."""
    return [words.measure, YOURS, *sums(view)]


def _figure_lines(figures: Sequence[str], width: float) -> list[str]:
    """Give them line by line, the blanks behind the size where both are one line."""
    measure, yours, *closing = figures
    both = f"{measure} {yours}"
    return [*([both] if text_width(both, 2.5) <= width else [measure, yours]), *closing]


def head_across(
    view: FaceView,
    words: PartWords,
    figures: Sequence[str],
    cards: Sequence[Numbered] | None,
    sheet: str,
    width: float,
) -> MarkBlock:
    """Lay the head across a sheet: title, QR symbol, picture side by side, the rest below.

    `figures` as `figures_of` gives them. `cards` are those on the sheet; None where the head is
    only measured, its picture not drawn."""
    beside = width - PICTURE - 4.0 > 170.0
    left = (width - PICTURE - 4.0) / 2 if beside else width - PICTURE - 4.0
    if beside:
        left = max(left, 105.0)
    first = title(words, sheet, left)
    small = _picture(view, cards, PICTURE)
    marks = [*first.marks, *moved(small.marks, left + 4.0, 0.0)]
    down = max(first.height, small.height)
    if beside:
        used, x = 0.0, left + PICTURE + 8.0
        for piece in [paragraph(text, width - x) for text in _figure_lines(figures, width - x)]:
            marks += moved(piece.marks, x, -used)
            used += piece.height + GAP
        down = max(down, used)
        below: list[MarkBlock] = []
    else:
        below = [paragraph(" ".join(figures), width)]
    for piece in [*_face_pieces(view, width), *below]:
        marks += moved(piece.marks, 0.0, -down)
        down += piece.height + GAP
    return MarkBlock(height=down + 0.5, marks=tuple(marks))


def head_down(
    view: FaceView,
    words: PartWords,
    figures: Sequence[str],
    cards: Sequence[Numbered] | None,
    sheet: str,
    width: float,
) -> list[MarkBlock]:
    """Lay the head in pieces down a column; `figures` and `cards` as in `head_across`."""
    return [
        title(words, sheet, width),
        *_face_pieces(view, width),
        _picture(view, cards, width),
        *(paragraph(text, width) for text in _figure_lines(figures, width)),
    ]


def _picture(view: FaceView, cards: Sequence[Numbered] | None, width: float) -> MarkBlock:
    """Draw the picture of a face, or keep its room where no cards are laid yet."""
    return picture_room(view, width) if cards is None else picture(view, cards, width)


def notes_of(view: FaceView, words: PartWords, *, first: bool) -> tuple[Sentence, ...]:
    """Give what applies to a part; on the first page of a face what holds for the work on it."""
    facts = words.facts.get(view.face, ()) if first else ()
    applies = words.notes if view.face != "front" or words.face_notes is None else words.face_notes
    return (*facts, *applies)


class PanelPiece(Protocol):
    """What is said, in one block as a rule: measured for many widths and set in one, mm."""

    def heights(self, width: float) -> list[float]:
        """Give how high its blocks are so wide."""
        ...

    def set_in(self, width: float) -> list[MarkBlock]:
        """Set it so wide."""
        ...


class _Said(Struct, frozen=True):
    """A paragraph."""

    text: str
    cut: CutText

    def heights(self, width: float) -> list[float]:
        return [paragraph_height(self.cut, width)]

    def set_in(self, width: float) -> list[MarkBlock]:
        return [paragraph(self.text, width, size=self.cut.size, bold=self.cut.bold)]


class _Joined(Struct, frozen=True):
    """Several pieces as one, never split."""

    pieces: Sequence[PanelPiece]

    def heights(self, width: float) -> list[float]:
        return [stacked_height(heights_in(self.pieces, width))]

    def set_in(self, width: float) -> list[MarkBlock]:
        return [stacked(set_in(self.pieces, width))]


def said_in(text: str, *, bold: bool = False) -> PanelPiece:
    """Give a paragraph as a piece."""
    return _Said(text, cut_text(text, 2.5, bold))


def joined(pieces: Sequence[PanelPiece]) -> PanelPiece:
    """Make one piece of several, never split."""
    return _Joined(pieces)


def heights_in(pieces: Iterable[PanelPiece], width: float) -> list[float]:
    """Give how high the blocks of some pieces are `width` mm wide."""
    return [height for piece in pieces for height in piece.heights(width)]


def set_in(pieces: Iterable[PanelPiece], width: float) -> list[MarkBlock]:
    """Set pieces `width` mm wide."""
    return [block for piece in pieces for block in piece.set_in(width)]


def body(view: FaceView, own: Sequence[str], notes: Sequence[Sentence]) -> list[PanelPiece]:
    """Give what a part's page says of the work: where its steps stand and what is its own in them
    (`own`), the caution of what is bored, its notes; before them that open numbers, which page 1
    lists, decide the holes."""
    line = open_line(view.open, brief=True)
    return [
        *([said_in(line, bold=True)] if line else []),
        joined([said_in(text) for text in own]),
        said_in(cautions_here(view), bold=True),
        *(said_in(note.text, bold=note.bold) for note in notes),
    ]
