"""What is printed of a part that is ready neither moves nor meets another's holes, once the part
that is held back beside it is settled."""

from collections.abc import Iterable
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.box.plan import plan_box
from jigs.given.job import ColumnSpec, FrontSpec, Grid, Job, ShelfSpec, Use
from jigs.given.stated import Boring, DrawerSize, Hung, OwnReveals
from jigs.ground.geometry import Hand, Hole
from jigs.layout.layout import lay_out
from tests.holefaults import faults_in_holes
from tests.jigs.box.test_columns import door, drawer
from tests.jigs.sample import MATERIAL, PULL, SLIDE, box, codes, front_of, job
from tests.jigs.test_overlay import HINGES
from tests.jobs import jobs
from tests.said import fact_of

HANDS: tuple[Hand, Hand] = ("left", "right")
Drilled = dict[tuple[str, ...], set[tuple[float, float, float]]]


def handless(name: str, column: int = 1, **given: object) -> FrontSpec:
    """Give a door before a column, and say nothing of its hand."""
    return FrontSpec(id=name, **{"kind": "door", "column": column, **given})  # type: ignore[arg-type]


def parted(
    *fronts: FrontSpec,
    hinges: bool = False,
    partition: float | None = None,
    shelf: ShelfSpec | None = None,
) -> Job:
    """Give a box of two columns, the plates on the grid or not."""
    spec = replace(
        box(*fronts, width=914.4, depth=610.0),
        columns=(ColumnSpec(), ColumnSpec()),
        shelves=() if shelf is None else (shelf,),
    )
    made = job(
        spec,
        grid=Grid(hinges=hinges),
        material=replace(MATERIAL, partition=partition),
        use=Use(hinge="full", slide=SLIDE.name, drawer_pull=PULL.name, door_pull=PULL.name),
        assumed=frozenset({"use.hinge"}),
    )
    by_name = {f"cup35-{kind}": replace(r, name=f"cup35-{kind}") for kind, r in HINGES.items()}
    return replace(made, hinges=by_name)


def with_hands(made: Job, hands: dict[str, Hand]) -> Job:
    """State the hands of some doors."""
    return replace(
        made,
        boxes=tuple(
            replace(
                each,
                fronts=tuple(replace(f, hinged=hands.get(f.id, f.hinged)) for f in each.fronts),
            )
            for each in made.boxes
        ),
    )


def drilled(layout: Layout) -> Drilled:
    """Give every hole, by the part that it serves and the face it stands in."""
    found: Drilled = {}

    def add(key: tuple[str, ...], holes: Iterable[Hole]) -> None:
        found.setdefault(key, set()).update(
            (round(h.x, 6), round(h.y, 6), h.diameter) for h in holes
        )

    for front in layout.fronts:
        for hole in front.holes:
            add((front.id, hole.face), (hole,))
        if front.drawer is not None:
            add((front.id, "box"), front.drawer.holes)
    for side in layout.sides:
        for fitting in side.fittings:
            name = fitting.part or f"{side.box} pins"
            add((name, side.board, side.side), fitting.holes)
    return found


def check_settled(before: Layout, after: Layout) -> None:
    """Whatever was ready is ready still, each of its holes in its place; none meets another."""
    still, now = drilled(before), drilled(after)
    for unit in before.units:
        if not unit.withheld:
            assert not next(u for u in after.units if u.id == unit.id).withheld, unit.id
            for key, holes in still.items():
                if key[0] == unit.id:
                    assert now[key] == holes, key
    for key, holes in still.items():
        if key[0].endswith(" pins"):
            assert holes <= now[key], key
    assert faults_in_holes(after) == []


def settle(made: Job, names: list[str]) -> Layout:
    """State the hands of these doors in every way; give the layout without any."""
    before = lay_out(with_hands(made, {}))
    for hands in product(HANDS, repeat=len(names)):
        check_settled(before, lay_out(with_hands(made, dict(zip(names, hands, strict=True)))))
    return before


# --- worked examples --------------------------------------------------------------------------


def test_a_door_waits_for_the_one_that_would_move_its_hinges() -> None:
    """Grid off, sides 18.3: A, 771.5 high, takes 101.6; B, a reveal of 5 lower at its end, wants
    96.6 on the other face, 5 away: it must give way, once A hangs on the partition."""
    made = parted(handless("A"), door("B", 2, reveals=OwnReveals(bottom=-3.4)))
    before = settle(made, ["A"])
    right = lay_out(with_hands(made, {"A": "right"}))
    left = lay_out(with_hands(made, {"A": "left"}))
    heights = [
        next(h.y for h in front_of(each, "B").holes if h.purpose == "cup") for each in (left, right)
    ]
    assert heights[0] == pytest.approx(100.0)
    assert heights[1] != pytest.approx(100.0)
    assert front_of(before, "B").withheld
    (told,) = [p for p in before.problems if p.part == "B" and p.level == "error"]
    assert told.code == "neighbour-open"
    assert fact_of(told).startswith("waits for A: hand not stated")


@pytest.mark.parametrize(("lowest", "waits"), [(108.0, True), (148.0, False)])
def test_heights_given_by_hand_wait_for_a_door_whose_plates_they_would_meet(
    lowest: float, waits: bool
) -> None:
    """Hung right, A has plate holes at 83.35 and 115.35 in the other face of the partition. B's at
    its own height and 1.6, 16 down and up, keep its place: 8 from them it waits, clear of them it
    does not."""
    made = parted(handless("A"), door("B", 2, hung=Hung(hinges_at=(lowest, 600.0))), hinges=True)
    plan = plan_box(made, made.boxes[0])
    assert dict(plan.prospect.waits) == ({"B": ("A",)} if waits else {})


