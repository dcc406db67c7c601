"""The test page of a label stock: its outlines, to lay over a sheet of it against the light.

Every label's outline stands where the stock's geometry says, with its number and a cross at its
centre. On the first and on the last label scales cross two edges: where the label's own edge
crosses them is by how much labels are to be moved, to the right and up. A roll cannot be laid
over: its page is printed on a label, whose white is measured round a frame.
"""

from collections.abc import Iterator

from jigs.given.labelstock import Stock
from jigs.ground.geometry import rectangle
from templates.labels.labelplacing import LabelField, field_of
from templates.page.marks import MEDIUM, THIN, Line, Mark, Outline, Page, Text
from templates.page.raster import Raster
from templates.page.typeface import EM_PER_CAP, text_width, wrap

FRAME = 3.0
"""The frame on a label of a roll stands so far from its edges, mm."""
REACH = 4
"""A scale reaches so far to both sides of an edge, mm."""

_CROSS = 3.0
_ROLL_CROSS = 2.0
_SMALL = 2.5
_LEAST = 1.8
_PITCH = _SMALL * EM_PER_CAP


def fit_page(stock: Stock, raster: Raster, printer: str = "") -> Page:
    """Draw the test page of a sheet or a roll; a sheet's gives the name of its printer."""
    wide, high = raster.page(stock.sheet.width, stock.sheet.height)
    marks = _roll_marks(stock, raster) if stock.roll else _sheet_marks(stock, raster, printer)
    return Page(
        width=wide,
        height=high,
        marks=tuple(marks),
        entry=f"Test page of {stock.name}",
        scale=raster.scale,
    )


def _sheet_marks(stock: Stock, raster: Raster, printer: str) -> Iterator[Mark]:
    fields = [field_of(stock, place, raster) for place in range(1, stock.places + 1)]
    for place, field in enumerate(fields, start=1):
        yield Outline(points=rectangle(field.left, field.bottom, field.right, field.top))
        yield from _centre(field, _CROSS)
        x, y = _middle(field)
        yield Text(x=x + _CROSS + 1.0, y=y - 1.75, text=str(place), size=3.5, bold=True)
    yield from _scales(fields[0], first=True)
    if stock.places > 1:
        yield from _scales(fields[-1], first=False)
    yield from _steps(_rooms(stock, fields), fields[0].width, _sheet_words(stock, raster, printer))


def _sheet_words(stock: Stock, raster: Raster, printer: str) -> list[str]:
    last = f" and {stock.places}" if stock.places > 1 else ""
    words = [
        "Print at 100 %, actual size, on PLAIN paper.",
        "Lay it over a sheet of labels, against the light. Each outline must lie on a label.",
        f"All off by the same? Read on label 1{last} where the label's own edge crosses the "
        "scales: to the right and up.",
        "jigsheet calibrate NAME --labels-right ____ --labels-up ____   Then print with "
        "--printer NAME.",
    ]
    if stock.places > 1:
        words.append(
            f"Labels 1 and {stock.places} do not read alike? Calibrate the printer first, by its "
            "bars: jigsheet calibrate. Still? Measure the stock; write [stock.NAME] into the job."
        )
    numbered = [f"{number}: {text}" for number, text in enumerate(words, start=1)]
    return [f"TEST PAGE OF {stock.name}. {_moved(raster, printer)}", *numbered]


def _moved(raster: Raster, printer: str) -> str:
    if not printer:
        return "Printer not corrected, labels not moved."
    right, up = raster.shift
    if not (right or up):
        return f"For printer '{printer}': labels not moved."
    return (
        f"For printer '{printer}': moved {right:g} mm to the right, {up:g} mm up already; add "
        "what you read."
    )


def _centre(field: LabelField, reach: float) -> Iterator[Mark]:
    x, y = _middle(field)
    yield Line(x1=x - reach, y1=y, x2=x + reach, y2=y)
    yield Line(x1=x, y1=y - reach, x2=x, y2=y + reach)


def _middle(field: LabelField) -> tuple[float, float]:
    return field.left + field.width / 2, field.bottom + field.height / 2


def _scales(field: LabelField, *, first: bool) -> Iterator[Mark]:
    """Draw a scale across two edges that lie inside the sheet, where every printer prints: the
    right and the lower one of the first label, the left and the upper one of the last. 0 stands
    on the outline, figures grow to the right and up."""
    x, y = _middle(field)
    edge, end = (field.right, field.bottom) if first else (field.left, field.top)
    for half in range(-2 * REACH, 2 * REACH + 1):
        mm = half / 2
        tick = 3.0 if mm == 0 else 1.8 if half % 2 == 0 else 1.0
        width = MEDIUM if mm == 0 else THIN
        yield Line(x1=edge + mm, y1=y, x2=edge + mm, y2=y + tick, width=width)
        yield Line(x1=x, y1=end + mm, x2=x + tick, y2=end + mm, width=width)
        # Figures stand within the label: beyond it begins the next one's outline.
        if mm == (-2 if first else 2):
            text = f"{mm:+g}"
            yield Text(x=edge + mm, y=y + 2.8, text=text, size=1.8, anchor="middle")
            yield Text(x=x + 2.2, y=end - mm - 0.9, text=f"{-mm:+g}", size=1.8)
    yield Line(x1=edge - REACH, y1=y, x2=edge + REACH, y2=y)
    yield Line(x1=x, y1=end - REACH, x2=x, y2=end + REACH)


