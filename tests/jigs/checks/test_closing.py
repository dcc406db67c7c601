"""Sizes that do not close, and the counter.

Boxes as built: what they are off the job, and what that does to the gaps.
"""

from math import cos, hypot, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.box.carcass import Carcass
from jigs.box.parts import Layout
from jigs.checks.closing import check_closing, check_counter, squareness_taper
from jigs.given.job import BoxKind, BoxSpec, ColumnSpec, FrontSpec, Overlay
from jigs.given.stated import NOTED, DrawerSize, OwnReveals, RolloutSpec, TapedBox
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from tests.jigs.sample import GOLDEN, UNDER_COUNTER, box, codes, job, lay, one_column
from tests.said import fact_of, remedy_of


def findings(*fronts: FrontSpec, kind: BoxKind = "base") -> tuple[Problem, ...]:
    """Give the findings on these fronts in the golden box."""
    spec = box(*fronts, kind=kind)
    column = one_column(spec)
    return check_closing(Carcass(box=spec, side=18.3, back=6.0), column)


def front(**given: object) -> FrontSpec:
    """Give a front as the job states it."""
    return FrontSpec(id="B1-1", **{"kind": "door", **given})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("given", "level", "code", "figure"),
    [
        ({"height": 780.0}, "error", "reveals-do-not-close", "-6.9"),
        ({"height": 700.0}, "error", "reveals-do-not-close", "73.1"),
        ({"height": 770.0}, "warning", "end-reveal", "3.1"),
        ({"width": 458.0}, "error", "reveals-do-not-close", "458.0"),
        ({"width": 410.0}, "error", "reveals-do-not-close", "410.0"),
        ({"width": 452.0}, "warning", "side-reveal", "452.0"),
        ({"width": 771.5, "height": 454.0}, "error", "sizes-exchanged", "771.5"),
    ],
)
def test_each_miss_is_told_with_its_figure(
    given: dict[str, float], level: str, code: str, figure: str
) -> None:
    """The finding names its level and its figure."""
    (finding,) = findings(front(**given))
    assert (finding.level, finding.code) == (level, code)
    assert figure in fact_of(finding)
    assert remedy_of(finding)


def test_both_leaves_of_an_exchanged_pair_are_named() -> None:
    """The leaves carry the finding, not the pair, which is no part."""
    spec = box(front(kind="pair", width=771.5, height=454.0), width=914.4)
    column = one_column(spec)
    carcass = Carcass(box=spec, side=18.3, back=6.0)
    assert [p.part for p in check_closing(carcass, column)] == ["B1-1L", "B1-1R"]


@pytest.mark.parametrize(
    ("kind", "reveal", "told"),
    [("base", GOLDEN, True), ("base", UNDER_COUNTER, False), ("sink", GOLDEN, True),
     ("drawer", GOLDEN, True), ("wall", GOLDEN, False), ("tall", GOLDEN, False)],
)  # fmt: skip
def test_three_millimetres_under_a_counter(kind: BoxKind, reveal: object, told: bool) -> None:
    """Base, drawer and sink boxes need 3 above their top front (common practice, no source)."""
    spec = box(front(hinged="left"), kind=kind)
    column = one_column(spec, reveal)  # type: ignore[arg-type]
    found = check_counter(Carcass(box=spec, side=18.3, back=6.0), column)
    assert bool(found) is told


def place(**given: object) -> Layout:
    """Lay out a dishwasher's panel in its place, before a counter on both sides."""
    panel = FrontSpec(id="D1-1", kind="panel", leaflet=NOTED, **given)  # type: ignore[arg-type]
    return lay_out(job(box(panel, name="D1", kind="open", width=600.0), reveal=GOLDEN))


def test_an_appliances_panel_keeps_clear_of_the_counter_as_a_front_does() -> None:
    """Least gap 3 under a counter; over a fridge's panel there is none."""
    assert "counter-reveal" in codes(place(reveals=OwnReveals(top=2.9)))
    assert "counter-reveal" not in codes(place(reveals=OwnReveals(top=3.0)))
    high = FrontSpec(id="D1-1", kind="panel", leaflet=NOTED, reveals=OwnReveals(top=1.6))
    fridge = box(high, name="D1", kind="open", width=600.0, height=1800.0)
    assert "counter-reveal" not in codes(lay_out(job(fridge)))


