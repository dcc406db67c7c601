"""What is held back of a box, and the finished values: fronts and boards with everything that is
known of them, one value for each drilled face of a side or partition.

All get their code last, from the holes they are left with; a part that is held back has none. Both
faces of a partition carry one code, computed from the holes of both: it has one label. A left and a
right side never share one.
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.assumed import assumed_in_drawer, assumed_in_front, assumed_in_side
from jigs.box.boards import BoardFace, FaceKey, bore_through
from jigs.box.carcass import Carcass
from jigs.box.facework import DoorPlan, face_of
from jigs.box.fittings import renumber
from jigs.box.inhand import has_size
from jigs.box.parts import BoardEnds, Front, FrontMake, LeastReveal, Screws, Side
from jigs.box.plan import BoxPlan, FrontPlan
from jigs.given.confirming import how_confirmed
from jigs.given.edges import bevelled_edge
from jigs.given.job import BoxSpec, Job
from jigs.ground.codes import BoardPlace, board_code, part_code
from jigs.ground.geometry import Fitting, collect_holes
from jigs.ground.problems import Problem
from jigs.layout.checking import Findings


class Held(Struct, frozen=True, kw_only=True):
    """What is held back of a box, and what is left."""

    errors: Mapping[str, tuple[Problem, ...]]
    """By the ID of each front and rollout held back: the errors that withhold it."""
    work: Mapping[FaceKey, tuple[Fitting, ...]]
    """What is drilled into each face for all the others."""
    missing: Mapping[FaceKey, tuple[str, ...]]
    """Whose holes in each face are to come."""

    def errors_of(self, part: str) -> tuple[Problem, ...]:
        """Give the errors that withhold a part; () where it is ready."""
        return self.errors.get(part, ())


def hold(plan: BoxPlan, findings: Findings) -> Held:
    """Hold back every front and rollout that has an error."""
    errors = {part: tuple(problems) for part, problems in findings.held.items()}
    work = {
        key: tuple(fitting for fitting in fittings if fitting.part not in errors)
        for key, fittings in plan.work.items()
    }
    held = [front for front in plan.fronts if front.id in errors]
    missing = {
        face.key: (
            *(front.id for front in held if _is_to_come(front, face, plan)),
            *(
                rollout.rollout.id
                for rollout in plan.rollouts
                if face.key in rollout.slides and rollout.rollout.id in errors
            ),
        )
        for face in plan.faces
    }
    return Held(errors=errors, work=work, missing=missing)


def _is_to_come(plan: FrontPlan, face: BoardFace, box: BoxPlan) -> bool:
    """Tell whether a front held back will have holes in a face one day.

    A door whose hand is not known yet may come on either side.
    """
    front = plan.front
    if face_of(front, face.hand) != face.key:
        return False
    if plan.slide is not None or any(front.id == f.part for f in box.work.get(face.key, ())):
        return True
    if front.spec.by_kit:
        return False
    return front.kind == "drawer" or (front.kind == "door" and front.hinged in (None, face.hand))


def finish_front(job: Job, box: BoxSpec, plan: FrontPlan, held: tuple[Problem, ...]) -> Front:
    """Give a front as it is printed; what withholds it takes its holes away."""
    ordered, front, fitted, door = plan.front, plan.hand.front, plan.fitted, plan.door
    spec, made = front.spec, plan.hand.made
    thickness = job.thickness_of(spec)
    fittings = () if held else fitted.front
    drawer = fitted.drawer
    if drawer is not None:
        drawer = replace(
            drawer,
            fittings=() if held else drawer.fittings,
            rear=() if held else drawer.rear,
        )
        holes = (*drawer.holes, *collect_holes(drawer.rear))
        drawer = replace(
            drawer,
            code=part_code(drawer.width, drawer.height, drawer.side, holes, length=drawer.length),
            assumed=assumed_in_drawer(job, box, front),
        )
    result = Front(
        id=front.id,
        box=box.id,
        wall=box.wall,
        box_kind=box.kind,
        kind=front.kind,
        hinged=None if spec.by_kit and spec.kind == "pair" else front.hinged,
        width=front.width,
        height=front.height,
        place=front.place,
        gaps=front.gaps,
        make=FrontMake(
            thickness=thickness,
            frame=plan.frame,
            edge_radius=spec.edges.edge_radius or 0.0,
            bevel=bevelled_edge(spec.edges.profile, box.kind),
            finish=spec.words.finish,
            note=spec.words.note,
        ),
        code="",
        bored=spec.boring.bored,
        ordered=(ordered.width, ordered.height) if has_size(spec) else None,
        refused=(made.width, made.height) if has_size(spec) and plan.hand.refused else None,
        hinge=door.choice if door else None,
        least_reveal=_least_reveal(job, door),
        drawer=drawer,
        pull=fitted.pulls.name,
        restrictor=spec.hung.restrictor,
        screws=Screws() if held else fitted.screws,
        fittings=fittings,
        held=held,
        assumed=assumed_in_front(
            job, box, front, pull=fitted.pulls.name, hinge=door.choice.record if door else None
        ),
    )
    return replace(result, code=part_code(result.width, result.height, thickness, result.holes))


def _least_reveal(job: Job, door: DoorPlan | None) -> LeastReveal | None:
    """Give the least reveal of a door's hinge, and whether it is open."""
    if door is None or door.least_reveal is None:
        return None
    record = job.hinges.get(door.choice.record)
    unseen = record is None or how_confirmed(record, "least_reveal") is None
    return LeastReveal(width=door.least_reveal, open=unseen)


