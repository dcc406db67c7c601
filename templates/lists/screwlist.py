"""Which screws to turn, as lists for the ladder, a page for each wall, for a spreadsheet, and as
data."""

import json
from collections.abc import Iterable, Sequence

from msgspec.structs import replace

from jigs.given.job import Job
from jigs.ground.lengths import format_mm
from jigs.room.edgelines import Parted
from jigs.room.screws import Adjustment, Beyond, GapAsHung, Screw, Turn
from templates.lists.cells import csv_text, in_mm, number
from templates.lists.listing import Column, Group, Listing, Section, Table, TableRow, Words, shown
from templates.lists.listtext import listing_text
from templates.words.budgetwords import gap_name
from templates.words.screwwords import (
    BEYOND,
    DEPTH_HOW,
    DEPTH_LEVEL,
    GAPS,
    HOW,
    NOTHING,
    PARTED,
    PARTED_HOW,
    PLUG,
    STEPS,
    SYMPTOM_ROWS,
    SYMPTOMS,
    TITLE,
    UNSAID,
    beyond_words,
    depth_words,
    edge_words,
    ends_words,
    is_worth,
    lap_words,
    one_end_words,
    plug_steps,
    screw_words,
    way_words,
)

SCHEMA = 1
COLUMNS = ("wall", "front", "screw", "at", "move", "mm", "overlay_mm")


def screws_listings(plan: Adjustment, job: Job, file: str) -> tuple[Listing, ...]:
    """Give a list for each wall, and what helps where no screw does."""
    walls = _walls(plan)
    return (*(_wall(wall, plan, job) for wall in walls), _wrong(job, file))


def _walls(plan: Adjustment) -> list[str]:
    """Name the walls of what was measured, in order."""
    walls = (taped.budget.gap.wall for taped in plan.gaps)
    return list(dict.fromkeys((*walls, *(each.front.wall for each in plan.depths))))


def screws_text(plan: Adjustment, job: Job, file: str) -> str:
    """Say the same for a terminal."""
    return "\n".join(map(listing_text, screws_listings(plan, job, file)))


def _wall(wall: str, plan: Adjustment, job: Job) -> Listing:
    own = replace(
        plan,
        gaps=tuple(each for each in plan.gaps if each.budget.gap.wall == wall),
        turns=tuple(turn for turn in plan.turns if turn.front.wall == wall and is_worth(turn)),
        beyond=tuple(each for each in plan.beyond if each.taped.budget.gap.wall == wall),
        depths=tuple(each for each in plan.depths if each.front.wall == wall),
        parted=tuple(each for each in plan.parted if each.lower.wall == wall),
    )
    steps = [_step(screw, own) for screw in STEPS if screw != "depth"] if own.gaps else []
    idle = not any(turn.screw != "depth" for turn in own.turns)
    if own.gaps and idle:
        steps = [Section(blocks=(Words(text=NOTHING),))]
    name = f"{TITLE}, wall {wall}" if wall else TITLE
    one_end = one_end_words(own)
    return Listing(
        title=name,
        job=job.name,
        sections=(
            Section(title=f"Wall {wall}" if wall else "", blocks=tuple(Words(text=t) for t in HOW)),
            *([Section(blocks=(Words(text=one_end, stamp=True),))] if one_end else []),
            *steps,
            _depth(own),
            *([_parted(own.parted)] if own.parted else []),
            *([_beyond(own.beyond)] if own.beyond else []),
            *([Section(title=GAPS, blocks=(_gaps(own.gaps),))] if own.gaps else []),
        ),
    )


def _step(screw: Screw, own: Adjustment) -> Section:
    """Give the turns of one kind of screw; of the height only where a gap tells it."""
    if screw == "height" and not any(taped.budget.gap.axis == "y" for taped in own.gaps):
        return Section(title=STEPS[screw], blocks=(Words(text=UNSAID, indent=2),))
    turns = [turn for turn in own.turns if turn.screw == screw]
    return Section(title=STEPS[screw], blocks=(_turns(turns),))


def _depth(own: Adjustment) -> Section:
    """Give the turns of the depth screws, and what none of them moves."""
    if not own.depths:
        return Section(title=STEPS["depth"], blocks=(Words(text=DEPTH_HOW, indent=2),))
    turns = [turn for turn in own.turns if turn.screw == "depth"]
    beyond = [Words(text=text, indent=2, stamp=True) for text in depth_words(own.depths)]
    level = [] if turns or beyond else [Words(text=DEPTH_LEVEL, indent=2)]
    return Section(
        title=STEPS["depth"], blocks=(*([_turns(turns)] if turns else []), *beyond, *level)
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


def _parted(found: Sequence[Parted]) -> Section:
    """Name the edges that are no line though every gap comes to its plan."""
    columns = (
        Column(head="done", paper=True, ticks="each"),
        Column(head="beside each other", measured=True),
        Column(head="apart", right=True, measured=True),
        Column(head="lower", measured=True),
    )
    rows = tuple(
        TableRow(cells=shown("", edge_words(each), format_mm(each.step), each.lower.id))
        for each in found
    )
    table = Table(columns=columns, groups=(Group(rows=rows),))
    return Section(title=PARTED, blocks=(Words(text=PARTED_HOW, indent=2), table))


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
                _remark(taped),
            )
        )
        for taped in gaps
    )
    return Table(columns=columns, groups=(Group(rows=rows),))


def _remark(taped: GapAsHung) -> str:
    """Say what a gap needs, if it comes out narrower, and that one end alone was measured."""
    needs = f"needs {format_mm(taped.budget.least.width or 0.0)}" if taped.tight else ""
    return ", ".join(filter(None, (needs, "" if taped.both else "one end")))


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
                "plates": [
                    {
                        "front": name,
                        **in_mm(now=plate.now, wanted=plate.wanted, at_hand=plate.at_hand),
                    }
                    for name, plate in each.plates.items()
                ],
            }
            for each in plan.beyond
        ],
        "parted": [
            {
                "lower": each.lower.id,
                "higher": each.higher.id,
                "edge": each.edge,
                **in_mm(step=each.step),
            }
            for each in plan.parted
        ],
        "depths": [
            {
                "front": each.front.id,
                "out_mm": [number(end) for end in (each.ends if each.both else each.ends[:1])],
                "both_ends": each.both,
                "why": each.why,
            }
            for each in plan.depths
        ],
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def _ordered(plan: Adjustment) -> list[Turn]:
    """Give what is worth a turn: wall by wall height first, then side."""
    order = [*STEPS]
    walls = _walls(plan)
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
        "both_ends": taped.both,
        "then_mm": [number(each) for each in taped.then],
    }
