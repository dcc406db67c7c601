"""Drawers that will not run."""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.hardware import SlideRecord
from jigs.given.job import ColumnSpec, FrontSpec, Grid, Overlay, ShelfSpec
from jigs.given.stated import DrawerSize, OpenedBy
from jigs.layout.layout import lay_out
from tests.jigs.sample import MATERIAL, SLIDE, box, codes, front_of, job
from tests.jigs.test_overlay import HINGES
from tests.said import fact_of, remedy_of

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
    """573.9 less the back 6 and its set-in 19 leaves 548.9; 457 + 16 goes in, 533 + 16 does not.

    549.0 and 548.9 are one figure in inches: millimetres come first."""
    (found,) = [p for p in drawer(depth=573.9).problems if p.code == "slide-too-long"]
    assert "573.9 mm" in fact_of(found)
    assert "takes 549.0 mm (" in fact_of(found)
    assert "less the back 6.0 mm" in fact_of(found)
    assert "set-in 19.0 mm (3/4 in)" in fact_of(found)
    assert fact_of(found).count(f"{573.9 - 6 - 19:.1f} mm (") == 1
    assert (
        "457.0 mm (18- in) is the longest usual length that fits ('undermount-457')"
        in remedy_of(found)
    )


def test_golden_box_with_thinner_sides_is_too_wide() -> None:
    """A box of 409.6 whose sides are really 15.2 is 379.2 inside, more than 378.6: an error."""
    assert 409.6 - 2 * 15.2 > 420.6 - 42
    assert "drawer-too-wide" in codes(
        drawer(drawer_side=15.2, drawer_box=DrawerSize(drawer_width=409.6))
    )
    assert "drawer-too-wide" not in codes(
        drawer(drawer_side=15.9, drawer_box=DrawerSize(drawer_width=409.6))
    )
    assert "drawer-too-narrow" in codes(drawer(drawer_box=DrawerSize(drawer_width=405.0)))


def test_a_box_too_narrow_for_any_drawer() -> None:
    """Opening W - 36.6, outside that - 42 + 2 x 15.9: 50 inside from W 128.6 up. Rear hooks are
    not asked for in a box that there is not."""
    for width, found in ((36.6 + 42 + 50 + 1.6, False), (36.6 + 42 + 49.0, True), (30.0, True)):
        for slide in (SLIDE, HOOKED):
            front = FrontSpec(id="B1-1", kind="drawer", opened_by=OpenedBy(pull="none"))
            made = lay_out(job(box(front, kind="drawer", width=width), slide=slide))
            found_codes = codes(made, "B1-1")
            assert ("drawer-no-width" in found_codes) is found
            assert not (found and "hook-outside" in found_codes)
            assert not (found and not front_of(made, "B1-1").withheld)


def test_drawer_height() -> None:
    """A given height above the room there is, and one under 50, are both refused."""
    assert "drawer-too-high" in codes(drawer(drawer_box=DrawerSize(drawer_height=760.0)))
    assert "drawer-too-low" in codes(drawer(drawer_box=DrawerSize(drawer_height=45.0)))
    assert codes(drawer(drawer_box=DrawerSize(drawer_height=400.0))) == []


def test_a_box_that_strikes_the_front_above() -> None:
    """The golden stack's second box takes 417.6 - 2 - 256.3 = 159.3; 165.1 is refused."""
    fronts = [FrontSpec(id=f"B1-{i}", kind="drawer", height=h)
              for i, h in ((1, 163.5), (2, 188.8))]  # fmt: skip
    third = FrontSpec(
        id="B1-3", kind="drawer", height=188.8, drawer_box=DrawerSize(drawer_height=165.1)
    )
    last = FrontSpec(id="B1-4", kind="drawer", height=220.8)
    (found,) = [p for p in lay_out(job(box(*fronts, third, last))).problems if p.part == "B1-3"]
    assert found.code == "drawer-too-high"
    assert "(165.1 mm) high strikes the front above it when it is pulled out" in fact_of(found)
    assert "(159.3 mm)" in fact_of(found)
    # 159 passes, but stands 0.9 above the 158.1 of its own front above the box's underside.
    for height, told in ((159.0, ["drawer-above-front"]), (158.0, [])):
        given = replace(third, drawer_box=DrawerSize(drawer_height=height))
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


@pytest.mark.parametrize(("deep", "told"), [(10.0, False), (15.9, False), (16.0, True)])
def test_a_hook_bored_deeper_than_the_back_is_told(deep: float, told: bool) -> None:
    """The back is of the drawer sides' board, 15.9: deeper comes out behind; it is told."""
    layout = drawer(replace(HOOKED, hook_depth=deep))
    assert ("hook-through" in codes(layout, "B1-1")) is told
    assert not front_of(layout, "B1-1").withheld


# --- beside a fixed shelf ---------------------------------------------------------------------


