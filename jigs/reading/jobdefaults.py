"""What stands in where a job does not say: default numbers, default hardware, and their stamp.

Every default is common practice or from memory, so each one that stands in is named by its key
(`reveal.top`), for the sheets it touches and for the check.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec.structs import asdict, replace

from jigs.given.build import inside_depth
from jigs.given.catalogue import (
    DEFAULT_HINGES,
    SLIDE_SERIES,
    RecordType,
    generic_slides,
)
from jigs.given.hardware import NO_PULL, PullRecord, SlideRecord
from jigs.given.job import (
    COUNTER_BOXES,
    BoxSpec,
    Job,
    Reveal,
    ShelfSpec,
    Use,
)  # fmt: skip
from jigs.ground.geometry import SLACK
from jigs.ground.keys import keys_of
from jigs.ground.lengths import MM_PER_INCH, Unit
from jigs.reading.jobboxes import Shelves

DEFAULT_PULL = "bar-160"

OPEN_SHELVES = ("base", "wall", "tall")
"""Boxes that are taken for open shelves where they have no front at all (our own choice)."""

UNDER_COUNTER: dict[Unit, float] = {"mm": 3.0, "in": MM_PER_INCH / 8}
"""Top reveal of boxes under a counter where none is stated; mm (common practice, no source)."""


def complete_job(given: Job, shelves: Shelves) -> Job:
    """Complete a job as far as it was given: default hardware where none is named, the records from
    the shelves that are used, and the stamps of all defaults."""
    use, boxes = _fill_slides(given)
    boxes, open_boxes = _fill_shelves(boxes)
    use = replace(
        use,
        hinge=use.hinge or DEFAULT_HINGES["full"],
        drawer_pull=use.drawer_pull or DEFAULT_PULL,
        door_pull=use.door_pull or DEFAULT_PULL,
    )
    fronts = [front for box in boxes for front in box.fronts]
    used_pulls = _used(
        [use.drawer_pull, use.door_pull, *(f.opened_by.pull for f in fronts)], NO_PULL
    )
    rollouts = [rollout for box in boxes for rollout in box.rollouts]
    used_slides = _used([use.slide, *(f.slide for f in fronts), *(r.slide for r in rollouts)])
    by_overlay = () if given.use.hinge else DEFAULT_HINGES.values()
    named = [*use.hinge_names, *(name for front in fronts for name in front.hung.hinge_names)]
    used_hinges = _used([*named, *by_overlay])
    hinges = {**shelves.hinges.own, **_look_up(used_hinges, shelves.hinges.generic)}
    slides = {**shelves.slides.own, **_look_up(used_slides, shelves.slides.generic)}
    pulls = {**shelves.pulls.own, **_look_up(used_pulls, shelves.pulls.generic)}
    assumed = {
        *given.assumed,
        *(f"use.{name}" for name, own in asdict(given.use).items() if own is None),
        *(f"pull.{name}.{key}" for name, pull in pulls.items() for key in _open_keys(pull)),
    }
    assumed |= {f"box.{box.id}.shelf" for box in open_boxes}
    assumed |= {f"box.{box.id}.pins" for box in boxes if _has_free_pins(box)}
    assumed |= {f"box.{box.id}.spacers" for box in boxes if _has_free_spacers(box)}
    assumed -= set(_idle_defaults(given.boxes))
    return replace(
        given,
        use=use,
        hinges=hinges,
        slides=slides,
        pulls=pulls,
        boxes=boxes,
        assumed=frozenset(assumed),
    )


def _idle_defaults(boxes: Sequence[BoxSpec]) -> Iterator[str]:
    """Yield the keys of the defaults that no front of the job asks for."""
    fronts = [front for box in boxes for front in box.fronts]
    running = [f for f in fronts if f.kind in ("drawer", "pullout", "false-front")]
    hung = [f for f in fronts if f.kind in ("door", "pair", "lift")]
    inset = any(is_inset(box) for box in boxes)
    if not inset:
        yield "reveal.inset"
    under = [box.kind in COUNTER_BOXES for box in boxes]
    if all(under):
        yield "reveal.top"
    if not any(under):
        yield "reveal.under_counter"
    made = [front for front in fronts if front.kind != "opening"]
    if made and not inset and all(front.thickness is not None for front in made):
        yield "material.front"
    rollouts = [rollout for box in boxes for rollout in box.rollouts]
    if not running and not rollouts:
        yield "material.drawer_side"
    if all(front.slide for front in running) and all(each.slide for each in rollouts):
        yield "use.slide"
    if all(front.opened_by.pull for front in running if front.kind != "false-front"):
        yield "use.drawer_pull"
    if all(front.hung.hinge for front in hung if front.kind != "lift"):
        yield "use.hinge"
    if all(front.opened_by.pull for front in hung):
        yield "use.door_pull"


def usual_reveal(units: Unit) -> Reveal:
    """Give the reveals of a job that states none: as a tape of its units shows them."""
    if units == "mm":
        return Reveal(under_counter=UNDER_COUNTER["mm"])
    return Reveal(
        side=MM_PER_INCH / 16, top=MM_PER_INCH / 16, bottom=MM_PER_INCH / 16,
        between=MM_PER_INCH / 8, under_counter=UNDER_COUNTER["in"],
    )  # fmt: skip


def is_inset(box: BoxSpec) -> bool:
    """Tell whether the fronts of a box stand inside it."""
    return any((front.overlay or box.overlay) == "inset" for front in box.fronts)


def choose_slide(depth: float, back: float, units: Unit) -> str:
    """Name the longest generic undermount slide that a box of this outside depth (mm) takes."""
    return longest_fitting(SLIDE_SERIES[units], depth, back)


def longest_fitting(series: Sequence[str], depth: float, back: float) -> str:
    """Name the longest generic slide of a series that a box of this outside depth (mm) takes.

    A box too shallow for any is given the shortest; the check then says that it is too long.
    """
    records = [generic_slides()[name] for name in series]
    room = inside_depth(depth, back)
    fitting = [slide for slide in records if _needed(slide) <= room + SLACK]
    return (fitting[-1] if fitting else records[0]).name


def _fill_shelves(boxes: Sequence[BoxSpec]) -> tuple[tuple[BoxSpec, ...], tuple[BoxSpec, ...]]:
    """Give an open box, without any front, an adjustable shelf where the job states none."""
    filled = tuple(
        replace(box, shelves=(ShelfSpec(),)) if _stands_open(box) else box for box in boxes
    )
    return filled, tuple(box for box in boxes if _stands_open(box))


def _stands_open(box: BoxSpec) -> bool:
    return box.kind in OPEN_SHELVES and not box.fronts and not (box.shelves or box.no_shelf)


def _has_free_pins(box: BoxSpec) -> bool:
    """Tell whether it is left to us between which heights a shelf's pins stand."""
    return any(
        shelf.at is None and (shelf.low is None or shelf.high is None) for shelf in box.shelves
    )


