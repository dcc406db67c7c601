"""Generated jobs: every kind of box and front, sizes from the ordinary to the absurd, names in
Latin, Greek and Cyrillic letters. For properties that must hold for whatever a kitchen has.

Strategies that a draw asks for again and again are kept: a new one is checked by hypothesis anew,
which took a third of the time of a job."""

from functools import cache
from typing import TypeVar, get_args

from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.given.catalogue import generic_hinges, generic_pulls, generic_slides
from jigs.given.hardware import SlideRecord
from jigs.given.job import (
    BOX_KINDS,
    FRONT_KINDS,
    OVERLAYS,
    BandState,
    BoxSpec,
    ColumnSpec,
    FrontMaterial,
    FrontSpec,
    Grid,
    Job,
    Material,
    Overlay,
    Reveal,
    ShelfSpec,
    Use,
)
from jigs.given.stated import (
    NOTED,
    Boring,
    FivePieceSpec,
    FrontEdges,
    FrontWords,
    HandHole,
    Hung,
    OpenedBy,
    OwnReveals,
    Taped,
)
from templates.page.paper import PAPERS, Paper

T = TypeVar("T")

NAMES = (
    "Galley",
    "Küche Łódź – Ферма Заречная, a job whose name goes on and on, far past any title block",
    "Κουζίνα του φάρου",
    "",
)
WALLS = ("north", "Fensterwand Süd größer Raum", "Βόρειος τοίχος κουζίνας", "Северная стена", "")
COLUMNS = (ColumnSpec(), ColumnSpec(share=1.5), ColumnSpec())
LONG_IDS = ("B{}", "PANTRY-NORTH-{}")

PULLS = ("knob", "bar-96", "bar-160", "bar-320", "bar-480")
SLIDES = ("undermount-533", "undermount-450", "undermount-250", "sidemount-450")
TALL_ENOUGH = ("door", "pair", "lift")
"""What needs room for hinges."""
ROOM_FOR_TWO = 850.0
"""Less than this takes one front, mm."""
HINGES = tuple(sorted(name for name, hinge in generic_hinges().items() if hinge.kind == "full"))


@cache
def _one_of(these: tuple[T, ...]) -> st.SearchStrategy[T]:
    return st.sampled_from(these)


@cache
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


@cache
def _seldom(strategy: st.SearchStrategy[T], one_in: int = 6) -> st.SearchStrategy[T | None]:
    """None, save once in a while."""
    return st.integers(1, one_in).flatmap(lambda n: strategy if n == one_in else st.none())


@cache
def _mostly_not(one_in: int = 6) -> st.SearchStrategy[bool]:
    return st.integers(1, one_in).map(lambda n: n == one_in)


def _in_hand(size: float) -> st.SearchStrategy[tuple[float, float]]:
    """A size measured in two places: what was ordered, or up to 3 mm off it."""
    off = _one_of((0.0, 0.5, -0.8, 1.6, -3.0))
    return st.tuples(off, off).map(lambda both: (size + both[0], size + both[1]))


@st.composite
def made_fronts(draw: st.DrawFn, front: FrontSpec, edge: bool) -> FrontSpec:
    """A front as it is made and as it is in hand: of five pieces, glazed, rounded, bevelled,
    measured, bored by its supplier, with gaps of its own. `edge`: it is the lowest one."""
    if draw(_mostly_not(4)):
        front = replace(
            front,
            five_piece=FivePieceSpec(
                stile=draw(_mm(40, 90)),
                rail=draw(_seldom(_mm(30, 110), 2)),
                groove=draw(_seldom(_mm(0, 14), 2)),
                panel=draw(_seldom(_mm(4, 18), 2)),
                glass=front.kind in ("door", "pair", "lift") and draw(_mostly_not(3)),
            ),
        )
    if front.kind == "door" and draw(_mostly_not(5)):
        # The cups of a bored door are stated; at times they are forgotten.
        high = front.height or 500.0
        front = replace(
            front,
            boring=Boring(bored=True, bored_tab=draw(_seldom(_one_of((3.0, 4.5, 6.0)), 2))),
            hung=Hung(hinges_at=draw(_one_of(((90.0, high - 90.0), (75.5, high - 101.0), None)))),
        )
    hangs = draw(_one_of((-16.0, 0.0, 20.0))) if edge and draw(_mostly_not()) else None
    return replace(
        front,
        thickness=draw(_seldom(_one_of((16.0, 22.0, 25.4)))),
        edges=FrontEdges(
            edge_radius=draw(_seldom(_one_of((0.5, 3.0, 6.0)))),
            profile=draw(_seldom(st.just("finger-bevel"))),
        ),
        reveals=OwnReveals(
            left=draw(_seldom(_one_of((0.0, 3.0, 8.5)), 9)),
            right=draw(_seldom(_one_of((0.0, 3.0, 8.5)), 9)),
            top=draw(_seldom(_one_of((2.0, 3.2, 22.0)), 9)),
            bottom=hangs,
        ),
        measured=Taped(
            height=None if front.height is None else draw(_seldom(_in_hand(front.height)))
        ),
        words=FrontWords(finish=draw(_one_of(("", "", "primed", "weiß lackiert, außen")))),
    )


