"""The pages of a wall before its boxes are set, read back from the PDF: each line at its height by
the scale that is printed, its figure led to it, every sum closing as printed, nothing overlapping.
"""

import re

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from cli.jobs import read_in_hand
from jigs.box.parts import Layout
from jigs.given.job import FrontSpec, Job
from jigs.given.printer import Printer
from jigs.given.stated import BlindEnd
from jigs.given.wallspec import WallEnd, WallSpec
from jigs.ground.lengths import format_mm
from jigs.layout.layout import lay_out
from jigs.room.hanging import Hanging, plan_hanging
from templates.elevations.hangdraw import STRUCK
from templates.elevations.hangpage import hang_pages, hang_text
from templates.page.marks import Page, Text
from templates.page.paper import PAPERS, Paper
from templates.words.hangwords import LEVEL, ORDER
from templates.writers.pdf import write_pdf
from tests.clashes import clashes_of_marks, clashes_of_print
from tests.jigs.sample import box, lay
from tests.jobs import jobs, papers
from tests.pictures import ROOT
from tests.readback import PrintedPage, read_pages

FIGURE = 5.0
"""Lettering of a line's height, mm."""


@pytest.fixture(scope="module")
def demo() -> Layout:
    """Give the demo's galley."""
    return lay_out(read_in_hand(ROOT / "templates/demo/job.toml"))


def draw(layout: Layout, paper: Paper = PAPERS["common"]) -> tuple[Page, ...]:
    return tuple(hang_pages(layout, plan_hanging(layout), paper))


def lines_on(page: PrintedPage, reduction: int) -> list[float]:
    """Give the heights above the floor's line of all lines to strike, from below, in true mm."""
    wide = [s for s in page.strokes if abs(s.line - STRUCK) < 0.02 and abs(s.y1 - s.y2) < 0.01]
    floor = min(stroke.y1 for stroke in wide)
    heights = sorted({round((stroke.y1 - floor) * reduction, 1) for stroke in wide})
    return heights[1:]


def check_lines(page: PrintedPage, hanging: Hanging) -> None:
    """Compare the lines of a page with those of its wall, and each figure with its line."""
    [reduction] = [int(n) for n in re.findall(r"SCALE 1:(\d+)", page.text)]
    ups = [strike.up for strike in hanging.strikes]
    high = hanging.elevation.floor_high
    # A PDF writes points to 0.001: 0.0004 mm, times the reduction; rounded above to 0.1.
    assert lines_on(page, reduction) == pytest.approx([up + high for up in ups], abs=0.2)
    figures = sorted(
        (run for run in page.runs if abs(run.size - FIGURE) < 0.05 and run.bold
         and re.fullmatch(r"[\d.]+", run.text) and run.box[0] > 20.0),
        key=lambda run: run.base,
    )  # fmt: skip
    turns = {str(setting.number) for setting in hanging.order}
    figures = [run for run in figures if run.text not in turns]
    assert [run.text for run in figures] == [format_mm(up) for up in ups]
    strikes = {
        round(s.y1, 2) for s in page.strokes
        if abs(s.line - STRUCK) < 0.02 and abs(s.y1 - s.y2) < 0.01
    }  # fmt: skip
    for run in figures:
        low, high_end = run.box[1] - 0.5, run.box[3] + 0.5
        [leader] = [
            s for s in page.strokes
            if 0.3 < run.box[0] - s.x2 < 1.7 and low < s.y2 < high_end and s.x1 < s.x2
        ]  # fmt: skip
        assert round(leader.y1, 2) in strikes


def test_each_line_of_the_demo_is_printed_at_its_height(demo: Layout) -> None:
    """A page a wall, the lines by the printed scale where the layout has them."""
    hangings = plan_hanging(demo)
    pages = read_pages(write_pdf(draw(demo), title="t"))
    for hanging, page in zip(hangings, pages, strict=False):
        check_lines(page, hanging)
        assert LEVEL in page.text
    assert [strike.up for strike in hangings[0].strikes] == pytest.approx(
        # 4, 34 1/2, 54, 69 and 88 in above a line that the floor's high point is 1/4 above.
        [(inches - 0.25) * 25.4 for inches in (4, 34.5, 54, 69, 88)]
    )


def test_a_line_drawn_elsewhere_is_found(demo: Layout) -> None:
    """The comparison can fail: with the floor taken for its own high point it does."""
    [hanging, _] = plan_hanging(demo)
    page = read_pages(write_pdf(draw(demo), title="t"))[0]
    spec = hanging.elevation.spec
    assert spec is not None
    wrong = replace(hanging.elevation, spec=replace(spec, floor_high=0.0))
    with pytest.raises(AssertionError):
        check_lines(page, replace(hanging, elevation=wrong))


