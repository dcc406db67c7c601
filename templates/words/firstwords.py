"""What must be true of the first part of a station before the second is marked."""

from collections.abc import Iterable

from jigs.bench.firstarticle import PassMark, PassWhat
from jigs.bench.station import Work

BEFORE_SECOND: dict[Work, str] = {
    "sides": "Both boards stood on their bottom ends, edge to edge: each line of holes is as high "
    "on one as on the other, within 0.5, and as far from the front edge, within 0.3. Slide and "
    "plates go on with their own screws; the pins stand level.",
    "drawer-boxes": "Every screw goes through; no hole is over 2 off where its card has it.",
    "rear-hooks": "The box goes down on its slides and both hooks enter their holes.",
    "cups": "The hinge lies flat, both screws meet their holes, nothing shows on the face. Held at "
    "its box, the door's cups face the plates.",
    "pulls": "Both screws enter by hand; each end of the pull is as far from the edge as the "
    "other, within 0.5.",
    "fronts-on-boxes": "Screwed to its box and pushed in, the front has its gaps on all sides "
    "within 0.5.",
    "false-fronts": "Every screw meets its hole from inside; the front has its gaps within 0.5.",
    "pulls-through": "Both screws go through front and box and enter by hand.",
    "by-hand": "The fitting's own screws meet every hole; then what its leaflet wants tried.",
}
"""mm; limits as for the trial on scrap (common practice, no source)."""

FIRST_HEADING = "THE FIRST OF EACH STATION"
FIRST_HOW = (
    "Make these parts first, on scrap of the true thickness, or on the first part where no number "
    "is open: the same bits and stops, the very hardware. Measure, write it down, compare (mm). Go "
    "on to the second part when all of it is true."
)


def in_the_box(boxes: Iterable[str]) -> str:
    """Say that boxes which are together already are drilled themselves, not tried on scrap."""
    return (
        f"ALREADY TOGETHER, not on scrap: {', '.join(boxes)}: drill these lines first in the box."
    )


PASS_WORDS: dict[PassWhat, str] = {
    "overlay": "overlay, side screw at its middle: how far the door covers the side",
    "inset-gap": "gap between door and side, side screw at its middle",
    "hinge-gap": "gap at the hinge edge, door half open: nothing rubs",
    "door-up": "door's bottom edge above the bottom end of the side",
    "door-flush": "flushness: door's back off a straight edge, from top to bottom",
    "box-width": "drawer box, outside width",
    "box-up": "drawer box's underside above its front's bottom edge",
    "front-up": "front's bottom edge above the bottom end of the side",
    "front-flush": "flushness: front's left end higher or lower than its right",
}
"""What is measured of a first article."""


def pass_figure(value: float) -> str:
    """Write a figure of a first article, mm.

    >>> pass_figure(16.72), pass_figure(-0.01)
    ('16.7', '0.0')
    """
    return f"{value:.1f}".replace("-0.0", "0.0")


def pass_words(mark: PassMark) -> str:
    """Say in a line what is measured, and between which limits it passes."""
    limits = f"{pass_figure(mark.least)} to {pass_figure(mark.most)}"
    return f"{PASS_WORDS[mark.what]}: {pass_figure(mark.wanted)} ({limits})"
