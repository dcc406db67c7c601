"""Concealed cup hinges: places, overlay, tab and plate."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.fittings.hinge import (
    choose_tab_and_plate,
    cup_fittings,
    cup_from_edge,
    least_reveal,
    least_skin,
    overlay_got,
    plate_fittings,
    skin_under_cup,
)
from jigs.given.hardware import HingeRecord
from jigs.given.job import FrontMaterial
from jigs.ground.geometry import Fitting, Hand, mirror_x
from tests.uneven import DOOR_WIDTH

HINGE = HingeRecord(name="mine", constant=15.0, plates=(0.0, 2.0, 3.0))


def cups(hinged: Hand, record: HingeRecord = HINGE) -> tuple[Fitting, ...]:
    """Give the cups of the golden single door."""
    return cup_fittings(
        record, [97.75, 673.75], part="B1-1", width=454.0, hinged=hinged, tab=5.0, material="mdf"
    )


@pytest.mark.parametrize("tab", [3, 4, 5, 6, 7])
def test_cup_centre(tab: float) -> None:
    """The centre stands tab plus half the cup from the edge: 20.5 to 24.5 (common practice)."""
    assert cup_from_edge(HINGE, tab) == tab + 35 / 2


@pytest.mark.parametrize("across", [26.0, 40.0])
def test_a_smaller_or_larger_cup_keeps_its_tab(across: float) -> None:
    """Half of its own diameter behind the tab, its screws behind its own centre; nothing of it is
    that of 35."""
    cup, *screws = cups("left", replace(HINGE, cup_diameter=across))[0].holes
    assert (cup.x, cup.diameter) == (5 + across / 2, across)
    assert {screw.x for screw in screws} == {5 + across / 2 + HINGE.fixing_inboard}


def test_golden_cup_from_the_back() -> None:
    """Cup at 22.5 of a left-hung door of 454: 431.5 as seen from the back."""
    cup = cups("left")[0].holes[0]
    assert cup.x == 5 + 35 / 2
    assert mirror_x(cup.x, 454.0) == 454.0 - 22.5


def test_the_uneven_boxs_cup_from_the_back() -> None:
    """Hung at the right, 469.35 wide: 446.85 from the room, and 22.5 as seen from the back."""
    (hung,) = cup_fittings(
        HINGE, [97.75], part="B1-3", width=DOOR_WIDTH, hinged="right", tab=5.0, material="mdf"
    )
    cup = hung.holes[0]
    assert cup.x == pytest.approx(469.35 - 5 - 35 / 2)
    assert mirror_x(cup.x, DOOR_WIDTH) == pytest.approx(22.5)


@pytest.mark.parametrize(
    ("spacing", "inboard", "x", "half"),
    [(45, 9.5, 32.0, 22.5), (48, 6, 28.5, 24), (52, 5.5, 28.0, 26)],  # common practice, no source
)
def test_fixing_patterns(spacing: float, inboard: float, x: float, half: float) -> None:
    """Each pattern's screws lie on their line, half the spacing below and above the cup."""
    record = HingeRecord(name="p", fixing_spacing=spacing, fixing_inboard=inboard)
    cup, low, high = cups("left", record)[0].holes
    assert (low.x, high.x) == (x, x)
    assert (cup.y - low.y, high.y - cup.y) == (half, half)


def test_right_hung_mirrors_left_hung() -> None:
    """The other hand is the same door seen from behind."""
    for left, right in zip(cups("left"), cups("right"), strict=True):
        assert [mirror_x(hole.x, 454.0) for hole in left.holes] == [h.x for h in right.holes]
        for corner, other in zip(sorted(left.outline[0]), sorted(right.outline[0]), strict=True):
            assert corner[1] == other[1]


@pytest.mark.parametrize(
    ("material", "pilot"),
    [("mdf", 3.0), ("hardwood", 3.0), ("softwood", 2.5), ("plywood", 2.5)],  # common practice
)
def test_pilots(material: FrontMaterial, pilot: float) -> None:
    """Pilots are 3.0 in mdf and hardwood, else 2.5, unless the record states its own."""
    (fitting,) = cup_fittings(
        HINGE, [100], part="A", width=400, hinged="left", tab=5, material=material
    )
    assert [(h.diameter, h.depth) for h in fitting.holes[1:]] == [(pilot, 11.0)] * 2
    dowels = HingeRecord(name="d", fixing_diameter=8.0)
    (fitting,) = cup_fittings(
        dowels, [100], part="A", width=400, hinged="left", tab=5, material=material
    )
    assert fitting.holes[1].diameter == 8.0


