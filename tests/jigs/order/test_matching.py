"""What arrived against what was ordered: by ID, by size, missing, surplus, exchanged, unknown."""

from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.given.job import FrontSpec, Job
from jigs.given.measured import DeliveredList, DeliveredPiece, Delivery
from jigs.given.stated import RowRead
from jigs.ground.errors import ReadingError
from jigs.layout.layout import lay_out
from jigs.order.matching import Ordered, list_ordered, with_delivery
from tests.jigs.sample import box, job

W, H = 457.2 - 2 * 1.6, 774.7 - 2 * 1.6
DRAWER = 152.4
DOOR = H - DRAWER - 3.2

GALLEY = job(
    box(FrontSpec(id="B1-1", kind="drawer", height=DRAWER),
        FrontSpec(id="B1-2", kind="door", hinged="left")),
    box(FrontSpec(id="B2-1", kind="pair"), name="B2", width=914.4),
    box(FrontSpec(id="B3-1", kind="opening", height=200.0),
        *(FrontSpec(id=f"B3-2-{n}", kind="drawer", row=RowRead(alike=2)) for n in (1, 2)),
        name="B3", width=600.0),
)  # fmt: skip
"""A drawer over a door; a pair; two drawers of one row under an opening."""


def row(number: int, id: str = "", *sizes: float, **more: object) -> DeliveredPiece:
    """Give a row of a list: ID, width, height."""
    width, height = ((size,) for size in sizes) if sizes else ((), ())
    where = f"row {number}"
    return DeliveredPiece(where=where, row=where, id=id, width=width, height=height, **more)  # type: ignore[arg-type]


def deliver(*pieces: DeliveredPiece, to: Job = GALLEY) -> Job:
    """Give the job with these pieces delivered."""
    return with_delivery(to, DeliveredList(file=Path("list.csv"), pieces=pieces))


def match(*pieces: DeliveredPiece, to: Job = GALLEY) -> Delivery:
    """Match these pieces with the order."""
    delivery = deliver(*pieces, to=to).delivery
    assert delivery is not None
    return delivery


def strangers(*pieces: DeliveredPiece) -> list[str]:
    """Give the faults of a list's IDs."""
    with pytest.raises(ReadingError) as caught:
        deliver(*pieces)
    return [str(fault) for fault in caught.value.faults]


def placed(delivery: Delivery) -> dict[str, str]:
    """Give the row that each front came with."""
    return {front: arrival.piece.row for front, arrival in delivery.arrivals.items()}


def test_all_fronts_are_ordered_but_openings() -> None:
    """A pair is ordered as two leaves, in the sizes of the layout."""
    ordered = list_ordered(GALLEY)
    assert [front.id for front in ordered] == [
        "B1-1", "B1-2", "B2-1L", "B2-1R", "B3-2-1", "B3-2-2"
    ]  # fmt: skip
    assert (ordered[1].width, ordered[1].height) == pytest.approx((W, DOOR))
    assert ordered[2].width == pytest.approx((914.4 - 2 * 1.6 - 3.2) / 2)


def test_an_id_finds_its_front_and_the_rest_is_missing() -> None:
    """One arrives, five are still to come."""
    delivery = match(row(2, "B1-2", W, DOOR))
    assert placed(delivery) == {"B1-2": "row 2"}
    assert delivery.missing == ("B1-1", "B2-1L", "B2-1R", "B3-2-1", "B3-2-2")
    assert (delivery.ordered, delivery.surplus) == (6, ())


@pytest.mark.parametrize(
    ("id", "count", "found", "over"),
    [("B2-1", None, ["B2-1L", "B2-1R"], 0), ("B2-1", 1, ["B2-1L", "B2-1R"], 0),
     ("B2-1", 2, ["B2-1L", "B2-1R"], 0), ("B2-1", 3, ["B2-1L", "B2-1R"], 1),
     ("B2-1L", None, ["B2-1L"], 0), ("B2-1R", 2, ["B2-1R"], 1),
     ("B3-2", None, ["B3-2-1", "B3-2-2"], 0), ("B3-2", 1, ["B3-2-1"], 0),
     ("B3-2", 5, ["B3-2-1", "B3-2-2"], 3)],
)  # fmt: skip
def test_an_id_may_stand_for_several(
    id: str, count: int | None, found: list[str], over: int
) -> None:
    """A pair's for both leaves, a row's for what it makes; more than that is left over."""
    delivery = match(row(2, id, count=count))
    assert list(delivery.arrivals) == found
    assert sum(surplus.count for surplus in delivery.surplus) == over


