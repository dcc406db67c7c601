"""Pulls that meet fixing screws or the drawer box, and screws of no usual length."""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.hardware import PullRecord
from jigs.given.job import FrontSpec
from jigs.given.stated import NOTED, OpenedBy
from jigs.ground.lengths import Unit
from jigs.layout.layout import lay_out
from tests.jigs.sample import MATERIAL, PULL, box, codes, job
from tests.said import fact_of


def drawer(
    pull: PullRecord = PULL,
    *,
    thickness: float | None = None,
    width: float = 457.2,
    units: Unit = "in",
    **given: object,
) -> Layout:
    """Lay out a drawer 152.4 high over an opening."""
    front = FrontSpec(
        id="B1-1",
        **{"kind": "drawer", "height": 152.4, "thickness": thickness, **given},  # type: ignore[arg-type]
    )
    rest = FrontSpec(id="B1-2", kind="opening", leaflet=NOTED)
    return lay_out(job(box(front, rest, kind="tall", width=width), pull=pull, units=units))


def test_the_golden_drawer_front_has_no_findings() -> None:
    """Pull at 76.2, drawer box's top at 30.7 + 88.9 = 119.6: nothing is near anything."""
    assert codes(drawer()) == []


def test_pull_at_the_boxs_top_edge() -> None:
    """A pull 35 below the top edge stands at 117.4, 2.2 from the drawer box's top."""
    layout = drawer(replace(PULL, drawer=35.0))
    (finding,) = (p for p in layout.problems if p.code == "pull-at-box-edge")
    assert finding.also == ("B1-1-BOX",)


def test_pull_screws_through_the_box() -> None:
    """Through both, 19.05 + 15.9 + 7: 41.3 of the stock."""
    (front,) = drawer(replace(PULL, screws="through")).fronts
    assert front.screws.through_box
    assert front.screws.pull is not None
    assert 19.05 + 15.9 + 6 <= front.screws.pull <= 19.05 + 15.9 + 9
    assert front.screws.counterbore == 0


@pytest.mark.parametrize(("units", "screw"), [("in", 25.4 * 7 / 8), ("mm", 22.0)])
def test_a_counterbored_pull_screw_clamps_less(units: Unit, screw: float) -> None:
    """The head is sunk 4 into the back: 19.05 - 4 = 15.05 is clamped, a screw 6 to 9 longer is
    22.05 at best; 25.4 would stand 10.3 out and bottom in the pull (derived)."""
    (front,) = drawer(units=units).fronts
    assert (front.screws.through_box, front.screws.counterbore) == (False, 4.0)
    assert front.screws.pull == pytest.approx(screw)
    assert 6 <= screw - (19.05 - 4) <= 9
    assert front.screws.fixing == 28


def test_one_pull_for_two() -> None:
    """Two pulls of 480 do not fit on a width of 800: one is set, with a warning."""
    assert "one-pull-for-two" in codes(drawer(replace(PULL, centers=480.0), width=803.2))


def test_screws_of_no_usual_length() -> None:
    """A front 10 thick leaves no usual fixing screw and no usual pull screw."""
    found = codes(drawer(thickness=8.0))
    assert "fixing-screw" in found
    assert "pull-screw" in found


def test_material_is_the_golden_one() -> None:
    """The drawer box's front is as thick as its sides."""
    assert MATERIAL.drawer_side + 19.05 - 3 >= 28


@pytest.mark.parametrize(
    ("centers", "usual"),
    [
        (95.25, "96.0"), (98.0, "96.0"), (98.1, None), (96.0, None), (76.0, "76.2"), (127.0, None),
        (126.0, "127.0"), (129.0, "128.0"), (304.8, None), (303.0, "304.8"), (150.0, None),
        (None, None),
    ],
)  # fmt: skip
def test_centres_beside_a_usual_spacing_are_asked_about(
    centers: float | None, usual: str | None
) -> None:
    """3 3/4 in is not 96, 5 in is not 128: within 2 of a usual one, metric or in inches, and not
    on it (common practice, no source). Nothing is held, and no pull that nobody uses is told."""
    bar = replace(PULL, centers=centers)
    doors = [
        FrontSpec(id=name, kind="door", hinged="left", opened_by=OpenedBy(pull=pull))
        for name, pull in (("B1-1", None), ("B2-1", "none"))
    ]
    layout = lay_out(job(*(box(d, name=d.id[:2], kind="wall") for d in doors), pull=bar))
    found = [p for p in layout.problems if p.code == "unlikely-number"]
    assert [p.also for p in found] == ([("B1-1",)] if usual else [])
    if usual:
        assert f"{usual} mm" in fact_of(found[0])
        assert "pull.bar.centers" in fact_of(found[0])
    unused = replace(job(box(doors[1], kind="wall"), pull=bar))
    assert "unlikely-number" not in codes(lay_out(unused))
