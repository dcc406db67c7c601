"""The five-piece front: two stiles, two rails, and a panel that floats in their groove.

A hole may stand in the wood of a stile or a rail; behind a thin panel, or in glass, it may not.
The cup of a hinge must end before the groove: margin = stile - groove - (K + cup).

>>> frame = FivePiece(width=454.0, height=220.8, stile=57.0, rail=57.0, groove=11.0, panel=6.0)
>>> frame.hinge_margin(tab=5.0, cup=35.0)
6.0
"""

from collections.abc import Iterator, Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.fittings.fixing import HEAD, PAN_HEAD, SEAM, Backing, ScrewPlace
from jigs.given.job import FrontSpec
from jigs.ground.geometry import SLACK, Fitting, Hole, Polygon, rectangle

GROOVE = 11.0
"""Depth of the groove in stiles and rails where none is stated; mm (common practice)."""
PANEL = 6.0
"""Thickness of the panel where none is stated; mm (common practice)."""
PANE = 4.0
"""Thickness of a pane of glass where none is stated; mm (common practice)."""
THIN_PANEL = 10.0
"""A panel up to this is too thin for a screw: one would come out; mm (common practice)."""
NARROW_STILE = 44.0
"""A stile up to this takes no cup; mm (common practice, no source)."""
GLASS_MASS = 10.0 / 4.0
"""Mass of glass, kg/m2 for each mm of thickness (common practice: 10 kg/m2 at 4 mm)."""


class FivePiece(Struct, frozen=True, kw_only=True):
    """A five-piece front in its own axes, mm: widths of stile and rail, depth of their groove,
    thickness of the panel, or of the pane where it is `glass`."""

    width: float
    height: float
    stile: float
    rail: float
    groove: float
    panel: float
    glass: bool = False

    @property
    def opening(self) -> Polygon:
        """The panel as it is seen, between the inner edges of stiles and rails."""
        return rectangle(self.stile, self.rail, self.width - self.stile, self.height - self.rail)

    @property
    def closes(self) -> bool:
        """Whether stiles and rails leave a panel between them."""
        return min(self.width - 2 * self.stile, self.height - 2 * self.rail) > SLACK

    @property
    def thin(self) -> bool:
        """Whether no screw may stand in the panel."""
        return self.glass or self.panel <= THIN_PANEL + SLACK

    def hinge_margin(self, *, tab: float, cup: float) -> float:
        """Give the wood between a hinge's cup, `cup` across, and the groove; mm."""
        return self.stile - self.groove - (tab + cup)

    def is_solid(self, x: float, y: float, radius: float) -> bool:
        """Tell whether a hole stands in the wood of stile or rail, clear of the groove."""
        return not self._within(x, y, radius, self.stile - self.groove, self.rail - self.groove)

    def is_in_wood(self, x: float, y: float, radius: float) -> bool:
        """Tell whether a hole stands in stile or rail, 2 mm clear of the panel."""
        return not self._within(x, y, radius + SEAM, self.stile, self.rail)

    def meets_panel(self, x: float, y: float, radius: float) -> bool:
        """Tell whether a hole reaches the panel as it is seen."""
        return self._within(x, y, radius, self.stile, self.rail)

    def is_on_panel(self, x: float, y: float, radius: float) -> bool:
        """Tell whether a hole stands wholly in the panel, 2 mm clear of stile and rail."""
        room = radius + SEAM
        return (
            self.stile + room - SLACK <= x <= self.width - self.stile - room + SLACK
            and self.rail + room - SLACK <= y <= self.height - self.rail - room + SLACK
        )

    def holds(self, place: ScrewPlace, radius: float) -> bool:
        """Tell whether a screw at this place bites the wood of stile or rail, 2 from the groove."""
        return self.is_solid(*place, radius + SEAM)

    def places(self, backing: Backing, place: ScrewPlace, radius: float) -> Iterator[ScrewPlace]:
        """Yield where a fixing screw meant for a place may stand in stile or rail; mm.

        The place itself; the same row moved out into the stile, as far as the screw's head still
        passes the drawer's side; the same column moved into the rail at that half of the drawer
        box, as far as the head still passes the drawer's bottom or its top edge. Between the hole
        and the groove 2 of wood stay.
        """
        x, y = place
        if self.holds(place, radius):
            yield place
        reach = self.stile - self.groove - radius - SEAM
        least = backing.x + backing.side + PAN_HEAD
        if reach >= least - SLACK and abs(x - self.width / 2) > SLACK:
            yield (min(x, reach) if x < self.width / 2 else max(x, self.width - reach)), y
        reach = self.rail - self.groove - radius - SEAM
        half = backing.y + backing.height / 2
        if y <= half + SLACK and reach >= backing.y + backing.floor + HEAD - SLACK:
            yield x, min(y, reach)
        top = backing.y + backing.height - HEAD
        if y >= half - SLACK and self.height - reach <= top + SLACK:
            yield x, max(y, self.height - reach)

    def _within(self, x: float, y: float, radius: float, stile: float, rail: float) -> bool:
        return (
            stile - radius + SLACK < x < self.width - stile + radius - SLACK
            and rail - radius + SLACK < y < self.height - rail + radius - SLACK
        )


