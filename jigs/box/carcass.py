"""The box behind the fronts: what its sides, bottom and top leave for hinges and drawers, and the
frame that a stack of fronts covers.

Heights are counted from the side's bottom end. Bottom, top and the stretchers that lie flat at
the top of a base box are of the sides' board. A sink box has no stretchers but a rail on edge at
the front's top, 100 high (common practice, no source).

A frame is the lines that reveals are counted from, and the reveals. *Overlay* fronts lie on the
box: their reveals run to its outside edges, and over a partition they meet a neighbour with the gap
at its middle. *Half* overlay fronts leave the other half of each side, less the gap, to a
neighbour. *Inset* fronts stand between the boards: their gaps run to the boards' inner faces.

>>> golden = BoxSpec(id="B1", kind="base", width=457.2, height=774.7, depth=584.2, above_floor=100)
>>> carcass = Carcass(box=golden, side=18.3, back=6.0)
>>> round(carcass.opening, 4), round(carcass.ceiling, 4), round(carcass.inside_depth, 4)
(420.6, 756.4, 559.2)
>>> frame = frame_of(carcass, Reveal(), "inset")
>>> round(frame.width, 4), round(frame.height, 4), round(frame.left + frame.reveal_left, 4)
(416.6, 734.1, 20.3)
"""

from itertools import pairwise

from msgspec import Struct

from jigs.fittings.slide import opening_width
from jigs.given.build import inside_depth
from jigs.given.job import BoxSpec, FrontSpec, Overlay, Reveal
from jigs.ground.geometry import SLACK, Hand

SINK_RAIL = 100.0
"""Height of the rail on edge at the front's top of a sink box; mm (common practice)."""


class Bay(Struct, frozen=True, kw_only=True):
    """What a front stands before: a column of the box, or several side by side.

    `left`, `right`: the inner faces of the boards at both sides, from the box's left edge, mm;
    `boards` their IDs. `shared`: the sides on which the board is a partition.
    """

    first: int
    last: int
    left: float
    right: float
    boards: tuple[str, str]
    shared: tuple[Hand, ...] = ()


class Carcass(Struct, frozen=True, kw_only=True):
    """A box with the true thickness of its sides, its back and its partitions, mm, as one of
    its columns sees it; `bay` None: the box has one column. `shelves`: lower and upper face of
    each fixed shelf in it."""

    box: BoxSpec
    side: float
    back: float
    partition: float = 0.0
    bay: Bay | None = None
    shelves: tuple[tuple[float, float], ...] = ()

    def inner(self, hand: Hand) -> float:
        """Give the inner face of the board on one side, from the box's left edge; mm."""
        if self.bay is not None:
            return self.bay.left if hand == "left" else self.bay.right
        return self.side if hand == "left" else self.box.width - self.side

    @property
    def shared(self) -> tuple[Hand, ...]:
        """The sides on which the board is a partition."""
        return self.bay.shared if self.bay else ()

    @property
    def opening(self) -> float:
        """Width between the boards, mm."""
        if self.bay is not None:
            return self.bay.right - self.bay.left
        return opening_width(self.box.width, self.side)

    @property
    def middle(self) -> float:
        """Middle of the opening, from the box's left edge; mm."""
        return (self.inner("left") + self.inner("right")) / 2

    @property
    def inside_depth(self) -> float:
        """Depth from the finished front edge to the back's face, mm."""
        return inside_depth(self.box.depth, self.back)

    @property
    def floor(self) -> float:
        """Upper face of the bottom panel, above the sides' bottom end; mm."""
        return self.box.legs + self.side

    @property
    def flat_ceiling(self) -> float:
        """Underside of a top or of stretchers lying flat, mm."""
        return self.box.height - self.side

    @property
    def ceiling(self) -> float:
        """Underside of what closes the box at the front's top: top, stretcher or rail; mm."""
        rail = self.box.rail
        if rail is None:
            rail = SINK_RAIL if self.box.kind == "sink" else self.side
        return self.box.height - rail

    @property
    def rail(self) -> tuple[float, float] | None:
        """Lower and upper edge of the rail on edge at the front's top, None without one; mm."""
        upright = self.box.height - self.ceiling > self.side + SLACK
        return (self.ceiling, self.box.height) if upright else None

    @property
    def panels(self) -> tuple[tuple[float, float], ...]:
        """Lower and upper face of each panel and rail that meets the sides at the front; mm."""
        bottom, top = (self.box.legs, self.floor), (self.ceiling, self.box.height)
        return (bottom, *self.shelves, top)

    def board(self, hand: Hand) -> str:
        """Give the ID of the board on one side."""
        if self.bay is not None:
            return self.bay.boards[0 if hand == "left" else 1]
        return name_side(self.box.id, hand)

    @property
    def boards(self) -> tuple[str, str]:
        """The IDs of both sides."""
        return self.board("left"), self.board("right")


def name_partition(box: str, number: int) -> str:
    """Give the ID of a box's partition, counted from the left, 1-based."""
    return f"{box}-PARTITION-{number}"


