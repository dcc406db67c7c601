"""What is drilled into the sides of a box: slides, hinge plates and shelf pins, on struck lines.

A card lies on the front edge and on a line across. The patterns of slides and plates are their own
half-turn: the card that serves a left side serves the right one turned half round. Of the rows of
shelf pins one card serves all four: its crosses are numbered from the line, up and down, and it is
set on the edge that is nearer. A line through the middle cross is the same for the card as it lies
and turned; a line through the lowest would want a second one for the turned card.
"""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from jigs.bench.benchpart import BenchPart, as_seen, board_face
from jigs.bench.placing import (
    CARD_REACH,
    FOLD_REACH,
    Placing,
    Rest,
    beyond,
    closing_of,
    nearer_side,
    on_edge,
    on_line,
)
from jigs.bench.station import Closing
from jigs.bench.storystick import spacer_of
from jigs.box.parts import Layout, Side
from jigs.ground.geometry import OPPOSITE, SLACK, FaceEdge, Fitting, Hole, Purpose
from jigs.ground.grid import PITCH

CROSSES = 3
"""Crosses on the pin card above its line and as many below: with the one on it 192 mm from the
first to the last, which the shorter side of a page still holds."""
BESIDE = 30.0
"""How far the drawing of a slide goes on behind its last hole, mm: it is far longer than paper."""
MARKS: dict[Purpose, str] = {"slide": "S", "plate": "P", "shelf": "N"}
"""The letters of the lines in the table of a box: slide, plate, pin."""


def place_sides(layout: Layout, *, reach: float = CARD_REACH) -> list[Placing]:
    """Place the cards of all sides and partitions: a box after the other, column by column, and in
    each the slides, the plates and the pins, each line on the left and then on the right; the
    boxes that are together already come last."""
    placed = [placing for side in layout.sides for placing in _on_face(layout, side, reach)]
    boxes = {box.id: number for number, box in enumerate(layout.boxes)}
    order: list[Purpose] = [*MARKS]
    met: dict[object, int] = {}
    ranked: list[tuple[tuple[int, ...], Placing]] = []
    for placing in placed:
        board = placing.part.board
        assert board is not None, "boards alone are placed here"
        pair = (placing.part.box, board.column, placing.purpose, placing.serves)
        rank = (
            int(board.assembled),
            boxes[placing.part.box],
            board.column,
            order.index(placing.purpose),
            met.setdefault(pair, len(met)),
        )
        ranked.append((rank, placing))
    ranked.sort(key=lambda each: each[0])
    return [placing for _, placing in ranked]


def front_rest(part: BenchPart) -> Rest:
    """Rest a card on the front edge of a board, without the band where that is still to come."""
    assert part.board is not None, "boards alone have a front edge"
    return on_edge(part, part.board.side, inside=part.board.band if part.board.raw else 0.0)


def _on_face(layout: Layout, side: Side, reach: float) -> Iterator[Placing]:
    part = board_face(side)
    fittings = as_seen(part, side.fittings)
    for seen, fitting in zip(fittings, side.fittings, strict=True):
        if seen.kind not in ("slide", "plate"):
            continue
        spacer = None
        record = layout.job.slides.get(fitting.record or "")
        if fitting.kind == "slide" and record is not None:
            spacer = spacer_of(side, fitting, record)
        of_kind = [
            other for other in fittings if (other.kind, other.part) == (seen.kind, seen.part)
        ]
        closing = closing_of(part, "bottom", (_height(other) for other in of_kind))
        for holes in by_bit(seen.holes):
            for placing in _hardware(part, seen, holes, reach):
                yield replace(placing, closing=(closing,), spacer=spacer)
    yield from place_pins(part, [seen for seen in fittings if seen.kind == "shelf"])


def by_bit(holes: Sequence[Hole]) -> list[tuple[Hole, ...]]:
    """Part holes by the bit and the stop that they are bored with."""
    found: dict[tuple[float, float | None], list[Hole]] = {}
    for hole in holes:
        found.setdefault((hole.diameter, hole.depth), []).append(hole)
    return [tuple(each) for each in found.values()]


def _height(fitting: Fitting) -> float:
    """The height of a fitting's line: of a slide its holes', of a plate half way between them."""
    ys = [hole.y for hole in fitting.holes]
    return (min(ys) + max(ys)) / 2


