"""A front as it came: bored or not, and its size where a list gives it with few decimals."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.given.job import FrontSpec, Job
from jigs.given.measured import DeliveredList, DeliveredPiece
from jigs.given.stated import Boring, Hung
from jigs.ground.errors import ReadingError
from jigs.layout.layout import lay_out
from jigs.order.matching import with_delivery
from tests.jigs.sample import box, job

DOOR = FrontSpec(id="B1-1", kind="door", hinged="left")
BORED = Boring(bored=True, bored_tab=5.0)
CUPS = (97.0, 600.0)


def piece(id: str, **more: object) -> DeliveredPiece:
    return DeliveredPiece(where="row 2", row="row 2", id=id, **more)  # type: ignore[arg-type]


def deliver(to: Job, *pieces: DeliveredPiece) -> Job:
    return with_delivery(to, DeliveredList(file=Path("list.csv"), pieces=pieces))


def test_a_door_that_came_bored_is_not_bored_again() -> None:
    """Its cups are those of the list, and no sheet asks for one."""
    came = deliver(job(box(DOOR)), piece("B1-1", boring=BORED, hinges_at=CUPS))
    [front] = lay_out(came).fronts
    assert front.bored
    assert came.boxes[0].fronts[0].hung.hinges_at == CUPS
    assert not [h for each in front.fittings for h in each.holes if h.purpose == "cup"]


@pytest.mark.parametrize("front", [DOOR, FrontSpec(id="B1-1", kind="pair")])
def test_cups_elsewhere_than_in_the_job_are_a_fault(front: FrontSpec) -> None:
    """Of a pair too; as near as a list writes them they are the same."""
    given = job(box(replace(front, boring=BORED, hung=Hung(hinges_at=CUPS))))
    deliver(given, piece("B1-1", boring=BORED, hinges_at=(97.0004, 600.0)))
    with pytest.raises(ReadingError) as caught:
        deliver(given, piece("B1-1", boring=BORED, hinges_at=(109.8, 600.0)))
    [fault] = caught.value.faults
    assert "hinges at (109.8 mm; 600.0 mm given): the job has 97.0 mm; 600.0 mm" in str(fault)


def test_leaves_that_came_bored_otherwise_are_a_fault() -> None:
    """A job has the cups of both in the same places."""
    pair = job(box(FrontSpec(id="B1-1", kind="pair"), width=914.4))
    with pytest.raises(ReadingError, match="bored otherwise than the other leaf"):
        deliver(pair, piece("B1-1L", boring=BORED, hinges_at=CUPS), piece("B1-1R"))


@pytest.mark.parametrize(("off", "same"), [(0.00005, True), (-0.0009, True), (0.002, False)])
def test_a_size_with_few_decimals_is_the_one_ordered(off: float, same: bool) -> None:
    """So no part has another code for it."""
    plain = job(box(DOOR))
    [ordered] = lay_out(plain).fronts
    sizes = (ordered.width + off, ordered.height - off)
    came = deliver(plain, piece("B1-1", width=sizes[:1], height=sizes[1:]))
    [front] = lay_out(came).fronts
    assert ((front.width, front.height) == (ordered.width, ordered.height)) is same
