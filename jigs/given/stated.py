"""What is stated of a front, of the holes beside it, of the ends of its box and of its rollouts,
each as one value.

A front's gaps, its frame where it is a five-piece front, how it hangs, how it is bored for that,
what it is opened by; what a tape said of it in hand, and of a box as it was built; holes by hand;
end panels beside a box, and the blind panel of a corner box.

What an appliance's leaflet allows the panel on its door to be is stated at the panel, `leaflet = {
width_min, width_max, height_min, height_max, gap_left, gap_right, gap_top, gap_bottom, weight_max,
pull }`; a panel outside it is held back. `leaflet = "noted"` says instead that the person has
compared them: the leaflet always wins.
"""

from typing import Annotated, Literal, Self

from msgspec import Struct
from msgspec.structs import replace

from jigs.given.hangsat import NotedPlace
from jigs.ground.believable import (
    DRAWER_HEIGHT,
    EDGE_RADIUS,
    GROOVE,
    IN_BOX,
    PANEL_GAP,
    PANEL_HEIGHT,
    PANEL_WIDTH,
    STILE,
    TAB,
    THIN_BOARD,
    Doubt,
    Range,
)
from jigs.ground.geometry import End, Face, FittingKind, Hand
from jigs.ground.keys import Key

Both = tuple[float, float]
"""A size as measured in two places; mm."""


class Taped(Struct, frozen=True, kw_only=True):
    """Sizes that are measured twice, mm; None where one was not."""

    width: Both | None = None
    """At the top and at the bottom."""
    height: Both | None = None
    """At the left and at the right."""
    diagonals: Both | None = None
    """From corner to corner, both ways."""

    def over(self, before: Self) -> Self:
        """Give these sizes, and in place of a missing one what was measured before."""
        return replace(
            self,
            width=self.width or before.width,
            height=self.height or before.height,
            diagonals=self.diagonals or before.diagonals,
        )


class TapedBox(Taped, frozen=True, kw_only=True):
    """The same of a box, mm; its diagonals are those of its front."""

    depth: float | None = None
    """From its back to the front edges of its sides."""


class HandHole(Struct, frozen=True, kw_only=True):
    """A hole given by hand, in the axes of its part (mm); `depth` None means through.

    `y` is as it was stated: up from the part's bottom end, or down from its top end where
    `stated_from` says so; `up` gives it from the bottom end in either case. `mirrored`: another
    one stands as far from a front's right edge. `leaf`: in this leaf of a pair alone. `kind`: the
    one that its purpose names, if it names one.
    """

    x: float
    y: float
    diameter: float
    depth: float | None
    face: Face
    purpose: str
    mirrored: bool = False
    leaf: Hand | None = None
    stated_from: End | None = None
    kind: FittingKind = "manual"

    def up(self, height: float) -> float:
        """Give its height above the bottom end of a part `height` mm high, mm."""
        return height - self.y if self.stated_from == "top" else self.y


class BoardHole(Struct, frozen=True):
    """A hole given by hand in the board on one side of a front: x from the finished front edge,
    y from the box side's bottom or top end. `front`: the ID of the front that it serves."""

    hand: Hand
    front: str
    hole: HandHole


class OwnReveals(Struct, frozen=True, kw_only=True):
    """A front's own gap on each side, mm; None where it is the job's."""

    left: float | None = None
    """From its left edge; below 0 where it reaches over a covered end panel."""
    right: float | None = None
    """From its right edge; as at the left."""
    top: float | None = None
    """From its top edge."""
    bottom: float | None = None
    """From its bottom edge; below 0 where the front hangs below its box."""

    def reaches(self, hand: Hand) -> float:
        """Give how far the front reaches beyond its box at one side, mm; 0 where it does not."""
        reveal = self.left if hand == "left" else self.right
        return max(0.0, -(reveal or 0.0))


