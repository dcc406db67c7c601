"""Bare faces: PDF, SVG and DXF of a face have the same holes, read by three other libraries."""

import io
import json
import math
import os
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path
from typing import get_args

import ezdxf
import pytest
from hypothesis import given, settings

from jigs.box.parts import Layout
from jigs.given.job import FrontKind, Job
from jigs.ground.geometry import Face, Hole
from jigs.layout.layout import lay_out
from templates.binding.drilled import drilled_parts
from templates.binding.jobsheets import make_sheets
from templates.binding.sheetdata import sheets_json
from templates.cards.outlines import (
    MARGIN,
    face_dxf,
    face_name,
    hole_class,
    layer_name,
    outline_page,
    words_beside,
)
from templates.faces.faceview import FaceView
from templates.page.paper import PAPERS
from templates.writers.pdf import write_pdf
from templates.writers.svg import write_svg
from tests import jobs
from tests.jobtexts import box_text
from tests.readback import read_pages
from tests.sheetholes import by_part
from tests.templates.drawnonce import draw_once
from tests.templates.printed import laid_out
from tests.templates.small_layout import small_layout
from tests.templates.worked import worked_layout

Holes = list[tuple[float, float, float]]
SVG = "{http://www.w3.org/2000/svg}"
TRUE = 0.001
"""What the files may differ by, mm."""


def wanted(view: FaceView) -> Holes:
    return sorted((h.x, h.y, h.diameter) for fitting in view.fittings for h in fitting.holes)


def holes_of_svg(view: FaceView) -> Holes:
    root = ET.fromstring(write_svg(outline_page(view)))
    high = float(root.attrib["height"].removesuffix("mm"))
    return sorted(
        (
            float(c.attrib["cx"]) - MARGIN,
            high - float(c.attrib["cy"]) - MARGIN,
            2 * float(c.attrib["r"]),
        )
        for c in root.iter(f"{SVG}circle")
    )


def holes_of_dxf(view: FaceView) -> Holes:
    drawing = ezdxf.read(io.StringIO(face_dxf(view).decode()))
    assert not drawing.audit().has_errors
    assert drawing.header["$INSUNITS"] == 4
    assert drawing.dxfversion == "AC1024"
    return sorted(
        (c.dxf.center.x, c.dxf.center.y, 2 * c.dxf.radius)
        for c in drawing.modelspace().query("CIRCLE")
    )


def entities(dxf: bytes) -> list[list[tuple[int, str]]]:
    """Read a DXF as its reference describes the text form: a line with a group code, a line with
    its value; in the section ENTITIES a group 0 begins each entity."""
    lines = dxf.decode().split("\n")
    groups = [
        (int(code), value.strip()) for code, value in zip(lines[::2], lines[1::2], strict=False)
    ]
    start = groups.index((2, "ENTITIES")) + 1
    found: list[list[tuple[int, str]]] = []
    for code, value in groups[start : groups.index((0, "ENDSEC"), start)]:
        if code == 0:
            found.append([])
        found[-1].append((code, value))
    return found


def values(entity: list[tuple[int, str]], code: int) -> list[float]:
    return [float(value) for at, value in entity if at == code]


def holes_of_groups(view: FaceView) -> Holes:
    """10 and 20 are a circle's centre, 40 its radius."""
    return sorted(
        (*values(entity, 10), *values(entity, 20), 2 * values(entity, 40)[0])  # type: ignore[misc]
        for entity in entities(face_dxf(view))
        if entity[0] == (0, "CIRCLE")
    )


def lines_of_groups(view: FaceView) -> dict[str, list[tuple[float, float]]]:
    """Give every line by its layer (8), as the corners (10 and 20) that its groups name; a closed
    one (70, the first bit) with its first corner once more."""
    found: dict[str, list[tuple[float, float]]] = {}
    for entity in entities(face_dxf(view)):
        if entity[0] == (0, "LWPOLYLINE"):
            corners = list(zip(values(entity, 10), values(entity, 20), strict=True))
            [layer] = [value for code, value in entity if code == 8]
            closed = int(values(entity, 70)[0]) & 1
            found[layer] = corners + corners[:1] * closed
    return found


