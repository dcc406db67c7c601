"""The drilled face as the driller sees it."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.box.parts import Front
from jigs.ground.geometry import Fitting, Hole, mirror_x, turned_over
from templates.faces.views import view_of_drawer_box, view_of_side, views_of_front
from templates.words.facewords import drilled_words, edge_words, seen_words
from tests import uneven
from tests.jigs.sample import front_of, side_of
from tests.templates.printed import laid_out
from tests.templates.worked import worked_layout


def worked_front(name: str) -> Front:
    return front_of(worked_layout("in"), name)


def test_the_back_of_a_left_hung_door_has_its_hinges_on_the_right() -> None:
    """A cup at 22.5 from the left edge lies at 454 - 22.5 = 431.5 on the back."""
    back, face = views_of_front(worked_front("B3-2"), "in")
    assert (back.face, drilled_words(back), back.hinge_edge) == ("back", "BACK OF DOOR", "right")
    assert edge_words(back, "right") == "HINGE EDGE"
    assert edge_words(back, "left") == "FREE EDGE"
    assert "hinge edge on your RIGHT" in seen_words(back)
    assert "Hinges LEFT from the room" in seen_words(back)
    cups = [h for f in back.fittings for h in f.holes if h.purpose == "cup"]
    assert [h.x for h in cups] == [454.0 - 22.5] * 2
    assert [h.y for h in cups] == pytest.approx([97.75, 513.75])
    assert (face.face, face.hinge_edge) == ("front", "left")
    assert edge_words(face, "right") == "FREE EDGE"
    pulls = [h for f in face.fittings for h in f.holes]
    assert [h.x for h in pulls] == pytest.approx([454.0 - 50.8] * 2)


def test_a_right_hung_door_is_the_other_way_round() -> None:
    """Both hands are said apart."""
    door = replace(worked_front("B3-2"), hinged="right")
    back = views_of_front(door, "in")[0]
    assert back.hinge_edge == "left"
    assert "hinge edge on your LEFT" in seen_words(back)
    assert "Hinges RIGHT from the room" in seen_words(back)


def test_a_left_side_shows_its_front_edge_on_the_left() -> None:
    """It lies inside face up with its top end away; the right side mirrors it."""
    left = view_of_side(side_of(worked_layout("in"), "B1-SIDE-L"), "in")
    right = view_of_side(side_of(worked_layout("in"), "B1-SIDE-R"), "in")
    assert left
    assert right
    assert (left.front_edge, right.front_edge) == ("left", "right")
    assert "FRONT edge on your LEFT" in seen_words(left)
    assert "FRONT edge on your RIGHT" in seen_words(right)
    assert {h.x for f in left.fittings for h in f.holes} == {37.0, 165.0}
    assert {h.x for f in right.fittings for h in f.holes} == {584.2 - 37.0, 584.2 - 165.0}
    assert {f.carry for f in right.fittings} == {(584.2 - 261.0,)}
    assert (left.state.panel, left.state.band) == (18.3, 0.6)


def test_the_faces_of_the_uneven_box() -> None:
    """A door hung at the right, bored from behind 22.5 from its left end; a drawer box that stands
    13.05 in from the left on the back and 17.8 from the right; a partition's left face, which is
    a right side to its column, with its front edge on the right."""
    layout = laid_out(uneven.UNEVEN)
    back, face = views_of_front(front_of(layout, "B1-3"), "mm")
    assert (back.hinge_edge, edge_words(back, "left"), face.hinge_edge) == (
        "left",
        "HINGE EDGE",
        "right",
    )
    cups = [h.x for f in back.fittings for h in f.holes if h.purpose == "cup"]
    assert cups == pytest.approx([22.5] * 2)
    assert [h.x for f in face.fittings for h in f.holes] == pytest.approx([50.8] * 2)
    drawer = views_of_front(front_of(layout, "B1-1"), "mm")[0]
    xs = [x for x, _ in drawer.drawer_outline]
    assert (min(xs), uneven.DRAWER_WIDTH - max(xs)) == pytest.approx((13.05, 17.8))
    board = view_of_side(next(s for s in layout.sides if s.partition and s.side == "right"), "mm")
    assert board is not None
    assert (drilled_words(board), board.front_edge) == ("LEFT FACE OF PARTITION 1", "right")
    inside = 584.2 - 19 - 6
    xs = [h.x for f in board.fittings for h in f.holes]
    assert xs == pytest.approx([inside - 37] * 2)
    assert board.state.panel is None


def test_a_part_without_holes_has_no_face_to_drill() -> None:
    """No view, no sheet."""
    side = replace(side_of(worked_layout("in"), "B1-SIDE-L"), fittings=())
    assert view_of_side(side, "in") is None
    assert views_of_front(replace(worked_front("B3-1"), fittings=()), "in") == ()
    drawer = worked_front("B3-1").drawer
    assert drawer
    assert view_of_drawer_box(replace(drawer, fittings=()), 15.9, "in") is None


def test_the_drawer_box_is_seen_from_the_room() -> None:
    """Its clearance holes are drilled from outside."""
    drawer = worked_front("B3-1").drawer
    assert drawer
    view = view_of_drawer_box(drawer, 15.9, "mm")
    assert view
    assert (view.face, drilled_words(view), view.step) == ("box-front", "FRONT OF DRAWER BOX", 10.0)
    assert view.fittings == drawer.fittings


def test_the_drawer_box_is_dashed_on_the_back_of_its_front() -> None:
    """(454 - 409.6) / 2 = 22.2 from each end, 18.3 + 14 - 1.6 = 30.7 up (derived)."""
    back = views_of_front(worked_front("B3-1"), "in")[0]
    xs, ys = zip(*back.drawer_outline, strict=True)
    assert (min(xs), 454.0 - max(xs)) == (
        pytest.approx(22.2, abs=0.05),
        pytest.approx(22.2, abs=0.05),
    )
    assert min(ys) == pytest.approx(18.3 + 14 - 1.6)


@pytest.mark.parametrize(
    ("off", "bored", "shown"),
    [(0.0, False, True), (1.5, False, False), (0.0, True, None)],
)
def test_only_a_door_still_to_be_bored_can_be_reversible(
    off: float, bored: bool, shown: bool | None
) -> None:
    """Its cups stand as far from the top as from the bottom, or 1.5 mm off; of a drawer front the
    question does not arise."""
    cups = tuple(
        Fitting(
            kind="hinge",
            index=1,
            count=2,
            part=None,
            record=None,
            holes=(Hole(face="back", purpose="cup", x=22.5, y=y, diameter=35.0, depth=13.0),),
        )
        for y in (100.0, worked_front("B3-2").height - 100.0 - off)
    )
    door = replace(worked_front("B3-2"), fittings=cups, bored=bored)
    assert views_of_front(door, "in")[0].reversible is shown
    assert views_of_front(worked_front("B3-1"), "in")[0].reversible is None


@given(st.integers(0, 6), st.integers(100 * 8, 1200 * 8))
@settings(max_examples=30)
def test_mirroring_twice_changes_nothing(which: int, eighths: int) -> None:
    """A face turned over and back is the same face: holes, outlines and carried places."""
    fittings = [f for s in worked_layout("in").sides for f in s.fittings]
    fitting, width = fittings[which % len(fittings)], eighths / 8
    twice = turned_over(turned_over(fitting, width), width)
    assert len(twice.holes) == len(fitting.holes)
    for before, after in zip(fitting.holes, twice.holes, strict=True):
        assert replace(after, x=before.x) == before
        assert after.x == pytest.approx(before.x, abs=1e-9)
    for old, new in zip(fitting.outline, twice.outline, strict=True):
        assert [y for _, y in old] == [y for _, y in new]
        assert [x for x, _ in new] == pytest.approx([x for x, _ in old], abs=1e-9)
    assert twice.carry == pytest.approx(fitting.carry, abs=1e-9)
    assert mirror_x(mirror_x(37.0, width), width) == pytest.approx(37.0)
