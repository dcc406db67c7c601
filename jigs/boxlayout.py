"""One box laid out: its fronts and its two sides, slides first, then hinges, then the rest.

Slides come first because their heights follow from the fronts alone; hinges then find places
that leave the slides' holes alone.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from jigs.carcass import Carcass
from jigs.checks.bores import check_bores, check_side_bores
from jigs.checks.closing import NOT_CLOSED, check_closing, check_counter
from jigs.checks.drawers import check_slide_grid
from jigs.checks.hardware import check_hinge_confirmed, check_slide_confirmed
from jigs.checks.inhand import check_measured
from jigs.checks.kinds import check_kind
from jigs.doors import DoorPlan, plan_door
from jigs.drawerplan import plan_drawers, shelves_of_openings
from jigs.finished import finish_front, finish_sides
from jigs.fittings import FrontFittings, fit_front
from jigs.fronts import PlacedFront, place_fronts
from jigs.geometry import Fitting
from jigs.grid import balanced_start
from jigs.hardware import HingeRecord, SlideRecord
from jigs.hinge import plate_fittings
from jigs.inhand import move_fittings, take_in_hand
from jigs.job import BoxSpec, Hand, Job
from jigs.jobdefaults import DEFAULT_HINGES
from jigs.parts import Front, Side
from jigs.problems import Problem
from jigs.slide import slide_fitting

HANDS: tuple[Hand, Hand] = ("left", "right")


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxLayout:
    """A box laid out: its fronts from the top, left before right; its sides; its findings."""

    fronts: tuple[Front, ...]
    sides: tuple[Side, ...]
    problems: tuple[Problem, ...]


@dataclass(slots=True, kw_only=True)
class _Findings:
    """The findings of a box as they come up, and the fronts that they withhold."""

    fronts: frozenset[str]
    problems: list[Problem] = field(default_factory=list)
    held: dict[str, list[str]] = field(default_factory=dict)
    hushed: set[str | None] = field(default_factory=set)

    def add(self, problems: Iterable[Problem]) -> None:
        for problem in problems:
            if problem.part in self.hushed:
                continue
            self.problems.append(problem)
            if problem.level == "error":
                for part in {problem.part, *problem.also} & self.fronts:
                    self.held.setdefault(str(part), []).append(word_held(problem))

    def hush_unclosed(self) -> None:
        """Say no more of parts whose sizes do not close: their holes follow from nothing."""
        for problem in self.problems:
            if problem.level == "error" and problem.code == NOT_CLOSED:
                self.hushed |= {problem.part, *problem.also}


def lay_out_box(job: Job, box: BoxSpec) -> BoxLayout:
    """Lay out one box of a job."""
    carcass = Carcass(box=box, side=job.material.side, back=job.material.back)
    column = place_fronts(box, job.reveal, side=carcass.side, increment=job.increment)
    carcass = replace(carcass, shelves=shelves_of_openings(column, carcass.side))
    fronts = tuple(front for front in column.fronts if front.kind != "opening")
    findings = _Findings(fronts=frozenset(front.id for front in fronts))
    start = balanced_start(box.height) if job.grid.start is None else job.grid.start
    hinges = {front.id: hinge for front in fronts if (hinge := hinge_of(job, front))}
    slides = {front.id: slide for front in fronts if (slide := slide_of(job, front))}
    for front in fronts:
        findings.add(check_kind(front, has_hinge=front.id in hinges, has_slide=front.id in slides))
    findings.add(check_closing(carcass, column, job.shown))
    findings.hush_unclosed()
    drawers, problems = plan_drawers(column, carcass, job, records=slides, start=start)
    findings.add(problems)
    runs = {
        front.id: slide_fitting(
            drawers[front.id].record,
            drawers[front.id].place.hole,
            part=front.id,
            set_back=front.set_back(job.thickness_of(front.spec)),
        )
        for front in fronts
        if front.id in drawers
    }
    doors = _plan_doors(job, carcass, fronts, hinges, start, runs, findings)
    fitted = {
        front.id: fit_front(
            job,
            carcass,
            front,
            door=doors.get(front.id),
            hinge=hinges.get(front.id),
            drawer=drawers.get(front.id),
        )
        for front in fronts
    }
    in_hand = {front.id: front for front in take_in_hand(fronts)}
    for front in fronts:
        findings.add(check_measured(front, in_hand[front.id], job.shown))
        fitted[front.id] = move_fittings(fitted[front.id], front, in_hand[front.id])
    _check_fronts(job, carcass, tuple(in_hand.values()), fitted, findings)
    on_sides = _side_fittings(job, fronts, hinges, doors, runs)
    _check_sides(job, carcass, fronts, on_sides, findings)
    running = [(name, p.place) for name, p in drawers.items() if name not in findings.held]
    findings.add(check_slide_grid(carcass, running, job.shown))
    as_is = replace(column, fronts=tuple(in_hand.get(f.id, f) for f in column.fronts))
    findings.add(check_counter(carcass, as_is, job.shown))
    for front in fronts:
        if front.id in doors:
            board = carcass.board(front.hinged or "left")
            findings.add(check_hinge_confirmed(front.id, hinges[front.id], board))
        if front.id in drawers:
            plan = drawers[front.id]
            findings.add(check_slide_confirmed(front.id, plan.record, carcass.boards, plan.drawer))
    sides: tuple[Side, ...] = ()
    if fronts or box.kind != "open":
        missing = _missing_on_sides([f for f in fronts if f.id in findings.held], slides)
        sides = finish_sides(job, carcass, on_sides, findings.held, missing)
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
    )


def word_held(problem: Problem) -> str:
    """Say in one line why a part is held back: the finding's name in words, then the fact."""
    return f"{problem.code.replace('-', ' ')}: {problem.text}"


