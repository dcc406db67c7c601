"""Parts by box, and who hangs under whom."""

from jigs.box.bypart import hung_over, hung_under, parts_of_box
from jigs.given.job import FrontSpec
from tests.jigs.sample import box, front_of, lay

LEAVES = lay(
    box(FrontSpec(id="B1-1", kind="drawer", height=152.4), FrontSpec(id="B1-2", kind="pair"),
        width=914.4),
    box(FrontSpec(id="B2-1", kind="door", hinged="left"), name="B2"),
)  # fmt: skip


def test_a_box_has_its_own_parts_in_order() -> None:
    """Fronts from the top, then both sides; an unknown box has none."""
    parts = parts_of_box(LEAVES, "B1")
    assert [front.id for front in parts.fronts] == ["B1-1", "B1-2L", "B1-2R"]
    assert [side.board for side in parts.sides] == ["B1-SIDE-L", "B1-SIDE-R"]
    assert parts_of_box(LEAVES, "B9").fronts == ()


def test_neighbours_above_and_below() -> None:
    """Both leaves hang under the drawer; the drawer hangs over the leaf nearest its left end."""
    drawer = front_of(LEAVES, "B1-1")
    for leaf in ("B1-2L", "B1-2R"):
        assert hung_under(LEAVES, front_of(LEAVES, leaf)) is drawer
        assert hung_over(LEAVES, front_of(LEAVES, leaf)) is None
    assert hung_over(LEAVES, drawer) is front_of(LEAVES, "B1-2L")
    assert hung_under(LEAVES, drawer) is None


def test_another_layout_is_sorted_anew() -> None:
    """What was sorted for one layout is never given for another."""
    assert parts_of_box(LEAVES, "B2").fronts
    other = lay(box(FrontSpec(id="B2-9", kind="drawer"), name="B2"))
    assert [front.id for front in parts_of_box(other, "B2").fronts] == ["B2-9"]
    assert [front.id for front in parts_of_box(LEAVES, "B2").fronts] == ["B2-1"]
