"""Where fillers, panels, toe platforms and movable shelves are seen, against their boxes."""

import pytest
from msgspec.structs import replace

from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.piece import Block, Piece
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import place_job
from tests.templates.kitchens import workshop

LAYOUT = workshop()
JOB: Job = LAYOUT.job
PLACES = place_job(JOB)
BOXES: dict[str, BoxSpec] = {box.id: box for box in JOB.boxes}
PIECES: dict[str, Piece] = {piece.id: piece for piece in cut_list(LAYOUT)}
T, BUMPER = 19.05, 2.0


def on_wall(piece: Piece) -> list[Block]:
    """Give where a piece stands along its wall, that of a box moved to the box's place."""
    if piece.box is None:
        return list(piece.on_wall)
    left, foot = PLACES[piece.box], BOXES[piece.box].above_floor
    return [replace(block, x=block.x + left, y=block.y + foot) for block in piece.blocks]


@pytest.mark.parametrize("wall", ["north", "Island"])
def test_what_closes_a_wall_fills_no_room_of_its_boxes(wall: str) -> None:
    """Fillers, panels, platforms and backs stand beside, under and behind them, and clear of
    each other."""
    solid = [
        (piece, block)
        for piece in PIECES.values()
        if piece.wall == wall and not piece.kind.startswith("drawer")
        for block in on_wall(piece)
    ]
    added = [(p, b) for p, b in solid if p.box is None or p.kind == "end-panel"]
    assert added
    for piece, block in added:
        for other, room in solid:
            assert other.id == piece.id or block.shared(room) is None, (piece.id, other.id)


def test_a_filler_stands_between_its_wall_and_its_box() -> None:
    """41 from the wall to T1, level with the faces of the fronts: 2 and 19.05 before the box."""
    (block,) = PIECES["NORTH-FILLER-L"].on_wall
    assert (block.x, block.x + block.dx) == pytest.approx((0.0, 41.0))
    assert block.x + block.dx == pytest.approx(PLACES["T1"])
    assert (block.z, block.dz) == pytest.approx((-T - BUMPER, T))
    (right,) = PIECES["NORTH-FILLER-R"].on_wall
    assert right.x == pytest.approx(PLACES["B3"] + 1066.8)


def test_a_platform_stands_under_its_boxes_set_back() -> None:
    """From the floor to the boxes, 75 behind their front edges, its front under the filler to the
    wall; its sleepers reach from its front to its back."""
    front, back = (PIECES[f"NORTH-TOE-1-{word}"].on_wall[0] for word in ("FRONT", "BACK"))
    assert (front.x, front.dx) == pytest.approx((PLACES["T1"] - 41, 41 + 2 * 457.2))
    assert (back.x, back.dx) == pytest.approx((PLACES["T1"], 2 * 457.2))
    assert (front.y, front.dy, front.z) == pytest.approx((0.0, 101.6, 75.0))
    assert back.z + back.dz == pytest.approx(584.2)
    for sleeper in PIECES["NORTH-TOE-1-SLEEPER"].on_wall:
        assert sleeper.z == pytest.approx(front.z + front.dz)
        assert sleeper.z + sleeper.dz == pytest.approx(back.z)
        assert front.x <= sleeper.x <= front.x + front.dx - sleeper.dx + 1e-9


def test_a_panel_reaches_the_floor_beside_its_box() -> None:
    """Flush at the right of B1: outside it, 101.6 down, to the faces of the fronts."""
    (block,) = PIECES["B1-PANEL-R"].blocks
    assert (block.x, block.y) == pytest.approx((457.2, -101.6))
    assert (block.z, block.dz) == pytest.approx((-T - BUMPER, 584.2 + T + BUMPER))
    (left,) = PIECES["S1-PANEL-L"].blocks
    assert left.x + left.dx == pytest.approx(0.0)


def test_an_island_back_covers_the_panels_edges() -> None:
    """Two boxes and two panels wide, behind them."""
    (block,) = PIECES["ISLAND-BACK-1"].on_wall
    assert block.dx == pytest.approx(914.4 + 609.6 + 2 * T)
    assert (block.x, block.z) == pytest.approx((PLACES["S1"] - T, 584.2))


def test_shelves_that_can_be_moved_are_shown_evenly_spread() -> None:
    """Two between bottom and top, each within its box; they have no place of their own."""
    shelf = PIECES["T1-SHELF-1"]
    assert not shelf.blocks
    first, second = shelf.spread
    floor, ceiling = 18.3, 2133.6 - 18.3
    assert first.y - floor == pytest.approx(second.y - first.y)
    assert second.y - first.y == pytest.approx(ceiling - second.y)
    assert first.dx == pytest.approx(shelf.length)
