"""The test page of a printer: bars to measure, a ruler edge, a bank card's outline, a frame.

Nothing on it is corrected: it shows the printer as it is.
"""

from jigs.given.printer import BARS
from templates.binding.cover import CARD, bank_card
from templates.page.bars import bar
from templates.page.marks import MEDIUM, Line, Mark, Outline, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import MarkBlock, moved, paragraph
from templates.page.scales import numbers, ticks

FRAME = (160.0, 120.0)
"""The frame whose diagonals show a skewed feed, mm: 200 mm from corner to corner."""
RULER = 240
"""Length of the ruler edge along the feed, mm."""


def calibration_page(paper: Paper) -> Page:
    """Draw the test page."""
    width, height = paper.width, paper.height
    marks: list[Mark] = []
    marks += _ruler(1.0, height - 4.0, min(RULER, int(height) - 10))
    marks += _bars(width, height)
    left, right = 34.0, width - 1.0
    top = height - 2.0
    for piece in _words(right - left, paper):
        marks += moved(piece.marks, left, top)
        top -= piece.height + 1.0
    marks += bank_card(left, top - 1.0 - CARD[1])
    marks += _blanks(left + 90.0, top - 6.0)
    marks += _frame(left, top - 58.0 - FRAME[1])
    return Page(width=width, height=height, marks=tuple(marks), entry="Test page")


def _words(width: float, paper: Paper) -> list[MarkBlock]:
    steps = (
        "Print this page at 100 %, actual size, on the paper and from the tray that the sheets "
        "will use. One calibration holds for one printer, one paper, one tray.",
        "Lay a steel rule on the two mm bars, one across and one along the paper: from middle of "
        "tick to middle of tick, to 0.1 mm. With an inch rule take the two inch bars, to 1/64.",
        "Lay a bank card on its outline: it must fill it. If it does and your rule says "
        "otherwise, look at the rule again.",
        "Measure both diagonals of the frame: if they differ by over 0.5 mm, the paper went in "
        "askew. Straighten its guides and print again: nothing can correct that.",
        "Tell what you measured:",
    )
    return [
        paragraph("PRINTER TEST PAGE: NOT A TEMPLATE", width, size=5.0, bold=True),
        paragraph(
            f"SCALE 1:1, not corrected. Page {paper.width:g} x {paper.height:g} mm for "
            f"{paper.sheet}.",
            width,
        ),
        *(paragraph(text, width, hang=str(row)) for row, text in enumerate(steps, start=1)),
        paragraph("jigsheet calibrate NAME --across ____ --along ____", width, bold=True),
        paragraph(
            "With inch bars add --bars in. NAME is a word of yours for this printer: garage. "
            "Then print with --printer NAME, and measure the sheet's own bars again.",
            width,
        ),
    ]


def _bars(width: float, height: float) -> list[Mark]:
    """Draw the mm and the inch bar across the foot, and along the paper."""
    (across, along), (across_in, along_in) = BARS["mm"], BARS["in"]
    x, y = (width - across) / 2, 4.0
    marks = [*bar(x, y, across), *bar(x, y + 8.0, across_in)]
    marks.append(Text(x=width / 2, y=y + 1.4, text="across: 180.0 mm", anchor="middle", bold=True))
    marks.append(Text(x=width / 2, y=y + 9.4, text="across: 7 in", anchor="middle", bold=True))
    top = height - 8.0
    marks += [*bar(18.0, top, along, down=True), *bar(26.0, top, along_in, down=True)]
    for place, text in ((16.6, "along: 200.0 mm"), (24.6, "along: 8 in")):
        marks.append(
            Text(x=place, y=top - along / 2, text=text, anchor="middle", bold=True, angle=90)
        )
    return marks


def _ruler(x: float, top: float, length: int) -> list[Mark]:
    """Draw a millimetre scale down the paper's edge, to lay a rule against."""
    marks: list[Mark] = [Line(x1=x, y1=top, x2=x, y2=top - length, width=MEDIUM)]
    marks += ticks(x, top, 0.0, length, along="down", side=1)
    figures = numbers(x + 6.0, top, 0.0, length, along="down", anchor="start", every=20)
    return [*marks, *(text for _, text in figures)]


def _blanks(x: float, top: float) -> list[Mark]:
    lines = (
        "Printer ____________________", "Paper ______________________",
        "Tray _______________________", "Date _______________________",
        "Across ____________  (180.0)", "Along _____________  (200.0)",
        "Diagonals ________  ________",
    )  # fmt: skip
    return [Text(x=x, y=top - row * 7.0, text=text) for row, text in enumerate(lines)]


def _frame(x: float, y: float) -> list[Mark]:
    wide, high = FRAME
    corners = ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))
    return [
        Outline(points=corners, width=MEDIUM),
        Line(x1=x, y1=y, x2=x + wide, y2=y + high),
        Line(x1=x, y1=y + high, x2=x + wide, y2=y),
        Text(x=x + wide / 2, y=y + high - 5.0, anchor="middle",
             text="Both diagonals: 200.0 mm from corner to corner, and alike"),
    ]  # fmt: skip
