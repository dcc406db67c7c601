"""The words on the label of a piece that carries no drill code: bottom, back, shelf, toe ...

One label for each of `count` alike. Box sides and partitions have labels of their own.
"""

from collections.abc import Iterator

from jigs.cutlist.piece import Piece
from jigs.lengths import format_mm
from templates.labelwords import LabelWords, Wording
from templates.payload import piece_payload

NAMES = {
    "bottom": "BOTTOM", "top": "TOP", "stretcher": "STRETCHER", "rail": "RAIL", "back": "BACK",
    "nailer": "NAILER", "shelf": "SHELF", "fixed-shelf": "FIXED SHELF",
    "blind-panel": "BLIND PANEL", "drawer-side": "DRAWER SIDE", "drawer-front": "DRAWER BOX FRONT",
    "drawer-back": "DRAWER BACK", "drawer-bottom": "DRAWER BOTTOM", "toe-front": "TOE FRONT",
    "toe-back": "TOE BACK", "sleeper": "SLEEPER", "filler": "FILLER", "end-panel": "END PANEL",
    "island-back": "ISLAND BACK",
}  # fmt: skip
"""Kinds of pieces in words."""

_STICK = {
    "back": "STICK ON REAR FACE", "shelf": "STICK ON UNDERSIDE",
    "fixed-shelf": "STICK ON UNDERSIDE", "drawer-bottom": "STICK ON UNDERSIDE",
    "filler": "STICK ON BACK FACE", "end-panel": "STICK ON BACK FACE",
    "toe-front": "STICK ON BACK FACE", "island-back": "STICK ON BACK FACE",
}  # fmt: skip
_LYING = ("bottom", "top", "stretcher", "shelf", "fixed-shelf", "drawer-bottom")
"""Pieces that lie flat: their arrow points to the front."""


def piece_words(pieces: tuple[Piece, ...], order: str) -> Iterator[tuple[LabelWords, Piece]]:
    """Give the labels of pieces in the order `box` (as listed) or `cut` (thickness, length)."""
    if order == "cut":
        pieces = tuple(sorted(pieces, key=lambda p: (-p.thickness, -p.length, -p.width)))
    for piece in pieces:
        if piece.kind in NAMES:
            for number in range(1, piece.count + 1):
                yield _words(piece, number), piece


def _words(piece: Piece, number: int) -> LabelWords:
    name = NAMES[piece.kind]
    count = f", {number} OF {piece.count}" if piece.count > 1 else ""
    wall = piece.wall.upper().removesuffix("WALL").strip()
    tail = f"BOX {piece.box}" if piece.box else ""
    places = tuple(dict.fromkeys(p for p in (f"{wall} WALL, {tail}" if wall and tail else "",
                                            tail or f"{wall} WALL".strip()) if p))  # fmt: skip
    cut = " x ".join(format_mm(v) for v in (piece.length, piece.width, piece.thickness))
    done = " x ".join(format_mm(v) for v in (piece.finished_length, piece.finished_width))
    lines = [
        Wording(ways=(f"{name}{count}",), worth=9, most=5.0, bold=True),
        Wording(ways=places, worth=7, most=3.5),
        Wording(ways=(f"CUT {cut}", cut), worth=6, most=3.5, figure=True),
    ]
    if piece.band:
        lines.append(Wording(ways=(f"FINISHED {done}", done), worth=4, figure=True))
        edges = ", ".join(edge.upper() for edge in piece.band)
        lines.append(Wording(ways=(f"BAND: {edges}",), worth=5))
    stick = _STICK.get(piece.kind, "STICK ON HIDDEN FACE")
    lines.append(Wording(ways=(stick, stick.removeprefix("STICK ")), worth=3))
    return LabelWords(
        part=piece.id,
        box=piece.box or "",
        code="",
        payload=piece_payload(piece, name, number),
        lines=tuple(lines),
        black=piece,
        arrow="FRONT" if piece.kind in _LYING else "UP",
    )
