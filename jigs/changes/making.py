"""What a job makes, taken from its layout, its stations, its cut list and its order."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence

from msgspec.structs import replace

from jigs import __version__
from jigs.bench.station import Station
from jigs.bench.tracked import Tracked, track
from jigs.box.bypart import OpenCuts, hung_over, hung_under
from jigs.box.drawerbox import AnyDrawer, DrawerBox, Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.changes.given import list_given
from jigs.changes.made import (
    DrilledFor,
    Made,
    MadeHole,
    MadePart,
    Sizes,
    Unsure,
    Value,
    all_steps,
    steps,
)
from jigs.changes.makinglists import list_needs, station_rows, told_figures, wall_lines
from jigs.cutlist.cutlist import STAMPED, Cut
from jigs.cutlist.piece import Piece, PieceNote
from jigs.given.confirming import OpenNumber, StandIn
from jigs.given.kinds import kind_of
from jigs.ground.geometry import Fitting, Hand, Purpose
from jigs.ground.grouped import grouped
from jigs.order.buying import Order
from jigs.room.elevation import see_walls
from jigs.room.seen import along_wall


def make(
    layout: Layout,
    cut: Cut,
    order: Order,
    stations: Sequence[Station],
    *,
    reach: float,
    lists: Mapping[str, str],
) -> Made:
    """Say what a job makes; `layout` as it is printed, `stations` as they are planned
    with this `reach`, mm, `lists` the digests of its lists."""
    parts = _Parts(layout, cut, stations)
    return Made(
        job=layout.job.name,
        tool=__version__,
        reach=steps(reach),
        parts={part.id: parts.of(part) for part in track(layout, cut.pieces)},
        stations=tuple(station_rows(station, parts.told) for station in stations),
        order=tuple(list_needs(layout, cut, order)),
        walls=tuple(wall_lines(elevation) for elevation in see_walls(layout)),
        lists=lists,
        given=list_given(layout.job),
    )


class _Parts:
    """The parts of one job, with what belongs to each of them."""

    def __init__(self, layout: Layout, cut: Cut, stations: Sequence[Station]) -> None:
        self._layout = layout
        self._standing = cut.standing
        self._built = {box.id for box in layout.boxes if box.built}
        self._fronts = {front.id: front for front in layout.fronts}
        rollouts = {rollout.id: rollout for rollout in layout.rollouts}
        self.frames = {
            board: tuple(
                figure for face in faces for figure in _frame(face, self._fronts, rollouts)
            )
            for board, faces in grouped((side.board, side) for side in layout.sides).items()
        }
        self.frames |= {front.id: _worked(front) for front in layout.fronts}
        self.told: dict[str, tuple[Value, ...]] = {**self.frames}
        """What a part's row at a station says beside its size."""
        for front in layout.fronts:
            if front.make.note:
                self.told[front.id] = (*self.frames[front.id], front.make.note)
        self._cuts = OpenCuts(layout)
        self._bored_at: dict[tuple[str, Purpose], str] = {}
        for station in stations:
            for bit in station.bits:
                for row in station.rows:
                    for purpose in bit.purposes:
                        self._bored_at.setdefault((row.part.id, purpose), station.work)
        names = grouped((row.part.id, each.name) for each in stations for row in each.rows)
        self._stations = {part: tuple(dict.fromkeys(each)) for part, each in names.items()}

    def of(self, part: Tracked) -> MadePart:
        """Say what one part is made to, and where its box stands among those of its wall."""
        made = self._of(part)
        along = along_wall(self._layout.job, part.boxes[0]) if len(part.boxes) == 1 else None
        if along is None:
            return made
        height = "" if along.height is None else str(steps(along.height))
        return replace(made, said=(*made.said, f"{along.number} {along.hangs} {height}"))

    def _of(self, part: Tracked) -> MadePart:
        if part.drawer is not None:
            return self._drawer(part, part.drawer)
        if part.front is not None:
            return self._front(part, part.front)
        return self._board(part)

    def _front(self, part: Tracked, front: Front) -> MadePart:
        place, gaps, layout = front.place, front.gaps, self._layout
        above, below = hung_under(layout, front), hung_over(layout, front)
        fit = (front.hinge.tab, front.hinge.plate) if front.hinge else ()
        hardware = list(self._records(front.fittings))
        if front.drawer is not None:
            hardware.append(f"slide {front.drawer.slide}")
        return MadePart(
            id=part.id, kind=front.kind, code=part.code, wall=part.wall, boxes=part.boxes,
            hinged=front.hinged or "",
            size=all_steps(front.width, front.height, front.make.thickness),
            holes=tuple(self._holes(part.id, front.fittings)),
            frame=(
                *self.frames[front.id],
                *all_steps(gaps.left, gaps.right, gaps.top, gaps.bottom),
            ),
            stands=all_steps(front.drawer.x, front.drawer.y) if front.drawer else (),
            drilled_for=DrilledFor(records=tuple(dict.fromkeys(hardware)), fit=all_steps(*fit)),
            held=tuple(map(told_figures, front.held)), ready=front.bored,
            in_hand=front.ordered is not None,
            said=(
                front.make.finish, front.make.note, above.id if above else "",
                below.id if below else "", f"{place.row} {place.rows} {place.column} {place.span}",
            ),
            stations=self._stations.get(part.id, ()),
            unsure=Unsure(open=_open(front.open), assumed=tuple(map(_stood_in, front.assumed))),
        )  # fmt: skip

    def _drawer(self, part: Tracked, box: AnyDrawer) -> MadePart:
        behind = isinstance(box, DrawerBox)
        return MadePart(
            id=part.id, kind="drawer-box" if behind else "rollout", code=part.code,
            wall=part.wall, boxes=part.boxes,
            size=all_steps(box.width, box.height, box.length, box.side),
            joined=all_steps(box.recess, *(box.notch or ())),
            holes=() if part.held else tuple(self._holes(part.id, box.bored)),
            stands=() if behind else all_steps(box.x, box.y),
            drilled_for=DrilledFor(records=(f"slide {box.slide}",)),
            held=tuple(map(told_figures, part.held)),
            said=() if isinstance(box, DrawerBox) else box.behind,
            stations=self._stations.get(part.id, ()), unsure=Unsure(open=_open(box.open)),
            front=box.front if isinstance(box, DrawerBox) else "",
        )  # fmt: skip

    def _board(self, part: Tracked) -> MadePart:
        piece, faces = part.piece, part.faces
        fittings = [fitting for face in faces for fitting in face.fittings]
        hardware = [*self._records(fittings)]
        front = self._fronts.get(piece.front or "") if piece else None
        if front is not None and front.drawer is not None:
            hardware.append(f"slide {front.drawer.slide}")
        standing = piece is None or piece.id in self._standing
        size = all_steps(faces[0].depth, faces[0].height, faces[0].thickness) if faces else ()
        opens = [number for face in faces for number in face.open]
        if piece is not None:
            opens += self._cuts.of(piece.id)
        return MadePart(
            id=part.id, kind=piece.kind if piece else "side", code=part.code, wall=part.wall,
            boxes=part.boxes, count=part.count,
            size=size if piece is None else _piece_size(piece),
            cut=() if piece is None or standing else all_steps(*_sawn(piece)),
            stuff=piece.stuff if piece else "side", band=piece.banded if piece else (),
            banding=steps(piece.band.thickness) if piece and piece.band else 0.0,
            joined=_joined(piece) if piece else (),
            holes=tuple(hole for face in faces for hole in self._in_face(part.id, face)),
            frame=self.frames.get(part.id, ()),
            drilled_for=DrilledFor(records=tuple(dict.fromkeys(hardware))),
            ready=not self._built.isdisjoint(part.boxes) and standing,
            said=tuple(map(_noted, piece.notes)) if piece else (),
            state=(
                *(name for face in faces for name in face.missing),
                *(face.band_state or "" for face in faces),
                *((piece.grain or "", piece.scribe or "") if piece else ()),
            ),
            stations=self._stations.get(part.id, ()),
            unsure=Unsure(
                open=_open(opens),
                assumed=(
                    *(_stood_in(each) for face in faces for each in face.assumed),
                    *(_assumed_in(piece, self._layout.job.assumed) if piece else ()),
                ),
            ),
            front=(piece.front or "") if piece else "",
        )  # fmt: skip

    def _in_face(self, part: str, face: Side) -> Iterator[MadeHole]:
        return self._holes(part, face.fittings, face.side)

    def _holes(
        self, part: str, fittings: Iterable[Fitting], side: Hand | None = None
    ) -> Iterator[MadeHole]:
        for fitting in fittings:
            for hole in fitting.holes:
                yield MadeHole(
                    purpose=hole.purpose, face=hole.face, x=steps(hole.x), y=steps(hole.y),
                    diameter=steps(hole.diameter),
                    depth=None if hole.depth is None else steps(hole.depth),
                    serves=fitting.part if fitting.part and fitting.part != part else "",
                    side=side, work=self._bored_at.get((part, hole.purpose), ""),
                )  # fmt: skip

    def _records(self, fittings: Iterable[Fitting]) -> Iterator[str]:
        for fitting in fittings:
            kind = kind_of(fitting).record
            if kind is not None and fitting.record:
                yield f"{kind} {fitting.record}"


