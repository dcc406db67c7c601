"""A count among the words of a front: `2x door`, `Deur (2 stuks)`, `3 drawers`; a list of this kind
may have no column of counts, or one that says otherwise. A number before a word for a box is no
count (`2 door base cabinet`), nor is one of hinges or handles (`2 pcs hinges`).

>>> count_in_words("2x Deur, wit"), count_in_words("Deur (2 stuks)"), count_in_words("3 drawers")
(2, 2, 3)
>>> count_in_words("2-deurs kast"), count_in_words("2x lacquered"), count_in_words("Door 2")
(None, None, None)
>>> count_in_words("3 drawer base"), count_in_words("Door, 2 pcs hinges")
(None, None)
>>> count_in_words("Lade, 2 stuks greep"), count_in_words("Pullout, 2 pcs")
(None, 2)
>>> count_alone("2 stuks, links"), count_alone("2x lacquered")
(2, None)
"""

import re

from jigs.reading.frontwords import (
    is_kind,
    read_front,
    read_hand,
    speaks_of_handles,
    speaks_of_hinges,
)
from jigs.reading.listcells import is_count_word

_TIMES = r"(?P<number>[1-9][0-9]?)\s*[x×]"
_BEFORE = rf"\s*{_TIMES}\s+(?P<rest>[^\W\d_].*)"
_BEHIND = rf"(?P<rest>.*?)[\s,;(\[]+{_TIMES}\s*[)\]]?\s*"
_PIECES = r"(?<![\w.,/-])(?P<number>[1-9][0-9]?)\s*(?P<unit>[^\W\d_]{2,})(?![\w-])"
_SEVERAL = r"\s*(?P<number>[2-9]|[1-9][0-9])\s+(?P<rest>[^\W\d_][^,;(\[]*).*"


def count_in_words(text: str) -> int | None:
    """Give how many the words of a kind or a description say there are, None where they do not."""
    for pattern in (_BEFORE, _BEHIND):
        found = re.fullmatch(pattern, text)
        if found and read_front(found["rest"]).kind:
            return int(found["number"])
    if (number := _counted(text)) is not None:
        return number
    found = re.fullmatch(_SEVERAL, text)
    return int(found["number"]) if found and is_kind(found["rest"]) else None


def count_alone(text: str) -> int | None:
    """Give how many a note says there are that says nothing else, but for a hand."""
    words = [word for word in re.split(r"[\s,;.()]+", text) if word and not read_hand(word)]
    rest = " ".join(words)
    if found := re.fullmatch(_TIMES, rest):
        return int(found["number"])
    found = re.fullmatch(_PIECES, rest)
    return int(found["number"]) if found and is_count_word(found["unit"]) else None


def count_beside_sizes(text: str) -> int | None:
    """Give how many a cell of sizes says there are, behind these.

    >>> count_beside_sizes("597 x 713 (2x)"), count_beside_sizes("597 x 713 x 19")
    (2, None)
    """
    if found := re.search(rf"[(\[]\s*{_TIMES}\s*[)\]]", text):
        return int(found["number"])
    return _counted(text)


def _counted(text: str) -> int | None:
    if speaks_of_hinges(text) or speaks_of_handles(text):
        return None
    found = [m for m in re.finditer(_PIECES, text) if is_count_word(m["unit"])]
    return int(found[0]["number"]) if len(found) == 1 else None
