"""A strip's cards: a piece for each page, as few pieces as the paper lets there be."""

from collections.abc import Sequence

from msgspec import Struct

from jigs.ground.geometry import SLACK
from templates.cards.card import Card
from templates.faces.faceview import FaceView
from templates.page.packing import Size
from templates.strips.longwords import strip_words
from templates.strips.strip import SPARE, find_strip, joins_of
from templates.strips.strippiece import above, strip_pieces


class StripPlan(Struct, frozen=True, kw_only=True):
    """The pieces of a strip, and what is said of them; `rest` is the face with what is not on
    it, None where nothing is;
    `parted`: how many fittings stand on two pieces."""

    cards: tuple[Card, ...]
    words: tuple[str, ...]
    rest: FaceView | None
    parted: int


def plan_strip(
    view: FaceView, limits: Sequence[Size], number: int, innermost: float
) -> StripPlan | None:
    """Plan the strip of a face for what reaches no further in than so far, mm, its first piece
    card `number`; `limits` are the largest cards that a page holds.

    None where the face has none, or where it finds no room on the paper.
    """
    found = find_strip(view, max(width for width, _ in limits), innermost)
    if found is None:
        return None
    strip, rest = found
    wide = strip.width + strip.flap - SLACK
    tallest = max((height for width, height in limits if width >= wide), default=0.0)
    for spare in SPARE:
        parting = joins_of(strip, tallest, tallest, above(strip), spare)
        cards = parting and strip_pieces(strip, parting.joins, number)
        if parting and cards:
            words = tuple(strip_words(strip, joined=len(cards) > 1))
            return StripPlan(cards=cards, words=words, rest=rest, parted=parting.parted)
    return None
