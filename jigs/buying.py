"""What is to be bought for a job: fronts, drawer boxes, hardware, screws, band, paint.

Counts are what the job needs; `spare` is what is bought beyond that, since one is always dropped:
one hinge, plate or pull to each ten begun, a tenth of screws and bumpers (common practice, no
source). Fronts are ordered from finished boxes, not from the plan.
"""

import math
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from jigs.cutlist.cutlist import Cut
from jigs.cutlist.totals import Banding, add_banding
from jigs.geometry import Fitting
from jigs.job import FrontSpec
from jigs.paint import PaintNeed, litres_for, painted_area
from jigs.parts import DrawerBox, Front, Layout
from jigs.rolloutspec import Rollout

Group = Literal["hinge", "plate", "slide", "pull", "bumper", "screw", "pin"]
GROUPS: tuple[Group, ...] = ("hinge", "plate", "slide", "pull", "bumper", "screw", "pin")
SAME = 0.01
"""Drawer boxes whose sizes differ by less are alike; mm."""
TEN = 10
BUMPERS = 2
"""Bumpers of a door or a drawer front (common practice, no source)."""
PINS = 4
"""Pins of an adjustable shelf."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontOrder:
    """One front as it is ordered: finished width (along the floor) and height, thickness, mm.
    `bored`: the supplier bores its cups, `cups_at` above its bottom edge, their rims `tab` from
    its hinge edge (None: not said)."""

    front: Front
    width: float
    height: float
    bored: bool
    cups_at: tuple[float, ...] = ()
    tab: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerBoxOrder:
    """Drawer boxes of one size: outside width, height, length, side thickness, the recess under
    the bottom, the notch at the back (width, height); mm; and whose they are."""

    parts: tuple[str, ...]
    width: float
    height: float
    length: float
    side: float
    recess: float
    notch: tuple[float, float] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """Hardware of one kind: its record's name, a size in mm where it is bought by one (a plate's
    height, a screw's length), how many are needed and how many more are bought."""

    group: Group
    name: str
    size: float | None
    count: int
    spare: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """All that is to be bought. `held`: fronts that are not ordered yet; `unbuilt`: boxes that
    are not marked as built and measured; `boxes_made`: drawer boxes are cut from the parts list."""

    fronts: tuple[FrontOrder, ...]
    drawer_boxes: tuple[DrawerBoxOrder, ...]
    items: tuple[Item, ...]
    banding: tuple[Banding, ...]
    paint: tuple[PaintNeed, ...]
    held: tuple[str, ...]
    unbuilt: tuple[str, ...]
    boxes_made: bool


def spare_for(group: Group, count: int) -> int:
    """Give how many to buy beyond what is needed.

    >>> spare_for("hinge", 10), spare_for("hinge", 11), spare_for("slide", 8)
    (1, 2, 0)
    """
    if group == "slide":
        return 0
    return math.ceil(count / TEN)


def make_order(layout: Layout, cut: Cut) -> Order:
    """Work out what a job needs; `cut` is its cut list, for band and shelf pins."""
    held = {front.id for front in layout.fronts if front.withheld}
    ready = [front for front in layout.fronts if front.id not in held]
    hung = {front.box for front in layout.fronts}
    specs = {spec.id: spec for box in layout.boxes for spec in box.fronts}
    return Order(
        fronts=tuple(_front(front, specs.get(front.id)) for front in ready),
        drawer_boxes=_drawer_boxes(layout, ready),
        items=_items(layout, ready, cut),
        banding=add_banding(cut.pieces),
        paint=_paint(layout, ready),
        held=tuple(front.id for front in layout.fronts if front.id in held),
        unbuilt=tuple(box.id for box in layout.boxes if box.id in hung and not box.built),
        boxes_made=layout.job.build.drawer_boxes == "made",
    )


def _front(front: Front, spec: FrontSpec | None) -> FrontOrder:
    width, height = front.ordered or (front.width, front.height)
    bored = spec if front.bored else None
    return FrontOrder(
        front=front,
        width=width,
        height=height,
        bored=front.bored,
        cups_at=(bored.hinges_at or ()) if bored else (),
        tab=bored.bored_tab if bored else None,
    )


