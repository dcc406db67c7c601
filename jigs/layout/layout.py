"""A whole job laid out: every front, every box side, and everything that is doubtful."""

from dataclasses import replace

from jigs.box.parts import Layout
from jigs.checks.asked import check_asked
from jigs.checks.crosswise import check_crosswise
from jigs.checks.delivery import check_surplus
from jigs.checks.installing import check_standing
from jigs.checks.neighbours import check_neighbours
from jigs.checks.provenance import with_open
from jigs.checks.sameplace import find_displaced
from jigs.checks.unlikely import check_unlikely
from jigs.given.job import Job
from jigs.layout.boxlayout import lay_out_box
from jigs.layout.summary import summarise
from jigs.room.pullaims import aim_pulls


def lay_out(job: Job) -> Layout:
    """Lay out a job: sizes, places and holes of all its parts, and the findings of the check."""
    aims = aim_pulls(job)
    displaced = find_displaced(job)
    boxes = [lay_out_box(job, box, aims, displaced.get(box.id)) for box in job.boxes]
    fronts = tuple(front for box in boxes for front in box.fronts)
    beside = check_neighbours(job, fronts)
    # What is said of a hinge edge beside a panel or a wall is said there, and once.
    told = {problem.part for problem in beside if problem.code == "hinge-at-end"}
    problems = tuple(
        problem
        for box in boxes
        for problem in box.problems
        if problem.code != "hinge-edge-reveal" or problem.part not in told
    )
    surplus = check_surplus(job.delivery, job.shown) if job.delivery else ()
    sides = tuple(side for box in boxes for side in box.sides)
    crosswise = check_crosswise(job.boxes, fronts, job.shown)
    rollouts = tuple(rollout for box in boxes for rollout in box.rollouts)
    unlikely = check_unlikely(job, fronts, sides, rollouts)
    return with_open(
        Layout(
            job=job,
            boxes=job.boxes,
            fronts=fronts,
            sides=sides,
            problems=(
                *surplus,
                *problems,
                *beside,
                *check_standing(job),
                *check_asked(job),
                *crosswise,
                *unlikely,
            ),
            echo=summarise(job),
            rollouts=rollouts,
        )
    )


def as_printed(layout: Layout) -> Layout:
    """Give a layout as paper carries it: its findings in the job's own unit.

    However a job is shown on a terminal, its sheets and labels stay the same.
    """
    job = layout.job
    return layout if job.shown == job.units else lay_out(replace(job, shown_in=None))
