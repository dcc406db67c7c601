"""Which cards are the same: compared by their values, before anything is drawn.

Two cards are the same if they are set on the same edges and lines, with the same figures, for the
same face and hand, and have the same holes, outlines and ladder, in the same places within
0.005 mm. Whose card it is counts for nothing: a card that serves several parts names them all.
"""

import math
from collections.abc import Hashable, Iterable, Sequence

from templates.cards.card import Card
from templates.faces.reference import Reference

ALIKE = 0.005
"""Places that differ by less are the same, mm."""
_OFF = 0.37
"""No figure of a tape, in inches or in mm, lies near the border between two steps moved so far."""


def card_key(card: Card) -> Hashable | None:
    """Give what cards that are the same have in common; None for one that is drawn already."""
    seat = card.seat
    if seat is None:
        return None
    view, fitting = card.view, card.fitting
    x0, y0 = seat.across.at, seat.up.at
    left, low, right, high = card.box

    def place(x: float, y: float) -> tuple[int, int]:
        # What lies beyond the card is not drawn.
        u, v = min(max(x, left), right) - x0, min(max(y, low), high) - y0
        return math.floor(u / ALIKE + _OFF), math.floor(v / ALIKE + _OFF)

    outlines = (*fitting.outline, view.drawer_outline, view.opening)
    corners = ((0.0, 0.0), (view.width, view.height))
    return (
        (view.face, view.kind, view.hinge_edge, view.front_edge, view.column, view.side),
        (view.partition, view.rounded, view.bevel, view.on_legs, _step(view.step)),
        (_step(view.thickness), _steps((view.state.panel or 0.0, view.state.low, view.state.band))),
        (view.state.panel is None, view.state.stand, view.state.raw),
        (fitting.kind, _ordinal(card), fitting.note, _step(fitting.spacer), fitting.stated_from),
        tuple(_reference(reference) for reference in (seat.across, seat.up)),
        tuple(
            (*place(h.x, h.y), _step(h.diameter), _step(h.depth or 0.0), h.purpose, h.face)
            for h in fitting.holes
        ),
        tuple(tuple(place(x, y) for x, y in polygon) for polygon in (*outlines, corners)),
        _steps(x - x0 for x in fitting.carry),
        _half(sum(x for x, _ in fitting.places) / len(fitting.places) - view.width / 2),
        None if fitting.stands is None else place(*fitting.stands),
        None if card.ladder is None else _step(view.height),
        _whole(card),
    )


def _step(value: float) -> int:
    return math.floor(value / ALIKE + _OFF)


def _steps(values: Iterable[float]) -> tuple[int, ...]:
    return tuple(map(_step, values))


def _reference(reference: Reference) -> tuple[Hashable, ...]:
    # Of the middle no figure is said: each part has its own.
    middle = reference.kind == "middle"
    return reference.kind, reference.edge, 0 if middle else _step(reference.value)


def _ordinal(card: Card) -> tuple[int, int]:
    """Give a fitting's place among those of its kind as it is named: the first and the last of
    hinges are, however many there are."""
    fitting = card.fitting
    if fitting.count == 1 or fitting.kind == "manual":
        return fitting.index, fitting.count
    return (
        (fitting.index, fitting.count)
        if 1 < fitting.index < fitting.count
        else ((1, 2) if fitting.index == 1 else (2, 2))
    )


def _half(centre: float) -> int:
    """Tell in which half a face holes stand, or in its middle."""
    return 0 if abs(centre) < 1.0 else int(math.copysign(1, centre))


def _whole(card: Card) -> Sequence[int]:
    """Give what a card says of the whole face besides: whether any of its kind has several holes,
    where its drawer box stands, how high holes by hand were said to be."""
    view, fitting = card.view, card.fitting
    several = any(len(each.holes) > 1 for each in view.fittings if each.kind == fitting.kind)
    ends = _steps(place for corner in view.drawer_outline for place in corner)
    if view.marks is not None:
        ends = ()
    if ends or fitting.stated_from:
        ends += _steps((view.width, view.height, view.ends.base, view.ends.below))
    return (several, *ends)
