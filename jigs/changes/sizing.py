"""A part's size before and after an edit: whether it can be cut down to it, and from which edges,
so that the holes that it has stay where they belong.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.changes.boring import SAME_FIGURE, SPOILS, HoleChange, apart, compare_holes
from jigs.changes.made import MadeHole, MadePart, Sizes

SizeKind = Literal[
    "new", "gone", "more", "fewer", "down", "anew", "board", "box", "thick", "band", "joints"
]
"""What becomes of a part on the saw: there is one more to cut, or one less; there are more or fewer
of it; it is cut down; it is too small now; it is of another board; it is another drawer box; its
board has another thickness, or was measured; other edges are banded, or with another band; other
grooves, notches or pocket screws."""
LOST: tuple[SizeKind, ...] = ("anew", "board", "box")
"""What becomes of a part that is of no more use as it is."""


class SizeChange(Struct, frozen=True, kw_only=True):
    """What becomes of a part's size."""

    kind: SizeKind
    before: Sizes = ()
    """As cut, of a front as it is finished; mm."""
    after: Sizes = ()
    less: tuple[float, float] = (0.0, 0.0)
    """What comes off it along its first size and its second, below 0 what is lacking; mm."""
    count: int = 0
    """How many there are now, of which there were more or fewer."""


class Trim(Struct, frozen=True, kw_only=True):
    """Where a part is cut down so that its holes stay right: from its left edge and bottom edge
    (a side: from its front edge and bottom end), the rest from those across; mm."""

    left: float
    bottom: float


def compare_sizes(before: MadePart, after: MadePart) -> tuple[SizeChange, ...]:
    """Tell what becomes of a part's size; nothing where it stays as it is."""
    return tuple(_changes(before, after))


def _changes(before: MadePart, after: MadePart) -> Iterator[SizeChange]:
    if is_drawer_box(before) and is_drawer_box(after):
        if _differ(before.size, after.size) or _differ(before.joined, after.joined):
            yield SizeChange(kind="box", before=before.size, after=after.size)
        return
    was, now = sawn(before), sawn(after)
    if after.in_hand or (not was and not now):
        return  # what is measured is as it is
    if not was or not now:
        yield SizeChange(kind="new" if now else "gone", before=was, after=now)
        return
    less = (was[0] - now[0], was[1] - now[1])
    if before.stuff != after.stuff:
        yield SizeChange(kind="board", before=was, after=now, less=_rounded(less))
        return
    if abs(was[2] - now[2]) > SAME_FIGURE:
        yield SizeChange(kind="thick", before=was, after=now)
    if max(map(abs, less)) > SAME_FIGURE:
        kind: SizeKind = "anew" if min(less) < -SAME_FIGURE else "down"
        yield SizeChange(kind=kind, before=was, after=now, less=_rounded(less))
    elif (before.band, before.banding) != (after.band, after.banding):
        yield SizeChange(kind="band", before=was, after=now)
    if _differ(before.joined, after.joined):
        yield SizeChange(kind="joints", before=was, after=now)
    if before.count != after.count:
        more = after.count > before.count
        yield SizeChange(kind="more" if more else "fewer", before=was, after=now, count=after.count)


def sawn(part: MadePart) -> Sizes:
    """Give what a part is cut to, or, a front, ordered to; nothing of what is put together."""
    return part.cut or (part.size if is_front(part) else ())


def is_front(part: MadePart) -> bool:
    """Tell whether a part is a front."""
    return not part.cut and not part.stuff and not is_drawer_box(part)


def is_drawer_box(part: MadePart) -> bool:
    """Tell whether a part is a drawer box, put together."""
    return part.kind in ("drawer-box", "rollout")


