"""Does the room hold them? The wall's length, ceiling, counter and floor (common practice, no
source), and that all that stands along a wall adds up to it."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.checks.advice import advise
from jigs.cutlist.cutlist import cut_list
from jigs.given.job import BoxSpec, FrontSpec, Job, Reveal
from jigs.given.stated import BlindEnd, EndPanels, PanelKind
from jigs.given.walls import run_of, taken_by
from jigs.given.wallspec import Appliance, EndKind, WallEnd, WallSpec
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from templates.words.findings import count_words
from templates.words.piecenotes import note_words
from tests.jigs.sample import UNDER_COUNTER, box, job
from tests.said import fact_of, remedy_of

CODES = {
    "same-place", "wall-short", "wall-gap", "above-ceiling",
    "counter-height", "counter-front", "floor-high", "before-filler", "beyond-wall",
}  # fmt: skip
TOP = 101.6 + 774.7
"""The golden box's top above the floor, mm."""
NORTH = WallSpec(name="north")
DRAWER = FrontSpec(id="B1-1", kind="drawer")


def walled(*boxes: BoxSpec, wall: WallSpec = NORTH, reveal: Reveal = UNDER_COUNTER) -> Job:
    """Give a job of these boxes on a wall, shown in mm."""
    return replace(job(*boxes, reveal=reveal), shown_in="mm", walls=(wall,))


def found(*boxes: BoxSpec, wall: WallSpec = NORTH) -> list[Problem]:
    """Give what is found of the room."""
    return [p for p in lay_out(walled(*boxes, wall=wall)).problems if p.code in CODES]


def ended(length: float, stands: EndKind = "wall") -> WallSpec:
    """Give a wall of this length with fillers of 41 and 45."""
    return WallSpec(
        name="north", length=length,
        left=WallEnd(stands=stands, filler=41.0), right=WallEnd(stands="wall", filler=45.0),
    )  # fmt: skip


RUN = 41.0 + 2 * 457.2 + 45.0


@pytest.mark.parametrize(
    ("off", "code"), [(0.0, None), (-0.5, None), (0.5, None), (-0.6, "short"), (0.6, "gap")]
)
def test_a_wall_and_its_run(off: float, code: str | None) -> None:
    """Shorter or longer than its boxes and fillers, by how much."""
    problems = found(box(), box(name="B2"), wall=ended(RUN + off))
    assert [p.code for p in problems] == ([f"wall-{code}"] if code else [])
    assert all("0.6 mm" in fact_of(p) for p in problems)


@pytest.mark.parametrize("stands", ["panel", "open", None])
@pytest.mark.parametrize(("off", "codes"), [(0.5, []), (57.2, ["wall-gap"]), (724.0, ["wall-gap"])])
def test_a_gap_before_the_wall_at_the_right(
    stands: EndKind | None, off: float, codes: list[str]
) -> None:
    """What is left open there is told whatever stands at the left, by what its filler would be."""
    wall = replace(ended(RUN + off), left=WallEnd(stands=stands, filler=41.0))
    problems = found(box(), box(name="B2"), wall=wall)
    assert [p.code for p in problems] == codes
    for problem in problems:
        assert f"a gap of {off:.1f} mm" in fact_of(problem, "mm")
        assert fact_of(problem).endswith("is left before its right end")
        assert f"right_filler {45.0 + off:.1f} mm" in remedy_of(problem, "mm")
    # Set to the right by an x it ends there; where nothing stands at the right, nothing is told.
    reaching = (replace(box(), x=41.0 + off), box(name="B2"))
    assert found(*reaching, wall=wall) == []
    assert found(box(), box(name="B2"), wall=replace(wall, right=WallEnd(stands="open"))) == []


@pytest.mark.parametrize(
    ("x", "panel", "codes"),
    [
        (41.0, None, []),
        (40.6, None, []),
        (40.0, None, ["before-filler"]),
        (41.0, "flush", ["before-filler"]),
        (41.0 + 19.05, "flush", []),
        (0.0, None, ["before-filler"]),
        (300.0, None, []),
        (300.5, None, []),
        (301.0, None, ["beyond-wall"]),
    ],
)
def test_an_x_keeps_to_the_wall(x: float, panel: PanelKind | None, codes: list[str]) -> None:
    """From the filler of 41 at the left to the one of 45 at the right of a wall on which a box has
    259 to spare; an end panel at its left takes 19.05 of it."""
    one = replace(box(), x=x, panels=EndPanels(left=panel))
    wall = replace(ended(300.0 + 457.2 + 45.0), right=WallEnd(stands="open", filler=45.0))
    problems = found(one, wall=wall)
    assert [p.code for p in problems] == codes
    assert all(p.part == "B1" for p in problems)
    without = replace(wall, length=None)
    assert [p.code for p in found(one, wall=without)] == [c for c in codes if c != "beyond-wall"]


