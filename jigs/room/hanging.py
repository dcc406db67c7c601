"""How the boxes of each wall are set: lines, order, sums, and the pieces that close a run."""

from dataclasses import dataclass

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.piece import Piece
from jigs.ground.geometry import Hand
from jigs.room.alongwall import Along, Stretch, rows_along, spaces_of
from jigs.room.elevation import Elevation, see_walls
from jigs.room.seen import Seen
from jigs.room.settingorder import Begin, BoxInTurn, find_begin, order_boxes
from jigs.room.striking import Nailed, Strike, boxes_of, find_nailed, find_strikes


@dataclass(frozen=True, slots=True, kw_only=True)
class Hanging:
    """What is to be known of one wall before its boxes are set."""

    elevation: Elevation
    strikes: tuple[Strike, ...]
    begin: Begin | None
    """None where nobody said where the boxes stand."""
    order: tuple[BoxInTurn, ...]
    rows: tuple[Along, ...]
    spaces: tuple[Stretch, ...]
    """What is left open for appliances."""
    nailed: tuple[Nailed, ...]
    platforms: tuple[Piece, ...]
    """The fronts of the toe platforms."""
    scribed: tuple[Piece, ...]
    """Fillers, and end panels with wood to spare at the wall."""

    @property
    def boxes(self) -> frozenset[str]:
        """The IDs of all that stands or hangs there."""
        return frozenset(seen.box.id for seen in self.elevation.boxes)

    @property
    def measured_from(self) -> Hand:
        """The end of the wall that places are measured from: the one at which the order begins."""
        at_right = self.begin is not None and self.begin.hand == "right"
        return "right" if at_right and self.rows else "left"

    def span_of(self, start: float, end: float, *, hung: bool = False) -> tuple[float, float]:
        """Give a stretch of the wall as it is measured from that end; mm. What is `hung` counts
        from its own line."""
        line = dict(self.elevation.lines).get(self.measured_from, 0.0)
        if self.measured_from == "left":
            own = line if hung else 0.0
            return start + own, end + own
        row = self.rows[0]
        closed = max(each.end for each in row.stretches if each.stands != "open")
        base = closed - line if row.hangs else closed
        own = base + line if hung else base
        return own - end, own - start

    def place_of(self, seen: Seen) -> tuple[float, float]:
        """Give from where to where a box reaches; mm."""
        return self.span_of(seen.x, seen.right, hung=seen.box.kind == "wall")


def plan_hanging(layout: Layout) -> tuple[Hanging, ...]:
    """Give each wall of a job on which a box is set, in the job's order."""
    pieces = cut_list(layout)
    return tuple(_plan(elevation, pieces) for elevation in see_walls(layout) if boxes_of(elevation))


def _plan(elevation: Elevation, pieces: tuple[Piece, ...]) -> Hanging:
    begin = find_begin(elevation)
    own = [piece for piece in pieces if elevation.placed and piece.wall == elevation.wall]
    return Hanging(
        elevation=elevation,
        strikes=find_strikes(elevation),
        begin=begin,
        order=order_boxes(elevation, begin) if begin else (),
        rows=rows_along(elevation),
        spaces=spaces_of(elevation) if begin else (),
        nailed=find_nailed(elevation, (p for p in pieces if p.kind == "nailer")),
        platforms=tuple(piece for piece in own if piece.kind == "toe-front"),
        scribed=tuple(
            piece
            for piece in own
            if piece.kind == "filler" or (piece.kind == "end-panel" and piece.spare)
        ),
    )
