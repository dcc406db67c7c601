"""What stands inside a box of the job file: columns, shelves, rollouts; and which column each front
stands before.

`columns = [{width = "18"}, {share = 2}]`, from left to right; a front says `column = 2`, and
`span = 2` if it stands before two of them. `blind_left` or `blind_right` closes one end of a
corner box by a panel.

`[[box.shelf]]`: a fixed shelf says `at`, the height of its upper face above the side's bottom end.
Adjustable shelves say `adjustable = true`, and `from` and `to`, between which their pin holes
stand; `count` says how many are cut for them. `[[box.rollout]]`: `at` is the underside of the
drawer box above the side's bottom end, `height` the box's own.
"""

from collections.abc import Sequence
from itertools import pairwise

from jigs.given.hardware import SlideRecord
from jigs.given.job import MOST_COLUMNS, BoxSpec, ColumnSpec, FrontSpec, ShelfSpec
from jigs.given.stated import BlindEnd, RolloutSpec
from jigs.ground.believable import IN_BOX, SHARE, Range
from jigs.ground.geometry import SLACK, Hand
from jigs.ground.lengths import format_length
from jigs.reading.fieldkeys import read_keys
from jigs.reading.jobhardware import Shelf
from jigs.reading.tomltables import TomlTable

MOST_SHELVES = 20
"""Adjustable shelves of one row."""


def read_columns(table: TomlTable) -> tuple[ColumnSpec, ...]:
    """Read the columns of a box; none where it does not say."""
    columns = []
    rows = table.tables("columns")
    if len(rows) > MOST_COLUMNS:
        table.note("columns", f"too many ({len(rows)} given); at most {MOST_COLUMNS}")
    for row in rows[:MOST_COLUMNS]:
        width, share = row.length("width", Range(50, 1600)), row.number("share", SHARE, most=1000.0)
        if "width" in row and "share" in row:
            row.note("share", "stands beside width; give one of them")
        row.close()
        columns.append(ColumnSpec(width=width, share=1.0 if share is None else share))
    return tuple(columns)


def read_blind(table: TomlTable, width: float, columns: int) -> BlindEnd | None:
    """Read which end of a box of this width a blind panel closes, and how far."""
    left, right = (
        table.length(f"blind_{end}", Range(50, 1300)) or 0.0 for end in ("left", "right")
    )
    key = "blind_left" if left else "blind_right"
    if left and right:
        table.note("blind_right", "stands beside blind_left; a box is blind at one end")
    elif (left or right) and columns:
        table.note(key, "stands beside columns; part the box, or close its end by a panel")
    elif max(left, right) >= width:
        what = f"as wide as the box or wider ({table.given(key)} given"
        table.note(key, f"{what}, {format_length(width, table.unit)} the box's width)")
    if not left and not right:
        return None
    return BlindEnd(hand="left" if left else "right", reach=left or right)


def check_place(row: TomlTable, front: FrontSpec, box: BoxSpec, panel: float) -> None:
    """Note a front before a column that its box does not have, and one that reaches over its box's
    end where none can; `panel`: how thick an end panel is, mm."""
    count = max(1, len(box.columns))
    if front.column > count:
        row.note("column", f"no such column ({front.column} given); box {box.id} has {count}")
    elif front.column + front.span - 1 > count:
        row.note("span", f"beyond the last column ({front.span} given); box {box.id} has {count}")
    ends: tuple[tuple[Hand, bool], ...] = (
        ("left", front.column == 1), ("right", front.column + front.span - 1 == count),
    )  # fmt: skip
    for hand, at_end in ends:
        over = front.reveals.reaches(hand) > 0
        if over and (not at_end or box.panels.at(hand) != "covered" or box.overlay == "inset"):
            row.note(
                f"reveal_{hand}",
                f"below 0 ({row.given(f'reveal_{hand}')} given); only a front at the end of its "
                f'box reaches over, and only over an end panel: panel_{hand} = "covered" at the '
                "box",
            )
        elif over and (front.kind == "pair" or front.hinged == hand):
            row.note(
                f"reveal_{hand}",
                f"below 0 ({row.given(f'reveal_{hand}')} given) where it is hinged: no hinge laps "
                "over an end panel; hinge it at its other edge, or say "
                f'panel_{hand} = "flush" and leave this out',
            )
        elif front.reveals.reaches(hand) > panel + SLACK:
            row.note(
                f"reveal_{hand}",
                f"below 0 ({row.given(f'reveal_{hand}')} given) by more than its end panel is "
                f"thick, {format_length(panel, row.unit)}: it would lie before what stands beside",
            )
    if ((front.overlay or box.overlay) == "inset") != (box.overlay == "inset"):
        row.note(
            "overlay",
            "inset fronts and others in one box; say overlay at the box, for all its fronts",
        )