def test_plates_straddle_their_height() -> None:
    """Golden: a plate at 99.35 has its holes at 83.35 and 115.35, 37 back."""
    (plate,) = plate_fittings(HINGE, [99.35], part="B1-1")
    assert [(h.x, round(h.y, 4)) for h in plate.holes] == [(37.0, 83.35), (37.0, 115.35)]
    assert [(h.diameter, h.depth) for h in plate.holes] == [(5.0, 12.0)] * 2


@pytest.mark.parametrize(
    ("kind_constant", "needed", "tab", "plate", "error"),
    [  # derived: overlay = constant + tab - plate (common practice, no source)
        (15.0, 18.3 - 1.6, 5.0, 3.0, 15 + 5 - 3 - (18.3 - 1.6)),
        (15.0, 18.3 - 0.8, 5.0, 2.0, 15 + 5 - 2 - (18.3 - 0.8)),
        (5.5, (18.3 - 3.2) / 2, 5.0, 3.0, 5.5 + 5 - 3 - (18.3 - 3.2) / 2),
        (-4.0, -2.0, 5.0, 3.0, 0.0),
    ],
)
def test_tab_and_plate(
    kind_constant: float, needed: float, tab: float, plate: float, error: float
) -> None:
    """The usual tab with the nearest plate, a tie to the lower plate."""
    record = HingeRecord(name="r", constant=kind_constant, plates=(0.0, 2.0, 3.0))
    choice = choose_tab_and_plate(record, needed)
    assert (choice.tab, choice.plate) == (tab, plate)
    assert choice.error == pytest.approx(error, abs=1e-9)


def test_without_plate_2_the_tie_goes_to_3() -> None:
    """A needed overlay of 17.5 with plates 0 and 3 leaves 0.5 to the side screw."""
    record = HingeRecord(name="r", plates=(0.0, 3.0))
    choice = choose_tab_and_plate(record, 18.3 - 0.8)
    assert (choice.tab, choice.plate) == (5.0, 3.0)
    assert choice.error == pytest.approx(-0.5)


@given(
    st.floats(8, 20),
    st.lists(st.sampled_from([0.0, 2.0, 3.0, 4.0, 9.0]), min_size=1, unique=True),
    st.none() | st.lists(st.sampled_from([3.0, 4.0, 5.0, 6.0]), min_size=1, unique=True),
)
def test_search_finds_the_least_error(
    needed: float, plates: list[float], tabs: list[float] | None
) -> None:
    """Beyond 0.5 no pair that can be bored and bought comes nearer than the one chosen."""
    record = HingeRecord(name="r", plates=tuple(plates), tabs=None if tabs is None else tuple(tabs))
    choice = choose_tab_and_plate(record, needed)
    assert choice.error == pytest.approx(overlay_got(record, choice.tab, choice.plate) - needed)
    if abs(choice.error) > 0.5 + 1e-6 and (tabs is None or len(tabs) > 1):
        able = tabs or [3 + step / 2 for step in range(9)]
        least = min(abs(15 + k - p - needed) for k, p in itertools.product(able, plates))
        assert abs(choice.error) == pytest.approx(least, abs=2e-6)


@pytest.mark.parametrize(
    ("record", "own", "kept"),
    [
        (replace(HINGE, tab=5.0), None, 5.0),
        (replace(HINGE, tabs=(4.0,)), None, 4.0),
        (replace(HINGE, tab=5.0, tabs=(3.0, 5.0, 7.0)), None, 5.0),
        (replace(HINGE, tabs=(3.0, 5.0)), 6.0, 6.0),
        (HINGE, 6.5, 6.5),
    ],
)
def test_a_stated_tab_stands(record: HingeRecord, own: float | None, kept: float) -> None:
    """Whatever the overlay misses by, only the plate is chosen: a wrong constant must never move
    a bore. Needed 14.7 with plates 0, 2, 3: the highest comes nearest."""
    choice = choose_tab_and_plate(record, 14.7, tab=own)
    assert (choice.tab, choice.plate, choice.instead) == (kept, 3.0, None)
    assert choice.error == pytest.approx(15 + kept - 3 - 14.7)


def test_what_the_search_moves_is_told_with_the_choice() -> None:
    """Needed 18.3 - 1.6 with a constant of 12.5 that may be wrong: 12.5 + 5 - 0 misses by 0.8
    towards more, plate 2 by 1.2 towards less; tab 4 with plate 0 misses by 0.2, 6 with 2 too."""
    choice = choose_tab_and_plate(replace(HINGE, constant=12.5), 16.7)
    assert (choice.tab, choice.plate) == (4.0, 0.0)
    assert choice.instead == pytest.approx((5.0, 0.8))
    assert choose_tab_and_plate(HINGE, 16.7).instead is None


