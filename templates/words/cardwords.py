"""What stands on the card of each kind of fitting: its heading, and the check with the hardware.

A kind that needs nothing of its own gives its name to `numbered`.
"""

from collections.abc import Callable, Iterator

from jigs.ground.geometry import Fitting, Polygon
from jigs.ground.lengths import format_inches, format_mm
from templates.faces.faceview import FaceView
from templates.words.holewords import bare_mm
from templates.words.markingwords import CORNER

SECOND_CHECK = ("{} COMES HERE, a second check", "{} HERE")
"""What names a part's edge that is drawn on a card and does not set it, in full and shorter."""
BEVELLED = "{}: bevelled, no reference"
"""What names an edge that nothing is set on."""
DRAWER_BOX = "DRAWER BOX"
"""What names the outline of the drawer box on the back of its front."""

HeadingWords = Callable[[FaceView, Fitting], str]
LineWords = Callable[[FaceView, Fitting], Iterator[str]]


def ordinal_place(index: int, count: int) -> str:
    """Name a hinge by its place, counted from the bottom: BOTTOM, TOP, or 2 OF 4."""
    if count == 1:
        return ""
    if index == 1:
        return "BOTTOM"
    if index == count:
        return "TOP"
    return f"{index} OF {count}"


def numbered(name: str) -> HeadingWords:
    """Give the heading of a kind that is named and numbered alone: `HOLES BY HAND 2 for B1-1`."""

    def heading(view: FaceView, fitting: Fitting) -> str:
        serves = f" for {fitting.part}" if view.face == "inside" and fitting.part else ""
        number = "" if fitting.count == 1 else f" {fitting.index}"
        return f"{name}{number}{serves}"

    return heading


def hinge_heading(view: FaceView, fitting: Fitting) -> str:
    place = ordinal_place(fitting.index, fitting.count)
    middle = 1 < fitting.index < fitting.count
    return f"HINGE {place} from the bottom" if middle else f"{place} HINGE".strip()


def plate_heading(view: FaceView, fitting: Fitting) -> str:
    place = ordinal_place(fitting.index, fitting.count)
    middle = 1 < fitting.index < fitting.count
    which = f"PLATE {place}" if middle else f"{place} PLATE".strip()
    return f"{which} for {fitting.part}"


def slide_heading(view: FaceView, fitting: Fitting) -> str:
    return f"SLIDE of {fitting.part}"


def shelf_heading(view: FaceView, fitting: Fitting) -> str:
    row = "FRONT" if _from_front(view, _centre(fitting)) < view.width / 2 else "REAR"
    lowest = format_mm(min(hole.y for hole in fitting.holes))
    return f"SHELF PINS, {row} ROW, {lowest} UP"


def pull_heading(view: FaceView, fitting: Fitting) -> str:
    knob = not any(len(other.holes) > 1 for other in view.fittings if other.kind == "pull")
    name = "KNOB" if knob else "PULL"
    if fitting.count == 2:
        return f"{'LEFT' if fitting.index == 1 else 'RIGHT'} {name}"
    return name


def end_heading(view: FaceView, fitting: Fitting) -> str:
    centre = _centre(fitting)
    if abs(centre - view.width / 2) < 1.0:
        return "MIDDLE"
    return "LEFT END" if centre < view.width / 2 else "RIGHT END"


# --- lines of a card -----------------------------------------------------------------------------


def no_lines(view: FaceView, fitting: Fitting) -> Iterator[str]:
    """Say nothing after the operations."""
    yield from ()


def hinge_lines(view: FaceView, fitting: Fitting) -> Iterator[str]:
    if fitting.outline:
        yield "LAY YOUR HINGE HERE: it must match."


def plate_lines(view: FaceView, fitting: Fitting) -> Iterator[str]:
    if fitting.outline:
        yield "LAY YOUR PLATE HERE."


def pull_lines(view: FaceView, fitting: Fitting) -> Iterator[str]:
    if len(fitting.holes) != 2:
        return
    a, b = fitting.holes
    apart = ((a.x - b.x) ** 2 + (a.y - b.y) ** 2) ** 0.5
    yield f"LAY YOUR PULL HERE: {format_mm(apart)} ({format_inches(apart)} in)."


def slide_lines(view: FaceView, fitting: Fitting) -> Iterator[str]:
    yield "LAY YOUR SLIDE HERE."
    if fitting.carry:
        places = ", ".join(bare_mm(_from_front(view, x)) for x in fitting.carry)
        yield f"{places}: carry the line back, or mark through the slide."
    elif len(fitting.holes) == 1:
        yield "The others: mark through the slide, on this line."


def hook_lines(view: FaceView, fitting: Fitting) -> Iterator[str]:
    side, *notch = (_extent(polygon) for polygon in fitting.outline)
    words = f"Dashed: drawer side, {format_mm(side[0])}"
    for wide, high in notch:
        words += f"; NOTCH {format_mm(wide)} x {format_mm(high)} high"
    yield f"{words}. HOLD YOUR SLIDE HERE: its hook must meet the hole."


def fixing_lines(view: FaceView, fitting: Fitting) -> Iterator[str]:
    if fitting.stands is not None:
        yield CORNER.format("LEFT" if fitting.index == 1 else "RIGHT")


def drawer_ends(view: FaceView) -> tuple[str, str]:
    """Write how far in from the left and from the right end, as seen, the drawer box stands; mm.

    They differ where the opening is not in the middle of the front.
    """
    xs = [x for x, _ in view.drawer_outline]
    return format_mm(min(xs)), format_mm(view.width - max(xs))


def _centre(fitting: Fitting) -> float:
    xs = [x for x, _ in fitting.places]
    return (min(xs) + max(xs)) / 2


def _extent(polygon: Polygon) -> tuple[float, float]:
    xs, ys = [x for x, _ in polygon], [y for _, y in polygon]
    return max(xs) - min(xs), max(ys) - min(ys)


def _from_front(view: FaceView, x: float) -> float:
    raw = view.state.band if view.state.raw else 0.0
    return (view.width - x if view.front_edge == "right" else x) - raw
