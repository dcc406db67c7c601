"""The first page of a file to print: the bars, a bank card to lay on, what the other file is for,
the cautions in full, what is ready, open and held."""

import math
from bisect import bisect_left
from collections.abc import Callable, Iterator, Sequence

from msgspec import Struct

from jigs.box.parts import Layout
from jigs.ground.geometry import rectangle
from templates.binding.contents import in_columns
from templates.binding.openlist import HEADING, open_columns, open_list
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Mark, Outline, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import MarkBlock, moved, paragraph
from templates.page.typeface import text_box
from templates.words.assumedwords import assumed_lines
from templates.words.cautions import CAUTIONS
from templates.words.coverwords import CoverWords
from templates.words.findings import held_words, incomplete_words, ready_words
from templates.words.gapwords import job_reveals

CARD = (85.60, 53.98)
"""The ID-1 card, mm: ISO/IEC 7810 (from memory). A bank card is one: everybody carries a check."""

MORE = "More: see the check of the job."

LOW = BOTTOM_STRIP + 6.0
"""Below the lowest line there is room to say that there is more, mm."""

ListingBlock = Callable[[float, float], MarkBlock | None]
"""Sets the contents: in a width, where the room below (mm) allows."""


class Cover(Struct, frozen=True, kw_only=True):
    """The first page of a file down to `y` (mm), where its contents go, and the pages that its
    open numbers take where it has no room for them."""

    layout: Layout
    paper: Paper
    marks: tuple[Mark, ...]
    y: float
    further: tuple[Page, ...]

    @property
    def count(self) -> int:
        """How many pages it takes."""
        return 1 + len(self.further)

    def pages(self, listing: ListingBlock | None = None) -> tuple[Page, ...]:
        """Draw the rest of the first page; `listing` sets its contents. Give it and the others."""
        marks, y = [*self.marks], self.y
        across = self.paper.width - LEFT_STRIP - EDGE
        complete = True
        for piece in _held(self.layout, across):
            complete = complete and y - piece.height >= LOW
            if complete:
                marks += moved(piece.marks, LEFT_STRIP, y)
                y -= piece.height + 0.6
        assumptions = assumed_lines(self.layout.job)
        if listing is not None and complete:
            rest = sum(piece.height + 0.6 for piece in _assumed(assumptions, across, math.inf)[0])
            room = y - (LOW if assumptions else BOTTOM_STRIP + 2.0) - 1.0
            block = listing(across, room - rest) or listing(across, room)
            if block is not None:
                marks += moved(block.marks, LEFT_STRIP, y - 1.0)
                y -= block.height + 2.0
        assumed, all_said = _assumed(assumptions, across, y - LOW) if complete else ([], False)
        for piece in assumed:
            marks += moved(piece.marks, LEFT_STRIP, y)
            y -= piece.height + 0.6
        if not (complete and all_said):
            marks += moved(paragraph(MORE, across).marks, LEFT_STRIP, y)
        size = self.paper.width, self.paper.height
        first = Page(width=size[0], height=size[1], marks=tuple(marks), entry="First page")
        return (first, *self.further)


def begin_cover(layout: Layout, paper: Paper, words: CoverWords) -> Cover:
    """Draw the first page of a file down to its contents, and the pages of its open numbers."""
    width, height = paper.width, paper.height
    marks: list[Mark] = border_marks(width, height, paper, 1)
    across = width - LEFT_STRIP - EDGE
    left = (across - 4.0) - CARD[0] - 2.0
    right_x = LEFT_STRIP + left + 4.0
    top = height - EDGE
    opening = _opening(layout, left, words)
    # A ring over a capital of the name stands higher than its line has room for.
    y = top - max(
        [0.0, *(text_box(mark)[3] for mark in opening[0].marks if isinstance(mark, Text))]
    )
    for piece in opening:
        marks += moved(piece.marks, LEFT_STRIP, y)
        y -= piece.height + 1.0
    card_top = top - 2.0
    marks += bank_card(right_x, card_top - CARD[1])
    y = min(y, card_top - CARD[1] - 2.0) - 1.0
    for piece in _below(layout, across, words):
        marks += moved(piece.marks, LEFT_STRIP, y)
        y -= piece.height + 0.7
    y -= 3.0
    further: tuple[Page, ...] = ()
    found = open_list(layout, across, y - LOW - 1.0)
    if found is None:
        further = tuple(_open_pages(layout, paper))
        found = paragraph(_where_open(len(further)), across, bold=True) if further else None
    if found is not None:
        marks += moved(found.marks, LEFT_STRIP, y)
        y -= found.height + 1.0
    return Cover(layout=layout, paper=paper, marks=tuple(marks), y=y, further=further)


