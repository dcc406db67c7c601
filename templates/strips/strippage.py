"""The pages of a strip: a piece on each, as few pieces as the paper lets there be."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from jigs.ground.geometry import SLACK
from jigs.ground.lengths import format_inches, format_mm
from templates.cards.card import Card
from templates.faces.faceview import FaceView
from templates.page.border import EDGE, LEFT_STRIP
from templates.page.paper import Paper
from templates.page.scales import SLIP
from templates.sheets.pattern import SheetWords
from templates.sheets.sheet import Placed
from templates.strips.longpage import SHORTEST_PAGE, Division, LongPlan, cut, divide
from templates.strips.strip import SPARE, Parting, Strip, find_strip, joins_of
from templates.strips.strippiece import above, strip_pieces
from templates.words.facewords import edge_words


@dataclass(frozen=True, slots=True, kw_only=True)
class StripPlan:
    """The pages of a strip; `rest` is the face with what is not on it, None where nothing is;
    `parted`: how many fittings stand on two pieces."""

    pages: tuple[LongPlan, ...]
    rest: FaceView | None
    parted: int


def plan_strip(words: SheetWords, paper: Paper, innermost: float) -> StripPlan | None:
    """Plan the strip of a face for what reaches no further in than so far, mm.

    None where the face has none, or where it finds no room on the paper.
    """
    long = paper.longest if paper.longest is not None else paper.height
    found = find_strip(words.view, paper.width - LEFT_STRIP - EDGE, innermost)
    if found is None:
        return None
    strip, rest = found
    further = _tallest(_said(words, strip), strip, paper, long, first=False)
    if further is None:
        return None
    for way in _ways(words, strip, paper, long, further):
        cards = strip_pieces(strip, way.parting.joins)
        if cards is not None:
            return _laid(words, paper, long, strip, rest, way, cards, further)
    return None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    """A way to part a strip: its joins, the words and the division of its first page."""

    parting: Parting
    said: SheetWords
    first: Division


def _ways(
    words: SheetWords, strip: Strip, paper: Paper, long: float, further: Division
) -> Iterator[_Way]:
    """Give the ways to part a strip, the best first: joins further from the holes, where figures
    find more room, only after those near to them."""
    said = _said(words, strip, first=True)
    first = _tallest(said, strip, paper, long, first=True)
    if first is None:
        return
    for spare in SPARE:
        parting = joins_of(strip, first.high, further.high, above(strip), spare)
        if parting is not None:
            yield _Way(parting=parting, said=said, first=first)


def _laid(
    words: SheetWords,
    paper: Paper,
    long: float,
    strip: Strip,
    rest: FaceView | None,
    way: _Way,
    cards: tuple[Card, ...],
    further: Division,
) -> StripPlan:
    """Lay the pieces of a strip on their pages."""
    said, first = way.said, way.first
    if len(cards) == 1:
        said = _said(words, strip, first=True, joined=False)
        first = _tallest(said, strip, paper, long, first=True) or first
    pages = [_on_page(said, cards[0], first, paper, first=True)]
    said = _said(words, strip)
    pages += [_on_page(said, card, further, paper, first=False) for card in cards[1:]]
    return StripPlan(pages=tuple(pages), rest=rest, parted=way.parting.parted)


def _tallest(
    words: SheetWords, strip: Strip, paper: Paper, long: float, *, first: bool
) -> Division | None:
    """Give the page with the most height for a piece, None where none is wide enough."""
    ways = list(divide(words, paper.width, long, first))
    if paper.longest is None:
        ways += divide(words, paper.height, paper.width, first)
    wide = [way for way in ways if way.wide >= strip.width + strip.flap - SLACK]
    return max(wide, key=lambda way: way.high, default=None)


def _on_page(
    words: SheetWords, card: Card, page: Division, paper: Paper, *, first: bool
) -> LongPlan:
    """Lay a piece at the top of its room."""
    if paper.longest is not None:
        page = cut(page, card.height, SHORTEST_PAGE)
    top = page.y + page.high
    placed = Placed(card=card, dx=page.x - card.box[0], dy=top - card.box[3])
    return LongPlan(words=words, first=first, page=page, cards=(placed,))


JOINS = f"Each join may add {SLIP:g} mm: check every hole by its written distance before drilling."
"""The honest note."""


def _said(
    words: SheetWords, strip: Strip, *, first: bool = False, joined: bool = True
) -> SheetWords:
    """Give the words of a strip's pages: on the first how it is joined, on each what is not to be
    trusted."""
    own = tuple(_steps(strip, joined)) if first else (JOINS,)
    return replace(words, view=strip.view, own=own)


def _steps(strip: Strip, joined: bool) -> Iterator[str]:
    inches = abs(strip.view.step - 10.0) > SLACK
    length = format_mm(strip.length) + (f" ({format_inches(strip.length)} in)" if inches else "")
    end = f" its end must stand at {length};" if strip.to_end else ""
    tape = (
        f"Lay a steel tape along it:{end} the scale, in {'inches' if inches else 'mm'}, must agree."
    )
    if not joined:
        origin = edge_words(strip.view, strip.up.edge)
        yield (
            f"{tape} Paper grows, the more the "
            f"longer: check every hole by its written distance from the {origin}."
        )
        return
    yield (
        "Cut the pieces out, the crossed notches too. Glue each on the tab of the one before, one "
        "straight line along the edge: its foot on the JOIN line, the long marks of the little "
        f"scales in one line; the next pair in line shows a slip of {SLIP:g} mm."
    )
    yield f"{tape} {JOINS}"
    yield "Or trust no join: set each piece by itself, on a line struck at its foot's figure."
