"""Does a gap rub by its budget? Told before the fronts are ordered: where none of a gap's fronts is
in hand, what speaks before the order says it as an error. It withholds no sheet, where it is a
warning: who has bored must be able to go on.

What rests on a reveal or a kind of front that nobody stated, or on a hinge's least reveal that
nobody looked up, is never more than a warning. A marginal gap is no finding: `jigsheet gaps` shows
it.
"""

from collections.abc import Iterable, Iterator
from typing import get_args

from msgspec.structs import replace

from jigs.box.parts import Front, Layout
from jigs.given.job import Job
from jigs.ground.geometry import SLACK
from jigs.ground.problems import REFUSALS, Problem, is_to_order, maybe_open, warning
from jigs.room.beside import Meeting
from jigs.room.budget import Budget, CauseName
from jigs.room.reckoning import GapBudgets, reckon_gaps


def with_rubbing(layout: Layout) -> tuple[Layout, GapBudgets]:
    """Give the gap budgets of a job, and its layout with the gaps that rub added."""
    found = reckon_gaps(layout)
    problems = (*layout.problems, *check_rubbing(found.budgets, layout.job))
    return replace(layout, problems=problems), found


def before_order(layout: Layout) -> Layout:
    """Give a layout as it is judged before its fronts are ordered: a gap that surely rubs, with no
    front of it in hand, is an error."""
    return replace(
        layout,
        problems=tuple(
            replace(problem, level="error") if is_to_order(problem) else problem
            for problem in layout.problems
        ),
    )


def check_rubbing(budgets: Iterable[Budget], job: Job) -> tuple[Problem, ...]:
    """Find the gaps that rub; each at all of its fronts, for either may be changed."""
    rubbing = (budget for budget in budgets if budget.verdict == "rubs")
    found = (problem for budget in rubbing for problem in _told(budget, job))
    return tuple(dict.fromkeys(found))


def _told(budget: Budget, job: Job) -> Iterator[Problem]:
    gap, least, cure = budget.gap, budget.least, budget.cure
    assert least.width is not None, "it is judged"
    assert cure is not None, "it rubs"
    in_hand = any(_in_hand(front, job) for front, _ in gap.sides)
    takes = _takes_most(budget)
    unsaid = job.gaps.wood.construction is None and "material.front_kind" in job.assumed
    of_what = takes == "seasons" and unsaid
    assumed = of_what or _rests_on_assumed(gap, job)
    # Where the fronts would overlap, no leaflet helps.
    unseen = least.open and budget.left.middle > SLACK
    for front, edge in gap.sides:
        yield warning(
            "gap-rubs",
            front.id,
            above=edge == "top",
            below=edge == "bottom",
            left=edge == "left",
            right=edge == "right",
            own=gap.beside == "board",
            to=_beyond(gap, front),
            case="in-hand" if in_hand else "unsure" if assumed or unseen else "to-order",
            planned=gap.nominal,
            likely=budget.left.middle,
            least=maybe_open(least.width, open=least.open),
            film=takes == "paint-film",
            seasons=takes == "seasons",
            assumed=assumed,
            after=cure.kind == "sizes-after",
            elsewhere=cure.kind == "other-hand",
            closer=cure.kind == "closer",
            board=cure.kind == "board",
            wider=cure.kind in ("wider", "plane"),
        )


def _beyond(gap: Meeting, front: Front) -> str:
    """Name what is across a gap from a front: a front or a box by its ID, else what it is; "" where
    it is its own box."""
    if gap.other is not None:
        return gap.other.id if front is gap.one else gap.one.id
    if gap.beside == "board":
        return ""
    return gap.name or f"the {gap.beside}"


def _in_hand(front: Front, job: Job) -> bool:
    """Tell whether a front is there already, bored, or measured; one that was refused is not."""
    if any(problem.code in REFUSALS for problem in front.held):
        return False
    arrived = job.delivery is not None and front.id in job.delivery.arrivals
    return job.gaps.fronts_in_hand or arrived or front.ordered is not None or front.bored


def _rests_on_assumed(gap: Meeting, job: Job) -> bool:
    """Tell whether nobody stated the reveals that make a gap."""
    if gap.in_one_box:
        return "reveal.between" in job.assumed
    keys = {"reveal.inset" if gap.beside == "board" else _key(edge) for _, edge in gap.sides}
    if "reveal.top" in keys:
        keys.add("reveal.under_counter")
    return not keys.isdisjoint(job.assumed)


def _key(edge: str) -> str:
    return "reveal.side" if edge in ("left", "right") else f"reveal.{edge}"


def _takes_most(budget: Budget) -> CauseName | None:
    """Name what surely takes the most from a gap; None where nothing does."""
    taken = {
        name: -sum(cause.shift for cause in budget.causes if cause.name == name)
        for name in get_args(CauseName)
    }
    name = max(taken, key=lambda each: taken[each])
    return name if taken[name] > SLACK else None
