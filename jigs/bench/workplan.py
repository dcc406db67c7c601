"""The order of the work of a whole job: every step of every part in stages, in which all parts are
taken through one thing before the next is begun.

There is one source of what comes before what: the courses of the parts (`course.py`), which the
pages of a phone go by too. Where these leave it free, boards are cut before any is bored, boxes
stand and are measured before drawer boxes are cut to them, fronts ordered from them and fillers
scribed beside them, and fronts
are bored at one station after the other. Each station is one stage, so that its page is worked
through once. Common practice, no source.

What is held back keeps its place in the order, with the parts whose release it waits for.
"""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.bench.course import AFTER_HANGING, Course
from jigs.bench.firstarticle import FirstArticle
from jigs.bench.standing import Step, StepKind
from jigs.bench.station import Station
from jigs.bench.tracked import Tracked
from jigs.cutlist.piece import DRAWER_KINDS
from jigs.ground.grouped import grouped

StageKind = StepKind | Literal["before", "try", "order", "set"]
"""What a stage is for: a step of the parts; or, of which no part is marked, `before`: what is
settled, bought and printed before the first board; `try`: the first articles on scrap; `order`:
fronts and drawer boxes, from boxes that stand; `set`: boxes put to their walls."""

_Turn = Literal[
    "cut", "banded", "boards", "mounted", "banded-late", "boxes", "scribed", "drawers-cut",
    "drawers-banded", "arrived", "drawers", "bored", "painted", "drawers-in", "hung", "fitted",
    "through", "adjusted",
]  # fmt: skip
TURNS: tuple[_Turn | StageKind, ...] = (
    "before", "cut", "banded", "try", "boards", "mounted", "banded-late", "boxes", "order", "set",
    "scribed", "drawers-cut", "drawers-banded", "arrived", "drawers", "bored", "painted",
    "drawers-in", "hung", "fitted", "through", "adjusted",
)  # fmt: skip
"""In which order the stages follow where the courses allow it (common practice, no source)."""


class Task(Struct, frozen=True, kw_only=True):
    """One step of one part; of what is bored, at one station."""

    part: str
    boxes: tuple[str, ...]
    """The box that it belongs to; of what belongs to a wall those it stands at."""
    step: Step | None = None
    """None where no part is marked by it: a box that is set, a front that is tried on scrap."""
    amount: int = 1
    """How often something is taken in hand for it: pieces alike, or settings of a card."""
    held: tuple[str, ...] = ()
    """The parts that must be released before it; itself, or what it waits for."""