def test_unknown_ids_are_told_each() -> None:
    """With the nearest that is known; an opening is none; no piece is a box."""
    said = strangers(row(2, "B1-22"), row(3, "B3-1"), row(4, "B1-1"), row(5, "B1"), row(6, "ß"))
    assert [text[:6] for text in said] == ["row 2:", "row 3:", "row 5:", "row 6:"]
    assert "'B1-22' given" in said[0]
    assert "did you mean 'B1-2'?" in said[0]
    assert "an opening" in said[1]
    assert "known: B1-1" in said[3]


def test_the_list_of_another_job_is_told_once() -> None:
    """Three IDs, and none of them is known."""
    said = strangers(row(2, "K1-1"), row(3, "K1-2"), row(4, "K1-3"), row(5, "", W, DOOR))
    assert len(said) == 1
    assert "none of the 3 IDs" in said[0]
    assert "another job" in said[0]


def test_two_names_for_one_front_are_a_fault() -> None:
    """A pair and one of its leaves."""
    said = strangers(row(2, "B2-1"), row(3, "B2-1L"))
    assert said == ["row 3: 'B2-1L' and 'B2-1' (row 2) both stand for B2-1L; one row a front"]


def test_pieces_without_an_id_are_matched_by_size() -> None:
    """The drawer, and two pieces that are alike; the fourth is left over."""
    drawers = list_ordered(GALLEY)[-1]
    delivery = match(
        row(2, "", W + 1.0, DRAWER - 1.6),
        row(3, "", drawers.width, drawers.height + 0.4, count=2),
        row(4, "", W, 400.0),
    )
    assert placed(delivery) == {"B1-1": "row 2", "B3-2-1": "row 3", "B3-2-2": "row 3"}
    assert all(arrival.by_size for arrival in delivery.arrivals.values())
    assert [(s.piece.row, s.count) for s in delivery.surplus] == [("row 4", 1)]
    assert delivery.alike == (("B3-2-1", "B3-2-2"),)


def test_an_id_goes_before_a_size() -> None:
    """What has a label is taken first, whatever its size; the nameless takes what is open."""
    delivery = match(row(2, "", W, DRAWER), row(3, "B1-1", W, DRAWER + 1.0))
    assert placed(delivery) == {"B1-1": "row 3"}
    assert [s.piece.row for s in delivery.surplus] == ["row 2"]


def test_the_nearest_of_two_sizes_is_chosen() -> None:
    """Two fronts 2 mm apart, two pieces between them: crosswise would be out of tolerance."""
    two = job(
        box(FrontSpec(id="A", kind="drawer", height=200.0), FrontSpec(id="B", kind="drawer")),
        box(FrontSpec(id="C", kind="drawer", height=202.0), FrontSpec(id="D", kind="drawer"),
            name="B2"),
    )  # fmt: skip
    delivery = match(row(2, "", W, 201.2), row(3, "", W, 200.6), to=two)
    assert placed(delivery) == {"A": "row 3", "C": "row 2"}


def test_thickness_decides_between_fronts_of_one_size() -> None:
    """16 goes to the one that was ordered so."""
    two = job(box(FrontSpec(id="A", kind="drawer", thickness=19.0)),
              box(FrontSpec(id="B", kind="drawer", thickness=16.0), name="B2"))  # fmt: skip
    delivery = match(row(2, "", W, H, thickness=16.1), to=two)
    assert placed(delivery) == {"B": "row 2"}


def test_a_nameless_piece_that_fits_turned_round_is_that_front() -> None:
    """Width and height exchanged."""
    delivery = match(row(2, "", DOOR, W))
    assert placed(delivery) == {"B1-2": "row 2"}


def test_a_nameless_piece_badly_made_is_the_missing_front() -> None:
    """4 mm off is told of the front; 11 mm off nobody can tell what it is."""
    assert placed(match(row(2, "", W - 4.0, DOOR))) == {"B1-2": "row 2"}
    assert placed(match(row(2, "", W - 11.0, DOOR))) == {}


