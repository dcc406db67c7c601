"""The hole list: for people, for a spreadsheet, as data; all three tell the same holes."""

import csv
import io
import json
import re
from functools import cache

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.given.stated import OwnReveals, RolloutSpec
from jigs.ground.problems import error
from jigs.layout.layout import lay_out
from templates.lists.holelist import COLUMNS, holes_csv, holes_json, holes_text
from templates.words.scanwords import drawer_box_payload
from tests import uneven
from tests.jigs.fittings.test_hooks import HOOKED
from tests.jigs.sample import box, front_of, job
from tests.templates.printed import laid_out
from tests.templates.small_layout import small_layout

FRONT_KEYS = (
    "id", "box", "kind", "hinged", "code", "withheld", "width_mm", "height_mm", "thickness_mm",
    "x_mm", "y_mm", "hinge", "holes", "open", "assumed",
)  # fmt: skip
SIDE_KEYS = (
    "box",
    "column",
    "side",
    "board",
    "code",
    "height_mm",
    "depth_mm",
    "holes",
    "open",
    "assumed",
)


def rows() -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(holes_csv(small_layout()))))


def test_the_data_have_their_promised_keys() -> None:
    """Keys and their order are a promise to whoever reads the data."""
    data = json.loads(holes_json(small_layout()))
    assert tuple(data) == ("schema", "job", "units", "fronts", "sides", "boxes", "problems")
    assert data["schema"] == 1
    for front in data["fronts"]:
        assert tuple(front) == FRONT_KEYS
        for hole in front["holes"]:
            keys = ("purpose", "face", "x_mm", "y_mm", "diameter_mm", "depth_mm")
            assert tuple(hole) in (keys, (*keys, "marked_from"))
    for side in data["sides"]:
        assert tuple(side) == SIDE_KEYS
        for hole in side["holes"]:
            assert tuple(hole) == ("purpose", "part", "x_mm", "y_mm", "diameter_mm", "depth_mm")
    for problem in data["problems"]:
        assert tuple(problem) == ("level", "rank", "code", "part", "text", "remedy")


def test_what_can_be_marked_through_the_drawer_box_says_so() -> None:
    """The fixing holes of a drawer front, and nothing else."""
    for front in json.loads(holes_json(small_layout()))["fronts"]:
        for hole in front["holes"]:
            through = f"{front['id']}-BOX" if hole["purpose"] == "front-fixing" else None
            assert hole.get("marked_from") == through


def test_the_golden_drawer_and_door() -> None:
    """Derived: pull at 454 / 2 -+ 80, cup at 5 + 35 / 2."""
    drawer, door = json.loads(holes_json(small_layout()))["fronts"]
    pulls = [hole["x_mm"] for hole in drawer["holes"] if hole["purpose"] == "pull"]
    assert pulls == [454.0 / 2 - 160 / 2, 454.0 / 2 + 160 / 2]
    cups = [hole for hole in door["holes"] if hole["purpose"] == "cup"]
    assert [cup["x_mm"] for cup in cups] == [5 + 35 / 2, 5 + 35 / 2]
    assert cups[0]["y_mm"] == pytest.approx(99.35 - 1.6)
    assert door["hinge"] == {
        "record": "cup35-full",
        "tab_mm": 5.0,
        "plate_mm": None,
        "overlay_error_mm": None,
        "plate_wanted_mm": round(15 + 5 - (18.3 - 1.6), 4),
    }
    assert drawer["hinge"] is None


def test_the_uneven_box_as_data() -> None:
    """Axes as they are, whatever the face and the hand: x from the left edge as seen from the room,
    heights from each board's own bottom end; a drawer box's holes from its own left end."""
    data = json.loads(holes_json(laid_out(uneven.UNEVEN)))
    upper, _, door = data["fronts"]
    assert (upper["x_mm"], upper["y_mm"]) == (6.0, 571.5)
    assert (door["x_mm"], door["width_mm"], door["hinged"]) == (429.05, 469.35, "right")
    assert {h["x_mm"] for h in door["holes"] if h["purpose"] == "cup"} == {469.35 - 22.5}
    heights = {
        (side["board"], side["side"]): [h["y_mm"] for h in side["holes"] if h["purpose"] == "slide"]
        for side in data["sides"]
    }
    assert heights == {
        ("B1-SIDE-L", "left"): [51.3, 621.2],
        ("B1-PARTITION-1", "right"): [33.0, round(621.2 - 18.3, 4)],
        ("B1-PARTITION-1", "left"): [],
        ("B1-SIDE-R", "right"): [],
    }
    assert {h["x_mm"] for h in data["boxes"][0]["holes"]} == {47.9, 389 - 47.9}


