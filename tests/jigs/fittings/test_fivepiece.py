"""Five-piece fronts: margins, pulls, fixing screws and glass."""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.fittings.fivepiece import FivePiece, five_piece_of, glass_door_mass, stand_ins_of_frame
from jigs.given.job import FrontSpec
from jigs.given.stated import FivePieceSpec, HandHole, OpenedBy, OwnReveals
from jigs.ground.geometry import Hand
from tests.jigs.sample import box, codes, front_of, lay
from tests.said import remedy_of

DRAWER = FivePiece(width=454.0, height=220.8, stile=57.0, rail=57.0, groove=11.0, panel=6.0)


def laid(**given: object) -> Layout:
    """Lay out a door in a wall box, or another front under an opening in a drawer box."""
    front = FrontSpec(id="B1-2", **given)  # type: ignore[arg-type]
    if front.kind == "door":
        return lay(replace(box(front, kind="wall"), no_shelf=True))
    return lay(box(FrontSpec(id="B1-1", kind="opening"), front, kind="drawer"))


@pytest.mark.parametrize(
    ("stile", "margin", "found"),
    [(57.0, 57 - 11 - 40, None), (50.0, 50 - 11 - 40, "cup-at-groove"), (51.0, 0, None),
     (44.0, 44 - 11 - 40, "stile-narrow"), (44.1, 44.1 - 51, "cup-at-groove")],
)  # fmt: skip
def test_hinge_margin(stile: float, margin: float, found: str | None) -> None:
    """Stile less groove less tab and cup: +6 passes, -1 warns, 44 and less is an error (derived;
    44: common practice, no source)."""
    frame = FivePiece(width=454, height=771.5, stile=stile, rail=57, groove=11, panel=6)
    assert frame.hinge_margin(tab=5.0, cup=35.0) == pytest.approx(margin)
    layout = laid(
        kind="door", hinged="left", five_piece=FivePieceSpec(stile=stile, rail=57.0, groove=11.0)
    )
    seen = [code for code in codes(layout) if code in ("cup-at-groove", "stile-narrow")]
    assert seen == ([found] if found else [])
    assert front_of(layout, "B1-2").withheld is (found == "stile-narrow")


def test_a_doors_pull_stands_on_the_middle_of_its_stile() -> None:
    """Half of 57 from the free edge."""
    front = front_of(laid(kind="door", hinged="left", five_piece=FivePieceSpec(stile=57.0)), "B1-2")
    assert {hole.x for hole in front.holes if hole.purpose == "pull"} == {454.0 - 57.0 / 2}


@pytest.mark.parametrize(("panel", "y"), [(6.0, 220.8 - 57 / 2), (10.0, 220.8 - 57 / 2),
                                          (16.0, 220.8 / 2)])  # fmt: skip
def test_a_drawers_pull_keeps_off_a_thin_panel(panel: float, y: float) -> None:
    """On a panel up to 10 thick it moves to the rail's middle and says so; else it stays."""
    layout = laid(kind="drawer", height=220.8, five_piece=FivePieceSpec(stile=57.0, panel=panel))
    pulls = [hole.y for hole in front_of(layout, "B1-2").holes if hole.purpose == "pull"]
    assert pulls == pytest.approx([y, y])
    told = [remedy_of(p) for p in layout.problems if p.code == "pull-on-rail"]
    # What is to be written is what the caliper says, not a number that silences it.
    remedy = "leave it so, or give the panel's thickness as the caliper has it"
    assert told == ([remedy] if panel <= 10 else [])


def test_a_narrow_rail_takes_no_pull() -> None:
    """A rail of 25 with a groove of 11 has 14 of solid wood: 12.5 + 2.5 is more."""
    layout = laid(kind="drawer", height=220.8, five_piece=FivePieceSpec(stile=57.0, rail=25.0))
    assert "pull-on-panel" in codes(layout)
    assert front_of(layout, "B1-2").withheld
    assert "pull-on-panel" not in codes(
        laid(kind="drawer", height=220.8, five_piece=FivePieceSpec(stile=57.0, rail=27.0))
    )


