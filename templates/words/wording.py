"""The words on sheets and cards: what a part is called, and what is to be done to it."""

from jigs.box.parts import Side
from jigs.given.job import FrontKind
from jigs.ground.geometry import Fitting, Hole, Polygon
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


def ordinal_place(index: int, count: int) -> str:
    """Name a hinge by its place, counted from the bottom: BOTTOM, TOP, or 2 OF 4."""
    if count == 1:
        return ""
    if index == 1:
        return "BOTTOM"
    if index == count:
        return "TOP"
    return f"{index} OF {count}"


def fitting_heading(view: FaceView, fitting: Fitting, *, short: bool = False) -> str:
    """Name a card by its fitting and place; `short`: where the drilled face is named below it."""
    xs = [hole.x for hole in fitting.holes]
    centre = (min(xs) + max(xs)) / 2
    if abs(centre - view.width / 2) < 1.0:
        end = "MIDDLE"
    else:
        end = "LEFT END" if centre < view.width / 2 else "RIGHT END"
    place = ordinal_place(fitting.index, fitting.count)
    middle = 1 < fitting.index < fitting.count
    match fitting.kind:
        case "hinge":
            return f"HINGE {place} from the bottom" if middle else f"{place} HINGE".strip()
        case "plate":
            which = f"PLATE {place}" if middle else f"{place} PLATE".strip()
            return f"{which} for {fitting.part}"
        case "slide":
            return f"SLIDE of {fitting.part}"
        case "shelf":
            row = "FRONT" if _from_front(view, centre) < view.width / 2 else "REAR"
            lowest = format_mm(min(hole.y for hole in fitting.holes))
            return f"SHELF PINS, {row} ROW, {lowest} UP"
        case "pull":
            knob = not any(len(other.holes) > 1 for other in view.fittings if other.kind == "pull")
            name = "KNOB" if knob else "PULL"
            return (
                f"{'LEFT' if fitting.index == 1 else 'RIGHT'} {name}"
                if (fitting.count == 2)
                else name
            )
        case "front-fixing" | "clearance" | "hook":
            full = not short and view.face in ("back", "box-back")
            return f"{end} AS YOU LOOK AT THE BACK" if full else end
        case "manual":
            serves = f" for {fitting.part}" if view.face == "inside" and fitting.part else ""
            number = "" if fitting.count == 1 else f" {fitting.index}"
            return f"HOLES BY HAND{number}{serves}"


def _number(value: float) -> str:
    return format_mm(value).removesuffix(".0")


def bore_words(hole: Hole, thickness: float) -> str:
    """Say one operation in full: `35 dia, 13 deep, BLIND, leaves 6.1`."""
    if hole.depth is None:
        return f"{_number(hole.diameter)} dia, THROUGH"
    return (
        f"{_number(hole.diameter)} dia, {_number(hole.depth)} deep, BLIND, "
        f"leaves {_number(thickness - hole.depth)}"
    )


def operations(holes: tuple[Hole, ...], thickness: float) -> list[str]:
    """Say each kind of hole once, with how many there are."""
    counts: dict[tuple[str, float, float | None], int] = {}
    first: dict[tuple[str, float, float | None], Hole] = {}
    for hole in holes:
        key = (hole.purpose, hole.diameter, hole.depth)
        counts[key] = counts.get(key, 0) + 1
        first.setdefault(key, hole)
    names = {
        "cup": "Cup",
        "cup-fixing": "Fixing",
        "front-fixing": "Pilot",
        "pull": "Pull",
        "plate": "Plate",
        "slide": "Slide",
        "shelf": "Shelf pin",
        "clearance": "Clearance",
        "hook": "Hook",
        "manual": "By hand",
    }
    return [
        f"{names[key[0]]}{f', {counts[key]} holes' if counts[key] > 1 else ''}: "
        f"{bore_words(first[key], thickness)}."
        for key in counts
    ]


def card_lines(view: FaceView, fitting: Fitting, up: Reference) -> tuple[str, ...]:
    """Give the words in a card's heading: its operations, and the check with the hardware."""
    lines = operations(fitting.holes, view.thickness)
    whole = len(fitting.outline) > 0
    match fitting.kind:
        case "hinge" if whole:
            lines.append("LAY YOUR HINGE HERE: cup and both screws must match.")
        case "plate" if whole:
            lines.append("LAY YOUR PLATE HERE: both holes must match.")
        case "pull" if len(fitting.holes) == 2:
            a, b = fitting.holes
            apart = ((a.x - b.x) ** 2 + (a.y - b.y) ** 2) ** 0.5
            lines.append(
                f"LAY YOUR PULL HERE: {format_mm(apart)} ({format_inches(apart)} in) from hole to "
                "hole. Drill from THIS face, scrap clamped behind."
            )
        case "pull":
            lines.append("Drill from THIS face, scrap clamped behind.")
        case "shelf":
            lines.append("All four rows of a column level: mark left and right together.")
        case "slide":
            lines.append("LAY YOUR SLIDE HERE, its front end to the front edge.")
            if fitting.carry:
                places = ", ".join(_number(_from_front(view, x)) for x in fitting.carry)
                lines.append(
                    f"{places} from the front edge: carry this line back with a square, or mark "
                    "through the slide itself."
                )
            elif len(fitting.holes) == 1:
                lines.append("The others: mark through the slide itself, on this line.")
        case "hook":
            side, *notch = (_extent(polygon) for polygon in fitting.outline)
            words = f"Dashed: the end of the drawer side, {format_mm(side[0])} thick"
            for wide, high in notch:
                words += f", and the NOTCH for the slide, {format_mm(wide)} wide x "
                words += f"{format_mm(high)} high"
            lines.append(f"{words}. Hold the slide to it: its hook must meet the hole.")
        case "front-fixing" if view.drawer_outline:
            ends = drawer_ends(view)
            stands = f"{ends[0]} mm from each end"
            if ends[0] != ends[1]:
                stands = f"{ends[0]} mm in from the LEFT end as you look, {ends[1]} from the RIGHT"
            rise = format_mm(min(y for _, y in view.drawer_outline))
            lines.append(
                f"DRAWER BOX STANDS HERE: {stands}, {rise} mm up. Stand the real box on it first."
            )
        case _:
            pass
    if fitting.note:
        lines.append(fitting.note)
    return tuple(lines)


def drawer_ends(view: FaceView) -> tuple[str, str]:
    """Write how far in from the left and from the right end, as seen, the drawer box stands; mm.

    They differ where the opening is not in the middle of the front.
    """
    xs = [x for x, _ in view.drawer_outline]
    return format_mm(min(xs)), format_mm(view.width - max(xs))


def _extent(polygon: Polygon) -> tuple[float, float]:
    xs, ys = [x for x, _ in polygon], [y for _, y in polygon]
    return max(xs) - min(xs), max(ys) - min(ys)


def _from_front(view: FaceView, x: float) -> float:
    raw = view.band if view.raw else 0.0
    return (view.width - x if view.front_edge == "right" else x) - raw


def index_words(view: FaceView, reference: Reference) -> str:
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
