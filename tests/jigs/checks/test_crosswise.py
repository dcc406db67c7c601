"""What was perhaps exchanged: labels of two fronts, width and height of one; digits of a size."""

from itertools import pairwise
from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.checks.unlikely import check_crosswise
from jigs.given.job import FrontSpec
from jigs.ground.lengths import Unit
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests.jigs.order.test_matching import deliver, row
from tests.jigs.sample import GOLDEN, box, front_of, job
from tests.said import fact_of
from tests.test_linear import count_lines

W, H = 454.0, 771.5
SIXTEENTH = 25.4 / 16


def told(layout: Layout) -> list[Problem]:
    """The findings that ask whether something was exchanged."""
    return [problem for problem in layout.problems if problem.code == "exchanged-perhaps"]


def doors(*widths: float) -> tuple[object, ...]:
    """Boxes with a door each, of these widths between their reveals."""
    return tuple(
        box(FrontSpec(id=f"B{n}-1", kind="door", hinged="left"), name=f"B{n}", width=w + 3.2)
        for n, w in enumerate(widths, start=1)
    )


TWO = job(*doors(W, W + SIXTEENTH, 300.0), reveal=GOLDEN)  # type: ignore[arg-type]


def test_exchanged_labels_within_the_limits_are_said_as_possible() -> None:
    """Two doors 1/16 apart, each with the other's label: both within the 1.6 accepted."""
    layout = lay_out(deliver(row(2, "B1-1", W + SIXTEENTH, H), row(3, "B2-1", W, H), to=TWO))
    (problem,) = told(layout)
    assert (problem.level, problem.part, problem.also) == ("warning", "B1-1", ("B2-1",))
    assert "labels exchanged with B2-1? As measured it is 17 15/16 in (455.6 mm)" in fact_of(
        problem
    )
    assert not front_of(layout, "B1-1").withheld


@pytest.mark.parametrize(
    ("first", "second"),
    [(W, W + SIXTEENTH), (W + 0.8, W + SIXTEENTH), (W + 0.8, W + 0.8), (W + SIXTEENTH, W + 1.0)],
)
def test_pieces_a_little_off_are_not_taken_for_each_other(first: float, second: float) -> None:
    """As ordered, or one of them off: crosswise they fit no better, or not well."""
    layout = lay_out(deliver(row(2, "B1-1", first, H), row(3, "B2-1", second, H), to=TWO))
    assert told(layout) == []


def test_a_piece_nearly_square_that_was_turned_is_asked_about() -> None:
    """454.0 x 452.8 arrived as 452.8 x 454.0: each size within 1.6."""
    spec = box(FrontSpec(id="B1-1", kind="door", hinged="left"), height=452.8 + 3.2)
    layout = lay_out(deliver(row(2, "B1-1", 452.8, W), to=job(spec, reveal=GOLDEN)))
    (problem,) = told(layout)
    assert "width and height exchanged? Measured 17 13/16+ in (452.8 mm)" in fact_of(problem)
    layout = lay_out(deliver(row(2, "B1-1", W, 452.8), to=job(spec, reveal=GOLDEN)))
    assert told(layout) == []


@pytest.mark.parametrize(
    ("width", "height", "asked"),
    [(W - 2.0, W, True), (W, W - 2.0, False), (W - 2.0, W - 2.0, False), (W - 0.4, W, False)],
)
def test_sizes_that_are_near_and_fit_exchanged_are_asked_about(
    width: float, height: float, asked: bool
) -> None:
    """A box that takes 454.0 x 452.0; its front is given the other way round."""
    spec = FrontSpec(id="B1-1", kind="door", hinged="left", width=width, height=height)
    layout = lay_out(job(box(spec, height=W - 2.0 + 3.2), reveal=GOLDEN))
    assert bool(told(layout)) is asked


@pytest.mark.parametrize(
    ("rows", "said", "units"),
    [
        ("B1-1,drawer,6,17 7/8,\n", "A drawer 6 in (152.4 mm) wide and 17 7/8 in (454.0 mm) high",
         "in"),
        ("B1-1,false-front,152.4,454,\n", "A false front 152.4 mm", "mm"),
        ("B1-1,door,715,300,left\n", "A door 715.0 mm", "mm"),
        ("B1-1,drawer,17 7/8,6,\n", "", "in"),
        ("B1-1,drawer,300,350,\n", "", "mm"),
        ("B1-1,door,300,715,left\n", "", "mm"),
    ],
)  # fmt: skip
def test_odd_shapes_in_a_list(tmp_path: Path, rows: str, said: str, units: Unit) -> None:
    """A drawer front 6 wide and 17 7/8 high? A deep one 300 x 350 is nothing odd."""
    path = tmp_path / "fronts.csv"
    path.write_text(f"id,kind,width,height,hinged\n{rows}")
    found = told(lay_out(read_job(path, units)))
    assert len(found) == bool(said)
    assert all(said in fact_of(problem, units) for problem in found), found


STACK = (220.8, 188.8, 188.8, 163.5)
"""The golden stack: its fronts, with gaps of 3.2 and reveals of 1.6, close 774.7 (derived)."""


@pytest.mark.parametrize("place", range(4))
def test_exchanged_digits_are_told_where_sizes_no_longer_close(place: int) -> None:
    """Each two neighbouring digits of each height, and of each width."""
    width = "454.0"
    for numbers, key in ((f"{STACK[place]}", "height"), (width, "width")):
        digits = [n for n, sign in enumerate(numbers) if sign.isdigit()]
        for one, two in pairwise(digits):
            if numbers[one] == numbers[two]:
                continue
            slip = list(numbers)
            slip[one], slip[two] = slip[two], slip[one]
            specs = [
                FrontSpec(
                    id=f"B1-{n}", kind="drawer", height=height,
                    width=float("".join(slip)) if key == "width" and n == place + 1 else 454.0,
                )
                for n, height in enumerate(STACK, start=1)
            ]  # fmt: skip
            if key == "height":
                old = specs[place]
                specs[place] = FrontSpec(
                    id=old.id, kind="drawer", width=old.width, height=float("".join(slip))
                )
            layout = lay_out(job(box(*specs, kind="drawer"), reveal=GOLDEN))
            codes = {problem.code for problem in layout.problems}
            assert codes & {"reveals-do-not-close", "end-reveal", "side-reveal"}, slip


def test_many_fronts_alike_and_all_a_little_large_take_no_longer_each() -> None:
    """A whole order that came 0.7 too wide and too high: none is held against each other."""
    (front,) = lay_out(job(box(FrontSpec(id="B1-1", kind="door", hinged="left")))).fronts

    def lines(count: int) -> int:
        came = [
            replace(front, id=f"F{n}", ordered=(400.0, 700.0), width=400.7, height=700.7)
            for n in range(count)
        ]
        return count_lines(lambda: check_crosswise((), came)).total()

    assert lines(60) - lines(30) <= 2.1 * (lines(30) - lines(15))
