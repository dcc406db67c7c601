"""Will a rollout run? Its slide, its box, what stands over and under it, the door before it.

What is wrong withholds the rollout alone: its slides' holes stay out of the sides.
"""

from collections.abc import Collection, Iterator, Sequence

from jigs.box.boards import FaceKey
from jigs.box.drawers import CLEAR_OF_DRAWER, CLEAR_OF_RAIL, LEAST_HEIGHT, LEAST_INSIDE
from jigs.box.plan import BoxPlan, FrontPlan
from jigs.box.rollouts import SPACER, RolloutPlan
from jigs.checks.drawers import UNDER_SIDE_MOUNT
from jigs.checks.slides import (
    check_as_built,
    check_hooks,
    check_slide_depth,
    check_slide_load,
)
from jigs.checks.stated import blind_hand
from jigs.fittings.slide import rise_above_floor_line
from jigs.ground.geometry import SLACK
from jigs.ground.problems import Problem, error, warning

SWINGING = ("door", "lift")
"""What opens before a rollout."""


def check_rollouts(box: BoxPlan) -> Iterator[Problem]:
    """Find the rollouts of a box that will not run."""
    plans, boards = box.rollouts, [face.key for face in box.faces]
    for plan in plans:
        yield from _check_hardware(plan, boards)
        yield from _check_doors(plan)
        yield from _check_panels(plan)
        above = [other for other in plans if _under(plan, other)]
        yield from _check_over(
            plan,
            [(other.rollout.id, other.rollout.y, other.low, other.rollout.top) for other in above],
            both=True,
        )
        yield from _check_over(plan, _drawers_near(plan, box.fronts))


def _check_hardware(plan: RolloutPlan, boards: Collection[FaceKey]) -> Iterator[Problem]:
    made, box = plan.rollout, plan.carcass.box
    if not plan.stated:
        yield error("slide-not-stated", made.id, case="rollout")
    yield from check_slide_depth(made.id, plan.carcass, plan.record, made.z)
    yield from check_as_built(
        made.id,
        plan.carcass,
        plan.record,
        made.width,
        made.side,
        spacers=made.spacer_left + made.spacer_right,
    )
    yield from check_slide_load(made.id, plan.record, made.width, made.length)
    yield from check_hooks(made.id, made, plan.record)
    if made.height < LEAST_HEIGHT - SLACK:
        yield error(
            "drawer-too-low", made.id, case="rollout", height=made.height, least=LEAST_HEIGHT
        )
    if made.width - 2 * made.side < LEAST_INSIDE - SLACK:
        yield error(
            "rollout-too-narrow",
            made.id,
            opening=plan.carcass.opening,
            outside=max(0.0, made.width),
        )
    hand = blind_hand(box)
    if hand is not None:
        yield error("slide-at-blind", made.id, case="rollout", box=box.id, hand=hand)
    for key in plan.slides:
        if key not in boards:
            yield error("rollout-without-board", made.id, hand=key[1], column=key[0])


def _check_doors(plan: RolloutPlan) -> Iterator[Problem]:
    made, spec = plan.rollout, plan.spec
    fixed = [front for front in plan.fronts if front.kind not in SWINGING]
    if fixed:
        yield error(
            "rollout-behind-front",
            made.id,
            low=made.y,
            high=made.top,
            fronts=tuple(front.id for front in fixed),
        )
    handless = [f.id for f in plan.fronts if f.kind == "door" and f.hinged is None]
    if handless and None in (spec.spacer_left, spec.spacer_right):
        yield error("rollout-hand-open", made.id, doors=tuple(handless))
    spacers = {"left": made.spacer_left, "right": made.spacer_right}
    for hand in plan.hung:
        if spacers[hand] < SPACER - SLACK:
            yield warning(
                "rollout-spacer",
                made.id,
                hand=hand,
                spacer=spacers[hand],
                least=SPACER,
                usual=SPACER + 5,
                also=(plan.carcass.board(hand),),
            )


def _check_panels(plan: RolloutPlan) -> Iterator[Problem]:
    """Find a rollout that enters bottom, top, rail or a fixed shelf, or comes too near to it."""
    made = plan.rollout
    for low, high in plan.carcass.panels:
        if plan.low < high - SLACK and made.top > low + SLACK:
            yield error(
                "rollout-into-panel",
                made.id,
                low=made.y,
                high=made.top,
                slides=plan.low if plan.low < made.y else None,
                panel_low=low,
                panel_high=high,
            )
        elif made.top <= low + SLACK and low - made.top < CLEAR_OF_RAIL - SLACK:
            if (low, high) in plan.carcass.shelves:
                yield error(
                    "rollout-into-panel",
                    made.id,
                    case="shelf",
                    high=made.top,
                    under=low - made.top,
                    keeps=CLEAR_OF_RAIL,
                )
                continue
            yield warning(
                "rollout-tight",
                made.id,
                case="over",
                room=low - made.top,
                usual=CLEAR_OF_RAIL,
                also=plan.carcass.boards,
            )
        elif plan.low >= high - SLACK:
            least = plan.record.least_rise if plan.record.mount == "under" else UNDER_SIDE_MOUNT
            if made.y - high < least - SLACK:
                yield warning(
                    "rollout-tight",
                    made.id,
                    case="under",
                    room=made.y - high,
                    usual=least,
                    also=plan.carcass.boards,
                )


def _check_over(
    plan: RolloutPlan,
    others: Sequence[tuple[str, float, float, float]],
    *,
    both: bool = False,
) -> Iterator[Problem]:
    """Find a rollout that overlaps drawer boxes, or comes too near under them.

    `others`: ID, underside, lower end with the slides, upper edge. `both`: they are held too.
    """
    made = plan.rollout
    for name, underside, low, top in others:
        if made.top > low + SLACK and plan.low < top - SLACK:
            yield error(
                "rollouts-overlap" if both else "rollout-into-drawer",
                made.id,
                rollout=made.id,
                low=plan.low,
                high=made.top,
                other=name,
                other_low=low,
                other_high=top,
                also=(name,) if both else (),
            )
        elif 0.0 <= underside - made.top < CLEAR_OF_DRAWER - SLACK:
            yield warning(
                "rollout-tight",
                made.id,
                case="drawer",
                other=name,
                room=underside - made.top,
                usual=CLEAR_OF_DRAWER,
                also=plan.carcass.boards,
            )


def _under(plan: RolloutPlan, other: RolloutPlan) -> bool:
    """Tell whether another rollout of the column stands higher, or as high and later."""
    mine, its = plan.rollout, other.rollout
    return (
        mine.id != its.id
        and mine.column == its.column
        and (mine.y < its.y - SLACK or (abs(mine.y - its.y) <= SLACK and mine.id < its.id))
    )


def _drawers_near(
    plan: RolloutPlan, fronts: Sequence[FrontPlan]
) -> list[tuple[str, float, float, float]]:
    """Give the drawers of the rollout's column as `_check_over` takes them."""
    found = []
    for other in fronts:
        front, drawer = other.front, other.drawer
        if (
            drawer is not None
            and front.place.column <= plan.rollout.column <= front.place.last_column
        ):
            place, record = drawer.place, drawer.record
            low = place.bottom - rise_above_floor_line(record)
            top = place.bottom + place.height
            found.append((f"{front.id}-BOX", place.bottom, low, top))
    return found
