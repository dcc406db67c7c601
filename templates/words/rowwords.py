"""What a person reads in the row of a part at a station."""

from collections.abc import Collection, Iterable, Sequence
from itertools import groupby

from jigs.bench.benchpart import BenchPart
from jigs.bench.sides import CROSSES
from jigs.bench.station import Closing, Row, Setting
from jigs.box.parts import Layout
from jigs.given.confirming import OpenNumber
from jigs.ground.lengths import Unit, format_mm
from jigs.ground.problems import OPEN_CODES
from templates.words.openwords import STAMP
from templates.words.saying import fact_of
from templates.words.sentence import closed
from templates.words.sumwords import closing_words
from templates.words.wording import FRONT_WORDS, board_words

NEXT = "NEXT CARD:"
"""Before the first setting of a fresh copy."""
UP, DOWN = "↑", "↓"
"""Before a figure, or a sum, that counts up from the bottom end, down from the top."""
ACROSS, BACK = "→", "←"
"""Before a sum that counts across from the left, from the right."""


def kind_of(layout: Layout, part: BenchPart) -> str:
    """Say what a part is: `door`, `left side`."""
    front = layout.front_of.get(part.id)
    if part.board is not None:
        return board_words(part.board.side, part.board.partition)
    return "drawer box" if front is None else FRONT_WORDS[front.kind]


def wall_of(layout: Layout, part: BenchPart) -> str:
    """Name the wall of a part's box; "" where it has none."""
    return layout.box_of[part.box].wall or ""


def kind_and_place(
    layout: Layout,
    part: BenchPart,
    serves: str | None,
    *,
    kind_told: bool = False,
    wall_told: bool = False,
) -> str:
    """Say a part's code, what it is and its wall unless that is told above, for which other part
    it is drilled here, and its box where its ID does not begin with it."""
    kind = "" if kind_told else kind_of(layout, part)
    behind = f" for {serves}" if serves and not part.id.startswith(serves) else ""
    wall = "" if wall_told else wall_of(layout, part)
    box = "" if part.id.startswith(part.box) else f"box {part.box}"
    ordered = ""
    if part.ordered is not None:
        width, height = part.ordered
        ordered = f"MEASURED; ordered {format_mm(width)} x {format_mm(height)}"
    words = ", ".join(filter(None, (f"{kind}{behind}".strip(), wall, box, ordered)))
    return f"{part.code} {words}".rstrip()


def setting_name(setting: Setting, *, told: str = "") -> str:
    """Name the card of a setting unless its letter is `told` above, and how it lies: `A TURNED,
    crosses -1 to +3`."""
    used = "" if setting.holes is None else cross_words(setting.holes, setting.turned)
    letter = "" if setting.card == told else setting.card
    name = " ".join(filter(None, (letter, "TURNED" if setting.turned else "")))
    return ", ".join(filter(None, (name, used)))


def cross_words(holes: Sequence[int], turned: bool) -> str:
    """Name the crosses that are used, as the card is read when it lies right."""
    return f"crosses {cross_numbers(holes, turned)}"


def cross_numbers(holes: Sequence[int], turned: bool) -> str:
    """Give the numbers of the crosses that are used, as the card is read when it lies right.

    >>> cross_numbers((2, 3, 4, 5), False), cross_numbers((3, 6), True)
    ('-1 to +2', '-3, 0')
    >>> cross_numbers((0, 1, 2, 4, 5), False)
    '-3 to -1, +1, +2'
    """
    way = -1 if turned else 1
    counted = sorted(way * (index - CROSSES) for index in holes)
    names: list[str] = []
    for _, run in groupby(enumerate(counted), lambda each: each[1] - each[0]):
        each = [f"{number:+d}" if number else "0" for _, number in run]
        names += [f"{each[0]} to {each[-1]}"] if len(each) > 2 else each
    return ", ".join(names)


def sum_words(closing: Closing) -> str:
    """Write a sum that closes on the part, and which way it counts, for it closes from either end:
    `↑ 97.8 + 416.0 + 100.6 = 614.4`; one across that reads the same from both ends
    is no sum of its own from the right."""
    way = {
        "bottom": f"{UP} ", "top": f"{DOWN} from TOP ", "left": f"{ACROSS} ", "right": f"{BACK} ",
    }  # fmt: skip
    words, start = closing_words(closing.places, closing.length, steps=True), way[closing.start]
    mirrored = [closing.length - place for place in reversed(closing.places)]
    if closing.start == "right" and closing_words(mirrored, closing.length, steps=True) == words:
        start = way["left"]
    if closing.above > 0.0:
        start = "above the bottom panel: "
    return f"{start}{words}"


def open_names(numbers: Iterable[OpenNumber]) -> str:
    """Name the hardware that some open numbers are of, for a row: `OPEN: main, runner.`"""
    return f"{STAMP}: {', '.join(dict.fromkeys(number.record for number in numbers))}."


def warning_words(
    row: Row, unit: Unit, elsewhere: Collection[str | tuple[str, str]]
) -> tuple[str, ...]:
    """Give the findings that a row prints: open numbers have a line of their own, what has a code
    of `elsewhere`, or code and case, stands at another row of its part."""
    left_out = {*OPEN_CODES, *elsewhere}
    found = (
        problem
        for problem in row.warnings
        if left_out.isdisjoint((problem.code, (problem.code, problem.case)))
    )
    return tuple(dict.fromkeys(closed(fact_of(problem, unit)) for problem in found))
