"""Holes given by hand: the hole groups of fittings that the tool does not know.

Lift and folding fittings, the frame of a pullout, the hinges of a tilting front: their holes
come from the leaflet in the box of the hardware, in a front (`[[box.front.hole]]`) or in the
boards beside it (`[[box.hole]]`). The tool computes nothing for them; it checks that they lie in
the wood and away from other holes, and prints them.

>>> bracket = HandHole(x=60.0, y=100.0, diameter=5.0, depth=12.0, face="back", purpose="bracket",
...                    mirrored=True)
>>> [hole.x for hole in spread([bracket], width=377.8)]
[60.0, 317.8]
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from math import hypot

from jigs.box.boards import FaceKey
from jigs.box.fronts import PlacedFront
from jigs.fittings.kinds import KINDS
from jigs.given.handholes import HandHole
from jigs.given.job import BoxSpec
from jigs.ground.geometry import SLACK, Fitting, Hand, Hole, mirror_x

GROUP = 100.0
"""Holes by hand this near to each other belong to one piece of hardware; mm (common practice)."""


def holds_kit(holes: Iterable[HandHole]) -> bool:
    """Tell whether some of these holes can hold a front: those in its back, or right through."""
    return any(
        hole.kind == "manual" and (hole.face == "back" or hole.depth is None) for hole in holes
    )


def spread(holes: Iterable[HandHole], *, width: float) -> Iterator[HandHole]:
    """Give the holes of a front `width` mm wide, the mirrored ones on both its halves."""
    for hole in holes:
        yield hole
        across = mirror_x(hole.x, width)
        if hole.mirrored and abs(across - hole.x) > SLACK:
            yield replace(hole, x=across)


def front_by_hand(front: PlacedFront) -> tuple[Fitting, ...]:
    """Give the holes stated by hand in a front; in a leaf of a pair, those meant for it."""
    leaf = front.hinged if front.spec.kind == "pair" else None
    mine = [hole for hole in front.spec.holes if hole.leaf in (None, leaf)]
    return group_by_hand(spread(mine, width=front.width), front.id, height=front.height)


def boards_by_hand(
    box: BoxSpec, fronts: Sequence[PlacedFront]
) -> tuple[dict[FaceKey, list[Fitting]], tuple[str, ...]]:
    """Give the holes stated by hand in the boards of a box, face by face, and the fronts that
    some of them name and that are not there. Heights count from the box's bottom end; those that
    are stated from the top count from that of its sides, in a partition too."""
    by_name: dict[tuple[str, Hand], PlacedFront] = {}
    for front in fronts:
        for hand in ("left", "right"):
            by_name[front.id, hand] = front
        if front.spec.kind == "pair" and front.hinged:
            by_name[front.spec.id, front.hinged] = front
    groups: dict[tuple[FaceKey, str], list[HandHole]] = {}
    unknown: dict[str, None] = {}
    for item in box.holes:
        served = by_name.get((item.front, item.hand))
        if served is None:
            unknown[item.front] = None
            continue
        column = served.place.column if item.hand == "left" else served.place.last_column
        groups.setdefault(((column, item.hand), served.id), []).append(item.hole)
    work: dict[FaceKey, list[Fitting]] = {}
    for (face, part), holes in groups.items():
        work.setdefault(face, []).extend(group_by_hand(holes, part, height=box.height))
    return work, tuple(unknown)


def group_by_hand(holes: Iterable[HandHole], part: str, *, height: float) -> tuple[Fitting, ...]:
    """Give the holes stated by hand in a part `height` mm high, those near each other in one face
    and stated from the same end as one fitting."""

    def beside(one: HandHole, other: HandHole) -> bool:
        alike = (one.kind, one.face, one.stated_from) == (
            other.kind,
            other.face,
            other.stated_from,
        )
        apart = hypot(one.x - other.x, one.up(height) - other.up(height))
        return alike and apart <= GROUP

    groups: list[list[HandHole]] = []
    for hole in holes:
        near = [group for group in groups if any(beside(hole, other) for other in group)]
        groups = [group for group in groups if group not in near]
        groups.append([*(other for group in near for other in group), hole])
    groups.sort(key=lambda group: (group[0].face, min((h.up(height), h.x) for h in group)))
    kinds = [group[0].kind for group in groups]
    numbered = [
        (group, kinds[:place].count(kind), kinds.count(kind))
        for place, (group, kind) in enumerate(zip(groups, kinds, strict=True), start=1)
    ]
    return tuple(
        Fitting(
            kind=group[0].kind,
            index=index,
            count=count,
            part=part,
            record=None,
            holes=tuple(
                Hole(
                    purpose=KINDS[hole.kind].holes[0],
                    face=hole.face,
                    x=hole.x,
                    y=hole.up(height),
                    diameter=hole.diameter,
                    depth=hole.depth,
                )
                for hole in group
            ),
            note=", ".join(
                dict.fromkeys(h.purpose for h in group if h.purpose and h.kind == "manual")
            ),
            stated_from=group[0].stated_from,
        )
        for group, index, count in numbered
    )
