"""The known word nearest to one that is not known, for messages.

>>> suggest("widht", ["width", "height"])
"did you mean 'width'?"
"""

from collections.abc import Iterable

MOST_LISTED = 12
"""Known words that a message lists in full where none is near."""


def suggest(word: str, known: Iterable[str]) -> str:
    """Say which known word may be meant; else what is known."""
    # Only a fault needs it: a job without one does not wait for the import.
    from difflib import get_close_matches

    words = list(known)
    near = get_close_matches(word.lower()[:64], words, n=1, cutoff=0.6)
    if near:
        return f"did you mean '{near[0]}'?"
    if len(words) > MOST_LISTED:
        return f"known: {', '.join(words[:MOST_LISTED])} and {len(words) - MOST_LISTED} more"
    return f"known: {', '.join(words)}" if words else "none is known here"
