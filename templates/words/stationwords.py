"""What a person reads at a station: its title, bits, cautions, steps, and the words of a card."""

from collections.abc import Iterable, Sequence
from collections.abc import Set as AbstractSet
from itertools import pairwise

from jigs.bench.station import OPPOSITE, Bit, Place, Station, StationCard, Work
from jigs.ground.geometry import Face, FaceEdge, Hole
from jigs.ground.lengths import count_tenths, format_inches, format_mm
from templates.faces.faceview import FaceView
from templates.words.facewords import drilled_words, seen_words
from templates.words.holewords import HOLE_WORDS, bare_mm, bore_words

WORK_WORDS: dict[Work, str] = {
    "sides": "slides, plates and pins in the box sides",
    "drawer-boxes": "clearance holes in the fronts of drawer boxes",
    "rear-hooks": "holes for the slides' hooks in the backs of drawer boxes",
    "cups": "hinge cups and their fixings",
    "pulls": "pulls",
    "fronts-on-boxes": "where each drawer box stands on its front",
    "false-fronts": "pilots of false fronts",
    "pulls-through": "pulls through front and drawer box",
    "by-hand": "holes as the leaflet has them",
}
"""What is done at a station."""

FIRST = "Write ID, TOP and FRONT on the face you drill (its label is underneath)."
LIFT = "Lift the paper: a mark that is not on its pencil line is punched anew."
OPEN_BOOK = (
    "Each pair lies like an open book: inside up, tops away from you, bottoms to one stop, FRONT "
    "edges touching. The RIGHT side then lies on your LEFT."
)
JIG = (
    "A card serves eight settings; then take the next one. Or glue it on hardboard and bore 2 mm "
    "guide holes: a straight strip screwed along the black takes the fold's place, and one serves "
    "for all."
)


def station_title(station: Station) -> str:
    """Write a station's name in capitals: `CUPS RIGHT`."""
    return station.name.replace("-", " ").upper()


def intro(station: Station, view: FaceView) -> tuple[str, ...]:
    """Say which face is drilled at a station and how it lies, once."""
    work = WORK_WORDS[station.work]
    if station.work == "sides":
        return (f"{work[0].upper()}{work[1:]}.", OPEN_BOOK)
    how = seen_words(view)
    if station.face == "inside":
        how = "Inside up, tops away from you; a card lies on the front edge."
    return (f"{work[0].upper()}{work[1:]}.", how)


def drilled_line(station: Station, views: Iterable[FaceView]) -> str:
    """Say which face is drilled: `DRILL THIS FACE: BACK OF DOOR`."""
    names = dict.fromkeys(drilled_words(view) for view in views)
    if station.face == "inside" and len(names) > 2:
        names = {"INSIDE OF LEFT AND RIGHT SIDES, AND PARTITIONS": None}
    return f"DRILL THIS FACE: {', '.join(names)}"


SEVERAL: dict[Face, str] = {
    "inside": "INSIDE OF A SIDE",
    "front": "FRONT FACE",
    "back": "BACK OF A FRONT",
    "box-front": "FRONT OF DRAWER BOX",
    "box-back": "BACK OF DRAWER BOX",
}
"""What a card's face is called where its parts are of several kinds."""


def several_words(face: Face, front_edges: AbstractSet[FaceEdge | None]) -> str:
    """Name the face of a card that serves several kinds of parts; of boards, by how they lie."""
    edges = sorted(edge for edge in front_edges if edge is not None)
    if face == "inside" and len(edges) == 1:
        return f"FRONT EDGE ON YOUR {edges[0].upper()}"
    return SEVERAL[face]


def bit_words(bit: Bit) -> str:
    """Say what a bit bores, its stop, and the least that is left under it."""
    names = ", ".join(HOLE_WORDS[purpose].name for purpose in bit.purposes)
    thickness = (bit.depth or 0.0) + (bit.leaves or 0.0)
    hole = Hole(purpose=bit.purposes[0], face="back", x=0.0, y=0.0, diameter=bit.diameter,
                depth=bit.depth)  # fmt: skip
    least = "" if bit.depth is None else " or more"
    return f"{names}: {bore_words(hole, thickness)}{least}."


def cautions(station: Station) -> tuple[str, ...]:
    """Give the cautions of a station's operations, each once."""
    purposes = [purpose for bit in station.bits for purpose in bit.purposes]
    return tuple(dict.fromkeys(HOLE_WORDS[purpose].caution for purpose in purposes))


