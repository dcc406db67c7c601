"""The errors that callers catch.

JigsheetError            anything the tool says to its user
├── LengthError          one length that does not follow the grammar
└── ReadingError         all faults of one input, reported together
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple


class JigsheetError(Exception):
    """Anything the tool says to its user; the text is complete and needs no traceback."""


class LengthError(JigsheetError):
    """A length that does not follow the grammar; the text names the value and what is allowed."""


class AskedBack(NamedTuple):
    """What a fault asks, for a person who is asked one thing at a time: the question in words, and
    what may be answered, each in words and as `--columns` takes it."""

    words: str
    choices: tuple[tuple[str, str], ...]


class Fault(NamedTuple):
    """One reading fault: where it stands (`job.toml:12: box[1].width`) and what is wrong there;
    what it asks, where one of some answers mends it.
    No dataclass, since the command line knows errors before it loads anything."""

    where: str
    what: str
    asked: AskedBack | None = None

    def __str__(self) -> str:
        return f"{self.where}: {self.what}"


Ahead = Callable[[], str]
"""Says what a list asks next."""


class ReadingError(JigsheetError):
    """All the faults of one input. Nothing is made from an input that has one. `told`: what was
    understood of a list all the same, in words; `ahead` finds what it asks besides, and
    how all of it is answered at once: the list is read some times for it."""

    def __init__(self, faults: Sequence[Fault], told: str = "", ahead: Ahead | None = None) -> None:
        self.faults = tuple(faults)
        self.told = told
        self.ahead = ahead
        super().__init__("\n".join(str(fault) for fault in self.faults))


def refusal(where: object, what: str) -> ReadingError:
    """Give the error of an input that cannot be read at all: its one fault."""
    return ReadingError([Fault(str(where), what)])
