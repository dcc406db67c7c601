"""Fronts over half of their sides, and fronts inside their box.

Expected values are derived: overlay = constant + tab - plate (common practice, no source).
"""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.box.carcass import Carcass, frame_of
from jigs.box.parts import Layout
from jigs.fittings.hinge import choose_tab_and_plate
from jigs.given.catalogue import generic_hinges
from jigs.given.confirming import StandIn
from jigs.given.hardware import HingeRecord
from jigs.given.job import BoxSpec, FrontKind, FrontSpec, Job, Overlay, Use
from jigs.layout.layout import lay_out
from templates.words.assumedwords import assumed_lines
from tests.jigs.jobtext import SMALL, faults_of, read
from tests.jigs.sample import (
    GOLDEN,
    MATERIAL,
    PULL,
    SLIDE,
    SURE,
    box,
    codes,
    front_of,
    job,
    side_of,
)
from tests.said import remedy_of

T = 19.05
HINGES = {kind: replace(generic_hinges()[f"cup35-{kind}"], confirmed=SURE,
                        plates=(0.0, 2.0, 3.0)) for kind in ("full", "half", "inset")}  # fmt: skip


def kitchen(
    *fronts: FrontSpec, overlay: Overlay = "inset", hinge: str | None = None, **given: float
) -> Layout:
    """Lay out the golden box with its fronts lying so, on a hinge of that kind."""
    spec = replace(box(*fronts, **given), overlay=overlay)  # type: ignore[arg-type]
    return lay_out(job(spec, hinge=HINGES[hinge or overlay]))


def door(name: str = "B1-1", kind: FrontKind = "door", **given: object) -> FrontSpec:
    """Give a left-hung door."""
    return FrontSpec(id=name, **{"kind": kind, "hinged": "left", **given})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("constant", "needed", "got"),
    [(15.0, 18.3 - 1.6, 17.0), (5.5, (18.3 - 3.2) / 2, 7.5), (-4.0, -2.0, -2.0)],
    ids=["full", "half", "inset"],
)
def test_the_three_overlays(constant: float, needed: float, got: float) -> None:
    """Tab 5, plate 3 in all three: 15 + 5 - 3 = 17, 5.5 + 5 - 3 = 7.5, -4 + 5 - 3 = -2
    (derived)."""
    record = HingeRecord(name="r", constant=constant, plates=(0.0, 2.0, 3.0))
    choice = choose_tab_and_plate(record, needed)
    assert (choice.tab, choice.plate) == (5.0, 3.0)
    assert choice.error == pytest.approx(got - needed)


def test_an_inset_door() -> None:
    """It is smaller than its opening by twice the gap, and its plates stand its thickness back."""
    layout = kitchen(door())
    front = front_of(layout, "B1-1")
    assert front.width == pytest.approx(457.2 - 2 * 18.3 - 2 * 2)
    assert front.height == pytest.approx(774.7 - 2 * 18.3 - 2 * 2)
    assert (front.place.x, front.place.y) == pytest.approx((18.3 + 2, 18.3 + 2))
    assert {front.gaps.left, front.gaps.right, front.gaps.top} == {2.0}
    assert front.gaps.bottom == pytest.approx(2.0)
    assert front.hinge is not None
    assert (front.hinge.tab, front.hinge.plate) == (5.0, 3.0)
    assert front.hinge.error == pytest.approx(0.0)
    plates = [hole for hole in side_of(layout, "B1-SIDE-L").holes if hole.purpose == "plate"]
    assert {hole.x for hole in plates} == {37 + T}
    cups = sorted(hole.y + front.place.y for hole in front.holes if hole.purpose == "cup")
    lows = sorted(hole.y for hole in plates)[::2]
    assert [low + 16 for low in lows] == pytest.approx(cups)
    assert codes(layout) == []


def test_an_inset_pair_and_an_inset_stack() -> None:
    """Leaves and drawers part what the opening leaves by the gap between fronts."""
    left, right = kitchen(door(kind="pair"), width=914.4).fronts
    assert left.width == right.width == pytest.approx((914.4 - 2 * 18.3 - 4 - 3.2) / 2)
    assert right.place.x - left.place.x - left.width == pytest.approx(3.2)
    assert right.place.x + right.width == pytest.approx(914.4 - 18.3 - 2)
    stack = kitchen(*(door(f"D{n}", kind="drawer", hinged=None) for n in (1, 2, 3))).fronts
    assert sum(f.height for f in stack) == pytest.approx(774.7 - 2 * 18.3 - 2 * 2 - 2 * 3.2)


def test_inset_drawers_stand_back_and_lower_on_their_fronts() -> None:
    """Slide lines 37 + T; the lowest stands b over the panel, b - gap over its own front."""
    slide = replace(SLIDE, fixing_at=(37.0, 165.0), carry_at=(261.0,))
    drawers = [door(f"D{n}", kind="drawer", hinged=None) for n in (1, 2)]
    layout = lay_out(job(replace(box(*drawers, depth=600.0), overlay="inset"), slide=slide))
    for board in ("B1-SIDE-L", "B1-SIDE-R"):
        slides = [f for f in side_of(layout, board).fittings if f.kind == "slide"]
        assert [[h.x for h in f.holes] for f in slides] == [[37 + T, 165 + T]] * 2
        assert slides[0].holes[0].y == pytest.approx(18.3 + 33)
        assert slides[0].carry == (261 + T,)
    for front in layout.fronts:
        assert front.drawer is not None
        assert front.drawer.y == pytest.approx(14 - 2)
        assert front.drawer.x == pytest.approx((front.width - front.drawer.width) / 2)
    assert "slide-too-long" in codes(kitchen(door("D", kind="drawer"), depth=533 + 16 + 25 + T - 1))
    assert codes(kitchen(door("D", kind="drawer"), depth=533 + 16 + 25 + T)) == []


