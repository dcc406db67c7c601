"""What was not checked because nothing says it, and that no number is open: one line each."""

from collections.abc import Collection, Iterable

from jigs.box.unchecked import Subject, Unchecked
from jigs.given.confirming import OpenNumber

NO_OPEN = "No number is open."
NO_OPEN_ASIDE = "No number is open, what is held back aside."

_WORDS: dict[Subject, tuple[str, str]] = {
    "wall": ("ends and corners, ceiling, counter", "no [[wall]]"),
    "ends": ("ends and corners", "no left or right"),
    "left": ("the end or corner at the left", "no left"),
    "right": ("the end or corner at the right", "no right"),
    "corner": ("what stands round a corner", "no left_meets or right_meets"),
    "length": ("room along the wall", "no length"),
    "ceiling": ("ceiling", "no ceiling"),
    "counter": ("counter", "no counter"),
    "underside": ("the counter's underside", "no counter_thickness"),
    "square": ("square", "no diagonals"),
    "sides": ("holes in the sides", "no [[box.hole]]"),
    "hooks": ("rear hooks", "no hook numbers"),
    "loads": ("what slides bear", "no load"),
    "film": ("paint between the fronts", "no method and sizes in [paint]"),
    "air": ("the seasons", "no dampest in [room]"),
    "species": ("the seasons", "no species in [wood]"),
    "plywood": ("the seasons", "no figures for fronts of plywood"),
}
"""Each subject, and what would say it."""
_OF: dict[Subject, str] = {"hooks": "of slide ", "loads": "of slide ", "sides": "for "}


def unchecked_words(found: Iterable[Unchecked]) -> tuple[str, ...]:
    """Name what was not checked: `Not checked, because nothing says it: ceiling (no ceiling of
    north); square (no diagonals of B2).`; nothing where all was."""
    listed = "; ".join(_one(unchecked) for unchecked in found)
    return (f"Not checked, because nothing says it: {listed}.",) if listed else ()


def _one(unchecked: Unchecked) -> str:
    words, lacking = _WORDS[unchecked.subject]
    of = _OF.get(unchecked.subject, "of ")
    names = f" {of}{', '.join(unchecked.names)}" if unchecked.names else ""
    return f"{words} ({lacking}{names})"


def good_words(numbers: Collection[OpenNumber], *, held: bool) -> tuple[str, ...]:
    """Say that no number is open, where none is; of what is `held` back nothing is known yet."""
    if numbers:
        return ()
    return (NO_OPEN_ASIDE if held else NO_OPEN,)
