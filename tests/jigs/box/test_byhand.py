"""Holes by hand: kits that hold a front, groups mirrored, and holes in the boards beside it."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.given.job import BoxSpec, FrontKind, FrontSpec
from jigs.given.stated import BoardHole, HandHole, Taped
from jigs.ground.errors import ReadingError
from jigs.ground.geometry import Hand
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests.jigs.sample import box, codes, front_of, lay, side_of
from tests.jobtexts import HEAD, box_text


def bracket(x: float = 60.0, y: float = 480.0, leaf: Hand | None = None) -> HandHole:
    """Give one screw of a kit's bracket in the back, mirrored unless it is a leaf's."""
    return HandHole(
        x=x, y=y, diameter=3.0, depth=12.0, face="back", purpose="bracket",
        mirrored=leaf is None, leaf=leaf,
    )  # fmt: skip


def in_side(hand: Hand, front: str, y: float = 60.0) -> BoardHole:
    """Give one hole of a kit's slide in a side."""
    hole = HandHole(x=37.0, y=y, diameter=5.0, depth=12.0, face="inside", purpose="slide")
    return BoardHole(hand, front, hole)


def _with(made: BoxSpec, holes: tuple[BoardHole, ...]) -> BoxSpec:
    return replace(made, holes=holes)


def test_a_bracket_typed_once_stands_on_both_halves() -> None:
    """A mirrored hole of a front 454 wide stands at 60 and at 454 - 60, one at the middle once."""
    spec = FrontSpec(id="B1-1", kind="pullout", by_kit=True, holes=(bracket(), bracket(x=227.0)))
    front = front_of(lay(box(spec)), "B1-1")
    backs = sorted(hole.x for hole in front.holes if hole.face == "back")
    assert backs == pytest.approx([60.0, 454.0 / 2, 454.0 - 60.0])


def test_a_mirrored_hole_counts_from_the_edge_in_hand() -> None:
    """A front that came 456 wide has its brackets 60 from both ends as it is."""
    spec = FrontSpec(
        id="B1-1", kind="pullout", by_kit=True, holes=(bracket(),),
        measured=Taped(width=(456.0, 456.0), height=(771.5, 771.5)),
    )  # fmt: skip
    front = front_of(lay(box(spec)), "B1-1")
    backs = sorted(hole.x for hole in front.holes if hole.face == "back")
    assert backs == pytest.approx([60.0, 456.0 - 60.0])


def test_a_front_on_a_kit_has_no_drawer_box_and_no_screws_of_ours() -> None:
    """A pullout and a drawer on a kit have the holes by hand and their pull, a false front no
    pull."""
    kinds: tuple[FrontKind, ...] = ("pullout", "drawer", "false-front")
    for kind in kinds:
        layout = lay(box(FrontSpec(id="B1-1", kind=kind, by_kit=True, holes=(bracket(y=300.0),))))
        front = front_of(layout, "B1-1")
        assert not front.withheld
        assert front.drawer is None
        pulled = set() if kind == "false-front" else {"pull"}
        assert {fitting.kind for fitting in front.fittings} == {"manual"} | pulled
        assert side_of(layout, "B1-SIDE-L").holes == ()


@pytest.mark.parametrize("kind", ["door", "pullout", "false-front", "lift"])
def test_a_kit_without_holes_is_held_back(kind: FrontKind) -> None:
    """Nothing is made of a front on a kit of which no hole in the back is known."""
    layout = lay(box(FrontSpec(id="B1-1", kind=kind, by_kit=kind != "lift")))
    assert front_of(layout, "B1-1").withheld
    assert "kit-holes-missing" in codes(layout, "B1-1")


def test_a_folding_pair_has_its_holes_leaf_by_leaf_and_no_hinge() -> None:
    """Each leaf has its own group; no cups, no plates, no pull by rule, no hand said."""
    spec = FrontSpec(
        id="B1-1", kind="pair", by_kit=True,
        holes=(bracket(x=20.0, leaf="left"), bracket(x=30.0, leaf="right")),
    )  # fmt: skip
    layout = lay(box(spec))
    left, right = front_of(layout, "B1-1L"), front_of(layout, "B1-1R")
    assert [hole.x for hole in left.holes] == [20.0]
    assert [hole.x for hole in right.holes] == [30.0]
    assert (left.hinged, right.hinged) == (None, None)
    assert side_of(layout, "B1-SIDE-L").holes == ()