def test_of_two_tabs_that_miss_alike_the_one_nearer_to_5_is_taken() -> None:
    """Needed 16 with a constant of 12.5: 12.5 + 3.5 - 0 and 12.5 + 6 - 2.5 both reach it, 5 misses
    by 1.5 and by 1; 6 is nearer to 5 than 3.5."""
    choice = choose_tab_and_plate(replace(HINGE, constant=12.5, plates=(0.0, 2.5)), 16.0)
    assert (choice.tab, choice.plate, choice.error) == (6.0, 2.5, 0.0)
    assert choice.instead == (5.0, -1.0)


def test_several_tabs_are_tried_from_the_one_nearest_5() -> None:
    """4.5 stands where it reaches; where it misses by more than 0.5 the list is searched, and 5,
    which is not in it, never bored."""
    record = replace(HINGE, tabs=(3.5, 4.5, 7.0), plates=(3.0,))
    assert choose_tab_and_plate(record, 16.7).tab == 4.5
    moved = choose_tab_and_plate(record, 18.7)
    assert moved.tab == 7.0
    assert moved.instead == pytest.approx((4.5, 15 + 4.5 - 3 - 18.7))


@pytest.mark.parametrize(
    ("tabs", "own", "tab", "wanted"),
    [
        (None, None, 5.0, 15 + 5 - 16.7),
        ((4.0,), None, 4.0, 15 + 4 - 16.7),
        ((3.0, 6.0), None, 6.0, 15 + 6 - 16.7),
        (None, 6.5, 6.5, 15 + 6.5 - 16.7),
    ],
)
def test_without_stated_plates_the_one_wanted_is_named(
    tabs: tuple[float, ...] | None, own: float | None, tab: float, wanted: float
) -> None:
    """Constant plus tab less the needed overlay; the cup stays, and no error is there."""
    record = HingeRecord(name="r", constant=15.0, tabs=tabs)
    choice = choose_tab_and_plate(record, 16.7, tab=own)
    assert (choice.tab, choice.plate) == pytest.approx((tab, wanted))
    assert (choice.plate_stated, choice.error, choice.instead) == (False, 0.0, None)


def test_a_bored_front_keeps_its_tab() -> None:
    """A tab that is already bored is not exchanged for a better one, stated or not."""
    assert choose_tab_and_plate(HINGE, 14.0, tab=4.0, fixed=True).tab == 4.0
    assert choose_tab_and_plate(HINGE, 14.0, fixed=True).tab == 5.0
    assert choose_tab_and_plate(HINGE, 14.0).tab == 3.0


def test_skin() -> None:
    """19.05 - 13 leaves 6.05; a 16 mm front with 13 bored and a 2.5 point leaves 0.5."""
    assert skin_under_cup(HINGE, 19.05) == pytest.approx(19.05 - 13)
    assert skin_under_cup(HINGE, 19.05) > least_skin(HINGE) == 2.5
    pointed = HingeRecord(name="r", bit_point=2.5)
    assert least_skin(pointed) == 2.5 + 1
    assert skin_under_cup(pointed, 16) - pointed.bit_point == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("thickness", "reveal"),
    [(19, 0.9), (19.05, 0.9 + 0.05 * 0.2), (20, 1.1), (21.5, 1.5), (23, 2.0), (24, 2.4),
     (18.9, 0.9), (18.5, 0.9), (18.4, None), (24.1, 2.4), (24.5, 2.4), (24.6, None)],
)  # fmt: skip
def test_least_reveal(thickness: float, reveal: float | None) -> None:
    """Linear between the rows (from memory), the last row within 0.5 of it, else nothing."""
    got = least_reveal(HINGE, thickness)
    assert got == (None if reveal is None else pytest.approx(reveal))


def test_the_leaflets_table_replaces_the_common_one() -> None:
    """A record's own rows are used alone."""
    record = HingeRecord(name="r", least_reveal=((16.0, 0.4), (18.0, 0.8)))
    assert least_reveal(record, 17) == pytest.approx(0.6)
    assert least_reveal(record, 19) is None


@pytest.mark.parametrize(
    ("inches", "reveal"), [(0.745, 1.0), (0.75, 1.0), (0.76, 1.0), (0.71, None), (13 / 16, None)]
)
def test_a_board_in_inches_meets_a_leaflet_in_whole_millimetres(
    inches: float, reveal: float | None
) -> None:
    """A table of one row, for 19, counts for what is sold as 3/4, measured 18.9 or 19.05."""
    record = HingeRecord(name="r", least_reveal=((19.0, 1.0),))
    assert least_reveal(record, inches * 25.4) == reveal