def _has_free_spacers(box: BoxSpec) -> bool:
    """Tell whether it is left to us how thick a rollout's spacers are."""
    return any(None in (each.spacer_left, each.spacer_right) for each in box.rollouts)


def _needed(slide: SlideRecord) -> float:
    return slide.length + slide.depth_allowance


def _fill_slides(given: Job) -> tuple[Use, tuple[BoxSpec, ...]]:
    """Choose slides by depth where the job names none: the commonest is the job's, and the
    fronts of shallower or deeper boxes name their own."""
    if given.use.slide is not None:
        return given.use, given.boxes
    drawers = {
        box.id: sum(front.kind in ("drawer", "pullout") for front in box.fronts) + len(box.rollouts)
        for box in given.boxes
    }
    chosen = {
        box.id: choose_slide(box.depth, given.material.back, given.units) for box in given.boxes
    }
    counts = Counter[str]()
    for box_id, name in chosen.items():
        counts[name] += 1000 * drawers[box_id] + 1
    common = counts.most_common(1)[0][0] if counts else SLIDE_SERIES[given.units][-1]
    boxes = tuple(
        replace(
            box,
            fronts=tuple(
                replace(front, slide=chosen[box.id])
                if front.kind in ("drawer", "pullout")
                and front.slide is None
                and chosen[box.id] != common
                else front
                for front in box.fronts
            ),
            rollouts=tuple(
                replace(rollout, slide=chosen[box.id])
                if rollout.slide is None and chosen[box.id] != common
                else rollout
                for rollout in box.rollouts
            ),
        )
        for box in given.boxes
    )
    return replace(given.use, slide=common), boxes


def _open_keys(pull: PullRecord) -> list[str]:
    """Give the keys of a pull that the person left open."""
    return [
        key
        for key, of in keys_of(PullRecord).items()
        if of.called and pull.standing.get(key) != "user"
    ]


def _used(names: Iterable[str | None], *words: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for name in names if name and name not in words))


def _look_up(names: Iterable[str], records: Mapping[str, RecordType]) -> dict[str, RecordType]:
    return {name: records[name] for name in names if name in records}