def test_numbers_are_written_to_a_ten_thousandth() -> None:
    """No digits that nobody can drill, and no negative zero."""
    text = holes_json(small_layout())
    numbers: list[float] = []
    json.loads(text, parse_float=lambda word: numbers.append(float(word)))
    assert numbers
    assert all(round(number, 4) == number for number in numbers)
    assert "-0.0" not in text.replace("-0.0\u0030", "")


def test_csv_and_data_tell_the_same_holes() -> None:
    """One row a hole, in the same order."""
    data = json.loads(holes_json(small_layout()))
    wanted = [
        (
            part.get("id") or part.get("board") or part["part"],
            hole["purpose"],
            hole["x_mm"],
            hole["y_mm"],
        )
        for part in (*data["fronts"], *data["sides"], *data["boxes"])
        for hole in part["holes"]
    ]
    listed = [(r["part"], r["purpose"], float(r["x_mm"]), float(r["y_mm"])) for r in rows()]
    assert listed == wanted
    assert tuple(rows()[0]) == COLUMNS


def test_no_cell_is_a_formula() -> None:
    """An ID that begins with a sign of arithmetic is only text to a spreadsheet."""
    layout = small_layout()
    front = replace(layout.fronts[0], id="-1+2", box="=B1")
    text = holes_csv(replace(layout, fronts=(front,), sides=()))
    for row in csv.reader(io.StringIO(text)):
        for cell in row:
            assert not cell.startswith(("=", "+", "@"))
            assert not cell.startswith("-") or float(cell) < 0
    assert "'-1+2,'=B1," in text


def test_the_text_gives_the_jobs_unit_first() -> None:
    """Inches before millimetres in a job in inches, the other way round in one in mm."""
    layout = small_layout()
    assert "5 25/32+ in (147.0)" in holes_text(layout)
    metric = replace(layout, job=replace(layout.job, units="mm"))
    assert "147.0 (5 25/32+ in)" in holes_text(metric)


def test_a_part_held_back_is_named_and_has_no_holes() -> None:
    """It is not forgotten, and nothing can be drilled from it."""
    layout = small_layout()
    why = (error("hand-not-stated", None, listed=False),)
    held = replace(layout.fronts[1], fittings=(), held=why)
    layout = replace(layout, fronts=(layout.fronts[0], held))
    [_, data] = json.loads(holes_json(layout))["fronts"]
    assert data["withheld"] is True
    assert data["holes"] == []
    assert "HELD: hand not stated: a single door, and nobody said" in holes_text(layout)


BOX_KEYS = (
    "part",
    "front",
    "code",
    "width_mm",
    "height_mm",
    "length_mm",
    "holes",
    "open",
    "assumed",
)


@cache
def boxes_layout() -> Layout:
    """A wide drawer whose front is not in the middle of its box, one that is held back (11 high),
    and a rollout; all on slides with rear hooks."""
    drawers = box(
        FrontSpec(id="B1-1", kind="drawer", height=152.4, reveals=OwnReveals(left=20.0)),
        FrontSpec(id="B1-2", kind="drawer", height=60.0),
        FrontSpec(id="B1-3", kind="opening"),
        width=914.4,
    )
    door = FrontSpec(id="B2-1", kind="door", hinged="right")
    rolling = replace(box(door, name="B2"), rollouts=(RolloutSpec(at=200.0, height=120.0),))
    return lay_out(job(drawers, rolling, slide=HOOKED))


