"""Fronts in hand held against their order: what is taken, what is refused."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.box.inhand import FrontInHand, judge_in_hand
from jigs.given.job import FrontSpec
from jigs.given.measured import Arrival, DeliveredPiece, Delivery
from jigs.given.stated import Taped
from tests.jigs.sample import box, job, one_column


def judged(
    *, delivered: bool = False, made: float | None = None, fits: tuple[str, ...] = (),
    **given: object,
) -> FrontInHand:  # fmt: skip
    """Hold the golden door, 454 x 771.5 in a board of 19.05, against its order."""
    spec = box(FrontSpec(id="B1-1", kind="door", hinged="left", **given))  # type: ignore[arg-type]
    whole = replace(job(spec), tolerance=1.6)
    if delivered:
        piece = DeliveredPiece(where="a row", row="row 2", width=(454.0,), thickness=made)
        arrival = Arrival(piece=piece, thickness=19.05, fits=fits)
        arrived = Delivery(file=Path("list.csv"), ordered=1, arrivals={"B1-1": arrival})
        whole = replace(whole, delivery=arrived)
    (hand,) = judge_in_hand(whole, one_column(spec).fronts)
    return hand


def test_a_front_that_nobody_measured_is_taken_as_ordered() -> None:
    """Nothing is off."""
    hand = judged()
    assert (hand.off, hand.skews, hand.turned, hand.refused) == ((), (), False, False)
    assert (hand.front.width, hand.front.height) == pytest.approx((454.0, 771.5))


def test_the_person_decides_of_sizes_in_the_job_the_tolerance_of_a_delivered_list() -> None:
    """2.0 too wide, 1.6 accepted: taken as measured, or another is made as ordered."""
    own = judged(measured=Taped(width=(456.0, 455.0)))
    assert dict(own.off) == pytest.approx({"too wide": 2.0})
    assert not own.refused
    assert own.front.width == pytest.approx(455.5)
    listed = judged(delivered=True, measured=Taped(width=(456.0, 455.0)))
    assert listed.refused
    assert listed.front.width == pytest.approx(454.0)
    assert listed.tried.width == pytest.approx(455.5)


def test_width_and_height_exchanged() -> None:
    """Whoever measured it: another is made."""
    assert judged(measured=Taped(width=(771.5, 771.5), height=(454.0, 454.0))).refused


@pytest.mark.parametrize(
    ("widths", "lean", "beyond"),
    [((454.0, 455.0), None, False), ((453.0, 454.5), 1.5, False), ((452.5, 455.5), 3.0, True)],
)
def test_two_measures_of_one_size(
    widths: tuple[float, float], lean: float | None, beyond: bool
) -> None:
    """1.0 goes unsaid (common practice, no source); beyond 1.6 it is not accepted."""
    skews = judged(measured=Taped(width=widths)).skews
    assert [skew.lean for skew in skews] == ([] if lean is None else [pytest.approx(lean)])
    assert any(skew.beyond for skew in skews) is beyond


@pytest.mark.parametrize(("made", "refused"), [(19.05, False), (20.0, False), (22.0, True)])
def test_a_front_of_another_board(made: float, refused: bool) -> None:
    """Up to the 1.6 accepted a front follows what was measured; 22 in place of 19.05 is another
    board."""
    hand = judged(delivered=True, made=made)
    assert (hand.other_board, hand.refused) == (refused, refused)
