"""Label stocks: sheets of labels, each known by its geometry alone.

>>> stock = STOCKS["letter-3x10"]
>>> stock.places
30
>>> [round(corner, 2) for corner in stock.corner(1)]
[4.76, 241.3]
"""

import tomllib
from dataclasses import dataclass
from pathlib import Path

from templates.paper import SHEETS, Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """A sheet of labels; mm.

    `width`, `height` of one label; `pitch_x`, `pitch_y` from one to the next; `left`, `top` from
    the sheet's edges to the first one.
    """

    name: str
    sheet: Sheet
    columns: int
    rows: int
    width: float
    height: float
    pitch_x: float
    pitch_y: float
    left: float
    top: float

    @property
    def places(self) -> int:
        """Labels on one sheet."""
        return self.columns * self.rows

    def corner(self, place: int) -> tuple[float, float]:
        """Give the lower left corner of a label on its sheet, from the sheet's lower left.

        Places count from 1, row by row from the top left. Raises ValueError outside the sheet.
        """
        if not 1 <= place <= self.places:
            raise ValueError(
                f"place {place} on a sheet of {self.name}; it has places 1 to {self.places}"
            )
        row, column = divmod(place - 1, self.columns)
        return (
            self.left + column * self.pitch_x,
            self.sheet.height - self.top - row * self.pitch_y - self.height,
        )


def _read_stocks(path: Path) -> dict[str, Stock]:
    tables = tomllib.loads(path.read_text(encoding="utf-8"))
    return {
        name: Stock(
            name=name,
            sheet=SHEETS[table["sheet"]],
            columns=table["columns"],
            rows=table["rows"],
            width=table["width"],
            height=table["height"],
            pitch_x=table["pitch_x"],
            pitch_y=table["pitch_y"],
            left=table["left"],
            top=table["top"],
        )
        for name, table in tables.items()
    }


STOCKS: dict[str, Stock] = _read_stocks(Path(__file__).with_name("stocks.toml"))
"""The stocks that ship with the tool, by name."""
