"""The story stick on paper, read back: the heights stand where they are, strip by strip."""

from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from cli.jobs import read_in_hand
from jigs.bench.storystick import Stick, find_sticks
from jigs.box.parts import Layout
from jigs.given.confirming import open_numbers
from jigs.given.hardware import SlideRecord
from jigs.given.job import Job
from jigs.ground.lengths import format_mm
from jigs.layout.layout import lay_out
from templates.page.border import BOTTOM_STRIP, LEFT_STRIP
from templates.page.marks import Line, Page, Text
from templates.page.paper import PAPERS
from templates.strips.stickstrip import FAINT, LENGTH, STRIKE, STRIPS_AT, WIDTH, divide
from templates.strips.storystick import stick_pages
from templates.writers.pdf import write_pdf
from tests.clashes import clashes_of_marks
from tests.jobs import jobs
from tests.readback import PrintedPage, read_pages

FOOT = BOTTOM_STRIP + 3.0
DEMO = Path(__file__).parents[3] / "templates" / "demo" / "job.toml"


def _pages(layout: Layout) -> list[tuple[Stick, list[Page]]]:
    return [
        (stick, list(stick_pages([stick], layout.job.name, PAPERS["common"])))
        for stick in find_sticks(layout)
    ]


@cache
def _pages_of_demo() -> list[tuple[Stick, list[Page]]]:
    return _pages(lay_out(read_in_hand(DEMO)))


def _thick(pages: list[PrintedPage]) -> set[float]:
    """Give the heights of the thick lines along the strips' left edges, each counted from the
    figure that stands at its strip's foot."""
    heights = set()
    for page in pages:
        for column in range(3):
            x = LEFT_STRIP + column * STRIPS_AT
            beside = [
                run for run in page.runs if x < run.box[0] < x + WIDTH and run.base < FOOT + 15.0
            ]
            feet = [run.text for run in beside if run.text.startswith(("FOOT AT", "BOTTOM END"))]
            if not feet:
                continue
            low = float(feet[0].removeprefix("FOOT AT ").replace("BOTTOM END", "0"))
            heights |= {
                round(stroke.y1 - FOOT + low, 2)
                for stroke in page.strokes
                if abs(stroke.line - STRIKE) < 0.01 and abs(min(stroke.x1, stroke.x2) - x) < 0.01
            }
    return heights


def test_each_line_of_the_demo_stands_at_its_height() -> None:
    """Within 0.02 of the height that the stick states, by the figure at the foot of the strip that
    carries it; and no thick line stands elsewhere."""
    for stick, pages in _pages_of_demo():
        found = sorted(_thick(list(read_pages(write_pdf(pages)))))
        wanted = sorted({round(line.y, 2) for line in stick.lines})
        assert all(any(abs(height - y) <= 0.02 for y in found) for height in wanted)
        assert all(any(abs(height - y) <= 0.02 for height in wanted) for y in found)


def test_a_strip_without_lines_is_not_printed() -> None:
    """Lines at 90 and 1600 of a stick of 2133.6 in strips of 178: the first and the ninth, 1 and 2
    of 2, the foot of the latter at 8 x 178 = 1424; with one at 360, on the strip from 356, three;
    with one at 340, on the second strip, its foot goes on the first one's tab."""
    (stick, _), *_ = _pages_of_demo()
    line = replace(stick.lines[0], only=())

    def feet(*heights: float) -> list[tuple[str, bool]]:
        lines = tuple(replace(line, y=height) for height in heights)
        words = _words(replace(stick, height=2133.6, lines=lines))
        joins = sum(word.startswith("JOIN") for word in words)
        count = sum(word.startswith("STRIP ") for word in words)
        assert f"STRIP {count} of {count}" in words
        return [
            *((word, False) for word in words if word.startswith(("FOOT AT", "BOTTOM END"))),
            *[("JOIN", True)] * joins,
        ]

    assert feet(90.0, 1600.0) == [("BOTTOM END", False), ("FOOT AT 1424.0", False)]
    assert feet(360.0, 1600.0) == [("FOOT AT 356.0", False), ("FOOT AT 1424.0", False)]
    assert feet(90.0, 340.0) == [
        ("BOTTOM END", False), ("FOOT AT 178.0", False), ("JOIN", True)
    ]  # fmt: skip
    assert ("JOIN", True) not in feet(90.0, 360.0)


def test_what_is_struck_is_longer_and_heavier_than_any_tick() -> None:
    """Three times as long as the longest tick (5.0 at the tens), four times as wide as a tick."""
    for _, pages in _pages_of_demo():
        for page in pages:
            lines = [mark for mark in page.marks if isinstance(mark, Line)]
            ticks = [mark for mark in lines if mark.width == FAINT]
            struck = [mark for mark in lines if mark.width == STRIKE]
            for each in struck:
                assert each.x2 - each.x1 >= 3 * max(abs(tick.x2 - tick.x1) for tick in ticks)
    assert STRIKE > 3 * FAINT


