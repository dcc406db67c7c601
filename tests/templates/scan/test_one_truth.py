"""A page, the list of holes, the stations and the label say the same of a part. The sheets are held
to the same list by tests of their own."""

import json
from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest
from msgspec.structs import replace

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_list
from jigs.given.job import FrontSpec
from jigs.ground.lengths import format_inches, format_mm
from templates.labels.labellist import list_labels
from templates.lists.holelist import holes_json
from templates.scan.partpage import part_page
from templates.words.holewords import HOLE_WORDS
from templates.words.stationwords import station_title
from tests.jigs.sample import box, lay
from tests.templates.kitchens import galley, workshop
from tests.templates.scan.shown import SERVED, Node, Shown, read, show

KITCHENS = (
    galley(),
    workshop(),
    lay(
        replace(
            box(
                FrontSpec(id="B1-1", kind="drawer", height=152.4),
                FrontSpec(id="B1-2", kind="door", hinged="right"),
            ),
            assembled=True,
        )
    ),
)
"""The last stands together already: its heights count from the bottom panel."""


def plain(text: str) -> str:
    """Give a text with the signs that hold a figure together as they are read."""
    return text.replace("\u00a0", " ").replace("\u2060", "")


def figure(shown: Shown, mm: float) -> str:
    inches = f'{format_inches(mm)}"'
    if shown.layout.job.shown == "in":
        return f"{inches} ({format_mm(mm)})"
    return f"{format_mm(mm)} ({inches})"


PAGES: dict[tuple[int, str], Node] = {}
"""Pages that were read, by what is shown and the part."""


def page(shown: Shown, part: str) -> Node:
    key = id(shown), part
    if key not in PAGES:
        PAGES[key] = read(part_page(shown.scan, part, shown.standings[part], SERVED))
    return PAGES[key]


def nearer(x: float, wide: float) -> tuple[str, float]:
    """Count a place on a face as seen from its nearer end, from the left where both are as near."""
    return ("→", x) if x <= wide / 2 + 1e-6 else ("←", wide - x)


def listed_holes(
    shown: Shown, data: dict[str, Any]
) -> Iterator[tuple[str, tuple[str, float], float]]:
    """Give of each hole in the list its part, which way and how far in it is counted on the face
    that is drilled, as the driller sees it, and how high it is. From the back left is right."""
    panels = {
        side.board: side.bottom
        for side in shown.layout.sides
        if side.assembled and not side.partition
    }
    for front in data["fronts"]:
        for hole in front["holes"]:
            if "marked_from" not in hole:
                x = hole["x_mm"] if hole["face"] == "front" else front["width_mm"] - hole["x_mm"]
                yield front["id"], nearer(x, front["width_mm"]), hole["y_mm"]
    for side in data["sides"]:
        way = "→" if side["side"] == "left" else "←"
        for hole in side["holes"]:
            yield side["board"], (way, hole["x_mm"]), hole["y_mm"] - panels.get(side["board"], 0.0)
    for drawer in data["boxes"]:
        wide = drawer["width_mm"]
        for hole in drawer["holes"]:
            x = hole["x_mm"] if hole["face"] == "box-front" else wide - hole["x_mm"]
            yield drawer["part"], nearer(x, wide), hole["y_mm"]


@pytest.mark.parametrize("layout", KITCHENS)
def test_every_hole_of_the_list_stands_on_its_page_with_both_distances(layout: Layout) -> None:
    """What the list has is on the page of its part, and nothing else is."""
    shown = show(layout)
    wanted: dict[str, Counter[tuple[str, str]]] = {}
    for part, (way, across), up in listed_holes(shown, json.loads(holes_json(shown.layout))):
        places = wanted.setdefault(part, Counter())
        places[(f"{way} {figure(shown, across)}", f"↑ {figure(shown, up)}")] += 1
    assert wanted
    for part in shown.scan.parts:
        found: Counter[tuple[str, str]] = Counter()
        for row in page(shown, part).all("tr"):
            cells = [plain(cell.text) for cell in row.all("td")]
            if cells:
                found[(cells[0], cells[1])] += 1
        assert found == wanted.get(part, Counter()), part


@pytest.mark.parametrize("layout", KITCHENS)
def test_every_figure_of_a_table_stands_on_its_drawing(layout: Layout) -> None:
    """The drawing beside the table has the same distances, of pins at even steps but the ends."""
    shown = show(layout)
    for part in shown.scan.parts:
        for face in page(shown, part).all("div", "face"):
            drawn = {plain(text.text) for text in face.one("svg").all("text")}
            for bored in face.all("tbody"):
                rows = [[plain(cell.text) for cell in row.all("td")] for row in bored.all("tr")]
                pins = HOLE_WORDS["shelf"].name in bored.one("th").text
                assert {text for row in rows for text in row[: 1 if pins else 2]} <= drawn


@pytest.mark.parametrize("layout", KITCHENS)
def test_every_line_of_a_station_stands_on_its_part(layout: Layout) -> None:
    """Who reads the page strikes the lines that the station's table has, under its name."""
    shown = show(layout)
    for station in plan_stations(shown.layout):
        for row in station.rows:
            if row.held or row.bored:
                continue
            lists = list(page(shown, row.part.id).all("ul", "stations"))
            said = [plain(item.text) for each in lists for item in each.all("li")]
            served = "" if row.serves in (None, row.part.id) else f" for {row.serves}"
            [own] = [text for text in said if text.startswith(f"{station_title(station)}{served}:")]
            board = row.part.board
            low = board.panel if board is not None and board.assembled else 0.0
            places = {setting.y.value - low for setting in row.settings
                      if setting.y and setting.y.start in ("bottom", "top")}  # fmt: skip
            if len(places) <= 4:
                assert all(format_mm(place) in own for place in places), own
            assert all(f"card {row.settings[0].card}" in own for _ in row.settings[:1])


@pytest.mark.parametrize("layout", KITCHENS)
def test_page_and_label_carry_one_code_and_one_place(layout: Layout) -> None:
    """The label that was scanned and the page that opens name the same thing."""
    shown = show(layout)
    labels = list_labels(shown.layout, cut_list(shown.layout), ())
    assert {label.part for label in labels} == set(shown.scan.parts)
    for label in labels:
        root = page(shown, label.part)
        code = root.one("p", "code").text
        assert code == f"{label.part} {f'CODE {label.code}' if label.code else 'HOLD'}"
        where = next(iter(root.all("p", "said")), None)
        place = label.payload.place[0]
        assert place == "" or (where is not None and place in where.text)
