"""Boxes of several columns: widths, fronts, both faces of each partition.

The geometry is checked by shapely, an independent library: holes as discs, boards as rectangles.
"""

from itertools import combinations, pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely import Point
from shapely.geometry import box as rectangle

from jigs.box.parts import Layout, Side
from jigs.given.job import BoxSpec, ColumnSpec, FrontSpec, Overlay, ShelfSpec, Use
from jigs.ground.geometry import Hand
from jigs.layout.layout import lay_out
from tests.jigs.jobtext import SMALL, faults_of, read
from tests.jigs.sample import MATERIAL, PULL, SLIDE, UNDER_COUNTER, box, codes, front_of, job
from tests.jigs.test_overlay import HINGES
from tests.said import remedy_of

TS = 18.3
G = 3.2


def door(name: str, column: int = 1, hinged: Hand = "left", **given: object) -> FrontSpec:
    """Give a door before a column."""
    return FrontSpec(id=name, **{"kind": "door", "hinged": hinged, "column": column, **given})  # type: ignore[arg-type]


def drawer(name: str, column: int = 1, **given: object) -> FrontSpec:
    """Give a drawer before a column."""
    return FrontSpec(id=name, **{"kind": "drawer", "column": column, **given})  # type: ignore[arg-type]


def columned(
    *fronts: FrontSpec,
    columns: tuple[ColumnSpec, ...] = (ColumnSpec(), ColumnSpec()),
    overlay: Overlay = "full",
    partition: float | None = None,
    width: float = 914.4,
    height: float = 774.7,
    shelves: tuple[ShelfSpec, ...] = (),
) -> Layout:
    """Lay out a box of columns on hinges of every kind."""
    spec: BoxSpec = replace(
        box(*fronts, width=width, height=height, depth=610.0),
        columns=columns,
        overlay=overlay,
        shelves=shelves,
    )
    made = job(
        spec, reveal=UNDER_COUNTER, material=replace(MATERIAL, partition=partition),
        use=Use(hinge="full", slide=SLIDE.name, drawer_pull=PULL.name, door_pull=PULL.name),
        assumed=frozenset({"use.hinge"}),
    )  # fmt: skip
    hinges = {f"cup35-{kind}": replace(record, name=f"cup35-{kind}")
              for kind, record in HINGES.items()}  # fmt: skip
    return lay_out(replace(made, hinges=hinges))


def face(layout: Layout, column: int, hand: Hand) -> Side:
    """Give one drilled face."""
    return next(s for s in layout.sides if (s.column, s.side) == (column, hand))


def test_widths_of_fronts_over_partitions() -> None:
    """End front c - r - g/2, inner front c(i+1) - c(i) - g (front sizes, common practice)."""
    widths = (ColumnSpec(width=300.0), ColumnSpec(width=250.0), ColumnSpec())
    layout = columned(door("A"), door("B", 2), door("C", 3), columns=widths)
    centres = (TS + 300 + TS / 2, TS + 300 + TS + 250 + TS / 2)
    a, b, c = (front_of(layout, name) for name in "ABC")
    assert a.width == pytest.approx(centres[0] - 1.6 - G / 2)
    assert b.width == pytest.approx(centres[1] - centres[0] - G)
    assert c.width == pytest.approx(914.4 - centres[1] - 1.6 - G / 2)
    assert b.place.x - (a.place.x + a.width) == pytest.approx(G)
    assert c.place.x - (b.place.x + b.width) == pytest.approx(G)
    assert c.place.x + c.width == pytest.approx(914.4 - 1.6)


@pytest.mark.parametrize("partition", [16.0, 25.0])
def test_fronts_meet_over_the_middle_of_a_partition_of_another_board(partition: float) -> None:
    """Each ends half the gap short of the partition's middle, wherever its faces are (derived)."""
    columns = (ColumnSpec(width=300.0), ColumnSpec())
    layout = columned(door("A"), door("B", 2), columns=columns, partition=partition)
    middle = TS + 300 + partition / 2
    a, b = front_of(layout, "A"), front_of(layout, "B")
    assert a.place.x + a.width == pytest.approx(middle - G / 2)
    assert b.place.x == pytest.approx(middle + G / 2)


