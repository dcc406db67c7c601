"""The walls: which boxes stand along each, what stands at their ends, how high the room is."""

from collections.abc import Mapping, Sequence

from jigs.asking.boxes import Floor
from jigs.asking.draft import BoxDraft, BoxPlace, DraftLine, DraftTable, StandingThing, WallDraft
from jigs.asking.forms import ChoiceForm, LengthForm, NameForm, TypedLength, given, write_length
from jigs.asking.notation import WallsForm
from jigs.asking.question import Asking, Question, ask, need
from jigs.given.wallspec import END_KINDS, WallSpec
from jigs.ground.believable import Range
from jigs.ground.geometry import HANDS, Hand, other_hand
from jigs.ground.keys import keys_of
from jigs.ground.lengths import Unit
from jigs.reading.jobboxes import ABOVE_FLOOR
from jigs.reading.jobwalls import FILLER, REACHES

PULL_REACH = 35.0
"""How far a usual pull reaches out, mm (common practice, no source); what stands round a corner may
be another."""

Walls = tuple[tuple[DraftTable, ...], Mapping[str, BoxPlace]]
"""The tables of the walls, and where each box stands."""

LIKELY_CEILING = Range(2000, 4000)
"""Where rooms end, mm (common practice, no source)."""
FILLED = ("wall", "casing", "corner")
"""Ends before which a filler stands."""


def ask_walls(unit: Unit, boxes: Sequence[BoxDraft], floor: Floor) -> Asking[Walls]:
    """Ask for the walls; without any, the boxes stand nowhere."""
    walls = yield from ask(
        Question(
            key="walls", form=WallsForm(unit, [box.id for box in boxes]), may_open=True,
            boxes=tuple(boxes), unit=unit,
        )
    )  # fmt: skip
    if not walls:
        return (), {}
    height = yield from _ask_room(unit, boxes)
    ends: dict[tuple[str, Hand], str] = {}
    sections: list[DraftTable] = []
    places: dict[str, BoxPlace] = {}
    by_id = {box.id: box for box in boxes}
    for wall in walls:
        names = [other.name for other in walls if other is not wall]
        lines = [DraftLine("name", wall.name)]
        fillers: dict[Hand, TypedLength | None] = {}
        for hand in HANDS:
            more, fillers[hand] = yield from _ask_end(unit, wall, hand, names, ends)
            lines += more
        length = yield from ask(_of(wall, "length", unit))
        lines.append(_or_open("length", length, "3 m"))
        sections.append(DraftTable(name="wall", many=True, lines=(*lines, *height)))
        things, placed = _place(wall, by_id, fillers["left"], floor, unit)
        sections += things
        places |= placed
    return tuple(sections), places


def _of(wall: WallDraft, key: str, unit: Unit) -> Question[TypedLength]:
    within = keys_of(WallSpec)[key].within
    return Question(
        key=f"wall.{wall.name}.{key}", topic=f"wall.{key}", form=LengthForm(within, unit),
        may_open=True, figures={"wall": wall.name},
    )  # fmt: skip


def _or_open(key: str, answer: TypedLength | None, usual: str) -> DraftLine:
    return DraftLine(
        key, answer.text if answer else usual, open=answer is None, wanted=answer is None
    )


def _ask_room(unit: Unit, boxes: Sequence[BoxDraft]) -> Asking[tuple[DraftLine, ...]]:
    """Ask what is alike along all walls."""
    keys = keys_of(WallSpec)
    lines: list[DraftLine] = []
    counter: float | None = None
    wanted = {"ceiling": "2500 mm"}
    if any(not box.hung for box in boxes):
        wanted |= {"counter": "900 mm", "counter_thickness": "38 mm"}
    for key, usual in wanted.items():
        if key == "counter_thickness" and lines[-1].open:
            continue
        form = LengthForm(
            keys[key].within, unit, below=counter if key == "counter_thickness" else None
        )
        likely = LIKELY_CEILING if key == "ceiling" else None
        answer = yield from ask(Question(key=key, form=form, may_open=True, likely=likely))
        counter = answer.mm if answer else None
        lines.append(_or_open(key, answer, usual))
    return tuple(lines)