def test_half_overlay_on_a_box() -> None:
    """Each side keeps the other half for a neighbour: the reveal is (18.3 + 3.2) / 2."""
    layout = kitchen(door(), overlay="half")
    front = front_of(layout, "B1-1")
    assert front.width == pytest.approx(457.2 - 18.3 - 3.2)
    assert front.hinge is not None
    assert front.hinge.error == pytest.approx(7.5 - 7.55)
    assert front.hinge.plate == 3.0


def test_half_overlay_on_a_front() -> None:
    """One front of a full-overlay box may say so for itself."""
    layout = kitchen(door(overlay="half"), overlay="full", hinge="half")
    assert front_of(layout, "B1-1").width == pytest.approx(457.2 - 18.3 - 3.2)
    assert codes(layout) == ["counter-reveal"]


@pytest.mark.parametrize(
    ("overlay", "hinge", "held"),
    [("inset", "full", True), ("inset", "half", True), ("full", "inset", True),
     ("full", "half", True), ("half", "full", True), ("half", "half", False)],
)  # fmt: skip
def test_a_hinge_of_the_wrong_kind(overlay: Overlay, hinge: str, held: bool) -> None:
    """A full hinge on an inset door is refused, with the kind to name in the remedy."""
    layout = kitchen(door(), overlay=overlay, hinge=hinge)
    found = [problem for problem in layout.problems if problem.code == "hinge-kind"]
    assert bool(found) is held
    if found:
        assert f'hinge = ["cup35-{hinge}", "cup35-{overlay}"]' in remedy_of(found[0])
        assert layout.fronts[0].withheld


def test_a_full_hinge_on_a_high_plate_reaches_half_overlay() -> None:
    """OV = C0 + K - Hp: 15 + 5 - 12 = 8.0 where 7.55 is needed."""
    high = replace(HINGES["full"], plates=(12.0,))
    layout = lay_out(job(replace(box(door()), overlay="half"), hinge=high))
    assert codes(layout) == ["counter-reveal"]


def test_a_job_without_a_hinge_takes_the_kind_it_needs(tmp_path: Path) -> None:
    """Each kind of overlay has a generic hinge, stamped as assumed, and so is the inset gap."""
    text = SMALL.replace('kind = "base"', 'kind = "base"\noverlay = "inset"')
    found = read(tmp_path, text)
    assert "gap round an inset front 2.0 mm" in assumed_lines(found)
    (front,) = lay_out(found).fronts
    assert front.hinge is not None
    assert front.hinge.record == "cup35-inset"
    assert StandIn("use.hinge", "cup35-inset") in front.assumed
    assert StandIn("reveal.inset", 2.0) in front.assumed
    plain = read(tmp_path, SMALL)
    assert not [words for words in assumed_lines(plain) if "inset" in words]


def test_inset_and_others_do_not_mix(tmp_path: Path) -> None:
    """An inset front beside fronts that lie on the box is a fault of the file."""
    text = f'{SMALL}overlay = "inset"\n'
    (fault,) = faults_of(tmp_path, text)
    assert "box[1].front[1].overlay" in fault
    assert "say overlay at the box" in fault


@given(
    overlay=st.sampled_from(("full", "half", "inset")),
    width=st.integers(300, 900),
    height=st.integers(300, 2000),
    count=st.integers(1, 4),
    hand=st.sampled_from(("left", "right")),
)
@settings(max_examples=40)
def test_sizes_close_and_hardware_agrees(
    overlay: Overlay, width: int, height: int, count: int, hand: str
) -> None:
    """Fronts and gaps fill their frame, cups face their plates, both sides carry the same lines."""
    fronts = [FrontSpec(id=f"D{n}", kind="drawer") for n in range(1, count)]
    fronts.append(FrontSpec(id="DOOR", kind="door", hinged=hand))  # type: ignore[arg-type]
    spec: BoxSpec = replace(box(*fronts, width=width, height=height), overlay=overlay)
    made: Job = replace(
        job(spec), hinges=HINGES, use=Use(hinge=overlay, slide=SLIDE.name, drawer_pull=PULL.name)
    )
    layout = lay_out(made)
    frame = frame_of(Carcass(box=spec, side=MATERIAL.side, back=6.0), GOLDEN, overlay)
    for front in layout.fronts:
        across = front.gaps.left + front.width + front.gaps.right
        assert across == pytest.approx(frame.right - frame.left)
        assert frame.left - 1e-6 <= front.place.x
        assert front.place.x + front.width <= frame.right + 1e-6
    heights = sum(f.height for f in layout.fronts) + 3.2 * (count - 1)
    assert heights == pytest.approx(frame.height)
    sides = {side.side: side for side in layout.sides}
    lines = [
        sorted((f.part, h.x, h.y) for f in side.fittings if f.kind == "slide" for h in f.holes)
        for side in sides.values()
    ]
    assert lines[0] == lines[1]
    cups = [(h.y + f.place.y) for f in layout.fronts for h in f.holes if h.purpose == "cup"]
    plates = [f.holes for side in sides.values() for f in side.fittings if f.kind == "plate"]
    assert sorted(cups) == pytest.approx(sorted((a.y + b.y) / 2 for a, b in plates), abs=1e-6)
