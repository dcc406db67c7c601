"""What a person on the ladder reads of one wall: its lines, the order of its boxes, the sums along
it, what closes it, and what nobody stated.

>>> strike_words("toe", ("B1", "B2"))
'toe platforms under B1, B2'
"""

from collections.abc import Iterable, Iterator, Sequence

from jigs.cutlist.piece import Piece
from jigs.given.walls import TOUCHING
from jigs.given.wallspec import WallSpec
from jigs.ground.geometry import SLACK
from jigs.ground.grouped import grouped
from jigs.ground.lengths import Unit, format_length, format_mm
from jigs.room.elevation import Elevation
from jigs.room.hanging import Begin, BoxInTurn, Hanging
from jigs.room.wallmeasures import LineFor, Nailed, RowAlong, Stretch, Strike, room_above
from templates.words.sumwords import closing_words

LEVEL = "0: level with the floor's HIGH point"
LINES = "Lines to strike, level, up from the floor's high point"
ORDER = "In which order"
SUMS = "Along the wall, mm"
TITLE = "lines and order"
SCALE = "SCALE 1:{}, seen from the room. Measure nothing off the paper: the figures hold. {}"
CLOSES = "What stands under it and closes it"
SCREWED = "Where it is screwed"
NOT_SAID = "NOT STATED: {}. Measure it before you strike a line."
NOTHING = "Nothing to set: no box, only an appliance's place. No file is written."
SIGNS = "+ or -: a little more or less."

_LINES: dict[LineFor, tuple[str, str]] = {
    "toe": ("toe platforms under", "Shims go below the toe platforms, till their tops are on it."),
    "base-top": (
        "top of",
        "Of base boxes on one line none is higher, none lower: the counter lies on them.",
    ),
    "hung-bottom": (
        "bottom of",
        "What hangs stands meanwhile on a strip, its upper edge on the line, screwed into studs.",
    ),
    "tall-top": ("top of tall", "A tall box has both upper corners on its line."),
}
"""What each line is, before the boxes' IDs, and what it means for the hand."""

_STANDS = {
    "filler": "filler", "panel": "end panel", "hidden": "behind the other run", "open": "open",
}  # fmt: skip


def strike_words(kind: LineFor, boxes: Iterable[str]) -> str:
    """Say what a line is struck for."""
    return f"{_LINES[kind][0]} {', '.join(boxes)}"


def meaning_words(strikes: Iterable[Strike]) -> str:
    """Say what the lines of a wall mean for the hand, each kind once."""
    kinds = dict.fromkeys(kind for strike in strikes for kind, _ in strike.serves)
    return " ".join(_LINES[kind][1] for kind in kinds)


def floor_line(elevation: Elevation, unit: Unit) -> str:
    """Say where the level line lies."""
    walls = elevation.joined
    along = f" on the walls {', '.join(walls[:-1])} and {walls[-1]}" if len(walls) > 1 else ""
    how = (
        f"Find the floor's HIGH point where the boxes will stand{along}, with a long level or a "
        f"laser; carry its level round {'them' if along else 'the wall'}. Every height here is up "
        "from there."
    )
    zero = elevation.zero
    if zero <= SLACK:
        return f"{how} The job has no floor_high here: its own heights are taken from that point."
    lower = format_length(zero, unit)
    how = f"{how} The job counts from a line {lower} lower: taken off here."
    if zero - elevation.floor_high <= SLACK:
        return how
    if elevation.floor_high <= SLACK:
        return f"{how} On this wall nobody said how high the floor comes (floor_high)."
    return (
        f"{how} On this wall the floor comes up to "
        f"{format_length(zero - elevation.floor_high, unit)} below it."
    )


def begin_words(begin: Begin) -> str:
    """Say where the order begins, and why."""
    side = f"the {begin.hand} end" if begin.hand else ""
    match begin.at:
        case "corner":
            return (
                f"From the inside corner at {side}: nothing can give way there later. Set the "
                "corner boxes of both walls before you go on along either."
            )
        case "tall":
            several = len(begin.boxes) > 1
            names = ", ".join(begin.boxes)
            whose = "their sides" if several else "its side"
            return f"From {names} outwards: all else runs against {whose}."
        case "end":
            return f"From {side}, which cannot move: what is left over goes to the other."
        case "left":
            return "From the left end: no corner, no tall box, no wall at an end is stated."


