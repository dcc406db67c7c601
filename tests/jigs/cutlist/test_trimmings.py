"""Fillers, end panels and island backs."""

import pytest
from msgspec.structs import replace

from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.piece import Piece
from jigs.cutlist.trimmings import (
    end_fillers,
    end_panel,
    filler,
    island_back,
    panel_depth,
    trim_boxes,
    wall_fillers,
)
from jigs.given.build import Build
from jigs.given.job import BoxSpec, FrontMaterial, FrontSpec
from jigs.given.stated import BlindEnd, EndPanels, PanelKind
from jigs.given.walls import boxes_at_end, end_boxes, place_job
from jigs.given.wallspec import EndKind, WallEnd, WallSpec
from jigs.ground.geometry import Hand
from jigs.layout.layout import lay_out
from jigs.room.elevation import see_walls
from templates.words.piecenotes import note_words
from tests.jigs.sample import MATERIAL, box, job

DB, T, BUMPER = 584.2, 19.05, 2.0


def test_a_filler_is_wider_than_its_place() -> None:
    """Place 41 (pull of 35 and 6), 12 over for scribing; as high as its box."""
    piece = filler(job(box()), "NORTH-FILLER-L", "north", width=41.0, height=774.7)
    assert (piece.length, piece.width, piece.thickness) == pytest.approx((774.7, 41 + 12, T))
    assert piece.box is None
    assert "12.0 of its width to scribe" in note_words(piece.notes)


@pytest.mark.parametrize(("flush", "depth"), [(True, DB + T + BUMPER), (False, DB)])
def test_an_end_panel_is_flush_with_the_faces_or_covered(flush: bool, depth: float) -> None:
    """Depth Db + T + bumper, or Db; 15 more at the wall edge (common practice, no source)."""
    assert panel_depth(DB, out=T + BUMPER, flush=flush) == pytest.approx(depth)
    piece = end_panel(
        job(box()), "B1-PANEL-L", box="B1", wall="north", box_depth=DB, height=876.3, flush=flush,
        out=T + BUMPER,
    )  # fmt: skip
    assert (piece.length, piece.width) == pytest.approx((876.3, depth + 15))
    assert piece.stuff == "front"


def test_nothing_to_scribe_is_not_spoken_of() -> None:
    """panel_scribe = 0, as on an island."""
    made = replace(job(box()), build=Build(panel_scribe=0.0, scribe=0.0))
    piece = end_panel(
        made, "B1-PANEL-L", box="B1", wall="", box_depth=DB, height=876.3, flush=False, out=21.05,
        reached=True,
    )  # fmt: skip
    assert note_words(piece.notes) == "the fronts cover its front edge"
    assert not note_words(filler(made, "NORTH-FILLER-L", "north", width=41.0, height=774.7).notes)


@pytest.mark.parametrize(("stands", "there"), [("corner", False), ("wall", True)])
def test_no_filler_is_cut_that_stands_behind_the_other_run(stands: EndKind, there: bool) -> None:
    """A blind box goes on into its corner; at a wall its filler is seen."""
    blind = replace(box(), blind=BlindEnd(hand="right", reach=250.0))
    wall = WallSpec(name="north", right=WallEnd(stands=stands, filler=60.0))
    pieces = wall_fillers(replace(job(blind), walls=(wall,)), {"north": "NORTH"})
    assert [piece.id for piece in pieces] == ["NORTH-FILLER-R"] * there


@pytest.mark.parametrize("panel", ["flush", "covered"])
def test_beside_inset_fronts_an_end_panel_is_as_deep_as_the_box(panel: PanelKind) -> None:
    """Db and 15 to scribe: fronts between the sides neither stand out nor cover the panel. Where
    one of the box's fronts covers the sides, T + bumper more; the inset door, hung at the panel,
    then strikes it."""
    door = FrontSpec(id="B1-1", kind="door", hinged="right")
    inset = replace(box(door), overlay="inset", panels=EndPanels(right=panel))
    piece = _trimmed(inset)["B1-PANEL-R"]
    assert (piece.width, piece.blocks[0].z, piece.blocks[0].dz) == pytest.approx((DB + 15, 0, DB))
    assert note_words(piece.notes).startswith("flush with the faces of the fronts; ")
    assert not any(found.code == "wall-filler" for found in lay_out(job(inset)).problems)
    over = FrontSpec(id="B1-2", kind="drawer", height=150.0, overlay="full")
    mixed = replace(inset, fronts=(over, door))
    out = T + BUMPER if panel == "flush" else 0.0
    assert _trimmed(mixed)["B1-PANEL-R"].width == pytest.approx(DB + out + 15)
    struck = [found.part for found in lay_out(job(mixed)).problems if found.code == "wall-filler"]
    assert struck == (["B1-1"] if panel == "flush" else [])


