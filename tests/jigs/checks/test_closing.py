"""Sizes that do not close, and the counter."""

import pytest

from jigs.box.carcass import Carcass
from jigs.box.parts import Layout
from jigs.checks.closing import check_closing, check_counter
from jigs.given.job import BoxKind, FrontSpec
from jigs.given.stated import NOTED, OwnReveals
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from tests.jigs.sample import GOLDEN, UNDER_COUNTER, box, codes, job, one_column
from tests.said import fact_of, remedy_of


def findings(*fronts: FrontSpec, kind: BoxKind = "base") -> tuple[Problem, ...]:
    """Give the findings on these fronts in the golden box."""
    spec = box(*fronts, kind=kind)
    column = one_column(spec)
    return check_closing(Carcass(box=spec, side=18.3, back=6.0), column)


def front(**given: object) -> FrontSpec:
    """Give a front as the job states it."""
    return FrontSpec(id="B1-1", **{"kind": "door", **given})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("given", "level", "code", "figure"),
    [
        ({"height": 780.0}, "error", "reveals-do-not-close", "-6.9"),
        ({"height": 700.0}, "error", "reveals-do-not-close", "73.1"),
        ({"height": 770.0}, "warning", "end-reveal", "3.1"),
        ({"width": 458.0}, "error", "reveals-do-not-close", "458.0"),
        ({"width": 410.0}, "error", "reveals-do-not-close", "410.0"),
        ({"width": 452.0}, "warning", "side-reveal", "452.0"),
        ({"width": 771.5, "height": 454.0}, "error", "sizes-exchanged", "771.5"),
    ],
)
def test_each_miss_is_told_with_its_figure(
    given: dict[str, float], level: str, code: str, figure: str
) -> None:
    """The finding names its level and its figure."""
    (finding,) = findings(front(**given))
    assert (finding.level, finding.code) == (level, code)
    assert figure in fact_of(finding)
    assert remedy_of(finding)


def test_both_leaves_of_an_exchanged_pair_are_named() -> None:
    """The leaves carry the finding, not the pair, which is no part."""
    spec = box(front(kind="pair", width=771.5, height=454.0), width=914.4)
    column = one_column(spec)
    carcass = Carcass(box=spec, side=18.3, back=6.0)
    assert [p.part for p in check_closing(carcass, column)] == ["B1-1L", "B1-1R"]


@pytest.mark.parametrize(
    ("kind", "reveal", "told"),
    [("base", GOLDEN, True), ("base", UNDER_COUNTER, False), ("sink", GOLDEN, True),
     ("drawer", GOLDEN, True), ("wall", GOLDEN, False), ("tall", GOLDEN, False)],
)  # fmt: skip
def test_three_millimetres_under_a_counter(kind: BoxKind, reveal: object, told: bool) -> None:
    """Base, drawer and sink boxes need 3 above their top front (common practice, no source)."""
    spec = box(front(hinged="left"), kind=kind)
    column = one_column(spec, reveal)  # type: ignore[arg-type]
    found = check_counter(Carcass(box=spec, side=18.3, back=6.0), column)
    assert bool(found) is told


def place(**given: object) -> Layout:
    """Lay out a dishwasher's panel in its place, before a counter on both sides."""
    panel = FrontSpec(id="D1-1", kind="panel", leaflet=NOTED, **given)  # type: ignore[arg-type]
    return lay_out(job(box(panel, name="D1", kind="open", width=600.0), reveal=GOLDEN))


def test_an_appliances_panel_keeps_clear_of_the_counter_as_a_front_does() -> None:
    """Least gap 3 under a counter; over a fridge's panel there is none."""
    assert "counter-reveal" in codes(place(reveals=OwnReveals(top=2.9)))
    assert "counter-reveal" not in codes(place(reveals=OwnReveals(top=3.0)))
    high = FrontSpec(id="D1-1", kind="panel", leaflet=NOTED, reveals=OwnReveals(top=1.6))
    fridge = box(high, name="D1", kind="open", width=600.0, height=1800.0)
    assert "counter-reveal" not in codes(lay_out(job(fridge)))


def test_what_inches_cannot_tell_apart_is_said_in_millimetres_first() -> None:
    """2.9 and 3.0 are both 1/8 in; 1.6 and 3.0 are not, and stay in the job's inches."""
    near = next(
        p for p in place(reveals=OwnReveals(top=2.9)).problems if p.code == "counter-reveal"
    )
    assert fact_of(near).startswith("the reveal above it is 2.9 mm (1/8- in)")
    far = next(p for p in place(reveals=OwnReveals(top=1.6)).problems if p.code == "counter-reveal")
    assert fact_of(far).startswith("the reveal above it is 1/16 in (1.6 mm)")
