"""Rear hooks of undermount slides: where their holes stand, what is refused, what is told."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_job
from jigs.fittings.slide import hook_fittings, recess_and_notch
from jigs.given.confirming import open_keys
from jigs.given.hardware import HOOK_KEYS, SlideRecord
from jigs.given.job import BoxSpec, FrontSpec
from jigs.given.stated import DrawerSize, RolloutSpec
from jigs.ground.geometry import collect_holes
from jigs.ground.lengths import Unit
from jigs.layout.layout import lay_out
from templates.words.piecenotes import note_words
from tests.jigs.jobtext import JOB, faults_of, read
from tests.jigs.sample import SLIDE, box, codes, front_of, job

HOOKED = replace(SLIDE, hook_diameter=6.0, hook_depth=10.0, hook_height=24.0, hook_inset=8.0)
DRAWER = FrontSpec(id="B1-1", kind="drawer", height=152.4)
LOW = FrontSpec(id="B1-2", kind="drawer")
KEYS = """hook_diameter = "6 mm"
hook_depth = "10 mm"
hook_height = 0.5
hook_inset = "8 mm"
"""


def hooked(*boxes: BoxSpec, slide: SlideRecord = HOOKED, units: Unit = "in") -> Layout:
    return lay_out(job(*boxes, slide=slide, units=units))


@pytest.mark.parametrize(("units", "outside"), [("in", 16.125 * 25.4), ("mm", 410.0)])
def test_where_they_stand(units: Unit, outside: float) -> None:
    """The opening is 457.2 - 2 x 18.3; outside = 420.6 - 42 + 2 x 15.9 = 410.4, rounded down to
    1/16 in or 1 mm (derived; 42: common practice, no source); 8 inside each side's face."""
    drawer = front_of(hooked(box(DRAWER, LOW, kind="drawer"), units=units), "B1-1").drawer
    assert drawer
    assert drawer.width == pytest.approx(outside)
    left, right = collect_holes(drawer.rear)
    assert (left.x, right.x) == pytest.approx((15.9 + 8.0, outside - 15.9 - 8.0))
    assert left.y == right.y == 24.0
    assert {(h.purpose, h.face, h.diameter, h.depth) for h in (left, right)} == {
        ("hook", "box-back", 6.0, 10.0)
    }
    # The end of the side, then the notch beside it: 38 wide, as high as the recess of 13.
    (side, notch) = drawer.rear[0].outline
    assert side[2] == pytest.approx((15.9, drawer.height))
    assert notch[0] == pytest.approx((15.9, 0.0))
    assert notch[2] == pytest.approx((15.9 + 38.0, 13.0))
    assert drawer.rear[1].outline[1][2][0] == pytest.approx(outside - 15.9 - 38.0)


@pytest.mark.parametrize(("depth", "bored"), [(15.8, 15.8), (15.9, None), (20.0, None)])
def test_as_deep_as_the_back_is_through(depth: float, bored: float | None) -> None:
    """A back of 15.9."""
    record = replace(HOOKED, hook_depth=depth)
    fittings = hook_fittings(record, part="B1-1", width=409.6, height=101.6, side=15.9)
    assert {hole.depth for hole in collect_holes(fittings)} == {bored}


def test_a_slide_that_says_nothing_of_hooks_has_none() -> None:
    """Nor does a side mount."""
    assert hook_fittings(SLIDE, part="B1-1", width=400, height=100, side=15.9) == ()
    layout = hooked(box(DRAWER, LOW, kind="drawer"), slide=SLIDE)
    assert all(not f.drawer.rear for f in layout.fronts if f.drawer)


def test_the_code_changes_with_them() -> None:
    """Paper of before is stale."""
    boxes = box(DRAWER, LOW, kind="drawer")
    plain = front_of(hooked(boxes, slide=SLIDE), "B1-1").drawer
    other = front_of(hooked(boxes), "B1-1").drawer
    higher = front_of(hooked(boxes, slide=replace(HOOKED, hook_height=25.0)), "B1-1").drawer
    assert plain
    assert other
    assert higher
    assert len({plain.code, other.code, higher.code}) == 3


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"hook_height": 15.9}, "hook-in-notch"),
        ({"hook_height": 16.0}, None),
        ({"hook_height": 12.0, "notch_height": 9.0}, None),
        ({"hook_height": 12.0, "hook_inset": 41.0}, None),
        ({"hook_height": 88.9 - 3.0 - 2.0}, None),
        ({"hook_height": 88.9 - 3.0 - 1.9}, "hook-outside"),
        ({"hook_inset": 200.0}, "hook-outside"),
    ],
)
def test_wood_round_them(changes: dict[str, float], code: str | None) -> None:
    """Above a notch of 13, and 2 of wood below the top edge of a box 88.9 high."""
    spec = replace(DRAWER, drawer_box=DrawerSize(drawer_height=88.9))
    record = replace(HOOKED, **changes)
    layout = hooked(box(spec, LOW, kind="drawer"), slide=record)
    found = [c for c in codes(layout, "B1-1") if c.startswith("hook")]
    assert found == ([code] if code else [])
    front = front_of(layout, "B1-1")
    assert front.withheld is (code is not None)
    assert front.drawer
    assert len(front.drawer.rear) == (0 if code else 2)


