"""What holds for all boxes of a job file: that they are frameless, `[material]`, `[reveal]`,
`[build]`. What they leave open is as usual.

The hinge plates and slides of frameless boxes are screwed to the sides themselves, 37 mm behind
their front edges. A face frame stands before the sides and reaches past them inwards: its hinges
clip to the frame, by other constants, and its slides stand off the sides on brackets or blocks. No
number of the one is right for the other, so such words are refused, not ignored.

Boards are called by fractions of an inch, and are thinner: hardwood plywood sold as 3/4 is usually
18.0 to 18.6 (common practice, no source). A thickness written as such a fraction is asked about;
the same in mm or as a decimal is taken as measured, and so are the sides where `sold_as` says
what they are called.
"""

from collections.abc import Collection, Sequence
from fractions import Fraction
from typing import TypeVar

from msgspec.structs import replace

from jigs.given.build import Build
from jigs.given.job import MATERIAL_WORDS, REVEAL_WORDS, Material, Reveal
from jigs.ground.believable import Range
from jigs.ground.errors import LengthError
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import MM_PER_INCH, BareUnit, is_fraction, parse_length
from jigs.reading.fieldkeys import read_over
from jigs.reading.tomltables import TomlTable

WordT = TypeVar("WordT", bound=str)

FRAME_KEYS = ("construction", "face_frame", "faceframe", "frame_stile", "frame_rail")
"""Keys that a person with face frames may try."""
FRAME_WORDS = frozenset(
    {"faceframe", "framed", "faceframed", "partial", "partialoverlay", "lip", "lipped",
     "standard", "traditional"}
)  # fmt: skip
"""Values that belong to face frames, without spaces and hyphens."""
NOT_SERVED = (
    "face-frame boxes are not served: their hinges and slides are set out from the frame, by "
    "other numbers than the frameless boxes here"
)


def refuse_frame_keys(table: TomlTable) -> None:
    """Note the keys of a table that speak of a face frame."""
    for key in FRAME_KEYS:
        if key not in table:
            continue
        value = table.pick(key)
        if value is False or (isinstance(value, str) and _plain(value) == "frameless"):
            table.note(key, f"not a key ({table.given(key)} given); all boxes are frameless here")
        else:
            table.note(key, f"{NOT_SERVED} ({table.given(key)} given)")


def choose_frameless(table: TomlTable, key: str, allowed: Sequence[WordT]) -> WordT | None:
    """Take one word of a list; a word of face frames is told why it is none of them."""
    value = table.pick(key)
    if isinstance(value, str) and _plain(value) in FRAME_WORDS:
        table.note(key, f"{NOT_SERVED} ({table.given(key)} given); allowed: {', '.join(allowed)}")
        return None
    return table.choice(key, allowed)


def _plain(text: str) -> str:
    return "".join(letter for letter in text.lower() if letter.isalnum())


CALLED = {
    "1/4": Range(4.8, 5.8), "3/8": Range(8.2, 9.1), "1/2": Range(11.5, 12.3),
    "5/8": Range(14.6, 15.5), "3/4": Range(18.0, 18.6),
}  # fmt: skip
"""How thick plywood usually is that is called so; 3/4 common practice, the others from memory."""

BOARDS = ("side", "partition", "drawer_side", "back")


def read_material(table: TomlTable | None, build: object) -> tuple[Material, set[str]]:
    """Read true thicknesses; `build` may say what the sides are called. Gives also the keys of
    the defaults."""
    if table is None:
        return Material(), set(MATERIAL_WORDS)
    material = read_over(table, Material())
    _doubt_names(table, sold_as=isinstance(build, dict) and "sold_as" in build)
    refuse_frame_keys(table)
    table.close()
    return material, {key for key in MATERIAL_WORDS if key.partition(".")[2] not in table}


def read_reveal(table: TomlTable | None, standard: Reveal) -> tuple[Reveal, set[str]]:
    """Read the reveals. Gives also the keys of the defaults.

    Top and bottom may be negative: wall fronts hang below their box as a finger pull.
    """
    if table is None:
        return standard, set(REVEAL_WORDS)
    reveal = read_over(table, standard)
    said = {key for key in REVEAL_WORDS if key.partition(".")[2] in table}
    if "top" in table:  # where no other is said it is that of every box
        said.add("reveal.under_counter")
        if "under_counter" not in table:
            reveal = replace(reveal, under_counter=None)
    table.close()
    return reveal, {*REVEAL_WORDS} - said


def read_build(table: TomlTable | None) -> Build:
    """Read how the boxes are built."""
    if table is None:
        return Build()
    refuse_frame_keys(table)
    build = read_over(table, Build())
    table.close()
    return build


def _doubt_names(material: TomlTable, *, sold_as: bool) -> None:
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
