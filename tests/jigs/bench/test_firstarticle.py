"""The first article: which parts are tried on scrap, and within which limits."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.bench.firstarticle import FirstArticle, first_articles, trial
from jigs.bench.rows import first_rows
from jigs.bench.stations import plan_stations
from jigs.given.job import FrontSpec, ShelfSpec
from jigs.layout.layout import lay_out
from tests.jigs.jobtext import JOB, read
from tests.jigs.sample import box, lay


def articles(tmp_path: Path, text: str = JOB) -> dict[str, FirstArticle]:
    return {found.record.name: found for found in first_articles(lay_out(read(tmp_path, text)))}


def test_one_door_and_one_drawer_of_each_record(tmp_path: Path) -> None:
    """A second door on the same hinge is not tried again."""
    more = """
  [[box.front]]
  kind = "door"
  hinged = "right"
  height = "8"
"""
    found = articles(tmp_path, JOB + more)
    assert {name: article.front.id for name, article in found.items()} == {
        "mine": "B1-2",
        "runner": "B1-1",
    }
    assert found["mine"].names == ("B1-2", "B1-SIDE-L")
    assert found["runner"].names == ("B1-1", "B1-SIDE-L", "B1-SIDE-R")


def test_the_overlay_wanted_is_that_of_the_box(tmp_path: Path) -> None:
    """Side 18.3 less a reveal of 1/16 in; the side screw takes 1 either way."""
    overlay = articles(tmp_path)["mine"].marks[0]
    assert overlay.wanted == pytest.approx(18.3 - 25.4 / 16)
    assert overlay.least == pytest.approx(18.3 - 25.4 / 16 - 1.0)
    assert overlay.most == pytest.approx(18.3 - 25.4 / 16 + 1.0)


def test_the_drawer_box_stands_as_far_above_its_front_as_computed(tmp_path: Path) -> None:
    """Bottom 18.3, drawer rise 14, bottom reveal 1/16 in: 18.3 + 14 - 1.5875 = 30.7 (derived),
    half a millimetre either way."""
    rise = articles(tmp_path)["runner"].marks[1]
    assert rise.wanted == pytest.approx(18.3 + 14 - 25.4 / 16)
    assert rise.most - rise.least == pytest.approx(2 * 0.5)


def test_a_drawer_box_may_be_narrower_by_its_slides_tolerance_and_no_wider(tmp_path: Path) -> None:
    """1.5 of play, as the slide's record has it."""
    width = articles(tmp_path)["runner"].marks[0]
    assert width.most == width.wanted
    assert width.wanted - width.least == pytest.approx(1.5)


def test_a_door_held_back_is_not_tried(tmp_path: Path) -> None:
    """Without a hand there is nothing to hang."""
    assert set(articles(tmp_path, JOB.replace('  hinged = "left"\n', ""))) == {"runner"}


def test_an_inset_door_is_measured_by_its_gap(tmp_path: Path) -> None:
    """The gap between door and side takes the overlay's place: 2 by default, and half
    of what rounding the width down to 1/32 in leaves (524 of them)."""
    text = JOB.replace('kind = "base"\n', 'kind = "base"\noverlay = "inset"\n').replace(
        'like = "cup35-full"\nconstant = "15 mm"', 'like = "cup35-inset"\nconstant = "-4 mm"'
    )
    marks = articles(tmp_path, text)["mine"].marks
    assert marks[0].what == "inset-gap"
    assert marks[0].wanted == pytest.approx((457.2 - 2 * 18.3 - 524 * 25.4 / 32) / 2)


PLAIN = """
[[box]]
id = "T9"
kind = "tall"
width = "24"
height = "84"
depth = "23"
above_floor = "4"

  [[box.front]]
  kind = "door"
  hinged = "left"
  pull = "none"
"""


def test_the_plainest_front_is_tried(tmp_path: Path) -> None:
    """A door of ordinary height goes before a tall one that the job names first, a single one
    before the leaves of a pair, a slab before a five-piece front."""
    head, box = JOB.split("[[box]]", 1)
    found = articles(tmp_path, f"{head}{PLAIN}\n[[box]]{box}")
    assert found["mine"].front.id == "B1-2"
    pair = PLAIN.replace("T9", "B0").replace('"tall"', '"base"').replace('"84"', '"30 1/2"')
    pair = pair.replace('"door"\n  hinged = "left"', '"pair"')
    assert articles(tmp_path, f"{head}{pair}\n[[box]]{box}")["mine"].front.id == "B1-2"
    framed = pair.replace('"pair"', '"door"\n  hinged = "left"\n  stile = "2"\n  groove = "0"')
    assert articles(tmp_path, f"{head}{framed}\n[[box]]{box}")["mine"].front.id == "B1-2"


def test_a_trial_carries_only_the_holes_that_it_needs(tmp_path: Path) -> None:
    """Of the side the plates and slides of the tried fronts, of a front no pull."""
    layout = lay_out(read(tmp_path, JOB.replace("[[box.front]]", """[[box.shelf]]
  adjustable = true
  [[box.front]]""", 1)))  # fmt: skip
    shown = trial(layout)
    assert any(fitting.kind == "shelf" for side in layout.sides for fitting in side.fittings)
    assert {f.part for side in shown.sides for f in side.fittings} == {"B1-1", "B1-2"}
    kinds = {fitting.kind for front in shown.fronts for fitting in front.fittings}
    assert "pull" not in kinds
    assert "hinge" in kinds
    assert [side.trial_of for side in shown.sides] == [("B1-1", "B1-2"), ("B1-1",)]


def test_pins_are_tried_once_and_boxes_together_last() -> None:
    """On scrap one card of pins on each board of a pair; boards of a box already together are
    taken only where no other has such holes."""
    door = FrontSpec(id="B1-1", kind="door", hinged="left")
    loose = replace(box(door), shelves=(ShelfSpec(count=3),))
    other = replace(box(replace(door, id="B2-1"), name="B2"), shelves=(ShelfSpec(count=3),))
    for together, tried in (((True, False), "B2"), ((True, True), "B1")):
        boxes = [replace(b, assembled=a) for b, a in zip((loose, other), together, strict=True)]
        layout = lay(*boxes)
        (sides, *_) = first_rows(plan_stations(layout), first_articles(layout))
        assert {row.part.box for row in sides.rows} == {tried}
        pins = [row for row in sides.rows if row.purpose == "shelf"]
        assert [len(row.settings) for row in pins] == [1, 1]
