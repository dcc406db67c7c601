"""Do the sizes close? Fronts, gaps and reveals against their box, and against the counter."""

from collections.abc import Iterator, Sequence

from jigs.box.carcass import Carcass
from jigs.box.frontgaps import UNDER_COUNTER, stands_under_counter
from jigs.box.fronts import WORTH_SAYING, Column, PlacedFront, Trouble
from jigs.given.job import BoxSpec
from jigs.ground.geometry import SLACK
from jigs.ground.problems import Problem, error, warning

NOT_CLOSED = "reveals-do-not-close"
"""The finding on sizes that miss their box by more than a reveal can take."""
LEAST_COLUMN = 50.0
"""A column narrower than this is a slip; mm (common practice, no source)."""


def check_closing(carcass: Carcass, column: Column) -> tuple[Problem, ...]:
    """List where the fronts of a box do not fill it as its reveals have it."""
    fronts = tuple(front.id for front in column.fronts if front.kind != "opening")
    # How wide an appliance's panel is, its leaflet says, and no reveal of the job.
    ruled = {front.id for front in column.fronts if front.kind == "panel" and front.spec.leaflet}
    return tuple(
        _find(carcass, trouble, fronts)
        for trouble in column.troubles
        if trouble.kind != "side-reveal" or trouble.front not in ruled
    )


def check_counter(carcass: Carcass, column: Column) -> tuple[Problem, ...]:
    """List the top fronts that would rub on the counter, an appliance's panel among them."""
    if not stands_under_counter(carcass.box):
        return ()
    return tuple(
        warning("counter-reveal", front.id, gap=front.gaps.top, least=UNDER_COUNTER)
        for front in column.fronts
        if front.place.row == 1
        and front.place.overlay != "inset"
        and front.kind != "opening"
        and front.gaps.top < UNDER_COUNTER - SLACK
    )


def check_columns(
    box: BoxSpec, spare: float, uneven: Sequence[str], fronts: Sequence[PlacedFront]
) -> Iterator[Problem]:
    """Find columns that do not fill their box, and fronts that stand askew before them."""
    names = tuple(front.id for front in fronts)
    by_name = {front.id: front.place for front in fronts}
    for name in (name for name in uneven if name in by_name):
        yield error(
            NOT_CLOSED,
            name,
            case="columns-uneven",
            first=by_name[name].column,
            last=by_name[name].last_column,
        )
    fixed = all(column.width is not None for column in box.columns)
    if box.columns and (abs(spare) > WORTH_SAYING if fixed else spare < LEAST_COLUMN):
        yield error(
            NOT_CLOSED,
            box.id,
            case="columns",
            overrun=spare < 0,
            box=box.id,
            off=abs(spare),
            also=names,
        )


def _find(carcass: Carcass, trouble: Trouble, fronts: tuple[str, ...]) -> Problem:
    box, size, allowed = carcass.box, trouble.size, trouble.allowed
    hung = box.kind == "wall"
    match trouble.kind:
        case "no-room":
            return error(
                NOT_CLOSED, box.id, case="no-room", also=fronts,
                box=box.id, height=box.height, size=size, allowed=allowed,
            )  # fmt: skip
        case "rounded-away":
            return error(NOT_CLOSED, trouble.front, case="rounded-away", size=size, allowed=allowed)
        case "too-high":
            return error(
                NOT_CLOSED, box.id, case="too-high", also=fronts,
                box=box.id, hung=hung, size=size, allowed=allowed,
            )  # fmt: skip
        case "uncovered":
            return error(
                NOT_CLOSED, box.id, case="uncovered", also=fronts,
                box=box.id, hung=hung, size=size, allowed=allowed,
            )  # fmt: skip
        case "end-reveal":
            return warning(
                "end-reveal", box.id, also=fronts,
                box=box.id, hung=hung, size=size, allowed=allowed,
            )  # fmt: skip
        case "exchanged":
            return error(
                "sizes-exchanged", trouble.front, case="given",
                box=box.id, size=size, allowed=allowed,
            )  # fmt: skip
        case "exchanged-perhaps":
            return warning(
                "exchanged-perhaps", trouble.front, case="given", size=size, allowed=allowed
            )
        case "too-wide":
            return error(
                NOT_CLOSED, trouble.front, case="too-wide",
                box=box.id, width=box.width, size=size, allowed=allowed,
            )  # fmt: skip
        case "too-narrow":
            return error(
                NOT_CLOSED, trouble.front, case="too-narrow",
                box=box.id, size=size, allowed=allowed,
            )  # fmt: skip
        case "side-reveal":
            return warning("side-reveal", trouble.front, size=size, allowed=allowed)
