"""One box laid out: what holds a part back, every kind of front, and what holds of any box."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.box.parts import Front, Layout
from jigs.given.job import FrontKind, FrontSpec, Grid
from jigs.given.stated import NOTED, Boring, DrawerSize, HandHole, Hung, OpenedBy
from jigs.ground.geometry import Hole
from jigs.layout.layout import lay_out
from tests.jigs.sample import GOLDEN, UNDER_COUNTER, box, codes, front_of, job, lay, side_of
from tests.said import remedy_of


def spec(name: str, kind: FrontKind = "drawer", **given: object) -> FrontSpec:
    """Give a front as the job states it."""
    return FrontSpec(id=name, kind=kind, **given)  # type: ignore[arg-type]


def places(holes: tuple[Hole, ...], purpose: str) -> list[tuple[float, float]]:
    """Give the places of the holes for one purpose, to 0.01."""
    return [(round(h.x, 2), round(h.y, 2)) for h in holes if h.purpose == purpose]


@pytest.mark.parametrize(
    ("front", "code"),
    [
        (spec("B1-1", "door"), "hand-not-stated"),
        (spec("B1-1", "panel"), "leaflet-not-noted"),
        (spec("B1-1", "door", hinged="left", thickness=15.0), "skin-under-cup"),
        (spec("B1-1", "door", hinged="left", boring=Boring(bored=True)), "bored-heights-missing"),
        (spec("B1-1", "door", hinged="left", hung=Hung(hinges_at=(40.0, 600.0))), "hinge-against"),
        (spec("B1-1", "door", hinged="left", hung=Hung(hinges_at=(100.0, 150.0))), "hinge-against"),
        (spec("B1-1", drawer_box=DrawerSize(drawer_height=900.0)), "drawer-too-high"),
        (spec("B1-1", drawer_box=DrawerSize(drawer_width=413.0)), "drawer-too-wide"),
        (spec("B1-1", "door", hinged="left", width=460.0), "reveals-do-not-close"),
        (spec("B1-1", "door", hinged="left", width=771.5, height=454.0), "sizes-exchanged"),
    ],
)
def test_errors_withhold_their_part(front: FrontSpec, code: str) -> None:
    """A held part keeps its sizes and has no holes, neither in itself nor in the sides."""
    layout = lay(box(front, depth=620))
    (laid,) = layout.fronts
    assert laid.withheld
    assert laid.holes == ()
    assert laid.drawer is None or laid.drawer.holes == ()
    assert code in codes(layout, "B1-1")
    assert code in {problem.code for problem in laid.held}
    assert all(side.holes == () for side in layout.sides)


def test_a_held_part_holds_no_other() -> None:
    """The door without a hand is held; the drawer above it is drilled."""
    layout = lay(box(spec("B1-1", height=152.4), spec("B1-2", "door")))
    assert not front_of(layout, "B1-1").withheld
    assert front_of(layout, "B1-2").withheld
    assert {f.part for f in side_of(layout, "B1-SIDE-L").fittings} == {"B1-1"}


def test_more_fronts_than_the_box_can_hold() -> None:
    """Nothing is left for the third front: all are held, and the text says why."""
    layout = lay(box(spec("B1-1", height=400), spec("B1-2", height=400), spec("B1-3")))
    assert all(front.withheld for front in layout.fronts)
    (finding,) = (p for p in layout.problems if p.code == "reveals-do-not-close")
    assert finding.part == "B1"
    assert finding.also == ("B1-1", "B1-2", "B1-3")
    assert codes(layout) == ["reveals-do-not-close"]


def test_a_slide_too_long_and_a_drawer_too_low() -> None:
    """Errors of the slide: the box 60 mm less deep, the top front 60 high."""
    layout = lay(box(spec("B1-1"), depth=524.0))
    assert "slide-too-long" in codes(layout, "B1-1")
    layout = lay(box(spec("B1-1", height=60), spec("B1-2")))
    assert "drawer-too-low" in codes(layout, "B1-1")
    assert not front_of(layout, "B1-2").withheld


def test_panel_with_its_leaflet() -> None:
    """A noted panel has the pull that it names, as a pullout's, and nothing is found."""
    hole = HandHole(x=40, y=60, diameter=2.5, depth=10, face="back", purpose="bracket")
    stated = spec("B1-1", "panel", leaflet=NOTED, holes=(hole,))
    (panel,) = lay(box(stated, width=609.6)).fronts
    assert places(panel.holes, "pull") == []
    layout = lay(box(replace(stated, opened_by=OpenedBy(pull="bar")), width=609.6))
    (panel,) = layout.fronts
    assert places(panel.holes, "manual") == [(40, 60)]
    assert [y for _, y in places(panel.holes, "pull")] == pytest.approx([708.0, 708.0])
    assert codes(layout, "B1-1") == ["counter-reveal"]  # the golden box stands under none


def test_lift_up_front_takes_its_holes_by_hand() -> None:
    """A lift-up front has the group of its leaflet and a pull, and no hinge."""
    holes = tuple(
        HandHole(x=x, y=y, diameter=5, depth=11, face="back", purpose="lift fitting")
        for x in (30.0, 424.0)
        for y in (300.0, 332.0)
    )
    layout = lay(box(spec("W1-1", "lift", holes=holes), kind="wall", height=400, name="W1"))
    (front,) = layout.fronts
    manual = [f for f in front.fittings if f.kind == "manual"]
    assert [(f.index, f.count, len(f.holes)) for f in manual] == [(1, 2, 2), (2, 2, 2)]
    assert [y for _, y in places(front.holes, "pull")] == pytest.approx([63.5, 63.5])
    assert all(side.holes == () for side in layout.sides)


