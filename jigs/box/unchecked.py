"""What nothing in a job says, so that nobody looked at it: it is not doubtful, only not known.

What is named is what stating it would let the check see: a wall's ends, its ceiling and counter, a
built box's diagonals, what a slide bears; and what the gap budget leaves out of its sums.
"""

from collections.abc import Iterator
from typing import Literal

from msgspec import Struct

from jigs.box.parts import Layout
from jigs.given.build import film_of
from jigs.given.job import COUNTER_BOXES, Job

LeftOut = Literal["film", "air", "species", "plywood"]
"""What no sum of the gap budget holds: paint, the seasons, the wood they work on."""
Subject = Literal[
    "wall", "ends", "left", "right", "corner", "length", "ceiling", "counter", "underside",
    "square", "sides", "hooks", "loads", "film", "air", "species", "plywood",
]  # fmt: skip
"""`wall`: all that a wall states; `ends`: what stands at both of its ends, `left`, `right`: at one;
`underside`: the counter's; `sides`: the holes in a box's sides for a kit or a lift; `hooks`: a
slide's at the drawer's back; `loads`: what slides bear; `film`, `air`, `species`, `plywood`: what
the gap budget leaves out."""


class Unchecked(Struct, frozen=True):
    """A subject, and the walls, boxes, fronts or records of which nothing says it; () all."""

    subject: Subject
    names: tuple[str, ...] = ()


def list_unchecked(layout: Layout) -> tuple[Unchecked, ...]:
    """List what of a job was not checked."""
    found = [*_of_walls(layout), *_of_boxes(layout), *_of_slides(layout)]
    said = (one for one in found if one.names or one.subject == "wall")
    return (*said, *map(Unchecked, list_left_out(layout.job)))


def _of_walls(layout: Layout) -> Iterator[Unchecked]:
    walls = layout.job.walls
    stated = {wall.name for wall in walls}
    loose = dict.fromkeys(box.wall or box.id for box in layout.boxes if box.wall not in stated)
    if loose:
        yield Unchecked("wall", tuple(loose) if walls else ())
    ends = [(wall.name, end) for wall in walls for end in (wall.left, wall.right)]
    left = [wall.name for wall in walls if wall.left.stands is None]
    right = [wall.name for wall in walls if wall.right.stands is None]
    yield Unchecked("ends", tuple(name for name in left if name in right))
    yield Unchecked("left", tuple(name for name in left if name not in right))
    yield Unchecked("right", tuple(name for name in right if name not in left))
    yield Unchecked(
        "corner",
        _once(
            name
            for name, end in ends
            if end.stands == "corner" and end.meets is None and end.reach is None
        ),
    )
    yield Unchecked("length", tuple(wall.name for wall in walls if wall.length is None))
    yield Unchecked("ceiling", tuple(wall.name for wall in walls if wall.ceiling is None))
    under = {box.wall for box in layout.boxes if box.kind in COUNTER_BOXES}
    counters = [wall for wall in walls if wall.name in under]
    yield Unchecked("counter", tuple(wall.name for wall in counters if wall.counter is None))
    yield Unchecked(
        "underside",
        tuple(
            wall.name
            for wall in counters
            if wall.counter is not None and wall.counter_thickness is None
        ),
    )


def _of_boxes(layout: Layout) -> Iterator[Unchecked]:
    built = [box for box in layout.boxes if box.built and not box.is_place]
    yield Unchecked("square", tuple(box.id for box in built if box.measured.diagonals is None))
    served = {fitting.part for side in layout.sides for fitting in side.fittings}
    specs = {spec.id: spec for box in layout.boxes for spec in box.fronts}
    yield Unchecked(
        "sides",
        tuple(
            front.id
            for front in layout.fronts
            if (front.kind == "lift" or (front.id in specs and specs[front.id].by_kit))
            and not front.withheld
            and front.id not in served
        ),
    )


def _of_slides(layout: Layout) -> Iterator[Unchecked]:
    names = [front.drawer.slide for front in layout.fronts if front.drawer is not None]
    names += [rollout.slide for rollout in layout.rollouts]
    used = [layout.job.slides[name] for name in dict.fromkeys(names) if name in layout.job.slides]
    yield Unchecked(
        "hooks",
        tuple(one.name for one in used if one.mount == "under" and one.hook_diameter is None),
    )
    yield Unchecked("loads", tuple(one.name for one in used if one.load is None))


def _once(names: Iterator[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))


def list_left_out(job: Job) -> Iterator[LeftOut]:
    """Name what no sum holds, because the job does not say it."""
    made_of = job.moves_as
    if film_of(job.paint) is None:
        yield "film"
    if job.gaps.air.dampest is None:
        yield "air"
    elif made_of == "plywood":
        yield "plywood"
    elif made_of == "wood" and job.gaps.wood.species is None:
        yield "species"
