"""An appliance's panel held against its leaflet, and fronts on push latches."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.given.job import FrontSpec
from jigs.given.stated import HandHole, Leaflet, OpenedBy, Taped
from jigs.ground.errors import ReadingError
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from templates.words.leafletwords import leaflet_facts
from tests.jigs.sample import UNDER_COUNTER, box, codes, front_of, lay
from tests.jobtexts import HEAD, box_text
from tests.said import fact_of

FITS = Leaflet(
    width_min=450.0, width_max=460.0, height_min=700.0, height_max=780.0, gap_left=1.5,
    gap_right=1.5, weight_max=8.0, pull="allowed",
)  # fmt: skip
"""What the golden panel, 454 x 771.5 and 5.0 kg, is allowed to be."""


def panel(leaflet: Leaflet, **more: object) -> FrontSpec:
    """Give the golden box's only front as an appliance's panel."""
    spec = FrontSpec(id="B1-1", kind="panel", leaflet=leaflet)
    return replace(spec, **more)


def test_a_panel_within_its_leaflet_has_no_finding() -> None:
    """All its numbers are stated and met: it is ready, and its sheet tells what they are."""
    layout = lay(box(panel(FITS, opened_by=OpenedBy(pull="bar"))), units="mm", reveal=UNDER_COUNTER)
    assert codes(layout) == []
    front = front_of(layout, "B1-1")
    assert not front.withheld
    (fact,) = leaflet_facts(layout, front)
    assert fact.count("450.0 mm") == fact.count("780.0 mm") == 1
    assert "gap on the left at least 1.5 mm" in fact
    assert "weight at most 8 kg; pull allowed" in fact


def test_what_is_not_stated_of_a_leaflet_is_named() -> None:
    """The rest is for the person to compare."""
    layout = lay(box(panel(Leaflet(width_max=460.0, height_max=780.0))))
    (said,) = [fact_of(p) for p in layout.problems if p.code == "leaflet-in-part"]
    assert said.endswith("gaps, weight, pull")
    assert leaflet_facts(layout, front_of(layout, "B1-1"))


@pytest.mark.parametrize(
    ("leaflet", "said"),
    [
        (replace(FITS, width_max=453.9), "wide"),
        (replace(FITS, width_min=454.1), "wide"),
        (replace(FITS, height_max=771.4), "high"),
        (replace(FITS, gap_right=3.0), "the gap on its right"),
        (replace(FITS, weight_max=4.9), "it weighs 5.0 kg; at most 4.9 kg"),
    ],
)
def test_a_panel_outside_its_leaflet_is_held_back(leaflet: Leaflet, said: str) -> None:
    """The leaflet wins: the finding gives both numbers."""
    layout = lay(box(panel(leaflet)))
    assert front_of(layout, "B1-1").withheld
    assert any(said in fact_of(p) for p in layout.problems if p.code == "leaflet-not-met")


def test_a_panel_that_may_have_no_pull() -> None:
    """A pull, by record or by hand, holds it back; a hole in its back does not."""
    leaflet = replace(FITS, pull="none")
    assert front_of(lay(box(panel(leaflet, opened_by=OpenedBy(pull="bar")))), "B1-1").withheld
    hole = HandHole(x=60.0, y=100.0, diameter=3.0, depth=12.0, face="back", purpose="bracket")
    assert not front_of(lay(box(panel(leaflet, holes=(hole,)))), "B1-1").withheld


def test_a_measured_panel_is_held_against_the_leaflet() -> None:
    """The panel in hand counts, not the one ordered."""
    spec = panel(FITS, measured=Taped(width=(461.0, 461.0), height=(771.5, 771.5)))
    assert "leaflet-not-met" in codes(lay(box(spec)), "B1-1")


def test_a_front_on_a_push_latch_has_no_pull() -> None:
    """It has one only where it names one; the gap behind it is told."""
    spec = FrontSpec(id="B1-1", kind="door", hinged="left", opened_by=OpenedBy(push_latch=True))
    layout = lay(box(spec))
    assert not [f for f in front_of(layout, "B1-1").fittings if f.kind == "pull"]
    assert "push-latch" in codes(layout, "B1-1")
    named = lay(box(replace(spec, opened_by=OpenedBy(pull="bar", push_latch=True))))
    assert [f for f in front_of(named, "B1-1").fittings if f.kind == "pull"]


def write(folder: Path, leaflet: str) -> Path:
    """Write a job of one panel with this leaflet."""
    file = folder / "job.toml"
    front = f'kind = "panel"\nleaflet = {leaflet}'
    file.write_text(HEAD + box_text("B1", "open", front), encoding="utf-8")
    return file


def test_a_leaflet_is_read(tmp_path: Path) -> None:
    """Its lengths may have units; kg are plain; the word `noted` is still enough."""
    numbers = '{ width_min = "10 in", width_max = 460, height_max = 780, weight_max = 8.5 }'
    (made,) = read_job(write(tmp_path, numbers)).boxes
    assert made.fronts[0].leaflet == Leaflet(
        width_min=10 * 25.4, width_max=460.0, height_max=780.0, weight_max=8.5
    )
    noted = lay_out(read_job(write(tmp_path, '"noted"')))
    assert not front_of(noted, "B1-1").withheld


@pytest.mark.parametrize(
    ("leaflet", "said"),
    [
        ("{ width_max = 460 }", "says nothing of the height"),
        ("{ width_min = 9, width_max = 8, height_max = 7 }", "less than width_min"),
        ("{ width_max = 460, height_max = 780, heigth_min = 1 }", "unknown key"),
        ('{ width_max = 460, height_max = 780, pull = "maybe" }', "allowed: allowed, none"),
        ('"read"', 'neither "noted" nor a table'),
    ],
)
def test_faults_of_a_leaflet_are_named(tmp_path: Path, leaflet: str, said: str) -> None:
    """What is missing, exchanged, unknown."""
    with pytest.raises(ReadingError) as raised:
        read_job(write(tmp_path, leaflet))
    assert said in str(raised.value)
