"""What a person reads at a station: its title, bits, cautions, steps, and the words of a card."""

from collections.abc import Iterable
from collections.abc import Set as AbstractSet

from jigs.bench.station import Bit, Offset, Start, Station, StationCard, Work
from jigs.ground.geometry import OPPOSITE, Axis, Face, FaceEdge, Hand, Hole, Purpose
from jigs.ground.lengths import format_inches, format_mm
from templates.faces.faceview import FaceView
from templates.words.facewords import (
    BACK_LIES,
    BOX_BACK_LIES,
    BOX_FRONT_LIES,
    FRONT_LIES,
    door_hangs,
    drilled_words,
)
from templates.words.holewords import HOLE_WORDS, bare_mm, bore_words

CORNERS = {"top-left": ("TOP LEFT", "BOTTOM RIGHT"), "top-right": ("TOP RIGHT", "BOTTOM LEFT")}
"""The two corners that a card for pulls serves, the lower one half round."""
PATTERN_WORDS = {
    "line": "On a line across, from the free edge.",
    "middle": "On the middle of the front.",
}
"""What tells the stations for pulls from each other."""

MARKED_WORDS = "Marked through their drawer boxes."
PILOTS_WORDS = "Pilots from paper, not marked through their drawer boxes."
"""What tells the stations for fronts on drawer boxes from each other."""

RECORD_WORDS: dict[Work, str] = {
    "sides": "hardware", "drawer-boxes": "slide", "rear-hooks": "slide", "cups": "hinge",
    "pulls": "pull", "fronts-on-boxes": "slide", "false-fronts": "slide", "pulls-through": "pull",
    "by-hand": "hardware",
}  # fmt: skip
"""What hardware is called that a station is for."""

OPEN_BOOK = (
    "Each pair lies like an open book: inside up, tops away from you, bottoms to one stop, FRONT "
    "edges touching. The RIGHT side then lies on your LEFT."
)
TOGETHER = "Each board where it stands in its box, which is together already: its top up."


def station_title(station: Station) -> str:
    """Write a station's name in capitals, an ID in it as on its label: `CUPS RIGHT`, `BY HAND W3-1
    A`."""
    return name_title(station.name, station.work, station.pattern)


def name_title(name: str, work: str, pattern: str) -> str:
    """Write a station's name so, from what the station does and its pattern.

    >>> name_title("by-hand-w3-1-a", "by-hand", "W3-1")
    'BY HAND W3-1 A'
    """
    if work != "by-hand":
        return name.replace("-", " ").upper()
    letter = name[len(f"{work}-{pattern}") :].upper()
    return f"BY HAND {pattern}{letter.replace('-', ' ')}"


def hand_words(station: Station) -> str:
    """Say behind the name of a station for doors what its hand is: the name follows the face that
    is drilled, not how the door hangs; "" at any other."""
    return f"hinge edge on your {station.hand.upper()}" if station.hand else ""


def lying_words(station: Station) -> str:
    """Say how the parts lie at a station, and of doors on which hand they hang."""
    if station.hand is not None:
        return f"{door_hangs(station.hand)} Top away."
    match station.face:
        case "inside":
            if station.work != "sides":
                return "Inside up, top away from you."
            return OPEN_BOOK if station.in_pairs else TOGETHER
        case "front":
            return FRONT_LIES
        case "back":
            return BACK_LIES
        case "box-front":
            return BOX_FRONT_LIES
        case "box-back":
            return BOX_BACK_LIES


def reason_words(station: Station, others: Iterable[Station]) -> str:
    """Say what tells a station from others that do the same on the same hand: its pattern, its
    hardware; "" where there is none."""
    alike = [
        other for other in others
        if other is not station and (other.work, other.hand) == (station.work, station.hand)
    ]  # fmt: skip
    if not alike or station.work == "by-hand":
        return ""
    if station.pattern in CORNERS:
        return corners_words(station)
    if station.pattern in PATTERN_WORDS:
        return PATTERN_WORDS[station.pattern]
    if station.work == "fronts-on-boxes" and any(o.marked != station.marked for o in alike):
        return MARKED_WORDS if station.marked else PILOTS_WORDS
    mine, theirs = (
        dict.fromkeys(name for each in group for card in each.cards for name in card.records)
        for group in ([station], alike)
    )
    if not mine or not theirs or mine.keys() == theirs.keys():
        return ""
    others_own = [name for name in theirs if name not in mine]
    without = f", not {', '.join(others_own)}" if others_own else ""
    return f"For {RECORD_WORDS[station.work]} {', '.join(mine)}{without}."


def corners_words(station: Station) -> str:
    """Say at which corners the cards of a station lie, and whether turned there: a card that is set
    at the lower corner alone is drawn as it lies there."""
    top, low = CORNERS[station.pattern]
    ways: dict[str, set[bool]] = {top: set(), low: set()}
    for setting in (setting for row in station.rows for setting in row.settings):
        edges = {edge.edge for edge in station.card(setting.card).edges}
        ways[top if ("top" in edges) != setting.turned else low].add(setting.turned)
    if not ways[top] or not ways[low]:
        return f"At the {top if ways[top] else low} corner."
    if ways == {top: {False}, low: {True}}:
        return f"At the {top} corner; TURNED at the {low}."
    return f"At the {top} or {low} corner: the card's upright title says which."


