"""The findings of a job in words: what the check prints, what is held back, how the pack closes.

A finding is a fact with its code, then its remedy on a line of its own. They stand by rank over the
whole job, and one that several parts share is said once, with all of them; so is advice: what
stands outside a published range.
"""

from collections.abc import Container, Iterable, Mapping

from msgspec import Struct

from jigs.box.bypart import depending, open_in
from jigs.box.drawerbox import Rollout
from jigs.box.frontgaps import measure_gaps
from jigs.box.parts import Front, Layout
from jigs.box.unchecked import list_unchecked
from jigs.checks.advice import Advice, OffRow, advise, slides_off_row
from jigs.ground.grouped import grouped
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import BEFORE_CUTTING, RUBS, Level, Problem, Rank
from templates.words.assumedwords import assumed_lines
from templates.words.coverwords import SHEETS
from templates.words.deliverywords import delivery_words
from templates.words.gapwords import gap_words
from templates.words.openwords import open_words
from templates.words.saying import finding_name, reason_of, say
from templates.words.sentence import bare, closed
from templates.words.textlines import counted, wrapped
from templates.words.uncheckedwords import good_words, unchecked_words

HEADINGS: dict[Rank, str] = {
    1: "Errors",
    2: "What would spoil wood or money",
    3: "Worth a look",
}


class Finding(Struct, frozen=True, kw_only=True):
    """Problems of one wording, with the parts they stand at."""

    level: Level
    rank: Rank
    code: str
    text: str
    remedy: str
    parts: tuple[str, ...]


def check_text(layout: Layout) -> str:
    """Give the whole check: echo, findings by rank, their count, what was assumed, and advice."""
    lines: list[str] = [layout.echo] if layout.echo else []
    for number, words in enumerate(delivery_words(layout)):
        lines += wrapped(words, "" if number == 0 else "  ", "    ")
    findings = merge_findings(layout.problems, layout.job.shown)
    for rank, heading in HEADINGS.items():
        group = [finding for finding in findings if finding.rank == rank]
        lines += ["", heading] if group else []
        for finding in group:
            lines += _finding_lines(finding)
    lines += ["", count_words(layout.problems, layout.job.shown)]
    for words in incomplete_words(layout):
        lines += wrapped(f"Incomplete: {words}.", "", "  ")
    if off := slides_off_row(layout):
        lines += ["", "Slides beside the 32 mm row, drilled by their own distances:"]
        for row in off:
            lines += wrapped(_off_row(row, layout.job.shown), "  - ", "    ")
    lines.append("")
    gaps = gap_words(measure_gaps(layout), layout.job.shown)
    good = good_words(open_in(layout), held=layout.has_held)
    for words in (gaps, *good, *unchecked_words(list_unchecked(layout))):
        lines += wrapped(words, "", "  ")
    if assumed := assumed_lines(layout.job):
        lines += ["", "ASSUMED, because the job does not say; stamped on the sheets it touches:"]
        for assumption in assumed:
            lines += wrapped(assumption, "  - ", "    ")
    if advice := advise(layout):
        lines += ["", "Advice (published ranges, not rules for your kitchen):"]
        for words in advice_words(advice, layout.job.shown):
            lines += wrapped(words, "  - ", "    ")
    return "\n".join(lines) + "\n"


def _off_row(row: OffRow, unit: Unit) -> str:
    """Say how far a box's slides are off the row, and what would bring them onto it."""
    figures = ", ".join(
        f"{name} {format_length(abs(miss), unit)} {'above' if miss > 0 else 'below'} its hole"
        for name, miss in row.off
    )
    if row.start is not None:
        onto = f'start = "{row.start:.1f} mm" in [grid] brings the lowest onto it'
    else:
        heights = ", ".join(f"{name} {format_length(high, unit)}" for name, high in row.heights)
        onto = f"front heights that bring them onto it: {heights}"
    return f"{row.box}: {figures}; {onto}."


def before_cutting(layout: Layout, parts: Container[str]) -> tuple[str, ...]:
    """Say what of these parts (boxes, fronts, walls) must be settled before any board is cut: a
    sentence each, the fact and its remedy."""
    findings = merge_findings(
        (
            problem
            for problem in layout.problems
            if problem.code in BEFORE_CUTTING and _of_these(problem, parts)
        ),
        layout.job.shown,
    )
    said = []
    for finding in findings:
        who = f"{', '.join(finding.parts)}: " if finding.parts else ""
        said.append(f"BEFORE YOU CUT: {who}{bare(finding.text)}; {bare(finding.remedy)}.")
    return tuple(said)


