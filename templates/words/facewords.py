"""What a drilled face is called, how it lies, and what its edges are called."""

from jigs.ground.geometry import Face, FaceEdge, Hand, other_hand
from jigs.ground.lengths import MM_PER_INCH, format_inches, format_mm
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.words.wording import FRONT_WORDS, board_words

FACE_WORDS: dict[Face, str] = {
    "front": "FRONT FACE",
    "back": "BACK OF {}",
    "inside": "INSIDE OF {}",
    "box-front": "FRONT OF DRAWER BOX",
    "box-back": "BACK OF DRAWER BOX",
}
"""What a face is called, {} being the front or the box side; a partition has no inside."""


def drilled_words(view: FaceView) -> str:
    """Name a face in capitals: `BACK OF DOOR`."""
    if view.face == "inside":
        name = board_words(view.side or "left", view.partition).upper()
        return name if view.partition else FACE_WORDS["inside"].format(name)
    return FACE_WORDS[view.face].format(FRONT_WORDS[view.kind or "panel"].upper())


def seen_words(view: FaceView) -> str:
    """Say how a face lies before whoever drills it, and of a door on which hand it hangs."""
    hand: Hand = "right" if view.hinge_edge == "right" else "left"
    mine, other = hand.upper(), other_hand(hand).upper()
    match view.face:
        case "front" if view.hinge_edge:
            return f"Top away: hinges on the {mine}, free edge on your {other}."
        case "front":
            return FRONT_LIES
        case "back" if view.hinge_edge:
            return door_lies(hand)
        case "back":
            return BACK_LIES
        case "inside":
            return _board_lies(view)
        case "box-front":
            return BOX_FRONT_LIES
        case "box-back":
            return BOX_BACK_LIES


PANEL = "BOTTOM PANEL'S FACE"
"""What names the bottom panel's upper face on a side, where paper is not cut there."""
NOT_REVERSIBLE = "NOT REVERSIBLE."
FRONT_LIES = "Top away."
BACK_LIES = "Top away: its right end is LEFT from the room."
BOX_FRONT_LIES = "On its bottom, front towards you."
BOX_BACK_LIES = "On its bottom, back towards you: its right end is LEFT from the room."
"""How fronts and drawer boxes lie."""


def door_lies(hand: Hand) -> str:
    """Say how a door lies on its face, its hinge edge on one hand of whoever drills it."""
    return f"{door_hangs(hand)} Top away: hinge edge on your {hand.upper()}."


def door_hangs(hand: Hand) -> str:
    """Say how a door hangs whose hinge edge is on that hand of whoever drills its back."""
    return f"Hinges {other_hand(hand).upper()} from the room."


def _board_lies(view: FaceView) -> str:
    face = f"his face, towards column {view.column}, up" if view.partition else ""
    how = f"T{face}, top away" if face else "Top away"
    if view.state.stand:
        how = f"BOX lying {f'with t{face}' if face else 'on this side'}, top away"
    edge = (view.front_edge or "left").upper()
    return f"{how}: FRONT edge on your {edge}."


def edge_words(view: FaceView, edge: FaceEdge) -> str:
    """Name an edge of a face as it is seen, in capitals."""
    match view.face:
        case "inside":
            return _edge_of_board(view, edge)
        case "box-front" | "box-back":
            low, ends = "UNDERSIDE", ("LEFT END", "RIGHT END")
        case "front" | "back":
            low, ends = "BOTTOM EDGE", ("LEFT END", "RIGHT END")
            if view.hinge_edge is not None:
                ends = ("HINGE EDGE", "FREE EDGE")
                if view.hinge_edge == "right":
                    ends = ("FREE EDGE", "HINGE EDGE")
    match edge:
        case "left":
            return ends[0]
        case "right":
            return ends[1]
        case "bottom":
            return low
        case "top":
            return "TOP EDGE"


def _edge_of_board(view: FaceView, edge: FaceEdge) -> str:
    match edge:
        case "bottom" if view.state.stand:
            return "PANEL BELOW" if view.partition else "BOTTOM PANEL"
        case "bottom":
            return "BOTTOM END"
        case "top":
            return "TOP END"
        case "left" | "right":
            front = "RAW FRONT EDGE" if view.state.raw else "FRONT EDGE"
            return front if edge == view.front_edge else "REAR EDGE"


def mate_words(view: FaceView) -> str:
    """Name the face that looks at a side's or a partition's across their column, in capitals."""
    hand = view.side or "left"
    # A column's right board shows it its left face.
    mate = (
        f"{hand} face of partition {view.ends.across}"
        if view.ends.across
        else f"{other_hand(hand)} side"
    )
    return mate.upper()


def reference_words(reference: Reference) -> str:
    """Write how far a line lies from its edge, the round figure first: `7 in (177.8)`."""
    value, inches = reference.value, reference.value / MM_PER_INCH
    if abs(inches - round(inches)) < 1e-6:
        return f"{round(inches)} in ({format_mm(value)})"
    return f"{format_mm(value)} ({format_inches(value)} in)"


def index_words(view: FaceView, reference: Reference) -> str:
    """Say where the cut edge of a card is set."""
    edge = edge_words(view, reference.edge)
    return f"SET THIS EDGE {reference_words(reference)} FROM {edge}"
