"""Boxes put together from their cut lists: no overlap, no gap, and the size that the job says."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.cutlist.boxes import cut_box
from jigs.cutlist.cutlist import cut_job
from jigs.cutlist.piece import Piece
from jigs.given.build import Build
from jigs.given.job import BoxKind, BoxSpec, ColumnSpec, FrontSpec, Job, Material, ShelfSpec
from jigs.given.stated import BlindEnd
from jigs.ground.lengths import Unit
from jigs.layout.layout import lay_out
from tests.jigs.cutlist.blocks import NEAR, ends_meet, outside, overlaps, sizes
from tests.jigs.sample import box, job, lay

KINDS: tuple[BoxKind, ...] = ("base", "drawer", "sink", "wall", "tall")
UNITS: tuple[Unit, ...] = ("mm", "in")
SCREWED = ("bottom", "top", "stretcher", "rail", "nailer", "fixed-shelf")


def _lengths(low: int, high: int) -> st.SearchStrategy[float]:
    """Lengths to 1/64 in and to 1/8 mm."""
    inches = st.integers(low * 64 // 25, high * 64 // 25).map(lambda parts: parts * 25.4 / 64)
    return st.one_of(st.integers(low * 8, high * 8).map(lambda parts: parts / 8), inches)


@st.composite
def jobs(draw: st.DrawFn) -> Job:
    """A job of one box without fronts, of any build whose nailers go behind the back."""
    columns = draw(st.sampled_from((1, 1, 2, 3)))
    side = draw(st.sampled_from((15.2, 16.0, 18.0, 18.3, 18.6, 19.0)))
    back = draw(st.sampled_from((3.2, 5.5, 6.0, 9.0)))
    height = draw(st.one_of(_lengths(450, 2300), _lengths(220, 450)))
    legs = draw(st.sampled_from((0.0, 0.0, 101.6))) if height > 400 else 0.0
    low = legs + 2 * side + 20
    high = height - 140
    shelf = draw(st.one_of(st.none(), st.floats(low, high))) if low < high else None
    made = BoxSpec(
        id="B1",
        kind=draw(st.sampled_from(KINDS)),
        width=draw(_lengths(200, 600)) * columns,
        height=height,
        depth=draw(_lengths(150, 700)),
        above_floor=0.0 if legs else 100.0,
        legs=legs,
        columns=(ColumnSpec(),) * columns if columns > 1 else (),
        shelves=() if shelf is None else (ShelfSpec(at=shelf),),
        rail=draw(st.sampled_from((None, None, 80.0))),
        overlay=draw(st.sampled_from(("full", "inset"))),
        blind=draw(st.sampled_from((None, BlindEnd(hand="left", reach=150.0))))
        if columns == 1
        else None,
    )
    plain = job(made, units=draw(st.sampled_from(UNITS)))
    return replace(
        plain,
        material=Material(
            side=side, back=back, band=draw(st.sampled_from((0.0, 0.6, 2.0))),
            partition=draw(st.sampled_from((None, 25.0))),
        ),
        build=Build(
            groove=draw(st.sampled_from((6.0, 8.0))), back_play=draw(st.sampled_from((0.0, 1.0))),
            nailers=draw(st.sampled_from((None, 1, 2, 3))),
        ),
    )  # fmt: skip


def cut(made: Job) -> tuple[Piece, ...]:
    return cut_box(made, made.boxes[0], lay_out(made).sides).pieces


@given(jobs())
@settings(max_examples=30)
def test_nothing_overlaps_but_the_back_in_its_grooves(made: Job) -> None:
    """The back goes into each side by the groove less half its play, and into nothing else."""
    depth = made.build.groove - made.build.back_play / 2
    found = overlaps(cut(made))
    assert [{one.kind, other.kind} for one, other, _ in found] == [{"side", "back"}] * 2
    for one, other, room in found:
        side = one if one.kind == "side" else other
        assert side.groove is not None
        assert room.dx == pytest.approx(depth)
        assert room.z + room.dz == pytest.approx(side.groove.at)
        assert room.dz == pytest.approx(side.groove.width)


@given(jobs())
@settings(max_examples=30)
def test_the_box_comes_out_as_the_job_says(made: Job) -> None:
    """Its outside is width x height x depth, and each piece fills its place when it is finished."""
    spec, pieces = made.boxes[0], cut(made)
    assert outside(pieces) == pytest.approx((0, 0, 0, spec.width, spec.height, spec.depth))
    for piece in pieces:
        finished = sorted((piece.finished_length, piece.finished_width, piece.thickness))
        assert all(sizes(block) == pytest.approx(finished) for block in piece.blocks), piece.id


@given(jobs())
@settings(max_examples=30)
def test_what_must_touch_touches(made: Job) -> None:
    """Whatever is screwed meets an upright board at both ends; the back closes against all."""
    pieces = cut(made)
    uprights = [piece for piece in pieces if piece.kind in ("side", "partition")]
    back = next(piece for piece in pieces if piece.kind == "back").blocks[0]
    bottom = next(piece for piece in pieces if piece.kind == "bottom").blocks[0]
    assert back.y == pytest.approx(bottom.y)
    for piece in pieces:
        block = piece.blocks[0] if piece.blocks else None
        if piece.kind in SCREWED:
            assert ends_meet(piece, uprights), piece.id
        if block and piece.kind in ("bottom", "top", "partition", "fixed-shelf"):
            assert block.z + block.dz == pytest.approx(back.z), piece.id
        if block and piece.kind == "nailer":
            assert block.z == pytest.approx(back.z + back.dz)
        if block and piece.kind == "partition":
            assert block.y == pytest.approx(bottom.y + bottom.dy)


@given(jobs())
@settings(max_examples=20)
def test_widths_and_heights_add_up(made: Job) -> None:
    """Bottom and two sides are the width; bottom, partition and top are the height."""
    spec, pieces, t = made.boxes[0], cut(made), made.material.side
    bottom = next(piece for piece in pieces if piece.kind == "bottom")
    assert bottom.length + 2 * t == pytest.approx(spec.width)
    for piece in pieces:
        if piece.kind == "partition":
            assert piece.length + 2 * t + spec.legs == pytest.approx(spec.height)


STACK = (
    FrontSpec(id="B1-1", kind="drawer", height=150.0),
    FrontSpec(id="B1-2", kind="drawer"),
    FrontSpec(id="B1-3", kind="drawer"),
)


@given(_lengths(300, 900), _lengths(650, 900), st.sampled_from(UNITS))
@settings(max_examples=40)
def test_drawer_boxes_stand_free_in_their_box(width: float, height: float, units: Unit) -> None:
    """A drawer's pieces meet only in the grooves of its bottom, and nothing of the box."""
    layout = lay(box(*STACK, kind="drawer", width=width, height=height), units=units)
    pieces = cut_job(layout).pieces
    groove = layout.job.build.drawer_groove - 0.5
    for one, other, room in overlaps(pieces):
        kinds = {one.kind, other.kind}
        if kinds == {"side", "back"}:
            continue
        assert "drawer-bottom" in kinds, (one.id, other.id)
        assert one.front == other.front
        assert min(room.dx, room.dz) == pytest.approx(groove)