@st.composite
def fronts(draw: st.DrawFn, id: str, last: bool) -> FrontSpec:
    """A front of any kind; the lowest one of a box takes the height that is left."""
    kind = draw(_one_of(("door", "drawer", *FRONT_KINDS)))
    front = FrontSpec(
        id=id,
        kind=kind,
        height=None if last else draw(_mm(300, 500) if kind in TALL_ENOUGH else _mm(80, 300)),
        hinged=draw(_one_of(("left", "right"))) if kind == "door" else None,
        leaflet=NOTED if kind == "panel" else None,
        holes=tuple(draw(st.lists(hand_holes, max_size=5 if draw(st.integers(0, 9)) > 7 else 0))),
        opened_by=OpenedBy(pull=draw(_one_of((None,) * 6 + ("none", *PULLS)))),
    )
    return front if kind == "opening" else draw(made_fronts(front, last))


@st.composite
def stacks(draw: st.DrawFn, id: str, room: float) -> list[FrontSpec]:
    """The fronts of one column, from the top; no more of them than there is room for."""
    count = draw(_one_of((1, 2, 2, 3, 4)))
    made: list[FrontSpec] = []
    for number in range(1, count + 1):
        last = number == count or room < ROOM_FOR_TWO
        made.append(draw(fronts(f"{id}-{number}", last)))
        if last:
            break
        room -= made[-1].height or 0.0
    return made


@st.composite
def shelves(draw: st.DrawFn, columns: int, height: float) -> ShelfSpec:
    """A fixed shelf, or adjustable ones between stated heights or not."""
    column = draw(_seldom(st.integers(1, columns), 2))
    kind = draw(_one_of(("fixed", "free", "between")))
    if kind == "fixed":
        return ShelfSpec(at=draw(_mm(150, int(height) - 10)), column=column)
    if kind == "free":
        return ShelfSpec(column=column, count=draw(st.integers(1, 3)))
    low = draw(_mm(30, 150))
    return ShelfSpec(low=low, high=low + draw(_mm(50, 120)), column=column)


