"""Elevations, read back: sizes by the scale, swing lines, words, and that nothing overlaps."""

import itertools
import xml.etree.ElementTree as ET
from collections.abc import Iterable

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from cli.jobs import read_in_hand
from jigs.box.parts import Front, Layout
from jigs.given.job import FrontSpec, Job
from jigs.given.wallspec import Appliance, WallEnd, WallSpec
from jigs.ground.lengths import Unit
from jigs.layout.layout import lay_out
from jigs.room.seen import Seen
from templates.demo import demo_files
from templates.elevations.elevation import SCALES, Drawn, draw_elevations
from templates.elevations.elevationtitle import FRAME, TITLE_HIGH
from templates.page.marks import Line, Outline, Text
from templates.page.paper import PAPERS, Paper
from templates.page.typeface import text_box
from templates.writers.pdf import write_pdf
from templates.writers.svg import write_svg
from tests.clashes import clashes_of_marks, clashes_of_print
from tests.jigs.sample import box, lay
from tests.jobs import jobs, papers
from tests.pictures import ROOT
from tests.readback import read_pages

COMMON = PAPERS["common"]
SVG = "{http://www.w3.org/2000/svg}"


def draw(layout: Layout, paper: Paper = COMMON) -> list[Drawn]:
    return list(draw_elevations(layout, paper))


@pytest.fixture(scope="module")
def demo() -> Layout:
    """Give the demo's galley."""
    assert "job.toml" in demo_files()
    return lay_out(read_in_hand(ROOT / "templates/demo/job.toml"))


def long_wall(unit: Unit = "mm") -> Layout:
    """Give a wall of 6 m: ten boxes of 600, wall boxes over eight of them."""
    standing = [
        box(FrontSpec(id=f"B{k}-1", kind="drawer", height=140.0),
            FrontSpec(id=f"B{k}-2", kind="door", hinged="left" if k % 2 else "right"),
            name=f"B{k}", width=600.0, height=720.0)
        for k in range(10)
    ]  # fmt: skip
    hanging = [
        box(FrontSpec(id=f"W{k}-1", kind="pair"), name=f"W{k}", width=600.0, height=720.0,
            kind="wall", above_floor=1400.0, x=1200.0 + 600.0 * k)
        for k in range(8)
    ]  # fmt: skip
    return lay(*standing, *hanging, units=unit)


def check_sizes(drawn: Drawn, fronts: Iterable[Front]) -> int:
    """Compare each front's rectangle in the drawing, times its scale, with the front; count."""
    root = ET.fromstring(write_svg(drawn.page))
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(ids) == len(set(ids))
    rects = {
        rect.get("data-part"): rect
        for rect in root.iter(SVG + "rect")
        if rect.get("class") == "front"
    }
    shown = [front for front in fronts if front.box in drawn.box_ids]
    assert set(rects) == {front.id for front in shown}
    lefts = {seen.box.id: seen for seen in drawn.elevation.boxes}
    origins = set()
    for front in shown:
        rect, seen = rects[front.id], lefts[front.box]
        x, y, width, height = (float(rect.get(k, "")) for k in ("x", "y", "width", "height"))
        # Coordinates are written to 0.001 mm.
        slack = 0.00051 * drawn.reduction
        assert width * drawn.reduction == pytest.approx(front.width, abs=slack)
        assert height * drawn.reduction == pytest.approx(front.height, abs=slack)
        bottom = drawn.page.height - y - height
        origins.add(
            (
                round(x - (seen.x + front.place.x) / drawn.reduction, 2),
                round(bottom - (seen.bottom + front.place.y) / drawn.reduction, 2),
            )
        )
    # One scale, one origin: what is right in size is also in its place.
    xs, ys = zip(*origins, strict=True) if origins else ((0.0,), (0.0,))
    assert max(xs) - min(xs) <= 0.011
    assert max(ys) - min(ys) <= 0.011
    return len(shown)


