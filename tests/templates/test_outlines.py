"""Bare faces: PDF, SVG and DXF of a face have the same holes, read by three other libraries."""

import io
import json
import xml.etree.ElementTree as ET

import ezdxf
import pytest
from hypothesis import given, settings

from jigs.geometry import Hole
from jigs.job import Job
from jigs.layout import lay_out
from jigs.parts import Layout
from templates.dxf import layer_name, write_dxf
from templates.faces import FaceView
from templates.outlines import MARGIN, face_name, hole_class, outline_page
from templates.paper import PAPERS
from templates.pdf import write_pdf
from templates.sheetdata import sheets_json
from templates.sheets import make_sheets
from templates.svg import write_svg
from tests import jobs
from tests.readback import read_pages
from tests.templates.small_layout import small_layout

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
    drawing = ezdxf.read(io.StringIO(write_dxf(view).decode()))
    assert not drawing.audit().has_errors
    assert drawing.header["$INSUNITS"] == 4
    assert drawing.dxfversion == "AC1024"
    return sorted(
        (c.dxf.center.x, c.dxf.center.y, 2 * c.dxf.radius)
        for c in drawing.modelspace().query("CIRCLE")
    )


def near(found: Holes, expected: Holes) -> bool:
    """Compare hole with hole; sorting may swap those that differ by less than the rounding."""
    left = list(expected)
    for hole in found:
        fits = [h for h in left if max(abs(a - b) for a, b in zip(h, hole, strict=True)) <= TRUE]
        if not fits:
            return False
        left.remove(fits[0])
    return not left


@settings(max_examples=8, deadline=None)
@given(job=jobs.jobs(most_boxes=2))
def test_svg_and_dxf_have_the_holes_of_every_face(job: Job) -> None:
    """Whatever the job: the same holes, files told apart by name, the same bytes again."""
    views = list(make_sheets(lay_out(job), PAPERS["common"]).views)
    names = [face_name(view) for view in views]
    assert len(set(names)) == len(names)
    for view in views[:6]:
        assert near(holes_of_svg(view), wanted(view))
        assert near(holes_of_dxf(view), wanted(view))
        assert write_dxf(view) == write_dxf(view)
        # Its four dates are 1 January 2000 (a Julian day), whatever the clock says.
        assert write_dxf(view).count(b"\n2451545.0") == 4


@pytest.mark.parametrize(
    ("hole", "css", "layer"),
    [
        (("cup", 35.0, 13.0), "cup-35-13", "CUP_35_D13"),
        (("plate", 5.0, 12.0), "plate-5-12", "PLATE_5_D12"),
        (("pull", 5.0, None), "pull-5-through", "PULL_5_THROUGH"),
        (("cup-fixing", 2.5, 11.0), "cup-fixing-2_5-11", "CUP_FIXING_2.5_D11"),
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
    made = make_sheets(layout, PAPERS["common"])
    pages = read_pages(write_pdf(made.pages))
    found: dict[tuple[str, str], Holes] = {}
    for card in json.loads(sheets_json(made))["cards"]:
        x0, y0 = card["origin_mm"]
        left, low = card["x_mm"], card["y_mm"]
        right, high = left + card["width_mm"], low + card["height_mm"]
        for printed in pages[card["page"] - 1].cards:
            for ring in printed.rings:
                if left < ring.x < right and low < ring.y < high:
                    hole = (ring.x - x0, ring.y - y0, ring.diameter)
                    holes = found.setdefault((card["part"], card["face"]), [])
                    if not any(near([hole], [other]) for other in holes):
                        holes.append(hole)
    return found


def test_pdf_svg_and_dxf_of_a_part_have_the_same_holes() -> None:
    """Paper, plotter and machine drill alike: a drawer over a door, and the sides of their box."""
    layout = small_layout()
    printed = holes_of_pdf(layout)
    views = list(make_sheets(layout, PAPERS["common"]).views)
    assert {(view.part, view.face) for view in views} == set(printed)
    for view in views:
        on_paper = printed[view.part, view.face]
        assert near(on_paper, holes_of_svg(view)), face_name(view)
        assert near(on_paper, holes_of_dxf(view)), face_name(view)
        assert near(on_paper, wanted(view))
