"""The holes of a part before and after an edit, one by one, and what is done where those of before
are bored already.

A hole that stands within `SAME_FIGURE` of where it stood is the same one: nearer no figure on paper
says. A moved one is within `HAND` where a drill guided by a marked line stands no truer (derived
from assumed tolerances of the hand, as README's table of accuracy is).

>>> from msgspec.structs import replace
>>> hole = MadeHole(purpose="pull", face="front", x=50.0, y=76.2, diameter=5.0, depth=None)
>>> [change] = compare_holes([hole], [replace(hole, x=54.0)])
>>> change.kind, change.by, change.cure
('moved', 4.0, 'shows')
"""

from collections.abc import Iterable, Sequence
from math import hypot
from typing import Literal

from msgspec import Struct

from jigs.changes.made import MadeHole
from jigs.ground.geometry import SLACK
from jigs.ground.grouped import grouped

SAME_FIGURE = 0.05 + SLACK
"""Half of the tenth that paper says, mm: as near as a hole marked through another one."""
HAND = 0.3
"""mm; from assumed tolerances of pencil, awl and bit, not measured on wood."""

FAR = 60.0
"""A hole that has gone further is another one: there is one less here, and one more there; mm (our
choice)."""

HoleKind = Literal[
    "new", "gone", "done", "moved", "deeper", "shallower", "wider", "narrower", "through", "blind"
]
"""`done`: it is bored already, and no more asked for."""
HoleCure = Literal[
    "bore", "bore-on", "bore-out", "leave", "by-hand", "beside", "plug", "shows", "stays"
]
"""What is done where the holes of before are bored already: the new hole is bored; bored on to its
depth, or through; bored out to its width; the old hole is left as it is; it stands near enough;
the new one stands clear of the old one, which is plugged or covered; the old one is plugged before
the new one is bored, since they cut into each other; the old one is seen on the face; it is used as
it is."""
SPOILS: frozenset[HoleCure] = frozenset({"beside", "plug", "shows"})
"""What costs more than another hole."""


class HoleChange(Struct, frozen=True, kw_only=True):
    """What became of one hole."""

    kind: HoleKind
    before: MadeHole | None = None
    after: MadeHole | None = None
    by: float = 0.0
    """How far it moved, or how much it is deeper or wider; mm."""
    cure: HoleCure

    @property
    def hole(self) -> MadeHole:
        """The hole as it is now, or as it was."""
        found = self.after or self.before
        assert found is not None, "a change is of a hole"
        return found


def compare_holes(before: Sequence[MadeHole], after: Sequence[MadeHole]) -> tuple[HoleChange, ...]:
    """Tell what became of each hole; those that stayed as they were are left out."""
    was = grouped((_where(hole), hole) for hole in before)
    now = grouped((_where(hole), hole) for hole in after)
    pairs: list[tuple[MadeHole | None, MadeHole | None]] = []
    for where in dict.fromkeys([*was, *now]):
        pairs += _paired(was.get(where, []), now.get(where, []))
    changed = [(old, new) for old, new in pairs if not _alike(old, new)]
    empty = [old for old, new in changed if old and (new is None or apart(old, new) > SAME_FIGURE)]
    return tuple(_change(old, new, empty) for old, new in changed)


def _where(hole: MadeHole) -> tuple[str, ...]:
    """Tell which holes may be one: those for one thing in one face."""
    return hole.face, hole.side or "", hole.purpose


def _paired(
    before: Sequence[MadeHole], after: Sequence[MadeHole]
) -> list[tuple[MadeHole | None, MadeHole | None]]:
    """Put each hole of before to the nearest of after, the nearest pair first; those for the same
    part before all others, so that a row that moves as one stays one."""
    near = sorted(
        (apart(old, new) > SAME_FIGURE, old.serves != new.serves, apart(old, new), one, other)
        for one, old in enumerate(before)
        for other, new in enumerate(after)
        if apart(old, new) <= FAR
    )
    of_before: dict[int, int] = {}
    taken: set[int] = set()
    for *_, one, other in near:
        if one not in of_before and other not in taken:
            of_before[one] = other
            taken.add(other)
    pairs: list[tuple[MadeHole | None, MadeHole | None]] = [
        (old, after[of_before[one]] if one in of_before else None) for one, old in enumerate(before)
    ]
    return [*pairs, *((None, new) for other, new in enumerate(after) if other not in taken)]


def apart(one: MadeHole, other: MadeHole) -> float:
    """Give how far two holes stand apart, mm."""
    return hypot(one.x - other.x, one.y - other.y)


def _alike(old: MadeHole | None, new: MadeHole | None) -> bool:
    if old is None or new is None:
        return False
    return apart(old, new) <= SAME_FIGURE and _as_big(old, new) and _as_deep(old, new)


def _as_big(old: MadeHole, new: MadeHole) -> bool:
    return abs(old.diameter - new.diameter) <= SAME_FIGURE


def _as_deep(old: MadeHole, new: MadeHole) -> bool:
    both = (old.depth is None) == (new.depth is None)
    return both and abs((old.depth or 0.0) - (new.depth or 0.0)) <= SAME_FIGURE


def _change(old: MadeHole | None, new: MadeHole | None, empty: Iterable[MadeHole]) -> HoleChange:
    """Say what became of a hole; `empty`: those that are left where nothing is now."""
    if new is None:
        assert old is not None, "one of the two is there"
        kept: HoleCure = "beside" if old.purpose == "cup" else "leave"
        return HoleChange(kind="gone", before=old, cure="shows" if _seen(old) else kept)
    if old is None or apart(old, new) > HAND + SLACK or (_as_big(old, new) and _as_deep(old, new)):
        return _moved(old, new, empty)
    by = 0.0 if None in (old.depth, new.depth) else (new.depth or 0.0) - (old.depth or 0.0)
    kind: HoleKind
    cure: HoleCure
    if new.diameter < old.diameter - SAME_FIGURE:
        kind, cure, by = "narrower", "plug", old.diameter - new.diameter
    elif new.diameter > old.diameter + SAME_FIGURE:
        kind, cure, by = "wider", "bore-out", new.diameter - old.diameter
    elif new.depth is None:
        kind, cure = "through", "bore-on"
    elif old.depth is None:
        kind, cure = "blind", "shows" if _seen(old) else "leave"
    elif by > 0:
        kind, cure = "deeper", "bore-on"
    else:
        kind, cure, by = "shallower", "leave", -by
    return HoleChange(kind=kind, before=old, after=new, by=round(by, 4), cure=cure)


def _moved(old: MadeHole | None, new: MadeHole, empty: Iterable[MadeHole]) -> HoleChange:
    cuts = any(
        each.face == new.face
        and each.side == new.side
        and apart(each, new) < (each.diameter + new.diameter) / 2 - SLACK
        for each in empty
    )
    if old is None:
        return HoleChange(kind="new", after=new, cure="plug" if cuts else "bore")
    by = apart(old, new)
    cure: HoleCure = "plug" if cuts else "beside"
    if by <= HAND + SLACK:
        cure = "by-hand"
    elif _seen(old):
        cure = "shows"
    return HoleChange(kind="moved", before=old, after=new, by=round(by, 4), cure=cure)


def _seen(hole: MadeHole) -> bool:
    """Tell whether a hole is seen on a front's face when all is done."""
    return hole.face == "front" or (hole.face == "back" and hole.depth is None)
