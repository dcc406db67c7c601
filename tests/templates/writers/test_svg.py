"""Drawings as SVG, read back by an XML parser: true size, places, names, and what is refused."""

import math
import xml.etree.ElementTree as ET
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates.page.marks import Area, Circle, Line, Mark, Outline, Page, Qr, Text
from templates.page.typeface import text_width
from templates.writers.svg import write_svg
from tests.anytext import ANY

SVG = "{http://www.w3.org/2000/svg}"


def drawn(*marks: Mark, width: float = 60.0, height: float = 40.0) -> ET.Element:
    """Write a page of marks and parse it."""
    return ET.fromstring(write_svg(Page(width=width, height=height, marks=marks)))


def only(root: ET.Element, tag: str) -> ET.Element:
    """Give the one element of a kind that is a mark."""
    [found] = [e for e in root.iter(SVG + tag) if e.get("class") != "paper"]
    return found


def test_a_drawing_opens_at_its_true_size() -> None:
    """SVG 1.1, 7.2 and 7.7: a size in mm with a view box of as many units makes a unit a mm."""
    root = drawn(width=267.0, height=198.5)
    assert (root.get("width"), root.get("height")) == ("267mm", "198.5mm")
    assert root.get("viewBox") == "0 0 267 198.5"


def test_y_counts_down_from_the_top() -> None:
    """A line from the lower left corner upwards ends above where it began."""
    line = only(drawn(Line(x1=0, y1=0, x2=10, y2=25)), "line")
    places = [float(line.get(key, "")) for key in ("x1", "y1", "x2", "y2")]
    assert places == [0, 40 - 0, 10, 40 - 25]


def test_an_upright_rectangle_is_a_rect_and_any_other_outline_a_polygon() -> None:
    """Whichever corner it begins at, and whichever way it runs."""
    corners = ((1.0, 2.0), (11.0, 2.0), (11.0, 7.0), (1.0, 7.0))
    for start in range(4):
        turned = corners[start:] + corners[:start]
        for points in (turned, turned[::-1]):
            rect = only(drawn(Outline(points=points)), "rect")
            size = [float(rect.get(key, "")) for key in ("x", "y", "width", "height")]
            assert size == [1, 40 - 7, 11 - 1, 7 - 2]
    slanted = only(drawn(Area(points=((0, 0), (10, 1), (10, 5), (0, 5)))), "polygon")
    assert slanted.get("points") == "0,40 10,39 10,35 0,35"
    assert slanted.get("fill") == "black"


def test_a_dashed_rectangle_begins_at_its_first_corner() -> None:
    """As in print; a `rect` has its dashes from the upper left corner, whatever was meant."""
    corners = ((1.0, 2.0), (11.0, 2.0), (11.0, 7.0), (1.0, 7.0))
    dashed = only(drawn(Outline(points=corners, dash="dashed")), "polygon")
    assert dashed.get("points") == "1,38 11,38 11,33 1,33"


def test_a_circle_has_its_diameter() -> None:
    """The radius is half of it."""
    circle = only(drawn(Circle(x=20, y=10, diameter=35)), "circle")
    assert [float(circle.get(key, "")) for key in ("cx", "cy", "r")] == [20, 30, 35 / 2]


def test_numbers_are_rounded_to_a_thousandth() -> None:
    """Never a negative nothing, never an exponent."""
    line = only(drawn(Line(x1=1 / 3, y1=40, x2=-1e-9, y2=40 - 1e-9)), "line")
    assert [line.get(key) for key in ("x1", "y1", "x2", "y2")] == ["0.333", "0", "0", "0"]


@pytest.mark.parametrize("wrong", [math.nan, math.inf, -math.inf])
@pytest.mark.parametrize(
    "make",
    [
        lambda v: Line(x1=v, y1=0, x2=1, y2=1),
        lambda v: Circle(x=0, y=0, diameter=v),
        lambda v: Outline(points=((0, 0), (v, 0), (v, 1), (0, 1))),
        lambda v: Area(points=((0, 0), (1, v), (2, 2))),
        lambda v: Text(x=0, y=v, text="B1"),
        lambda v: Qr(x=v, y=0, text="B1"),
    ],
)
def test_what_is_not_finite_is_refused(make: object, wrong: float) -> None:
    """A drawing with a hole in it is not written."""
    assert callable(make)
    with pytest.raises(ValueError, match="not finite"):
        write_svg(Page(width=10, height=10, marks=(make(wrong),)))


