"""The cups of doors: from the hinge edge, each on a line at its own height.

Both hands are stations of their own. All cups of a door are set out from one end, its bottom.
"""

from collections.abc import Iterator

from jigs.bench.benchpart import as_seen, front_face
from jigs.bench.placing import Placing, closing_of, on_edge, on_line, set_out_from
from jigs.box.parts import Front, Layout
from jigs.ground.geometry import FaceEdge, Fitting, Hand, other_hand


def place_cups(layout: Layout) -> list[Placing]:
    """Place the cups of all doors, in the layout's order."""
    return [placing for front in layout.fronts for placing in _of_door(front)]


def hinge_edge(front: Front) -> Hand | None:
    """Give the side of a door's hinge edge as seen on its back."""
    return None if front.hinged is None else other_hand(front.hinged)


def _of_door(front: Front) -> Iterator[Placing]:
    part = front_face(front, "back")
    hand = hinge_edge(front)
    cups = [fitting for fitting in as_seen(part, front.fittings) if fitting.kind == "hinge"]
    if not cups or hand is None:
        return
    start: FaceEdge = set_out_from(part, "bottom")
    closing = closing_of(part, start, (_height(cup) for cup in cups))
    for cup in cups:
        yield Placing(
            work="cups",
            part=part,
            purpose="cup",
            serves=front.id,
            x=on_edge(part, hand),
            y=on_line(start, _height(cup)),
            holes=cup.holes,
            hand=hand,
            outline=cup.outline,
            record=cup.record,
            closing=(closing,),
        )


def _height(cup: Fitting) -> float:
    return next(hole.y for hole in cup.holes if hole.purpose == "cup")
