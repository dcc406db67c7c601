"""The order of the work of a job: its stages divided into days, with all that they are told from:
what is done, what is open or held back and what that stops.

A day is a share of the work, not a time: nobody has published how long a board, a card or a door
takes a first hand. It ends when things have been taken in hand so often as the person wants
(`MOST_A_DAY`, our own choice); where something dries: glue, a coat of paint; and where something
has to come first: fronts that were ordered. A station is never parted: its bit and stop are set
once.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.bench.course import Course, plan_courses
from jigs.bench.firstarticle import FirstArticle, first_articles
from jigs.bench.kept import NOTHING_KEPT, Kept, done_of
from jigs.bench.station import Station
from jigs.bench.tracked import Tracked, track
from jigs.bench.workplan import Stage, StageKind, Task, plan_work
from jigs.box.bypart import OpenCuts
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import Cut
from jigs.given.confirming import OpenNumber
from jigs.ground.grouped import grouped

MOST_A_DAY = 60
"""How often something is taken in hand in a day: a piece cut, a card set, a door painted or hung.
Our own choice: no source gives times."""
ENDS_A_DAY: frozenset[StageKind] = frozenset({"before", "order", "set", "back", "front"})
"""What nothing else follows on the same day."""
BEGINS_A_DAY: frozenset[StageKind] = frozenset({"set", "back", "front"})
"""What nothing else goes before on the same day: paint wants a room without dust."""
AT_THE_WALL: frozenset[StageKind] = frozenset({"scribed", "hung", "fitted", "adjusted"})
"""What shows that a part's box is set."""


class Day(Struct, frozen=True, kw_only=True):
    """What is done in a day."""

    number: int
    """From 1."""
    stages: tuple[Stage, ...]

    @property
    def tasks(self) -> tuple[Task, ...]:
        """All that is done."""
        return tuple(task for stage in self.stages for task in stage.tasks)


def divide(stages: Iterable[Stage], most: int = MOST_A_DAY) -> tuple[Day, ...]:
    """Divide the work into days in which something is taken in hand at most so often, but for a
    station or a box that takes more."""
    days: list[list[Stage]] = [[]]
    for stage in stages:
        for portion in _portions(stage, most):
            here = days[-1]
            full = sum(each.amount for each in here) + portion.amount > most
            glued = any(each.kind == "assembled" for each in here) and portion.kind != "assembled"
            dusty = portion.kind in BEGINS_A_DAY
            ended = any(each.kind in ENDS_A_DAY for each in here)
            if here and (full or glued or dusty or ended):
                days.append([])
            days[-1].append(portion)
    return tuple(Day(number=number, stages=tuple(day)) for number, day in enumerate(days, 1) if day)


