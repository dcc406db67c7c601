"""Parts with the same holes: what shares a set of sheets, and what stands on it."""

import json
import re
from collections.abc import Iterable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from jigs.geometry import Hole, collect_holes
from jigs.job import BoxSpec, FrontSpec, Job
from jigs.layout import lay_out
from jigs.parts import Front, Layout
from jigs.printer import Printer
from templates.alike import MOST, Batch, join_names, split_sets
from templates.faces import FaceView
from templates.marks import Qr, Text
from templates.paper import PAPERS, Paper
from templates.payload import LONGEST
from templates.pdf import write_pdf
from templates.sheetdata import sheets_json
from templates.sheets import Sheets, make_sheets
from tests.carddata import same_numbers
from tests.cardreading import faults_on_paper
from tests.clashes import clashes_of_marks
from tests.jigs.sample import box, lay
from tests.jobs import jobs, papers, renamed, repeated
from tests.readback import read_pages

COMMON = PAPERS["common"]
BASE = box(
    FrontSpec(id="B3-1", kind="drawer", height=152.4),
    FrontSpec(id="B3-2", kind="door", height=613.0, hinged="left"),
    name="B3",
)


def several(times: int, base: BoxSpec = BASE) -> Layout:
    """A job of boxes that are alike: B3, B3R, B3S, ..."""
    return lay(*(renamed(base, number) for number in range(times)))


def sheets(layout: Layout, paper: Paper = COMMON) -> Sheets:
    return make_sheets(layout, paper, same=True)


def batches(layout: Layout) -> list[Batch]:
    return [batch for batch, _ in sheets(layout)._planned()]


def sets(layout: Layout, face: str = "") -> list[tuple[str, ...]]:
    """The parts of each set, or of each set for one face."""
    return [
        tuple(part for _, part in batch.parts)
        for batch in batches(layout)
        if not face or face in [view.face for view in batch.views]
    ]


def words_of(marks: Iterable[object]) -> str:
    return " ".join(mark.text for mark in marks if isinstance(mark, Text))


# --- what shares, and what does not -----------------------------------------------------------


def test_boxes_alike_share_all_their_sheets() -> None:
    """Fronts, drawer boxes and sides; left and right sides mirror each other and stay apart."""
    assert sets(several(2)) == [
        ("B3-1", "B3R-1"),
        ("B3-1-BOX", "B3R-1-BOX"),
        ("B3-2", "B3R-2"),
        ("B3-SIDE-L", "B3R-SIDE-L"),
        ("B3-SIDE-R", "B3R-SIDE-R"),
    ]


def changed(layout: Layout, part: str, **values: object) -> Layout:
    """Give the layout with some values of one front another."""
    fronts = tuple(
        replace(front, **values) if front.id == part else front  # type: ignore[arg-type]
        for front in layout.fronts
    )
    return replace(layout, fronts=fronts)


def with_holes(front: Front, **values: object) -> Front:
    """Give a front with one of its holes in the back changed."""
    (fitting, *others) = front.fittings
    hole: Hole = replace(fitting.holes[0], **values)  # type: ignore[arg-type]
    return replace(front, fittings=(replace(fitting, holes=(hole, *fitting.holes[1:])), *others))


DOOR = next(front for front in several(2).fronts if front.id == "B3R-2")


@pytest.mark.parametrize(
    "values",
    [
        {"width": DOOR.width - 0.1},
        {"height": DOOR.height + 0.001},
        {"thickness": DOOR.thickness - 0.1},
        {"fittings": with_holes(DOOR, depth=12.5).fittings},
        {"fittings": with_holes(DOOR, diameter=26.0).fittings},
        {"fittings": with_holes(DOOR, x=23.0).fittings},
        {"fittings": (replace(DOOR.fittings[0], record="spare"), *DOOR.fittings[1:])},
        {"hinged": "right"},
        {"edge_radius": 2.0},
        {"reversible": not DOOR.reversible},
        {"note": "the odd one"},
        {"assumed": ("front thickness 19.1 mm",)},
        {"bored": True},
    ],
    ids=lambda values: next(iter(values)),
)
def test_what_a_sheet_says_otherwise_takes_a_sheet_of_its_own(values: dict[str, Any]) -> None:
    """Size, thickness, a hole's place, bore and depth, its hinge, hand, edge, the ladder, what
    was noted or assumed."""
    layout = changed(several(3), "B3R-2", **values)
    found = sets(layout, "back")
    assert ("B3R-2",) in found
    assert ("B3-2", "B3S-2") in found