@pytest.mark.parametrize(
    ("fronts", "hinges"),
    [
        ((handless("A"), door("B", 2)), False),
        ((handless("A"), door("B", 2, reveals=OwnReveals(bottom=-3.4))), True),
        ((door("B", hinged="right"), handless("A", 2, reveals=OwnReveals(bottom=-3.4))), False),
        ((handless("A", reveals=OwnReveals(bottom=-3.4)), door("B", 2, hinged="right")), False),
    ],
    ids=["same places", "on the grid", "the held one gives way", "on another board"],
)
def test_a_door_that_keeps_its_places_is_ready(fronts: tuple[FrontSpec, ...], hinges: bool) -> None:
    """Whichever hand its neighbour gets, its holes are the same."""
    before = settle(parted(*fronts, hinges=hinges), ["A"])
    assert front_of(before, "A").withheld
    assert not front_of(before, "B").withheld


def test_slides_are_held_against_those_of_a_held_drawer_behind() -> None:
    """C's slides, 3 beside A's in a thin partition, meet them also while A's box is too wide."""
    fronts = (
        drawer("A", height=200.0, drawer_box=DrawerSize(drawer_width=480.0)), drawer("B"),
        drawer("C", 2, height=203.0), drawer("D", 2),
    )  # fmt: skip
    layout = lay_out(parted(*fronts))
    assert "drawer-too-wide" in codes(layout, "A")
    assert "faces-meet" in codes(layout, "C")
    assert not front_of(layout, "B").withheld


def test_a_drawer_waits_where_a_bored_door_may_hang_behind_it() -> None:
    """The supplier bored A for hinges at 60 and 660: on the partition its plates stand at 61.6,
    their lower holes at 45.6, and D's slide line at 51.3: 5.7 apart, they meet."""
    bored = handless(
        "A", boring=Boring(bored=True, bored_tab=5.0), hung=Hung(hinges_at=(60.0, 660.0))
    )
    made = parted(bored, drawer("C", 2, height=300.0), drawer("D", 2))
    before = lay_out(made)
    assert codes(before, "D").count("neighbour-open") == 1
    assert front_of(before, "D").withheld
    assert not front_of(before, "C").withheld
    left = lay_out(with_hands(made, {"A": "left"}))
    assert not front_of(left, "D").withheld


@pytest.mark.parametrize("hinges", [True, pytest.param(False, marks=pytest.mark.slow)])
def test_pins_leave_room_for_either_hand(hinges: bool) -> None:
    """What is drilled for shelves stays; pins that depend on the hand come when it is stated."""
    made = parted(
        handless("A", reveals=OwnReveals(bottom=2.0)),
        door("B", 2),
        hinges=hinges,
        shelf=ShelfSpec(count=2),
    )
    before = settle(made, ["A"])
    assert drilled(before)["B1 pins", "B1-PARTITION-1", "right"]


def test_a_drawer_without_a_slide_keeps_doors_behind_it_waiting() -> None:
    """Nobody knows where its holes will be; those that a door does not share a board with stay."""
    made = parted(drawer("A", height=400.0), drawer("D"), door("B", 2))
    layout = lay_out(replace(made, use=replace(made.use, slide=None)))
    assert front_of(layout, "B").withheld
    (told,) = [p for p in layout.problems if p.part == "B" and p.code == "neighbour-open"]
    assert "slide not stated" in fact_of(told)
    other = parted(drawer("A", height=400.0), drawer("D"), door("B", 2, hinged="right"))
    layout = lay_out(replace(other, use=replace(other.use, slide=None)))
    assert not front_of(layout, "B").withheld


def test_many_open_doors_at_one_board_are_not_tried_in_every_way() -> None:
    """Nine doors without a hand in a tall box: what stands beside them waits, at once."""
    fronts = [handless(f"A{n}", height=220.0) for n in range(9)]
    spec = replace(
        box(*fronts, door("B", 2), width=914.4, height=2100.0, depth=610.0, kind="tall"),
        columns=(ColumnSpec(), ColumnSpec()),
    )
    layout = lay_out(job(spec, hinge=HINGES["half"]))
    assert front_of(layout, "B").withheld
    assert "neighbour-open" in codes(layout, "B")


# --- whatever a kitchen has -------------------------------------------------------------------


@st.composite
def jobs_with_open_doors(draw: st.DrawFn, most_boxes: int) -> tuple[Job, list[str]]:
    """A job of which one to three doors have no hand, those of parted boxes first."""
    made = draw(jobs(most_boxes))
    single = [
        front.id
        for each in sorted(made.boxes, key=lambda b: -len(b.columns))
        for front in each.fronts
        if front.kind == "door"
    ]
    open_ = single[: draw(st.integers(1, 3))] if single else []
    hands: dict[str, None] = dict.fromkeys(open_)
    return replace(
        made,
        boxes=tuple(
            replace(
                each,
                fronts=tuple(replace(f, hinged=None) if f.id in hands else f for f in each.fronts),
            )
            for each in made.boxes
        ),
    ), open_


@pytest.mark.slow
@given(jobs_with_open_doors(most_boxes=2))
@settings(max_examples=40)
def test_ready_parts_of_many_jobs_stay_as_they_are(made: tuple[Job, list[str]]) -> None:
    """State the hands either way: nothing that was ready moves, and no two holes meet."""
    settle(*made)
