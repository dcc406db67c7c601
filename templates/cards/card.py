"""A card: a small paper template at full scale for the holes of one fitting.

A card is set on two references (`templates.faces.reference`), one along each axis. On an edge of
the part, white meets black exactly on the edge: a solid band 3 mm wide lies outside it, and beyond
it a flap to fold down. An index line is the card's own cut edge, or, at the middle of a part,
two diamonds to cut out. Each hole has its distance from both references written beside it, so
that a steel rule alone can replace the paper.

Everything here is in the coordinates of the face as seen, mm; the sheet moves the whole card to
its place on the page.
"""

from collections.abc import Hashable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.bench.station import How
from jigs.given.kinds import kind_of, rank_of
from jigs.ground.geometry import Axis, Fitting, Hole, collect_holes
from templates.cards.blank import Blank, Blanks
from templates.cards.carddraw import draw_card
from templates.cards.cardplan import CardPlan
from templates.cards.setout import CLEAR, choose_references
from templates.cards.ticks import Member, join_names, tick_boxes
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.marks import Mark
from templates.page.space import Box

NEIGHBOURS = 100.0
"""Screws that are further apart, up or across, have cards of their own, mm."""

Rooms = Sequence[tuple[float, float]]
"""The widths and heights that a page can give to a card, mm."""
StruckLine = tuple[Hashable, ...]
"""A line on a face: the part, which face of it, from where and how far."""


class Seat(Struct, frozen=True, kw_only=True):
    """How a card sits on a face: the references that it is set on, how it is cut, and of a card for
    several parts the border that it has without its boxes to tick, within which all that it shows
    is alike."""

    across: Reference
    up: Reference
    blank: Blank
    with_ladder: bool = True
    alike: Box | None = None


