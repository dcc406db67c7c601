"""A front that is not as wide or as high as it was ordered has its holes at one place, whichever
paper they are set from: sheet and station count from the same ends; and the screws of one pull
keep their distance, for all of them count from one end."""

import json
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.ground.geometry import OPPOSITE, FaceEdge
from jigs.layout.layout import as_printed
from templates.binding.jobsheets import make_sheets
from templates.binding.sheetdata import sheets_json
from templates.page.paper import PAPERS
from templates.stations.stationset import make_stations, stations_json
from tests.jobtexts import box_text
from tests.templates.printed import laid_out

DOOR = 'kind = "door"\nhinged = "{}"\n{}'
LONG = '[pull.long]\nlike = "bar"\ncenters = 448\n[pull.wide]\nlike = "bar"\ncenters = 320\n'
BRACKET = (
    'kind = "lift"\n[[box.front.hole]]\nface = "back"\nx = 60\ny = {}\ndiameter = 5\n'
    'depth = 11\npurpose = "bracket"\nmirror = true'
)
JOBS = {
    "base": box_text("B1", "base", 'kind = "drawer"\nheight = 150', DOOR.format("left", "")),
    "low": box_text("B1", "base", 'kind = "drawer"', DOOR.format("right", "height = 287")),
    "tall": box_text("T1", "tall", DOOR.format("right", "")).replace("774.7", "2100"),
    "tall, pull near its top": box_text(
        "T1", "tall", 'kind = "drawer"\nheight = 900', DOOR.format("left", "")
    ).replace("774.7", "2100"),
    "wall": box_text("W1", "wall", DOOR.format("left", "")),
    "lift": box_text("W1", "wall", BRACKET.format(40)),
    "lift from above": box_text("W1", "wall", BRACKET.format(740)),
    "sink": box_text("S1", "sink", 'kind = "false-front"\nheight = 150', 'kind = "pair"'),
    "long": box_text("B1", "base", 'kind = "drawer"\nheight = 150\npull = "wide"',
                     DOOR.format("left", 'pull = "long"')) + LONG,
}  # fmt: skip
AXIS = {"left": "x", "right": "x", "middle-x": "x", "bottom": "y", "top": "y", "middle-y": "y"}
Ends = dict[tuple[str, str, float, float], tuple[str, str]]
"""Of each hole of a front (part, face, place as seen) the ends that it is set from; mm."""


@cache
def layout_of(name: str) -> Layout:
    return laid_out(JOBS[name])


def at_stations(layout: Layout) -> Ends:
    made = make_stations(layout, plan_stations(layout), PAPERS["common"])
    data: dict[str, Any] = json.loads(stations_json(made))
    ends: Ends = {}
    fronts = {front.id for front in layout.fronts}
    for station in data["stations"]:
        cards = {card["card"]: card for card in station["cards"]}
        for row in station["rows"]:
            for setting in row["settings"] if row["part"] in fronts else ():
                for hole, where in _set(cards[setting["card"]], setting, row):
                    ends[row["part"], station["face"], *hole] = where
    return ends


def _set(
    card: dict[str, Any], setting: dict[str, Any], row: dict[str, Any]
) -> Iterator[tuple[tuple[float, float], tuple[str, str]]]:
    """Set a card; give where its holes come, and the ends that it was set from."""
    way = -1 if setting["turned"] else 1
    places: dict[str, float] = {}
    ends: dict[str, str] = {}
    size = {"x": row["width_mm"], "y": row["height_mm"]}
    for each in card["edges"]:
        name: FaceEdge = OPPOSITE[each["edge"]] if setting["turned"] else each["edge"]
        axis = AXIS[name]
        far = size[axis] if name in ("right", "top") else 0.0
        places[axis], ends[axis] = far - way * each["at_mm"], name
    for each in card["lines"]:
        axis = each["axis"]
        end, value = setting[axis]["from"], setting[axis]["value_mm"] or 0.0
        at = {"right": size[axis] - value, "top": size[axis] - value,
              "left": value, "bottom": value}.get(end, size[axis] / 2 + value)  # fmt: skip
        places[axis], ends[axis] = at - way * each["at_mm"], end
    for hole in card["holes"]:
        x, y = places["x"] + way * hole["x_mm"], places["y"] + way * hole["y_mm"]
        yield (round(x, 1), round(y, 1)), (ends["x"], ends["y"])


def on_sheets(layout: Layout) -> Ends:
    data: dict[str, Any] = json.loads(
        sheets_json(make_sheets(as_printed(layout), PAPERS["common"]))
    )
    ends: Ends = {}
    fronts = {front.id for front in layout.fronts}
    for card in data["cards"]:
        named = [each["edge"] for each in card["edges"]]
        where = {AXIS[name]: name for name in (*(each["from"] for each in card["index"]), *named)}
        for part in card.get("parts", [card]):
            x, y = part["origin_mm"]
            for hole in card["holes"] if part["part"] in fronts else ():
                at = round(hole["x_mm"] - x, 1), round(hole["y_mm"] - y, 1)
                ends[part["part"], card["face"], *at] = where["x"], where["y"]
    return ends


@pytest.mark.parametrize("name", JOBS)
def test_sheet_and_station_count_from_the_same_ends(name: str) -> None:
    stations, sheets = at_stations(layout_of(name)), on_sheets(layout_of(name))
    assert stations
    for (part, face, x, y), ends in stations.items():
        (found,) = [
            where for (of, on, across, up), where in sheets.items()
            if (of, on) == (part, face) and abs(across - x) < 0.15 and abs(up - y) < 0.15
        ]  # fmt: skip
        assert found == ends, (part, face, x, y)


@pytest.mark.parametrize("name", JOBS)
def test_all_screws_of_a_pull_count_from_one_end(name: str) -> None:
    """Those of a pull of 448 too, too long for a card: the near one from the top by a fold, the
    other from the top on a line; else a door 1 mm higher would not take it."""
    ends: dict[str, set[tuple[str, str]]] = {}
    for (part, face, _, _), where in at_stations(layout_of(name)).items():
        if face == "front":
            ends.setdefault(part, set()).add(where)
    assert all(len(each) == 1 for each in ends.values()), ends


def test_a_pull_at_a_height_counts_from_the_bottom() -> None:
    """1000 above the floor of a tall front, though its top is nearer; 63.5 below the top of a base
    door, 63.5 above the bottom of a wall door and of a lift-up door, from the end that is named."""
    wanted = {("tall", "T1-1"): "bottom", ("base", "B1-2"): "top", ("wall", "W1-1"): "bottom",
              ("lift", "W1-1"): "bottom"}  # fmt: skip
    for (name, front), end in wanted.items():
        found = {
            where[1] for (part, face, *_), where in at_stations(layout_of(name)).items()
            if (part, face) == (front, "front")
        }  # fmt: skip
        assert found == {end}, name