@st.composite
def boxes(draw: st.DrawFn, number: int) -> BoxSpec:
    """A box of any kind and making, of one to three columns with one to four fronts each, at
    times below a front across them all."""
    kind = draw(_one_of(BOX_KINDS))
    id = draw(_one_of(LONG_IDS)).format(number)
    columns = draw(_one_of((1, 1, 1, 2, 3)))
    absurd = draw(_mostly_not(5))
    height = draw(_mm(800, 2350) if kind == "tall" else _mm(280 if absurd else 650, 1500))
    width = draw(_mm(150 if absurd else 260, 1000)) * columns
    room = 1e6 if absurd else height
    rows: list[FrontSpec] = []
    if columns > 1 and draw(_mostly_not(4)):
        across = draw(fronts(f"{id}-ACROSS", False))
        rows.append(replace(across, span=columns, reveals=replace(across.reveals, bottom=None)))
        room -= across.height or 0.0
    for column in range(1, columns + 1):
        stack = draw(stacks(f"{id}-{column}", room))
        rows += [replace(front, column=column) for front in stack]
    overlay = draw(_one_of(("full", "full", *OVERLAYS)))
    if overlay == "inset":
        rows = [replace(front, reveals=replace(front.reveals, bottom=None)) for front in rows]
    elif columns == 1 and draw(_mostly_not(4)):
        other: Overlay = draw(_one_of(("full", "half")))
        rows = [replace(front, overlay=other) for front in rows]
    if columns == 1 and rows and draw(_mostly_not(5)):
        first = rows[0]
        clear = width - (40.6 if overlay == "inset" else 3.2)
        if first.kind == "pair":
            clear = (clear - 3.2) / 2
        rows[0] = replace(first, measured=replace(first.measured, width=draw(_in_hand(clear))))
    return BoxSpec(
        id=id,
        kind=kind,
        width=width,
        columns=(ColumnSpec(), ColumnSpec(share=1.5), ColumnSpec())[:columns]
        if columns > 1
        else (),
        shelves=tuple(draw(st.lists(shelves(columns, height), max_size=2))),
        height=height,
        depth=draw(_one_of((300.0, 584.2, 584.2, 586.0, 610.0))),
        above_floor=100.0,
        wall=draw(_one_of(WALLS)),
        overlay=overlay,
        fronts=tuple(rows),
        assembled=draw(_mostly_not(3)),
        band=draw(_seldom(_one_of(get_args(BandState)), 3)),
        legs=draw(_seldom(_one_of((60.0, 101.6)), 5)) or 0.0,
        rail=draw(_seldom(_one_of((40.0, 100.0)), 5)),
    )


@st.composite
def slides(draw: st.DrawFn, name: str) -> SlideRecord:
    """A generic slide; an undermount one at times with rear hooks."""
    record = generic_slides()[name]
    if record.mount == "side" or not draw(_mostly_not(3)):
        return record
    return replace(
        record,
        hook_diameter=6.0,
        hook_depth=draw(_one_of((10.0, 20.0))),
        hook_height=draw(_mm(18, 40)),
        hook_inset=draw(_mm(4, 15)),
    )


@st.composite
def jobs(draw: st.DrawFn, most_boxes: int = 3) -> Job:
    """A job of a few boxes on generic hardware, in inches or millimetres."""
    count = draw(st.integers(1, most_boxes))
    own = not draw(_mostly_not(3))
    hinge = "cup35-full" if own else draw(_one_of(HINGES))
    slide = draw(_one_of(SLIDES))
    return Job(
        name=draw(_one_of(NAMES)),
        units=draw(_one_of(("in", "mm"))),
        material=Material(
            band=draw(_one_of((0.0, 0.6, 2.0))),
            front_kind=draw(_one_of(get_args(FrontMaterial))),
            partition=draw(_seldom(_one_of((16.0, 25.0, 36.0)), 2)),
        ),
        reveal=draw(_one_of((Reveal(), Reveal(top=3.2), Reveal(side=0.8, between=1.6)))),
        increment=draw(_seldom(_one_of((25.4 / 16, 1.0)), 2)),
        grid=Grid(hinges=not draw(_mostly_not()), slides=draw(_mostly_not(3))),
        use=Use(hinge=hinge, slide=slide, drawer_pull="bar-160", door_pull="bar-160"),
        hinges={name: generic_hinges()[name] for name in (hinge, "cup35-half", "cup35-inset")},
        slides={slide: draw(slides(slide))},
        pulls={name: generic_pulls()[name] for name in PULLS},
        boxes=tuple(draw(boxes(number)) for number in range(1, count + 1)),
        assumed=frozenset({"material.side", "reveal.side", *(("use.hinge",) if own else ())}),
    )


def repeated(job: Job, times: int) -> Job:
    """The same job with each of its boxes so many times over, under other names."""
    return replace(job, boxes=tuple(renamed(box, n) for box in job.boxes for n in range(times)))


def renamed(box: BoxSpec, number: int) -> BoxSpec:
    """The same box, its fronts with it, under a name with a letter more; its own for 0."""
    name = f"{box.id}{' RSTUVWXYZQPNM'[number].strip()}"
    rows = (replace(f, id=name + f.id.removeprefix(box.id)) for f in box.fronts)
    return replace(box, id=name, fronts=tuple(rows))


papers: st.SearchStrategy[Paper] = st.sampled_from(tuple(PAPERS.values()))
