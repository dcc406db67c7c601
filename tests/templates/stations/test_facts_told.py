"""What the sheets say of a part beside its holes stands at its stations too: once above all rows
that have it, else in the part's row."""

from functools import cache

import pytest
from msgspec.structs import replace

from jigs.bench.station import Offset, Setting, Station
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.given.stated import FivePieceSpec, FrontWords
from jigs.ground.problems import warning
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.page.typeface import known
from templates.sheets.partwords import words_of_drawer_box, words_of_front
from templates.stations import rowfacts
from templates.stations.stationrows import NextCard, setting_spans
from templates.stations.stationset import make_stations
from templates.stations.stationview import shop_of
from templates.words.sentence import closed
from templates.words.stationwords import corners_words
from tests.jigs.bench.test_rows import kitchen
from tests.jigs.bench.test_stations import demo
from tests.jobtexts import box_text
from tests.said import fact_of
from tests.templates.printed import laid_out

KITCHENS = ("drawers", pytest.param("demo", marks=pytest.mark.slow))
ON_FRONTS = (
    "PULL SCREWS", "Pull screws", "Front screws", "WIDE GAP", "Plates", "Edge to cup",
    "FINGER BEVEL", "EDGES ROUNDED", "A lift's",
)  # fmt: skip
AT_CUPS = ("Edge to cup", "The hinge's flange")


@cache
def layout_of(name: str) -> Layout:
    if name == "demo":
        return demo()
    return kitchen(
        FrontSpec(id="B-1", kind="drawer", height=150.0),
        FrontSpec(id="B-2", kind="drawer", height=250.0),
        FrontSpec(id="B-3", kind="door", hinged="left"),
    )


def told(layout: Layout, *, pilots: bool = False) -> list[tuple[Station, dict[str, str]]]:
    """Give the words of each station: those above its rows under "", of each row under its ID."""
    stations = plan_stations(layout, pilots=pilots)
    found = []
    made = make_stations(layout, stations, PAPERS["common"])
    for station in stations:
        ids, words = {row.part.id for row in station.rows}, dict[str, str]()
        for _, sheet in made.numbered(station):
            at = ""  # what is said above stands on each page of rows
            for mark in sheet.page.marks:
                if isinstance(mark, Text):
                    at = mark.text if mark.text in ids and mark.bold else at
                    words[at] = f"{words.get(at, '')} {mark.text}"
        found.append((station, words))
    return found


@pytest.mark.parametrize("name", KITCHENS)
def test_stations_say_what_the_sheets_say(name: str) -> None:
    layout = layout_of(name)
    fronts = {front.id: words_of_front(layout, front) for front in layout.fronts}
    boxes = {
        front.drawer.id: words_of_drawer_box(layout, front.drawer, front)
        for front in layout.fronts
        if front.drawer is not None
    }
    seen: set[str] = set()
    for station, words in told(layout):
        for row in station.rows:
            sheet = fronts.get(row.part.id) or boxes.get(row.part.id)
            if sheet is None or row.held:
                continue
            for fact in sheet.facts.get(row.part.face, ()):
                start = next((each for each in ON_FRONTS if fact.text.startswith(each)), None)
                notch = fact.text.startswith("Before it runs")
                if (start is None and not notch) or (start in AT_CUPS and row.purpose != "cup"):
                    continue
                above, own = words[""], words.get(row.part.id, "")
                said = known(fact.text)
                assert (said in above) != (said in own), (station.name, said)
                seen.add(start or "notch")
    assert {"Pull screws", "Front screws", "Edge to cup"} <= seen
    assert name != "demo" or "PULL SCREWS" in seen