ACROSS = (
    FrontSpec(id="B1-1", kind="drawer", height=150.0, span=2),
    FrontSpec(id="B1-2", kind="door", hinged="left"),
    FrontSpec(id="B1-3", kind="door", hinged="right", column=2),
)


@pytest.mark.parametrize("kind", ["base", "wall", "tall"])
@pytest.mark.parametrize("lowest", [False, True])
def test_a_drawer_across_columns_leaves_no_gap_and_no_overlap(kind: BoxKind, lowest: bool) -> None:
    """The partition ends at a shelf that is one board across both columns."""
    first, *doors = ACROSS
    fronts = (*doors, replace(first, id="B1-4")) if lowest else ACROSS
    made = replace(box(*fronts, kind=kind, width=914.4), columns=(ColumnSpec(), ColumnSpec()))
    pieces = [piece for piece in cut_job(lay(made)).pieces if piece.front is None]
    assert [{a.kind, b.kind} for a, b, _ in overlaps(pieces)] == [{"side", "back"}] * 2
    (shelf,) = [piece for piece in pieces if piece.kind == "fixed-shelf"]
    (partition,) = [piece for piece in pieces if piece.kind == "partition"]
    assert shelf.length == pytest.approx(914.4 - 2 * 18.3)
    on, under = partition.blocks[0], shelf.blocks[0]
    meets = (
        under.y + under.dy == pytest.approx(on.y)
        if lowest
        else (on.y + on.dy == pytest.approx(under.y))
    )
    assert meets
    assert partition.pockets == pytest.approx(shelf.pockets)


def test_a_drawer_box_comes_out_as_ordered() -> None:
    """The outside of its pieces is the drawer box of its front, 13 under the bottom."""
    layout = lay(box(*STACK, kind="drawer"))
    for front in layout.fronts:
        drawer = front.drawer
        assert drawer is not None
        pieces = [piece for piece in cut_job(layout).pieces if piece.front == front.id]
        x0, y0, z0, x1, y1, z1 = outside(pieces)
        size = (x1 - x0, y1 - y0, z1 - z0)
        assert size == pytest.approx((drawer.width, drawer.height, drawer.length))
        bottom = next(piece for piece in pieces if piece.kind == "drawer-bottom")
        assert bottom.blocks[0].y - y0 == pytest.approx(13.0)
        side = next(piece for piece in pieces if piece.kind == "drawer-side")
        assert side.count == len(side.blocks) == 2


def test_the_comparison_can_fail() -> None:
    """A bottom cut for the name of its board overlaps nothing and leaves a gap: it is found."""
    layout = lay(box())
    pieces = list(cut_job(layout).pieces)
    at = next(k for k, piece in enumerate(pieces) if piece.kind == "bottom")
    block = pieces[at].blocks[0]
    pieces[at] = replace(pieces[at], blocks=(replace(block, dx=457.2 - 2 * 19.05),))
    uprights = [piece for piece in pieces if piece.kind == "side"]
    assert not ends_meet(pieces[at], uprights)
    pieces[at] = replace(pieces[at], blocks=(replace(block, dx=block.dx + 2 * NEAR),))
    assert len(overlaps(pieces)) == 3
