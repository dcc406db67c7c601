"""What a board's page says of its shelf pins, which one card with numbered crosses sets."""

from collections.abc import Iterable

from jigs.given.kinds import kind_of
from jigs.ground.geometry import collect_holes
from templates.faces.faceview import FaceView
from templates.words.facewords import edge_words
from templates.words.holewords import operations
from templates.words.sumwords import closing_words

CARD = "CARD {}"
"""What a pin card is called by its number."""


def pins_line(view: FaceView) -> str:
    """Say what is bored for the pins of a board, and from where its lines are struck."""
    rows = [fitting for fitting in view.fittings if kind_of(fitting).on_crosses]
    bored = " ".join(operations(collect_holes(rows), view.thickness))
    both = "" if view.state.stand else ", across BOTH boards"
    return f"{bored} Strike these lines up from the {edge_words(view, 'bottom')}{both}."


def pin_card_line(card: int, code: str, page: int, where: str) -> str:
    """Say which card is set on the lines that follow, by the code that stands on it, and at which
    edges."""
    name = f"PIN {CARD.format(card)}, code {code}, page {page}"
    return f"{name}: {where.strip()}; at each line, its crosses:"


def sum_line(view: FaceView, heights: Iterable[float]) -> str:
    """Give the sum of the pins' lines that closes on a board."""
    low = view.state.low
    return f"Pin lines: {closing_words(heights, view.height - low)}."
