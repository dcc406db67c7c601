"""A part's own words on its sheets: kind, place, size, and what applies to it."""

from collections.abc import Iterable, Iterator

from jigs.box.boxparts import findings_at, hung_over, hung_under, parts_of_box
from jigs.box.parts import DrawerBox, Front, Layout, Side
from jigs.checks.hardware import OPEN_CODES
from jigs.fittings.hinge import HingeChoice
from jigs.fittings.pull import COUNTERBORE_DIAMETER
from jigs.given.cautions import SPRUNG
from jigs.given.edges import fold_error
from jigs.given.rolloutspec import Rollout
from jigs.ground.lengths import format_inches, format_mm
from templates.sheets.panel import PartWords
from templates.words.gapwords import gaps_here, reveals_of
from templates.words.leafletwords import leaflet_facts
from templates.words.payload import (
    drawer_box_payload,
    front_payload,
    rollout_payload,
    side_payload,
)
from templates.words.sentence import Sentence, closed
from templates.words.wallwords import wall_title
from templates.words.wording import FRONT_WORDS, side_words


def kind_of_front(front: Front) -> str:
    """Name a front by kind and hand: `DOOR, HINGES LEFT`."""
    name = FRONT_WORDS[front.kind].upper()
    if front.kind == "door" and front.hinged:
        return f"{name}, HINGES {front.hinged.upper()}"
    return name


def place_of(wall: str, box: str) -> str:
    """Name a part's place: `NORTH WALL, BOX B3`."""
    if not wall:
        return f"BOX {box}"
    return f"{wall_title(wall)}, BOX {box}"


def neighbour_of(layout: Layout, front: Front) -> str:
    """Say which front of the box it hangs under or over: `under B3-1`; empty if alone."""
    above, below = hung_under(layout, front), hung_over(layout, front)
    if above is not None:
        return f"under {above.id}"
    return f"over {below.id}" if below is not None else ""


def words_of_front(layout: Layout, front: Front) -> PartWords:
    """Give the words of a front's sheets."""
    place = place_of(front.wall, front.box)
    neighbour = neighbour_of(layout, front)
    common = _plain((*_blind_facts(layout, front), *leaflet_facts(layout, front)))
    reveals = reveals_of((front,), layout)
    gaps = () if reveals else (_gaps(front),)
    return PartWords(
        part=front.id,
        kind=kind_of_front(front),
        place=f"{place}, {neighbour}" if neighbour else place,
        reveals=reveals,
        job=layout.job.name,
        code=front.code,
        measure=_measure(front.width, front.height, front.make.thickness),
        payload=front_payload(layout, front).text,
        facts={
            "back": (*common, *gaps, *_back_facts(front)),
            "front": (*common, *_face_facts(front)),
        },
        notes=(*_given_words(front), *notes_for(layout, front.id, front.assumed)),
    )


def words_of_side(layout: Layout, side: Side) -> PartWords:
    """Give the words of a box side's sheets."""
    return PartWords(
        part=side.board,
        kind=side_words(side).upper(),
        place=place_of(side.wall, side.box),
        reveals=reveals_of(parts_of_box(layout, side.box).fronts, layout),
        job=layout.job.name,
        code=side.code,
        measure=_measure(side.height, side.depth, side.thickness),
        payload=side_payload(layout, side).text,
        facts={"inside": _side_facts(layout, side)},
        notes=(*_incomplete(side), *notes_for(layout, side.board, side.assumed)),
    )


def words_of_drawer_box(layout: Layout, drawer: DrawerBox, front: Front) -> PartWords:
    """Give the words of a drawer box's sheet."""
    return PartWords(
        part=drawer.id,
        kind="DRAWER BOX",
        place=f"{place_of(front.wall, front.box)}, behind {front.id}",
        reveals=reveals_of((front,), layout),
        job=layout.job.name,
        code=drawer.code,
        measure=_box_measure(drawer),
        payload=drawer_box_payload(layout, drawer, front).text,
        facts={"box-front": _drawer_box_facts(drawer), "box-back": _drawer_box_facts(drawer)},
        notes=notes_for(layout, drawer.id, drawer.assumed),
    )


