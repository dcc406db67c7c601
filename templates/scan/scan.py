"""A job ready to be shown part by part: what belongs to an ID is found at once."""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.bench.course import plan_courses
from jigs.bench.kept import Kept, stand
from jigs.bench.standing import Standing
from jigs.bench.station import Row, Station
from jigs.bench.stations import plan_stations
from jigs.bench.tracked import Tracked, track
from jigs.box.bypart import hung_over, hung_under
from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.box.frontgaps import BESIDE
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.piece import Block, Piece
from jigs.ground.grouped import grouped
from jigs.layout.layout import as_printed
from jigs.room.elevation import see_walls
from jigs.room.seen import SeenFront
from templates.faces.faceview import FaceView
from templates.labels.keyplan import (
    Black,
    Filled,
    black_front,
    black_piece,
    black_rollout,
    black_side,
)
from templates.labels.piecewords import which_words
from templates.scan.wallpicture import WallPicture
from templates.stations.stationview import shop_of
from templates.words.payload import Payload
from templates.words.scanwords import (
    drawer_box_payload,
    front_payload,
    piece_payload,
    rollout_payload,
    side_payload,
)


class Beside(Struct, frozen=True):
    """A part that another one has to do with, and what it is to it: `above`, `drawer box`."""

    what: str
    part: str


class Scan:
    """A job's parts, stations, faces and walls."""

    def __init__(self, read: Layout) -> None:
        """Take a job as it was laid out: its cut list, its stations, its parts' steps are found."""
        layout = self.layout = as_printed(read)
        self.stations = plan_stations(layout)
        self.tracked = track(layout, cut_list(layout))
        self.courses = plan_courses(layout, self.tracked, self.stations)
        self.parts = {part.id: part for part in self.tracked}
        self.walls = [
            WallPicture(elevation, f"wall-{number}")
            for number, elevation in enumerate(see_walls(layout), 1)
        ]
        self._on_wall = {seen.box.id: wall for wall in self.walls for seen in wall.elevation.boxes}
        self._fronts = {
            front.front.id: (wall, front)
            for wall in self.walls
            for seen in wall.elevation.boxes
            for front in seen.fronts
        }
        self._rows = grouped(
            (row.part.id, (station, row)) for station in self.stations for row in station.rows
        )
        self._views = grouped((view.part, view) for view in shop_of(layout).views.values())
        self._in_box = grouped((box, part.id) for part in self.tracked for box in part.boxes)
        self._carriers = grouped(
            (fitting.part, (fitting.kind, side.board))
            for side in layout.sides
            for fitting in side.fittings
            if fitting.part is not None
        )

    def standings(self, kept: Mapping[str, Kept]) -> Mapping[str, Standing]:
        """Say how far every part is, by what is kept of it."""
        return stand(self.tracked, self.courses, kept)

    def rows(self, part: str) -> Sequence[tuple[Station, Row]]:
        """Give the rows of a part at its stations, in the order of the work."""
        return self._rows.get(part, [])

    def views(self, part: str) -> Sequence[FaceView]:
        """Give the drilled faces of a part."""
        return self._views.get(part, [])

    def wall(self, part: Tracked) -> WallPicture | None:
        """Give the wall that a part is shown on."""
        return next((self._on_wall[box] for box in part.boxes if box in self._on_wall), None)

    def box_of(self, part: Tracked) -> Sequence[str]:
        """Give the parts of the box, or the boxes, that a part belongs to."""
        return tuple(dict.fromkeys(name for box in part.boxes for name in self._in_box[box]))

    def black(self, part: Tracked) -> Black:
        """Give where a part is seen on its wall."""
        if isinstance(part.drawer, Rollout):
            return black_rollout(part.drawer)
        if part.front is not None:
            black = black_front(part.front)
            return black if part.drawer is None else replace(black, rooms=(_behind(part),))
        if part.faces:
            return black_side(part.faces[0])
        assert part.piece is not None
        blacks = [black_piece(part.piece, number + 1) for number in range(part.count)]
        rooms = dict.fromkeys(room for black in blacks for room in black.rooms)
        return replace(blacks[0], rooms=tuple(rooms))

    def payload(self, part: Tracked) -> Payload:
        """Give what the symbol on a part's label says of its place."""
        if isinstance(part.drawer, DrawerBox) and part.front is not None:
            return drawer_box_payload(self.layout, part.drawer, part.front)
        if isinstance(part.drawer, Rollout):
            return rollout_payload(self.layout, part.drawer)
        if part.front is not None:
            return front_payload(self.layout, part.front)
        if part.faces:
            return side_payload(self.layout, part.faces[0])
        assert part.piece is not None
        return piece_payload(self.layout, replace(part.piece, count=1), which_words(part.piece), 1)

    def beside(self, part: Tracked) -> Iterator[Beside]:
        """Give the parts that a part has to do with."""
        if part.drawer is None and part.front is not None:
            yield from self._round(part.front.id)
            if part.front.drawer is not None:
                yield Beside("drawer box", part.front.drawer.id)
        if isinstance(part.drawer, DrawerBox):
            yield Beside("front", part.drawer.front)
        if isinstance(part.drawer, Rollout):
            yield from (Beside("door", front) for front in part.drawer.behind)
        served = part.id if part.drawer is None or part.front is None else part.front.id
        for kind, board in dict.fromkeys(self._carriers.get(served, ())):
            yield Beside(f"{kind}s on" if kind in ("plate", "slide") else "holes in", board)
        for fitting in dict.fromkeys(
            (each.kind, each.part) for face in part.faces for each in face.fittings if each.part
        ):
            kind, name = fitting
            yield Beside(f"{kind}s for" if kind in ("plate", "slide") else "holes for", name or "")
        if part.piece is not None and part.piece.front is not None:
            yield Beside("front", part.piece.front)

    def _round(self, front: str) -> Iterator[Beside]:
        """Give the fronts above, below and on either hand of a front."""
        wall, own = self._fronts[front]
        for what, found in (
            ("above", hung_under(self.layout, own.front)),
            ("below", hung_over(self.layout, own.front)),
        ):
            if found is not None:
                yield Beside(what, found.id)
        others = [each for seen in wall.elevation.boxes for each in seen.fronts]
        for what, one, other in (("left", None, own), ("right", own, None)):
            for each in others:
                left, right = (one or each), (other or each)
                if each is not own and wall.elevation.placed and _next_to(left, right):
                    yield Beside(what, each.front.id)


def _next_to(left: SeenFront, right: SeenFront) -> bool:
    """Tell whether of two fronts nothing but a gap lies between the left and the right one."""
    gap = right.x - left.x - left.front.width
    level = min(left.y + left.front.height, right.y + right.front.height) - max(left.y, right.y)
    return -BESIDE < gap < BESIDE and right.x > left.x and level > 0.0


def _behind(part: Tracked) -> Filled:
    """Give where a drawer box is seen behind its front."""
    assert part.front is not None
    assert part.drawer is not None
    x, y = part.front.place.x + part.drawer.x, part.front.place.y + part.drawer.y
    return (x, y, x + part.drawer.width, y + part.drawer.height)


def block_of(piece: Piece) -> Block | None:
    """Give the room that a piece fills, of several alike the first one's."""
    return next(iter((*piece.blocks, *piece.spread, *piece.on_wall)), None)