@pytest.mark.parametrize(
    ("kind", "length", "width", "grain"),
    [("mdf", 914.4, 876.3, None), ("plywood", 876.3, 914.4, "length")],
)
def test_an_island_back_has_its_grain_upright(
    kind: FrontMaterial, length: float, width: float, grain: str | None
) -> None:
    """Where its board has a grain; otherwise length is the longer way."""
    made = replace(job(box()), material=replace(MATERIAL, front_kind=kind))
    piece = island_back(made, "ISLAND-BACK-1", "island", width=914.4, height=876.3)
    assert (piece.length, piece.width, piece.grain) == (length, width, grain)


def _trimmed(*boxes: BoxSpec) -> dict[str, Piece]:
    made = job(*boxes)
    made = replace(made, material=replace(MATERIAL, front_kind="plywood"))
    return {piece.id: piece for piece in trim_boxes(made, {"north": "NORTH", "island": "ISLAND"})}


def test_end_panels_of_standing_boxes_go_to_the_floor() -> None:
    """774.7 + 101.6 high; beside a wall box as high as the box."""
    pieces = _trimmed(
        replace(box(), panels=EndPanels(left="flush")),
        replace(box(name="W1", kind="wall", above_floor=1370.0), panels=EndPanels(right="covered")),
    )
    assert list(pieces) == ["B1-PANEL-L", "W1-PANEL-R"]
    assert pieces["B1-PANEL-L"].box == "B1"
    assert pieces["B1-PANEL-L"].length == pytest.approx(774.7 + 101.6)
    assert pieces["B1-PANEL-L"].width == pytest.approx(DB + BUMPER + T + 15)
    assert (pieces["W1-PANEL-R"].length, pieces["W1-PANEL-R"].width) == pytest.approx(
        (774.7, DB + 15)
    )


def test_an_island_back_covers_its_run_and_the_panels_edges() -> None:
    """Two boxes and two panels wide; nothing to scribe at an island."""
    pieces = _trimmed(
        replace(box(wall="island"), panels=EndPanels(left="covered", back=True)),
        replace(box(name="B2", wall="island"), panels=EndPanels(right="covered", back=True)),
        box(name="B3", wall="island"),
    )
    back = pieces["ISLAND-BACK-1"]
    assert back.box is None
    assert note_words(back.notes) == "behind B1, B2"
    assert (back.length, back.width) == pytest.approx((774.7 + 101.6, 2 * 457.2 + 2 * T))
    assert pieces["B1-PANEL-L"].width == pytest.approx(DB)


def test_boxes_apart_or_of_other_heights_have_backs_of_their_own() -> None:
    """Three boxes, three backs."""
    pieces = _trimmed(
        replace(box(), panels=EndPanels(back=True)),
        replace(box(name="B2", x=1000.0), panels=EndPanels(back=True)),
        replace(box(name="B3", height=500.0), panels=EndPanels(back=True)),
    )
    assert [note_words(piece.notes) for piece in pieces.values()] == [
        "behind B1",
        "behind B2",
        "behind B3",
    ]


@pytest.mark.parametrize(
    ("hand", "names"),
    [
        ("left", {"NORTH-FILLER-L1": "B1", "NORTH-FILLER-L2": "W1"}),
        ("right", {"NORTH-FILLER-R": "B2"}),
    ],
)
def test_each_box_nearest_to_a_walls_end_has_its_filler(hand: Hand, names: dict[str, str]) -> None:
    """Base and wall box begin at the same place; at the other end only the base boxes reach it."""
    made = job(box(), box(name="B2"), box(name="W1", kind="wall", height=762.0, above_floor=1370.0))
    pieces = end_fillers(made, "NORTH", "north", hand, width=41.0)
    assert [piece.id for piece in pieces] == list(names)
    for piece, name in zip(pieces, names.values(), strict=True):
        assert note_words(piece.notes).startswith(f"beside {name}")
        assert piece.length == {"W1": 762.0}.get(name, 774.7)
        assert piece.width == 41.0 + 12.0
    assert end_fillers(made, "SOUTH", "south", hand, width=41.0) == []


