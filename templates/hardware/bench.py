"""The bench sheet: hardware laid on full-scale gauges, its numbers read off and written down.

One page each for hinge and plate, for slide and drawer side, for the pull. Beside every number
stands the line of the job file that takes it, with a blank. Gauges are millimetre scales whose
zero is told; positions that are common in the trade are marked (common practice, no source).
"""

from collections.abc import Iterator

from jigs.ground.lengths import MM_PER_INCH
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import MEDIUM, WIDE, Circle, Line, Mark, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import moved, paragraph
from templates.page.scales import numbers, ticks

BenchRow = tuple[str, str]
"""What to do, and the line for the job file."""

CUPS = (26.0, 35.0, 40.0)
"""Cup diameters, mm (35 common practice; the others from memory)."""
PATTERNS = ((45.0, 9.5), (48.0, 6.0), (52.0, 5.5))
"""Screws apart, and inboard of the cup's centre; mm (common practice, no source)."""
CENTRES_MM = (64.0, 96.0, 128.0, 160.0)
CENTRES_IN = (3, 4, 5, 6)
"""Hole centres of pulls that find room on the page (common practice, no source)."""
BLANK = "_" * 12

_HINGE: tuple[BenchRow, ...] = (
    ("Lay the hinge with its cup down on the circles. Which circle does the round part fill? "
     "Or measure it with a caliper.", f'cup_diameter = "{BLANK} mm"'),
    ("Keep the cup there and turn the hinge until both screw holes lie on a pair of crosses. "
     "Read a off: how far the two screws are apart.", f'fixing_spacing = "{BLANK} mm"'),
    ("Read b off: how far the screws' line is from the middle of the cup.",
     f'fixing_inboard = "{BLANK} mm"'),
    ("How deep does its cup stand in the door? Measure from the flange's underside to the cup's "
     "end, and add what the leaflet leaves below it.", f'cup_depth = "{BLANK} mm"'),
    ("Stand the plate on edge on the scale beside it, its wood side at 0. Where the hinge's arm "
     "will lie on it is its height. Write down every height you have.",
     f'plates = ["{BLANK} mm"]'),
    ("Lay the plate on the two small circles, 32 apart. If its holes do not match, measure from "
     "middle to middle.", f'plate_spacing = "{BLANK} mm"'),
    ("Tab: the wood you leave between the door's edge and the bore. You choose it; 5 is usual. "
     "Bore a scrap door with it, hang it on a scrap side, set the side screw to its middle, close "
     "it, and measure how far the door covers the side.",
     'overlay_measured = { tab = "____ mm", plate = "____ mm", overlay = "____ mm" }'),
)  # fmt: skip

_SLIDE: tuple[BenchRow, ...] = (
    ("Lay the part that is screwed to the box flat on the paper, its foot on the FLOOR LINE, its "
     "front end at 0. How high is the middle of the screw holes?",
     f'fixing_height = "{BLANK} mm"'),
    ("How far back are its holes? Read each on the scale, and add what the slide stays behind "
     "the box's front edge (see its leaflet).", f'fixing_at = ["{BLANK} mm", "{BLANK} mm"]'),
    ("Further holes that you mark through the slide once it hangs, if it has them, read likewise.",
     f'carry_at = ["{BLANK} mm"]'),
    ("Set the slide on a flat board as it stands in the box. Set a scrap of drawer side on it as "
     "the drawer will sit. Measure from the board up to the underside of the scrap.",
     f'drawer_rise = "{BLANK} mm"'),
    ("A slide at the side of the drawer (side mount) only: how far its middle line is above the "
     "underside of the drawer side.", f'centre_height = "{BLANK} mm"'),
    ("Under a drawer: how much narrower the drawer is inside than the opening (leaflet). At its "
     "side: how much narrower it is outside.", f'width_less = "{BLANK} mm"'),
    ("Under a drawer: how far the drawer's bottom panel must stand above the underside of its "
     "sides.", f'recess = "{BLANK} mm"'),
    ("Measure the slide's length, closed.", f'length = "{BLANK} mm"'),
    ("Leaflet: how much deeper the box must be inside.", f'depth_allowance = "{BLANK} mm"'),
    ("Leaflet: how much shorter the drawer is than it.", f'drawer_shorter = "{BLANK} mm"'),
    ("Rear hooks under a drawer, if it has them (all four lines, or none): diameter of the hole "
     "in the drawer's back for each,", f'hook_diameter = "{BLANK} mm"'),
    ("how deep it is bored,", f'hook_depth = "{BLANK} mm"'),
    ("how far its middle is above the underside of the drawer's sides,",
     f'hook_height = "{BLANK} mm"'),
    ("and how far inside the drawer side's inner face.", f'hook_inset = "{BLANK} mm"'),
)  # fmt: skip