def _portions(stage: Stage, most: int) -> Iterator[Stage]:
    """Divide a stage that takes more than a day into like portions, box by box if it can be."""
    if stage.station is not None or stage.amount <= most:
        yield stage
        return
    target = stage.amount / -(-stage.amount // most)
    taken: list[Task] = []
    for task in _pieces_of(stage.tasks, most):
        load = sum(each.amount for each in taken)
        own = sum(each.amount for each in task)
        if taken and (load >= target or load + own > most):
            yield replace(stage, tasks=tuple(taken))
            taken = []
        taken += task
    yield replace(stage, tasks=tuple(taken))


def _pieces_of(tasks: Sequence[Task], most: int) -> Iterator[Sequence[Task]]:
    """Give the tasks of each box together, one by one those of a box that takes more than a day."""
    for own in grouped((task.boxes, task) for task in tasks).values():
        if sum(task.amount for task in own) <= most:
            yield own
        else:
            yield from ((task,) for task in own)


Act = tuple[str, str]
"""A part and the key of its step."""


class Done(Struct, frozen=True, kw_only=True):
    """What of the work is done."""

    acts: frozenset[Act] = frozenset()
    """The steps that are done, what the job itself says has arrived among them."""
    marked: frozenset[Act] = frozenset()
    """Those that somebody marked."""
    boxes: frozenset[str] = frozenset()
    """The boxes that are set, since something is hung or fitted in them."""

    @property
    def begun(self) -> bool:
        """Whether anything is marked."""
        return bool(self.marked)

    def is_done(self, task: Task) -> bool:
        """Tell whether a task is known to be done. Nobody marks a box that is set, nor a trial."""
        if task.step is None:
            return task.part in self.boxes and task.part in task.boxes
        return (task.part, task.step.key) in self.acts

    def is_marked(self, task: Task) -> bool:
        """Tell whether somebody marked a task."""
        return task.step is not None and (task.part, task.step.key) in self.marked


def find_done(
    tracked: Iterable[Tracked], courses: Mapping[str, Course], kept: Mapping[str, Kept]
) -> Done:
    """Say what of a job's parts is done, by their courses and by what is kept of them."""
    boxes = {part.id: part.boxes for part in tracked}
    marked = {(part, key) for part in boxes if part in kept for key in kept[part].marks}
    acts = {
        (part, key)
        for part in boxes
        for key in done_of(courses[part], kept.get(part, NOTHING_KEPT))
    }
    hung = (part for part, key in marked if key in AT_THE_WALL)
    return Done(
        acts=frozenset(acts),
        marked=frozenset(marked),
        boxes=frozenset(box for part in hung for box in boxes[part]),
    )


def find_today(days: Sequence[Day], done: Done) -> int:
    """Give the number of the first day with anything left to do, of a job of which nothing is
    marked the first; the number after the last where nothing is left.

    A day of which nothing can be marked (an order, boxes that are set) is behind whoever has
    marked anything of a later one.
    """
    if not done.begun:
        return 1
    last = max((day.number for day in days if any(map(done.is_marked, day.tasks))), default=0)
    for day in days:
        tasks = [task for task in day.tasks if task.step is not None]
        if tasks and not all(map(done.is_done, tasks)):
            return day.number
        if not tasks and day.number > last:
            return day.number
    return len(days) + 1


class JobPlan(Struct, frozen=True, kw_only=True):
    """The work of a job."""

    layout: Layout
    parts: Mapping[str, Tracked]
    courses: Mapping[str, Course]
    stations: Sequence[Station]
    days: Sequence[Day]
    most: int
    """How often something is taken in hand in a day."""
    articles: Sequence[FirstArticle]
    setting: Mapping[str, Sequence[str]]
    """The boxes of each wall in the order in which they are set."""
    done: Done = field(default_factory=Done)
    today: int = 1
    """The first day with anything left to do."""

    def open_at(self, stage: Stage) -> tuple[OpenNumber, ...]:
        """Give the open numbers that what is done in a stage rests on."""
        if stage.station is not None:
            numbers = [number for row in stage.station.rows for number in row.open]
        elif stage.kind == "cut":
            cuts = OpenCuts(self.layout)
            numbers = [number for task in stage.tasks for number in cuts.of(task.part)]
        elif stage.kind == "try":
            numbers = [number for article in self.articles for number in self._tried(article)]
        else:
            numbers = []
        return tuple(dict.fromkeys(numbers))

    def _tried(self, article: FirstArticle) -> Iterator[OpenNumber]:
        """Give the open numbers of the hardware that a first article is made with."""
        drawer = article.front.drawer
        rests = [article.front.open, drawer.open if drawer is not None else ()]
        rests += [side.open for side in self.layout.sides if side.board in article.boards]
        for number in (each for numbers in rests for each in numbers):
            if (number.kind, number.record) == (article.kind, article.record.name):
                yield number

    def stopped_by(self, part: str) -> tuple[str, ...]:
        """Name the parts of which a step waits until this one is released, itself left out."""
        return tuple(
            dict.fromkeys(
                task.part
                for day in self.days
                for task in day.tasks
                if part in task.held and task.part != part
            )
        )


def plan_job(
    layout: Layout,
    cut: Cut,
    stations: Sequence[Station],
    kept: Mapping[str, Kept] | None = None,
    *,
    setting: Mapping[str, Sequence[str]] | None = None,
    ordering: bool = False,
    most: int = MOST_A_DAY,
) -> JobPlan:
    """Plan the work of a job as it is printed; `cut` is its cut list, `stations` where its parts
    are bored, `kept` what is kept of them, `setting` the boxes of each wall in the order in which
    they are set, `ordering` whether anything is ordered from boxes that stand, `most` how much is
    done in a day."""
    tracked = track(layout, cut.pieces)
    courses = plan_courses(layout, tracked, stations)
    setting = setting or {}
    articles = first_articles(layout)
    stages = plan_work(
        tracked, courses, stations,
        setting=setting.values(),
        articles=articles,
        ordering=ordering,
    )  # fmt: skip
    days = divide(stages, most)
    kept = kept or {}
    done = find_done(tracked, courses, kept)
    return JobPlan(
        layout=layout, parts={part.id: part for part in tracked}, courses=courses,
        stations=stations, days=days, most=most, articles=articles, setting=setting,
        done=done, today=find_today(days, done),
    )  # fmt: skip
