"""The pieces of a drawer box: two sides, front and back between them, a bottom in grooves.

The front and the back stand between the sides; the bottom lies in grooves in all four, its
underside 13 above the underside of the sides (or as the slide's record says): the recess that an
undermount slide fills. Undermount, both lower corners of the back are notched for the slide,
38 x 13. All common practice, no source; the leaflet rules.

The golden drawer, 409.6 x 101.6 x 533 of 15.9 sides:

>>> golden = DrawerShape(id="B1-1-BOX", box="B1", x=0.0, y=0.0, code="",
...                      width=409.6, height=101.6, length=533.0, side=15.9)
>>> pieces, _ = cut_drawer(Build(), golden, "", (0.0, 0.0, 0.0), "B1-1")
>>> [(piece.kind, round(piece.length, 1), round(piece.width, 1)) for piece in pieces][1:]
[('drawer-front', 377.8, 101.6), ('drawer-back', 377.8, 101.6), ('drawer-bottom', 512.2, 388.8)]
"""

from collections.abc import Iterable, Sequence

from msgspec.structs import replace

from jigs.box.carcass import Carcass
from jigs.box.drawerbox import DrawerBox, DrawerShape, Rollout
from jigs.box.drawers import BOTTOM_RISE
from jigs.box.parts import Front
from jigs.cutlist.joints import POCKET, Unclear, find_unclear, place_pockets
from jigs.cutlist.piece import Block, Groove, Piece, PieceKind, PieceNote
from jigs.given.build import Build
from jigs.ground.geometry import SLACK, Hand

BOTTOM_PLAY = 1.0
"""How much the bottom is smaller than its grooves, both ways; mm (common practice, no source)."""
SPACER_HEIGHT = 60.0
"""A spacer under a slide is this high: as high as the slide and its screws ask (common practice,
no source); mm."""
FROM_CLEARANCE = 12.0
"""A pocket screw keeps this from the screws that hold the drawer's front; mm (common practice)."""

PlaceInBox = tuple[float, float, float]
"""A place in a box, as a `Block` counts it; mm."""


def behind_front(front: Front, drawer: DrawerBox) -> tuple[PlaceInBox, tuple[float, ...]]:
    """Give the lower left front corner of a front's drawer box in its box, and the heights above
    its underside of the screws near its ends that hold the front; mm."""
    z = front.make.thickness if front.place.overlay == "inset" else 0.0
    near = [
        hole.y for hole in drawer.holes if min(hole.x, drawer.width - hole.x) < drawer.side + POCKET
    ]
    return (front.place.x + drawer.x, front.place.y + drawer.y, z), tuple(dict.fromkeys(near))


def cut_drawer(
    build: Build,
    drawer: DrawerShape,
    wall: str,
    corner: PlaceInBox,
    front: str | None = None,
    rows: Iterable[float] = (),
) -> tuple[tuple[Piece, ...], tuple[Unclear, ...]]:
    """Cut a drawer box into its pieces; gives also the screws that found no clear place.

    `corner`: its lower left front corner in its box; `rows`: heights of the screws that hold its
    `front`, None of a rollout; mm.
    """
    recess = drawer.recess or BOTTOM_RISE
    groove = Groove(at=recess, width=build.drawer_bottom, depth=build.drawer_groove)
    thick, inside = drawer.side, drawer.width - 2 * drawer.side
    (x, y, z), above = corner, recess + build.drawer_bottom
    free = max(0.0, drawer.height - above)
    taken = [(row, 0.0) for row in rows]
    in_front = place_pockets(free, taken, above, FROM_CLEARANCE)
    in_back = place_pockets(free, (), above)
    common = Piece(
        id=drawer.id, kind="drawer-side", box=drawer.box, wall=wall, front=front,
        stuff="drawer-side", length=drawer.length, width=drawer.height, thickness=thick,
    )  # fmt: skip

    def board(name: str, kind: PieceKind, long: float, blocks: Sequence[Block]) -> Piece:
        return replace(
            common,
            id=f"{drawer.id}-{name}",
            kind=kind,
            length=long,
            count=len(blocks),
            grain="length",
            groove=groove,
            blocks=tuple(blocks),
        )

    upright = Block(x=x, y=y, z=z, dx=thick, dy=drawer.height, dz=drawer.length)
    between = Block(x=x + thick, y=y, z=z, dx=inside, dy=drawer.height, dz=thick)
    behind = replace(between, z=z + drawer.length - thick)
    other = replace(upright, x=x + drawer.width - thick)
    sides = board("SIDE", "drawer-side", drawer.length, (upright, other))
    front_board = replace(board("FRONT", "drawer-front", inside, (between,)), pockets=in_front)
    back = replace(board("BACK", "drawer-back", inside, (behind,)), pockets=in_back)
    if drawer.notch is not None:
        wide, high = drawer.notch
        notches = PieceNote(kind="slide-notches", figures=(wide, high))
        back = replace(
            back,
            cutouts=tuple(
                replace(behind, x=left, dx=wide, dy=high)
                for left in (behind.x, behind.x + inside - wide)
            ),
            notes=(notches, PieceNote(kind="hook-bores")) if drawer.rear else (notches,),
        )
    unclear = tuple(
        Unclear(piece=front_board.id, place=place, boards=(front_board.id,))
        for place in find_unclear(in_front, free, taken, FROM_CLEARANCE)
    )
    play = 2 * build.drawer_groove - BOTTOM_PLAY
    across, along = inside + play, drawer.length - 2 * thick + play
    bottom = replace(
        common,
        id=f"{drawer.id}-BOTTOM",
        kind="drawer-bottom",
        stuff="drawer-bottom",
        length=max(across, along),
        width=min(across, along),
        thickness=build.drawer_bottom,
        blocks=(
            Block(
                x=x + (drawer.width - across) / 2,
                y=y + recess,
                z=z + (drawer.length - along) / 2,
                dx=across, dy=build.drawer_bottom, dz=along,
            ),
        ),
    )  # fmt: skip
    return (sides, front_board, back, bottom), unclear


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
            notes=(PieceNote(kind="under-slide", names=(rollout.id,), hand=hand),),
        )
        for hand, thick, x in spacers
        if thick > SLACK
    )
