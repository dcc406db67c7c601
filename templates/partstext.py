"""The cut list as tables for people: board by board, and on each board box by box.

The screws' places and the grooves are many and alike: each pattern is written once, under the
tables, by a short name (P1, G1).
"""

import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from jigs.assumed import list_assumed
from jigs.cutlist.piece import Groove, Piece, Stuff
from jigs.cutlist.sheet import SHEET_WORDS
from jigs.cutlist.totals import (
    PER_EDGE,
    STUFF_ORDER,
    WASTE,
    add_banding,
    add_boards,
    over_sheet,
)
from jigs.cutlist.trap import find_trap
from jigs.job import Job, Unit
from jigs.lengths import MM_PER_INCH, format_inches, format_length, format_mm
from templates.findings import WIDTH, box_words
from templates.partslist import PartsList

STUFF_WORDS: dict[Stuff, str] = {
    "side": "Board of the sides",
    "partition": "Board of the partitions",
    "back": "Board of the backs",
    "front": "Board of the fronts",
    "drawer-side": "Board of the drawer sides",
    "drawer-bottom": "Board of the drawer bottoms",
}
STAMPED: dict[Stuff, str] = {
    "side": "material.side",
    "back": "material.back",
    "front": "material.front",
    "drawer-side": "material.drawer_side",
}
"""The key of the job that a board's thickness comes from."""
SQUARE_FEET = 1e6 / (12 * MM_PER_INCH) ** 2
"""Square feet in a square metre."""
WHOLE = 0.9
"""From this part of a reveal on, a loss is a whole one."""


@dataclass(slots=True, kw_only=True)
class _Patterns:
    """Short names for places that many pieces share."""

    unit: Unit
    screws: dict[tuple[str, ...], str] = field(default_factory=dict)
    grooves: dict[str, str] = field(default_factory=dict)

    def of_screws(self, piece: Piece) -> str:
        """Name the places of a piece's pocket screws."""
        if not piece.pockets and not piece.pockets_top:
            return ""
        words = [self._places(piece.pockets) or "none"]
        if piece.pockets_top is not None:
            words = [f"foot {words[0]}", f"top {self._places(piece.pockets_top) or 'none'}"]
        return self.screws.setdefault(tuple(words), f"P{len(self.screws) + 1}")

    def of_groove(self, piece: Piece) -> str:
        """Name a piece's groove."""
        if piece.groove is None:
            return ""
        words = self._groove(piece.groove, in_side=piece.kind == "side")
        return self.grooves.setdefault(words, f"G{len(self.grooves) + 1}")

    def _places(self, places: Sequence[float]) -> str:
        return ", ".join(_figures(place, self.unit) for place in places)

    def _groove(self, groove: Groove, *, in_side: bool) -> str:
        shape = (
            f"{format_length(groove.width, self.unit)} wide, "
            f"{format_length(groove.depth, self.unit)} deep"
        )
        if in_side:
            near, far = groove.at - groove.width, groove.at
            return (
                f"for the back, from end to end: {shape}, from {format_length(near, self.unit)} "
                f"to {format_length(far, self.unit)} behind the finished front edge"
            )
        return (
            f"for the drawer bottom, along the inner face: {shape}, its lower edge "
            f"{format_length(groove.at, self.unit)} above the lower edge"
        )


def parts_text(parts: PartsList) -> str:
    """Give the whole cut list as tables, the unit shown first, with its totals and a legend."""
    job = parts.layout.job
    patterns = _Patterns(unit=job.shown)
    lines: list[str] = []
    for stuff in STUFF_ORDER:
        for thickness in dict.fromkeys(p.thickness for p in parts.pieces if p.stuff == stuff):
            group = [p for p in parts.pieces if p.stuff == stuff and p.thickness == thickness]
            lines += [f"{STUFF_WORDS[stuff]}: {_true(job, stuff, thickness)}"]
            lines += _tables(parts, group, patterns)
    if not lines:
        lines += ["Nothing to cut.", ""]
    for head, named in (
        ("Pocket screws", {"; ".join(words): name for words, name in patterns.screws.items()}),
        ("Grooves", patterns.grooves),
    ):
        if named:
            lines.append(head)
            for words, name in named.items():
                lines += _wrapped(f"{name.ljust(4)}{words}", "  ", "      ")
            lines.append("")
    lines += _totals(parts)
    lines += _trap_lines(parts)
    if parts.left_out:
        lines += _wrapped(
            f"Left out, because their fronts are held back: {', '.join(parts.left_out)}.", "", "  "
        )
    lines += ["", *_legend(parts)]
    return "\n".join(lines) + "\n"


