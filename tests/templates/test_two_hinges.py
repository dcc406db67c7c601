"""A box whose sides run to the floor and whose partition takes drawers on its left face and a
half-overlay door, of another hinge, on its right one, beside a box of full-overlay doors."""

import re
from functools import cache

from msgspec.structs import replace

from cli.selection import narrow
from jigs.bench.boxtable import box_tables
from jigs.bench.station import Row, Station
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_job
from jigs.ground.problems import warning
from jigs.order.buying import make_order
from jigs.room.hanging import plan_hanging
from templates.cards.ticks import Member, tick_boxes
from templates.elevations.hanglist import how_listing
from templates.faces.views import view_of_side, views_of_front
from templates.labels.labelwords import words_of_front_label
from templates.lists.heighttables import heights_listing
from templates.lists.listtext import listing_text
from templates.lists.ordertables import order_text
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.sheets.partwords import words_of_front, words_of_side
from templates.stations.stationset import make_stations
from templates.words.hingenames import hinge_name, hinge_words
from templates.words.ownwords import own_words
from templates.words.sidewords import level_words
from templates.words.stationwords import reason_words
from tests.jigs.sample import front_of
from tests.jobtexts import box_text
from tests.templates.printed import laid_out

LEGS, BOTTOM = 101.6, 18.3
HALF = """
[hinge.other]
like = "cup35-half"
constant = 5.5
plates = [0, 3]
tabs = [5]
cup_depth = 13
fixing_spacing = 45
fixing_inboard = 9.5
confirmed = "measured"
"""
DRAWER = 'kind = "drawer"\ncolumn = 1\nslide = "undermount-457"'
DOOR = 'kind = "door"\ncolumn = 2\nhinged = "left"\nhinge = "other"'
BOX = box_text(
    "B1", "base", f"{DRAWER}\nheight = 200", DRAWER, DOOR,
    more=f"legs = {LEGS}\ncolumns = [{{width = 400}}, {{share = 1}}]\n"
    "shelf = [{adjustable = true, column = 2, from = 300, to = 500}]",
).replace("width = 457.2", "width = 900").replace("above_floor = 100\n", "")  # fmt: skip
BESIDE = box_text("B2", "base", 'kind = "door"\nhinged = "left"')


def job() -> Layout:
    return laid_out(HALF + BOX + BESIDE)


@cache
def stations() -> tuple[Station, ...]:
    return tuple(plan_stations(job()))


def test_stations_and_sheets_lift_a_partition_on_legs_alike() -> None:
    """The bottom panel stands on 101.6 of legs: its own thickness of 18.3 would set every line
    that much lower on the partition."""
    lift = f"a block {LEGS + BOTTOM:.1f} long"
    tables = [table for table in box_tables(stations()) if table.box == "B1"]
    assert len(tables) == 2
    for table in tables:
        assert f": {lift} between the stop and the partition" in level_words(table)
    for side in job().sides:
        if side.box == "B1":
            view = view_of_side(side, "mm")
            assert view is not None
            assert lift in " ".join(own_words(view, ()))


def test_a_station_names_all_hardware_that_it_is_for() -> None:
    """What another one is for too, it does not deny."""
    (sides,) = [each for each in stations() if each.work == "sides"]
    own = {name for card in sides.cards for name in card.records}
    assert own == {"undermount-457", "mine", "other"}
    some = replace(sides, cards=tuple(c for c in sides.cards if "other" in c.records))
    some = replace(some, cards=tuple(replace(card, records=("other",)) for card in some.cards))
    both = (sides, some)
    assert "other" in reason_words(sides, both)
    assert ", not " not in reason_words(sides, both)
    assert reason_words(some, both).startswith("For hardware other, not ")
    assert reason_words(sides, (sides, replace(sides, name="sides-b"))) == ""


def test_a_hinge_off_the_grid_is_said_where_it_is() -> None:
    """On the right face of the partition, not beside the drawers on its left one."""
    found = warning("hinge-off-grid", "B1-3", heights=(800.0,), also=("B1-PARTITION-1",))
    layout = replace(job(), problems=(*job().problems, found))
    faces = [side for side in layout.sides if side.partition]
    assert {side.column for side in faces} == {1, 2}
    for side in faces:
        notes = " ".join(note.text for note in words_of_side(layout, side).notes)
        assert ("No free grid place" in notes) == (side.column == 2)
    rows: list[Row] = [
        row
        for station in plan_stations(layout)
        for row in station.rows
        if row.part.board is not None and row.part.board.partition
    ]
    columns = {row.part.board.column for row in rows if found in row.warnings and row.part.board}
    assert columns == {2}


DOORS = {"B1-3": "HALF-OVERLAY HINGE other", "B2-1": "FULL-OVERLAY HINGE mine"}


def test_each_door_is_told_by_its_hinge_where_a_job_has_two() -> None:
    """On its sheet, in its row, and with its plates, at the stations below the lines of its box;
    a job of one hinge has no word of it."""
    layout = job()
    made = make_stations(layout, stations(), PAPERS["common"])
    words = [mark.text for page in made.pages for mark in page.marks if isinstance(mark, Text)]
    for front in layout.fronts:
        name = DOORS.get(front.id, "")
        assert hinge_name(layout, front) == name
        facts = " ".join(fact.text for fact in words_of_front(layout, front).facts["back"])
        assert (f"{name}." in facts) if name else ("HINGE" not in facts)
        if name:
            assert any(f"{name}." in text for text in words)
            below = [text for text in words if text.startswith("Plates")]
            short = f"hinge {front.hinge.record}" if front.hinge else ""
            assert sum(text.endswith(f" high: {short}.") for text in below) == 1
    for side in layout.sides:
        plates = " ".join(fact.text for fact in words_of_side(layout, side).facts["inside"])
        for door, name in DOORS.items():
            served = any(each.part == door for each in side.fittings)
            assert (f"for {door}: hinge {name.split()[-1]}." in plates) == served
    assert not any(text.endswith(", hinge other") for text in words)
    only = narrow(layout, {"B1-3"})
    assert [hinge_name(only, front) for front in only.fronts] == [DOORS["B1-3"]]
    one = laid_out(BESIDE)
    assert {hinge_name(one, front) for front in one.fronts} == {""}
    assert hinge_words(one, ["B2-1"]) == ""
    assert hinge_words(layout, ["B2-1"]) == "hinge mine"
    assert hinge_words(layout, DOORS) == "B1-3 hinge other, B2-1 hinge mine"


