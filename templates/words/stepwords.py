"""The steps of a part in words: what is to be done next, what was done, what a part waits for.

What is bored is said in the words of the stations, with the figures of their tables.
"""

from collections.abc import Iterable, Sequence
from math import inf
from typing import assert_never

from jigs.bench.benchpart import Board
from jigs.bench.standing import Step, StepKind, Wait
from jigs.bench.station import Offset, Row, Station, Work
from jigs.bench.tracked import Tracked
from jigs.ground.grouped import grouped
from jigs.ground.lengths import Unit
from templates.page.border import DRILL_CARE
from templates.words.cautions import PAINT, TWO_PEOPLE
from templates.words.pagewords import line_figure
from templates.words.stationwords import FROM_WORDS, cautions, hand_words, station_title
from templates.words.textlines import counted

BORE: dict[Work, str] = {
    "sides": "Bore the inside",
    "drawer-boxes": "Bore the drawer box's front",
    "rear-hooks": "Bore the drawer box's back for the hooks",
    "cups": "Bore the cups",
    "pulls": "Bore for the pull",
    "fronts-on-boxes": "Bore for the drawer box",
    "false-fronts": "Bore the pilots",
    "pulls-through": "Bore for the pull, through front and box",
    "by-hand": "Bore by hand",
}
"""What is bored, as an order."""
MARKED = "Stand the drawer box on it, mark through, bore"
"""The order where a front is marked through its drawer box."""

ORDERS: dict[StepKind, str] = {
    "cut": "Cut it to size",
    "banded": "Put on its edge band",
    "arrived": "Measure it, look at its face",
    "bored": "Bore it",
    "assembled": "Assemble it",
    "mounted": "Screw on plates and slides",
    "scribed": "Hold it dry to its box that stands, scribe it, cut to the line",
    "back": "Paint the back",
    "front": "Paint the face",
    "hung": "Hang it",
    "fitted": "Fit it in its place",
    "adjusted": "Adjust it: gaps even, faces level",
}
"""What is to be done, as an order."""
BORED: dict[Work, str] = {
    "sides": "bored",
    "drawer-boxes": "front bored",
    "rear-hooks": "bored for the hooks",
    "cups": "cups bored",
    "pulls": "bored for the pull",
    "fronts-on-boxes": "bored for its box",
    "false-fronts": "pilots bored",
    "pulls-through": "bored through for the pull",
    "by-hand": "bored by hand",
}
"""What is bored."""
DONE: dict[StepKind, str] = {
    "cut": "cut",
    "banded": "banded",
    "arrived": "arrived",
    "bored": "bored",
    "assembled": "assembled",
    "mounted": "plates and slides on",
    "scribed": "scribed",
    "back": "back painted",
    "front": "face painted",
    "hung": "hung",
    "fitted": "in its place",
    "adjusted": "adjusted",
}
"""What is done."""
LISTED: dict[StepKind, str] = {
    "cut": "To cut",
    "banded": "To band",
    "arrived": "Not here yet",
    "bored": "To drill",
    "assembled": "To assemble",
    "mounted": "Plates and slides to mount",
    "scribed": "To scribe and cut",
    "back": "Backs to paint",
    "front": "Faces to paint",
    "hung": "To hang",
    "fitted": "To fit",
    "adjusted": "To adjust",
}
"""What the list of all parts is called whose next step it is."""
MOST_LINES = 4
"""More lines than these are counted in an order, not named, and so are those of pins, of which
each has its own crosses: they stand at the part's stations."""

SAW = "Guard on, push stick; eye, ear, dust protection."
"""Common practice of the trade, no source."""


