"""What a person reads of marking through: where a drawer box stands on its front, and how the front
is marked through its holes."""

from jigs.bench.benchpart import Marks
from jigs.fittings.fixing import CLEARANCE_DIAMETER, pilot
from jigs.ground.geometry import Hole
from jigs.ground.lengths import format_mm
from templates.words.holewords import HOLE_WORDS, bare_mm, bore_words
from templates.words.sumwords import closing_words

BIT = bare_mm(CLEARANCE_DIAMETER)
BOX_FIRST = "Bore the drawer box first; measure one that its maker bored."
STAND = (
    "Stand the bored drawer box on BOTH drawn corners: one alone lets it tilt (narrow front: the "
    "cards overlap). The sum must close on the front you measured. Clamp."
)
BOX_STANDS = "Stand the real drawer box where the page says: the holes must lie over it."
FALSE_HELD = "Hold a false front at its box: its holes must lie over the rail or the blocks."
FALSE_SCREWS = (
    f"Screws come from behind, through these: the tool sets no hole there. Bore them {BIT} dia "
    "where the front's holes come, or as the leaflet has them."
)
"""Common practice of the trade, no source."""
MARK = (
    f"Mark the front through the box's holes with a {BIT} mm brad-point bit turned by hand, or a "
    f"{BIT} mm transfer punch, never an awl. Rows 25 to 32 up: an extended bit."
)
SCREW = "Screw the box on from inside. Try it on the first drawer."
CORNER = "DRAWER BOX: its {} LOWER CORNER stands here. Mark through its holes."
KITCHEN = (
    "Or in the kitchen: drawer on its slides, double-sided tape on its front, shims of the gap "
    "under the front; press on, draw out, clamp, screw from inside. The figures are the check."
)
ADJUSTERS = (
    "Adjusters instead of screws: the marks are their centres; set their own stop, see what it "
    "leaves."
)


def pilot_words(thickness: float) -> str:
    """Say what is bored where a front of this thickness is marked; mm."""
    diameter, depth = pilot(thickness)
    hole = Hole(purpose="front-fixing", face="back", x=0.0, y=0.0, diameter=diameter, depth=depth)
    return f"{HOLE_WORDS['front-fixing'].name} {bore_words(hole, thickness)}."


def marks_words(marks: Marks) -> str:
    """Say where a drawer box stands on its front, as seen from the back, and that it closes."""
    left, right = format_mm(marks.in_left), format_mm(marks.in_right)
    whole = closing_words((marks.in_left, marks.in_left + marks.width),
                          marks.in_left + marks.width + marks.in_right,
                          (" LEFT", "", " RIGHT"), steps=True)  # fmt: skip
    gap = ""
    if left != right:
        gap = f", WIDE GAP ON YOUR {'LEFT' if marks.in_left > marks.in_right else 'RIGHT'}"
    words = f"{whole}{gap}; {format_mm(marks.up)} up."
    if marks.clear_of_pull is None:
        return words
    return f"{words} Measure its maker's holes: {marks.clear_of_pull:.0f} from the pull's screws."
