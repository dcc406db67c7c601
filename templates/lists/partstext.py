"""The cut list as tables for people: board by board, and on each board box by box.

The screws' places and the grooves are many and alike: each pattern is written once, under the
tables, by a short name (P1, G1).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from jigs.cutlist.piece import Groove, Piece, Stuff
from jigs.cutlist.totals import STUFF_ORDER
from jigs.given.cautions import cautions_of
from jigs.given.job import BoxSpec, Job
from jigs.ground.lengths import Unit, format_inches, format_length, format_mm, in_both
from templates.lists.partslist import STAMPED, PartsList
from templates.lists.partstotals import (
    STUFF_WORDS,
    built_lines,
    drawer_lines,
    exact,
    legend_lines,
    totals_lines,
    trap_lines,
)
from templates.words.findings import before_cutting
from templates.words.textlines import columned, wrapped
from templates.words.wallwords import wall_phrase


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
    boxes = parts.list_boxes()
    fronts = {f.id for f in parts.layout.fronts if f.box in boxes}
    walls = {box.wall for box in parts.layout.boxes if box.id in boxes}
    lines: list[str] = []
    for words in before_cutting(parts.layout, boxes | fronts | walls):
        lines += wrapped(words, "", "  ")
    lines += [""] if lines else []
    for stuff in STUFF_ORDER:
        for thickness in dict.fromkeys(p.thickness for p in parts.pieces if p.stuff == stuff):
            group = [p for p in parts.pieces if p.stuff == stuff and p.thickness == thickness]
            lines += [f"Board of the {STUFF_WORDS[stuff]}: {_true(job, stuff, thickness)}"]
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
                lines += wrapped(f"{name.ljust(4)}{words}", "  ", "      ")
            lines.append("")
    lines += totals_lines(parts)
    lines += drawer_lines(parts)
    lines += trap_lines(parts)
    lines += built_lines(parts)
    if parts.left_out:
        rollouts = {rollout.id for rollout in parts.layout.rollouts}
        for why, names in (
            ("their fronts", [name for name in parts.left_out if name not in rollouts]),
            ("they", [name for name in parts.left_out if name in rollouts]),
        ):
            text = f"Left out, because {why} are held back: {', '.join(names)}."
            lines += wrapped(text, "", "  ") if names else []
    lines += ["", *legend_lines(parts)]
    for words in cautions_of(box.kind for box in parts.layout.boxes):
        lines += wrapped(words, "", "  ")
    return "\n".join(lines) + "\n"


def _tables(parts: PartsList, group: Sequence[Piece], patterns: _Patterns) -> Iterator[str]:
    """Give the tables of one board: box by box, then wall by wall."""
    job = parts.layout.job
    boxes = {box.id: _box_words(box) for box in parts.layout.boxes}
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
    top, *lines = columned([head, *rows], right=(1,), indent="    ")
    places: dict[tuple[str | None, str], list[tuple[Piece, str]]] = {}
    for piece, line in zip(group, lines, strict=True):
        place = piece.box, piece.wall if piece.box is None else ""
        places.setdefault(place, []).append((piece, line))
    first = True
    for (box, wall), pieces in places.items():
        yield f"  {boxes[box] if box in boxes else _wall_words(wall)}"
        if first:
            yield top
            first = False
        for piece, line in pieces:
            yield line
            if piece.note:
                yield from wrapped(piece.note, "        ", "        ")
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
        ", ".join(piece.banded),
        patterns.of_screws(piece),
        patterns.of_groove(piece),
    )


def _cut_head(unit: Unit) -> str:
    other = "mm" if unit == "in" else "in"
    return f"cut: length x width, {unit} ({other})"


def _wall_words(wall: str) -> str:
    if not wall:
        return "No wall named"
    return wall_phrase(wall)


def _true(job: Job, stuff: Stuff, thickness: float) -> str:
    assumed = STAMPED.get(stuff) in job.assumed
    return f"{exact(thickness, job.shown)} thick{', ASSUMED: measure it' if assumed else ''}"


def _figures(mm: float, unit: Unit) -> str:
    """Write a length in both units, without their names."""
    return in_both(format_mm(mm), format_inches(mm), unit)


def _size(length: float, width: float, unit: Unit) -> str:
    write = format_inches if unit == "in" else format_mm
    return f"{write(length)} x {write(width)}"


def _box_words(box: BoxSpec) -> str:
    """Name a box with its kind and its wall: `B1, base box, north wall`."""
    words = f"{box.id}, {box.kind} box"
    if not box.wall:
        return words
    return f"{words}, {wall_phrase(box.wall)}"
