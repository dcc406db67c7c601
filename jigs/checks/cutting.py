"""Is the cut list to be trusted, and will the boxes stand? Screws near system holes, nailers in the
way, no room at all; long shelves, tall units tilted up.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import hypot

from jigs.box.parts import Layout
from jigs.cutlist.boxes import is_place
from jigs.cutlist.cutlist import Cut, cut_job
from jigs.cutlist.joints import FROM_HOLE
from jigs.cutlist.piece import Piece
from jigs.cutlist.totals import LEAST_STRAIGHT, MODULI, least_thickness, longest_straight, sag
from jigs.fittings.slide import BACK_SET_IN
from jigs.given.job import BoxKind, BoxSpec, Job
from jigs.ground.geometry import SLACK
from jigs.ground.grouped import grouped
from jigs.ground.lengths import Unit, format_length, is_beyond
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
        *_check_pockets(job, cut),
        *_check_nailers(layout, cut),
        *check_sag(job, cut.pieces),
    )


def _check_grooves(job: Job) -> Iterator[Problem]:
    """Find grooves that go through their board, or nearly so."""
    for name, key, groove, board in (
        ("the back's groove", "groove", job.build.groove, job.material.side),
        ("the drawer bottom's groove", "drawer_groove", job.build.drawer_groove,
         job.material.drawer_side),
    ):  # fmt: skip
        if groove + LEAST_WOOD > board:
            yield warning(
                "groove-too-deep",
                None,
                f"{name} is {format_length(groove, job.shown)} deep in a board of "
                f"{format_length(board, job.shown)}; {format_length(LEAST_WOOD, job.shown)} "
                "should be left",
                f"make {key} in [build] less",
            )


def _check_room(cut: Cut) -> list[Problem]:
    return [
        warning(
            "piece-no-room",
            place or None,
            f"there is no room for {name}; it is left out of the cut list",
            "correct the sizes of the box, or those in [build]",
        )
        for place, name in cut.no_room
    ]


def _check_pockets(job: Job, cut: Cut) -> list[Problem]:
    found = grouped(
        (box, f"{screw.piece} at {format_length(screw.place, job.shown)}")
        for box, screw in cut.unclear
    )
    return [
        warning(
            "pocket-near-hole",
            box,
            f"no clear place for the pocket screw of {'; '.join(dict.fromkeys(places))}: "
            f"{format_length(FROM_HOLE, job.shown)} from every hole is wanted",
            "leave that screw out and glue the joint, or move it by hand before the holes are "
            "drilled",
        )
        for box, places in found.items()
    ]


def _check_nailers(layout: Layout, cut: Cut) -> Iterator[Problem]:
    """Find nailers that stand inside their box, and the drawers that would strike them."""
    job = layout.job
    for box in cut.nailers_inside:
        nailers = [p for p in cut.pieces if p.box == box and p.kind == "nailer"]
        struck = _struck(nailers, [p for p in cut.pieces if p.box == box])
        text = (
            f"sides of {format_length(job.material.side, job.shown)} do not go behind a back set "
            f"in by {format_length(BACK_SET_IN, job.shown)}: the nailer stands inside the box"
        )
        remedy = "cut the nailer from a thinner board, to stand behind the back"
        if struck:
            text += f", where {', '.join(struck)} would strike it"
            remedy += ", or set it below the drawer"
        else:
            remedy += ", or leave it inside and cut what meets it shorter"
        yield warning("nailer-inside", box, text, remedy)


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
            *check_legs(box, job.shown),
            *check_tilting(box, ceilings.get(box.wall), job.shown),
        )
    )


def check_legs(box: BoxSpec, unit: Unit) -> Iterator[Problem]:
    """Find a box whose sides run to the floor, and which is set above it all the same."""
    if not box.legs or box.above_floor <= SLACK:
        return
    above = format_length(box.above_floor, unit)
    yield warning(
        "legs-above-floor",
        box.id,
        f"its sides run to the floor (legs {format_length(box.legs, unit)}), and above_floor "
        f"sets their end {above} above it; height counts from that end",
        "leave above_floor out where its sides stand on the floor; where they end at the "
        "bottom panel leave legs out, and take them off height",
    )


def check_tilting(box: BoxSpec, ceiling: float | None, unit: Unit) -> Iterator[Problem]:
    """Find a box that strikes the ceiling as it is tilted up from its back, lying on the floor.

    From edge to edge across its side it is sqrt(H^2 + D^2) (derived). A box on a toe platform is
    tilted up beside it, and lifted; sides that run to the floor count whole. `ceiling`: above the
    floor, mm; None where it is not known.
    """
    if ceiling is None or box.kind not in UPRIGHT or is_place(box):
        return
    swing = hypot(box.height, box.depth)
    room = ceiling - TO_TURN
    if swing <= room + SLACK:
        return
    remedy = "build it in two parts"
    if box.height <= room + SLACK:
        remedy += ", or bring it in upright, from the side"
    if box.legs and hypot(box.height - box.legs, box.depth) <= room + SLACK:
        remedy = f"end its sides at the bottom panel and stand the toe separately, or {remedy}"
    yield warning(
        "cannot-be-tilted-up",
        box.id,
        f"{format_length(box.height, unit)} high and {format_length(box.depth, unit)} deep, "
        f"it measures {format_length(swing, unit)} across as it is tilted up; under a ceiling "
        f"of {format_length(ceiling, unit)} there is room for {format_length(room, unit)}",
        remedy,
    )


def check_sag(job: Job, pieces: Sequence["Piece"]) -> Iterator[Problem]:
    """Find shelves so long that they sag to be seen; of each length in a box, once."""
    unit, kind = job.shown, job.material.side_kind
    board = f"{kind or 'plywood'}{'' if kind else ' (ASSUMED: side_kind is not stated)'}"
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
            f"{', '.join(names)}: {format_length(span, unit)} long, of "
            f"{format_length(thickness, unit)} {board}, sags by {format_length(down, unit)} "
            f"under 15 lb/ft2 (0.72 kPa), and in time by more; "
            f"{format_length(limit, unit)} is not seen",
            f"take a board of {format_length(thicker, unit)} or more, keep it under "
            f"{format_length(longest, unit)} long, glue a strip on edge along its front, or "
            "stand a partition under it",
        )
