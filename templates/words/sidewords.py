"""What a person reads in the table of a box's sides."""

from collections.abc import Collection, Iterable, Iterator
from itertools import pairwise

from jigs.bench.benchpart import BenchPart
from jigs.bench.boxtable import BoxTable, HeightLine
from jigs.bench.station import Row, Setting, StationCard
from jigs.box.parts import Layout
from jigs.ground.geometry import OPPOSITE, SLACK, Hand
from jigs.ground.lengths import count_tenths, format_mm
from templates.words.liftwords import lift_words
from templates.words.rowwords import UP, cross_words
from templates.words.sentence import bare
from templates.words.stationwords import setting_figure
from templates.words.sumwords import closing_words, punches_words

BORED = "came through from its other face: only check"
"""Of a partition whose holes came through."""


def column_title(layout: Layout, table: BoxTable) -> str:
    """Name a table: `BOX B1`, or of one of several columns `BOX B1, COLUMN 2`."""
    column = f", COLUMN {table.column}" if table.box in layout.in_columns else ""
    return f"BOX {table.box}{column}"


def level_words(table: BoxTable) -> str:
    """Say from where the heights of a table count, and what stands under a partition."""
    boards = [part.board for part in (table.left, table.right) if part is not None]
    if table.assembled:
        return "BOX ALREADY TOGETHER: heights above the bottom PANEL, each side by itself."
    bases = [board.base for board in boards if board is not None]
    on_legs = any(board is not None and board.legs > SLACK for board in boards)
    if max(bases, default=0.0) > SLACK:
        own = "Each height from its own board's end"
        raised = max(bases) - min(bases)
        if raised <= SLACK:
            return f"{own}."
        lift = lift_words(raised, on_legs=on_legs)
        return f"{own}: {lift} between the stop and the partition."
    if on_legs:
        return "The sides run to the floor: heights from their ends there."
    return ""


def beside_table(table: BoxTable, whole: BoxTable, where: str) -> str:
    """Say where the other lines of a column stand whose boards are bored at several stations;
    `whole`: the table of all of them, `where`: the others' stations and pages."""
    if table.left is not None and table.right is not None:
        return f"More lines of this column: {where}. Strike all of them at once."
    other = whole.left if table.left is None else whole.right
    board = "the other board" if other is None else other.id
    return f"Lay {board} beside it, whose lines are at {where}. Strike BOTH at once."


def spacer_words(line: HeightLine, *, brief: bool = False) -> str:
    """Say what else belongs to a line: the spacer of a drawer's slides; `brief`: on what it stands
    is said above."""
    if line.spacer is None:
        return ""
    above = abs(line.spacer.above_panel)
    if above <= 0.05:
        return "slide on the bottom panel"
    over = "" if brief else " over the bottom panel"
    return f"spacer {format_mm(line.spacer.above_panel)}{over}"


def beside_words(setting: Setting, front: Hand) -> str:
    """Say where the line up a board is struck that a card is set on besides; `front`: the side on
    which its front edge lies."""
    if setting.x is None:
        return ""
    edge = "FRONT" if setting.x.start == front else "REAR"
    return f" on a line {setting_figure(setting.x)[0]} from the {edge} edge"


def row_words(fronts: Collection[bool]) -> str:
    """Say along which edges a card of pins is set; `fronts`: of each, whether it is the front
    one."""
    if len(fronts) > 1:
        return "front and rear edge"
    return "front edge" if True in fronts else "rear edge"


def edge_words(card: StationCard, turned: bool, front: Hand) -> str:
    """Say over which edge of a board a card is folded as it lies; `front`: the side on which the
    board's front edge lies."""
    (edge,) = (each.edge for each in card.edges if each.edge in ("left", "right"))
    return row_words({(OPPOSITE[edge] if turned else edge) == front})


