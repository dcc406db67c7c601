"""Hardware drawn with its letters dimensioned."""

import pytest
from msgspec.structs import replace

from jigs.given.catalogue import generic_hinges, generic_pulls, generic_slides
from jigs.given.confirming import Record
from jigs.given.hardware import HingeRecord
from jigs.given.job import Material, Reveal
from templates.hardware.hardwaredraw import Boards, hardware_page
from templates.page.marks import Circle, Page, Text
from templates.page.paper import PAPERS
from tests.clashes import clashes_of_marks
from tests.jigs.sample import SURE

RECORDS: dict[str, Record] = {**generic_hinges(), **generic_slides(), **generic_pulls()}


def texts(page: Page) -> list[str]:
    return [mark.text for mark in page.marks if isinstance(mark, Text)]


@pytest.mark.parametrize("name", list(RECORDS))
def test_nothing_touches_anything(name: str) -> None:
    """No text lies on a text, a line, a circle or over the page's edge."""
    assert clashes_of_marks(hardware_page(RECORDS[name], PAPERS["common"])) == []


@pytest.mark.parametrize("paper", list(PAPERS))
def test_every_paper_takes_it(paper: str) -> None:
    """A page is as large as its paper."""
    page = hardware_page(RECORDS["cup35-full"], PAPERS[paper])
    assert (page.width, page.height) == (PAPERS[paper].width, PAPERS[paper].height)
    assert clashes_of_marks(page) == []


@pytest.mark.parametrize("tab", [3.0, 4.5, 6.0, 7.0])
@pytest.mark.parametrize("plates", [(0.0,), (2.0,), (9.0,)])
@pytest.mark.parametrize("name", ["cup35-full", "cup35-half", "cup35-inset"])
def test_other_tabs_and_plates_are_drawn_as_clearly(
    name: str, plates: tuple[float, ...], tab: float
) -> None:
    """The dimensions make room for one another."""
    record = replace(generic_hinges()[name], tab=tab, plates=plates)
    assert clashes_of_marks(hardware_page(record, PAPERS["common"])) == []


def test_a_hinge_is_dimensioned_at_full_scale() -> None:
    """Its cup is 35 wide on the page, tab 5, pattern 45/9.5, side 18 with reveal 1.6: plate
    15 + 5 - 16.4. Its letters stand in the order of its numbers."""
    page = hardware_page(generic_hinges()["cup35-full"], PAPERS["common"])
    said = texts(page)
    for text in (
        "a 5",
        "b 15",
        "c 3.6 wanted",
        "overlay 16.4",
        "d 35",
        "e 13",
        "f 45",
        "g 9.5",
        "h 37",
    ):
        assert text in said
    circles = sorted(mark.diameter for mark in page.marks if isinstance(mark, Circle))
    assert circles == [3.0, 3.0, 5.0, 5.0, 35.0]


def test_section_and_plan_show_one_tab() -> None:
    """Tabs 4, 5, 6, a constant of 14.5 and plates 0 and 2: 4 is taken for 18 - 1.6 = 16.4, since
    14.5 + 4 - 2 = 16.5, in both drawings."""
    record = replace(
        generic_hinges()["cup35-full"], constant=14.5, plates=(0.0, 2.0), tabs=(4.0, 5.0, 6.0)
    )
    said = texts(hardware_page(record, PAPERS["common"]))
    assert said.count("a 4") == 2
    assert "tab, half the cup 21.5" in said


def test_a_slide_shows_a_and_b_and_where_its_holes_stand() -> None:
    """Side mounts have the centre line above the drawer instead of a."""
    under = texts(hardware_page(generic_slides()["undermount-533"], PAPERS["common"]))
    assert {"a 33", "b 14", "half of c 42", "d 13", "e 37", "g 533"} <= set(under)
    side = texts(hardware_page(generic_slides()["sidemount-450"], PAPERS["common"]))
    assert {"a 32", "b 15", "half of c 26"} <= set(side)


