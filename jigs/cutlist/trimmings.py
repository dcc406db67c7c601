"""Fillers, end panels and island backs: what closes a run of boxes, cut from the fronts' board.

A filler is cut wider than its place, to be scribed to the wall. An end panel flush with the faces
of the fronts is as deep as box, bumper and front together; one that the fronts cover is as deep
as the box. Either is cut deeper at the wall edge for scribing (all common practice, no source).

The golden box: 584.2 + 2 + 19.05 and 15 to scribe.

>>> flush = panel_depth(584.2, front=19.05, bumper=2.0, flush=True)
>>> round(flush, 4), round(flush + 15, 4)
(605.25, 620.25)
"""

from jigs.cutlist.piece import Piece
from jigs.job import Job
from jigs.lengths import format_mm


def panel_depth(box_depth: float, *, front: float, bumper: float, flush: bool) -> float:
    """Give an end panel's depth before scribing: flush with the fronts' faces, or covered; mm."""
    return box_depth + front + bumper if flush else box_depth


def filler(job: Job, name: str, wall: str, *, width: float, height: float) -> Piece:
    """Give a filler for a place `width` wide, beside boxes `height` high; mm."""
    scribe = job.build.scribe
    return Piece(
        id=name,
        kind="filler",
        box=None,
        wall=wall,
        stuff="front",
        length=height,
        width=width + scribe,
        thickness=job.material.front,
        grain="length",
        note=f"{format_mm(scribe)} of its width to scribe to the wall" if scribe else "",
    )


def end_panel(
    job: Job, name: str, *, box: str, wall: str, box_depth: float, height: float, flush: bool
) -> Piece:
    """Give an end panel at a box `box_depth` deep, `height` high; mm."""
    scribe = job.build.panel_scribe
    deep = panel_depth(
        box_depth, front=job.material.front, bumper=job.build.bumper, flush=flush
    )  # fmt: skip
    words = "flush with the faces of the fronts" if flush else "the fronts cover its front edge"
    return Piece(
        id=name,
        kind="end-panel",
        box=box,
        wall=wall,
        stuff="front",
        length=height,
        width=deep + scribe,
        thickness=job.material.front,
        grain="length",
        note=f"{words}; {format_mm(scribe)} of its depth to scribe at the wall"
        if scribe
        else words,
    )


def island_back(job: Job, name: str, wall: str, *, width: float, height: float) -> Piece:
    """Give the panel behind a run of island boxes, its grain upright; mm."""
    return Piece(
        id=name,
        kind="island-back",
        box=None,
        wall=wall,
        stuff="front",
        length=height,
        width=width,
        thickness=job.material.front,
        grain="length",
    )