def by_hand_words(station: Station, others: Iterable[Station]) -> str:
    """Say at the station for sides which of them have holes by hand, and where; else ""."""
    if station.work != "sides":
        return ""
    return " ".join(
        f"Holes by hand in {', '.join(dict.fromkeys(row.part.id for row in other.rows))}: "
        f"{station_title(other)}."
        for other in others
        if other.work == "by-hand" and other.face == "inside"
    )


def names_kind(station: Station, views: Iterable[FaceView]) -> bool:
    """Tell whether the line of the face names the kind of all of a station's parts."""
    return station.face != "front" and len({drilled_words(view) for view in views}) == 1


def drilled_faces(station: Station, views: Iterable[FaceView]) -> str:
    """Name the faces that are drilled at a station: `BACK OF DOOR, BACK OF DRAWER FRONT`."""
    names = dict.fromkeys(drilled_words(view) for view in views)
    if station.face == "inside" and len(names) > 1:
        boards = [row.part.board for row in station.rows if row.part.board]
        sides = sorted({board.side.upper() for board in boards if not board.partition})
        kinds = [f"{' AND '.join(sides)} SIDES"] if sides else []
        kinds += ["PARTITIONS"] if any(board.partition for board in boards) else []
        names = {f"INSIDE OF {', AND '.join(kinds)}": None}
    return ", ".join(names)


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


def bit_words(bit: Bit, *, brief: bool = False) -> str:
    """Say what a bit bores and its stop; unless `brief`, the least that is left under it too."""
    names = ", ".join(HOLE_WORDS[purpose].name for purpose in bit.purposes)
    if brief:
        deep = "THROUGH" if bit.depth is None else f"{bare_mm(bit.depth)} deep"
        return f"{names} {bare_mm(bit.diameter)} dia, {deep}."
    thickness = (bit.depth or 0.0) + (bit.leaves or 0.0)
    hole = Hole(purpose=bit.purposes[0], face="back", x=0.0, y=0.0, diameter=bit.diameter,
                depth=bit.depth)  # fmt: skip
    least = "" if bit.depth is None else " or more"
    return f"{names}: {bore_words(hole, thickness)}{least}."


def cautions(station: Station) -> tuple[str, ...]:
    """Give the cautions of a station's operations, each once."""
    purposes = [purpose for bit in station.bits for purpose in bit.purposes]
    return tuple(dict.fromkeys(HOLE_WORDS[purpose].caution for purpose in purposes))


LAID: dict[Purpose, str] = {
    "cup": "HINGE", "plate": "PLATE", "slide": "SLIDE", "pull": "PULL"
}  # fmt: skip
"""What is laid on a card's outline, by its holes."""


def card_words(card: StationCard, hand: Hand | None) -> tuple[str, ...]:
    """Give the words of a card besides its holes' own: how it is checked with the hardware.
    `hand`: of the boards that it lies on unturned, where they are of one hand."""
    words: list[str] = []
    if card.outline:
        what = _laid(card)
        if card.one_way and hand is not None:
            words.append(f"LAY {what} HERE, {hand.upper()} boards ONLY.")
        else:
            upright = ", this title upright" if card.one_way else ""
            words.append(f"LAY YOUR {what} HERE{upright}.")
    if card.carry:
        places = ", ".join(format_mm(abs(x)) for x in card.carry)
        words.append(
            f"Further holes on the line, by a square or through the slide: {places} from the edge."
        )
    return tuple(words)


def turned_words(card: StationCard) -> tuple[str, ...]:
    """Give the words of a card that is turned: its outline may lie wrong then."""
    return (f"LAY NO {_laid(card)} HERE.",) if card.outline and card.one_way else ()


def _laid(card: StationCard) -> str:
    return next((LAID[h.purpose] for h in card.holes if h.purpose in LAID), "HARDWARE")


def corner_words(card: StationCard, *, turned: bool) -> str:
    """Say at which corner or end of a face a card lies: `TOP RIGHT`."""
    edges = [OPPOSITE[edge.edge] if turned else edge.edge for edge in card.edges]
    names = [name for name in ("top", "bottom", "left", "right") if name in edges]
    words = " ".join(names).upper()
    return words if len(names) == 2 else words and f"{words} EDGE"


def way_words(card: StationCard, axis: Axis, ways: Iterable[bool]) -> str:
    """Say behind a figure of a card that is set by two edges which way it runs, in words that no
    flap has: a part's ends, edges and sides are named there. `ways`: whether the card lies turned,
    for each way in which it lies; turned, what ran up runs down."""
    if axis == "x":
        return "across"
    low = any(edge.edge == "bottom" for edge in card.edges)
    return "/".join(sorted({"up" if low != turned else "down" for turned in ways}, reverse=True))


FROM_WORDS: dict[Start, str] = {
    "bottom": "up", "top": "from top", "left": "from left", "right": "from right",
    "middle-x": "on the MIDDLE", "middle-y": "on the MIDDLE",
}  # fmt: skip
"""Where a line is struck, behind its figure."""


STRUCK_WORDS: dict[Start, str] = {
    "bottom": "FROM BOTTOM", "top": "FROM TOP", "left": "FROM LEFT", "right": "FROM RIGHT",
    "middle-x": "MIDDLE", "middle-y": "MIDDLE",
}  # fmt: skip
"""The same in a row whose lines are not all struck from one end."""


def setting_figure(place: Offset) -> tuple[str, str]:
    """Say how far from its end a line is struck: mm large, inches small."""
    return format_mm(place.value), f'{format_inches(place.value)}"'