def used_words(
    card: StationCard, setting: Setting, front: Hand, *, crosses_told: bool = False
) -> str:
    """Say behind a card's letter where it is set on a board besides its line across, and which of
    its crosses are used unless that is told: ` on a line 261.0 from the FRONT edge`, `, crosses -1
    to +3, rear edge`. `front`: the side on which the board's front edge lies."""
    words = beside_words(setting, front)
    if setting.holes is not None:
        words += "" if crosses_told else f", {cross_words(setting.holes, setting.turned)}"
        if setting.x is None:
            words += f", {edge_words(card, setting.turned, front)}"
    return words


def turn_words(hands: Collection[Hand]) -> str:
    """Say how a card lies on some boards where it is turned on the left, not on the right."""
    if len(hands) > 1:
        return ", TURNED on L, not on R"
    return ", TURNED" if "left" in hands else ", not TURNED"


def spacers_stand(rows: Iterable[Row]) -> str:
    """Say on what the spacers of slides stand; "" where none is used."""
    used = any(row.spacer is not None for row in rows)
    return "Spacers stand on the bottom panel." if used else ""


def unless_said(fact: str) -> str:
    """Say above all tables what holds of each box but those that have another.

    >>> unless_said("Plates 3.5 high: hinge main.")
    'Plates 3.5 high: hinge main, unless a box says otherwise.'
    """
    return f"{bare(fact)}, unless a box says otherwise."


def each_pin_words(pins: str) -> str:
    """Say how the cards lie on each line of pins that names its crosses alone."""
    return f"Each N: {pins}."


def sums_of_board(table: BoxTable) -> Iterator[str]:
    """Give the sum of all lines of each board that closes on its height; once, and without saying
    of which, where all have the same."""
    found: dict[str, list[str]] = {}
    boards = [each for each in (("LEFT", table.left), ("RIGHT", table.right)) if each[1]]
    for name, part in boards:
        if part is None or part.board is None:
            continue
        places = _lines_of(table, part)
        if not places:
            continue
        low = part.board.panel if table.assembled else 0.0
        words = f"{UP} {closing_words((place - low for place in places), part.height - low)}"
        found.setdefault(words, []).append(name)
    for words, names in found.items():
        yield words if len(names) == len(boards) else f"{names[0]}: {words}"


def _lines_of(table: BoxTable, part: BenchPart) -> list[float]:
    """Give the lines of a board from below, each once; mm above its end."""
    places: list[float] = []
    heights = (line.left if part == table.left else line.right for line in table.lines)
    for height in sorted(height for height in heights if height is not None):
        if not places or height - places[-1] > 0.05:
            places.append(height)
    return places


def punch_words(table: BoxTable, rows: Iterable[Row]) -> Iterator[str]:
    """Say how far the plates of each door are apart, the same as its cups, where the sum of the
    board's lines does not say it: another line stands between, or it is rounded otherwise."""
    said: dict[str, dict[str, None]] = {}
    for row in rows:
        if row.purpose != "plate" or row.held:
            continue
        for closing in row.closing:
            steps = punches_words(closing.places)
            if steps and steps != _steps_in_sum(table, row):
                said.setdefault(steps, {})[row.serves or ""] = None
    for steps, served in said.items():
        yield f"{', '.join(served)}: plates {steps} apart."


def _steps_in_sum(table: BoxTable, row: Row) -> str:
    """Give the distances between a row's plates as the sum of all lines of its board has them; ""
    where another line stands between two of them."""
    part = row.part
    low = part.board.panel if table.assembled and part.board is not None else 0.0
    lines = _lines_of(table, part)
    plates = sorted(each.y.of(part.width, part.height) for each in row.settings if each.y)
    at = [number for number, line in enumerate(lines) if any(abs(line - p) <= 0.05 for p in plates)]
    if not at or at[-1] - at[0] + 1 != len(plates):
        return ""
    inner = [count_tenths(lines[number] - low) for number in at]
    return ", ".join(f"{(b - a) / 10:.1f}" for a, b in pairwise(inner))
