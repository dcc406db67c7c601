"""A box plan judged: what each check finds, in the order in which it is told."""

from collections.abc import Iterable, Mapping

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.box.facework import door_mass
from jigs.box.inhand import has_size
from jigs.box.plan import BoxPlan, FrontPlan
from jigs.checks.closing import NOT_CLOSED, check_built, check_closing, check_columns, check_counter
from jigs.checks.doors import check_door
from jigs.checks.drawers import check_drawer
from jigs.checks.faces import check_bores, check_faces, check_waits
from jigs.checks.frontholes import check_fittings, check_wood_in_hand
from jigs.checks.inhand import check_arrival, check_gaps_in_hand, check_measured
from jigs.checks.rollouts import check_rollouts
from jigs.checks.stated import (
    check_blind,
    check_confirmed,
    check_kind,
    check_leaflet,
    check_order,
    check_push_latch,
    check_served,
    check_stacked,
)
from jigs.given.job import Job
from jigs.ground.geometry import collect_holes
from jigs.ground.problems import Problem


class Findings(Struct, kw_only=True):
    """The findings of a box as they come up, and the fronts that they withhold."""

    fronts: frozenset[str]
    problems: list[Problem] = field(default_factory=list)
    held: dict[str, list[Problem]] = field(default_factory=dict)
    hushed: set[str | None] = field(default_factory=set)

    def add(self, problems: Iterable[Problem]) -> None:
        """Take up findings, but for parts of which enough is said."""
        for problem in problems:
            if problem.part in self.hushed:
                continue
            self.problems.append(problem)
            if problem.level == "error":
                for part in {problem.part, *problem.also} & self.fronts:
                    self.held.setdefault(str(part), []).append(problem)

    def hush_unclosed(self) -> None:
        """Say no more of parts whose sizes do not close: their holes follow from nothing."""
        for problem in self.problems:
            if problem.level == "error" and problem.code == NOT_CLOSED:
                self.hushed |= {problem.part, *problem.also}


def check_box(
    job: Job,
    plan: BoxPlan,
    refused: Mapping[str, Problem] | None = None,
    displaced: Problem | None = None,
) -> Findings:
    """Judge one box: first what it is stated to be, then whether it closes, then what runs and
    hangs in it, then what is in hand and what is drilled; last, what was looked up.

    `refused`: by front ID, why its pulls cannot line up with others; `displaced`: the error that
    holds all of it back.
    """
    findings = Findings(fronts=frozenset(plan.parts))
    if displaced is not None:
        findings.add(replace(displaced, part=name) for name in plan.parts or [plan.box.id])
    _check_stated(plan, refused or {}, findings)
    _check_sizes(plan, findings)
    _check_hung(job, plan, findings)
    _check_in_hand(job, plan, findings)
    for front in plan.fronts:
        _check_drilled(job, front, findings)
    findings.add(check_faces(plan, findings.held))
    _check_counters(plan, findings)
    _check_confirmed(job, plan, findings)
    return findings


def _check_stated(plan: BoxPlan, refused: Mapping[str, Problem], findings: Findings) -> None:
    for column in plan.by_columns:
        findings.add(check_order([each.front for each in reversed(column)]))
    for each in plan.fronts:
        front, has_slide = each.front, each.slide is not None
        findings.add(check_stacked(front))
        findings.add([refused[front.id]] if front.id in refused else [])
        findings.add(check_kind(front, has_hinge=each.hinge is not None, has_slide=has_slide))
        findings.add(check_blind(plan.box, front, on_slides=has_slide))


def _check_sizes(plan: BoxPlan, findings: Findings) -> None:
    """Where sizes do not close nothing more is said of their fronts."""
    columns = plan.columns
    for carcass, stack in zip(columns.carcasses, columns.stacks, strict=True):
        findings.add(check_closing(carcass, stack))
    fronts = [each.front for each in plan.fronts]
    findings.add(check_columns(plan.box, columns.spare, columns.uneven, fronts))
    findings.hush_unclosed()