def test_each_front_times_the_scale_is_its_size(demo: Layout) -> None:
    """In every drawing of the demo, to the last front."""
    assert sum(check_sizes(drawn, demo.fronts) for drawn in draw(demo)) == len(demo.fronts)


def test_the_scale_is_printed_and_a_recommended_one(demo: Layout) -> None:
    """ISO 5455: 1:10, 1:20, 1:50; the largest that the paper holds."""
    for drawn in draw(demo):
        assert drawn.reduction in SCALES
        words = [mark.text for mark in drawn.page.marks if isinstance(mark, Text)]
        assert f"SCALE 1:{drawn.reduction}" in words
        assert "NOT FOR DRILLING" in words
    [small] = draw(lay(box(FrontSpec(id="B1-1", kind="drawer"))))
    assert small.reduction == 10


def test_six_metres_go_on_one_sheet_and_larger_paper_shows_them_larger() -> None:
    """1:50 on the common page, 1:20 on A3."""
    layout = long_wall()
    [common], [large] = draw(layout), draw(layout, PAPERS["a3"])
    assert (common.reduction, large.reduction) == (50, 20)
    assert check_sizes(common, layout.fronts) == check_sizes(large, layout.fronts) == 36


@pytest.mark.parametrize("hand", ["left", "right"])
def test_the_swing_lines_meet_at_the_hinges(hand: str) -> None:
    """Dashed, from the corners of the free edge to the middle of the hinge edge."""
    front = FrontSpec(id="B1-1", kind="door", hinged="left" if hand == "left" else "right")
    [drawn] = draw(lay(box(front)))
    [place] = [m for m in drawn.page.marks if isinstance(m, Outline) and m.layer == "front"]
    (x0, y0), _, (x1, y1), _ = place.points
    hinge, free = (x0, x1) if hand == "left" else (x1, x0)
    lines = [m for m in drawn.page.marks if isinstance(m, Line) and m.layer == "swing"]
    assert {line.dash for line in lines} == {"dashed"}
    ends = {(round(x, 6), round(y, 6)) for m in lines for x, y in ((m.x1, m.y1), (m.x2, m.y2))}
    corner = {(round(free, 6), round(y, 6)) for y in (y0, y1)}
    assert (round(hinge, 6), round((y0 + y1) / 2, 6)) in ends
    assert corner <= ends


def test_each_hinge_edge_can_be_told_even_on_a_long_wall() -> None:
    """Words leave some of the swing lines of every door, on the right side of it."""
    layout = long_wall()
    [drawn] = draw(layout)
    lines = [m for m in drawn.page.marks if isinstance(m, Line) and m.layer == "swing"]
    fronts = {m.name: m for m in drawn.page.marks if isinstance(m, Outline) and m.layer == "front"}
    for front in layout.fronts:
        (x0, y0), _, (x1, y1), _ = fronts[front.id].points
        own = [
            line
            for line in lines
            if x0 - 1e-6 <= min(line.x1, line.x2) and max(line.x1, line.x2) <= x1 + 1e-6
            and y0 - 1e-6 <= min(line.y1, line.y2) and max(line.y1, line.y2) <= y1 + 1e-6
        ]  # fmt: skip
        if front.hinged is None:
            assert own == []
            continue
        assert own, front.id
        middle, apex = (y0 + y1) / 2, x0 if front.hinged == "left" else x1
        for line in own:
            for x, y in ((line.x1, line.y1), (line.x2, line.y2)):
                rise = abs(x - apex) / (x1 - x0) * (y1 - y0) / 2
                assert abs(y - middle) == pytest.approx(rise, abs=1e-6)


def test_every_id_is_in_the_drawing_whole_or_as_its_number(demo: Layout) -> None:
    """In the demo all of them whole; pulls and openings stand in theirs."""
    words = {m.text for d in draw(demo) for m in d.page.marks if isinstance(m, Text)}
    assert {front.id for front in demo.fronts} <= words
    assert {box.id for box in demo.boxes} <= words
    assert {"oven", "dishwasher", "pullout", "lift", "false front"} & words >= {"oven"}