class FivePieceSpec(Struct, frozen=True, kw_only=True):
    """The frame of a five-piece front as far as it is known; a slab states no stile."""

    stile: Annotated[float | None, Key(STILE)] = None
    """Width of the stiles."""
    rail: Annotated[float | None, Key(STILE)] = None
    """Width of the rails, if other than the stiles."""
    groove: Annotated[float | None, Key(GROOVE)] = None
    """Depth of the groove that holds the panel."""
    panel: Annotated[float | None, Key(THIN_BOARD)] = None
    """Thickness of the panel, or of the pane."""
    glass: Annotated[bool, Key()] = False
    """Whether the panel is a pane of glass."""


class Boring(Struct, frozen=True, kw_only=True):
    """Where a front's cups are bored, as far as that is stated."""

    bored: Annotated[bool, Key()] = False
    """Whether the supplier has bored its cups."""
    bored_tab: Annotated[float | None, Key(TAB)] = None
    """From the hinge edge to the rim of a cup that the supplier has bored."""
    tab: Annotated[float | None, Key(TAB)] = None
    """From the hinge edge to the rim of a cup."""


class Hung(Struct, frozen=True, kw_only=True):
    """How a front hangs: on which hinges, at which heights, how far it opens."""

    hinge: str | None = None
    """The name of its hinge."""
    other_hinges: tuple[str, ...] = ()
    """Hinges of other kinds: one leaf of a pair may hang on a side, the other on a partition."""
    hinges_at: tuple[float, ...] | None = None
    """The cup centres above its own bottom edge, mm."""
    restrictor: bool = False
    """Whether it is kept from opening to 90 degrees."""

    @property
    def hinge_names(self) -> tuple[str, ...]:
        """The names of all hinges, one for each way that a door hangs."""
        return () if self.hinge is None else (self.hinge, *self.other_hinges)


class OpenedBy(Struct, frozen=True, kw_only=True):
    """What a front is opened by, and which front's pull its own is in line with."""

    pull: str | None = None
    """The name of its pull, or `none`."""
    pull_over: str | None = None
    """The front whose pull it takes the place along the wall from."""
    pull_level: str | None = None
    """The front whose pull it takes the height from."""
    push_latch: Annotated[bool, Key()] = False
    """Whether it is pushed to open, and has no pull."""


PanelPull = Literal["allowed", "none"]


class Leaflet(Struct, frozen=True, kw_only=True):
    """What an appliance's leaflet allows its panel: None where it was not stated; mm."""

    width_min: Annotated[float | None, Key(PANEL_WIDTH)] = None
    """The panel's least width."""
    width_max: Annotated[float | None, Key(PANEL_WIDTH)] = None
    """Its greatest width."""
    height_min: Annotated[float | None, Key(PANEL_HEIGHT)] = None
    """Its least height."""
    height_max: Annotated[float | None, Key(PANEL_HEIGHT)] = None
    """Its greatest height."""
    gap_left: Annotated[float | None, Key(PANEL_GAP)] = None
    """The least gap at its left."""
    gap_right: Annotated[float | None, Key(PANEL_GAP)] = None
    """The least gap at its right."""
    gap_top: Annotated[float | None, Key(PANEL_GAP)] = None
    """The least gap above it."""
    gap_bottom: Annotated[float | None, Key(PANEL_GAP)] = None
    """The least gap below it."""
    weight_max: Annotated[float | None, Key(Range(1, 60, unit="kg"), most=100.0)] = None
    """What it may weigh, kg."""
    pull: Annotated[PanelPull | None, Key()] = None
    """Whether it may have a pull."""

    @property
    def unstated(self) -> tuple[str, ...]:
        """What of it nobody stated, in words."""
        gaps = (self.gap_left, self.gap_right, self.gap_top, self.gap_bottom)
        return tuple(
            name
            for name, said in (
                ("gaps", any(gap is not None for gap in gaps)),
                ("weight", self.weight_max is not None),
                ("pull", self.pull is not None),
            )
            if not said
        )


