"""What the tables of most boxes have in common stands once above them; a box that has something
else says so itself."""

from collections.abc import Iterator

from jigs.bench.stations import plan_stations
from templates.page.marks import Page, Text
from templates.page.paper import PAPERS
from templates.stations.stationset import make_stations
from tests.jobtexts import box_text
from tests.templates.printed import laid_out

DOOR = 'kind = "door"\nhinged = "left"\n'
OTHER = '[hinge.other]\nlike = "mine"\nplates = [2]\nconstant = 14\n'
"""Its plates are 2 high: 14 + 5 - 2 = 17, as 15 + 5 - 3."""
PINS = "shelf = [{adjustable = true, from = 200, to = 520}]"


def pages_of(*boxes: str, more: str = "") -> Iterator[Page]:
    layout = laid_out("".join(boxes) + more)
    sides = [station for station in plan_stations(layout) if station.work == "sides"]
    return make_stations(layout, sides, PAPERS["common"]).pages


def words_of(page: Page) -> str:
    return " ".join(mark.text for mark in page.marks if isinstance(mark, Text))


def test_plates_of_most_boxes_are_said_once() -> None:
    """In three boxes they are 3 high, in one 2: that one says so, the others nothing."""
    others = [box_text(f"B{n}", "base", DOOR) for n in (1, 2, 4)]
    own = box_text("B3", "base", f'{DOOR}hinge = "other"')
    said = " ".join(map(words_of, pages_of(*others, own, more=OTHER)))
    assert said.count("Plates 3.0 high: hinge mine, unless a box says otherwise.") == 1
    assert said.count("Plates 3.0 high") == 1
    box, rest = said.split("BOX B3")
    assert "Plates 2.0 high: hinge other." in rest.split("BOX ")[0]
    assert "Plates 2.0" not in box


def test_plates_of_few_boxes_stand_with_each() -> None:
    said = " ".join(map(words_of, pages_of(*(box_text(f"B{n}", "base", DOOR) for n in (1, 2)))))
    assert said.count("Plates 3.0 high") == 2
    assert "unless a box" not in said


def test_how_pins_lie_in_all_boxes_is_said_once_a_page() -> None:
    """On each page that has lines of pins, above its tables; in no table."""
    pages = list(pages_of(*(box_text(f"B{n}", "base", DOOR, more=PINS) for n in range(1, 9))))
    tables = [words_of(page) for page in pages if "line, for" in words_of(page)]
    assert len(tables) > 1
    assert all(said.count("Each N: ") == 1 for said in tables)
    assert all(said.index("Each N: ") < said.index("line, for") for said in tables)
