"""What a job needs of hardware and screws, counted from what is drilled and what is cut.

A screw has a length where the job fixes it: through a front into a pull, through a drawer box
into its front, through a rail into a false front. Where the fitting or the jig decides, it has
none, and its leaflet says. Spares: one more to each ten begun, since one is always dropped,
stripped or bent; none of slides, which come in pairs (common practice, no source).

>>> spare_for("hinge", 10), spare_for("hinge", 11), spare_for("slide", 8)
(1, 2, 0)
"""

import math
from collections import Counter
from collections.abc import Container, Iterable
from typing import Literal

from msgspec import Struct

from jigs.box.parts import Front, Layout
from jigs.cutlist.cutlist import Cut
from jigs.cutlist.totals import count_pockets
from jigs.given.kinds import kind_of
from jigs.ground.geometry import SLACK, Fitting
from jigs.ground.grouped import grouped

ItemGroup = Literal[
    "hinge", "plate", "slide", "spacer", "pull", "bumper", "latch", "fitting", "screw", "pin"
]
GROUPS: tuple[ItemGroup, ...] = (
    "hinge", "plate", "slide", "spacer", "pull", "bumper", "latch", "fitting", "screw", "pin",
)  # fmt: skip
TEN = 10
BUMPERS = 2
"""Bumpers of a door or a drawer front (common practice, no source)."""
MAKERS_SCREWS = 4
"""Screws of a front whose drawer box its maker bored (common practice, no source)."""
PINS = 4
"""Pins of an adjustable shelf."""


class Item(Struct, frozen=True, kw_only=True):
    """Hardware of one kind: its record's name, a `fitting`'s kind, or a screw's use (`cup`,
    `plate`, `slide`, `pull`, `front-fixing`, `false-front`, `pocket`); a size in mm where it is
    bought by one (a plate's height, a slide's or a screw's length, a spacer's thickness); the
    `board` that pocket screws hold, mm; how many are needed and how many more are bought.
    `doors`: those that a hinge is for, where the job has several hinges.
    `stated`: False for plates of a hinge that lists none: the size is what the overlay wants."""

    group: ItemGroup
    name: str
    size: float | None
    count: int
    spare: int
    board: float | None = None
    stated: bool = True
    doors: tuple[str, ...] = ()


class _Key(Struct, frozen=True, order=True):
    place: int
    name: str
    size: float
    board: float = 0.0
    stated: bool = True


def spare_for(group: ItemGroup, count: int) -> int:
    """Give how many to buy beyond what is needed: of spacers, which are cut to size, none."""
    return 0 if group in ("slide", "spacer") else math.ceil(count / TEN)


def count_items(
    layout: Layout, ready: Iterable[Front], cut: Cut, pushed: Container[str]
) -> tuple[Item, ...]:
    """Count the hardware of the fronts that are ready, and of the rollouts that are; the shelf
    pins of all boxes; the screws, those of pockets from the pieces still to be cut.
    `pushed`: the IDs of fronts on a push latch."""
    on_sides = grouped(
        (fitting.part, fitting)
        for side in layout.sides
        for fitting in side.fittings
        if fitting.part is not None
    )
    counts: Counter[_Key] = Counter()
    doors: dict[str, list[str]] = {}
    for front in ready:
        if front.hinge is not None and any(f.kind == "plate" for f in on_sides.get(front.id, ())):
            doors.setdefault(front.hinge.record, []).append(front.id)
        _count_front(counts, front, on_sides.get(front.id, []))
        _count_stops(counts, front, layout.job.build.bumper, pushed=front.id in pushed)
    for rollout in layout.rollouts:
        if not rollout.held:
            slides = on_sides.get(rollout.id, [])
            _count_slides(counts, slides, rollout.slide, rollout.slide_length)
            for spacer in (rollout.spacer_left, rollout.spacer_right):
                _add(counts, "spacer", int(spacer > SLACK), size=spacer)
    _add(counts, "pin", PINS * sum(p.count for p in cut.pieces if p.kind == "shelf"))
    for board, screws in count_pockets(cut.to_cut).items():
        _add(counts, "screw", screws, "pocket", board=board)
    hinge = GROUPS.index("hinge")
    return tuple(
        Item(
            group=GROUPS[key.place],
            name=key.name,
            size=key.size or None,
            count=count,
            spare=spare_for(GROUPS[key.place], count),
            board=key.board or None,
            stated=key.stated,
            doors=tuple(doors[key.name]) if key.place == hinge and len(layout.hinges) > 1 else (),
        )
        for key, count in sorted(counts.items())
        if count
    )


def _add(
    counts: Counter[_Key],
    group: ItemGroup,
    count: int,
    name: str = "",
    size: float = 0.0,
    board: float = 0.0,
    stated: bool = True,
) -> None:
    counts[_Key(GROUPS.index(group), name, size, board, stated)] += count


def _count_front(counts: Counter[_Key], front: Front, on_sides: Iterable[Fitting]) -> None:
    """Add what one front needs."""
    hinges = sum(fitting.kind == "plate" for fitting in on_sides)
    if front.hinge is not None and hinges:
        _add(counts, "hinge", hinges, front.hinge.record)
        choice = front.hinge
        size = choice.plate if choice.plate_stated else round(choice.plate, 1)
        _add(counts, "plate", hinges, choice.record, size, stated=choice.plate_stated)
        _add(counts, "screw", 2 * hinges, "cup")
        _add(counts, "screw", 2 * hinges, "plate")
    if front.drawer is not None:
        if front.drawer.maker_bored:
            _add(counts, "screw", MAKERS_SCREWS, "front-fixing", front.screws.fixing or 0.0)
        _count_slides(counts, on_sides, front.drawer.slide, front.drawer.slide_length)
    for fitting in (*front.fittings, *on_sides):
        if kind_of(fitting).bought == "each-hole":
            _add(counts, "fitting", len(fitting.holes), fitting.kind)
    for fitting in front.fittings:
        if fitting.kind == "pull":
            _add(counts, "pull", 1, fitting.record or "")
            _add(counts, "screw", len(fitting.holes), "pull", front.screws.pull or 0.0)
        elif fitting.kind == "front-fixing":
            use = "front-fixing" if front.drawer is not None else "false-front"
            _add(counts, "screw", len(fitting.holes), use, front.screws.fixing or 0.0)


def _count_stops(counts: Counter[_Key], front: Front, bumper: float, *, pushed: bool) -> None:
    """Add what a front closes against: bumpers, or the push latch that wants the room to itself."""
    if pushed:
        _add(counts, "latch", 1)
    elif front.kind in ("door", "drawer", "pullout", "lift"):
        _add(counts, "bumper", BUMPERS, size=bumper)


def _count_slides(
    counts: Counter[_Key], on_sides: Iterable[Fitting], record: str, length: float
) -> None:
    """Add one pair of slides, and the screws of both in the box's sides."""
    slides = [fitting for fitting in on_sides if fitting.kind == "slide"]
    if slides:
        _add(counts, "slide", 1, record, length)
        _add(counts, "screw", sum(len(f.holes) + len(f.carry) for f in slides), "slide")
