"""What a person reads of each kind of fitting: one entry a kind.

`jigs/given/kinds.py` has what the kinds are, `holewords.py` what is said of their holes. A kind
that needs nothing of its own gives its name to `numbered`; what no other kind says is a function
that its entry names.
"""

from collections.abc import Sequence
from typing import Literal, TypedDict, cast

from msgspec import Struct

from jigs.ground.geometry import Fitting, FittingKind
from jigs.ground.lengths import format_mm
from templates.faces.faceview import FaceView
from templates.words.cardwords import (
    HeadingWords,
    LineWords,
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
    slide_heading,
    slide_lines,
)
from templates.words.holewords import operations

GuidedWork = Literal["sides", "drawer-box", "hinges", "pulls", "marking", "front-screws", "by-hand"]
"""The kinds of work, each with steps of its own."""

_TURNED = ", FROM BEHIND"


class CountWords(Struct, frozen=True):
    """How a QR symbol counts a kind: its pieces, or `each_hole`."""

    one: str
    many: str
    each_hole: bool = False


class FittingWords(Struct, frozen=True, kw_only=True):
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
    work: GuidedWork = "by-hand"
    """Which steps are its own."""
    lay: str = ""
    """How the paper is checked by its hardware, where the steps do not say it."""
    label: CountWords | None = None
    """How it is counted in a QR symbol; None: it is not."""
    bought: str = ""
    """What it is asked for by in a shop, where a piece is bought for each of its holes."""


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
        work="hinges",
        label=CountWords("CUP", "CUPS"),
    ),
    "slide": FittingWords(
        heading=slide_heading,
        stick="slide",
        lines=slide_lines,
        work="sides",
        label=CountWords("SLIDE", "SLIDES"),
    ),
    "plate": FittingWords(
        heading=plate_heading,
        stick="plate",
        lines=plate_lines,
        work="sides",
        label=CountWords("PLATE", "PLATES"),
    ),
    "shelf": FittingWords(
        heading=shelf_heading,
        stick="shelf pins",
        work="sides",
        label=CountWords("PIN", "PINS", each_hole=True),
    ),
    "pull": FittingWords(heading=pull_heading, stick="pull", lines=pull_lines, work="pulls"),
    "front-fixing": FittingWords(
        heading=end_heading,
        turned=_TURNED,
        stick="fixing screw",
        lines=fixing_lines,
        work="front-screws",
        label=CountWords("SCREW", "SCREWS", each_hole=True),
    ),
    "clearance": FittingWords(
        heading=end_heading,
        turned=_TURNED,
        stick="clearance",
        work="drawer-box",
    ),
    "hook": FittingWords(
        heading=end_heading,
        turned=_TURNED,
        stick="hook",
        lines=hook_lines,
        work="drawer-box",
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


def work_of(fitting: Fitting) -> GuidedWork:
    """Give the kind of work that a fitting wants: a drawer box is stood on its front."""
    return words_of(fitting.kind).work if fitting.stands is None else "marking"


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
    if fitting.spacer:
        lines = (*lines, f"ON A SPACER of {format_mm(fitting.spacer).removesuffix('.0')}.")
    return (*lines, fitting.note) if fitting.note else lines
