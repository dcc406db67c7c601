"""What holds for a front beside its holes: how it hangs, what is mounted and screwed, how its edges
and its frame are made, what the person noted.
"""

from collections.abc import Iterator

from jigs.box.parts import Front, Layout
from jigs.fittings.hinge import HingeChoice
from jigs.fittings.pull import COUNTERBORE_DIAMETER
from jigs.given.edges import fold_error
from jigs.ground.lengths import format_mm
from templates.words.cautions import SPRUNG
from templates.words.gapwords import gaps_here, has_job_reveals
from templates.words.hingenames import hinge_name
from templates.words.leafletwords import leaflet_facts
from templates.words.sentence import Sentence


def back_facts(layout: Layout, front: Front) -> tuple[Sentence, ...]:
    """Give what holds for the work on a front's back."""
    return (*_of_both(layout, front), *_behind(layout, front))


def face_facts(layout: Layout, front: Front) -> tuple[Sentence, ...]:
    """Give what holds for the work on a front's face."""
    return (*_of_both(layout, front), *_before(front))


def given_facts(front: Front) -> tuple[Sentence, ...]:
    """Give what the person noted about a front, and how it is to be finished."""
    finish = front.make.finish
    return (*noted_facts(front), *([_given("Finish", finish)] if finish else []))


def noted_facts(front: Front) -> tuple[Sentence, ...]:
    """Give what the person noted about a front, in the job or in the list of what came."""
    return (_given("Note", front.make.note),) if front.make.note else ()


def _given(name: str, text: str) -> Sentence:
    return Sentence(f"{name}: {text.rstrip('.')}.")


def _of_both(layout: Layout, front: Front) -> Iterator[Sentence]:
    for text in (*_blind(layout, front), *leaflet_facts(layout, front)):
        yield Sentence(text)
    yield from _edges(front)
    yield from frame_facts(front)


def _behind(layout: Layout, front: Front) -> Iterator[Sentence]:
    yield from hanging_facts(layout, front)
    yield from hinge_facts(layout, front)
    if front.wide_below:
        yield Sentence("WIDE GAP BELOW THE BOX.")
    if front.screws.through_box or front.screws.counterbore:
        yield Sentence(_pull_screws(front))
    if front.kind == "lift":
        yield Sentence(SPRUNG)
    if front.screws.fixing is not None:
        heads = "pan or washer heads"
        if front.screws.head is not None:
            heads = f"pan heads, {format_mm(front.screws.head)} across at most"
        long = format_mm(front.screws.fixing)
        yield Sentence(f"Front screws {long} at most, {heads}.")


def hanging_facts(layout: Layout, front: Front) -> Iterator[Sentence]:
    """Say how a front hangs: its gaps where they are not those of the job, the least by the
    leaflet."""
    if not has_job_reveals(front, layout):
        blind = layout.box_of[front.box].blind
        yield Sentence(gaps_here(front, None if blind is None else blind.hand))
    if front.kind == "door" and front.hinged:
        own = front.gaps.left if front.hinged == "left" else front.gaps.right
        if front.least_reveal is not None and not front.least_reveal.open:
            least = format_mm(front.least_reveal.width)
            words = f"Hinge-edge reveal {format_mm(own)}; the least by the leaflet {least}."
            yield Sentence(words)


def hinge_facts(layout: Layout, front: Front) -> Iterator[Sentence]:
    """Give what holds for the work on a front's hinges."""
    if front.make.frame is not None and any(fitting.kind == "hinge" for fitting in front.fittings):
        yield Sentence("The hinge's flange needs 65 mm of flat along the hinge edge.")
    if name := hinge_name(layout, front):
        yield Sentence(f"{name}.", bold=True)
    if front.hinge is not None:
        yield Sentence(_tab_and_plate(front.hinge))


def _before(front: Front) -> Iterator[Sentence]:
    if not any(fitting.kind == "pull" for fitting in front.fittings):
        return
    if front.screws.through_box:
        yield Sentence(_pull_screws(front))
    if front.screws.pull is not None:
        yield Sentence(f"Pull screws {format_mm(front.screws.pull)} long.")


def _blind(layout: Layout, front: Front) -> tuple[str, ...]:
    """Say how a front laps the blind panel beside it, whose edge is nobody's outside edge."""
    box = layout.box_of[front.box]
    if box.blind is None:
        return ()
    if box.blind.hand == "left":
        lap = box.blind.reach - front.place.x
    else:
        lap = front.place.x + front.width - (box.width - box.blind.reach)
    hand = box.blind.hand.upper()
    how = f"laps it by {format_mm(lap)}" if lap > 0.0 else f"keeps {format_mm(-lap)} from it"
    return (f"BLIND PANEL on the {hand} from the room: this front {how}.",)


def measured_facts(front: Front) -> Iterator[Sentence]:
    """Say that a front is drawn as delivered, and what its holes keep to then."""
    if front.ordered is not None and front.refused is None:
        width, height = front.ordered
        measured = (
            f"MEASURED: drawn to the part in hand; {format_mm(width)} x {format_mm(height)} was "
            f"ordered. Its holes keep their places from the {_kept_edges(front)}."
        )
        yield Sentence(measured)


def _edges(front: Front) -> Iterator[Sentence]:
    yield from measured_facts(front)
    if front.make.edge_radius > 0.0:
        out = format_mm(fold_error(front.make.edge_radius))
        yield Sentence(
            f"EDGES ROUNDED, R {format_mm(front.make.edge_radius)}: cut and butt; a fold would lie "
            f"{out} out."
        )
    if front.make.bevel is not None:
        other = "BOTTOM" if front.make.bevel == "top" else "TOP"
        yield Sentence(
            f"FINGER BEVEL at the {front.make.bevel.upper()} edge: no reference. All stands "
            f"from the {other} edge."
        )


def _kept_edges(front: Front) -> str:
    """Name what the holes of a front in hand are counted from, whatever its size."""
    if front.kind == "door" and front.hinged:
        return "bottom edge and the hinge edge"
    return "bottom edge and from its own middle"


def frame_facts(front: Front, *, brief: bool = False) -> Iterator[Sentence]:
    """Say what a five-piece front is made of; `brief`: what is drilled, without the panel inside,
    and nothing of a picture."""
    frame = front.make.frame
    if frame is None:
        return
    panel = f"glass {format_mm(frame.panel)}" if frame.glass else f"panel {format_mm(frame.panel)}"
    glass = " NO HOLE IN GLASS." if frame.glass else ""
    said = f"Five-piece: stiles {format_mm(frame.stile)}, rails {format_mm(frame.rail)}"
    if brief:
        yield Sentence(f"{said}.{glass}")
        return
    yield Sentence(f"{said} (dashed), groove {format_mm(frame.groove)}, {panel}.{glass}")


def _tab_and_plate(choice: HingeChoice) -> str:
    """Say the tab bored and the plate to mount, or the one that is wanted where none is listed."""
    tab, plate = format_mm(choice.tab), format_mm(choice.plate)
    if not choice.plate_stated:
        return (
            f"Edge to cup {tab}. The plate wants to be {plate} high, and none is "
            "listed: buy the nearest height of the leaflet."
        )
    return f"Edge to cup {tab}. Plates {plate} high."


def _pull_screws(front: Front) -> str:
    if front.screws.through_box:
        return (
            "PULL SCREWS: through front and drawer box. Drill on through the box AFTER the "
            "front is fixed."
        )
    return (
        f"PULL SCREWS: counterbore the back {COUNTERBORE_DIAMETER:g} dia, "
        f"{front.screws.counterbore:g} deep, BEFORE fixing."
    )
