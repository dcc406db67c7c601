"""A card: a small paper template at full scale for the holes of one fitting.

A card is set on two references (`templates.faces.reference`), one along each axis. On an edge of
the part, white meets black exactly on the edge: a solid band 3 mm wide lies outside it, and beyond
it a flap to fold down. An index line is the card's own cut edge, or, at the middle of a part,
two diamonds to cut out. Each hole has its distance from both references written beside it, so
that a steel rule alone can replace the paper.

Everything here is in the coordinates of the face as seen, mm; the sheet moves the whole card to
its place on the page.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from jigs.fittings.kinds import kind_of, rank_of
from jigs.ground.geometry import SLACK, Axis, Fitting, Hole, collect_holes
from templates.cards.carddraw import draw_card
from templates.cards.cardplan import CardPlan
from templates.cards.ticks import Member, join_names
from templates.faces.faceview import FaceView
from templates.faces.reference import FOLD_REACH, REACH, Reference, Wish, choose_reference
from templates.page.marks import Mark
from templates.page.space import Box

NEIGHBOURS = 100.0
"""Screws that are further apart, up or across, have cards of their own, mm."""
NEAR_FOLD = 100.0
"""How far from an edge a card is folded over it that is set on a line the other way, mm: where one
line is struck, a second beside it costs less than a card so tall."""
CLEAR = 20.0
"""Least distance from an index line to a hole's centre: room for the words along the line."""

Places = tuple[tuple[float, float], ...]
"""Where a fitting's holes stand, or the corner of a drawer box: x, y on the face as seen; mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """A card in the coordinates of the face as seen, mm.

    `box` is its border, flaps included; `edges` the references with a black band, `index` the
    index lines and middles; `ladder` the y of the part's true top where it may be cut longer.
    `plan`: how it is drawn; None where it is drawn already, as `drawn`. `piece`, `pieces`: which
    of how many pieces of a strip it is; 0 for no strip. `members`: all parts that it serves, the
    one it is drawn for first; () for that one alone.
    """

    number: int
    view: FaceView
    fittings: tuple[Fitting, ...]
    box: Box
    edges: tuple[Reference, ...]
    index: tuple[Reference, ...]
    ladder: float | None
    plan: CardPlan | None = field(default=None, compare=False)
    drawn: tuple[Mark, ...] = ()
    piece: int = 0
    pieces: int = 0
    members: tuple[Member, ...] = ()

    @property
    def marks(self) -> tuple[Mark, ...]:
        """All that is printed on it; drawn anew each time."""
        return self.drawn if self.plan is None else draw_card(self.plan, self.number)

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts that it serves."""
        return tuple(member.part for member in self.members) or (self.view.part,)

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


def share_card(card: Card, members: Sequence[Member]) -> Card:
    """Give a card as it is printed for several parts, its own the first of them: each has its
    code and a box to tick, and of what they serve on boards the card names the first."""
    plan = card.plan
    assert plan is not None, "what is drawn already serves its part alone"
    serves = join_names([member.serves for member in members if member.serves])
    fitting = replace(plan.fitting, part=serves or None)
    together = CardPlan(
        card.view, fitting, plan.across, plan.up,
        with_ladder=plan.with_ladder, members=tuple(members),
        alike=plan.alike or plan.inside,
    )  # fmt: skip
    return replace(card, plan=together, box=together.box, members=tuple(members))


def make_cards(view: FaceView, rooms: tuple[tuple[float, float], ...]) -> tuple[Card, ...]:
    """Make the cards of a face: one a fitting, or several where no paper holds it whole.

    `rooms` are the widths and heights that a page can give to a card, mm.
    """
    cards: list[Card] = []
    for fitting in sorted(_joined(view, rooms), key=_reading_order):
        if fitting.stands is not None:
            cards.append(replace(compose_card(view, fitting, rooms), number=len(cards) + 1))
            continue
        rest = list(fitting.holes)
        across = _extent([hole.x for hole in rest]) >= _extent([hole.y for hole in rest])
        if len(rest) > 1:
            rest.sort(key=lambda hole: (hole.x, hole.y) if across else (hole.y, hole.x))
        while rest:
            card, taken = _largest_card(view, fitting, rest, rooms)
            cards.append(replace(card, number=len(cards) + 1))
            rest = rest[taken:]
    return tuple(cards)