def name_side(box: str, hand: Hand) -> str:
    """Give the ID of a box's side."""
    return f"{box}-SIDE-{'L' if hand == 'left' else 'R'}"


class Frame(Struct, frozen=True, kw_only=True):
    """The place of a stack of fronts, in its box seen from the room; mm.

    `left`, `right`, `bottom`, `top` are the lines that the reveals and gaps run to: the box's
    outside edges, the edge of the front across a partition, or the inner faces that an inset
    front stands between. `full`, `half`: the side reveals of such an overlay. `inner_left`,
    `inner_right`: the inner faces of the boards beside it. `shared`: the sides on which the board
    is a partition. `from_top`: whether it stacks from the top, as on wall boxes, so that tops
    line up.
    """

    left: float
    right: float
    bottom: float
    top: float
    reveal_left: float
    reveal_right: float
    reveal_bottom: float
    reveal_top: float
    inner_left: float
    inner_right: float
    between: float
    side: float
    full: float
    half: float
    overlay: Overlay = "full"
    shared: tuple[Hand, ...] = ()
    from_top: bool = False

    @property
    def width(self) -> float:
        """Width of a front between the two side reveals; mm."""
        return self.right - self.left - (self.reveal_left + self.reveal_right)

    @property
    def height(self) -> float:
        """Height of a single front between the reveals at bottom and top; mm."""
        return self.top - self.bottom - self.reveal_bottom - self.reveal_top

    def left_reveal(self, spec: FrontSpec) -> float:
        """Give the reveal at a front's left edge, its own or the frame's; mm."""
        return _own(spec.reveals.left, self._beside("left", spec))

    def right_reveal(self, spec: FrontSpec) -> float:
        """Give the reveal at a front's right edge, its own or the frame's; mm."""
        return _own(spec.reveals.right, self._beside("right", spec))

    def _beside(self, hand: Hand, spec: FrontSpec) -> float:
        if spec.overlay is not None and hand not in self.shared and self.overlay != "inset":
            return self.half if spec.overlay == "half" else self.full
        return self.reveal_left if hand == "left" else self.reveal_right

    def clear_width(self, spec: FrontSpec) -> float:
        """Give the width between a front's own two side reveals; mm."""
        return self.right - self.left - (self.left_reveal(spec) + self.right_reveal(spec))

    def ends(self, specs: tuple[FrontSpec, ...]) -> tuple[float, float]:
        """Give the reveals above the first and below the last front of a stack; mm."""
        return (
            _own(specs[0].reveals.top, self.reveal_top),
            _own(specs[-1].reveals.bottom, self.reveal_bottom),
        )

    def gaps(self, specs: tuple[FrontSpec, ...]) -> tuple[float, ...]:
        """Give the gaps between the fronts of a stack, from the top; mm.

        A front's own reveal towards its neighbour counts; the lower one's, where both say one.
        """
        return tuple(
            _own(lower.reveals.top, _own(upper.reveals.bottom, self.between))
            for upper, lower in pairwise(specs)
        )


def frame_of(carcass: Carcass, reveal: Reveal, overlay: Overlay) -> Frame:
    """Give the frame of the fronts of one column, or of a box of one column."""
    box, side = carcass.box, carcass.side
    inset = overlay == "inset"
    left, right = carcass.inner("left"), carcass.inner("right")
    half_reveal = (side + reveal.between) / 2
    beside = half_reveal if overlay == "half" else reveal.side
    if inset:
        beside = reveal.inset
    edge = side if inset else 0.0
    lines = {"left": edge, "right": box.width - edge}
    # A front laps a blind panel as far as it would lap a side that ended there.
    if box.blind is not None and box.blind.hand == "left":
        lines["left"] = left - side + edge
    elif box.blind is not None:
        lines["right"] = right + side - edge
    reveals = {"left": beside, "right": beside}
    shared = carcass.shared
    for hand in shared:
        # The front across a partition ends half the gap beyond the partition's middle.
        half = carcass.partition / 2
        if inset:
            lines[hand] = carcass.inner(hand)
        else:
            middle = left - half if hand == "left" else right + half
            out = -reveal.between / 2 if hand == "left" else reveal.between / 2
            lines[hand] = middle + out
            reveals[hand] = reveal.between
    return Frame(
        left=lines["left"],
        right=lines["right"],
        bottom=box.legs + edge,
        top=box.height - edge,
        reveal_left=reveals["left"],
        reveal_right=reveals["right"],
        reveal_bottom=reveal.inset if inset else reveal.bottom,
        reveal_top=reveal.inset if inset else reveal.top_of(box.kind),
        inner_left=left,
        inner_right=right,
        between=reveal.between,
        side=side,
        full=reveal.side,
        half=half_reveal,
        overlay=overlay,
        shared=shared,
        from_top=box.kind == "wall",
    )


def _own(own: float | None, frame: float) -> float:
    return frame if own is None else own