def compare_trimmed(
    before: MadePart, after: MadePart, held: Collection[str] = ()
) -> tuple[Trim | None, tuple[HoleChange, ...]]:
    """Tell what became of each hole. Of a part that has become smaller as it does once it is cut
    down so that most of them stay right, and how it is cut. Nothing is known of holes for parts
    that are `held` back now."""
    before = replace(before, holes=tuple(h for h in before.holes if h.serves not in held))
    if after.in_hand and is_front(before):
        return None, compare_holes(_as_set(before, after), after.holes)
    plain = compare_holes(before.holes, after.holes)
    off = _off(before, after)
    if off is None or not before.holes:
        return None, plain
    best, found = None, plain
    for trim in _trims(before.holes, after.holes, off):
        stands = [
            replace(hole, x=hole.x - trim.left, y=hole.y - trim.bottom) for hole in before.holes
        ]
        tried = compare_holes(stands, after.holes)
        if best is None or _cost(tried) < _cost(found):
            best, found = trim, tried
    return best, found


def _as_set(before: MadePart, after: MadePart) -> list[MadeHole]:
    """Give where the holes of before stand on a front that is measured now: each as far from the
    edge that it was set by, or from the middle, as it was to be. By which, the new figures tell."""
    off = [was - now for was, now in zip(before.size[:2], after.size[:2], strict=True)]
    found: list[MadeHole] = []
    for hole in before.holes:
        same = [new for new in after.holes if (new.purpose, new.face) == (hole.purpose, hole.face)]
        ways = [
            replace(hole, x=hole.x - left * off[0], y=hole.y - up * off[1])
            for left in (0.0, 0.5, 1.0)
            for up in (0.0, 0.5, 1.0)
        ]
        near = [min((apart(way, new) for new in same), default=0.0) for way in ways]
        found.append(ways[near.index(min(near))])
    return found


def _off(before: MadePart, after: MadePart) -> tuple[float, float] | None:
    """Give what comes off the drilled face across and up; None where it becomes no smaller."""
    was, now = face_of(before), face_of(after)
    if not was or not now:
        return None
    off = (was[0] - now[0], was[1] - now[1])
    return off if min(off) >= -SAME_FIGURE and max(off) > SAME_FIGURE else None


def face_of(part: MadePart) -> Sizes:
    """Give width and height of a part's drilled face, mm; () of a drawer box, whose pieces are cut.
    A board's length stands upright."""
    if is_front(part):
        return part.size[:2]
    if part.cut and part.size:
        return part.size[1], part.size[0]
    return ()


def _trims(
    before: tuple[MadeHole, ...], after: tuple[MadeHole, ...], off: tuple[float, float]
) -> Iterator[Trim]:
    across = _tried((old.x - new.x for old in before for new in after), off[0])
    up = _tried((old.y - new.y for old in before for new in after), off[1])
    for left in across:
        for bottom in up:
            yield Trim(left=left, bottom=bottom)


def _tried(ways: Iterable[float], off: float) -> tuple[float, ...]:
    """Give what may come off at one of two edges: all, none, half, and what puts most holes where
    they belong."""
    kept = Counter(round(way, 4) for way in ways if -SAME_FIGURE <= way <= off + SAME_FIGURE)
    most = (way for way, _ in kept.most_common(MOST_TRIED))
    tried = (min(max(way, 0.0), off) for way in (0.0, off, off / 2, *most) if off > 0)
    return tuple(sorted({round(way, 4) for way in tried})) or (0.0,)


MOST_TRIED = 12
"""So many ways to cut a part down are tried across, and as many up, beside those that any part
can be cut."""


def _cost(changes: tuple[HoleChange, ...]) -> tuple[int, int, float]:
    """Say how bad it is: what is spoilt, then what is changed, then how far holes are off."""
    spoilt = sum(change.cure in SPOILS for change in changes)
    return spoilt, len(changes), round(sum(change.by for change in changes), 2)


def _differ(one: Sizes, other: Sizes) -> bool:
    return len(one) != len(other) or any(
        abs(a - b) > SAME_FIGURE for a, b in zip(one, other, strict=True)
    )


def _rounded(less: tuple[float, float]) -> tuple[float, float]:
    return round(less[0], 4) + 0.0, round(less[1], 4) + 0.0
