"""What is to be bought for a job: fronts, drawer boxes, hardware, screws, band, paint; and the rows
of the supplier's list.

Fronts are ordered from finished boxes, not from the plan, at their finished sizes. Those in hand
are not ordered again: they stand in the delivered list, or the job states their sizes as measured.
Those delivered beyond their limits are. What is held back is left out, with all that belongs to it.

The supplier's list has a pair as one row of two leaves, and boxes where a list can say them. A
front list that stands alone works its boxes out from their fronts, stacked in one column of one
width. What has an opening, several columns or fronts of different widths is more than that; its
rows name no box, so that each front is read back as one by itself.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.drawerbox import AnyDrawer, Rollout
from jigs.box.frontgaps import GapsMade, measure_gaps
from jigs.box.parts import Front, Layout
from jigs.box.unchecked import Unchecked, list_unchecked
from jigs.cutlist.cutlist import Cut
from jigs.cutlist.totals import Banding, add_banding
from jigs.given.build import PaintNeed, litres_for, painted_area
from jigs.given.confirming import OpenNumber, open_numbers
from jigs.given.ids import name_leaves
from jigs.given.job import BoxSpec, FrontSpec, Job, Reveal
from jigs.given.listspec import shares_width
from jigs.ground.geometry import Hole
from jigs.ground.grouped import grouped
from jigs.ground.problems import REFUSALS, Problem, is_to_order
from jigs.order.needed import Item, count_items

SAME = 0.01
"""Drawer boxes whose sizes differ by less are alike; mm."""

BoxState = Literal["measured", "differs", "built", "planned", "place"]
"""How far the box behind a front is: built and its width and height measured; built, and measured
otherwise than the job says; built; neither; or no box at all but an appliance's place."""


class FrontOrder(Struct, frozen=True, kw_only=True):
    """One front as it is ordered: finished width (along the floor) and height, thickness, mm.

    `bored`: the supplier bores its cups, `cups_at` above its bottom edge, their rims `tab` from
    its hinge edge (None: not said). `box_state`: of the box that it is ordered from. `again`: why
    what was delivered is refused, () where nothing was. `rubs`: a gap beside it surely
    rubs, so that it is not to be made as it is. `grained`: a grain, which it has unless
    it is of mdf, runs with its height (common practice, no source).
    """

    front: Front
    spec: FrontSpec
    width: float
    height: float
    thickness: float
    bored: bool
    cups_at: tuple[float, ...] = ()
    tab: float | None = None
    box_state: BoxState = "planned"
    again: tuple[Problem, ...] = ()
    rubs: bool = False
    grained: bool = False


class DrawerBoxOrder(Struct, frozen=True, kw_only=True):
    """Drawer boxes of one size: outside width, height, length, side thickness, the recess under
    the bottom, the notch at the back (width, height), the slide that they run on and its nominal
    length; mm; the left `hook`'s hole in the back, None where there is none; and whose they are."""

    parts: tuple[str, ...]
    width: float
    height: float
    length: float
    side: float
    recess: float
    notch: tuple[float, float] | None
    slide: str
    slide_length: float
    hook: Hole | None = None


class HeldBack(Struct, frozen=True, kw_only=True):
    """A front or rollout that is not ordered yet, its box, and why."""

    id: str
    box: str
    why: tuple[Problem, ...]
    front: bool = True
    """Whether it is a front, and not a rollout."""


class Order(Struct, frozen=True, kw_only=True):
    """All that is to be bought. `unbuilt`: boxes with fronts that are not marked as built and
    measured, `unmeasured`: those built of which no width or height is stated, `differing`: those
    built to other sizes than the job's, from which their fronts are computed; `built`: boxes
    whose band and screws are not counted any more; `arrived`: fronts in hand; `boxes_made`:
    drawer boxes are cut from the parts list and not bought; `open`: the open numbers of what
    is bought; `gaps`: those that the fronts' sizes make; `unchecked`: what nothing says."""

    fronts: tuple[FrontOrder, ...]
    drawer_boxes: tuple[DrawerBoxOrder, ...]
    items: tuple[Item, ...]
    banding: tuple[Banding, ...]
    paint: tuple[PaintNeed, ...]
    held: tuple[HeldBack, ...]
    unbuilt: tuple[str, ...]
    unmeasured: tuple[str, ...]
    differing: tuple[str, ...]
    built: tuple[str, ...]
    arrived: tuple[str, ...]
    boxes_made: bool
    open: tuple[OpenNumber, ...] = ()
    gaps: GapsMade | None = None
    unchecked: tuple[Unchecked, ...] = ()