class Card(Struct, frozen=True, kw_only=True):
    """A card in the coordinates of the face as seen, mm.

    `box` is its border, flaps included; `edges` the references with a black band, `index` the
    index lines and middles; `ladder` the y of the part's true top where it may be cut longer.
    `seat`: how it is set, from which it is planned when it is drawn; None where it is drawn
    already, as `drawn`. `piece`, `pieces`: which
    of how many pieces of a strip it is; 0 for no strip. `members`: all faces that it serves, the
    one it is drawn for first; () for that one alone. A pin card has its own coordinates, and a
    member for each of its settings.
    """

    number: int
    view: FaceView
    fittings: tuple[Fitting, ...]
    box: Box
    edges: tuple[Reference, ...]
    index: tuple[Reference, ...]
    ladder: float | None
    seat: Seat | None = None
    drawn: tuple[Mark, ...] = ()
    piece: int = 0
    pieces: int = 0
    members: tuple[Member, ...] = ()

    @property
    def marks(self) -> tuple[Mark, ...]:
        """All that is printed on it; drawn anew each time."""
        return self.drawn if self.seat is None else draw_card(self.plan, self.number)

    @property
    def plan(self) -> CardPlan:
        """Where all that it shows goes, planned anew each time; of what several parts' holes on
        boards serve it names the first."""
        seat, fitting = self.seat, self.fitting
        assert seat is not None, "what is drawn already has no plan"
        if self.members:
            serves = join_names([member.serves for member in self.members if member.serves])
            fitting = replace(fitting, part=serves or None)
        return CardPlan(
            self.view, fitting, seat.across, seat.up,
            with_ladder=seat.with_ladder, members=self.members, alike=seat.alike,
        )  # fmt: skip

    @property
    def crowded(self) -> bool:
        """Whether its words lack room."""
        return self.seat is not None and self.seat.blank.shortage > 0.0

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts that it serves."""
        return tuple(dict.fromkeys(each.part for each in self.members)) or (self.view.part,)

    @property
    def own_frame(self) -> bool:
        """Whether its coordinates are its own, and each setting says how it lies on a face."""
        return any(member.setting is not None for member in self.members)

    def by(self, edge: Reference) -> How:
        """Tell how it lies on one of its edges."""
        if self.view.state.stand and edge.edge == "bottom":
            return "panel"
        return "butt" if self.view.rounded else "fold"

    @property
    def folds(self) -> int:
        """How many flaps are folded on it."""
        return sum(self.by(edge) == "fold" for edge in self.edges)

    @property
    def struck(self) -> tuple[StruckLine, ...]:
        """The lines that it is set on, of each face that it serves; middles too."""
        views = [each.view for each in self.members] or [self.view]
        lines = [
            (*_face(view), line.edge, None if line.kind == "middle" else round(line.value, 1))
            for view in views
            for line in self.index
        ]
        settings = [(each.view, each.setting) for each in self.members if each.setting]
        lines += [
            (*_face(view), place.start, round(place.value, 1))
            for view, setting in settings
            for place in (setting.x, setting.y)
            if place is not None
        ]
        return tuple(lines)

    @property
    def width(self) -> float:
        """Width over all, mm."""
        return self.box[2] - self.box[0]

    @property
    def height(self) -> float:
        """Height over all, mm."""
        return self.box[3] - self.box[1]

    @property
    def fitting(self) -> Fitting:
        """The fitting of a card that has one alone."""
        (fitting,) = self.fittings
        return fitting

    @property
    def holes(self) -> tuple[Hole, ...]:
        """The holes on this card."""
        return collect_holes(self.fittings)


def _face(view: FaceView) -> tuple[Hashable, ...]:
    return view.part, view.face, view.column, view.side


def share_card(card: Card, members: Sequence[Member], blanks: Blanks) -> Card:
    """Give a card as it is printed for several parts, its own the first of them: each has its
    code and a box to tick."""
    seat, view, fitting = card.seat, card.view, card.fitting
    assert seat is not None, "what is drawn already serves its part alone"
    across, up, alone = seat.across, seat.up, seat.blank
    while True:
        ticks = tick_boxes(members, alone.heading, fitting.kind).height
        blank = blanks.find(
            view, fitting, across, up, with_ladder=seat.with_ladder, members=members, ticks=ticks
        )
        if blank.shortage <= 0.0 or up.kind != "index":
            break
        # Its boxes to tick find no room below the ladder: the line goes lower, as far as there is
        # one for them.
        further = max(0.0, blank.nearest - CLEAR) + blank.shortage
        across, lower = choose_references(view, fitting, lowered=further)
        if lower == up:
            break
        up = lower
        alone = blanks.find(view, fitting, across, up, with_ladder=seat.with_ladder)
    alike = seat.blank.inside(seat.across, seat.up)
    shown = _seated(
        view,
        fitting,
        Seat(across=across, up=up, blank=blank, with_ladder=seat.with_ladder, alike=alike),
    )
    return replace(shown, number=card.number, members=tuple(members))


def make_cards(view: FaceView, rooms: Rooms, blanks: Blanks) -> tuple[Card, ...]:
    """Make the cards of a face: one a fitting, or several where no paper holds it whole; none for
    rows of holes that a pin card sets.

    `blanks`: those of the job's other cards.
    """
    cards: list[Card] = []
    for fitting in sorted(_joined(view, rooms, blanks), key=_reading_order):
        if kind_of(fitting).on_crosses:
            continue
        if fitting.stands is not None:
            card = compose_card(view, fitting, rooms, blanks)
            cards.append(replace(card, number=len(cards) + 1))
            continue
        rest = list(fitting.holes)
        across = _extent([hole.x for hole in rest]) >= _extent([hole.y for hole in rest])
        if len(rest) > 1:
            # Those by a board's front edge share its card, on the right as on the left.
            inward = -1 if view.front_edge == "right" else 1
            rest.sort(key=lambda hole: (inward * hole.x, hole.y) if across else (hole.y, hole.x))
        while rest:
            card, taken = _largest_card(view, fitting, rest, rooms, blanks)
            cards.append(replace(card, number=len(cards) + 1))
            rest = rest[taken:]
    return tuple(cards)


def _joined(view: FaceView, rooms: Rooms, blanks: Blanks) -> tuple[Fitting, ...]:
    """Join the columns of screws of a part so narrow that their cards would lie on each other."""
    loose = [fitting for fitting in view.fittings if fitting.holes and kind_of(fitting).loose]
    holes = tuple(hole for fitting in loose for hole in fitting.holes)
    if len(loose) < 2 or any(
        _extent(places) > NEIGHBOURS
        for places in ([hole.x for hole in holes], [hole.y for hole in holes])
    ):
        return view.fittings
    whole = replace(loose[0], holes=holes, index=0, count=1)
    if not fits(compose_card(view, whole, rooms, blanks), rooms):
        return view.fittings
    return (*(fitting for fitting in view.fittings if fitting not in loose), whole)


def _largest_card(
    view: FaceView, fitting: Fitting, rest: list[Hole], rooms: Rooms, blanks: Blanks
) -> tuple[Card, int]:
    """The card of as many of the first holes of `rest` as may share one, and how many they are.

    Screws that do not belong to one piece of hardware share a card only where they are near.
    """
    loose = kind_of(fitting).loose
    for take in range(len(rest), 0, -1):
        holes = tuple(rest[:take])
        if take > 1 and loose and _extent([hole.y for hole in holes]) > NEIGHBOURS:
            continue
        part = fitting if take == len(fitting.holes) else replace(fitting, holes=holes)
        card = compose_card(view, part, rooms, blanks)
        if take == 1 or fits(card, rooms):
            return card, take
    raise ValueError(f"{view.part}: a fitting without holes")


def _extent(values: list[float]) -> float:
    return max(values) - min(values)


def _reading_order(fitting: Fitting) -> tuple[int, float]:
    """Cards follow each other from the bottom up; side by side, from the driller's left."""
    across = kind_of(fitting).side_by_side
    return rank_of(fitting.kind), min(x if across else y for x, y in fitting.places)


