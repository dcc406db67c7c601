"""Generated jobs: every kind of box and front, sizes from the ordinary to the absurd, names in
Latin, Greek and Cyrillic letters. For properties that must hold for whatever a kitchen has."""

from dataclasses import replace

from hypothesis import strategies as st

from jigs.catalogue import generic_hinges, generic_pulls, generic_slides
from jigs.job import (
    BOX_KINDS,
    FRONT_KINDS,
    FRONT_MATERIALS,
    OVERLAYS,
    BoxSpec,
    ColumnSpec,
    FrontSpec,
    Grid,
    HandHole,
    Job,
    Material,
    Reveal,
    ShelfSpec,
    Use,
)
from templates.paper import PAPERS, Paper

NAMES = (
    "Galley",
    "Küche Łódź – Ферма Заречная, a job whose name goes on and on, far past any title block",
    "Κουζίνα του φάρου",
    "",
)
WALLS = ("north", "Fensterwand Süd größer Raum", "Βόρειος τοίχος κουζίνας", "Северная стена", "")
LONG_IDS = ("B{}", "PANTRY-NORTH-{}")

PULLS = ("knob", "bar-96", "bar-160", "bar-320", "bar-480")
SLIDES = ("undermount-533", "undermount-450", "undermount-250")
TALL_ENOUGH = ("door", "pair", "lift")
"""What needs room for hinges."""
HINGES = tuple(sorted(name for name, hinge in generic_hinges().items() if hinge.kind == "full"))


def _mm(low: int, high: int) -> st.SearchStrategy[float]:
    """Lengths to 1/8 mm, so that no sum of them rounds alike by luck."""
    return st.integers(low * 8, high * 8).map(lambda eighths: eighths / 8)


hand_holes: st.SearchStrategy[HandHole] = st.builds(
    HandHole,
    x=_mm(20, 130),
    y=_mm(20, 70),
    diameter=st.sampled_from((3.0, 5.0, 10.0, 26.0)),
    depth=st.sampled_from((None, 11.0)),
    face=st.sampled_from(("front", "back")),
    purpose=st.just("kit"),
)


@st.composite
def fronts(draw: st.DrawFn, id: str, last: bool) -> FrontSpec:
    """A front of any kind; the lowest one of a box takes the height that is left."""
    kind = draw(st.sampled_from(("door", "drawer", *FRONT_KINDS)))
    return FrontSpec(
        id=id,
        kind=kind,
        height=None if last else draw(_mm(300, 500) if kind in TALL_ENOUGH else _mm(80, 300)),
        hinged=draw(st.sampled_from(("left", "right"))) if kind == "door" else None,
        leaflet=kind == "panel",
        holes=tuple(draw(st.lists(hand_holes, max_size=5 if draw(st.integers(0, 9)) > 7 else 0))),
        pull=draw(st.sampled_from((None,) * 6 + ("none", *PULLS))),
    )


shelves: st.SearchStrategy[ShelfSpec] = st.sampled_from(
    (ShelfSpec(), ShelfSpec(at=205.0), ShelfSpec(low=60.0, high=260.0))
)


@st.composite
def boxes(draw: st.DrawFn, number: int) -> BoxSpec:
    """A box of any kind with one to four fronts."""
    kind = draw(st.sampled_from(BOX_KINDS))
    id = draw(st.sampled_from(LONG_IDS)).format(number)
    count = draw(st.sampled_from((1, 2, 2, 3, 4)))
    columns = draw(st.sampled_from((1, 1, 1, 2, 3)))
    rows = tuple(
        replace(draw(fronts(f"{id}-{column}-{k}", k == count)), column=column)
        for column in range(1, columns + 1)
        for k in range(1, count + 1)
    )
    return BoxSpec(
        id=id,
        kind=kind,
        width=draw(_mm(150, 1000)) * columns,
        columns=(ColumnSpec(),) * columns if columns > 1 else (),
        shelves=tuple(draw(st.lists(shelves, max_size=1))),
        height=draw(_mm(300, 2350) if kind == "tall" else _mm(280, 1500)),
        depth=draw(st.sampled_from((300.0, 584.2, 610.0))),
        above_floor=100.0,
        wall=draw(st.sampled_from(WALLS)),
        overlay=draw(st.sampled_from(("full", "full", *OVERLAYS))),
        fronts=rows,
    )


@st.composite
def jobs(draw: st.DrawFn, most_boxes: int = 3) -> Job:
    """A job of a few boxes on generic hardware, in inches or millimetres."""
    count = draw(st.integers(1, most_boxes))
    own = draw(st.booleans())
    hinge = "cup35-full" if own else draw(st.sampled_from(HINGES))
    slide = draw(st.sampled_from(SLIDES))
    return Job(
        name=draw(st.sampled_from(NAMES)),
        units=draw(st.sampled_from(("in", "mm"))),
        material=Material(
            band=draw(st.sampled_from((0.0, 0.6, 2.0))),
            front_kind=draw(st.sampled_from(FRONT_MATERIALS)),
        ),
        reveal=Reveal(),
        increment=None,
        grid=Grid(),
        use=Use(hinge=hinge, slide=slide, drawer_pull="bar-160", door_pull="bar-160"),
        hinges={name: generic_hinges()[name] for name in (hinge, "cup35-half", "cup35-inset")},
        slides={slide: generic_slides()[slide]},
        pulls={name: generic_pulls()[name] for name in PULLS},
        boxes=tuple(draw(boxes(number)) for number in range(1, count + 1)),
        assumed=frozenset({"material.side", "reveal.side", *(("use.hinge",) if own else ())}),
        assumptions=("side thickness 18.0 mm",),
    )


papers: st.SearchStrategy[Paper] = st.sampled_from(tuple(PAPERS.values()))
