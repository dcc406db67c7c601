"""The words of a sheet: title, face, picture, sizes, sum, steps and what applies.

They are laid out as pieces of one width and flow down one column or several; the sheet decides
how wide and how many. A piece is never split.
"""

from dataclasses import dataclass, replace
from itertools import pairwise

from jigs.geometry import Face
from templates.card import Card
from templates.faces import FaceView
from templates.lettering import up_arrow
from templates.marks import MEDIUM, Area, Circle, Line, Mark, Outline, Qr, Text
from templates.qr import qr_side
from templates.space import Space
from templates.typeface import shorten, text_width, wrap

PITCH = 4.0
GAP = 0.5
YOURS = "Yours _________ x _________ mm."
"""Blanks for what the person measures."""
MODULE = 0.5
"""Side of a QR module, mm: read by telephones at arm's length (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartWords:
    """What a part's sheets say besides its holes; texts are ready to print.

    `kind` as on the label (`DOOR, HINGES LEFT`), `place` (`NORTH WALL, BOX B3, UNDER B3-1`),
    `size` in mm and inches, `payload` the text of its QR symbol, `facts` what holds
    for the work on one face, `notes` what applies to the part.
    """

    part: str
    kind: str
    place: str
    job: str
    code: str
    size: str
    payload: str
    facts: dict[Face, tuple[str, ...]]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Marks drawn from an upper left corner at (0, 0) downwards, and how far down they reach."""

    height: float
    marks: tuple[Mark, ...]


def moved(marks: tuple[Mark, ...], dx: float, dy: float) -> list[Mark]:
    """Move marks by (dx, dy) mm."""
    result: list[Mark] = []
    for mark in marks:
        match mark:
            case Text() | Circle() | Qr():
                result.append(replace(mark, x=mark.x + dx, y=mark.y + dy))
            case Line():
                result.append(
                    replace(
                        mark, x1=mark.x1 + dx, y1=mark.y1 + dy, x2=mark.x2 + dx, y2=mark.y2 + dy
                    )
                )
            case Area() | Outline():
                result.append(replace(mark, points=tuple((x + dx, y + dy) for x, y in mark.points)))
    return result


def paragraph(
    text: str, width: float, *, size: float = 2.5, bold: bool = False, hang: str = ""
) -> Piece:
    """Set a text in lines; `hang` stands before it (a step's number)."""
    indent = text_width("00 ", size, bold) if hang else 0.0
    pitch = size * 1.6
    lines = wrap(text, size, bold, width - indent)
    marks: list[Mark] = [
        Text(x=indent, y=-size * 1.12 - row * pitch, text=line, size=size, bold=bold)
        for row, line in enumerate(lines)
    ]
    if hang:
        marks.insert(0, Text(x=0.0, y=-size * 1.12, text=hang, size=size, bold=True))
    return Piece(height=len(lines) * pitch + 0.3, marks=tuple(marks))


def title(words: PartWords, sheet: str, width: float) -> Piece:
    """The part's name, kind, place, sheet number and code, and its QR symbol."""
    side = qr_side(words.payload, MODULE)
    room = width - side - 1.0
    size = next((s for s in (7.0, 5.0, 3.5) if text_width(words.part, s, True) <= room), 3.5)
    marks: list[Mark] = [
        Qr(x=width - side + 4 * MODULE, y=-side + 4 * MODULE, text=words.payload, module=MODULE)
    ]
    y = -size * 1.12
    marks.append(Text(x=0.0, y=y, text=shorten(words.part, size, True, room), size=size, bold=True))
    y -= size * 0.45 + 3.0
    kind_size = 3.5 if text_width(words.kind, 3.5, True) <= room else 2.5
    marks.append(
        Text(x=0.0, y=y - 0.6, text=shorten(words.kind, kind_size, True, room), size=kind_size,
             bold=True)
    )  # fmt: skip
    y -= 5.2
    place = wrap(words.place, 2.5, False, room)
    if len(place) > 2:
        place = [place[0], shorten(" ".join(place[1:]), 2.5, False, room)]
    for text, bold in (
        *((line, False) for line in place),
        (f"{sheet}, code {words.code}", True),
        (words.job, False),
    ):
        marks.append(Text(x=0.0, y=y, text=shorten(text, 2.5, bold, room), bold=bold))
        y -= PITCH
    return Piece(height=max(side, -y - PITCH + 1.5) + 1.0, marks=tuple(marks))


