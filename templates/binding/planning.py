"""Which way the cards of a face are made: on cards, as a strip along its edge, or whole."""

import math
from collections.abc import Sequence

from msgspec.structs import replace

from templates.cards.blank import Blanks
from templates.cards.card import Card, make_cards
from templates.faces.faceview import FaceView
from templates.page.packing import Size
from templates.page.paper import Paper
from templates.sheets.field import GUTTER, limits_of
from templates.sheets.sheetwords import COLUMNS, SheetWords, in_column
from templates.strips.longwords import WHOLE
from templates.strips.strip import INNERMOST
from templates.strips.strippiece import plan_strip
from templates.strips.wholecard import whole_card, whole_size

NO_LIMIT = ((math.inf, math.inf),)
"""Room for cards as large as they would be."""
MOST_TRIES = 4
"""How often cards are made anew for the room that the words leave them."""

FaceCards = tuple[tuple[Card, ...], tuple[str, ...], tuple[Size, ...]]
"""Cards of a face, what is said of long ones, and the sizes that a page has room for."""


def make_free_cards(
    view: FaceView, paper: Paper, blanks: Blanks, *, strip: bool = False
) -> tuple[Card, ...]:
    """Make the cards of one face as large as they would be; none where long ones take their place:
    on large paper, or with `strip`. `blanks`: those of the job's other cards."""
    return () if strip or paper.large else make_cards(view, NO_LIMIT, blanks)


def make_face_cards(
    words: SheetWords,
    paper: Paper,
    rooms: Sequence[Size],
    number: int,
    blanks: Blanks,
    free: Sequence[Card],
    *,
    strip: bool = False,
) -> FaceCards:
    """Make the cards of one face, the first of them card `number`: as they are `free` of any limit
    where they find room so, whole on large paper that holds it; with `strip` a strip takes what
    lies along its edge. `blanks`: those of the job's other cards."""
    view = words.view
    cards = tuple(free)
    if cards:
        column = in_column(words.again().with_cards(cards), COLUMNS[0])
        beside = tuple((w - column.width - GUTTER, h) for w, h in rooms if column.height <= h)
        if all(any(c.width <= w and c.height <= h for w, h in beside) for c in cards):
            return cards, (), beside
    limits = limits_of(words, rooms)
    if strip:
        found = [
            plan
            for plan in (plan_strip(view, limits, number, reach) for reach in INNERMOST)
            if plan
        ]
        if found:
            best = min(found, key=lambda plan: (plan.parted, len(plan.cards)))
            rest: tuple[Card, ...] = ()
            if best.rest is not None:
                further = number + len(best.cards)
                free = make_free_cards(best.rest, paper, blanks)
                left = replace(words, view=best.rest)
                rest, _, limits = make_face_cards(left, paper, rooms, further, blanks, free)
            return (*best.cards, *rest), best.words, limits
    if paper.large:
        wide, high = whole_size(view)
        if any(wide <= width and high <= height for width, height in limits):
            whole = whole_card(view, number)
            if whole is not None:
                return (whole,), (WHOLE,), limits
    cards = make_cards(view, limits, blanks)
    named = list(cards)
    for _ in range(MOST_TRIES):
        # The words name the lines that the cards are set on, and leave them that much less room:
        # so do those of the tries before, else two tries might follow each other for ever.
        told = words.with_cards(named)
        if set(told.set_on) == set(words.set_on):
            break
        words, limits = told, limits_of(told, rooms)
        cards = make_cards(view, limits, blanks)
        named += cards
    return cards, (), limits
