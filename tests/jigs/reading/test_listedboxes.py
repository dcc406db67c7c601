"""The boxes of a front list: inferred from its fronts, or joined to a job's."""

from pathlib import Path

import pytest

from jigs.given.job import BoxSpec, FrontSpec, Reveal
from jigs.given.listspec import ListSpec
from jigs.ground.errors import ReadingError
from jigs.reading.frontlist import read_front_list
from jigs.reading.listedboxes import infer_boxes, join_fronts, list_inferred

REVEAL = Reveal(side=1.6, top=1.6, bottom=1.6, between=3.2)
"""1/16 in at each edge, so that two fronts stand 1/8 in apart."""


OWN = ListSpec(empty_box="own")


def infer(
    folder: Path, text: str, listed: ListSpec = OWN, reveal: Reveal = REVEAL
) -> tuple[BoxSpec, ...]:
    """Write a bare list and work its boxes out; a row without a box has one of its own."""
    path = folder / "fronts.csv"
    path.write_text(text)
    return infer_boxes(read_front_list(path, listed=listed), reveal)


def join(folder: Path, text: str, *boxes: BoxSpec) -> tuple[BoxSpec, ...]:
    """Write a list and hang its fronts on boxes."""
    path = folder / "fronts.csv"
    path.write_text(text)
    return join_fronts(read_front_list(path, bare=False), boxes)


def make_box(name: str, *fronts: FrontSpec) -> BoxSpec:
    """Give a golden box."""
    return BoxSpec(
        id=name, kind="base", width=457.2, height=774.7, depth=584.2, above_floor=100.0,
        fronts=fronts,
    )  # fmt: skip


def test_the_golden_box_comes_back_from_its_fronts(tmp_path: Path) -> None:
    """Worked example: 454.0 wide fronts of a four-drawer stack make the box they came from."""
    heights = (163.5, 188.8, 188.8, 220.8)
    rows = "".join(f"B1,drawer,454.0,{h}\n" for h in heights)
    (box,) = infer(tmp_path, f"box,kind,w,h\n{rows}")
    assert box.width == pytest.approx(454.0 + 2 * 1.6)
    assert box.height == pytest.approx(sum(heights) + 3 * 3.2 + 2 * 1.6)
    assert (box.kind, box.depth, box.above_floor) == ("drawer", 560.0, 100.0)
    assert [front.id for front in box.fronts] == ["B1-1", "B1-2", "B1-3", "B1-4"]
    assert [front.height for front in box.fronts] == list(heights)
    assert box.inferred


@pytest.mark.parametrize(
    ("rows", "kind"),
    [
        ("B1,drawer,454,140\nB1,door,454,570\n", "base"),
        ("B1,false-front,454,140\nB1,door,454,570\n", "base"),
        ("B1,drawer,454,1600\n", "drawer"),
        # 1500 high: not over.
        (f"B1,door,454,{1500 - 2 * 1.6}\n", "base"),
        (f"B1,door,454,{1500 - 2 * 1.6 + 0.1}\n", "tall"),
    ],
)
def test_the_kind_of_an_inferred_box(tmp_path: Path, rows: str, kind: str) -> None:
    """All drawers make a drawer box; over 1500 is tall; else base."""
    (box,) = infer(tmp_path, f"box,kind,w,h\n{rows}")
    assert box.kind == kind


def test_a_front_without_a_box_is_a_box_of_its_own(tmp_path: Path) -> None:
    """Boxes are numbered in order past the IDs given; each of several gets its own."""
    boxes = infer(
        tmp_path,
        "id,box,kind,w,h,qty\n,,door,454,713,1\n,B2,door,454,713,1\nD,,door,454,713,2\n",
    )
    assert [(box.id, box.fronts[0].id) for box in boxes] == [
        ("B1", "B1-1"), ("B2", "B2-1"), ("B3", "D-1"), ("B4", "D-2"),
    ]  # fmt: skip


def test_several_in_a_box_are_stacked(tmp_path: Path) -> None:
    """A count in a box makes so many rows of it."""
    (box,) = infer(tmp_path, "box,kind,w,h,qty\nB1,drawer,454,140,1\nB1,drawer,454,200,2\n")
    assert [front.id for front in box.fronts] == ["B1-1", "B1-2-1", "B1-2-2"]
    assert box.height == pytest.approx(140 + 2 * 200 + 2 * 3.2 + 2 * 1.6)


