"""A sentence on a sheet, with what whoever lays it out or compares it must know of it."""

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
