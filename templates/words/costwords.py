"""What a file to print costs at the bench, and which parts it has no room for, in words."""

from collections.abc import Iterable

from jigs.bench.cost import PaperCost
from templates.words.textlines import counted


def cost_words(cost: PaperCost) -> str:
    """Count pages, cards, folds and lines.

    >>> cost_words(PaperCost(pages=34, cards=42, folds=53, lines=1))
    '34 pages, 42 cards to cut, 53 folds, 1 line to strike'
    """
    cards, lines = counted(cost.cards, "card"), counted(cost.lines, "line")
    folds = counted(cost.folds, "fold")
    return f"{counted(cost.pages, 'page')}, {cards} to cut, {folds}, {lines} to strike"


def no_room_words(parts: Iterable[str], paper: str) -> tuple[str, ...]:
    """Say of each part without pages why, and the remedy; `paper`: the page's name.

    >>> no_room_words(["B1-SIDE-L"], "common")
    ("B1-SIDE-L: a card or its words find no room on a page of paper 'common', so it has no sheet; \
give a larger --paper, or take it from 'jigsheet stations'.",)
    """
    return tuple(
        f"{part}: a card or its words find no room on a page of paper '{paper}', so it has no "
        "sheet; give a larger --paper, or take it from 'jigsheet stations'."
        for part in parts
    )
