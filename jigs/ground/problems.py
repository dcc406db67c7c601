"""What is wrong or doubtful about a job, as a value, and how much it matters.

An *error* withholds its part: no sheet is made, the label says HOLD. A *warning* is printed on
every sheet it concerns. Each code has one rank: 1 an error, which withholds its part, or the job
cannot be built so; 2 spoils wood or money if it is passed over; 3 worth a look. A code of rank 1 is
never a warning. One of rank 2 or 3 that is stated as an error has rank 1 there.
"""

from typing import Literal

from msgspec import Struct

Rank = Literal[1, 2, 3]

RUBS = "gap-rubs"
"""The finding of a gap between fronts that rub, or may."""
REFUSALS = ("sizes-exchanged", "size-differs", "out-of-square", "thickness-differs")
"""The findings by which a delivered front is held back: it is what it was made, not as ordered."""
RANKS: dict[str, Rank] = {
    # 1: what is never less than an error
    "bored-heights-missing": 1,
    "bored-through": 1,
    "drawer-into-shelf": 1,
    "drawer-no-width": 1,
    "drawer-too-high": 1,
    "drawer-too-low": 1,
    "drawer-too-wide": 1,
    "faces-meet": 1,
    "fixing-in-panel": 1,
    "fixing-no-room": 1,
    "frame-without-panel": 1,
    "glass-without-frame": 1,
    "hand-not-stated": 1,
    "hinge-against": 1,
    "hinge-at-blind": 1,
    "hinge-kind": 1,
    "hinge-no-room": 1,
    "hinge-not-stated": 1,
    "hole-in-glass": 1,
    "hole-in-panel": 1,
    "hole-in-panel-in-hand": 1,
    "hole-near-edge": 1,
    "hole-outside": 1,
    "hole-serves-nobody": 1,
    "holes-too-near": 1,
    "hook-in-notch": 1,
    "hook-outside": 1,
    "kit-holes-missing": 1,
    "leaflet-not-met": 1,
    "leaflet-not-noted": 1,
    "neighbour-open": 1,
    "overlay": 1,
    "pull-aim": 1,
    "pull-on-panel": 1,
    "reveals-do-not-close": 1,
    "rollout-behind-front": 1,
    "rollout-hand-open": 1,
    "rollout-into-drawer": 1,
    "rollout-into-panel": 1,
    "rollout-too-narrow": 1,
    "rollout-without-board": 1,
    "rollouts-overlap": 1,
    "sizes-exchanged": 1,
    "skin-under-cup": 1,
    "slide-at-blind": 1,
    "slide-not-stated": 1,
    "slide-too-long": 1,
    "stile-narrow": 1,
    # 2: wood or money is spoilt where it is passed over
    "above-ceiling": 2,
    "appliance-place": 2,
    "before-filler": 2,
    "beyond-wall": 2,
    "blocks-needed": 2,
    "board-differs": 2,
    "bored-deep": 2,
    "bored-tab-missing": 2,
    "bored-through-once": 2,
    "box-differs": 2,
    "box-out-of-square": 2,
    "box-tapers": 2,
    "cannot-be-tilted-up": 2,
    "corner-filler": 2,
    "counter-front": 2,
    "counter-height": 2,
    "counter-reveal": 2,
    "cup-at-groove": 2,
    "deeper-box": 2,
    "door-beyond-tables": 2,
    "doors-stacked": 2,
    "drawer-above-front": 2,
    "drawer-clearance": 2,
    "drawer-not-as-built": 2,
    "drawer-off-panel": 2,
    "drawer-too-narrow": 2,
    "edge-at-end": 2,
    "end-reach": 2,
    "exchanged-perhaps": 2,
    "floor-high": 2,
    "gap-in-hand": 2,
    "gap-rubs": 2,
    "groove-too-deep": 2,
    "hidden-in-list": 2,
    "hinge-at-end": 2,
    "hinge-edge-reveal": 2,
    "hinge-to-hinge": 2,
    "hinges-few": 2,
    "hook-through": 2,
    "legs-above-floor": 2,
    "nailer-inside": 2,
    "opening-not-noted": 2,
    "order-against-note": 2,
    "out-of-square": 2,
    "piece-no-room": 2,
    "pocket-near-hole": 2,
    "pull-at-box-edge": 2,
    "pullout-drawer-box": 2,
    "pull-at-fixing": 2,
    "rollout-spacer": 2,
    "rollout-tight": 2,
    "same-place": 2,
    "shelf-sag": 2,
    "size-differs": 2,
    "slide-load": 2,
    "tab-moved": 2,
    "thickness-differs": 2,
    "unconfirmed-hinge": 2,
    "unconfirmed-pull": 2,
    "unconfirmed-slide": 2,
    "unlikely-number": 2,
    "wall-filler": 2,
    "wall-gap": 2,
    "wall-short": 2,
    # 3: worth a look
    "diagonals-doubtful": 3,
    "end-reveal": 3,
    "filler-at-appliance": 3,
    "fixing-left-out": 3,
    "fixing-screw": 3,
    "hinge-off-grid": 3,
    "hinges-close": 3,
    "leaflet-in-part": 3,
    "least-reveal-unknown": 3,
    "not-delivered": 3,
    "no-shelf": 3,
    "one-pull-for-two": 3,
    "pull-on-rail": 3,
    "pull-screw": 3,
    "pull-upright": 3,
    "push-latch": 3,
    "side-reveal": 3,
    "sight-line": 3,
    "surplus": 3,
}