def _open_pages(layout: Layout, paper: Paper) -> Iterator[Page]:
    """Draw the pages of open numbers that the first page has no room for."""
    across = paper.width - LEFT_STRIP - EDGE
    room = paper.height - EDGE - BOTTOM_STRIP - 2.0
    for number, piece in enumerate(open_columns(layout, across, room), start=2):
        marks = border_marks(paper.width, paper.height, paper, number)
        marks += moved(piece.marks, LEFT_STRIP, paper.height - EDGE)
        yield Page(width=paper.width, height=paper.height, marks=tuple(marks), entry="Open numbers")


def bank_card(x: float, y: float) -> list[Mark]:
    """Draw the outline that a bank card must fill, its lower left corner at (x, y)."""
    wide, high = CARD
    words = ("Lay any bank card here:", "it must fill this outline exactly,", "85.60 x 53.98 mm.")
    return [
        Outline(points=rectangle(x, y, x + wide, y + high), width=0.25),
        *(
            Text(
                x=x + wide / 2,
                y=y + high / 2 + 4.0 - row * 4.4,
                text=text,
                anchor="middle",
                bold=row == 0,
            )
            for row, text in enumerate(words)
        ),
    ]


def _opening(layout: Layout, width: float, words: CoverWords) -> list[MarkBlock]:
    return [
        paragraph(layout.job.name or words.name, width, size=5.0, bold=True),
        paragraph(words.title, width, size=3.5),
        paragraph(ready_words(layout, words.ready), width, bold=True),
        paragraph(words.order, width),
    ]


def _below(layout: Layout, width: float, words: CoverWords) -> Iterator[MarkBlock]:
    yield paragraph(f"{words.other} Print one-sided: cards are cut out.", width, bold=True)
    if words.reveals:
        yield paragraph(job_reveals(layout), width)
    hung = [("-", text) for text in CAUTIONS]
    yield from filter(None, [in_columns("BEFORE YOU DRILL", hung, 2, width, math.inf)])


def _where_open(pages: int) -> str:
    """Say on the first page, to which every stamp sends, on which of the next ones the open
    numbers are."""
    where = "page 2" if pages == 1 else f"pages 2 to {pages + 1}"
    return f"{HEADING}. They are listed on {where}."


def _held(layout: Layout, width: float) -> list[MarkBlock]:
    reasons: dict[str, list[str]] = {}
    for part in layout.units:
        if part.withheld:
            reasons.setdefault(held_words(part, layout.job.shown), []).append(part.id)
    if not reasons:
        return []
    return [
        paragraph("HOLD: NOT DRILLED UNTIL MENDED", width, size=3.5, bold=True),
        *(
            paragraph(f"{', '.join(names)}: {words}", width, hang="-")
            for words, names in reasons.items()
        ),
        *(
            [paragraph(f"INCOMPLETE: {'; '.join(lacking)}.", width, bold=True, hang="-")]
            if (lacking := incomplete_words(layout))
            else []
        ),
    ]


def _assumed(assumptions: Sequence[str], width: float, room: float) -> tuple[list[MarkBlock], bool]:
    """Set as many of the assumptions as `room` (mm) holds below their heading; and tell whether
    these are all. Without room for one there is no heading either."""
    heading = paragraph("ASSUMED", width, size=3.5, bold=True)

    def listed(count: int) -> MarkBlock:
        return paragraph("; ".join(assumptions[:count]) + ".", width)

    def too_high(count: int) -> bool:
        return heading.height + listed(count).height + 2 * 0.6 > room

    most = bisect_left(range(1, len(assumptions) + 1), True, key=too_high)
    return ([heading, listed(most)] if most else []), most == len(assumptions)