def unplaced_words() -> str:
    """Say that an order wants walls."""
    return (
        "Where these boxes stand is not known, so no order is said and nothing adds up: give them "
        "a wall, and x where one stands apart."
    )


def setting_words(setting: BoxInTurn) -> str:
    """Say what is done with a box in its turn, shortly."""
    said = ["two people"] if setting.heavy else []
    if setting.number == 1:
        said.append("plumb, level: all others follow it")
    elif setting.beside:
        said.append(f"clamp to {', '.join(setting.beside)}")
    else:
        said.append("stands apart: by its figures")
    if setting.seen.box.kind == "tall":
        said.append("fix before you load it")
    return "; ".join(said)


def turn_words(order: Sequence[BoxInTurn]) -> str:
    """Say why the rounds of the order follow each other."""
    turns = {setting.turn for setting in order}
    if "hung" in turns and turns - {"hung"}:
        return "What hangs before the base boxes: you stand at the wall, and nothing is in the way."
    return ""


def from_words(hanging: Hanging, unit: Unit) -> str:
    """Say what the figures along the wall count from."""
    figures = "mm (in)" if unit == "mm" else "in (mm)"
    side, shown, corner = hanging.measured_from, hanging.elevation, hanging.corner
    if corner is None:
        if (shown.left if side == "left" else shown.right) == "corner":
            return (
                f"From, to: {figures} from the {side} corner's line: where the front edges of the "
                "other wall's base boxes come, once there are any."
            )
        return f"From, to: {figures} along the wall from its {side} end, edge to edge."
    if abs(corner.beyond) <= SLACK:
        if corner.base <= SLACK:
            return (
                f"From, to: {figures} from the room's wall at the {side}, behind the other wall's "
                "boxes."
            )
        return (
            f"From, to: {figures} from the {side} corner's line, where the front edges of the "
            f"other wall's boxes come: {_off_wall(corner.base, unit)}, {MORE}."
        )
    base = (
        "where the front edges of the other wall's base boxes come"
        if corner.base > SLACK
        else "the room's wall itself, behind the other wall's boxes"
    )
    hung = (
        "where those of its wall boxes come"
        if corner.hung > SLACK
        else "the room's wall itself, since nothing of the other wall hangs there"
    )
    return (
        f"From, to: {figures}. Strike both lines first: the BASE line {base}, THEIR OWN {hung}; "
        f"{MORE}."
    )


MORE = "more by any gap left behind those boxes"


def _off_wall(off: float, unit: Unit) -> str:
    return f"{format_length(off, unit)} off the room's wall" if off > SLACK else "the room's wall"


def line_words(hanging: Hanging, unit: Unit, *, hung: bool) -> str:
    """Say over rows of the order which line they count from, at a corner where wall boxes have a
    line of their own; "" where all count from one."""
    corner, side = hanging.corner, hanging.measured_from
    if corner is None or abs(corner.beyond) <= SLACK:
        return ""
    name, off = ("Wall boxes: from THEIR OWN", corner.hung) if hung else (
        "Base and tall boxes: from the BASE", corner.base,
    )  # fmt: skip
    return f"{name} line at the {side}, {_off_wall(off, unit)}"


def space_words(hanging: Hanging, space: Stretch, unit: Unit) -> str:
    """Say what is left open for an appliance."""
    start, end = hanging.span_of(space.start, space.end)
    wide = format_length(space.end - space.start, unit)
    return f"Keep open for {space.id}: {wide}, from {format_mm(start)} to {format_mm(end)} mm."


def sum_words(row: RowAlong) -> str:
    """Write the widths of a row so that they add up as printed."""
    places = [each.end for each in row.stretches[:-1]]
    start = row.stretches[0].start
    said = [f" {each.id or _STANDS[each.stands]}" for each in row.stretches]
    name = "Hanging" if row.hangs else "On the floor"
    ends = [place - start for place in places]
    return f"{name}: {closing_words(ends, row.stretches[-1].end - start, said)}."


NO_SUM = "Two stand in one place: no sum. Run 'jigsheet check'."