def test_the_hinge_on_a_partition_is_a_half_one() -> None:
    """Needed (tp - g)/2 = 7.55; C0 5.5, K 5, Hp 3 gives 7.5 (worked example of the notes)."""
    layout = columned(door("A", hinged="right"), door("B", 2, hinged="right"))
    a, b = front_of(layout, "A").hinge, front_of(layout, "B").hinge
    assert a is not None
    assert b is not None
    assert (a.record, a.tab, a.plate) == ("cup35-half", 5.0, 3.0)
    assert a.error == pytest.approx(7.5 - 7.55)
    assert b.record == "cup35-full"
    assert b.error == pytest.approx(17.0 - 16.7)


def test_both_faces_of_a_partition() -> None:
    """The left face is the right side of column 1; heights count from its own bottom end."""
    layout = columned(door("A", hinged="right"), drawer("D", 2))
    assert [(s.board, s.column, s.side) for s in layout.sides] == [
        ("B1-SIDE-L", 1, "left"), ("B1-PARTITION-1", 1, "right"),
        ("B1-PARTITION-1", 2, "left"), ("B1-SIDE-R", 2, "right"),
    ]  # fmt: skip
    left, right = face(layout, 1, "right"), face(layout, 2, "left")
    assert left.code == right.code
    assert left.height == pytest.approx(774.7 - 2 * TS)
    assert left.depth == pytest.approx(610 - 19 - 6)
    assert {f.part for f in left.fittings} == {"A"}
    assert {f.part for f in right.fittings} == {"D"}
    door_a = front_of(layout, "A")
    cups = sorted(h.y + door_a.place.y for h in door_a.holes if h.purpose == "cup")
    lows = sorted(h.y for h in left.holes)[::2]
    assert [low + 16 + left.ends.base for low in lows] == pytest.approx(cups)
    assert right.holes[0].y + TS == pytest.approx(face(layout, 2, "right").holes[0].y)


@pytest.mark.parametrize(("partition", "depth"), [(18.3, None), (25.0, 12.0), (24.9, None)])
def test_plates_back_to_back(partition: float, depth: float | None) -> None:
    """2 x 12 + 1 <= 25 passes; in a thinner board they are one hole, bored through once."""
    layout = columned(door("A", hinged="right"), door("B", 2), partition=partition)
    for key in ((1, "right"), (2, "left")):
        assert {h.depth for h in face(layout, *key).holes} == {depth}
    assert ("bored-through-once" in codes(layout, "B1-PARTITION-1")) is (depth is None)


@pytest.mark.parametrize(
    ("doors", "pins", "what"),
    [(False, True, "pins"), (True, False, "screws"), (True, True, "screws and pins")],
)
def test_pins_are_not_called_screws(doors: bool, pins: bool, what: str) -> None:
    """What two faces share is bored through once: pins, screws or both then stay under half."""
    fronts = (
        (door("A", hinged="right"), door("B", 2))
        if doors
        else (FrontSpec(id="A", kind="opening"), FrontSpec(id="B", kind="opening", column=2))
    )
    shelves = (ShelfSpec(low=300.0, high=450.0),) if pins else ()
    layout = columned(*fronts, partition=18.3, shelves=shelves)
    (found,) = [p for p in layout.problems if p.code == "bored-through-once"]
    assert remedy_of(found).startswith(f"keep the {what} under ")
    assert ("through-bolt" in remedy_of(found)) is (what != "pins")


def test_slides_that_meet_askew_are_refused() -> None:
    """Slide lines 3 apart on the two faces of a thin partition run into each other."""
    fronts = (drawer("A", height=200.0), drawer("B"), drawer("C", 2, height=203.0), drawer("D", 2))
    assert "faces-meet" in codes(columned(*fronts), "C")
    assert "faces-meet" not in codes(columned(*fronts, partition=25.0))


def test_doors_step_aside_for_slides_behind() -> None:
    """A door's plates keep off the slides in the other face, or share their holes."""
    layout = columned(door("A", hinged="right"), drawer("C", 2, height=120.0), drawer("D", 2))
    assert not front_of(layout, "A").withheld
    assert "faces-meet" not in codes(layout)


