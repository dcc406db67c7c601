"""The order of work in words: what each stage is called, why it stands there, what must measure
before one goes on.

Figures are those of the job; limits that no record gives are common practice, no source.
"""

from collections.abc import Iterator, Sequence
from typing import assert_never

from jigs.bench.firstarticle import FirstArticle, PassWhat
from jigs.bench.jobplan import Day, JobPlan
from jigs.bench.workplan import Stage, StageKind
from jigs.box.inhand import OUT_OF_SQUARE
from jigs.cutlist.cutlist import STAMPED
from jigs.given.job import FrontMaterial, Job
from jigs.ground.lengths import format_length, format_mm
from templates.page.border import DRILL_CARE
from templates.words.cautions import PAINT, PROBE, TWO_PEOPLE
from templates.words.firstwords import BEFORE_SECOND, pass_words
from templates.words.gapwords import job_reveals
from templates.words.hanghow import care_lines
from templates.words.partswords import STUFF_WORDS
from templates.words.stationwords import bit_words, cautions, hand_words, station_title
from templates.words.stepwords import SAW
from templates.words.textlines import counted

TITLE = "The order of work"
STOP = "DO NOT GO ON until"
CUT_WITHIN, SLIDES_WITHIN = 0.5, 0.5
"""How far the first piece may be off its label, and one slide of a pair off the other; mm (common
practice, no source)."""

WHEN_HUNG: tuple[PassWhat, ...] = (
    "hinge-gap", "inset-gap", "door-flush", "front-up", "front-flush",
)  # fmt: skip
"""What of a first article is measured once more when the good front hangs."""

REVEALS = ("reveal.side", "reveal.between", "reveal.inset")
"""The reveals that are said once more at the end, by what the job may leave unsaid of them."""

ACTS: dict[StageKind, str] = {
    "before": "Settle, buy, print",
    "cut": "Cut",
    "banded": "Band the edges",
    "try": "Try on scrap",
    "bored": "Bore",
    "mounted": "Screw on plates and slides",
    "assembled": "Assemble the boxes",
    "order": "Measure the boxes, order from them",
    "set": "Set the boxes",
    "scribed": "Scribe fillers and panels dry",
    "arrived": "Measure what has come",
    "back": "Paint the backs",
    "front": "Paint the faces",
    "hung": "Hang",
    "fitted": "Fit",
    "adjusted": "Adjust, then pulls",
}
"""What a stage is called."""
OF_DRAWERS: dict[StageKind, str] = {
    "cut": "Cut the drawer boxes",
    "banded": "Band the drawer boxes",
    "assembled": "Assemble the drawer boxes",
    "fitted": "Drawer boxes on their slides",
}
"""The same where it is done with drawer boxes."""

MOST_ACTS = 3
"""The most stages that head a day."""

RAW: dict[FrontMaterial, str] = {
    "mdf": "A raw bore in mdf drinks: its rim is sealed by the first coat.",
    "hardwood": "Both faces get as many coats, so that the damp moves both alike.",
    "softwood": "Both faces get as many coats, so that the damp moves both alike.",
    "plywood": "A bit lifts splinters where it leaves the veneer: they are sanded before the coat.",
}
"""What else speaks for paint after the drill, by what fronts are made of (common practice)."""


def stage_title(stage: Stage) -> str:
    """Name a stage: `CUPS RIGHT`, `Paint the backs, coat 1`."""
    if stage.station is not None:
        return ", ".join(filter(None, (station_title(stage.station), hand_words(stage.station))))
    name = OF_DRAWERS.get(stage.kind, "") if stage.of_drawers else ""
    coat = f", coat {stage.step.coat}" if stage.step is not None and stage.step.coat else ""
    return f"{name or ACTS[stage.kind]}{coat}"


def bits_of(stage: Stage) -> str:
    """Say which bits with which stops a stage takes."""
    bits = stage.station.bits if stage.station is not None else ()
    return " ".join(bit_words(bit, brief=True) for bit in bits)


def amount_words(stage: Stage) -> str:
    """Count what is done at a station: `17 parts, a card set 50 times`; "" elsewhere."""
    if stage.station is None:
        return ""
    parts = counted(len(stage.tasks), "part")
    return f"{parts}, a card set {counted(stage.amount, 'time')}"


def first_of(stage: Stage) -> str:
    """Name the part that is tried before the others: the first that is not held back; "" where
    all are."""
    return next((task.part for task in stage.tasks if not task.held), "")


