"""Will a rollout run? Its slide, its box, what stands over and under it, the door before it.

What is wrong withholds the rollout alone: its slides' holes stay out of the sides.
"""

from collections.abc import Collection, Iterator, Sequence

from jigs.box.boards import FaceKey
from jigs.box.drawers import CLEAR_OF_DRAWER, CLEAR_OF_RAIL, LEAST_HEIGHT, LEAST_INSIDE
from jigs.box.plan import BoxPlan, FrontPlan
from jigs.box.rollouts import SPACER, RolloutPlan
from jigs.checks.drawers import UNDER_SIDE_MOUNT
from jigs.checks.kinds import blind_hand
from jigs.checks.slides import (
    check_as_built,
    check_hooks,
    check_slide_depth,
    check_slide_load,
)
from jigs.fittings.slide import rise_above_floor_line
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem, error, warning

SWINGING = ("door", "lift")
"""What opens before a rollout."""


def check_rollouts(box: BoxPlan, unit: Unit) -> Iterator[Problem]:
    """Find the rollouts of a box that will not run."""
    plans, boards = box.rollouts, [face.key for face in box.faces]
    for plan in plans:
        yield from _check_hardware(plan, boards, unit)
        yield from _check_doors(plan, unit)
        yield from _check_panels(plan, unit)
        above = [other for other in plans if _under(plan, other)]
        yield from _check_over(
            plan,
            [(other.rollout.id, other.rollout.y, other.low, other.rollout.top) for other in above],
            unit,
            both=True,
        )
        yield from _check_over(plan, _drawers_near(plan, box.fronts), unit)


def _check_hardware(
    plan: RolloutPlan, boards: Collection[FaceKey], unit: Unit
) -> Iterator[Problem]:
    made, box = plan.rollout, plan.carcass.box
    if not plan.stated:
        yield error(
            "slide-not-stated",
            made.id,
            "no slide is named for this rollout",
            "name one in [use] or at the rollout",
        )
    yield from check_slide_depth(made.id, plan.carcass, plan.record, unit, made.z)
    yield from check_as_built(
        made.id,
        plan.carcass,
        plan.record,
        made.width,
        made.side,
        unit,
        spacers=made.spacer_left + made.spacer_right,
    )
    yield from check_slide_load(made.id, plan.record, made.width, made.length)
    yield from check_hooks(made.id, made, plan.record, unit)
    if made.height < LEAST_HEIGHT - SLACK:
        yield error(
            "drawer-too-low",
            made.id,
            f"its box is {format_length(made.height, unit)} high; less than "
            f"{format_length(LEAST_HEIGHT, unit)} is not worth building",
            "give it more height",
        )
    if made.width - 2 * made.side < LEAST_INSIDE - SLACK:
        yield error(
            "rollout-too-narrow",
            made.id,
            f"between its spacers {format_length(plan.carcass.opening, unit)} of opening leave a "
            f"box {format_length(max(0.0, made.width), unit)} wide outside",
            "take thinner spacers, or do without it",
        )
    hand = blind_hand(box)
    if hand is not None:
        yield error(
            "slide-at-blind",
            made.id,
            f"it runs on slides, and at the blind panel of box {box.id} is no side to hold one",
            f"part the box: columns in place of blind_{hand}, and the rollout in the open one",
        )
    for key in plan.slides:
        if key not in boards:
            yield error(
                "rollout-without-board",
                made.id,
                f"there is no board on the {key[1]} of column {key[0]} to hold its slide",
                "put it in a column that has boards at both sides",
            )


