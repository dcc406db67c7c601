"""How hung fronts are adjusted, in words: which screw, which way, how far; what no screw reaches;
what a symptom says of a wrong number, and how its hole is plugged and bored anew.

Common practice of the trade, no source.
"""

from collections.abc import Iterable, Iterator, Sequence

from jigs.box.parts import Front
from jigs.ground.geometry import Axis
from jigs.ground.grouped import grouped
from jigs.ground.lengths import format_mm
from jigs.room.depth import StandsOut, Unreached
from jigs.room.edgelines import Parted
from jigs.room.even import WORTH
from jigs.room.otherplate import OtherPlate
from jigs.room.reckoning import ADJUSTS, SHIFTS
from jigs.room.screws import Adjustment, Beyond, Screw, Turn, Why
from templates.page.border import DRILL_CARE
from templates.words.budgetwords import gap_name
from templates.words.hanghow import AGAIN

TITLE = "Which screw to turn"
HOW: tuple[str, ...] = (
    "Seen from the room, in mm that the front moves there; how much that is in turns, and which "
    "screw is which, the hinge's leaflet says. Half a turn at a time, then close and look.",
    "Is every box still square, every hinge home on its plate? Then in this order: 1 height, all "
    "of the wall; 2 side, the whole row from its left end; 3 depth. Hinges count from the TOP. "
    "Drawer fronts: slacken their screws, shift, tighten. A second hand holds a door whose plate "
    "is slackened.",
    f"Reckoned as if each screw stood in its middle, {ADJUSTS:g} mm from either end (from memory), "
    f"and a screwed front had {SHIFTS:g} in its holes.",
)
STEPS: dict[Screw, str] = {"height": "1 Height", "side": "2 Side", "depth": "3 Depth"}
DEPTH_HOW = (
    "Gaps do not tell it: lay a straight edge over two fronts. Proud at one corner: the depth "
    "screw of the hinge at that end; proud all along: all of them alike. To have it reckoned, "
    "write how far each stands out at top and bottom into its row of axis depth (behind: -). "
    + AGAIN
)
DEPTH_LEVEL = "Nothing to turn: what was measured stands level."
ONE_END = (
    "ONE END MEASURED: whether these lean nobody can say; they are taken as wide at the other end, "
    "or as far out. Measure that too before a screw is turned for it: "
)
"""Before the gaps and fronts."""
UNREACHED: dict[Unreached, str] = {
    "no-screw": (
        "has no depth screw: its slides, or what else carries it, stand further out or in than its "
        "neighbours', or the box is out of square. Measure both sides from the front edge"
    ),
    "too-far": (
        f"is beyond its depth screws, {ADJUSTS:g} mm either way (from memory): is every hinge home "
        "on its plate, every cup in its bore? Then measure the plates from the front edge"
    ),
    "free-edge": (
        "was measured at its free edge, where no screw moves it: its bumper, a warped door "
        "(straight edge on its back), something behind it"
    ),
}
NOTHING = "Nothing to turn: every gap measured is as near to its plan as screws bring it."
UNSAID = "No gap above or below was measured: lower edges to one line by eye."
GAPS = "The gaps measured, mm: at top and bottom, or left and right"
PARTED = "Edges that are no line"
PARTED_HOW = (
    "With every gap at its plan these still part from the front beside them, and the eye sees a "
    "step sooner than a gap. By height screws, after all else: the lower one up, the higher one "
    "down, half the step each, both to one lath; the gaps above and below follow. Over 1 mm these "
    "would show it: the fronts were ordered so, or their boxes stand so. A step that is meant "
    "stays."
)
BEYOND = "What no screw reaches"
SYMPTOMS = "Where a screw does not reach: what you see, and the number to look at first"
PLUG = "A hole in the wrong place"

_WAYS: dict[Screw, tuple[str, str]] = {
    "height": ("DOWN", "UP"), "side": ("LEFT", "RIGHT"), "depth": ("IN", "OUT"),
}  # fmt: skip


def is_worth(turn: Turn) -> bool:
    """Tell whether a screw is to be turned at all."""
    return abs(turn.move) > WORTH