def lines_of_svg(view: FaceView) -> dict[str, list[tuple[float, float]]]:
    """Give the outline and every line on the face by its class, as corners from the part's lower
    left one."""
    root = ET.fromstring(write_svg(outline_page(view)))
    high = float(root.attrib["height"].removesuffix("mm"))
    found: dict[str, list[tuple[float, float]]] = {}
    for item in root.iter():
        given = item.attrib
        if item.tag == f"{SVG}rect" and given["class"] != "paper":
            x0, y0, w, h = (float(given[key]) for key in ("x", "y", "width", "height"))
            corners = [(x0, y0 + h), (x0 + w, y0 + h), (x0 + w, y0), (x0, y0), (x0, y0 + h)]
        elif item.tag == f"{SVG}polygon":
            around = [tuple(map(float, pair.split(","))) for pair in given["points"].split()]
            corners = [(x, y) for x, y in (*around, around[0])]
        elif item.tag == f"{SVG}line":
            corners = [(float(given[f"x{n}"]), float(given[f"y{n}"])) for n in (1, 2)]
        else:
            continue
        found[given["class"]] = [(x - MARGIN, high - y - MARGIN) for x, y in corners]
    return found


def near(found: Holes, expected: Holes) -> bool:
    """Compare hole with hole; sorting may swap those that differ by less than the rounding."""
    left = list(expected)
    for hole in found:
        fits = [
            h for h in left if max(abs(a - b) for a, b in zip(h, hole, strict=True)) <= TRUE + 1e-9
        ]
        if not fits:
            return False
        left.remove(fits[0])
    return not left


@pytest.mark.slow
@settings(max_examples=4)
@given(job=jobs.jobs(most_boxes=2))
def test_svg_and_dxf_have_the_holes_of_every_face(job: Job) -> None:
    """Whatever the job: the same holes, files told apart by name, the same bytes again."""
    views = [view for part in drilled_parts(lay_out(job)) for view in part.views]
    names = [face_name(view) for view in views]
    assert len(set(names)) == len(names)
    for view in views[:6]:
        assert near(holes_of_svg(view), wanted(view))
        assert near(holes_of_dxf(view), wanted(view))
        assert near(holes_of_groups(view), wanted(view))
        assert face_dxf(view) == face_dxf(view)
        # Its four dates are 1 January 2000 (a Julian day), whatever the clock says.
        assert face_dxf(view).count(b"\n2451545.0") == 4


@pytest.mark.parametrize(
    ("hole", "css", "layer"),
    [
        (("cup", 35.0, 13.0), "cup-35-13", "CUP_35_D13"),
        (("plate", 5.0, 12.0), "plate-5-12", "PLATE_5_D12"),
        (("pull", 5.0, None), "pull-5-through", "PULL_5_THROUGH"),
        (("cup-fixing", 2.5, 11.0), "cup-fixing-2_5-11", "CUP_FIXING_2.5_D11"),
        (("kit's slide / upper", 5.0, 12.0), "kit-s-slide-upper-5-12", "KIT_S_SLIDE_UPPER_5_D12"),
        (("☃", 5.0, 12.0), "hole-5-12", "HOLE_5_D12"),
    ],
)
def test_class_and_layer_say_operation_diameter_and_depth(
    hole: tuple[str, float, float | None], css: str, layer: str
) -> None:
    """Whoever drills by machine chooses the tool by them."""
    purpose, diameter, depth = hole
    made = Hole(purpose=purpose, face="back", x=0, y=0, diameter=diameter, depth=depth)  # type: ignore[arg-type]
    assert hole_class(made) == css
    assert layer_name(made) == layer


def holes_of_pdf(layout: Layout) -> dict[tuple[str, str], Holes]:
    """Read every ring on paper, and count it from the origin that the sheets' data give."""
    made = draw_once(make_sheets(layout, PAPERS["common"], each=True))
    pages = read_pages(write_pdf(made.pages))
    found: dict[tuple[str, str], Holes] = {}
    for card in by_part(json.loads(sheets_json(made))):
        x0, y0 = card["origin_mm"]
        way = -1 if card.get("turned") else 1
        left, low = card["x_mm"], card["y_mm"]
        right, high = left + card["width_mm"], low + card["height_mm"]
        holes = found.setdefault((card["part"], card["face"]), [])
        for drawn in pages[card["page"] - 1].cards:
            for ring in drawn.rings:
                if left < ring.x < right and low < ring.y < high:
                    if not any(
                        abs(ring.x - hole["x_mm"]) < 0.01 and abs(ring.y - hole["y_mm"]) < 0.01
                        for hole in card["holes"]
                    ):
                        continue  # a cross of a pin card that is not bored here
                    hole = (way * (ring.x - x0), way * (ring.y - y0), ring.diameter)
                    if not any(near([hole], [other]) for other in holes):
                        holes.append(hole)
    return found


