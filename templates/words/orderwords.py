"""The words of an order: how fronts are made, what hardware is called, and on what terms.

The terms are what holds for the whole order; text, CSV, workbook and data all carry them.
"""

from collections.abc import Iterator

from jigs.given.job import Job
from jigs.ground.lengths import Unit, format_length, format_mm
from jigs.order.buying import BoxState, DrawerBoxOrder, FrontOrder, Order, fronts_held
from jigs.order.needed import Item
from templates.words.assumedwords import assumed_lines
from templates.words.fittingwords import bought_words
from templates.words.gapwords import gap_words
from templates.words.openwords import open_words
from templates.words.saying import finding_name, reasons_of
from templates.words.uncheckedwords import good_words, unchecked_words
from templates.words.wording import FRONT_WORDS, nominal_words

ITEM_WORDS = {
    "hinge": "hinge", "plate": "mounting plate", "slide": "pair of slides", "pull": "pull",
    "bumper": "bumper", "screw": "screw", "pin": "shelf pin", "latch": "push latch",
    "spacer": "spacer under a rollout's slide",
}  # fmt: skip
SCREW_WORDS = {
    "cup": "for the cups of hinges",
    "plate": "for mounting plates",
    "slide": "for slides",
    "pull": "for pulls, from behind",
    "front-fixing": "for drawer fronts, pan or washer head as the sheets say, from inside the box",
    "false-front": "for false fronts, pan or washer head, through rail or blocks",
    "pocket": "for pockets",
}
STATE_WORDS: dict[BoxState, str] = {
    "planned": "NOT BUILT AND MEASURED YET",
    "differs": "BUILT OTHERWISE than the job says: these sizes are the job's",
    "built": "built, but its width and height are not stated as measured",
    "measured": "built and measured",
    "place": "the place of an appliance, whose leaflet rules",
}
"""What a front is ordered from."""

WANTED_PLATE = "so high the plate wants to be, none is listed: buy the leaflet's nearest"
"""What is said of a plate of a hinge whose heights nobody stated."""
RUBS = "ASK BEFORE IT IS MADE: a gap beside it rubs"
SPARES = (
    "Spares: one more to each ten begun, since one is always dropped, stripped or bent; none of "
    "slides, which come in pairs (common practice, no source)."
)
UNLISTED = (
    "Not in this list: what joins boxes to each other and to the wall, glue, backing and hardware "
    "of kits and lift-up doors."
)


def terms(order: Order, job: Job) -> tuple[str, ...]:
    """Say what holds for the whole order, a sentence or two each, what is open first."""
    return (*doubtful_words(order, job), *settled_words(order, job))


def doubtful_words(order: Order, job: Job) -> Iterator[str]:
    """Say what keeps the order from being sent as it is, and what it leaves out."""
    if order.unbuilt:
        yield (
            f"{STATE_WORDS['planned']}: {', '.join(order.unbuilt)}. Fronts are ordered from "
            "finished boxes, not from the plan: build, measure, then say built = true in the box."
        )
    if order.unmeasured:
        yield (
            f"Built, but not stated as measured: {', '.join(order.unmeasured)}. Say "
            "measured_width and measured_height in the box before its fronts are ordered."
        )
    if order.differing:
        yield (
            f"BUILT OTHERWISE than the job says: {', '.join(order.differing)}. Put what the tape "
            "says into the job as the sizes of the box before its fronts are ordered."
        )
    if rubs := [front.front.id for front in order.fronts if front.rubs]:
        yield (
            f"A GAP RUBS: do not order {', '.join(rubs)} as they are; 'jigsheet gaps' shows each "
            "gap, and what helps."
        )
    if order.held:
        yield (
            "Held back, not ordered, and in no sum here, nor are their drawer boxes, hardware, "
            f"screws and paint: {', '.join(held.id for held in order.held)}."
        )
    if listed := listed_words(order):
        yield f"The supplier's list, fronts.csv, has {listed}."
    if again := [front.front.id for front in order.fronts if front.again]:
        yield (
            "Ordered again, since what was delivered is refused; hardware and paint for them are "
            f"in no sum here: {', '.join(again)}."
        )
    if order.open:
        yield (
            f"OPEN: {'; '.join(open_words(order.open))}. Plates, drawer boxes and holes "
            "follow from these numbers: read the leaflet, or try one on scrap, before you buy."
        )
    held = bool(order.held) or any(front.again for front in order.fronts)
    yield from good_words(order.open, held=held)
    yield from unchecked_words(order.unchecked)
    if any(number.key == "fixing_at" and number.value == (37.0,) for number in order.open):
        yield (
            "Screws of slides are counted for the hole at 37 alone: add those for the holes that "
            "are marked through the slide."
        )
    if assumed := assumed_lines(job):
        yield f"ASSUMED, because the job does not say: {'; '.join(assumed)}."
    if order.arrived:
        yield f"In hand, not ordered again: {', '.join(order.arrived)}."


