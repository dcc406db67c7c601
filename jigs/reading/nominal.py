"""What a board is called, written where its thickness is wanted.

Boards are called by fractions of an inch, and are thinner: hardwood plywood sold as 3/4 is usually
18.0 to 18.6 (common practice, no source). A thickness written as such a fraction is asked about;
the same in mm or as a decimal is taken as measured, and so are the sides where `sold_as` says
what they are called.
"""

from collections.abc import Collection
from fractions import Fraction

from jigs.ground.believable import Range
from jigs.ground.errors import LengthError
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import MM_PER_INCH, BareUnit, is_fraction, parse_length
from jigs.reading.tomltables import Table

CALLED = {
    "1/4": Range(4.8, 5.8), "3/8": Range(8.2, 9.1), "1/2": Range(11.5, 12.3),
    "5/8": Range(14.6, 15.5), "3/4": Range(18.0, 18.6),
}  # fmt: skip
"""How thick plywood usually is that is called so; 3/4 common practice, the others from memory."""

BOARDS = ("side", "partition", "drawer_side", "back")


def doubt_names(material: Table, *, sold_as: bool) -> None:
    """Doubt each thickness that is what a board is called; fronts only of plywood: MDF and planed
    wood are what they are called. `sold_as`: the job says what its sides are sold as."""
    measured: Collection[str] = ("side", "partition") if sold_as else ()
    plywood = ("front",) if material.peek("front_kind") == "plywood" else ()
    for key in (*BOARDS, *plywood):
        given = material.peek(key)
        if not isinstance(given, str) or key in measured:
            continue
        if is_fraction(given) and (within := _called(given, material.unit)):
            material.doubt(key, 0.0, within, nominal=given.strip())


def _called(given: str, unit: BareUnit) -> Range | None:
    """Give how thick a board is that is called so; None of any other length."""
    try:
        inches = parse_length(given, unit) / MM_PER_INCH
    except LengthError:  # told where the length is read
        return None
    return next((CALLED[name] for name in CALLED if abs(Fraction(name) - inches) < SLACK), None)
