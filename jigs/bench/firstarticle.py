"""The first article: one door and one drawer of each hardware record, tried on scrap.

Before the kitchen is drilled, the first door on each hinge and the first drawer on each slide
are made of scrap with the sheets of the job, and measured. What comes out within its limits
passes; what does not says which number of the record is wrong.
"""

from collections import Counter
from collections.abc import Iterator
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.bypart import with_open
from jigs.box.parts import Front, Layout
from jigs.fittings.hinge import OVERLAY_LIMIT, overlay_got
from jigs.given.hardware import HingeRecord, SlideRecord

LEVEL = 0.5
"""How far two edges may be out of level or out of flush, mm (common practice, no source)."""

ORDINARY_HEIGHT, ORDINARY_WIDTH = 1000.0, (250.0, 700.0)
"""Fronts outside of these are tried only where there are no others; mm (our own choice)."""


PassWhat = Literal[
    "overlay", "inset-gap", "hinge-gap", "door-up", "door-flush",
    "box-width", "box-up", "front-up", "front-flush",
]  # fmt: skip
"""What is measured: of a door its overlay, or its gap where it is inset, the gap at its hinge edge,
how high it hangs and how flush; of a drawer its box's width, how high that stands above its front's
bottom edge, how high its front does, and how flush."""


class PassMark(Struct, frozen=True, kw_only=True):
    """One thing to measure: what is wanted and between which limits it passes; mm."""

    what: PassWhat
    wanted: float
    least: float
    most: float


class FirstArticle(Struct, frozen=True, kw_only=True):
    """A front to be tried on scrap with the sides its hardware is screwed to."""

    front: Front
    boards: tuple[str, ...]
    record: HingeRecord | SlideRecord
    marks: tuple[PassMark, ...]

    @property
    def kind(self) -> Literal["hinge", "slide"]:
        """Which kind of hardware is tried."""
        return "hinge" if isinstance(self.record, HingeRecord) else "slide"

    @property
    def names(self) -> tuple[str, ...]:
        """The IDs whose sheets it needs."""
        return (self.front.id, *self.boards)


def first_articles(layout: Layout) -> tuple[FirstArticle, ...]:
    """Give the plainest front on each hinge and on each slide in use, those held back left out."""
    found: dict[tuple[str, str], FirstArticle] = {}
    standing = {side.box for side in layout.sides if side.assembled}
    rows = Counter((front.box, front.place.column, front.place.row) for front in layout.fronts)
    plainest = sorted(
        layout.fronts,
        key=lambda front: (
            front.box in standing,
            *_trouble(front),
            rows[front.box, front.place.column, front.place.row] > 1,
        ),
    )
    for front in plainest:
        for kind, article in () if front.withheld else _tries(layout, front):
            found.setdefault((kind, article.record.name), article)
    return tuple(found[key] for key in sorted(found, key=lambda key: key[0]))


def trial(layout: Layout) -> Layout:
    """Give a layout in which fronts and sides carry only the holes that the trials ask for."""
    articles = first_articles(layout)
    tried = {article.front.id for article in articles}
    boards = {board for article in articles for board in article.boards}
    tried_alone = replace(
        layout,
        fronts=tuple(
            replace(front, fittings=tuple(f for f in front.fittings if f.kind != "pull"))
            if front.id in tried
            else front
            for front in layout.fronts
        ),
        sides=tuple(
            replace(
                side,
                fittings=tuple(f for f in side.fittings if f.part in tried),
                trial_of=tuple(sorted({f.part for f in side.fittings if f.part in tried})),
            )
            if side.board in boards
            else side
            for side in layout.sides
        ),
    )
    return with_open(tried_alone)


def _trouble(front: Front) -> tuple[bool | int, ...]:
    """Tell how much trouble a front is as a trial: its box first, then the front itself.

    A single door or a drawer of a base or a wall box comes before leaves of pairs, wide drawers
    with two pulls and all that is not a plain slab.
    """
    unusual = (
        front.make.frame is not None,
        front.make.edge_radius > 0.0,
        front.make.bevel is not None,
        front.ordered is not None,
        front.bored,
        front.place.overlay != "full",
    )
    return (
        front.box_kind == "tall" or front.height > ORDINARY_HEIGHT,
        front.place.column != 1 or front.place.span != 1,
        sum(unusual),
        front.kind == "pullout",
        front.width < ORDINARY_WIDTH[0] or front.width > ORDINARY_WIDTH[1],
    )


def _tries(layout: Layout, front: Front) -> Iterator[tuple[str, FirstArticle]]:
    job = layout.job
    served: dict[str, list[str]] = {}
    for side in layout.sides:
        if side.box != front.box:
            continue
        for fitting in side.fittings:
            if fitting.part == front.id and fitting.record:
                served.setdefault(fitting.record, []).append(side.board)
    for name, boards in served.items():
        each = tuple(dict.fromkeys(boards))
        if front.hinge is not None and name in job.hinges:
            hinge = job.hinges[name]
            yield (
                "hinge",
                FirstArticle(
                    front=front, boards=each, record=hinge, marks=_door_marks(front, hinge)
                ),
            )
        elif front.drawer is not None and name in job.slides:
            slide = job.slides[name]
            yield (
                "slide",
                FirstArticle(
                    front=front, boards=each, record=slide, marks=_drawer_marks(front, slide)
                ),
            )


def _door_marks(front: Front, record: HingeRecord) -> tuple[PassMark, ...]:
    choice = front.hinge
    assert choice is not None, "only a door that hangs is tried"
    needed = overlay_got(record, choice.tab, choice.plate) - choice.error
    marks = [
        PassMark(what="overlay",
                 wanted=needed, least=needed - OVERLAY_LIMIT, most=needed + OVERLAY_LIMIT),
        _level("door-up", front.place.y),
        _level("door-flush", 0.0),
    ]  # fmt: skip
    if front.place.overlay == "inset":
        marks[0] = PassMark(what="inset-gap",
                            wanted=-needed, least=-needed - OVERLAY_LIMIT,
                            most=-needed + OVERLAY_LIMIT)  # fmt: skip
    if front.place.overlay != "inset":
        gap = front.gaps.left if front.hinged == "left" else front.gaps.right
        marks.insert(1, PassMark(what="hinge-gap",
                                 wanted=gap, least=_least_gap(front),
                                 most=gap + OVERLAY_LIMIT))  # fmt: skip
    return tuple(marks)


def _least_gap(front: Front) -> float:
    """Give the least gap at a hinge edge, 0 where nobody has looked it up; mm."""
    least = front.least_reveal
    return 0.0 if least is None or least.open else least.width


def _drawer_marks(front: Front, record: SlideRecord) -> tuple[PassMark, ...]:
    drawer = front.drawer
    assert drawer is not None, "only a drawer is tried"
    return (
        PassMark(what="box-width", wanted=drawer.width,
                 least=drawer.width - record.width_tolerance, most=drawer.width),
        _level("box-up", drawer.y),
        _level("front-up", front.place.y),
        _level("front-flush", 0.0),
    )  # fmt: skip


def _level(what: PassWhat, wanted: float) -> PassMark:
    return PassMark(what=what, wanted=wanted, least=wanted - LEVEL, most=wanted + LEVEL)