def settled_words(order: Order, job: Job) -> Iterator[str]:
    """Say what the sizes and counts mean."""
    steps = "" if job.increment is None else (
        f" Sizes in steps of {format_length(job.increment, job.shown)}."
    )  # fmt: skip
    yield (
        "Fronts are of finished size, WIDTH x HEIGHT x THICKNESS: width along the floor, height "
        f"upright as it hangs.{steps} Accepted within {format_length(job.tolerance, job.shown)} "
        "either way."
    )
    if order.gaps and (gaps := gap_words(order.gaps, job.shown)):
        yield gaps
    if any(front.grained for front in order.fronts):
        yield "Grain runs with the height, unless a front's note says otherwise."
    if order.drawer_boxes:
        made = "are bought, and not cut"
        if order.boxes_made:
            made = "are made from the parts list, none is bought"
            if job.build.drawer_boxes is None:
                made += '; drawer_boxes = "ordered" in [build] buys them'
        yield f"Drawer boxes, outside WIDTH x HEIGHT x LENGTH, {made}."
    yield SPARES
    if order.built:
        yield f"Built already, so without band and pocket screws here: {', '.join(order.built)}."
    yield UNLISTED


def drawer_boxes_title(*, made: bool) -> str:
    """Head the drawer boxes of an order."""
    how = "made as the parts list says, not bought" if made else "to be bought"
    return f"Drawer boxes, {how}; outside WIDTH x HEIGHT x LENGTH"


def paint_title(job: Job) -> str:
    """Head the paint of an order."""
    return f"Paint, {job.paint.coats} coats, {job.paint.spread:g} m2 a litre and coat"


def making(order: FrontOrder) -> list[str]:
    """Say how a front is made: its frame, its edges, its boring."""
    front, frame = order.front, order.front.make.frame
    words = []
    if frame is not None:
        filled = "glass" if frame.glass else "panel"
        words.append(
            f"five-piece: stiles {format_mm(frame.stile)}, rails {format_mm(frame.rail)}, "
            f"{filled} {format_mm(frame.panel)} mm"
        )
    if front.make.edge_radius:
        words.append(f"edges rounded, R {format_mm(front.make.edge_radius)} mm")
    if front.make.bevel is not None:
        words.append(f"{front.make.bevel} edge bevelled for the fingers")
    if not order.bored:
        return [*words, "not bored"]
    heights = " ".join(format_mm(y) for y in order.cups_at)
    rims = "" if order.tab is None else f", rims {format_mm(order.tab)} mm from the hinge edge"
    return [*words, f"bored by the supplier: cups {heights} mm from the bottom edge{rims}"]