def screw_words(turn: Turn) -> str:
    """Say which screws of a front are turned."""
    if not turn.front.swings:
        where = {None: "slackened", 1: "its upper edge", 2: "its lower edge"}[turn.at]
        return f"its screws, {where}"
    which = "height screw or plate" if turn.screw == "height" else f"{turn.screw} screw"
    return f"{which}, {'all hinges' if turn.at is None else f'hinge {turn.at}'}"


def way_words(turn: Turn) -> str:
    """Say which way a front moves."""
    return _WAYS[turn.screw][turn.move > 0]


def lap_words(turn: Turn) -> str:
    """Say what a side screw does to the overlay at the hinge edge: a leaflet's arrow means it."""
    if turn.overlay is None:
        return ""
    return f"{'more' if turn.overlay > 0 else 'less'} overlay"


def one_end_words(plan: Adjustment) -> str:
    """Name what was measured at one end alone; "" for nothing."""
    names = [gap_name(taped.budget.gap) for taped in plan.gaps if not taped.both]
    names += [f"{each.front.id} depth" for each in plan.depths if not each.both]
    return f"{ONE_END}{', '.join(names)}." if names else ""


def depth_words(depths: Iterable[StandsOut]) -> Iterator[str]:
    """Say which fronts no depth screw brings level, and where to look."""
    for each in depths:
        if each.why is not None:
            out = ends_words(each.ends, both=each.both)
            yield f"{each.front.id} ({out}) {UNREACHED[each.why]}."


def ends_words(ends: tuple[float, float], *, both: bool = True) -> str:
    """Write a gap at its two ends, or once.

    >>> ends_words((2.0, 3.1)), ends_words((2.0, 2.0))
    ('2.0, 3.1', '2.0')
    """
    said = [format_mm(end) for end in ends]
    return ", ".join(said) if both and said[0] != said[1] else said[0]


def edge_words(parted: Parted) -> str:
    """Name an edge that is no line: `B1-1 | B2-1, upper edges`."""
    edges = "upper" if parted.edge == "top" else "lower"
    return f"{parted.lower.id} | {parted.higher.id}, {edges} edges"


def beyond_words(found: Sequence[Beyond]) -> Iterator[tuple[str, bool]]:
    """Say what is wrong where no screw helps, each cause once with its gaps; whether a line leads
    those after it."""
    causes = grouped((_kind(each), each) for each in found)
    for (why, axis, narrow), own in causes.items():
        yield _cause(why, axis, narrow=narrow), True
        yield ", ".join(_off(each) for each in own), False
        fronts = {front.id: front for each in own for front in each.fronts}
        plates = {name: plate for each in own for name, plate in each.plates.items()}
        for front in fronts.values():
            yield f"{front.id}: {_place(front, axis, plates.get(front.id))}", False


def _kind(beyond: Beyond) -> tuple[Why, Axis, bool]:
    """Give what decides the words of a cause: that of a right angle says neither axis nor width."""
    if beyond.why == "square":
        return beyond.why, "x", False
    return beyond.why, beyond.taped.budget.gap.axis, beyond.taped.off < 0


def _cause(why: Why, axis: Axis, *, narrow: bool) -> str:
    match why:
        case "size":
            return (
                f"The fronts are together too {_large(axis, narrow)}, or boxes, panels, fillers "
                f"too {'close' if narrow else 'far apart'}: measure the fronts, then the boxes. "
                "Shared out evenly it may stay. Off their plan, mm:"
            )
        case "square":
            return (
                "Not square: a front (measure corner to corner), or the box, wall, filler beside "
                "it. The box first: its shims at the toe, its screws in the wall. From end to end:"
            )
        case "fixed":
            return f"Too {'narrow' if narrow else 'wide'}, and nothing there has a screw. mm:"
        case "place":
            return "The screws are at their end. Still off their plan, mm:"


def _off(beyond: Beyond) -> str:
    """Name a gap, and by how much it is off: `B1-2 | B2-2 -0.7`."""
    taped, name = beyond.taped, gap_name(beyond.taped.budget.gap)
    if beyond.why == "square":
        return f"{name} ({' to '.join(map(format_mm, taped.then))})"
    return f"{name} {'-' if taped.off < 0 else '+'}{format_mm(abs(taped.off))}"