def spare_words(hanging: Hanging) -> str:
    """Say what the floor's row leaves of the wall."""
    elevation = hanging.elevation
    row = next((each for each in hanging.rows if not each.hangs), None)
    length = elevation.spec.length if elevation.spec else None
    if row is None or length is None:
        return ""
    if not row.known:
        return (
            f"The wall is {format_mm(length)}: TOO SHORT. Settle that before anything is set: run "
            "'jigsheet check'."
        )
    closed = elevation.right in ("wall", "casing", "corner")
    if row.spare <= SLACK:
        return "Nothing to spare: measure the wall at the floor, the counter and the top first."
    spare = format_mm(row.spare)
    if hanging.measured_from == "right":
        return (
            f"{spare} to spare: set from the right, it falls to the LEFT end. Settle what takes it "
            "before anything is set."
        )
    if closed:
        return (
            f"{spare} to spare before the right end, which the figures do not reach: settle what "
            "takes it before anything is set."
        )
    return f"{spare} stay free at the right end."


def filler_words(piece: Piece) -> str:
    """Say how a filler or an end panel is closed to the wall."""
    spare = format_mm(piece.spare)
    if piece.kind == "end-panel":
        return f"{piece.id}: {spare} too deep; scribe its rear edge to the wall."
    place = format_mm(piece.width - piece.spare)
    at = f"{piece.id}, {piece.hand} of {', '.join(piece.beside)}: place {place}"
    if not piece.spare:
        return f"{at}, nothing to scribe: it holds the corner open."
    return (
        f"{at}, cut {format_mm(piece.width)}: scribe it when the boxes stand, before its paint, at "
        f"most {spare} off its wall edge."
    )


def platform_words(pieces: Iterable[Piece], unit: Unit) -> Iterator[str]:
    """Say how high toe platforms are, those alike together, and where the shims go."""
    for high, alike in grouped((round(piece.width, 4), piece) for piece in pieces).items():
        under = "; ".join(", ".join(piece.beside) for piece in alike)
        yield (
            f"Toe platforms {format_length(high, unit)} high, under {under}: no shim where the "
            "floor of this wall is highest, elsewhere below them as much as it falls."
        )


def legs_words(boxes: Iterable[str]) -> str:
    """Say where the shims of boxes go whose sides run to the floor."""
    return (
        f"{', '.join(boxes)}: sides run to the floor: no shim where it is highest on this wall, "
        "elsewhere under both ends of each side."
    )


def nailed_words(nailed: Nailed) -> str:
    """Say at which heights a box has wood behind its back."""
    bands = " and ".join(f"{format_mm(low)} to {format_mm(high)}" for low, high in nailed.bands)
    return f"{', '.join(nailed.boxes)}: {bands}"


SCREW_HOW = (
    "PROBE for studs, pipes and cables along these heights BEFORE YOU DRILL. Nailers stand there "
    "at the boxes' backs: screw through them into studs or solid blocking, never into board alone. "
    "Millimetres up from the high point:"
)


def not_said(elevation: Elevation) -> Iterator[str]:
    """Name what the job does not state of a wall, with the key that would."""
    spec = elevation.spec
    if spec is None:
        yield "ceiling, counter, floor, ends and length of the wall (no [[wall]])"
        return
    yield from (words for words, known in _said(spec) if not known)


def _said(spec: WallSpec) -> Iterator[tuple[str, bool]]:
    yield "ceiling", spec.ceiling is not None
    yield "counter", spec.counter is not None
    yield "counter's thickness", spec.counter is None or spec.counter_thickness is not None
    yield "length of the wall", spec.length is not None
    yield "how far the floor falls (floor_high)", spec.floor_high > SLACK
    yield "what stands at the left end", spec.left.stands is not None
    yield "what stands at the right end", spec.right.stands is not None


def room_words(elevation: Elevation, unit: Unit) -> Iterator[str]:
    """Say where counter and ceiling are, up from the floor's high point, as far as stated."""
    spec, high = elevation.spec, elevation.zero
    if spec is None:
        return
    if spec.counter is not None:
        under = spec.underside
        lies = f", its underside {format_length(under - high, unit)}" if under is not None else ""
        yield f"Counter: top {format_length(spec.counter - high, unit)} up{lies}."
    room = room_above(elevation)
    if spec.ceiling is not None and room is not None:
        up = format_length(spec.ceiling - high, unit)
        if room < -TOUCHING:
            yield f"Ceiling {up} up at its lowest: the highest box does NOT fit below it."
        else:
            yield (
                f"Ceiling {up} up at its lowest: {format_length(max(room, 0.0), unit)} over the "
                "highest box."
            )
