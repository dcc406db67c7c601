"""Fixed shelves, rows of shelf pins, rails."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely import Point
from shapely.geometry import box as rectangle

from jigs.box.carcass import Carcass
from jigs.box.parts import Layout, Side
from jigs.box.shelves import rear_row
from jigs.given.job import BoxKind, ColumnSpec, FrontSpec, Job, Overlay, ShelfSpec
from jigs.ground.grid import balanced_start
from jigs.layout.layout import lay_out
from templates.words.assumedwords import assumed_lines
from tests import uneven
from tests.jigs.box.test_columns import door, drawer
from tests.jigs.jobtext import SMALL, faults_of, read
from tests.jigs.sample import box, front_of, job, side_of
from tests.jigs.test_overlay import HINGES
from tests.templates.printed import laid_out

PINS = ShelfSpec()


def shelved(
    *fronts: FrontSpec,
    shelves: tuple[ShelfSpec, ...] = (PINS,),
    columns: int = 1,
    overlay: Overlay = "full",
    kind: BoxKind = "base",
    height: float = 774.7,
    depth: float = 584.2,
    rail: float | None = None,
) -> Layout:
    """Lay out a box with shelves, on hinges of every kind."""
    spec = replace(
        box(*fronts, width=457.2 * columns, height=height, depth=depth, kind=kind),
        shelves=shelves, columns=(ColumnSpec(),) * columns if columns > 1 else (),
        overlay=overlay, rail=rail,
    )  # fmt: skip
    made: Job = job(spec, assumed=frozenset({"use.hinge"}))
    hinges = {f"cup35-{name}": replace(hinge, name=f"cup35-{name}")
              for name, hinge in HINGES.items()}  # fmt: skip
    return lay_out(replace(made, hinges=hinges))


def pins(side: Side) -> list[tuple[float, float]]:
    """Give the places of a face's shelf pins, from the box's bottom end."""
    return sorted(
        (round(h.x, 6), round(h.y + side.ends.base, 6)) for h in side.holes if h.purpose == "shelf"
    )


@pytest.mark.parametrize(
    ("depth", "inside", "set_back", "line"),
    [
        # A back of 6, set in by 19: 37 - 19 - 6 = 12 before it, just enough; one of 6.1 not.
        (584.2, 584.2 - 19 - 6, 0.0, 584.2 - 37.0),
        (584.2, 584.2 - 19 - 6.1, 0.0, 37.0 + 32 * 15),
        (320.0, 295.0, 0.0, 320.0 - 37.0),
        (586.0 + 19.05, 580.05, 19.05, 586.0 + 19.05 - 37.0),
        (500.0, 487.0, 19.05, 500.0 - 37.0),
        # So shallow that the rows would come nearer than a pitch.
        (100.0, 90.0, 0.0, 37.0 + 32 * 1),
        # The last pin stands 12 inside the shelf's rear edge, and no less (common practice).
        (560.0, 37.0 + 32 * 15 + 12, 0.0, 37.0 + 32 * 15),
        (560.0, 37.0 + 32 * 15 + 11.9, 0.0, 37.0 + 32 * 14),
    ],
)
def test_the_rear_row(depth: float, inside: float, set_back: float, line: float) -> None:
    """37 from the rear edge with 12 behind it, else 37 + 32 n (common practice, no source)."""
    assert rear_row(depth=depth, inside=inside, set_back=set_back) == pytest.approx(line)


def test_pin_rows_stand_on_the_grid_in_both_sides() -> None:
    """5 x 12, no part, front line 37, at the heights of the grid, alike in both sides."""
    layout = shelved(door("A"))
    left, right = layout.sides
    assert pins(left) == pins(right)
    assert {x for x, _ in pins(left)} == {37.0, 584.2 - 37}
    start = balanced_start(774.7)
    for _, y in pins(left):
        assert (y - start) / 32 == pytest.approx(round((y - start) / 32))
    for fitting in left.fittings:
        if fitting.kind == "shelf":
            assert fitting.part is None
            assert {(h.diameter, h.depth) for h in fitting.holes} == {(5.0, 12.0)}
            assert len(fitting.holes) <= 5


def test_pins_end_100_inside_what_they_serve() -> None:
    """The first grid hole 100 above the bottom panel, the last 100 below the ceiling (common
    practice)."""
    opening = FrontSpec(id="A", kind="opening")
    ys = sorted({y for _, y in pins(shelved(opening).sides[0])})
    start = balanced_start(774.7)
    assert [ys[0], ys[-1]] == pytest.approx([start + 32 * 4, start + 32 * 19])
    assert ys[0] - 32 < 18.3 + 100 <= ys[0]
    assert ys[-1] <= 774.7 - 18.3 - 100 < ys[-1] + 32


def test_a_height_that_a_plate_takes_is_left_out_in_all_four_rows() -> None:
    """No pin where the hinge plates are, on either side and in front as in the rear."""
    layout = shelved(door("A"), shelves=(ShelfSpec(low=30.0, high=740.0),))
    plates = {round(h.y, 6) for h in layout.sides[0].holes if h.purpose == "plate"}
    assert plates
    for side in layout.sides:
        assert not plates & {y for _, y in pins(side)}


def test_pins_keep_off_drawers_and_panels() -> None:
    """Without from and to they stand behind the door alone, clear of its shelf."""
    fixed = ShelfSpec(at=300.0)
    layout = shelved(drawer("D", height=160.0), door("A"), shelves=(PINS, fixed))
    a = front_of(layout, "A")
    ys = [y for _, y in pins(layout.sides[0])]
    assert ys
    assert all(a.place.y + 100 <= y <= a.place.y + a.height - 100 for y in ys)
    assert not [y for y in ys if 300 - 18.3 - 64 < y < 300 + 64]


def test_hinges_keep_35_from_a_fixed_shelf() -> None:
    """A shelf where the lower hinge would stand moves it."""
    free = shelved(door("A"), shelves=())
    cups = sorted(h.y + 1.6 for h in free.fronts[0].holes if h.purpose == "cup")
    layout = shelved(door("A"), shelves=(ShelfSpec(at=cups[0] - 20.0),))
    moved = sorted(h.y + 1.6 for h in layout.fronts[0].holes if h.purpose == "cup")
    assert moved
    assert moved[0] != pytest.approx(cups[0])
    assert moved[0] >= cups[0] - 20 + 35 - 1e-6


def test_a_drawer_ends_below_a_fixed_shelf() -> None:
    """10 under the shelf's lower face, as under any panel (common practice)."""
    fronts = (door("A"), drawer("D", height=250.0))
    drawer_box = front_of(shelved(*fronts, shelves=(ShelfSpec(at=200.0),)), "D").drawer
    assert drawer_box is not None
    assert 1.6 + drawer_box.y + drawer_box.height <= 200 - 18.3 - 10 + 1e-6


