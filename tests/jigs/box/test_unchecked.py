"""What was not checked because nothing says it: one line, and gone when it is said."""

import pytest
from msgspec.structs import replace

from jigs.box.unchecked import Unchecked, list_unchecked
from jigs.cutlist.cutlist import cut_job
from jigs.given.build import GapSpec, Paint, RoomAir, Species, Wood
from jigs.given.job import BoxSpec, FrontMaterial, FrontSpec, Job
from jigs.given.stated import HandHole, TapedBox
from jigs.given.wallspec import WallEnd, WallSpec
from jigs.layout.layout import lay_out
from jigs.order.buying import make_order
from templates.lists.ordertables import order_text
from templates.words.findings import check_text, closing_text
from templates.words.uncheckedwords import NO_OPEN, unchecked_words
from tests.jigs.sample import MATERIAL, SLIDE, box, job

DRAWER = FrontSpec(id="B1-1", kind="drawer")
NORTH = WallSpec(
    name="north", left=WallEnd(stands="open"), right=WallEnd(stands="wall"), length=3000.0,
    ceiling=2500.0, counter=900.0, counter_thickness=30.0,
)  # fmt: skip
SURE = replace(
    SLIDE, load=40.0, hook_diameter=6.0, hook_depth=10.0, hook_height=24.0, hook_inset=8.0
)


def unchecked(*boxes: BoxSpec, wall: WallSpec | None = NORTH, **more: object) -> dict[str, object]:
    """What is not checked of a job on this wall, by subject."""
    given: Job = job(*(boxes or (box(DRAWER),)), **{"slide": SURE, **more})  # type: ignore[arg-type]
    layout = lay_out(replace(given, walls=() if wall is None else (wall,)))
    return {one.subject: one.names for one in list_unchecked(layout)}


BUDGET: dict[str, object] = {"film": (), "air": ()}
"""What the gap budget wants said of paint and room."""


def test_what_is_all_said_leaves_paint_and_seasons() -> None:
    """Everything else was looked at."""
    assert unchecked() == BUDGET


@pytest.mark.parametrize(
    ("kind", "species", "left"),
    [
        ("mdf", None, set()), ("plywood", None, {"plywood"}), ("hardwood", None, {"species"}),
        ("hardwood", "red oak", set()),
    ],
)  # fmt: skip
def test_paint_and_seasons_are_checked_where_the_job_says_them(
    kind: FrontMaterial, species: Species | None, left: set[str]
) -> None:
    """Then they are named no more; where nothing is left out, the line is gone."""
    made = replace(
        job(box(DRAWER), slide=SURE, material=replace(MATERIAL, front_kind=kind)),
        walls=(NORTH,),
        paint=Paint(method="sprayed", sizes="before"),
        gaps=GapSpec(air=RoomAir(dampest=65.0), wood=Wood(species=species)),
    )
    assert {one.subject for one in list_unchecked(lay_out(made))} == left
    assert unchecked_words([]) == ()


@pytest.mark.parametrize(
    ("wall", "subject"),
    [
        (replace(NORTH, left=WallEnd(), right=WallEnd()), "ends"),
        (replace(NORTH, left=WallEnd()), "left"),
        (replace(NORTH, right=WallEnd()), "right"),
        (replace(NORTH, left=WallEnd(stands="corner")), "corner"),
        (replace(NORTH, length=None), "length"),
        (replace(NORTH, ceiling=None), "ceiling"),
        (replace(NORTH, counter=None), "counter"),
        (replace(NORTH, counter_thickness=None), "underside"),
    ],
)
def test_what_a_wall_does_not_say(wall: WallSpec, subject: str) -> None:
    """Each is named with its wall."""
    assert unchecked(wall=wall) == {subject: ("north",), **BUDGET}


def test_a_job_without_walls() -> None:
    """Ends, ceiling and counter hang on them all; of one wall unsaid among others, its name."""
    assert unchecked(wall=None) == {"wall": (), **BUDGET}
    south = box(replace(DRAWER, id="S1-1"), name="S1", wall="south")
    assert unchecked(box(DRAWER), south)["wall"] == ("south",)


def test_a_built_box_without_diagonals() -> None:
    """Only one that stands can be measured."""
    built = replace(box(DRAWER), built=True)
    assert unchecked(built)["square"] == ("B1",)
    assert "square" not in unchecked(replace(built, measured=TapedBox(diagonals=(890.0, 890.0))))
    assert "square" not in unchecked(box(DRAWER))


def test_a_lift_whose_sides_have_no_holes() -> None:
    """Its front is set out, and nothing says where its arms are screwed to the box."""
    hole = HandHole(x=40, y=60, diameter=3, depth=12, face="back", purpose="arm")
    lift = FrontSpec(id="W1-1", kind="lift", holes=(hole,))
    assert unchecked(box(lift, name="W1", kind="wall"))["sides"] == ("W1-1",)


def test_slides_without_hooks_or_load() -> None:
    """Named by their record; a side mount has no hooks at the drawer's back."""
    assert unchecked(slide=SLIDE) == {"hooks": ("runner",), "loads": ("runner",), **BUDGET}
    side = replace(SLIDE, mount="side", width_less=26.0, centre_height=32.0, drawer_rise=16.0)
    assert "hooks" not in unchecked(slide=side)


def test_it_is_one_line() -> None:
    """Each subject with what would say it, and of whom."""
    found = [Unchecked("wall"), Unchecked("square", ("B2", "B3")), Unchecked("film")]
    assert unchecked_words(found) == (
        "Not checked, because nothing says it: ends and corners, ceiling, counter (no [[wall]]); "
        "square (no diagonals of B2, B3); paint between the fronts (no method and sizes in "
        "[paint]).",
    )


@pytest.mark.parametrize("sure", [True, False])
def test_check_pack_and_order_say_it_and_that_no_number_is_open(sure: bool) -> None:
    """The good news stands only where it is true."""
    slide = SURE if sure else replace(SURE, confirmed={})
    layout = lay_out(replace(job(box(DRAWER), slide=slide), walls=(NORTH,)))
    line = (
        "Not checked, because nothing says it: paint between the fronts (no method and sizes in "
        "[paint]); the seasons (no dampest in [room])."
    )
    order = order_text(make_order(layout, cut_job(layout)), layout.job)
    for text in (
        check_text(layout),
        closing_text(layout, {"sheets.pdf": "4 pages"}, 9, "letter-2x5"),
        order,
    ):
        assert line in " ".join(text.split())
        assert (NO_OPEN in text) is sure


def test_of_what_is_held_back_no_good_news() -> None:
    """Its numbers are open and among the warnings: no line says that there are none."""
    low = replace(DRAWER, height=40.0)
    slide = replace(SURE, confirmed={})
    layout = lay_out(replace(job(box(low), slide=slide), walls=(NORTH,)))
    assert [front.withheld for front in layout.fronts] == [True]
    order = order_text(make_order(layout, cut_job(layout)), layout.job)
    for text in (
        check_text(layout),
        closing_text(layout, {"sheets.pdf": "4 pages"}, 9, "letter-2x5"),
        order,
    ):
        assert NO_OPEN not in text
        assert "No number is open, what is held back aside." in " ".join(text.split())
