"""What a card says that serves several parts: a box to tick for each, with its code.

Paper serves about eight parts before its corners are worn (common practice, no source).
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from jigs.bench.station import Setting
from jigs.ground.geometry import FittingKind
from templates.faces.faceview import FaceView
from templates.page.marks import Mark, Text
from templates.page.pieces import MarkBlock
from templates.page.tickbox import INDENT, tick_box
from templates.page.typeface import text_width, wrap

MOST_ON_CARD = 8
"""Parts that one paper card serves (common practice, no source)."""
ROW = 4.4
"""Pitch of rows with tick boxes, mm."""
SHORT = 24
"""Letters of a name that still stands large on a card."""
OWN_CODES = "tick:"
"""Of a card for several parts, where one for a single part has its code."""
NO_TICKS = MarkBlock(height=0.0, marks=())
"""Of a card for one part."""
_APART = 2.2


class Member(Struct, frozen=True, kw_only=True):
    """One of the faces that a card serves, ticked off as it is punched. `serves`: the front that
    the card's holes are for, where it stands on a board; `dx`, `dy`: how far right and up on this
    face lies what the card has, than on the face that the card is drawn for, mm. `setting`: how a
    pin card is set there, whose origin then lies at (dx, dy) on the face; of other cards None."""

    view: FaceView
    serves: str
    dx: float
    dy: float
    setting: Setting | None = None

    @property
    def part(self) -> str:
        """The part's ID."""
        return self.view.part


def set_name(parts: Sequence[str]) -> str:
    """Name a set by its parts: all of a few short names, else the first and how many more.

    >>> set_name(["B1-2", "B3-2"])
    'B1-2, B3-2'
    >>> set_name(["B1-SIDE-L", "B2-SIDE-L", "B3-SIDE-L"])
    'B1-SIDE-L + 2'
    """
    joined = ", ".join(parts)
    return joined if len(joined) <= SHORT else f"{parts[0]} + {len(parts) - 1}"


def join_names(names: Iterable[str]) -> str:
    """List names; of more than two the first alone, and how many others.

    >>> join_names(["B1-2", "B3-2", "B4-2"])
    'B1-2 + 2'
    """
    each = list(dict.fromkeys(names))
    return ", ".join(each) if len(each) <= 2 else f"{each[0]} + {len(each) - 1}"


def tick_boxes(
    members: Sequence[Member], width: float, kind: FittingKind | None = None
) -> MarkBlock:
    """Set the parts in rows `width` mm wide, each with its box to tick, its code, and what the
    card's holes are for; a cell that is too long goes on below. `kind`: what the holes take; parts
    that take different hinges in the same holes say which."""
    if not members:
        return NO_TICKS
    hinges = [_hinge(member, kind) for member in members]
    named = len(set(hinges)) > 1
    placed: list[tuple[float, float, str, bool]] = []  # "" is a box
    x, y = 0.0, -ROW
    for member, hinge in zip(members, hinges, strict=True):
        texts = [(member.part, True), (member.view.code, False)]
        texts += [(f"for {member.serves}", False)] if member.serves else []
        texts += [(f"hinge {hinge}", True)] if named and hinge else []
        cell = [(text, bold, text_width(text, 2.5, bold)) for text, bold in texts]
        whole = INDENT + sum([wide + _APART for _, _, wide in cell]) - _APART
        if x > 0.0 and x + whole > width:
            x, y = 0.0, y - ROW
        placed.append((x, y - 0.3, "", False))
        x = start = x + INDENT
        for text, bold, long in cell:
            fits = long <= width - start
            for line in [text] if fits else wrap(text, 2.5, bold, width - start):
                wide = long if fits else text_width(line, 2.5, bold)
                if x > start and x + wide > width:
                    x, y = start, y - ROW
                placed.append((x, y, line, bold))
                x += wide + _APART
        x += _APART

    def draw() -> tuple[Mark, ...]:
        return tuple(
            Text(x=x, y=y, text=line, bold=bold) if line else tick_box(x, y)
            for x, y, line, bold in placed
        )

    return MarkBlock(height=1.2 - y, marks=draw)


def _hinge(member: Member, kind: FittingKind | None) -> str | None:
    """Give the hinge that a member's cups or plates are bored for; None where they are none."""
    if kind not in ("hinge", "plate"):
        return None
    for fitting in member.view.fittings:
        if fitting.kind == kind and member.serves in ("", fitting.part):
            return fitting.record
    return None
