"""What is said beside the cards of one face, and how it is set: in a column, or across."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Self

from msgspec import Struct
from msgspec.structs import replace

from templates.cards.card import Card
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.marks import Mark
from templates.page.pieces import GAP, flow, least_height, moved
from templates.page.space import Box
from templates.sheets.panel import (
    PanelPiece,
    PartWords,
    body,
    figures_of,
    head_across,
    head_down,
    heights_in,
    joined,
    notes_of,
    said_in,
    set_in,
)
from templates.sheets.picture import Numbered
from templates.sheets.pintable import PinRows, PinTable
from templates.words.facewords import NOT_REVERSIBLE
from templates.words.fittingwords import GuidedWork
from templates.words.guidewords import guide_line
from templates.words.openwords import open_line
from templates.words.ownwords import box_first, own_words
from templates.words.sentence import Sentence

COLUMNS = (50.0, 62.0, 76.0)
"""How wide words may be that stand in one column, mm."""
ACROSS = 150.0
"""Words at least so wide have their head across, and what follows in columns; mm."""
WIDEST = 888
"""A page's number as wide as any, until it is known."""
COLUMN_GAP = 4.0
NARROWEST = 58.0
"""How wide a column below a head is at least, mm."""


class Elsewhere(Struct, frozen=True, kw_only=True):
    """A card that serves a part too and stands with another one: its number, how far it is moved
    from its own part's face to lie on this one's, mm; its page."""

    number: int
    card: Card
    dx: float
    dy: float
    page: int | None = None
    """Until it is known, words are measured as if each card had a page of its own."""
    here: bool = False
    """Whether it lies beside the row of its part, which its box to tick names."""

    @property
    def box(self) -> Box:
        """Its border in the part's own face, mm."""
        x0, y0, x1, y1 = self.card.box
        return x0 + self.dx, y0 + self.dy, x1 + self.dx, y1 + self.dy

    @property
    def set_on(self) -> tuple[Reference, ...]:
        """The lines that it is set on."""
        return self.card.index


class SheetWords(Struct, frozen=True, kw_only=True):
    """What is said of one face beside its cards; `first`: in full, as where it is said first.

    `guides`: the page of each kind of work's steps. `elsewhere`: the cards for it that stand with
    other parts.
    """

    view: FaceView
    part: PartWords
    guides: Mapping[GuidedWork, int]
    elsewhere: tuple[Elsewhere, ...] = ()
    first: bool = True
    sheet: str = "sheet 88/88"
    """Which of its part's; as wide as any, until it is known."""
    own: tuple[str, ...] = ()
    """What is to be done besides with long paper; the last of it on each page."""
    set_on: tuple[Reference, ...] = ()
    """What its cards are set on."""
    pins: tuple[PinRows, ...] = ()
    """The lines that pin cards are set on."""
    box_page: int | None = WIDEST
    """Where the drawer box stands that the face is marked through: as wide as any, until it is
    known; None: on no page."""
    also: tuple["SheetWords", ...] = ()
    """Other parts' faces that have all their cards from this one: a row each."""

    @property
    def views(self) -> tuple[FaceView, ...]:
        """The face, and those that have a row with it."""
        return (self.view, *(each.view for each in self.also))

    def with_cards(self, cards: Iterable[Card]) -> Self:
        """Give what is said with some cards."""
        return replace(self, set_on=tuple(line for card in cards for line in card.index))

    def again(self) -> Self:
        """Give what is said where the cards of the face go on."""
        return replace(self, elsewhere=(), pins=(), also=(), own=self.own[-1:], first=False)

    def body(self) -> list[PanelPiece]:
        """Give what is said below the head, worded once for all widths that are tried."""
        line, where = guide_line(self.view, self.guides), _where(self.elsewhere)
        told, shared = self._own(), _alike(self)
        first = box_first(self.view, self.box_page)
        own = (*([line] if line else []), *self.own, *told)
        return [
            *(said_in(said, bold=True) for said in (where and f"ALSO {where}.", first) if said),
            *body(self.view, own, self._notes(shared)),
            *([PinTable(self.view, self.pins)] if self.pins else ()),
            *(each.row(self, told, shared) for each in self.also),
        ]

    def figures(self) -> list[str]:
        """Give the face's size and the sums that close, worded once for all widths too."""
        return figures_of(self.view, self.part)

    def row(
        self, leader: "SheetWords", told: Sequence[str], shared: Sequence[Sentence]
    ) -> PanelPiece:
        """Give the row of a face whose cards are all those of another one, as one piece: what
        is its own, but for what is `told` of the other one and what is `shared` by all.
        It has no QR symbol: the part in hand has one on its label, whose code is
        matched with the row's; two symbols beside each other are scanned for one another."""
        where = _where(self.elsewhere)
        sheet = f", {self.sheet}" if self.sheet else ""
        head = (
            f"ALSO {self.view.part}{sheet}, code {self.view.code}{f': {where}' if where else ''}."
        )
        first, line = box_first(self.view, self.box_page), open_line(self.view.open, brief=True)
        line = "" if line == open_line(leader.view.open, brief=True) else line
        notes = notes_of(self.view, self.part, first=True)
        own = [words for words in self._own() if words not in told]
        if self.view.reversible is False and leader.view.reversible is not False:
            own.insert(0, NOT_REVERSIBLE)
        own += [note.text for note in notes if note not in shared]
        bold = " ".join(filter(None, (head, first, line)))
        plain = " ".join([*self.figures(), *own])
        return joined([said_in(bold, bold=True), said_in(plain)])

    def _own(self) -> tuple[str, ...]:
        lines = (*self.set_on, *(line for card in self.elsewhere for line in card.set_on))
        return own_words(self.view, lines)

    def _notes(self, shared: Sequence[Sentence]) -> list[Sentence]:
        """What applies to the part; what is not `shared` by all that have a row with it, by its
        name."""
        return [
            note if note in shared else replace(note, text=f"{self.view.part}: {note.text}")
            for note in notes_of(self.view, self.part, first=self.first)
        ]


