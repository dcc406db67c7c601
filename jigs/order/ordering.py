"""What was ordered: each front of a job in the size that was ordered, a pair as its two leaves."""

from dataclasses import dataclass, replace

from jigs.box.columns import place_columns
from jigs.given.job import FrontSpec, Job


@dataclass(frozen=True, slots=True, kw_only=True)
class Ordered:
    """A front as ordered; sizes in mm. `row` is the ID of the job's row it comes from: a pair's
    own for both its leaves."""

    id: str
    row: str
    spec: FrontSpec
    width: float
    height: float
    thickness: float

    @property
    def look(self) -> tuple[object, ...]:
        """What makes a piece this front: those alike in it serve for each other."""
        spec = self.spec
        return (
            round(self.width, 1), round(self.height, 1), round(self.thickness, 1), spec.finish,
            replace(spec.five_piece, groove=None), spec.edge_radius, spec.profile,
            spec.boring.bored, spec.hung.hinges_at, spec.hinged if spec.boring.bored else None,
        )  # fmt: skip


def list_ordered(job: Job) -> tuple[Ordered, ...]:
    """List the fronts of a job as ordered, in the job's order."""
    return tuple(
        Ordered(
            id=front.id,
            row=front.spec.id,
            spec=front.spec,
            width=front.width,
            height=front.height,
            thickness=job.thickness_of(front.spec),
        )
        for box in job.boxes
        for front in place_columns(job, box).fronts
        if front.kind != "opening"
    )


def list_openings(job: Job) -> frozenset[str]:
    """Name the openings of a job: nobody delivers one."""
    return frozenset(spec.id for box in job.boxes for spec in box.fronts if spec.kind == "opening")