_PULL: tuple[BenchRow, ...] = (
    ("Set the middle of one screw hole on 0. Where is the middle of the other? Longer pulls: "
     "measure from an edge of one hole to the same edge of the other. 3 3/4 in is 95.25 and not "
     "96; 5 in is 127 and not 128.", f'centers = "{BLANK} mm"'),
    ("How far does the pull stand out from the face?", f'projection = "{BLANK} mm"'),
    ("How long is one foot, measured along the pull?", f'foot = "{BLANK} mm"'),
    ("You choose: from the door's free edge to the line of the screws.",
     f'door_inset = "{BLANK} mm"'),
    ("You choose: from the door's corner to the nearer screw.",
     f'door_corner = "{BLANK} mm"'),
)  # fmt: skip


def bench_pages(paper: Paper) -> Iterator[Page]:
    """Draw the bench sheet's three pages on a paper."""
    yield _page(
        paper, 1, "HINGE AND PLATE", "[hinge.mine]", "cup35-full", _hinge_gauge(), 82.0, _HINGE
    )
    yield _page(
        paper, 2, "DRAWER SLIDE", "[slide.mine]", "undermount-533", _slide_gauge(), 81.0, _SLIDE
    )
    yield _page(paper, 3, "PULL", "[pull.mine]", "", _pull_gauge(), 52.0, _PULL)


def _page(
    paper: Paper,
    number: int,
    title: str,
    table: str,
    like: str,
    gauge: list[Mark],
    gauge_height: float,
    rows: tuple[BenchRow, ...],
) -> Page:
    """Lay a page out: what it is for, the gauge, and a row for each number."""
    across = paper.width - LEFT_STRIP - EDGE
    top = paper.height - EDGE
    marks = border_marks(paper.width, paper.height, paper, number)
    for piece in (
        paragraph(f"BENCH SHEET: {title}", across, size=5.0, bold=True),
        paragraph(
            "Measure both bars first: a gauge that was not printed at 100 % lies. Lay your own "
            "piece on it, read, and write the number into its blank; a caliper is better still.",
            across,
        ),
    ):
        marks += moved(piece.marks, LEFT_STRIP, top)
        top -= piece.height + 1.0
    marks += moved(tuple(gauge), LEFT_STRIP + 6.0, top - gauge_height)
    top -= gauge_height + 4.0
    left = across * 0.52
    head = [f"Into the job file, below {table}:"]
    if like:
        head.append(f'like = "{like}"   (the nearest of the list)')
    for text in head:
        marks.append(Text(x=LEFT_STRIP + left, y=top - 2.8, text=text, bold=text is head[0]))
        top -= 5.0
    top -= 1.0
    for place, (words, line) in enumerate(rows, start=1):
        long = len(line) > 60
        piece = paragraph(words, across if long else left - 5.0, hang=str(place))
        marks += moved(piece.marks, LEFT_STRIP, top)
        if long:
            top -= piece.height + 2.0
            marks.append(Text(x=LEFT_STRIP + 6.0, y=top - 2.8, text=line))
            top -= 7.0
        else:
            marks.append(Text(x=LEFT_STRIP + left, y=top - 2.8, text=line))
            top -= max(piece.height, 6.0) + 0.7
    line = 'confirmed = "measured"   (when each number above is yours)'
    marks.append(Text(x=LEFT_STRIP + 6.0, y=top - 2.8, text=line))
    assert top - 4.0 > BOTTOM_STRIP, "the rows find room on the smallest paper"
    return Page(width=paper.width, height=paper.height, marks=tuple(marks), entry=title)


