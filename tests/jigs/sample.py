"""Jobs for tests: the golden box, its hardware, and short ways to state fronts and boxes."""

from jigs.box.carcass import Carcass, frame_of
from jigs.box.fronts import FrontStack, place_stack
from jigs.box.parts import Front, Layout, Side
from jigs.given.hardware import (
    HINGE_RESTS,
    PULL_RESTS,
    SLIDE_RESTS,
    Confirmed,
    HingeRecord,
    PullRecord,
    SlideRecord,
)
from jigs.given.job import BoxKind, BoxSpec, FrontSpec, Grid, Job, Material, Reveal, Use
from jigs.given.stated import BoxRead
from jigs.ground.lengths import Unit
from jigs.layout.layout import lay_out

SURE: dict[str, Confirmed] = dict.fromkeys((*HINGE_RESTS, *SLIDE_RESTS, *PULL_RESTS), "measured")
"""Every number that can be open, measured."""
HINGE = HingeRecord(name="mine", plates=(0.0, 2.0, 3.0), confirmed=SURE)
SLIDE = SlideRecord(name="runner", fixing_at=(37.0, 165.0), carry_at=(261.0,), confirmed=SURE)
PULL = PullRecord(name="bar", door_inset=50.8, door_corner=63.5, confirmed=SURE)
GOLDEN = Reveal(side=1.6, top=1.6, bottom=1.6, between=3.2)
UNDER_COUNTER = Reveal(side=1.6, top=3.2, bottom=1.6, between=3.2)
MATERIAL = Material(side=18.3, front=19.05, back=6.0, band=0.6, drawer_side=15.9)


def box(
    *fronts: FrontSpec,
    name: str = "B1",
    kind: BoxKind = "base",
    width: float = 457.2,
    height: float = 774.7,
    depth: float = 584.2,
    above_floor: float = 101.6,
    wall: str = "north",
    x: float | None = None,
    inferred: bool = False,
) -> BoxSpec:
    """Give the golden box with these fronts, from the top."""
    return BoxSpec(
        id=name,
        kind=kind,
        width=width,
        height=height,
        depth=depth,
        above_floor=above_floor,
        wall=wall,
        x=x,
        fronts=fronts,
        read=BoxRead(inferred=inferred),
    )


def one_column(
    spec: BoxSpec, reveal: Reveal = GOLDEN, increment: float | None = None
) -> FrontStack:
    """Place the fronts of a box of one column, between sides of 18.3."""
    carcass = Carcass(box=spec, side=18.3, back=6.0)
    return place_stack(spec.fronts, frame_of(carcass, reveal, spec.overlay), increment)


def job(
    *boxes: BoxSpec,
    units: Unit = "in",
    reveal: Reveal = GOLDEN,
    material: Material = MATERIAL,
    increment: float | None = None,
    grid: Grid | None = None,
    hinge: HingeRecord = HINGE,
    slide: SlideRecord = SLIDE,
    pull: PullRecord = PULL,
    use: Use | None = None,
    assumed: frozenset[str] = frozenset(),
) -> Job:
    """Give a job of these boxes on the golden hardware."""
    return Job(
        name="Test galley",
        units=units,
        material=material,
        reveal=reveal,
        increment=increment,
        grid=grid or Grid(),
        use=use
        or Use(hinge=hinge.name, slide=slide.name, drawer_pull=pull.name, door_pull=pull.name),
        hinges={hinge.name: hinge},
        slides={slide.name: slide},
        pulls={pull.name: pull},
        boxes=boxes,
        assumed=assumed,
    )


def lay(*boxes: BoxSpec, reveal: Reveal = GOLDEN, units: Unit = "in") -> Layout:
    """Lay out these boxes on the golden hardware."""
    return lay_out(job(*boxes, reveal=reveal, units=units))


def front_of(layout: Layout, name: str) -> Front:
    """Find a front by its ID."""
    return next(front for front in layout.fronts if front.id == name)


def side_of(layout: Layout, board: str) -> Side:
    """Find a box side by its ID."""
    return next(side for side in layout.sides if side.board == board)


def codes(layout: Layout, part: str | None = None) -> list[str]:
    """Give the codes of the findings, of one part or of all."""
    return [problem.code for problem in layout.problems if part in (None, problem.part)]
