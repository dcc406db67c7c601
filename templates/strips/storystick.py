"""The story stick on paper: strips that are glued to a batten as long as the board.

Only strips with lines are printed (`stickstrip.py`); each says how far its foot stands from the end
of the stick, so that it is laid by a tape whatever lies between. The heights follow as a list.
"""

from collections.abc import Iterator, Sequence

from jigs.bench.storystick import Stick
from jigs.ground.lengths import format_inches, format_mm
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Mark, Page
from templates.page.paper import Paper
from templates.page.pieces import moved, paragraph
from templates.page.scales import SLIP
from templates.page.typeface import shorten
from templates.strips.stickstrip import (
    STRIPS_AT,
    TAB,
    WIDTH,
    StickStrip,
    draw_strip,
    printed_strips,
)
from templates.words.stickwords import cautions, line_words, striking

_SMALL = 2.5


def stick_pages(sticks: Sequence[Stick], job: str, paper: Paper) -> Iterator[Page]:
    """Draw the pages of each family's stick: its strips, then its heights as a list."""
    number = 1
    for place, stick in enumerate(sticks, start=1):
        name = f"Story stick {place}: {format_mm(stick.height)} mm"
        strips = printed_strips(stick, place)
        across = max(
            1, int((paper.width - LEFT_STRIP - EDGE + STRIPS_AT - WIDTH - TAB) / STRIPS_AT)
        )
        for first in range(0, len(strips), across):
            marks = border_marks(paper.width, paper.height, paper, number)
            chosen = strips[first : first + across]
            marks += _head(stick, name, job, chosen, paper)
            for column, strip in enumerate(chosen):
                marks += draw_strip(
                    stick, strip, LEFT_STRIP + column * STRIPS_AT, BOTTOM_STRIP + 3.0
                )
            yield Page(width=paper.width, height=paper.height, marks=tuple(marks), entry=name)
            number += 1
        for page in _list_pages(stick, name, paper, number):
            yield page
            number += 1


def _head(
    stick: Stick, name: str, job: str, strips: Sequence[StickStrip], paper: Paper
) -> list[Mark]:
    """Say what the stick is for and how it is made."""
    width = paper.width - LEFT_STRIP - EDGE
    boards = shorten(f"For {', '.join(stick.boards)}.", _SMALL, False, 3 * width)
    first, last = strips[0], strips[-1]
    numbers = f"strip {first.number}"
    if last is not first:
        numbers = f"strips {first.number} to {last.number}"
    joined = ""
    if any(strip.below or strip.above for strip in strips):
        joined = (
            " A strip that meets the one below goes on its tab: its foot on the JOIN line, the "
            "long marks of both little scales in one line; the next pair in line shows a slip of "
            f"{SLIP:g} mm."
        )
    words = [
        paragraph(f"{name.upper()}, {numbers} of {first.count}", width, size=3.5, bold=True),
        paragraph(f"{shorten(job, _SMALL, False, width * 0.4)}. {boards}", width),
        paragraph(
            "1 Measure both bars. 2 Cut the strips out. 3 Square one end of a straight batten, "
            f"{format_mm(stick.height)} or longer: the BOTTOM END. From it, with a steel tape, "
            "strike a line across the batten for the foot of each strip, at the figure that stands "
            f"on it. 4 Glue each strip with its foot on its line.{joined} 5 Check each thick line "
            "with the tape, from the bottom end; where it matters, trust the tape.",
            width,
        ),
        paragraph(striking(stick), width, bold=True),
    ]  # fmt: skip
    words += [
        paragraph(shorten(text, _SMALL, True, width), width, bold=True) for text in cautions(stick)
    ]
    marks: list[Mark] = []
    top = paper.height - EDGE
    for piece in words:
        marks += moved(piece.marks, LEFT_STRIP, top)
        top -= piece.height + 0.6
    return marks


def _figure(height: float) -> str:
    return f"{format_mm(height)} mm ({format_inches(height)} in)"


def _list_pages(stick: Stick, name: str, paper: Paper, number: int) -> Iterator[Page]:
    """List the heights to strike, and the spacer boards."""
    width = paper.width - LEFT_STRIP - EDGE
    lines = [(text, True) for text in cautions(stick)]
    lines.append(("HEIGHTS TO STRIKE, from the bottom end", True))
    lines.append((striking(stick), False))
    for line in stick.lines:
        above = f"; {format_mm(line.y - stick.bottom)} mm above the bottom panel"
        only = f", ONLY {', '.join(line.only)}" if line.only else ""
        above = above if stick.bottom else ""
        lines.append((f"{_figure(line.y)}  {line_words(line)}{only}{above}", False))
    if stick.spacers:
        lines.append(
            ("SPACER BOARDS for the slides, stood on the bottom panel, slide on top", True)
        )
        for spacer in stick.spacers:
            height = (
                "none: the slide stands on the panel" if abs(spacer.above_panel) < 0.05
                else f"{_figure(spacer.above_panel)} high"
            )  # fmt: skip
            lines.append((f"{spacer.part}: {height}", False))
    marks: list[Mark] = []
    top = 0.0
    for text, bold in lines:
        piece = paragraph(text, width, bold=bold)
        if not marks or top - piece.height < BOTTOM_STRIP + 3.0:
            if marks:
                yield Page(width=paper.width, height=paper.height, marks=tuple(marks), entry=name)
                number += 1
            marks = border_marks(paper.width, paper.height, paper, number)
            head = paragraph(f"{name.upper()}, figures", width, size=3.5, bold=True)
            top = paper.height - EDGE
            marks += moved(head.marks, LEFT_STRIP, top)
            top -= head.height + 2.0
        marks += moved(piece.marks, LEFT_STRIP, top)
        top -= piece.height + 0.6
    yield Page(width=paper.width, height=paper.height, marks=tuple(marks), entry=name)