def test_drawer_boxes_are_listed_with_all_their_holes() -> None:
    """Clearances from the room, in its front; hooks in its back, x from the same end (derived):
    914.4 - 2 x 18.3 - 42 + 2 x 15.9 = 867.6 rounded down to 1/16; the front's middle, and with it
    the third column, is 20 - 1.6 over 2 right of the box's."""
    data = json.loads(holes_json(boxes_layout()))
    assert [tuple(each) for each in data["boxes"]] == [BOX_KEYS] * 3
    wide, held, rollout = data["boxes"]
    assert [each["part"] for each in data["boxes"]] == ["B1-1-BOX", "B1-2-BOX", "B2-ROLLOUT-1"]
    assert [each["front"] for each in data["boxes"]] == ["B1-1", "B1-2", None]
    width = 546 * 25.4 / 16
    assert (wide["width_mm"], wide["length_mm"]) == (pytest.approx(width), 533.0)
    clear = [hole for hole in wide["holes"] if hole["purpose"] == "clearance"]
    across = sorted({hole["x_mm"] for hole in clear})
    third = width / 2 + (20 - 1.6) / 2
    assert across == pytest.approx([15.9 + 32, third, width - 15.9 - 32], abs=1e-4)
    assert {(h["face"], h["diameter_mm"], h["depth_mm"]) for h in clear} == {
        ("box-front", 5.0, None)
    }
    hooks = [hole for hole in wide["holes"] if hole["purpose"] == "hook"]
    assert [hole["x_mm"] for hole in hooks] == pytest.approx([15.9 + 8, width - 15.9 - 8], abs=1e-4)
    assert {hole["face"] for hole in hooks} == {"box-back"}
    assert len(clear) + len(hooks) == len(wide["holes"])
    assert held["holes"] == []
    assert [hole["purpose"] for hole in rollout["holes"]] == ["hook", "hook"]
    assert wide["code"] == front_of(boxes_layout(), "B1-1").drawer.code  # type: ignore[union-attr]


def test_pilots_and_clearances_meet_in_the_list() -> None:
    """A clearance hole lies over its pilot, once the box stands behind its front: its own corner
    in the front is half of what the widths differ, less what its left reveal is larger."""
    data = json.loads(holes_json(boxes_layout()))
    front, (wide, *_) = data["fronts"][0], data["boxes"]
    x = 914.4 / 2 - wide["width_mm"] / 2 - 20.0
    y = 18.3 + 14 - 1.6
    pilots = {
        (round(h["x_mm"], 3), round(h["y_mm"], 3))
        for h in front["holes"] if h["purpose"] == "front-fixing"
    }  # fmt: skip
    assert pilots == {
        (round(h["x_mm"] + x, 3), round(h["y_mm"] + y, 3))
        for h in wide["holes"] if h["purpose"] == "clearance"
    }  # fmt: skip


def test_csv_and_text_list_the_drawer_boxes_too() -> None:
    """All holes of the data are rows of the CSV list; a box held back with its front is named."""
    layout = boxes_layout()
    data = json.loads(holes_json(layout))
    wanted = [
        (part["part"], hole["purpose"], hole["face"], hole["x_mm"])
        for part in data["boxes"]
        for hole in part["holes"]
    ]
    read = csv.DictReader(io.StringIO(holes_csv(layout)))
    listed = [
        (r["part"], r["purpose"], r["face"], float(r["x_mm"]))
        for r in read
        if r["kind"] in ("drawer-box", "rollout")
    ]
    assert listed == wanted
    text = holes_text(layout)
    assert "B1-1-BOX  drawer box, 34 1/8 x 3 1/2 x 20 31/32+ in (866.8 x 88.9 x 533.0 mm)" in text
    assert "B1-2-BOX  drawer box" in text
    assert "HELD with B1-2" in text
    assert text.count("clearance") == 6


def test_a_drawer_box_without_room_has_no_size() -> None:
    """A front 35 high leaves nothing to its box, in the text, the data and the label's symbol,
    which has the size of one that can be built."""
    low = box(
        FrontSpec(id="B1-1", kind="drawer", height=35.0),
        FrontSpec(id="B1-2", kind="drawer"),
    )
    layout = lay_out(job(low))
    front = front_of(layout, "B1-1")
    drawer = front.drawer
    assert drawer is not None
    assert front.held
    assert drawer.height <= 0.0
    text = holes_text(layout)
    assert "B1-1-BOX  drawer box\n  HELD with B1-1\n" in text
    first, other = json.loads(holes_json(layout))["boxes"]
    assert (first["width_mm"], first["height_mm"], first["length_mm"]) == (None, None, None)
    assert other["height_mm"] > 0.0
    assert not re.search(r"\dX", drawer_box_payload(layout, drawer, front).text)
    built = replace(drawer, height=80.0)
    assert "X80X" in drawer_box_payload(layout, built, replace(front, held=())).text


def test_data_say_what_is_assumed_as_the_text_does() -> None:
    """Front, side and drawer box each name what nobody gave, in words."""
    assumed = frozenset({"material.side", "material.drawer_side", "reveal.side"})
    drawer = FrontSpec(id="B1-1", kind="drawer")
    data = json.loads(holes_json(lay_out(job(box(drawer), assumed=assumed))))
    for kind, words in (("fronts", "side reveal"), ("sides", "side thickness"),
                        ("boxes", "drawer side thickness")):  # fmt: skip
        assert any(said.startswith(words) for said in data[kind][0]["assumed"]), kind