def test_what_inches_cannot_tell_apart_is_said_in_millimetres_first() -> None:
    """2.9 and 3.0 are both 1/8 in; 1.6 and 3.0 are not, and stay in the job's inches."""
    near = next(
        p for p in place(reveals=OwnReveals(top=2.9)).problems if p.code == "counter-reveal"
    )
    assert fact_of(near).startswith("the reveal above it is 2.9 mm (1/8- in)")
    far = next(p for p in place(reveals=OwnReveals(top=1.6)).problems if p.code == "counter-reveal")
    assert fact_of(far).startswith("the reveal above it is 1/16 in (1.6 mm)")


W, H, D = 457.2, 774.7, 584.2
DOOR = FrontSpec(id="B1-1", kind="door", hinged="left")
OWN = {"box-differs", "box-tapers", "box-out-of-square", "diagonals-doubtful"}


def built(*fronts: FrontSpec, **given: object) -> BoxSpec:
    """Give the golden wall box as built, with these measures."""
    return replace(box(*(fronts or (DOOR,)), kind="wall"), built=True, **given)


def said(box: BoxSpec) -> list[Problem]:
    """Give what is said of it as built."""
    return [problem for problem in lay(box).problems if problem.code in OWN]


def test_a_true_box_says_nothing() -> None:
    """Within half a millimetre and square, nothing is told; nor of one that is not built."""
    due = hypot(W, H)
    good = TapedBox(
        width=(W + 0.5, W + 0.5),
        height=(H - 0.4, H - 0.4),
        depth=D + 0.5,
        diagonals=(due + 0.5, due - 0.5),
    )
    assert said(built(measured=good)) == []
    assert said(built()) == []


@pytest.mark.parametrize(("off", "becomes"), [(1.2, 1.6 + 0.6), (-1.2, 1.6 - 0.6)])
def test_the_width_goes_into_the_gaps_at_both_sides(off: float, becomes: float) -> None:
    """Half of what the box is wider or narrower goes into each side's reveal."""
    (problem,) = said(built(measured=TapedBox(width=(W + off, W + off))))
    assert (problem.code, problem.part, problem.also) == ("box-differs", "B1", ("B1-1",))
    assert f"({1.2:.1f} mm) {'wider' if off > 0 else 'narrower'}" in fact_of(problem)
    assert f"({becomes:.1f} mm) instead of 1/16 in (1.6 mm)" in fact_of(problem)
    assert "before its fronts are ordered" in remedy_of(problem)
    assert problem.level == "warning"


def test_a_gap_that_is_used_up_is_nothing() -> None:
    """A box so narrow that its front fills it leaves no reveal."""
    (problem,) = said(built(measured=TapedBox(width=(W - 3.2, W - 3.2))))
    assert "becomes nothing" in fact_of(problem)


def test_a_pair_has_its_gaps_at_the_ends() -> None:
    """The gap between two leaves is none of the box's ends, nor is one over a partition."""
    pair = FrontSpec(id="B1-1", kind="pair", reveals=OwnReveals(left=4.0))
    (problem,) = said(built(pair, measured=TapedBox(width=(W + 2, W + 2))))
    assert f"({1.6 + 1:.1f} mm) instead of 1/16 in (1.6 mm)" in fact_of(problem)
    columns = (
        FrontSpec(id="B1-1", kind="door", hinged="left"),
        FrontSpec(id="B1-2", kind="door", hinged="right", column=2),
    )
    parted = built(
        *columns, columns=(ColumnSpec(), ColumnSpec()), measured=TapedBox(width=(W + 2, W + 2))
    )
    (problem,) = said(parted)
    assert f"({1.6 + 1:.1f} mm) instead of 1/16 in (1.6 mm)" in fact_of(problem)


@pytest.mark.parametrize(("kind", "end"), [("wall", "bottom"), ("base", "top")])
def test_the_height_goes_into_the_reveal_at_one_end(kind: str, end: str) -> None:
    """A wall box's fronts keep to its top, the others' to their bottom."""
    made = replace(built(measured=TapedBox(height=(H + 1, H + 1))), kind=kind)
    (problem,) = said(made)
    assert f"the reveal at its {end} becomes 3/32+ in (2.6 mm)" in fact_of(problem)


def test_the_depth_is_what_slides_are_counted_from() -> None:
    """A shallow box is told, whatever its fronts."""
    (problem,) = said(built(measured=TapedBox(depth=D - 2)))
    assert "(2.0 mm) shallower than the job says: slides" in fact_of(problem)


