"""The paper beyond a reference edge: a flap to fold down, or waste to cut off.

White meets black on the edge. A fold on the other side of the band, 3 mm wide, would put every
hole 3 mm off: each flap says how a true fold looks, from the face and from the edge. Where two
flaps meet, their corner is cut out, or neither could go down flat.
"""

from collections.abc import Sequence
from typing import Literal

from templates.faces.reference import Reference
from templates.page.marks import THIN, Area, Line, Text
from templates.page.space import Box, Space
from templates.page.typeface import PITCH, text_width

BAND = 3.0
"""Width of the black band outside a reference edge, mm."""
FLAP = 13.0
"""Width of band and flap together, mm."""
WASTE = 10.5
"""Width of band and waste together, where the card is cut at the edge and not folded; mm."""
FREE = 4.0
"""What the words of a flap leave of its length, mm."""

ON_FLAP = "no black on face, no white on edge"
"""How a fold on the right side of the band looks."""

Lines = tuple[str, ...]
"""What stands on a flap, line by line."""


def flap_words(edge: str, rounded: bool, *, stand: bool = False) -> tuple[Lines, ...]:
    """Say what is done with the paper beyond an edge, in full and shorter.

    `stand`: the edge is a panel's face, on which the cut paper is stood.
    """
    if stand:
        return (
            (f"CUT OFF THE BLACK, STAND THE PAPER ON THE {edge}",),
            (f"CUT, STAND IT ON THE {edge}",),
            ("CUT, NO FOLD",),
        )
    if rounded:
        return (
            (f"CUT, NO FOLD: BUTT TO A BLOCK ON THE {edge}",),
            (f"CUT, BUTT TO A BLOCK: {edge}",),
            ("CUT, BUTT TO A BLOCK",),
        )
    return (
        (f"FOLD DOWN: {edge}; {ON_FLAP}",),
        (f"FOLD DOWN: {edge};", ON_FLAP),
        (f"FOLD: {edge}; no black", "on face, no white on edge"),
        (f"FOLD: {edge}:", "no black, no white"),
    )


def fullest(choices: Sequence[Lines], length: float) -> Lines:
    """Give the first of some words that finds room along a flap `length` mm long, or the last."""
    for lines in choices:
        if max(text_width(line, 2.5) for line in lines) < length - FREE:
            return lines
    return choices[-1]


def flap_texts(lines: Lines, axis: Literal["x", "y"], at: float, middle: float) -> list[Text]:
    """Write words along the middle of a flap: `at` across it, `middle` along it; mm. Along an
    upright edge (`x`) they are read from the right."""
    texts: list[Text] = []
    for row, line in enumerate(lines):
        down = (row - (len(lines) - 1) / 2) * PITCH + 1.25
        if axis == "x":
            texts.append(Text(x=at + down, y=middle, text=line, anchor="middle", angle=90))
        else:
            texts.append(Text(x=middle, y=at - down, text=line, anchor="middle"))
    return texts


def draw_edge(
    space: Space,
    edge: Reference,
    run: tuple[float, float],
    flap: float,
    choices: Sequence[Lines],
    *,
    black: tuple[float, float] | None = None,
) -> None:
    """Draw the black outside an edge from one place along it to another, and midway on the paper
    beyond, `flap` wide over all, the fullest words there is room for; mm. `black`: where it begins
    and ends, where that is not as the words do."""
    start, end = black or run
    out = edge.at - edge.inward * BAND
    a, b = (out, start), (edge.at, end)
    if edge.axis == "y":
        a, b = (start, out), (end, edge.at)
    space.add(Area(points=(a, (b[0], a[1]), b, (a[0], b[1]))))
    lines = fullest(choices, abs(run[1] - run[0]))
    middle = edge.at - edge.inward * (BAND + flap) / 2
    space.add(*flap_texts(lines, edge.axis, middle, (run[0] + run[1]) / 2))


def cross_out(space: Space, corner: Box) -> None:
    """Draw a corner where two flaps meet: crossed, to be cut out."""
    x0, y0, x1, y1 = corner
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    space.add(
        Text(x=x, y=y + 0.9, text="CUT", anchor="middle"),
        Text(x=x, y=y - 3.1, text="OUT", anchor="middle"),
    )
    for edge in (((x0, y0), (x1, y0)), ((x0, y1), (x1, y1)), ((x0, y0), (x0, y1)),
                 ((x1, y0), (x1, y1))):  # fmt: skip
        (ax, ay), (bx, by) = edge
        space.add(Line(x1=ax, y1=ay, x2=bx, y2=by, width=THIN))
    for run in (((x0, y0), (x1, y1)), ((x0, y1), (x1, y0))):
        space.add_between_texts(run, corner, "", 0.25)
