"""Mistakes at the drill: where, how deep, into which face, from which paper."""

from jigs.given.printer import BARS, Printer
from jigs.ground.lengths import Unit
from templates.binding.jobsheets import make_sheets
from templates.faces.views import views_of_front
from templates.page.marks import Line
from templates.page.paper import PAPERS, Paper
from templates.writers.pdf import write_pdf
from tests.jigs.cases.kitchen import box, front, heights, holes, job, side
from tests.jobtexts import HEAD
from tests.mistakes.made import Drawn, Held, Made, Says, Warned
from tests.mistakes.planted import (
    BACK_TO_BACK,
    DRAWER,
    HALF,
    LEFT,
    RIGHT,
    TOP,
    TWO,
    open_record,
    planted,
)

MM: Unit = "mm"
ACROSS, ALONG = BARS["mm"]
"""The bars of the test page."""


def bars(made: Made, paper: Paper) -> list[tuple[float, float]]:
    """Give how long the two bars are printed on upright pages, each pair once; mm."""
    found = set()
    for page in make_sheets(made.layout, paper).pages:
        if page.width > page.height:
            continue
        lines = [mark for mark in page.marks if isinstance(mark, Line) and mark.width == 0.25]
        across = {round(abs(line.x2 - line.x1), 2) for line in lines}
        along = {round(abs(line.y2 - line.y1), 2) for line in lines}
        wide, high = max(a for a in across if a < 160), max(a for a in along if a < 110)
        found.add((wide * page.scale[0], high * page.scale[1]))
    return sorted(found)


def cup_as_seen(made: Made) -> float:
    """Give how far from the left edge a cup is bored, as whoever bores it sees the back."""
    (back,) = (view for view in views_of_front(made.layout.fronts[0], MM) if view.face == "back")
    (x,) = {hole.x for fitting in back.fittings for hole in fitting.holes if hole.purpose == "cup"}
    return x


def plates_over_cups(made: Made) -> list[float]:
    """Give the height of each plate's middle above its cup's, door by door, as both hang."""
    off = []
    for door in made.layout.fronts:
        for board in made.layout.sides:
            plates = [fit for fit in board.fittings if fit.kind == "plate" and fit.part == door.id]
            middles = sorted(sum(h.y for h in fit.holes) / 2 + board.ends.base for fit in plates)
            off += [
                y - door.place.y - cup
                for y, cup in zip(middles, heights(door, "cup"), strict=False)
            ]
    return off


def slides_apart(made: Made) -> list[float]:
    """Give how much higher each drawer's slide stands on its left than on its right, above the
    box's bottom end."""
    apart = []
    for name in (one.id for one in made.layout.fronts if one.drawer):
        left, right = (
            {
                hole.y + board.ends.base
                for board in made.layout.sides
                if board.side == hand
                for fitting in board.fittings
                if fitting.kind == "slide" and fitting.part == name
                for hole in fitting.holes
            }
            for hand in ("left", "right")
        )
        apart += [a - b for a, b in zip(sorted(left), sorted(right), strict=True)]
    return apart


def partition_depths(made: Made) -> list[float | None]:
    """Give how deep each face of the partition is bored; None: through."""
    boards = [board for board in made.layout.sides if board.partition]
    return [hole.depth for board in boards for hole in board.holes]