def five_piece_of(spec: FrontSpec, width: float, height: float) -> FivePiece | None:
    """Give the frame of a five-piece front of this size, None for a slab; mm.

    Rails are as wide as the stiles where nothing else is said.
    """
    given = spec.five_piece
    if given.stile is None:
        return None
    usual = PANE if given.glass else PANEL
    return FivePiece(
        width=width,
        height=height,
        stile=given.stile,
        rail=given.stile if given.rail is None else given.rail,
        groove=GROOVE if given.groove is None else given.groove,
        panel=usual if given.panel is None else given.panel,
        glass=given.glass,
    )


FrameSize = Literal["rail", "groove", "panel", "glass"]
"""A size of a frame that may stand in: a rail's width, a groove's depth, what the panel or the pane
measures."""


def stand_ins_of_frame(spec: FrontSpec) -> tuple[tuple[FrameSize, float], ...]:
    """Give the sizes of a five-piece front that stand in for numbers nobody gave; mm."""
    given, frame = spec.five_piece, five_piece_of(spec, 0.0, 0.0)
    if frame is None:
        return ()
    sizes: tuple[tuple[FrameSize, float | None, float], ...] = (
        ("rail", given.rail, frame.rail),
        ("groove", given.groove, frame.groove),
        ("glass" if given.glass else "panel", given.panel, frame.panel),
    )
    return tuple((name, size) for name, own, size in sizes if own is None)


def glass_door_mass(frame: FivePiece, thickness: float, density: float) -> float:
    """Give the mass of a glass door in kg: its wood at `density` kg/m3, and its pane."""
    pane = (frame.width - 2 * frame.stile) * (frame.height - 2 * frame.rail) * 1e-6
    wood = frame.width * frame.height * 1e-6 - pane
    return wood * thickness * 1e-3 * density + pane * frame.panel * GLASS_MASS


def settle_pull(pull: Fitting, frame: FivePiece, *, low: bool = False) -> Fitting | None:
    """Give a pull as it may stand on a five-piece front, None where it can stand nowhere.

    In stile or rail, or on a panel that is thick enough, it stays. A level one goes to the
    middle of the top rail otherwise (`low`: the bottom rail), if that is wide enough.
    """
    if _stands(pull.holes, frame):
        return pull
    rows = {round(hole.y, 6) for hole in pull.holes}
    if len(rows) != 1:
        return None
    rise = (frame.rail / 2 if low else frame.height - frame.rail / 2) - pull.holes[0].y
    moved = replace(
        pull,
        holes=tuple(replace(hole, y=hole.y + rise) for hole in pull.holes),
        outline=tuple(tuple((x, y + rise) for x, y in polygon) for polygon in pull.outline),
    )
    if all(frame.is_solid(hole.x, hole.y, hole.diameter / 2) for hole in moved.holes):
        return moved
    return None


PullsStand = Literal["stays", "on-rail", "nowhere"]
"""What became of pulls on a five-piece front: they stand as meant, went to the middle of a rail,
or found no wood."""


def settle_pulls(
    frame: FivePiece | None, pulls: Sequence[Fitting], *, low: bool = False
) -> tuple[tuple[Fitting, ...], PullsStand]:
    """Give the pulls of a front as they may stand on its frame, () where they cannot, and say
    what became of them. `low`: on the bottom rail."""
    if frame is None or not frame.closes or not pulls:
        return tuple(pulls), "stays"
    settled = [settle_pull(pull, frame, low=low) for pull in pulls]
    found = tuple(pull for pull in settled if pull is not None)
    if len(found) < len(pulls):
        return (), "nowhere"
    same = all(one.holes == other.holes for one, other in zip(found, pulls, strict=True))
    return found, "stays" if same else "on-rail"


def stands_on_panel(holes: Sequence[Hole], frame: FivePiece) -> bool:
    """Tell whether all holes of a pull stand in the panel, so that it alone is clamped."""
    return all(frame.is_on_panel(hole.x, hole.y, hole.diameter / 2) for hole in holes)


def _stands(holes: Sequence[Hole], frame: FivePiece) -> bool:
    if all(frame.is_in_wood(hole.x, hole.y, hole.diameter / 2) for hole in holes):
        return True
    return not frame.thin and stands_on_panel(holes, frame)
