"""Does what stands beside a blind panel find a board to hold it?

The panel stands in the front of a corner box, where the run round the corner covers it. It has an
edge for a front to lap, but behind it is no side: neither a hinge's plate nor a slide holds there.
"""

from jigs.box.fronts import PlacedFront
from jigs.given.job import BoxSpec
from jigs.ground.finding import error
from jigs.ground.geometry import Hand, other_hand
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem


def blind_hand(box: BoxSpec) -> Hand | None:
    """Give the end at which a box has a blind panel; None where it has none."""
    return None if box.blind is None else box.blind.hand


def check_blind(
    box: BoxSpec, front: PlacedFront, *, on_slides: bool, unit: Unit
) -> tuple[Problem, ...]:
    """Find doors hung, and drawers run, at the blind panel of their box."""
    if box.blind is None:
        return ()
    hand = box.blind.hand
    other = other_hand(hand)
    if front.hinged == hand:
        remedy = f"hang it on the {other}"
        if front.kind == "door" and front.spec.kind == "pair":
            remedy = f'make it one door, hinged = "{other}", or part the box with columns'
        return (
            error(
                "hinge-at-blind",
                front.id,
                f"hinged {hand}, where box {box.id} has its blind panel and no side for the plates",
                remedy,
            ),
        )
    if on_slides:
        covered = format_length(box.blind.reach, unit)
        return (
            error(
                "slide-at-blind",
                front.id,
                f"it runs on slides, and at the blind panel of box {box.id}, {covered} wide, is no "
                "side to hold one",
                f"part the box: columns in place of blind_{hand}, one of them the covered width, "
                "and this front before the other",
            ),
        )
    return ()
