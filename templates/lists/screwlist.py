"""Which screws to turn, as lists for the ladder, a page for each wall, for a spreadsheet, and as
data."""

import json
from collections.abc import Iterable, Sequence

from jigs.given.job import Job
from jigs.ground.grouped import grouped
from jigs.ground.lengths import format_mm
from jigs.room.screws import Adjustment, Beyond, GapAsHung, Turn
from templates.lists.cells import csv_text, in_mm, number
from templates.lists.listing import Column, Group, Listing, Section, Table, TableRow, Words, shown
from templates.lists.listtext import listing_text
from templates.words.budgetwords import gap_name
from templates.words.screwwords import (
    BEYOND,
    DEPTH,
    DEPTH_HOW,
    GAPS,
    HOW,
    NOTHING,
    PLUG,
    STEPS,
    SYMPTOM_ROWS,
    SYMPTOMS,
    TITLE,
    UNSAID,
    beyond_words,
    ends_words,
    is_worth,
    lap_words,
    plug_steps,
    screw_words,
    way_words,
)

SCHEMA = 1
COLUMNS = ("wall", "front", "screw", "at", "move", "mm", "overlay_mm")


def screws_listings(plan: Adjustment, job: Job, file: str) -> tuple[Listing, ...]:
    """Give a list for each wall, and what helps where no screw does."""
    walls = grouped((taped.budget.gap.wall, taped) for taped in plan.gaps)
    return (*(_wall(wall, gaps, plan, job) for wall, gaps in walls.items()), _wrong(job, file))


def screws_text(plan: Adjustment, job: Job, file: str) -> str:
    """Say the same for a terminal."""
    return "\n".join(map(listing_text, screws_listings(plan, job, file)))


def _wall(wall: str, gaps: Sequence[GapAsHung], plan: Adjustment, job: Job) -> Listing:
    turns = [turn for turn in plan.turns if turn.front.wall == wall]
    worth = [turn for turn in turns if is_worth(turn)]
    beyond = [each for each in plan.beyond if each.taped.budget.gap.wall == wall]
    level = any(taped.budget.gap.axis == "y" for taped in gaps)
    steps = [
        Section(title=title, blocks=(_turns([t for t in worth if t.screw == screw]),))
        for screw, title in STEPS.items()
        if level or screw == "side"
    ]
    if not level:
        steps.insert(0, Section(title=STEPS["height"], blocks=(Words(text=UNSAID, indent=2),)))
    name = f"{TITLE}, wall {wall}" if wall else TITLE
    return Listing(
        title=name,
        job=job.name,
        sections=(
            Section(title=f"Wall {wall}" if wall else "", blocks=tuple(Words(text=t) for t in HOW)),
            *(steps if worth else [Section(blocks=(Words(text=NOTHING),))]),
            Section(title=DEPTH, blocks=(Words(text=DEPTH_HOW, indent=2),)),
            *([_beyond(beyond)] if beyond else []),
            Section(title=GAPS, blocks=(_gaps(gaps),)),
        ),
    )


def _turns(turns: Iterable[Turn]) -> Table:
    columns = (
        Column(head="done", paper=True, ticks="each"),
        Column(head="front", measured=True),
        Column(head="which"),
        Column(head="way", measured=True),
        Column(head="mm", right=True, measured=True),
        Column(head=""),
    )
    rows = tuple(
        TableRow(
            cells=shown(
                "", turn.front.id, screw_words(turn), way_words(turn),
                format_mm(abs(turn.move)), lap_words(turn),
            )
        )
        for turn in turns
    )  # fmt: skip
    return Table(columns=columns, groups=(Group(rows=rows),))


def _beyond(found: Sequence[Beyond]) -> Section:
    blocks = (
        Words(text=text, indent=2 if leads else 4, stamp=leads)
        for text, leads in beyond_words(found)
    )
    return Section(title=BEYOND, blocks=tuple(blocks))


def _gaps(gaps: Sequence[GapAsHung]) -> Table:
    columns = (
        Column(head="gap"),
        Column(head="measured", right=True),
        Column(head="planned", right=True),
        Column(head="comes to", right=True),
        Column(head=""),
    )
    rows = tuple(
        TableRow(
            cells=shown(
                gap_name(taped.budget.gap),
                ends_words(taped.now, both=taped.both),
                format_mm(taped.budget.gap.nominal),
                ends_words(taped.then),
                f"needs {format_mm(taped.budget.least.width or 0.0)}" if taped.tight else "",
            )
        )
        for taped in gaps
    )
    return Table(columns=columns, groups=(Group(rows=rows),))


def _wrong(job: Job, file: str) -> Listing:
    columns = Column(head="you see"), Column(head="likely wrong, and what first", runs_on=True)
    table = Table(
        columns=columns,
        groups=(Group(rows=tuple(TableRow(cells=shown(*r)) for r in SYMPTOM_ROWS)),),
    )
    plug = tuple(Words(text=text, indent=2) for text in plug_steps(file))
    return Listing(
        title="What no screw cures",
        job=job.name,
        sections=(
            Section(title=SYMPTOMS, blocks=(table,)),
            Section(title=PLUG, blocks=plug),
        ),
    )


def screws_csv(plan: Adjustment, job: Job, file: str) -> str:
    """Give a row for each screw, in the order in which they are turned."""
    del job, file
    return csv_text(COLUMNS, ([*_row(turn).values()] for turn in _ordered(plan)))


def screws_json(plan: Adjustment, job: Job, file: str) -> str:
    """Give all of it as data."""
    del file
    data = {
        "schema": SCHEMA,
        "job": job.name,
        "turns": [_row(turn) for turn in _ordered(plan)],
        "gaps": [_data(taped) for taped in plan.gaps],
        "beyond": [
            {
                "between": list(each.taped.budget.gap.names),
                "axis": each.taped.budget.gap.axis,
                "edge": each.taped.budget.gap.edge,
                "why": each.why,
                "fronts": [front.id for front in each.fronts],
                **in_mm(off=each.taped.off),
            }
            for each in plan.beyond
        ],
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def _ordered(plan: Adjustment) -> list[Turn]:
    """Give what is worth a turn: wall by wall height first, then side."""
    order = [*STEPS]
    walls = list(dict.fromkeys(taped.budget.gap.wall for taped in plan.gaps))
    return sorted(
        filter(is_worth, plan.turns),
        key=lambda turn: (walls.index(turn.front.wall), order.index(turn.screw)),
    )


def _row(turn: Turn) -> dict[str, object]:
    at = turn.at
    if at is not None and not turn.front.swings:
        where: object = {1: "upper edge", 2: "lower edge"}[at]
    else:
        where = "all" if at is None else at
    return {
        "wall": turn.front.wall,
        "front": turn.front.id,
        "screw": turn.screw,
        "at": where,
        "move": way_words(turn).lower(),
        "mm": number(abs(turn.move)),
        "overlay_mm": None if turn.overlay is None else number(turn.overlay),
    }


def _data(taped: GapAsHung) -> dict[str, object]:
    gap = taped.budget.gap
    return {
        "between": list(gap.names),
        "beside": gap.beside,
        "wall": gap.wall,
        "axis": gap.axis,
        "edge": gap.edge,
        **in_mm(planned=gap.nominal, least=taped.budget.least.width),
        "measured_mm": [number(each) for each in (taped.now if taped.both else taped.now[:1])],
        "then_mm": [number(each) for each in taped.then],
    }