def test_of_a_five_piece_front_its_row_says_what_is_drilled() -> None:
    """Its stiles and rails; the panel between them is seen on its sheet, and no hole meets it."""
    frame = FivePieceSpec(stile=62.0, rail=70.0, panel=6.0)
    front = FrontSpec(id="B-1", kind="door", hinged="left", five_piece=frame)
    rows = [said["B-1"] for _, said in told(kitchen(front)) if "B-1" in said]
    assert rows
    assert all("Five-piece: stiles 62.0, rails 70.0." in row for row in rows)
    assert not any("panel" in row or "dashed" in row for row in rows)


def test_what_was_noted_of_a_front_stands_in_its_rows() -> None:
    """At the drill, where it is needed, be it from the job or from the list of what came; how it
    is finished is no business of the drill."""
    note = "delivered: no label on it"

    def words(note: str) -> FrontWords:
        return FrontWords(note=note, finish="oil")

    plain, noted = (
        kitchen(
            FrontSpec(id="B-1", kind="door", hinged="left", height=300.0),
            FrontSpec(id="B-2", kind="door", hinged="left", words=words(each)),
        )
        for each in ("", note)
    )  # fmt: skip
    assert not any("Note:" in " ".join(said.values()) for _, said in told(plain))
    rows = [said["B-2"] for _, said in told(noted) if "B-2" in said]
    assert rows
    assert all(f"Note: {note}." in row for row in rows)
    everything = " ".join(text for _, said in told(noted) for text in said.values())
    assert "oil" not in everything
    assert everything.count(note) == len(rows)


def test_plates_stand_at_their_sides_and_the_tab_at_the_cups_alone() -> None:
    for station, words in told(layout_of("drawers")):
        whole = " ".join(words.values())
        assert ("Plates" in whole) == (station.work in ("sides", "cups")), station.name
        assert ("Edge to cup" in whole) == (station.work == "cups"), station.name


def test_pilots_from_paper_have_steps_of_their_own() -> None:
    """No box is stood on drawn corners, and every figure from the top says so."""
    for pilots in (False, True):
        station, words = next(
            each for each in told(layout_of("drawers"), pilots=pilots)
            if each[0].work == "fronts-on-boxes"
        )  # fmt: skip
        whole = " ".join(words.values())
        assert ("Set both cards" in whole) != pilots
        assert ("DRAWER BOX STANDS" in whole) == pilots
        struck = [
            place
            for row in station.rows
            for setting in row.settings
            for place in (setting.y,)
            if place is not None and place.start == "top"
        ]
        assert whole.count("FROM TOP") == len(struck)


def test_each_of_two_figures_says_what_it_counts_from() -> None:
    setting = Setting(
        card="A", y=Offset(start="top", value=60.0), x=Offset(start="left", value=192.6)
    )
    said = [each.text for each in setting_spans(setting, frozenset(), NextCard())]
    figures = ["60.0", '2 3/8-"', "FROM TOP,", "192.6", '7 19/32-"', "FROM LEFT"]
    assert said == ["A", *figures, "", ""]


def test_what_several_rows_say_stands_once_above_them(monkeypatch: pytest.MonkeyPatch) -> None:
    """What all say plain, what most say with the one that does not, together with what else is said
    of the same, of a few with their names; what two say stays with them."""
    layout = kitchen(*(FrontSpec(id=f"B-{row}", kind="drawer") for row in range(1, 7)))
    (station,) = (each for each in plan_stations(layout) if each.work == "drawer-boxes")
    ids = [row.part.id for row in station.rows]
    assert len(ids) == 7
    said = {
        part: ("All.", *(["Most.", "More."] if row < 6 else []), *(["Few."] if row < 3 else []),
               *(["Two."] if row < 2 else []))
        for row, part in enumerate(ids)
    }  # fmt: skip
    monkeypatch.setattr(rowfacts, "said_in_row", lambda shop, row: said[row.part.id])
    above = rowfacts.said_above(shop_of(layout), station)
    assert above == {
        "": ["All."],
        f"All but {ids[6]}: ": ["Most.", "More."],
        f"{', '.join(ids[:3])}: ": ["Few."],
    }


