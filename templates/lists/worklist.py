"""The order of work as a list: the files of a pack, what stops the work, then day by day its
stages: where each is worked through, its parts in rows to tick, and below them what must measure
before one goes on.

What is cut or put together is ticked box by box; all else in one row, since a station's own page
has a box to tick for each part.
"""

from collections.abc import Collection, Iterator, Sequence

from msgspec import Struct, field

from jigs.bench.jobplan import Day, JobPlan
from jigs.bench.station import Work
from jigs.bench.workplan import Stage, StageKind, Task
from jigs.ground.grouped import grouped
from templates.lists.listing import Column, Group, Listing, Section, Table, TableRow, Words, shown
from templates.lists.workview import Paged, WorkView
from templates.words.openwords import open_line
from templates.words.orderwords import item_words
from templates.words.packwords import (
    FILES,
    FILES_HOW,
    FILES_TITLE,
    files_in_order,
    front_pages_words,
    page_words,
    printed_words,
    unprinted_words,
)
from templates.words.planwords import (
    STOP,
    TITLE,
    again_words,
    amount_words,
    bits_of,
    caution_words,
    day_title,
    same_words,
    stage_title,
    stop_words,
    why_words,
)
from templates.words.settlewords import NOTHING, SETTLE_TITLE, settle_words, stopped_words
from templates.words.worknotes import (
    DONE_TITLE,
    TODAY,
    buying_words,
    done_line,
    how_words,
    label_words,
    try_words,
)

FILE_COLUMNS = (
    Column(head="", paper=True, ticks="each"),
    Column(head="file"),
    Column(head="printed"),
    Column(head="what for", runs_on=True),
)
STAGE_COLUMNS = (
    Column(head="", paper=True, ticks="each"),
    Column(head="box"),
    Column(head="done"),
    Column(head="parts", runs_on=True),
)
BOX_BY_BOX: frozenset[StageKind] = frozenset({"cut", "assembled"})
"""What is ticked box by box."""
MOST_AGAIN = 4
"""More parts than these are not named again where they are the same as on a day before."""


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
            table = Table(columns=STAGE_COLUMNS, groups=own, heads=False)
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


