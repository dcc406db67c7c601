"""What a telephone's page says of a part besides its figures: what it is, how it stands."""

from collections.abc import Sequence

from jigs.bench.tracked import Tracked
from jigs.box.drawerbox import Rollout
from jigs.box.parts import Front, Side
from jigs.cutlist.piece import Block, Piece
from jigs.given.confirming import OpenNumber, by_record
from jigs.ground.lengths import Unit, format_inches, format_mm
from templates.faces.faceview import FaceView
from templates.words.facewords import NOT_REVERSIBLE
from templates.words.piecenames import PIECE_WORDS
from templates.words.textlines import counted
from templates.words.wording import FRONT_WORDS

_SPACE, _NOTHING = "\u00a0", "\u2060"
"""A space, and nothing, at which no line is broken (Unicode, UAX 14: GL, WJ)."""


def figure_words(mm: float, unit: Unit) -> str:
    """Write a figure in both units, the job's first: `106.7 (4 3/16")`; it is never broken."""
    first, second = format_mm(mm), _inches(mm)
    if unit == "in":
        first, second = second, first
    return f"{first}{_SPACE}({second})"


def line_figure(mm: float, unit: Unit) -> str:
    """Write how far a line lies from its end, as the tables of the stations do, the job's unit
    first: `106.7`, `4 3/16" (106.7)`."""
    return figure_words(mm, unit) if unit == "in" else format_mm(mm)


def _inches(mm: float) -> str:
    return f'{_SPACE.join(format_inches(mm).split())}{_NOTHING}"'


def open_counts(numbers: Sequence[OpenNumber]) -> str:
    """Say how many numbers are open, and of which hardware: `6 numbers of hinge main, pull bar`."""
    records = ", ".join(f"{kind} {name}" for kind, name in sorted(by_record(numbers)))
    return f"{counted(len(numbers), 'number')} of {records}: measure before you drill."


def counted_from(view: FaceView) -> str:
    """Say from where the figures of a drilled face count, by the arrows before them; of a board
    whose band may still be to come, that they are those of the finished one."""
    low = "the bottom panel" if "bottom" in view.datums else "the bottom edge"
    down = any(map(view.from_top, view.fittings))
    said = (
        f"→ from the left edge, ← from the right edge, ↑ up from {low}, "
        f"{'↓ down from the top edge, ' if down else ''}as this face lies before you."
    )
    if view.state.raw or view.state.band <= 0.0:
        return said
    bare = format_mm(view.state.band)
    return f"{said} The front edge is the FINISHED one: before its band is on, {bare} mm less."


def stale_words(code: str) -> tuple[str, str]:
    """Say of paper with a code that its part no longer has what that means."""
    return (
        f"Paper with code {code} is stale.",
        "Its holes or its size have changed: print its sheet and its label anew.",
    )


def made_before(done: Sequence[str]) -> tuple[str, str]:
    """Say of a part that was worked on before its holes or its size changed what that means."""
    return (
        f"{', '.join(done).capitalize()} before its figures changed.",
        "Compare every figure with the part before you go on.",
    )


def kind_words(part: Tracked) -> str:
    """Say what a part is and its hand: `door, hinges LEFT`, `left side`, `3 shelves alike`."""
    if part.drawer is not None:
        return "rollout" if isinstance(part.drawer, Rollout) else "drawer box"
    if part.front is not None:
        hand = part.front.hinged
        name = FRONT_WORDS[part.front.kind]
        return f"{name}, hinges {hand.upper()}" if hand and part.front.kind == "door" else name
    if part.faces:
        side = part.faces[0]
        return f"partition {side.partition}" if side.partition else f"{side.side} side"
    assert part.piece is not None, "what is no front, drawer box or board is a piece"
    name = PIECE_WORDS[part.piece.kind][0].lower()
    hand_of = f"{part.piece.hand} " if part.piece.hand else ""
    count = f", {part.count} alike" if part.count > 1 else ""
    return f"{hand_of}{name}{count}"


def front_stands(front: Front) -> tuple[str, ...]:
    """Say how a front is held: which end up, which face to the room."""
    said = [FACES]
    if front.kind == "door" and front.hinged:
        said.append(f"Hinges {front.hinged.upper()}.")
    if front.drawer is not None:
        said.append("Its drawer box stands on its back.")
    elif any(hole.face == "back" for hole in front.holes):
        said.append("Dashed: holes in its back.")
    if front.kind == "door" and front.hinged and not front.bored and front.holes:
        said += () if front.reversible else (NOT_REVERSIBLE,)
    return tuple(said)


def side_stands(side: Side) -> tuple[str, ...]:
    """Say how a board of a box is held."""
    if side.partition:
        between = f"Between columns {side.partition} and {side.partition + 1}."
        return ("Arrow up.", between, "Its label looks LEFT.", FRONT_EDGE)
    hand, inner = ("LEFT", "RIGHT") if side.side == "left" else ("RIGHT", "LEFT")
    return (f"Arrow up: the {hand} side of its box.", f"This inside looks {inner}.", FRONT_EDGE)


FRONT_EDGE = "The thick edge is its front, towards you."
DRAWER_STANDS = "Arrow up: it stands on its bottom, this face towards you."
LIES = "Seen from above: the arrow points to its front edge, towards you."
FACES = "Arrow up, seen from the room."
EDGE_ON = "Arrow up, seen from outside: the thick edge is its front, towards the room."


def piece_stands(piece: Piece, block: Block | None) -> str:
    """Say how a piece lies or stands, by the room that it fills."""
    if block is None:
        return "Its label says which way its arrow points."
    if block.dy == min(block.dx, block.dy, block.dz):
        return LIES
    return EDGE_ON if block.dx < block.dz else FACES
