"""What comes with the fronts and is none: end panels, fillers, bought drawer boxes."""

import pytest
from msgspec.structs import replace

from jigs.given.job import FrontSpec, Job
from jigs.given.wallspec import WallEnd, WallSpec
from jigs.layout.layout import lay_out
from jigs.order.besides import list_boards
from templates.words.deliverywords import delivery_words
from templates.words.saying import fact_of
from tests.jigs.order.test_matching import deliver, match, row, strangers
from tests.jigs.sample import box, job

HIGH = 774.7 + 101.6
"""The golden box, and what it stands above the floor; mm."""
DEEP = 584.2 + 19.05 + 2.0
"""An end panel flush with the faces: box, front and bumper (common practice, no
source); mm."""
SCRIBE = 15.0
"""What it is cut deeper, to be scribed to the wall (common practice, no source); mm."""


def panelled(**more: object) -> Job:
    """Give a box with a drawer over a door and an end panel at its left, a filler at its right."""
    one = box(
        FrontSpec(id="B1-1", kind="drawer", height=152.4),
        FrontSpec(id="B1-2", kind="door", hinged="left"),
    )
    one = replace(one, above_floor=101.6, panels=replace(one.panels, left="flush"))
    end = WallEnd(stands="wall", filler=40.0)
    made = job(one)
    return replace(made, walls=(WallSpec(name=one.wall, right=end),), **more)


def test_boards_are_those_of_the_cut_list() -> None:
    """The panel as deep as it is cut; the filler with its spare to scribe."""
    boards = list_boards(panelled(), ("B1-1", "B1-2"))
    panel, filler = boards["B1-PANEL-L"], boards["NORTH-FILLER-R"]
    assert (panel.width, panel.height) == pytest.approx((DEEP + SCRIBE, HIGH))
    assert panel.scribed == SCRIBE
    assert filler.width - filler.scribed == pytest.approx(40.0)
    assert filler.height == pytest.approx(774.7)


@pytest.mark.parametrize(
    ("sizes", "fits"),
    [
        ((), None),
        ((DEEP + SCRIBE, HIGH), True),
        ((DEEP, HIGH), True),
        ((HIGH, DEEP), True),
        ((DEEP + SCRIBE + 1.5, HIGH), True),
        ((DEEP - 5.0, HIGH), False),
        ((DEEP + SCRIBE, HIGH - 5.0), False),
        ((DEEP + SCRIBE, HIGH + 5.0), False),
    ],
)
def test_by_its_id(sizes: tuple[float, ...], fits: bool | None) -> None:
    """As it is cut, or without what is scribed off; nothing where nobody measured it."""
    [found] = match(row(2, "B1-PANEL-L", *sizes), to=panelled()).besides
    assert (found.id, found.fits) == ("B1-PANEL-L", fits)


def test_by_its_size() -> None:
    """A row without an ID; the second such piece is left over, a front's size is a front's."""
    delivery = match(
        row(2, "", DEEP, HIGH), row(3, "", DEEP, HIGH), row(4, "", 457.2 - 3.2, 152.4),
        to=panelled(),
    )  # fmt: skip
    assert [(each.id, each.piece.row) for each in delivery.besides] == [("B1-PANEL-L", "row 2")]
    assert [each.piece.row for each in delivery.surplus] == ["row 3"]
    assert [*delivery.arrivals] == ["B1-1"]


def test_what_is_said_of_it() -> None:
    """Named on the delivery's lines; one of another size is a finding with both sizes."""
    made = panelled()
    layout = lay_out(
        deliver(row(2, "B1-PANEL-L", DEEP - 5.0, HIGH), row(3, "NORTH-FILLER-R"), to=made)
    )
    assert (
        "Besides fronts: B1-PANEL-L, NORTH-FILLER-R. 'plan JOB --done ID cut' marks a board that "
        "came cut."
    ) in delivery_words(layout)
    [found] = [problem for problem in layout.problems if problem.code == "board-differs"]
    assert "19/32 in (15.0 mm) of its width to scribe" in fact_of(found, layout.job.shown)


def test_drawer_boxes_where_they_are_bought() -> None:
    """Their IDs are known then, and only then."""
    made = panelled()
    bought = replace(made, build=replace(made.build, drawer_boxes="ordered"))
    assert [each.id for each in match(row(2, "B1-1-BOX"), to=bought).besides] == ["B1-1-BOX"]
    [fault] = strangers(row(2, "B1-1-BOX"))
    assert "unknown ID" in fault
