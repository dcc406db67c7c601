"""Partitions: what parts a box into columns, screwed to what it stands on and what lies on it.

At the foot the screws are spread over the whole depth; at the top they can only go where there
is wood above: into a front and a rear stretcher, or all along a full top. A pocket is cut into
the partition's own face and keeps clear of the system holes there as well.
"""

from collections.abc import Iterable, Sequence

from jigs.box.carcass import Carcass
from jigs.cutlist.joints import Joints, Unclear
from jigs.cutlist.piece import Block, Piece, band_for
from jigs.cutlist.pockets import FROM_HOLE, POCKET, Holes, find_unclear, place_pockets
from jigs.given.job import Job
from jigs.ground.geometry import SLACK


def partitions(
    job: Job,
    whole: Carcass,
    boards: Sequence[tuple[str, Block]],
    lying: Sequence[Piece],
    joints: Joints,
) -> list[Piece]:
    """Give the partitions of a box; `lying` are the pieces that they stand on and reach up to."""
    material = job.material
    band, thick = material.band, material.partition_board
    made = []
    for name, block in boards:
        holes = [
            place
            for upright in joints.uprights
            if upright.id == name
            for place in upright.holes
        ]  # fmt: skip
        foot = _end(name, _spans(block, lying, block.y, above=False), _low(holes, block), joints)
        top = block.y + block.dy
        head = _end(name, _spans(block, lying, top, above=True), _high(holes, block), joints)
        made.append(
            Piece(
                id=name,
                kind="partition",
                box=whole.box.id,
                wall=whole.box.wall,
                length=block.dy,
                width=block.dz - band,
                thickness=thick,
                stuff="side" if abs(thick - whole.side) < SLACK else "partition",
                band=band_for(band, block.dy),
                grain="length",
                pockets=foot,
                pockets_top=None if head == foot else head,
                note="" if head else "nothing lies on it: screw it through the rail",
                blocks=(block,),
            )
        )
    return made


def _spans(
    block: Block, lying: Sequence[Piece], height: float, *, above: bool
) -> list[tuple[float, float]]:
    """Give where along the depth a piece lies on a partition, or carries it: start and width."""
    found = []
    for piece in lying:
        other = piece.blocks[0]
        face = other.y if above else other.y + other.dy
        beside = other.x < block.x + block.dx - SLACK and block.x < other.x + other.dx - SLACK
        if piece.kind != "rail" and beside and abs(face - height) < SLACK:
            found.append((other.z, min(other.dz, block.dz - other.z)))
    return sorted(found)


def _end(
    name: str, spans: Sequence[tuple[float, float]], holes: Holes, joints: Joints
) -> tuple[float, ...]:
    places: list[float] = []
    for start, width in spans:
        placed = place_pockets(width, holes, start)
        joints.unclear += [
            Unclear(piece=name, place=place, boards=(name,))
            for place in find_unclear(placed, width, holes)
        ]
        places += placed
    return tuple(places)


def _low(holes: Sequence[tuple[float, float]], block: Block) -> list[tuple[float, float]]:
    """Give the holes near its foot, as their distance from the pockets that reach up from it."""
    return _near((z, y - block.y) for z, y in holes)


def _high(holes: Sequence[tuple[float, float]], block: Block) -> list[tuple[float, float]]:
    return _near((z, block.y + block.dy - y) for z, y in holes)


def _near(holes: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    return [(z, max(0.0, up - POCKET)) for z, up in holes if up - POCKET < FROM_HOLE]