def face_words(view: FaceView, width: float) -> list[Piece]:
    """Which face is drilled, how it lies, and whether it may be turned round."""
    line = f"DRILL THIS FACE: {view.drilled}"
    size = 3.5 if text_width(line, 3.5, True) <= width else 2.5
    seen = f"{view.seen} NOT REVERSIBLE." if view.reversible is False else view.seen
    return [paragraph(line, width, size=size, bold=True), paragraph(seen, width)]


def picture(view: FaceView, cards: tuple[Card, ...], texts: list[str], width: float) -> list[Piece]:
    """The whole face in small with its cards and holes, and a large UP arrow.

    Beside a narrow picture stand the texts, as many as find room; the others come below it.
    """
    scale = min((width - 30.0) / view.width, 27.0 / view.height)
    w, h = view.width * scale, view.height * scale
    height = max(h + 8.0, 27.5)
    room = width - (w + 34.0)
    beside: list[Piece] = []
    if room >= 34.0:
        used = 0.0
        for text in texts:
            piece = paragraph(text, room)
            used += piece.height + GAP
            if used > height:
                break
            beside.append(piece)
    below = [paragraph(text, width) for text in texts[len(beside) :]]
    if beside:
        left, within = 20.0, w + 32.0
    else:
        left, within = 18.0 + (width - 30.0 - w) / 2, width
    bottom = -(height + h) / 2
    space = Space()
    space.add(*up_arrow(6.0, -height / 2 - 12.5, 25.0))
    space.add(
        Outline(
            points=(
                (left, bottom),
                (left + w, bottom),
                (left + w, bottom + h),
                (left, bottom + h),
            ),
            width=MEDIUM,
        )
    )
    edge = view.hinge_edge or view.front_edge
    if edge in ("left", "right"):
        x = left - 1.2 if edge == "left" else left + w + 0.2
        space.add(
            Area(
                points=(
                    (x, bottom),
                    (x + 1.0, bottom),
                    (x + 1.0, bottom + h),
                    (x, bottom + h),
                )
            )
        )
        words = "HINGES" if view.hinge_edge else "FRONT"
        if h > text_width(words, 2.5) + 1.0:
            at = left - 2.3 if edge == "left" else left + w + 4.6
            space.add(Text(x=at, y=bottom + h / 2, text=words, anchor="middle", angle=90))
    for fitting in view.fittings:
        for hole in fitting.holes:
            x, y = left + hole.x * scale, bottom + hole.y * scale
            space.add(
                Area(
                    points=(
                        (x - 0.35, y - 0.35),
                        (x + 0.35, y - 0.35),
                        (x + 0.35, y + 0.35),
                        (x - 0.35, y + 0.35),
                    )
                )
            )
    for card in cards:
        x0, y0 = left + max(card.box[0], 0.0) * scale, bottom + max(card.box[1], 0.0) * scale
        x1 = left + min(card.box[2], view.width) * scale
        y1 = bottom + min(card.box[3], view.height) * scale
        space.add(
            Outline(points=((x0, y0), (x1, y0), (x1, y1), (x0, y1)), width=THIN_CARD, dash="dashed")
        )
    for card in cards:
        cx = left + (max(card.box[0], 0.0) + min(card.box[2], view.width)) / 2 * scale
        cy = bottom + (max(card.box[1], 0.0) + min(card.box[3], view.height)) / 2 * scale
        words = str(card.number)
        space.add_where_free(
            (
                Text(x=x, y=y, text=words, bold=True, anchor="middle")
                for x, y in (
                    (cx, cy - 1.2),
                    (left + w + 2.2, cy - 1.2),
                    (left - 2.2, cy - 1.2),
                    (left + w + 7.0, cy - 1.2),
                    (left - 7.0, cy - 1.2),
                    (cx, bottom + h + 1.4),
                    (cx, bottom - 3.8),
                )
            ),
            (13.0, -height, within, 0.0),
        )
    marks, down = list(space.marks), 0.0
    for piece in beside:
        marks += moved(piece.marks, w + 34.0, -down - 1.0)
        down += piece.height + GAP
    return [Piece(height=height + 0.5, marks=tuple(marks)), *below]