def test_low_drawer_fronts_have_their_size_too() -> None:
    """Beside the ID, in the job's unit, whole millimetres without their zero where room is short:
    a drawer front of 105 under its pull, a narrow one of 171, one of 60."""
    lows = ((783.0, 105.0), (431.0, 171.0), (783.0, 60.0))
    layout = lay(
        *(
            box(FrontSpec(id=f"B{k}-1", kind="drawer", height=high),
                FrontSpec(id=f"B{k}-2", kind="drawer"), name=f"B{k}", width=wide, height=770.0)
            for k, (wide, high) in enumerate(lows)
        ),
        box(FrontSpec(id="T-1", kind="door", hinged="left"), name="T", height=2300.0, kind="tall"),
        units="mm",
    )  # fmt: skip
    [drawn] = draw(layout)
    words = " ".join(m.text for m in drawn.page.marks if isinstance(m, Text))
    for front in layout.fronts:
        wide, high = (f"{size:.1f}" for size in (front.width, front.height))
        brief = f"{wide.removesuffix('.0')} x {high.removesuffix('.0')}"
        assert f"{wide} x {high}" in words or brief in words, front.id


def test_pulls_stand_over_their_holes(demo: Layout) -> None:
    """A bar from foot to foot over both holes, a knob round its one."""
    from templates.page.marks import Area, Circle

    for drawn in draw(demo):
        bars = [m for m in drawn.page.marks if isinstance(m, Area) and m.layer == "pull"]
        knobs = [m for m in drawn.page.marks if isinstance(m, Circle) and m.layer == "pull"]
        pulls = [
            fitting
            for front in demo.fronts
            if front.box in drawn.box_ids
            for fitting in front.fittings
            if fitting.kind == "pull"
        ]
        assert len(bars) == sum(len(pull.holes) == 2 for pull in pulls)
        assert len(knobs) == sum(len(pull.holes) == 1 for pull in pulls)
        for bar in bars:
            xs, ys = zip(*bar.points, strict=True)
            # 160 between the holes and half a foot of 12 beyond each.
            long = max(max(xs) - min(xs), max(ys) - min(ys))
            assert long * drawn.reduction == pytest.approx(160 + 12)


def test_widths_and_heights_are_dimensioned(demo: Layout) -> None:
    """The chain of box widths closes with its total, filler and end panel taken in."""
    north = draw(demo)[0]
    words = [m.text for m in north.page.marks if isinstance(m, Text) and m.layer == "dimension"]
    assert {'24"', '18"', '36"', '15"', '84"', '4"', '30 1/2"'} <= set(words)
    assert '1 5/8"' in words
    assert f'{24 + 18 + 24 + 36 + 24 + 15 + 2} 3/8"' in words  # 1 5/8 + 3/4 = 2 3/8


def test_boxes_of_a_bare_list_are_drawn_by_themselves() -> None:
    """With a note, and no distance between them."""
    layout = lay(
        *(box(FrontSpec(id=f"{n}-1", kind="drawer"), name=n, inferred=True) for n in "ABC")
    )
    [drawn] = draw(layout)
    words = [m.text for m in drawn.page.marks if isinstance(m, Text)]
    assert any("not known" in word for word in words)
    assert "300.0" not in words
    assert drawn.name == "elevation-boxes"


def test_files_are_named_after_the_walls() -> None:
    """Plain letters; two walls of one name are told apart, and the sheets of one."""
    front = FrontSpec(id="1", kind="drawer")
    layout = lay(
        *(
            box(replace(front, id=f"{k}-1"), name=f"B{k}", wall=wall)
            for k, wall in enumerate(("North", "Fensterwand Süd", "Τοίχος", "north ", ""))
        )
    )
    names = [drawn.name for drawn in draw(layout)]
    assert names == [
        "elevation-north", "elevation-fensterwand-sud", "elevation-wall", "elevation-north-2",
        "elevation-wall-2",
    ]  # fmt: skip


