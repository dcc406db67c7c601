"""Drawers that will not run."""

from dataclasses import replace

import pytest

from jigs.hardware import SlideRecord
from jigs.job import FrontSpec, Grid
from jigs.layout import lay_out
from jigs.parts import Layout
from tests.jigs.sample import MATERIAL, SLIDE, box, codes, front_of, job

HOOKED = replace(SLIDE, hook_diameter=6.0, hook_depth=10.0, hook_height=24.0, hook_inset=8.0)


def drawer(
    slide: SlideRecord = SLIDE, *, depth: float = 584.2, drawer_side: float = 15.9, **given: object
) -> Layout:
    """Lay out one drawer of the whole box's height."""
    front = FrontSpec(id="B1-1", **{"kind": "drawer", **given})  # type: ignore[arg-type]
    material = replace(MATERIAL, drawer_side=drawer_side)
    return lay_out(job(box(front, kind="tall", depth=depth), slide=slide, material=material))


@pytest.mark.parametrize(("depth", "held"), [(584.2, False), (574.0, False), (573.9, True)])
def test_slide_depth(depth: float, held: bool) -> None:
    """Inside depth, the box's less 19 and the back's 6, reaches length plus 16: 549."""
    assert 574.0 - 19 - 6 == 533 + 16
    assert ("slide-too-long" in codes(drawer(depth=depth))) is held


def test_a_slide_too_long_says_where_the_depth_goes() -> None:
    """573.9 less the back 6 and its set-in 19 leaves 548.9; 457 + 16 goes in, 533 + 16 does not."""
    (found,) = [p for p in drawer(depth=573.9).problems if p.code == "slide-too-long"]
    assert "573.9 mm" in found.text
    assert "less the back 1/4-" in found.text or "6.0 mm" in found.text
    assert "set-in 3/4 in (19.0 mm)" in found.text
    assert f"({573.9 - 6 - 19:.1f} mm)" in found.text
    assert "(457.0 mm) is the longest usual length that fits ('undermount-457')" in found.remedy


def test_golden_box_with_thinner_sides_is_too_wide() -> None:
    """A box of 409.6 whose sides are really 15.2 is 379.2 inside, more than 378.6: an error."""
    assert 409.6 - 2 * 15.2 > 420.6 - 42
    assert "drawer-too-wide" in codes(drawer(drawer_side=15.2, drawer_width=409.6))
    assert "drawer-too-wide" not in codes(drawer(drawer_side=15.9, drawer_width=409.6))
    assert "drawer-too-narrow" in codes(drawer(drawer_width=405.0))


def test_a_box_too_narrow_for_any_drawer() -> None:
    """Opening W - 36.6, outside that - 42 + 2 x 15.9: 50 inside from W 128.6 up. Rear hooks are
    not asked for in a box that there is not."""
    for width, found in ((36.6 + 42 + 50 + 1.6, False), (36.6 + 42 + 49.0, True), (30.0, True)):
        for slide in (SLIDE, HOOKED):
            front = FrontSpec(id="B1-1", kind="drawer", pull="none")
            made = lay_out(job(box(front, kind="drawer", width=width), slide=slide))
            found_codes = codes(made, "B1-1")
            assert ("drawer-no-width" in found_codes) is found
            assert not (found and "hook-outside" in found_codes)
            assert not (found and not front_of(made, "B1-1").withheld)


def test_drawer_height() -> None:
    """A given height above the room there is, and one under 50, are both refused."""
    assert "drawer-too-high" in codes(drawer(drawer_height=760.0))
    assert "drawer-too-low" in codes(drawer(drawer_height=45.0))
    assert codes(drawer(drawer_height=400.0)) == []


def test_a_box_that_strikes_the_front_above() -> None:
    """The golden stack's second box takes 417.6 - 2 - 256.3 = 159.3; 165.1 is refused."""
    fronts = [FrontSpec(id=f"B1-{i}", kind="drawer", height=h)
              for i, h in ((1, 163.5), (2, 188.8))]  # fmt: skip
    third = FrontSpec(id="B1-3", kind="drawer", height=188.8, drawer_height=165.1)
    last = FrontSpec(id="B1-4", kind="drawer", height=220.8)
    (found,) = [p for p in lay_out(job(box(*fronts, third, last))).problems if p.part == "B1-3"]
    assert found.code == "drawer-too-high"
    assert "(165.1 mm) high strikes the front above it when it is pulled out" in found.text
    assert "(159.3 mm)" in found.text
    # 159 passes, but stands 0.9 above the 158.1 of its own front above the box's underside.
    for height, told in ((159.0, ["drawer-above-front"]), (158.0, [])):
        given = replace(third, drawer_height=height)
        assert codes(lay_out(job(box(*fronts, given, last))), "B1-3") == told


def test_clearance_under_the_lowest() -> None:
    """A record that needs 16 under the drawer and has 14 is told."""
    assert "drawer-clearance" in codes(drawer(replace(SLIDE, least_rise=16.0)))
    assert "drawer-clearance" not in codes(drawer(replace(SLIDE, least_rise=14.0)))


def test_clearance_under_a_side_mount() -> None:
    """Under a side-mounted lowest drawer 15 is common practice."""
    side = replace(SLIDE, mount="side", width_less=26.0, centre_height=32.0, drawer_rise=15.0)
    assert "drawer-clearance" not in codes(drawer(side))
    assert "drawer-clearance" in codes(drawer(replace(side, drawer_rise=12.0)))


def test_a_drawer_held_back_is_not_said_to_miss_the_grid() -> None:
    """Its line will move when it is mended; both sides lack its holes until then."""
    high = FrontSpec(id="B1-1", kind="drawer", height=150.0, drawer_height=700.0)
    fine = FrontSpec(id="B1-2", kind="drawer")
    layout = lay_out(job(box(high, fine)))
    assert [front.withheld for front in layout.fronts] == [True, False]
    assert "slides-off-grid" not in codes(layout)
    assert [side.missing for side in layout.sides] == [("B1-1",), ("B1-1",)]
    both = lay_out(job(box(replace(high, drawer_height=None), fine)))
    (said,) = [p.text for p in both.problems if p.code == "slides-off-grid"]
    assert "B1-1 " in said
    assert [side.missing for side in both.sides] == [(), ()]


@pytest.mark.parametrize(("lift", "told"), [(0.4, False), (0.6, True), (1.2, True)])
def test_the_lowest_undermount_drawer_stands_on_the_panel(lift: float, told: bool) -> None:
    """Its underside is t + b above the box's bottom; the grid may take half a millimetre."""
    fronts = (FrontSpec(id="B1-1", kind="opening"),
              FrontSpec(id="B1-2", kind="drawer", height=400.0))  # fmt: skip
    start = 18.3 + 33.0 + lift - 32
    layout = lay_out(job(box(*fronts), grid=Grid(slides=True, start=start)))
    assert ("drawer-off-panel" in codes(layout, "B1-2")) is told
    mounted = replace(SLIDE, mount="side", centre_height=19.0)
    layout = lay_out(job(box(*fronts), slide=mounted, grid=Grid(slides=True, start=start)))
    assert "drawer-off-panel" not in codes(layout, "B1-2")