def test_a_thick_panel_is_what_the_screw_clamps() -> None:
    """16, less the counterbore of 4, and 7 more: 19; the nearest inch screw is 3/4 (19.05)."""
    front = front_of(
        laid(kind="drawer", height=220.8, five_piece=FivePieceSpec(stile=57.0, panel=16.0)), "B1-2"
    )
    assert front.screws.pull == pytest.approx(25.4 * 3 / 4)


def test_fixings_land_in_stile_or_rail() -> None:
    """The column at 22.2 + 15.9 + 32 stands over the panel: its screws go out to the stile's
    solid wood, or up into the rail; 2 of wood stay between the pilot of 3 and the groove."""
    layout = laid(kind="drawer", height=220.8, five_piece=FivePieceSpec(stile=57.0))
    front = front_of(layout, "B1-2")
    fixings = [hole for hole in front.holes if hole.purpose == "front-fixing"]
    assert len(fixings) == 4
    assert all(DRAWER.is_solid(hole.x, hole.y, 1.5 + 2) for hole in fixings)
    assert min(hole.x for hole in fixings) == pytest.approx(57 - 11 - 1.5 - 2)
    # The drawer's side ends at 22.2 + 15.9: a washer head, 12 across, would strike it.
    assert front.screws.head == pytest.approx(2 * (42.5 - 22.2 - 15.9), abs=0.1)
    assert front.drawer is not None
    through = {(round(h.x + front.drawer.x, 4), round(h.y + front.drawer.y, 4))
               for h in front.drawer.holes}  # fmt: skip
    assert through == {(round(hole.x, 4), round(hole.y, 4)) for hole in fixings}


def test_fixings_over_a_panel_are_an_error() -> None:
    """A stile of 50 holds to 39 - 2, and the drawer's side ends at 38.1: no screw passes."""
    layout = laid(kind="drawer", height=220.8, five_piece=FivePieceSpec(stile=50.0))
    assert "fixing-in-panel" in codes(layout)
    assert front_of(layout, "B1-2").withheld


@pytest.mark.parametrize("hand", ["left", "right"])
def test_screws_keep_off_the_groove_at_each_end_of_its_own(hand: Hand) -> None:
    """An own reveal of 4 brings one end 2.4 nearer to its drawer box: there the screw stands 2.4
    further in, still 2 off the groove at 46, or would be refused (derived)."""
    reveals = OwnReveals(left=4.0) if hand == "left" else OwnReveals(right=4.0)
    layout = laid(
        kind="drawer", height=220.8, five_piece=FivePieceSpec(stile=57.0), reveals=reveals
    )
    front = front_of(layout, "B1-2")
    xs = [hole.x for hole in front.holes if hole.purpose == "front-fixing"]
    outer = {"left": min(xs), "right": front.width - max(xs)}
    assert outer["left"] == outer["right"] == pytest.approx(57 - 11 - 1.5 - 2)
    room = {"left": 22.2 + 15.9, "right": 22.2 + 15.9}
    room[hand] -= 4.0 - 1.6
    assert front.screws.head == pytest.approx(2 * (42.5 - max(room.values())), abs=0.1)


def test_a_lower_screw_in_a_rail_passes_the_bottom_panel() -> None:
    """In a rail of 68 it stands at most 68 - 11 - 1.5 - 2 = 53.5 up; the bottom panel ends 13 + 6
    above the drawer's underside, and the head takes 6: 30.7 + 25 = 55.7. No screw (derived)."""
    narrow = {"kind": "drawer", "height": 220.8}
    assert "fixing-in-panel" in codes(
        laid(**narrow, five_piece=FivePieceSpec(stile=50.0, rail=68.0))
    )
    front = front_of(laid(**narrow, five_piece=FivePieceSpec(stile=50.0, rail=71.0)), "B1-2")
    low = min(hole.y for hole in front.holes if hole.purpose == "front-fixing")
    assert 30.7 + 13 + 6 + 6 <= low <= 71 - 11 - 1.5 - 2 + 1e-6


