"""Which hardware a front has, and where a box's row of holes begins: its own, else the job's."""

from jigs.box.fronts import PlacedFront
from jigs.given.hardware import HingeRecord, SlideRecord
from jigs.given.job import BoxSpec, Job
from jigs.ground.grid import balanced_start
from jigs.reading.jobdefaults import DEFAULT_HINGES


def hinge_of(job: Job, front: PlacedFront) -> HingeRecord | None:
    """Give the hinge a front hangs on; None where it has none, or none is stated.

    Of several it is the one of the kind that the front hangs on; the first, where none is.
    """
    if front.spec.by_kit or front.kind != "door":
        return None
    names = front.spec.hung.hinge_names or job.use.hinge_names
    if "use.hinge" in job.assumed and front.spec.hung.hinge is None:
        names = (DEFAULT_HINGES[front.hung],)
    records = [job.hinges[name] for name in names if name in job.hinges]
    fitting = (record for record in records if record.kind == front.hung)
    return next(fitting, records[0] if records else None)


def slide_of(job: Job, front: PlacedFront) -> SlideRecord | None:
    """Give the slide a front runs on; None where it has none, or none is stated.

    A pullout with holes by hand in its back stands on a kit, which brings its own slides; only
    a slide that the person named is set beside it.
    """
    if front.spec.by_kit:
        return None
    by_kit = front.kind == "pullout" and any(hole.face == "back" for hole in front.spec.holes)
    own = None if by_kit and "use.slide" in job.assumed else front.spec.slide
    name = own or (None if by_kit else job.use.slide)
    return job.slides.get(name) if front.kind in ("drawer", "pullout") and name else None


def first_hole(job: Job, box: BoxSpec) -> float:
    """Give the first hole of the 32 mm row above the bottom end of a box's sides; mm."""
    return balanced_start(box.height) if job.grid.start is None else job.grid.start