def _alike(words: SheetWords) -> list[Sentence]:
    """Give what applies to a part and to all that have a row with it."""
    others = [notes_of(each.view, each.part, first=True) for each in words.also]
    notes = notes_of(words.view, words.part, first=words.first)
    return [note for note in notes if all(note in each for each in others)]


def _where(elsewhere: Iterable[Elsewhere]) -> str:
    """Say where the cards are that stand with another part, but for those beside its row."""
    pages: dict[int, list[str]] = {}
    for card in elsewhere:
        if not card.here:
            pages.setdefault(card.page or -card.number, []).append(str(card.number))
    return "; ".join(
        f"card{'s' if len(numbers) > 1 else ''} {', '.join(numbers)} on page "
        f"{page if page > 0 else WIDEST}"
        for page, numbers in pages.items()
    )


class SetWords(Struct, frozen=True):
    """How words are set: how wide, how high, in how many columns below a head that lies across;
    0 for a head and all else in one column; mm."""

    width: float
    height: float
    columns: int = 0


def settings_of(words: SheetWords, widths: Iterable[float]) -> list[SetWords]:
    """Give the ways to set words: in a column of each usual width, and across these widths."""
    below, figures = words.body(), words.figures()
    across = [_across(words, figures, below, width) for width in widths if width >= ACROSS]
    columns = [_in_column(words, figures, below, width) for width in COLUMNS]
    return [*columns, *(each for each in across if each)]


def in_column(words: SheetWords, width: float) -> SetWords:
    """Set words in one column."""
    return _in_column(words, words.figures(), words.body(), width)


def _in_column(
    words: SheetWords, figures: Sequence[str], below: Sequence[PanelPiece], width: float
) -> SetWords:
    head = head_down(words.view, words.part, figures, None, words.sheet, width)
    heights = [*(piece.height for piece in head), *heights_in(below, width)]
    return SetWords(width, sum([height + GAP for height in heights]))


def _across(
    words: SheetWords, figures: Sequence[str], below: Sequence[PanelPiece], width: float
) -> SetWords | None:
    """Set words across, in as many columns as make them lowest."""
    head = head_across(words.view, words.part, figures, None, words.sheet, width)
    found: list[SetWords] = []
    for columns in (2, 3, 4):
        column = _column(width, columns)
        if column >= NARROWEST:
            least = least_height(heights_in(below, column), columns, 400.0)
            if least is not None:
                found.append(SetWords(width, head.height + least, columns))
    return min(found, key=lambda setting: setting.height, default=None)


def _column(width: float, columns: int) -> float:
    return (width - (columns - 1) * COLUMN_GAP) / columns


def set_words(words: SheetWords, cards: Sequence[Card], setting: SetWords) -> tuple[Mark, ...]:
    """Draw words from their upper left corner at (0, 0) down, as they were measured."""
    width, figures = setting.width, words.figures()
    shown: list[Numbered] = [*(card for card in cards if not card.own_frame), *words.elsewhere]
    marks: list[Mark] = []
    if not setting.columns:
        top = 0.0
        pieces = head_down(words.view, words.part, figures, shown, words.sheet, width)
        for piece in [*pieces, *set_in(words.body(), width)]:
            marks += moved(piece.marks, 0.0, top)
            top -= piece.height + GAP
        return tuple(marks)
    head = head_across(words.view, words.part, figures, shown, words.sheet, width)
    marks += head.marks
    column = _column(width, setting.columns)
    below = set_in(words.body(), column)
    heights = [piece.height for piece in below]
    places = flow(heights, setting.columns, setting.height - head.height + 1e-6)
    assert places is not None, "the words were measured with the same pieces"
    for piece, (number, down) in zip(below, places, strict=True):
        marks += moved(piece.marks, number * (column + COLUMN_GAP), -head.height - down)
    return tuple(marks)