def day_title(plan: JobPlan, day: Day) -> str:
    """Head a day: `Day 5: 2 stations: 17 boards, 1 bit`."""
    stations = [stage.station for stage in day.stages if stage.station is not None]
    drilled = counted(len(stations), "station")
    said = [stage_title(stage) if stage.station is None else drilled for stage in day.stages]
    bits = {bit.diameter for station in stations for bit in station.bits}
    taken = filter(None, (_counts(plan, day), counted(len(bits), "bit") if bits else ""))
    acts = list(dict.fromkeys(said))
    if len(acts) > MOST_ACTS:
        acts[MOST_ACTS - 1 :] = [f"{len(acts) - MOST_ACTS + 1} more"]
    what = "; ".join(acts)
    return ": ".join(filter(None, (f"Day {day.number}: {what}", ", ".join(taken))))


def _counts(plan: JobPlan, day: Day) -> str:
    """Count what is taken in hand in a day, each part once, by what it is."""
    found: dict[str, set[str]] = {}
    many: dict[str, int] = {}
    for stage in day.stages:
        for task in stage.tasks:
            name = _noun(plan, task.part, stage.kind)
            if task.part not in found.setdefault(name, set()):
                found[name].add(task.part)
                part = plan.parts.get(task.part)
                many[name] = many.get(name, 0) + (part.count if part is not None else 1)
    return ", ".join(_plural(count, name) for name, count in many.items())


def _plural(count: int, noun: str) -> str:
    return f"{count} {noun}es" if count != 1 and noun.endswith("x") else counted(count, noun)


def _noun(plan: JobPlan, name: str, kind: StageKind) -> str:
    if kind == "set":
        return "box"
    part = plan.parts[name]
    if part.drawer is not None:
        return "drawer box"
    if part.front is not None:
        return "door" if part.front.swings or part.front.kind == "lift" else "front"
    return "board" if part.faces else "piece"


def why_words(plan: JobPlan, stage: Stage, *, fronts: bool) -> Iterator[str]:
    """Say why a stage stands where it does, where that could be doubted; `fronts`: whether any are
    ordered."""
    job = plan.layout.job
    match stage.kind:
        case "back" | "front":
            if stage.step is not None and stage.step.coat == 1 and stage.kind == "back":
                yield from _paint_why(job, fronts=any(_is_front(plan, p) for p in stage.parts))
        case "cut" if stage.of_drawers:
            yield (
                "Cut after the boxes stand, so that one that came out otherwise is known: "
                "a drawer box 1 mm too wide does not run."
            )
        case "order":
            what = "Fronts" if fronts else "Drawer boxes"
            yield f"{what} are ordered from finished boxes, not from the plan."
        case "scribed":
            yield (
                "Scribed and cut before the first coat: a saw chips paint, and leaves its edge "
                "bare. They are fixed when they are painted."
            )
        case "bored" if stage.station is not None and not job.paint.here:
            if stage.station.face in ("front", "back"):
                yield (
                    "The fronts come painted: lines on low-tack tape, a 2 mm pilot first, scrap "
                    "clamped behind, the face on a blanket."
                )
        case _:
            return


def _is_front(plan: JobPlan, name: str) -> bool:
    part = plan.parts[name]
    return part.front is not None and part.drawer is None


def _paint_why(job: Job, *, fronts: bool) -> Iterator[str]:
    if not fronts:
        return
    yield (
        "WHY AFTER THE DRILL: a bit chips paint at the rim of its bore, and pencil and punch stay "
        f"out of the finish. {RAW[job.material.front_kind]}"
    )
    if job.paint.fronts_come is None:
        yield (
            'The job does not say how the fronts come: if painted, write fronts_come = "painted" '
            "in [paint]; the coats here go."
        )
    match job.paint.sizes:
        case "before":
            yield "The fronts have their sizes before paint: its film narrows every gap ('gaps')."
        case "after":
            yield "The fronts' sizes are those after paint: sand to size, film included."
        case None:
            yield "Nobody said whether the fronts' sizes are before or after paint: [paint] sizes."
        case _:
            assert_never(job.paint.sizes)
    yield "The backs first: the last coat lies on the face, and nothing is laid on it again."