@pytest.mark.parametrize(
    ("length", "level"), [(2 * 457.2, "warning"), (2 * 457.2 - 0.5, "warning"), (900.0, "error")]
)
def test_a_wall_shorter_than_its_boxes(length: float, level: str) -> None:
    """Fillers can be made narrower; boxes that find no room without any are an error of the job,
    which withholds no part: they are drilled no differently."""
    layout = lay_out(walled(box(DRAWER), box(name="B2"), wall=ended(length)))
    [problem] = [p for p in layout.problems if p.code == "wall-short"]
    assert (problem.level, problem.part) == (level, None)
    assert f"{RUN - length:.1f} mm" in fact_of(problem)
    assert ("without any filler" in fact_of(problem)) is (level == "error")
    assert not any(front.withheld for front in layout.fronts)
    told = count_words([problem], "in")
    held = "No part is held back, but it cannot be built so."
    assert told.endswith(held if level == "error" else "Nothing is held back.")


@pytest.mark.parametrize("off", [-300.0, -1.0, 300.0])
def test_from_where_a_length_counts_at_a_corner(off: float) -> None:
    """From the other run's boxes, as the remedy for a gap says; beside a blind box, which goes on
    behind these, from the room's wall, as the remedy for a short wall says."""
    wall = replace(ended(RUN + off), right=WallEnd(stands="corner", filler=45.0))
    plain, last = box(name="B1"), box(name="B2")
    blind = replace(last, blind=BlindEnd(hand="right", reach=250.0))
    for end in (last, blind):
        (problem,) = found(plain, end, wall=wall)
        remedy = remedy_of(problem)
        assert ("in the corner of B2 from the room's wall" in remedy) is (off < 0 and end is blind)
        assert ("not from the room's wall" in remedy) is (off > 0 and end is last)


def test_the_fillers_that_close_a_gap() -> None:
    """What is left and what is there already."""
    [problem] = found(box(), box(name="B2"), wall=ended(RUN + 30.0))
    assert f"{41 + 45 + 30:.1f} mm" in remedy_of(problem)


@pytest.mark.parametrize(("x", "told"), [(500.0, True), (1.0, False)])
def test_a_filler_beside_an_appliance(x: float, told: bool) -> None:
    """No box holds it, so it is not cut, which is told; one beside a box is."""
    fridge = Appliance(id="F1", width=600.0, height=1800.0, x=x)
    wall = WallSpec(
        name="north", appliances=(fridge,), right=WallEnd(stands="wall", filler=45.0)
    )  # fmt: skip
    layout = lay_out(walled(box(name="B2", x=0.0 if told else 700.0), wall=wall))
    found = [p for p in layout.problems if p.code == "filler-at-appliance"]
    assert len(found) == told
    fillers = [piece for piece in cut_list(layout) if piece.kind == "filler"]
    assert len(fillers) == (not told)
    if told:
        assert "45.0 mm" in fact_of(found[0])
        assert "right end" in fact_of(found[0])


def test_a_run_that_ends_in_the_room_leaves_no_gap() -> None:
    """Only before a wall is there something to close."""
    assert found(box(), wall=replace(ended(9000.0), right=WallEnd(stands="open"))) == []


@pytest.mark.parametrize(("ceiling", "told"), [(101.6 + 2133.6, False), (2235.0, True)])
def test_a_tall_box_under_the_ceiling(ceiling: float, told: bool) -> None:
    """84 in on a toe of 4: 2235.2."""
    tall = box(name="T1", kind="tall", height=2133.6)
    problems = found(tall, wall=WallSpec(name="north", ceiling=ceiling))
    assert [p.code for p in problems] == ["above-ceiling"] * told
    assert all("0.2 mm" in fact_of(p) for p in problems)


@pytest.mark.parametrize(
    ("counter", "codes"),
    [
        (TOP + 38.1, []),
        (TOP + 38.1 + 10.0, ["counter-height"]),
        (TOP + 38.1 - 0.4, ["counter-front"]),
        (TOP + 38.1 - 10.0, ["counter-height", "counter-front"]),
    ],
)
def test_a_box_under_its_counter(counter: float, codes: list[str]) -> None:
    """Its top at the counter's underside; the front 3.2 below it, of which 3 are needed."""
    wall = WallSpec(name="north", counter=counter, counter_thickness=38.1)
    assert [p.code for p in found(box(DRAWER), wall=wall)] == codes


def test_a_counter_without_thickness_and_boxes_that_carry_none() -> None:
    """A box as high as the counter leaves it no room; tall and wall boxes carry none."""
    wall = WallSpec(name="north", counter=TOP)
    assert [p.code for p in found(box(), wall=wall)] == ["counter-height"]
    assert found(box(), wall=replace(wall, counter=TOP + 20.0)) == []
    others = (box(kind="tall"), box(name="W1", kind="wall", above_floor=1400.0))
    assert found(*others, wall=wall) == []


def test_a_reveal_too_small_for_any_counter_is_told_once() -> None:
    """By the box itself, whether the counter's height is known or not."""
    wall = WallSpec(name="north", counter=TOP + 38.1, counter_thickness=38.1)
    tight = walled(box(DRAWER), wall=wall, reveal=replace(UNDER_COUNTER, top=1.6))
    told = [p.code for p in lay_out(tight).problems if p.code.startswith("counter-")]
    assert told == ["counter-reveal"]


