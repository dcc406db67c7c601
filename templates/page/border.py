"""What stands along the borders of every page: check bars, the page's number, how it is printed."""

from templates.page.bars import bar
from templates.page.marks import Mark, Text
from templates.page.paper import Paper

LEFT_STRIP, BOTTOM_STRIP = 8.2, 12.6
"""Borders that carry the bars, mm."""
EDGE = 1.0
"""Paper left free along the other borders, mm."""
DRILL_CARE = "CLAMP. Eyes, ears, lungs. NO GLOVES."
"""What stands on every page that has holes, in one line; common practice, no source."""


_BARS = (
    "Measure each page's bars by steel rule today. Wrong? Print again at 100 %, actual size. "
    "Still? Calibrate, or trust rule and figures."
)


def border_marks(
    width: float,
    height: float,
    paper: Paper,
    number: int,
    *,
    holes: bool = False,
    brief: bool = False,
) -> list[Mark]:
    """Draw the bars of 150 across and 100 down, the page's number, and how it is printed; with
    `holes`, which care their drilling wants. With these or `brief`, the file's first page says
    what to do when the bars are wrong, and what a + or - behind inches is."""
    marks = bar(3.0, 2.6, 150.0)
    marks += bar(2.4, height - 4.0, 100.0, down=True)
    marks.append(Text(x=6.6, y=height - 54.0, text="100.0 ±0.2", anchor="middle", angle=90))
    marks.append(Text(x=155.0, y=1.4, text="150.0 ±0.3"))
    marks.append(Text(x=width - EDGE, y=1.4, text=f"page {number}", anchor="end"))
    if holes:
        marks.append(Text(x=width - EDGE, y=5.2, text=DRILL_CARE, bold=True, anchor="end"))
    if holes or brief:
        printed = f" {paper.correction}" if paper.printer else ""
        size = f"{width:.5g} x {height:.5g} mm"
        marks.append(Text(x=3.0, y=9.2, text=f"100 %: {size}.{printed}"))
        return marks
    marks.append(Text(x=3.0, y=5.2, text=_BARS))
    marks.append(
        Text(
            x=3.0,
            y=9.2,
            text=f"SCALE 1:1. {paper.size_of(width, height)} {paper.correction} "
            "+ or -: a little more or less.",
        )
    )
    return marks