def words_of_rollout(layout: Layout, rollout: Rollout) -> PartWords:
    """Give the words of the sheet for a rollout's back."""
    behind = f", behind {', '.join(rollout.behind)}" if rollout.behind else ""
    return PartWords(
        part=rollout.id,
        kind="ROLLOUT, DRAWER BOX",
        place=f"{place_of(rollout.wall, rollout.box)}{behind}",
        reveals=reveals_of(parts_of_box(layout, rollout.box).fronts, layout),
        job=layout.job.name,
        code=rollout.code,
        measure=_box_measure(rollout),
        payload=rollout_payload(rollout).text,
        facts={"box-back": _drawer_box_facts(rollout)},
        notes=notes_for(layout, rollout.id, ()),
    )


def _box_measure(drawer: DrawerBox | Rollout) -> str:
    return (
        f"box {format_mm(drawer.width)} wide x {format_mm(drawer.height)} high x "
        f"{format_mm(drawer.length)} long ({format_inches(drawer.width)} x "
        f"{format_inches(drawer.height)} x {format_inches(drawer.length)} in)."
    )


def _plain(texts: Iterable[str]) -> tuple[Sentence, ...]:
    return tuple(Sentence(text) for text in texts)


def _gaps(front: Front) -> Sentence:
    return Sentence(gaps_here(front), own=True)


def _drawer_box_facts(drawer: DrawerBox | Rollout) -> tuple[Sentence, ...]:
    if drawer.notch is None:
        return ()
    wide, high = drawer.notch
    return (
        Sentence(
            f"Before it runs: bottom panel {format_mm(drawer.recess)} up from the underside; back "
            f"notched {format_mm(wide)} x {format_mm(high)} at both lower corners (the slide's "
            "leaflet rules)."
        ),
    )


def _given_words(front: Front) -> tuple[Sentence, ...]:
    """Give what the person noted about a front, and how it is to be finished."""
    given = (("Note", front.make.note, False), ("Finish", front.make.finish, True))
    return tuple(
        Sentence(f"{name}: {text.rstrip('.')}.", own=own, free=True)
        for name, text, own in given
        if text
    )


def _incomplete(side: Side) -> tuple[Sentence, ...]:
    """Say which fronts' holes a side still lacks: it must not pass for finished."""
    if side.trial_of:
        trial = "INCOMPLETE: for a trial on scrap; holes for "
        return (Sentence(trial, side.trial_of, " alone.", bold=True),)
    if not side.missing:
        return ()
    return (Sentence("INCOMPLETE: holes for ", side.missing, " still to come.", bold=True),)


def _measure(width: float, height: float, thickness: float) -> str:
    return (
        f"part {format_mm(width)} x {format_mm(height)} x {format_mm(thickness)} "
        f"({format_inches(width)} x {format_inches(height)} x {format_inches(thickness)} in)."
    )


