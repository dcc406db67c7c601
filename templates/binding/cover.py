"""The pack's first page: the bars, a bank card to lay on, the cautions in full, what is ready."""

from bisect import bisect_left
from collections.abc import Iterator, Sequence

from jigs.box.parts import Layout
from jigs.given.cautions import CAUTIONS
from jigs.ground.geometry import rectangle
from templates.binding.contents import ContentsEntry, contents
from templates.binding.openlist import HEADING, open_columns, open_list
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Mark, Outline, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import MarkBlock, moved, paragraph
from templates.page.typeface import text_box
from templates.words.findings import held_words, incomplete_words, sheets_words

CARD = (85.60, 53.98)
"""The ID-1 card, mm: ISO/IEC 7810 (from memory). A bank card is one: everybody carries a check."""

SAME = (
    "ONE SET OF SHEETS SERVES ALL PARTS with the same holes in the same face, ten at most: each "
    "has a box to tick. Of more parts there are more sets. A part that is 0.5 mm off the others "
    "takes a sheet of its own."
)
"""What the first page says where parts share their sheets."""
MORE = "More: see the check of the job."


def cover_pages(
    layout: Layout, paper: Paper, listed: Sequence[ContentsEntry] = (), *, same: bool = False
) -> tuple[Page, ...]:
    """Draw the first page of the sheets, and those that its open numbers take where it has no room
    for them; `listed` are the parts and pages of its contents; `same`: parts with the same holes
    share their sheets."""
    width, height = paper.width, paper.height
    marks: list[Mark] = border_marks(width, height, paper, 1)
    across = width - LEFT_STRIP - EDGE
    left = (across - 4.0) - CARD[0] - 2.0
    right_x = LEFT_STRIP + left + 4.0
    top = height - EDGE
    opening = _opening(layout, left, same)
    # A ring over a capital of the name stands higher than its line has room for.
    y = top - max(
        [0.0, *(text_box(mark)[3] for mark in opening[0].marks if isinstance(mark, Text))]
    )
    for piece in opening:
        marks += moved(piece.marks, LEFT_STRIP, y)
        y -= piece.height + 1.0
    card_top = top - 2.0
    marks += bank_card(right_x, card_top - CARD[1])
    y = min(y, card_top - CARD[1]) - 6.0
    for piece in _cautions(across):
        marks += moved(piece.marks, LEFT_STRIP, y)
        y -= piece.height + 0.7
    y -= 3.0
    further: tuple[Page, ...] = ()
    # Below the lowest line there is room to say that there is more.
    low = BOTTOM_STRIP + 6.0
    found = open_list(layout, across, y - low - 1.0)
    if found is not None:
        marks += moved(found.marks, LEFT_STRIP, y)
        y -= found.height + 1.0
    else:
        further = tuple(_open_pages(layout, paper))
        if further:
            piece = paragraph(_where_open(len(further)), across, bold=True)
            marks += moved(piece.marks, LEFT_STRIP, y)
            y -= piece.height + 1.0
    pieces = _held(layout, across)
    room = y - low - sum(piece.height + 0.6 for piece in pieces)
    assumed, complete = _assumed(layout.job.assumptions, across, room)
    for piece in (*pieces, *assumed):
        if y - piece.height < low:
            complete = False
            break
        marks += moved(piece.marks, LEFT_STRIP, y)
        y -= piece.height + 0.6
    if not complete:
        marks += moved(paragraph(MORE, across).marks, LEFT_STRIP, y)
    else:
        y -= 1.0
        found = contents(listed, across, y - BOTTOM_STRIP - 2.0)
        marks += moved(found.marks, LEFT_STRIP, y) if found else ()
    first = Page(width=width, height=height, marks=tuple(marks), entry="First page")
    return (first, *further)


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


def _opening(layout: Layout, width: float, same: bool) -> list[MarkBlock]:
    return [
        paragraph(layout.job.name or "Drilling sheets", width, size=5.0, bold=True),
        paragraph("Drilling sheets at full scale", width, size=3.5),
        paragraph(layout.echo, width),
        paragraph(sheets_words(layout), width, bold=True),
        paragraph("Print one-sided: sheets are cut up.", width, bold=True),
        paragraph(
            "1 Measure the two bars on this page, then on each sheet. 2 A sheet and its label "
            "carry the same code: if they differ, the paper is stale. 3 One part at a time: "
            "sheet, label, part together on the bench.",
            width,
        ),
        *([paragraph(SAME, width)] if same else []),
        paragraph(
            f"Reveals of this job: {layout.job.reveal.side:.1f} from a front's edge to its own "
            f"box's edge, {layout.job.reveal.between:.1f} between two fronts of one box, "
            f"{2 * layout.job.reveal.side:.1f} between fronts of two boxes side by side (mm).",
            width,
        ),
    ]


def _cautions(width: float) -> list[MarkBlock]:
    return [
        paragraph("BEFORE YOU DRILL", width, size=3.5, bold=True),
        *(paragraph(text, width, hang="-") for text in CAUTIONS),
    ]


def _where_open(pages: int) -> str:
    """Say on the first page, to which every stamp sends, on which of the next ones the open
    numbers are."""
    where = "page 2" if pages == 1 else f"pages 2 to {pages + 1}"
    return f"{HEADING}. They are listed on {where}."


def _held(layout: Layout, width: float) -> list[MarkBlock]:
    pieces: list[MarkBlock] = []
    held = [part for part in layout.units if part.withheld]
    if held:
        pieces.append(paragraph("HELD BACK: NO SHEET UNTIL MENDED", width, size=3.5, bold=True))
        pieces += [paragraph(f"{part.id}: {held_words(part)}", width, hang="-") for part in held]
        pieces += [
            paragraph(f"INCOMPLETE: {words}.", width, bold=True, hang="-")
            for words in incomplete_words(layout)
        ]
    return pieces


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