def _joined(view: FaceView, rooms: tuple[tuple[float, float], ...]) -> tuple[Fitting, ...]:
    """Join the columns of screws of a part so narrow that their cards would lie on each other."""
    loose = [fitting for fitting in view.fittings if fitting.holes and kind_of(fitting).loose]
    holes = tuple(hole for fitting in loose for hole in fitting.holes)
    if len(loose) < 2 or any(
        _extent(places) > NEIGHBOURS
        for places in ([hole.x for hole in holes], [hole.y for hole in holes])
    ):
        return view.fittings
    whole = replace(loose[0], holes=holes, index=0, count=1)
    if not fits(compose_card(view, whole, rooms), rooms):
        return view.fittings
    return (*(fitting for fitting in view.fittings if fitting not in loose), whole)


def _largest_card(
    view: FaceView,
    fitting: Fitting,
    rest: list[Hole],
    rooms: tuple[tuple[float, float], ...],
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
        card = compose_card(view, part, rooms)
        if take == 1 or fits(card, rooms):
            return card, take
    raise ValueError(f"{view.part}: a fitting without holes")


def _extent(values: list[float]) -> float:
    return max(values) - min(values)


def _reading_order(fitting: Fitting) -> tuple[int, float]:
    """Cards follow each other from the bottom up; side by side, from the driller's left."""
    across = kind_of(fitting).side_by_side
    return rank_of(fitting.kind), min(x if across else y for x, y in fitting.places)


def fits(card: Card, rooms: Sequence[tuple[float, float]]) -> bool:
    """Tell whether a card finds room in one of these, mm."""
    return any(card.width <= width and card.height <= height for width, height in rooms)


def _wishes(view: FaceView, fitting: Fitting) -> tuple[Wish, Wish]:
    """From which edges a fitting is set out: across, then up.

    All its holes from the same ones, though they may stand on several cards; those by hand at
    the two ends of a front from one edge up, but each from its own end across.
    """
    whole = places_of_whole(view, fitting)
    return _wish_across(view, fitting, whole), _wish_up(view, fitting, whole)


def _wish_across(view: FaceView, fitting: Fitting, whole: Places) -> Wish:
    front: Wish = "low" if view.front_edge == "left" else "high"
    match kind_of(fitting).across:
        case "hinge-edge":
            return "low" if view.hinge_edge == "left" else "high"
        case "front-edge":
            return front
        case "nearer-edge":
            # The back of a box already together keeps paper from its sides' rear edges.
            return front if view.state.stand else _nearer_side(view, whole)
        case "middle":
            xs = [x for x, _ in whole]
            central = abs((min(xs) + max(xs)) / 2 - view.width / 2) < 1e-6
            return "middle" if central else _nearer_side(view, whole)
        case "as-stated":
            # Leaflets count from a side's front edge; brackets at both ends of a front fold
            # each over its own.
            return front if view.front_edge else _nearer_side(view, fitting.places)


def _wish_up(view: FaceView, fitting: Fitting, whole: Places) -> Wish:
    match kind_of(fitting).up:
        case "bottom":
            return "low"
        case "free-end":
            return _nearer_end(view, whole) if view.hinge_edge else "high"
        case "nearer-end":
            # Patterns that must meet those of another part are set out from the same end.
            return "low" if view.marks is None else _nearer_end(view, fitting.places)
        case "as-stated":
            return _end_by_hand(view, fitting, whole)


def _nearer_side(view: FaceView, places: Places) -> Wish:
    """The left or right edge, whichever is nearer to some places."""
    first, last = view.datums.get("left", 0.0), view.datums.get("right", 0.0)
    left = min(x for x, _ in places) - first
    right = view.width - last - max(x for x, _ in places)
    return "low" if left <= right + SLACK else "high"


def _nearer_end(view: FaceView, places: Places) -> Wish:
    """The top end where some places are within its reach and no nearer to the bottom end."""
    top = view.height - max(y for _, y in places)
    bottom = min(y for _, y in places) - view.state.low
    return "high" if top + SLACK < bottom and top <= REACH else "low"


def _end_by_hand(view: FaceView, fitting: Fitting, places: Places) -> Wish:
    """The end that holes by hand are set from: the one they were stated from, or the nearer.

    In a box already together paper reaches the panel below alone.
    """
    if view.state.stand:
        return "low"
    match fitting.stated_from:
        case "top":
            return "high"
        case "bottom":
            return "low"
        case None:
            return _nearer_end(view, places)


def _on_the_floor(view: FaceView) -> bool:
    """Tell whether a face's bottom end is a side's end on the floor, which no paper is folded
    over: it may be scribed, and cut away before the toe (common practice, no source)."""
    return view.on_legs and not view.partition and not view.state.stand


def places_of_whole(view: FaceView, part: Fitting) -> Places:
    """Give the places of all holes that are set out from the same edges as those of `part`, which
    may be only some of its fitting's: by hand, all that serve one front, stated from the same
    end."""
    if part.stands is not None:
        return part.places
    if kind_of(part).stated:
        return tuple(
            place
            for fitting in view.fittings
            if (fitting.kind, fitting.part, fitting.stated_from)
            == (part.kind, part.part, part.stated_from)
            for place in fitting.places
        )
    for fitting in view.fittings:
        if (fitting.kind, fitting.index, fitting.part, fitting.record, fitting.stands) == (
            part.kind,
            part.index,
            part.part,
            part.record,
            None,
        ):
            return fitting.places
    return part.places


def choose_references(
    view: FaceView, fitting: Fitting, *, lowered: float = 0.0, no_edge: Axis | None = None
) -> tuple[Reference, Reference]:
    """Choose where the card of a fitting is set, across and up.

    `lowered` moves an index line that much further from the holes, mm; `no_edge` asks for an
    index line along one axis even where an edge is near.
    """
    wish_x, wish_y = _wishes(view, fitting)
    wish_y = _away_from_bevel(view, wish_y)
    xs = [x for x, _ in fitting.places]
    ys = [y for _, y in fitting.places]
    if wish_x == "middle" and max(abs(x - view.width / 2) for x in xs) > REACH:
        wish_x = _nearer_side(view, places_of_whole(view, fitting))
    first, last = view.datums.get("left", 0.0), view.datums.get("right", 0.0)
    across = _from_datum(
        choose_reference(
            "x",
            min(xs) - first,
            max(xs) - first,
            view.width - first - last,
            wish_x,
            step=view.step,
            clear=CLEAR,
            edge=no_edge != "x",
            reach=_fold_reach([[x for x, _ in f.places] for f in view.fittings], xs),
        ),
        first,
    )
    up = choose_reference(
        "y",
        min(ys) - view.state.low,
        max(ys) - view.state.low,
        view.height - view.state.low,
        _away_from_bevel(view, "low") if lowered else wish_y,
        step=view.step,
        clear=CLEAR + lowered,
        fallback="near" if wish_y == "high" else "low",
        edge=no_edge != "y" and not (_on_the_floor(view) and wish_y == "low"),
        reach=_fold_reach([[y for _, y in f.places] for f in view.fittings], ys, across),
    )
    return across, _from_datum(up, view.state.low)


def _fold_reach(
    fittings: list[list[float]], own: list[float], across: Reference | None = None
) -> float:
    """Give how far away an edge is folded for the line that it spares, mm: not so far that a card
    grows which is set on a line `across` anyway, or for a line that the cards of other fittings
    with holes at the same places have in common."""
    if across is not None and across.kind != "edge":
        return NEAR_FOLD
    alike = (
        all(any(abs(place - each) <= SLACK for place in places) for each in own)
        for places in fittings
    )
    return FOLD_REACH if sum(alike) <= 1 else REACH


def _from_datum(reference: Reference, datum: float) -> Reference:
    """Give a reference in the coordinates of the face, chosen from its datum, `datum` in; mm."""
    return replace(reference, at=reference.at + datum) if datum else reference


def _away_from_bevel(view: FaceView, wish: Wish) -> Wish:
    """A bevelled edge is no reference: the opposite one is."""
    if view.bevel is None:
        return wish
    return "low" if view.bevel == "top" else "high"


def compose_card(view: FaceView, fitting: Fitting, rooms: tuple[tuple[float, float], ...]) -> Card:
    """Compose the card of some holes that belong together, set on edges where that fits."""
    across, up = choose_references(view, fitting)
    plan = CardPlan(view, fitting, across, up)
    if plan.shortage > 0.0 and up.kind == "index":
        # Too little room below the door's top end: the index line goes lower instead.
        across, up = choose_references(view, fitting, lowered=plan.shortage)
        plan = CardPlan(view, fitting, across, up)
    if plan.shortage > 0.0:
        # A short door: no room for a ladder as well; the bottom edge alone sets the card.
        plan = CardPlan(view, fitting, across, up, with_ladder=False)
    card = _planned(plan)
    axes: tuple[Axis, Axis] = ("y", "x")
    for axis in axes:
        if fits(card, rooms):
            break
        across, up = choose_references(view, fitting, no_edge=axis)
        if (up if axis == "y" else across).kind == "index":
            other = _planned(CardPlan(view, fitting, across, up))
            if fits(other, rooms):
                return other
    return card


def _planned(plan: CardPlan) -> Card:
    return Card(
        number=1,
        view=plan.view,
        fittings=(plan.fitting,),
        box=plan.box,
        edges=tuple(r for r in (plan.across, plan.up) if r.kind == "edge"),
        index=tuple(r for r in (plan.across, plan.up) if r.kind != "edge"),
        ladder=None if plan.ladder_v is None else plan.y(plan.ladder_v),
        plan=plan,
    )
