"""The columns of a box in the job file, and which column each front stands before.

`columns = [{width = "18"}, {share = 2}]`, from left to right; a front says `column = 2`, and
`span = 2` if it stands before two of them. `blind_left` or `blind_right` closes one end of a
corner box by a panel.
"""

from collections.abc import Sequence
from itertools import pairwise

from jigs.given.job import BoxSpec, ColumnSpec, FrontSpec
from jigs.ground.believable import Range
from jigs.ground.ranges import SHARE
from jigs.reading.tomltables import Table

MOST_COLUMNS = 12
"""Columns that one box may have."""


def read_columns(table: Table) -> tuple[ColumnSpec, ...]:
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


def read_blind(table: Table, width: float, columns: int) -> tuple[float, float]:
    """Read how far a blind panel closes a box of this width from its left and right end; mm."""
    left, right = (
        table.length(f"blind_{end}", Range(50, 1300)) or 0.0 for end in ("left", "right")
    )
    key = "blind_left" if left else "blind_right"
    if left and right:
        table.note("blind_right", "stands beside blind_left; a box is blind at one end")
    elif (left or right) and columns:
        table.note(key, "stands beside columns; part the box, or close its end by a panel")
    elif max(left, right) >= width:
        table.note(key, f"as wide as the box or wider ({table.given(key)} given)")
    return left, right


def check_place(row: Table, front: FrontSpec, box: BoxSpec) -> None:
    """Note a front before a column that its box does not have."""
    count = max(1, len(box.columns))
    if front.column > count:
        row.note("column", f"no such column ({front.column} given); box {box.id} has {count}")
    elif front.column + front.span - 1 > count:
        row.note("span", f"beyond the last column ({front.span} given); box {box.id} has {count}")
    if ((front.overlay or box.overlay) == "inset") != (box.overlay == "inset"):
        row.note(
            "overlay",
            "inset fronts and others in one box; say overlay at the box, for all its fronts",
        )


def check_stacks(rows: Sequence[tuple[Table, FrontSpec]], box: BoxSpec) -> None:
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
            hangs = front.reveal_bottom is not None and front.reveal_bottom < 0
            if hangs and (not last or box.overlay == "inset"):
                row.note(
                    "reveal_bottom",
                    f"below 0 ({row.given('reveal_bottom')} given); only the lowest front of "
                    "a column may hang below its box, and no inset one",
                )
        for (_, upper), (row, lower) in pairwise(stack):
            gaps = {upper.reveal_bottom, lower.reveal_top} - {None}
            if len(gaps) > 1:
                row.note(
                    "reveal_top",
                    f"not the reveal_bottom of the front above it ({row.given('reveal_top')} "
                    "given); give one gap once",
                )


def _check_across(row: Table, front: FrontSpec, stack: Sequence[FrontSpec], place: int) -> None:
    above = any(other.span == 1 for other in stack[:place])
    below = any(other.span == 1 for other in stack[place + 1 :])
    if above and below:
        row.note(
            "span",
            f"stands between other fronts of its columns ({front.span} given); a front across "
            "columns stands above or below them",
        )
    if (above or below) and front.height is None and front.modules is None:
        row.note("span", "a front across columns needs a height, or modules")