@pytest.mark.parametrize("values", [{"finish": "blue"}, {"gap_top": 9.0}, {"code": "H9D5"}])
def test_what_has_nothing_to_do_with_the_holes_is_said_part_by_part(
    values: dict[str, Any],
) -> None:
    """Another finish, another gap; of different codes each stands at its ID."""
    layout = changed(several(3), "B3R-2", **values)
    assert ("B3-2", "B3R-2", "B3S-2") in sets(layout)
    said = " ".join(words_of(sheet.page.marks) for sheet in sheets(layout) if sheet.part == "B3-2")
    if "finish" in values:
        assert "B3R-2: Finish: blue." in said
    if "gap_top" in values:
        assert "B3R-2: Gaps here:" in said
        assert "B3-2, B3S-2: Gaps here:" in said
    if "code" in values:
        assert ", own codes" in said
        assert "code H9D5" in said
        assert "B3R-2 (H9D5)" in said


def test_a_figure_is_never_taken_for_a_name() -> None:
    """Fronts called 2 and 3 that want plates of 2 and 3 mm: the figures stay, and differ."""
    fronts = [replace(BASE.fronts[1], id=name, hinge=None, height=None) for name in ("2", "3", "4")]
    boxes = [replace(renamed(BASE, n), fronts=(front,)) for n, front in enumerate(fronts)]
    layout = lay(*boxes)
    (choice,) = {front.hinge for front in layout.fronts}
    assert choice is not None
    for first, plates in (("2", (2.0, 3.0, 3.0)), ("3", (3.0, 3.0, 3.0))):
        odd = layout
        for front, plate in zip(layout.fronts, plates, strict=True):
            odd = changed(odd, front.id, hinge=replace(choice, plate=plate))
        together = next(parts for parts in sets(odd, "back") if len(parts) > 1)
        assert together == (("3", "4") if first == "2" else ("2", "3", "4"))
    assert ("B3-SIDE-L", "B3R-SIDE-L", "B3S-SIDE-L") in sets(layout)
    assert "high for 2, 3, 4." in " ".join(words_of(s.page.marks) for s in sheets(layout))


def test_faces_share_each_for_itself() -> None:
    """Another depth of the cup parts the backs; the pulls, in the other face, are still alike."""
    layout = changed(several(2), "B3R-2", fittings=with_holes(DOOR, depth=12.5).fittings)
    found = {
        (tuple(part for _, part in batch.parts), tuple(view.face for view in batch.views))
        for batch in batches(layout)
    }
    assert (("B3-2",), ("back",)) in found
    assert (("B3R-2",), ("back",)) in found
    assert (("B3-2", "B3R-2"), ("front",)) in found
    said = [words_of(sheet.page.marks) for sheet in sheets(layout) if sheet.part == "B3-2"]
    assert "ALSO DRILLED, on other sheets: FRONT FACE." in said[0]
    assert "ALSO DRILLED, on other sheets: BACK OF DOOR." in said[-1]


def test_a_measured_front_falls_out_and_comes_back_when_it_measures_true() -> None:
    """Half a millimetre off takes a sheet of its own; as ordered it shares again."""

    def measured(off: float) -> Layout:
        odd = renamed(BASE, 1)
        door = replace(odd.fronts[1], measured_height=(613.0 + off, 613.0 + off))
        return lay(BASE, replace(odd, fronts=(odd.fronts[0], door)), renamed(BASE, 2))

    assert ("B3-2", "B3S-2") in sets(measured(0.5))
    assert ("B3-2", "B3R-2", "B3S-2") in sets(measured(0.0))


@pytest.mark.parametrize(
    ("count", "sizes"), [(1, [1]), (10, [10]), (11, [6, 5]), (20, [10, 10]), (23, [8, 8, 7])]
)
def test_paper_serves_ten_parts(count: int, sizes: list[int]) -> None:
    """Of more there are more sets, as even as can be."""
    assert split_sets(count) == sizes
    assert sum(sizes) == count
    assert max(sizes) <= MOST


def test_over_ten_parts_print_more_sets() -> None:
    """Each set says which it is; every part has its box on one of them."""
    layout = several(12)
    doors = [parts for parts in sets(layout) if "B3-2" in parts or "B3W-2" in parts]
    assert [len(parts) for parts in doors] == [6, 6]
    said = [words_of(sheet.page.marks) for sheet in sheets(layout)]
    assert any("set 1 of 2" in text for text in said)
    assert any("set 2 of 2" in text for text in said)


