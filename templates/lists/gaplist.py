"""The gap budget as a list for people, for a spreadsheet, and as data."""

import json
from collections.abc import Iterable, Sequence

from jigs.box.parts import Front
from jigs.given.job import Job
from jigs.given.measured import DEPTH
from jigs.ground.grouped import grouped
from jigs.ground.lengths import format_mm
from jigs.room.budget import CONFIDENCE, Budget
from jigs.room.chance import Chance
from jigs.room.even import Settled
from jigs.room.reckoning import GapBudgets
from templates.lists.cells import csv_text, in_mm, number
from templates.lists.listing import Column, Group, Listing, Section, Table, TableRow, Words, shown
from templates.lists.listtext import listing_text
from templates.words.budgetwords import (
    CAUSE_WORDS,
    LEFT_OUT_WORDS,
    SETTING,
    SIGNS,
    TITLE,
    VERDICT_WORDS,
    WORST_FIRST,
    chance_words,
    count_words,
    cure_words,
    cured_name,
    dry_words,
    gap_name,
    kind_words,
    meaning_words,
    open_words,
    row_words,
    unsaid_words,
)

SCHEMA = 1
COLUMNS = (
    "wall", "front", "beside", "other", "axis", "edge", "nominal_mm", "least_mm", "open", "low_mm",
    "high_mm", "worst_mm", "verdict", "takes_most", "takes_mm", "adjust_mm", "cure",
    "top_or_left_mm", "bottom_or_right_mm",
)  # fmt: skip


def gaps_text(found: GapBudgets, job: Job, chance: Chance | None, rows: Sequence[Settled]) -> str:
    """Give the gap budget for a terminal."""
    return listing_text(gaps_listing(found, job, chance, rows))


def gaps_listing(
    found: GapBudgets, job: Job, chance: Chance | None, rows: Sequence[Settled]
) -> Listing:
    """Give the gaps wall by wall, the worst first, and what would help."""
    walls = grouped((budget.gap.wall, budget) for budget in found.budgets)
    cures = grouped(
        (kind_words(budget.cure.kind, job), cured_name(budget))
        for budget in _worst_first(found.budgets)
        if budget.cure is not None
    )
    stamped = [
        Words(text=text, stamp=True) for text in (*unsaid_words(found, job), *open_words(found))
    ]
    helps = [
        block
        for words, names in cures.items()
        for block in (Words(text=words, indent=2), Words(text=", ".join(names), indent=4, hang=0))
    ]
    return Listing(
        title=TITLE,
        job=job.name,
        sections=(
            Section(
                blocks=(
                    Words(text=count_words(found.budgets), hang=0),
                    *(Words(text=text) for text in (*meaning_words(), *dry_words(found.budgets))),
                    *stamped,
                )
            ),
            *(_wall(wall, budgets) for wall, budgets in walls.items()),
            *([_setting(rows)] if rows else []),
            *([_chance(chance)] if chance else []),
            *(
                [
                    Section(
                        title="What would help, the cheapest; + how much wider, mm",
                        blocks=tuple(helps),
                    )
                ]
                if helps
                else []
            ),
        ),
    )


def _setting(rows: Sequence[Settled]) -> Section:
    words = (*map(row_words, rows), SETTING)
    return Section(
        title="Where each front sits for even gaps, mm",
        blocks=tuple(Words(text=text, indent=2) for text in words),
    )


def _chance(chance: Chance) -> Section:
    words = tuple(Words(text=text, indent=2) for text in chance_words(chance))
    return Section(title="The whole kitchen", blocks=words)


def _wall(wall: str, budgets: Sequence[Budget]) -> Section:
    columns = (
        Column(head="gap"),
        Column(head="planned", right=True),
        Column(head="comes to", right=True),
        Column(head="least", right=True),
        Column(head=""),
        Column(head="verdict"),
        Column(head="most is taken by"),
    )
    rows = tuple(
        TableRow(
            cells=shown(
                gap_name(budget.gap),
                format_mm(budget.gap.nominal),
                f"{format_mm(budget.left.low)} to {format_mm(budget.left.high)}",
                _least(budget),
                SIGNS[budget.verdict],
                VERDICT_WORDS[budget.verdict],
                _most(budget),
            )
        )
        for budget in _worst_first(budgets)
    )
    table = Table(columns=columns, groups=(Group(rows=rows),))
    return Section(title=f"Wall {wall}" if wall else "Boxes that stand nowhere", blocks=(table,))


