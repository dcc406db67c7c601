"""Mistakes with the room: corners, appliances, ceiling, counter; and whose part is whose."""

from tests.jigs.cases.kitchen import box, job
from tests.mistakes.made import Drawn, Held, Says, Unchecked, Warned
from tests.mistakes.planted import (
    DRAWER,
    LEFT,
    PANEL,
    RIGHT,
    TOP,
    planted,
    wall,
)

EAST = box(RIGHT, name="E1").replace('"north"', '"east"')
MEET = wall('right = "corner"', "right_filler = 60", 'right_meets = "north"', name="east")
HALVES = f"{DRAWER}\nheight = 160", f"{DRAWER}\nheight = 161.2", LEFT


def place(front: str, floor: float = 100) -> str:
    """Write the place of an appliance."""
    return box(front, kind="open", width=600, height=820, floor=floor)


def tall(*fronts: str, kind: str = "tall") -> str:
    """Write a box that is 2212.1 across: sqrt(2133.6^2 + 584.2^2)."""
    shelf = "shelf = [{at = 1000}]"
    return box(*fronts, kind=kind, width=600, height=2133.6, floor=30, more=shelf)


ROOM = (
    planted(
        9,
        "30 where the pulls of the run opposite stand out",
        job(
            wall('left = "corner"', "left_filler = 30", 'left_meets = "east"'),
            MEET,
            box(TOP, LEFT),
            EAST,
        ),
        Warned("corner-filler", "B1-1"),
        Warned("corner-filler", "B1-1", "elevation"),
        Warned("corner-filler", "B1-1", "parts"),
    ),
    planted(
        9,
        "60 beside an oven whose handle stands out 60",
        job(wall('left = "corner"', "left_filler = 60", "left_reach = 60"), box(LEFT)),
        Warned("corner-filler", "B1-1", "elevation"),
    ),
    planted(9, "nobody says what stands there", job(box(TOP, LEFT)), Unchecked("wall")),
    planted(
        10,
        "a dishwasher's",
        job(place(f"{PANEL}\nreveal_top = 3")),
        Held("leaflet-not-noted", "B1-1"),
    ),
    planted(
        10,
        "a leaflet that asks for 595 to 598",
        job(
            place(
                f"{PANEL}\nreveal_top = 3\nleaflet = {{width_min = 595, width_max = 598, "
                "height_min = 700, height_max = 760}"
            )
        ),
        Held("leaflet-not-met", "B1-1"),
    ),
    planted(
        10,
        "an oven's opening",
        job(
            tall(
                LEFT,
                'kind = "opening"\nheight = 590',
                f"{DRAWER}\nheight = 400",
            )
        ),
        Warned("opening-not-noted", "B1-2", "check"),
    ),
    planted(
        10,
        "an appliance's place drawn as a box",
        job(place('kind = "opening"')),
        Warned("appliance-place", "B1", "check"),
    ),
    planted(
        19,
        "two drawers alike in one box",
        job(box(TOP, TOP, LEFT)),
        Says("label", "B1-1 DRAWER FRONT, TOP OF 2", "B1-1"),
        Says("label", "NORTH WALL, BOX B1, OVER DRAWER B1-2", "B1-1"),
        Says("label", "B1-2 DRAWER FRONT, LOWEST OF 2", "B1-2"),
    ),
    planted(
        19,
        "each label says whose it is to a telephone, and has its sheet's code",
        job(box(TOP, LEFT)),
        Drawn(
            lambda made: {
                part: (
                    made.labels[part].payload.part,
                    made.labels[part].code in made.words("sheet", part),
                )
                for part in ("B1-1", "B1-2", "B1-SIDE-L")
            },
            {part: (part, True) for part in ("B1-1", "B1-2", "B1-SIDE-L")},
        ),
    ),
    planted(
        19,
        "labels of two fronts exchanged, 1.2 apart",
        job(box(*HALVES)),
        Warned("exchanged-perhaps", "B1-1"),
        delivered="id,width,height\nB1-1,454,161.2\nB1-2,454,160\n",
    ),
    planted(
        24,
        "2133.6 under 2200: 2212.1 across",
        job(wall("ceiling = 2200"), tall(LEFT)),
        Warned("cannot-be-tilted-up", "B1", "elevation"),
        Warned("cannot-be-tilted-up", "B1", "parts"),
    ),
    planted(
        24,
        "an open one",
        job(wall("ceiling = 2200"), tall(kind="open")),
        Warned("cannot-be-tilted-up", "B1", "parts"),
    ),
    planted(
        24,
        "nobody says how high the room is",
        job(wall("counter = 914"), tall(LEFT)),
        Unchecked("ceiling"),
    ),
    planted(
        25,
        "1.6 above it",
        job(box(f"{TOP}\nreveal_top = 1.6", LEFT)),
        Warned("counter-reveal", "B1-1"),
    ),
    planted(
        25,
        "a counter that hangs 2.5 below the box's top",
        job(wall("counter = 910", "counter_thickness = 37.8"), box(TOP, LEFT)),
        Warned("counter-front", "B1-1", "elevation"),
    ),
    planted(
        25,
        "an appliance's panel, 1 below it",
        job(
            wall("counter = 900", "counter_thickness = 40"),
            place(f'{PANEL}\nreveal_top = 1\nleaflet = "noted"', floor=40),
        ),
        Warned("counter-reveal", "B1-1", "check"),
    ),
)
