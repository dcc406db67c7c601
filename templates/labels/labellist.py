"""Which labels a job has, and in which order.

Every part has one: fronts, drawer boxes and rollouts as they are put together, and each piece of
the cut list, as many as are cut alike. In the order of assembly (`box`) wall after wall: its toe
platforms, box by box its pieces and drawer boxes, then end panels, fillers and island backs. In
the order of cutting (`cut`) all pieces by thickness, then by length, the greater first; then the
drawer boxes. The fronts come last in either: they are hung when all else stands. Of a box that
is built already only the sides and partitions have labels: they are still to be drilled.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from typing import Literal

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.bench.station import Station
from jigs.bench.tracked import DRILLED
from jigs.box.bypart import OpenCuts, parts_of_box
from jigs.box.parts import Layout, Side
from jigs.cutlist.cutlist import STAMPED
from jigs.cutlist.piece import ASSEMBLED_KINDS, DRAWER_KINDS, Piece, PieceKind
from templates.labels.labelwords import (
    LabelWords,
    words_of_drawer_box_label,
    words_of_front_label,
    words_of_rollout_label,
    words_of_side_label,
)
from templates.labels.piecewords import words_of_piece_label
from templates.words.payload import Phrase
from templates.words.scanwords import station_phrases

LabelOrder = Literal["box", "cut"]
Kinds = Literal["all", "pieces", "fronts"]
"""`pieces`: all that the boxes are built of, drawer boxes too; `fronts`: what is hung on them."""

_BEFORE: tuple[PieceKind, ...] = ("toe-front", "toe-back", "sleeper")
_AFTER: tuple[PieceKind, ...] = ("end-panel", "filler", "island-back")


class _Label(Struct, frozen=True, kw_only=True):
    """A label's words, and the names by which it may be chosen."""

    words: LabelWords
    names: tuple[str, ...]


class _Box(Struct, kw_only=True):
    """What one box is put together from: its own pieces, and those of each drawer box by its ID."""

    pieces: list[Piece] = field(default_factory=list)
    drawers: dict[str, list[Piece]] = field(default_factory=dict)


def list_labels(
    layout: Layout,
    pieces: Sequence[Piece],
    stations: Sequence[Station],
    *,
    order: LabelOrder = "box",
    kinds: Kinds = "all",
    only: Collection[str] | None = None,
) -> tuple[LabelWords, ...]:
    """Give the words of all labels of a job; `pieces` is its cut list, `stations` where
    its parts are drilled.

    `only` names parts, boxes or walls; a front brings its drawer box and the pieces of that.
    """
    made = _Labels(layout, pieces, station_phrases(stations))
    labels: list[_Label] = []
    if kinds != "fronts":
        labels += made.cut_order() if order == "cut" else made.box_order()
    if kinds != "pieces":
        labels += made.fronts()
    if only is not None:
        wishes = {wish.upper() for wish in only}
        labels = [label for label in labels if wishes & {n.upper() for n in label.names if n}]
    return tuple(label.words for label in labels)


