"""The words on the label of a piece of the cut list that no sheet is drilled by.

Box sides and partitions have labels of their own (`labelwords.py`); this is for all others:
bottoms, backs, shelves, the pieces of drawer boxes, toe platforms, fillers, panels. The label of
a piece that lies points to its front edge; one on a filler lies along it, its upper edge on the
edge that is scribed.
"""

from collections.abc import Sequence

from jigs.box.parts import Layout
from jigs.cutlist.piece import DRAWER_KINDS, Piece
from jigs.given.confirming import OpenNumber
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import format_mm
from templates.labels.keyplan import black_piece
from templates.labels.labelmarks import Stripe, Toward, to_the_front
from templates.labels.labelwords import LabelWords
from templates.words.labellines import (
    ASSUMED,
    Wording,
    cut_lines,
    finished_line,
    open_lines,
    place_line,
)
from templates.words.piecenames import PIECE_WORDS, WHERE
from templates.words.scanwords import piece_payload
from templates.words.wallwords import WALL, bare_wall

STICK = {
    "bottom": "UNDERSIDE", "top": "UPPER FACE", "stretcher": "UPPER FACE", "shelf": "UNDERSIDE",
    "fixed-shelf": "UNDERSIDE", "drawer-bottom": "UNDERSIDE", "drawer-front": "OUTER FACE",
    "drawer-side": "OUTER FACE", "drawer-back": "OUTER FACE", "back": "REAR FACE",
    "spacer": "FACE TO THE SIDE",
    "nailer": "REAR FACE", "rail": "REAR FACE", "blind-panel": "REAR FACE", "filler": "BACK FACE",
    "end-panel": "BACK FACE", "island-back": "BACK FACE", "toe-front": "BACK FACE",
}  # fmt: skip
"""Where the label of a piece is stuck: a face that is not seen."""
HIDDEN = "HIDDEN FACE"

_LYING = ("bottom", "top", "stretcher", "shelf", "fixed-shelf", "drawer-bottom")
"""Pieces that lie flat: their arrow points to the front."""


def words_of_piece_label(
    layout: Layout,
    piece: Piece,
    number: int = 1,
    *,
    assumed: bool = False,
    later: bool = False,
    open: Sequence[OpenNumber] = (),
) -> LabelWords:
    """Give the words for a piece, of several alike the one with this number.

    `assumed`: its size hangs on numbers that nobody gave. `later`: the edge band is to come when
    all else is done. `open`: the open numbers that its size rests on.
    """
    # What the ID spells is not said again; which of several it is stays longest.
    called, worth = _called(piece, number), 10 if piece.count > 1 else 7
    lines = [
        *([Wording(ways=called, worth=worth, most=5.0, bold=True)] if called else []),
        _place(piece),
        *cut_lines(piece),
        *_details(piece),
    ]
    if assumed:
        lines.insert(1, ASSUMED)
    lines[1:1] = open_lines(open)
    lines.append(_stick(piece))
    return LabelWords(
        part=piece.id,
        box=piece.box or "",
        code=piece.code,
        payload=piece_payload(layout, piece, which_words(piece), number),
        lines=tuple(lines),
        black=black_piece(piece, number),
        arrow=_arrow(piece),
        toward=_toward(piece),
        stripe=_stripe(piece, later),
    )


def which_words(piece: Piece) -> str:
    """Say what tells a piece from its like: `LEFT`, `FRONT`; empty for most."""
    if piece.kind == "stretcher":
        return "FRONT" if _at_front(piece) else "REAR"
    return piece.hand.upper() if piece.hand else ""


def _called(piece: Piece, number: int) -> tuple[str, ...]:
    """Name a piece with its number among its like, shorter and shorter: the number stays. A name
    that the ID spells is not said again."""
    which, names = which_words(piece), PIECE_WORDS[piece.kind]
    ways = [*(f"{which} {name}".lstrip() for name in names[:-1] or names), names[-1]]
    ways = [way for way in ways if not set(way.split()) <= set(piece.id.split("-"))]
    if piece.count > 1:
        count = f"{number} OF {piece.count}"
        ways = [*(f"{name}, {count}" for name in ways), count]
    return tuple(dict.fromkeys(ways))


def _at_front(piece: Piece) -> bool:
    """Tell whether a lying piece has an edge at the front of its box, or may have."""
    return bool(piece.band or piece.spread or any(block.z < SLACK for block in piece.blocks))


