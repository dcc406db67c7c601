"""Which labels a job has: one for every part, in the order of assembly or of cutting."""

from collections import Counter

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_job, cut_list
from jigs.given.job import FrontSpec, Job
from jigs.given.stated import BoxRead
from jigs.layout.layout import lay_out
from templates.labels.labellist import LabelOrder, list_labels
from tests.jigs.sample import box, lay
from tests.jobs import jobs
from tests.templates.kitchens import galley, labels_of, workshop


def names(layout: Layout, **wishes: object) -> list[str]:
    return [words.part for words in labels_of(layout, **wishes)]  # type: ignore[arg-type]


def check_every_part_has_its_label_and_each_piece_as_many_as_it_is_cut(made: Job) -> None:
    layout = lay_out(made)
    pieces = cut_list(layout)
    cut = cut_job(layout)
    wanted = Counter({piece.id: piece.count for piece in cut.to_cut})
    wanted.update(front.id for front in layout.fronts)
    wanted.update(front.drawer.id for front in layout.fronts if front.drawer)
    wanted.update(rollout.id for rollout in layout.rollouts)
    boards = {side.board for side in layout.sides if side.holes or side.missing}
    boards |= {p.id for p in pieces if p.id in cut.standing and p.kind in ("side", "partition")}
    wanted.update(boards - {piece.id for piece in cut.to_cut})
    orders: tuple[LabelOrder, ...] = ("box", "cut")
    for order in orders:
        labels = list_labels(layout, pieces, (), order=order)
        assert Counter(words.part for words in labels) == wanted


@given(jobs())
@settings(max_examples=8)
def test_every_part_has_its_label_and_each_piece_as_many_as_it_is_cut(made: Job) -> None:
    """Fronts, drawer boxes, rollouts and the whole cut list, in either order."""
    check_every_part_has_its_label_and_each_piece_as_many_as_it_is_cut(made)


@pytest.mark.slow
@given(jobs())
@settings(max_examples=25)
def test_every_part_has_its_label_and_each_piece_as_many_in_many_jobs(
    made: Job,
) -> None:
    """The same, at length."""
    check_every_part_has_its_label_and_each_piece_as_many_as_it_is_cut(made)


def test_the_order_of_assembly() -> None:
    """The toe platform first, then box by box sides, what stands between them, back and nailer,
    each drawer box after its pieces; fillers after the boxes of their wall, fronts at the end."""
    listed = names(workshop())
    wanted = [
        "NORTH-TOE-1-FRONT", "T1-SIDE-L", "T1-SIDE-R", "T1-BOTTOM", "T1-FIXED-1", "T1-TOP",
        "T1-BACK", "T1-NAILER-1", "T1-SHELF-1", "B1-SIDE-L", "B1-1-BOX-SIDE", "B1-1-BOX-BOTTOM",
        "B1-1-BOX", "B1-2-BOX-SIDE", "B3-BLIND", "B3-BACK", "W1-SIDE-L", "B1-PANEL-R",
        "NORTH-FILLER-L", "ISLAND-TOE-1-FRONT", "S1-SIDE-L", "S2-ROLLOUT-1-SIDE", "S2-ROLLOUT-1",
        "ISLAND-BACK-1", "L1-SIDE-L", "T1-1", "L1-1",
    ]  # fmt: skip
    places = [listed.index(name) for name in wanted]
    assert places == sorted(places)


def test_the_order_of_cutting_goes_by_thickness_then_length() -> None:
    """The thickest and longest come first, box sides among the others."""
    layout = workshop()
    pieces = {piece.id: piece for piece in cut_list(layout)}
    cut = [name for name in names(layout, order="cut") if name in pieces]
    sizes = [(pieces[name].thickness, pieces[name].length) for name in cut]
    assert sizes == sorted(sizes, reverse=True)
    assert cut.index("T1-SIDE-L") < cut.index("B1-SIDE-L") < cut.index("B1-BACK")


def test_pieces_and_fronts_make_up_all() -> None:
    """Pieces are printed weeks before the fronts arrive; drawer boxes are among them."""
    layout = workshop()
    pieces, fronts = names(layout, kinds="pieces"), names(layout, kinds="fronts")
    assert pieces + fronts == names(layout)
    assert set(fronts) == {front.id for front in layout.fronts}
    assert {"B1-1-BOX", "S2-ROLLOUT-1"} <= set(pieces)


@pytest.mark.parametrize(
    ("wish", "labels"),
    [
        ({"B3-2"}, ["B3-2"]),
        (
            {"B3-1"},
            ["B3-1-BOX-SIDE", "B3-1-BOX-SIDE", "B3-1-BOX-FRONT", "B3-1-BOX-BACK",
             "B3-1-BOX-BOTTOM", "B3-1-BOX", "B3-1"],
        ),
        ({"B3-1-BOX-BACK"}, ["B3-1-BOX-BACK"]),
        ({"w1-side-l"}, ["W1-SIDE-L"]),
        ({"B3-BOTTOM", "NORTH-TOE-1-BACK"}, ["NORTH-TOE-1-BACK", "B3-BOTTOM"]),
        ({"B77"}, []),
        (None, None),
        ({"NORTH"}, None),
    ],
)  # fmt: skip
def test_only_picks_parts_pieces_boxes_and_walls(
    wish: set[str] | None, labels: list[str] | None
) -> None:
    """A front brings its drawer box and what that is cut from; None is everything."""
    layout = galley()
    assert names(layout, only=wish) == (names(layout) if labels is None else labels)


def test_an_appliances_place_has_no_boards_to_label() -> None:
    """There is nothing to cut but its panel, which is a front."""
    place = box(FrontSpec(id="B4-1", kind="panel"), name="B4", kind="open")
    assert names(lay(place)) == ["B4-1"]


def test_a_box_of_a_bare_list_says_that_its_sizes_are_assumed() -> None:
    """Nobody gave its depth; its fronts stand as listed."""
    layout = lay(
        replace(box(FrontSpec(id="B1-1", kind="door", hinged="left")), read=BoxRead(inferred=True))
    )
    for words in labels_of(layout):
        stamped = any(line.ways[0].startswith("SIZE ASSUMED") for line in words.lines)
        assert stamped == (words.part != "B1-1")


def test_a_built_box_has_labels_for_what_is_still_drilled() -> None:
    """Its sides and its drawer boxes' pieces; what stands is not labelled for the saw."""
    drawer = FrontSpec(id="B1-1", kind="drawer")
    layout = lay(replace(box(drawer), built=True), box(name="B2"))
    for order in ("box", "cut"):
        listed = names(layout, order=order)
        own = [name for name in listed if name.startswith("B1-") and "BOX" not in name]
        assert own == ["B1-SIDE-L", "B1-SIDE-R", "B1-1"]
        assert {"B1-1-BOX-SIDE", "B1-1-BOX", "B2-BOTTOM"} <= set(listed)
    assert names(layout, order="cut").index("B2-BACK") < names(layout, order="cut").index(
        "B1-SIDE-L"
    )
