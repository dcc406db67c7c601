"""The stations of a job on paper: page after page, in the order of the work, and as data."""

import json
from collections.abc import Iterable, Iterator
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jigs.bench.boxtable import parted_tables
from jigs.bench.station import CardEdge, Offset, Row, Setting, Station
from jigs.box.parts import Layout
from templates.page.marks import Page
from templates.page.paper import Paper
from templates.stations.stationpage import PlacedCard, StationPage, station_pages
from templates.stations.stationview import Shop, shop_of
from templates.words.openwords import open_data
from templates.words.stationsteps import as_on, steps
from templates.words.stationwords import by_hand_words, reason_words, station_title

PASSES = 3
"""How often stations are laid out anew at most, until each page that is named is the right one."""


class StationSet(Struct, frozen=True, kw_only=True):
    """The stations of a job, laid out on a paper."""

    paper: Paper
    stations: tuple[Station, ...]
    sheets: tuple[StationPage, ...]
    before: int = 0
    """How many pages stand before them in their file."""

    @property
    def pages(self) -> Iterator[Page]:
        """The pages alone, as a writer takes them."""
        return (sheet.page for sheet in self.sheets)

    def numbered(self, station: Station) -> list[tuple[int, StationPage]]:
        """Give the pages of a station with their numbers in the file."""
        return [
            (number, sheet)
            for number, sheet in enumerate(self.sheets, start=1 + self.before)
            if sheet.station is station
        ]


def make_stations(
    layout: Layout,
    stations: Iterable[Station],
    paper: Paper,
    *,
    before: int = 0,
) -> StationSet:
    """Lay out stations on a paper, behind so many other pages of their file."""
    laid = tuple(stations)
    shop = replace(shop_of(layout), parted=parted_tables(laid))
    made = _laid_out(shop, laid, paper, before)
    for _ in range(PASSES):
        pages = _pages_of(made, shop.parted)
        if pages == shop.pages:
            break
        shop = replace(shop, pages=pages)
        made = _laid_out(shop, laid, paper, before)
    return made


def _pages_of(
    made: StationSet, columns: Iterable[tuple[str, int]]
) -> dict[tuple[str, int], dict[str, str]]:
    """Say at which stations and on which pages the tables of some columns begin."""
    pages: dict[tuple[str, int], dict[str, str]] = {column: {} for column in columns}
    for number, sheet in enumerate(made.sheets, start=1 + made.before):
        for column in sheet.begins:
            if column in pages:
                where = f"{station_title(sheet.station)}, page {number}"
                pages[column][sheet.station.name] = where
    return pages


def _laid_out(shop: Shop, laid: tuple[Station, ...], paper: Paper, before: int) -> StationSet:
    """Lay out stations where it is known, or not yet, on which page each stands."""
    sheets: list[StationPage] = []
    steps_on: dict[tuple[str, ...], int] = {}
    for station in laid:
        fronts = (shop.fronts.get(row.part.id) for row in station.rows)
        own = steps(station, counterbored=any(f and f.screws.counterbore for f in fronts))
        told = (as_on(steps_on[own]),) if own in steps_on else own
        page = len(sheets) + before + 1
        if own:
            steps_on.setdefault(own, page)
        sheets += station_pages(
            shop,
            station,
            paper,
            page,
            reason=" ".join(
                filter(None, (reason_words(station, laid), by_hand_words(station, laid)))
            ),
            told=told,
        )
    return StationSet(paper=paper, stations=laid, sheets=tuple(sheets), before=before)


def stations_json(stations: StationSet) -> str:
    """Give the stations as JSON text: cards where they lie on paper, rows with every setting."""
    return json.dumps(
        {
            "schema": 1,
            "paper": stations.paper.name,
            "stations": [_station(stations, station) for station in stations.stations],
        },
        indent=1,
        ensure_ascii=False,
    )


def _round(value: float) -> float:
    return round(value, 4) + 0.0


def _station(stations: StationSet, station: Station) -> dict[str, Any]:
    pages = stations.numbered(station)
    return {
        "name": station.name,
        "purpose": station.purpose,
        "face": station.face,
        "hand": station.hand,
        "code": station.code,
        "page": pages[0][0],
        "cards": [_card(number, placed) for number, sheet in pages for placed in sheet.cards],
        "rows": [_row(row) for row in station.rows],
    }


def _card(page: int, placed: PlacedCard) -> dict[str, Any]:
    drawn, dx, dy = placed.drawn, placed.dx, placed.dy
    card = drawn.card
    data: dict[str, Any] = {
        "card": card.letter,
        "code": card.code,
        "page": page,
        "x_mm": _round(drawn.box[0] + dx),
        "y_mm": _round(drawn.box[1] + dy),
        "width_mm": _round(drawn.width),
        "height_mm": _round(drawn.height),
        "edges": [_edge(edge, dx, dy) for edge in card.edges],
        "lines": [
            {"axis": axis, "at_mm": _round(dx if axis == "x" else dy)} for axis in card.lines
        ],
        "holes": [
            {
                "purpose": hole.purpose,
                "x_mm": _round(hole.x + dx),
                "y_mm": _round(hole.y + dy),
                "diameter_mm": _round(hole.diameter),
                "depth_mm": None if hole.depth is None else _round(hole.depth),
            }
            for hole in card.holes
        ],
    }
    if card.carry:
        data["carry_mm"] = [_round(x + dx) for x in card.carry]
    if card.stands is not None:
        data["stands"] = {
            "x_mm": _round(card.stands.x + dx),
            "y_mm": _round(card.stands.y + dy),
        }
    return data


def _edge(edge: CardEdge, dx: float, dy: float) -> dict[str, Any]:
    """Say where an edge lies on the page, and how far inside the face's own end if it is a front
    edge whose band is still to come."""
    at = dx if edge.edge in ("left", "right") else dy
    data: dict[str, Any] = {"edge": edge.edge, "at_mm": _round(at), "by": edge.by}
    if edge.inside > 0.0:
        data["inside_mm"] = _round(edge.inside)
    return data


def _row(row: Row) -> dict[str, Any]:
    part = row.part
    data: dict[str, Any] = {
        "part": part.id,
        "code": part.code,
        "side": part.board.side if part.board else None,
        "column": part.board.column if part.board else None,
        "serves": row.serves,
        "width_mm": _round(part.width),
        "height_mm": _round(part.height),
        "held": row.withheld,
        **({"open": open_data(row.open)} if row.open else {}),
        "settings": [_setting(setting) for setting in row.settings],
    }
    if row.marks is not None:
        data["marks"] = {
            "box": row.marks.box,
            "in_left_mm": _round(row.marks.in_left),
            "in_right_mm": _round(row.marks.in_right),
            "up_mm": _round(row.marks.up),
        }
    return data


def _setting(setting: Setting) -> dict[str, Any]:
    return {
        "card": setting.card,
        "turned": setting.turned,
        "x": _place(setting.x),
        "y": _place(setting.y),
        "holes": None if setting.holes is None else list(setting.holes),
    }


def _place(place: Offset | None) -> dict[str, Any] | None:
    if place is None:
        return None
    middle = place.start in ("middle-x", "middle-y")
    return {"from": place.start, "value_mm": None if middle else _round(place.value)}
