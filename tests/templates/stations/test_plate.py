"""Plates as files, read back by a DXF library and an XML parser: as the data of the stations."""

import io
import json
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

import ezdxf
import pytest
from ezdxf import units
from ezdxf.math import Vec2, is_point_in_polygon_2d
from hypothesis import given, settings

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from templates.page.paper import PAPERS
from templates.stations.plate import Plate, draw_plate
from templates.stations.platefiles import plate_dxf, plate_svg
from templates.stations.stationset import make_stations, stations_json
from templates.stations.stationview import shop_of
from tests.jigs.bench.test_stations import demo, sound, uneven_box
from tests.jobs import jobs
from tests.jobtexts import box_text
from tests.templates.printed import laid_out
from tests.templates.stations.stationreading import title_of

JOBS = ("few", *(pytest.param(name, marks=pytest.mark.slow)
                 for name in ("uneven", "demo", "mill-loft", "inset")))  # fmt: skip
SVG = "{http://www.w3.org/2000/svg}"
TRUE = 0.02
"""What a file may differ from the data, mm."""
GUIDED = {"shelf", "clearance"}
"""Where the bit goes through the plate; all else is punched through 2 mm."""

INSET = box_text(
    "B1", "drawer", 'kind = "drawer"\nheight = 200', 'kind = "drawer"', more='overlay = "inset"'
)
"""Drawer boxes nearly as wide as their fronts: their angles have a narrow arm."""


@dataclass(frozen=True, slots=True)
class Read:
    """A plate as a file has it: corners, guide holes with diameter, other cut holes, and where
    the edges and lines run across (y) and up (x); mm."""

    corners: tuple[tuple[float, float], ...]
    guides: tuple[tuple[float, float, float], ...]
    up: tuple[float, ...]
    across: tuple[float, ...]


@cache
def layout_of(name: str) -> Layout:
    if name == "inset":
        return laid_out(INSET)
    named = {"uneven": uneven_box, "few": uneven_box, "demo": demo}
    return named.get(name, lambda: sound(name))()


@cache
def plates_of(name: str) -> tuple[tuple[dict[str, Any], Plate], ...]:
    """Give each card as the data has it, with its plate; `few`: some of the uneven box's."""
    if name == "few":
        return plates_of("uneven")[::3]
    layout = layout_of(name)
    stations = plan_stations(layout)
    data = json.loads(stations_json(make_stations(layout, stations, PAPERS["common"])))
    shop = shop_of(layout)
    return tuple(
        (next(each for each in entry["cards"] if each["card"] == card.letter),
         draw_plate(shop, station, card))
        for station, entry in zip(stations, data["stations"], strict=True)
        for card in station.cards
    )  # fmt: skip


@cache
def opened(plate: Plate) -> Any:
    """Open a DXF; its entities are known to the library alone."""
    return ezdxf.read(io.StringIO(plate_dxf(plate).decode()))


def read_dxf(plate: Plate) -> Read:
    drawing = opened(plate)
    assert drawing.units == units.MM
    space = drawing.modelspace()
    (outline,) = space.query('LWPOLYLINE[layer=="CUT_OUTLINE"]')
    assert outline.closed
    lines = [
        [(x, y) for x, y in line.get_points("xy")]
        for line in space.query("LWPOLYLINE")
        if line.dxf.layer in ("ENGRAVE_EDGE", "ENGRAVE_LINE")
    ]
    return Read(
        tuple(outline.get_points("xy")),
        tuple(
            (circle.dxf.center.x, circle.dxf.center.y, 2 * circle.dxf.radius)
            for circle in space.query('CIRCLE[layer=="CUT_GUIDE"]')
        ),
        tuple(a[0] for a, b in lines if abs(a[0] - b[0]) < TRUE),
        tuple(a[1] for a, b in lines if abs(a[1] - b[1]) < TRUE),
    )


def read_svg(plate: Plate) -> Read:
    root = ET.fromstring(plate_svg(plate))
    width, height = (float(root.attrib[key].removesuffix("mm")) for key in ("width", "height"))
    assert root.attrib["viewBox"].split() == ["0", "0", f"{width:g}", f"{height:g}"]

    def of_class(name: str) -> Iterator[ET.Element]:
        return (each for each in root.iter() if each.attrib.get("class") == name)

    (outline,) = of_class("cut outline")
    corners: tuple[tuple[float, float], ...]
    if outline.tag == f"{SVG}rect":
        x, y, w, h = (float(outline.attrib[key]) for key in ("x", "y", "width", "height"))
        corners = ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
    else:
        assert outline.tag == f"{SVG}polygon"  # which is closed
        pairs = (pair.split(",") for pair in outline.attrib["points"].split())
        corners = tuple((float(x), float(y)) for x, y in pairs)
    lines = [
        [float(line.attrib[key]) for key in ("x1", "y1", "x2", "y2")]
        for name in ("engrave edge", "engrave line")
        for line in of_class(name)
    ]
    return Read(
        tuple((x, height - y) for x, y in corners),
        tuple(
            (float(c.attrib["cx"]), height - float(c.attrib["cy"]), 2 * float(c.attrib["r"]))
            for c in of_class("cut guide")
        ),
        tuple(x1 for x1, _, x2, _ in lines if x1 == x2),
        tuple(height - y1 for _, y1, _, y2 in lines if y1 == y2),
    )


