"""A sentence on a sheet, with what whoever lays it out or compares it must know of it; and how a
fact or a remedy becomes one.

>>> bare("nearly level."), closed("nearly level")
('nearly level', 'Nearly level.')
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence: its words, the names of parts that it lists, and the words behind them.

    `own`: it tells how a part hangs or is painted, and nothing of its holes. `free`: a finding or
    the person worded it, and it may name parts anywhere. `bold`: it is set so.

    >>> Sentence("Plates 3.0 high for ", ("B1-2", "B3-2"), ".").text
    'Plates 3.0 high for B1-2, B3-2.'
    """

    words: str
    names: tuple[str, ...] = ()
    after: str = ""
    own: bool = False
    free: bool = False
    bold: bool = False

    @property
    def text(self) -> str:
        """The whole sentence, ready to print."""
        return f"{self.words}{', '.join(self.names)}{self.after}"


def bare(fact: str) -> str:
    """Give a fact or a remedy without its full stop, to stand within a sentence."""
    return fact.rstrip(".")


def closed(fact: str) -> str:
    """Make a sentence of a fact or a remedy: a capital before it, a full stop behind it."""
    return f"{fact[:1].upper()}{bare(fact[1:])}."