def _tables(parts: PartsList, group: Sequence[Piece], patterns: _Patterns) -> Iterator[str]:
    """Give the tables of one board: box by box, then wall by wall."""
    job = parts.layout.job
    boxes = {box.id: box_words(box) for box in parts.layout.boxes}
    head: tuple[str, ...] = (
        "piece",
        "n",
        _cut_head(job.shown),
        "finished",
        "band",
        "screws",
        "groove",
    )
    rows = [_row(piece, job.shown, patterns) for piece in group]
    # A column that no piece of this board fills is left out.
    filled = [at for at in range(len(head)) if any(row[at] for row in rows)]
    head = tuple(head[at] for at in filled)
    rows = [tuple(row[at] for at in filled) for row in rows]
    widths = [max(len(row[at]) for row in [head, *rows]) for at in range(len(head))]
    places = dict.fromkeys((piece.box, piece.wall if piece.box is None else "") for piece in group)
    first = True
    for box, wall in places:
        yield f"  {boxes[box] if box in boxes else _wall_words(wall)}"
        if first:
            yield _line(head, widths)
            first = False
        for piece, row in zip(group, rows, strict=True):
            if (piece.box, piece.wall if piece.box is None else "") == (box, wall):
                yield _line(row, widths)
                if piece.note:
                    yield from _wrapped(piece.note, "        ", "        ")
    yield ""


def _row(piece: Piece, unit: Unit, patterns: _Patterns) -> tuple[str, ...]:
    cut = _size(piece.length, piece.width, unit)
    finished = _size(piece.finished_length, piece.finished_width, unit)
    other: Unit = "mm" if unit == "in" else "in"
    both = f"{cut} ({_size(piece.length, piece.width, other)})"
    return (
        piece.id,
        str(piece.count),
        both,
        finished if piece.band else "",
        ", ".join(piece.band),
        patterns.of_screws(piece),
        patterns.of_groove(piece),
    )


def _line(row: Sequence[str], widths: Sequence[int]) -> str:
    cells = [
        cell.rjust(width) if at == 1 else cell.ljust(width)
        for at, (cell, width) in enumerate(zip(row, widths, strict=True))
    ]
    return f"    {'  '.join(cells)}".rstrip()


def _cut_head(unit: Unit) -> str:
    other = "mm" if unit == "in" else "in"
    return f"cut: length x width, {unit} ({other})"


def _wall_words(wall: str) -> str:
    if not wall:
        return "No wall named"
    return wall if wall.lower().endswith("wall") else f"{wall} wall"


def _true(job: Job, stuff: Stuff, thickness: float) -> str:
    assumed = STAMPED.get(stuff) in job.assumed
    return f"{_exact(thickness, job.shown)} thick{', ASSUMED: measure it' if assumed else ''}"


def _totals(parts: PartsList) -> Iterator[str]:
    job = parts.layout.job
    boards = add_boards(parts.pieces, job.units)
    if not boards:
        return
    yield "To buy"
    for board in boards:
        name = STUFF_WORDS[board.stuff].removeprefix("Board of the ")
        sheets = "1 sheet" if board.sheets == 1 else f"{board.sheets} sheets"
        yield from _wrapped(
            f"{name}, {_exact(board.thickness, job.shown)}: {_many(board.pieces, 'piece')}, "
            f"{_area(board.area, job.shown)}; at least {sheets} of {SHEET_WORDS[job.units]}",
            "  ", "    ",
        )  # fmt: skip
    for band in add_banding(parts.pieces):
        yield from _wrapped(
            f"edge band for board of {_exact(band.board, job.shown)}: "
            f"{_many(band.edges, 'edge')}, {_run(band.length, job.shown)}; to buy "
            f"{_run(band.to_buy, job.shown)}",
            "  ", "    ",
        )  # fmt: skip
    yield from _wrapped(
        "Sheets are counted by area alone: cuts and offcuts come on top, often a fifth and more. "
        f"Band to buy has {format_length(PER_EDGE, job.shown)} more for each edge, and "
        f"{WASTE - 1:.0%} over all.",
        "  ", "  ",
    )  # fmt: skip
    if long := over_sheet(parts.pieces, job.units):
        yield from _wrapped(
            f"Larger than a sheet of {SHEET_WORDS[job.units]}: "
            f"{', '.join(piece.id for piece in long)}.",
            "  ", "  ",
        )  # fmt: skip
    yield ""