def hinge_of(job: Job, front: PlacedFront) -> HingeRecord | None:
    """Give the hinge a front hangs on; None where it has none, or none is stated."""
    name = front.spec.hinge or job.use.hinge
    if "use.hinge" in job.assumed and front.spec.hinge is None:
        name = DEFAULT_HINGES[front.hung]
    return job.hinges.get(name) if front.kind == "door" and name else None


def slide_of(job: Job, front: PlacedFront) -> SlideRecord | None:
    """Give the slide a front runs on; None where it has none, or none is stated.

    A pullout with holes by hand in its back stands on a kit, which brings its own slides; only
    a slide that the person named is set beside it.
    """
    by_kit = front.kind == "pullout" and any(hole.face == "back" for hole in front.spec.holes)
    own = None if by_kit and "use.slide" in job.assumed else front.spec.slide
    name = own or (None if by_kit else job.use.slide)
    return job.slides.get(name) if front.kind in ("drawer", "pullout") and name else None


def _plan_doors(
    job: Job,
    carcass: Carcass,
    fronts: Sequence[PlacedFront],
    hinges: Mapping[str, HingeRecord],
    start: float,
    runs: Mapping[str, Fitting],
    findings: _Findings,
) -> dict[str, DoorPlan]:
    """Plan the doors from the top; each leaves alone the holes of slides and of doors before.

    Slides of drawers that are held back count as well: they will be drilled one day.
    """
    taken = {hand: [(h.x, h.y) for run in runs.values() for h in run.holes] for hand in HANDS}
    doors: dict[str, DoorPlan] = {}
    for front in fronts:
        if front.id not in hinges or front.hinged is None:
            continue
        record = hinges[front.id]
        plan = plan_door(
            front,
            carcass,
            record,
            material=job.material,
            thickness=job.thickness_of(front.spec),
            grid=start if job.grid.hinges else None,
            holes=taken[front.hinged],
            unit=job.shown,
        )
        doors[front.id] = plan
        findings.add(plan.problems)
        for plate in _plates(job, front, record, plan):
            taken[front.hinged].extend((hole.x, hole.y) for hole in plate.holes)
    return doors


def _plates(
    job: Job, front: PlacedFront, record: HingeRecord, plan: DoorPlan
) -> tuple[Fitting, ...]:
    set_back = front.set_back(job.thickness_of(front.spec))
    return plate_fittings(record, plan.plates, part=front.id, set_back=set_back)


def _check_fronts(
    job: Job,
    carcass: Carcass,
    fronts: Sequence[PlacedFront],
    fitted: Mapping[str, FrontFittings],
    findings: _Findings,
) -> None:
    for front in fronts:
        fittings = fitted[front.id]
        findings.add(fittings.problems)
        if front.id in findings.held:
            continue
        findings.add(
            check_bores(
                front.id,
                fittings.front,
                width=front.width,
                height=front.height,
                thickness=job.thickness_of(front.spec),
                unit=job.shown,
            )
        )


def _side_fittings(
    job: Job,
    fronts: Sequence[PlacedFront],
    hinges: Mapping[str, HingeRecord],
    doors: Mapping[str, DoorPlan],
    runs: Mapping[str, Fitting],
) -> dict[Hand, list[Fitting]]:
    """Give what each side carries: all slides, and the plates of the doors hinged on it."""
    sides: dict[Hand, list[Fitting]] = {hand: list(runs.values()) for hand in HANDS}
    for front in fronts:
        if front.id in doors and front.hinged:
            sides[front.hinged].extend(_plates(job, front, hinges[front.id], doors[front.id]))
    return sides


def _missing_on_sides(
    held: Sequence[PlacedFront], slides: Mapping[str, SlideRecord]
) -> dict[Hand, tuple[str, ...]]:
    """Name, for each side, the fronts held back that will have holes in it one day.

    A door whose hand is not known yet may come on either side.
    """
    return {
        hand: tuple(
            front.id
            for front in held
            if front.kind == "drawer"
            or front.id in slides
            or (front.kind == "door" and front.hinged in (None, hand))
        )
        for hand in HANDS
    }


def _check_sides(
    job: Job,
    carcass: Carcass,
    fronts: Sequence[PlacedFront],
    on_sides: Mapping[Hand, Sequence[Fitting]],
    findings: _Findings,
) -> None:
    """Check each front's holes in the sides against the box and those of the fronts above it.

    Slides drill both sides alike, so that one finding tells of both.
    """
    found: set[tuple[str, str]] = set()
    for hand in HANDS:
        above: list[Fitting] = []
        for front in fronts:
            mine = [fitting for fitting in on_sides[hand] if fitting.part == front.id]
            if front.id in findings.held:
                continue
            problems = check_side_bores(
                front.id,
                carcass.board(hand),
                mine,
                above,
                height=carcass.box.height,
                depth=carcass.box.depth,
                thickness=carcass.side,
                unit=job.shown,
            )
            findings.add(p for p in problems if (front.id, p.code) not in found)
            found.update((front.id, problem.code) for problem in problems)
            above.extend(mine)
