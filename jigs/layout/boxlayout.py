"""One box laid out: its fronts, its two sides and its partitions."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from jigs.box.boards import find_faces
from jigs.box.byhand import boards_by_hand
from jigs.box.chosen import first_hole, hinge_of, slide_of
from jigs.box.columns import Columns, place_columns
from jigs.box.doors import door_mass
from jigs.box.drawerplan import DrawerPlan, plan_drawers
from jigs.box.facework import hang_doors, name_missing, run_slides
from jigs.box.fittings import FrontFittings, fit_front
from jigs.box.fronts import PlacedFront
from jigs.box.inhand import has_size, move_fittings, take_in_hand
from jigs.box.parts import Front, Side
from jigs.box.rollouts import plan_rollouts, run_rollouts, slide_bands
from jigs.box.shelves import set_pins
from jigs.box.waiting import foresee
from jigs.checks.blind import check_blind
from jigs.checks.bores import check_bores
from jigs.checks.built import check_built
from jigs.checks.closing import check_closing, check_columns, check_counter
from jigs.checks.delivery import check_arrival
from jigs.checks.doors import check_door
from jigs.checks.drawers import check_drawer
from jigs.checks.faces import check_faces, check_waits
from jigs.checks.findings import Findings
from jigs.checks.fittings import check_fittings
from jigs.checks.fivepiece import check_wood_in_hand
from jigs.checks.hardware import (
    check_hinge_confirmed,
    check_pull_confirmed,
    check_slide_confirmed,
)
from jigs.checks.inhand import Limits, check_gaps_in_hand, check_measured
from jigs.checks.kinds import check_kind, check_push_latch, check_served, check_stacked
from jigs.checks.leaflet import check_leaflet
from jigs.checks.rollouts import check_rollouts
from jigs.given.hardware import SlideRecord
from jigs.given.job import BoxSpec, Job
from jigs.given.rolloutspec import Rollout
from jigs.ground.geometry import collect_holes
from jigs.ground.problems import Problem
from jigs.layout.finished import finish_front
from jigs.layout.finishedsides import finish_sides
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
    columns = place_columns(job, box)
    fronts = tuple(front for front in columns.fronts if front.kind != "opening")
    rolling = plan_rollouts(job, box, columns, fronts)
    findings = Findings(
        fronts=frozenset((*(f.id for f in fronts), *(plan.rollout.id for plan in rolling)))
    )
    if displaced is not None:
        names = [*(f.id for f in fronts), *(plan.rollout.id for plan in rolling)]
        findings.add(replace(displaced, part=name) for name in names or [box.id])
    start = first_hole(job, box)
    hinges = {front.id: hinge for front in fronts if (hinge := hinge_of(job, front))}
    slides = {front.id: slide for front in fronts if (slide := slide_of(job, front))}
    for front in fronts:
        findings.add(check_stacked(front))
        findings.add([aims.problems[front.id]] if front.id in aims.problems else [])
        findings.add(check_kind(front, has_hinge=front.id in hinges, has_slide=front.id in slides))
        findings.add(check_blind(box, front, on_slides=front.id in slides, unit=job.shown))
    for carcass, stack in zip(columns.carcasses, columns.stacks, strict=True):
        findings.add(check_closing(carcass, stack, job.shown))
    findings.add(check_columns(box, columns.spare, columns.uneven, fronts, job.shown))
    findings.hush_unclosed()
    drawers = _plan_drawers(job, columns, fronts, slides, start)
    by_id = {front.id: front for front in fronts}
    for name, planned in drawers.items():
        findings.add(check_drawer(by_id[name], columns.seen[name], job, planned))
    faces = find_faces(columns)
    work = run_slides(job, faces, fronts, drawers)
    run_rollouts(rolling, work)
    findings.add(check_rollouts(rolling, fronts, drawers, [face.key for face in faces], job.shown))
    by_hand, unserved = boards_by_hand(box, fronts)
    findings.add(check_served(box.id, unserved))
    for key, fittings in by_hand.items():
        work.setdefault(key, []).extend(fittings)
    before = {key: list(fittings) for key, fittings in work.items()}
    bands = slide_bands(rolling)
    doors = hang_doors(job, columns, fronts, hinges, start, work, bands)
    for name, door in doors.items():
        findings.add(
            check_door(
                by_id[name],
                columns.seen[name],
                door,
                thickness=job.thickness_of(by_id[name].spec),
                unit=job.shown,
            )
        )
    prospect = foresee(job, columns, fronts, start, before, bands, doors, slides)
    check_waits(prospect, findings)
    set_back = job.material.front if box.overlay == "inset" else 0.0
    set_pins(columns, faces, work, prospect, start=start, set_back=set_back)
    fitted = {
        front.id: fit_front(
            job,
            columns.seen[front.id],
            front,
            door=doors.get(front.id),
            drawer=drawers.get(front.id),
            aim=aims.places.get(front.id),
        )
        for front in fronts
    }
    in_hand = _take_in_hand(job, fronts, findings)
    findings.add(
        check_built(box, tuple(in_hand.values()), job.shown, drawers=bool(drawers or rolling))
    )
    for front in fronts:
        findings.add(check_push_latch(front))
        if front.kind == "panel":
            findings.add(
                check_leaflet(
                    in_hand[front.id],
                    mass=door_mass(in_hand[front.id], job.material, job.thickness_of(front.spec)),
                    pulled=any(
                        hole.face == "front" for hole in collect_holes(fitted[front.id].front)
                    ),
                    unit=job.shown,
                )
            )
        fitted[front.id] = move_fittings(fitted[front.id], front, in_hand[front.id])
    for front in fronts:
        found = check_fittings(
            front, columns.seen[front.id], drawers.get(front.id), fitted[front.id], job.shown
        )
        _check_front(job, in_hand[front.id], fitted[front.id], found, findings)
    names = [*(front.id for front in fronts), *(plan.rollout.id for plan in rolling)]
    check_faces(job, faces, names, work, findings, prospect)
    told: set[str] = set()
    for carcass, stack in zip(columns.carcasses, columns.stacks, strict=True):
        as_is = replace(stack, fronts=tuple(in_hand.get(f.id, f) for f in stack.fronts))
        problems = check_counter(carcass, as_is, job.shown)
        findings.add(problem for problem in problems if problem.part not in told)
        told.update(str(problem.part) for problem in problems)
    for front in fronts:
        carcass = columns.seen[front.id]
        if front.id in doors:
            board = carcass.board(front.hinged or "left")
            hinge, bored = hinges[front.id], front.spec.bored
            findings.add(check_hinge_confirmed(front.id, hinge, board, bored=bored))
        if front.id in drawers:
            drawer = drawers[front.id]
            findings.add(
                check_slide_confirmed(front.id, drawer.record, carcass.boards, drawer.drawer)
            )
        if (pull := fitted[front.id].pulls.name) is not None:
            findings.add(check_pull_confirmed(front.id, job.pulls[pull]))
    for plan in rolling:
        findings.add(check_slide_confirmed(plan.rollout.id, plan.record, plan.carcass.boards, None))
    sides: tuple[Side, ...] = ()
    if fronts or box.shelves or rolling or box.kind != "open":
        held = [front for front in fronts if front.id in findings.held]
        missing = {
            face.key: (
                *name_missing(held, slides, face, work),
                *(
                    plan.rollout.id
                    for plan in rolling
                    if face.key in plan.slides and plan.rollout.id in findings.held
                ),
            )
            for face in faces
        }
        sides, through = finish_sides(
            job, columns.carcasses[0], faces, work, findings.held, missing
        )
        findings.add(through)
    return BoxLayout(
        fronts=tuple(
            finish_front(
                job,
                box,
                front,
                in_hand[front.id],
                fitted[front.id],
                doors.get(front.id),
                tuple(findings.held.get(front.id, ())),
            )
            for front in fronts
        ),
        sides=sides,
        problems=tuple(findings.problems),
        rollouts=tuple(
            replace(plan.rollout, held=tuple(findings.held.get(plan.rollout.id, ())))
            for plan in rolling
        ),
    )


def _plan_drawers(
    job: Job,
    columns: Columns,
    fronts: Sequence[PlacedFront],
    slides: Mapping[str, SlideRecord],
    start: float,
) -> dict[str, DrawerPlan]:
    """Plan the drawers, those before the same columns together."""
    groups: dict[tuple[int, int], dict[str, SlideRecord]] = {}
    for front in fronts:
        if front.id in slides:
            groups.setdefault((front.column, front.span), {})[front.id] = slides[front.id]
    drawers: dict[str, DrawerPlan] = {}
    for (column, _), records in groups.items():
        drawers |= plan_drawers(
            columns.stacks[column - 1],
            columns.seen[next(iter(records))],
            job,
            records=records,
            start=start,
        )
    return drawers


def _take_in_hand(
    job: Job, fronts: Sequence[PlacedFront], findings: Findings
) -> dict[str, PlacedFront]:
    """Give the fronts as they are in hand; one that is beyond its limits stays as ordered."""
    arrivals = job.delivery.arrivals if job.delivery else {}
    refused: set[str] = set()
    for front, in_hand in zip(fronts, take_in_hand(fronts), strict=True):
        arrival = arrivals.get(front.id)
        limits = Limits(
            tolerance=job.tolerance,
            delivered=arrival is not None and arrival.piece.is_measured,
            fits=arrival.fits if arrival else (),
        )
        problems = check_measured(front, in_hand, limits, job.shown)
        if job.delivery:
            problems += check_arrival(front.id, job.delivery, job.tolerance, job.shown)
        findings.add(problems)
        if any(problem.level == "error" for problem in problems):
            refused.add(front.id)
    taken = take_in_hand(fronts, refused)
    findings.add(check_gaps_in_hand(taken, arrivals.keys() - refused, job.shown))
    return {front.id: front for front in taken}


def _check_front(
    job: Job,
    front: PlacedFront,
    fitted: FrontFittings,
    found: Sequence[Problem],
    findings: Findings,
) -> None:
    if front.id in findings.held:
        # What else is wrong with it follows from what holds it back, or keeps till then.
        findings.add(problem for problem in found if problem.level == "error")
        return
    findings.add(found)
    if front.id in findings.held:
        return
    if has_size(front.spec):
        findings.add(check_wood_in_hand(front, fitted.front, job.shown))
    findings.add(
        check_bores(
            front.id,
            fitted.front,
            width=front.width,
            height=front.height,
            thickness=job.thickness_of(front.spec),
            unit=job.shown,
        )
    )
