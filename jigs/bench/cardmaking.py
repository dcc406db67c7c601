"""Cards made from placings: those with the same pattern share one, lettered, with its own code."""

from collections.abc import Callable, Iterable, Sequence

from msgspec.structs import replace

from jigs.bench.placing import Alike, Placing, by_place, shape_of
from jigs.bench.station import Corner, StationCard
from jigs.ground.codes import station_code
from jigs.ground.geometry import Face, Hand, Polygon

SAME_OUTLINE = 0.1
"""Hardware drawn no further apart than this is drawn once; mm."""
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def letter(number: int) -> str:
    """Give the letter of a number from 0 on.

    >>> letter(0), letter(25), letter(26)
    ('A', 'Z', 'AA')
    """
    more, last = divmod(number, len(_LETTERS))
    return (letter(more - 1) if more else "") + _LETTERS[last]


def number_patterns(placed: Sequence[Placing]) -> list[tuple[int, Placing]]:
    """Number the patterns of placings. A card that would be turned wherever it is bored lies as
    it is set there."""
    alike = Alike()
    numbered = [(alike.number(*shape_of(placing)), placing) for placing in placed]
    ways = {(number, placing.turned) for number, placing in numbered if not placing.bored}
    turned = {number for number, turn in ways if turn and (number, False) not in ways}
    return [
        (number, replace(placing, turned=not placing.turned) if number in turned else placing)
        for number, placing in numbered
    ]


def make_station_cards(
    face: Face,
    hand: Hand | None,
    in_order: Sequence[tuple[int, Placing]],
    name_of: Callable[[int], str] = letter,
) -> tuple[tuple[StationCard, ...], dict[int, str]]:
    """Make the cards, lettered in the order in which they are taken up first; `name_of`: by
    another name than its letter, by place."""
    members: dict[int, list[Placing]] = {}
    for number, placing in in_order:
        members.setdefault(number, []).append(placing)
    letters = {number: name_of(place) for place, number in enumerate(members)}
    cards: list[StationCard] = []
    for number, placed in members.items():
        first = next((each for each in placed if not each.turned), placed[0])
        outline, one_way = _outline(placed)
        card = StationCard(
            letter=letters[number],
            code="",
            edges=first.edges,
            lines=first.lines,
            holes=tuple(sorted(first.pattern, key=by_place)),
            outline=outline,
            one_way=one_way,
            carry=tuple(sorted(first.sign * (x - first.x.at) for x in first.carry)),
            stands=_corner(first),
            numbered=first.used is not None,
            records=tuple(dict.fromkeys(each.record for each in placed if each.record)),
            critical=any(each.critical for each in placed),
        )
        cards.append(replace(card, code=code_of(face, hand, [card])))
    return tuple(cards), letters


def _corner(placing: Placing) -> Corner | None:
    """Where a drawer box's corner lies on a card, in its own frame."""
    if placing.stands is None:
        return None
    x, y = placing.on_card(placing.stands.x, placing.stands.y)
    return replace(placing.stands, x=x, y=y)


def _outline(placed: Sequence[Placing]) -> tuple[tuple[Polygon, ...], bool]:
    """The hardware on a card, in its own frame; none where not all of it is alike as the card lies
    unturned. Tells besides whether it is drawn for that way alone: turned, it would lie elsewhere.
    """
    drawn = [
        tuple(tuple(each.on_card(x, y) for x, y in polygon) for polygon in each.outline)
        for each in placed
    ]
    upright = [each for each, placing in zip(drawn, placed, strict=True) if not placing.turned]
    if not _alike(upright or drawn):
        return (), False
    return (upright or drawn)[0], not _alike(drawn)


def _alike(drawn: Sequence[tuple[Polygon, ...]]) -> bool:
    boxes = [sorted(_bounds(polygon) for polygon in outline) for outline in drawn]
    return all(
        len(other) == len(boxes[0])
        and all(
            abs(a - b) <= SAME_OUTLINE
            for one, two in zip(boxes[0], other, strict=True)
            for a, b in zip(one, two, strict=True)
        )
        for other in boxes
    )


def _bounds(polygon: Polygon) -> tuple[float, float, float, float]:
    xs, ys = [x for x, _ in polygon], [y for _, y in polygon]
    return min(xs), min(ys), max(xs), max(ys)


def code_of(face: Face, hand: Hand | None, cards: Iterable[StationCard]) -> str:
    """Give the code of some cards for a face, with the side of its hinge edge."""
    return station_code(face, hand, ((_how(card), card.holes) for card in cards))


def _how(card: StationCard) -> str:
    """Tell what a card is set by, for its station's code."""
    edges = [f"{edge.edge} {edge.by} {edge.inside:.4f}" for edge in card.edges]
    corner = card.stands
    stands = [f"{corner.side} corner {corner.x:.4f} {corner.y:.4f}"] if corner else []
    return ", ".join([*edges, *card.lines, *stands])
