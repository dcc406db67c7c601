"""The gap budget in words: what is beside a front, what takes from a gap, what would cure it, what
was assumed and what left out."""

from collections.abc import Iterator, Sequence

from jigs.box.unchecked import LeftOut
from jigs.given.job import Job
from jigs.ground.lengths import format_mm
from jigs.room.beside import Meeting, NextTo
from jigs.room.budget import BEST, CONFIDENCE, Budget, CauseName, Cure, CureKind, Verdict
from jigs.room.chance import Chance
from jigs.room.even import WORTH, Settled
from jigs.room.reckoning import ADJUSTS, GapBudgets
from jigs.room.wood import USUAL_STILE, VALID
from templates.words.textlines import counted

BESIDE_WORDS: dict[NextTo, str] = {
    "front": "", "box": "box", "panel": "end panel", "filler": "filler", "wall": "wall",
    "casing": "casing", "appliance": "appliance", "board": "its own box", "counter": "counter",
}  # fmt: skip
SIGNS: dict[Verdict, str] = {"holds": "", "marginal": "?", "rubs": "X", "unknown": "-"}
"""Beside a verdict, so that it is seen without colour."""
WORST_FIRST: tuple[Verdict, ...] = ("rubs", "marginal", "unknown", "holds")
VERDICT_WORDS: dict[Verdict, str] = {
    "holds": "holds", "marginal": "marginal", "rubs": "rubs", "unknown": "not known",
}  # fmt: skip
CAUSE_WORDS: dict[CauseName, str] = {
    "box-size": "how true the box is",
    "box-as-built": "the box as it was built",
    "joint": "the joint between the boxes",
    "front-size": "how true the front is",
    "front-as-measured": "the front, measured, tapers",
    "out-of-square": "out-of-square",
    "paint-film": "the film of paint",
    "seasons": "the wood in the damp season",
}
CAUSE_LETTERS: dict[CauseName, str] = {
    "box-size": "B", "box-as-built": "B", "joint": "J", "front-size": "F",
    "front-as-measured": "F", "out-of-square": "S", "paint-film": "P", "seasons": "W",
}  # fmt: skip
LETTERS = "B box, J joint, F front, S out of square, P paint, W wood or board in the damp season"
"""On the chart, where a cause has no room for its name."""
LEFT_OUT_WORDS: dict[LeftOut, str] = {
    "film": "the film of paint ([paint] method, sizes)",
    "air": "the seasons ([room] dampest)",
    "species": "the seasons ([wood] species)",
    "plywood": "the seasons (plywood: no figures)",
}
LEGEND: dict[Verdict, str] = {
    "holds": "holds: even the least that it comes to is enough",
    "marginal": "marginal: likely enough, but the least is not",
    "rubs": "rubs: not even what is likeliest is enough",
    "unknown": "not known: the hinge's leaflet says what it needs",
}
TITLE = "Gap budget"
CUT_FIRST = (
    "An adjuster moves a gap, it makes none: what is too narrow here is changed before the fronts "
    "are ordered or bored."
)


def gap_name(gap: Meeting) -> str:
    """Name a gap by what is on both sides of it."""
    beside = BESIDE_WORDS[gap.beside]
    ends = [gap.one.id, " ".join(filter(None, (beside, gap.other.id if gap.other else gap.name)))]
    if gap.other is None and gap.edge in ("left", "bottom"):
        ends.reverse()
    return f"{ends[0]} {'|' if gap.axis == 'x' else '/'} {ends[1]}"


def cure_words(cure: Cure, job: Job) -> str:
    """Say what would make a gap hold."""
    words = kind_words(cure.kind, job)
    if cure.kind in ("wider", "plane"):
        return f"{words} By {format_mm(cure.more)} mm."
    return f"{words} Plan the gap {format_mm(cure.more)} mm wider too." if cure.more else words


def kind_words(kind: CureKind, job: Job) -> str:
    """Say a cure of several gaps, behind whose names stands how much wider they are to be."""
    match kind:
        case "sizes-after":
            return "Order the fronts in their size AFTER paint, and say so to the painter."
        case "other-hand":
            return "Hinge one of the two doors on its other edge."
        case "closer":
            return (
                f"Have the fronts made true to +-{format_mm(BEST)} mm in place of "
                f"+-{format_mm(job.tolerance)}, and write it on the order."
            )
        case "board":
            return "Order one-piece fronts of MDF: they move less than wood."
        case "wider":
            return "Plan the gap wider: a smaller front, its reveal larger."
        case "plane":
            return (
                "The fronts are in hand: set them apart where the gaps beside have room, or plane "
                "an edge that carries no hinge. Clamp it; protect eyes and ears."
            )


def cured_name(budget: Budget) -> str:
    """Name a gap, and how much wider it is to be: `B1-2 | B2-2 +0.4`."""
    more = budget.cure.more if budget.cure else 0.0
    return f"{gap_name(budget.gap)} +{format_mm(more)}" if more else gap_name(budget.gap)


def drawing_words() -> Iterator[str]:
    """Say what the figures of a drawing are."""
    yield (
        f"Beside each gap: its sign, and the least that it comes to in mm, {CONFIDENCE:.0%} sure, "
        "in the dampest season; below 0 the two would overlap."
    )
    yield CUT_FIRST