def step_order(step: Step, rows: Sequence[tuple[Station, Row]], unit: Unit) -> str:
    """Say what is to be done, and of what is bored at which station, on which lines: `Bore the
    cups: station CUPS RIGHT, hinge edge on your RIGHT, lines 106.7 and 618.7 up`. `rows` are the
    part's at its stations."""
    if step.kind != "bored":
        return f"{ORDERS[step.kind]}{_coat(step)}"
    here = [(station, row) for station, row in rows if station.work == step.work and not row.bored]
    if not here or step.work is None:
        return ORDERS["bored"]
    marked = any(row.marks is not None and not row.marks.maker_bored for _, row in here)
    order = MARKED if marked else BORE[step.work]
    titles = list(dict.fromkeys(station_title(station) for station, _ in here))
    noun = "station" if len(titles) == 1 else "stations"
    hands = dict.fromkeys(hand_words(station) for station, _ in here)
    alike = len({row.part for _, row in here}) == 1 and not any(
        setting.holes is not None for _, row in here for setting in row.settings
    )
    said = [
        *titles,
        *hands,
        lines_words([row for _, row in here], unit, MOST_LINES if alike else 0),
    ]
    return f"{order}: {noun} {', '.join(filter(None, said))}"


def lines_words(rows: Iterable[Row], unit: Unit, most: float = inf) -> str:
    """Name the lines across a part that its cards are set on: `lines 106.7 and 618.7 up`; where
    they are more than `most`, how many there are; "" where edges say all."""
    places = sorted(
        (place.value, _end(place, row.part.board), _figure(place, row.part.board, unit))
        for row in rows
        for setting in row.settings
        if (place := setting.y) is not None
    )
    ends = grouped((end, figure) for _, end, figure in places)
    lines = {end: list(dict.fromkeys(figures)) for end, figures in ends.items()}
    count = sum(map(len, lines.values()))
    if count > most:
        return counted(count, "line")
    said = [
        f"{listed(list(filter(None, figures)))} {end}".strip() for end, figures in lines.items()
    ]
    return f"{'line' if count == 1 else 'lines'} {', '.join(said)}" if said else ""


def _end(place: Offset, board: Board | None) -> str:
    """Say whence a line is struck; in a box that is together, from its bottom panel."""
    on_panel = board is not None and board.assembled and board.panel > 0.0
    return "over the bottom panel" if on_panel else FROM_WORDS[place.start]


def _figure(place: Offset, board: Board | None, unit: Unit) -> str:
    """Write a line's figure; "" where it lies on the middle, which has none."""
    if place.start in ("middle-x", "middle-y"):
        return ""
    low = board.panel if board is not None and board.assembled else 0.0
    return line_figure(place.value - low, unit)


def listed(words: Sequence[str]) -> str:
    """Join words to a list.

    >>> listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c"])
    ('a', 'a and b', 'a, b and c')
    """
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def step_cautions(
    step: Step, part: Tracked, rows: Sequence[tuple[Station, Row]]
) -> tuple[str, ...]:
    """Give the cautions of a step."""
    match step.kind:
        case "cut" | "scribed":
            return (SAW,)
        case "bored":
            here = [station for station, _ in rows if station.work == step.work]
            return (DRILL_CARE, *dict.fromkeys(text for each in here for text in cautions(each)))
        case "back" | "front":
            return (PAINT,)
        case "assembled":
            tall = part.piece is not None and part.piece.kind == "side"
            return (TWO_PEOPLE,) if tall else ()
        case "banded" | "arrived" | "mounted" | "hung" | "fitted" | "adjusted":
            return ()
        case _:
            assert_never(step.kind)


def key_words(steps: Iterable[Step], key: str) -> str:
    """Say by its key what was done, also a step that the part has no more."""
    return {step.key: step_done(step) for step in steps}.get(key, key.replace("-", " "))


def step_done(step: Step) -> str:
    """Say that a step is done: `back painted, coat 2`, `cups bored`."""
    if step.work is not None:
        return BORED[step.work]
    return f"{DONE[step.kind]}{_coat(step)}"


def wait_words(wait: Wait) -> str:
    """Say what a part has to have before the step of another: ` has its plates and slides on`."""
    if wait.step is None:
        return "is no longer held back"
    return (
        f"is {step_done(wait.step)}"
        if wait.step.kind != "mounted"
        else f"has its {DONE['mounted']}"
    )


def after_words(wait: Wait) -> str:
    """Say what has to be done with a part before the step of another, behind its ID and a colon."""
    return "released" if wait.step is None else step_done(wait.step)


def list_title(step: Step) -> str:
    """Name the list of parts whose next step this is: `Backs to paint, coat 2`."""
    return f"{LISTED[step.kind]}{_coat(step)}"


def _coat(step: Step) -> str:
    return f", coat {step.coat}" if step.coat else ""