def fits(card: Card, rooms: Rooms) -> bool:
    """Tell whether a card finds room in one of these, mm."""
    return any(card.width <= width and card.height <= height for width, height in rooms)


def compose_card(view: FaceView, fitting: Fitting, rooms: Rooms, blanks: Blanks) -> Card:
    """Compose the card of some holes that belong together, set on edges where that fits."""
    across, up = choose_references(view, fitting)
    with_ladder = True
    blank = blanks.find(view, fitting, across, up)
    if blank.shortage > 0.0 and up.kind == "index":
        # Too little room below the door's top end: the index line goes lower instead.
        across, up = choose_references(view, fitting, lowered=blank.shortage)
        blank = blanks.find(view, fitting, across, up)
    if blank.shortage > 0.0:
        # A short door: no room for a ladder as well; the bottom edge alone sets the card.
        with_ladder = False
        blank = blanks.find(view, fitting, across, up, with_ladder=False)
    seat = Seat(across=across, up=up, blank=blank, with_ladder=with_ladder)
    card = _seated(view, fitting, seat)
    axes: tuple[Axis, Axis] = ("y", "x")
    for axis in axes:
        if fits(card, rooms):
            break
        across, up = choose_references(view, fitting, no_edge=axis)
        if (up if axis == "y" else across).kind == "index":
            blank = blanks.find(view, fitting, across, up)
            other = _seated(view, fitting, Seat(across=across, up=up, blank=blank))
            if fits(other, rooms):
                return other
    return card


def _seated(view: FaceView, fitting: Fitting, seat: Seat) -> Card:
    pair, blank = (seat.across, seat.up), seat.blank
    return Card(
        number=1,
        view=view,
        fittings=(fitting,),
        box=blank.box(*pair),
        edges=tuple(r for r in pair if r.kind == "edge"),
        index=tuple(r for r in pair if r.kind != "edge"),
        ladder=None if blank.ladder is None else seat.up.at + seat.up.inward * blank.ladder,
        seat=seat,
    )
