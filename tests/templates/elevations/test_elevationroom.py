"""What an elevation says and shows of the room."""

import pytest
from msgspec.structs import replace

from jigs.cutlist.cutlist import cut_list
from jigs.given.job import FrontSpec
from jigs.given.stated import BlindEnd, EndPanels, PanelKind
from jigs.given.wallspec import WallEnd, WallSpec
from jigs.ground.geometry import HANDS, Hand, other_hand
from jigs.layout.layout import lay_out
from templates.elevations.elevation import draw_elevations
from templates.page.marks import Line, Outline, Text
from templates.page.paper import PAPERS
from tests.clashes import clashes_of_marks
from tests.jigs.sample import box, job, lay


def test_what_hangs_outside_of_the_chain_is_said_in_words() -> None:
    """Three boxes at heights of their own are too many for the chain at the right: it has the last
    one's, and the words those of the others."""
    standing = box(FrontSpec(id="B1-1", kind="drawer"), name="B1", width=1800.0)
    hanging = [
        box(FrontSpec(id=f"W{k}-1", kind="pair"), name=f"W{k}", width=600.0, kind="wall",
            height=300.0 + 50.0 * k, above_floor=1400.0 + 70.0 * k, x=600.0 * k)
        for k in range(3)
    ]  # fmt: skip
    [drawn] = draw_elevations(lay(standing, *hanging, units="mm"), PAPERS["common"])
    words = " ".join(m.text for m in drawn.page.marks if isinstance(m, Text))
    assert "W0: from 1400.0 mm (55 1/8- in) to 1700.0 mm" in words
    assert "W1: from 1470.0 mm" in words
    assert "W2: from" not in words
    assert clashes_of_marks(drawn.page) == []


@pytest.mark.parametrize("blind", [False, True])
@pytest.mark.parametrize("hand", HANDS)
def test_a_corner_says_what_its_line_is(hand: Hand, blind: bool) -> None:
    """The front edges round it, not hatched; the room's wall, hatched, where a blind box goes on
    into it. How far off the wall boxes' own line is, where their `x` counts from it: the depths'
    difference beyond that of the base boxes, the wall boxes' depth before the room's wall."""
    end = WallEnd(stands="corner", filler=60.0, meets="west")
    other = WallEnd(stands="corner", meets="north")
    north, west = WallSpec(name="north", left=end), WallSpec(name="west", right=other)
    if hand == "right":
        north, west = WallSpec(name="north", right=end), WallSpec(name="west", left=other)
    door = FrontSpec(id="B1-1", kind="door", hinged=other_hand(hand))
    hung = box(name="W1", kind="wall", above_floor=1400.0, height=720.0, depth=320.0)
    closed = BlindEnd(hand=hand, reach=700.0) if blind else None
    boxes = (
        replace(box(door, width=1066.8), blind=closed),
        hung,
        replace(box(name="C1", depth=600.0), wall="west"),
        replace(hung, id="D1", wall="west"),
    )
    layout = lay_out(replace(job(*boxes, units="mm"), walls=(north, west)))
    page = next(draw_elevations(layout, PAPERS["common"])).page
    assert clashes_of_marks(page) == []
    said = " ".join(mark.text for mark in page.marks if isinstance(mark, Text))
    assert f"Corner on the {hand}: " in said
    assert ("the room's wall, behind the boxes round it" in said) is blind
    far = "320.0 mm (12 19/32+ in) before it" if blind else "280.0 mm (11 1/32- in) beyond it"
    assert (f"counts from their own line, {far}" in said) is (hand == "left")
    (wall,) = (m for m in page.marks if isinstance(m, Line) and m.layer == "wall")
    hatch = [m for m in page.marks if isinstance(m, Line) and m.layer == "ground"]
    beyond = [m for m in hatch if m.y1 > wall.y1 + 10.0]
    assert bool(beyond) is blind


def test_the_sides_of_a_box_on_legs_stand_on_the_floor() -> None:
    """Its bottom panel's underside is 100 above the floor, and nothing reaches below it."""
    legs = replace(box(FrontSpec(id="B1-1", kind="drawer"), above_floor=0.0), legs=100.0)
    [drawn] = draw_elevations(lay(legs), PAPERS["common"])
    marks = drawn.page.marks
    [place] = [m for m in marks if isinstance(m, Outline) and m.layer == "legs"]
    [floor] = [m.y1 for m in marks if isinstance(m, Line) and m.layer == "floor"]
    heights = [(y - floor) * drawn.reduction for _, y in place.points]
    assert sorted(heights) == pytest.approx([0.0, 0.0, 100.0, 100.0])


@pytest.mark.parametrize("panel", [None, "flush"])
def test_a_toe_is_seen_under_the_filler_beside_it(panel: PanelKind | None) -> None:
    """As its front is cut: to the wall, but not past an end panel, which goes down to the floor."""
    wall = WallSpec(name="north", left=WallEnd(stands="wall", filler=60.0))
    first = replace(box(name="B1"), panels=EndPanels(left=panel))
    made = replace(job(first, box(name="B2"), units="mm"), walls=(wall,))
    (drawn,) = draw_elevations(lay_out(made), PAPERS["common"])
    (toe,) = (m for m in drawn.page.marks if isinstance(m, Outline) and m.layer == "toe")
    xs = [x for x, _ in toe.points]
    seen = (max(xs) - min(xs)) * drawn.reduction
    assert seen == pytest.approx(2 * 457.2 + (0.0 if panel else 60.0))
    (front,) = (piece for piece in cut_list(lay_out(made)) if piece.kind == "toe-front")
    assert seen == pytest.approx(front.length)
