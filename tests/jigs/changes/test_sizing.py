"""Sizes before and after: what is cut down, what is lost, and where it is cut for its holes."""

import pytest
from msgspec.structs import replace

from jigs.changes.made import DrilledFor, MadeHole, MadePart
from jigs.changes.sizing import compare_sizes, compare_trimmed

SIDE = MadePart(
    id="B1-SIDE-L", kind="side", code="M2QX", size=(774.7, 584.2, 18.3), stuff="side",
    cut=(774.7, 583.6, 18.3), band=("front",), banding=0.6,
    holes=tuple(
        MadeHole(purpose="slide", face="inside", side="left", x=x, y=51.3, diameter=5, depth=12)
        for x in (37.0, 151.0)
    ),
)  # fmt: skip
DOOR = MadePart(
    id="B1-2", kind="door", code="7K4F", size=(454.0, 613.0, 19.05), hinged="right",
    drilled_for=DrilledFor(fit=(5, 3)),
    holes=(MadeHole(purpose="cup", face="back", x=454 - 22.5, y=97.8, diameter=35, depth=13),),
)  # fmt: skip


@pytest.mark.parametrize(
    ("after", "kinds"),
    [
        (SIDE, []),
        (replace(SIDE, cut=(774.7, 570.0, 18.3)), ["down"]),
        (replace(SIDE, cut=(780.0, 570.0, 18.3)), ["anew"]),
        (replace(SIDE, stuff="partition"), ["board"]),
        (replace(SIDE, cut=(774.7, 583.6, 18.0)), ["thick"]),
        (replace(SIDE, cut=(774.7, 570.0, 18.0)), ["thick", "down"]),
        (replace(SIDE, banding=1.0), ["band"]),
        (replace(SIDE, joined=(8.0,)), ["joints"]),
        (replace(SIDE, count=2), ["more"]),
        (replace(SIDE, cut=()), ["gone"]),
        (replace(SIDE, cut=(774.74, 583.6, 18.3)), []),
    ],
)
def test_what_becomes_of_a_piece(after: MadePart, kinds: list[str]) -> None:
    """Smaller is cut down, larger is lost; half a tenth is nothing."""
    assert [change.kind for change in compare_sizes(SIDE, after)] == kinds


def test_a_front_that_is_measured_is_as_it_is() -> None:
    """Nothing is sawn off it, nor is it too small; its holes stand where they were set from."""
    here = replace(
        DOOR, in_hand=True, size=(453.2, 613.0, 19.05),
        holes=(replace(DOOR.holes[0], x=453.2 - 22.5),),
    )  # fmt: skip
    assert compare_sizes(DOOR, here) == ()
    assert compare_trimmed(DOOR, here) == (None, ())


def test_a_door_is_cut_down_at_the_edge_that_spares_its_cups() -> None:
    """Hinged right: all of it comes off the left edge."""
    after = replace(DOOR, size=(450.0, 613.0, 19.05), holes=(replace(DOOR.holes[0], x=450 - 22.5),))
    trim, holes = compare_trimmed(DOOR, after)
    assert trim is not None
    assert (trim.left, trim.bottom) == pytest.approx((4.0, 0.0))
    assert holes == ()


def test_a_side_is_cut_down_at_its_rear() -> None:
    """Its holes count from the front edge."""
    trim, holes = compare_trimmed(
        SIDE, replace(SIDE, size=(774.7, 570.0, 18.3), cut=(774.7, 569.4, 18.3))
    )
    assert trim is not None
    assert (trim.left, holes) == (0.0, ())


def test_a_front_that_is_smaller_both_ways_is_cut_by_hand_arithmetic() -> None:
    """Alike to neither edge: 500 x 700 becomes 487 x 676, so 13 comes off its width and 24 off its
    height. Its fitting stands 60 from the right edge and 90 from the top: at 500 - 60 = 440 and
    700 - 90 = 610, then at 487 - 60 = 427 and 676 - 90 = 586. 440 - 427 = 13 off the left edge and
    610 - 586 = 24 off the bottom edge leave it where it is; a knob 100 above the bottom edge and 50
    from the left one is then off by both."""
    arm = MadeHole(purpose="manual", face="back", x=440.0, y=610.0, diameter=5, depth=12)
    arms = (arm, replace(arm, y=578.0), replace(arm, y=546.0))
    knob = MadeHole(purpose="pull", face="front", x=50.0, y=100.0, diameter=5, depth=None)
    was = MadePart(id="W3-1", kind="lift", code="7K4F", size=(500, 700, 19), holes=(*arms, knob))
    now = replace(
        was, size=(487, 676, 19),
        holes=(*(replace(arm, x=427.0, y=arm.y - 24) for arm in arms), knob),
    )  # fmt: skip
    trim, holes = compare_trimmed(was, now)
    assert trim is not None
    assert (trim.left, trim.bottom) == pytest.approx((13.0, 24.0))
    [moved] = holes
    assert moved.cure == "shows"
    assert moved.by == pytest.approx((13**2 + 24**2) ** 0.5, abs=1e-3)


def test_the_whole_cut_at_one_end_is_tried_among_many_rows() -> None:
    """A side with uneven rows that is cut 90 mm shorter at its bottom end: every hole stays."""
    heights = (100, 113, 131, 160, 171, 190, 215, 222, 260, 301, 355, 390, 480, 700)
    rows = tuple(
        MadeHole(purpose="shelf", face="inside", side="left", x=x, y=y, diameter=5, depth=12)
        for x in (37.0, 520.0) for y in map(float, heights)
    )  # fmt: skip
    was = replace(SIDE, holes=rows)
    lower = tuple(replace(hole, y=hole.y - 90) for hole in rows)
    now = replace(
        was, size=(774.7 - 90, 584.2, 18.3), cut=(774.7 - 90, 583.6, 18.3), holes=lower
    )  # fmt: skip
    trim, holes = compare_trimmed(was, now)
    assert trim is not None
    assert (trim.left, trim.bottom) == pytest.approx((0.0, 90.0))
    assert holes == ()


def test_a_drawer_box_of_another_size_is_another_box() -> None:
    """Its pieces tell the rest."""
    box = MadePart(id="B1-1-BOX", kind="drawer-box", code="P4RT", size=(409.6, 88.9, 533.0, 15.9))
    [change] = compare_sizes(box, replace(box, size=(409.6, 101.6, 533.0, 15.9)))
    assert change.kind == "box"
