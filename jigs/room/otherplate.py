"""The plate that brings a door over where its side screws are at their end.

A plate that is higher by as much gives so much less overlay (OV = C0 + K - Hp, common practice,
`jigs.fittings.hinge`): the door moves away from the edge by which it hangs.
"""

from msgspec import Struct

from jigs.box.parts import Front
from jigs.given.job import Job
from jigs.ground.geometry import SLACK
from jigs.room.reckoning import ADJUSTS


class OtherPlate(Struct, frozen=True):
    """A plate in place of the one that a door hangs on; heights in mm."""

    now: float
    wanted: float
    """The height that brings the door all the way, its side screws in their middle."""
    at_hand: float | None
    """The one at hand that is nearest to that, where the side screws do the rest; None for none."""
    stated: bool
    """Whether anybody said which plates there are; else `now` is what the hinge wants."""

    @property
    def left(self) -> float:
        """How far the side screws then move the door on the plate at hand, mm."""
        return abs(self.wanted - (self.now if self.at_hand is None else self.at_hand))


def other_plate(front: Front, job: Job, right: float) -> OtherPlate | None:
    """Give the plate on which a door hangs so far to the right, below 0 to the left, mm; None where
    there is no such plate, or the front hangs on none."""
    if front.hinge is None or not front.swings:
        return None
    now = front.hinge.plate
    wanted = now + (right if front.hinged == "left" else -right)
    record = job.hinges.get(front.hinge.record)
    if wanted < -SLACK or record is None:
        return None
    nearest = min(record.plates, key=lambda plate: (abs(plate - wanted), plate), default=now)
    left = abs(nearest - wanted)
    helps = left <= ADJUSTS + SLACK and left < abs(now - wanted) - SLACK
    return OtherPlate(now, wanted, nearest if helps else None, front.hinge.plate_stated)