def test_names_are_listed_or_counted() -> None:
    """A few in full, each once."""
    assert join_names(["B1-2", "B1-2"], 2, "+ {}") == "B1-2"
    assert join_names(["B1-2", "B3-2"], 2, "+ {}") == "B1-2, B3-2"
    assert join_names(["B1-2", "B3-2", "B4-2"], 2, "+ {}") == "B1-2 + 2"


# --- what stands on a shared sheet ------------------------------------------------------------


def test_every_page_of_a_set_has_a_box_for_each_part() -> None:
    """On the first with blanks for its size where there is room, on the others close."""
    layout = several(4)
    for sheet in sheets(layout):
        if sheet.part is None:
            continue
        bold = [m.text for m in sheet.page.marks if isinstance(m, Text) and m.bold]
        parts = [f"B3{letter}{sheet.part.removeprefix('B3')}" for letter in ("", "R", "S", "T")]
        assert all(bold.count(part) == 1 for part in parts)
        assert sheet.page.entry == ", ".join(parts)


def test_cards_name_all_their_parts() -> None:
    """A loose card is never taken for one part's alone."""
    pages = read_pages(write_pdf(sheets(several(4)).pages))
    for page in pages[1:]:
        for card in page.cards:
            assert "+ 3 ALIKE" in card.text
            assert "FOR B3-" in card.text
            assert "B3T-" in card.text


def test_sides_name_what_they_serve_part_by_part() -> None:
    """The facts list the fronts, a card's heading counts them."""
    said = [
        words_of(sheet.page.marks)
        for sheet in sheets(several(4))
        if sheet.part and "SIDE-L" in sheet.part
    ]
    text = " ".join(said)
    assert "BOTTOM PLATE for B3-2 + 3" in text
    assert "Plates 3.0 high for B3-2, B3R-2, B3S-2, B3T-2." in text


def test_the_symbol_says_the_set() -> None:
    """IDs first, as many as find room, then the face and the code."""
    for times in (2, 10):
        for sheet in sheets(several(times)):
            (symbol,) = [m.text for m in sheet.page.marks if isinstance(m, Qr)] or [""]
            assert len(symbol) <= LONGEST
            assert re.fullmatch(r"[0-9A-Z $%*+./:-]*", symbol)  # ISO/IEC 18004: alphanumeric mode
            if sheet.part == "B3-2":
                assert symbol.startswith("B3-2 B3R-2")
                assert "ONE SET / " in symbol
                assert f"CODE {DOOR.code}" in symbol


def test_the_first_page_lists_each_part_and_tells_how() -> None:
    """B3R-2 stands on the pages of B3-2."""
    layout = several(2)
    pages = [sheet.page for sheet in sheets(layout)]
    first = words_of(pages[0].marks)
    assert "ONE SET OF SHEETS SERVES ALL PARTS" in first
    numbers = [n for n, page in enumerate(pages, start=1) if page.entry == "B3-2, B3R-2"]
    span = f"{numbers[0]}-{numbers[-1]}" if len(numbers) > 1 else f"{numbers[0]}"
    for part in ("B3-2", "B3R-2"):
        assert f"{part} {span}" in first


def test_a_jig_is_told_where_it_costs_no_page() -> None:
    """And once for the faces of one set; a part alone has none."""
    told = [
        sum("A JIG OF A CARD" in words_of(s.page.marks) for s in sheets(several(times)))
        for times in (1, 4)
    ]
    assert told[0] == 0
    assert told[1] >= 1


def test_the_data_list_the_parts_of_a_shared_card() -> None:
    """`part` stays the first; a part alone has no list."""
    cards = json.loads(sheets_json(sheets(several(2))))["cards"]
    assert {tuple(card["parts"]) for card in cards if card["part"] == "B3-2"} == {("B3-2", "B3R-2")}
    assert not any("parts" in card for card in json.loads(sheets_json(sheets(several(1))))["cards"])


def test_a_printers_correction_changes_nothing_of_it() -> None:
    """The same sets on as many pages, each drawn by the printer's factors."""
    paper = COMMON.corrected(Printer(name="garage", across=179.5, along=199.4))
    true, drawn = list(sheets(several(4))), list(sheets(several(4), paper))
    assert [sheet.page.entry for sheet in drawn] == [sheet.page.entry for sheet in true]
    assert all(sorted(sheet.page.scale) == sorted(paper.scale) for sheet in drawn)


# --- properties -------------------------------------------------------------------------------

