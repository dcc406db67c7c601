"""Wood and the seasons: how much moisture wood takes from the air, and how much wider it grows.

Both after the Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-190, 2010): equation 4-5 for
the moisture that wood comes to, 13-2 for its change of size, whose coefficients hold from 6 to 14 %
of moisture. Along the grain wood hardly moves: that is not reckoned.

>>> round(moisture_in(humidity=50.0, temperature=21.1), 1)
9.2
>>> round(change_of(114.0, coefficient("sugar maple", "flat"), 4.0), 2)
1.61
"""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Literal

from msgspec import Struct

from jigs.given.build import Sawn, Species
from jigs.ground.geometry import SLACK

VALID = (6.0, 14.0)
"""The moisture between which the coefficients hold; % (Wood Handbook, Table 13-5)."""
BOARD_MOVES = (0.0005, 0.001)
"""How much MDF moves in normal indoor swings, a part of its size, least and most (from memory)."""

USUAL_STILE = 57.0
"""Width of a frame's stiles and rails where no front gives its own; mm (common practice, no
source)."""


class Moves(Struct, frozen=True, kw_only=True):
    """How much a wood moves, a part of its width for each % of moisture."""

    radial: float
    tangential: float
    standing: Literal["P", "M"]
    """Whether the numbers were read in the book, or are from memory."""


@cache
def _table() -> Mapping[str, Moves]:
    text = Path(__file__).with_name("species.toml").read_text(encoding="utf-8")
    return {name: Moves(**row) for name, row in tomllib.loads(text).items()}


def coefficient(species: Species, sawn: Sawn) -> float:
    """Give how much a board moves across its width for each % of moisture, a part of it."""
    found = _table()[species]
    return found.tangential if sawn == "flat" else found.radial


def moisture_in(*, humidity: float, temperature: float) -> float:
    """Give the moisture that wood comes to in such air, %: Wood Handbook, equation 4-5.

    `humidity` in % RH, `temperature` in degrees Celsius. Agrees with Table 4-2 to 0.1.
    """
    h, t = humidity / 100.0, temperature
    w = 349 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 0.000736 * t - 0.00000273 * t**2
    k1 = 6.27 - 0.00938 * t - 0.000303 * t**2
    k2 = 1.91 + 0.0407 * t - 0.000293 * t**2
    dissolved = k * h / (1 - k * h)
    bound = k1 * k * h + 2 * k1 * k2 * k**2 * h**2
    return 1800 / w * (dissolved + bound / (1 + k1 * k * h + k1 * k2 * k**2 * h**2))


def change_of(size: float, part: float, moisture: float) -> float:
    """Give how much a size grows with so much more moisture (%), mm: Wood Handbook, equation
    13-2."""
    return size * part * moisture


def is_valid(moisture: float) -> bool:
    """Tell whether the coefficients hold at this moisture, %."""
    return VALID[0] - SLACK <= moisture <= VALID[1] + SLACK
