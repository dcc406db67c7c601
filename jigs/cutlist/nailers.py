"""Nailers: what a box is screwed to the wall through.

They stand behind the back, between the sides, where the back is set in far enough for them; a
board may stand out there by half a millimetre, less than any wall is out of flat. A thicker board
stands inside, before the back. In a low box they are fewer, and no wider than there is room (all
common practice, no source).
"""

import math

from jigs.box.carcass import Carcass
from jigs.cutlist.joints import Joints
from jigs.cutlist.piece import Block, Piece
from jigs.fittings.slide import BACK_SET_IN
from jigs.given.job import Job
from jigs.ground.geometry import SLACK

TWO_NAILERS = ("wall", "tall")
PROUD = 0.5
"""What a nailer may stand out behind the sides; mm (common practice, no source)."""


def nailers_behind(whole: Carcass) -> bool:
    """Tell whether nailers of the sides' board find room behind the back."""
    return whole.side <= BACK_SET_IN + PROUD + SLACK


def nailers(job: Job, whole: Carcass, joints: Joints) -> list[Piece]:
    """Give the nailers of a box, from the top down."""
    box, build = whole.box, job.build
    count = build.nailers or (2 if box.kind in TWO_NAILERS else 1)
    behind = nailers_behind(whole)
    start = whole.inside_depth + whole.back if behind else whole.inside_depth - whole.side
    foot = box.legs if behind else whole.floor
    top = box.height if behind else whole.flat_ceiling
    wide = min(build.nailer, top - foot)
    head = top - wide
    # A low box has no more of them than stand clear of each other.
    count = min(count, 1 + math.floor((head - foot) / build.nailer + SLACK))
    step = (head - foot) / (count - 1) if count > 1 else 0.0
    made = []
    for number in range(count):
        name = f"{box.id}-NAILER-{number + 1}" if count > 1 else f"{box.id}-NAILER"
        block = Block(
            x=whole.side, y=head - number * step, z=start,
            dx=whole.opening, dy=wide, dz=whole.side,
        )  # fmt: skip
        made.append(
            Piece(
                id=name,
                kind="nailer",
                box=box.id,
                wall=box.wall,
                length=whole.opening,
                width=wide,
                thickness=whole.side,
                grain="length",
                pockets=joints.screw(name, block, on_edge=True),
                blocks=(block,),
            )
        )
    return made
