"""Whether a door whose cups are bored already can keep them: whether a plate at hand answers them.

The door is said to be bored, with the tab and at the heights of before, and the job laid out anew:
what the tool then holds back cannot be kept.

A door that hangs on its other edge now may be turned half round, bottom edge up, where its cups
come to lie as they are wanted.
"""

from collections.abc import Iterable, Mapping

from msgspec import Struct
from msgspec.structs import replace

from jigs.changes.boring import HAND, SAME_FIGURE
from jigs.changes.made import MadeHole, MadePart
from jigs.changes.parting import PartChange
from jigs.given.ids import name_leaves
from jigs.given.job import FrontSpec, Job
from jigs.ground.geometry import SLACK
from jigs.layout.layout import lay_out


class KeptCups(Struct, frozen=True, kw_only=True):
    """What the job has to say of a front so that its cups stay; mm."""

    spec: str
    """The front as the job has it: a pair for both of its leaves."""
    tab: float
    at: tuple[float, ...]
    """The cup centres above its bottom edge."""
    answered: bool
    """Whether a plate at hand answers them, and nothing else stands against it."""


def keep_cups(job: Job, changes: Iterable[PartChange]) -> Mapping[str, KeptCups]:
    """Give by its ID what lets a door keep the cups that it had."""
    wanted = {change.id: change for change in changes if _is_asked(change)}
    stated: dict[str, tuple[FrontSpec, tuple[str, ...]]] = {}
    for box in job.boxes:
        for spec in box.fronts:
            names = name_leaves(spec.id) if spec.kind == "pair" else (spec.id,)
            cups = {_cups_of(wanted[name]) for name in names if name in wanted}
            if len(cups) == 1:
                [(tab, at)] = cups
                stated[spec.id] = (_bored(spec, tab, at), tuple(set(names) & set(wanted)))
    if not stated:
        return {}
    boxes = tuple(
        replace(
            box,
            fronts=tuple(stated[f.id][0] if f.id in stated else f for f in box.fronts),
        )
        for box in job.boxes
    )
    layout = lay_out(replace(job, boxes=boxes))
    held = {front.id for front in layout.fronts if front.withheld}
    return {
        name: KeptCups(
            spec=spec.id,
            tab=spec.boring.bored_tab or 0.0,
            at=spec.hung.hinges_at or (),
            answered=held.isdisjoint(names),
        )
        for spec, names in stated.values()
        for name in names
    }


def serve_turned(change: PartChange) -> bool:
    """Tell whether the holes of a door that hangs on its other edge now, but those of its pull,
    come to lie as they are wanted when it is turned half round, bottom edge up: each within `HAND`.
    Its cups stand equally far from both ends then."""
    before, after = change.before, change.after
    if (
        before is None
        or after is None
        or not (before.drilled_for.fit and after.drilled_for.fit)
        or after.held
    ):
        return False
    other = "" not in (before.hinged, after.hinged) and before.hinged != after.hinged
    same = all(abs(a - b) <= SAME_FIGURE for a, b in zip(before.size, after.size, strict=True))
    if not (other and same):
        return False
    width, height, _ = before.size
    turned = [replace(hole, x=width - hole.x, y=height - hole.y) for hole in _unpulled(before)]
    wanted = _unpulled(after)
    return len(turned) == len(wanted) and all(
        any(_serves(hole, each) for each in turned) for hole in wanted
    )


def _unpulled(part: MadePart) -> list[MadeHole]:
    return [hole for hole in part.holes if hole.purpose != "pull"]


def _serves(wanted: MadeHole, there: MadeHole) -> bool:
    """Tell whether a hole is as good as the one that is wanted."""
    alike = (wanted.purpose, wanted.face) == (there.purpose, there.face)
    deep = (wanted.depth is None) == (there.depth is None)
    near = max(abs(wanted.x - there.x), abs(wanted.y - there.y)) <= HAND + SLACK
    off = (wanted.diameter - there.diameter, (wanted.depth or 0.0) - (there.depth or 0.0))
    return alike and deep and near and max(map(abs, off)) <= SAME_FIGURE


def _is_asked(change: PartChange) -> bool:
    before, after = change.before, change.after
    if before is None or after is None or not before.drilled_for.fit or after.held or after.ready:
        return False
    moved = any(hole.hole.purpose == "cup" and hole.kind == "moved" for hole in change.holes)
    same = all(abs(a - b) <= SAME_FIGURE for a, b in zip(before.size, after.size, strict=True))
    return moved and same and before.hinged == after.hinged


def _cups_of(change: PartChange) -> tuple[float, tuple[float, ...]]:
    before = change.before
    assert before is not None, "only what was there has cups"
    return before.drilled_for.fit[0], tuple(sorted(h.y for h in before.holes if h.purpose == "cup"))


def _bored(spec: FrontSpec, tab: float, at: tuple[float, ...]) -> FrontSpec:
    boring = replace(spec.boring, bored=True, bored_tab=tab, tab=None)
    return replace(spec, boring=boring, hung=replace(spec.hung, hinges_at=at))
