"""What a file to print costs at the bench, in words."""

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