def _frame(face: Side, fronts: Mapping[str, Front], rollouts: Mapping[str, Rollout]) -> Sizes:
    """Give what the heights on a board's face are told by, and what is mounted on it: the plates of
    its doors, the spacers of its rollouts."""
    ends = face.ends
    doors = dict.fromkeys(fitting.part for fitting in face.fittings if fitting.kind == "plate")
    hinges = [fronts[door].hinge for door in doors if door is not None and door in fronts]
    served = dict.fromkeys(fitting.part for fitting in face.fittings)
    rolling = [rollouts[name] for name in served if name is not None and name in rollouts]
    spacers = (r.spacer_left if face.side == "left" else r.spacer_right for r in rolling)
    return all_steps(
        face.bottom, face.legs, float(face.assembled), ends.base, ends.below, ends.raised,
        *face.shelves, *(hinge.plate for hinge in hinges if hinge is not None), *spacers,
    )  # fmt: skip


def _worked(front: Front) -> Sizes:
    """Give how a front is made beside its size: its frame, its edges."""
    frame = front.make.frame
    five = () if frame is None else (frame.stile, frame.rail, frame.groove, frame.panel)
    return all_steps(*five, front.make.edge_radius)


def _assumed_in(piece: Piece, assumed: Collection[str]) -> Iterator[str]:
    """Give the keys of a piece's board and box that stand in for what nobody gave."""
    keys = [STAMPED.get(piece.stuff, "")]
    keys += [f"box.{piece.box}.{key}" for key in ("width", "height", "depth")]
    return (key for key in keys if key in assumed)


def _stood_in(found: StandIn) -> str:
    figure = found.figure
    return f"{found.key} {steps(figure) if isinstance(figure, float) else figure or ''}".rstrip()


def _noted(note: PieceNote) -> str:
    figures = [str(steps(figure)) for figure in note.figures]
    return " ".join((note.kind, *note.names, *figures, note.hand or "")).rstrip()


def _sawn(piece: Piece) -> Sizes:
    return piece.length, piece.width, piece.thickness


def _piece_size(piece: Piece) -> Sizes:
    return all_steps(piece.finished_length, piece.finished_width, piece.thickness)


def _joined(piece: Piece) -> Sizes:
    """Give the figures of a piece's grooves, pocket screws and notches."""
    groove = piece.groove
    return all_steps(
        *((groove.at, groove.width, groove.depth) if groove else ()),
        *piece.pockets,
        *(piece.pockets_top or ()),
        *(figure for cut in piece.cutouts for figure in (cut.dx, cut.dy, cut.dz)),
    )


def _open(numbers: Iterable[OpenNumber]) -> tuple[str, ...]:
    return tuple(sorted({f"{each.kind}.{each.record}.{each.key}" for each in numbers}))