def _large(axis: Axis, narrow: bool) -> str:
    if axis == "x":
        return "wide" if narrow else "narrow"
    return "high" if narrow else "low"


def _plate(plate: OtherPlate | None) -> str:
    """Say which plate brings a door over, and what its side screws then do."""
    if plate is None:
        return "no plate brings it over"
    way = "higher, less overlay" if plate.wanted > plate.now else "lower, more overlay"
    one = f"a plate of {format_mm(plate.wanted)} in place of {format_mm(plate.now)} ({way})"
    if plate.at_hand is not None:
        rest = f", its side screws the other {format_mm(plate.left)}" if plate.left > WORTH else ""
        return f"{one} brings it over; of those at hand {format_mm(plate.at_hand)} does{rest}"
    if plate.stated:
        return f"{one} brings it over; none at hand comes so near that its side screws do the rest"
    return f"{one}, as reckoned, brings it over; measure the one it hangs on"


def _place(front: Front, axis: Axis, plate: OtherPlate | None) -> str:
    """Say which part is in the wrong place if a front's screws are at their end."""
    if front.swings and axis == "x":
        return (
            f"{_plate(plate)}. Else its cups are bored at another distance from the edge, or its "
            f"box stands off. {_anew(front)}"
        )
    if front.swings:
        return f"its plates do not stand level with its cups: measure both. {_anew(front)}"
    if axis == "x":
        return (
            "its drawer box stands off sideways in the slides, or its screws do in the front: "
            f"slot the box's holes, or plug and bore anew. {_anew(front)}"
        )
    return (
        "its slides stand at another height than planned, or its screws do in the front. "
        f"{_anew(front)}"
    )


def _anew(front: Front) -> str:
    return f"Sheet to bore anew: sheets --only {front.id}, its side: --only {front.box}."


SYMPTOM_ROWS: tuple[tuple[str, str], ...] = (
    (
        "sits 2 mm low, or high",
        "height of the plates on the side, or of the cups up the door: "
        "measure both from the bottom end; bore the wrong one anew",
    ),
    (
        "overlay too much, or too little",
        "plate's height; the cups' distance from the edge: "
        "another plate first: a higher one gives less overlay, and no hole is needed",
    ),
    (
        "leans, its box is square",
        "one cup or plate is off from its edge: "
        "measure each from the edge; bore the one that differs anew",
    ),
    (
        "proud at the top, or bottom",
        "that plate's distance from the front edge; a door that is warped: "
        "straight edge on the door; then the plates' line",
    ),
    (
        "proud all along, springs open",
        "all plates' distance from the front edge; cups too shallow; no bumper reckoned: "
        "is every cup home? then the plates' line",
    ),
    (
        "rubs at the hinges as it opens",
        "the hinge's least reveal, thickness of the front: depth out a little; else a wider gap",
    ),
    (
        "drawer front low, or high",
        "height of the slides, or of the box over them: "
        "measure from the bottom panel; shift the front in its holes",
    ),
    (
        "drawer front leans",
        "one slide is higher than its mate: measure both at the front edge and behind",
    ),
    (
        "drawer front proud at one end",
        "one slide stands further out; the drawer box is out of square: "
        "measure from the front edge; then the box corner to corner",
    ),
)
"""What is seen; the number that is likely wrong, and what to do first."""


def plug_steps(job: str) -> Sequence[str]:
    """Say how a hole is plugged and bored anew."""
    return (
        "1 Find the wrong number and write the right one in the job: until then the sheet puts "
        "the hole where it was.",
        "2 Glue in a plug of the bore's own diameter: a dowel for a hole, a disc of the same board "
        "for a cup. Flush, and let it dry through; a new hole that cuts into the old one breaks "
        "out where the glue is soft.",
        f"3 Bore anew with its sheet, printed again: jigsheet sheets {job} --only ID. On scrap "
        "first, if the number was of a record.",
        "4 A front that is bored through stays marked: fill, sand, paint, or a pull that covers "
        f"it. {DRILL_CARE}",
    )