def _rooms(stock: Stock, fields: list[LabelField]) -> list[list[tuple[float, float]]]:
    """Give where lines of lettering may begin in each label: above and below its cross, but not
    where the scales are."""
    rows = max(0, int((stock.height / 2 - _CROSS - 2.0) / _PITCH))
    scaled_below = (1, stock.places - stock.columns)
    scaled_above = (stock.places, 1 + stock.columns)
    rooms = []
    for place, field in enumerate(fields, start=1):
        x, y = field.left + 2.0, _middle(field)[1]
        above = [(x, field.top - 0.8 - _PITCH * (row + 0.75)) for row in range(rows)]
        below = [(x, y - _CROSS - _PITCH * (row + 0.9)) for row in range(rows)]
        above = [] if stock.places > 1 and place in scaled_above else above
        below = [] if place in scaled_below else below
        rooms.append([*above, *below])
    return rooms


def _steps(
    rooms: list[list[tuple[float, float]]], width: float, words: list[str]
) -> Iterator[Mark]:
    """Set the steps, each in one label where it fits, each in its own where there are enough;
    what finds no room is left to the terminal, which tells it too."""
    rooms = [room for room in rooms if room]
    apart = len(rooms) > 2 * len(words)
    most = max(map(len, rooms), default=0)
    at, used = 0, 0
    for text in words:
        lines = wrap(text, _SMALL, False, width - 4.0)
        if used and apart:
            at, used = at + 1, 0
        while at < len(rooms) and used + len(lines) > len(rooms[at]) and len(lines) <= most:
            at, used = at + 1, 0
        for line in lines:
            if at < len(rooms) and used == len(rooms[at]):
                at, used = at + 1, 0
            if at == len(rooms):
                return
            x, y = rooms[at][used]
            yield Text(x=x, y=y, text=line)
            used += 1


def _roll_marks(stock: Stock, raster: Raster) -> Iterator[Mark]:
    """Draw a frame at one distance from all edges, the centre, and what to measure."""
    wide, high = raster.page(stock.sheet.width, stock.sheet.height)
    right, up = raster.shift
    frame = rectangle(FRAME + right, FRAME + up, wide - FRAME + right, high - FRAME + up)
    yield Outline(points=frame, width=MEDIUM)
    field = LabelField(left=right, bottom=up, width=wide, height=high, margin=FRAME)
    yield from _centre(field, _ROLL_CROSS)
    x, y = _middle(field)
    yield Text(x=x + _ROLL_CROSS + 0.8, y=y - 1.25, text="1", bold=True)
    across = field.width - 2 * FRAME - 2.0
    name = stock.name
    if right or up:
        moved = f"moved {right:g}, {up:g}: add to it"
        name = f"{name}, {moved}"
        if text_width(name, _LEAST) > across:
            name = moved
    halves = (
        (name, f"Frame {FRAME:g} mm from each edge?"),
        (f"{FRAME:g} - white left = labels-right", f"{FRAME:g} - white below = labels-up"),
    )
    room = field.height / 2 - FRAME - _ROLL_CROSS - 1.0
    longest = max(text_width(text, 1.0) for half in halves for text in half)
    size = max(_LEAST, min(_SMALL, room / 2 / EM_PER_CAP, across / longest))
    pitch = size * EM_PER_CAP
    rows = min(2, int(room / pitch + 1e-6))
    tops = (field.top - FRAME - 0.8, y - _ROLL_CROSS - 0.3)
    for top, half in zip(tops, halves, strict=True):
        for row, text in enumerate(half[:rows], start=1):
            base = top - row * pitch + size * 0.385
            yield Text(x=x, y=base, text=text, size=size, anchor="middle")


def tell_fit(stock: Stock) -> str:
    """Say what to do with the printed page."""
    if stock.roll:
        lines = (
            f"print at 100 % on a label; the frame must stand {FRAME:g} mm from each edge.",
            f"It does not? Move the labels by {FRAME:g} mm less the white at the left, and less "
            "the white below:",
        )
    else:
        lines = (
            "print at 100 % on plain paper, lay it over the labels against the light.",
            "All off by the same? Move them by what you read on the scales:",
        )
    return "\n".join([*lines, "  jigsheet calibrate NAME --labels-right LENGTH --labels-up LENGTH"])