def _check_hung(job: Job, plan: BoxPlan, findings: Findings) -> None:
    """Drawers, rollouts, doors, and who waits for whom."""
    for group in plan.by_columns:
        for each in group:
            if each.drawer is not None:
                findings.add(check_drawer(each.front, each.carcass, job, each.drawer))
    findings.add(check_rollouts(plan))
    findings.add(check_served(plan.box.id, plan.unserved))
    for each in plan.fronts:
        if each.door is not None:
            thickness = job.thickness_of(each.front.spec)
            findings.add(check_door(each.front, each.carcass, each.door, thickness=thickness))
    findings.add(check_waits(plan, findings.held))


def _check_in_hand(job: Job, plan: BoxPlan, findings: Findings) -> None:
    """Fronts and box as measured, and panels against their appliance's leaflet."""
    delivery = job.delivery
    for each in plan.fronts:
        findings.add(check_measured(each.front, each.hand))
        if delivery:
            findings.add(check_arrival(each.id, delivery, job.tolerance))
    taken = [each.hand.front for each in plan.fronts]
    arrived = {
        each.id
        for each in plan.fronts
        if delivery and each.id in delivery.arrivals and not each.hand.refused
    }
    findings.add(check_gaps_in_hand(taken, arrived))
    drawers = bool(plan.rollouts) or any(each.drawer for each in plan.fronts)
    findings.add(check_built(plan.box, taken, drawers=drawers))
    for each in plan.fronts:
        findings.add(check_push_latch(each.front))
        if each.front.kind == "panel":
            front, holes = each.hand.front, collect_holes(each.ordered.front)
            mass = door_mass(front, job.material, job.thickness_of(front.spec))
            pulled = any(hole.face == "front" for hole in holes)
            findings.add(check_leaflet(front, mass=mass, pulled=pulled))


def _check_drilled(job: Job, plan: FrontPlan, findings: Findings) -> None:
    front, found = plan.hand.front, tuple(check_fittings(plan))
    if front.id in findings.held:
        # What else is wrong with it follows from what holds it back, or keeps till then.
        findings.add(problem for problem in found if problem.level == "error")
        return
    findings.add(found)
    if front.id in findings.held:
        return
    if has_size(front.spec):
        findings.add(check_wood_in_hand(front, plan.fitted.front))
    findings.add(
        check_bores(
            front.id,
            plan.fitted.front,
            width=front.width,
            height=front.height,
            thickness=job.thickness_of(front.spec),
        )
    )


def _check_counters(plan: BoxPlan, findings: Findings) -> None:
    """What stands before several columns is told once."""
    in_hand = {each.id: each.hand.front for each in plan.fronts}
    told: set[str] = set()
    for carcass, stack in zip(plan.columns.carcasses, plan.columns.stacks, strict=True):
        as_is = replace(stack, fronts=tuple(in_hand.get(f.id, f) for f in stack.fronts))
        problems = check_counter(carcass, as_is)
        findings.add(problem for problem in problems if problem.part not in told)
        told.update(str(problem.part) for problem in problems)


def _check_confirmed(job: Job, plan: BoxPlan, findings: Findings) -> None:
    """Whether somebody has looked up what the holes rest on."""
    for each in plan.fronts:
        front, carcass = each.front, each.carcass
        if each.door is not None:
            also, bored = [carcass.board(front.hinged or "left")], front.spec.boring.bored
            findings.add(check_confirmed(front.id, each.door.record, also, bored=bored))
        if each.drawer is not None:
            also = [*carcass.boards, each.drawer.drawer.id]
            findings.add(check_confirmed(front.id, each.drawer.record, also))
        if (pull := each.fitted.pulls.name) is not None:
            findings.add(check_confirmed(front.id, job.pulls[pull]))
    for rollout in plan.rollouts:
        boards = rollout.carcass.boards
        findings.add(check_confirmed(rollout.rollout.id, rollout.record, boards))
