"""A whole job laid out: every front, every box side, and everything that is doubtful."""

from collections import Counter

from jigs.boxlayout import lay_out_box
from jigs.checks.neighbours import check_neighbours
from jigs.job import FrontKind, Job
from jigs.parts import Layout

PLURALS: dict[FrontKind, tuple[str, str]] = {
    "door": ("door", "doors"),
    "pair": ("pair", "pairs"),
    "drawer": ("drawer", "drawers"),
    "pullout": ("pullout", "pullouts"),
    "false-front": ("false front", "false fronts"),
    "panel": ("panel", "panels"),
    "lift": ("lift-up front", "lift-up fronts"),
    "opening": ("opening", "openings"),
}


def lay_out(job: Job) -> Layout:
    """Lay out a job: sizes, places and holes of all its parts, and the findings of the check."""
    boxes = [lay_out_box(job, box) for box in job.boxes]
    fronts = tuple(front for box in boxes for front in box.fronts)
    problems = tuple(problem for box in boxes for problem in box.problems)
    return Layout(
        job=job,
        boxes=job.boxes,
        fronts=fronts,
        sides=tuple(side for box in boxes for side in box.sides),
        problems=(*problems, *check_neighbours(job.boxes, fronts, job.units)),
        echo=echo_job(job),
    )


def echo_job(job: Job) -> str:
    """Say in one line what was understood: how many fronts of which kind, on how many boxes."""
    counts = Counter(front.kind for box in job.boxes for front in box.fronts)
    fronts = sum(counts.values()) - counts["opening"] + counts["pair"]
    kinds = [_count(counts[kind], *PLURALS[kind]) for kind in PLURALS if counts[kind]]
    line = f"{_count(fronts, 'front', 'fronts')}: {', '.join(kinds)}, " if kinds else ""
    line += f"on {_count(len(job.boxes), 'box', 'boxes')}"
    if job.boxes and all(box.inferred for box in job.boxes):
        line += " (inferred)"
    return line


def _count(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"
