"""Is the cut list to be trusted? Screws near system holes, nailers in the way, no room at all."""

from collections.abc import Sequence
from dataclasses import replace

from jigs.box.parts import Layout
from jigs.checks.installing import check_sag
from jigs.cutlist.cutlist import Cut, cut_job
from jigs.cutlist.piece import Piece
from jigs.cutlist.pockets import FROM_HOLE
from jigs.fittings.slide import BACK_SET_IN
from jigs.given.job import Job
from jigs.ground.finding import warning
from jigs.ground.lengths import format_length
from jigs.ground.problems import Problem

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


def _check_grooves(job: Job) -> list[Problem]:
    """Find grooves that go through their board, or nearly so."""
    found = []
    for name, key, groove, board in (
        ("the back's groove", "groove", job.build.groove, job.material.side),
        ("the drawer bottom's groove", "drawer_groove", job.build.drawer_groove,
         job.material.drawer_side),
    ):  # fmt: skip
        if groove + LEAST_WOOD > board:
            found.append(
                warning(
                    "groove-too-deep",
                    None,
                    f"{name} is {format_length(groove, job.shown)} deep in a board of "
                    f"{format_length(board, job.shown)}; {format_length(LEAST_WOOD, job.shown)} "
                    "should be left",
                    f"make {key} in [build] less",
                )
            )
    return found


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
    found: dict[str, list[str]] = {}
    for box, screw in cut.unclear:
        found.setdefault(box, []).append(
            f"{screw.piece} at {format_length(screw.place, job.shown)}"
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


def _check_nailers(layout: Layout, cut: Cut) -> list[Problem]:
    """Find nailers that stand inside their box, and the drawers that would strike them."""
    job = layout.job
    found = []
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
        found.append(warning("nailer-inside", box, text, remedy))
    return found


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
