"""A sentence on a sheet, and how a fact or a remedy becomes one.

>>> bare("nearly level."), closed("nearly level")
('nearly level', 'Nearly level.')
"""

from msgspec import Struct


class Sentence(Struct, frozen=True):
    """A sentence, ready to print; `bold`: it is set so."""

    text: str
    bold: bool = False


def bare(fact: str) -> str:
    """Give a fact or a remedy without its full stop, to stand within a sentence."""
    return fact.rstrip(".")


def closed(fact: str) -> str:
    """Make a sentence of a fact or a remedy: a capital before it, a full stop behind it."""
    return f"{fact[:1].upper()}{bare(fact[1:])}."