def test_of_a_labelled_piece_off_its_size_it_is_told_what_it_fits() -> None:
    """The labels of drawer and door were exchanged."""
    delivery = match(row(2, "B1-1", W, DOOR), row(3, "B1-2", W, DRAWER))
    assert delivery.arrivals["B1-1"].fits == ("B1-2",)
    assert delivery.arrivals["B1-2"].fits == ("B1-1",)


noise = st.floats(-1.6, 1.6)
ORDERED = list_ordered(GALLEY)


six_pairs = st.lists(st.tuples(noise, noise), min_size=6, max_size=6)


@given(six_pairs, st.booleans(), st.randoms())
@settings(max_examples=30)
def test_what_is_within_tolerance_always_matches(
    offs: list[tuple[float, float]], named: bool, order: Random
) -> None:
    """A list made from the order, each size within 1.6: all has arrived, nothing is held."""
    check_within(offs, named, order)


@pytest.mark.slow
@given(six_pairs, st.booleans(), st.randoms())
@settings(max_examples=60)
def test_of_many_what_is_within_tolerance_always_matches(
    offs: list[tuple[float, float]], named: bool, order: Random
) -> None:
    """The same, at length."""
    check_within(offs, named, order)


def check_within(offs: list[tuple[float, float]], named: bool, order: Random) -> None:
    """Deliver what was ordered, each piece so far off its size, in any order."""
    pieces = [
        row(n, front.id if named else "", front.width + dx, front.height + dy)
        for n, (front, (dx, dy)) in enumerate(zip(ORDERED, offs, strict=True))
    ]
    order.shuffle(pieces)
    made = deliver(*pieces)
    assert made.delivery is not None
    assert set(made.delivery.arrivals) == {front.id for front in ORDERED}
    assert (made.delivery.surplus, made.delivery.missing) == ((), ())
    layout = lay_out(made)
    assert not [problem for problem in layout.problems if problem.level == "error"]
    assert {front.id for front in layout.fronts if front.ordered} == set(made.delivery.arrivals)


@given(st.sampled_from(ORDERED), noise, noise, st.booleans())
@settings(max_examples=20)
def test_exchanged_sizes_are_always_told(front: Ordered, dx: float, dy: float, named: bool) -> None:
    """Width and height swapped: an error that holds the front, which keeps its ordered size."""
    check_exchanged(front, dx, dy, named)


@pytest.mark.slow
@given(st.sampled_from(ORDERED), noise, noise, st.booleans())
@settings(max_examples=40)
def test_many_exchanged_sizes_are_always_told(
    front: Ordered, dx: float, dy: float, named: bool
) -> None:
    """The same, at length."""
    check_exchanged(front, dx, dy, named)


def check_exchanged(front: Ordered, dx: float, dy: float, named: bool) -> None:
    """Deliver a front with its width and height swapped, each so far off."""
    made = deliver(row(2, front.id if named else "", front.height + dx, front.width + dy))
    layout = lay_out(made)
    told = [p.part for p in layout.problems if p.code == "sizes-exchanged"]
    assert made.delivery is not None
    assert told == list(made.delivery.arrivals)
    held = next(f for f in layout.fronts if f.id == told[0])
    assert held.withheld
    assert (held.width, held.height) == pytest.approx((front.width, front.height))


@given(st.lists(st.builds(
    row, st.integers(2, 99), st.just(""), st.floats(100, 1000), st.floats(100, 1000),
    count=st.one_of(st.none(), st.integers(1, 4)),
), max_size=8))  # fmt: skip
@settings(max_examples=60)
def test_no_piece_is_lost_and_none_is_used_twice(pieces: list[DeliveredPiece]) -> None:
    """Arrivals and what is left over make up the list; arrivals and missing the order."""
    pieces = [replace(piece, row=f"row {n}") for n, piece in enumerate(pieces)]
    delivery = match(*pieces)
    over = sum(surplus.count for surplus in delivery.surplus)
    assert len(delivery.arrivals) + over == sum(piece.count or 1 for piece in pieces)
    assert len(delivery.arrivals) + len(delivery.missing) == delivery.ordered
