"""The part code: four characters that bind a sheet, a label and a part's holes together.

It is computed from the part's finished size and its holes, so equal codes on paper and label say
that both were made from the same numbers; a changed hole changes the code. That of a board of a
box says besides which board it is: a left and a right side have the same numbers and mirror each
other, and the sheet of one must not pass for that of the other.

>>> part_code(454.0, 613.0, 19.05, [])
'H9D5'
"""

import hashlib
from collections.abc import Iterable
from typing import Literal

from jigs.ground.geometry import Hand, Hole

BoardPlace = Literal["left-side", "right-side", "partition"]
"""Which board of a box it is."""

ALPHABET = "23456789CDFHJKMNPQRTVWXY"
"""The code's characters, all of them in QR's alphanumeric mode (ISO/IEC 18004:2015, table of the
alphanumeric mode, from memory). Left out: 0 O, 1 I L, B (8), G (6), S (5), Z (2), U (V), which are
taken for one another in a shop, A, which spells words, and E, which makes a spreadsheet read a
number."""

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


def board_code(
    board: BoardPlace,
    size: tuple[float, float, float],
    holes: Iterable[tuple[Hand, Hole]],
) -> str:
    """Give the one code of a board of a box, whatever the order of its holes.

    `size`: depth, height, thickness, mm. Each hole stands with the side of the column whose board
    it is drilled into: of a partition, which has two such faces, it says which one.
    """
    lines = sorted(f"{hand} {_line(hole)}" for hand, hole in holes)
    return _shorten("\n".join([board, " ".join(str(_steps(each)) for each in size), *lines]))


def station_code(
    face: str, hand: Hand | None, patterns: Iterable[tuple[str, Iterable[Hole]]]
) -> str:
    """Give the code of a station from the face, the side of its hinge edge, and the patterns of its
    cards, whatever their order: how each is set, and its holes in its own frame."""
    lines = sorted(
        "\n".join([how, *sorted(_line(hole) for hole in holes)]) for how, holes in patterns
    )
    return _shorten("\n".join([f"{face} {hand or '-'}", *lines]))


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