def _place(piece: Piece) -> Wording:
    if piece.box is None:
        beside = f"{WHERE.get(piece.kind, 'UNDER')} {', '.join(piece.beside)}"
        name = bare_wall(piece.wall)
        ways = [f"{name} {WALL}, {beside}", f"{name}, {beside}"] if name else []
        ways.append(beside)
        if len(piece.beside) > 2:
            ways.append(f"UNDER {piece.beside[0]} TO {piece.beside[-1]}")
        return Wording(ways=tuple(ways), worth=7, most=3.5, figure=True)
    owner = ""
    if piece.kind in DRAWER_KINDS:
        rollout = piece.id.rpartition("-")[0]
        owner = f"DRAWER {piece.front}" if piece.front else rollout
    return place_line(piece.id, piece.wall, piece.box, owner)


def _details(piece: Piece) -> list[Wording]:
    """Say what else the piece is made to: its size with the band, what is cut out of it, what is
    to be scribed, how it lies."""
    lines = []
    if piece.band:
        lines.append(finished_line(piece.finished_length, piece.finished_width))
    if piece.scribe is not None:
        spare = format_mm(piece.spare)
        at = "AT THE REAR" if piece.scribe == "rear" else "TO THE WALL"
        lines.append(
            Wording(ways=(f"{spare} TO SCRIBE {at}", f"{spare} TO SCRIBE"), worth=5, figure=True)
        )
    if piece.kind == "drawer-bottom":
        deep = format_mm(piece.blocks[0].dz)
        lines.append(Wording(ways=(f"{deep} FRONT TO BACK",), worth=5, figure=True))
    if piece.kind == "fixed-shelf":
        up = format_mm(piece.blocks[0].y + piece.blocks[0].dy)
        lines.append(
            Wording(
                ways=(
                    f"UPPER FACE {up} FROM SIDES' BOTTOM END",
                    f"UPPER FACE {up} FROM BOTTOM END",
                    f"TOP {up} FROM BOTTOM END",
                    f"TOP {up} FROM\nBOTTOM END",
                ),
                worth=8,
                figure=True,
            )
        )
    if piece.cutouts:
        lines.append(Wording(ways=("NOTCHED: SEE THE PARTS LIST", "NOTCHED"), worth=4))
    return lines


def _stick(piece: Piece) -> Wording:
    """Say where the label is stuck; on a filler, that it lies along it."""
    face = STICK.get(piece.kind, HIDDEN)
    ways: tuple[str, ...] = (f"STICK ON {face}", f"ON {face}")
    if piece.kind == "filler":
        along = f"STICK ALONG {face}"
        ways = (f"{along}, ARROW TO ITS TOP END", f"{along}, ARROW TO TOP", *ways)
    return Wording(ways=ways, worth=2, figure=True)


def _arrow(piece: Piece) -> str:
    """Name what the arrow points to: along a filler it points sideways, and `UP` would be read
    wrong."""
    if piece.kind == "filler":
        return "TOP END"
    return "FRONT" if piece.kind in _LYING else "UP"


def _toward(piece: Piece) -> Toward:
    """Point an arrow up, or along a filler to its top end: the label's upper edge is then the
    edge to be scribed, which is seen from the back."""
    if piece.kind != "filler":
        return "up"
    return "left" if piece.hand == "left" else "right"


def _stripe(piece: Piece, later: bool) -> Stripe | None:
    """Give the stripe along the edge by which a piece is told to lie or stand."""
    if piece.kind in _LYING and _at_front(piece):
        ways: tuple[str, ...] = ("THIS EDGE FRONT", "FRONT")
        if piece.band:
            band = "BAND TO COME" if later else "BANDED"
            ways = (f"THIS EDGE FRONT, {band}", f"FRONT EDGE {band}", *ways)
        return Stripe(end="top", ways=ways)
    if piece.kind == "end-panel":
        # The back face of a left panel is turned to the right, as the inside of a left side.
        return to_the_front("left" if piece.hand == "left" else "right")
    if piece.kind == "blind-panel" and piece.band:
        # Seen from behind, what is right in the kitchen is left.
        return Stripe(
            end="left" if piece.banded == ("right",) else "right",
            ways=("THIS END BANDED",),
            lines=("STRIPE END", "BANDED"),
        )
    if piece.kind == "filler" and piece.scribe is not None:
        return Stripe(
            end="top", ways=("SCRIBE THIS EDGE TO THE WALL", "SCRIBE THIS EDGE", "SCRIBE")
        )
    return None
