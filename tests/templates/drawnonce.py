"""The sheets of a job drawn once and kept: a test may ask for them as often as it likes."""

from collections.abc import Iterator

from templates.binding.jobsheets import Sheets
from templates.sheets.sheet import Sheet


class DrawnOnce(Sheets, frozen=True, kw_only=True):
    """Sheets that are not drawn anew each time one goes through them."""

    drawn: tuple[Sheet, ...]

    def __iter__(self) -> Iterator[Sheet]:
        """Give them in their order."""
        return iter(self.drawn)


def draw_once(sheets: Sheets) -> DrawnOnce:
    """Draw all sheets now, and keep them."""
    return DrawnOnce(
        layout=sheets.layout,
        paper=sheets.paper,
        before=sheets.before,
        plans=sheets.plans,
        strip=sheets.strip,
        drawn=tuple(sheets),
    )