def test_a_box_without_fronts_says_what_the_run_does() -> None:
    """No front, no gap: the width is told for the run alone."""
    made = replace(built(measured=TapedBox(width=(W + 2, W + 2))), fronts=())
    (problem,) = said(made)
    assert "the run" in fact_of(problem)


def test_wider_at_one_end_tapers_by_half() -> None:
    """1.4 between top and bottom is 0.7 at each side; 1.0 is a tape's reading and left alone."""
    (problem,) = said(built(measured=TapedBox(width=(W + 0.7, W - 0.7))))
    assert problem.code == "box-tapers"
    assert "tapers by 1/32 in (0.7 mm)" in fact_of(problem)
    assert said(built(measured=TapedBox(width=(W + 0.5, W - 0.5)))) == []
    (problem,) = said(built(measured=TapedBox(height=(H + 0.7, H - 0.7))))
    assert "at the left" in fact_of(problem)
    assert "taper by 1/16- in (1.4 mm)" in fact_of(problem)


def test_diagonals_over_what_the_gap_bears() -> None:
    """3.2 between two boxes bears 2.2 of taper: 2.2 of difference in the golden box make 2.16,
    2.4 make 2.36 (difference x diagonal / 2W)."""
    due = hypot(W, H)
    assert 2.2 * due / (2 * W) == pytest.approx(2.164, abs=0.001)
    assert said(built(measured=TapedBox(diagonals=(due + 1.1, due - 1.1)))) == []
    (problem,) = said(built(measured=TapedBox(diagonals=(due + 1.2, due - 1.2))))
    assert problem.code == "box-out-of-square"
    assert f"({2.4 * due / (2 * W):.1f} mm) over its height" in fact_of(problem)
    assert "bears 3/32- in (2.2 mm)" in fact_of(problem)
    assert problem.also == ("B1-1",)


def test_a_wider_box_has_a_gap_that_bears_more() -> None:
    """As measured 2.0 wider, its reveal is 2.6 and the gap 5.2, which bears 4.2 of taper."""
    wide = hypot(W + 2, H)
    wider = TapedBox(width=(W + 2, W + 2))
    (off,) = said(built(measured=replace(wider, diagonals=(wide + 1.5, wide - 1.5))))
    assert off.code == "box-differs"
    _, problem = said(built(measured=replace(wider, diagonals=(wide + 2.3, wide - 2.3))))
    assert f"({2 * 2.6:.1f} mm) bears" in fact_of(problem)
    assert f"({2 * 2.6 - 1:.1f} mm)" in fact_of(problem)


def test_an_inset_front_bears_its_own_gap_less_1() -> None:
    """Inset, the gap is the front's own: 2.0 bears 1.0."""
    due = hypot(W, H)
    inset = replace(built(measured=TapedBox(diagonals=(due + 0.7, due - 0.7))), overlay="inset")
    (problem,) = [p for p in lay(inset).problems if p.code == "box-out-of-square"]
    assert "(2.0 mm) bears 1/32+ in (1.0 mm)" in fact_of(problem)


def test_diagonals_that_cannot_be() -> None:
    """Both too long for the box's sizes: the tape did not go from corner to corner."""
    due = hypot(W, H)
    (problem,) = said(built(measured=TapedBox(diagonals=(due + 5, due + 5))))
    assert problem.code == "diagonals-doubtful"


@given(
    width=st.floats(min_value=150, max_value=1500),
    height=st.floats(min_value=150, max_value=2400),
    lean=st.floats(min_value=-0.4, max_value=0.4),
)
def test_the_taper_of_a_skewed_box(width: float, height: float, lean: float) -> None:
    """Of a box skewed by an angle the diagonals follow by the law of cosines; the taper is how
    far its sides lean over their length, to a hundredth for what a box may be off."""
    shift = height * cos(radians(90 - lean))
    long, short = ((width**2 + height**2 + sign * 2 * width * shift) ** 0.5 for sign in (1, -1))
    taper = squareness_taper((long, short), width=width, height=height)
    assert taper == pytest.approx(abs(shift), abs=0.01)


def test_the_findings_stand_in_the_layout_once() -> None:
    """Both sides, the front: one finding, not one each."""
    assert codes(lay(built(measured=TapedBox(width=(W + 2, W + 2))))).count("box-differs") == 1


