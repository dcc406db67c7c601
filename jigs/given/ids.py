"""IDs: the name a part carries on its label, its sheet and its row of the list.

An ID is upper case, A-Z, 0-9 and `-`, at most 16 characters as given. A front without one is
named by its box and its place from the top; `count = 3` adds -1, -2, -3; the leaves of a pair
add L and R; a drawer's box adds -BOX; box parts are spelled out (`B1-SIDE-L`). All parts and
boxes of a job have different IDs: not even the only front of a box has its box's, so that an ID
names one thing.

>>> check_id(" b1-2 ")
'B1-2'
>>> name_fronts("", box="B1", place=2, count=3)
('B1-2-1', 'B1-2-2', 'B1-2-3')
"""

import re
import unicodedata
from collections.abc import Collection, Iterable, Iterator
from itertools import count as count_up

from jigs.given.job import FrontKind
from jigs.ground.errors import Fault, JigsheetError
from jigs.ground.latin import plain_capitals

LONGEST_NAME = 16
"""Characters an ID may have as given: what is added by the tool comes on top."""

ALLOWED = f"A-Z, 0-9 and - are allowed, at most {LONGEST_NAME} characters"

_ID = re.compile(rf"[A-Z0-9-]{{1,{LONGEST_NAME}}}")

BOARD_NAMES = (
    "SIDE", "BOTTOM", "TOP", "STRETCHER", "BACK", "NAILER", "SHELF", "PARTITION", "RAIL",
    "FIXED", "BLIND", "FILLER", "PANEL", "TOE", "ROLLOUT",
)  # fmt: skip
"""First words of the box parts' names, which stand behind the box's ID."""


def check_id(text: str) -> str:
    """Give `text` as an ID, upper-cased. Raises JigsheetError for one that is not allowed."""
    # Upper-casing is for ASCII alone: a sharp s would grow into SS, a dotless i into I.
    candidate = text.strip()
    if candidate.isascii() and _ID.fullmatch(candidate.upper()):
        return candidate.upper()
    shown = repr(candidate if len(candidate) <= 40 else candidate[:37] + "...")
    raise JigsheetError(f"not an ID ({shown} given){_lookalike(candidate)}; {ALLOWED}")


def spell_id(text: str, most: int = LONGEST_NAME) -> str:
    """Write a name that is no ID in the signs of one, cut where one of its words ends if it is too
    long; "" where none of its signs can be written so.

    >>> spell_id("Høj 1"), spell_id("Unterschrank 600 links"), spell_id("B1"), spell_id("北")
    ('HOJ-1', 'UNTERSCHRANK-600', 'B1', '')
    """
    name = re.sub("[^A-Z0-9]+", "-", plain_capitals(text)).strip("-")
    if len(name) <= most:
        return name
    short, _, _ = name[: most + 1].rpartition("-")
    return short or name[:most]


def _lookalike(text: str) -> str:
    """Name the first letter that is not of ASCII: it may look just like one that is."""
    for place, letter in enumerate(text, start=1):
        if not letter.isascii():
            name = unicodedata.name(letter, f"U+{ord(letter):04X}")
            return f": its character {place} is {letter!r}, {name}"
    return ""


def name_fronts(given: str, *, box: str, place: int, count: int = 1) -> tuple[str, ...]:
    """Name the `count` fronts of one row.

    `given` is the row's checked ID, or "" for the default: the box's ID and the row's `place`
    from the top of its box, 1-based.
    """
    base = given or f"{box}-{place}"
    return (base,) if count == 1 else tuple(f"{base}-{i}" for i in range(1, count + 1))


def name_parts(front: str, kind: FrontKind) -> tuple[str, ...]:
    """Name everything that the front `front` brings into the job: leaves, and a drawer box."""
    if kind == "pair":
        return name_leaves(front)
    if kind in ("drawer", "pullout"):
        return (front, f"{front}-BOX")
    return (front,)


def name_leaves(pair: str) -> tuple[str, str]:
    """Name the left and the right leaf of a pair."""
    return f"{pair}L", f"{pair}R"


def name_rollout(box: str, number: int) -> str:
    """Give the ID of a box's rollout by its place in the job file, 1-based.

    >>> name_rollout("B1", 2)
    'B1-ROLLOUT-2'
    """
    return f"{box}-ROLLOUT-{number}"


def name_boxes(taken: Collection[str]) -> Iterator[str]:
    """Give B1, B2, ... without end, leaving out those that are taken."""
    return (name for i in count_up(1) if (name := f"B{i}") not in taken)


def names_board(part: str, boxes: Collection[str]) -> bool:
    """Whether an ID reads like a part of one of the boxes (`B1-SIDE-L` where there is a B1)."""
    words = part.split("-")
    return any(
        words[i] in BOARD_NAMES and "-".join(words[:i]) in boxes for i in range(1, len(words))
    )


def find_clashes(claims: Iterable[tuple[str, str]]) -> tuple[Fault, ...]:
    """Find the IDs claimed twice; each claim is an ID and where it was claimed.

    Two places that clash in several parts (the leaves of a pair, a drawer with its box) are
    reported once.
    """
    first: dict[str, str] = {}
    faults: dict[tuple[str, str], Fault] = {}
    for part, where in claims:
        if part not in first:
            first[part] = where
        elif (first[part], where) not in faults:
            faults[first[part], where] = Fault(
                where, f"duplicate ID ('{part}', first at {first[part]}); each part needs its own"
            )
    return tuple(faults.values())