@pytest.mark.parametrize("hand", ["left", "right"])
def test_a_filler_stands_beyond_an_end_panel_too(hand: Hand) -> None:
    """The base box ends in a panel, the wall box above it where that panel ends: both have their
    filler, in the cut list as in the elevation, and the doors stand a panel further from the
    wall."""
    filled = WallEnd(stands="wall", filler=41.0)
    base, hung = box(width=600.0), box(name="W1", kind="wall", width=600 + 19.05, x=41.0)
    base = replace(base, panels=EndPanels(left="flush")) if hand == "left" else replace(
        base, panels=EndPanels(right="flush")
    )  # fmt: skip
    walls = (WallSpec(name="north", left=filled, right=filled),)
    made = replace(job(base, replace(hung, above_floor=1370.0)), walls=walls)
    beside = {box.id for box in boxes_at_end(made, "north", hand)}
    assert beside == {"B1", "W1"}
    pieces = end_fillers(made, "NORTH", "north", hand, width=41.0)
    assert [piece.beside for piece in pieces] == [("B1",), ("W1",)]
    (wall,) = see_walls(lay_out(made))
    strips = {seen.box.id: [s for s in seen.strips if s.kind == "filler"] for seen in wall.boxes}
    for name in beside:
        edge = 0.0 if hand == "left" else 41.0 + 600 + 19.05
        assert [s.x for s in strips[name] if abs(s.x - edge) < 1e-6] == [pytest.approx(edge)]
    near = end_boxes(made.boxes, "north", hand, place_job(made), (), made.material.front)
    assert {b.id: d for b, d in near} == pytest.approx({"B1": 19.05, "W1": 0.0})


@pytest.mark.parametrize("panel", ["flush", "covered", None])
def test_a_filler_beyond_an_end_panel_goes_to_the_floor(panel: PanelKind | None) -> None:
    """The toe's front ends at the panel: nothing else closes what is under the filler. Without a
    panel the front runs on below a filler as high as the box. Common practice, no source."""
    filled = WallEnd(stands="wall", filler=41.0)
    walls = (WallSpec(name="north", right=filled, floor_high=6.0),)
    made = replace(job(replace(box(), panels=EndPanels(right=panel))), walls=walls)
    (piece,) = end_fillers(made, "NORTH", "north", "right", width=41.0)
    (block,) = piece.on_wall
    (seen,) = see_walls(lay_out(made))[0].boxes
    (strip,) = (strip for strip in seen.strips if strip.kind == "filler")
    low = box().above_floor if panel is None else 0.0
    assert piece.length == pytest.approx(box().above_floor + 774.7 - low)
    for each, high in ((block.y, block.dy), (strip.y, strip.height)):
        assert (each, each + high) == pytest.approx((low, box().above_floor + 774.7))
    assert ("scribe its lower end to the floor, 6.0 where" in note_words(piece.notes)) == (
        panel is not None
    )


def test_a_panel_is_scribed_to_a_floor_that_rises() -> None:
    """As high above the line as its box; where the floor rises 6 above it, 6 comes off."""
    wall = WallSpec(name="north", floor_high=6.0)
    stood = replace(box(), panels=EndPanels(right="flush"))
    hung = replace(box(name="W1", kind="wall"), panels=stood.panels)
    made = replace(job(stood, hung), walls=(wall,))
    panels = {p.id: p for p in cut_list(lay_out(made)) if p.kind == "end-panel"}
    assert "scribe its lower end to the floor, 6.0 where" in note_words(panels["B1-PANEL-R"].notes)
    assert "floor" not in note_words(panels["W1-PANEL-R"].notes)
    island = replace(job(replace(stood, panels=replace(stood.panels, back=True))), walls=(wall,))
    (back,) = [p for p in cut_list(lay_out(island)) if p.kind == "island-back"]
    assert note_words(back.notes).startswith(
        "behind B1; scribe its lower end to the floor, 6.0 where"
    )
    level = cut_list(lay_out(job(stood)))
    assert "floor" not in next(note_words(p.notes) for p in level if p.kind == "end-panel")


def test_fillers_of_a_wall_are_scribed_to_a_wall_and_not_in_a_corner() -> None:
    """41 at the left end, against a wall: 53 cut; 60 in the corner at the right."""
    ends = WallSpec(
        name="north",
        left=WallEnd(stands="wall", filler=41.0),
        right=WallEnd(stands="corner", filler=60.0, reach=35.0),
    )
    made = replace(job(box(), box(name="B2")), walls=(ends,))
    pieces = {p.id: p for p in cut_list(lay_out(made)) if p.kind == "filler"}
    assert list(pieces) == ["NORTH-FILLER-L", "NORTH-FILLER-R"]
    assert pieces["NORTH-FILLER-L"].width == pytest.approx(41 + 12)
    assert pieces["NORTH-FILLER-R"].width == pytest.approx(60)
