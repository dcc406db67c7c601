"""What is held back of a box, and what its boards are drilled with meanwhile."""

from collections.abc import Mapping
from dataclasses import dataclass

from jigs.box.boards import BoardFace, FaceKey
from jigs.box.facework import face_of
from jigs.box.plan import BoxPlan, FrontPlan
from jigs.ground.geometry import Fitting
from jigs.ground.problems import Problem
from jigs.layout.checking import Findings


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
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
