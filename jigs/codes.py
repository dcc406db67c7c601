"""The part code: four characters that bind a sheet, a label and a part's holes together.

It is computed from the part's finished size and its holes alone, so equal codes on paper and
label say that both were made from the same numbers; a changed hole changes the code.

>>> part_code(454.0, 613.0, 19.05, [])
'H9D5'
"""

import hashlib
from collections.abc import Iterable

from jigs.geometry import Hole

ALPHABET = "23456789CDFHJKMNPQRTVWXY"
"""The code's characters, all of them in QR's alphanumeric mode (ISO/IEC 18004, table of the
alphanumeric mode). Left out: 0 O, 1 I L, B (8), G (6), S (5), Z (2), U (V), which are taken for
one another in a shop, A, which spells words, and E, which makes a spreadsheet read a number."""

LENGTH = 4
"""24 to the fourth: 331 776 codes."""

_STEPS_PER_MM = 10_000
"""Sizes count to 0.0001 mm, as they are printed in the data."""


def part_code(
    width: float,
    height: float,
    thickness: float,
    holes: Iterable[Hole],
    *,
    length: float | None = None,
) -> str:
    """Give the code of a part from its size and holes (mm), whatever the order of the holes.

    `length` is a drawer box's: its third dimension beside its sides' thickness.
    """
    lines = sorted(_line(hole) for hole in holes)
    sizes = (width, height, thickness, *(() if length is None else (length,)))
    size = " ".join(str(_steps(each)) for each in sizes)
    return _shorten("\n".join([size, *lines]))


def figures_code(*groups: Iterable[float]) -> str:
    """Give the code of a piece from what it is cut to: groups of figures, mm.

    >>> figures_code((420.6, 558.6, 18.3), (50.0,))
    'NT36'
    """
    return _shorten("\n".join(" ".join(str(_steps(each)) for each in group) for group in groups))


def _shorten(text: str) -> str:
    digest = hashlib.sha256(text.encode("ascii")).digest()
    number = int.from_bytes(digest, "big")
    code = ""
    for _ in range(LENGTH):
        number, place = divmod(number, len(ALPHABET))
        code += ALPHABET[place]
    return code


def _line(hole: Hole) -> str:
    depth = "through" if hole.depth is None else str(_steps(hole.depth))
    places = f"{_steps(hole.x)} {_steps(hole.y)} {_steps(hole.diameter)} {depth}"
    return f"{hole.face} {hole.purpose} {places}"


def _steps(length: float) -> int:
    # Whole numbers have neither a negative zero nor a shortest decimal form to disagree about.
    return round(length * _STEPS_PER_MM)