def assert_alike(layout: Layout) -> list[FaceView]:
    """Hold paper, SVG and DXF of every face against each other; give the faces."""
    printed = holes_of_pdf(layout)
    views = [view for part in drilled_parts(layout) for view in part.views]
    assert {(view.part, view.face) for view in views} == set(printed)
    for part, face in printed:
        alike = [view for view in views if (view.part, view.face) == (part, face)]
        on_paper = printed[part, face]
        # Both faces of a partition are called inside; each hole is on the paper of one of them.
        assert near(on_paper, [hole for view in alike for hole in holes_of_svg(view)]), part
        assert near(on_paper, [hole for view in alike for hole in holes_of_dxf(view)]), part
        assert near(on_paper, [hole for view in alike for hole in holes_of_groups(view)]), part
        assert near(on_paper, [hole for view in alike for hole in wanted(view)]), part
    return views


def test_pdf_svg_and_dxf_of_a_part_have_the_same_holes() -> None:
    """Paper, plotter and machine drill alike: a drawer over a door, and the sides of their box."""
    views = assert_alike(small_layout())
    assert {view.face for view in views} == {"back", "front", "inside", "box-front"}


def test_pdf_svg_and_dxf_of_the_uneven_box_have_the_same_holes() -> None:
    """Drawers beside a partition, a door hung at the right: what is mirrored in one of them is
    seen."""
    assert_alike(worked_layout("uneven"))


HAND_HOLE = "[[box.front.hole]]\nx = 60\ny = 480\ndiameter = 3\ndepth = 12\nmirror = true\n"
KIT = f'kind = "pullout"\nfixing = "kit"\n{HAND_HOLE}face = "back"\npurpose = "kit\'s bracket"'
LIFT = f'kind = "lift"\n{HAND_HOLE}face = "back"\npurpose = "lift arm"'
HOOKED = """\
[slide.hooked]
like = "undermount-533"
fixing_height = 33
drawer_rise = 14
hook_diameter = 6
hook_depth = 10
hook_height = 24
hook_inset = 8
"""
FACES = (
    HOOKED +
    box_text("B1", "base",
             'kind = "drawer"\nheight = 152.4\nstile = 57\nrail = 38\nslide = "hooked"',
             'kind = "door"\nhinged = "left"\nstile = 57')
    + box_text("B2", "wall", 'kind = "door"\nhinged = "right"\nprofile = "finger-bevel"')
    + box_text("B3", "base", 'kind = "drawer"\nheight = 160\nspan = 2\nslide = "undermount-457"',
               'kind = "door"\nhinged = "right"\nhinge = "cup35-half"',
               'kind = "drawer"\ncolumn = 2\nslide = "undermount-457"',
               more="columns = [{width = 220}, {share = 1}]",
               ).replace("width = 457.2", "width = 914.4")
    + box_text("B4", "sink", 'kind = "false-front"\nheight = 150', 'kind = "pair"')
    + box_text("B5", "base", KIT) + box_text("B6", "wall", LIFT)
    + box_text("B7", "drawer", 'kind = "drawer"\nheight = 300\nprofile = "finger-bevel"',
               'kind = "drawer"\nmeasured_width = [454.8, 455.2]', more="assembled = true")
    + box_text("B8", "tall", 'kind = "door"\nhinged = "left"\nedge_radius = 3',
               more='band = "later"\nshelf = [{adjustable = true, from = 90, to = 700}]')
)  # fmt: skip
"""A front of each kind, and each way in which a face is turned, measured or marked."""


def faces() -> list[FaceView]:
    layout = laid_out(FACES)
    assert not any(front.withheld for front in layout.fronts)
    return [view for part in drilled_parts(layout) for view in part.views]


def test_every_kind_of_face_is_there() -> None:
    """What the next two tests hold is held for all of them."""
    views = faces()
    assert {view.face for view in views} == set(get_args(Face))
    assert {view.bevel for view in views} == {None, "top", "bottom"}
    assert {view.column for view in views} >= {None, 1, 2}
    assert any(view.state.stand for view in views)
    assert any(view.state.raw for view in views)
    assert any(view.rounded for view in views)
    kinds = {front.kind for front in laid_out(FACES).fronts}
    # Leaves of a pair are doors; a panel waits for its leaflet, an opening has no face.
    assert kinds == set(get_args(FrontKind)) - {"pair", "panel", "opening"}


