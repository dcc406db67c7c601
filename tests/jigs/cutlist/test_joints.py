"""Joints: screws keep clear of what is in the boards already."""

import math

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.box.parts import Layout, Side
from jigs.cutlist.boxes import cut_box
from jigs.cutlist.cutlist import cut_job
from jigs.cutlist.joints import Joints, stand_uprights
from jigs.cutlist.piece import Block, Piece
from jigs.given.job import ColumnSpec, FrontSpec, Job, ShelfSpec
from jigs.ground.geometry import Fitting, Hole
from jigs.layout.layout import lay_out
from templates.words.piecenotes import note_words
from tests.jigs.sample import box, lay
from tests.jobs import jobs

TWO = (ColumnSpec(), ColumnSpec())
SHELF = ShelfSpec(at=400.0)
DOORS = (
    FrontSpec(id="B1-1", kind="door", hinged="left"),
    FrontSpec(id="B1-2", kind="door", hinged="right", column=2),
)


def _cut(layout: Layout) -> dict[str, Piece]:
    made = cut_box(layout.job, layout.boxes[0], layout.sides)
    assert not made.unclear
    return {piece.id: piece for piece in made.pieces}


def test_screws_of_a_shelf_keep_25_from_every_hole_of_the_sides() -> None:
    """A fixed shelf in line with a row of holes has its screws beside them."""
    layout = lay(replace(box(*DOORS[:1]), shelves=(SHELF,)))
    side = layout.sides[0]
    hole = Hole(purpose="shelf", face="inside", x=50.0, y=400.0, diameter=5.0, depth=12.0)
    drilled = Fitting(kind="shelf", index=1, count=1, part=None, record=None, holes=(hole,))
    sides = (replace(side, fittings=(*side.fittings, drilled)), *layout.sides[1:])
    pieces = {p.id: p for p in cut_box(layout.job, layout.boxes[0], sides).pieces}
    shelf = pieces["B1-FIXED-1"]
    line = 400.0 - 18.3 / 2
    for place in shelf.pockets:
        for each in (hole for one in sides for hole in one.holes):
            assert math.hypot(place - each.x, line - each.y) >= 25 - 1e-6
    assert shelf.pockets[0] == pytest.approx(50 + math.sqrt(25**2 - (18.3 / 2) ** 2))


def test_shelves_on_both_faces_of_a_partition_do_not_meet_screw_to_screw() -> None:
    """Two shelves at one height: the screws of the second stand 25 beside those of the first."""
    pieces = _cut(lay(replace(box(*DOORS, width=914.4), columns=TWO, shelves=(SHELF,))))
    left, right = pieces["B1-FIXED-1"], pieces["B1-FIXED-2"]
    assert left.blocks[0].y == right.blocks[0].y
    assert min(abs(a - b) for a in left.pockets for b in right.pockets) >= 25 - 1e-6
    came_in = {
        hand: {round(place, 3) for place in pieces[f"B1-SIDE-{hand}"].pockets} for hand in "LR"
    }
    assert {round(place, 3) for place in left.pockets} <= came_in["L"]
    assert {round(place, 3) for place in right.pockets} <= came_in["R"]
    assert round(right.pockets[1], 3) not in came_in["L"]


def test_partition_is_screwed_where_there_is_wood_above_it() -> None:
    """At the foot over the whole depth, at the top into both stretchers."""
    pieces = _cut(lay(replace(box(*DOORS, width=914.4), columns=TWO)))
    partition = pieces["B1-PARTITION-1"]
    front, rear = pieces["B1-STRETCHER-1"].blocks[0], pieces["B1-STRETCHER-2"].blocks[0]
    assert partition.pockets[0] == 50.0
    assert partition.pockets_top is not None
    assert len(partition.pockets_top) == 4
    for place in partition.pockets_top:
        assert any(b.z < place < b.z + b.dz for b in (front, rear))


def test_partition_of_a_sink_box_is_notched_for_the_rail() -> None:
    """Rail 100 on edge, board 18.3: the notch is 81.7 high and 18.3 deep."""
    pieces = _cut(lay(replace(box(*DOORS, kind="sink", width=914.4), columns=TWO)))
    partition = pieces["B1-PARTITION-1"]
    (notch,) = partition.cutouts
    assert (round(notch.dy, 4), round(notch.dz, 4)) == (81.7, 18.3)
    assert partition.pockets_top == ()
    assert "screw it through the rail" in note_words(partition.notes)
    assert "notch 81.7 x 18.3 for B1-RAIL" in note_words(partition.notes)


def test_a_hole_in_another_board_is_no_hindrance() -> None:
    """Only the boards at a piece's ends count."""
    far = Side(
        box="B1", wall="", box_kind="base", column=1, side="left", board="FAR", height=700.0,
        depth=560.0, thickness=18.0, band=0.0, bottom=18.0, code="", x=500.0,
        fittings=(
            Fitting(kind="manual", index=1, count=1, part=None, record=None, holes=(
                Hole(purpose="manual", face="inside", x=50.0, y=9.0, diameter=5.0, depth=12.0),
            )),
        ),
    )  # fmt: skip
    stand = Block(x=0.0, y=0.0, z=0.0, dx=18.0, dy=700.0, dz=560.0)
    joints = Joints(
        uprights=stand_uprights([("NEAR", stand), ("FAR", replace(stand, x=500.0))], [far])
    )
    across = Block(x=18.0, y=0.0, z=0.0, dx=200.0, dy=18.0, dz=500.0)
    assert joints.screw("B1-BOTTOM", across, on_edge=False)[0] == 50.0
    assert joints.screw("B1-BOTTOM", replace(across, dx=482.0), on_edge=False)[0] > 50.0


FLAT = ("bottom", "top", "stretcher", "fixed-shelf")


def check_no_screw_comes_within_25_of_a_hole_unless_it_is_told(made: Job) -> None:
    layout = lay_out(made)
    cut = cut_job(layout)
    told = {(screw.piece, round(screw.place, 3)) for _, screw in cut.unclear}
    for piece in cut.pieces:
        if piece.kind not in FLAT:
            continue
        block = piece.blocks[0]
        ends = (block.x, block.x + block.dx)
        for side in layout.sides:
            faces = (side.x, side.x + side.thickness)
            if side.box != piece.box or not any(abs(e - f) < 1e-6 for e in ends for f in faces):
                continue
            for hole in side.holes:
                up = hole.y + side.ends.base - block.y - block.dy / 2
                near = [p for p in piece.pockets if math.hypot(p - hole.x, up) < 25 - 1e-5]
                assert all((piece.id, round(place, 3)) in told for place in near)


@pytest.mark.slow
@given(jobs())
@settings(max_examples=40)
def test_no_screw_comes_within_25_of_a_hole_unless_it_is_told_in_many_jobs(made: Job) -> None:
    """Reckoned anew from the places of pieces and boards, for kitchens of every kind."""
    check_no_screw_comes_within_25_of_a_hole_unless_it_is_told(made)
