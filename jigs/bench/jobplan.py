"""The order of the work of a job with all that it is told from: its days, what is done, what is
open or held back and what that stops."""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct, field

from jigs.bench.course import Course, plan_courses
from jigs.bench.firstarticle import FirstArticle, first_articles
from jigs.bench.kept import Kept
from jigs.bench.station import Station
from jigs.bench.tracked import Tracked, track
from jigs.bench.workdays import MOST_A_DAY, Day, Done, divide, find_done, find_today
from jigs.bench.workplan import Stage, plan_work
from jigs.box.bypart import OpenCuts
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import Cut
from jigs.given.confirming import OpenNumber


class JobPlan(Struct, frozen=True, kw_only=True):
    """The work of a job."""

    layout: Layout
    parts: Mapping[str, Tracked]
    courses: Mapping[str, Course]
    stations: Sequence[Station]
    days: Sequence[Day]
    most: int
    """How often something is taken in hand in a day (`jigs.bench.workdays`)."""
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
