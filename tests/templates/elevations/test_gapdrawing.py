"""The gap budget drawn: each gap in its place, told apart without colour."""

from collections import Counter
from functools import cache
from importlib.resources import files
from pathlib import Path

import pytest

from cli.jobs import read_in_hand
from jigs.box.parts import Layout
from jigs.ground.lengths import format_mm
from jigs.layout.layout import lay_out
from jigs.room.chance import Chance
from jigs.room.reckoning import GapBudgets, reckon_gaps
from templates.elevations.gapchart import WORST, draw_chart
from templates.elevations.wallgaps import LINES, draw_gap_walls
from templates.page.marks import Area, Line, Outline, Page, Text
from templates.page.ownpaper import named_paper
from templates.page.typeface import text_box
from templates.words.budgetwords import SIGNS, WORST_FIRST

PAPER = named_paper("common").for_drawings


@cache
def demo() -> tuple[Layout, GapBudgets]:
    layout = lay_out(read_in_hand(Path(str(files("templates.demo"))) / "job.toml", None, None))
    return layout, reckon_gaps(layout)


@cache
def walls() -> tuple[Page, ...]:
    return tuple(drawn.page for drawn in draw_gap_walls(*demo(), PAPER))


def lines_of(page: Page) -> list[Line]:
    return [mark for mark in page.marks if isinstance(mark, Line) and mark.layer in LINES]


def test_verdicts_differ_without_colour() -> None:
    """Each has a width and pattern of its own, and all but one a sign."""
    assert len(set(LINES.values())) == len(LINES) == len(SIGNS)
    assert len(set(SIGNS.values())) == len(SIGNS)
    assert sorted(WORST_FIRST) == sorted(SIGNS)


def test_every_gap_has_its_line_and_its_figure() -> None:
    """As many of each verdict as were reckoned, and the least beside each."""
    _, found = demo()
    lines = [line for page in walls() for line in lines_of(page)]
    assert Counter(line.layer for line in lines) == Counter(b.verdict for b in found.budgets)
    said = Counter(m.text for page in walls() for m in page.marks if isinstance(m, Text))
    wanted = Counter(f"{SIGNS[b.verdict]} {format_mm(b.left.low)}".strip() for b in found.budgets)
    assert not wanted - said


def test_a_gap_stands_where_it_is() -> None:
    """At the scale of the page, from the left of its own wall: no mirror, no shift between two."""
    _, found = demo()
    north = [b.gap for b in found.budgets if b.gap.wall == "north"]
    lines = lines_of(walls()[0])
    first, last = (north[at].x for at in (0, -1))
    scale = (last - first) / (lines[-1].x1 - lines[0].x1)
    assert scale == pytest.approx(20.0)
    for gap, line in zip(north, lines, strict=True):
        middle = ((line.x1 + line.x2) / 2, (line.y1 + line.y2) / 2)
        start = ((lines[0].x1 + lines[0].x2) / 2, (lines[0].y1 + lines[0].y2) / 2)
        assert middle[0] - start[0] == pytest.approx((gap.x - north[0].x) / 20)
        assert middle[1] - start[1] == pytest.approx((gap.y - north[0].y) / 20)
        assert abs(line.x2 - line.x1) + abs(line.y2 - line.y1) == pytest.approx(gap.length / 20)


def test_no_word_stands_on_another_or_off_the_page() -> None:
    """Walls and chart alike."""
    layout, found = demo()
    chance = Chance(planned=0.5, curve=((4.0, 0.9), (1.0, 0.0)), gaps=3, trials=10, seed=1)
    for page in (*walls(), draw_chart(found, chance, layout.job.name, PAPER).page):
        boxes = [text_box(mark) for mark in page.marks if isinstance(mark, Text)]
        assert all(
            x0 >= 0 and y0 >= 0 and x1 <= page.width and y1 <= page.height
            for x0, y0, x1, y1 in boxes
        )
        assert not any(
            a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
            for at, a in enumerate(boxes)
            for b in boxes[at + 1 :]
        )


def test_the_chart_is_to_scale() -> None:
    """The worst gap's bar of what it comes to is as long as it says, in the measure of its bar as
    planned."""
    layout, found = demo()
    page = draw_chart(found, None, layout.job.name, PAPER).page
    worst = min(found.budgets, key=lambda b: (WORST_FIRST.index(b.verdict), b.spare or 0.0))
    comes = [mark for mark in page.marks if isinstance(mark, Area) and mark.layer in LINES]
    assert len(comes) == WORST
    planned = next(m for m in page.marks if isinstance(m, Outline) and m.points[0][0] > 50)
    step = (planned.points[1][0] - planned.points[0][0]) / worst.gap.nominal
    long = comes[0].points[1][0] - comes[0].points[0][0]
    assert long == pytest.approx((worst.left.high - worst.left.low) * step)
