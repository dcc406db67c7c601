"""Stations: from their values alone every hole comes out once; what they share and say."""

from collections.abc import Callable, Sequence
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

import templates.demo
from jigs.bench.boxtable import box_tables
from jigs.bench.rows import choose_rows
from jigs.bench.station import Row, Setting, Station
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import FrontSpec, Job
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests import uneven
from tests.jigs.sample import box, lay
from tests.jobs import jobs
from tests.stationholes import compare, listed, listed_marked, marked, set_out
from tests.templates.printed import laid_out
from tests.test_sound_kitchens import FOLDER, NAMES

DEMO = Path(templates.demo.__path__[0]) / "job.toml"


@cache
def demo() -> Layout:
    return lay_out(read_job(DEMO))


@cache
def sound(name: str) -> Layout:
    return lay_out(read_job(FOLDER / f"{name}.toml"))


@cache
def uneven_box() -> Layout:
    return laid_out(uneven.UNEVEN)


def check_holes(layout: Layout) -> None:
    """Every hole of the list comes out once, from paper or through a drawer box."""
    stations = plan_stations(layout)
    assert compare(listed(layout), set_out(stations)) == ([], [])
    assert compare(listed_marked(layout), marked(stations)) == ([], [])
    with_pilots = plan_stations(layout, pilots=True)
    assert compare(listed(layout, pilots=True), set_out(with_pilots)) == ([], [])
    assert marked(with_pilots) == []
    for station in (*stations, *with_pilots):
        check_station(station)
    assert len({station.name for station in stations}) == len(stations)


def check_station(station: Station) -> None:
    """Its cards are all used, as often as they say; what is held back has no figures."""
    used = [setting for row in station.rows for setting in row.settings]
    set_for = [each for row in station.rows if not row.bored for each in row.settings]
    for card in station.cards:
        mine = [setting for setting in set_for if setting.card == card.letter]
        assert len(mine) == card.settings
        assert {1, *(setting.copy for setting in mine)} == set(range(1, card.copies + 1))
        assert any(not setting.turned for setting in mine)
        assert len(card.edges) + len(card.lines) == 2
    assert {card.letter for card in station.cards} == {setting.card for setting in used}
    for row in station.rows:
        assert bool(row.settings) != row.withheld
        assert row.part.face == station.face
        for closing in row.closing:
            assert sum(closing.terms) == pytest.approx(closing.length)
            assert all(term > 0.0 for term in closing.between)
    for bit in station.bits:
        assert (bit.leaves is None) == (bit.depth is None)


@pytest.mark.parametrize("name", NAMES)
def test_all_holes_of_sound_kitchens(name: str) -> None:
    """Whatever a sound kitchen has."""
    check_holes(sound(name))


def test_all_holes_of_the_demo() -> None:
    """Also of what is measured, rounded, given by hand."""
    check_holes(demo())


def test_all_holes_of_an_uneven_box() -> None:
    """What a symmetric box hides."""
    check_holes(uneven_box())


@given(jobs(most_boxes=2))
@settings(max_examples=5)
def test_all_holes_of_any_job(made: Job) -> None:
    """Held or not, wide or narrow."""
    check_holes(lay_out(made))


@pytest.mark.slow
@given(jobs())
@settings(max_examples=30)
def test_all_holes_of_many_jobs(made: Job) -> None:
    """The same, at length."""
    check_holes(lay_out(made))


# --- the comparison can fail ------------------------------------------------------------------

Change = Callable[[Setting], Setting]


def change_one(
    stations: Sequence[Station], wanted: Callable[[Setting], bool], change: Change
) -> tuple[str, tuple[Station, ...]] | None:
    """Change the first setting of this sort; give its part too."""
    for at, station in enumerate(stations):
        for place, row in enumerate(station.rows):
            for index, setting in enumerate(row.settings):
                if wanted(setting):
                    settings = list(row.settings)
                    settings[index] = change(setting)
                    rows: list[Row] = list(station.rows)
                    rows[place] = replace(row, settings=tuple(settings))
                    changed = replace(station, rows=tuple(rows))
                    return row.part.id, (*stations[:at], changed, *stations[at + 1 :])
    return None


def moved(setting: Setting) -> Setting:
    assert setting.y is not None
    return replace(setting, y=replace(setting.y, value=setting.y.value + 0.3))


def of_work(stations: Sequence[Station], work: str) -> tuple[Station, ...]:
    return tuple(station for station in stations if station.work == work)


@pytest.mark.parametrize("work", ["sides", "cups", "pulls", "drawer-boxes"])
def test_a_line_moved_is_caught(work: str) -> None:
    """By 0.3 mm, on one part."""
    stations = plan_stations(demo())
    for station in of_work(stations, work):
        rest = [other for other in stations if other is not station]
        changed = change_one([station], lambda setting: setting.y is not None, moved)
        if changed is not None:
            part, made = changed
            missing, extra = compare(listed(demo()), set_out([*rest, *made]))
            assert {hole.where[0] for hole in (*missing, *extra)} == {part}
            break
    else:
        pytest.fail(f"no line in {work}")