PanelKind = Literal["flush", "covered"]
PANEL_KINDS: tuple[PanelKind, ...] = ("flush", "covered")


NOTED = Leaflet()
"""A leaflet of which nothing is stated: somebody has compared the panel with it."""


class EndPanels(Struct, frozen=True, kw_only=True):
    """The panels beside and behind a box: flush with the faces of the fronts, or covered by them;
    None without."""

    left: PanelKind | None = None
    """At its left side."""
    right: PanelKind | None = None
    """At its right side."""
    back: bool = False
    """Whether one closes its back: on an island."""

    def at(self, hand: Hand) -> PanelKind | None:
        """Give the panel at one side."""
        return self.left if hand == "left" else self.right


class BlindEnd(Struct, frozen=True, kw_only=True):
    """The end of a corner box whose front is closed by a fixed panel."""

    hand: Hand
    """The end."""
    reach: float
    """How far along its box the panel reaches from that end, mm."""


class RolloutSpec(Struct, frozen=True, kw_only=True):
    """A rollout as asked for; mm."""

    at: Annotated[float, Key(IN_BOX)]
    """Its underside above the side's bottom end."""
    height: Annotated[float, Key(DRAWER_HEIGHT)]
    """The height of its box."""
    slide: str | None = None
    """Its slide; else the job's."""
    column: int = 1
    """Its column, from the left."""
    spacer_left: Annotated[float | None, Key(Range(3, 60, zero=True))] = None
    """The spacer under its left slide; else as usual."""
    spacer_right: Annotated[float | None, Key(Range(3, 60, zero=True))] = None
    """The spacer under its right slide; else as usual."""


Profile = Literal["finger-bevel"]
PROFILES: tuple[Profile, ...] = ("finger-bevel",)


class FrontEdges(Struct, frozen=True, kw_only=True):
    """How the edges of a front are worked."""

    edge_radius: Annotated[float | None, Key(EDGE_RADIUS)] = None
    """The radius of its rounded edges."""
    profile: Annotated[Profile | None, Key()] = None
    """How the edge that is pulled is worked: bevelled for the fingers."""


class DrawerSize(Struct, frozen=True, kw_only=True):
    """The drawer box behind a front, as far as it is stated; mm."""

    drawer_width: Annotated[float | None, Key(Range(50, 1600))] = None
    """The outside width of a drawer box that is there."""
    drawer_height: Annotated[float | None, Key(DRAWER_HEIGHT)] = None
    """The height of a drawer box's sides."""


class Portion(Struct, frozen=True, kw_only=True):
    """The height of a front that has none of its own."""

    modules: int | None = None
    """In modules of 32 mm, with the gap under it."""
    share: float | None = None
    """Its weight in the height that is left."""


class FrontWords(Struct, frozen=True, kw_only=True):
    """What is said of a front in words."""

    finish: Annotated[str, Key()] = ""
    """How it is finished."""
    note: Annotated[str, Key()] = ""
    """What else is said of it."""
    hangs: NotedPlace | None = None
    """Where in its box that says it hangs."""


class BoxRead(Struct, frozen=True, kw_only=True):
    """What came of reading the table, or the list, that a box was read from."""

    inferred: bool = False
    """Whether it was worked out from a bare front list."""
    doubts: tuple[Doubt, ...] = ()
    """Its numbers that are not usual, without those of its fronts."""


class RowRead(Struct, frozen=True, kw_only=True):
    """What came of reading the table, or the row of a list, that a front was read from."""

    alike: int = 1
    """How many fronts it makes."""
    doubts: tuple[Doubt, ...] = ()
    """Its numbers that are not usual."""
    hidden: tuple[str, ...] = ()
    """What of it the workbook does not show, in words."""
    listed: bool = False
    """Whether it is the row of a list, where no hole is given."""