def test_no_pins_under_a_bottom_panel_on_legs() -> None:
    """Pins stated from 80 to 300 in a side that runs to the floor start above the panel's face,
    101.6 + 18.3, and 10 off it."""
    spec = replace(
        box(FrontSpec(id="B1-1", kind="lift"), height=876.3, above_floor=0.0),
        legs=101.6, shelves=(ShelfSpec(low=80.0, high=300.0),),
    )  # fmt: skip
    heights = {y for side in lay_out(job(spec)).sides for _, y in pins(side)}
    assert min(heights) >= 101.6 + 18.3 + 10
    # The grid of the side starts at 22.15 (derived): 150.15, and 118.15 is in the panel.
    assert min(heights) == pytest.approx(22.15 + 4 * 32)


def test_a_shelf_of_one_column() -> None:
    """Pins stand in its column alone; in both they are one hole in the partition."""
    one = shelved(door("A"), door("B", 2), columns=2, shelves=(ShelfSpec(column=2),))
    assert [bool(pins(side)) for side in one.sides] == [False, False, True, True]
    both = shelved(door("A"), door("B", 2), columns=2)
    faces = [side for side in both.sides if side.partition]
    assert pins(faces[0]) == pins(faces[1]) != []
    shared = {h.depth for side in faces for h in side.holes if h.purpose == "shelf"}
    assert shared == {None}