BORES = (
    planted(
        3,
        "the page is the paper's printable area, on A4 and on letter",
        job(box(TOP, LEFT)),
        # What A4 (210 x 297) and letter (215.9 x 279.4) leave, 6 white at each edge.
        Drawn(
            lambda made: sorted({max(page.height, page.width) for page in made.pages("B1-1")}),
            [min(297.0, 11 * 25.4) - 2 * 6 - 0.4],
        ),
        Drawn(
            lambda made: sorted({min(page.height, page.width) for page in made.pages("B1-1")}),
            [min(210.0, 8.5 * 25.4) - 2 * 6],
        ),
        Drawn(lambda made: b"/PrintScaling /None" in write_pdf(made.pages("B1-1")), True),
    ),
    planted(
        3,
        "two bars to be measured on every page",
        job(box(TOP, LEFT)),
        Drawn(lambda made: bars(made, PAPERS["common"]), [(150.0, 100.0)]),
        Says("sheet", "150.0 ±0.3", "B1-2"),
        Says(
            "sheet",
            "Measure both bars with a steel rule; wrong: page 1.",
            "B1-2",
        ),
        Says("first page", "Wrong? Print again at 100 %, actual size. Still? Calibrate"),
    ),
    planted(
        3,
        "a printer that prints 0.3 % too small across",
        job(box(LEFT)),
        Drawn(
            lambda made: bars(
                made,
                PAPERS["common"].corrected(Printer(name="p", across=0.997 * ACROSS, along=ALONG)),
            ),
            [(150 / 0.997, 100.0)],
        ),
    ),
    planted(4, "no hand is stated", job(box('kind = "door"')), Held("hand-not-stated", "B1-1")),
    planted(
        4,
        "hinges on the left: bored from the back",
        job(box(LEFT)),
        Drawn(cup_as_seen, 454.0 - 22.5),
        Says("sheet", "Top away: hinge edge on your RIGHT", "B1-1"),
    ),
    planted(
        4,
        "hinges on the right: a paper of its own, nothing to mirror",
        job(box(RIGHT)),
        Drawn(cup_as_seen, 22.5),
        Says("sheet", "Top away: hinge edge on your LEFT", "B1-1"),
    ),
    planted(
        4,
        "the left side's paper on the right side",
        job(box(DRAWER)),
        Drawn(
            lambda made: side(made.layout, "B1-SIDE-L").code == side(made.layout, "B1-SIDE-R").code,
            False,
        ),
        Says("sheet", "INSIDE OF LEFT SIDE Top away: FRONT edge on your LEFT", "B1-SIDE-L"),
    ),
    planted(6, "5 too great", job(box(LEFT), constant="20"), Held("overlay", "B1-1")),
    planted(6, "a half hinge's", job(box(LEFT), constant="5.5"), Held("overlay", "B1-1")),
    planted(6, "plates of 0 alone at hand", job(box(LEFT), plates="[0]"), Held("overlay", "B1-1")),
    planted(
        6,
        "one that moves the cups",
        job(box(LEFT), constant="12.8", tabs="[3, 5, 7]"),
        Warned("tab-moved", "B1-1"),
    ),
    planted(
        6,
        "nobody read the leaflet",
        job(box(LEFT), head=open_record("hinge.mine")),
        Warned("unconfirmed-hinge", "B1-1", "check"),
        Says("sheet", "OPEN: hinge mine", "B1-1"),
        Says("order", "OPEN: hinge 'mine'"),
    ),
    planted(
        8,
        "a door that came 1.6 too high",
        job(box(f"{LEFT}\nmeasured_height = [771.5, 771.5]\nmeasured_width = [454, 454]")),
        Drawn(plates_over_cups, [0.0, 0.0]),
        Drawn(lambda made: heights(front(made.layout, "B1-1"), "cup")[0], 19.35 + 80 - 1.6),
    ),
    planted(
        8,
        "a door whose cups the supplier bored",
        job(box(f"{LEFT}\nbored = true\nbored_tab = 5\nhinges_at = [90, 655.5]")),
        Drawn(
            lambda made: heights(side(made.layout, "B1-SIDE-L"), "plate"),
            [1.6 + y + half for y in (90, 655.5) for half in (-16, 16)],
        ),
    ),
    planted(
        8,
        "and nobody measured where",
        job(box(f"{LEFT}\nbored = true\nbored_tab = 5")),
        Held("bored-heights-missing", "B1-1"),
    ),
    planted(
        8,
        "plates on a partition, whose end stands 18.3 higher",
        job(box(*BACK_TO_BACK, width=900, more=TWO)) + HALF,
        Drawn(plates_over_cups, [0.0] * 4),
        Says("sheet", "its own bottom end, 18.3 above that of the sides", "B1-PARTITION-1"),
    ),
    planted(
        11,
        "13 into a front of 16 with a point of 2.5",
        job(
            box(f"{LEFT}\nthickness = 16"),
            head=HEAD.replace("cup_depth = 13", "cup_depth = 13\nbit_point = 2.5"),
        ),
        Held("skin-under-cup", "B1-1"),
    ),
    planted(
        11,
        "a kit's hole as deep as its leaflet has it",
        job(
            box(
                f"{LEFT}\n[[box.front.hole]]\nx = 200\ny = 100\ndiameter = 8\ndepth = 20\n"
                'face = "back"\npurpose = "kit"'
            )
        ),
        Held("bored-through", "B1-1"),
    ),
    planted(
        11,
        "plates 18 into sides of 18.3",
        job(box(LEFT), tabs="[5]\nplate_depth = 18"),
        Warned("bored-deep", "B1-1", "sheet", "B1-SIDE-L"),
    ),
    planted(
        11,
        "slides 19 into sides of 18.3",
        job(box(DRAWER), drawer_rise="14\nfixing_depth = 19"),
        Held("bored-through", "B1-1"),
    ),
    planted(12, "between two sides", job(box(TOP, DRAWER)), Drawn(slides_apart, [0.0] * 2)),
    planted(
        12,
        "between a side and a partition",
        job(box(TOP, DRAWER, f"{DRAWER}\ncolumn = 2", width=900, more=TWO)),
        Drawn(slides_apart, [0.0] * 3),
        Drawn(
            lambda made: [
                min(heights(side(made.layout, board), "slide"))
                for board in ("B1-SIDE-L", "B1-PARTITION-1")
            ],
            [18.3 + 33, 33],
        ),
    ),
    planted(
        12,
        "on the 32 mm row",
        job(box(TOP, DRAWER, f"{DRAWER}\ncolumn = 2", width=900, more=TWO)).replace(
            "[use]", "[grid]\nslides = true\n[use]"
        ),
        Drawn(slides_apart, [0.0] * 3),
    ),
    planted(
        13,
        "3 3/4 in for 96",
        job(box(LEFT), centers='"3 3/4 in"'),
        Warned("unlikely-number", None, "sheet", "B1-1"),
    ),
    planted(
        13,
        "126 for 128",
        job(box(TOP, LEFT), centers="126"),
        Warned("unlikely-number", None, "sheet", "B1-1"),
    ),
    planted(
        13,
        "nobody measured one",
        job(box(LEFT), head=open_record("pull.bar")),
        Warned("unconfirmed-pull", "B1-1", "check"),
        Says("sheet", "OPEN: pull bar", "B1-1"),
    ),
    planted(
        13,
        "160 in the middle of 454",
        job(box(TOP, LEFT)),
        Drawn(lambda made: [h.x for h in holes(front(made.layout, "B1-1"), "pull")], [147, 307]),
        Says("sheet", "LAY YOUR PULL HERE: 160.0", "B1-1"),
    ),
    planted(
        14,
        "a door that is nearly alike both ways up",
        job(box(LEFT)),
        # 97.75 from its bottom, 769.9 - 673.75 from its top.
        Drawn(lambda made: heights(front(made.layout, "B1-1"), "cup"), [97.75, 673.75]),
        Says("sheet", "NOT REVERSIBLE", "B1-1"),
    ),
    planted(
        14,
        "a drawer front",
        job(box(TOP, LEFT)),
        Says("sheet", "WIDE GAP BELOW THE BOX.", "B1-1"),
        Says("label", "WIDE GAP BELOW", "B1-1"),
        Says("sheet", "UP B1-1 LEFT END, FROM BEHIND", "B1-1"),
    ),
    planted(
        14,
        "a side",
        job(box(LEFT)),
        Says("sheet", "Top away: FRONT edge on your LEFT", "B1-SIDE-L"),
        Says("sheet", "UP B1-SIDE-L BOTTOM PLATE", "B1-SIDE-L"),
    ),
    planted(
        21,
        "two doors on one partition of 18.3",
        job(box(*BACK_TO_BACK, width=900, more=TWO)) + HALF,
        Warned("bored-through-once", "B1-PARTITION-1"),
        Drawn(partition_depths, [None] * 8),
    ),
    planted(
        21,
        "the same, 6 apart in height",
        job(
            box(
                BACK_TO_BACK[0],
                f"{BACK_TO_BACK[1]}\nhinges_at = [103.75, 679.75]",
                width=900,
                more=TWO,
            )
        )
        + HALF,
        Held("hinge-against", "B1-2"),
    ),
    planted(
        21,
        "two drawers on one partition of 25: 2 x 12 + 1",
        job(
            box(DRAWER, f"{DRAWER}\ncolumn = 2", width=900, more=TWO),
            head=HEAD.replace("side = 18.3", "side = 18.3\npartition = 25"),
        ),
        Drawn(partition_depths, [12.0] * 4),
    ),
    planted(
        23,
        "the front's screws, through 15.9 into 19.05",
        job(box(TOP, LEFT)),
        # 15.9 + 19.05 - 3 = 31.95: of the usual lengths 28; 25 + 3 stay below 16 + 12 - 3.
        Drawn(lambda made: front(made.layout, "B1-1").screws.fixing, 28),
        Says("sheet", "Front screws 28.0 at most", "B1-1"),
    ),
    planted(
        23,
        "through 12 into 16",
        job(box(TOP, LEFT), drawer_side="12", front="16"),
        Drawn(lambda made: front(made.layout, "B1-1").screws.fixing, 12 + 16 - 3),
    ),
    planted(
        23,
        "no screw will do: into 12",
        job(box(DRAWER), front="12"),
        Warned("fixing-screw", "B1-1"),
    ),
    planted(
        23,
        "into the panel of a five-piece front",
        job(box(f"{DRAWER}\nheight = 300\nstile = 40\npanel = 6", LEFT)),
        Held("fixing-in-panel", "B1-1"),
    ),
)