@pytest.mark.parametrize("work", ["sides", "drawer-boxes", "pulls", "cups"])
def test_a_card_turned_is_caught(work: str) -> None:
    """Half round, where it should lie as drawn."""
    stations = plan_stations(demo())
    mine = of_work(stations, work)
    changed = change_one(
        mine, lambda setting: not setting.turned, lambda setting: replace(setting, turned=True)
    )
    assert changed is not None
    part, made = changed
    rest = [station for station in stations if station.work != work]
    missing, extra = compare(listed(demo()), set_out([*rest, *made]))
    assert {hole.where[0] for hole in missing} == {part}
    assert {hole.where[0] for hole in extra} == {part}


def test_two_hands_exchanged_are_caught() -> None:
    """The rows of the left hand at the cards of the right one, and the other way round."""
    stations = plan_stations(demo())
    left = next(station for station in stations if station.name == "cups-left")
    right = next(station for station in stations if station.name == "cups-right-a")
    rest = [station for station in stations if station not in (left, right)]
    exchanged = (replace(left, rows=right.rows), replace(right, rows=left.rows))
    missing, extra = compare(listed(demo()), set_out([*rest, *exchanged]))
    assert len(missing) == len(extra) == 3 * (left.cards[0].settings + right.cards[0].settings)


def test_a_box_that_stands_elsewhere_is_caught() -> None:
    """Left and right exchanged, on a front whose ends differ."""
    stations = plan_stations(uneven_box())

    def exchange(row: Row) -> Row:
        marks = row.marks
        if marks is None:
            return row
        return replace(
            row, marks=replace(marks, in_left=marks.in_right, in_right=marks.in_left), settings=()
        )

    made = [
        replace(station, rows=tuple(exchange(row) for row in station.rows)) for station in stations
    ]
    with pytest.raises(AssertionError):
        marked(made)


# --- worked ----------------------------------------------------------------------------------


def rows_of(stations: Sequence[Station], part: str, serves: str | None = None) -> list[Row]:
    return [
        row
        for station in stations
        for row in station.rows
        if row.part.id == part and serves in (None, row.serves)
    ]


def test_the_uneven_box_stands_where_worked_out() -> None:
    """As seen from the back: what is narrow from the room's right is narrow on the left."""
    stations = plan_stations(uneven_box())
    row = next(row for row in rows_of(stations, "B1-1") if row.marks)
    assert row.marks is not None
    assert row.marks.box == "B1-1-BOX"
    assert row.marks.in_left == pytest.approx(uneven.IN_RIGHT)
    assert row.marks.in_right == pytest.approx(uneven.IN_LEFT)
    assert row.marks.up == pytest.approx(uneven.RISE)
    across = row.closing[1]
    assert across.terms == pytest.approx((uneven.IN_RIGHT, uneven.BOX_WIDTH, uneven.IN_LEFT))
    assert across.length == pytest.approx(uneven.DRAWER_WIDTH)


def test_punch_to_punch_is_the_same_on_door_and_side() -> None:
    """Golden door: 97.75 up, 416 between its cups; its plates on the side 416 apart."""
    stations = plan_stations(demo())
    (cups,) = [row for row in rows_of(stations, "B1-2") if row.purpose == "cup"]
    (plates,) = rows_of(stations, "B1-SIDE-L", "B1-2")
    assert cups.closing[0].terms == pytest.approx((97.7625, 416.0, 614.3625 - 97.7625 - 416.0))
    assert cups.closing[0].between == pytest.approx(plates.closing[0].between)


def test_both_sides_of_a_box_share_cards_and_lines() -> None:
    """The right side takes the left one's card turned half round, at the same height."""
    stations = plan_stations(demo())
    for serves in ("B2-1", "B2-2", "B2-3", "B2-4"):
        (left,) = rows_of(stations, "B2-SIDE-L", serves)
        (right,) = rows_of(stations, "B2-SIDE-R", serves)
        (one,), (other,) = left.settings, right.settings
        assert (one.card, one.y) == (other.card, other.y)
        assert (one.turned, other.turned) == (False, True)


def test_pins_take_one_card_for_each_row_alike() -> None:
    """Its crosses are numbered: a setting says which of them are drilled."""
    stations = plan_stations(sound("ropewalk"))
    (station,) = of_work(stations, "sides")
    pins = [row for row in station.rows if row.purpose == "shelf"]
    assert pins
    for row in pins:
        for setting in row.settings:
            card = station.card(setting.card)
            assert card.numbered
            assert setting.holes is not None
            assert set(setting.holes) <= set(range(7))
    # Front and rear rows of both sides lie on the same lines.
    by_box: dict[tuple[str, int], list[set[float]]] = {}
    for row in pins:
        assert row.part.board is not None
        assert not row.part.board.partition
        for turned in (False, True):
            heights = {
                setting.y.value
                for setting in row.settings
                if setting.y is not None and setting.turned is turned
            }
            by_box.setdefault((row.part.box, row.part.board.column), []).append(heights)
    for each in by_box.values():
        assert all(heights in ({*each[0]}, set()) for heights in each)