def _of_these(problem: Problem, parts: Container[str]) -> bool:
    """Whether a finding concerns these parts: its own part, or where it has none its wall."""
    about = problem.part or dict(problem.values).get("wall")
    return about is None or about in parts


def count_words(problems: Iterable[Problem], unit: Unit) -> str:
    """Count the findings in words, as they are shown: `2 errors, 1 warning.`"""
    findings = merge_findings(problems, unit)
    if not findings:
        return "Nothing found: every front can be drilled."
    errors = [finding for finding in findings if finding.level == "error"]
    warnings = len(findings) - len(errors)
    parts = [counted(len(errors), "error")] if errors else []
    parts += [counted(warnings, "warning")] if warnings else []
    held = [finding for finding in errors if finding.code != RUBS]
    closing = "Nothing is held back."
    if any(finding.parts for finding in held):
        closing = "What an error names is held back."
    elif held:
        closing = "No part is held back, but it cannot be built so."
    if len(held) < len(errors):
        closing += " What rubs has its sheets, but is not to be ordered so."
    return f"{', '.join(parts)}. {closing}"


def count_warnings(problems: Iterable[Problem], unit: Unit) -> int:
    """Count the warnings as they are shown: once for all the parts that share one."""
    return sum(finding.level == "warning" for finding in merge_findings(problems, unit))


def has_errors(layout: Layout) -> bool:
    """Tell whether any part is held back, or any finding is an error."""
    return any(problem.level == "error" for problem in layout.problems) or any(
        part.withheld for part in layout.units
    )


def held_text(layout: Layout) -> str:
    """Say what is held back and why, each with its remedy; empty if nothing is."""
    unit = layout.job.shown
    errors = merge_findings((each for each in layout.problems if each.level == "error"), unit)
    lines: list[str] = []
    for finding in errors:
        lines += _finding_lines(finding, indent="")
    told = {part for finding in errors for part in finding.parts}
    concerned = {also for problem in layout.problems if problem.level == "error"
                 for also in problem.also}  # fmt: skip
    for front in layout.fronts:
        if front.withheld and front.id not in told | concerned:
            lines += wrapped(
                f"error: {front.id}: {held_words(front, unit)}",
                "",
                "  ",
            )
    return "".join(f"{line}\n" for line in lines)


def held_words(part: Front | Rollout, unit: Unit) -> str:
    """Say why a part is held back: each error's name and fact."""
    return "; ".join(reason_of(problem, unit) for problem in part.held)


def closing_text(
    layout: Layout, costs: Mapping[str, str], labels: int, stock: str, *, written: bool = True
) -> str:
    """Give the closing summary of a pack; `costs` says what each file that is drilled by asks for,
    `labels` how many labels there are, `stock` what they are printed on. Not `written`: only what
    is held back, open or not checked."""
    held = [part for part in layout.units if part.withheld]
    first = f"{_ready(layout, SHEETS.ready)}, {len(held) or 'none'} held"
    if held:
        first += ": " + "; ".join(f"{front.id} {_reasons(front)}" for front in held)
    files = " or ".join(costs) + (", not both," if len(costs) > 1 else "")
    lines = [f"{first.rstrip('.')}. {_resting(layout)}"]
    if written:
        lines += [
            "plan.pdf: the order of the work, and when each file is printed; print it first.",
            " ".join(f"{name}: {cost}." for name, cost in costs.items()),
            f"Print {files} at 100 %; measure the bars on page 1 first.",
            f"labels.pdf: {counted(labels, 'label')}, one for every front, drawer box and cut "
            f"piece, on {stock} labels.",
        ]
    if incomplete := incomplete_words(layout):
        lines.append(f"Incomplete: {'; '.join(incomplete)}.")
    if layout.job.delivery and layout.job.delivery.missing:
        lines.append(f"Not delivered yet: {', '.join(layout.job.delivery.missing)}.")
    lines += unchecked_words(list_unchecked(layout))
    return "\n".join(lines) + "\n"


def ready_words(layout: Layout, ready: tuple[str, str]) -> str:
    """Say in a line how many fronts are ready, in what is said of one and of several of them, and
    on how many open numbers bear."""
    return f"{_ready(layout, ready)}. {_resting(layout, named=False)}"


