"""The order of the work of a job with all that it is told from: its days, what is done, what is
bought for which stage, what is open or held back and what that stops."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from jigs.bench.firstarticle import FirstArticle, first_articles
from jigs.bench.station import Station
from jigs.box.bypart import OpenCuts
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import Cut
from jigs.given.confirming import OpenNumber
from jigs.order.buying import Order, make_order
from jigs.order.needed import Item
from jigs.progress.course import Course, plan_courses
from jigs.progress.kept import Kept, stand
from jigs.progress.tracked import Tracked, track
from jigs.progress.workdays import MOST, Day, Done, divide, find_done, find_today
from jigs.progress.workplan import Stage, plan_work
from jigs.room.hanging import Hanging, plan_hanging
from jigs.room.wallmeasures import boxes_of


@dataclass(frozen=True, slots=True, kw_only=True)
class JobPlan:
    """The work of a job."""

    layout: Layout
    parts: Mapping[str, Tracked]
    courses: Mapping[str, Course]
    stations: Sequence[Station]
    days: Sequence[Day]
    most: int
    """How often something is taken in hand in a day (`jigs.progress.workdays`)."""
    order: Order
    articles: Sequence[FirstArticle]
    walls: Sequence[Hanging]
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
        elif stage.kind == "before":
            numbers = [*self.order.open]
        else:
            numbers = []
        return tuple(dict.fromkeys(numbers))

    def bought_for(self, stage: Stage) -> tuple[Item, ...]:
        """Give the hardware that is to hand for a stage."""
        return tuple(item for item in self.order.items if _is_for(item, stage))

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
    most: int = MOST,
) -> JobPlan:
    """Plan the work of a job as it is printed; `cut` is its cut list, `stations` where its parts
    are bored, `kept` what is kept of them, `most` how much is done in a day."""
    tracked = track(layout, cut.pieces)
    courses = plan_courses(layout, tracked, stations)
    order = make_order(layout, cut)
    walls = plan_hanging(layout)
    articles = first_articles(layout)
    stages = plan_work(
        tracked, courses, stations,
        setting=[_in_turn(wall) for wall in walls],
        articles=articles,
        ordering=bool(order.fronts) or not order.boxes_made,
    )  # fmt: skip
    days = divide(stages, most)
    done = find_done(stand(tracked, courses, kept or {}).values(), tracked)
    return JobPlan(
        layout=layout, parts={part.id: part for part in tracked}, courses=courses,
        stations=stations, days=days, most=most, order=order, articles=articles, walls=walls,
        done=done, today=find_today(days, done),
    )  # fmt: skip


def _in_turn(wall: Hanging) -> list[str]:
    """Name the boxes of a wall in the order in which they are set; from the left where nobody
    said where they stand."""
    if wall.order:
        return [each.seen.box.id for each in wall.order]
    return [seen.box.id for seen in boxes_of(wall.elevation)]


def _is_for(item: Item, stage: Stage) -> bool:
    """Tell whether hardware is wanted in a stage (common practice, no source)."""
    match item.group, item.name:
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
