"""Pulls that line up with those of other fronts, along the wall and in height."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.box.parts import Front, Layout
from jigs.given.job import BoxSpec, FrontSpec
from jigs.given.stated import NOTED, FivePieceSpec, OpenedBy
from jigs.given.walls import place_boxes
from jigs.layout.layout import lay_out
from tests.jigs.sample import box, codes, front_of, job
from tests.said import fact_of, remedy_of


def door(name: str, hinged: str = "left", **more: object) -> FrontSpec:
    return FrontSpec(id=name, kind="door", hinged=hinged, **more)  # type: ignore[arg-type]


def drawer(name: str, **more: object) -> FrontSpec:
    return FrontSpec(id=name, kind="drawer", **more)  # type: ignore[arg-type]


def hung(*fronts: FrontSpec, name: str = "W1", width: float = 457.2, x: float = 0.0) -> BoxSpec:
    """Give a wall box with these fronts."""
    return box(*fronts, name=name, kind="wall", above_floor=1400.0, width=width, x=x)


def lines(layout: Layout, name: str) -> list[float]:
    """Give the middles of a front's pulls along the wall, mm."""
    front = front_of(layout, name)
    start = place_boxes(layout.boxes)[front.box] + front.place.x
    return [start + _middle([h.x for h in f.holes]) for f in front.fittings if f.kind == "pull"]


def height(layout: Layout, front: Front) -> float:
    """Give the middle of a front's pull above the floor, mm."""
    floor = next(b.above_floor for b in layout.boxes if b.id == front.box)
    return floor + front.place.y + _middle([h.y for h in front.holes if h.purpose == "pull"])


def _middle(places: list[float]) -> float:
    return (min(places) + max(places)) / 2


def test_a_wall_door_over_a_base_door() -> None:
    """The upper box begins 5 further right; its pull stands 5 nearer its hinges."""
    boxes = box(door("B1-1")), hung(door("W1-1", opened_by=OpenedBy(pull_over="B1-1")), x=5.0)
    layout = lay_out(job(*boxes))
    assert codes(layout, "W1-1") == []
    assert lines(layout, "W1-1") == pytest.approx(lines(layout, "B1-1"))
    plain = lay_out(job(boxes[0], hung(door("W1-1"), x=5.0)))
    assert lines(plain, "W1-1") == pytest.approx([x + 5 for x in lines(layout, "B1-1")])
    assert front_of(plain, "W1-1").code != front_of(layout, "W1-1").code


@given(x=st.floats(-12, 12))
@settings(max_examples=20)
def test_lines_are_the_same_wherever_the_box_hangs(x: float) -> None:
    """Within the limits of the door, 38 to 64 from its free edge: 50.8 by rule."""
    layout = lay_out(
        job(box(door("B1-1")), hung(door("W1-1", opened_by=OpenedBy(pull_over="B1-1")), x=x))
    )
    assert lines(layout, "W1-1") == pytest.approx(lines(layout, "B1-1"))
    assert not front_of(layout, "W1-1").withheld


def test_pairs_leaf_by_leaf() -> None:
    """The left leaf over the left one, the right leaf over the right one."""
    layout = lay_out(
        job(
            box(FrontSpec(id="B1-1", kind="pair"), width=914.4),
            hung(
                FrontSpec(id="W1-1", kind="pair", opened_by=OpenedBy(pull_over="B1-1")),
                width=906.4,
                x=4.0,
            ),
        )
    )
    for leaf in "LR":
        assert lines(layout, f"W1-1{leaf}") == pytest.approx(lines(layout, f"B1-1{leaf}"))


def test_two_pulls_pairwise_and_one_over_their_middle() -> None:
    """A drawer with two pulls over one with two; one with a single pull at their middle."""
    wide = box(drawer("B1-1"), width=914.4)
    two = hung(drawer("W1-1", opened_by=OpenedBy(pull_over="B1-1")), width=900.0, x=7.2)
    layout = lay_out(job(wide, two))
    assert len(lines(layout, "W1-1")) == 2
    assert lines(layout, "W1-1") == pytest.approx(lines(layout, "B1-1"))
    one = hung(drawer("W1-1", opened_by=OpenedBy(pull_over="B1-1")), width=700.0, x=110.0)
    layout = lay_out(job(wide, one))
    assert lines(layout, "W1-1") == pytest.approx([914.4 / 2])
    layout = lay_out(job(box(drawer("B1-1")), two))
    assert "pull-aim" in codes(layout, "W1-1")


def test_a_level_pull() -> None:
    """A higher drawer's pull as high above the floor as its neighbour's."""
    one = box(drawer("B1-1", height=150.0), door("B1-2"))
    other = box(
        drawer("B2-1", height=180.0, opened_by=OpenedBy(pull_level="B1-1")), door("B2-2"), name="B2"
    )
    layout = lay_out(job(one, other))
    heights = [height(layout, front_of(layout, name)) for name in ("B1-1", "B2-1")]
    assert heights[0] == pytest.approx(heights[1])