def _ready(layout: Layout, ready: tuple[str, str]) -> str:
    count = sum(not front.withheld for front in layout.fronts)
    return f"{counted(count, 'front')} {ready[count != 1]}"


def _resting(layout: Layout, *, named: bool = True) -> str:
    """Say how many fronts, and rollouts, rest on open numbers; none is ready to drill till then."""
    numbers, parts = open_in(layout), depending(layout)
    if good := good_words(numbers, held=layout.has_held):
        return good[0]
    fronts = len({front.id for front in layout.fronts} & set(parts))
    rollouts = counted(len(parts) - fronts, "rollout") if len(parts) > fronts else ""
    which = " and ".join(each for each in (str(fronts) if fronts else "", rollouts) if each) or "0"
    verb = "depends" if len(parts) == 1 else "depend"
    names = f": {'; '.join(open_words(numbers))}." if named else "."
    return f"{which} {verb} on open numbers{names}"


def incomplete_words(layout: Layout) -> tuple[str, ...]:
    """Name the sides that lack holes of fronts held back, those that lack the same together:
    `K4-SIDE-L, K4-SIDE-R: holes for K4-1 still to come`."""
    lacking: dict[tuple[str, ...], list[str]] = {}
    for side in layout.sides:
        if side.missing and side.board not in lacking.get(side.missing, ()):
            lacking.setdefault(side.missing, []).append(side.board)
    return tuple(
        f"{', '.join(boards)}: holes for {', '.join(fronts)} still to come"
        for fronts, boards in lacking.items()
    )


def merge_findings(problems: Iterable[Problem], unit: Unit) -> tuple[Finding, ...]:
    """Join problems of one wording: by rank, otherwise in their own order."""
    joined: dict[tuple[Level, Rank, str, str, str], dict[str, None]] = {}  # parts in order, once
    for problem in problems:
        key = (problem.level, problem.rank, problem.code, *say(problem, unit))
        parts = joined.setdefault(key, {})
        if problem.part is not None:
            parts[problem.part] = None
    findings = [
        Finding(level=level, rank=rank, code=code, text=text, remedy=remedy, parts=tuple(parts))
        for (level, rank, code, text, remedy), parts in joined.items()
    ]
    return tuple(sorted(findings, key=lambda finding: finding.rank))


def _finding_lines(finding: Finding, indent: str = "  ") -> list[str]:
    parts = f"{', '.join(finding.parts)}: " if finding.parts else ""
    fact = f"{finding.level}: {parts}{bare(finding.text)}. [{finding.code}]"
    return [
        *wrapped(fact, indent, indent + "  "),
        *wrapped(closed(finding.remedy), indent + "    ", indent + "    "),
    ]


def _reasons(front: Front | Rollout) -> str:
    """Say shortly what holds a front back: the codes of its errors as words."""
    return ", ".join(dict.fromkeys(finding_name(problem) for problem in front.held))


def problems_data(problems: Iterable[Problem], unit: Unit) -> list[dict[str, str | int | None]]:
    """Give findings as data, for what is written as JSON."""
    return [
        {
            "level": problem.level,
            "rank": problem.rank,
            "code": problem.code,
            "part": problem.part,
            "text": said.fact,
            "remedy": said.remedy,
        }
        for problem in problems
        for said in (say(problem, unit),)
    ]


def advice_words(advice: Iterable[Advice], unit: Unit) -> tuple[str, ...]:
    """Say each advice in a sentence, with its boxes and its source."""
    alike = grouped((f"{_fact(each, unit)} ({each.source}).", each.box) for each in advice)
    return tuple(f"{', '.join(boxes)}: {words}" for words, boxes in alike.items())


def _fact(advice: Advice, unit: Unit) -> str:
    published = ", ".join(format_length(each, unit) for each in advice.published)
    figure, *more = (format_length(each, unit) for each in advice.figures)
    match advice.what:
        case "height":
            return f"{figure} high above the floor; base units come {published} high"
        case "plinth" | "toe":
            where = " at the floor's high point" if advice.high_point else ""
            return f"a {advice.what} {figure} high{where}; the least is {published}"
        case "toe-depth":
            return f"the toe stands {figure} behind the front edges; the least is {published}"
        case "worktop":
            return (
                f"a worktop is at least {published} deep, and would stand out {figure} before the "
                f"fronts of boxes {more[0]} deep"
            )
        case "wall-depth":
            return f"{figure} deep; wall units are at most {published} deep"
