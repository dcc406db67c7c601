"""What holds for a box's boards and drawer boxes beside their holes: what their figures are counted
from, which plates they carry, what of them is still to come.
"""

from collections.abc import Container, Iterator

from jigs.box.bypart import parts_of_box
from jigs.box.drawerbox import AnyDrawer
from jigs.box.parts import Layout, Side
from jigs.ground.lengths import format_inches, format_mm
from templates.words.cautions import SPRUNG
from templates.words.hingenames import hinge_words
from templates.words.sentence import Sentence


def face_measure(width: float, height: float) -> str:
    """Say how large a face is; its label has all sizes, in inches too."""
    return f"{format_mm(width)} x {format_mm(height)}."


def drawer_box_facts(drawer: AnyDrawer) -> tuple[Sentence, ...]:
    """Say what a drawer box wants before it runs on its slides."""
    if drawer.notch is None:
        return ()
    wide, high = drawer.notch
    return (
        Sentence(
            f"Before it runs: bottom panel {format_mm(drawer.recess)} up; back "
            f"notched {format_mm(wide)} x {format_mm(high)} at both lower corners."
        ),
    )


def incomplete(side: Side) -> tuple[Sentence, ...]:
    """Say which fronts' holes a side still lacks: it must not pass for finished."""
    if side.trial_of:
        trial = f"INCOMPLETE: for a trial on scrap; holes for {', '.join(side.trial_of)} alone."
        return (Sentence(trial, bold=True),)
    if not side.missing:
        return ()
    missing = ", ".join(side.missing)
    told = f"INCOMPLETE: holes for {missing} still to come. Bore the others; it is not finished."
    return (Sentence(told, bold=True),)


def side_facts(layout: Layout, side: Side) -> tuple[Sentence, ...]:
    """Give what holds for the work on the inside of a side or on a face of a partition."""
    plates, facts = plate_facts(layout, side), list(shelf_facts(side))
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
    return (*plates, *(Sentence(fact) for fact in facts))


def shelf_facts(*sides: Side) -> Iterator[str]:
    """Say how high the fixed shelves of a column stand, for a line of their own across its boards,
    those without any hole too: counted from where all heights of a board count."""
    told: dict[str, dict[str, None]] = {}
    for side in sides:
        above = side.bottom if side.assembled else 0.0
        for high in side.shelves:
            up = f"{format_mm(high - above)} ({format_inches(high - above)} in)"
            told.setdefault(up, {})[side.side.upper()] = None
    for up, hands in told.items():
        where = "on both boards" if len(hands) > 1 else f"on the {', '.join(hands)} board"
        yield f"FIXED SHELF: strike its UPPER FACE too, {where} {up} up."


def spacer_facts(served: Container[str], *sides: Side) -> Iterator[str]:
    """Say on which boards of a column the slides of rollouts stand on a spacer; `served`: the
    fronts and rollouts that are told of here."""
    hands: dict[tuple[str, str], dict[str, None]] = {}
    for side in sides:
        for fitting in side.fittings:
            if fitting.spacer and (name := fitting.part) and name in served:
                key = (name, format_mm(fitting.spacer).removesuffix(".0"))
                hands.setdefault(key, {})[side.side.upper()] = None
    alike: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for (name, thick), boards in hands.items():
        alike.setdefault((thick, tuple(boards)), []).append(name)
    for (thick, on), names in alike.items():
        where = "on both boards" if len(on) > 1 else f"on the {on[0]} board"
        yield f"{', '.join(names)}: slides ON A SPACER {thick} thick {where}."


def plate_facts(layout: Layout, *sides: Side, named: bool = True) -> Iterator[Sentence]:
    """Say which fronts' plates of a box's sides are how high; those of all, if not `named`."""
    fronts = [front for side in sides for front in parts_of_box(layout, side.box).fronts]
    plates: dict[tuple[float, bool, str], dict[str, None]] = {}
    for fitting in (fitting for side in sides for fitting in side.fittings):
        if fitting.kind == "plate" and fitting.part:
            front = next((front for front in fronts if front.id == fitting.part), None)
            if front is not None and (choice := front.hinge) is not None:
                key = (choice.plate, choice.plate_stated, hinge_words(layout, [front.id]))
                plates.setdefault(key, {})[front.id] = None
    for (height, stated, hinge), names in sorted(plates.items(), key=lambda each: each[0]):
        about = "" if stated else " wanted (none is listed)"
        of = f": {hinge}" if hinge else ""
        served = f" for {', '.join(names)}" if named else ""
        yield Sentence(f"Plates {format_mm(height)} high{about}{served}{of}.")
