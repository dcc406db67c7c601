"""Face-frame boxes are not served, and what a person writes who has some.

The boxes here are frameless: hinge plates and slides are screwed to the sides themselves, 37 mm
behind their front edges. A face frame stands before the sides and reaches past them inwards: its
hinges clip to the frame, by other constants, and its slides stand off the sides on brackets or
blocks. No number of the one is right for the other, so such words are refused, not ignored.
"""

from collections.abc import Sequence
from typing import TypeVar

from jigs.reading.tomltables import Table

Word = TypeVar("Word", bound=str)

KEYS = ("construction", "face_frame", "faceframe", "frame_stile", "frame_rail")
"""Keys that a person with face frames may try."""
WORDS = frozenset(
    {"faceframe", "framed", "faceframed", "partial", "partialoverlay", "lip", "lipped",
     "standard", "traditional"}
)  # fmt: skip
"""Values that belong to face frames, without spaces and hyphens."""
NOT_SERVED = (
    "face-frame boxes are not served: their hinges and slides are set out from the frame, by "
    "other numbers than the frameless boxes here"
)


def refuse_frame_keys(table: Table) -> None:
    """Note the keys of a table that speak of a face frame."""
    for key in KEYS:
        if key not in table:
            continue
        value = table.pick(key)
        if value is False or (isinstance(value, str) and _plain(value) == "frameless"):
            table.note(key, f"not a key ({table.given(key)} given); all boxes are frameless here")
        else:
            table.note(key, f"{NOT_SERVED} ({table.given(key)} given)")


def choose_frameless(table: Table, key: str, allowed: Sequence[Word]) -> Word | None:
    """Take one word of a list; a word of face frames is told why it is none of them."""
    value = table.pick(key)
    if isinstance(value, str) and _plain(value) in WORDS:
        table.note(key, f"{NOT_SERVED} ({table.given(key)} given); allowed: {', '.join(allowed)}")
        return None
    return table.choice(key, allowed)


def _plain(text: str) -> str:
    return "".join(letter for letter in text.lower() if letter.isalnum())
