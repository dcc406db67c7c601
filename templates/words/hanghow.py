"""How boxes are set and fronts are hung, in the order of the work, and how doors are adjusted.

Common practice of the trade, no source; what a record or a leaflet says goes before it.
"""

from collections.abc import Collection, Iterator, Sequence

from jigs.ground.lengths import format_mm
from jigs.room.hanging import Furnished, Shimmed
from jigs.room.reckoning import ADJUSTS
from templates.words.cautions import APPLIANCES, FASTEN, NO_CODE, SPRUNG, TWO_PEOPLE
from templates.words.markingwords import KITCHEN

BOXES = "The boxes"
FRONTS = "Drawers, doors, fronts, pulls"
ADJUST = "The three screws of a hinge"
EACH = "What each box gets"
CARE_TITLE = "Take care"
LEAST_WOOD = 3.0
"""What a joining screw leaves of the second side; mm (common practice, no source)."""


def box_steps(side: float, *, hung: bool, toe: bool, tall: bool, scribed: bool) -> Iterator[str]:
    """Give the steps of setting boxes, whose sides are `side` mm thick."""
    yield (
        "Find the floor's high point, carry its level round, strike every line of the wall's page. "
        "Set a rule on two of them: their distance must be that of their figures."
    )
    yield (
        "PROBE before you drill: studs, pipes, cables. Mark the studs where the marks stay seen. "
        "Where no stud is, solid blocking goes in first; a plug in board alone holds no box."
    )
    if hung:
        yield (
            "Screw a straight strip into the studs, its upper edge on the line under the wall "
            "boxes. Two people: lift, stand the box on it, clamp it to its neighbour, screw "
            "through its nailers into studs. The strip comes off when all hang."
        )
    if toe:
        yield (
            "Toe platforms: down on the high point first, then shims UNDER them till they lie on "
            "their line, along and across; a shim at each end of a sleeper that hangs free. Probe "
            "the floor too before you screw into it. Shims belong at the toe, never at the fronts."
        )
    yield (
        "First box: level along, level across, plumb at its front edges. Where the wall is hollow, "
        "shim behind the nailer at the stud before the screw draws: the screw must not twist the "
        "box. Measure its front corner to corner both ways: they must stay alike."
    )
    yield (
        "Each next box: clamp it face to face to the one that stands, two clamps; front edges and "
        "lower edges flush by fingertip; THEN join them near top and bottom, clear of holes "
        f"for plates, slides, pins. Screws at most {format_mm(2 * side - LEAST_WOOD)} long: two "
        f"sides are {format_mm(2 * side)}. Look after each box: still on its line?"
    )
    if tall:
        yield "A tall box: lifted by two, and fixed to the structure before anything is put in it."
    if scribed:
        yield (
            "Fillers and end panels last, still without paint: hold one in its place, plumb, run a "
            "pencil along the wall with a block of its spare width, cut to the line, try. Painted, "
            "it is fixed from inside the box."
        )


def front_steps(
    *, drawers: bool, doors: bool, fronts: bool, lifts: bool, pulls: bool
) -> Iterator[str]:
    """Give the steps of hanging fronts, of what there is."""
    if drawers:
        yield (
            "Slides on their holes, both of a pair at one height and equally far behind the front "
            "edge; where none are bored, both on a spacer cut to their height over the bottom "
            "panel (heights.pdf). Each drawer box in, and run out and in, before its front is on."
        )
    if doors:
        yield (
            "Doors: highest hinge first, then the others; a second hand holds the door's weight. "
            "All of a wall on before any is adjusted."
        )
    if lifts:
        yield f"Lifts: {SPRUNG}"
    if fronts:
        yield (
            "Fronts of drawers from below: the lowest first, each next one on shims of the gap "
            f"under it (in brackets below, mm). {KITCHEN}"
        )
    if pulls:
        yield (
            "Pulls last, when every gap is even. A screw is as long as all that it passes and what "
            "the pull's thread takes, no longer. Bumpers where fronts meet their boxes."
        )


ADJUST_HOW = (
    "Before you turn: is the box still square, is every hinge home on its plate? Half a turn at a "
    "time, then close the door and look. Which screw is which, and how far each goes (usually "
    f"{ADJUSTS:g} mm each way, from memory), the hinge's leaflet says; what they cannot reach "
    "is in the wrong place: no screw makes up for it."
)

SCREWS: tuple[tuple[str, str, str], ...] = (
    (
        "1 height", "up, down",
        "all hinges of a door alike. Bring the lower edges of a row to one line. No screw or cam "
        "for it? Slacken the plate's screws, shift, tighten.",
    ),
    (
        "2 side", "left, right",
        "all alike: the door moves. One alone: the door leans. Gap wider above? Turn the top one. "
        "Begin at the end of the row that cannot give, and go on from gap to gap.",
    ),
    (
        "3 depth", "in, out",
        "all alike: flush with its neighbour, and a bumper's thickness off the box. One corner "
        "proud? The hinge at that end. It rubs on the hinge side? Out a little.",
    ),
)  # fmt: skip
"""The screws of a hinge in the order in which they are turned: which, what it moves, and how."""
AGAIN = "Then 2 once more: depth has changed the gaps a little. Open and close each door by itself."


def care_lines() -> tuple[str, ...]:
    """Give the cautions of this work."""
    return TWO_PEOPLE, FASTEN, APPLIANCES, NO_CODE


def fronts_words(columns: Sequence[Sequence[Shimmed]]) -> str:
    """Name fronts from below with the shims between: `B2-4 (3.2) B2-3`."""
    return "; ".join(" ".join(_shim(front) for front in column) for column in columns)


def _shim(front: Shimmed) -> str:
    return front.id if front.gap is None else f"({format_mm(front.gap)}) {front.id}"


def held_words(boxes: Collection[Furnished]) -> Iterator[str]:
    """Name what is held back, and so is not hung yet."""
    if held := [name for each in boxes for name in each.held]:
        yield f"HOLD, not hung yet: {', '.join(held)}."
