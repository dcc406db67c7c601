"""Doors hinged beside a deeper box."""

import pytest
from msgspec.structs import replace

from jigs.given.build import Build
from jigs.given.hardware import Confirmed, PullRecord
from jigs.given.job import BoxSpec, FrontSpec, Grid, Job
from jigs.given.stated import Hung
from jigs.given.wallspec import Appliance, WallSpec
from jigs.ground.geometry import Hand
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from tests.jigs.sample import PULL, box, job
from tests.said import fact_of, remedy_of

KNOB = replace(PULL, centers=None, door_inset=50.0)
TALL_DEEP, WALL_DEEP, T, BUMPER = 584.0, 320.0, 19.05, 2.0


def kitchen(
    hinged: Hand, *, tall_at: Hand, gap: float = 0.0, deep: float = TALL_DEEP,
    pull: PullRecord = PULL, width: float = 457.2, **front: object,
) -> Job:  # fmt: skip
    """A wall box and a tall one on either side of it, this far apart."""
    door = FrontSpec(id="W1-1", kind="door", hinged=hinged, **front)  # type: ignore[arg-type]
    wall = box(door, name="W1", kind="wall", depth=WALL_DEEP, width=width, height=720.0,
               above_floor=1370.0, x=1000.0)  # fmt: skip
    x = 1000.0 - gap - 600.0 if tall_at == "left" else 1000.0 + width + gap
    tall = box(FrontSpec(id="T1-1", kind="pair"), name="T1", kind="tall", depth=deep, width=600.0,
               height=2100.0, x=x)  # fmt: skip
    made = job(wall, tall, pull=pull, grid=Grid())
    return replace(made, build=Build(bumper=BUMPER), shown_in="mm")


def found(made: Job) -> list[Problem]:
    """Give what is said of deeper boxes."""
    problems = lay_out(made).problems
    return [p for p in problems if p.code == "deeper-box" and p.part == "W1-1"]


@pytest.mark.parametrize("hand", ["left", "right"])
def test_a_wall_box_beside_a_tall_one(hand: Hand) -> None:
    """The tall one stands out 584 - 320 - 2 - 19.05 = 242.95; the pull, 50.8 from the free edge of
    454, is further from the hinge: 6 is wanted. Hinged on its other side nothing is struck."""
    (told,) = found(kitchen(hand, tall_at=hand))
    assert told.part == "W1-1"
    assert pytest.approx(242.95) == TALL_DEEP - WALL_DEEP - BUMPER - T
    assert "stands out 243.0 mm" in fact_of(told, "mm")
    assert fact_of(told, "mm").endswith("6.0 mm (1/4- in) is needed")
    assert "6.0 mm" in remedy_of(told, "mm")
    other: Hand = "right" if hand == "left" else "left"
    assert found(kitchen(other, tall_at=hand)) == []
    assert found(kitchen(hand, tall_at=hand, gap=6.0)) == []
    assert len(found(kitchen(hand, tall_at=hand, gap=5.0))) == 1
    assert found(kitchen(hand, tall_at=hand, hung=Hung(restrictor=True))) == []


def test_a_pull_that_the_box_reaches_wants_its_projection() -> None:
    """A door 271.8 wide has its pull 221 from the hinge, within 242.95: 35 + 6."""
    for gap, told in ((41.0, 0), (40.0, 1)):
        problems = found(kitchen("left", tall_at="left", gap=gap, width=275.0))
        assert len(problems) == told
        assert all(
            "for its pull + 6.0 mm (1/4- in) to spare)" in fact_of(each, "mm") for each in problems
        )


@pytest.mark.parametrize(("reach", "wanted"), [(199.0, 6.0), (201.0, 41.0)])
def test_a_pull_strikes_the_deeper_boxs_own_fronts_too(reach: float, wanted: float) -> None:
    """They stand 2 + 19.05 before its front edge: a pull 221 from the hinge is met from 199.95."""
    deep = WALL_DEEP + BUMPER + T + reach
    (told,) = found(kitchen("left", tall_at="left", width=275.0, deep=deep))
    assert f"set a filler of {wanted:.1f} mm" in remedy_of(told, "mm")


def test_a_projection_that_nobody_measured_is_told_as_open() -> None:
    """It decides the finding, and is no fact until the pull's record confirms it."""
    cases: tuple[tuple[dict[str, Confirmed], str], ...] = (
        ({}, "(about 35.0 mm (1 3/8 in) (open: the leaflet's own figure rules) for its pull"),
        ({"projection": "measured"}, "(35.0 mm (1 3/8 in) for its pull"),
    )
    for confirmed, words in cases:
        pull = replace(PULL, confirmed=confirmed)
        (told,) = found(kitchen("left", tall_at="left", gap=20.0, width=275.0, pull=pull))
        assert words in fact_of(told, "mm")


@pytest.mark.parametrize(("deep", "told"), [(361.0, 0), (361.1, 1), (320.0, 0), (250.0, 0)])
def test_a_trifle_deeper_is_none(deep: float, told: int) -> None:
    """320 + 2 + 19.05 and 20 beyond."""
    assert len(found(kitchen("right", tall_at="right", deep=deep))) == told


def test_what_stands_lower_is_not_struck() -> None:
    """A deep base box below a wall box is beside it along the wall, and not at its height."""
    made = kitchen("left", tall_at="left")
    low: BoxSpec = replace(made.boxes[1], height=760.0, kind="base")
    assert found(replace(made, boxes=(made.boxes[0], low))) == []


@pytest.mark.parametrize(
    ("depth", "hand", "told"),
    [(700.0, "left", True), (700.0, "right", False), (625.0, "left", False), (None, "left", False)],
)
def test_a_door_beside_an_appliance_that_stands_proud(
    depth: float | None, hand: Hand, told: bool
) -> None:
    """A fridge 700 deep before a box of 584: 700 - 584 - 2 - 19.05 = 94.95 beyond the door's face;
    625 stands out by less than a front is thick."""
    fridge = Appliance(id="F1", name="fridge", width=700.0, height=1800.0, depth=depth, x=0.0)
    door = FrontSpec(id="W1-1", kind="door", hinged=hand)
    base = box(door, name="B1", depth=584.0, x=700.0)
    made = replace(job(base, grid=Grid()), build=Build(bumper=BUMPER), shown_in="mm",
                   walls=(WallSpec(name="north", appliances=(fridge,)),))  # fmt: skip
    said = found(made)
    assert bool(said) is told
    if told:
        assert "beside F1, which stands out 95.0 mm" in fact_of(said[0], "mm")
