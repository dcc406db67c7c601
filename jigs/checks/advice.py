"""What is no finding: published ranges that kitchens are made to, and what nothing in the job says.

Advice is no rule for anybody's own kitchen: nothing is held back, counted or stamped. A job in
millimetres is held against EN 1116, one in inches against KCMA A161.1, both second hand: put down
from what others say of them, not from the standards themselves.

What was not looked at is not doubtful, it is only not known. What is named is what stating it would
let the check see: a wall's ends, its ceiling and counter, a built box's diagonals, what a slide
bears. Paint and the seasons are never reckoned with.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Literal

from jigs.box.parts import Layout
from jigs.cutlist.boxes import is_place
from jigs.given.job import COUNTER_BOXES, BoxKind, BoxSpec
from jigs.ground.geometry import SLACK
from jigs.ground.grouped import grouped
from jigs.ground.lengths import MM_PER_INCH, Unit, format_length

EN_1116 = "EN 1116, second hand"
KCMA = "KCMA A161.1, second hand"

BASE_HEIGHTS = (820.0, 870.0, 920.0)
"""Heights of base units above the floor; mm (EN 1116, second hand)."""
PLINTH = 100.0
"""Least height of a plinth; mm (EN 1116, second hand)."""
WORKTOP = 600.0
"""Least depth of a worktop; mm (EN 1116, second hand)."""
WALL_DEPTH = 400.0
"""Greatest depth of a wall unit; mm (EN 1116, second hand)."""
TOE_HIGH = 3 * MM_PER_INCH
TOE_DEEP = 2 * MM_PER_INCH
"""Least height and depth of the toe space; mm (KCMA A161.1, second hand)."""
OVERHANG = 40.0
"""A worktop stands out before the fronts by no more than this; mm (common practice, no source)."""

BASES: tuple[BoxKind, ...] = ("base", "drawer", "sink")
ON_FLOOR: tuple[BoxKind, ...] = (*BASES, "tall")


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """What stands outside a published range: the boxes, the fact with the range, its source."""

    boxes: tuple[str, ...]
    text: str
    source: str


def advise(layout: Layout) -> tuple[Advice, ...]:
    """List what of a job stands outside the published ranges of its own system of units."""
    job, unit = layout.job, layout.job.shown
    boxes = [box for box in layout.boxes if not box.inferred]
    stated = [box for box in boxes if f"box.{box.id}.above_floor" not in job.assumed]
    floors = {wall.name: wall.floor_high for wall in job.walls}

    def floor(box: BoxSpec) -> float:
        return floors.get(box.wall, 0.0)

    if job.units == "mm":
        found = [
            *_group(_of(stated, BASES), lambda box: _base_height(box, unit), EN_1116),
            *_group(
                _of(stated, ON_FLOOR),
                lambda box: _toe(box, floor(box), PLINTH, "plinth", unit),
                EN_1116,
            ),
            *_group(
                _of(boxes, BASES), lambda box: _worktop(box, job.material.front, unit), EN_1116
            ),
            *_group(_of(boxes, ("wall",)), lambda box: _wall_depth(box, unit), EN_1116),
        ]
        return tuple(found)
    found = [
        *_group(
            _of(stated, ON_FLOOR), lambda box: _toe(box, floor(box), TOE_HIGH, "toe", unit), KCMA
        )
    ]
    toes = tuple(box.id for box in _of(boxes, ON_FLOOR) if not box.legs)
    if toes and job.build.toe_back < TOE_DEEP - SLACK:
        text = (
            f"the toe stands {format_length(job.build.toe_back, unit)} behind the front edges; "
            f"the least is {format_length(TOE_DEEP, unit)}"
        )
        found.append(Advice(boxes=toes, text=text, source=KCMA))
    return tuple(found)


def _of(boxes: list[BoxSpec], kinds: tuple[BoxKind, ...]) -> list[BoxSpec]:
    return [box for box in boxes if box.kind in kinds]


def _group(
    boxes: list[BoxSpec], look: Callable[[BoxSpec], str | None], source: str
) -> Iterator[Advice]:
    """Say once what holds of several boxes."""
    alike = grouped((text, box.id) for box in boxes if (text := look(box)))
    for text, names in alike.items():
        yield Advice(boxes=tuple(names), text=text, source=source)


def _base_height(box: BoxSpec, unit: Unit) -> str | None:
    high = box.above_floor + box.height
    if any(abs(high - usual) <= 1.0 for usual in BASE_HEIGHTS):
        return None
    usual = ", ".join(format_length(height, unit) for height in BASE_HEIGHTS)
    return f"{format_length(high, unit)} high above the floor; base units come {usual} high"


def _toe(box: BoxSpec, floor: float, least: float, word: str, unit: Unit) -> str | None:
    high = box.above_floor + box.legs - floor
    if high >= least - SLACK or high <= SLACK < floor:  # a finding, where the floor leaves none
        return None
    where = " at the floor's high point" if floor > SLACK else ""
    return (
        f"a {word} {format_length(high, unit)} high{where}; "
        f"the least is {format_length(least, unit)}"
    )


def _worktop(box: BoxSpec, front: float, unit: Unit) -> str | None:
    out = WORKTOP - box.depth - (0.0 if box.overlay == "inset" else front)
    if out <= OVERHANG:
        return None
    return (
        f"a worktop is at least {format_length(WORKTOP, unit)} deep, and would stand out "
        f"{format_length(out, unit)} before the fronts of boxes {format_length(box.depth, unit)} "
        "deep"
    )


def _wall_depth(box: BoxSpec, unit: Unit) -> str | None:
    if box.depth <= WALL_DEPTH + SLACK:
        return None
    return (
        f"{format_length(box.depth, unit)} deep; wall units are at most "
        f"{format_length(WALL_DEPTH, unit)} deep"
    )


Subject = Literal[
    "wall", "ends", "corner", "length", "ceiling", "counter", "underside", "square", "sides",
    "hooks", "loads", "seasons",
]  # fmt: skip
"""`wall`: all that a wall states; `underside`: the counter's; `sides`: the holes in a box's sides
for a kit or a lift; `hooks`: a slide's at the drawer's back; `loads`: what slides bear."""


@dataclass(frozen=True, slots=True)
class Unchecked:
    """A subject, and the walls, boxes, fronts or records of which nothing says it; () all."""

    subject: Subject
    names: tuple[str, ...] = ()


def list_unchecked(layout: Layout) -> tuple[Unchecked, ...]:
    """List what of a job was not checked."""
    found = [*_of_walls(layout), *_of_boxes(layout), *_of_slides(layout)]
    return (*(one for one in found if one.names or one.subject == "wall"), Unchecked("seasons"))


def _of_walls(layout: Layout) -> Iterator[Unchecked]:
    walls = layout.job.walls
    stated = {wall.name for wall in walls}
    loose = dict.fromkeys(box.wall or box.id for box in layout.boxes if box.wall not in stated)
    if loose:
        yield Unchecked("wall", tuple(loose) if walls else ())
    ends = [(wall.name, end) for wall in walls for end in (wall.left, wall.right)]
    yield Unchecked("ends", _once(name for name, end in ends if end.stands is None))
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
    built = [box for box in layout.boxes if box.built and not is_place(box)]
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