def _check_doors(plan: RolloutPlan, unit: Unit) -> Iterator[Problem]:
    made, spec = plan.rollout, plan.spec
    fixed = [front for front in plan.fronts if front.kind not in SWINGING]
    if fixed:
        names = ", ".join(front.id for front in fixed)
        yield error(
            "rollout-behind-front",
            made.id,
            f"from {format_length(made.y, unit)} to {format_length(made.top, unit)} it stands "
            f"behind {names}, which does not swing open: it would strike it as it is pulled out",
            "set it behind the door alone",
        )
    handless = [f.id for f in plan.fronts if f.kind == "door" and f.hinged is None]
    if handless and None in (spec.spacer_left, spec.spacer_right):
        yield error(
            "rollout-hand-open",
            made.id,
            f"its spacer goes on the side where {', '.join(handless)} hangs, and nobody said where",
            "say hinged at the door, or give spacer_left and spacer_right",
        )
    spacers = {"left": made.spacer_left, "right": made.spacer_right}
    for hand in plan.hung:
        if spacers[hand] < SPACER - SLACK:
            yield warning(
                "rollout-spacer",
                made.id,
                f"a door hangs on its {hand}, where its spacer is "
                f"{format_length(spacers[hand], unit)}: open, the door stands in its way",
                f"give spacer_{hand} {format_length(SPACER, unit)} to "
                f"{format_length(SPACER + 5, unit)}, or see that the door opens far enough",
                (plan.carcass.board(hand),),
            )


def _check_panels(plan: RolloutPlan, unit: Unit) -> Iterator[Problem]:
    """Find a rollout that enters bottom, top, rail or a fixed shelf, or comes too near to it."""
    made = plan.rollout
    for low, high in plan.carcass.panels:
        if plan.low < high - SLACK and made.top > low + SLACK:
            under = f", its slides {format_length(plan.low, unit)}" if plan.low < made.y else ""
            yield error(
                "rollout-into-panel",
                made.id,
                f"its box stands from {format_length(made.y, unit)} to "
                f"{format_length(made.top, unit)}{under}, and from {format_length(low, unit)} to "
                f"{format_length(high, unit)} is a panel, rail or fixed shelf",
                "move it, or make it lower",
            )
        elif made.top <= low + SLACK and low - made.top < CLEAR_OF_RAIL - SLACK:
            if (low, high) in plan.carcass.shelves:
                yield error(
                    "rollout-into-panel",
                    made.id,
                    f"its box reaches up to {format_length(made.top, unit)}, "
                    f"{format_length(low - made.top, unit)} under a fixed shelf; a drawer box "
                    f"keeps {format_length(CLEAR_OF_RAIL, unit)} from it",
                    "move it or the shelf, or make it lower",
                )
                continue
            yield _tight(
                plan, f"to the panel or rail above it, {format_length(low - made.top, unit)}",
                CLEAR_OF_RAIL, unit,
            )  # fmt: skip
        elif plan.low >= high - SLACK:
            least = plan.record.least_rise if plan.record.mount == "under" else UNDER_SIDE_MOUNT
            if made.y - high < least - SLACK:
                yield _tight(
                    plan, f"to the panel under it, {format_length(made.y - high, unit)}",
                    least, unit,
                )  # fmt: skip


def _check_over(
    plan: RolloutPlan,
    others: Sequence[tuple[str, float, float, float]],
    unit: Unit,
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
                # Told at both, it says which of them is meant.
                f"{made.id if both else 'it'} reaches from {format_length(plan.low, unit)} to "
                f"{format_length(made.top, unit)}, and {name} with its slides from "
                f"{format_length(low, unit)} to {format_length(top, unit)}: they meet",
                "move one of them, or make the lower one less high",
                (name,) if both else (),
            )
        elif 0.0 <= underside - made.top < CLEAR_OF_DRAWER - SLACK:
            yield _tight(
                plan, f"to {name} above it, {format_length(underside - made.top, unit)}",
                CLEAR_OF_DRAWER, unit,
            )  # fmt: skip


def _tight(plan: RolloutPlan, what: str, usual: float, unit: Unit) -> Problem:
    return warning(
        "rollout-tight",
        plan.rollout.id,
        f"little room {what}; {format_length(usual, unit)} is usual",
        "move it, or make it lower",
        plan.carcass.boards,
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