def test_a_pair_spans_its_box(tmp_path: Path) -> None:
    """Two leaves of 454.0 hang on a box of 2 x 454 + 3.2 + 2 x 1.6 = 914.4 (derived)."""
    (box,) = infer(tmp_path, "kind,w,h\npair,454,713\n")
    assert box.width == pytest.approx(914.4)


APART = "box,kind,w,h\nB1,drawer,454,140\nB2,door,300,713\nB1,door,454,570\n"


def test_rows_of_a_box_that_lie_apart_are_asked_about(tmp_path: Path) -> None:
    """They may be of two walls, or sorted by kind: then the door is not below the drawer."""
    with pytest.raises(ReadingError, match=r"'B1' \(rows 2, 4\): is it one box.*apart=one-box"):
        infer(tmp_path, APART)


def test_rows_of_a_box_may_lie_apart(tmp_path: Path) -> None:
    """Where the person says so they are gathered in the order of the list."""
    boxes = infer(tmp_path, APART, ListSpec(apart="one-box"))
    assert [(box.id, len(box.fronts)) for box in boxes] == [("B1", 2), ("B2", 1)]


def test_an_opening_takes_part_in_the_height(tmp_path: Path) -> None:
    """An opening is a height without a front."""
    (box,) = infer(tmp_path, "box,kind,w,h\nB1,opening,,600\nB1,drawer,596,140\n")
    assert box.height == pytest.approx(600 + 3.2 + 140 + 2 * 1.6)
    assert box.width == pytest.approx(596 + 2 * 1.6)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("box,kind,w,h\nB1,opening,,600\n", "openings alone"),
        ("id,box,kind,w,h\nB1-2,B1,drawer,454,140\n,B1,door,454,570\n", "duplicate ID ('B1-2'"),
        ("id,box,kind,w,h\n,B1,pair,454,570\nB1-1L,,door,454,570\n", "duplicate ID ('B1-1L'"),
        (
            "id,box,kind,w,h\nW1,W1,door,454,713\n",
            "it names fronts as boxes are named ('W1' is both)",
        ),
        ("id,box,kind,w,h\n,W1,door,454,713\n,W1-1,door,454,713\n", "duplicate ID ('W1-1'"),
        ("id,box,kind,w,h\nB1-SIDE-L,B1,door,454,570\n", "reads like a part of a box"),
    ],
)
def test_faults_that_show_when_boxes_are_made(tmp_path: Path, text: str, wanted: str) -> None:
    """Default names clash like given ones, and a box needs a width."""
    with pytest.raises(ReadingError) as caught:
        infer(tmp_path, text)
    (fault,) = caught.value.faults
    assert wanted in str(fault)
    assert "fronts.csv: row" in fault.where


def test_default_boxes_leave_given_ids_alone(tmp_path: Path) -> None:
    """A list that calls its fronts B1, B2 gets boxes of other names."""
    boxes = infer(tmp_path, "id,kind,w,h\nB1,door,454,713\nB2,door,454,713\n")
    assert [box.id for box in boxes] == ["B3", "B4"]


def test_everything_about_an_inferred_box_is_assumed(tmp_path: Path) -> None:
    """The keys of what was assumed are listed, for the stamp."""
    boxes = infer(tmp_path, "box,kind,w,h\nB1,door,454,713\n")
    assert "box.B1.depth" in list_inferred(boxes)
    assert list_inferred([make_box("B2")]) == frozenset()


def test_fronts_join_the_boxes_of_a_job(tmp_path: Path) -> None:
    """Rows hang below the fronts that a box has already, and are numbered on."""
    drawer = FrontSpec(id="B1-1", kind="drawer", height=152.4)
    first, second = join(
        tmp_path, "box,kind\nB2,door\nB1,door\n", make_box("B1", drawer), make_box("B2")
    )
    assert [front.id for front in first.fronts] == ["B1-1", "B1-2"]
    assert [front.id for front in second.fronts] == ["B2-1"]


def test_a_box_that_the_job_does_not_have(tmp_path: Path) -> None:
    """An unknown box is a fault, with those that are known."""
    with pytest.raises(
        ReadingError, match=r"row 2: no such box \('NORTH-2' given\); known: NORTH-1"
    ):
        join(tmp_path, "box,kind\nNORTH-2,door\n", make_box("NORTH-1"))
    with pytest.raises(ReadingError, match="duplicate ID"):
        join(
            tmp_path,
            "id,box,kind\nX,B1,door\n",
            make_box("B1", FrontSpec(id="X", kind="drawer")),
        )
