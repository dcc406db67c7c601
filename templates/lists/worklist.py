"""The order of work as a list: the files of a pack, what stops the work, then day by day its
stages."""

from jigs.bench.jobplan import JobPlan
from templates.lists.listing import Column, Group, Listing, Section, Table, TableRow, Words, shown
from templates.lists.workstages import COLUMNS, StageGroups
from templates.lists.workview import Paged, WorkView
from templates.words.packwords import (
    FILES,
    FILES_HOW,
    FILES_TITLE,
    files_in_order,
    printed_words,
    unprinted_words,
)
from templates.words.planwords import TITLE, day_title
from templates.words.settlewords import NOTHING, SETTLE_TITLE, settle_words
from templates.words.worknotes import DONE_TITLE, TODAY, done_line, how_words

FILE_COLUMNS = (
    Column(head="", paper=True, ticks="each"),
    Column(head="file"),
    Column(head="printed"),
    Column(head="what for", runs_on=True),
)


def plan_listing(view: WorkView) -> Listing:
    """List the whole work; days that are done in one line each."""
    plan, paged = view.plan, view.paged
    settled = [Words(text=text, stamp=True) for text in settle_words(plan)]
    past = [Words(text=done_line(day)) for day in plan.days if day.number < plan.today]
    sections = [
        *([_files(plan, paged)] if paged.files else []),
        Section(blocks=tuple(Words(text=text) for text in how_words(plan))),
        Section(title=SETTLE_TITLE, blocks=tuple(settled or [Words(text=NOTHING)])),
        *([Section(title=DONE_TITLE, blocks=tuple(past))] if past else []),
    ]
    groups = StageGroups(view=view)
    for day in plan.days:
        if day.number >= plan.today:
            now = f"{TODAY} " if day.number == plan.today and plan.done.begun else ""
            own = tuple(groups.of(stage, day) for stage in day.stages)
            table = Table(columns=COLUMNS, groups=own, heads=False)
            sections.append(Section(title=f"{now}{day_title(plan, day)}", blocks=(table,)))
    return Listing(title=TITLE, job=plan.layout.job.name, sections=tuple(sections))


def _files(plan: JobPlan, paged: Paged) -> Section:
    names = files_in_order(paged.files)
    rows = tuple(
        TableRow(
            cells=shown("", name, printed_words(FILES[name], plan.days), FILES[name].purpose),
            note=f"{paged.costs[name]}." if name in paged.costs else "",
        )
        for name in names
        if FILES[name].before
    )
    table = Table(columns=FILE_COLUMNS, groups=(Group(rows=rows),))
    unprinted = Words(text=unprinted_words(names, paged.costs))
    return Section(title=FILES_TITLE, blocks=(Words(text=FILES_HOW), table, unprinted))
