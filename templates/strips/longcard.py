"""A long card of many fittings, a strip's piece or a whole face, inside its edges: holes with their
figures, its own words, each fitting's name, the hardware, the lines of the part by their names.

What is an edge, a figure, a heading or a name is drawn by the code of all cards, in their words.
"""

from collections.abc import Sequence

from jigs.ground.geometry import Fitting
from templates.cards.carddraw import draw_hardware, draw_holes, name_drawer_box
from templates.cards.figures import (
    draw_slide_lines,
    figures_of,
    free_spot,
    write_corner,
    write_figures,
    write_name,
)
from templates.cards.lettering import block
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.space import Box, Space

HEADING = 69.0
"""Width of the card's own words, mm."""

SetOut = tuple[Fitting, Reference, Reference]
"""A fitting, and what its figures are counted from across and up."""


def fill_card(
    space: Space,
    view: FaceView,
    fittings: Sequence[SetOut],
    title: tuple[str, int],
    room: Box,
    inside: Box,
) -> bool:
    """Draw all that belongs to some fittings, words within `room`, lines within `inside`; `title`:
    what the card is called, and its number. Say whether there was room."""
    hardware = [fitting for fitting, _, _ in fittings]
    # A drawer box that is stood on its outline is drawn first: words keep off its corners.
    stood_on = any(fitting.stands is not None for fitting in hardware)
    if stood_on:
        draw_hardware(space, view, hardware, inside)
    if not _write(space, view, fittings, title, room):
        return False
    if not stood_on:
        name_drawer_box(space, view, inside, room)
        draw_hardware(space, view, hardware, inside)
    if any(across.kind == "middle" for _, across, _ in fittings):
        middle = view.width / 2
        space.add_between_texts(((middle, -1e4), (middle, 1e4)), inside, "axis", 0.18)
    draw_slide_lines(space, view, hardware, inside)
    if view.bevel is not None:
        y = 0.0 if view.bevel == "bottom" else view.height
        space.add_between_texts(((-1e4, y), (1e4, y)), inside, "dashed", 0.25)
    return True


def _write(
    space: Space,
    view: FaceView,
    fittings: Sequence[SetOut],
    title: tuple[str, int],
    room: Box,
) -> bool:
    """Draw the holes and write all that belongs to them; say whether there was room."""
    draw_holes(space, [hole for fitting, _, _ in fittings for hole in fitting.holes])
    for fitting, across, up in fittings:
        if fitting.stands is not None and not write_corner(space, view, fitting, across, up, room):
            return False
        for hole in fitting.holes:
            far = across.kind == "middle" and hole.x > view.width / 2
            figures = figures_of(view, fitting, hole, across, up)
            if not write_figures(space, hole, figures, -1 if far else across.inward, room):
                return False
    name, number = title
    heading = block(view, name, (), HEADING, with_bar=True)
    centre = ((room[0] + room[2]) / 2, (room[1] + room[3]) / 2)
    spot = free_spot(space, heading.width, heading.height, centre, room)
    if spot is None:
        return False
    space.add(*heading.marks(*spot, number))
    return all(write_name(space, view, fitting, room) for fitting, _, _ in fittings)