@pytest.mark.parametrize("paper", list(PAPERS))
def test_rear_hooks_are_told_in_one_line(paper: str) -> None:
    """Diameter and depth, height and inset; clear of all else on the smallest paper too."""
    record = replace(
        generic_slides()["undermount-533"],
        hook_diameter=10.5, hook_depth=12.5, hook_height=24.5, hook_inset=12.5,
    )  # fmt: skip
    page = hardware_page(record, PAPERS[paper])
    assert "10.5 x 12.5, 24.5, 12.5" in texts(page)
    assert clashes_of_marks(page) == []


def test_a_pull_is_reduced_until_it_fits() -> None:
    """64 + 160 + 20 is too long for 100 at full scale and at half (ISO 5455: 1:5)."""
    said = texts(hardware_page(generic_pulls()["bar-160"], PAPERS["common"]))
    assert {"a 160", "b 50", "c 64", "SCALE 1:5"} <= set(said)
    assert "a 160" not in texts(hardware_page(generic_pulls()["knob"], PAPERS["common"]))


def test_what_is_not_confirmed_says_no() -> None:
    """A number that matters is marked until somebody speaks for it."""
    hinge = HingeRecord(name="mine")
    assert texts(hardware_page(hinge, PAPERS["common"])).count("NO") == 5
    measured = replace(hinge, confirmed=SURE)
    assert "NO" not in texts(hardware_page(measured, PAPERS["common"]))


def test_the_plate_is_shown_in_plan() -> None:
    """Its two holes stand 32 apart on the line 37 from the edge, at full scale."""
    page = hardware_page(generic_hinges()["cup35-full"], PAPERS["common"])
    assert {"i 32", "h 37"} <= set(texts(page))
    low, high = sorted(
        mark.y for mark in page.marks if isinstance(mark, Circle) and mark.diameter == 5.0
    )
    assert high - low == pytest.approx(32.0)
    wide = replace(generic_hinges()["cup35-full"], plate_spacing=52.0)
    assert clashes_of_marks(hardware_page(wide, PAPERS["common"])) == []


@pytest.mark.parametrize(
    ("drawer", "words"),
    [("center", "half"), ("upper-third", "a third"), (50.0, "50")],
)
@pytest.mark.parametrize("name", ["bar-160", "knob"])
def test_a_pull_is_also_shown_on_a_drawer_front(name: str, drawer: float, words: str) -> None:
    """Half, a third, or its own distance below the top edge, and where there are two."""
    page = hardware_page(replace(generic_pulls()[name], drawer=drawer), PAPERS["common"])
    assert words in texts(page)
    assert any("From a width of 762 two, each a quarter" in text for text in texts(page))
    assert clashes_of_marks(page) == []


@pytest.mark.parametrize("name", ["cup35-full", "cup35-half", "cup35-inset", "undermount-533",
                                  "sidemount-450"])  # fmt: skip
@pytest.mark.parametrize("side", [12.0, 15.9, 25.0])
def test_other_boards_are_drawn_as_clearly(name: str, side: float) -> None:
    """Those of a job, which the page names."""
    material = Material(side=side, front=22.0, drawer_side=12.7)
    page = hardware_page(
        RECORDS[name], PAPERS["common"], Boards(material=material, reveal=Reveal())
    )
    assert clashes_of_marks(page) == []
    assert f"side of {side:g}" in " ".join(texts(page))
    assert "side of 18 " not in " ".join(texts(page))


def test_a_hinge_is_drawn_for_the_overlay_of_its_job() -> None:
    """A side of 15.9 with reveal 2 wants 13.9, with a gap of 3 half of 12.9, inset -1.5."""
    boards = Boards(material=Material(side=15.9), reveal=Reveal(side=2.0, between=3.0, inset=1.5))
    for kind, overlay in (("full", "13.9"), ("half", "6.5"), ("inset", "-1.5")):
        record = generic_hinges()[f"cup35-{kind}"]
        assert f"overlay {overlay}" in texts(hardware_page(record, PAPERS["common"], boards))