def _drawer_boxes(layout: Layout, ready: Iterable[Front]) -> tuple[DrawerBoxOrder, ...]:
    """Give the drawer boxes, those of one size together."""
    boxes: list[DrawerBox | Rollout] = [f.drawer for f in ready if f.drawer is not None]
    boxes += [rollout for rollout in layout.rollouts if not rollout.held]
    found: list[DrawerBoxOrder] = []
    for box in boxes:
        order = DrawerBoxOrder(
            parts=(box.id,),
            width=box.width,
            height=box.height,
            length=box.length,
            side=box.side,
            recess=box.recess,
            notch=box.notch,
        )
        place = next((n for n, other in enumerate(found) if _alike(other, order)), None)
        if place is None:
            found.append(order)
        else:
            found[place] = replace(order, parts=(*found[place].parts, box.id))
    return tuple(found)


def _alike(one: DrawerBoxOrder, other: DrawerBoxOrder) -> bool:
    sizes = zip(_sizes(one), _sizes(other), strict=True)
    return one.notch == other.notch and all(abs(a - b) < SAME for a, b in sizes)


def _sizes(box: DrawerBoxOrder) -> tuple[float, ...]:
    return box.width, box.height, box.length, box.side, box.recess


def _items(layout: Layout, ready: Iterable[Front], cut: Cut) -> tuple[Item, ...]:
    """Count the hardware, the screws by their lengths, the bumpers and the shelf pins."""
    on_sides: dict[str, list[Fitting]] = {}
    for side in layout.sides:
        for fitting in side.fittings:
            if fitting.part is not None:
                on_sides.setdefault(fitting.part, []).append(fitting)
    counts: Counter[tuple[Group, str, float]] = Counter()
    for front in ready:
        _count_front(counts, front, on_sides.get(front.id, []), layout.job.build.bumper)
    for rollout in layout.rollouts:
        if not rollout.held:
            _count_slides(counts, on_sides.get(rollout.id, []))
    shelves = sum(piece.count for piece in cut.pieces if piece.kind == "shelf")
    counts["pin", "", 0.0] = PINS * shelves
    return tuple(
        Item(group=group, name=name, size=size or None, count=n, spare=spare_for(group, n))
        for (group, name, size), n in sorted(
            counts.items(), key=lambda item: (GROUPS.index(item[0][0]), *item[0][1:])
        )
        if n
    )


def _count_front(
    counts: Counter[tuple[Group, str, float]],
    front: Front,
    on_sides: Iterable[Fitting],
    bumper: float,
) -> None:
    """Add what one front needs."""
    hinges = sum(fitting.kind == "plate" for fitting in on_sides)
    if front.hinge is not None and hinges:
        counts["hinge", front.hinge.record, 0.0] += hinges
        counts["plate", front.hinge.record, front.hinge.plate] += hinges
        counts["screw", "cup", 0.0] += 2 * hinges
        counts["screw", "plate", 0.0] += 2 * hinges
    _count_slides(counts, on_sides)
    for fitting in front.fittings:
        if fitting.kind == "pull":
            counts["pull", fitting.record or "", 0.0] += 1
            counts["screw", "pull", front.screw_pull or 0.0] += len(fitting.holes)
        elif fitting.kind == "front-fixing":
            counts["screw", "front-fixing", front.screw_fixing or 0.0] += len(fitting.holes)
    if front.kind in ("door", "drawer", "pullout", "lift"):
        counts["bumper", "", bumper] += BUMPERS


def _count_slides(counts: Counter[tuple[Group, str, float]], on_sides: Iterable[Fitting]) -> None:
    """Add one pair of slides, and the screws of both."""
    slides = [fitting for fitting in on_sides if fitting.kind == "slide"]
    if slides:
        counts["slide", slides[0].record or "", 0.0] += 1
        counts["screw", "slide", 0.0] += sum(len(f.holes) + len(f.carry) for f in slides)


def _paint(layout: Layout, ready: Iterable[Front]) -> tuple[PaintNeed, ...]:
    """Add up the areas by finish."""
    found: dict[str, list[float]] = {}
    for front in ready:
        width, height = front.ordered or (front.width, front.height)
        found.setdefault(front.finish, []).append(painted_area(width, height, front.thickness))
    return tuple(
        PaintNeed(
            finish=finish,
            fronts=len(areas),
            area=sum(areas),
            litres=litres_for(sum(areas), layout.job.paint),
        )
        for finish, areas in sorted(found.items())
    )
