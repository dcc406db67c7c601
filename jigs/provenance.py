"""Which open numbers each part of a laid out job rests on.

A number is put to a part where a hole or a cut in it, or what is mounted on it, depends on the
number: never to a part that is held back, which has none yet.
"""

from collections.abc import Iterable
from dataclasses import replace

from jigs.confirming import OpenNumber, Record, open_numbers
from jigs.geometry import Fitting
from jigs.hardware import Rests
from jigs.job import Job
from jigs.parts import Front, Layout, Side


def with_open(layout: Layout) -> Layout:
    """Give a layout whose parts have the open numbers that they rest on."""
    job = layout.job
    return replace(
        layout,
        fronts=tuple(_front(job, front) for front in layout.fronts),
        sides=tuple(_side(job, side) for side in layout.sides),
        rollouts=tuple(
            replace(rollout, open=_slide_numbers(job, rollout.slide, "drawer"))
            for rollout in layout.rollouts
        ),
    )


def _front(job: Job, front: Front) -> Front:
    drawer = front.drawer
    if front.withheld:
        return replace(front, drawer=replace(drawer, open=()) if drawer else None, open=())
    numbers = [*_of_fittings(job, front.fittings, "front")]
    if drawer is not None:
        if any(fitting.kind == "front-fixing" for fitting in front.fittings):
            numbers += _slide_numbers(job, drawer.slide, "front")
        drawer = replace(drawer, open=_slide_numbers(job, drawer.slide, "drawer"))
    return replace(front, drawer=drawer, open=tuple(dict.fromkeys(numbers)))


def _side(job: Job, side: Side) -> Side:
    return replace(side, open=tuple(dict.fromkeys(_of_fittings(job, side.fittings, "side"))))


def _of_fittings(job: Job, fittings: Iterable[Fitting], rests: Rests) -> Iterable[OpenNumber]:
    """Give the open numbers of the hardware that some fittings are for."""
    for fitting in fittings:
        record = _record_of(job, fitting)
        if record is not None:
            yield from open_numbers(record, rests)


def _record_of(job: Job, fitting: Fitting) -> Record | None:
    name = fitting.record or ""
    match fitting.kind:
        case "hinge" | "plate":
            return job.hinges.get(name)
        case "slide" | "hook" | "clearance":
            return job.slides.get(name)
        case "pull":
            return job.pulls.get(name)
        case _:
            return None


def _slide_numbers(job: Job, name: str, rests: Rests) -> tuple[OpenNumber, ...]:
    record = job.slides.get(name)
    return () if record is None else open_numbers(record, rests)
