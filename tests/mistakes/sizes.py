"""Mistakes with sizes: what is ordered, sawn and delivered."""

from tests.jigs.cases.kitchen import box, job
from tests.jobtexts import HEAD
from tests.mistakes.made import Drawn, Held, Made, Refused, Says, Stops, Unchecked, Warned
from tests.mistakes.planted import (
    BARE,
    BUILT,
    DRAWER,
    INCHES,
    LEFT,
    PAIR,
    TOP,
    TRUE,
    Mistake,
    planted,
)


def cut_depth(made: Made) -> float:
    """Give how wide the saw cuts a side."""
    return next(piece.width for piece in made.cut.pieces if piece.id == "B1-SIDE-L")


def drawer_size(made: Made) -> tuple[float, float]:
    """Give a drawer box's outside width and its length."""
    (drawer,) = made.layout.drawers
    return drawer.width, drawer.length


MAPLE = '\n[wood]\nspecies = "sugar maple"\n[room]\ndampest = 65\n'
FILM = '[paint]\nmethod = "sprayed"\nsizes = "before"\n'

SIZES = (
    planted(
        1,
        "boxes that are not built",
        job(box(LEFT)),
        Says("order", "NOT BUILT AND MEASURED YET: B1. Fronts are ordered from finished boxes"),
    ),
    planted(
        1,
        "a box that came out 1.5 narrower",
        job(box(LEFT, more=f"{BUILT}\nmeasured_width = [455.7, 455.7]")),
        Warned("box-differs", "B1"),
        Says("order", "BUILT OTHERWISE than the job says: B1"),
    ),
    planted(
        1,
        "a box that stands, and nobody measured it",
        job(box(LEFT, more="built = true")),
        Says("order", "Built, but not stated as measured: B1"),
    ),
    planted(
        2,
        "a sixteenth at each edge, and one in all between two",
        job(box(PAIR, width=914.4), box(LEFT, name="B2"), between="1.6"),
        *(
            Says(paper, "of one box 1.6 mm (1/16 in), of two boxes 3.2 mm (1/8 in): meant so?")
            for paper in ("check", "order", "elevation")
        ),
    ),
    planted(
        2,
        "an eighth at each edge, and one between two",
        job(
            box(PAIR, width=914.4),
            box(LEFT, name="B2"),
            head=HEAD.replace("side = 1.6", "side = 3.2"),
            plates="[0, 3, 5]",
        ),
        Says("order", "of one box 3.2 mm (1/8 in), of two boxes 6.4 mm (1/4 in): meant so?"),
    ),
    planted(
        2,
        "neither is stated",
        BARE + box(LEFT),
        Says("sheet", "Gaps: sides 1.6, top 3.0, bottom 1.6", "B1-1"),
        Says("sheet", "ASSUMED: 11 numbers: page 1.", "B1-1"),
        Says("first page", "side reveal 1.6 mm"),
        Says("order", "side reveal 1.6 mm"),
    ),
    planted(
        5,
        "the sides' board by its name in the shop",
        job(box(LEFT), side='"3/4 in"'),
        Warned("unlikely-number", None, "sheet", "B1-SIDE-L"),
    ),
    planted(
        5,
        "the drawer sides' board by its name",
        job(box(DRAWER), drawer_side='"5/8 in"'),
        Warned("unlikely-number", None, "sheet", "B1-1"),
    ),
    planted(
        5,
        "nobody says how thick it is",
        BARE + box(DRAWER),
        Says("sheet", "ASSUMED: 7 numbers: page 1.", "B1-SIDE-L"),
        Says("first page", "side thickness 18.0 mm"),
        Says("label", "SIZE ASSUMED", "B1-SIDE-L"),
    ),
    planted(
        5,
        "a bottom cut for 19.05 between sides of 18.3",
        job(box(LEFT)) + '\n[build]\nsold_as = "3/4 in"\n',
        # 457.2 - 2 x (19.05 - 18.3)
        Says("parts", "would make B1 455.7 mm (17 15/16 in) wide instead of 457.2 mm (18 in)"),
        Drawn(lambda made: made.layout.fronts[0].width, 457.2 - 2 * 1.6),
    ),
    planted(
        7,
        "a box of 412 in hand",
        job(box(f"{DRAWER}\ndrawer_width = 412")),
        Held("drawer-too-wide", "B1-1"),
    ),
    planted(
        7,
        "its sides are 15.2 and not 15.9: 0.4 more inside",
        job(box(f"{DRAWER}\ndrawer_width = 410"), drawer_side="15.2"),
        Held("drawer-too-wide", "B1-1"),
    ),
    planted(
        7,
        "the kitchen box came out 1.5 narrower",
        job(box(DRAWER, more=f"{BUILT}\nmeasured_width = [455.7, 455.7]")),
        Held("drawer-not-as-built", "B1-1"),
    ),
    planted(
        7,
        "nobody gives its width",
        job(box(DRAWER)),
        Drawn(drawer_size, (int(457.2 - 2 * 18.3 - 42 + 2 * 15.9), 533)),
    ),
    planted(
        15,
        "a drawer front in the job",
        job(box(f"{DRAWER}\nwidth = 152.4\nheight = 454", LEFT)),
        Held("sizes-exchanged", "B1-1"),
    ),
    Mistake(
        number=15,
        variant="a drawer front in a bare list",
        job="id,kind,width,height\nB1-1,drawer,152.4,454\n",
        expect=(Warned("exchanged-perhaps", "B1-1", "check"), Held("hole-outside", "B1-1")),
        file="fronts.csv",
    ),
    planted(
        15,
        "the supplier's",
        job(box(TOP, LEFT)),
        Held("sizes-exchanged", "B1-1"),
        delivered="id,width,height\nB1-1,152.4,454\nB1-2,454,614.3\n",
    ),
    planted(16, "painted fronts, sized to fit", job(box(TOP, LEFT)), Unchecked("film")),
    planted(
        16,
        "five-piece fronts of solid wood",
        job(box(f"{TOP}\nstile = 45", f"{LEFT}\nstile = 57"), front_kind='"softwood"'),
        Unchecked("air"),
    ),
    planted(
        16,
        "a painted pair of maple frames, 1.6 between them",
        job(box(f"{PAIR}\nstile = 57"), front_kind='"hardwood"', between="1.6") + MAPLE + FILM,
        Stops("gap-rubs", ("B1-1L", "B1-1R")),
        Says("gaps", "B1-1L | B1-1R 1.6 -"),
        Says("gaps", "X rubs the wood in the damp season,"),
        Says("gaps", "they move less than wood. B1-1L | B1-1R +"),
    ),
    planted(
        16,
        "solid slabs of 454",
        job(box(LEFT), box(LEFT, name="B2"), front_kind='"hardwood"') + MAPLE,
        Stops("gap-rubs", ("B1-1", "B2-1")),
        Says("gaps", "B1-1 | B2-1 3.2 -"),
        Says("gaps", "Order one-piece fronts of MDF: they move less than wood. B1-1 | B2-1"),
    ),
    planted(
        17,
        "0.6 of band: what the saw is set to",
        job(box(LEFT)),
        Drawn(cut_depth, 584.2 - 0.6),
        Says("parts", "B1-SIDE-L 1 774.7 x 583.6"),
        Says("label", "CUT 774.7 x 583.6 x 18.3", "B1-SIDE-L"),
    ),
    planted(
        17,
        "drilled before the band is on",
        job(box(LEFT, more='band = "later"')),
        Says("sheet", '36.4 1 7/16-" from raw front edge', "B1-SIDE-L"),
        Says("label", "FRONT EDGE STILL RAW", "B1-SIDE-L"),
    ),
    planted(17, "0.6 in a job in inches", INCHES, Refused("material.band")),
    planted(
        17,
        "nobody says whether there is one",
        job(box(LEFT), head=HEAD.replace("band = 0.6\n", "")),
        Says("parts", "ASSUMED, because the job does not say: edge band 0.0 mm"),
    ),
    planted(18, "a box of 560", job(box(DRAWER, depth=560)), Held("slide-too-long", "B1-1")),
    planted(18, "a thick back", job(box(DRAWER), back="18"), Held("slide-too-long", "B1-1")),
    planted(
        18,
        "a box that came out 560 deep",
        job(box(DRAWER, more=f"{TRUE}\nmeasured_depth = 560")),
        Held("drawer-not-as-built", "B1-1"),
    ),
    planted(
        20,
        "a box that stands 5 out across",
        job(box(LEFT, more=f"{TRUE}\ndiagonals = [903, 898]")),
        Warned("box-out-of-square", "B1", "sheet", "B1-1"),
    ),
    planted(
        20,
        "a front that came 4 out across",
        job(
            box(
                f"{LEFT}\nmeasured_width = [454, 454]\nmeasured_height = [769.9, 769.9]\n"
                "diagonals = [896, 892]"
            )
        ),
        Warned("out-of-square", "B1-1"),
    ),
    planted(20, "nobody laid a tape across", job(box(LEFT, more=TRUE)), Unchecked("square")),
    planted(
        22,
        "a drawer box that is made",
        job(box(DRAWER)),
        Says("parts", "notch both lower corners 38.0 wide by 13.0 high for the slides"),
        Says("parts", "its lower edge 13.0 mm (1/2+ in) above the lower edge"),
        Says(
            "sheet",
            "Before it runs: bottom panel 13.0 up; back notched 38.0",
            "B1-1-BOX",
        ),
    ),
    planted(
        22,
        "a drawer box that is bought",
        job(box(DRAWER)) + '\n[build]\ndrawer_boxes = "ordered"\n',
        Says("order", "bottom 13.0 mm up from the underside, back notched 38.0 x 13.0 mm at both"),
    ),
    planted(22, "nobody gives the rear hooks", job(box(DRAWER)), Unchecked("hooks")),
)