def _hardware(
    part: BenchPart, fitting: Fitting, holes: Sequence[Hole], reach: float
) -> Iterator[Placing]:
    """Place a slide or a plate: the holes within reach of the front edge on one card, each further
    one on a card of its own, on lines alone."""
    assert part.board is not None, "boards alone take slides and plates"
    start: FaceEdge = part.board.side
    front = front_rest(part)
    line = on_line("bottom", _height(fitting))
    near = [hole for hole in holes if beyond(front.at, start, hole.x) <= reach + SLACK]
    bare = Placing(
        work="sides",
        part=part,
        purpose=fitting.holes[0].purpose,
        serves=fitting.part,
        x=front,
        y=line,
        holes=tuple(near),
        turned=start == "right",
        outline=fitting.outline,
        carry=fitting.carry,
        record=fitting.record,
    )
    if near:
        end = max(beyond(front.at, start, hole.x) for hole in near) + BESIDE
        yield replace(bare, outline=tuple(_clipped(polygon, front.at, start, end)
                                          for polygon in fitting.outline))  # fmt: skip
    for hole in holes:
        if hole not in near:
            yield replace(bare, x=on_line(start, hole.x), holes=(hole,), outline=(), carry=())


def _clipped(
    polygon: Sequence[tuple[float, float]], at: float, start: FaceEdge, end: float
) -> tuple[tuple[float, float], ...]:
    """Cut a drawing off at `end` inward of the front edge, mm."""
    inward = -1 if start == "right" else 1
    return tuple((at + inward * min(beyond(at, start, x), end), y) for x, y in polygon)


def place_pins(part: BenchPart, fittings: Sequence[Fitting]) -> Iterator[Placing]:
    """Place the pin card along each row of pins (as seen), as often as it takes."""
    rows: dict[tuple[float, float, float | None], list[Hole]] = {}
    pins = [hole for fitting in fittings for hole in fitting.holes]
    for hole in sorted(pins, key=lambda hole: hole.y):
        rows.setdefault((round(hole.x, 3), hole.diameter, hole.depth), []).append(hole)
    closing = closing_of(part, "bottom", (hole.y for hole in pins)) if pins else None
    for row in rows.values():
        edge = _pin_edge(part, row)
        for run in _runs(row):
            yield _run(part, run, edge, (closing,) if closing else ())


def _pin_edge(part: BenchPart, row: Sequence[Hole]) -> Rest:
    """The edge that a row of pins is set from; none where both are far. The back of a box already
    together keeps paper from the rear edge."""
    board = part.board
    assert board is not None, "boards alone take pins"
    nearer = board.side if board.assembled else nearer_side(part, row)
    rest = front_rest(part) if nearer == board.side else on_edge(part, OPPOSITE[board.side])
    if beyond(rest.at, nearer, row[0].x) <= FOLD_REACH + SLACK:
        return rest
    return on_line(board.side, row[0].x)


def _runs(row: Sequence[Hole]) -> list[list[Hole]]:
    """Part a row, from below, into what one setting of the card reaches: pins that stand on its
    crosses, whole steps of 32 from the first one."""
    runs: list[list[Hole]] = []
    for hole in row:
        if runs:
            up = hole.y - runs[-1][0].y
            steps = round(up / PITCH)
            if steps <= 2 * CROSSES and abs(up - steps * PITCH) <= SLACK:
                runs[-1].append(hole)
                continue
        runs.append([hole])
    return runs


def _run(part: BenchPart, run: Sequence[Hole], x: Rest, closing: tuple[Closing, ...]) -> Placing:
    first = run[0]
    steps = [round((hole.y - first.y) / PITCH) for hole in run]
    middle = (steps[-1] + 1) // 2
    line = first.y + middle * PITCH
    turned = x.by is not None and x.start == "right"
    crosses = tuple(
        replace(first, y=line + (index - CROSSES) * PITCH) for index in range(2 * CROSSES + 1)
    )
    return Placing(
        work="sides",
        part=part,
        purpose="shelf",
        serves=None,
        x=x,
        y=on_line("bottom", line),
        holes=crosses,
        used=tuple(step - middle + CROSSES for step in steps),
        turned=turned,
        closing=closing,
    )