def test_text_keeps_the_width_of_the_printed_face() -> None:
    """Size by the height of a capital, width held whichever face the viewer has."""
    text = only(drawn(Text(x=5, y=6, text="B3-2 & <W>", size=3.5, bold=True, angle=90)), "text")
    assert text.text == "B3-2 & <W>"
    assert float(text.get("textLength", "")) == round(text_width("B3-2 & <W>", 3.5, True), 3)
    assert text.get("transform") == "rotate(-90 5 34)"
    assert float(text.get("font-size", "")) == round(3.5 * 1000 / 688, 3)


def test_two_spaces_stay_two() -> None:
    """XML makes one of them, unless it is told not to (SVG 1.1, 10.15)."""
    preserve = "{http://www.w3.org/XML/1998/namespace}space"
    assert only(drawn(Text(x=1, y=1, text="B1-1  PULL")), "text").get(preserve) == "preserve"
    assert only(drawn(Text(x=1, y=1, text="B1-1 PULL")), "text").get(preserve) is None


@given(st.text(ANY, max_size=30), st.text(ANY, max_size=12), st.text(ANY, max_size=12))
@settings(max_examples=60)
def test_whatever_is_written_the_drawing_can_be_parsed(text: str, name: str, layer: str) -> None:
    """XML 1.0, 2.2 allows no control characters: they go, all else stays."""
    mark = Text(x=1, y=1, text=text, name=name, layer=layer)
    root = ET.fromstring(write_svg(Page(width=10, height=10, marks=(mark,), entry=text)))
    assert only(root, "text") is not None


def test_names_are_ids_that_are_valid_and_unique() -> None:
    """XML 1.0, 3.3.1: an ID is a name, which no digit begins, and stands once."""
    square = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
    root = drawn(*(Outline(points=square, name=n) for n in ("B1-1", "1-2", "B1-1", "_1-2")))
    rects = [e for e in root.iter(SVG + "rect") if e.get("class") != "paper"]
    assert [rect.get("data-part") for rect in rects] == ["B1-1", "1-2", "B1-1", "_1-2"]
    assert [rect.get("id") for rect in rects] == ["B1-1", "_1-2", "B1-1.2", "_1-2.2"]


def test_a_symbol_is_one_path_of_its_dark_modules() -> None:
    """Its upper left corner is dark (a finder pattern, ISO/IEC 18004)."""
    path = only(drawn(Qr(x=10, y=10, text="B1", module=0.5)), "path")
    given = path.get("d", "")
    assert given.startswith(f"M10 {40 - 10 - 21 * 0.5:g}h{7 * 0.5:g}v0.5h-3.5z")


def test_dashes_are_measured_in_line_widths() -> None:
    """ISO 128-20, line 02: 12 and 3 line widths."""
    line = only(drawn(Line(x1=0, y1=0, x2=9, y2=9, width=0.25, dash="dashed")), "line")
    assert line.get("stroke-dasharray") == "3 0.75"
    assert line.get("stroke-width") == "0.25"


def test_the_same_page_gives_the_same_bytes() -> None:
    """Nothing of the day or the machine goes into it."""
    page = Page(width=60, height=40, marks=(Text(x=1, y=1, text="ü"), Qr(x=9, y=9, text="B")))
    for one, other in pairwise(write_svg(page, title="x") for _ in range(3)):
        assert one == other


def test_a_symbol_for_a_corrected_printer_has_modules_of_another_height() -> None:
    """`rise` is a module's height, `short` what a dark one lacks at its edges."""
    mark = Qr(x=10, y=10, text="B1", module=0.5, rise=0.6, short=0.01)
    given = only(drawn(mark), "path").get("d", "")
    left, top = 10 + 0.01 * 0.5, 40 - 10 - (21 - 0.01) * 0.6
    wide, high = (7 - 2 * 0.01) * 0.5, (1 - 2 * 0.01) * 0.6
    assert given.startswith(f"M{left:g} {top:g}h{wide:g}v{high:g}h-{wide:g}z")