@pytest.mark.slow
def test_pdf_svg_and_dxf_of_every_kind_of_face_have_the_same_holes() -> None:
    """Fronts of all kinds on both faces, drawer boxes, sides, partitions."""
    assert_alike(laid_out(FACES))


def test_lines_on_a_face_are_marked_and_are_the_same_in_both() -> None:
    """Stiles of 57 and rails of 38, the drawer box 22.2 in, the bevelled edge; each by its name,
    none of them to be cut."""
    seen = set()
    for view in faces():
        drawn, machined = lines_of_svg(view), lines_of_groups(view)
        assert {name.removeprefix("mark ").upper().replace("-", "_").replace("CUT", "OUTLINE")
                for name in drawn} == set(machined)  # fmt: skip
        for name, corners in drawn.items():
            layer = name.removeprefix("mark ").upper().replace("-", "_").replace("CUT", "OUTLINE")
            seen.add(layer)
            both = list(zip(corners, machined[layer], strict=True))
            assert all(math.dist(a, b) <= TRUE for a, b in both), (face_name(view), name)
    assert seen == {"OUTLINE", "FRAME", "DRAWER_BOX", "BEVEL"}

    front = next(view for view in faces() if face_name(view) == "B1-1-BACK")
    lines = lines_of_groups(front)
    assert lines["OUTLINE"][2] == pytest.approx((457.2 - 3.2, 152.4))
    assert lines["FRAME"][0] == pytest.approx((57.0, 38.0))
    assert lines["FRAME"][2] == pytest.approx((457.2 - 3.2 - 57.0, 152.4 - 38.0))
    inside = 457.2 - 2 * 18.3 - 42.0
    assert lines["DRAWER_BOX"][0][0] == pytest.approx(
        (457.2 - 3.2 - inside - 2 * 15.9) / 2, abs=0.5
    )
    wall = next(view for view in faces() if view.part == "B2-1")
    assert lines_of_groups(wall)["BEVEL"] == [(0.0, 0.0), (pytest.approx(457.2 - 3.2), 0.0)]


def test_a_drawer_box_is_named_plainly() -> None:
    """As its piece in the cut list: never a box of a box."""
    names = [face_name(view) for view in faces()]
    assert {"B1-1-BOX-FRONT", "B1-1-BOX-BACK"} <= set(names)
    assert not any("BOX-BOX" in name for name in names)
    assert len(set(names)) == len(names)


def test_a_bevelled_edge_is_told_in_words_outside_the_part() -> None:
    """Beside the edge that is bevelled, and nowhere else."""
    told = {
        (view.bevel, edge)
        for view in faces()
        for edge, (_, _, words) in zip(("bottom", "top"), words_beside(view), strict=True)
        if "FINGER BEVEL" in words
    }
    assert told == {("bottom", "bottom"), ("top", "top")}


FACE_AS_DXF = """
import sys
from templates.cards.outlines import face_dxf
from templates.binding.drilled import drilled_parts
from tests.templates.small_layout import small_layout
views = [view for part in drilled_parts(small_layout()) for view in part.views]
view = next(view for view in views if (view.part, view.face) == ("B1-2", "back"))
sys.stdout.buffer.write(face_dxf(view))
"""


@pytest.mark.slow
def test_the_same_bytes_in_every_process_and_no_cache(tmp_path: Path) -> None:
    """Whatever order sets have in it, and whatever it finds; nothing is left in the user's
    folders."""
    made = []
    for seed in ("0", "4"):
        home = tmp_path / seed
        home.mkdir()
        done = subprocess.run(
            [sys.executable, "-c", FACE_AS_DXF],
            cwd=Path(__file__).parents[3],
            env={
                "PATH": os.environ["PATH"],
                "HOME": str(home),
                "XDG_CACHE_HOME": str(home / "cache"),
                "PYTHONHASHSEED": seed,
                "PYTHONDONTWRITEBYTECODE": "1",
            },
            capture_output=True,
            check=True,
            timeout=60,
        )
        made.append(done.stdout)
        assert list(home.iterdir()) == []
    assert made[0] == made[1]
    assert b"CUP_35_D13" in made[0]
