"""What a person reads of each kind of fitting: one entry a kind.

`jigs/fittings/kinds.py` has what the kinds are, `holewords.py` what is said of their holes. A kind
that needs nothing of its own gives its name to `numbered`; what no other kind says is a function
that its entry names.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypedDict, cast

from jigs.ground.geometry import Fitting, FittingKind
from jigs.ground.lengths import format_mm
from templates.faces.faceview import FaceView
from templates.words.cardwords import (
    HeadingWords,
    LineWords,
    drawer_ends,
    end_heading,
    fixing_lines,
    hinge_heading,
    hinge_lines,
    hook_lines,
    no_lines,
    numbered,
    plate_heading,
    plate_lines,
    pull_heading,
    pull_lines,
    shelf_heading,
    shelf_lines,
    slide_heading,
    slide_lines,
    steps_between,
)
from templates.words.holewords import operations

Step = Callable[[FaceView], str]

CHECK_LEAFLET = "Check each place against the leaflet."
AWL = "Awl, lightly, then firmly. Lift the paper; check with the rule."


def _said(words: str) -> Step:
    return lambda view: words


_TURNED = " AS YOU LOOK AT THE BACK"
_LEAFLET, _MARK = _said(CHECK_LEAFLET), _said(AWL)


@dataclass(frozen=True, slots=True)
class CountWords:
    """How a QR symbol counts a kind: its pieces, or `each_hole`."""

    one: str
    many: str
    each_hole: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FittingWords:
    """What is said of one kind of fitting."""

    heading: HeadingWords
    """What its card is called."""
    turned: str = ""
    """What its card's name ends with on a face that is seen from behind, where nothing below
    names the face."""
    stick: str
    """What its line on a story stick is called."""
    lines: LineWords = no_lines
    """What its card says after its operations."""
    measured: str = "the part"
    """What is measured before a back with it is bored."""
    before: tuple[str, ...] = ()
    """Steps before the paper is set on a back."""
    lay: Step = _LEAFLET
    """The step that checks the paper by the hardware."""
    awl: Step = _MARK
    """The step that marks the places in a back."""
    bore: str = "Bore."
    """The step that bores a back."""
    laid: str = ""
    """What is laid on the drawing of a side; empty: nothing is, `lay` says what is done."""
    level: str = ""
    """Whose lines are drawn across both boards of a column at once; empty: none."""
    label: CountWords | None = None
    """How it is counted in a QR symbol; None: it is not."""
    bought: str = ""
    """What it is asked for by in a shop, where a piece is bought for each of its holes."""


# --- steps ---------------------------------------------------------------------------------------


def _check_cups(view: FaceView) -> str:
    holes = [hole for fitting in view.fittings for hole in fitting.holes if hole.purpose == "cup"]
    cups = sorted(hole.y for hole in holes)
    inset = min(holes[0].x, view.width - holes[0].x)
    apart = f"{steps_between(cups)} and " if len(cups) > 1 else ""
    return f"Lift the paper: check {apart}{format_mm(inset)} with the rule."


def _stand_box(view: FaceView) -> str:
    if not view.drawer_outline:
        return "Hold it at its box: the holes must lie over the rail or the blocks."
    left, right = drawer_ends(view)
    how = "as far in at both ends"
    if left != right:
        how = f"{left} mm from the LEFT end, {right} from the RIGHT"
    return f"Stand the real drawer box on its drawing: {how}?"


# --- the tables ----------------------------------------------------------------------------------

_ByKind = TypedDict("_ByKind", {
    "hinge": FittingWords, "slide": FittingWords, "plate": FittingWords, "shelf": FittingWords,
    "pull": FittingWords, "front-fixing": FittingWords, "clearance": FittingWords,
    "hook": FittingWords, "manual": FittingWords,
})  # fmt: skip

FITTING_WORDS: _ByKind = {
    "hinge": FittingWords(
        heading=hinge_heading,
        stick="hinge",
        lines=hinge_lines,
        measured="the door",
        before=(
            "Hold it at its box, arrow up: cups must face the plates.",
            "Lay it on a blanket, back up, TOP away from you.",
        ),
        lay=_said("Lay the hinge on the drawing. Awl, lightly, then firmly."),
        awl=_check_cups,
        bore="Depth stop from the rim. Bore.",
        label=CountWords("CUP", "CUPS"),
    ),
    "slide": FittingWords(
        heading=slide_heading,
        stick="slide",
        lines=slide_lines,
        laid="slide",
        level="SLIDE",
        label=CountWords("SLIDE", "SLIDES"),
    ),
    "plate": FittingWords(
        heading=plate_heading,
        stick="plate",
        lines=plate_lines,
        laid="plate",
        label=CountWords("PLATE", "PLATES"),
    ),
    "shelf": FittingWords(
        heading=shelf_heading,
        stick="shelf pins",
        lines=shelf_lines,
        lay=_said("Rule along each row: 32.0 from hole to hole."),
        level="SHELF",
    ),
    "pull": FittingWords(
        heading=pull_heading,
        stick="pull",
        lines=pull_lines,
        lay=_said("Lay the pull on the drawing: its holes must match."),
    ),
    "front-fixing": FittingWords(
        heading=end_heading,
        turned=_TURNED,
        stick="fixing screw",
        lines=fixing_lines,
        measured="the front",
        lay=_stand_box,
        bore="Bore the pilots.",
        label=CountWords("SCREW", "SCREWS", each_hole=True),
    ),
    "clearance": FittingWords(
        heading=end_heading,
        turned=_TURNED,
        stick="clearance",
    ),
    "hook": FittingWords(
        heading=end_heading,
        turned=_TURNED,
        stick="hook",
        lines=hook_lines,
        lay=_said("Hold the slide's rear end to the drawing: its hook must meet the hole."),
    ),
    "manual": FittingWords(
        heading=numbered("HOLES BY HAND"),
        stick="by hand",
    ),
}

# --- what is asked of them -----------------------------------------------------------------------


def words_of(kind: FittingKind) -> FittingWords:
    """Give the words of a kind of fitting."""
    return FITTING_WORDS[kind]


def bought_words(kind: str) -> str:
    """Name a kind as it is asked for in a shop, by the name of an item that is ordered."""
    return words_of(cast("FittingKind", kind)).bought


def work_words(fittings: Sequence[Fitting]) -> str:
    """Count the work in a part, as a QR symbol says it: `2 PLATES 1 SLIDE`."""
    said: list[tuple[str, int, str]] = []
    for kind in {fitting.kind for fitting in fittings}:
        label, mine = words_of(kind).label, [each for each in fittings if each.kind == kind]
        if label is not None:
            count = sum(len(each.holes) for each in mine) if label.each_hole else len(mine)
            said.append((label.one, count, label.one if count == 1 else label.many))
    return " ".join(f"{count} {words}" for _, count, words in sorted(said))


def fitting_heading(view: FaceView, fitting: Fitting, *, short: bool = False) -> str:
    """Name a card by its fitting and place; `short`: where the drilled face is named below it."""
    words = words_of(fitting.kind)
    full = not short and view.face in ("back", "box-back")
    return f"{words.heading(view, fitting)}{words.turned if full else ''}"


def card_lines(view: FaceView, fitting: Fitting) -> tuple[str, ...]:
    """Give the words in a card's heading: its operations, and the check with the hardware."""
    lines = (
        *operations(fitting.holes, view.thickness),
        *words_of(fitting.kind).lines(view, fitting),
    )
    return (*lines, fitting.note) if fitting.note else lines