OPEN_CODES = ("unconfirmed-hinge", "unconfirmed-slide", "unconfirmed-pull")
"""A part with one of them rests on numbers that are open: neither looked up nor measured."""

OF_HINGES = frozenset(
    {
        "corner-filler",
        "cup-at-groove",
        "door-beyond-tables",
        "hinge-at-end",
        "hinge-edge-reveal",
        "hinge-off-grid",
        "hinge-to-hinge",
        "hinges-close",
        "hinges-few",
        "least-reveal-unknown",
        "tab-moved",
        "wall-filler",
    }
)
"""What concerns how a front hangs and swings: it stands where its hinges are bored."""

OF_PULLS = frozenset({("unlikely-number", "centres")})
"""What concerns the pull of a front alone, by code and case: it stands where that is bored."""

BEFORE_CUTTING = frozenset(
    {
        "above-ceiling",
        "cannot-be-tilted-up",
        "corner-filler",
        "counter-front",
        "counter-height",
        "counter-reveal",
        "legs-above-floor",
        "same-place",
        "wall-filler",
        "wall-short",
    }
)
"""What no sheet of a front can mend: it is read before any board is cut, so it stands on the
elevations and in the cut list too."""


Level = Literal["error", "warning"]


class Open(Struct, frozen=True):
    """A length that decides a finding, and that nobody has looked up or measured; mm."""

    mm: float


Told = float | str | Open | None | tuple["Told", ...]
"""What a finding has to tell: a number (a length in mm, unless its words say otherwise), a name, a
flag, or several of them; None where there is none."""


class Problem(Struct, frozen=True, kw_only=True):
    """One finding of the check: what was found, without a word; `templates/words` says it.

    `code` is short, stable and of our own (`hinge-off-grid`), `case` tells apart what is worded
    differently under one code; `part` is the front, side, drawer box or box it stands at, None for
    the whole job; `also` names further parts on whose sheets it is printed.
    """

    level: Level
    code: str
    part: str | None
    case: str = ""
    values: tuple[tuple[str, Told], ...] = ()
    also: tuple[str, ...] = ()

    @property
    def rank(self) -> Rank:
        """How much it matters: 1 an error, 2 spoils wood or money, 3 worth a look."""
        return 1 if self.level == "error" else RANKS[self.code]


def error(
    code: str, part: str | None, *, case: str = "", also: tuple[str, ...] = (), **values: Told
) -> Problem:
    """State a finding that withholds its part; `values` are named as its words name them."""
    return Problem(
        level="error", code=code, part=part, case=case, values=tuple(values.items()), also=also
    )


def warning(
    code: str, part: str | None, *, case: str = "", also: tuple[str, ...] = (), **values: Told
) -> Problem:
    """State a finding that is printed on the sheets it concerns."""
    return Problem(
        level="warning", code=code, part=part, case=case, values=tuple(values.items()), also=also
    )


def maybe_open(mm: float, *, open: bool) -> float | Open:
    """Give a length, mm, as one that is open where nobody has looked it up."""
    return Open(mm) if open else mm


def is_to_order(problem: Problem) -> bool:
    """Tell whether a finding is of a gap that surely rubs, and can be mended before the order."""
    return problem.code == RUBS and problem.case == "to-order"
