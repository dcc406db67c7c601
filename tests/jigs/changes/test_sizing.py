"""Sizes before and after: what is cut down, what is lost, and where it is cut for its holes."""

from dataclasses import replace

import pytest

from jigs.changes.made import MadeHole, MadePart
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
    id="B1-2", kind="door", code="7K4F", size=(454.0, 613.0, 19.05), hinged="right", fit=(5, 3),
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


def test_a_drawer_box_of_another_size_is_another_box() -> None:
    """Its pieces tell the rest."""
    box = MadePart(id="B1-1-BOX", kind="drawer-box", code="P4RT", size=(409.6, 88.9, 533.0, 15.9))
    [change] = compare_sizes(box, replace(box, size=(409.6, 101.6, 533.0, 15.9)))
    assert change.kind == "box"