def shelved(
    at: float,
    *,
    overlay: Overlay = "inset",
    slide: SlideRecord = SLIDE,
    columns: int = 1,
    slides_on_grid: bool = False,
    drawer_height: float | None = None,
) -> Layout:
    """Lay out a 150 drawer over a door, in the last column, and a fixed shelf whose upper face
    stands at this height, mm."""
    spec = replace(
        box(
            FrontSpec(
                id="D",
                kind="drawer",
                height=150.0,
                column=columns,
                drawer_box=DrawerSize(drawer_height=drawer_height),
            ),
            FrontSpec(id="E", kind="door", hinged="right", column=columns),
            width=457.2 * columns,
            depth=610.0,
        ),
        overlay=overlay,
        columns=(ColumnSpec(),) * columns if columns > 1 else (),
        shelves=(ShelfSpec(at=at),),
    )
    grid = Grid(slides=slides_on_grid)
    return lay_out(job(spec, slide=slide, grid=grid, hinge=HINGES[overlay]))


INSET_LINE = 774.7 - 18.3 - 2 - 150 - 2
"""The floor line of an inset drawer: an inset gap of 2 under its front, as on the bottom panel."""
FULL_LINE = 774.7 - 1.6 - 150 + 18.3 - 1.6
"""The same of a full-overlay one: d_fb less b above its front's bottom edge."""
RAISED = replace(SLIDE, mount="side", centre_height=40.0, drawer_rise=15.0)


@pytest.mark.parametrize(
    ("above", "held"), [(0.0, False), (-30.0, False), (0.1, True), (9.3, True), (14 + 6.2, True)]
)
def test_a_shelf_where_a_drawers_slides_stand(above: float, held: bool) -> None:
    """The board's top stands at or below the slides' floor line, b = 14 under the drawer
    (derived): 9.3 above that line, or 6.2 above the drawer's underside, no slide can be set."""
    layout = shelved(INSET_LINE + above)
    assert front_of(layout, "D").withheld is held
    assert ("drawer-into-shelf" in codes(layout, "D")) is held
    assert not front_of(layout, "E").withheld
    slides = [f for side in layout.sides for f in side.fittings if f.part == "D"]
    assert bool(slides) is not held


@pytest.mark.parametrize(("above", "held"), [(0.0, False), (0.5, True), (9.3, True)])
def test_the_same_under_a_full_overlay_drawer_of_the_second_column(
    above: float, held: bool
) -> None:
    """d_fb - b = 18.3 - 1.6 above its own front's bottom edge."""
    assert front_of(shelved(FULL_LINE + above, overlay="full", columns=2), "D").withheld is held


@pytest.mark.parametrize(("above", "held"), [(15.0, False), (15.1, True), (10.0, False)])
def test_a_side_mounted_drawer_keeps_its_underside_free(above: float, held: bool) -> None:
    """A side mount has no floor line: the board's top is at or below the drawer's underside, 15
    above where an undermount would lie."""
    layout = shelved(FULL_LINE + above, overlay="full", slide=RAISED)
    assert front_of(layout, "D").withheld is held


def test_a_shelf_that_cuts_into_the_drawer_box_or_lies_close_over_it() -> None:
    """Over the least box of 50 there stay 10 to the board (common practice): its underside 60 or
    more above the drawer's; less is held, more makes the box lower."""
    underside = INSET_LINE + 14
    low = shelved(underside + 60 + 18.3, drawer_height=50.0)
    assert not front_of(low, "D").withheld
    for over in (59.9, 20.0, 0.1):
        assert "drawer-into-shelf" in codes(shelved(underside + over + 18.3), "D")


def on_grid(a: float, under: float) -> Layout:
    """Lay out the inset drawer with a low box on the grid, its fixing holes `a` above the floor
    line, over a shelf whose top is `under` below that line where no grid moves it."""
    slide = replace(SLIDE, fixing_height=a)
    return shelved(
        INSET_LINE - under,
        slide=slide,
        slides_on_grid=True,
        drawer_height=60.0,
    )


def test_on_the_grid_a_drawer_is_judged_where_it_stands() -> None:
    """Raised by 4.95 to the next 32 mm hole its slides clear a shelf that they would strike."""
    assert pytest.approx(19.35 + 32 * 20) == INSET_LINE + 52 + 4.95
    assert front_of(shelved(INSET_LINE + 4.9), "D").withheld
    assert not front_of(on_grid(52.0, -4.9), "D").withheld
    assert front_of(on_grid(52.0, -5.0), "D").withheld


def test_no_drawer_sinks_into_the_shelf_it_stands_on_to_meet_the_grid() -> None:
    """With a 57.2 its hole line is 0.25 above a hole, to which it sinks where nothing is below."""
    lines = [on_grid(57.2, under).sides[0].fittings[0].holes[0].y for under in (0.3, 0.2)]
    assert lines == pytest.approx([INSET_LINE + 57.2 - 0.25, INSET_LINE + 57.2])


def test_an_inset_drawer_across_columns_stands_on_its_own_board() -> None:
    """The board that ends the partition under it keeps out of its slides' way: 2 below its
    front's edge, as the bottom panel is below the lowest front."""
    fronts = (
        FrontSpec(id="D", kind="drawer", height=150.0, span=2),
        FrontSpec(id="E", kind="door", hinged="left"),
        FrontSpec(id="F", kind="door", hinged="right", column=2),
    )
    spec = replace(
        box(*fronts, width=914.4, depth=610.0),
        overlay="inset",
        columns=(ColumnSpec(), ColumnSpec(share=2)),
    )
    layout = lay_out(job(spec, hinge=HINGES["inset"]))
    assert not front_of(layout, "D").withheld
    board = next(side for side in layout.sides if side.partition)
    assert board.ends.base + board.height == pytest.approx(INSET_LINE - 18.3)