def _trap_lines(parts: PartsList) -> list[str]:
    """Say what a box would come to, cut for what its board is called."""
    job = parts.layout.job
    trap = find_trap(job, parts.boxes)
    if trap is None:
        return []
    known = "as assumed" if "material.side" in job.assumed else "as measured"
    called = f"{_exact(trap.nominal, job.shown)}"
    source = (
        "the nearest trade size, a guess; sold_as in [build] says it" if trap.guessed
        else "what it is sold as"
    )  # fmt: skip
    if abs(trap.lost) < 0.05:
        words = f"The sides are {called}, {known} and as sold: nothing is lost between the two."
        return _wrapped(words, "", "")
    loss = f"{format_length(abs(trap.lost), job.shown)} {'lost' if trap.lost > 0 else 'too wide'}"
    if abs(trap.lost) >= WHOLE * job.reveal.side > 0:
        loss += ", a whole reveal"
    return _wrapped(
        f"Cut for {called} ({source}), a bottom of {format_length(trap.bottom, job.shown)} between "
        f"sides of {_exact(trap.true, job.shown)}, {known}, would make {trap.box} "
        f"{format_length(trap.comes_to, job.shown)} wide instead of "
        f"{format_length(trap.width, job.shown)}: {loss}. This list is cut for "
        f"{_exact(trap.true, job.shown)}.",
        "", "",
    )  # fmt: skip


def _legend(parts: PartsList) -> list[str]:
    job = parts.layout.job
    words = [
        "cut: what the saw is set to, before the edge band; length runs along the grain, or is "
        "the longer way where the grain does not matter. finished: the same with its band, where "
        "it has one.",
        "screws: pocket screws at each end of the piece, from the finished front edge of the box; "
        "of a side, where they come in; of what stands on edge (rail, nailer, sleeper, a drawer's "
        "front and back), from its lower edge.",
        "A + or - after inches: a little more or less.",
    ]
    keys = [f"material.{key}" for key in ("side", "back", "band", "drawer_side")]
    assumed = [*list_assumed(job, keys)]
    guessed = [
        box.id
        for box in job.boxes
        if box.id in parts.boxes
        and any(f"box.{box.id}.{key}" in job.assumed for key in ("width", "height", "depth"))
    ]
    if guessed:
        assumed.append(f"sizes of {', '.join(guessed)}")
    if assumed:
        words.append(f"ASSUMED, because the job does not say: {'; '.join(assumed)}.")
    if any(p.kind == "drawer-side" for p in parts.pieces) and job.build.drawer_boxes is None:
        words.append(
            'Drawer boxes are listed as made here; drawer_boxes = "ordered" in [build] leaves '
            "them out."
        )
    return [line for text in words for line in _wrapped(text, "", "  ")]


def _figures(mm: float, unit: Unit) -> str:
    """Write a length in both units, without their names."""
    first, second = format_mm(mm), format_inches(mm)
    return f"{second} ({first})" if unit == "in" else f"{first} ({second})"


def _size(length: float, width: float, unit: Unit) -> str:
    write = format_inches if unit == "in" else format_mm
    return f"{write(length)} x {write(width)}"


def _exact(mm: float, unit: Unit) -> str:
    """Write a thickness in both units, its millimetres to 0.01."""
    metric, inches = f"{round(mm, 2):g} mm", f"{format_inches(mm)} in"
    return f"{inches} ({metric})" if unit == "in" else f"{metric} ({inches})"


def _area(square_metres: float, unit: Unit) -> str:
    metric = f"{square_metres:.2f} m2"
    feet = f"{square_metres * SQUARE_FEET:.1f} sq ft"
    return f"{feet} ({metric})" if unit == "in" else f"{metric} ({feet})"


def _run(mm: float, unit: Unit) -> str:
    metric, feet = f"{mm / 1000:.2f} m", f"{mm / MM_PER_INCH / 12:.1f} ft"
    return f"{feet} ({metric})" if unit == "in" else f"{metric} ({feet})"


def _many(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=rest,
        break_on_hyphens=False, break_long_words=False,
    )  # fmt: skip
