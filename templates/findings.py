"""The findings of a job in words: what the check prints, what is held back, how the pack closes.

A finding is a fact with its code, then its remedy on a line of its own. They are grouped by box,
errors first; a finding that several boxes share is said once, with all its parts.
"""

import textwrap
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from jigs.advice import advise
from jigs.confirming import open_names, open_numbers
from jigs.job import BoxSpec
from jigs.parts import Front, Layout
from jigs.problems import Level, Problem
from jigs.rolloutspec import Rollout
from templates.deliverywords import delivery_words

WIDTH = 96
"""Columns of a line on the terminal; a longer one is broken."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Finding:
    """Problems of one wording, with the parts and boxes they stand at."""

    level: Level
    code: str
    text: str
    remedy: str
    parts: tuple[str, ...]
    boxes: frozenset[str]


def check_text(layout: Layout) -> str:
    """Give the whole check: echo, findings by box, their count, what was assumed, and advice."""
    lines: list[str] = [layout.echo] if layout.echo else []
    for number, words in enumerate(delivery_words(layout)):
        lines += _wrapped(words, "" if number == 0 else "  ", "    ")
    for heading, group in _groups(layout):
        lines += ["", heading]
        for finding in group:
            lines += _finding_lines(finding)
    lines += ["", count_words(layout.problems)]
    for words in incomplete_words(layout):
        lines += _wrapped(f"Incomplete: {words}.", "", "  ")
    if layout.job.assumptions:
        lines += ["", "ASSUMED, because the job does not say; stamped on the sheets it touches:"]
        for assumption in layout.job.assumptions:
            lines += _wrapped(assumption, "  - ", "    ")
    if advice := advise(layout):
        lines += ["", "Advice (published ranges, not rules for your kitchen):"]
        for one in advice:
            words = f"{', '.join(one.boxes)}: {one.text} ({one.source})."
            lines += _wrapped(words, "  - ", "    ")
    return "\n".join(lines) + "\n"


def count_words(problems: Iterable[Problem]) -> str:
    """Count the findings in words: `2 errors, 1 warning.`"""
    problems = tuple(problems)
    levels = [problem.level for problem in problems]
    if not levels:
        return "Nothing found: every front can be drilled."
    errors, warnings = levels.count("error"), levels.count("warning")
    parts = [_many(errors, "error")] if errors else []
    parts += [_many(warnings, "warning")] if warnings else []
    closing = "Nothing is held back."
    if any(problem.level == "error" and problem.part is not None for problem in problems):
        closing = "What an error names is held back."
    elif errors:
        closing = "No part is held back, but it cannot be built so."
    return f"{', '.join(parts)}. {closing}"


def has_errors(layout: Layout) -> bool:
    """Tell whether any part is held back, or any finding is an error."""
    return any(problem.level == "error" for problem in layout.problems) or any(
        part.withheld for part in layout.units
    )


def held_text(layout: Layout) -> str:
    """Say what is held back and why, each with its remedy; empty if nothing is."""
    errors = _merged(problem for problem in layout.problems if problem.level == "error")
    lines: list[str] = []
    for finding in errors:
        lines += _finding_lines(finding, indent="")
    told = {part for finding in errors for part in finding.parts}
    concerned = {also for problem in layout.problems if problem.level == "error"
                 for also in problem.also}  # fmt: skip
    for front in layout.fronts:
        if front.withheld and front.id not in told | concerned:
            lines += _wrapped(f"error: {front.id}: {'; '.join(front.held)}", "", "  ")
    return "".join(f"{line}\n" for line in lines)


def pages_words(
    pages: int, other: int, *, same: bool = False, tight: bool = False, noun: str = "page"
) -> str:
    """Count pages, and say what there would be with the other choice of --same-holes, or without
    --tight.

    >>> pages_words(46, 31)
    '46 pages (31 with --same-holes)'
    >>> pages_words(31, 46, same=True)
    '31 pages (46 without --same-holes)'
    """
    if tight:
        return f"{_many(pages, noun)} ({other} without --tight)"
    if pages == other and not same:
        return f"{_many(pages, noun)} (--same-holes saves none)"
    return f"{_many(pages, noun)} ({other} {'without' if same else 'with'} --same-holes)"


def closing_text(layout: Layout, pages: str, labels: int, stock: str) -> str:
    """Give the closing summary of a pack; `pages` says how many its sheets have, `labels` how
    many labels there are, `stock` what they are printed on."""
    ready = sum(not front.withheld for front in layout.fronts)
    held = [part for part in layout.units if part.withheld]
    first = f"{_many(ready, 'front')} ready, {len(held) or 'none'} held"
    if held:
        first += ": " + "; ".join(f"{front.id} {_reasons(front)}" for front in held)
    lines = [
        f"{first.rstrip('.')}. {pages}.",
        "Print sheets.pdf at 100 %; measure the bars on page 1 first.",
        f"labels.pdf: {_many(labels, 'label')}, one for every front, drawer box and cut piece, "
        f"on {stock} labels.",
    ]
    if incomplete := incomplete_words(layout):
        lines.append(f"Incomplete: {'; '.join(incomplete)}.")
    if layout.job.delivery and layout.job.delivery.missing:
        lines.append(f"Not delivered yet: {', '.join(layout.job.delivery.missing)}.")
    if open_points := unconfirmed_words(layout):
        lines.append(f"Not confirmed: {'; '.join(open_points)}.")
    return "\n".join(lines) + "\n"


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


def unconfirmed_words(layout: Layout) -> tuple[str, ...]:
    """Name each record in use with numbers that nobody has confirmed: `hinge 'mine' (constant)`."""
    used: dict[tuple[str, str], None] = {}
    fittings = [fitting for front in layout.fronts for fitting in front.fittings]
    fittings += [fitting for side in layout.sides for fitting in side.fittings]
    for fitting in fittings:
        kind = "hinge" if fitting.kind == "plate" else fitting.kind
        if fitting.record and kind in ("hinge", "slide"):
            used[kind, fitting.record] = None
    job = layout.job
    return tuple(
        f"{kind} '{name}' ({open_names(record)})"
        for kind, name in sorted(used)
        for record in [job.hinges.get(name) if kind == "hinge" else job.slides.get(name)]
        if record is not None and open_numbers(record)
    )


def _groups(layout: Layout) -> Iterator[tuple[str, list[_Finding]]]:
    """Give the findings by box, in the job's order; shared ones and the job's own come first."""
    findings = _merged(layout.problems, _boxes_of_parts(layout))
    shared = [finding for finding in findings if len(finding.boxes) != 1]
    if shared:
        yield "The whole job", shared
    for box in layout.boxes:
        own = [finding for finding in findings if finding.boxes == {box.id}]
        if own:
            yield box_words(box), own


def _merged(
    problems: Iterable[Problem], boxes: dict[str, str] | None = None
) -> tuple[_Finding, ...]:
    """Join problems of one wording, errors first, otherwise in their own order."""
    joined: dict[tuple[Level, str, str, str], list[str]] = {}
    for problem in problems:
        key = (problem.level, problem.code, problem.text, problem.remedy)
        parts = joined.setdefault(key, [])
        if problem.part is not None and problem.part not in parts:
            parts.append(problem.part)
    findings = [
        _Finding(
            level=level,
            code=code,
            text=text,
            remedy=remedy,
            parts=tuple(parts),
            boxes=frozenset((boxes or {}).get(part, part) for part in parts),
        )
        for (level, code, text, remedy), parts in joined.items()
    ]
    return tuple(sorted(findings, key=lambda finding: finding.level != "error"))


def _boxes_of_parts(layout: Layout) -> dict[str, str]:
    boxes = {front.id: front.box for front in layout.fronts}
    boxes |= {side.board: side.box for side in layout.sides}
    boxes |= {rollout.id: rollout.box for rollout in layout.rollouts}
    boxes |= {front.drawer.id: front.box for front in layout.fronts if front.drawer is not None}
    for box in layout.boxes:
        boxes |= {spec.id: box.id for spec in box.fronts}
    return boxes


def box_words(box: BoxSpec) -> str:
    """Name a box with its kind and its wall: `B1, base box, north wall`."""
    words = f"{box.id}, {box.kind} box"
    if not box.wall:
        return words
    return f"{words}, {box.wall if box.wall.lower().endswith('wall') else f'{box.wall} wall'}"


def _finding_lines(finding: _Finding, indent: str = "  ") -> list[str]:
    parts = f"{', '.join(finding.parts)}: " if finding.parts else ""
    fact = f"{finding.level}: {parts}{finding.text.rstrip('.')}. [{finding.code}]"
    remedy = finding.remedy.rstrip(".")
    remedy = remedy[:1].upper() + remedy[1:] + "."
    return [
        *_wrapped(fact, indent, indent + "  "),
        *_wrapped(remedy, indent + "    ", indent + "    "),
    ]


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(
        text,
        WIDTH,
        initial_indent=first,
        subsequent_indent=rest,
        break_on_hyphens=False,
        break_long_words=False,
    )


def _reasons(front: Front | Rollout) -> str:
    """Say shortly what holds a front back: the codes of its errors as words."""
    codes = [reason.partition(":")[0].replace("-", " ") for reason in front.held]
    return ", ".join(dict.fromkeys(codes))


def _many(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def problems_data(problems: Iterable[Problem]) -> list[dict[str, str | None]]:
    """Give findings as data, for what is written as JSON."""
    return [
        {
            "level": problem.level,
            "code": problem.code,
            "part": problem.part,
            "text": problem.text,
            "remedy": problem.remedy,
        }
        for problem in problems
    ]
