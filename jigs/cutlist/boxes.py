"""The pieces of one box, each with its place, so that the box can be put together on paper.

| piece | size (common practice, no source) |
|---|---|
| side | box height x (box depth - band) |
| bottom, full top, fixed shelf | opening x (inside depth - band) |
| stretcher | opening x its width; one at the front, one at the back |
| back | (opening + 2 grooves - play) x box height |
| nailer | opening x its width, behind the back |
| adjustable shelf | (opening - play) x (inside depth - 25) |
| partition | (height between bottom and top) x (inside depth - band) |
| blind panel | (height between bottom and top) x (its width - side - band), in the front |

A wall or tall box, and an open one, has a full top; the others two stretchers; a sink box a rail
on edge at the front and nothing else above. Where sides run to the floor, the back ends at the
underside of the bottom. A box of kind `open` whose front is an appliance's panel is that
appliance's place: there is nothing to cut.
"""

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.carcass import Carcass, name_partition, name_side
from jigs.box.columns import place_columns
from jigs.box.parts import Side
from jigs.cutlist.across import Across, adjustable_shelves, nailers, nailers_behind, partitions
from jigs.cutlist.joints import Joints, Unclear, stand_uprights
from jigs.cutlist.piece import Block, Edge, Groove, Piece, PieceNote, band_for
from jigs.given.build import BACK_SET_IN
from jigs.given.job import BoxSpec, Job
from jigs.ground.geometry import HANDS, SLACK, Hand


class BoxPieces(Struct, frozen=True, kw_only=True):
    """The pieces of a box; `unclear`: screws that found no clear place; `nailers_inside`: the
    nailers do not fit behind the back."""

    pieces: tuple[Piece, ...]
    unclear: tuple[Unclear, ...] = ()
    nailers_inside: bool = False


def cut_box(job: Job, box: BoxSpec, sides: Sequence[Side]) -> BoxPieces:
    """Cut a box into its pieces, and say what is doubtful about its joints; `sides` are its drilled
    faces, whose holes the screws avoid."""
    if box.is_place:
        return BoxPieces(pieces=())
    columns = place_columns(job, box)
    whole = Carcass(box=box, side=job.material.side, back=job.material.back)
    boards = [(name_side(box.id, hand), _side_block(whole, hand)) for hand in HANDS]
    left = [carcass.inner("right") for carcass in columns.carcasses]
    boards += [
        (
            name_partition(box.id, number),
            Block(x=left[number - 1], y=low, z=0.0, dx=job.material.partition_board,
                  dy=high - low, dz=whole.inside_depth),
        )
        for number, (low, high) in enumerate(columns.partitions, start=1)
        if high - low > SLACK
    ]  # fmt: skip
    own = [side for side in sides if side.box == box.id]
    joints = Joints(uprights=stand_uprights(boards, own))
    across = Across(job=job, whole=whole, joints=joints)
    lying = across.bottom_and_top()
    shelves = across.fixed_shelves(columns)
    standing = partitions(job, whole, boards[2:], [*lying, *shelves], joints)
    hanging = nailers(job, whole, joints)
    pieces = [
        *lying,
        *standing,
        *shelves,
        *adjustable_shelves(job, columns),
        *_blind_panel(job, whole),
        _back(job, whole),
        *hanging,
    ]
    on_edge = [piece for piece in pieces if piece.kind in ("rail", "nailer", "blind-panel")]
    pieces = [
        _notched(piece, on_edge) if piece.kind in ("partition", "fixed-shelf") else piece
        for piece in pieces
    ]
    return BoxPieces(
        pieces=(*_sides(job, whole, pieces), *pieces),
        unclear=tuple(joints.unclear),
        nailers_inside=not nailers_behind(whole),
    )


def _side_block(whole: Carcass, hand: Hand) -> Block:
    box = whole.box
    x = 0.0 if hand == "left" else box.width - whole.side
    return Block(x=x, y=0.0, z=0.0, dx=whole.side, dy=box.height, dz=box.depth)


def _sides(job: Job, whole: Carcass, pieces: Sequence[Piece]) -> list[Piece]:
    box, band = whole.box, job.material.band
    groove = Groove(at=box.depth - BACK_SET_IN, width=job.material.back, depth=job.build.groove)
    made = []
    for hand in HANDS:
        block = _side_block(whole, hand)
        lying = sorted(
            (piece for piece in pieces if _lies_at(piece, block)),
            key=lambda piece: piece.blocks[0].y,
        )
        reached = dict.fromkeys(round(place, 6) for piece in lying for place in piece.pockets)
        made.append(
            Piece(
                id=name_side(box.id, hand),
                kind="side",
                box=box.id,
                wall=box.wall,
                length=box.height,
                width=box.depth - band,
                thickness=whole.side,
                band=band_for(band, box.height),
                grain="length",
                pockets=tuple(reached),
                groove=groove,
                blocks=(block,),
            )
        )
    return made


def _lies_at(piece: Piece, side: Block) -> bool:
    """Tell whether a piece lies flat and ends at a side of the box."""
    if piece.kind in ("partition", "rail", "nailer", "blind-panel"):
        return False
    return any(
        abs(block.x - side.x - side.dx) < SLACK or abs(block.x + block.dx - side.x) < SLACK
        for block in piece.blocks
    )


def _back(job: Job, whole: Carcass) -> Piece:
    box, build = whole.box, job.build
    wide = whole.opening + 2 * build.groove - build.back_play
    high = box.height - box.legs
    return Piece(
        id=f"{box.id}-BACK",
        kind="back",
        box=box.id,
        wall=box.wall,
        stuff="back",
        length=high,
        width=wide,
        thickness=whole.back,
        grain="length",
        blocks=(
            Block(
                x=(box.width - wide) / 2, y=box.legs, z=whole.inside_depth,
                dx=wide, dy=high, dz=whole.back,
            ),
        ),
    )  # fmt: skip


def _blind_panel(job: Job, whole: Carcass) -> list[Piece]:
    """Give the panel that closes the covered end of a corner box, level with the front edges."""
    box, band = whole.box, job.material.band
    if box.blind is None:
        return []
    reach, at_left = box.blind.reach, box.blind.hand == "left"
    wide, high = reach - whole.side, whole.ceiling - whole.floor
    left = whole.side if at_left else box.width - reach
    edge: Edge = "right" if at_left else "left"
    return [
        Piece(
            id=f"{box.id}-BLIND",
            kind="blind-panel",
            box=box.id,
            wall=box.wall,
            length=high,
            width=wide - band,
            thickness=whole.side,
            band=band_for(band, high, (edge,)),
            grain="length",
            blocks=(Block(x=left, y=whole.floor, z=0.0, dx=wide, dy=high, dz=whole.side),),
            notes=(PieceNote(kind="blind"),),
        )
    ]


def _notched(piece: Piece, on_edge: Sequence[Piece]) -> Piece:
    """Notch a piece where a rail, a nailer or a blind panel passes through it."""
    met = [
        (other, room)
        for other in on_edge
        for room in [piece.blocks[0].shared(other.blocks[0])]
        if room is not None
    ]
    if not met:
        return piece
    notch = PieceNote(
        kind="notch",
        names=tuple(other.id for other, _ in met),
        figures=tuple(
            figure
            for _, room in met
            for figure in (room.dy if piece.kind == "partition" else room.dx, room.dz)
        ),
    )
    return replace(
        piece,
        cutouts=tuple(room for _, room in met),
        notes=(*piece.notes, notch),
    )