def test_a_rail_on_edge() -> None:
    """Of the height that is given, else 100 in a sink box; hinges keep 35 below it."""
    assert Carcass(box=box(kind="sink"), side=18.3, back=6.0).ceiling == 774.7 - 100
    railed = replace(box(kind="base"), rail=120.0)
    assert Carcass(box=railed, side=18.3, back=6.0).ceiling == 774.7 - 120
    fronts = (FrontSpec(id="F", kind="false-front", height=150.0), door("A"))
    layout = shelved(*fronts, shelves=(), kind="sink", rail=150.0)
    cups = [h.y + 1.6 for h in front_of(layout, "A").holes if h.purpose == "cup"]
    assert cups
    assert max(cups) <= 774.7 - 150 - 35 + 1e-6


def test_an_open_box_has_its_pins_too() -> None:
    """Shelves need no front."""
    layout = shelved(kind="open")
    assert [bool(pins(side)) for side in layout.sides] == [True, True]


def test_shelves_are_read(tmp_path: Path) -> None:
    """Fixed and adjustable ones, and the rail."""
    text = (
        f"{SMALL}[[box.shelf]]\nat = 300\n[[box.shelf]]\nadjustable = true\nfrom = 100\nto = 600\n"
    )
    (spec,) = read(tmp_path, text.replace("depth = 584.2", "depth = 584.2\nrail = 90")).boxes
    assert spec.shelves == (ShelfSpec(at=300.0), ShelfSpec(low=100.0, high=600.0))
    assert spec.rail == 90.0


@pytest.mark.parametrize(
    ("shelf", "words"),
    [
        ("", "at is missing; give it, or adjustable = true"),
        ("at = 300\nadjustable = true", "a shelf is fixed or adjustable"),
        ("at = 900", "sides' bottom end, and the box is 774.7 mm (30 1/2 in) high (900 given)"),
        ("at = 300\nfrom = 100", "for adjustable shelves alone"),
        ("adjustable = true\nfrom = 300\nto = 200", "not above from (200 given)"),
        ("at = 300\ncolumn = 2", "not a whole number from 1 to 1"),
    ],
)
def test_shelves_stated_badly(tmp_path: Path, shelf: str, words: str) -> None:
    """Each slip is a fault of the file, with what is allowed."""
    (fault,) = faults_of(tmp_path, f"{SMALL}[[box.shelf]]\n{shelf}\n")
    assert words in fault.replace("at: is missing", "at is missing")


@pytest.mark.parametrize("shelf", ["at = 100", "adjustable = true\nto = 100"])
def test_shelves_below_a_box_on_legs(tmp_path: Path, shelf: str) -> None:
    """Heights count from the sides' end, and the legs are 101.6 of them."""
    text = SMALL.replace('kind = "base"', 'kind = "base"\nlegs = 101.6')
    (fault,) = faults_of(tmp_path, f"{text}[[box.shelf]]\n{shelf}\n")
    assert "below its box (100 given)" in fault


def test_the_front_row_stands_back_behind_inset_fronts() -> None:
    """By the 19.05 of the door, as its plates do; the rear row stays."""
    side = side_of(shelved(door("D1"), shelves=(PINS,), overlay="inset"), "B1-SIDE-L")
    assert {x for x, _ in pins(side)} == {37.0 + 19.05, round(584.2 - 37.0, 6)}
    assert {h.x for h in side.holes if h.purpose == "plate"} == {37.0 + 19.05}