class _Labels:
    """The labels of one job, by what they are for."""

    def __init__(
        self,
        layout: Layout,
        pieces: Sequence[Piece],
        work: Mapping[str, tuple[Phrase, ...]],
    ) -> None:
        self._layout = layout
        self._work = work
        built = {box.id for box in layout.boxes if box.built}
        self._pieces = [p for p in pieces if p.box not in built or p.kind not in ASSEMBLED_KINDS]
        self._built = [p for p in pieces if p.box in built and p.kind in DRILLED]
        self._sides = _boards(layout.sides)
        self._boxes = {box.id: box for box in layout.boxes}
        self._cuts = OpenCuts(layout)

    def fronts(self) -> Iterator[_Label]:
        """Give the labels of all fronts, box by box."""
        for box in self._layout.boxes:
            for front in parts_of_box(self._layout, box.id).fronts:
                words = words_of_front_label(self._layout, front, self._at(front.id))
                yield _Label(words=words, names=(front.id, box.id, box.wall))

    def cut_order(self) -> Iterator[_Label]:
        """Give the labels of all pieces as they are cut, then those of drawer boxes."""
        for piece in sorted(self._pieces, key=lambda p: (-p.thickness, -p.length, -p.width)):
            yield from self._of_piece(piece)
        yield from self._drawer_boxes().values()
        yield from self._of(self._built)
        yield from self._bare_sides()

    def box_order(self) -> Iterator[_Label]:
        """Give the labels of all pieces and drawer boxes as boxes and walls are put together."""
        drawn = self._drawer_boxes()
        boxes: dict[str, _Box] = {box.id: _Box() for box in self._layout.boxes}
        walls: dict[str, list[Piece]] = {}
        for piece in (*self._pieces, *self._built):
            if piece.box is None or piece.kind in _AFTER:
                walls.setdefault(piece.wall, []).append(piece)
            elif piece.kind in ASSEMBLED_KINDS:
                boxes[piece.box].pieces.append(piece)
            else:
                boxes[piece.box].drawers.setdefault(_drawer_of(piece), []).append(piece)
        for name, label in drawn.items():
            boxes[label.words.box].drawers.setdefault(name, [])
        for wall in dict.fromkeys(box.wall for box in self._layout.boxes):
            yield from self._of(p for p in walls.get(wall, ()) if p.kind in _BEFORE)
            for box in (box for box in self._layout.boxes if box.wall == wall):
                made = boxes[box.id]
                yield from self._of(
                    sorted(made.pieces, key=lambda p: ASSEMBLED_KINDS.index(p.kind))
                )
                for name, pieces in made.drawers.items():
                    yield from self._of(pieces)
                    if name in drawn:
                        yield drawn[name]
            after = [p for p in walls.get(wall, ()) if p.kind in _AFTER]
            yield from self._of(sorted(after, key=lambda p: _AFTER.index(p.kind)))
        yield from self._bare_sides()

    def _at(self, part: str) -> tuple[Phrase, ...]:
        """Say at which stations a part is drilled."""
        return self._work.get(part, ())

    def _of(self, pieces: Iterable[Piece]) -> Iterator[_Label]:
        for piece in pieces:
            yield from self._of_piece(piece)

    def _of_piece(self, piece: Piece) -> Iterator[_Label]:
        """Give the labels of a piece, one for each that is cut alike."""
        names = (piece.id, piece.box or "", piece.wall, piece.front or "", _drawer_of(piece))
        box = self._boxes.get(piece.box or "")
        side = self._sides.get(piece.id)
        assumed = STAMPED.get(piece.stuff) in self._layout.job.assumed
        assumed = assumed or (box is not None and box.inferred)
        if side is not None:
            words = words_of_side_label(
                self._layout, side, piece, self._at(side.board), assumed=assumed
            )
            yield _Label(words=words, names=names)
            return
        later = box is not None and box.band == "later"
        for number in range(1, piece.count + 1):
            words = words_of_piece_label(
                self._layout,
                piece,
                number,
                assumed=assumed,
                later=later,
                open=self._cuts.of(piece.id),
            )
            yield _Label(words=words, names=names)

    def _drawer_boxes(self) -> dict[str, _Label]:
        """Give the labels of drawer boxes and rollouts as they run, by their IDs."""
        labels: dict[str, _Label] = {}
        for front in self._layout.fronts:
            if front.drawer is not None:
                words = words_of_drawer_box_label(
                    self._layout, front.drawer, front, self._at(front.drawer.id)
                )
                labels[front.drawer.id] = _Label(
                    words=words, names=(front.drawer.id, front.id, front.box, front.wall)
                )
        for rollout in self._layout.rollouts:
            words = words_of_rollout_label(self._layout, rollout, self._at(rollout.id))
            names = (rollout.id, rollout.box, rollout.wall)
            labels[rollout.id] = _Label(words=words, names=names)
        return labels

    def _bare_sides(self) -> Iterator[_Label]:
        """Give the labels of drilled boards that are not in the cut list."""
        cut = {piece.id for piece in (*self._pieces, *self._built)}
        for side in self._sides.values():
            if side.board not in cut and _drilled(side):
                words = words_of_side_label(self._layout, side, work=self._at(side.board))
                yield _Label(words=words, names=(side.board, side.box, side.wall))


def _drawer_of(piece: Piece) -> str:
    """Name the drawer box or rollout that a piece belongs to; "" where it belongs to none."""
    return piece.id.rpartition("-")[0] if piece.kind in DRAWER_KINDS else ""


def _boards(sides: Iterable[Side]) -> dict[str, Side]:
    """Give box sides and partitions by their IDs. A partition has two drilled faces and one label,
    on its left face (the right side of a column): it tells what is in either."""
    boards: dict[str, Side] = {}
    for side in sorted(sides, key=lambda side: bool(side.partition) and side.side == "left"):
        first = boards.setdefault(side.board, side)
        if first is not side:
            boards[side.board] = replace(
                first,
                fittings=(*first.fittings, *side.fittings),
                missing=tuple(dict.fromkeys((*first.missing, *side.missing))),
                open=tuple(dict.fromkeys((*first.open, *side.open))),
            )
    return boards


def _drilled(side: Side) -> bool:
    """Tell whether a side has holes, or is to have some."""
    return bool(side.holes or side.missing)
