"""The whole cut list: generated jobs, drawer boxes that are ordered or held back, blind ends."""

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.checks.cutting import with_cutting
from jigs.cutlist.cutlist import cut_job, cut_list
from jigs.given.build import Build
from jigs.given.job import FrontSpec, Job, Material
from jigs.given.stated import BlindEnd, DrawerSize
from jigs.layout.layout import lay_out
from tests.jigs.sample import MATERIAL, box, job, lay
from tests.jobs import jobs
from tests.said import fact_of

DRAWERS = (
    FrontSpec(id="B1-1", kind="drawer", height=150.0),
    FrontSpec(id="B1-2", kind="drawer"),
)


def check_whatever_a_kitchen_has_can_be_cut(made: Job) -> None:
    layout = lay_out(made)
    with_cutting(layout)
    pieces = cut_list(layout)
    names = [piece.id for piece in pieces]
    assert len(set(names)) == len(names)
    taken = {front.id for front in layout.fronts} | {each.id for each in layout.boxes}
    assert not taken & set(names)
    for piece in pieces:
        assert piece.length > 1
        assert piece.width > 1
        assert len(piece.blocks) in (0, piece.count)
        assert piece.finished_length >= piece.length
    assert cut_list(lay_out(made)) == pieces


@given(jobs())
@settings(max_examples=8)
def test_whatever_a_kitchen_has_can_be_cut(made: Job) -> None:
    """Each piece has a size, a name of its own, and as many places as it is cut."""
    check_whatever_a_kitchen_has_can_be_cut(made)


@pytest.mark.slow
@given(jobs())
@settings(max_examples=40)
def test_whatever_a_kitchen_has_can_be_cut_in_many_jobs(made: Job) -> None:
    """The same, at length."""
    check_whatever_a_kitchen_has_can_be_cut(made)


def test_drawer_boxes_that_are_ordered_are_not_cut() -> None:
    """drawer_boxes = "ordered" leaves them out; otherwise four pieces for each."""
    made = job(box(*DRAWERS))
    kinds = [piece.kind for piece in cut_list(lay_out(made))]
    assert kinds.count("drawer-bottom") == 2
    ordered = replace(made, build=Build(drawer_boxes="ordered"))
    assert not any(p.kind.startswith("drawer") for p in cut_list(lay_out(ordered)))


def test_drawer_box_of_a_front_held_back_is_left_out_and_named() -> None:
    """A drawer box too wide holds its front; its sizes are not to be trusted."""
    wrong = replace(DRAWERS[0], drawer_box=DrawerSize(drawer_width=419.0))
    cut = cut_job(lay(box(wrong, DRAWERS[1])))
    assert cut.left_out == ("B1-1-BOX",)
    assert {piece.front for piece in cut.pieces if piece.front} == {"B1-2"}


def test_blind_panel_closes_its_end_of_the_box() -> None:
    """685.8 from the left end: 685.8 - 18.3 wide, banded at its free edge."""
    door = FrontSpec(id="B1-1", kind="door", hinged="right")
    layout = lay(replace(box(door, width=1066.8), blind=BlindEnd(hand="left", reach=685.8)))
    panel = next(piece for piece in cut_list(layout) if piece.kind == "blind-panel")
    assert panel.id == "B1-BLIND"
    assert panel.banded == ("right",)
    assert (panel.length, panel.width) == pytest.approx((774.7 - 2 * 18.3, 685.8 - 18.3 - 0.6))


def test_a_nailer_thicker_than_the_set_in_stands_inside_and_is_told() -> None:
    """22 behind a back that is set in by 19: inside, where the top drawer would strike it."""
    thick = replace(job(box(*DRAWERS)), material=replace(MATERIAL, side=22.0))
    layout, cut = with_cutting(lay_out(thick))
    assert cut.nailers_inside == ("B1",)
    found = next(problem for problem in layout.problems if problem.code == "nailer-inside")
    assert found.part == "B1"
    assert found.level == "warning"
    nailer = next(piece for piece in cut.pieces if piece.kind == "nailer")
    inside = 584.2 - 19 - 6
    assert nailer.blocks[0].z + nailer.blocks[0].dz == pytest.approx(inside)
    layout, cut = with_cutting(lay_out(replace(thick, material=replace(MATERIAL, side=19.05))))
    assert not cut.nailers_inside


def test_what_has_no_room_is_left_out_and_told() -> None:
    """A box as wide as its two sides has no bottom."""
    layout, cut = with_cutting(lay(box(width=2 * 18.3)))
    assert "B1-BOTTOM" not in {piece.id for piece in cut.pieces}
    told = [fact_of(problem) for problem in layout.problems if problem.code == "piece-no-room"]
    assert any("B1-BOTTOM" in text for text in told)


def test_a_groove_through_its_board_is_told() -> None:
    """8 deep in a board of 9 leaves 1."""
    made = replace(job(box(*DRAWERS)), material=Material(side=18.3, drawer_side=9.0))
    made = replace(made, build=Build(drawer_groove=8.0))
    layout, _ = with_cutting(lay_out(made))
    assert "groove-too-deep" in [problem.code for problem in layout.problems]