def test_glass_is_never_drilled() -> None:
    """A hole by hand in the pane, and a door without a frame, are errors."""
    hole = HandHole(x=227, y=300, diameter=5, depth=None, face="front", purpose="catch")
    on_stile = HandHole(x=20, y=300, diameter=5, depth=None, face="front", purpose="catch")
    base = {"kind": "door", "hinged": "left"}
    framed = FivePieceSpec(stile=57.0, glass=True)
    assert "hole-in-glass" in codes(laid(**base, five_piece=framed, holes=(hole,)))
    assert codes(laid(**base, five_piece=framed, holes=(on_stile,))) == []
    assert "glass-without-frame" in codes(laid(**base, five_piece=FivePieceSpec(glass=True)))


def test_a_hole_by_hand_in_a_thin_panel_is_an_error() -> None:
    """6 mm of panel hold nothing."""
    hole = HandHole(x=227, y=300, diameter=5, depth=5.0, face="back", purpose="catch")
    base = {"kind": "door", "hinged": "left", "holes": (hole,)}
    assert "hole-in-panel" in codes(laid(**base, five_piece=FivePieceSpec(stile=57.0)))
    assert "hole-in-panel" not in codes(
        laid(**base, five_piece=FivePieceSpec(stile=57.0, panel=12.0))
    )


def test_stiles_and_rails_leave_a_panel() -> None:
    """Two rails of 57 fill a front of 110 all but up, and one of 114 wholly."""
    assert "frame-without-panel" in codes(
        laid(kind="drawer", height=114.0, five_piece=FivePieceSpec(stile=57.0))
    )


def test_mass_of_a_glass_door() -> None:
    """About 10 kg/m2 at 4 mm of glass, and the frame's wood (common practice, no source)."""
    frame = FivePiece(width=600, height=2000, stile=60, rail=60, groove=11, panel=4, glass=True)
    pane = 0.48 * 1.88
    wood = (0.6 * 2.0 - pane) * 0.019 * 750
    assert glass_door_mass(frame, 19.0, 750.0) == pytest.approx(wood + 10 * pane)


def test_what_is_assumed_is_said() -> None:
    """Rails as wide as the stiles, groove 11, panel 6 stand in for what was not given."""
    spec = FrontSpec(id="F", kind="door", five_piece=FivePieceSpec(stile=57.0, rail=60.0))
    assert stand_ins_of_frame(spec) == (("groove", 11.0), ("panel", 6.0))
    assert stand_ins_of_frame(FrontSpec(id="F", kind="door")) == ()
    assert five_piece_of(FrontSpec(id="F", kind="door"), 400, 700) is None


def test_a_middle_screw_without_wood_is_left_out() -> None:
    """On a wide front neither rail of 30 reaches the middle column: the outer four hold it."""
    front = FrontSpec(
        id="B1-1",
        kind="drawer",
        height=152.4,
        five_piece=FivePieceSpec(stile=57.0, rail=30.0),
        opened_by=OpenedBy(pull="none"),
    )
    rest = FrontSpec(id="B1-2", kind="opening")
    layout = lay(box(front, rest, width=914.4))
    assert codes(layout, "B1-1").count("fixing-left-out") == 1
    fixings = [h for h in front_of(layout, "B1-1").holes if h.purpose == "front-fixing"]
    assert len(fixings) == 4
    assert not front_of(layout, "B1-1").withheld


def test_a_row_goes_to_its_own_rail_alone() -> None:
    """The lower row never leaps over the panel to the top rail."""
    front = FrontSpec(id="B1-1", kind="drawer", height=300.0, five_piece=FivePieceSpec(stile=57.0))
    layout = lay(box(FrontSpec(id="B1-2", kind="opening"), front, kind="drawer", width=914.4))
    middle = [h.y for h in front_of(layout, "B1-1").holes
              if h.purpose == "front-fixing" and abs(h.x - 911.2 / 2) < 1]  # fmt: skip
    assert len(middle) == 1
    assert middle[0] >= 300 - 57 + 11 + 1.5 - 1e-6