THIN_CARD = 0.18


def closing_sum(places: list[float], length: float) -> str:
    """Write distances that add up as printed: the last takes the rounding.

    >>> closing_sum([97.75, 513.75], 613.0)
    '97.8 + 416.0 + 99.2 = 613.0'
    """
    tenths = [
        round(b * 10 + 1e-7) - round(a * 10 + 1e-7)
        for a, b in zip([0.0, *places], places, strict=False)
    ]
    total = round(length * 10 + 1e-7)
    tenths.append(total - sum(tenths))
    return f"{' + '.join(f'{t / 10:.1f}' for t in tenths)} = {total / 10:.1f}"


def sums(view: FaceView) -> list[str]:
    """The sums that close, for the rule: up the part, and across it where holes are paired."""
    kinds = {fitting.kind for fitting in view.fittings}
    result: list[str] = []
    holes = [hole for fitting in view.fittings for hole in fitting.holes]
    if "hinge" in kinds:
        cups = sorted(hole.y for hole in holes if hole.purpose == "cup")
        text = f"{closing_sum(cups, view.height)}."
        if len(cups) > 1:
            steps = ", ".join(f"{b - a:.1f}" for a, b in pairwise(cups))
            text += f" Punch to punch {steps}, the same as on the box side."
        return [text]
    if view.face == "inside":
        lines = _distinct([hole.y for hole in holes])
        return [f"Up from the bottom end: {closing_sum(lines, view.height)}."]
    across, up = _distinct([hole.x for hole in holes]), _distinct([hole.y for hole in holes])
    if len(across) > 1:
        result.append(f"Across: {closing_sum(across, view.width)}.")
    if len(up) > 1 or len(across) == 1:
        result.append(f"Up: {closing_sum(up, view.height)}.")
    return result


def _distinct(values: list[float]) -> list[float]:
    kept: list[float] = []
    for value in sorted(values):
        if not kept or value - kept[-1] > 0.05:
            kept.append(value)
    return kept


def pieces_for(
    view: FaceView,
    words: PartWords,
    steps: tuple[str, ...],
    cards: tuple[Card, ...],
    sheet: str,
    width: float,
) -> list[Piece]:
    """Give all pieces of a sheet, `width` mm wide, in the order in which they are read."""
    pieces = [
        title(words, sheet, width),
        *face_words(view, width),
        *picture(view, cards, [words.size, YOURS, *sums(view)], width),
    ]
    pieces += [paragraph(text, width, hang=str(row)) for row, text in enumerate(steps, start=1)]
    pieces += [
        paragraph(text, width, bold=text.startswith("NOT CONFIRMED"))
        for text in notes_on(view, words)
    ]
    return pieces


def notes_on(view: FaceView, words: PartWords) -> tuple[str, ...]:
    """Give the notes that matter for one face: those of the face, then those of the part."""
    return (*words.facts.get(view.face, ()), *words.notes)


def flow(pieces: list[Piece], columns: int, height: float) -> list[tuple[int, float]] | None:
    """Give each piece its column and its upper edge below the top, mm; None if they overflow."""
    places: list[tuple[int, float]] = []
    column, used = 0, 0.0
    for piece in pieces:
        if used + piece.height > height + 1e-9:
            column, used = column + 1, 0.0
            if column >= columns or piece.height > height:
                return None
        places.append((column, used))
        used += piece.height + GAP
    return places


def least_height(pieces: list[Piece], columns: int, most: float) -> float | None:
    """Give the least height, to 1 mm, at which pieces flow into some columns; None over `most`."""
    low = max(
        max(piece.height for piece in pieces),
        sum(piece.height + GAP for piece in pieces) / columns - GAP,
    )
    height = float(int(low) + 1)
    while height <= most:
        if flow(pieces, columns, height) is not None:
            return height
        height += 1.0
    return None
