"""What a person reads in the row of a part at a station."""

from collections.abc import Iterable, Sequence

from jigs.bench.benchpart import BenchPart
from jigs.bench.sides import CROSSES
from jigs.bench.station import Closing, Marks, Setting
from jigs.box.parts import Layout
from jigs.checks.hardware import OPEN_CODES
from jigs.ground.lengths import format_inches, format_mm
from jigs.ground.problems import Problem
from templates.words.sentence import closed
from templates.words.stationwords import closing_words
from templates.words.wording import FRONT_WORDS, board_words

YOURS = ", yours ________ x ________"
"""Blanks for what the person measures."""


def kind_and_place(layout: Layout, part: BenchPart, serves: str | None) -> str:
    """Say a part's code, what it is, its box, and for which other part it is drilled here."""
    front = next((front for front in layout.fronts if front.id == part.id), None)
    if part.board is not None:
        kind = board_words(part.board.side, part.board.partition)
    elif front is not None:
        kind = FRONT_WORDS[front.kind]
        if front.kind == "door" and front.hinged:
            kind += f", hinges {front.hinged}"
    else:
        kind = "drawer box"
    behind = f", for {serves}" if serves and serves != part.id else ""
    wall = next((side.wall for side in layout.sides if side.box == part.box and side.wall), "")
    place = f"{wall} wall, box {part.box}" if wall else f"box {part.box}"
    ordered = ""
    if part.ordered is not None:
        width, height = part.ordered
        ordered = f". MEASURED; ordered {format_mm(width)} x {format_mm(height)}"
    return f"code {part.code}, {kind}{behind}, {place}{ordered}"


def setting_name(setting: Setting) -> str:
    """Name the card of a setting, and how it lies: `A 2 TURNED, crosses -1 to +3`."""
    copy = f" {setting.copy}" if setting.copy > 1 else ""
    used = f", crosses {_crosses(setting.holes)}" if setting.holes is not None else ""
    return f"{setting.card}{copy}{' TURNED' if setting.turned else ''}{used}"


def _crosses(holes: Sequence[int]) -> str:
    """Name the crosses that are used, by the numbers on the card.

    >>> _crosses((2, 3, 4, 5)), _crosses((0, 3))
    ('-1 to +2', '-3, 0')
    """
    counted = [index - CROSSES for index in holes]
    names = [f"{each:+d}" if each else "0" for each in counted]
    if len(counted) > 2 and counted[-1] - counted[0] == len(counted) - 1:
        return f"{names[0]} to {names[-1]}"
    return ", ".join(names)


def sum_words(closing: Closing) -> str:
    """Write a sum that closes on the part: `Up: 97.8 + 416.0 + 100.6 = 614.4`."""
    way = {"bottom": "Up", "top": "Down", "left": "From the left", "right": "From the right"}
    start = way[closing.start]
    if closing.above > 0.0:
        start = f"{start}, from the bottom panel"
    return f"{start}: {closing_words(closing.places, closing.length)}"


def marks_words(marks: Marks) -> tuple[str, ...]:
    """Say where a drawer box stands on its front, as seen from the back, and that it closes."""
    left, right = format_mm(marks.in_left), format_mm(marks.in_right)
    whole = closing_words((marks.in_left, marks.in_left + marks.width),
                          marks.in_left + marks.width + marks.in_right,
                          (" from the LEFT", "", " from the RIGHT"))  # fmt: skip
    gap = "as far in at both ends"
    if left != right:
        gap = f"WIDE GAP ON YOUR {'LEFT' if marks.in_left > marks.in_right else 'RIGHT'}"
    words = (
        f'{marks.box} stands {whole}, {gap}; {format_mm(marks.up)} ({format_inches(marks.up)}") up.'
    )
    if marks.clear_of_pull is None:
        return (words,)
    return (words, f"Measure its maker's holes: {marks.clear_of_pull:.0f} from the pull's screws.")


def warning_words(warnings: Iterable[Problem]) -> tuple[str, ...]:
    """Give the findings that a row prints; open numbers have a line of their own."""
    return tuple(
        dict.fromkeys(closed(problem.text) for problem in warnings
                      if problem.code not in OPEN_CODES)
    )  # fmt: skip
