"""The worst gaps with what takes from them, and the chance of the whole kitchen by its reveal.

Of each gap the bar reaches from 0 to its width as planned. Its parts are taken from its right end,
the greatest first, as if all went against it at once; below lies, broad, what it comes to in fact,
least to most; an upright line stands at what it needs.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from jigs.ground.geometry import rectangle
from jigs.ground.lengths import format_mm
from jigs.room.budget import Budget
from jigs.room.chance import Chance
from jigs.room.reckoning import GapBudgets
from templates.elevations.wallgaps import DrawnGaps
from templates.page.dimensions import frame
from templates.page.marks import MEDIUM, WIDE, Area, Line, Mark, Outline, Page, Text
from templates.page.paper import Paper
from templates.page.typeface import shorten, text_width, wrap
from templates.words.budgetwords import (
    CAUSE_LETTERS,
    LETTERS,
    SIGNS,
    VERDICT_WORDS,
    WORST_FIRST,
    chance_words,
    gap_name,
    percent,
)

WORST = 10
"""So many gaps are shown."""
_EDGE = 1.0
_LEFT = 62.0
"""Where the bars begin, from the paper's left; mm."""
_RIGHT = 10.0
_ROW = 10.2
_SMALL, _PLAIN = 1.8, 2.5
_FOOT = 62.0
"""The height of the lower part, with the curve; mm."""


def draw_chart(found: GapBudgets, chance: Chance | None, job: str, paper: Paper) -> DrawnGaps:
    """Draw the page of the worst gaps and of the chance."""
    width, height = paper.height, paper.width
    marks: list[Mark] = [frame(_EDGE, _EDGE, width - _EDGE, height - _EDGE, WIDE)]
    title = shorten(f"{job}: THE WORST GAPS, AND THE WHOLE KITCHEN", 5.0, True, width - 8.0)
    marks.append(Text(x=_EDGE + 2.0, y=height - 9.0, text=title, size=5.0, bold=True))
    told = (
        "Each gap in mm, from 0 to as planned. From its right end is taken what each cause may "
        f"take at most: {LETTERS}. The broad bar is what it comes to; the upright line what it "
        "needs to open."
    )
    for row, line in enumerate(wrap(told, _SMALL, False, width - 8.0)):
        marks.append(Text(x=_EDGE + 2.0, y=height - 14.0 - row * 3.0, text=line, size=_SMALL))
    worst = sorted(found.budgets, key=_badness)[:WORST]
    marks += _bars(worst, width, height - 23.0)
    if chance is not None:
        marks += _curve(chance, width)
    return DrawnGaps(
        page=Page(width=width, height=height, marks=tuple(marks), entry="WORST GAPS"),
        name="gaps-worst",
    )


def _badness(budget: Budget) -> tuple[int, float]:
    return WORST_FIRST.index(budget.verdict), budget.spare or 0.0


def _bars(worst: Sequence[Budget], width: float, top: float) -> Iterator[Mark]:
    low = min(0.0, *(budget.left.worst for budget in worst))
    high = max(1.0, *(max(b.gap.nominal, b.left.high, b.least.width or 0.0) for b in worst))
    step = (width - _EDGE - _RIGHT - _LEFT) / (high - low)

    def at(mm: float) -> float:
        return _LEFT + (mm - low) * step

    for row, budget in enumerate(worst):
        y = top - (row + 1) * _ROW
        name = shorten(gap_name(budget.gap), _PLAIN, True, _LEFT - _EDGE - 24.0)
        yield Text(x=_EDGE + 2.0, y=y + 4.6, text=name, bold=True)
        said = f"{SIGNS[budget.verdict]} {VERDICT_WORDS[budget.verdict]}".strip()
        yield Text(x=_LEFT - 3.0, y=y + 4.6, text=said, anchor="end")
        yield Text(
            x=_EDGE + 2.0, y=y + 1.2, size=_SMALL,
            text=shorten(
                f"{budget.gap.wall}: comes to {format_mm(budget.left.low)} to "
                f"{format_mm(budget.left.high)}",
                _SMALL, False, _LEFT - _EDGE - 4.0,
            ),
        )  # fmt: skip
        yield Outline(points=rectangle(at(0.0), y + 3.8, at(budget.gap.nominal), y + 7.6))
        end = budget.gap.nominal
        for cause, takes in budget.parts:
            start = end - takes
            yield Outline(points=rectangle(at(start), y + 3.8, at(end), y + 7.6), width=MEDIUM)
            yield from _named(f"{CAUSE_LETTERS[cause]} {takes:.2f}", at(start), at(end), y + 4.8)
            end = start
        yield Area(
            points=rectangle(at(budget.left.low), y + 1.4, at(budget.left.high), y + 2.8),
            layer=budget.verdict,
        )
        need = budget.least.width
        if need is not None:
            yield Line(x1=at(need), y1=y + 0.6, x2=at(need), y2=y + 8.4, width=0.7)
        yield Line(x1=at(0.0), y1=y + 0.6, x2=at(0.0), y2=y + 8.4)
    base = top - len(worst) * _ROW - 0.6
    for mark in range(int(low) - 1, int(high) + 1):
        if low <= mark <= high:
            yield Line(x1=at(mark), y1=base, x2=at(mark), y2=base + 1.2)
            yield Text(x=at(mark), y=base - 2.4, text=f"{mark}", size=_SMALL, anchor="middle")


def _named(words: str, start: float, end: float, y: float) -> Iterator[Mark]:
    """Write what a part is into it: all of it, its letter alone, or nothing."""
    letter = words[:1]
    for text in (words, letter):
        if text_width(text, _SMALL, False) <= end - start - 0.6:
            yield Text(x=(start + end) / 2, y=y, text=text, size=_SMALL, anchor="middle")
            return


def _curve(chance: Chance, width: float) -> Iterator[Mark]:
    """Draw how the chance falls as the gap between fronts shrinks."""
    x0, x1, y0, y1 = 20.0, width * 0.55, 12.0, _FOOT - 17.0
    points = sorted(chance.curve)
    least, most = points[0][0], points[-1][0]

    def place(gap: float, share: float) -> tuple[float, float]:
        return x0 + (gap - least) / (most - least) * (x1 - x0), y0 + share * (y1 - y0)

    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        _, y = place(least, share)
        yield Line(x1=x0, y1=y, x2=x1, y2=y)
        yield Text(x=x0 - 1.5, y=y - 0.9, text=percent(share), size=_SMALL, anchor="end")
    for gap, share in points:
        x, y = place(gap, share)
        yield Line(x1=x, y1=y0, x2=x, y2=y0 - 1.0)
        if gap == int(gap):
            yield Text(x=x, y=y0 - 4.0, text=format_mm(gap), size=_SMALL, anchor="middle")
        yield Area(points=rectangle(x - 0.6, y - 0.6, x + 0.6, y + 0.6))
    for (gap, share), (other, then) in pairwise(points):
        (xa, ya), (xb, yb) = place(gap, share), place(other, then)
        yield Line(x1=xa, y1=ya, x2=xb, y2=yb, width=0.5, layer="chance")
    yield Text(
        x=(x0 + x1) / 2, y=y0 - 7.6, text="gap between two fronts, mm", size=_SMALL, anchor="middle"
    )
    told = next(iter(chance_words(chance)))
    for row, line in enumerate(wrap(told, _PLAIN, False, width - x1 - 14.0)):
        yield Text(x=x1 + 8.0, y=y1 - 2.0 - row * 4.4, text=line)
