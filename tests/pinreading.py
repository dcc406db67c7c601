"""Pin cards read as a person reads them: a board's page names lines, each with the crosses to bore;
the card goes over the edge that is named, its long line on the pencil line, and of each cross the
number holds that reads right.

Nothing is taken from the values the sheets were drawn from.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from tests.readback import PrintedCard, PrintedPage, Ring, Run

CARD = re.compile(r"SHELF PINS: CARD (\d+)")
_ROWS = re.compile(
    r"PIN CARD (\d+), code (\w{4}), page (\d+): (.+?); at each line, its crosses: (.+?)"
    r"(?= PIN CARD | Pin lines)"
)
_LINE = re.compile(r'(\d+\.\d) [^"]*" ([-+\d, to]+?)(?= \d+\.\d |$)')
_BESIDE = re.compile(r"on a line (\d+\.\d) from the (FRONT|REAR) edge")
_FRONT = re.compile(r"FRONT edge on your (LEFT|RIGHT)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """The lines of a board on which one card is set at the same edges; mm from where its heights
    count."""

    card: int
    code: str
    page: int
    where: str
    lines: tuple[tuple[float, tuple[int, ...]], ...]
    front_left: bool


def card_number(card: PrintedCard) -> int | None:
    """Read the number of a pin card; None of any other card."""
    found = CARD.search(card.text)
    return int(found[1]) if found else None


def tables_of(field: PrintedPage) -> Iterator[Table]:
    """Read the lines that a board's page names for pin cards."""
    for number, code, page, where, rows in _ROWS.findall(field.text):
        front = _FRONT.search(field.text)
        assert front is not None, "a board's page says on which side its front edge lies"
        lines = tuple((float(up), crosses_in(words)) for up, words in _LINE.findall(rows))
        yield Table(
            card=int(number), code=code, page=int(page), where=where, lines=lines,
            front_left=front[1] == "LEFT",
        )  # fmt: skip


def crosses_in(words: str) -> tuple[int, ...]:
    found: list[int] = []
    for piece in words.split(", "):
        first, _, last = piece.partition(" to ")
        found += range(int(first), int(last or first) + 1)
    return tuple(found)


def bore_pins(
    field: PrintedPage,
    width: float,
    shift: tuple[float, float],
    pins: Mapping[int, PrintedCard],
    holes: list[tuple[float, float, float]],
) -> list[str]:
    """Take the holes that a board's tables name from those that are wanted (x, y, diameter on its
    face as seen): across within 0.01 mm of an edge, and to the tenth that is written from a line.

    `shift`: how much further right and up a hole lies than is read from the edges named.
    """
    faults: list[str] = []
    across, low = abs(shift[0]), shift[1]
    for table in tables_of(field):
        if table.card not in pins:
            faults.append(f"no pin card {table.card}")
            continue
        if f"code {table.code}" not in pins[table.card].text:
            faults.append(f"pin card {table.card} has another code than {table.code}")
        for x, up, ring in _bored(table, pins[table.card], width, across):
            within = 0.01 if pins[table.card].bands else 0.0501
            match = [
                hole for hole in holes
                if abs(hole[0] - x) < within
                and abs(hole[1] - low - up) < 0.0501
                and abs(hole[2] - ring.diameter) < 0.01
            ]  # fmt: skip
            if match:
                holes.remove(match[0])
            else:
                faults.append(f"no pin at {x:.2f}, {up + low:.2f}")
    return faults


def _bored(
    table: Table, card: PrintedCard, width: float, band: float
) -> Iterator[tuple[float, float, Ring]]:
    """Give where the holes of a table come to lie on a board's face as seen, which is `width`
    wide: across it, and up from where its heights count; mm. `band`: how far in from the face's own
    front edge the edge lies that the card goes over, where it is still bare."""
    for at, turned in _set_at(table, card, width, band):
        crosses = dict(numbered(card, turned=turned))
        (_, low) = _origin(card)
        for height, numbers in table.lines:
            for number in numbers:
                ring = crosses[number]
                along = ring.x - _origin(card)[0]
                up = ring.y - low
                yield at + (-along if turned else along), height + (-up if turned else up), ring


def _set_at(
    table: Table, card: PrintedCard, width: float, band: float
) -> Iterator[tuple[float, bool]]:
    """Give where on the face the card's own edge or line lies, and whether it lies turned."""
    beside = _BESIDE.fullmatch(table.where)
    if beside:
        assert not card.bands
        from_left = (beside[2] == "FRONT") is table.front_left
        yield (float(beside[1]) if from_left else width - float(beside[1])), False
        return
    assert len(card.bands) >= 1
    for edge in ("front", "rear"):
        if edge in table.where.removesuffix(" edge").split(" and "):
            at_left = (edge == "front") is table.front_left
            inside = band if edge == "front" else 0.0
            yield (inside if at_left else width - inside), at_left is not black_left(card)


def black_left(card: PrintedCard) -> bool:
    """Tell whether the edge that a card goes over lies on the left as it lies upright."""
    band = min(card.bands)
    return band[0] - card.box[0] < card.box[2] - band[2]


def _origin(card: PrintedCard) -> tuple[float, float]:
    """Where white meets black, or the line up a card that has no black; the height of its line
    across: the cross on it is 0, and a line runs through it."""
    zero = next(ring for number, ring in numbered(card, turned=False) if number == 0)
    assert any(abs(s.y1 - zero.y) < 0.005 and abs(s.y2 - zero.y) < 0.005 and s.length > 15.0
               for s in card.strokes)  # fmt: skip
    if card.bands:
        band = min(card.bands)
        return band[2] if black_left(card) else band[0], zero.y
    return zero.x, zero.y


def numbered(card: PrintedCard, *, turned: bool) -> list[tuple[int, Ring]]:
    """Read the number of each cross, as it is read upright or with the card turned half round."""
    numbers = [run for run in card.runs
               if re.fullmatch(r"0|[-+]\d", run.text) and run.flipped is turned]  # fmt: skip
    return [(int(_nearest(numbers, ring).text), ring) for ring in card.rings]


def _nearest(runs: Iterable[Run], ring: Ring) -> Run:
    return min(
        runs,
        key=lambda run: (
            abs((run.box[0] + run.box[2]) / 2 - ring.x)
            + abs((run.box[1] + run.box[3]) / 2 - ring.y)
        ),
    )
