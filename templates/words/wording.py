"""The words on sheets and cards: what a part is called, and what is to be done to it."""

from jigs.box.parts import Side
from jigs.given.job import FrontKind
from jigs.ground.geometry import Hand, other_hand
from jigs.ground.lengths import MM_PER_INCH

FRONT_WORDS: dict[FrontKind, str] = {
    "door": "door",
    "pair": "door",
    "drawer": "drawer front",
    "pullout": "pullout front",
    "false-front": "false front",
    "panel": "panel",
    "lift": "lift-up door",
    "opening": "opening",
}
"""What a front is called on paper."""

FRONT_SHORT = FRONT_WORDS | {
    "drawer": "drawer",
    "pullout": "pullout",
    "false-front": "false",
    "lift": "lift-up",
}
"""The same where room is scarce."""


MIDDLE_WORDS = "CUT DIAMONDS OUT; set on the MIDDLE."
"""How a card is set on the middle of a part."""

ASSEMBLED = "BOX ASSEMBLED? Cut here, stand it on the panel."
"""What stands at a card's line for a box that is together already."""

LADDER = "EDGE LADDER: CUT AT YOUR HEIGHT"
LADDER_OF_SEVERAL = "EDGE LADDER: CUT FOR THE TALLEST FIRST"
"""At the true top end of a door; that of a card for several is cut again for the shorter ones."""

HALF_WORDS = "SET THIS EDGE ON THE MIDDLE of YOUR width."
"""How a card is set whose cut edge is the middle of a part."""


def side_words(side: Side) -> str:
    """Name a box side, or one face of a partition as it stands in its box, seen from the room."""
    return board_words(side.side, side.partition)


def board_words(hand: Hand, partition: int) -> str:
    """Name the board on one side of a column: a box side, or the face of a partition.

    The face that is the right side of a column is the left face of the partition beyond it.
    """
    if not partition:
        return f"{hand} side"
    return f"{other_hand(hand)} face of partition {partition}"


def nominal_words(length: float) -> str:
    """Write a slide's nominal length: `533 mm (21 in)` where it is one in whole inches."""
    inches = round(length / MM_PER_INCH)
    whole = abs(length - inches * MM_PER_INCH) <= 0.5
    return f"{length:g} mm{f' ({inches} in)' if whole else ''}"