def _back_facts(front: Front) -> tuple[Sentence, ...]:
    facts = [*_edge_facts(front), *_plain(_frame_facts(front))]
    if front.make.frame is not None and any(fitting.kind == "hinge" for fitting in front.fittings):
        facts.append(Sentence("The hinge's flange needs 65 mm of flat along the hinge edge."))
    if front.hinge is not None:
        facts.append(Sentence(_tab_and_plate(front.hinge)))
    if front.kind == "door" and front.hinged:
        own = front.gaps.left if front.hinged == "left" else front.gaps.right
        least = "the leaflet says how little it may be"
        if front.least_reveal is not None and not front.least_reveal.open:
            least = f"the least by the leaflet {format_mm(front.least_reveal.width)}"
        facts.append(Sentence(f"Hinge-edge reveal {format_mm(own)}; {least}.", own=True))
    if front.wide_below:
        facts.append(Sentence("WIDE GAP BELOW THE BOX IS THE BOTTOM."))
    if front.screws.through_box or front.screws.counterbore:
        facts.append(Sentence(_pull_screws(front)))
    if front.kind == "lift":
        facts.append(Sentence(SPRUNG))
    if front.screws.fixing is not None:
        heads = "pan or washer heads"
        if front.screws.head is not None:
            heads = f"pan heads, {format_mm(front.screws.head)} across at most"
        long = format_mm(front.screws.fixing)
        facts.append(Sentence(f"Front screws {long} long at most, {heads}."))
    return tuple(facts)


def _blind_facts(layout: Layout, front: Front) -> tuple[str, ...]:
    """Say how a front laps the blind panel beside it, whose edge is nobody's outside edge."""
    box = next(box for box in layout.boxes if box.id == front.box)
    if box.blind is None:
        return ()
    if box.blind.hand == "left":
        lap = box.blind.reach - front.place.x
    else:
        lap = front.place.x + front.width - (box.width - box.blind.reach)
    hand = box.blind.hand.upper()
    how = f"laps it by {format_mm(lap)}" if lap > 0.0 else f"keeps {format_mm(-lap)} from it"
    return (f"BLIND PANEL on the {hand}: this front {how}.",)


def _frame_facts(front: Front) -> tuple[str, ...]:
    frame = front.make.frame
    if frame is None:
        return ()
    panel = f"glass {format_mm(frame.panel)}" if frame.glass else f"panel {format_mm(frame.panel)}"
    words = (
        f"Five-piece: stiles {format_mm(frame.stile)}, rails {format_mm(frame.rail)} (dashed), "
        f"groove {format_mm(frame.groove)}, {panel}."
    )
    return (f"{words} NO HOLE IN GLASS.",) if frame.glass else (words,)


def _edge_facts(front: Front) -> tuple[Sentence, ...]:
    facts: list[Sentence] = []
    if front.ordered is not None:
        width, height = front.ordered
        measured = (
            f"MEASURED: drawn to the part in hand; {format_mm(width)} x {format_mm(height)} was "
            f"ordered. Its holes keep their places from the {_kept_edges(front)}."
        )
        facts.append(Sentence(measured, own=True))
    if front.make.edge_radius > 0.0:
        rounded = (
            f"EDGES ROUNDED, R {format_mm(front.make.edge_radius)}: a fold would lie "
            f"{format_mm(fold_error(front.make.edge_radius))} out. Cut, and butt to the block."
        )
        facts.append(Sentence(rounded))
    if front.make.bevel is not None:
        other = "BOTTOM" if front.make.bevel == "top" else "TOP"
        bevelled = (
            f"FINGER BEVEL at the {front.make.bevel.upper()} edge: no reference. All stands "
            f"from the {other} edge."
        )
        facts.append(Sentence(bevelled))
    return tuple(facts)


def _kept_edges(front: Front) -> str:
    """Name what the holes of a front in hand are counted from, whatever its size."""
    if front.kind == "door" and front.hinged:
        return "bottom edge and the hinge edge"
    return "bottom edge and from its own middle"


def _face_facts(front: Front) -> tuple[Sentence, ...]:
    facts = [*_edge_facts(front), *_plain(_frame_facts(front)), _gaps(front)]
    if any(fitting.kind == "pull" for fitting in front.fittings):
        if front.screws.through_box or front.screws.counterbore:
            facts.append(Sentence(_pull_screws(front)))
        if front.screws.pull is not None:
            long = format_mm(front.screws.pull)
            facts.append(Sentence(f"Pull screws M4 or 8-32, {long} long."))
    return tuple(facts)


