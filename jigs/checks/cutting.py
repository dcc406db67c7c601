"""Is the cut list to be trusted, and will the boxes stand? Screws near system holes, nailers in the
way, no room at all; long shelves, tall units tilted up.
"""

from collections.abc import Iterator, Sequence
from math import hypot

from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import Cut, cut_job
from jigs.cutlist.joints import FROM_HOLE
from jigs.cutlist.piece import Piece
from jigs.cutlist.totals import LEAST_STRAIGHT, MODULI, least_thickness, longest_straight, sag
from jigs.given.build import BACK_SET_IN
from jigs.given.job import BoxKind, BoxSpec, Job
from jigs.ground.geometry import SLACK
from jigs.ground.grouped import grouped
from jigs.ground.lengths import is_beyond
from jigs.ground.problems import Problem, warning

LEAST_WOOD = 3.0
"""What a groove leaves of its board; mm (common practice, no source)."""


def with_cutting(layout: Layout) -> tuple[Layout, Cut]:
    """Give a job's cut list, and its layout with what is doubtful about that added."""
    cut = cut_job(layout)
    problems = (*layout.problems, *check_cutting(layout, cut))
    return replace(layout, problems=problems), cut


def check_cutting(layout: Layout, cut: Cut) -> tuple[Problem, ...]:
    """List what is doubtful about a cut list."""
    job = layout.job
    return (
        *_check_grooves(job),
        *_check_room(cut),
        *_check_pockets(cut),
        *_check_nailers(layout, cut),
        *check_sag(job, cut.pieces),
    )


def _check_grooves(job: Job) -> Iterator[Problem]:
    """Find grooves that go through their board, or nearly so."""
    for key, groove, board in (
        ("groove", job.build.groove, job.material.side),
        ("drawer_groove", job.build.drawer_groove, job.material.drawer_side),
    ):
        if groove + LEAST_WOOD > board:
            yield warning(
                "groove-too-deep",
                None,
                drawer=key == "drawer_groove",
                key=key,
                deep=groove,
                board=board,
                least=LEAST_WOOD,
            )


def _check_room(cut: Cut) -> list[Problem]:
    return [warning("piece-no-room", place or None, piece=name) for place, name in cut.no_room]


def _check_pockets(cut: Cut) -> list[Problem]:
    found = grouped((box, (screw.piece, screw.place)) for box, screw in cut.unclear)
    return [
        warning("pocket-near-hole", box, places=tuple(dict.fromkeys(places)), clear=FROM_HOLE)
        for box, places in found.items()
    ]


def _check_nailers(layout: Layout, cut: Cut) -> Iterator[Problem]:
    """Find nailers that stand inside their box, and the drawers that would strike them."""
    job = layout.job
    for box in cut.nailers_inside:
        nailers = [p for p in cut.pieces if p.box == box and p.kind == "nailer"]
        struck = _struck(nailers, [p for p in cut.pieces if p.box == box])
        yield warning(
            "nailer-inside", box, sides=job.material.side, set_in=BACK_SET_IN, struck=tuple(struck)
        )


def _struck(nailers: Sequence[Piece], pieces: Sequence[Piece]) -> list[str]:
    return [
        piece.id
        for piece in pieces
        if piece.kind == "drawer-back"
        and any(
            block.shared(other) is not None
            for nailer in nailers
            for other in nailer.blocks
            for block in piece.blocks
        )
    ]


UPRIGHT: tuple[BoxKind, ...] = ("tall", "open")
"""What may be as high as the room: an open box too. An appliance's place is no box."""
TO_TURN = 10.0
"""What a tall unit needs below the ceiling as it is tilted up; mm (common practice, no source)."""


def check_standing(job: Job) -> tuple[Problem, ...]:
    """Find the boxes whose own sides' end is said to hang above the floor, and the tall units
    that cannot be tilted up under the ceiling of their wall."""
    ceilings = {wall.name: wall.ceiling for wall in job.walls}
    return tuple(
        problem
        for box in job.boxes
        for problem in (
            *check_legs(box),
            *check_tilting(box, ceilings.get(box.wall)),
        )
    )


def check_legs(box: BoxSpec) -> Iterator[Problem]:
    """Find a box whose sides run to the floor, and which is set above it all the same."""
    if not box.legs or box.above_floor <= SLACK:
        return
    yield warning("legs-above-floor", box.id, legs=box.legs, above=box.above_floor)


def check_tilting(box: BoxSpec, ceiling: float | None) -> Iterator[Problem]:
    """Find a box that strikes the ceiling as it is tilted up from its back, lying on the floor.

    From edge to edge across its side it is sqrt(H^2 + D^2) (derived). A box on a toe platform is
    tilted up beside it, and lifted; sides that run to the floor count whole. `ceiling`: above the
    floor, mm; None where it is not known.
    """
    if ceiling is None or box.kind not in UPRIGHT or box.is_place:
        return
    swing = hypot(box.height, box.depth)
    room = ceiling - TO_TURN
    if swing <= room + SLACK:
        return
    yield warning(
        "cannot-be-tilted-up", box.id, high=box.height, deep=box.depth, swing=swing,
        ceiling=ceiling, room=room, upright=box.height <= room + SLACK,
        toe=bool(box.legs) and hypot(box.height - box.legs, box.depth) <= room + SLACK,
    )  # fmt: skip


def check_sag(job: Job, pieces: Sequence["Piece"]) -> Iterator[Problem]:
    """Find shelves so long that they sag to be seen; of each length in a box, once."""
    kind = job.material.side_kind
    modulus = MODULI[kind or "plywood"]
    alike = grouped(
        ((piece.box, piece.length, piece.thickness), piece.id)
        for piece in pieces
        if piece.kind in ("shelf", "fixed-shelf")
    )
    for (box, span, thickness), names in alike.items():
        limit = span / LEAST_STRAIGHT
        down = sag(span=span, thickness=thickness, modulus=modulus)
        if not is_beyond(down, limit):
            continue
        longest = longest_straight(thickness=thickness, modulus=modulus)
        thicker = least_thickness(span=span, modulus=modulus)
        yield warning(
            "shelf-sag",
            box,
            shelves=tuple(names),
            span=span,
            thick=thickness,
            board=kind or "plywood",
            assumed=not kind,
            down=down,
            limit=limit,
            thicker=thicker,
            longest=longest,
        )
