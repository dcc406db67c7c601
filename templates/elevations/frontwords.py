"""What is written on the fronts and openings of an elevation, and where: IDs, sizes, notes, HOLD.

Words stand between the swing lines where they can; what finds no room large is written smaller,
then turned, then shortened, at last beside its front.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from jigs.ground.geometry import Polygon
from jigs.ground.lengths import Unit
from jigs.room.seen import Seen, SeenFront, SeenOpening, Swing
from templates.elevations.chains import worded
from templates.elevations.elevationheld import HOLD, point_at
from templates.elevations.scale import ROOMY, Style
from templates.page.marks import Text
from templates.page.space import Box, Space, covered
from templates.page.typeface import known, shorten, text_width

CLEAR = 0.7
"""Words keep this far from a front's edges, mm."""
TIGHT = 0.1
"""The same where there is no room for more, mm."""
FEW, COVERED = 0.35, 0.45
"""The share of a front's swing lines that words may well cover, and the most that they may while
a smaller block covers less."""
_PITCH = 1.5
"""From base line to base line, in capital heights of the lower line."""


class _Word(Struct, frozen=True):
    text: str
    size: float
    bold: bool = False
    hold: bool = False


_Block = tuple[_Word, ...]
"""Words below each other."""


def write_opening(space: Space, opening: SeenOpening, within: Box) -> None:
    x0, y0, x1, y1 = within
    short = shorten(opening.words, 1.8, False, x1 - x0)
    words = [_Word(opening.words, size) for size in (3.5, 2.5, 1.8)] + [_Word(short, 1.8)]
    _write(space, [((word,), False) for word in words], within, [((x0 + x1) / 2, (y0 + y1) / 2)])


def write_fronts(
    space: Space,
    fronts: Sequence[tuple[SeenFront, Polygon]],
    boxes: Mapping[str, Seen],
    style: Style,
) -> None:
    """Write what stands on the fronts; beside those that have no room for it, HOLD; at last the
    sizes that are still missing."""
    scale = style.scale
    written: list[tuple[SeenFront, Polygon, Box, _Block]] = []
    for front, place in fronts:
        box = boxes[front.front.box]
        # A front that does not close with its box may reach down to the toe, or below the floor.
        low = scale.up(box.bottom if box.on_platform else 0.0)
        x0, y0, x1, y1 = inside_of(place)
        within = (x0, max(y0, low + CLEAR), x1, y1)
        words = _write_front(space, front, style, place, within, low)
        written.append((front, place, within, words))
    for front, place, _, words in written:
        if front.front.withheld and not any(word.hold for word in words):
            box = boxes[front.front.box]
            body = scale.area(box.x, box.bottom, box.box.width, box.box.height)
            point_at(space, f"{front.front.id} {HOLD}", span_of(place), span_of(body))
    for front, _, within, words in written:
        if words and all(word.bold for word in words):
            sizes = _sizes(front, style.unit)
            _write_sizes(space, sizes, within, _spots(front.swing, within))


def _write_front(
    space: Space, seen: SeenFront, style: Style, place: Polygon, within: Box, low: float
) -> _Block:
    """Write a front's ID, and as much else as finds room, above `low`; give what stands there."""
    x0, _, x1, y1 = within
    spots = _spots(seen.swing, within)
    lines = swing_lines(seen.swing, place)
    blocks = [*_blocks(seen, style, x1 - x0), *_least(seen, within)]
    if seen.swing is None:  # an ID alone stands at the left, so that its sizes find room beside it
        full = [block for block in blocks if not all(word.bold for word in block[0])]
        if written := _write(space, full, within, spots):
            return written
        blocks, spots = blocks[len(full) :], sorted(spots, key=lambda spot: spot[0])
    written = _write(space, blocks, within, spots, avoid=lines)
    if not written and seen.swing == "top":  # its pull stands in the middle
        written = _write(space, blocks, within, _spots(None, within), avoid=lines)
    if written:
        return written
    # A low drawer front: capitals alone stand nearer to its edges.
    spare, y0 = CLEAR - TIGHT, max(place[0][1], low) + TIGHT
    within = (x0 - spare, y0, x1 + spare, y1 + spare)
    return _write(space, _least(seen, within), within, _spots(seen.swing, within), TIGHT)