@pytest.mark.parametrize(("high", "toe"), [(0.0, 101.6), (12.0, 89.6), (101.6, None)])
def test_the_toe_at_the_floors_high_point(high: float, toe: float | None) -> None:
    """Platforms are lower by as much, and shimmed up elsewhere; where nothing is left, none."""
    wall = WallSpec(name="north", floor_high=high)
    layout = lay_out(walled(box(), wall=wall))
    pieces = {piece.id: piece for piece in cut_list(layout) if "-TOE-" in piece.id}
    if toe is None:
        assert pieces == {}
        [problem] = found(box(), wall=wall)
        assert problem.code == "floor-high"
        assert "shim the toe up elsewhere, never the fronts" in remedy_of(problem)
        return
    assert found(box(), wall=wall) == []
    assert [piece.width for piece in pieces.values()] == pytest.approx([toe] * 3)
    assert ("shim" in note_words(pieces["NORTH-TOE-1-FRONT"].notes)) == (high > 0)


def test_sides_that_run_to_the_floor() -> None:
    """They are scribed at the high point."""
    legs = replace(box(), legs=101.6, above_floor=0.0)
    [problem] = found(legs, wall=WallSpec(name="north", floor_high=12.0))
    assert problem.code == "floor-high"
    assert "scribe 12.0 mm" in remedy_of(problem, "mm")


@pytest.mark.parametrize(("high", "told"), [(101.6 - 76.2, False), (101.6 - 76.0, True)])
def test_a_toe_low_at_the_high_point(high: float, told: bool) -> None:
    """At least 3 in of toe space (KCMA A161.1, second hand)."""
    layout = lay_out(walled(box(), wall=WallSpec(name="north", floor_high=high)))
    assert [one.high_point for one in advise(layout)] == [True] * told


eighths = st.integers(0, 8 * 900).map(lambda n: n / 8)
panels: st.SearchStrategy[PanelKind | None] = st.sampled_from((None, None, "flush", "covered"))
rows = st.lists(
    st.tuples(st.integers(8 * 200, 8 * 1200).map(lambda n: n / 8), panels, panels,
              st.none() | st.integers(8, 8 * 900).map(lambda n: n / 8)),
    min_size=1, max_size=6,
)  # fmt: skip


@settings(max_examples=60)
@given(rows, eighths, eighths, eighths, st.sampled_from(("in", "mm")))
def test_what_stands_along_a_wall_adds_up_to_it(
    row: list[tuple[float, PanelKind | None, PanelKind | None, float | None]],
    left: float, right: float, off: float, unit: Unit,
) -> None:  # fmt: skip
    """Boxes, panels, appliances and fillers, summed by themselves, are the run; each ends where
    the next begins; a wall off by any amount is off by that amount in words."""
    thick = 19.05
    boxes = [
        replace(
            box(FrontSpec(id=f"B{k}-1", kind="false-front"), name=f"B{k}", width=width),
            panels=EndPanels(left=one, right=other),
        )
        for k, (width, one, other, _) in enumerate(row)
    ]  # fmt: skip
    appliances = tuple(
        Appliance(id=f"R{k}", width=wide, height=900.0, after=f"B{k}")
        for k, (*_, wide) in enumerate(row)
        if wide is not None
    )
    total = left + right
    for width, one, other, wide in row:
        total += width + thick * ((one is not None) + (other is not None)) + (wide or 0.0)
    wall = WallSpec(
        name="north", appliances=appliances, length=total,
        left=WallEnd(stands="wall", filler=left), right=WallEnd(stands="wall", filler=right),
    )  # fmt: skip
    given_job = replace(job(*boxes, units=unit), walls=(wall,))
    taken = taken_by(given_job)
    assert run_of(wall, taken) == pytest.approx(total, abs=1e-6)
    along = sorted(taken, key=lambda each: each.left)
    assert along[0].left == pytest.approx(left)
    for each, after in pairwise(along):
        assert each.right == pytest.approx(after.left, abs=1e-6)
    for length, code in (
        (total, None),
        (total + 1 + off, "wall-gap"),
        (total - 1 - off, "wall-short"),
    ):
        if length <= 0:
            continue
        made = replace(given_job, walls=(replace(wall, length=length),))
        layout = lay_out(made)
        own = [p for p in layout.problems if p.code in CODES]
        assert [p.code for p in own] == ([code] if code else [])
        assert all(format_length(1 + off, unit) in fact_of(p, unit) for p in own)
    # Each front and its reveals are its box, and so, summed over the boxes, the wall.
    layout = lay_out(given_job)
    covered = {
        front.box: front.gaps.left + front.width + front.gaps.right for front in layout.fronts
    }
    rest = total - sum(width for width, *_ in row)
    assert sum(covered.values()) + rest == pytest.approx(total, abs=1e-6)
    for made_box in boxes:
        assert covered[made_box.id] == pytest.approx(made_box.width, abs=1e-6)