def stop_words(plan: JobPlan, stage: Stage) -> Iterator[str]:
    """Say what must measure before one goes on, each a sentence behind `DO NOT GO ON until`."""
    job, unit = plan.layout.job, plan.layout.job.shown
    first = first_of(stage)
    if stage.tasks and not first:
        return
    match stage.kind:
        case "before":
            yield "every row here is ticked."
        case "cut":
            boards = dict.fromkeys(
                (piece.stuff, piece.thickness)
                for name in stage.parts
                # The front maker's board is not there yet: it is measured when it arrives.
                if (piece := plan.parts[name].piece) is not None and piece.stuff != "front"
            )
            sized = ", ".join(
                f"{STUFF_WORDS[stuff]} {thick:g}"
                f"{' (ASSUMED)' if STAMPED.get(stuff) in job.assumed else ''}"
                for stuff, thick in boards
            )
            caliper = (
                f", and the caliper says, mm: {sized}. Another thickness? Write it in [material], "
                "print anew"
            )
            yield (
                f"the first piece of each size is within {CUT_WITHIN} mm of its label"
                f"{caliper if sized else ''}."
            )
        case "banded":
            bands = dict.fromkeys(
                piece.band.thickness
                for name in stage.parts
                if (piece := plan.parts[name].piece) is not None and piece.band is not None
            )
            yield (
                "the first band lies flush on both faces and measures "
                f"{' or '.join(f'{band:g}' for band in bands)} mm."
            )
        case "try":
            yield "every figure is within its limits. What is not names the number that is wrong."
        case "bored":
            assert stage.station is not None, "what is bored is bored at a station"
            yield f"this is true of the first, {first}: {BEFORE_SECOND[stage.station.work]}"
        case "mounted":
            yield (
                f"on the first board, {first}, and the one it faces, both slides of a pair are at "
                f"one height within {SLIDES_WITHIN} mm and equally far behind the front edge, and "
                "each plate is home."
            )
        case "assembled" if stage.of_drawers:
            yield from _widths(plan.articles)
            yield (
                "the first one's two diagonals are alike within "
                f"{format_mm(OUT_OF_SQUARE)} mm, before its glue holds."
            )
        case "assembled":
            yield (
                f"each box's two diagonals are alike within {format_mm(OUT_OF_SQUARE)} mm, "
                "before its glue holds."
            )
        case "order":
            yield (
                "each box is measured (width, height, both diagonals), written into the job with "
                "built = true, and 'check' has no error."
            )
        case "set":
            yield (
                f"the first, {first}, is plumb and level, and stays so screwed; and nothing is "
                "put into a box before it is fixed."
            )
        case "scribed":
            yield (
                f"the first, {first}, held dry at its place, is plumb and meets the wall, or the "
                "floor, along its whole line."
            )
        case "arrived":
            assumed = " (ASSUMED)" if "material.front" in job.assumed else ""
            yield (
                "every front is measured and 'check --delivered' holds none: "
                f"{format_length(job.tolerance, unit)} off the order is accepted; and the caliper "
                f"says they are {job.material.front:g} mm thick{assumed}. Another thickness? Write "
                "it in [material], print anew."
            )
        case "back" | "front":
            yield "this coat is dry by what its tin says."
        case "fitted" if stage.of_drawers:
            yield f"the first drawer, {first}, alone, runs home and out by one finger."
        case "fitted":
            yield f"the first, {first}, is plumb or level, and nothing rubs on it."
        case "hung":
            yield from _first_hung(plan.articles, stage)
        case "adjusted":
            assumed = " ASSUMED in part." if {*REVEALS} & job.assumed else ""
            yield (
                f"every gap is even and no front rubs. {job_reveals(plan.layout)}{assumed} Which "
                "screw to turn, 'gaps --measured' says."
            )
        case _:
            assert_never(stage.kind)


def same_words(stage: Stage, day: int) -> str:
    """Say of which stage, on which day, the very parts have their turn again."""
    return f"the same as on day {day}: {stage_title(stage)}"


def again_words(stage: Stage) -> Iterator[str]:
    """Say of a station of a kind that was there before what must be true of its first part."""
    if first := first_of(stage):
        yield f"the same is true of the first, {first}."


def _widths(articles: Sequence[FirstArticle]) -> Iterator[str]:
    for article in articles:
        for mark in article.marks:
            if mark.what == "box-width":
                yield (
                    f"{article.front.id}-BOX, first on slide '{article.record.name}', measures, "
                    f"mm: {pass_words(mark)}."
                )


def _first_hung(articles: Sequence[FirstArticle], stage: Stage) -> Iterator[str]:
    """Say which front of each hinge and slide is hung first, and what is measured on it."""
    own = [article for article in articles if article.front.id in stage.parts]
    for article in own:
        marks = "; ".join(pass_words(mark) for mark in article.marks if mark.what in WHEN_HUNG)
        hardware = f"{article.kind} '{article.record.name}'"
        yield f"{article.front.id}, first on {hardware}, measures, mm: {marks}."
    if not own:
        yield f"the first, {first_of(stage)}, opens and closes and rubs nowhere."


def caution_words(plan: JobPlan, stage: Stage) -> tuple[str, ...]:
    """Give the cautions of a stage."""
    match stage.kind:
        case "cut" | "scribed":
            return (SAW,)
        case "bored":
            assert stage.station is not None, "what is bored is bored at a station"
            return (DRILL_CARE, *cautions(stage.station))
        case "back" | "front":
            return (PAINT,)
        case "assembled" if not stage.of_drawers:
            heavy = {box.id for box in plan.layout.boxes if box.kind in ("tall", "wall")}
            return (TWO_PEOPLE,) if any(heavy & {*task.boxes} for task in stage.tasks) else ()
        case "set":
            return (PROBE, *care_lines())
        case _:
            return ()