def _write_sizes(
    space: Space, sizes: Iterable[str], within: Box, spots: Sequence[tuple[float, float]]
) -> None:
    """Write a front's sizes apart from its ID: together below it, or else each where it finds
    room, the job's unit first from the top; at last that one alone, `780 x 105`."""
    x0, y0, x1, y1 = within
    below, above = ((x0 + x1) / 2, y0), ((x0 + x1) / 2, y1)
    large, small, brief = (_Word(size, 1.8) for size in sizes)
    if _write(space, [((large, small), False)], within, [below, above, *spots]):
        return
    upwards = sorted(spots, key=lambda spot: spot[1])
    if _write(space, [((large,), False)], within, [above, *reversed(upwards)]):
        _write(space, [((small,), False)], within, [below, *upwards])
        return
    if not _write(space, [((brief,), False)], within, spots):
        low = (x0, y0 - CLEAR + TIGHT, x1, y1 + CLEAR - TIGHT)
        _write(space, [((brief,), False)], low, _spots(None, low), TIGHT)


def _blocks(seen: SeenFront, style: Style, room: float) -> Iterator[tuple[_Block, bool]]:
    """Give what may be written on a front, the best first, and whether it is turned; its ID is in
    all of them. A note longer than `room` is shortened."""
    front = seen.front
    said = (_Word(HOLD, 2.5, True, hold=True),) if front.withheld else ()
    note = shorten(_said_of(seen), 1.8, False, room)
    large, small, _ = _sizes(seen, style.unit)

    def full(head: float, size: float) -> _Block:
        words = [*([_Word(note, size)] if note else []), _Word(large, size), _Word(small, 1.8)]
        return (_Word(front.id, head, True), *said, *words)

    heads = (3.5, 2.5) if style.scale.reduction <= ROOMY else (2.5,)
    fullest = [full(head, size) for head in heads for size in (2.5, 1.8) if size < head]
    yield from ((block, False) for block in fullest)
    if seen.swing or front.height > front.width:
        yield from ((block, True) for block in fullest)
    for head in heads if seen.swing else (2.5,):
        name = _Word(front.id, head, True)
        if seen.swing:
            yield (name, *said, _Word(large, 1.8)), False
        yield (name, *said), False


def _least(seen: SeenFront, within: Box) -> Iterator[tuple[_Block, bool]]:
    """Give a front's ID in the smallest letters, and at last its number in the box alone."""
    front = seen.front
    least: list[_Block] = [(_Word(front.id, 1.8, True),)]
    if front.withheld:
        least = [
            (_Word(front.id, 1.8, True), _Word(HOLD, 1.8, True, hold=True)),
            (_Word(f"{front.id} {HOLD}", 1.8, True, hold=True),),
            *least,
        ]
    yield from ((block, False) for block in least)
    yield (_Word(front.id, 2.5, True),), True
    yield from ((block, True) for block in least)
    for turned in (False, True):
        room = within[3] - within[1] if turned else within[2] - within[0]
        short = shorten(front.id.removeprefix(front.box).lstrip("-"), 1.8, True, room)
        if len(short) > 1 or short.isalnum():
            yield (_Word(short, 1.8, True),), turned


def _sizes(seen: SeenFront, unit: Unit) -> tuple[str, str, str]:
    """Write width x height of a front in the job's unit, in the other one, and in brief."""
    wide, high = worded(seen.front.width, unit), worded(seen.front.height, unit)
    large, small = (f"{w} x {h}".replace('"', "") for w, h in zip(wide, high, strict=True))
    brief = " x ".join(size[0].removesuffix(".0") for size in (wide, high)).replace('"', "")
    return large, small, brief


