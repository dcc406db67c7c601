"""What is measured on a wall before a box is set: widths that add up to its length, level lines to
strike, and where screws find something to hold.

Two rows stand along a wall, end to end, what stands on the floor and what hangs: fillers, end
panels, boxes, appliances, and what is open between them. Where two overlap there is no sum: that is
an error of the job.

All heights count up from the one level line through the floor's HIGH point, of all walls that meet
at corners: what stands there can be shimmed up elsewhere, never sunk. A box stands on the top of
its toe platform, which is set to its line; what hangs is set on its bottom's. The tops of base
boxes and tall ones say at once whether a row is level. Screws go through the nailers, which are put
to the same wall. Common practice, no source; the heights are the job's (derived: less the floor's
high point).
"""

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal

from msgspec import Struct

from jigs.cutlist.piece import Piece
from jigs.given.walls import SAME, TOUCHING
from jigs.ground.geometry import SLACK
from jigs.ground.grouped import grouped
from jigs.room.elevation import SAME_LEVEL, Elevation
from jigs.room.seen import Seen

StretchIs = Literal["box", "filler", "panel", "hidden", "appliance", "open"]


class Stretch(Struct, frozen=True, kw_only=True):
    """What takes a wall from `start` to `end`, mm; `id` of a box or an appliance."""

    start: float
    end: float
    stands: StretchIs
    id: str = ""


class RowAlong(Struct, frozen=True, kw_only=True):
    """A row of a wall from its left end to its right end. `known`: the wall's length is stated,
    and the last stretch, where it is open, is what is to spare."""

    hangs: bool
    stretches: tuple[Stretch, ...]
    known: bool

    @property
    def spare(self) -> float:
        """What is open at the right end of a wall whose length is stated; mm."""
        last = self.stretches[-1]
        return last.end - last.start if self.known and last.stands == "open" else 0.0


def rows_along(elevation: Elevation) -> tuple[RowAlong, ...]:
    """Give the rows of a wall whose widths can be added up, what stands first."""
    if not elevation.placed:
        return ()
    found = (_row(elevation, hangs) for hangs in (False, True))
    return tuple(row for row in found if row is not None)


def spaces_of(elevation: Elevation) -> tuple[Stretch, ...]:
    """Give what is left open for appliances, from the left: their places, and they themselves."""
    return tuple(
        each
        for each in sorted((*_taken(elevation, False), *_taken(elevation, True)), key=_start)
        if each.stands == "appliance"
    )


def _row(elevation: Elevation, hangs: bool) -> RowAlong | None:
    taken = sorted(_taken(elevation, hangs), key=_start)
    if not any(each.stands == "box" for each in taken):
        return None
    at = min(0.0, taken[0].start)
    made: list[Stretch] = []
    for each in taken:
        if each.start < at - SAME - SLACK:
            return None
        if each.start > at + SAME + SLACK:
            made.append(Stretch(start=at, end=each.start, stands="open"))
        made.append(each)
        at = each.end
    length = elevation.spec.length if elevation.spec else None
    known = length is not None and length >= at - SAME - SLACK
    if known and length is not None and length > at + SAME + SLACK:
        made.append(Stretch(start=at, end=length, stands="open"))
    return RowAlong(hangs=hangs, stretches=tuple(made), known=known)


def _taken(elevation: Elevation, hangs: bool) -> Iterator[Stretch]:
    for seen in elevation.boxes:
        if seen.hangs != hangs:
            continue
        place = seen.box.is_place
        yield Stretch(
            start=seen.x, end=seen.right, stands="appliance" if place else "box", id=seen.box.id
        )
        for strip in seen.strips:
            yield Stretch(start=strip.x, end=strip.x + strip.width, stands=strip.kind)
    for each in elevation.appliances:
        if each.hangs == hangs:
            yield Stretch(start=each.x, end=each.x + each.width, stands="appliance", id=each.id)


def _start(stretch: Stretch) -> float:
    return stretch.start


LineFor = Literal["toe", "base-top", "tall-top", "hung-bottom"]
"""What a line is struck for: top of toe platforms, tops of base boxes or of tall ones, bottoms of
what hangs. A box that stands on another needs none."""


