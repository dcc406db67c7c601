"""What is to be said of a piece of the cut list: how it stands, what is notched out of it, what of
it is there to be scribed.

>>> note_words((PieceNote(kind="beside", names=("B1",)), PieceNote(kind="spare-width",
...                                                                figures=(12.0,))))
'beside B1; 12.0 of its width to scribe to the wall'
"""

from collections.abc import Iterable

from jigs.cutlist.piece import PieceNote
from jigs.ground.lengths import format_mm

BLIND = "its face level with the front edges; screwed from behind to cleats at side, bottom, top"
"""How a blind panel stands and is held: common practice, no source."""


def note_words(notes: Iterable[PieceNote]) -> str:
    """Say all that is to be said of a piece, "" where nothing is."""
    return "; ".join(map(_say, notes))


def _say(note: PieceNote) -> str:
    names, figures = ", ".join(note.names), [format_mm(figure) for figure in note.figures]
    match note.kind:
        case "upper-face":
            return f"upper face {figures[0]} above the sides' bottom end"
        case "nothing-on-it":
            return "nothing lies on it: screw it through the rail"
        case "blind":
            return BLIND
        case "notch":
            sizes = zip(figures[::2], figures[1::2], note.names, strict=True)
            return f"notch {', '.join(f'{wide} x {deep} for {name}' for wide, deep, name in sizes)}"
        case "slide-notches":
            wide, high = figures
            return f"notch both lower corners {wide} wide by {high} high for the slides"
        case "hook-bores":
            return "bored for their hooks, see its sheet"
        case "under-slide":
            return f"under the {note.hand} slide of {names}; bore it with the side's slide holes"
        case "under" | "beside" | "behind":
            return f"{note.kind} {names}"
        case "runs-on":
            return f"{figures[0]} of it runs on under the filler at the {note.hand}"
        case "shim":
            return "set it at the floor's high point first, shim it up elsewhere"
        case "covered":
            return "the fronts cover its front edge"
        case "edge-seen":
            return "as deep as the box; its front edge is seen beside the fronts"
        case "flush":
            return "flush with the faces of the fronts"
        case "spare-width":
            return f"{figures[0]} of its width to scribe to the wall"
        case "spare-depth":
            return f"{figures[0]} of its depth to scribe at the wall"
        case "scribe-foot":
            return f"scribe its lower end to the floor, {figures[0]} where that is highest"
