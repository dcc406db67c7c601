"""What comes into and onto each box once it stands: drawer boxes, doors, the fronts of drawers.

Drawer boxes and rollouts from below, so that none is carried over another; fronts from below too,
each on shims of the gap to the one under it. What is held back has no place here yet. Common
practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from jigs.box.parts import Front, Layout
from jigs.ground.grouped import grouped
from jigs.room.hanging import Hanging
from jigs.room.seen import Seen


@dataclass(frozen=True, slots=True, kw_only=True)
class Shimmed:
    """A front, and the gap under it to another one; None where none is below. mm."""

    id: str
    gap: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Furnished:
    """What a box gets, in the order of the work; all by ID."""

    box: str
    drawers: tuple[str, ...]
    """Drawer boxes and rollouts, from below."""
    doors: tuple[str, ...]
    """Doors and lifts, from the left and from above."""
    fronts: tuple[tuple[Shimmed, ...], ...]
    """The other fronts of each column, from below."""
    held: tuple[str, ...]


def furnish_boxes(layout: Layout, hanging: Hanging) -> tuple[Furnished, ...]:
    """Give what each box of a wall gets, those alone that get something, in the order in which
    they are set; an appliance's panel last."""
    fronts = grouped((front.box, front) for front in layout.fronts)
    order = [setting.seen for setting in hanging.order]
    turned = {seen.box.id for seen in order}
    order += [seen for seen in hanging.elevation.boxes if seen.box.id not in turned]
    made = (_furnish(layout, seen, fronts.get(seen.box.id, ())) for seen in order)
    return tuple(each for each in made if each.drawers or each.doors or each.fronts or each.held)


def _furnish(layout: Layout, seen: Seen, fronts: Sequence[Front]) -> Furnished:
    name = seen.box.id
    ready = [front for front in fronts if not front.withheld]
    runners = [(front.place.y, front.drawer.id) for front in ready if front.drawer is not None]
    rollouts = [each for each in layout.rollouts if each.box == name]
    runners += [(each.y, each.id) for each in rollouts if not each.withheld]
    doors = [front for front in ready if front.kind in ("door", "lift")]
    others = [front for front in ready if front.kind not in ("door", "lift")]
    held = [front.id for front in fronts if front.withheld]
    held += [each.id for each in rollouts if each.withheld]
    return Furnished(
        box=name,
        drawers=tuple(id for _, id in sorted(runners)),
        doors=tuple(f.id for f in sorted(doors, key=lambda f: (f.place.x, -f.place.y))),
        fronts=tuple(
            tuple(_shimmed(front, fronts) for front in sorted(column, key=lambda f: f.place.y))
            for _, column in sorted(grouped((f.place.column, f) for f in others).items())
        ),
        held=tuple(held),
    )


def _shimmed(front: Front, fronts: Sequence[Front]) -> Shimmed:
    """Give a front with its gap to a front below it."""
    under = [
        front.place.y - other.place.y - other.height
        for other in fronts
        if other.place.y + other.height <= front.place.y
        and other.place.x < front.place.x + front.width
        and front.place.x < other.place.x + other.width
    ]
    return Shimmed(id=front.id, gap=min(under, default=None))