@pytest.mark.slow
@given(
    columns=st.integers(1, 3),
    overlay=st.sampled_from(("full", "inset")),
    height=st.integers(600, 2200),
    depth=st.sampled_from((320.0, 584.2, 586.0, 610.0)),
    shelves=st.lists(
        st.one_of(
            st.builds(ShelfSpec, at=st.integers(100, 550).map(float)),
            st.just(PINS),
            st.builds(ShelfSpec, low=st.integers(30, 200).map(float)),
        ),
        min_size=1,
        max_size=3,
    ),
    hands=st.lists(st.sampled_from(("left", "right")), min_size=3, max_size=3),
)
@settings(max_examples=20)
def test_pins_in_any_box(
    columns: int, overlay: Overlay, height: int, depth: float, shelves: list[ShelfSpec],
    hands: list[str],
) -> None:  # fmt: skip
    """The four corners are coplanar; every pin is inside its board, clear of all other holes."""
    fronts = [door(f"D{n}", n, hands[n - 1]) for n in range(1, columns + 1)]  # type: ignore[arg-type]
    layout = shelved(
        *fronts, shelves=tuple(shelves), columns=columns, overlay=overlay, height=height,
        depth=depth,
    )  # fmt: skip
    by_key = {(side.column, side.side): side for side in layout.sides}
    for column in range(1, columns + 1):
        left, right = by_key[column, "left"], by_key[column, "right"]
        assert pins(left) == pins(right)
        lines = {x for x, _ in pins(left)}
        rows = [{y for x, y in pins(left) if x == line} for line in lines]
        assert all(row == rows[0] for row in rows)
    for side in layout.sides:
        board = rectangle(0, 0, side.depth, side.height)
        holes = [(f, h, Point(h.x, h.y)) for f in side.fittings for h in f.holes]
        for _, hole, place in holes:
            if hole.purpose != "shelf":
                continue
            assert board.contains(place.buffer(2.5))
            near = [other.distance(place) for _, h, other in holes if h is not hole]
            assert min(near, default=99.0) >= 12.5 - 1e-6


OPEN_BOX = """schema = 1
[[box]]
id = "W1"
kind = "wall"
width = 600
height = 720
depth = 320
"""


def test_an_open_box_has_pins_and_says_that_it_assumes_them(tmp_path: Path) -> None:
    """No front, no hinge, nothing stated: rows in both sides, stamped; a fixed shelf is enough."""
    layout = lay_out(read(tmp_path, OPEN_BOX))
    assert [{f.kind for f in side.fittings} for side in layout.sides] == [{"shelf"}] * 2
    stamped = [
        each
        for side in layout.sides
        for each in side.assumed
        if each.key in ("box.W1.shelf", "box.W1.pins")
    ]
    assert len(stamped) == 4
    assert any("W1: no front, so an adjustable shelf" in text for text in assumed_lines(layout.job))
    fixed = OPEN_BOX + "[[box.shelf]]\nat = 300\n"
    assert not any(side.fittings for side in lay_out(read(tmp_path, fixed)).sides)


def test_pins_whose_heights_nobody_gave_are_stamped(tmp_path: Path) -> None:
    """With from and to nothing is assumed."""
    free = lay_out(read(tmp_path, OPEN_BOX + "[[box.shelf]]\nadjustable = true\n"))
    assert "box.W1.pins" in {each.key for each in free.sides[0].assumed}
    assert "box.W1.shelf" not in {each.key for each in free.sides[0].assumed}
    given = OPEN_BOX + "[[box.shelf]]\nadjustable = true\nfrom = 200\nto = 500\n"
    stated = lay_out(read(tmp_path, given))
    assert "box.W1.pins" not in {each.key for each in stated.sides[0].assumed}


def test_the_rear_row_beside_a_partition() -> None:
    """The uneven box's second column: 584.2 - 37 = 547.2 on its partition too, whose rear edge
    is the back's front, 584.2 - 19 - 6 = 559.2: 12 behind the row."""
    for side in laid_out(uneven.UNEVEN).sides:
        rows = {x for x, _ in pins(side)}
        assert rows == ({37.0, 547.2} if side.column == 2 else set())
        if side.column == 2:
            assert side.depth - 547.2 == pytest.approx(12.0 if side.partition else 37.0)
