"""Questions that are asked before anything is cut: is what is stated what was meant?

A box of kind `open` as wide as an appliance with nothing in it; an opening in a box that takes an
appliance, whose own sheet rules over its size; a cupboard with doors and nothing behind them.
"""

from collections.abc import Iterator

from jigs.given.job import BoxSpec, Job
from jigs.ground.geometry import SLACK
from jigs.ground.problems import Problem, warning

PLACE = (400.0, 650.0)
"""Widths between which an empty open box may be the place of an appliance; mm (common practice, no
source)."""
NICHE = 300.0
"""An opening as high as this takes an appliance; mm (common practice, no source)."""
NEEDS_SHELF = 500.0
"""A cupboard as high as this has a shelf; mm (common practice, no source)."""


def check_asked(job: Job) -> tuple[Problem, ...]:
    """Ask about the boxes of a job."""
    return tuple(
        problem
        for box in job.boxes
        if not box.inferred
        for problem in (*_ask_place(box), *_ask_openings(box), *_ask_shelf(box))
    )


def _ask_place(box: BoxSpec) -> Iterator[Problem]:
    """Ask whether an empty open box is built, or is an appliance's place."""
    empty = not (box.shelves or box.no_shelf or box.rollouts or box.columns)
    if box.kind != "open" or not empty or not PLACE[0] - SLACK <= box.width <= PLACE[1] + SLACK:
        return
    if len(box.fronts) != 1:
        return
    (front,) = box.fronts
    if front.kind == "opening" and not front.leaflet:
        yield warning("appliance-place", box.id, case="box")
    elif front.kind in ("false-front", "door"):
        yield warning("appliance-place", front.id, case="front")


def _ask_openings(box: BoxSpec) -> Iterator[Problem]:
    """Ask for the sheet of what is built into an opening."""
    if box.kind == "open" or box.width < PLACE[0] - SLACK:
        return
    for front in box.fronts:
        high = front.height is None or front.height >= NICHE - SLACK
        if front.kind == "opening" and high and not front.leaflet:
            yield warning("opening-not-noted", front.id)


def _ask_shelf(box: BoxSpec) -> Iterator[Problem]:
    """Ask for the shelves of a cupboard: their pins are bored before the box is together."""
    hung = any(front.kind in ("door", "pair") and not front.by_kit for front in box.fronts)
    shut = hung and box.kind in ("wall", "tall") and box.height >= NEEDS_SHELF - SLACK
    if shut and not (box.shelves or box.no_shelf or box.rollouts):
        yield warning("no-shelf", box.id)