def fronts_held(order: Order) -> tuple[HeldBack, ...]:
    """Give the fronts that the supplier's list leaves out, not known yet in all."""
    return tuple(held for held in order.held if held.front)


def make_order(layout: Layout, cut: Cut) -> Order:
    """Work out what a job needs; `cut` is its cut list, for band, screws and shelf pins."""
    arrivals = layout.job.delivery.arrivals if layout.job.delivery else {}
    ready = [front for front in layout.fronts if not front.withheld]
    specs = {
        name: spec
        for box in layout.boxes
        for spec in box.fronts
        for name in (name_leaves(spec.id) if spec.kind == "pair" else (spec.id,))
    }
    off = {problem.part for problem in layout.problems if problem.code == "box-differs"}
    states = {box.id: state_of(box, differs=box.id in off) for box in layout.boxes}
    all_here = layout.job.gaps.fronts_in_hand
    here = {f.id for f in layout.fronts if all_here or f.id in arrivals or f.ordered}
    rubs = {problem.part for problem in layout.problems if is_to_order(problem)}
    wanted = [f for f in layout.fronts if (f.id not in here and not f.withheld) or _refused(f)]
    stopped = [part for part in layout.units if part.withheld and not _refused(part)]
    hung = {front.box for front in wanted} | {part.box for part in stopped}
    pushed = {name for name, spec in specs.items() if spec.opened_by.push_latch}
    items = count_items(layout, ready, cut, pushed)
    return Order(
        fronts=tuple(_front(layout, front, specs[front.id], states, rubs) for front in wanted),
        drawer_boxes=_drawer_boxes(layout, ready),
        items=items,
        banding=add_banding(cut.to_cut),
        paint=_paint(layout, ready),
        held=tuple(
            HeldBack(id=part.id, box=part.box, why=part.held, front=isinstance(part, Front))
            for part in stopped
        ),
        unbuilt=tuple(box for box in states if box in hung and states[box] == "planned"),
        unmeasured=tuple(box for box in states if box in hung and states[box] == "built"),
        differing=tuple(box for box in states if box in hung and states[box] == "differs"),
        built=tuple(dict.fromkeys(p.box for p in cut.pieces if p.box and p.id in cut.standing)),
        arrived=tuple(f.id for f in ready if f.id in here),
        boxes_made=layout.job.build.drawer_boxes != "ordered",
        open=tuple(_open_of(layout, items)),
        gaps=measure_gaps(layout),
        unchecked=list_unchecked(layout),
    )


def _open_of(layout: Layout, items: Iterable[Item]) -> Iterator[OpenNumber]:
    """Give the open numbers of the hardware that is bought."""
    for item in items:
        for kind, records in layout.job.records.items():
            if item.group == kind and item.name in records:
                yield from open_numbers(records[item.name])


def state_of(box: BoxSpec, *, differs: bool = False) -> BoxState:
    """Say how far a box is that fronts are ordered from; `differs`: the check has found it built
    otherwise than the job says."""
    if box.is_place:
        return "place"
    if not box.built:
        return "planned"
    if differs:
        return "differs"
    return "measured" if box.measured.width and box.measured.height else "built"


def _refused(part: Front | Rollout) -> bool:
    """Tell whether all that holds a front back is what was delivered for it."""
    return part.withheld and all(problem.code in REFUSALS for problem in part.held)