def test_every_box_has_its_turn_on_the_drawing_and_in_the_order(demo: Layout) -> None:
    """Its number over its ID, or before it where it is low; an appliance's place has none."""
    for hanging, page in zip(plan_hanging(demo), draw(demo), strict=False):
        texts = [mark for mark in page.marks if isinstance(mark, Text)]
        for setting in hanging.order:
            name, turn = setting.seen.box.id, str(setting.number)
            over = [t for t in texts if t.text == turn and t.bold]
            below = [t for t in texts if t.text == name and not t.bold]
            stands = [a for a in over for b in below if a.x == b.x and 0.0 < a.y - b.y < 8.0]
            assert stands or f"{turn} {name}" in {t.text for t in texts}, name
    assert "B4" not in {s.seen.box.id for s in plan_hanging(demo)[0].order}


def test_sums_close_as_they_are_printed(demo: Layout) -> None:
    """Every sum adds up in its printed tenths; the walls are 150 in and 2475 long."""
    said = " ".join(hang_text(demo, plan_hanging(demo)).split())
    sums = re.findall(r"(?:On the floor|Hanging): (.*?) = ([\d.]+)\.", said)
    assert [total for _, total in sums] == [f"{150 * 25.4:.1f}"] * 2 + ["2475.0"] * 2
    for terms, total in sums:
        tenths = sum(round(float(term.split()[0]) * 10) for term in terms.split(" + "))
        assert tenths == round(float(total) * 10)


def test_what_nobody_stated_is_named_and_not_guessed() -> None:
    """No wall: no ceiling, counter or length; with one, what it leaves out."""
    layout = lay(box(FrontSpec(id="B1-1", kind="drawer")))
    said = " ".join(hang_text(layout, plan_hanging(layout)).split())
    assert "NOT STATED: ceiling, counter, floor, ends and length of the wall" in said
    assert "Ceiling" not in said
    wall = WallSpec(name="north", ceiling=2400.0, left=WallEnd(stands="wall"))
    layout = replace(layout, job=replace(layout.job, walls=(wall,)))
    said = " ".join(hang_text(layout, plan_hanging(layout)).split())
    assert "NOT STATED: counter; length of the wall; how far the floor falls" in said
    assert "Ceiling 94 1/2- in (2400.0 mm) up" in said


def test_the_joining_screw_is_shorter_than_two_sides() -> None:
    """Two sides of 18.3 are 36.6: at most 33.6."""
    layout = lay(box(FrontSpec(id="B1-1", kind="drawer")))
    said = " ".join(hang_text(layout, plan_hanging(layout)).split())
    assert f"at most {2 * 18.3 - 3:.1f} long: two sides are {2 * 18.3:.1f}" in said


def test_nothing_overlaps_in_the_demo_on_any_paper(demo: Layout) -> None:
    """As marks, and as printed."""
    for paper in PAPERS.values():
        for page in draw(demo, paper):
            assert clashes_of_marks(page) == []
    for printed in read_pages(write_pdf(draw(demo), title="t")):
        assert clashes_of_print(printed) == []


def test_a_tall_box_that_cannot_be_tilted_up_is_told_first() -> None:
    """2200 x 584.2 measures 2276 across: more than a ceiling of 2250 leaves."""
    tall = box(FrontSpec(id="T1-1", kind="door", hinged="left"), name="T1", kind="tall",
               height=2200.0)  # fmt: skip
    wall = WallSpec(name="north", ceiling=2250.0)
    layout = lay(tall, units="mm")
    layout = lay_out(replace(layout.job, walls=(wall,)))
    said = " ".join(hang_text(layout, plan_hanging(layout)).split())
    across = (2200.0**2 + 584.2**2) ** 0.5
    assert "BEFORE YOU CUT: T1: 2200.0 mm (86 5/8- in) high" in said
    assert f"measures {across:.1f} mm" in said


def test_a_printers_error_is_corrected_on_pages_that_lie_and_stand() -> None:
    """A page that lies has its axes changed."""
    printer = Printer(name="garage", across=179.5, along=200.4)
    across, along = 180.0 / 179.5, 200.0 / 200.4
    layout = lay(box(FrontSpec(id="B1-1", kind="drawer")))
    scales = {page.scale for page in draw(layout, PAPERS["a4"].corrected(printer).for_drawings)}
    assert {tuple(round(each, 9) for each in scale) for scale in scales} == {
        (round(along, 9), round(across, 9)), (round(across, 9), round(along, 9)),
    }  # fmt: skip