def _said_of(seen: SeenFront) -> str:
    """Say what a front is, where its drawing does not: it neither swings nor is pulled."""
    front = seen.front
    if front.kind == "panel":
        return known(front.make.note) or "panel"
    return {"false-front": "false front", "pullout": "pullout", "lift": "lift"}.get(front.kind, "")


def _spots(swing: Swing | None, within: Box) -> list[tuple[float, float]]:
    """Give the places where words are tried, the best first: between the swing lines."""
    x0, y0, x1, y1 = within
    rise: Sequence[float] = (0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0.0, 1.0)
    run: Sequence[float] = (0.5, 0.3, 0.2, 0.1, 0.0, 0.7, 0.8, 1.0)
    if swing == "top":
        rise, run = (0.35, 0.5, 0.65, 0.8), (0.5,)
    elif swing is not None:
        run = (0.58, 0.66, 0.75, 0.5, 0.42)
    if swing == "right":
        run = [1.0 - u for u in run]
    return [(x0 + u * (x1 - x0), y0 + v * (y1 - y0)) for v in rise for u in run]


def _write(
    space: Space,
    blocks: Iterable[tuple[_Block, bool]],
    within: Box,
    spots: Sequence[tuple[float, float]],
    clear: float = CLEAR,
    avoid: Sequence[tuple[float, float]] = (),
) -> _Block:
    """Write the first block that finds room, and give it; none where none does.

    A place is best that covers little of the run of lines `avoid`. A block that would cover too
    much of them wherever it stands gives way to a smaller one; if all do, the least is covered.
    """
    least: tuple[float, _Block, float, float, bool] | None = None
    for words, turned in blocks:
        across = max(text_width(word.text, word.size, word.bold) for word in words)
        down = sum(word.size * _PITCH for word in words)
        wide, high = (down, across) if turned else (across, down)
        if wide > within[2] - within[0] or high > within[3] - within[1]:
            continue
        for x, y in spots:
            # Moved inwards where the words would stand out of the front.
            x = min(max(x, within[0] + wide / 2), within[2] - wide / 2)
            y = min(max(y, within[1] + high / 2), within[3] - high / 2)
            box = (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            # A little less than what they were moved inwards by: touching is not free.
            if not space.is_free(box, clear - 0.05):
                continue
            cut = covered(avoid, box, CLEAR)
            if least is None or cut < least[0]:
                least = (cut, words, x, y, turned)
            if cut <= FEW:
                break
        if least is not None and least[0] <= COVERED:
            break
    if least is None:
        return ()
    _, words, x, y, turned = least
    space.add(*_lines(words, x, y, turned))
    return words


def _lines(words: Sequence[_Word], x: float, y: float, turned: bool) -> Iterator[Text]:
    """Give the lines of a block on its middle; turned, they are read from the right."""
    below = sum(word.size * _PITCH for word in words) / 2
    for word in words:
        below -= word.size * _PITCH
        base = below + word.size * 0.39
        yield Text(
            x=x - base if turned else x,
            y=y if turned else y + base,
            text=word.text,
            size=word.size,
            bold=word.bold,
            anchor="middle",
            angle=90 if turned else 0,
            layer="id" if word is words[0] else "words",
        )


def swing_lines(swing: Swing | None, place: Polygon) -> list[tuple[float, float]]:
    (x0, y0), _, (x1, y1), _ = place
    match swing:
        case "left":
            return [(x1, y1), (x0, (y0 + y1) / 2), (x1, y0)]
        case "right":
            return [(x0, y1), (x1, (y0 + y1) / 2), (x0, y0)]
        case "top":
            return [(x0, y0), ((x0 + x1) / 2, y1), (x1, y0)]
        case None:
            return []


def span_of(place: Polygon) -> Box:
    return (*place[0], *place[2])


def inside_of(place: Polygon) -> Box:
    x0, y0, x1, y1 = span_of(place)
    return x0 + CLEAR, y0 + CLEAR, x1 - CLEAR, y1 - CLEAR
