"""The delivery in hand: measured sizes flow into the fronts, what is off is said or holds."""

import pytest
from msgspec.structs import replace

from jigs.bench.benchpart import front_face
from jigs.box.inhand import Measured, lean_of
from jigs.box.parts import Front, Layout
from jigs.given.job import FrontSpec
from jigs.given.stated import FrontWords, Taped
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from templates.words.deliverywords import delivery_words
from templates.words.frontfacts import measured_facts
from tests.jigs.order.test_matching import DOOR, DRAWER, GALLEY, H, W, deliver, row
from tests.jigs.sample import box, codes, front_of, job, side_of
from tests.said import fact_of, remedy_of

LEAF = (914.4 - 2 * 1.6 - 3.2) / 2


def one(*sizes: float, **more: object) -> Layout:
    """Lay out the golden door, delivered as one row says."""
    return lay_out(deliver(row(2, "B1-2", *sizes, **more)))


def told(layout: Layout, code: str) -> Problem:
    """Give the one finding of a code."""
    (found,) = [problem for problem in layout.problems if problem.code == code]
    return found


def cups(front: Front) -> list[tuple[float, float]]:
    return [(hole.x, hole.y) for hole in front.holes if hole.purpose == "cup"]


def test_measured_sizes_flow_into_the_front() -> None:
    """1.2 wider and 1.0 higher: the sheets are for that; cups keep their distance from bottom and
    hinge edge, and the plates stay."""
    plain, made = lay_out(GALLEY), one(W + 1.2, DOOR + 1.0)
    front = front_of(made, "B1-2")
    assert (front.width, front.height) == pytest.approx((W + 1.2, DOOR + 1.0))
    assert front.ordered == pytest.approx((W, DOOR))
    for now, was in zip(cups(front), cups(front_of(plain, "B1-2")), strict=True):
        assert now == pytest.approx(was)
    assert side_of(made, "B1-SIDE-L").holes == side_of(plain, "B1-SIDE-L").holes
    assert front.gaps.top == pytest.approx(3.2 - 1.0)
    assert front.code != front_of(plain, "B1-2").code


def test_two_places_are_taken_as_their_mean() -> None:
    """454.6 at the top, 454.0 at the bottom: 454.3 across."""
    piece = replace(row(2, "B1-2"), width=(W + 0.6, W), height=(DOOR, DOOR + 0.4))
    front = front_of(lay_out(deliver(piece)), "B1-2")
    assert (front.width, front.height) == pytest.approx((W + 0.3, DOOR + 0.2))


def test_the_leaves_of_a_pair_are_measured_apart() -> None:
    """The left one 0.8 wider, the right one as ordered: the gap between them is 0.8 less."""
    layout = lay_out(deliver(row(2, "B2-1L", LEAF + 0.8, H), row(3, "B2-1R", LEAF, H - 0.5)))
    left, right = front_of(layout, "B2-1L"), front_of(layout, "B2-1R")
    assert (left.width, right.width) == pytest.approx((LEAF + 0.8, LEAF))
    assert (left.height, right.height) == pytest.approx((H, H - 0.5))
    assert left.gaps.right == right.gaps.left == pytest.approx(3.2 - 0.8)


def test_a_measured_thickness_is_the_front_s_own() -> None:
    """Half a mm beside the order says nothing, more is said; 16 for 19 is another board."""
    layout = one(W, DOOR, thickness=19.5)
    assert front_of(layout, "B1-2").make.thickness == 19.5
    assert "thickness-differs" not in codes(layout)
    said = told(one(W, DOOR, thickness=18.4), "thickness-differs")
    assert (said.level, said.part) == ("warning", "B1-2")
    held = one(W, DOOR, thickness=16.0)
    assert told(held, "thickness-differs").level == "error"
    assert front_of(held, "B1-2").withheld


