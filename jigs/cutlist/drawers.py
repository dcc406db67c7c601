"""The pieces of a drawer box: two sides, front and back between them, a bottom in grooves.

The front and the back stand between the sides; the bottom lies in grooves in all four, its
underside 13 above the underside of the sides (or as the slide's record says): the recess that an
undermount slide fills. Undermount, both lower corners of the back are notched for the slide,
38 x 13. All common practice, no source; the leaflet rules.

The golden drawer, 409.6 x 101.6 x 533 of 15.9 sides:

>>> golden = DrawerShape(id="B1-1-BOX", box="B1", wall="", front="B1-1",
...                      width=409.6, height=101.6, length=533.0, side=15.9)
>>> pieces, _ = cut_drawer(Build(), golden)
>>> [(piece.kind, round(piece.length, 1), round(piece.width, 1)) for piece in pieces][1:]
[('drawer-front', 377.8, 101.6), ('drawer-back', 377.8, 101.6), ('drawer-bottom', 512.2, 388.8)]
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from jigs.box.carcass import Carcass
from jigs.box.drawers import BOTTOM_RISE
from jigs.box.parts import DrawerBox, Front
from jigs.cutlist.joints import POCKET, Unclear, find_unclear, place_pockets
from jigs.cutlist.piece import Block, Groove, Piece, PieceKind
from jigs.given.build import Build
from jigs.given.rolloutspec import Rollout
from jigs.ground.geometry import SLACK, Hand
from jigs.ground.lengths import format_mm

BOTTOM_PLAY = 1.0
"""How much the bottom is smaller than its grooves, both ways; mm (common practice, no source)."""
SPACER_HEIGHT = 60.0
"""A spacer under a slide is this high: as high as the slide and its screws ask (common practice,
no source); mm."""
FROM_CLEARANCE = 12.0
"""A pocket screw keeps this from the screws that hold the drawer's front; mm (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerShape:
    """What a drawer box is cut to, wherever it runs; mm.

    `x`, `y`, `z`: its lower left front corner in its box. `rows`: heights, above its underside,
    of the screws near its ends that hold its front. `recess`: its bottom's underside above its
    own; `notch`: width and height of the notches in its back, None without; `hooked`: its back is
    bored for the slide's hooks.
    """

    id: str
    box: str
    wall: str
    front: str | None
    width: float
    height: float
    length: float
    side: float
    x: float = 0.0
    y: float = 0.0
    z: float = 0.0
    rows: tuple[float, ...] = ()
    recess: float = BOTTOM_RISE
    notch: tuple[float, float] | None = None
    hooked: bool = False


def shape_of_front(front: Front, drawer: DrawerBox) -> DrawerShape:
    """Give the drawer box behind a front as it is to be cut."""
    near = [
        hole.y for hole in drawer.holes if min(hole.x, drawer.width - hole.x) < drawer.side + POCKET
    ]
    return DrawerShape(
        id=drawer.id,
        box=front.box,
        wall=front.wall,
        front=front.id,
        width=drawer.width,
        height=drawer.height,
        length=drawer.length,
        side=drawer.side,
        x=front.place.x + drawer.x,
        y=front.place.y + drawer.y,
        z=front.make.thickness if front.place.overlay == "inset" else 0.0,
        rows=tuple(dict.fromkeys(near)),
        recess=drawer.recess or BOTTOM_RISE,
        notch=drawer.notch,
        hooked=bool(drawer.rear),
    )


def shape_of_rollout(rollout: Rollout) -> DrawerShape:
    """Give the drawer box of a rollout as it is to be cut; no front is screwed to it."""
    return DrawerShape(
        id=rollout.id,
        box=rollout.box,
        wall=rollout.wall,
        front=None,
        width=rollout.width,
        height=rollout.height,
        length=rollout.length,
        side=rollout.side,
        x=rollout.x,
        y=rollout.y,
        z=rollout.z,
        recess=rollout.recess or BOTTOM_RISE,
        notch=rollout.notch,
        hooked=bool(rollout.rear),
    )


