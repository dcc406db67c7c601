"""The blank of a card: how large it is cut, and how it lies to the two lines that it is set on.

Cards whose holes lie alike to these lines, with the same figures and the same words beside them,
are cut alike, whosever they are: a blank is laid out once for all of them. Only then, and only on
what is printed, come names and codes.
"""

from collections.abc import Hashable, Sequence

from msgspec import Struct

from jigs.ground.geometry import Fitting
from templates.cards.cardplan import CardPlan
from templates.cards.ticks import Member
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.space import Box

EXACT = 6
"""Places that agree to so many decimals of a millimetre are the same."""
MOST_KEPT = 10_000
"""Blanks that are kept for further parts, which bounds the memory of a long job."""


class Blank(Struct, frozen=True, kw_only=True):
    """A card's border and what bears on it, counted inward from its two references; mm."""

    low: tuple[float, float]
    """Its corner by the references, flaps included."""
    inner: tuple[float, float]
    """The same without flaps."""
    high: tuple[float, float]
    """The opposite corner."""
    ladder: float | None
    """Where the part's true top end lies, if it reaches up to it."""
    heading: float
    """How wide its own words are set."""
    nearest: float
    """How far up the nearest of its holes is."""
    shortage: float
    """How much room its words lack."""

    def box(self, across: Reference, up: Reference) -> Box:
        """Give its border, flaps included, in the coordinates of the face."""
        return _between(self.low, self.high, across, up, 0.0)

    def inside(self, across: Reference, up: Reference) -> Box:
        """Give it without its flaps, a little within its border."""
        return _between(self.inner, self.high, across, up, 0.4)


def _between(
    low: tuple[float, float],
    high: tuple[float, float],
    across: Reference,
    up: Reference,
    within: float,
) -> Box:
    x1, x2 = (across.at + across.inward * end[0] for end in (low, high))
    y1, y2 = (up.at + up.inward * end[1] for end in (low, high))
    return (
        min(x1, x2) + within, min(y1, y2) + within, max(x1, x2) - within, max(y1, y2) - within
    )  # fmt: skip


class Blanks:
    """The blanks of a job's cards, each laid out when the first card asks for it."""

    def __init__(self) -> None:
        self._laid: dict[Hashable, Blank] = {}

    def __len__(self) -> int:
        return len(self._laid)

    def find(
        self,
        view: FaceView,
        fitting: Fitting,
        across: Reference,
        up: Reference,
        *,
        with_ladder: bool = True,
        members: Sequence[Member] = (),
        ticks: float = 0.0,
    ) -> Blank:
        """Give the blank of a card that is set on two references; `members` are the parts that
        have a box to tick on it, where there are several, `ticks` the height of these boxes."""
        key = _key(view, fitting, across, up, with_ladder=with_ladder), ticks
        blank = self._laid.get(key)
        if blank is None:
            if len(self._laid) >= MOST_KEPT:
                self._laid.clear()
            plan = CardPlan(
                view, fitting, across, up, with_ladder=with_ladder, members=tuple(members)
            )
            blank = self._laid[key] = _blank_of(plan)
        return blank


def _blank_of(plan: CardPlan) -> Blank:
    left = -plan.flap if plan.across.kind == "edge" else plan.u_low
    low = -plan.flap if plan.up.kind == "edge" else 0.0
    return Blank(
        low=(left, low),
        inner=(0.0 if plan.across.kind == "edge" else plan.u_low, 0.0),
        high=(plan.u_high, plan.v_high),
        ladder=plan.ladder_v,
        heading=plan.heading_width,
        nearest=min(v for _, v in plan.places),
        shortage=plan.shortage,
    )


def _key(
    view: FaceView, fitting: Fitting, across: Reference, up: Reference, *, with_ladder: bool
) -> Hashable:
    """Give all that a card's size comes from."""
    x0, y0 = across.at, up.at
    state = view.state
    topmost = with_ladder and view.ladder and fitting.index == fitting.count and up.inward > 0
    stated = fitting.stated_from is not None
    return (
        (view.face, view.hinge_edge, view.front_edge, view.partition, view.rounded, view.thickness),
        (state.panel, state.stand, state.low, state.band, state.raw),
        *((each.kind, each.edge, each.inward, 0.0 if each.kind == "middle" else each.value)
          for each in (across, up)),
        (fitting.kind, fitting.note, fitting.spacer, fitting.stands is None, fitting.index == 1),
        tuple((round(x - x0, EXACT), round(y - y0, EXACT)) for x, y in fitting.places),
        tuple((hole.purpose, hole.diameter, hole.depth) for hole in fitting.holes),
        tuple(
            tuple((round(x - x0, EXACT), round(y - y0, EXACT)) for x, y in polygon)
            for polygon in fitting.outline
        ),
        (view.width, fitting.carry) if fitting.carry else (),
        (fitting.stated_from, view.height, y0, view.ends.base, view.ends.below) if stated else (),
        round(view.height - y0, EXACT) if topmost else None,
    )  # fmt: skip
