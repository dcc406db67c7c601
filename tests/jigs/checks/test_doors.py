"""Doors that will not hang, or not well."""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.hardware import HingeRecord
from jigs.given.job import FrontSpec, Reveal
from jigs.given.stated import Hung
from jigs.layout.layout import lay_out
from tests.jigs.sample import GOLDEN, HINGE, MATERIAL, box, codes, job


def door(
    hinge: HingeRecord = HINGE,
    *,
    reveal: Reveal = GOLDEN,
    width: float = 457.2,
    height: float = 774.7,
    **given: object,
) -> Layout:
    """Lay out one left-hung door."""
    front = FrontSpec(id="B1-1", **{"kind": "door", "hinged": "left", **given})  # type: ignore[arg-type]
    bare = replace(box(front, width=width, height=height, kind="wall"), no_shelf=True)
    return lay_out(job(bare, hinge=hinge, reveal=reveal))


def test_the_golden_door_has_no_findings() -> None:
    """Nothing is wrong with the golden door."""
    assert codes(door()) == []


@pytest.mark.parametrize(
    ("thickness", "depth", "point", "held"),
    [(19.05, 13, 1, False), (15.5, 13, 1, False), (15.4, 13, 1, True), (16, 13, 2.5, True),
     (16.5, 13, 2.5, False)],
)  # fmt: skip
def test_skin(thickness: float, depth: float, point: float, held: bool) -> None:
    """2.5 stays under the cup, and 1 under the bit's point (common practice, no source)."""
    record = replace(HINGE, cup_depth=depth, bit_point=point)
    assert ("skin-under-cup" in codes(door(record, thickness=thickness))) is held


def test_hinge_edge_reveal() -> None:
    """A front 22 thick needs 1.6 at its hinge edge, one of 24 needs 2.4 (from memory)."""
    assert "hinge-edge-reveal" not in codes(door(thickness=22.0))
    assert "hinge-edge-reveal" in codes(door(thickness=24.0))
    assert "least-reveal-unknown" in codes(door(thickness=25.0))


def test_low_and_wide_doors() -> None:
    """Outer hinges under 150 apart, or under half the door's width, are told."""
    assert "hinges-close" in codes(door(height=230))
    assert "hinges-close" in codes(door(height=360, width=500))
    assert codes(door(height=480)) == []


def test_hinge_off_grid_and_no_room() -> None:
    """Slides in the way move a hinge off the grid; a door too low has no room at all."""
    assert "hinge-no-room" in codes(door(height=130))


def test_few_hinges_given() -> None:
    """Two heights on a door of 1200 are told: the table asks for three."""
    assert "hinges-few" in codes(door(height=1203.2, hung=Hung(hinges_at=(100.0, 1100.0))))


def test_beyond_the_tables() -> None:
    """A door over 2400 high gets six hinges and a warning."""
    layout = door(height=2450)
    assert "door-beyond-tables" in codes(layout)
    assert len([f for f in layout.fronts[0].fittings if f.kind == "hinge"]) == 6


def test_density_counts() -> None:
    """A job's own density decides the weight: at 1600 kg/m3 the golden door takes three."""
    heavy = replace(MATERIAL, front_density=1600.0)
    front = FrontSpec(id="B1-1", kind="door", hinged="left")
    layout = lay_out(job(box(front), material=heavy))
    assert 0.454 * 0.7715 * 0.01905 * 1600 > 6
    assert len([f for f in layout.fronts[0].fittings if f.kind == "hinge"]) == 3