class Strike(Struct, frozen=True, kw_only=True):
    """A line to strike: `up` mm above the floor's high point; what it is for, with the IDs of the
    boxes from the left."""

    up: float
    serves: tuple[tuple[LineFor, tuple[str, ...]], ...]


class Nailed(Struct, frozen=True, kw_only=True):
    """Boxes whose nailers stand at one height: `bands` from their lower edge to their upper one,
    from the top down, mm above the floor's high point."""

    boxes: tuple[str, ...]
    bands: tuple[tuple[float, float], ...]


def find_strikes(elevation: Elevation) -> tuple[Strike, ...]:
    """Give the lines of a wall from below; heights that are one level are one line."""
    ends = sorted(_ends(elevation), key=lambda end: (end[0], end[1]))
    runs: list[list[tuple[float, LineFor, str]]] = []
    for end in ends:
        if runs and end[0] - runs[-1][0][0] <= SAME_LEVEL:
            runs[-1].append(end)
        else:
            runs.append([end])
    at = {seen.box.id: seen.x for seen in elevation.boxes}
    return tuple(
        Strike(
            up=run[0][0] - elevation.zero,
            serves=tuple(
                (kind, tuple(sorted(boxes, key=lambda name: at[name])))
                for kind, boxes in grouped((kind, name) for _, kind, name in run).items()
            ),
        )
        for run in runs
    )


def _ends(elevation: Elevation) -> Iterator[tuple[float, LineFor, str]]:
    """Give each height that wants a line, above the job's level line; mm."""
    for seen in boxes_of(elevation):
        name = seen.box.id
        if seen.hangs:
            if not carriers_of(seen, elevation):
                yield seen.bottom, "hung-bottom", name
            continue
        if seen.on_platform:
            yield seen.bottom, "toe", name
        yield seen.top, "tall-top" if seen.box.kind == "tall" else "base-top", name


def boxes_of(elevation: Elevation) -> tuple[Seen, ...]:
    """Give the boxes of a wall that are set; an appliance's place is none."""
    return tuple(seen for seen in elevation.boxes if not seen.box.is_place)


def carriers_of(seen: Seen, elevation: Elevation) -> tuple[Seen, ...]:
    """Give the boxes on which a box stands that is no wall box, and is above the floor."""
    if seen.box.kind == "wall" or not seen.hangs:
        return ()
    return tuple(
        other
        for other in boxes_of(elevation)
        if abs(other.top - seen.bottom) <= TOUCHING
        and min(seen.right, other.right) - max(seen.x, other.x) > TOUCHING
    )


def find_nailed(elevation: Elevation, nailers: Iterable[Piece]) -> tuple[Nailed, ...]:
    """Give where the nailers of a wall's boxes stand, those alike together, what hangs first."""
    pieces = grouped((piece.box, piece) for piece in nailers)
    found: dict[tuple[tuple[float, float], ...], list[str]] = {}
    for seen in sorted(boxes_of(elevation), key=_hung_then_tall):
        low = seen.bottom - elevation.zero
        bands = _bands(low, pieces.get(seen.box.id, ()))
        if bands:
            found.setdefault(bands, []).append(seen.box.id)
    return tuple(Nailed(boxes=tuple(boxes), bands=bands) for bands, boxes in found.items())


def _bands(low: float, nailers: Sequence[Piece]) -> tuple[tuple[float, float], ...]:
    blocks = [block for piece in nailers for block in piece.blocks]
    ends = [(round(low + block.y, 6), round(low + block.y + block.dy, 6)) for block in blocks]
    return tuple(sorted(ends, reverse=True))


def _hung_then_tall(seen: Seen) -> tuple[bool, bool, float]:
    return not seen.hangs, seen.box.kind != "tall", seen.x


def room_above(elevation: Elevation) -> float | None:
    """Give what is left between the highest box and the ceiling, None where no ceiling is said;
    mm."""
    spec, boxes = elevation.spec, boxes_of(elevation)
    if spec is None or spec.ceiling is None or not boxes:
        return None
    room = spec.ceiling - max(seen.top for seen in boxes)
    return 0.0 if abs(room) < SLACK else room