def test_holes_in_the_sides_serve_a_front_and_go_with_it() -> None:
    """They stand in the sides named, and are left out while their front is held back."""
    holes = (in_side("left", "B1-1"), in_side("right", "B1-1"))
    spec = FrontSpec(id="B1-1", kind="pullout", by_kit=True, holes=(bracket(),))
    ready = lay(_with(box(spec), holes))
    for side in ("B1-SIDE-L", "B1-SIDE-R"):
        assert [(hole.x, hole.y) for hole in side_of(ready, side).holes] == [(37.0, 60.0)]
    held = lay(_with(box(FrontSpec(id="B1-1", kind="pullout", by_kit=True)), holes))
    assert side_of(held, "B1-SIDE-L").holes == ()
    assert side_of(held, "B1-SIDE-L").missing == ("B1-1",)


def test_hinges_dodge_the_holes_by_hand() -> None:
    """A plate does not fall on a hole by hand: both stand in the side, nothing clashes."""
    door = FrontSpec(id="B1-1", kind="door", hinged="left")
    free = side_of(lay(box(door)), "B1-SIDE-L").holes[0]
    layout = lay(_with(box(door), (in_side("left", "B1-1", free.y + 4.0),)))
    assert "holes-too-near" not in codes(layout)
    assert free.y not in {hole.y for hole in side_of(layout, "B1-SIDE-L").holes}


def test_holes_in_a_side_are_checked_and_must_serve_a_front() -> None:
    """A hole above the side is an error of its front; one that serves no front is told."""
    spec = FrontSpec(id="B1-1", kind="pullout", by_kit=True, holes=(bracket(),))
    outside = lay(_with(box(spec), (in_side("left", "B1-1", 900.0),)))
    assert "hole-outside" in codes(outside, "B1-1")
    nobody = lay(_with(box(spec), (in_side("left", "B7-1"),)))
    assert "hole-serves-nobody" in codes(nobody, "B1")


KIT = """
kind = "pullout"
fixing = "kit"
[[box.front.hole]]
x = "60 mm"
y = "480 mm"
diameter = "3 mm"
depth = "12 mm"
face = "back"
mirror = true
"""
HOLE = """
[[box.hole]]
side = "both"
x = "37 mm"
y = "60 mm"
diameter = "5 mm"
depth = "12 mm"
"""


def text(*fronts: str) -> str:
    """Write a job of one box with these fronts."""
    return HEAD + box_text("B1", "base", *fronts)


def test_a_kit_is_read(tmp_path: Path) -> None:
    """`fixing`, `mirror`, and a side's hole, which serves the only front without saying so."""
    file = tmp_path / "job.toml"
    file.write_text(text(KIT) + HOLE, encoding="utf-8")
    layout = lay_out(read_job(file))
    assert len([h for h in front_of(layout, "B1-1").holes if h.face == "back"]) == 2
    assert len(side_of(layout, "B1-SIDE-R").holes) == 1


@pytest.mark.parametrize(
    ("written", "said"),
    [
        (text(KIT.replace('fixing = "kit"', 'fixing = "kit"\nslide = "runner"')), "beside"),
        (text(KIT.replace("mirror = true", 'leaf = "left"')), "a pair alone"),
        (text(KIT) + HOLE + 'front = "B9-1"\n', "not a front of this box"),
        (text(KIT, 'kind = "door"\nhinged = "left"\n') + HOLE, "front is missing"),
    ],
)
def test_faults_of_kits_are_named(tmp_path: Path, written: str, said: str) -> None:
    """Other hardware beside a kit, a leaf that is none, a front that is none."""
    file = tmp_path / "job.toml"
    file.write_text(written, encoding="utf-8")
    with pytest.raises(ReadingError) as raised:
        read_job(file)
    assert said in str(raised.value)