def _ask_end(
    unit: Unit, wall: WallDraft, hand: Hand, others: Sequence[str],
    ends: dict[tuple[str, Hand], str],
) -> Asking[tuple[list[DraftLine], TypedLength | None]]:  # fmt: skip
    """Ask what stands at one end of a wall. `ends`: those that are
    settled, each with the wall that it meets, "" for none."""
    begun = f"wall.{wall.name}.{hand}"
    figures = {"wall": wall.name, "hand": hand}
    meets = ends.get((wall.name, hand))
    stands: str | None = "corner" if meets else None
    if not meets:
        stands = yield from ask(
            Question(
                key=begun, topic="wall.end", form=ChoiceForm(END_KINDS), may_open=True,
                figures=figures,
            )
        )  # fmt: skip
    if stands is None:
        return [DraftLine(hand, "wall", open=True, wanted=True, topic="wall.end")], None
    lines = [DraftLine(hand, stands, topic="wall.end")]
    ends[wall.name, hand] = meets or ""
    there = other_hand(hand)
    free = [name for name in others if (name, there) not in ends]
    if stands == "corner" and not meets and len(free) > 1:
        meets = yield from need(
            Question(
                key=f"{begun}_meets", topic="wall.meets", form=NameForm(tuple(free)),
                default="", figures={**figures, "walls": ", ".join(free)},
            )
        )  # fmt: skip
    elif stands == "corner" and not meets and free:
        [meets] = free
    if stands == "corner" and meets:
        ends[meets, there] = wall.name
        lines.append(DraftLine(f"{hand}_meets", meets, topic="wall.meets"))
    elif stands == "corner":
        usual = write_length(PULL_REACH, unit)
        reach = yield from ask(
            Question(
                key=f"{begun}_reach", topic="wall.reach", form=LengthForm(REACHES, unit),
                may_open=True, figures={**figures, "usual": usual},
            )
        )  # fmt: skip
        lines.append(
            DraftLine(
                f"{hand}_reach", reach.text if reach else given(PULL_REACH, unit).text,
                wanted=reach is None, topic="wall.reach" if reach else "usual_reach",
            )
        )  # fmt: skip
    if stands not in FILLED:
        return lines, None
    filler = yield from ask(
        Question(
            key=f"{begun}_filler", topic="wall.filler", form=LengthForm(FILLER, unit),
            may_open=True, figures={**figures, "stands": stands},
        )
    )  # fmt: skip
    key = f"{hand}_filler"
    lines.append(
        DraftLine(
            key, filler.text if filler else "40 mm", filler is None, filler is None, "wall.filler"
        )
    )
    return lines, filler


def _place(
    wall: WallDraft,
    boxes: Mapping[str, BoxDraft],
    filler: TypedLength | None,
    floor: Floor,
    unit: Unit,
) -> tuple[list[DraftTable], dict[str, BoxPlace]]:
    """Stand boxes and appliances along a wall, from the left.

    A box follows the one before it in its row by itself; x is said of one that follows an appliance
    at the very left, that hangs behind a tall box, or of which the person has said it.
    """
    sections: list[DraftTable] = []
    places: dict[str, BoxPlace] = {}
    start = filler.mm if filler else 0.0
    ends = {False: start, True: start}
    followed = {False: start, True: start}
    before, hung = "", False
    for thing in wall.things:
        if isinstance(thing, StandingThing):
            sections.append(_appliance(thing, before, write_length(ends[hung], unit), hung, floor))
            ends[hung] += thing.width.mm
            if before:  # the box behind it follows it by itself
                followed[hung] = ends[hung]
            before = before and thing.id
            continue
        box = boxes[thing]
        hung = box.hung
        if said := wall.at.get(thing):
            ends[hung] = said.mm
        shown = "" if said or ends[hung] == followed[hung] else write_length(ends[hung], unit)
        places[thing] = BoxPlace(wall.name, said.text if said else shown)
        ends[hung] += box.width.mm
        followed[hung] = ends[hung]
        if box.kind == "tall":  # nothing hangs before it
            ends[True] = max(ends[True], ends[False])
        before = thing
    return sections, places


def _appliance(thing: StandingThing, before: str, x: str, hung: bool, floor: Floor) -> DraftTable:
    lines = [
        DraftLine("id", thing.id), DraftLine("width", thing.width.text),
        DraftLine("height", thing.height.text),
        DraftLine("after", before) if before else DraftLine("x", x),
    ]  # fmt: skip
    if hung:
        above = floor.get("wall_") or given(ABOVE_FLOOR["wall"], "mm")
        lines.append(DraftLine("above_floor", above.text))
    return DraftTable(name="wall.appliance", many=True, lines=tuple(lines))