def check_stacks(rows: Sequence[tuple[TomlTable, FrontSpec]], box: BoxSpec) -> None:
    """Note what cannot stand in a column as it is written; `rows` from top to bottom."""
    for number in range(1, max(1, len(box.columns)) + 1):
        stack = [
            (row, front)
            for row, front in rows
            if front.column <= number < front.column + front.span
        ]
        for place, (row, front) in enumerate(stack):
            if front.span > 1:
                _check_across(row, front, [other for _, other in stack], place)
            last = place == len(stack) - 1
            hangs = front.reveals.bottom is not None and front.reveals.bottom < 0
            if hangs and (not last or box.overlay == "inset"):
                row.note(
                    "reveal_bottom",
                    f"below 0 ({row.given('reveal_bottom')} given); only the lowest front of "
                    "a column may hang below its box, and no inset one",
                )
        for (_, upper), (row, lower) in pairwise(stack):
            gaps = {upper.reveals.bottom, lower.reveals.top} - {None}
            if len(gaps) > 1:
                row.note(
                    "reveal_top",
                    f"not the reveal_bottom of the front above it ({row.given('reveal_top')} "
                    "given); give one gap once",
                )


def _check_across(row: TomlTable, front: FrontSpec, stack: Sequence[FrontSpec], place: int) -> None:
    above = any(other.span == 1 for other in stack[:place])
    below = any(other.span == 1 for other in stack[place + 1 :])
    if above and below:
        row.note(
            "span",
            f"stands between other fronts of its columns ({front.span} given); a front across "
            "columns stands above or below them",
        )
    if (above or below) and front.height is None and front.portion.modules is None:
        row.note("span", "a front across columns needs a height, or modules")


def read_shelves(
    table: TomlTable, height: float, columns: int, *, legs: float = 0.0
) -> tuple[ShelfSpec, ...]:
    """Read the shelves of a box `height` mm high, of so many columns, whose bottom panel stands
    `legs` mm above its sides' end."""
    return tuple(_read_shelf(row, height, max(1, columns), legs) for row in table.tables("shelf"))


def _read_shelf(row: TomlTable, height: float, columns: int, legs: float) -> ShelfSpec:
    at, adjustable = row.length("at", IN_BOX), row.flag("adjustable")
    low, high = row.length("from", IN_BOX), row.length("to", IN_BOX)
    column = row.whole("column", usual=columns, most=columns)
    if adjustable and "at" in row:
        row.note("at", "stands beside adjustable; a shelf is fixed or adjustable")
    if not adjustable and "at" not in row:
        row.book.note(row.path, "at is missing; give it, or adjustable = true")
    if not adjustable:
        for key in ("from", "to"):
            if key in row:
                row.note(key, "is for adjustable shelves alone; say adjustable = true")
    for key, place in (("at", at), ("from", low), ("to", high)):
        if place is not None and place >= height:
            row.note(key, f"{_above_box(row, height)} ({row.given(key)} given)")
    for key, place in (("at", at), ("to", high)):
        if legs and place is not None and place <= legs:
            row.note(
                key,
                f"below its box ({row.given(key)} given); heights count from the sides' end on "
                "the floor",
            )
    if low is not None and high is not None and low >= high:
        row.note("to", f"not above from ({row.given('to')} given)")
    count = row.whole("count", usual=12, most=MOST_SHELVES)
    if count is not None and not adjustable:
        row.note("count", "is for adjustable shelves alone; say adjustable = true")
    row.close()
    return ShelfSpec(
        at=None if adjustable else at, low=low, high=high, column=column, count=count or 1
    )


def _above_box(row: TomlTable, height: float) -> str:
    high = format_length(height, row.unit)
    return f"above its box; heights count from the sides' bottom end, and the box is {high} high"


def read_rollouts(
    table: TomlTable, height: float, columns: int, slides: Shelf[SlideRecord]
) -> tuple[RolloutSpec, ...]:
    """Read the rollouts of a box `height` mm high, of so many columns."""
    return tuple(
        _read_rollout(row, height, max(1, columns), slides) for row in table.tables("rollout")
    )


def _read_rollout(
    row: TomlTable, height: float, columns: int, slides: Shelf[SlideRecord]
) -> RolloutSpec:
    row.require("at", "height")
    given = read_keys(row, RolloutSpec)
    if given.get("at", 0.0) >= height:
        row.note("at", f"{_above_box(row, height)} ({row.given('at')} given)")
    spec = RolloutSpec(
        **{"at": 1.0, "height": 1.0, **given},
        slide=slides.take_name(row, "slide"),
        column=row.whole("column", usual=columns, most=columns) or 1,
    )
    row.close()
    return spec
