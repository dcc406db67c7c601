"""The contents on the first page."""

import pytest
from msgspec.structs import replace

from jigs.bench.stations import plan_stations
from templates.binding import jobsheets
from templates.binding.contents import ContentsEntry, contents, station_contents
from templates.binding.jobsheets import make_sheets
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.page.pieces import MarkBlock
from templates.stations.stationset import make_stations
from templates.words.guidewords import EVERY, GUIDES
from templates.words.stationwords import station_title
from tests.clashes import clashes_of_marks
from tests.templates.small_layout import small_layout


def words(piece: MarkBlock | None) -> str:
    assert piece is not None
    return " ".join(mark.text for mark in piece.marks if isinstance(mark, Text))


def test_parts_stand_with_their_pages_box_by_box() -> None:
    """One page is one number, several are the first and the last; both faces of a partition one."""
    entries = [
        ContentsEntry("B1", "B1-1", (2, 3, 4)),
        ContentsEntry("B1", "B1-1-BOX", (5,)),
        ContentsEntry("B2", "B2-PARTITION-1", (6, 7, 8)),
        ContentsEntry("B2", "B2-PARTITION-1", (9, 10, 11, 12)),
    ]
    said = words(contents(entries, 180.0, 50.0))
    assert said.endswith("B1-1 2-4 B1-1-BOX 5 B2-PARTITION-1 6-12")


def test_pages_that_do_not_follow_each_other_stand_apart() -> None:
    """As those of a part whose faces share their sheets with different parts; a box has each
    page once."""
    entries = [ContentsEntry("B1", "B1-1", (2, 3, 9)), ContentsEntry("B1", "B1-2", (3, 4, 12))]
    assert words(contents(entries, 180.0, 50.0)).endswith("B1-1 2-3, 9 B1-2 3-4, 12")
    many = [replace(entry, part=f"{entry.part}-{n}") for n in range(200) for entry in entries]
    assert words(contents(many, 180.0, 20.0)).endswith("B1 2-4, 9, 12")


def test_where_room_is_scarce_boxes_stand_alone_or_nothing() -> None:
    """Ten boxes of twenty parts: in a run, by box; with no room at all there is no list."""
    entries = [
        ContentsEntry(f"B{box}", f"B{box}-{part}", (20 * box + part,))
        for box in range(1, 11)
        for part in range(1, 21)
    ]
    assert "B3-1 61, B3-2 62," in words(contents(entries, 180.0, 150.0))
    said = words(contents(entries, 180.0, 30.0))
    assert "B3 61-80" in said
    assert "B3-1" not in said
    assert contents(entries, 180.0, 5.0) is None
    assert contents([], 180.0, 200.0) is None


@pytest.mark.parametrize("paper", list(PAPERS))
def test_its_pages_are_those_of_the_document(paper: str) -> None:
    """Each part's first page is where the list says."""
    sheets = make_sheets(small_layout(), PAPERS[paper])
    pages = list(sheets.pages)
    assert clashes_of_marks(pages[0]) == []
    said = " ".join(mark.text for mark in pages[0].marks if isinstance(mark, Text))
    guides = {title.capitalize() for title in (EVERY, *(g.title for g in GUIDES.values()))}
    starts: dict[str, int] = {}
    for number, page in enumerate(pages, start=1):
        if page.entry not in guides:
            for part in page.entry.split(", "):
                starts.setdefault(part, number)
    parts = [part for part in starts if part != "First page"]
    assert parts
    for part in parts:
        assert f"{part} {starts[part]}" in said.replace("- ", "-")


def test_a_job_of_many_boxes_has_no_contents(monkeypatch: pytest.MonkeyPatch) -> None:
    """They would find no room."""
    monkeypatch.setattr(jobsheets, "MOST_BOXES", 0)
    first = next(iter(make_sheets(small_layout(), PAPERS["common"]).pages))
    assert not any("CONTENTS" in mark.text for mark in first.marks if isinstance(mark, Text))


def test_each_station_stands_with_its_page() -> None:
    """In the order of the work, behind the page that says how a card is used; in a run where the
    columns find no room, nothing without any."""
    layout = small_layout()
    made = make_stations(layout, plan_stations(layout), PAPERS["common"], before=2)
    names = [
        f"{made.numbered(station)[0][0]} {station_title(station)}" for station in made.stations
    ]
    listed = ["2 HOW A CARD IS USED", *names]
    run = f"{'; '.join(listed)}."
    assert all(each in words(station_contents(made, 180.0, 100.0, 2)) for each in listed)
    assert run in words(station_contents(made, 180.0, 13.0, 2))
    assert station_contents(made, 180.0, 3.0, 2) is None