def test_pullout_on_slides_and_on_a_kit() -> None:
    """A pullout runs on slides; with a kit's holes in its back it brings none."""
    layout = lay(box(spec("B1-1", "pullout")))
    assert [f.kind for f in side_of(layout, "B1-SIDE-L").fittings] == ["slide"]
    hole = HandHole(x=100, y=60, diameter=2.5, depth=10, face="back", purpose="frame")
    layout = lay(box(spec("B1-1", "pullout", holes=(hole,))))
    assert layout.fronts[0].drawer is None
    assert side_of(layout, "B1-SIDE-L").fittings == ()


def test_an_opening_has_no_front() -> None:
    """An opening takes its row and nothing else; an open box without fronts has no sides."""
    layout = lay(
        box(spec("B1-1", "opening", height=450), spec("B1-2")),
        box(spec("B2-1", "opening"), kind="open", name="B2"),
    )
    assert [front.id for front in layout.fronts] == ["B1-2"]
    assert (layout.fronts[0].place.row, layout.fronts[0].place.rows) == (2, 2)
    assert {side.box for side in layout.sides} == {"B1"}


KINDS: list[FrontKind] = ["door", "pair", "drawer", "pullout", "false-front", "opening"]


@settings(max_examples=60)
@given(
    st.lists(
        st.tuples(st.sampled_from(KINDS), st.none() | st.floats(80, 500)), min_size=1, max_size=5
    ),
    st.floats(250, 1200),
    st.floats(500, 2400),
    st.sampled_from(["base", "sink", "wall", "tall", "drawer"]),
    st.booleans(),
)
def test_cups_answer_plates_and_holes_stay_inside(
    rows: list[tuple[FrontKind, float | None]], width: float, height: float, kind: str, grid: bool
) -> None:
    """Whatever the box: cups and plates agree, slides are level, no hole leaves its part."""
    fronts = [
        spec(f"B1-{i}", row, height=high, hinged="left" if row == "door" else None)
        for i, (row, high) in enumerate(rows, start=1)
    ]
    layout = lay_out(
        job(
            box(*fronts, width=width, height=height, kind=kind),  # type: ignore[arg-type]
            grid=Grid(hinges=grid, slides=grid),
            reveal=GOLDEN,
        )
    )
    left, right = side_of(layout, "B1-SIDE-L"), side_of(layout, "B1-SIDE-R")
    for front in layout.fronts:
        for hole in front.holes:
            assert 0 < hole.x < front.width
            assert 0 < hole.y < front.height
        _check_answers(front, layout)
    for side in (left, right):
        for hole in side.holes:
            assert 0 < hole.x < side.depth
            assert 0 < hole.y < side.height
    slides = [
        [(f.part, f.holes) for f in side.fittings if f.kind == "slide"] for side in (left, right)
    ]
    assert slides[0] == slides[1]
    held = {front.id for front in layout.fronts if front.withheld}
    assert not held & {f.part for side in (left, right) for f in side.fittings}


def _check_answers(front: Front, layout: Layout) -> None:
    """The plates of a door stand at its bottom edge plus its cups' heights."""
    if not front.hinged or front.withheld:
        return
    side = side_of(layout, f"B1-SIDE-{'L' if front.hinged == 'left' else 'R'}")
    plates = [(f.holes[0].y + f.holes[1].y) / 2 for f in side.fittings if f.part == front.id]
    cups = [front.place.y + f.holes[0].y for f in front.fittings if f.kind == "hinge"]
    assert plates == pytest.approx(cups, abs=1e-6)
    assert len(cups) >= 2


def test_a_hinge_keeps_clear_of_the_shelf_under_an_opening() -> None:
    """The shelf's lower face is at 774.7 - 1.6 - 250 - 18.3 = 504.8; hinges keep 35 from it."""
    for height, against in ((468.0, False), (469.0, True)):
        door = spec("B1-2", "door", hinged="left", hung=Hung(hinges_at=(100.0, height)))
        layout = lay(box(spec("B1-1", "opening", height=250.0), door))
        assert (front_of(layout, "B1-2").place.y + height > 504.8 - 35) is against
        assert ("hinge-against" in codes(layout, "B1-2")) is against
    # Placed by the tool: where the door's own end alone would let it stand higher.
    placed = lay(box(spec("B1-1", "opening", height=250.0), spec("B1-2", "door", hinged="left")))
    assert max(hole.y for hole in side_of(placed, "B1-SIDE-L").holes) - 16 <= 504.8 - 35


def test_screws_without_a_rail_want_blocks() -> None:
    """The stretchers of a base box lie flat; a sink's rail on edge takes all four screws."""
    rows = (spec("B1-1", "false-front", height=152.4), spec("B1-2", "pair"))
    layout = lay(box(*rows, width=914.4), reveal=UNDER_COUNTER)
    (told,) = [p for p in layout.problems if p.code == "blocks-needed"]
    front = front_of(layout, "B1-1")
    assert len(front.holes) == 4
    for hole in front.holes:
        assert f"({front.place.y + hole.y:.1f} mm)" in remedy_of(told)
    sink = lay(box(*rows, kind="sink", width=914.4), reveal=UNDER_COUNTER)
    assert "blocks-needed" not in codes(sink)