def card_words(station: Station, card: StationCard) -> tuple[str, ...]:
    """Give the words of a card: what it bores, and how it is checked with the hardware."""
    words: list[str] = []
    for bit in station.bits:
        if any((hole.diameter, hole.depth) == (bit.diameter, bit.depth) for hole in card.holes):
            deep = "THROUGH" if bit.depth is None else f"{bare_mm(bit.depth)} deep, BLIND"
            words.append(f"{bare_mm(bit.diameter)} dia, {deep}.")
    if card.outline:
        words.append("LAY YOUR HARDWARE HERE: it must match.")
    if card.carry:
        places = ", ".join(format_mm(abs(x)) for x in card.carry)
        words.append(
            f"Further holes on the line, by a square or through the slide: {places} from the edge."
        )
    if card.stands is not None:
        words.append("No holes here: the box's own are marked through it.")
    return tuple(words)


def corner_words(card: StationCard, *, turned: bool) -> str:
    """Say at which corner or end of a face a card lies: `TOP RIGHT`."""
    edges = [OPPOSITE[edge.edge] if turned else edge.edge for edge in card.edges]
    names = [name for name in ("top", "bottom", "left", "right") if name in edges]
    words = " ".join(names).upper()
    return words if len(names) == 2 else words and f"{words} EDGE"


def setting_figure(place: Place) -> tuple[str, str, str]:
    """Say where a line is struck: mm large, inches small, and from where."""
    if place.start in ("middle-x", "middle-y"):
        return "MIDDLE", "", ""
    side = {"bottom": "up", "top": "down from the top", "left": "from the left",
            "right": "from the right"}  # fmt: skip
    return format_mm(place.value), f'{format_inches(place.value)}"', side[place.start]


def closing_words(places: Iterable[float], length: float, said: Sequence[str] = ()) -> str:
    """Write distances that add up as printed: the last takes the rounding. `said`: what stands
    behind each.

    >>> closing_words([97.75, 513.75], 613.0)
    '97.8 + 416.0 + 99.2 = 613.0'
    """
    ends = [0, *(count_tenths(place) for place in places), count_tenths(length)]
    terms = [f"{(b - a) / 10:.1f}" for a, b in pairwise(ends)]
    if said:
        terms = [f"{term}{words}" for term, words in zip(terms, said, strict=True)]
    return f"{' + '.join(terms)} = {ends[-1] / 10:.1f}"


def steps(station: Station) -> tuple[str, ...]:
    """Give the steps of a station, four to six."""
    match station.work:
        case "sides":
            return (
                f"{FIRST} Lay each pair like an open book.",
                "Strike every line of a pair across BOTH sides at once, from the bottom ends up; "
                "check the sum; tick it. Lines of a door and of its side come from one lath.",
                "Part the two. Set the card that its row names on its edge and the line, the "
                "line in both windows. Where the row says TURNED, turn it half round: the other "
                "title reads right.",
                f"Punch lightly, then firmly. {LIFT}",
                "Mark all, then bore all with one stop, tried on scrap. Tick, and write DRILLED "
                "on the labels.",
            )
        case "fronts-on-boxes":
            return (
                f"{FIRST} Bore the drawer box first.",
                "Set both cards that its row names, one at each lower corner; the sum must close "
                "on the front you measured.",
                "Stand the drawer box on the drawn corners, BOTH of them, and clamp it.",
                "Mark through its holes with a 5 mm brad-point bit turned by hand, never an awl.",
                "Take the box off; bore the pilots with the stop. Screw it on. "
                "Try it on the first drawer.",
            )
        case "cups":
            return (
                FIRST,
                "Hold the first door at its box: the cups must face the plates.",
                "Strike the lines, carry them over the edge; check the sum; tick. Lines of a door "
                "and of its side come from one lath: punch to punch is the same on both.",
                "Set the card on the edge, the line in both windows. Lay your hinge on it: cup "
                "and both screws must match.",
                f"Punch lightly, then firmly. {LIFT}",
                "Stop set from the bit's rim, tried on scrap. Clamp; bore; tick.",
            )
        case _:
            turned = any(each.turned for row in station.rows for each in row.settings)
            turn = " A row that says TURNED wants it half round: the title reads right."
            return (
                FIRST,
                "Strike the lines that a row names; check the sum; tick.",
                f"Set the card on its edges and lines.{turn if turned else ''} "
                "Lay your hardware on it, where it is drawn.",
                f"Punch lightly, then firmly. {LIFT}",
                "Clamp; bore to the stop, tried on scrap; tick.",
            )
