"""The words on sheets and cards: what a part is called, and what is to be done to it."""

from jigs.box.parts import Side
from jigs.given.job import FrontKind
from jigs.ground.lengths import format_inches, format_mm
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference

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

FRONT_SHORT = FRONT_WORDS | {"drawer": "drawer", "pullout": "pullout", "false-front": "false"}
"""The same where room is scarce."""


MIDDLE_WORDS = (
    "MARK THE MIDDLE: half of the width YOU measured, from both ends; the two marks must meet."
)
"""How the middle of a part is found."""

HALF_WORDS = "SET THIS EDGE ON THE MIDDLE: half of the width YOU measured, from both ends."
"""How a card is set whose cut edge is the middle of a part."""


def side_words(side: Side) -> str:
    """Name a box side, or one face of a partition as it stands in its box, seen from the room.

    The face that is the right side of a column is the left face of the partition beyond it.
    """
    if not side.partition:
        return f"{side.side} side"
    face = "left" if side.side == "right" else "right"
    return f"{face} face of partition {side.partition}"


def face_across(side: Side) -> str:
    """Name the face that looks at this one across their column."""
    other = "right" if side.side == "left" else "left"
    # A column's right board shows it its left face.
    return f"{side.side} face of partition {side.across}" if side.across else f"{other} side"


def nominal_words(length: float) -> str:
    """Write a slide's nominal length: `533 mm (21 in)` where it is one in whole inches."""
    inches = round(length / 25.4)
    whole = abs(length - inches * 25.4) <= 0.5
    return f"{length:g} mm{f' ({inches} in)' if whole else ''}"


def index_words(view: FaceView, reference: "Reference") -> str:
    """Say where the cut edge of a card is set."""
    value = reference.value
    inches = value / 25.4
    figure = (
        f"{round(inches)} in ({format_mm(value)})"
        if abs(inches - round(inches)) < 1e-6
        else f"{format_mm(value)} ({format_inches(value)} in)"
    )
    words = f"SET THIS EDGE ON A LINE {figure} FROM THE {view.edges[reference.edge]}"
    upward = reference.axis == "y" and reference.edge == "bottom"
    if upward and view.panel is not None and value > view.panel:
        words += f" (box assembled: {format_mm(value - view.panel)} over the bottom panel)"
    return words
