"""The cut list as text, CSV and JSON."""

import csv
import io
import json

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.checks.cutting import with_cutting
from jigs.cutlist.cutlist import PartsList, choose_parts
from jigs.given.build import Build
from jigs.given.job import FrontSpec, Job, ShelfSpec
from jigs.given.stated import DrawerSize, EndPanels
from jigs.layout.layout import lay_out
from templates.lists.partslist import COLUMNS, parts_csv, parts_json
from templates.lists.partstables import parts_text
from tests.jigs.sample import box, job
from tests.jobs import jobs
from tests.templates.printed import laid_out
from tests.uneven import UNEVEN

FRONTS = (
    FrontSpec(id="B1-1", kind="drawer", height=152.4),
    FrontSpec(id="B1-2", kind="door", hinged="left"),
)


def _job() -> Job:
    return job(replace(box(*FRONTS), shelves=(ShelfSpec(count=2),)), box(name="B2"))


def _list(made: Job | None = None, only: frozenset[str] | None = None) -> PartsList:
    layout, cut = with_cutting(lay_out(made or _job()))
    return choose_parts(layout, cut, only)


def test_json_has_the_golden_side() -> None:
    """Cut sizes, length along the grain; the band is on the front edge: 584.2 - 0.6 =
    583.6 (derived)."""
    data = json.loads(parts_json(_list()))
    assert data["schema"] == 1
    side = data["parts"][0]
    assert side["id"] == "B1-SIDE-L"
    expected = {
        "box": "B1", "length_mm": 774.7, "width_mm": 583.6, "finished_length_mm": 774.7,
        "finished_width_mm": 584.2, "thickness_mm": 18.3, "count": 1, "band": ["front"],
        "grain": "length",
    }  # fmt: skip
    assert {key: side[key] for key in expected} == expected
    assert side["pocket_mm"][0] == 50.0
    assert side["groove"] == {"at_mm": 565.2, "width_mm": 6.0, "depth_mm": 8.0}


def test_json_has_the_uneven_boxs_partition() -> None:
    """Between bottom and top, 774.7 - 2 x 18.3 high; its drawers' boxes 389 wide, their fronts
    389 - 2 x 15.9 long (derived)."""
    layout, cut = with_cutting(laid_out(UNEVEN))
    data = json.loads(parts_json(choose_parts(layout, cut)))
    sizes = {part["id"]: (part["length_mm"], part["width_mm"]) for part in data["parts"]}
    assert sizes["B1-PARTITION-1"] == pytest.approx((774.7 - 2 * 18.3, 584.2 - 19 - 6 - 0.6))
    assert sizes["B1-SHELF-1"] == pytest.approx((445.1 - 3, 584.2 - 19 - 6 - 25))
    assert sizes["B1-1-BOX-FRONT"][0] == pytest.approx(389 - 2 * 15.9)


def test_json_gives_null_for_the_box_of_what_belongs_to_a_wall() -> None:
    """Toe platforms stand under several boxes."""
    data = json.loads(parts_json(_list()))
    toe = [part for part in data["parts"] if part["id"].startswith("NORTH-TOE-1")]
    assert len(toe) == 3
    assert all(part["box"] is None and part["wall"] == "north" for part in toe)


def test_json_adds_up() -> None:
    """Band, boards and the thickness trap stand beside the parts."""
    data = json.loads(parts_json(_list()))
    (band,) = data["banding"]
    banded = sum(part["count"] * part["length_mm"] for part in data["parts"] if part["band"])
    assert band["length_mm"] == pytest.approx(banded)
    assert band["to_buy_mm"] == pytest.approx((banded + 50 * band["edges"]) * 1.1)
    assert data["thickness_trap"]["lost_mm"] == pytest.approx(1.5)
    assert sum(board["pieces"] for board in data["boards"]) == sum(
        part["count"] for part in data["parts"]
    )


def test_csv_lists_the_same_pieces() -> None:
    """One piece a line, places parted by blanks."""
    rows = list(csv.DictReader(io.StringIO(parts_csv(_list()))))
    assert tuple(rows[0]) == COLUMNS
    data = json.loads(parts_json(_list()))
    assert [row["part"] for row in rows] == [part["id"] for part in data["parts"]]
    assert [float(row["length_mm"]) for row in rows] == [p["length_mm"] for p in data["parts"]]
    assert rows[2]["pocket_mm"] == "50 203.0667 356.1333 509.2"


def test_no_cell_is_a_formula() -> None:
    """A wall may be called anything."""
    made = job(replace(box(*FRONTS), wall="=1+1"))
    rows = list(csv.reader(io.StringIO(parts_csv(_list(made)))))
    cells = [cell for row in rows for cell in row]
    assert "'=1+1" in cells
    assert not any(cell.startswith(("=", "+", "@")) for cell in cells)


