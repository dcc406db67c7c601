"""Sums that close."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.bench.benchpart import Marks
from jigs.bench.station import Closing
from jigs.ground.geometry import Fitting, Hole
from templates.faces.views import views_of_front
from templates.sheets.sums import sums
from templates.words.markingwords import marks_words
from templates.words.rowwords import sum_words
from templates.words.sumwords import closing_words
from tests.jigs.sample import front_of
from tests.templates.worked import only_cards, worked_layout

lengths = st.integers(1, 24_000).map(lambda tenths: tenths / 10 + 0.0375)


@given(st.lists(lengths, max_size=8), lengths, st.booleans())
def test_the_printed_figures_add_up(places: list[float], beyond: float, steps: bool) -> None:
    """Whatever is rounded, the figures as printed come to the size as printed."""
    places = sorted(places)
    length = (places[-1] if places else 0.0) + beyond + 1.0
    left, right = closing_words(places, length, steps=steps).split(" = ")
    terms = [
        figure
        for term in left.split(" + ")
        for times, _, figure in [term.rpartition(" x ")]
        for _ in range(int(times or 1))
    ]
    assert len(terms) == len(places) + 1
    assert sum(round(float(term) * 10) for term in terms) == round(float(right) * 10)
    assert float(right) == pytest.approx(length, abs=0.0501)


def test_a_door_is_summed_from_cup_to_cup() -> None:
    """Derived: cups 13 x 32 = 416 apart, the lower 99.35 - 1.6 = 97.75 up, the rest of 613
    above."""
    (text,) = sums(only_cards("B3-2", "back")[0].view)
    assert text.startswith("97.8 + 416.0 + 99.2 = 613.0.")
    assert "Punch to punch 416.0" in text


def test_a_door_and_its_side_have_one_figure_from_punch_to_punch() -> None:
    """Off the grid the cups are 574.975 apart, from 94.9625 up: 575.0 in the door's sum and below
    it, as beside the plates; what is left above takes the rounding."""
    view = only_cards("B3-2", "back")[0].view
    (hinge,) = {fitting.kind: fitting for fitting in view.fittings}.values()
    cups = [hole for hole in hinge.holes if hole.purpose == "cup"][:1]
    at = (94.9625, 94.9625 + 574.975)
    moved = replace(hinge, holes=tuple(replace(cups[0], y=y) for y in at))
    (text,) = sums(replace(view, fittings=(moved,), height=769.9375))
    assert text == "95.0 + 575.0 + 99.9 = 769.9. Punch to punch 575.0."
    closing = Closing(start="bottom", places=at, length=769.9375)
    assert sum_words(closing) == "↑ 95.0 + 575.0 + 99.9 = 769.9"


def test_holes_by_hand_beside_cups_are_summed_too() -> None:
    """Two holes, 100 and 132 from the left, 300 up: 322 of 454 are left across, 313 of 613 up."""
    view = only_cards("B3-2", "back")[0].view
    holes = tuple(
        Hole(purpose="manual", face="back", x=x, y=300.0, diameter=3.0, depth=12.0)
        for x in (100.0, 132.0)
    )
    by_hand = Fitting(kind="manual", index=1, count=1, part=view.part, record=None, holes=holes)
    cups, across, up = sums(replace(view, fittings=(*view.fittings, by_hand)))
    assert cups == sums(view)[0]
    assert across == "By hand, across: 100.0 + 32.0 + 322.0 = 454.0."
    assert up == "By hand, up: 300.0 + 313.0 = 613.0."


def test_a_side_is_summed_from_line_to_line() -> None:
    """Hole lines 224.0, 192.0, 192.0 apart (worked example)."""
    (text,) = sums(only_cards("B1-SIDE-L", "inside")[0].view)
    assert "51.3 + 224.0 + 192.0 + 192.0 + 115.4 = 774.7" in text


def test_a_pull_is_summed_across_and_its_one_height_up() -> None:
    """147 and 160 and 147 make 454."""
    across, *up = sums(only_cards("B3-1", "front")[0].view)
    assert "147.0 + 160.0 + 147.0 = 454.0" in across
    assert up == []


def test_a_drawer_box_is_summed_across_its_front() -> None:
    """22.2 in from each end (worked example); in the uneven box 13.05 and 17.8, as seen from the
    back."""
    (text,) = sums(only_cards("B1-4", "back")[0].view)
    assert "Its box: 22.2 LEFT + 409.6 + 22.2 RIGHT = 454.0; 30.7 up" in text
    (text,) = sums(only_cards("B1-1", "back", "uneven")[0].view)
    assert "Its box: 13.1 LEFT + 389.0 + 17.8 RIGHT = 419.9, WIDE" in text
    assert "WIDE GAP ON YOUR RIGHT" in text
    assert "30.7" in text


def test_a_drawer_box_keeps_its_own_width_in_the_sum() -> None:
    """16.14 and 363.54 in a front of 404.8: the box is 363.5 wherever it is measured."""
    marks = Marks(box="D", in_left=16.14, in_right=25.12, up=30.0, width=363.54)
    assert marks_words(marks).startswith("16.1 LEFT + 363.5 + 25.2 RIGHT = 404.8")


def test_screws_are_summed_both_ways() -> None:
    """55.7, then 38.9 up; 70.1 in from each end."""
    view = views_of_front(front_of(worked_layout("in"), "B3-1"), "in", pilots=True)[0]
    across, up = sums(view)
    assert "70.1 + 313.8 + 70.1 = 454.0" in across
    assert "55.7 + 38.9 + 57.8 = 152.4" in up