def test_places_at_a_corner_say_what_they_count_from() -> None:
    """The other base boxes; beside a blind box, which goes on behind them, the wall."""
    corner = box(FrontSpec(id="C1-1", kind="door", hinged="right"), name="C1", width=1000.0)
    walls = (
        WallSpec(name="north", left=WallEnd(stands="corner", meets="west")),
        WallSpec(name="west", right=WallEnd(stands="corner", meets="north")),
    )
    other = replace(box(FrontSpec(id="B1-1", kind="drawer")), wall="west")
    said = []
    for blind in (None, BlindEnd(hand="left", reach=620.0)):
        job = replace(lay(corner, other).job, walls=walls)
        job = replace(job, boxes=(replace(corner, blind=blind), other))
        text = hang_text(lay_out(job), plan_hanging(lay_out(job))[:1])
        said.append("from the room's wall at the left, behind" in " ".join(text.split()))
    assert said == [False, True]


def long_wall(count: int) -> Layout:
    names = [f"B{k}" for k in range(count)]
    door = FrontSpec(id="", kind="door", hinged="left")
    return lay(*(box(replace(door, id=f"{n}-1"), name=n, width=600.0) for n in names), units="mm")


def test_a_wall_longer_than_a_page_is_drawn_in_stretches() -> None:
    """24 m: every box has its turn, on several pages, nothing over the edge."""
    layout = long_wall(40)
    pages = draw(layout)
    turns = {m.text for page in pages for m in page.marks if isinstance(m, Text)}
    assert {str(k) for k in range(1, 41)} <= turns
    assert len(pages) > 2
    for page in pages:
        assert clashes_of_marks(page) == []


@pytest.mark.slow
@settings(max_examples=40)
@given(job=jobs(), paper=papers)
def test_whatever_the_job_nothing_overlaps(job: Job, paper: Paper) -> None:
    """On whatever paper."""
    for page in draw(lay_out(job), paper.for_drawings):
        assert clashes_of_marks(page) == []


def test_each_row_stands_under_the_line_that_it_counts_from() -> None:
    """Opposite, base boxes are 584.2 (23") deep and nothing hangs: struck from one line, the wall
    boxes would be 23" off. At an end that is no corner all count from one line, and none is named.
    """
    door = FrontSpec(id="", kind="door", hinged="left")
    base = box(replace(door, id="B1-1"), name="B1", width=600.0)
    hung = box(replace(door, id="W1-1"), name="W1", kind="wall", width=600.0, height=720.0,
               depth=320.0, above_floor=1370.0, x=65.0)  # fmt: skip
    other = replace(box(replace(door, id="C1-1"), name="C1"), wall="west")
    walls = (
        WallSpec(name="north", left=WallEnd(stands="corner", meets="west")),
        WallSpec(name="west", right=WallEnd(stands="corner", meets="north")),
    )
    said = []
    for ends in (walls, ()):
        job = replace(lay(base, hung, other, units="mm").job, walls=ends)
        lines = hang_text(lay_out(job), plan_hanging(lay_out(job))[:1]).splitlines()
        start = next(number for number, line in enumerate(lines) if line.strip() == ORDER)
        said.append([line.strip() for line in lines[start : start + 8]])
    corner, plain = said
    own = next(line for line in corner if line.startswith("Wall boxes: from THEIR OWN line"))
    assert own.endswith("line at the left, the room's wall")
    low = next(line for line in corner if "from the BASE line at the left, 584.2 mm" in line)
    turns = {name: next(corner.index(line) for line in corner if re.match(rf"\d +{name} ", line))
             for name in ("W1", "B1")}  # fmt: skip
    assert corner.index(own) < turns["W1"] < corner.index(low) < turns["B1"]
    assert not any("line" in line for line in plain[:3])


def test_the_table_of_the_order_goes_on_in_no_column_that_breaks_its_words() -> None:
    """Drawn as large as the words allow, its last row stood in a column of 12 letters: `clam`, `p
    to`. A smaller drawing leaves it room."""
    drawer = FrontSpec(id="", kind="drawer")
    low = [
        box(replace(drawer, id=f"B{row}-1"), name=f"B{row}", width=width, height=780.0)
        for row, width in enumerate((800.0, 600.0, 450.0))
    ]
    hung = box(replace(drawer, id="W1-1"), name="W1", kind="wall", width=900.0, height=400.0,
               depth=320.0, above_floor=1370.0)  # fmt: skip
    other = replace(box(replace(drawer, id="C1-1"), name="C1"), wall="west")
    corner, end = WallEnd(stands="corner", meets="west"), WallEnd(stands="wall")
    walls = (
        WallSpec(name="north", left=corner, right=end, ceiling=2530.0),
        WallSpec(name="west", right=WallEnd(stands="corner", meets="north")),
    )
    job = replace(lay(*low, hung, other, units="mm").job, walls=walls)
    said = [mark.text for page in draw(lay_out(job)) for mark in page.marks
            if isinstance(mark, Text)]  # fmt: skip
    assert {"clamp to B0", "clamp to B1"} <= {*said}
