"""What the pieces of the cut list are called."""

from jigs.cutlist.piece import PieceKind

PIECE_WORDS: dict[PieceKind, tuple[str, ...]] = {
    "side": ("SIDE",),
    "partition": ("PARTITION",),
    "bottom": ("BOTTOM",),
    "top": ("TOP",),
    "stretcher": ("STRETCHER",),
    "rail": ("RAIL",),
    "back": ("BACK",),
    "nailer": ("NAILER",),
    "shelf": ("SHELF",),
    "fixed-shelf": ("FIXED SHELF", "SHELF"),
    "blind-panel": ("BLIND PANEL", "PANEL"),
    "drawer-side": ("DRAWER BOX SIDE", "DRAWER SIDE", "SIDE"),
    "drawer-front": ("DRAWER BOX FRONT", "DRAWER FRONT", "FRONT"),
    "drawer-back": ("DRAWER BOX BACK", "DRAWER BACK", "BACK"),
    "drawer-bottom": ("DRAWER BOX BOTTOM", "DRAWER BOTTOM", "BOTTOM"),
    "spacer": ("SLIDE SPACER", "SPACER"),
    "toe-front": ("TOE FRONT", "FRONT"),
    "toe-back": ("TOE BACK", "BACK"),
    "sleeper": ("TOE SLEEPER", "SLEEPER"),
    "filler": ("FILLER",),
    "end-panel": ("END PANEL", "PANEL"),
    "island-back": ("ISLAND BACK", "BACK"),
}
"""The name of each kind, shorter and shorter."""

WHERE: dict[PieceKind, str] = {"filler": "BESIDE", "end-panel": "BESIDE", "island-back": "BEHIND"}
"""How a piece stands to the boxes that it closes; others of a wall lie UNDER them."""
