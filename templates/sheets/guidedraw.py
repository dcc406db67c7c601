"""The pictures of the guide pages: a flap folded right and wrong, two sides like an open book."""

from collections.abc import Callable

from jigs.ground.geometry import rectangle
from templates.page.marks import MEDIUM, WIDE, Area, Line, Mark, Outline, Text
from templates.page.pieces import MarkBlock
from templates.words.guidewords import (
    BLOCK,
    BOOK_FRONT,
    BOOK_LEFT,
    BOOK_LINE,
    BOOK_RIGHT,
    BOOK_STOP,
    BOOK_TOP,
    FOLD_BLACK,
    FOLD_RIGHT,
    FOLD_WHITE,
    ON_LINE,
    PAPER_FACE,
    PENCIL,
    Picture,
)

BOARD, THICK = 36.0, 14.0
"""The board's end in the pictures of folds, mm."""
SLIP = 3.0
"""How far a wrong fold lies off, mm."""


def _fold(top: float, slip: float, words: str, *, block: bool) -> list[Mark]:
    """Draw a board's end with its paper from `top` down: where the band begins `slip` beyond the
    edge, negative before it; mm."""
    face = top - 7.0
    paper, edge = face + 1.2, BOARD + 1.2
    band = 5.0
    marks: list[Mark] = [
        Outline(points=rectangle(0.0, face - THICK, BOARD, face), width=MEDIUM),
        Line(x1=0.0, y1=paper, x2=edge, y2=paper, width=MEDIUM),
        Line(x1=edge, y1=paper, x2=edge, y2=face - THICK + 1.0, width=MEDIUM),
    ]
    on_face, on_edge = max(-slip, 0.0), max(slip, 0.0)
    if on_face:
        marks.append(Area(points=rectangle(BOARD - on_face, paper - 0.8, edge, paper + 0.8)))
    start = paper - on_edge
    marks.append(
        Area(points=rectangle(edge - 0.8, start - band + on_face, edge + 0.8, start + 0.1))
    )
    if block:
        marks += [
            Outline(points=rectangle(edge + 1.2, face - THICK, edge + 18.0, face + 4.0)),
            Text(x=edge + 9.6, y=face - THICK / 2, text=BLOCK, anchor="middle"),
            Text(x=1.0, y=paper + 1.6, text=PAPER_FACE),
        ]
    marks.append(Text(x=0.0, y=face - THICK - 5.0, text=words, bold=True))
    return marks


def fold_picture() -> MarkBlock:
    """Draw a flap folded right, and the two wrong folds."""
    marks = [
        *_fold(0.0, 0.0, FOLD_RIGHT, block=True),
        *_fold(-32.0, -SLIP, FOLD_BLACK, block=False),
        *_fold(-60.0, SLIP, FOLD_WHITE, block=False),
    ]
    return MarkBlock(height=96.0, marks=tuple(marks))


def book_picture() -> MarkBlock:
    """Draw the two sides of a box as they lie to be struck: the right one on the left."""
    wide, high, low = 26.0, 44.0, -58.0
    middle = wide + 2.0
    marks: list[Mark] = []
    for left, name in ((middle - wide, BOOK_RIGHT), (middle, BOOK_LEFT)):
        marks += [
            Outline(points=rectangle(left, low, left + wide, low + high), width=MEDIUM),
            Text(x=left + wide / 2, y=low + high - 5.0, text=BOOK_TOP, anchor="middle"),
            Text(x=left + wide / 2, y=low + high / 2, text=name, bold=True, anchor="middle"),
        ]
    marks += [
        Area(points=rectangle(middle - 1.0, low, middle - 0.2, low + high)),
        Area(points=rectangle(middle + 0.2, low, middle + 1.0, low + high)),
        Text(x=middle, y=low + high + 3.0, text=BOOK_FRONT, anchor="middle"),
        Line(x1=middle - wide, y1=low + 15.0, x2=middle + wide, y2=low + 15.0, width=WIDE),
        Text(x=middle + 3.0, y=low + 10.0, text=BOOK_LINE),
        Area(points=rectangle(0.0, low - 2.0, 2 * middle, low - 0.4)),
        Text(x=middle, y=low - 6.0, text=BOOK_STOP, anchor="middle"),
    ]
    return MarkBlock(height=68.0, marks=tuple(marks))


def windows_picture() -> MarkBlock:
    """Draw a card on its pencil line, which shows in the windows cut out at both ends."""
    left, low, right, high, y = 4.0, -34.0, 34.0, -8.0, -21.0
    near, far = (left - 2.0, left + 4.0), (right - 8.0, right - 2.0)
    marks: list[Mark] = [
        Outline(points=rectangle(left - 4.0, low, right, high), width=MEDIUM),
        Area(points=rectangle(left - 1.2, low, left, y - 2.4)),
        Area(points=rectangle(left - 1.2, y + 2.4, left, high)),
        Line(x1=near[1], y1=y, x2=far[0], y2=y),
        Line(x1=right, y1=y, x2=right + 20.0, y2=y, width=WIDE),
        Text(x=right + 20.0, y=y + 1.4, text=PENCIL, anchor="end"),
        Text(x=0.0, y=low - 5.0, text=ON_LINE, bold=True),
    ]
    for start, end in (near, far):
        marks += [
            Outline(points=rectangle(start, y - 2.4, end, y + 2.4), width=MEDIUM),
            Line(x1=start, y1=y, x2=end, y2=y, width=WIDE),
        ]
    return MarkBlock(height=44.0, marks=tuple(marks))


PICTURES: dict[Picture, Callable[[], MarkBlock]] = {
    "fold": fold_picture,
    "book": book_picture,
    "windows": windows_picture,
}
"""What draws each."""
