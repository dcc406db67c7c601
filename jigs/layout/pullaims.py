"""Pulls that line up with others: where the fronts that say so want theirs.

`pull_over = "B3-2"`: the pull stands at the same place along the wall as that front's. Of a drawer
with two pulls each takes its own counterpart, one pull their middle; of a pair each leaf takes the
leaf of its hand. `pull_level = "B2-1"`: the pull is as high above the floor as that front's. The
other front may itself line up with a third; none with itself.

Pulls follow from the sizes of fronts alone, so that they are known before any box is laid out.
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct, field

from jigs.box.columns import place_columns
from jigs.box.frontpulls import PullAim, middle_of, set_pulls
from jigs.box.fronts import PlacedFront
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import place_job
from jigs.ground.nearest import suggest_id
from jigs.ground.problems import Problem, error

AIM = "pull-aim"
"""The finding on pulls that cannot line up."""
LONGEST = 50
"""Fronts that may line up each with the next (our own choice: no kitchen has such a chain)."""


class Aims(Struct, frozen=True, kw_only=True):
    """By front ID: where its pulls are wanted, and what forbids it."""

    places: Mapping[str, PullAim] = field(default_factory=dict)
    problems: Mapping[str, Problem] = field(default_factory=dict)


class _Refused(Exception):
    """A wish that cannot be met, and the finding that says so."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.case)
        self.problem = problem


def aim_pulls(job: Job) -> Aims:
    """Find where the fronts of a job want their pulls."""
    if not any(
        f.opened_by.pull_over or f.opened_by.pull_level for box in job.boxes for f in box.fronts
    ):
        return Aims()
    return _Aiming(job).aim()


class _Aiming:
    """The fronts of a job while their wishes are followed from one to the next."""

    def __init__(self, job: Job) -> None:
        self._job = job
        self._starts = place_job(job)
        self._boxes: dict[str, BoxSpec] = {}
        self._fronts: dict[str, PlacedFront] = {}
        self._named: dict[str, list[str]] = {}
        self._aims: dict[str, PullAim] = {}
        self._refused: dict[str, Problem] = {}
        self._done: set[str] = set()
        self._under_way: list[str] = []
        for box in job.boxes:
            for front in place_columns(job, box).fronts:
                self._boxes[front.id] = box
                self._fronts[front.id] = front
                self._named.setdefault(front.spec.id, []).append(front.id)
                if front.id != front.spec.id:
                    self._named.setdefault(front.id, []).append(front.id)

    def aim(self) -> Aims:
        """Follow every wish."""
        for name in self._fronts:
            self._settle(name)
        return Aims(places=self._aims, problems=self._refused)

    def _settle(self, name: str) -> None:
        """Find the place of one front's pulls, and before it that of those it looks to."""
        spec = self._fronts[name].spec
        if name in self._done or (
            spec.opened_by.pull_over is None and spec.opened_by.pull_level is None
        ):
            return
        self._done.add(name)
        self._under_way.append(name)
        try:
            xs = (
                ()
                if spec.opened_by.pull_over is None
                else self._over(name, spec.opened_by.pull_over)
            )
            y = (
                None
                if spec.opened_by.pull_level is None
                else self._level(name, spec.opened_by.pull_level)
            )
            self._aims[name] = PullAim(xs=xs, y=y)
        except _Refused as refused:
            self._refused[name] = refused.problem
        self._under_way.pop()

    def _over(self, name: str, wanted: str) -> tuple[float, ...]:
        """Give the middles of a front's pulls along the wall, in its own axes; mm."""
        key = f'pull_over = "{wanted}"'
        others = self._find(name, wanted, key)
        here, there = self._boxes[name], self._boxes[others[0]]
        if here.wall != there.wall or here.inferred or there.inferred:
            raise _Refused(error(AIM, name, case="other-wall", key=key, wall=there.wall))
        left = self._starts[here.id] + self._fronts[name].place.x
        middles = sorted(x for other in others for x, _ in self._middles(other))
        own = len(self._pulls(name))
        if own == 1:
            middles = [sum(middles) / len(middles)]
        if len(middles) != own:
            raise _Refused(error(AIM, name, case="count", own=own, key=key))
        return tuple(x - left for x in middles)

    def _level(self, name: str, wanted: str) -> float:
        """Give the height of a front's pulls, in its own axes; mm."""
        others = self._find(name, wanted, f'pull_level = "{wanted}"')
        heights = [y for other in others for _, y in self._middles(other)]
        return (
            sum(heights) / len(heights) - self._boxes[name].above_floor - self._fronts[name].place.y
        )

    def _find(self, name: str, wanted: str, key: str) -> Sequence[str]:
        """Find the front that another names: of two pairs, the leaf of the same hand."""
        if not self._pulls(name):
            raise _Refused(error(AIM, name, case="no-pull", key=key))
        others = self._named.get(wanted, [])
        if not others:
            nearest = suggest_id(wanted, self._named)
            raise _Refused(error(AIM, name, case="nobody", key=key, nearest=nearest))
        mine = self._named[self._fronts[name].spec.id]
        if len(others) == len(mine) == 2 and name in mine:
            others = [others[mine.index(name)]]
        for other in others:
            if other in self._under_way:
                circle = " -> ".join([*self._under_way[self._under_way.index(other) :], other])
                raise _Refused(error(AIM, name, case="circle", key=key, circle=circle))
            if len(self._under_way) == LONGEST:
                raise _Refused(error(AIM, name, case="chain", key=key, longest=LONGEST))
            self._settle(other)
            if other in self._refused:
                raise _Refused(error(AIM, name, case="refused", key=key, other=other))
            if not self._pulls(other):
                raise _Refused(error(AIM, name, case="without", key=key))
        return others

    def _pulls(self, name: str) -> Sequence[tuple[float, float]]:
        """Give the middles of a front's pulls, in its own axes."""
        front = self._fronts[name]
        pulls = set_pulls(self._job, self._boxes[name], front, self._aims.get(name))
        return [middle_of(pull) for pull in pulls.fittings]

    def _middles(self, name: str) -> Sequence[tuple[float, float]]:
        """Give the middles of a front's pulls along the wall and above the floor."""
        front, box = self._fronts[name], self._boxes[name]
        left, floor = self._starts[box.id] + front.place.x, box.above_floor + front.place.y
        return [(left + x, floor + y) for x, y in self._pulls(name)]