def test_a_chain() -> None:
    """A third front follows the second, which follows the first, in whatever order they stand."""
    boxes = [
        hung(door("W1-1", opened_by=OpenedBy(pull_over="W2-1")), x=4.0),
        box(
            door("W2-1", opened_by=OpenedBy(pull_over="B1-1")),
            name="W2",
            kind="wall",
            above_floor=2200.0,
            x=2.0,
        ),
        box(door("B1-1")),
    ]
    layout = lay_out(job(*boxes))
    assert lines(layout, "W1-1") == pytest.approx(lines(layout, "B1-1"))


def test_within_one_box() -> None:
    """A drawer's pull over that of the door below it would leave the drawer's face: refused."""
    near = box(drawer("B1-1", height=150.0, opened_by=OpenedBy(pull_over="B1-2")), door("B1-2"))
    layout = lay_out(job(near))
    assert front_of(layout, "B1-1").withheld
    knob = box(
        FrontSpec(
            id="B1-1",
            kind="false-front",
            height=150.0,
            opened_by=OpenedBy(pull="bar", pull_level="B1-2"),
        ),
        door("B1-2"),
    )
    assert "off its front" in fact_of(lay_out(job(knob)).problems[0])


@pytest.mark.parametrize(
    ("front", "text"),
    [
        (door("W1-1", opened_by=OpenedBy(pull_over="B9-1")), "names no front"),
        (door("W1-1", opened_by=OpenedBy(pull_over="C1-1")), "stands on wall 'south'"),
        (door("W1-1", opened_by=OpenedBy(pull_over="B1-2")), "names a front without a pull"),
        (door("W1-1", opened_by=OpenedBy(pull_over="W1-1")), "leads in a circle (W1-1 -> W1-1)"),
        (door("W1-1", opened_by=OpenedBy(pull="none", pull_over="B1-1")), "and it has no pull"),
        (
            door("W1-1", hinged="right", opened_by=OpenedBy(pull_over="B1-1")),
            "from its free edge; 1 1/2 in (38.0 mm)",
        ),
        (door("W1-1", opened_by=OpenedBy(pull_level="B1-1")), "off its front"),
    ],
)
def test_refused(front: FrontSpec, text: str) -> None:
    """What cannot be is an error of its front alone: the others are drilled."""
    low = box(door("B1-1"), FrontSpec(id="B1-2", kind="panel", height=100.0, leaflet=NOTED))
    south = box(door("C1-1"), name="C1", wall="south")
    layout = lay_out(job(low, hung(front), south))
    [problem] = [p for p in layout.problems if p.code == "pull-aim"]
    assert text in fact_of(problem)
    assert front_of(layout, "W1-1").withheld
    assert not front_of(layout, "B1-1").withheld


def test_two_in_a_circle() -> None:
    """Neither has a place: both are held, and one is told of the circle."""
    layout = lay_out(
        job(
            box(door("B1-1", opened_by=OpenedBy(pull_over="W1-1"))),
            hung(door("W1-1", opened_by=OpenedBy(pull_over="B1-1"))),
        )
    )
    texts = [fact_of(p) for p in layout.problems if p.code == "pull-aim"]
    assert any("in a circle (B1-1 -> W1-1 -> B1-1)" in text for text in texts)
    assert front_of(layout, "B1-1").withheld
    assert front_of(layout, "W1-1").withheld


@pytest.mark.slow
def test_a_chain_without_end() -> None:
    """A chain longer than any kitchen's is refused, not followed into the depths."""
    doors = [
        box(door(f"B{n}-1", opened_by=OpenedBy(pull_over=f"B{n + 1}-1")), name=f"B{n}", x=500.0 * n)
        for n in range(400)
    ]
    layout = lay_out(job(*doors, box(door("B400-1"), name="B400", x=500.0 * 400)))
    assert any("a chain of more than 50 fronts" in fact_of(p) for p in layout.problems)
    assert not front_of(layout, "B400-1").withheld


def test_a_stile_keeps_its_pull() -> None:
    """On a five-piece door of 57 the foot stays on the stile; 30 further it does not."""
    framed = door(
        "W1-1", opened_by=OpenedBy(pull_over="B1-1"), five_piece=FivePieceSpec(stile=57.0)
    )
    low = box(door("B1-1"))
    assert not front_of(lay_out(job(low, hung(framed, x=-22.3))), "W1-1").withheld
    assert front_of(lay_out(job(low, hung(framed, x=30.0))), "W1-1").withheld


@pytest.mark.parametrize(
    ("x", "told"), [(0.0, False), (0.2, False), (0.4, True), (6.0, True), (6.2, False)]
)
def test_nearly_above_each_other(x: float, told: bool) -> None:
    """0.3 to 6 along the wall is told, with the key that mends it (common practice)."""
    layout = lay_out(job(box(door("B1-1")), hung(door("W1-1"), x=x)))
    found = [p for p in layout.problems if p.code == "sight-line"]
    assert [p.part for p in found] == ["W1-1"] * told
    if told:
        assert 'pull_over = "B1-1"' in remedy_of(found[0])


def test_a_door_is_held_against_the_door_under_a_drawer() -> None:
    """The eye runs from door to door, past the drawer between them."""
    low = box(drawer("B1-1", height=150.0), door("B1-2"))
    layout = lay_out(job(low, hung(door("W1-1"), x=3.0)))
    assert [(p.part, p.also) for p in layout.problems if p.code == "sight-line"] == [
        ("W1-1", ("B1-2",))
    ]
