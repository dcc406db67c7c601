"""What page 1 of a file to print says of the file: what it is, what the other one is for, in which
order it is worked through."""

from msgspec import Struct

EITHER = "PRINT THIS ONE OR THE OTHER: their holes are the same."


class CoverWords(Struct, frozen=True, kw_only=True):
    """The words of one file."""

    name: str
    """Where there is no job's name."""
    title: str
    ready: tuple[str, str]
    """What is said of one front, and of several, that can be drilled from it."""
    other: str
    """What the other file is for."""
    order: str
    """How it is worked through."""
    reveals: bool = False
    """Whether the reveals of the job are said."""


SHEETS = CoverWords(
    name="Drilling sheets",
    title="Drilling sheets at full scale: a sheet for each part",
    ready=("has sheets", "have sheets"),
    other=f"{EITHER} Sheets suit single parts, a first front; for what repeats, stations.pdf "
    "asks for fewer cards and folds.",
    order="1 Code of sheet and label differ? The paper is stale. 2 One part at a time: sheet, "
    "label, part together.",
    reveals=True,
)
STATIONS = CoverWords(
    name="Drilling stations",
    title="Stations at full scale: a page for each setting of the drill",
    ready=("is at these stations", "are at these stations"),
    other=f"{EITHER} sheets.pdf suits single parts, a first front, long strips.",
    order="1 Code of row and label differ? The paper is stale. 2 One station at a time: one bit, "
    "one stop, all its parts.",
)