def cut_drawer(build: Build, shape: DrawerShape) -> tuple[tuple[Piece, ...], tuple[Unclear, ...]]:
    """Cut a drawer box into its pieces; gives also the screws that found no clear place."""
    groove = Groove(at=shape.recess, width=build.drawer_bottom, depth=build.drawer_groove)
    thick, inside = shape.side, shape.width - 2 * shape.side
    x, y, z = shape.x, shape.y, shape.z
    above = shape.recess + build.drawer_bottom
    free = max(0.0, shape.height - above)
    rows = [(row, 0.0) for row in shape.rows]
    in_front = place_pockets(free, rows, above, FROM_CLEARANCE)
    in_back = place_pockets(free, (), above)

    def board(name: str, kind: PieceKind, long: float, blocks: Sequence[Block]) -> Piece:
        return Piece(
            id=f"{shape.id}-{name}",
            kind=kind,
            box=shape.box,
            wall=shape.wall,
            front=shape.front,
            stuff="drawer-side",
            length=long,
            width=shape.height,
            thickness=thick,
            count=len(blocks),
            grain="length",
            groove=groove,
            blocks=tuple(blocks),
        )

    upright = Block(x=x, y=y, z=z, dx=thick, dy=shape.height, dz=shape.length)
    between = Block(x=x + thick, y=y, z=z, dx=inside, dy=shape.height, dz=thick)
    behind = replace(between, z=z + shape.length - thick)
    other = replace(upright, x=x + shape.width - thick)
    sides = board("SIDE", "drawer-side", shape.length, (upright, other))
    front = replace(board("FRONT", "drawer-front", inside, (between,)), pockets=in_front)
    back = replace(board("BACK", "drawer-back", inside, (behind,)), pockets=in_back)
    if shape.notch is not None:
        wide, high = shape.notch
        back = replace(
            back,
            cutouts=tuple(
                replace(behind, x=left, dx=wide, dy=high)
                for left in (behind.x, behind.x + inside - wide)
            ),
            note=f"notch both lower corners {format_mm(wide)} wide x {format_mm(high)} high for "
            f"the slides{'; bored for their hooks, see its sheet' if shape.hooked else ''}",
        )
    unclear = tuple(
        Unclear(piece=front.id, place=place, boards=(front.id,))
        for place in find_unclear(in_front, free, rows, FROM_CLEARANCE)
    )
    return (sides, front, back, _bottom(build, shape)), unclear


def cut_spacers(rollout: Rollout, carcass: Carcass, line: float) -> tuple[Piece, ...]:
    """Cut what a rollout's slides stand on where a door hangs: as long as the slide, the slide's
    hole `line` (mm above the side's bottom end) along its middle where the floor lets it."""
    long = rollout.slide_length or rollout.length
    low = max(carcass.floor, line - SPACER_HEIGHT / 2)
    right = carcass.inner("right") - rollout.spacer_right
    spacers: tuple[tuple[Hand, float, float], ...] = (
        ("left", rollout.spacer_left, carcass.inner("left")),
        ("right", rollout.spacer_right, right),
    )
    return tuple(
        Piece(
            id=f"{rollout.id}-SPACER-{hand[0].upper()}",
            kind="spacer",
            box=rollout.box,
            wall=rollout.wall,
            stuff="spacer",
            length=long,
            width=SPACER_HEIGHT,
            thickness=thick,
            grain="length",
            hand=hand,
            blocks=(Block(x=x, y=low, z=rollout.z, dx=thick, dy=SPACER_HEIGHT, dz=long),),
            note=f"under the {hand} slide of {rollout.id}; bore it with the side's slide holes",
        )
        for hand, thick, x in spacers
        if thick > SLACK
    )


def _bottom(build: Build, shape: DrawerShape) -> Piece:
    across = shape.width - 2 * shape.side + 2 * build.drawer_groove - BOTTOM_PLAY
    along = shape.length - 2 * shape.side + 2 * build.drawer_groove - BOTTOM_PLAY
    return Piece(
        id=f"{shape.id}-BOTTOM",
        kind="drawer-bottom",
        box=shape.box,
        wall=shape.wall,
        front=shape.front,
        stuff="drawer-bottom",
        length=max(across, along),
        width=min(across, along),
        thickness=build.drawer_bottom,
        blocks=(
            Block(
                x=shape.x + (shape.width - across) / 2,
                y=shape.y + shape.recess,
                z=shape.z + (shape.length - along) / 2,
                dx=across, dy=build.drawer_bottom, dz=along,
            ),
        ),
    )  # fmt: skip