@pytest.mark.parametrize(
    ("dx", "dy", "said"),
    [(1.6, -1.6, ""), (1.7, 0.0, "1.7 mm too wide"), (-1.7, 0.0, "1.7 mm too narrow"),
     (0.0, 2.0, "2.0 mm too high"), (-2.0, -3.0, "2.0 mm too narrow and 3.0 mm too low")],
)  # fmt: skip
def test_beyond_the_tolerance_a_front_is_held(dx: float, dy: float, said: str) -> None:
    """1.6 either way is accepted (common practice, no source); the neighbours then keep the gaps
    that were ordered, and the side waits for the door's plates."""
    metric = job(*GALLEY.boxes, units="mm")
    layout = lay_out(deliver(row(2, "B1-2", W + dx, DOOR + dy), to=metric))
    front = front_of(layout, "B1-2")
    assert front.withheld is bool(said)
    if said:
        problem = told(layout, "size-differs")
        assert problem.level == "error"
        off = fact_of(problem).partition(": ")[2]
        for words in said.split(" and "):
            figure, way = words.split(" mm ")
            assert f"{figure} mm" in off
            assert way in off
        assert (front.width, front.height) == pytest.approx((W, DOOR))
        assert front_of(layout, "B1-1").gaps.bottom == pytest.approx(3.2)
        assert "B1-2" in side_of(layout, "B1-SIDE-L").missing


def test_the_job_states_its_own_tolerance() -> None:
    """0.8 wanted: 1.0 is beyond it."""
    strict = replace(GALLEY, tolerance=0.8)
    layout = lay_out(deliver(row(2, "B1-2", W + 1.0, DOOR), to=strict))
    assert front_of(layout, "B1-2").withheld


def test_exchanged_labels_are_pointed_at() -> None:
    """The remedy names the front whose size a held one has."""
    layout = lay_out(deliver(row(2, "B1-1", W, DOOR), row(3, "B1-2", W, DRAWER)))
    remedies = {p.part: remedy_of(p) for p in layout.problems if p.code == "size-differs"}
    assert "it has the size of B1-2" in remedies["B1-1"]
    assert "it has the size of B1-1" in remedies["B1-2"]


@pytest.mark.parametrize(
    ("differ", "level"), [(0.9, None), (1.1, "warning"), (1.8, "warning"), (2.0, "error")]
)
def test_diagonals_tell_of_a_front_out_of_square(differ: float, level: str | None) -> None:
    """Golden door 454.0 x 615.9, diagonal 765.1: a difference d leans it 0.843 d: 0.8 is aimed
    at, 1.6 accepted (taper of the trade: d x D / 2 W)."""
    diagonal = (W**2 + DOOR**2) ** 0.5
    assert lean_of((diagonal, diagonal + 1), Measured(width=W, height=DOOR)) == pytest.approx(
        diagonal / (2 * W)
    )
    layout = one(W, DOOR, diagonals=(diagonal - differ / 2, diagonal + differ / 2))
    found = [p.level for p in layout.problems if p.code == "out-of-square"]
    assert found == ([level] if level else [])
    assert front_of(layout, "B1-2").withheld is (level == "error")


def test_a_front_that_really_leans_has_that_lean() -> None:
    """Corners of a front leaning 1.5 over its height, by Pythagoras: its diagonals give 1.5."""
    lean = 1.5
    up = (DOOR**2 - lean**2) ** 0.5
    longer = ((W + lean) ** 2 + up**2) ** 0.5
    shorter = ((W - lean) ** 2 + up**2) ** 0.5
    found = lean_of((longer, shorter), Measured(width=W, height=DOOR))
    assert found == pytest.approx(lean, abs=0.001)


def test_a_wide_front_is_judged_by_its_longer_edge() -> None:
    """The same lean of a drawer front 454 wide and 152.4 high shows along its top edge."""
    diagonal = (W**2 + DRAWER**2) ** 0.5
    lean = lean_of((diagonal, diagonal + 1), Measured(width=W, height=DRAWER))
    assert lean == pytest.approx(diagonal / (2 * DRAWER))


def test_diagonals_within_a_tape_s_reading_hold_nothing() -> None:
    """A difference of 1 mm on a low drawer front is a lean of 1.6 and may be the tape's."""
    diagonal = (W**2 + DRAWER**2) ** 0.5
    layout = lay_out(deliver(row(2, "B1-1", W, DRAWER, diagonals=(diagonal, diagonal + 1.0))))
    assert [p.level for p in layout.problems if p.code == "out-of-square"] == ["warning"]


def test_diagonals_of_another_front_are_doubted() -> None:
    """700 on a front of 765 is a slip of the pen."""
    assert told(one(W, DOOR, diagonals=(700.0, 700.4)), "diagonals-doubtful").level == "warning"