def test_a_drawer_across_two_columns() -> None:
    """It runs between the sides; the partition ends at a fixed shelf below its front."""
    layout = columned(
        drawer("D", height=160.0, span=2), door("A", hinged="right"), door("B", 2, hinged="right")
    )
    wide = front_of(layout, "D")
    assert wide.width == pytest.approx(914.4 - 3.2)
    assert wide.drawer is not None
    assert wide.drawer.width == pytest.approx(914.4 - 2 * TS - 42 + 2 * 15.9, abs=25.4 / 16)
    left = face(layout, 1, "right")
    assert left.height == pytest.approx(wide.place.y - TS - TS)
    assert {f.part for f in left.fittings} == {"A"}
    for key in ((1, "left"), (2, "right")):
        assert "D" in {f.part for f in face(layout, *key).fittings}
    shelf = (wide.place.y - TS, wide.place.y)
    a = front_of(layout, "A")
    for hole in (h for h in a.holes if h.purpose == "cup"):
        assert not shelf[0] - 35 < hole.y + a.place.y < shelf[1] + 35
    assert codes(layout) == []


def test_a_drawer_stands_in_the_middle_of_its_column() -> None:
    """An end front is not in the middle of its column; the drawer box is."""
    layout = columned(drawer("D"), door("B", 2, hinged="right"))
    front = front_of(layout, "D")
    assert front.drawer is not None
    opening = (914.4 - 3 * TS) / 2
    at = front.place.x + front.drawer.x - TS
    assert at == pytest.approx((opening - front.drawer.width) / 2)


def test_columns_that_do_not_close() -> None:
    """Given widths that overrun the box hold all its fronts back."""
    wide = (ColumnSpec(width=500.0), ColumnSpec(width=500.0))
    layout = columned(door("A"), door("B", 2), columns=wide)
    assert codes(layout, "B1") == ["reveals-do-not-close"]
    assert all(front.withheld for front in layout.fronts)
    exact = (ColumnSpec(width=400.0), ColumnSpec(width=914.4 - 3 * TS - 400))
    assert "reveals-do-not-close" not in codes(columned(door("A"), door("B", 2), columns=exact))


def test_fronts_across_must_meet_level() -> None:
    """A drawer above columns of different heights would stand askew."""
    layout = columned(
        drawer("D", height=160.0, span=2), door("A", height=600.0), door("B", 2, height=590.0)
    )
    assert codes(layout, "D")[0] == "reveals-do-not-close"


def test_two_doors_hinged_on_one_partition_need_both_reveals() -> None:
    """T 19.05: 2 x 0.91; a gap of 1.6 is less."""
    tight = replace(UNDER_COUNTER, between=1.6)
    spec = replace(
        box(door("A", hinged="right"), door("B", 2), width=914.4, depth=610.0),
        columns=(ColumnSpec(), ColumnSpec()),
    )
    layout = lay_out(job(spec, reveal=tight, hinge=HINGES["half"]))
    assert "hinge-to-hinge" in codes(layout, "B")
    assert "hinge-to-hinge" not in codes(columned(door("A", hinged="right"), door("B", 2)))


COLUMNED = SMALL.replace(
    'kind = "base"', 'kind = "base"\ncolumns = [{width = 200}, {share = 2}, {}]'
)


def test_columns_are_read(tmp_path: Path) -> None:
    """Widths, shares, and where a front stands."""
    text = f'{COLUMNED}[[box.front]]\nkind = "door"\ncolumn = 2\nspan = 2\nhinged = "r"\n'
    (spec,) = read(tmp_path, text).boxes
    assert spec.columns == (ColumnSpec(width=200.0), ColumnSpec(share=2.0), ColumnSpec())
    assert [(f.column, f.span) for f in spec.fronts] == [(1, 1), (2, 2)]


@pytest.mark.parametrize(
    ("front", "words"),
    [
        ("column = 4", "no such column (4 given); box B1 has 3"),
        ("column = 3\nspan = 2", "beyond the last column (2 given)"),
        ("span = 2", "needs a height"),
        ('reveal_bottom = -3\n[[box.front]]\nkind = "door"', "below 0 (-3 given)"),
        ('reveal_bottom = 3\n[[box.front]]\nkind = "door"\nreveal_top = 4', "give one gap once"),
    ],
)
def test_fronts_that_cannot_stand_so(tmp_path: Path, front: str, words: str) -> None:
    """Each slip is a fault of the file, with what is allowed."""
    faults = faults_of(tmp_path, f"{COLUMNED}{front}\n" + (
        '[[box.front]]\nkind = "door"\n' if front == "span = 2" else ""))  # fmt: skip
    assert len(faults) == 1
    assert words in faults[0]


heights = st.sampled_from((None, 140.0, 172.0, 204.0))


