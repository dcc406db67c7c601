"""The stations of a job in one file: a first page, how a card is used, what must be true before the
second part where only the first is made, then station after station in the order of the work."""

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from jigs.bench.cost import PaperCost, cost_of
from jigs.bench.firstarticle import FirstArticle
from jigs.bench.station import Station
from jigs.box.parts import Layout
from templates.binding.contents import station_contents
from templates.binding.cover import begin_cover
from templates.binding.firstpage import first_of_station_pages
from templates.lists.workview import Paged
from templates.page.marks import Page
from templates.page.paper import Paper
from templates.page.pieces import MarkBlock
from templates.sheets.guide import guide_page
from templates.stations.stationset import StationSet, make_stations
from templates.words.coverwords import STATIONS
from templates.words.stationsteps import CARDS, card_steps

BESIDE_CARD = 38.0
"""What a page keeps free of its longer side for flap, windows and border of a card; mm."""


class StationFile(Struct, frozen=True, kw_only=True):
    """The stations of a job with the pages that stand before them."""

    layout: Layout
    front: tuple[Page, ...]
    laid: StationSet

    @property
    def pages(self) -> Iterator[Page]:
        """All pages in order, as a writer takes them."""
        yield from self.front
        yield from self.laid.pages

    @property
    def cost(self) -> PaperCost:
        """What the file asks for at the bench."""
        bench = cost_of(self.laid.stations)
        return PaperCost(
            pages=len(self.front) + len(self.laid.sheets),
            cards=bench.cards,
            folds=bench.folds,
            lines=bench.lines,
        )

    @property
    def paged(self) -> Paged:
        """On which pages its stations stand."""
        return Paged(
            pages={
                station.name: tuple(number for number, _ in self.laid.numbered(station))
                for station in self.laid.stations
            },
            before=len(self.front),
        )


def reach_on(paper: Paper) -> float:
    """How far a hole may lie from what its card is set by, so that a page holds the card; mm."""
    return max(paper.width, paper.height) - BESIDE_CARD


def bind_stations(
    layout: Layout,
    stations: Iterable[Station],
    paper: Paper,
    *,
    articles: Sequence[FirstArticle] | None = None,
) -> StationFile:
    """Bind stations of a job. `articles`: the stations have their first rows alone, of which these
    are tried together; what must be true before the second stands behind the first page."""
    stations = tuple(stations)
    cover = begin_cover(layout, paper, STATIONS)
    guide = cover.count + 1
    marks: tuple[Page, ...] = ()
    if articles is not None:
        marks = tuple(first_of_station_pages(stations, articles, paper, guide + 1))
    made = make_stations(layout, stations, paper, before=guide + len(marks))
    listed = False

    def on_cover(width: float, room: float) -> MarkBlock | None:
        nonlocal listed
        block = station_contents(made, width, room, guide)
        listed = block is not None
        return block

    front = (
        *cover.pages(on_cover),
        guide_page(
            CARDS,
            card_steps(stations),
            ("fold", "windows"),
            paper,
            guide,
            lambda width, room: None if listed else station_contents(made, width, room, guide),
        ),
        *marks,
    )
    return StationFile(layout=layout, front=tuple(paper.scaled(page) for page in front), laid=made)
