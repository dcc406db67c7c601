"""Each card once: of all parts' cards those that are the same are one, for eight parts at most."""

from collections.abc import Hashable, Iterable, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from templates.cards.blank import Blanks
from templates.cards.card import Card, fits, share_card
from templates.cards.likeness import card_key
from templates.cards.ticks import MOST_ON_CARD, Member
from templates.page.packing import Size
from templates.sheets.sheetwords import Elsewhere


class _Group(Struct, kw_only=True):
    """Cards that are the same, the parts that they serve, and the sizes that its page has room
    for."""

    number: int
    card: Card
    rooms: Sequence[Size]
    members: list[Member] = field(default_factory=list)


class CardUse(Struct, frozen=True, kw_only=True):
    """A card for a face: whether it stands there, and where on the face."""

    group: _Group
    own: bool
    member: Member

    @property
    def elsewhere(self) -> Elsewhere:
        """Give the card as it lies on this face, which stands with another part."""
        group, member = self.group, self.member
        return Elsewhere(number=group.number, card=group.card, dx=member.dx, dy=member.dy)

    @property
    def card(self) -> Card:
        """Give the card with its number, for all that it serves."""
        return replace(self.group.card, number=self.group.number)


class Cards:
    """The cards of a job, numbered as they come; `each`: none serves two parts."""

    def __init__(self, *, each: bool) -> None:
        self.each = each
        self.blanks = Blanks()
        self.count = 0
        self._open: dict[Hashable, tuple[Card, _Group]] = {}
        """Those that may serve a further part: each as it is for its first part alone."""

    def next_number(self) -> int:
        """Number a further card."""
        self.count += 1
        return self.count

    def use(self, cards: Iterable[Card], rooms: Sequence[Size]) -> list[CardUse]:
        """Take the cards of one face, made for these sizes: each is new, or one that is there
        already."""
        return [self._use(card, rooms) for card in cards]

    def join(self, cards: Sequence[Card]) -> list[CardUse] | None:
        """Take the cards of one face if all are there already; else none of them."""
        found: dict[int, _Joining] = {}
        for card in cards:
            joining = self._find(card, self._key(card))
            # One is new, or two are the same.
            if joining is None or joining.group.number in found:
                return None
            found[joining.group.number] = joining
        return [joining.settle() for joining in found.values()]

    def _key(self, card: Card) -> Hashable | None:
        return None if self.each else card_key(card)

    def _find(self, card: Card, key: Hashable | None) -> "_Joining | None":
        """Give the card that is the same as one, with its part among those that it serves."""
        first, group = self._open.get(key, (card, None))
        if group is None or len(group.members) >= MOST_ON_CARD:
            return None
        members = [*group.members, _member(card, first)]
        shared = share_card(first, members, self.blanks)
        # It names each part that it serves, and grows: as far as its page has room for it, and
        # it has itself below its ladder.
        if not fits(shared, group.rooms) or shared.crowded:
            return None
        return _Joining(group=group, card=shared, members=members)

    def _use(self, card: Card, rooms: Sequence[Size]) -> CardUse:
        key = self._key(card)
        joining = self._find(card, key)
        if joining is not None:
            return joining.settle()
        member = _member(card, card)
        group = _Group(number=self.next_number(), card=card, rooms=rooms, members=[member])
        if key is not None:
            self._open[key] = card, group
        return CardUse(group=group, own=True, member=member)


class _Joining(Struct, frozen=True, kw_only=True):
    """A further part that a card may serve: the card as it is then, and all its parts."""

    group: _Group
    card: Card
    members: list[Member]

    def settle(self) -> CardUse:
        """Let the card serve it."""
        self.group.card, self.group.members = self.card, self.members
        return CardUse(group=self.group, own=False, member=self.members[-1])


def _member(card: Card, first: Card) -> Member:
    dx = dy = 0.0
    if card.seat is not None and first.seat is not None:
        dx = card.seat.across.at - first.seat.across.at
        dy = card.seat.up.at - first.seat.up.at
    serves = card.fitting.part if card.view.face == "inside" and card.seat is not None else None
    return Member(view=card.view, serves=serves or "", dx=dx, dy=dy)
