"""What shows on a label which way its part goes: an arrow, and a black stripe along one edge.

A label is stuck on so that its arrow points up, or to the front. A stripe along an end is on the
edge of the part that goes to the front; one along the top of a label is the edge that its arrow
points to, or, where the arrow points to an end, the edge that is named beside it. A filler is
narrower than most labels: its label lies along it, and the arrow points to an end.
"""

from typing import Literal

from msgspec import Struct

from jigs.ground.geometry import rectangle
from templates.labels.labelplacing import LabelField
from templates.page.marks import Area, Mark, Text
from templates.page.typeface import EM_PER_CAP, text_width

SMALL = 2.5
"""The least lettering, mm."""
BASE_LINE = 0.385
"""Base line of a line of lettering above the foot of its em, in capital heights."""

Toward = Literal["up", "left", "right"]
"""Where an arrow points to on its label."""

STRIPE = 2.5
"""Width of a stripe along an end, mm."""
STRIPE_HIGH = SMALL * EM_PER_CAP + 0.4
"""What a stripe along the top takes of a label's height, mm."""
CLEAR = 0.5
"""Between a stripe and what stands beside it, mm."""
_TALLEST = 20.0
"""An arrow is as tall as the label takes, up to this; mm."""
_BAR = 2.0
"""A stripe along the top is so long on either side of its words at least, mm."""


class Stripe(Struct, frozen=True, kw_only=True):
    """A black stripe along the left or right end of a label, or along its top. `ways`: what stands
    beside it, the fullest wording first (along an end this alone, in smaller letters). `lines`:
    what is said of it elsewhere, where its words find no room."""

    end: Literal["left", "right", "top"]
    ways: tuple[str, ...]
    lines: tuple[str, ...] = ()


def to_the_front(end: Literal["left", "right"]) -> Stripe:
    """Give the stripe along an end that goes to the front."""
    return Stripe(end=end, ways=("THIS END TO THE FRONT",), lines=("STRIPE TO", "FRONT"))


def stripe_width(stripe: Stripe, field: LabelField) -> float:
    """Give what a stripe along an end takes with its words, mm."""
    return STRIPE + _letters(stripe, field) * EM_PER_CAP + 0.4


def _letters(stripe: Stripe, field: LabelField) -> float:
    """Give the lettering in which a stripe's words fit along an end."""
    return min(3.0, (field.height - 2 * field.margin) / text_width(stripe.ways[0], 1.0, True))


def end_stripe(stripe: Stripe, field: LabelField, lettered: bool) -> tuple[list[Mark], float]:
    """Draw a stripe along an end of a label, if it is `lettered` with its words beside it; give
    the width of both, mm."""
    edge = field.left if stripe.end == "left" else field.right - STRIPE
    area = Area(points=rectangle(edge, field.bottom, edge + STRIPE, field.top))
    if not lettered:
        return [area], STRIPE + (CLEAR if stripe.end == "left" else 0.0)
    size, wide = _letters(stripe, field), stripe_width(stripe, field)
    # Read from the right, the feet of the letters are on the right.
    base = (field.left + wide if stripe.end == "left" else edge - 0.4) - size * BASE_LINE
    letters = Text(
        x=base, y=field.bottom + field.height / 2, text=stripe.ways[0], size=size, bold=True,
        anchor="middle", angle=90,
    )  # fmt: skip
    return [area, letters], wide


def top_stripe(stripe: Stripe, left: float, top: float, width: float) -> list[Mark]:
    """Draw a stripe along the top of a label, parted by its words in the middle, from its upper
    left corner. Where not even the shortest words fit, it is all black."""
    foot = top - SMALL * EM_PER_CAP
    text = next(
        (way for way in stripe.ways if text_width(way, SMALL, True) + 2 * _BAR <= width), ""
    )
    if not text:
        return [Area(points=rectangle(left, foot, left + width, top))]
    bar = (width - text_width(text, SMALL, True)) / 2 - 0.8
    return [
        Area(points=rectangle(left, foot, left + bar, top)),
        Text(x=left + width / 2, y=foot + SMALL * BASE_LINE, text=text, size=SMALL, bold=True,
             anchor="middle"),
        Area(points=rectangle(left + width - bar, foot, left + width, top)),
    ]  # fmt: skip


def arrow_width(word: str, toward: Toward, head: float, size: float) -> float:
    """Give the width of an arrow with a head so wide, its word below in letters of a size; mm."""
    return max(head if toward == "up" else 1.8 * head, text_width(word, size, True))


def draw_arrow(
    word: str, toward: Toward, head: float, size: float, bottom: float, top: float
) -> tuple[Mark, ...]:
    """Draw an arrow between two heights, its left edge at 0, its word below."""
    wide = arrow_width(word, toward, head, size)
    below = size * EM_PER_CAP + 0.5
    if toward == "up":
        foot = max(bottom + below, top - _TALLEST)
        points = tuple((wide / 2 + across, foot + up) for across, up in _arrow(head, top - foot))
    else:
        foot = (bottom + below + top - head) / 2
        tail, sign = (0.0, 1) if toward == "right" else (wide, -1)
        points = tuple(
            (tail + sign * along, foot + head / 2 - across) for across, along in _arrow(head, wide)
        )
    base = foot - 0.5 - size * (EM_PER_CAP - BASE_LINE)
    under = Text(x=wide / 2, y=base, text=word, size=size, bold=True, anchor="middle")
    return Area(points=points), under


def _arrow(head: float, long: float) -> tuple[tuple[float, float], ...]:
    """Give the corners of an arrow: across from its axis, and along it from its foot."""
    neck, shaft = long - head * 0.9, head * 0.18
    return (
        (-shaft, 0.0), (shaft, 0.0), (shaft, neck), (head / 2, neck), (0.0, long),
        (-head / 2, neck), (-shaft, neck),
    )  # fmt: skip
