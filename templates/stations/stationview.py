"""The parts of a station as faces that words are made for, and what its cards' edges are called."""

from collections.abc import Iterable, Mapping, Sequence

from msgspec import Struct, field

from jigs.bench.benchpart import BenchPart
from jigs.bench.boxtable import BoxTable
from jigs.bench.station import Station, StationCard
from jigs.box.drawerbox import AnyDrawer, DrawerBox
from jigs.box.parts import Front, Layout
from jigs.ground.geometry import OPPOSITE, Face, FaceEdge, Hand
from templates.faces.faceview import FaceView
from templates.faces.views import (
    view_of_drawer_back,
    view_of_drawer_box,
    view_of_side,
    views_of_front,
)
from templates.words.facewords import drilled_words, edge_words
from templates.words.stationwords import several_words

ViewKey = tuple[str, Face, int | None, Hand | None]
"""A drilled face: its part, face, and of a board its column and the side of it."""


class Shop(Struct, frozen=True, kw_only=True):
    """What the words of a job's stations are made from: the fronts, drawer boxes and faces."""

    layout: Layout
    fronts: Mapping[str, Front]
    drawers: Mapping[str, AnyDrawer]
    views: Mapping[ViewKey, FaceView]
    parted: Mapping[tuple[str, int], BoxTable] = field(default_factory=dict)
    """The columns of boxes whose boards are bored at several stations, whole."""
    pages: Mapping[tuple[str, int], Mapping[str, str]] = field(default_factory=dict)
    """Of each of them, where its table begins at every station: `SIDES B, page 15`."""

    def view(self, part: BenchPart) -> FaceView | None:
        """Give the face of a part; None where nothing is drilled into it yet."""
        return self.views.get(view_key(part))

    def views_of(self, station: Station) -> list[FaceView]:
        """Give the faces that are drilled at a station, row by row."""
        return [view for row in station.rows if (view := self.view(row.part)) is not None]

    def lying(self, station: Station, card: StationCard, *, turned: bool) -> list[FaceView]:
        """Give the faces on which a card lies, unturned or turned."""
        return [
            view
            for row in station.rows_under.get((card.letter, turned), ())
            if (view := self.view(row.part)) is not None
        ]

    def under(self, station: Station, card: StationCard) -> "CardFaces":
        """Give what the words of a card need to know of the faces that it lies on: they may be
        thousands, and its copies many, so it is asked once for all of them."""
        upright, turned = (self.lying(station, card, turned=each) for each in (False, True))
        hands = {view.side for view in upright}
        edges: dict[FaceEdge, str] = {}
        for edge in (each.edge for each in card.edges):
            called = [edge_words(view, edge) for view in upright]
            called += [edge_words(view, OPPOSITE[edge]) for view in turned]
            edges[edge] = " / ".join(dict.fromkeys(called)) or edge.upper()
        names = {
            way: _named(station, views)
            for way, views in ((False, upright), (True, turned))
            if views
        }
        return CardFaces(
            names=names or {False: _named(station, ())},
            hand=hands.pop() if len(hands) == 1 else None,
            edges=edges,
        )


class CardFaces(Struct, frozen=True, kw_only=True):
    """The faces that a card lies on, as its words name them."""

    names: Mapping[bool, str]
    """What they are called together, `INSIDE OF LEFT SIDE`, of each way in which it lies: whether
    it is turned."""
    hand: Hand | None
    """The hand of the boards that it lies on unturned; None where they are of both, or no boards.
    """
    edges: Mapping[FaceEdge, str]
    """What each edge is called that it is set by; one that is another when the card is turned, by
    both names."""


def _named(station: Station, views: Sequence[FaceView]) -> str:
    """Name the faces that a card lies on in one way, by what they are together if they differ."""
    names = _distinct(drilled_words(view) for view in views)
    if len(names) == 1:
        return names[0]
    return several_words(station.face, {view.front_edge for view in views})


def view_key(part: BenchPart) -> ViewKey:
    """Tell a drilled face from all others."""
    board = part.board
    return (part.id, part.face, board.column if board else None, board.side if board else None)


def shop_of(layout: Layout) -> Shop:
    """Gather what the words of a job's stations are made from."""
    unit = layout.job.units
    views: list[FaceView | None] = [
        *(view for front in layout.fronts for view in views_of_front(front, unit)),
        *(view_of_side(side, unit) for side in layout.sides),
    ]
    for drawer in layout.drawers:
        if isinstance(drawer, DrawerBox):
            views.append(view_of_drawer_box(drawer, drawer.side, unit))
        views.append(view_of_drawer_back(drawer.id, drawer.code, drawer, unit))
    return Shop(
        layout=layout,
        fronts=layout.front_of,
        drawers={drawer.id: drawer for drawer in layout.drawers},
        views={
            (view.part, view.face, view.column, view.side): view
            for view in views
            if view is not None
        },
    )


def _distinct(words: Iterable[str]) -> list[str]:
    return list(dict.fromkeys(words))