class StageGroups(Struct, kw_only=True):
    """Makes the groups of stages one after the other: what was said of one is not said again."""

    view: WorkView
    _titles: set[str] = field(default_factory=set)
    _works: set[tuple[int, Work]] = field(default_factory=set)
    """Of which kind a station was there on a day."""
    _parts: dict[tuple[str, ...], str] = field(default_factory=dict)
    """Of the parts of a stage, which stage on which day it was."""

    @property
    def plan(self) -> JobPlan:
        """The work."""
        return self.view.plan

    def of(self, stage: Stage, day: Day) -> Group:
        """Set a stage."""
        name = stage_title(stage)
        first = name not in self._titles
        self._titles.add(name)
        again = False
        if stage.station is not None:
            again = (day.number, stage.station.work) in self._works
            self._works.add((day.number, stage.station.work))
        same = self._parts.setdefault(stage.parts, same_words(stage, day.number))
        known = same != same_words(stage, day.number) and len(stage.parts) > MOST_AGAIN
        return Group(
            title=self._title(stage, name, alone=len(day.stages) == 1),
            rows=tuple(self._rows(stage, same if known else "")),
            notes=tuple(self._notes(stage, first=first, again=again)),
        )

    def _title(self, stage: Stage, name: str, *, alone: bool) -> str:
        """Say which stage it is and, of a station, its pages, how much there is, its bits; "" where
        the day's own title says it."""
        if stage.station is None:
            return "" if alone else f"{name}."
        pages = self.view.paged.pages.get(stage.station.name, ())
        where = [f"stations.pdf, {page_words(pages)}"] if pages else []
        return f"{name}: {'. '.join([*where, amount_words(stage)])}. {bits_of(stage)}"

    def _rows(self, stage: Stage, same: str) -> Iterator[TableRow]:
        match stage.kind:
            case "before":
                front = front_pages_words(self.view.paged.before)
                for text in (*buying_words(self.plan, self.view.order), *label_words(), *front):
                    yield _row(text)
            case "order":
                yield from self._ordered()
            case "try":
                for text in try_words(self.plan.articles):
                    yield _row(text)
            case "set":
                for wall, boxes in self.plan.setting.items():
                    tasks = [task for task in stage.tasks if task.part in boxes]
                    if tasks:
                        names = ", ".join(task.part for task in tasks)
                        yield _row(names, wall, self._done(tasks))
            case _:
                yield from self._parted(stage, same)

    def _ordered(self) -> Iterator[TableRow]:
        """Name what is ordered, box by box, the drawer boxes last."""
        order = self.view.order
        fronts = grouped((each.front.box, each.front.id) for each in order.fronts)
        for box, names in fronts.items():
            yield _row(", ".join(names), box)
        if not order.boxes_made:
            yield _row(", ".join(name for each in order.drawer_boxes for name in each.parts))

    def _parted(self, stage: Stage, same: str) -> Iterator[TableRow]:
        boxes = grouped((task.boxes, task) for task in stage.tasks)
        if stage.kind in BOX_BY_BOX:
            for box, tasks in boxes.items():
                yield _row(self._names(box, tasks), " ".join(box), self._done(tasks))
        elif stage.tasks:
            named = [self._in_box(box, tasks) for box, tasks in boxes.items()]
            spelt = all(_spelt(box, tasks) for box, tasks in boxes.items())
            yield _row(same or (", " if spelt else "; ").join(named), done=self._done(stage.tasks))

    def _done(self, tasks: Sequence[Task]) -> str:
        done = sum(self.plan.done.is_done(task) for task in tasks)
        if not done:
            return ""
        return "done" if done == len(tasks) else f"{done} of {len(tasks)} done"

    def _in_box(self, box: Sequence[str], tasks: Sequence[Task]) -> str:
        """Name the parts of a box behind it, unless each spells it."""
        names = self._names(box, tasks)
        return names if _spelt(box, tasks) else f"{' '.join(box)} {names}"

    def _names(self, box: Sequence[str], tasks: Sequence[Task]) -> str:
        """Name parts without what their box, or their drawer box, spells already, with how many are
        alike: `SIDE-L, BACK, T1-3-BOX (SIDE x2, FRONT)`."""
        drawers = {drawer.id for drawer in self.plan.layout.drawers}
        words: list[str] = []
        for owner, own in grouped((_owner(task.part, drawers), task) for task in tasks).items():
            pieces = [
                _alike(task.part[len(owner) + 1 :] if owner else _without_box(box, task.part), task)
                for task in own
                if task.part != owner
            ]
            if not owner:
                words += pieces
            else:
                name = _without_box(box, owner)
                words.append(f"{name} ({', '.join(pieces)})" if pieces else name)
        return ", ".join(words)

    def _notes(self, stage: Stage, *, first: bool, again: bool) -> Iterator[Words]:
        """Say what is to be known of a stage: in full on its `first` day; at a station of a kind
        that was there before (`again`) no caution anew."""
        held = tuple(dict.fromkeys(name for task in stage.tasks for name in task.held))
        if held:
            stopped = tuple(task.part for task in stage.tasks if task.held)
            yield Words(text=stopped_words(stage, stopped, held), stamp=True)
        if stage.kind != "before" and (line := open_line(self.plan.open_at(stage))):
            yield Words(text=f"{line}.", stamp=True)
        if not first:
            return
        for text in why_words(self.plan, stage, fronts=bool(self.view.order.fronts)):
            yield Words(text=text)
        if stage.kind not in ("before", "order") and (items := self.view.to_hand(stage)):
            unit = self.plan.layout.job.shown
            named = "; ".join(f"{item.count} x {item_words(item, unit)}" for item in items)
            yield Words(text=f"To hand: {named}.")
        care = " ".join(caution_words(self.plan, stage))
        if care and not again:
            yield Words(text=care)
        for text in again_words(stage) if again else stop_words(self.plan, stage):
            yield Words(text=f"{STOP} {text}", stamp=True)


def _row(text: str, box: str = "", done: str = "") -> TableRow:
    return TableRow(cells=shown("", box, done, text))


def _owner(part: str, drawers: Collection[str]) -> str:
    """Name the drawer box that a part is, or is a piece of; "" where it is none."""
    while part and part not in drawers:
        part = part.rpartition("-")[0]
    return part


def _spelt(box: Sequence[str], tasks: Sequence[Task]) -> bool:
    """Tell whether each of a box's parts is named with it."""
    return all(_without_box(box, task.part) == task.part for task in tasks)


def _without_box(box: Sequence[str], name: str) -> str:
    """Leave out the box of a part that is told by more than a number."""
    own = f"{box[0]}-" if len(box) == 1 else ""
    rest = name[len(own) :]
    return rest if own and name.startswith(own) and rest[:1].isalpha() else name


def _alike(name: str, task: Task) -> str:
    alike = task.step is not None and task.step.kind != "bored" and task.amount > 1
    return f"{name} x{task.amount}" if alike else name