def _worst_first(budgets: Iterable[Budget]) -> list[Budget]:
    return sorted(budgets, key=lambda b: (WORST_FIRST.index(b.verdict), b.spare or 0.0))


def _least(budget: Budget) -> str:
    width, mark = budget.least.width, "*" if budget.least.open else ""
    return "?" if width is None else f"{format_mm(width)}{mark}"


def _most(budget: Budget) -> str:
    if not budget.parts:
        return ""
    name, takes = budget.parts[0]
    return f"{CAUSE_WORDS[name]}, {format_mm(takes)}"


def gaps_csv(found: GapBudgets, job: Job, chance: Chance | None, rows: Sequence[Settled]) -> str:
    """Give a row for each gap, with two cells to fill in once it is measured, then one for each
    door, to fill in how far it stands out; chance and rows have none."""
    del chance, rows
    sides = (front for budget in found.budgets for front, _ in budget.gap.sides)
    doors = {front.id: front for front in sides if front.swings}
    return csv_text(
        COLUMNS,
        (
            *(_row(budget, job) for budget in found.budgets),
            *(_depth_row(front) for front in doors.values()),
        ),
    )


def _depth_row(front: Front) -> Sequence[object]:
    """Give the row of how far a door stands out, at the edge by which it hangs."""
    said = {
        "wall": front.wall, "front": front.id, "axis": DEPTH, "edge": front.hinged,
        "nominal_mm": number(0.0),
    }  # fmt: skip
    return [said.get(column, "") for column in COLUMNS]


def _row(budget: Budget, job: Job) -> Sequence[object]:
    gap, left, least = budget.gap, budget.left, budget.least.width
    name, takes = budget.parts[0] if budget.parts else ("", 0.0)
    return (
        gap.wall,
        gap.one.id,
        gap.beside,
        gap.other.id if gap.other else gap.name,
        gap.axis,
        gap.edge,
        number(gap.nominal),
        None if least is None else number(least),
        "least reveal" if budget.least.open else "",
        number(left.low),
        number(left.high),
        number(left.worst),
        budget.verdict,
        spaced(name),
        number(takes),
        number(budget.adjust),
        cure_words(budget.cure, job) if budget.cure else "",
        "",
        "",
    )


def spaced(name: str) -> str:
    """Give a cause's name as data has it.

    >>> spaced("front-size")
    'front size'
    """
    return name.replace("-", " ")


def gaps_json(found: GapBudgets, job: Job, chance: Chance | None, rows: Sequence[Settled]) -> str:
    """Give all of it as data."""
    data = {
        "schema": SCHEMA,
        "job": job.name,
        "confidence": number(CONFIDENCE),
        "assumed": sorted(k for k in job.assumed if k.split(".")[0] in ("gaps", "fronts")),
        "left_out": [LEFT_OUT_WORDS[each] for each in found.left_out],
        "moisture_outside": [number(each) for each in found.outside],
        "chance": chance
        and {
            "planned": number(chance.planned),
            "gaps": chance.gaps,
            "not_known": chance.unknown,
            "trials": chance.trials,
            "seed": chance.seed,
            "curve": [
                {"gap_mm": number(at), "chance": number(share)} for at, share in chance.curve
            ],
        },
        "rows": [
            {
                **in_mm(before=row.before, then=row.then),
                "moves": [
                    {"front": name, "right_mm": number(move)} for name, move in row.moves.items()
                ],
            }
            for row in rows
        ],
        "gaps": [_data(budget, job) for budget in found.budgets],
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def _data(budget: Budget, job: Job) -> dict[str, object]:
    gap, left = budget.gap, budget.left
    return {
        "between": list(gap.names),
        "beside": gap.beside,
        "wall": gap.wall,
        "axis": gap.axis,
        "edge": gap.edge,
        **in_mm(
            nominal=gap.nominal,
            least=budget.least.width,
            low=left.low,
            high=left.high,
            worst=left.worst,
            widest=left.widest,
            driest=budget.dry,
            adjust=budget.adjust,
        ),
        "open": ["least_reveal"] if budget.least.open else [],
        "verdict": budget.verdict,
        "causes": [{"name": spaced(name), "mm": number(takes)} for name, takes in budget.parts],
        "cure": cure_words(budget.cure, job) if budget.cure else None,
    }