def test_unlike_widths_are_out_of_square_and_held_beyond_the_tolerance() -> None:
    """0.9 more at the top, 0.9 less at the bottom: each accepted, their difference not."""
    assert codes(one(), "B1-2") == []
    for top, held in ((0.6, False), (0.9, True)):
        layout = lay_out(deliver(replace(row(2, "B1-2"), width=(W + top, W - top))))
        level = told(layout, "out-of-square").level
        assert (level, front_of(layout, "B1-2").withheld) == ("error" if held else "warning", held)


def test_what_is_missing_is_warned_and_drawn_as_ordered() -> None:
    """Its sheet is made, and says so."""
    layout = one(W, DOOR)
    missing = [p.part for p in layout.problems if p.code == "not-delivered"]
    assert missing == ["B1-1", "B2-1L", "B2-1R", "B3-2-1", "B3-2-2"]
    assert front_of(layout, "B1-1").holes
    assert front_of(layout, "B1-1").ordered is None


def test_what_is_left_over_is_warned_once() -> None:
    """It is nobody's part."""
    layout = lay_out(deliver(row(2, "", 321.0, 654.0, count=2), row(3, "B1-1", count=2)))
    said = [p for p in layout.problems if p.code == "surplus"]
    assert [(p.level, p.part) for p in said] == [("warning", None)] * 2
    assert "list.csv, row 3: a piece more than was ordered of B1-1" in fact_of(said[0])
    assert "list.csv, row 2: 2 pieces of" in fact_of(said[1])


def test_two_fronts_that_meet_are_told() -> None:
    """Drawer and door 1.6 too high each leave nothing of a gap of 1.5."""
    narrow = replace(GALLEY, reveal=replace(GALLEY.reveal, between=1.5))
    door = H - DRAWER - 1.5
    layout = lay_out(deliver(row(2, "B1-1", W, DRAWER), row(3, "B1-2", W, door + 1.5), to=narrow))
    said = told(layout, "gap-in-hand")
    assert (said.level, said.part, said.also) == ("warning", "B1-2", ("B1-1",))
    assert "leave nothing between them" in fact_of(said)


def test_the_job_s_own_measures_stay_where_the_list_has_none() -> None:
    """A row that only ticks a front off leaves what the job says of it, and its judgement."""
    spec = FrontSpec(id="B1-1", kind="drawer", measured=Taped(width=(W + 2, W + 2)))
    layout = lay_out(deliver(row(2, "B1-1"), to=job(box(spec))))
    assert front_of(layout, "B1-1").width == pytest.approx(W + 2)
    assert told(layout, "size-differs").level == "warning"


def test_a_nearly_square_front_may_be_turned_too() -> None:
    """454 x 456.4 arrived as 456.4 x 454: each size is 2.4 off, and right when exchanged."""
    spec = FrontSpec(id="B1-1", kind="drawer", height=W + 2.4)
    layout = lay_out(
        deliver(
            row(2, "B1-1", W + 2.4, W),
            to=job(box(spec, FrontSpec(id="B1-2", kind="drawer"))),
        )
    )
    assert told(layout, "sizes-exchanged").part == "B1-1"


def test_what_was_noted_of_a_piece_goes_with_its_front() -> None:
    """Behind what the job notes."""
    spec = FrontSpec(id="B1-1", kind="drawer", words=FrontWords(note="left of the sink"))
    made = deliver(row(2, "B1-1", note="scratched"), to=job(box(spec)))
    assert front_of(lay_out(made), "B1-1").make.note == "left of the sink; delivered: scratched"
    assert "Noted in the list: B1-1: scratched." in delivery_words(lay_out(made))


def test_a_front_that_is_not_taken_stands_at_its_station_as_it_came() -> None:
    """2.4 too high: held, and the size beside the one that was ordered is the one measured."""
    spec = FrontSpec(id="B1-1", kind="drawer", height=300.0)
    parts = job(box(spec, FrontSpec(id="B1-2", kind="drawer")))
    layout = lay_out(deliver(row(2, "B1-1", W, 302.4), to=parts))
    assert told(layout, "size-differs").part == "B1-1"
    front = front_of(layout, "B1-1")
    part = front_face(front, "back")
    assert (part.width, part.height, part.ordered) == (W, 302.4, (W, 300.0))
    assert (front.width, front.height) == (W, 300.0)
    assert not list(measured_facts(front))
    taken = front_of(lay_out(deliver(row(2, "B1-1", W, 301.0), to=parts)), "B1-1")
    assert (taken.height, taken.refused, taken.ordered) == (301.0, None, (W, 300.0))
    assert list(measured_facts(taken))
