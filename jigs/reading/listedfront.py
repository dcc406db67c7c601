"""A row of a front list, as it was understood, and whether rows belong in one box.

The fronts of a box share one width; a pair's row gives the width of one leaf.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from jigs.given.job import FrontSpec
from jigs.ground.errors import Fault
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length

SAME_WIDTH = 1.0
"""Fronts of one box whose widths differ by more do not belong together, mm (common practice)."""

SAME_WIDTH_PAIR = 3.5
"""The same where a pair is one of them: each leaf may be rounded down by 1/16 in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedFront:
    """One row: the front as given, its box's ID, how many, and its place in the file.

    `spec.id` and `box` are "" where the row gives none.
    """

    spec: FrontSpec
    box: str
    count: int
    where: str

    def clear_width(self, between: float) -> float | None:
        """Give what the row takes up across its box: both leaves of a pair with their gap; mm."""
        if self.spec.width is None:
            return None
        return self.spec.width if self.spec.kind != "pair" else 2 * self.spec.width + between


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontList:
    """The rows of a front list, its file, and the unit that its bare numbers are in."""

    file: str
    unit: Unit
    rows: tuple[ListedFront, ...]


def check_widths(rows: Sequence[ListedFront], between: float) -> list[Fault]:
    """Find the fronts whose width differs from that of the first front of their box."""
    first: dict[str, ListedFront] = {}
    faults = []
    for row in rows:
        width = row.clear_width(between)
        if not row.box or width is None:
            continue
        above = first.setdefault(row.box, row)
        wanted = above.clear_width(between) or width
        paired = "pair" in (row.spec.kind, above.spec.kind)
        if abs(width - wanted) > (SAME_WIDTH_PAIR if paired else SAME_WIDTH) + SLACK:
            turned = row.spec.height is not None and abs(row.spec.height - wanted) <= SAME_WIDTH
            faults.append(
                Fault(
                    row.where,
                    ("width and height exchanged? " if turned else "")
                    + f"different widths in box {row.box} ({format_length(width, 'mm')} given, "
                    f"{format_length(wanted, 'mm')} at {above.where}); the fronts of a box share "
                    "one width, and a pair's row gives the width of one leaf",
                )
            )
    return faults