@pytest.mark.parametrize(
    ("name", "found"),
    [
        ("B1-SIDE-L", ["B1-SIDE-L"]),
        ("B2", ["B2-SIDE-L", "B2-SIDE-R", "B2-BOTTOM", "B2-STRETCHER-1", "B2-STRETCHER-2",
                "B2-BACK", "B2-NAILER"]),
        ("B1-1", [f"B1-1-BOX-{word}" for word in ("SIDE", "FRONT", "BACK", "BOTTOM")]),
        ("B1-1-BOX", [f"B1-1-BOX-{word}" for word in ("SIDE", "FRONT", "BACK", "BOTTOM")]),
    ],
)  # fmt: skip
def test_a_choice_of_parts(name: str, found: list[str]) -> None:
    """By part, by its front or drawer box, by box."""
    assert [piece.id for piece in _list(only=frozenset({name})).pieces] == found


def test_a_wall_is_all_that_stands_there() -> None:
    """Boxes and what belongs to the wall."""
    assert _list(only=frozenset({"NORTH"})).pieces == _list().pieces


def test_text_tells_the_trap_and_the_band() -> None:
    """The loss of a whole reveal, and metres of band with their allowance."""
    text = " ".join(parts_text(_list()).split())
    assert "bottom of 16 1/2 in (419.1 mm)" in text
    assert "17 15/16 in (455.7 mm) wide instead of 18 in (457.2 mm): 1/16 in (1.5 mm) lost" in text
    assert "a whole reveal" in text
    metres = (4 * 774.7 + 4 * 420.6 + 2 * 417.6 + 10 * 50) * 1.1 / 1000
    assert f"({metres:.2f} m)" in text
    assert "by area alone" in text


def test_text_says_what_the_board_was_sold_as() -> None:
    """Known, it is no guess; as thick as a name that nobody stated, nothing is said of it."""
    known = replace(_job(), build=Build(sold_as=19.05))
    assert "a guess" not in parts_text(_list(known))
    assert "a guess" in parts_text(_list())
    called = parts_text(_list(replace(_job(), build=Build(sold_as=18.3))))
    assert "which is what they are sold as" in " ".join(called.split())
    thick = replace(_job(), material=replace(_job().material, side=19.05))
    assert "sold as" not in parts_text(_list(thick))


def test_text_keeps_to_the_unit_shown() -> None:
    """Inches first for a job in inches, millimetres first for one in mm."""
    assert "30 1/2 x 22 31/32+ (774.7 x 583.6)" in parts_text(_list())
    assert "774.7 x 583.6 (30 1/2 x 22 31/32+)" in parts_text(_list(replace(_job(), units="mm")))


def test_text_names_what_is_left_out_and_assumed() -> None:
    """A drawer box of a front held back; a thickness that nobody measured."""
    wrong = replace(FRONTS[0], drawer_box=DrawerSize(drawer_width=419.0))
    made = replace(job(box(wrong, FRONTS[1])), assumed=frozenset({"material.side"}))
    text = parts_text(_list(made))
    assert "Left out, because their fronts are held back: B1-1-BOX." in text
    assert "ASSUMED: measure it" in text
    assert "side thickness" in text


def test_tables_stand_in_columns() -> None:
    """Each row of a board has its figures below the head's."""
    lines = parts_text(_list()).splitlines()
    head = next(line for line in lines if "cut: length by width" in line)
    at = head.index("cut:")
    for line in lines:
        if line.startswith("    B") and "-SIDE-" in line and "BOX" not in line:
            assert line[at:].startswith("30 1/2 x")


@pytest.mark.slow
@given(jobs())
@settings(max_examples=10)
def test_whatever_is_cut_can_be_listed(made: Job) -> None:
    """Text without ragged ends, every piece in each form, the same bytes for the same job."""
    parts = _list(made)
    text = parts_text(parts)
    assert text == parts_text(_list(made))
    assert all(line == line.rstrip() for line in text.splitlines())
    data = json.loads(parts_json(parts))
    rows = list(csv.DictReader(io.StringIO(parts_csv(parts))))
    assert len(data["parts"]) == len(parts.pieces)
    assert [row["part"] for row in rows] == [*(p.id for p in parts.pieces), *parts.left_out]
    words = text.split()
    assert all(piece.id in words for piece in parts.pieces)


def test_text_says_where_a_toe_platform_stands_on_an_assumed_height() -> None:
    """Its height is the boxes' height above the floor."""
    made = replace(_job(), assumed=frozenset({"box.B1.above_floor"}))
    text = " ".join(parts_text(_list(made)).split())
    assert "height above the floor of B1" in text


def test_the_fronts_themselves_are_not_counted() -> None:
    """Only what is cut here from their board, and the list says so."""
    made = _job()
    boxes = (replace(made.boxes[0], panels=EndPanels(left="flush")), *made.boxes[1:])
    text = " ".join(parts_text(_list(replace(made, boxes=boxes))).split())
    assert "fronts (fillers, panels and backs; not the fronts themselves)" in text
    assert "themselves" not in parts_text(_list())
