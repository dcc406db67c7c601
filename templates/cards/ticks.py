"""What a set of sheets says that serves several parts: a box to tick for each, how a jig is made.

Paper serves about ten parts, then its corners are worn; a card glued on hardboard serves longer.
All of this is common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from templates.page.marks import MEDIUM, Mark, Outline, Text
from templates.page.pieces import MarkBlock, paragraph
from templates.page.typeface import text_width, wrap

BOX = 3.0
"""Side of a tick box, mm."""
ROW, CLOSE = 5.2, 4.4
"""Pitch of rows with tick boxes, and where they stand close; mm."""
SHORT = 24
"""Letters of a name that still stands large on a card."""
TICK = "TICK EACH AS IT IS PUNCHED"
HOW = (
    "fill in its size; one that is 0.5 off the others takes a sheet of its own. Paper is good for "
    "about ten: then print a new set."
)
OWN_CODES = "own codes"
"""Where the codes of the parts differ: each stands at its ID."""
BLANKS = "______ x ______"
"""Where the measured size of one part is written."""
_INDENT = BOX + 1.6
_APART = 2.2

JIG = (
    "A JIG OF A CARD, FOR MANY PARTS. Glue the card flat, without folds, on hardboard 3 to 6 mm "
    "thick (spray glue: wet glue stretches paper). Measure its figures again.",
    "Saw it where white meets black, or at its cut edge; diamonds become windows. Screw a "
    "straight strip to each edge that meets the part's own edge, 10 mm deeper: the fence.",
    "Prick each cross, drill it 2 mm, square, for a punch or bit that fits. It marks the place "
    "alone: take the jig off to bore.",
    "Write FACE, UP and the IDs on it; try it on scrap. Never turn it over: the other hand has "
    "its own sheet.",
)
"""How a card becomes a jig."""

JIG_SHORT = (
    "JIG: the card on hardboard 3 to 6 mm, a strip as fence at each edge of the part, 2 mm holes "
    "for a punch that fits. Measure it; never turn it over.",
)
"""The same where room is scarce."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """One of the parts that a set of sheets serves, ticked off as it is punched."""

    part: str
    code: str
    box: str


def set_name(parts: Sequence[str]) -> str:
    """Name a set by its parts: all of a few short names, else the first and how many more.

    >>> set_name(["B1-2", "B3-2"])
    'B1-2, B3-2'
    >>> set_name(["B1-SIDE-L", "B2-SIDE-L", "B3-SIDE-L"])
    'B1-SIDE-L + 2 ALIKE'
    """
    joined = ", ".join(parts)
    return joined if len(joined) <= SHORT else f"{parts[0]} + {len(parts) - 1} ALIKE"


def ticks(members: Sequence[Member], width: float) -> list[MarkBlock]:
    """Give each part a row: its box to tick, ID, code where codes differ, cabinet box, and blanks
    for its size."""
    if not members:
        return []
    rows = [
        [*_names(member, members), (f"box {member.box}", False), (BLANKS, False)]
        for member in members
    ]
    heading = paragraph(f"{TICK}; {HOW}", width, bold=True)
    runs = [ticks_in_run([row], width, ROW) for row in rows]
    return [heading, *runs[:-1], replace(runs[-1], height=runs[-1].height + 1.0)]


def short_ticks(members: Sequence[Member], width: float) -> MarkBlock:
    """Give the boxes to tick in a run."""
    return ticks_in_run([_names(member, members) for member in members], width, CLOSE)


def _names(member: Member, members: Sequence[Member]) -> list[tuple[str, bool]]:
    several = len({each.code for each in members}) > 1
    return [(member.part, True), *([(f"code {member.code}", False)] if several else [])]


def ticks_in_run(
    cells: Sequence[Sequence[tuple[str, bool]]], width: float, pitch: float
) -> MarkBlock:
    """Set tick boxes with their words in rows; a cell that is too long goes on below."""
    marks: list[Mark] = []
    x, y = 0.0, 1.2 - pitch
    for cell in cells:
        whole = _INDENT + sum(text_width(text, 2.5, bold) + _APART for text, bold in cell) - _APART
        if x > 0.0 and x + whole > width:
            x, y = 0.0, y - pitch
        marks.append(_square(x, y - 0.3))
        start = x + _INDENT
        x = start
        for text, bold in cell:
            for line in wrap(text, 2.5, bold, width - start):
                wide = text_width(line, 2.5, bold)
                if x > start and x + wide > width:
                    x, y = start, y - pitch
                marks.append(Text(x=x, y=y, text=line, bold=bold))
                x += wide + _APART
        x += _APART
    return MarkBlock(height=1.2 - y, marks=tuple(marks))


def _square(x: float, y: float) -> Outline:
    corners = ((x, y), (x + BOX, y), (x + BOX, y + BOX), (x, y + BOX))
    return Outline(points=corners, width=MEDIUM)
