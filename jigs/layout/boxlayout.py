"""One box laid out: planned, checked, its faulty parts held back, the others finished."""

from dataclasses import dataclass, replace

from jigs.box.parts import Front, Side
from jigs.box.plan import BoxPlan, plan_box
from jigs.checks.faces import check_shared
from jigs.given.job import BoxSpec, Job
from jigs.given.rolloutspec import Rollout
from jigs.ground.problems import Problem
from jigs.layout.checking import check_box
from jigs.layout.finished import finish_front
from jigs.layout.finishedsides import finish_sides
from jigs.layout.holding import Held, hold
from jigs.room.pullaims import Aims


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxLayout:
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
    findings.add(check_shared(plan.faces, held.work, job.shown))
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