@pytest.mark.parametrize("job", [demo, lambda: sound("ropewalk")], ids=["demo", "shelved"])
def test_a_fresh_copy_is_taken_where_the_one_before_is_worn(job: Callable[[], Layout]) -> None:
    """Followed as the paper is read, of boards line by line: eight settings a copy, of pins 24, of
    clearance holes all; no copy before the first one was used."""
    numbers: set[int | None] = set()
    for station in plan_stations(job()):
        for card in station.cards:
            most = None if not card.critical else 24 if card.numbered else 8
            numbers.add(most)
            copies = [setting.copy for setting in _as_read(station) if setting.card == card.letter]
            assert len(copies) == card.settings
            assert copies == [1 if most is None else n // most + 1 for n in range(len(copies))]
    assert numbers >= ({None, 8} if job is demo else {24})


def _as_read(station: Station) -> list[Setting]:
    """Give the settings of a station in the order of its pages."""
    if station.work != "sides":
        return [setting for row in station.rows for setting in row.settings]
    read: list[Setting] = []
    for table in box_tables((station,)):
        for line in table.lines:
            for board, up in ((table.left, line.left), (table.right, line.right)):
                read += [
                    setting
                    for row in station.rows
                    if row.part == board and up is not None and not row.bored
                    if row.purpose == line.purpose and (row.serves in line.serves or not row.serves)
                    for setting in row.settings
                    if setting.y is not None
                    and abs(setting.y.of(row.part.width, row.part.height) - up) < 0.01
                ]
    return read


def test_a_name_without_its_letter_takes_all_that_have_it() -> None:
    """A station's own name takes it alone; its stem all stations of that name."""
    stations = plan_stations(demo())
    for only, names in (
        ("CUPS-RIGHT", ["cups-right-a", "cups-right-b"]),
        ("CUPS-RIGHT-B", ["cups-right-b"]),
        ("CUPS-LEFT", ["cups-left"]),
    ):
        assert [each.name for each in choose_rows(demo(), stations, {only})] == names


def test_stations_follow_the_work() -> None:
    """Sides first, then drawer boxes and their hooks, doors, pulls, fronts on boxes."""
    names = [station.name for station in plan_stations(demo())]
    assert names[:6] == [
        "sides", "drawer-boxes", "rear-hooks", "cups-right-a", "cups-left", "cups-right-b",
    ]  # fmt: skip
    assert names[6:] == [
        "pulls-a", "pulls-b", "pulls-c", "pulls-d", "fronts-on-boxes", "false-fronts",
        "by-hand-b5-1-a", "by-hand-b5-1-b", "by-hand-w3-1",
    ]  # fmt: skip


def test_what_the_demo_comes_to() -> None:
    """No more cards to cut and flaps to fold than a shop would put up with."""
    cards = [card for station in plan_stations(demo()) for card in station.cards]
    assert sum(card.copies for card in cards) <= 48
    assert sum(card.copies * card.folds for card in cards) <= 66


def test_a_station_code_is_of_pattern_and_hand() -> None:
    """Both hands differ; another place of the same pattern does not matter."""
    stations = {station.name: station for station in plan_stations(demo())}
    assert stations["cups-left"].code != stations["cups-right-a"].code
    job = demo().job
    other = lay_out(replace(job, boxes=job.boxes[:4]))
    fewer = {station.name: station for station in plan_stations(other)}
    assert fewer["cups-left"].code == stations["cups-left"].code


def test_least_left_is_of_the_thinnest() -> None:
    """Cups 12.8 deep in fronts of 19.05 leave 6.25."""
    (cups,) = [station for station in plan_stations(demo()) if station.name == "cups-left"]
    assert cups.bits[0].leaves == pytest.approx(19.05 - 12.8)
    assert cups.purpose == "cup"


def test_parts_that_are_set_alike_stand_together() -> None:
    """Drawer fronts of boxes 600, 450 and 600 wide: those of one width follow each other, and so do
    their drawer boxes; a card is done with before the next is taken up."""
    boxes = [
        box(FrontSpec(id=f"{name}-1", kind="drawer"), name=name, width=width)
        for name, width in (("A", 600.0), ("B", 450.0), ("C", 600.0))
    ]
    works = {station.work: station for station in plan_stations(lay(*boxes))}
    for work in ("fronts-on-boxes", "drawer-boxes"):
        ids = [row.part.id for row in works[work].rows]
        assert [each[0] for each in ids] == ["A", "C", "B"], ids