@st.composite
def columns_of_fronts(draw: st.DrawFn) -> tuple[tuple[FrontSpec, ...], int]:
    """Two to four columns of doors and drawers, at times below a drawer across them."""
    count = draw(st.integers(2, 4))
    fronts: list[FrontSpec] = []
    if draw(st.booleans()):
        fronts.append(drawer("TOP", span=count, height=draw(st.sampled_from((128.0, 160.0)))))
    for number in range(1, count + 1):
        rows = draw(st.integers(1, 3))
        for row in range(1, rows + 1):
            name = f"C{number}-{row}"
            if row < rows:
                fronts.append(drawer(name, number, height=draw(heights)))
            elif draw(st.booleans()):
                hand: Hand = draw(st.sampled_from(("left", "right")))
                fronts.append(door(name, number, hand))
            else:
                fronts.append(drawer(name, number))
    return tuple(fronts), count


@pytest.mark.slow
@given(
    made=columns_of_fronts(),
    overlay=st.sampled_from(("full", "full", "inset")),
    partition=st.sampled_from((None, 16.0, 19.0, 25.0)),
    height=st.integers(650, 1100),
)
@settings(max_examples=30)
def test_any_box_of_columns(
    made: tuple[tuple[FrontSpec, ...], int], overlay: Overlay, partition: float | None, height: int
) -> None:
    """Holes stand inside their boards and keep apart; cups and plates agree; faces do not meet."""
    fronts, count = made
    layout = columned(
        *fronts, columns=(ColumnSpec(),) * count, overlay=overlay, partition=partition,
        width=500.0 * count, height=height,
    )  # fmt: skip
    shapes = [
        rectangle(f.place.x, f.place.y, f.place.x + f.width, f.place.y + f.height)
        for f in layout.fronts
        if not f.withheld
    ]
    for one, other in combinations(shapes, 2):
        assert one.distance(other) >= G - 1e-6
    for side in layout.sides:
        board = rectangle(0, 0, side.depth, side.height).buffer(1e-6)
        placed = [
            (fitting, hole, Point(hole.x, hole.y))
            for fitting in side.fittings
            for hole in fitting.holes
        ]
        for _, hole, place in placed:
            assert board.contains(place.buffer(hole.diameter / 2))
        for (fit, _, here), (other_fit, _, there) in combinations(placed, 2):
            apart = here.distance(there)
            assert fit is other_fit or apart <= 0.2 + 1e-6 or apart >= 12.5 - 1e-6
    by_key = {(s.column, s.side): s for s in layout.sides}
    for column in range(1, count):
        left, right = by_key.get((column, "right")), by_key.get((column + 1, "left"))
        if left is None or right is None:
            continue
        for a in left.holes:
            for b in right.holes:
                meets = Point(a.x, a.y).buffer(2.5).intersects(Point(b.x, b.y).buffer(2.5))
                deep = (a.depth or 99) + (b.depth or 99) + 1 > left.thickness
                assert not (meets and deep) or (a.depth is None and b.depth is None)
    for front in layout.fronts:
        if front.withheld:
            assert not any(f.part == front.id for s in layout.sides for f in s.fittings)
        elif front.kind == "drawer":
            ends = [
                by_key[front.place.column, "left"],
                by_key[front.place.column + front.place.span - 1, "right"],
            ]
            lines = [
                [h.y + s.ends.base for f in s.fittings if f.part == front.id for h in f.holes]
                for s in ends
            ]
            assert lines[0] == pytest.approx(lines[1], abs=1e-6)
            assert lines[0]
        elif front.hinged:
            key = (
                front.place.column
                if front.hinged == "left"
                else front.place.column + front.place.span - 1
            )
            side = by_key[key, front.hinged]
            plates = sorted(
                (f.holes[0].y + f.holes[1].y) / 2 + side.ends.base
                for f in side.fittings if f.part == front.id
            )  # fmt: skip
            cups = sorted(h.y + front.place.y for h in front.holes if h.purpose == "cup")
            assert plates == pytest.approx(cups, abs=1e-6)


def test_neighbours_in_a_column_are_told_apart() -> None:
    """Fronts of one column follow each other without a break."""
    layout = columned(drawer("A"), drawer("B"), drawer("C", 2))
    stack = [front_of(layout, name) for name in "AB"]
    for upper, lower in pairwise(stack):
        assert upper.place.y - (lower.place.y + lower.height) == pytest.approx(G)
