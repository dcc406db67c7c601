"""The known word nearest to one that is not known, for messages.

>>> suggest("widht", ["width", "height"])
"did you mean 'width'?"
>>> suggest_record("undermount-530", ["undermount-457", "undermount-533", "undermount-550"])
"did you mean 'undermount-533'?"
"""

import re
from collections.abc import Iterable

MOST_LISTED = 12
"""Known words that a message lists in full where none is near."""


def suggest_near(word: str, known: Iterable[str]) -> str:
    """Say which known word may be meant; empty where none is near."""
    # Only a fault needs it: a job without one does not wait for the import.
    from difflib import get_close_matches

    near = get_close_matches(word.lower()[:64], list(known), n=1, cutoff=0.6)
    return f"did you mean '{near[0]}'?" if near else ""


def suggest(word: str, known: Iterable[str]) -> str:
    """Say which known word may be meant; else what is known."""
    words = list(known)
    if near := suggest_near(word, words):
        return near
    if len(words) > MOST_LISTED:
        return f"known: {_some(words)}"
    return f"known: {', '.join(words)}" if words else "none is known here"


def suggest_id(name: str, known: Iterable[str]) -> str:
    """Say which ID may be meant; IDs are written in capitals."""
    from difflib import get_close_matches

    ids = list(known)
    given = name.upper()[:64]
    near = get_close_matches(given, ids, n=1, cutoff=0.6)
    if near:
        return f"did you mean '{near[0]}'?"
    nearest = get_close_matches(given, ids, n=1, cutoff=0.0) if len(ids) > MOST_LISTED else []
    # None of those listed is it: the one that comes nearest may stand among the others.
    if nearest and nearest[0] not in ids[:MOST_LISTED]:
        return f"known: {_some(ids)}, of which '{nearest[0]}' comes nearest"
    return suggest("", ids)


def _some(words: list[str]) -> str:
    return f"{', '.join(words[:MOST_LISTED])} and {len(words) - MOST_LISTED} more"


_ASKED = r"(.*[a-z])[- ]?(\d+)(in)?[a-z]?"
_NUMBERED = r"(.+)-(\d+)(in)?"
"""A record out of a family: `bar-160`, `bar-4in`."""


def suggest_record(name: str, known: Iterable[str]) -> str:
    """Say which hardware record may be meant, by its family and number; else which there are."""
    names = list(known)
    asked = re.fullmatch(_ASKED, name.lower()[:64])
    if asked:
        family = [(found, other) for other in names if (found := re.fullmatch(_NUMBERED, other))
                  and (found[1], found[3]) == (asked[1], asked[3])]  # fmt: skip
        if family:
            wanted = int(asked[2])
            return f"did you mean '{min(family, key=lambda f: abs(int(f[0][2]) - wanted))[1]}'?"
    own = [other for other in names
           if (found := re.fullmatch(_NUMBERED, other)) and found[1] == name.lower()]  # fmt: skip
    own = own or [other for other in names if other.startswith(f"{name.lower()}-")]
    if own:
        return f"which of them: {', '.join(_families(own))}?"
    return suggest_near(name, names) or f"known: {', '.join(_families(names))}"


def _families(names: Iterable[str]) -> list[str]:
    """Give each name, those of a family together: `bar-64 to bar-480`."""
    families: dict[str, list[str]] = {}
    for name in names:
        found = re.fullmatch(_NUMBERED, name)
        families.setdefault(f"{found[1]}-{found[3]}" if found else name, []).append(name)

    def number(name: str) -> int:
        found = re.fullmatch(_NUMBERED, name)
        return int(found[2]) if found else 0

    return [
        name if len(members) == 1 else f"{min(members, key=number)} to {max(members, key=number)}"
        for name, members in families.items()
    ]