def test_a_line_of_plates_names_its_hinge_where_its_box_has_two() -> None:
    """And whose plates are how high, in the words of the sheets."""
    above = 'kind = "door"\nhinged = "left"\nheight = 300\nhinge = "other"'
    full = HALF.replace("cup35-half", "cup35-full").replace("5.5", "15")
    layout = laid_out(full + box_text("B1", "base", above, 'kind = "door"\nhinged = "left"'))
    made = make_stations(layout, plan_stations(layout), PAPERS["common"])
    words = [mark.text for page in made.pages for mark in page.marks if isinstance(mark, Text)]
    for front, hinge in (("B1-1", "other"), ("B1-2", "mine")):
        assert sum(text.endswith(f", hinge {hinge}") for text in words) == 2
        assert any(text.startswith("Plates") and f" for {front}: " in text for text in words)


def test_a_pair_on_two_cards_names_its_hinges_by_themselves() -> None:
    """One leaf hangs on the side, the other on a partition by another hinge, whose plates stand
    further back: behind the second card alone both names would be read as of that one."""
    both = 'kind = "pair"\ncolumn = 1\nhinge = ["mine", "other"]'
    beside = 'kind = "door"\ncolumn = 2\nhinged = "right"'
    columns = "columns = [{width = 700}, {share = 1}]"
    text = box_text("B1", "base", both, beside, more=columns).replace("457.2", "1300")
    layout = laid_out(f"{HALF}plate_line = 40\n{text}")
    made = make_stations(layout, plan_stations(layout), PAPERS["common"])
    words = [mark.text for page in made.pages for mark in page.marks if isinstance(mark, Text)]
    assert words.count("LEFT: A") == words.count("RIGHT: B, not TURNED") == 2
    assert words.count("B1-1L hinge mine, B1-1R hinge other") == 2


def test_heights_name_the_hinge_of_each_line_of_plates() -> None:
    """They are for who drills without cards; and they say which plates are mounted."""
    full = HALF.replace("cup35-half", "cup35-full").replace("5.5", "15")
    above = 'kind = "pair"\nheight = 300\nhinge = "other"'
    text = full + box_text("B1", "base", above, 'kind = "pair"').replace("457.2", "900")
    layout = laid_out(text)
    bored = plan_stations(layout)
    heights = listing_text(heights_listing(box_tables(bored), layout, bored))
    assert heights.count("hinge other") == heights.count("hinge mine") == 2 + 1
    for hinge in ("other", "mine"):
        told = rf"high for B1-\dL, B1-\dR: hinge {hinge}"
        assert re.search(told, heights)
    one = laid_out(BESIDE)
    alone = plan_stations(one)
    assert "hinge mine" not in listing_text(heights_listing(box_tables(alone), one, alone))


def test_a_label_names_the_hinge_of_its_door() -> None:
    """Only where another door of the job takes another: the hinges are laid out beside the labels
    before any cup is bored."""
    layout = job()
    for front in layout.fronts:
        ways = [way for line in words_of_front_label(layout, front).lines for way in line.ways]
        name = DOORS.get(front.id)
        assert (name in ways) if name else not any("HINGE o" in way for way in ways)
    one = laid_out(BESIDE)
    ways = [way for line in words_of_front_label(one, one.fronts[0]).lines for way in line.ways]
    assert not any("HINGE mine" in way for way in ways)


def test_the_order_and_the_hanging_say_which_doors() -> None:
    """A hinge of each kind is bought, and hung, for doors by name."""
    layout = job()
    order = order_text(make_order(layout, cut_job(layout)), layout.job)
    assert "hinge 'other' for B1-3\n" in order
    assert "hinge 'mine' for B2-1\n" in order
    how = listing_text(how_listing(layout, plan_hanging(layout)))
    assert "B1-3 (hinge other)" in how
    assert "B2-1 (hinge mine)" in how
    one = laid_out(BESIDE)
    said = order_text(make_order(one, cut_job(one)), one.job)
    assert "hinge 'mine'\n" in said
    assert "(hinge" not in listing_text(how_listing(one, plan_hanging(one)))


def test_a_shared_card_says_of_each_part_which_hinge_it_takes() -> None:
    """Cups alike for two hinges are on one card; of one hinge nothing is said."""

    def member(front: str) -> Member:
        view = views_of_front(front_of(job(), front), "mm")[0]
        return Member(view=view, serves="", dx=0.0, dy=0.0)

    both = [member("B1-3"), member("B2-1")]
    texts = [mark.text for mark in tick_boxes(both, 66.0, "hinge").marks if isinstance(mark, Text)]
    assert texts.index("hinge other") < texts.index("B2-1") < texts.index("hinge mine")
    for block in (tick_boxes([both[0], both[0]], 66.0, "hinge"), tick_boxes(both, 66.0, "pull")):
        assert not any(isinstance(m, Text) and m.text.startswith("hinge") for m in block.marks)