def count_words(budgets: Sequence[Budget]) -> str:
    """Say how many gaps hold and how many do not."""
    count = {verdict: sum(b.verdict == verdict for b in budgets) for verdict in VERDICT_WORDS}
    said = [
        f"{count[verdict]} {VERDICT_WORDS[verdict]}"
        for verdict in ("rubs", "marginal", "holds", "unknown")
        if count[verdict]
    ]
    return f"{counted(len(budgets), 'gap')}: {', '.join(said)}." if budgets else "No gaps."


def meaning_words() -> Iterator[str]:
    """Say what the figures and the verdicts mean."""
    yield (
        f"Each gap in mm: as planned; from the least to the most that it comes to, "
        f"{CONFIDENCE:.0%} sure, in the dampest season; the least that it needs to open."
    )
    yield (
        "holds: even the least is enough. marginal (?): what is likeliest is enough, the least is "
        "not. rubs (X): not even what is likeliest is enough."
    )
    yield CUT_FIRST


def chance_words(chance: Chance) -> Iterator[str]:
    """Say how likely it is that all gaps stay open, and how that falls with the reveal."""
    counts = f"All {chance.gaps} gaps, counters apart,"
    more = ""
    if chance.unknown:
        counts = f"The {chance.gaps} gaps whose least is known, counters apart, all"
        more = f" LEFT OUT: {chance.unknown} not known, what they need only the leaflet says."
    yield (
        f"{counts} stay open in {percent(chance.planned)} of {chance.trials:,} kitchens drawn at "
        f"random within these limits (seed {chance.seed}): this is how likely it is that no front "
        f"has to be planed.{more}"
    )
    curve = ", ".join(f"{at:g}: {percent(share)}" for at, share in chance.curve[::2])
    yield f"With this gap between fronts, mm, and half of it at their ends: {curve}."


SETTING = (
    f"Doors by the side screws of their hinges (about {ADJUSTS:g} mm either way, from memory: the "
    "leaflet says), drawer fronts in their holes before the screws are tight."
)


def row_words(row: Settled) -> str:
    """Say where the fronts of a row sit so that its gaps come out even."""
    moves = ", ".join(
        f"{name} {format_mm(abs(move))} to the {'right' if move > 0 else 'left'}"
        for name, move in row.moves.items()
        if abs(move) > WORTH
    )
    return (
        f"{moves}: the tightest gap of this row then has {format_mm(row.then)} more than it "
        f"needs, in place of {format_mm(row.before)}."
    )


def percent(share: float) -> str:
    """Write a part of 1: what is not all is never written as all, nor what is something as nothing.

    >>> percent(0.5), percent(1.0), percent(0.9999), percent(0.001)
    ('50 %', '100 %', 'over 99 %', 'under 1 %')
    """
    if 0.0 < share < 0.01:
        return "under 1 %"
    if 0.99 < share < 1.0:
        return "over 99 %"
    return f"{100 * share:.0f} %"


def dry_words(budgets: Sequence[Budget]) -> Iterator[str]:
    """Say how far the gaps open in the driest season."""
    dry = [(budget.dry, budget) for budget in budgets if budget.dry is not None]
    if dry:
        most, widest = max(dry, key=lambda each: each[0])
        yield (
            f"In the driest season the widest of them likely comes to {format_mm(most)}: "
            f"{gap_name(widest.gap)}."
        )


def unsaid_words(found: GapBudgets, job: Job) -> Iterator[str]:
    """Say what stands in for numbers nobody gave, and what was left out."""
    exact = job.gaps.exact
    figures = {
        "gaps.box": f"boxes true to +-{format_mm(exact.box)} ([gaps] box)",
        "gaps.joint": f"joints open up to {format_mm(exact.joint)} ([gaps] joint)",
        "gaps.square": f"gaps out of square by +-{format_mm(exact.square)} ([gaps] square)",
        "fronts.tolerance": f"fronts true to +-{format_mm(job.tolerance)} ([fronts] tolerance)",
    }
    assumed = [words for key, words in figures.items() if key in job.assumed]
    fronts = (front for budget in found.budgets for front, _ in budget.gap.sides)
    if job.gaps.wood.construction == "five-piece" and any(f.make.frame is None for f in fronts):
        assumed.append(f"stiles {format_mm(USUAL_STILE)} wide where a front gives no stile")
    if assumed:
        yield f"ASSUMED, common practice: {', '.join(assumed)}; mm."
    if found.left_out:
        said = "; ".join(LEFT_OUT_WORDS[each] for each in found.left_out)
        yield f"NOT IN THE SUM, because nothing says it: {said}."
    if found.outside:
        yield (
            f"The wood comes to {' and '.join(f'{each:.1f}' for each in found.outside)} % of "
            f"moisture; its figures hold from {VALID[0]:g} to {VALID[1]:g} %: that is rough."
        )


def open_words(found: GapBudgets) -> Iterator[str]:
    """Say which gaps are judged by a number that nobody has looked up, and which not at all."""
    if any(budget.least.open for budget in found.budgets):
        yield (
            "* A least gap that rests on a hinge's least reveal that nobody has looked up: write "
            "least_reveal, and confirm it."
        )
    if any(budget.least.width is None for budget in found.budgets):
        yield "not known: for fronts so thick only the hinge's leaflet knows the least reveal."