def test_no_box_is_parted_in_its_chain() -> None:
    """What stands on the floor begins at 300, before a wall box from 100 to 650: its 550 stays one
    length, and what is open between the two rows' ends is one where no box hangs."""
    one = FrontSpec(id="1", kind="pair")
    standing = box(replace(one, id="B1-1"), name="B1", width=600.0, x=300.0)
    for x, lengths in ((100.0, {"550.0"}), (450.0, {"550.0", "150.0"})):
        hanging = box(replace(one, id="W1-1"), name="W1", kind="wall", width=550.0, height=720.0,
                      above_floor=1400.0, x=x)  # fmt: skip
        (drawn,) = draw(lay(standing, hanging, units="mm"))
        said = {mark.text for mark in drawn.page.marks if isinstance(mark, Text)}
        assert {"550.0", "200.0", "350.0", "150.0"} & said == lengths


def test_a_wall_is_hatched_and_a_corner_is_not(demo: Layout) -> None:
    """The fillers before them are drawn and dimensioned, and nothing runs into them."""
    spec = WallSpec(
        name="south",
        left=WallEnd(stands="casing", filler=30.0),
        right=WallEnd(stands="corner", filler=45.0, reach=35.0),
    )
    page = draw(replace(demo, job=replace(demo.job, walls=(spec,))))[1].page
    assert clashes_of_marks(page) == []
    fillers = [m for m in page.marks if isinstance(m, Outline) and m.layer == "filler"]
    assert len(fillers) == 3
    walls = [m for m in page.marks if isinstance(m, Line) and m.layer == "wall"]
    left, right = sorted(line.x1 for line in walls)
    hatch = [m for m in page.marks if isinstance(m, Line) and m.layer == "ground"]
    floor = walls[0].y1
    assert any(line.x1 < left and line.y1 > floor for line in hatch)
    assert not any(line.x2 > right and line.y1 > floor for line in hatch)


def test_the_printed_page_is_the_drawing(demo: Layout) -> None:
    """Read back from the PDF: a sheet a wall, on the paper asked for, nothing on another."""
    drawn = draw(demo)
    pages = read_pages(write_pdf([one.page for one in drawn]))
    assert len(pages) == len(drawn) == 2
    for page in pages:
        assert (page.width, page.height) == pytest.approx((267, 198), abs=0.001)
        assert clashes_of_print(page) == []


def test_the_same_job_gives_the_same_bytes(demo: Layout) -> None:
    """Drawn twice."""
    one, other = ([write_svg(d.page) for d in draw(demo)] for _ in range(2))
    assert one == other


def hung(job: Job) -> Job:
    """Give a job with its wall boxes above all others, so that no two boxes are in one place."""
    tops = [one.above_floor + one.height for one in job.boxes if one.kind != "wall"]
    return replace(
        job,
        boxes=tuple(
            replace(one, above_floor=max(tops, default=1300.0) + 100.0)
            if one.kind == "wall"
            else one
            for one in job.boxes
        ),
    )


def check_whatever_a_wall_has_it_is_true_and_nothing_overlaps(job: Job, paper: Paper) -> None:
    layout = lay_out(hung(job))
    drawn = draw(layout, paper)
    for one in drawn:
        assert clashes_of_marks(one.page) == []
        check_sizes(one, layout.fronts)
    shown: list[Seen] = list(itertools.chain.from_iterable(one.elevation.boxes for one in drawn))
    assert sorted(seen.box.id for seen in shown) == sorted(one.id for one in layout.boxes)


@given(jobs(most_boxes=6), papers)
@settings(max_examples=2)
def test_whatever_a_wall_has_it_is_true_and_nothing_overlaps(job: Job, paper: Paper) -> None:
    """Any fronts, also such as do not close with their box, on any paper."""
    check_whatever_a_wall_has_it_is_true_and_nothing_overlaps(job, paper)


