"""A box planned: what cannot be planned stands in the plan as a value."""

import pytest
from hypothesis import given as whatever
from hypothesis import settings
from msgspec.structs import replace

from jigs.box.plan import BoxPlan, FrontPlan, plan_box
from jigs.fittings.placing import Against
from jigs.given.job import BoxKind, ColumnSpec, FrontSpec, Job
from jigs.given.stated import DrawerSize, Hung
from tests.jigs.sample import box, job
from tests.jobs import jobs


def plan(*fronts: FrontSpec, kind: BoxKind = "base", **given: object) -> BoxPlan:
    """Plan the golden box with these fronts."""
    spec = replace(box(*fronts, kind=kind), **given)
    return plan_box(job(spec), spec)


def door(**given: object) -> FrontSpec:
    """Give a left-hung door."""
    return FrontSpec(id="B1-1", **{"kind": "door", "hinged": "left", **given})  # type: ignore[arg-type]


def only(planned: BoxPlan) -> FrontPlan:
    """Give the one front of a plan."""
    (front,) = planned.fronts
    return front


def test_one_value_holds_what_is_planned_of_a_front() -> None:
    """The golden door: two plates on the left side, cups 1.6 lower, a pull, no drawer."""
    planned = plan(door())
    front = only(planned)
    assert front.door is not None
    assert [f.part for f in planned.work[1, "left"] if f.kind == "plate"] == ["B1-1", "B1-1"]
    assert front.door.cups == pytest.approx([plate - 1.6 for plate in front.door.plates])
    assert (front.drawer, front.slide, front.hand.refused) == (None, None, False)
    assert front.fitted == front.ordered
    assert planned.parts == ("B1-1",)


def test_a_door_without_a_hand_has_a_hinge_and_no_plan() -> None:
    """Its plates may come into either side."""
    planned = plan(door(hinged=None))
    front = only(planned)
    assert front.hinge is not None
    assert front.door is None
    assert {key for key, plates in planned.prospect.plates.items() if plates} == {
        (1, "left"), (1, "right"),
    }  # fmt: skip


def test_why_a_plan_was_not_made_is_a_value() -> None:
    """No room under a sink's rail; a height given by hand against the bottom panel, 18.3 and 35
    above the side's end; a drawer box of 20."""
    sink = only(plan(door(), kind="sink")).door
    assert sink is not None
    assert sink.placing is not None
    assert sink.placing.no_room
    low = only(plan(door(hung=Hung(hinges_at=(40.0, 600.0))))).door
    assert low is not None
    assert low.against == (Against(height=pytest.approx(41.6), obstacle="panel"),)  # type: ignore[arg-type]
    drawer = only(
        plan(FrontSpec(id="B1-1", kind="drawer", drawer_box=DrawerSize(drawer_height=20.0)))
    ).drawer
    assert drawer is not None
    assert drawer.place.too_low


def test_fronts_by_columns_from_the_lowest_up() -> None:
    """Drawers before the same columns run on one another's heights."""
    rows = [("B1-1", 1), ("B1-2", 1), ("B1-3", 2), ("B1-4", 2)]
    fronts = [FrontSpec(id=name, kind="drawer", column=column) for name, column in rows]
    columns = (ColumnSpec(), ColumnSpec())
    planned = plan(*fronts, width=914.4, columns=columns)
    groups = [[front.id for front in group] for group in planned.by_columns]
    assert groups == [["B1-2", "B1-1"], ["B1-4", "B1-3"]]


@settings(max_examples=8)
@whatever(jobs())
def test_a_plan_holds_no_words(kitchen: Job) -> None:
    """In whatever unit findings are told, and however often, a box is planned alike."""
    inches, metric = (replace(kitchen, shown_in=unit) for unit in ("in", "mm"))
    for each in kitchen.boxes:
        assert plan_box(inches, each) == plan_box(metric, each)