def _front(
    layout: Layout,
    front: Front,
    spec: FrontSpec,
    states: Mapping[str, BoxState],
    rubs: Collection[str | None],
) -> FrontOrder:
    job = layout.job
    width, height = front.ordered or (front.width, front.height)
    arrival = job.delivery.arrivals.get(front.id) if job.delivery else None
    return FrontOrder(
        front=front,
        spec=spec,
        width=width,
        height=height,
        thickness=arrival.thickness if arrival else front.make.thickness,
        bored=front.bored,
        cups_at=(spec.hung.hinges_at or ()) if front.bored else (),
        tab=spec.boring.bored_tab if front.bored else None,
        box_state=states[front.box],
        again=front.held,
        rubs=front.id in rubs,
        grained=job.material.front_kind != "mdf",
    )


def _drawer_boxes(layout: Layout, ready: Iterable[Front]) -> tuple[DrawerBoxOrder, ...]:
    """Give the drawer boxes, those of one size together."""
    boxes: list[AnyDrawer] = [f.drawer for f in ready if f.drawer is not None]
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
            slide=box.slide,
            slide_length=box.slide_length,
            hook=box.rear[0].holes[0] if box.rear else None,
        )
        place = next((n for n, other in enumerate(found) if _alike(other, order)), None)
        if place is None:
            found.append(order)
        else:
            found[place] = replace(order, parts=(*found[place].parts, box.id))
    return tuple(found)


def _alike(one: DrawerBoxOrder, other: DrawerBoxOrder) -> bool:
    sizes = zip(_sizes(one), _sizes(other), strict=True)
    same = (one.notch, one.slide, one.hook) == (other.notch, other.slide, other.hook)
    return same and all(abs(a - b) < SAME for a, b in sizes)


def _sizes(box: DrawerBoxOrder) -> tuple[float, ...]:
    return box.width, box.height, box.length, box.side, box.recess


def _paint(layout: Layout, ready: Iterable[Front]) -> tuple[PaintNeed, ...]:
    """Add up the areas by finish; of fronts that come painted there is none."""
    if not layout.job.paint.here:
        return ()
    found: dict[str, list[float]] = {}
    for front in ready:
        width, height = front.ordered or (front.width, front.height)
        found.setdefault(front.make.finish, []).append(
            painted_area(width, height, front.make.thickness)
        )
    return tuple(
        PaintNeed(
            finish=finish,
            fronts=len(areas),
            area=sum(areas),
            litres=litres_for(sum(areas), layout.job.paint),
        )
        for finish, areas in sorted(found.items())
    )


class SupplierRow(Struct, frozen=True, kw_only=True):
    """One row: its ID and kind, how many leaves of this size it brings, the order of one of them,
    and the box that a list read back may build from it, "" where none."""

    id: str
    kind: str
    leaves: int
    order: FrontOrder
    box: str


def supplier_rows(order: Order, job: Job) -> tuple[SupplierRow, ...]:
    """Give the rows of the fronts to be ordered, in the job's order."""
    rows = tuple(_rows(order))
    own = grouped((row.box, row) for row in rows)
    plain = {box.id for box in job.boxes if box.id in own and _is_plain(box, own[box.id])}
    return tuple(row if row.box in plain else replace(row, box="") for row in rows)


def _rows(order: Order) -> Iterator[SupplierRow]:
    fronts = {front.front.id: front for front in order.fronts}
    for name, one in fronts.items():
        if one.spec.kind == "pair":
            left, right = (fronts.get(leaf) for leaf in name_leaves(one.spec.id))
            if left and right:
                if left is one:
                    both = replace(one, rubs=left.rubs or right.rubs)
                    yield SupplierRow(
                        id=one.spec.id, kind="pair", leaves=2, order=both, box=one.front.box
                    )
                continue
        yield SupplierRow(id=name, kind=one.front.kind, leaves=1, order=one, box=one.front.box)


def _is_plain(box: BoxSpec, rows: list[SupplierRow]) -> bool:
    """Tell whether the rows of a box, one below the other, make up a box by themselves."""
    if box.columns or any(front.kind == "opening" for front in box.fronts):
        return False
    listed = [
        FrontSpec(
            id=row.id,
            kind="pair" if row.kind == "pair" else row.order.front.kind,
            width=row.order.width,
        )
        for row in rows
    ]
    return all(shares_width(front, listed[0], Reveal().between) for front in listed)