class Stage(Struct, frozen=True, kw_only=True):
    """What is done in one go."""

    kind: StageKind
    tasks: tuple[Task, ...] = ()
    step: Step | None = None
    """The step that all tasks are; None where they are none."""
    station: Station | None = None
    """Of what is bored, where."""
    of_drawers: bool = False
    """Whether its parts are drawer boxes and what they are made of."""

    @property
    def amount(self) -> int:
        """How often something is taken in hand."""
        return sum(task.amount for task in self.tasks)

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts, or boxes, in order."""
        return tuple(task.part for task in self.tasks)


def is_wanted(group: str, name: str, stage: Stage) -> bool:
    """Tell whether hardware of a group and a name in it, as an order has them, is to hand in a
    stage (common practice, no source)."""
    match group, name:
        case "screw", "pocket":
            return stage.kind == "assembled" and not stage.of_drawers
        case ("slide" | "spacer" | "plate", _) | ("screw", "slide" | "plate"):
            return stage.kind == "mounted"
        case ("hinge" | "fitting", _) | ("screw", "cup" | "front-fixing"):
            return stage.kind == "hung"
        case ("pin", _) | ("screw", "false-front"):
            return stage.kind == "fitted" and not stage.of_drawers
        case _:  # pulls, their screws, bumpers, latches: when every gap is even
            return stage.kind == "adjusted"


_Key = tuple[int, int, str]
"""Its turn, which of several there, and what tells it from others of that turn."""
_Act = tuple[str, str]
"""A part and the key of its step."""


def plan_work(
    tracked: Sequence[Tracked],
    courses: Mapping[str, Course],
    stations: Sequence[Station],
    *,
    setting: Iterable[Sequence[str]] = (),
    articles: Iterable[FirstArticle] = (),
    ordering: bool = False,
) -> tuple[Stage, ...]:
    """Put the steps of a job's parts into stages, in the order of the work.

    `setting`: the boxes of each wall in the order in which they are set; `articles`: what is tried
    on scrap; `ordering`: whether anything is ordered from boxes that stand.
    """
    keyed = dict(_keyed(tracked, courses, stations))
    own: list[tuple[_Key, Stage]] = [((_turn("before"), 0, ""), Stage(kind="before"))]
    tried = tuple(Task(part=article.front.id, boxes=(article.front.box,)) for article in articles)
    boxes = tuple(Task(part=box, boxes=(box,)) for wall in setting for box in wall)
    if tried:
        own.append(((_turn("try"), 0, ""), Stage(kind="try", tasks=tried)))
    if ordering:
        own.append(((_turn("order"), 0, ""), Stage(kind="order")))
    if boxes:
        own.append(((_turn("set"), 0, ""), Stage(kind="set", tasks=boxes)))
    return tuple(_in_order({**keyed, **dict(own)}, _before(courses), _released(courses)))


def _turn(turn: _Turn | StageKind) -> int:
    return TURNS.index(turn)


def _keyed(
    tracked: Sequence[Tracked], courses: Mapping[str, Course], stations: Sequence[Station]
) -> Iterable[tuple[_Key, Stage]]:
    """Give the stages of what parts are marked by, not yet in order."""
    found: dict[_Key, list[Task]] = {}
    kinds: dict[_Key, tuple[Step, bool]] = {}
    for part in tracked:
        steps = courses[part.id].steps
        for step in steps:
            if step.kind == "bored":
                continue
            coats = [each for each in steps if each.kind in ("back", "front")]
            coat = coats.index(step) if step in coats else 0
            key = (_turn(_turn_of(part, step, steps)), coat, step.key)
            kinds[key] = step, _is_drawers(part)
            # A drawer box that is put together is counted by its pieces.
            counted = part.drawer is not None and step.kind == "assembled"
            found.setdefault(key, []).append(
                Task(
                    part=part.id, boxes=part.boxes, step=step,
                    amount=0 if counted else part.count,
                )
            )  # fmt: skip
    for key, tasks in found.items():
        step, of_drawers = kinds[key]
        yield key, Stage(kind=step.kind, step=step, tasks=tuple(tasks), of_drawers=of_drawers)
    for number, station in enumerate(stations):
        step = Step(kind="bored", work=station.work)
        yield (
            (_turn(_turn_at(station)), number, station.name),
            Stage(kind="bored", step=step, station=station, tasks=tuple(_bored(station, step))),
        )


def _bored(station: Station, step: Step) -> Iterable[Task]:
    """Give the parts that are bored at a station, each once, with how often a card is set on it."""
    rows = grouped((row.part.id, row) for row in station.rows if not (row.withheld or row.bored))
    for part, own in rows.items():
        yield Task(
            part=part, boxes=(own[0].part.box,), step=step,
            amount=sum(len(row.settings) for row in own),
        )  # fmt: skip


def _is_drawers(part: Tracked) -> bool:
    """Tell whether a part is a drawer box or what one is made of."""
    return part.drawer is not None or (part.piece is not None and part.piece.kind in DRAWER_KINDS)


def _turn_at(station: Station) -> _Turn:
    """Say when a station has its turn."""
    if station.work in AFTER_HANGING:
        return "through"
    return "boards" if station.face == "inside" else "bored"


def _turn_of(part: Tracked, step: Step, steps: Sequence[Step]) -> _Turn:
    """Say when a step that is not bored has its turn."""
    match step.kind:
        case "banded":
            before = steps[: steps.index(step)]
            late = any(each.kind in ("bored", "mounted") for each in before)
            if _is_drawers(part):
                return "drawers-banded"
            return "banded-late" if late else "banded"
        case "cut":
            return "drawers-cut" if _is_drawers(part) else "cut"
        case "assembled":
            return "drawers" if _is_drawers(part) else "boxes"
        case "back" | "front":
            return "painted"
        case "fitted":
            return "drawers-in" if _is_drawers(part) else "fitted"
        case "arrived" | "mounted" | "scribed" | "hung" | "adjusted":
            return step.kind
        case _:
            raise AssertionError(f"{step.kind} has its turn at its stations")


def _before(courses: Mapping[str, Course]) -> dict[_Act, frozenset[_Act]]:
    """Say of each step which steps, of the same part and of others, come right before it."""
    found: dict[_Act, frozenset[_Act]] = {}
    for part, course in courses.items():
        keys = [step.key for step in course.steps]
        for number, key in enumerate(keys):
            waits = {
                (wait.part, wait.step.key)
                for wait in course.waits.get(key, ())
                if wait.step is not None
            }
            found[part, key] = frozenset(
                waits if number == 0 else {*waits, (part, keys[number - 1])}
            )
    return found


def _released(courses: Mapping[str, Course]) -> dict[_Act, tuple[str, ...]]:
    """Say of each step which parts must be released right before it."""
    return {
        (part, key): tuple(wait.part for wait in waits if wait.step is None)
        for part, course in courses.items()
        for key, waits in course.waits.items()
    }


def _in_order(
    stages: Mapping[_Key, Stage],
    before: Mapping[_Act, frozenset[_Act]],
    released: Mapping[_Act, Sequence[str]],
) -> Iterable[Stage]:
    """Take stage by stage the first that is ready as a whole; where none is, of the first that is
    no station whatever is ready."""
    left = {key: [*stages[key].tasks] for key in sorted(stages)}
    open_at: dict[_Act, int] = {}
    for tasks in left.values():
        for task in tasks:
            if task.step is not None:
                act = (task.part, task.step.key)
                open_at[act] = open_at.get(act, 0) + 1
    holds: dict[_Act, tuple[str, ...]] = {}

    def is_ready(task: Task) -> bool:
        return task.step is None or not any(
            open_at.get(act) for act in before[task.part, task.step.key]
        )

    def with_holds(task: Task) -> Task:
        if task.step is None:
            return task
        act = (task.part, task.step.key)
        if act not in holds:
            inherited = (name for each in sorted(before[act]) for name in holds.get(each, ()))
            holds[act] = tuple(dict.fromkeys((*released.get(act, ()), *inherited)))
        return replace(task, held=holds[act])

    while left:
        key, taken = _choose(left, stages, is_ready)
        done = set(taken)
        left[key] = [task for task in left[key] if task not in done]
        if not left[key]:
            del left[key]
        for task in taken:
            if task.step is not None:
                open_at[task.part, task.step.key] -= 1
        yield replace(stages[key], tasks=tuple(with_holds(task) for task in taken))


def _choose(
    left: Mapping[_Key, Collection[Task]],
    stages: Mapping[_Key, Stage],
    is_ready: Callable[[Task], bool],
) -> tuple[_Key, list[Task]]:
    ready: dict[_Key, list[Task]] = {}
    for key, tasks in left.items():
        ready[key] = [task for task in tasks if is_ready(task)]
        if len(ready[key]) == len(tasks):
            return key, ready[key]
    some = [key for key, tasks in ready.items() if tasks]
    key = min(some, key=lambda key: (stages[key].station is not None, key))
    return key, ready[key]