def test_what_concerns_hinges_stands_at_the_cups_alone() -> None:
    """A pull is bored whatever its hinges ask for; what else the check says stands at both."""
    layout = layout_of("drawers")
    found = (
        warning("hinges-close", "B-3", spread=100.0, least=150.0),
        warning("deeper-box", "B-3", hand="left", box="", other="H1", reach=199.3, room=0.0,
                needed=6.0, pull=0.0, spare=0.0),
    )  # fmt: skip
    layout = replace(layout, problems=(*layout.problems, *found))
    [cups, pulls] = (
        rowfacts.said_in_row(shop_of(layout), row)
        for station in plan_stations(layout)
        if station.work in ("cups", "pulls")
        for row in station.rows
        if row.part.id == "B-3"
    )
    close, other = (closed(fact_of(problem)) for problem in found)
    assert {close, other} <= {*cups}
    assert other in pulls
    assert close not in pulls


def test_a_finding_stands_where_its_work_is_done() -> None:
    """That pulls are sold with other centres at the pull, that the door strikes the wall at its
    cups: each at one station of the front, not at all of them."""
    text = box_text("B1", "base", 'kind = "door"\nhinged = "left"\npull = "odd"')
    layout = laid_out(
        f'{text}[pull.odd]\nlike = "bar"\ncenters = 158.75\n'
        '[[wall]]\nname = "north"\nleft = "wall"\nright = "open"\n'
    )
    said = {station.work: " ".join(words.values()) for station, words in told(layout)}
    assert "pulls are sold with" in said["pulls"]
    assert "opened, it strikes it" in said["cups"]
    assert "pulls are sold with" not in said["cups"]
    assert "opened, it strikes it" not in said["pulls"]


def test_a_station_for_pulls_names_the_corners_at_which_its_cards_lie() -> None:
    """A wall door alone has its pull at its lower corner: the card is drawn as it lies there, and
    nothing is said of turning. With a base door of the other hand it is turned."""
    base = box_text("B1", "base", 'kind = "door"\nhinged = "left"')
    wall = box_text("W1", "wall", 'kind = "door"\nhinged = "right"')
    alone = box_text("W1", "wall", 'kind = "door"\nhinged = "left"')

    def corners(text: str) -> set[str]:
        stations = [each for each in plan_stations(laid_out(text)) if each.work == "pulls"]
        return {corners_words(each) for each in stations}

    assert corners(alone) == {"At the BOTTOM RIGHT corner."}
    assert corners(base) == {"At the TOP RIGHT corner."}
    assert corners(base + wall) == {"At the TOP RIGHT corner; TURNED at the BOTTOM LEFT."}
    rounded = wall.replace('kind = "door"', 'kind = "door"\nedge_radius = 3')
    said = "At the TOP RIGHT or BOTTOM LEFT corner: the card's upright title says which."
    assert corners(base + rounded) == {said}


@pytest.mark.parametrize(
    ("fronts", "where"),
    [
        ('kind = "door"\nhinged = "right"', "20 thick on the RIGHT board."),
        ('kind = "door"\nhinged = "left"', "20 thick on the LEFT board."),
        ('kind = "pair"', "20 thick on both boards."),
    ],
)
def test_a_rollout_on_a_spacer_is_told_at_its_sides(fronts: str, where: str) -> None:
    """On its sheet each card says it; in a table of both boards it is said which of them."""
    low = '{at = 60, height = 120, slide = "runner"}, {at = 300, height = 120, slide = "runner"}'
    layout = laid_out(box_text("B1", "base", fronts, more=f"rollout = [{low}]\nshelf = []"))
    names = "B1-ROLLOUT-1, B1-ROLLOUT-2"
    [sides] = [" ".join(said.values()) for station, said in told(layout) if station.name == "sides"]
    assert f"{names}: slides ON A SPACER {where}" in sides
    assert sides.count("ON A SPACER") == 1
