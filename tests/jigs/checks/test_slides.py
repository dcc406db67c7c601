"""Drawers and rollouts that are too large for what their slides bear."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.given.confirming import how_confirmed, open_keys
from jigs.given.job import FrontSpec
from jigs.given.stated import DrawerSize
from jigs.layout.layout import lay_out
from tests.jigs.cases.kitchen import box as cabinet
from tests.jigs.cases.kitchen import codes as codes_of
from tests.jigs.cases.kitchen import lay
from tests.jigs.jobtext import JOB, faults_of, read
from tests.jigs.sample import SLIDE, box, codes, job
from tests.said import fact_of

POUND = 0.45359237
RUNNER = "[slide.runner]"
CONFIRMED = 'drawer_rise = "14 mm"\nconfirmed = "measured"'


def _reckoned(width: float, length: float) -> float:
    """15 lb/ft2 (KCMA A161.1, second hand) on a box of this size; kg."""
    return 15 * POUND * (width / 304.8) * (length / 304.8)


@pytest.mark.parametrize(
    ("spare", "told"), [(None, False), (0.01, False), (0.0, False), (-0.01, True)]
)
def test_a_drawer_over_its_slides_load(spare: float | None, told: bool) -> None:
    """Told by its own box's area, and not at all where nobody said what the slides bear."""
    front = FrontSpec(id="B1-1", kind="drawer", drawer_box=DrawerSize(drawer_width=409.6))
    load = None if spare is None else _reckoned(409.6, SLIDE.length) + spare
    layout = lay_out(job(box(front), slide=replace(SLIDE, load=load)))
    assert ("slide-load" in codes(layout)) is told
    assert not layout.fronts[0].withheld


def test_it_is_told_in_kilograms_and_pounds() -> None:
    """409.6 x 533 at 15 lb/ft2 is 16.0 kg, 35 lb."""
    front = FrontSpec(id="B1-1", kind="drawer", drawer_box=DrawerSize(drawer_width=409.6))
    assert round(_reckoned(409.6, 533), 1) == 16.0
    (found,) = [
        problem
        for problem in lay_out(job(box(front), slide=replace(SLIDE, load=12.0))).problems
        if problem.code == "slide-load"
    ]
    assert found.level == "warning"
    assert "16.0 kg (35 lb)" in fact_of(found)
    assert "KCMA A161.1, second hand" in fact_of(found)
    assert f"'{SLIDE.name}' bears 12.0 kg (26 lb)" in fact_of(found)


def test_a_rollout_over_its_slides_load(tmp_path: Path) -> None:
    """A rollout of 390 x 533 is reckoned to carry 15.2 kg."""
    rollout = "[[box.rollout]]\nat = 300\nheight = 120\nslide = 'weak'\n"
    weak = "[slide.weak]\nlike = 'undermount-533'\nload = {}\n"
    assert round(_reckoned(390, 533), 1) == 15.2
    for load, told in ((15.1, True), (15.3, False)):
        layout = lay(
            tmp_path,
            weak.format(load) + cabinet('kind = "door"\nhinged = "left"', more=rollout),
        )
        assert ("slide-load" in codes_of(layout, "B1-ROLLOUT-1")) is told


def test_load_is_read_and_confirmed_like_any_number(tmp_path: Path) -> None:
    """By itself it opens no number: no hole depends on it."""
    text = JOB.replace(CONFIRMED, 'drawer_rise = "14 mm"\nload = 30\nconfirmed = ["load"]')
    slide = read(tmp_path, text).slides["runner"]
    assert slide.load == 30.0
    assert how_confirmed(slide, "load") == "confirmed"
    assert "load" not in open_keys(replace(slide, confirmed={}))


@pytest.mark.parametrize("given", ["0", "-3", "501", '"30 mm"', "true"])
def test_a_load_that_is_no_load(tmp_path: Path, given: str) -> None:
    """A plain number of kilograms, up to 500."""
    faults = faults_of(tmp_path, JOB.replace(RUNNER, f"{RUNNER}\nload = {given}"))
    assert "load" in str(faults)
    assert "not a number over 0, up to 500" in str(faults)