def _scale(length: int, x: float, y: float, *, up: bool = False) -> list[Mark]:
    """Draw a millimetre scale from (x, y) to the right, or up; its ticks away from the piece."""
    marks: list[Mark] = [
        Line(x1=x, y1=y, x2=x if up else x + length, y2=y + length if up else y, width=MEDIUM)
    ]
    marks += ticks(x, y, 0.0, length, along="up" if up else "right", side=-1)
    figures = (
        numbers(x - 5.8, y, 0.0, length, along="up", anchor="end")
        if up
        else numbers(x, y - 8.0, 0.0, length, along="right", anchor="middle")
    )
    return [*marks, *(text for _, text in figures)]


def _cross(x: float, y: float, arm: float = 1.2) -> list[Mark]:
    return [Line(x1=x - arm, y1=y, x2=x + arm, y2=y), Line(x1=x, y1=y - arm, x2=x, y2=y + arm)]


def _hinge_gauge() -> list[Mark]:
    """Circles for the cup with crosses for its screws, a scale for plates, two plate holes."""
    x, y = 26.0, 40.0
    marks: list[Mark] = [
        *(Circle(x=x, y=y, diameter=size, width=MEDIUM) for size in CUPS),
        *_cross(x, y, 3.0),
    ]
    for size in CUPS:
        end = y - 36.0 + CUPS.index(size) * 4.0
        marks.append(Text(x=x - 24.0, y=end, text=f"{size:g} dia"))
    for row, (a, b) in enumerate(PATTERNS):
        for side in (-1.0, 1.0):
            marks += _cross(x + b, y + side * a / 2)
        marks.append(Text(x=x + 26.0, y=y + 6.0 - row * 5.0, text=f"a {a:g}   b {b:g}"))
    marks.append(Text(x=x + 26.0, y=y + 12.0, text="Crosses, from the cup", bold=True))
    marks += _scale(60, 108.0, 62.0)
    marks.append(
        Text(x=108.0, y=66.0, text="Height of a plate, on edge: wood side at 0", bold=True)
    )
    marks += [Circle(x=at, y=26.0, diameter=5.0) for at in (118.0, 150.0)]
    marks += [mark for at in (118.0, 150.0) for mark in _cross(at, 26.0, 5.0)]
    marks.append(Text(x=108.0, y=36.0, text="Plate holes: 5 dia, 32 apart", bold=True))
    return marks


def _slide_gauge() -> list[Mark]:
    """The floor line with a scale along it, and lines above it for the heights of holes."""
    marks = _scale(160, 14.0, 10.0)
    marks += _scale(60, 14.0, 10.0, up=True)
    marks.append(Line(x1=14.0, y1=10.0, x2=176.0, y2=10.0, width=WIDE))
    for mm in range(5, 61, 5):
        marks.append(
            Line(
                x1=14.0, y1=10.0 + mm, x2=174.0, y2=10.0 + mm, dash="" if mm % 10 == 0 else "dashed"
            )
        )
    marks.append(
        Text(x=14.0, y=73.5, bold=True,
             text="Front end of the slide at 0, its foot on the FLOOR LINE (the thick one)")
    )  # fmt: skip
    return marks


def _pull_gauge() -> list[Mark]:
    """A scale from the first hole, with the hole centres that are common marked on it."""
    x, y = 8.0, 26.0
    marks: list[Mark] = [*_scale(165, x, y), Line(x1=x, y1=y, x2=x, y2=y + 12.0, width=MEDIUM)]
    marks.append(Text(x=x + 1.5, y=y + 9.0, text="first hole at 0", bold=True))
    for mm in CENTRES_MM:
        marks.append(Line(x1=x + mm, y1=y, x2=x + mm, y2=y + 5.0, width=MEDIUM))
        marks.append(Text(x=x + mm, y=y + 6.4, text=f"{mm:g}", anchor="middle", bold=True))
    for inches in CENTRES_IN:
        at = x + inches * MM_PER_INCH
        marks.append(Line(x1=at, y1=y - 9.6, x2=at, y2=y - 13.0, width=MEDIUM))
        marks.append(Text(x=at, y=y - 17.0, text=f"{inches} in", anchor="middle", bold=True))
    marks.append(Text(x=x, y=y - 17.0, text="Inch series below"))
    return marks
