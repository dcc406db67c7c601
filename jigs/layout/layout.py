"""A whole job laid out box by box: planned, checked, its faulty parts held back, the others
finished; and what was understood of it in one line, so that a misread list is seen before drilling.
"""

from collections import Counter

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.bypart import with_open
from jigs.box.drawerbox import Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.box.plan import BoxPlan, plan_box
from jigs.checks.cutting import check_standing
from jigs.checks.faces import check_shared
from jigs.checks.inhand import check_surplus
from jigs.checks.neighbours import check_neighbours
from jigs.checks.room import find_displaced
from jigs.checks.stated import check_asked
from jigs.checks.unlikely import check_crosswise, check_unlikely
from jigs.given.job import BoxSpec, FrontKind, Job
from jigs.ground.problems import Problem
from jigs.ground.shared import Shared
from jigs.layout.checking import check_box
from jigs.layout.finished import Held, finish_front, finish_sides, hold
from jigs.layout.pullaims import Aims, aim_pulls
from jigs.layout.sharing import share_front, share_problem, share_side

_WORDS: dict[FrontKind, tuple[str, str]] = {
    "door": ("door", "doors"),
    "pair": ("pair", "pairs"),
    "drawer": ("drawer", "drawers"),
    "pullout": ("pullout", "pullouts"),
    "false-front": ("false front", "false fronts"),
    "panel": ("panel", "panels"),
    "lift": ("lift door", "lift doors"),
    "opening": ("opening", "openings"),
}


def summarise(job: Job) -> str:
    """Say how many fronts of each kind stand on how many boxes.

    A pair counts as two fronts, an opening as none.
    """
    kinds = Counter(front.kind for box in job.boxes for front in box.fronts)
    fronts = sum(kinds.values()) + kinds["pair"] - kinds["opening"]
    listed = [_count(kinds[kind], *words) for kind, words in _WORDS.items() if kinds[kind]]
    boxes = _count(len(job.boxes), "box", "boxes")
    inferred = sum(box.inferred for box in job.boxes)
    note = "" if not inferred else f" ({inferred} inferred)"
    if inferred and inferred == len(job.boxes):
        note = " (inferred)"
    kinds_said = f": {', '.join(listed)}" if listed else ""
    return f"{_count(fronts, 'front', 'fronts')}{kinds_said}, on {boxes}{note}"


def _count(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"


class BoxLayout(Struct, frozen=True, kw_only=True):
    """A box laid out: its fronts column by column from the top, left before right; its sides and
    partitions; its findings."""

    fronts: tuple[Front, ...]
    sides: tuple[Side, ...]
    problems: tuple[Problem, ...]
    rollouts: tuple[Rollout, ...] = ()


def lay_out_box(
    job: Job, box: BoxSpec, aims: Aims | None = None, displaced: Problem | None = None
) -> BoxLayout:
    """Lay out one box of a job; `aims`: where its pulls line up with others; `displaced`: the
    error that holds all of it back."""
    aims = aims or Aims()
    plan = plan_box(job, box, aims.places)
    findings = check_box(job, plan, aims.problems, displaced)
    held = hold(plan, findings)
    findings.add(check_shared(plan.faces, held.work))
    return finish_box(job, plan, held, findings.problems)


def finish_box(job: Job, plan: BoxPlan, held: Held, problems: list[Problem]) -> BoxLayout:
    """Give a box as it is printed: what is held back has no holes."""
    return BoxLayout(
        fronts=tuple(
            finish_front(job, plan.box, front, held.errors_of(front.id)) for front in plan.fronts
        ),
        sides=finish_sides(job, plan, held),
        problems=tuple(problems),
        rollouts=tuple(
            replace(rollout.rollout, held=held.errors_of(rollout.rollout.id))
            for rollout in plan.rollouts
        ),
    )


def _share_box(shared: Shared, box: BoxLayout) -> BoxLayout:
    """Give a box that shares with those before it what they have alike."""
    return replace(
        box,
        fronts=tuple(share_front(shared, front) for front in box.fronts),
        sides=tuple(share_side(shared, side) for side in box.sides),
        problems=tuple(share_problem(shared, problem) for problem in box.problems),
    )


def lay_out(job: Job) -> Layout:
    """Lay out a job: sizes, places and holes of all its parts, and the findings of the check."""
    aims = aim_pulls(job)
    displaced = find_displaced(job)
    shared = Shared()
    boxes = [
        _share_box(shared, lay_out_box(job, box, aims, displaced.get(box.id))) for box in job.boxes
    ]
    fronts = tuple(front for box in boxes for front in box.fronts)
    beside = tuple(check_neighbours(job, fronts))
    # What is said of a hinge edge beside a panel or a wall is said there, and once.
    told = {problem.part for problem in beside if problem.code == "hinge-at-end"}
    problems = tuple(
        problem
        for box in boxes
        for problem in box.problems
        if problem.code != "hinge-edge-reveal" or problem.part not in told
    )
    surplus = tuple(check_surplus(job.delivery)) if job.delivery else ()
    sides = tuple(side for box in boxes for side in box.sides)
    crosswise = check_crosswise(job.boxes, fronts)
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
            hinges=frozenset(front.hinge.record for front in fronts if front.hinge),
            rollouts=rollouts,
        )
    )


def as_printed(layout: Layout) -> Layout:
    """Give a layout as paper carries it: its findings in the job's own unit.

    However a job is shown on a terminal, its sheets and labels stay the same.
    """
    job = layout.job
    return replace(layout, job=replace(job, shown_in=None))