DRAWER = FrontSpec(id="B1-1", kind="drawer")


def test_drawer_boxes_that_do_not_fit_the_box_as_built_are_held() -> None:
    """3 narrower at the bottom, the golden drawer box (rounded down from 410.4 to 409.6) is 2.2
    too wide: held back, until the job has the measured width."""
    layout = lay(built(DRAWER, measured=TapedBox(width=(W, W - 3))))
    (problem,) = [p for p in layout.problems if p.code == "drawer-not-as-built"]
    nominal = W - 2 * 18.3 - 42 + 2 * 15.9
    assert (problem.level, problem.part) == ("error", "B1-1")
    assert f"({409.575 - (nominal - 3):.1f} mm) too wide" in fact_of(problem)
    assert remedy_of(problem).startswith('put width = "454.2 mm" into box B1')
    assert layout.fronts[0].withheld
    as_said = replace(built(DRAWER, measured=TapedBox(width=(W, W - 3))), width=W - 3)
    assert not lay(as_said).fronts[0].withheld


def test_a_wider_box_holds_a_drawer_box_beyond_its_slides_tolerance() -> None:
    """1.5 may be packed out (the slide's tolerance); 4 wider, it would hang between its slides.
    A width that the job gives for the drawer box is only warned of."""
    found = lay(built(DRAWER, measured=TapedBox(width=(W + 0.6, W + 0.6)))).problems
    assert "drawer-not-as-built" not in {p.code for p in found}
    wide = TapedBox(width=(W + 4, W + 4))
    (problem,) = [
        p for p in lay(built(DRAWER, measured=wide)).problems if p.code == "drawer-not-as-built"
    ]
    assert "too narrow" in fact_of(problem)
    assert problem.level == "error"
    (off,) = said(built(DRAWER, measured=wide))
    assert "its drawer boxes are still reckoned for 18 in (457.2 mm)" in fact_of(off)
    given = replace(DRAWER, drawer_box=DrawerSize(drawer_width=409.6))
    (problem,) = [
        p for p in lay(built(given, measured=wide)).problems if p.code == "drawer-not-as-built"
    ]
    assert problem.level == "warning"


@pytest.mark.parametrize(
    ("deep", "held"), [(533 + 16 + 19 + 6, False), (533 + 16 + 19 + 6 - 0.1, True), (D + 4, False)]
)
def test_a_slide_that_the_measured_depth_does_not_take_is_held(deep: float, held: bool) -> None:
    """533 and 16 behind it, less the back of 6 and its set-in of 19 (derived): 574 deep and no
    less; until the job has the measured depth, and a shorter slide."""
    layout = lay(built(DRAWER, measured=TapedBox(depth=deep)))
    assert layout.fronts[0].withheld is held
    found = [p for p in layout.problems if p.code == "drawer-not-as-built"]
    assert [p.level for p in found] == ["error"] * held
    if held:
        assert "(573.9 mm) deep as built" in fact_of(found[0])
        assert 'put depth = "22 19/32 in" into box B1' in remedy_of(found[0])
    # Not built, the tape says nothing of it.
    assert (
        not lay(replace(built(DRAWER, measured=TapedBox(depth=deep)), built=False))
        .fronts[0]
        .withheld
    )


@pytest.mark.parametrize(("overlay", "least"), [("full", 574.0), ("inset", 574.0 + 19.05)])
def test_a_rollout_is_held_by_the_measured_depth_too(overlay: Overlay, least: float) -> None:
    """Alone, whatever becomes of the door before it; an inset one sets it back by its thickness."""
    for deep, held in ((least, False), (least - 1, True)):
        spec = replace(
            built(DOOR, measured=TapedBox(depth=deep)), depth=610.0, overlay=overlay,
            rollouts=(RolloutSpec(at=100.0, height=120.0),),
        )  # fmt: skip
        (made,) = lay(spec).rollouts
        assert made.withheld is held


def test_a_gap_that_is_none_is_said_in_words() -> None:
    """A box 4 too narrow leaves no gap that could bear what it is out of square."""
    due = hypot(W - 4, H)
    problems = said(built(measured=TapedBox(width=(W - 4, W - 4), diagonals=(due + 1, due - 1))))
    assert "its fronts leave no gap beside them" in fact_of(problems[-1])
    assert "-" not in fact_of(problems[-1]).split("over its height")[1]
