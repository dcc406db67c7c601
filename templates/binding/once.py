"""Each card once: of all parts' cards those that are the same are one, for eight parts at most."""

from collections.abc import Hashable, Iterable
from dataclasses import dataclass, field, replace

from templates.cards.card import Card, share_card
from templates.cards.likeness import card_key
from templates.cards.ticks import MOST, Member, ticks
from templates.faces.faceview import FaceView
from templates.sheets.sheetwords import Elsewhere


@dataclass(slots=True, kw_only=True)
class _Group:
    """Cards that are the same, and the parts that they serve, the first of them with it."""

    number: int
    card: Card
    members: list[Member] = field(default_factory=list)


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """A card for a face: whether it stands there, and where on the face."""

    group: _Group
    own: bool
    member: Member

    @property
    def elsewhere(self) -> Elsewhere:
        """Give the card as it lies on this face, which stands with another part."""
        x0, y0, x1, y1 = self.group.card.box
        dx, dy = self.member.dx, self.member.dy
        box = x0 + dx, y0 + dy, x1 + dx, y1 + dy
        return Elsewhere(number=self.group.number, box=box, set_on=self.group.card.index)

    @property
    def card(self) -> Card:
        """Give the card with its number, for all that it serves."""
        card = replace(self.group.card, number=self.group.number)
        return share_card(card, self.group.members) if len(self.group.members) > 1 else card


class Cards:
    """The cards of a job, numbered as they come; `each`: none serves two parts.
    `tallest`: the most height that a page has for one, mm."""

    def __init__(self, tallest: float, *, each: bool) -> None:
        self.tallest, self.each = tallest, each
        self.count = 0
        self._open: dict[Hashable, _Group] = {}

    def use(self, cards: Iterable[Card]) -> list[Use]:
        """Take the cards of one face: each is new, or one that is there already."""
        return [self._use(card) for card in cards]

    def _use(self, card: Card) -> Use:
        key = None if self.each else card_key(card)
        group = self._open.get(key) if key is not None else None
        if group is not None:
            member = _member(card, group.card)
            if len(group.members) < MOST and self._holds(group, member):
                group.members.append(member)
                return Use(group=group, own=False, member=member)
        self.count += 1
        member = _member(card, card)
        group = _Group(number=self.count, card=card, members=[member])
        if key is not None:
            self._open[key] = group
        return Use(group=group, own=True, member=member)

    def _holds(self, group: _Group, member: Member) -> bool:
        """Tell whether a card still finds room on a page with one more box to tick."""
        plan = group.card.plan
        assert plan is not None, "what is drawn already is like no other"
        high = ticks((*group.members, member), plan.heading_width).height
        free = plan.between_rows(high) is not None
        return free or group.card.height + high <= self.tallest


def _member(card: Card, first: Card) -> Member:
    view: FaceView = card.view
    dx = dy = 0.0
    if card.plan is not None and first.plan is not None:
        dx = card.plan.across.at - first.plan.across.at
        dy = card.plan.up.at - first.plan.up.at
    serves = card.fitting.part if view.face == "inside" and card.plan is not None else None
    return Member(part=view.part, code=view.code, serves=serves or "", dx=dx, dy=dy)
