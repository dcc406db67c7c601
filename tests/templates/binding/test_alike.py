"""Parts with the same holes: what shares a set of sheets, and what does not."""

from dataclasses import replace
from typing import Any

import pytest

from jigs.box.parts import Layout
from jigs.given.stated import Hung, Taped
from templates.binding.alike import MOST, join_names, split_sets
from tests.jigs.sample import lay
from tests.jobs import renamed
from tests.templates.twins import (
    BASE,
    DOOR,
    batches,
    changed,
    sets,
    several,
    sheets,
    with_holes,
    words_of,
)


def test_boxes_alike_share_all_their_sheets() -> None:
    """Fronts, drawer boxes and sides; left and right sides mirror each other and stay apart."""
    assert sets(several(2)) == [
        ("B3-1-BOX", "B3R-1-BOX"),
        ("B3-1", "B3R-1"),
        ("B3-2", "B3R-2"),
        ("B3-SIDE-L", "B3R-SIDE-L"),
        ("B3-SIDE-R", "B3R-SIDE-R"),
    ]


@pytest.mark.parametrize(
    "values",
    [
        {"width": DOOR.width - 0.1},
        {"height": DOOR.height + 0.001},
        {"make": replace(DOOR.make, thickness=DOOR.make.thickness - 0.1)},
        {"fittings": with_holes(DOOR, depth=12.5).fittings},
        {"fittings": with_holes(DOOR, diameter=26.0).fittings},
        {"fittings": with_holes(DOOR, x=23.0).fittings},
        {"fittings": (replace(DOOR.fittings[0], record="spare"), *DOOR.fittings[1:])},
        {"hinged": "right"},
        {"make": replace(DOOR.make, edge_radius=2.0)},
        {"reversible": not DOOR.reversible},
        {"make": replace(DOOR.make, note="the odd one")},
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


@pytest.mark.parametrize(
    "values",
    [
        {"make": replace(DOOR.make, finish="blue")},
        {"gaps": replace(DOOR.gaps, top=9.0)},
        {"code": "H9D5"},
    ],
)
def test_what_has_nothing_to_do_with_the_holes_is_said_part_by_part(
    values: dict[str, Any],
) -> None:
    """Another finish, another gap; of different codes each stands at its ID."""
    layout = changed(several(3), "B3R-2", **values)
    assert ("B3-2", "B3R-2", "B3S-2") in sets(layout)
    said = " ".join(words_of(sheet.page.marks) for sheet in sheets(layout) if sheet.part == "B3-2")
    if "make" in values:
        assert "B3R-2: Finish: blue." in said
    if "gaps" in values:
        assert "B3R-2: Gaps here:" in said
        assert "to the box's edge" not in said  # true of two of the three
    if "code" in values:
        assert ", own codes" in said
        assert "code H9D5" in said
        assert "B3R-2 (H9D5)" in said


def test_a_figure_is_never_taken_for_a_name() -> None:
    """Fronts called 2 and 3 that want plates of 2 and 3 mm: the figures stay, and differ."""
    fronts = [
        replace(BASE.fronts[1], id=name, hung=Hung(), height=None) for name in ("2", "3", "4")
    ]
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
        door = replace(odd.fronts[1], measured=Taped(height=(613.0 + off, 613.0 + off)))
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