def test_a_rollout_has_them_too() -> None:
    """A box of its own width, 8 inside its sides."""
    spec = replace(
        box(FrontSpec(id="B1-1", kind="door", hinged="left")),
        rollouts=(RolloutSpec(at=200.0, height=120.0),),
    )
    (rollout,) = hooked(spec).rollouts
    left, right = collect_holes(rollout.rear)
    assert (left.x, right.x) == pytest.approx((23.9, rollout.width - 23.9))
    (low,) = hooked(spec, slide=replace(HOOKED, hook_height=14.0)).rollouts
    assert low.held[0].code == "hook-in-notch"


def test_the_cut_list_and_the_notch_follow_the_record() -> None:
    """The back's note names the hooks; a notch as wide and high as stated."""
    record = replace(HOOKED, notch_width=35.0, notch_height=14.0)
    assert recess_and_notch(record) == (13.0, (35.0, 14.0))
    pieces = cut_job(hooked(box(DRAWER, LOW, kind="drawer"), slide=record)).pieces
    (back,) = [piece for piece in pieces if piece.id == "B1-1-BOX-BACK"]
    assert "35.0 wide by 14.0 high" in note_words(back.notes)
    assert "bored for their hooks" in note_words(back.notes)
    assert [(c.dx, c.dy) for c in back.cutouts] == [(35.0, 14.0)] * 2


def test_they_are_read_and_must_be_confirmed(tmp_path: Path) -> None:
    """All four, or none; what is not confirmed is told by name."""
    text = JOB.replace('drawer_rise = "14 mm"\n', f'drawer_rise = "14 mm"\n{KEYS}')
    runner = read(tmp_path, text).slides["runner"]
    assert runner.hook_inset == 8.0
    assert runner.hook_height == pytest.approx(0.5 * 25.4)
    assert open_keys(replace(HOOKED, confirmed={}), "box-back")[-4:] == HOOK_KEYS
    assert not set(HOOK_KEYS) & set(open_keys(replace(SLIDE, confirmed={})))


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        (
            "hook_height = 1\n",
            "stands without hook_diameter, hook_depth, hook_inset",
        ),
        (KEYS.replace('hook_inset = "8 mm"\n', ""), "hook_diameter: stands without hook_inset"),
        (f'{KEYS}mount = "side"\n', "hooks at the rear are an undermount slide's"),
        ("hook_hight = 1\n", "did you mean 'hook_height'?"),
        (KEYS.replace("= 0.5", "= -0.5"), "hook_height"),
    ],
)
def test_half_of_their_numbers_is_a_fault(tmp_path: Path, keys: str, words: str) -> None:
    """Each with its line."""
    text = JOB.replace('drawer_rise = "14 mm"\n', f'drawer_rise = "14 mm"\n{keys}')
    found = faults_of(tmp_path, text)
    assert any(words in str(fault) for fault in found), found


def test_a_number_that_is_wrong_is_told_once(tmp_path: Path) -> None:
    """It is not called missing as well."""
    keys = KEYS.replace('hook_diameter = "6 mm"', "hook_diameter = 0")
    text = JOB.replace('drawer_rise = "14 mm"\n', f'drawer_rise = "14 mm"\n{keys}')
    (fault,) = faults_of(tmp_path, text)
    assert "hook_diameter: a size must be over 0" in fault


def test_a_box_too_low_is_told_once() -> None:
    """A drawer box of 45 is refused as too low; that its hooks find no wood follows from it."""
    spec = replace(DRAWER, drawer_box=DrawerSize(drawer_height=45.0))
    record = replace(HOOKED, hook_height=42.0)
    found = codes(hooked(box(spec, LOW, kind="drawer"), slide=record), "B1-1")
    assert "drawer-too-low" in found
    assert "hook-outside" not in found
