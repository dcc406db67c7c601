"""Toe platforms: which boxes share one, and what it is cut from."""

from itertools import pairwise

import pytest
from msgspec.structs import replace

from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.piece import Piece
from jigs.cutlist.toe import find_runs, sleeper_places, toe_pieces
from jigs.given.job import BoxSpec, FrontSpec
from jigs.given.stated import NOTED, BlindEnd, EndPanels
from jigs.given.walls import place_job
from jigs.given.wallspec import WallEnd, WallSpec
from jigs.ground.geometry import HANDS, Hand
from templates.words.piecenotes import note_words
from tests.jigs.sample import box, job, lay

PANEL = FrontSpec(id="D1-1", kind="panel", leaflet=NOTED)


def _runs(*boxes: BoxSpec) -> list[list[str]]:
    return [[each.id for each in run] for run in find_runs(job(*boxes))]


def _toe(*boxes: BoxSpec) -> dict[str, Piece]:
    return {piece.id: piece for piece in cut_list(lay(*boxes)) if "-TOE-" in piece.id}


def test_boxes_side_by_side_share_one_platform() -> None:
    """2 x 457.2 long, 584.2 - 75 deep over all; sleepers between front and back."""
    pieces = _toe(box(), box(name="B2"))
    front = pieces["NORTH-TOE-1-FRONT"]
    assert (front.box, front.wall, note_words(front.notes)) == (None, "north", "under B1, B2")
    assert (front.length, front.width) == pytest.approx((2 * 457.2, 101.6))
    sleeper = pieces["NORTH-TOE-1-SLEEPER"]
    assert sleeper.length == pytest.approx(584.2 - 75 - 2 * 18.3)
    assert sleeper.count == 3
    assert sleeper.pockets == pytest.approx((101.6 / 4, 3 * 101.6 / 4))
    assert len(pieces) == 3


@pytest.mark.parametrize(
    ("boxes", "runs"),
    [
        ((box(), box(name="B2")), [["B1", "B2"]]),
        ((box(), box(name="W1", kind="wall", above_floor=1370.0)), [["B1"]]),
        ((box(), box(name="T1", kind="tall", height=2100.0)), [["B1", "T1"]]),
        ((box(), box(name="B2", depth=500.0)), [["B1"], ["B2"]]),
        ((box(), box(name="B2", above_floor=150.0)), [["B1"], ["B2"]]),
        ((box(), box(name="B2", x=600.0)), [["B1"], ["B2"]]),
        ((box(), box(name="I1", wall="island")), [["B1"], ["I1"]]),
        ((box(), replace(box(name="B2"), legs=100.0, above_floor=0.0)), [["B1"]]),
        ((box(), box(PANEL, name="D1", kind="open"), box(name="B2")), [["B1"], ["B2"]]),
        ((box(name="B2", x=457.2), box(x=0.0)), [["B1", "B2"]]),
        ((box(above_floor=800.0),), []),
        ((box(inferred=True),), []),
    ],
)
def test_runs(boxes: tuple[BoxSpec, ...], runs: list[list[str]]) -> None:
    """Side by side, equally deep and high, standing; an appliance's place ends a run."""
    assert _runs(*boxes) == runs


def test_a_run_longer_than_a_sheet_is_parted_between_boxes() -> None:
    """Six boxes of 457.2 are 2743.2; five are 2286, less than 8 ft (2438.4)."""
    runs = _runs(*(box(name=f"B{k}") for k in range(1, 7)))
    assert [len(run) for run in runs] == [5, 1]


@pytest.mark.parametrize(
    ("end", "more"),
    [
        (WallEnd(stands="wall", filler=60.0), 60.0),
        (WallEnd(stands="corner", filler=60.0), 60.0 + 75.0),
        (WallEnd(stands="corner"), 0.0),
        (WallEnd(stands="open"), 0.0),
    ],
)
@pytest.mark.parametrize("hand", HANDS)
def test_its_front_runs_on_under_a_filler(hand: Hand, end: WallEnd, more: float) -> None:
    """To the wall, or to the other platform's front, 75 behind the line of that run's boxes
    (derived); not beside an end panel, nor beside a blind end. Nothing else grows."""
    wall = WallSpec(name="north", left=end) if hand == "left" else WallSpec(name="north", right=end)
    first, last = box(), box(name="B2")
    panel, blind = EndPanels(left="flush", right="flush"), BlindEnd(hand=hand, reach=250.0)
    for change, extra in (({}, more), ({"panels": panel}, 0.0), ({"blind": blind}, 0.0)):
        boxes = [replace(each, **change) for each in (first, last)]
        if "panels" in change:  # between the two boxes there is none
            boxes = [replace(first, panels=EndPanels(left="flush")),
                     replace(last, panels=EndPanels(right="flush"))]  # fmt: skip
        made = replace(job(*boxes), walls=(wall,))
        front, back, _ = toe_pieces(made, {"north": "NORTH"})
        assert front.length == pytest.approx(2 * 457.2 + extra)
        assert back.length == pytest.approx(2 * 457.2)
        begins = place_job(made)["B1"] - (extra if hand == "left" else 0.0)
        assert (front.on_wall[0].x, front.on_wall[0].dx) == pytest.approx((begins, front.length))
        assert ("under the filler" in note_words(front.notes)) is (extra > 0)


def test_a_run_with_what_is_under_its_filler_is_no_longer_than_a_sheet() -> None:
    """Five boxes of 457.2 and 152.4 are 2438.4, an eighth of an inch more is too long."""
    for filler, parts in ((152.4, 1), (155.6, 2)):
        wall = WallSpec(name="north", left=WallEnd(stands="wall", filler=filler))
        made = replace(job(*(box(name=f"B{k}") for k in range(1, 6))), walls=(wall,))
        assert len(find_runs(made)) == parts


@pytest.mark.parametrize("length", [381.0, 618.0, 619.0, 1500.0, 2438.4])
def test_sleepers_stand_at_both_ends_and_600_apart_at_most(length: float) -> None:
    """From middle to middle (common practice, no source)."""
    places = sleeper_places(length, 18.0, 600.0)
    assert places[0] == 0.0
    assert places[-1] == pytest.approx(length - 18.0)
    steps = [b - a for a, b in pairwise(places)]
    assert max(steps) <= 600.0 + 1e-6
    assert (length - 18.0) / (len(steps) - 1 or 0.1) > 600.0