def finish_sides(job: Job, plan: BoxPlan, held: Held) -> tuple[Side, ...]:
    """Give every drilled face of a box that has boards; what serves a part held back is left
    out."""
    if not plan.has_boards:
        return ()
    sides: list[Side] = []
    for face in plan.faces:
        fittings, _ = bore_through(face, held.work)
        carcass = plan.columns.carcasses[face.column - 1]
        side = _finish(job, carcass, face, fittings, held.missing[face.key])
        other = next(
            (o for o in plan.faces if o.column == face.column and o.hand != face.hand), None
        )
        if other is not None:
            side = replace(
                side,
                ends=replace(side.ends, across=other.partition, raised=other.base - face.base),
            )
        sides.append(side)
    return tuple(replace(side, code=_code(side, sides)) for side in sides)


def _code(side: Side, sides: Sequence[Side]) -> str:
    """Give the code of the board that a drilled face belongs to, with the holes of all its
    faces."""
    board: BoardPlace = "left-side" if side.side == "left" else "right-side"
    if side.partition:
        board = "partition"
    return board_code(
        board,
        (side.depth, side.height, side.thickness),
        ((face.side, hole) for face in sides if face.board == side.board for hole in face.holes),
    )


def _finish(
    job: Job,
    carcass: Carcass,
    face: BoardFace,
    fittings: Sequence[Fitting],
    missing: tuple[str, ...],
) -> Side:
    box = carcass.box
    return Side(
        box=box.id,
        wall=box.wall,
        box_kind=box.kind,
        column=face.column,
        side=face.hand,
        board=face.board,
        height=face.height,
        depth=face.depth,
        thickness=face.thickness,
        band=job.material.band,
        bottom=0.0 if face.partition else carcass.floor,
        legs=box.legs,
        assembled=box.assembled,
        band_state=box.band,
        x=face.x,
        ends=BoardEnds(base=face.base, below=box.height - face.base - face.height),
        partition=face.partition,
        code="",
        fittings=renumber(face.lowered(fittings)),
        shelves=tuple(
            sorted(
                high - face.base
                for _, high in carcass.shelves
                if 0.0 < high - face.base < face.height
            )
        ),
        missing=missing,
        assumed=assumed_in_side(job, box, fittings),
    )