def origin_of(card: dict[str, Any], read: Read) -> tuple[tuple[float, float], tuple[float, float]]:
    """Give where edges and lines cross that a card is set by, on its page and in a file. On a
    line stands the inner edge of an angle."""
    page: dict[str, float] = {}
    file: dict[str, float] = {}
    for edge in card["edges"]:
        axis = "x" if edge["edge"] in ("left", "right") else "y"
        page[axis] = edge["at_mm"]
    for line in card["lines"]:
        page[line["axis"]] = line["at_mm"]
        if "stands" in card:
            inner = {round(corner["xy".index(line["axis"])], 3) for corner in read.corners}
            (file[line["axis"]],) = sorted(inner)[1:-1]
    for axis, places in (("x", read.up), ("y", read.across)):
        if axis not in file:
            assert max(places) - min(places) < TRUE, "one edge or one line"
            file[axis] = places[0]
    return (page["x"], page["y"]), (file["x"], file["y"])


@pytest.mark.parametrize("name", JOBS)
@pytest.mark.parametrize("read_back", [read_dxf, read_svg])
def test_holes_stand_where_the_data_has_them(name: str, read_back: Any) -> None:
    """To 0.02 mm from what the plate is set by: 2 mm to punch through, else as the bit is."""
    for card, plate in plates_of(name):
        read = read_back(plate)
        (px, py), (fx, fy) = origin_of(card, read)
        wanted = sorted(
            (hole["x_mm"] - px, hole["y_mm"] - py,
             hole["diameter_mm"] if hole["purpose"] in GUIDED else 2.0)
            for hole in card["holes"]
        )  # fmt: skip
        got = sorted((x - fx, y - fy, diameter) for x, y, diameter in read.guides)
        assert len(got) == len(wanted), plate.name
        for one, other in zip(got, wanted, strict=True):
            assert one == pytest.approx(other, abs=TRUE), plate.name
        if "stands" in card:
            corner = (card["stands"]["x_mm"] - px, card["stands"]["y_mm"] - py)
            inner = [(x - fx, y - fy) for x, y in read.corners]
            assert any(each == pytest.approx(corner, abs=TRUE) for each in inner), plate.name


@pytest.mark.parametrize("name", JOBS)
def test_all_that_is_cut_lies_well_inside_a_closed_outline(name: str) -> None:
    """Holes and windows at least 2 mm from the border and from each other; words stay on it."""
    for _, plate in plates_of(name):
        space = opened(plate).modelspace()
        (outline,) = space.query('LWPOLYLINE[layer=="CUT_OUTLINE"]')
        border = [Vec2(point) for point in outline.get_points("xy")]
        cut: list[tuple[float, float, float, float]] = []
        for circle in space.query("CIRCLE"):
            if circle.dxf.layer.startswith("CUT"):
                (x, y, _), r = circle.dxf.center, circle.dxf.radius
                cut.append((x - r, y - r, x + r, y + r))
        for window in space.query('LWPOLYLINE[layer=="CUT_WINDOW"]'):
            assert window.closed
            xs, ys = zip(*window.get_points("xy"), strict=True)
            cut.append((min(xs), min(ys), max(xs), max(ys)))
        for number, (x0, y0, x1, y1) in enumerate(cut):
            for corner in ((x0 - 1.9, y0 - 1.9), (x1 + 1.9, y0 - 1.9), (x0 - 1.9, y1 + 1.9),
                           (x1 + 1.9, y1 + 1.9)):  # fmt: skip
                assert is_point_in_polygon_2d(Vec2(corner), border) > 0, plate.name
            for a0, b0, a1, b1 in cut[:number]:
                apart = max(x0 - a1, a0 - x1, y0 - b1, b0 - y1)
                assert apart > 0.9, plate.name
        for words in space.query("TEXT"):
            assert words.dxf.layer == "ENGRAVE_TEXT"
            assert is_point_in_polygon_2d(Vec2(words.dxf.insert), border) > 0, plate.name


@pytest.mark.parametrize("name", JOBS)
def test_it_says_which_plate_it_is_and_what_its_holes_guide(name: str) -> None:
    """Station, letter, code; punch or bit; the strip along each edge that a card folds over."""
    ids = [front.id for front in layout_of(name).fronts]
    for card, plate in plates_of(name):
        texts = [words.dxf.text for words in opened(plate).modelspace().query("TEXT")]
        said = " ".join(texts)
        assert title_of(plate.name.rpartition("-card-")[0], ids) in said
        assert f"code {card['code']}" in said
        purposes = {hole["purpose"] for hole in card["holes"]}
        assert ("Holes of 2:" in said) == bool(purposes - GUIDED)
        assert ("guide the bit" in said) == bool(purposes & GUIDED)
        assert sum(text.startswith("STRIP") for text in texts) == len(card["edges"])


def test_a_plate_shifted_by_little_is_found() -> None:
    """The comparison can fail."""
    card, plate = plates_of("uneven")[0]
    card = json.loads(json.dumps(card))
    card["holes"][0]["x_mm"] += 0.05
    read = read_dxf(plate)
    (px, _), (fx, _) = origin_of(card, read)
    wanted = sorted(hole["x_mm"] - px for hole in card["holes"])
    assert sorted(x - fx for x, _, _ in read.guides) != pytest.approx(wanted, abs=TRUE)


@pytest.mark.slow
@given(jobs())
@settings(max_examples=12)
def test_every_card_of_any_job_has_a_plate(made: Job) -> None:
    """Its words find room, and its files are written."""
    layout = lay_out(made)
    shop = shop_of(layout)
    for station in plan_stations(layout):
        for card in station.cards:
            assert plate_svg(draw_plate(shop, station, card))
