"""Do the sizes close? Fronts, gaps and reveals against their box, and against the counter."""

from collections.abc import Iterator, Sequence

from jigs.box.carcass import Carcass
from jigs.box.fronts import WORTH_SAYING, Column, PlacedFront, Trouble
from jigs.given.job import COUNTER_BOXES, BoxSpec
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length, telling_unit
from jigs.ground.problems import Problem, error, warning

NOT_CLOSED = "reveals-do-not-close"
"""The finding on sizes that miss their box by more than a reveal can take."""
LEAST_COLUMN = 50.0
"""A column narrower than this is a slip; mm (common practice, no source)."""
UNDER_COUNTER = 3.0
"""Least reveal above a front that closes under a counter; mm (common practice, no source)."""
HIGHEST_COUNTER = 1050.0
"""An appliance's place higher than this has no counter over it; mm (common practice, no source)."""


def check_closing(carcass: Carcass, column: Column, unit: Unit) -> tuple[Problem, ...]:
    """List where the fronts of a box do not fill it as its reveals have it."""
    fronts = tuple(front.id for front in column.fronts if front.kind != "opening")
    # How wide an appliance's panel is, its leaflet says, and no reveal of the job.
    ruled = {front.id for front in column.fronts if front.kind == "panel" and front.spec.leaflet}
    return tuple(
        _word(carcass, trouble, fronts, unit)
        for trouble in column.troubles
        if trouble.kind != "side-reveal" or trouble.front not in ruled
    )


def check_counter(carcass: Carcass, column: Column, unit: Unit) -> tuple[Problem, ...]:
    """List the top fronts that would rub on the counter, an appliance's panel among them."""
    if not stands_under_counter(carcass.box):
        return ()
    return tuple(
        _word_counter(front, telling_unit(unit, front.gaps.top, UNDER_COUNTER))
        for front in column.fronts
        if front.place.row == 1
        and front.place.overlay != "inset"
        and front.kind != "opening"
        and front.gaps.top < UNDER_COUNTER - SLACK
    )


def stands_under_counter(box: BoxSpec) -> bool:
    """Tell whether a counter lies on a box, or over the appliance whose place it is."""
    low = box.above_floor + box.height <= HIGHEST_COUNTER + SLACK
    return box.kind in COUNTER_BOXES or (
        box.kind == "open" and low and any(front.kind == "panel" for front in box.fronts)
    )


def _word_counter(front: PlacedFront, unit: Unit) -> Problem:
    return warning(
        "counter-reveal",
        front.id,
        f"the reveal above it is {format_length(front.gaps.top, unit)}; "
        f"under a counter it takes {format_length(UNDER_COUNTER, unit)}",
        "enlarge the top reveal, or pack the counter up",
    )


def check_columns(
    box: BoxSpec, spare: float, uneven: Sequence[str], fronts: Sequence[PlacedFront], unit: Unit
) -> Iterator[Problem]:
    """Find columns that do not fill their box, and fronts that stand askew before them."""
    names = tuple(front.id for front in fronts)
    by_name = {front.id: front.place for front in fronts}
    for name in (name for name in uneven if name in by_name):
        yield error(
            NOT_CLOSED,
            name,
            f"it stands before columns {by_name[name].column} to {by_name[name].last_column}, "
            "whose other fronts bring it to different heights",
            "give heights that add up alike in all its columns, and one to this front",
        )
    fixed = all(column.width is not None for column in box.columns)
    if box.columns and (abs(spare) > WORTH_SAYING if fixed else spare < LEAST_COLUMN):
        over = f"overrun box {box.id} by" if spare < 0 else f"leave of box {box.id}"
        yield error(
            NOT_CLOSED,
            box.id,
            f"the given widths of the columns {over} {format_length(abs(spare), unit)}",
            "check the clear widths and the partitions, or leave one width out",
            names,
        )


def _word(carcass: Carcass, trouble: Trouble, fronts: tuple[str, ...], unit: Unit) -> Problem:
    box, unit = carcass.box, telling_unit(unit, trouble.size, trouble.allowed)
    size = format_length(trouble.size, unit)
    allowed = format_length(trouble.allowed, unit)
    end = "bottom" if box.kind == "wall" else "top"
    code = NOT_CLOSED
    match trouble.kind:
        case "no-room":
            return error(
                code, box.id,
                f"the given heights leave nothing for the other fronts of box {box.id}, "
                f"{format_length(box.height, unit)} high",
                "give smaller heights, or fewer fronts", fronts,
            )  # fmt: skip
        case "rounded-away":
            return error(
                code, trouble.front,
                f"its height, rounded down to whole {allowed}, is nothing",
                "give a smaller increment in [fronts], or the heights of its box",
            )  # fmt: skip
        case "too-high":
            return error(
                code, box.id,
                f"fronts, gaps and reveals overrun box {box.id}: its {end} reveal would be "
                f"{size}, {allowed} wanted",
                "check the heights against the box", fronts,
            )  # fmt: skip
        case "uncovered":
            return error(
                code, box.id,
                f"the fronts of box {box.id} leave {size} open at the {end}, {allowed} wanted",
                "leave one height out, or state an opening", fronts,
            )  # fmt: skip
        case "end-reveal":
            return warning(
                "end-reveal", box.id,
                f"the {end} reveal of box {box.id} comes out as {size}, {allowed} wanted",
                "leave it so, or give other heights", fronts,
            )  # fmt: skip
        case "exchanged":
            return error(
                "sizes-exchanged", trouble.front,
                f"width and height swapped? Given as {size} wide, but box {box.id} takes "
                f"{allowed}, which is its height",
                "exchange width and height in the list; ask the supplier what was made",
            )  # fmt: skip
        case "exchanged-perhaps":
            return warning(
                "exchanged-perhaps", trouble.front,
                f"width and height exchanged? Given as {size} wide, where {allowed} is "
                "wanted, which is its height",
                "exchange them, if so, and ask the supplier what was made",
            )  # fmt: skip
        case "too-wide":
            return error(
                code, trouble.front,
                f"{size} wide, more than box {box.id} of {format_length(box.width, unit)} "
                f"holds: {allowed} wanted",
                "check the width against the box",
            )  # fmt: skip
        case "too-narrow":
            return error(
                code, trouble.front,
                f"{size} wide: it does not cover the opening of box {box.id}; {allowed} wanted",
                "check the width against the box",
            )  # fmt: skip
        case "side-reveal":
            return warning(
                "side-reveal", trouble.front,
                f"{size} wide, {allowed} wanted: the side reveals change by half of it",
                "leave it so, or correct the width",
            )  # fmt: skip
