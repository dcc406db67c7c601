"""Labels: one for every front, drawer box and box side, on sheets or rolls of a stock.

On a label, from the left: an arrow, the words, the QR symbol with the code below it and, where
the label is 30 mm high, the key plan. The label of a box side carries a black stripe along the
end that goes to the front. Nothing is clipped: what does not fit is worded shorter, then left
out by its worth, and cut short with an ellipsis only at last. The ID is never cut.
"""

from collections.abc import Collection, Iterator
from functools import partial

from jigs.cutlist.piece import Piece
from jigs.labelstock import Stock
from jigs.parts import Layout
from templates.boxparts import parts_of_box
from templates.keyplan import KeyPlan
from templates.labeldraw import label_marks
from templates.labelplacing import Entry, Field, place_labels
from templates.labelwords import (
    LabelWords,
    words_of_drawer_box_label,
    words_of_front_label,
    words_of_rollout_label,
    words_of_side_label,
)
from templates.marks import Mark, Page
from templates.piecewords import piece_words
from templates.raster import Raster


def label_pages(
    layout: Layout,
    stock: Stock,
    *,
    start: int = 1,
    copies: int = 1,
    only: Collection[str] | None = None,
    pieces: tuple[Piece, ...] = (),
    order: str = "box",
    raster: Raster | None = None,
) -> tuple[Page, ...]:
    """Give the labels of a job: box by box its fronts, drawer boxes and sides.

    `start` is the first free place of the first sheet; ValueError where it has no such place.
    Each label is printed `copies` times. `only` names parts, boxes or walls. `pieces`: those that
    have labels too, after the others, in the order `box` or `cut`. `raster`: what the printer
    asks for; without it, the stock's own dots.
    """
    plan = KeyPlan(layout)
    words = [words for words, names in _words(layout) if _wanted(names, only)]
    words += [
        entry
        for entry, piece in piece_words(pieces, order)
        if _wanted((piece.id, piece.box or "", piece.wall, piece.front or ""), only)
    ]
    raster = raster or Raster(dots=stock.dots)
    entries = [
        Entry(entry.part, partial(_draw, words=entry, plan=plan, raster=raster)) for entry in words
    ]
    return tuple(place_labels(entries, stock, raster, start=start, copies=copies))


def _draw(field: Field, *, words: LabelWords, plan: KeyPlan, raster: Raster) -> list[Mark]:
    return label_marks(words, plan, field, raster)


def _words(layout: Layout) -> Iterator[tuple[LabelWords, tuple[str, ...]]]:
    """Give each label's words with the names by which it may be chosen."""
    for box in layout.boxes:
        parts = parts_of_box(layout, box.id)
        for front in parts.fronts:
            yield words_of_front_label(layout, front), (front.id, box.id, box.wall)
        for front in parts.fronts:
            if front.drawer is not None:
                yield (
                    words_of_drawer_box_label(layout, front.drawer, front),
                    (front.drawer.id, front.id, box.id, box.wall),
                )
        for rollout in layout.rollouts:
            if rollout.box == box.id:
                yield words_of_rollout_label(layout, rollout), (rollout.id, box.id, box.wall)
        # A partition has two drilled faces, but one label.
        for side in (s for s in parts.sides if not (s.partition and s.side == "left")):
            yield words_of_side_label(layout, side), (side.board, box.id, box.wall)


def _wanted(names: tuple[str, ...], only: Collection[str] | None) -> bool:
    if only is None:
        return True
    wishes = {wish.upper() for wish in only}
    return any(name.upper() in wishes for name in names if name)