@pytest.mark.slow
@given(jobs(most_boxes=6), papers)
@settings(max_examples=12)
def test_whatever_the_walls_of_many_jobs_have_it_is_true(job: Job, paper: Paper) -> None:
    """The same, at length."""
    check_whatever_a_wall_has_it_is_true_and_nothing_overlaps(job, paper)


def test_counter_ceiling_and_appliances_stand_at_their_heights() -> None:
    """The counter over both boxes but not over the range between them; the ceiling and the floor's
    high point as lines; the range dashed, with its ID; its width in the chain."""
    spec = WallSpec(
        name="north", ceiling=2400.0, counter=101.6 + 774.7 + 38.1, counter_thickness=38.1,
        floor_high=20.0, left=WallEnd(stands="wall"), right=WallEnd(stands="wall"),
        appliances=(
            Appliance(id="R1", name="range", width=762.0, height=914.4, after="B1"),
            Appliance(id="H1", name="hood", width=762.0, height=400.0, above_floor=1500.0, x=457.2),
        ),
    )  # fmt: skip
    layout = lay(box(FrontSpec(id="B1-1", kind="drawer"), name="B1"), box(name="B2"))
    layout = replace(layout, job=replace(layout.job, walls=(spec,)))
    [drawn] = draw(layout)
    marks, n = drawn.page.marks, drawn.reduction
    outlines = {
        layer: [
            (min(x for x, _ in m.points), min(y for _, y in m.points),
             max(x for x, _ in m.points), max(y for _, y in m.points))
            for m in marks if isinstance(m, Outline) and m.layer == layer
        ]
        for layer in ("counter", "appliance", "toe")
    }  # fmt: skip
    lines = {m.layer: m.y1 for m in marks if isinstance(m, Line)}
    floor = lines["floor"]
    assert [(y1 - floor) * n for _, _, _, y1 in outlines["counter"]] == pytest.approx([914.4] * 2)
    assert [(x1 - x0) * n for x0, _, x1, _ in outlines["counter"]] == pytest.approx([457.2] * 2)
    assert (outlines["appliance"][0][3] - floor) * n in (
        pytest.approx(914.4), pytest.approx(1900.0)
    )  # fmt: skip
    assert {round((y0 - floor) * n, 3) for _, y0, _, _ in outlines["toe"]} == {20.0}
    assert (lines["ceiling"] - floor) * n == pytest.approx(2400.0)
    assert (lines["floor-high"] - floor) * n == pytest.approx(20.0)
    words = [m.text for m in marks if isinstance(m, Text)]
    assert {"R1", "range", "H1", "hood"} <= set(words)
    assert words.count('30"') == 2
    assert any("shim the toe, never the fronts" in word for word in words)
    assert clashes_of_marks(drawn.page) == []


def test_a_ceiling_makes_nothing_smaller() -> None:
    """Where the paper has no room for it at the scale of the rest, it is said in words alone."""
    tall = lay(box(FrontSpec(id="T1-1", kind="pair"), name="T1", kind="tall", height=2133.6))
    [without] = draw(tall)
    high = WallSpec(name="north", ceiling=4000.0)
    [drawn] = draw(replace(tall, job=replace(tall.job, walls=(high,))))
    assert drawn.reduction == without.reduction
    assert not any(m.layer == "ceiling" for m in drawn.page.marks if isinstance(m, Line))
    assert any("Ceiling" in m.text for m in drawn.page.marks if isinstance(m, Text))


@pytest.mark.parametrize(("name", "size"), [("north", 7.0), ("été", 5.0), ("βόρεια", 7.0)])
def test_what_stands_over_a_capital_keeps_clear_of_the_title_blocks_line(
    name: str, size: float
) -> None:
    """A name with an accent stands smaller; Greek has none in capitals."""
    layout = lay(replace(box(FrontSpec(id="B1-1", kind="drawer")), wall=name))
    [drawn] = draw(layout)
    [title] = [m for m in drawn.page.marks if isinstance(m, Text) and m.text.endswith(" WALL")]
    assert title.size == size
    assert text_box(title)[3] < FRAME + TITLE_HIGH
