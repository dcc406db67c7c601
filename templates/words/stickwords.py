"""What a story stick says: on which boards its lines are struck, what of it is not to be trusted
yet, and what each line is."""

from jigs.bench.storystick import Stick, StickLine
from templates.words.fittingwords import words_of
from templates.words.openwords import open_line

SHELF = "fixed shelf, upper face"


def striking(stick: Stick) -> str:
    """Say on which boards the lines are struck."""
    some = any(line.only for line in stick.lines)
    if stick.struck == "faces":
        words = "Strike each line on both faces"
        if some:
            words += "; one marked ONLY on that face alone (L: the left face, seen from the room)"
        return f"{words}."
    if stick.struck == "each":
        if len(stick.boards) == 1:
            return f"Strike the lines on {stick.boards[0]}, on no other board."
        rest = "" if all(line.only for line in stick.lines) else "; one that names none, on all"
        return (
            "Strike each line only on the boards that it names (L: left side, R: right side), on "
            f"no other{rest}."
        )
    lay = "Lay LEFT and RIGHT side front edge to front edge against one stop"
    if not some:
        return f"{lay}, strike each line across BOTH at once."
    return (
        f"{lay}. Strike across BOTH at once only what is on both. A line marked ONLY goes on the "
        "boards that it names, on no other (L: left side, R: right side; L+R: both)."
    )


def cautions(stick: Stick) -> list[str]:
    """Say what of the stick is not to be trusted yet, and what is not on it."""
    said = []
    if stick.open:
        said.append(open_line(stick.open, "the check lists them"))
    if stick.standing:
        boxes = ", ".join(stick.standing)
        said.append(
            f"ALREADY TOGETHER: {boxes}. Set these out from the bottom panel: see the list."
        )
    if stick.missing:
        said.append(f"INCOMPLETE: lines for {', '.join(stick.missing)} still to come.")
    return said


def line_ways(line: StickLine) -> tuple[str, ...]:
    """Say what a line is: with the parts it serves, with their number, and alone."""
    kind, count = _kind_words(line), len(line.serves)
    counted = (f"{kind} of {count}: list",) if count > 1 else ()
    return (line_words(line), *counted, kind)


def line_words(line: StickLine) -> str:
    parts = ", ".join(line.serves)
    return f"{_kind_words(line)} {parts}".strip()


def _kind_words(line: StickLine) -> str:
    return SHELF if line.kind == "fixed-shelf" else words_of(line.kind).stick