def _tab_and_plate(choice: HingeChoice) -> str:
    """Say the tab bored and the plate to mount, or the one that is wanted where none is listed."""
    tab, plate = format_mm(choice.tab), format_mm(choice.plate)
    if not choice.plate_stated:
        return (
            f"Tab {tab}. Plates: none is listed; this wants {plate} high. Buy the nearest that "
            "the leaflet has."
        )
    return (
        f"Tab {tab}. Mount plates {plate} high (the side screw takes "
        f"{format_mm(abs(choice.error))})."
    )


def _pull_screws(front: Front) -> str:
    if front.screws.through_box:
        return (
            "PULL SCREWS: through front and drawer box. Drill on through the box AFTER the "
            "front is fixed."
        )
    return (
        f"PULL SCREWS: through the front only. Counterbore the back {COUNTERBORE_DIAMETER:g} dia, "
        f"{front.screws.counterbore:g} deep, BEFORE fixing."
    )


def _side_facts(layout: Layout, side: Side) -> tuple[Sentence, ...]:
    plates, facts = _plates_of(layout, side), list[str]()
    fronts = parts_of_box(layout, side.box).fronts
    lifts = {front.id for front in fronts if front.kind == "lift"}
    if any(fitting.part in lifts for fitting in side.fittings):
        facts.append(SPRUNG)
    inset = [front.make.thickness for front in fronts if front.place.overlay == "inset"]
    if inset:
        facts.append(
            f"INSET fronts: all lines stand {format_mm(max(inset))} further back than the usual 37."
        )
    if side.assembled:
        below = "PANEL BELOW" if side.partition else "BOTTOM PANEL"
        facts.append(f"BOX ASSEMBLED: 0 is the upper face of the {below}.")
    if side.legs > 0.0 and not side.partition:
        zero = "" if side.assembled else "0 is the side's end on the FLOOR. "
        facts.append(
            f"{zero}The side runs to the floor: the bottom panel's underside stands "
            f"{format_mm(side.legs)}, its upper face {format_mm(side.bottom)} above the side's end."
        )
    if side.band_state == "later" and side.band > 0.0:
        facts.append(
            f"BAND STILL TO COME, {format_mm(side.band)}: figures from the RAW front edge; the "
            f"side is {format_mm(side.depth - side.band)} deep until then."
        )
    elif side.band > 0.0 and side.band_state != "on":
        facts.append("From the FINISHED front edge; before band: raw-edge figures.")
    else:
        facts.append("From the finished front edge.")
    return (*plates, *_plain(facts))


def _plates_of(layout: Layout, side: Side) -> Iterator[Sentence]:
    """Say which fronts' plates of a side are how high."""
    fronts = parts_of_box(layout, side.box).fronts
    plates: dict[tuple[float, bool], dict[str, None]] = {}
    for fitting in side.fittings:
        if fitting.kind == "plate" and fitting.part:
            choice = next((f.hinge for f in fronts if f.id == fitting.part), None)
            if choice is not None:
                plates.setdefault((choice.plate, choice.plate_stated), {})[fitting.part] = None
    for (height, stated), names in sorted(plates.items(), key=lambda each: each[0]):
        about = "" if stated else " wanted (none is listed)"
        yield Sentence(f"Plates {format_mm(height)} high{about} for ", tuple(names), ".")


def notes_for(layout: Layout, part: str, assumed: tuple[str, ...]) -> tuple[Sentence, ...]:
    """Give the findings that are printed on a part's sheets; open numbers have a line of their
    own."""
    found = [problem for problem in findings_at(layout, part) if problem.code not in OPEN_CODES]
    # The facts alone: remedies stand in the check, where there is room for them. Four drawers on
    # one slide say the same of it.
    notes = list(dict.fromkeys(closed(problem.text) for problem in found))
    if assumed:
        notes.append(f"ASSUMED: {'; '.join(assumed)}.")
    return tuple(Sentence(note, free=True) for note in notes)