few, many = (
    settings(
        max_examples=count,
        deadline=None,
        derandomize=True,
        phases=(Phase.generate,),  # to shrink a job of many boxes takes minutes
        suppress_health_check=[HealthCheck.too_slow],
    )
    for count in (5, 60)
)
times = st.sampled_from((2, 3, 11))


def on_part(card: dict[str, Any]) -> dict[str, Any]:
    """Give a card of the data without its names and page, its places counted from its face."""
    x, y = card["origin_mm"]

    return {
        "face": card["face"],
        "edges": [
            [e["edge"], e["at_mm"] - (x if e["edge"] in ("left", "right") else y)]
            for e in card["edges"]
        ],
        "index": [[i["from"], i["value_mm"]] for i in card["index"]],
        "ladder": card["ladder"]["at_mm"] - y if "ladder" in card else None,
        "datum": card.get("datum_mm"),
        "holes": [
            [h["purpose"], h["x_mm"] - x, h["y_mm"] - y, h["diameter_mm"]] for h in card["holes"]
        ],
    }


def drilled_in(layout: Layout, part: str, view: FaceView) -> frozenset[tuple[float, ...]]:
    """The holes that the layout has in a face of a part, to 0.0001 mm."""
    fittings = [f for front in layout.fronts if front.id == part for f in front.fittings]
    for drawer in (front.drawer for front in layout.fronts):
        if drawer is not None and drawer.id == part:
            fittings += (*drawer.fittings, *drawer.rear)
    fittings += [f for each in layout.rollouts if each.id == part for f in each.rear]
    for side in layout.sides:
        if side.board == part and (view.column is None or side.column == view.column):
            fittings += side.fittings
    return frozenset(
        (round(h.x, 4), round(h.y, 4), h.diameter, h.depth or 0.0)
        for h in collect_holes(fittings)
        if h.face == view.face or view.face == "inside"
    )


@given(jobs(most_boxes=1), times)
@few
def test_the_parts_of_a_set_have_the_same_cards_and_holes(job: Job, times: int) -> None:
    """Apart, each of them has the very cards of the set, but for its ID; and of each the layout
    has the same holes in this face."""
    layout = lay_out(repeated(job, times))
    apart: dict[tuple[str, str], list[dict[str, Any]]] = {}
    for card in json.loads(sheets_json(make_sheets(layout, PAPERS["a3"])))["cards"]:
        apart.setdefault((card["part"], card["face"]), []).append(on_part(card))
    shared = json.loads(sheets_json(sheets(layout, PAPERS["a3"])))["cards"]
    kept = [tuple(card.get("parts", [card["part"]])) for card in shared]
    assert {part for parts in kept for part in parts} == {part for part, _ in apart}
    for card in shared:
        for part in card.get("parts", ()):
            assert any(same_numbers(on_part(card), own) for own in apart[part, card["face"]])
    for batch, _ in sheets(layout)._planned():
        assert len({drilled_in(layout, part, batch.views[0]) for _, part in batch.parts}) == 1


@given(jobs(most_boxes=1), times, papers)
@few
def test_every_hole_of_every_part_stands_in_exactly_one_set(
    job: Job, times: int, paper: Paper
) -> None:
    """Read from paper, page for page, for each part whose box is there to tick; no text touches
    anything; and the summary counts the pages that there are."""
    check_sets(lay_out(repeated(job, times)), paper)


@pytest.mark.slow
@given(jobs(most_boxes=2), times, papers)
@many
def test_every_hole_stands_in_exactly_one_set_of_many_jobs(
    job: Job, times: int, paper: Paper
) -> None:
    """The same, at length."""
    check_sets(lay_out(repeated(job, times)), paper)


def check_sets(layout: Layout, paper: Paper) -> None:
    drawn = list(sheets(layout, paper))
    for number, sheet in enumerate(drawn, start=1):
        assert clashes_of_marks(sheet.page) == [], f"page {number}, {sheet.part}"
    pages = read_pages(write_pdf(sheet.page for sheet in drawn))
    assert faults_on_paper(pages, layout) == []
    apart = make_sheets(layout, paper)
    counts: dict[str, int] = {}
    for sheet in apart:
        counts[sheet.page.entry] = counts.get(sheet.page.entry, 0) + 1
    assert apart.count() == sum(counts.values())
    assert apart.count_other(counts) == apart.count_other() == len(drawn)
    assert len(drawn) <= sum(counts.values())
    shared: dict[str, int] = {}
    for sheet in drawn:
        shared[sheet.page.entry] = shared.get(sheet.page.entry, 0) + 1
    assert sheets(layout, paper).count_other(shared) == sum(counts.values())