def test_every_page_says_what_is_not_to_be_trusted() -> None:
    """Hardware not confirmed, and parts still to come, stand on each page of the stick."""
    (stick, _), *_ = _pages_of_demo()
    doubtful = replace(stick, open=open_numbers(SlideRecord(name="runner")), missing=("B9-1",))
    sure = replace(stick, open=(), missing=())
    for wanted, each in ((True, doubtful), (False, sure)):
        for page in stick_pages([each], "job", PAPERS["common"]):
            words = " ".join(mark.text for mark in page.marks if isinstance(mark, Text))
            assert ("OPEN: slide runner, 6 numbers: the check lists them" in words) is wanted
            assert ("INCOMPLETE: lines for B9-1 still to come" in words) is wanted


def _words(stick: Stick) -> list[str]:
    pages = stick_pages([stick], "job", PAPERS["common"])
    return [mark.text for page in pages for mark in page.marks if isinstance(mark, Text)]


def test_a_line_says_on_which_boards_alone_it_is_struck() -> None:
    """On the strip, at the head and in the list; a line of all boards is struck across both."""
    (stick, _), *_ = _pages_of_demo()
    line = replace(stick.lines[0], serves=("B1-1",), only=())
    both = replace(stick, lines=(line,), struck="together")
    assert "across BOTH at once." in " ".join(_words(both))
    assert not any("ONLY" in text for text in _words(both))
    left = " ".join(_words(replace(both, lines=(replace(line, only=("LEFT",)),))))
    assert left.count("ONLY LEFT") == 2  # strip and list
    assert "Strike across BOTH at once only what is on both." in left
    standing = " ".join(_words(replace(both, struck="each", standing=("B7",))))
    assert "ALREADY TOGETHER: B7." in standing
    assert "one stop" not in standing
    assert "one that names none, on all." in standing  # its line is in both sides
    alone = replace(both, boards=("T1-SIDE-L",), struck="each")
    assert "Strike the lines on T1-SIDE-L, on no other board." in " ".join(_words(alone))


def test_boards_are_never_cut_short() -> None:
    """Where a strip has no room for all names it says how many they are; the list names them."""
    (stick, _), *_ = _pages_of_demo()
    names = tuple(f"B{number} L+R" for number in range(1, 31))
    line = replace(stick.lines[0], serves=names, only=names)
    words = _words(replace(stick, lines=(line,)))
    assert "ONLY 60: list" in words
    assert f"ONLY {', '.join(names)}" in " ".join(words)


@pytest.mark.parametrize("count", [3, 9, 12, 18, 22, 30])
def test_a_crowded_strip_says_less_and_stays_on_itself(count: int) -> None:
    """Strips of 163 of a stick of 1136: of three lines each is told in full; of more there are
    fewer words, down to the figure, and nothing runs off the strip; a name only one board has is
    never without the word ONLY."""
    (stick, _), *_ = _pages_of_demo()
    lines = tuple(
        replace(stick.lines[0], y=170.0 + 5.0 * row, serves=("B1-1", "B2-1", "B3-1"), only=only)
        for row in range(count)
        for only in [("B1 L+R", "B3 L") if row % 3 == 0 else ()]
    )
    crowded = replace(stick, height=1136.0, bottom=18.3, lines=lines, struck="each")
    pages = list(stick_pages([crowded], "job", PAPERS["common"]))
    assert [clashes_of_marks(page) for page in pages] == [[]] * len(pages)
    strips = [m.text for page in pages[:-1] for m in page.marks if isinstance(m, Text)]
    assert sum(text.startswith("ONLY") for text in strips) == len(lines[::3])
    for line in lines:
        assert format_mm(line.y) in strips


def test_what_a_line_is_goes_on_below_where_there_is_room() -> None:
    """Nothing is cut short on a strip that has a few lines alone."""
    (stick, _), *_ = _pages_of_demo()
    line = replace(stick.lines[0], y=120.0, serves=("B1-1", "B2-1", "B3-1", "B4-1"), only=())
    words = _words(replace(stick, height=170.0, bottom=18.3, lines=(line,)))
    assert "panel, upper" in words
    assert "face" in words
    assert "B4-1" in " ".join(words[:-1])
    assert not any("..." in word for word in words)


@pytest.mark.slow
@given(jobs())
@settings(max_examples=8)
def test_nothing_clashes_on_any_stick(job: Job) -> None:
    """No text on a text or a line, nothing outside the page, no figure cut short."""
    layout = lay_out(job)
    for stick, pages in _pages(layout):
        for page in pages:
            assert clashes_of_marks(page) == [], stick.height


@given(st.floats(min_value=100, max_value=3000))
def test_the_strips_of_a_board_add_up_to_it(height: float) -> None:
    """Each carries 180 at most, and the last one is no stump."""
    strips, length = divide(height)
    rest = height - (strips - 1) * length
    assert length <= LENGTH
    assert 0.3 * length < rest <= length
