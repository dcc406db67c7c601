"""The standard sheet of board: 4 x 8 ft where a job is in inches, 1220 x 2440 in millimetres.

Trade sizes, common practice, no source; other boards come longer.
"""

from collections.abc import Mapping

from jigs.ground.lengths import MM_PER_INCH, Unit

SHEETS: Mapping[Unit, tuple[float, float]] = {
    "in": (8 * 12 * MM_PER_INCH, 4 * 12 * MM_PER_INCH), "mm": (2440.0, 1220.0),
}  # fmt: skip
"""Length and width of a standard sheet; mm."""
SHEET_WORDS: Mapping[Unit, str] = {"in": "4 x 8 ft", "mm": "1220 x 2440 mm"}