def drawer_words(box: DrawerBoxOrder, unit: Unit) -> str:
    """Say what the drawer boxes of one slide have in common: sides, recess, notches."""
    words = f"sides {format_length(box.side, unit)}"
    if box.recess:
        words += f", bottom {format_mm(box.recess)} mm up from the underside"
    if box.notch:
        wide, high = (format_mm(size) for size in box.notch)
        words += f", back notched {wide} x {high} mm at both lower corners"
    if box.hook:
        hole = box.hook
        deep = "through" if hole.depth is None else f"{format_mm(hole.depth)} mm deep"
        words += (
            f", and bored for hooks: {format_mm(hole.diameter)} mm dia, {deep}, "
            f"{format_mm(hole.y)} mm up, {format_mm(hole.x)} mm from both ends"
        )
    return words


def item_name(item: Item) -> str:
    """Name what an item is, without its record and size."""
    return bought_words(item.name) if item.group == "fitting" else ITEM_WORDS[item.group]


def item_words(item: Item, unit: Unit) -> str:
    """Name an item as it is asked for in a shop."""
    words = item_name(item)
    size = format_length(item.size or 0.0, unit)
    match item.group:
        case "screw":
            long = f" {size} long" if item.size else ""
            return f"{words}{long} {SCREW_WORDS[item.name]}{length_words(item, unit)}"
        case "plate" if not item.stated:
            high = format_mm(item.size or 0.0)
            return f"{words} {high} mm high for '{item.name}': {WANTED_PLATE}"
        case "plate":
            return f"{words} {format_mm(item.size or 0.0)} mm high for '{item.name}'"
        case "slide":
            return f"{words} '{item.name}', {nominal_words(item.size or 0.0)} long"
        case "bumper":
            return f"{words} {format_mm(item.size or 0.0)} mm"
        case "fitting":
            return words
        case "hinge" if item.doors:
            return f"{words} '{item.name}' {doors_words(item)}"
        case "spacer":
            return f"{words}, {size} thick (in the cut list)"
        case _:
            return f"{words} '{item.name}'" if item.name else words


def doors_words(item: Item) -> str:
    """Say which doors a hinge is for; "" where all take the same."""
    return f"for {', '.join(item.doors)}" if item.doors else ""


def length_words(item: Item, unit: Unit) -> str:
    """Say where a screw's length stands, if the job does not fix it."""
    if item.group != "screw" or item.size:
        return ""
    if item.board:
        return f" in board of {format_length(item.board, unit)}, as long as the jig's leaflet says"
    if item.name in ("pull", "front-fixing", "false-front"):
        return ": no usual length suits, see the check"
    return ", as its leaflet says"


def said_of(order: FrontOrder, unit: Unit) -> Iterator[str]:
    """Say what a front is: kind, hand, how it is made, finish, note, why it is ordered again."""
    front = order.front
    yield FRONT_WORDS[front.kind]
    if front.hinged:
        yield f"hinges {front.hinged}"
    yield from making(order)
    yield from (word for word in (front.make.finish, front.make.note) if word)
    yield from doubts_of(order, unit)


def doubts_of(order: FrontOrder, unit: Unit) -> Iterator[str]:
    """Say why a front is ordered again, and why it is not to be made as it is."""
    if order.again:
        yield f"AGAIN: {'; '.join(reasons_of(order.again, unit))}"
    if order.rubs:
        yield RUBS


def listed_words(order: Order) -> str:
    """Say how many fronts the supplier's list has, where it leaves some out: `15 of 19 fronts`."""
    held = len(fronts_held(order))
    return f"{len(order.fronts)} of {len(order.fronts) + held} fronts" if held else ""


def left_out_words(order: Order) -> str:
    """Name the fronts that the supplier's list leaves out, and why; "" where it has all."""
    said = (
        f"{held.id} ({', '.join(dict.fromkeys(map(finding_name, held.why)))})"
        for held in fronts_held(order)
    )
    listed = listed_words(order)
    return f"HELD, not in this list of {listed}: {', '.join(said)}" if listed else ""
