"""The steps of each kind of work, said once: the words of the guide pages, to which a part's own
pages point, and which guides a face needs. What is done with every card stands in front, lettered.
"""

from collections.abc import Collection, Iterable, Mapping
from typing import Literal

from msgspec import Struct

from jigs.given.kinds import KINDS, by_rank, kind_of, rank_of
from jigs.ground.geometry import FittingKind
from templates.faces.faceview import FaceView
from templates.words.fittingwords import GuidedWork, words_of, work_of
from templates.words.holewords import HOLE_WORDS
from templates.words.markingwords import (
    ADJUSTERS,
    BOX_FIRST,
    FALSE_HELD,
    FALSE_SCREWS,
    KITCHEN,
    MARK,
    SCREW,
    STAND,
)

Trait = Literal["rounded", "standing", "partition", "marked", "pilots", "pins", "open"]
"""What not every part is: its edges rounded, its box together, a partition; a drawer box through
which its front is marked, or whose front has pilots of its own; rows of shelf pins; open
numbers."""
Picture = Literal["fold", "book", "windows"]
"""What is told by a picture: how a flap is folded, how the two sides of a box lie, how a card
is set on a line."""
TRUE_FOLD = "no black on the face, no white on the edge"
"""How a fold on the right side of the band looks."""


class GuideWords(Struct, frozen=True, kw_only=True):
    """A guide: what it is for, its steps in order, each for all parts or, with a trait, for
    those alone that have it, None where the kinds of fitting say what is theirs; its pictures."""

    title: str
    steps: tuple[str | tuple[Trait, str] | None, ...]
    pictures: tuple[Picture, ...] = ()


EVERY = "EVERY CARD, IN THIS ORDER"
"""The title of the steps that all kinds of work have in common, lettered A to H."""
LETTERS = "A to H: page {}."
"""Where they stand."""
FOLD = (
    f"Fold each flap down over its edge: {TRUE_FOLD}. Clamp a straight block against the flap; "
    "hold the card with low-tack tape."
)
ROUNDED = (
    "Edges rounded: no fold. Cut where white meets black; butt the paper to a straight block "
    "clamped on the edge, 3 mm proud."
)
LINE_SHOWS = "the pencil line shows in both windows and runs on in the card's long line"
BORE_CROSSES = "bore these numbers of the pin card and no others"
_SET = "Set the cards: A to E."
_PUNCHED = "Punch: F, G."
_DONE = "Done: H."
_SCREWS = "Set the stop; bore the pilots; measure the screw."
_COUNTERBORE = "Counterbore for the pull screws where the page says so."
_STOP = "Try bit and stop on scrap. Clamp. Bore."

GUIDES: Mapping[GuidedWork, GuideWords] = {
    "hinges": GuideWords(
        title="DOORS, FROM BEHIND: HINGES",
        steps=(
            "Hold the door at its box, arrow up: the cups must face the plates.",
            "Lay it on a blanket, back up.",
            f"{_SET} Cut the top one's ladder at the height YOU measured; of several doors the "
            "tallest first, cut again for each shorter one.",
            f"Lay your hinge on the drawing: cup and both screws must match. {_PUNCHED} Punch to "
            "punch is as on the box side.",
            "Set the stop from the bit's RIM, not from its point; bore the first cup in scrap. "
            f"Clamp. Bore. {_DONE}",
        ),
    ),
    "pulls": GuideWords(
        title="FROM THE FACE: PULLS AND KNOBS",
        steps=(
            f"{_SET} Mark a middle from both ends: the marks must meet.",
            f"Lay your pull on the drawing: its holes must match. {_PUNCHED}",
            f"Clamp scrap behind. Drill from THIS face; painted: 2 mm pilot first. {_DONE}",
        ),
    ),
    "marking": GuideWords(
        title="DRAWER FRONTS, FROM BEHIND: MARKED THROUGH",
        steps=(
            BOX_FIRST,
            f"{_SET} {STAND}",
            MARK,
            f"Take off box and paper. {_SCREWS} {_COUNTERBORE}",
            f"{SCREW} {_DONE}",
            KITCHEN,
            ADJUSTERS,
        ),
    ),
    "front-screws": GuideWords(
        title="DRAWER FRONTS, FROM BEHIND: PILOTS",
        steps=(
            _SET,
            "Stand the real drawer box on its drawing, where the page says.",
            f"{FALSE_HELD} {FALSE_SCREWS}",
            f"{_PUNCHED} {_SCREWS} {_DONE}",
        ),
    ),
    "drawer-box": GuideWords(
        title="DRAWER BOXES: FRONT, AND BACK FOR THE HOOKS",
        steps=(
            "Stand the box on its bottom, the face to drill towards you.",
            ("marked", "The box comes before its front, which is marked through its holes."),
            ("pilots", "The front's pilots come before the holes in the box's front."),
            f"{_SET} Cards that overlap: one after the other. Over a notch the fold hangs free.",
            "Back: hold the slide's rear end to the drawing: its hook must meet the hole.",
            f"{_PUNCHED} Clamp the box, a block behind. Bore from outside. {_DONE}",
            (
                "pilots",
                "Front: stand the box on the front, each hole over its pilot; then screw it on.",
            ),
        ),
    ),
    "sides": GuideWords(
        title="BOX SIDES, INSIDE",
        pictures=("book",),
        steps=(
            "Figures count from the FINISHED front edge; raw: from the edge before its band; over "
            "panel: up from the bottom panel of a box already together.",
            "Lay LEFT and RIGHT like an open book: insides up, tops away from you, FRONT edges "
            "touching, bottoms on one stop. The RIGHT side lies on your LEFT.",
            f"Strike slide and shelf lines, and those the pages name, across BOTH at once. {_SET}",
            (
                "partition",
                "A partition stands on the bottom panel: its page says what lies between it and "
                "the stop, and its figures start at its own bottom end.",
            ),
            (
                "standing",
                "Box together: lay it as the page says; fold over the front edge alone, cut off "
                "the black below and stand the paper on the panel.",
            ),
            (
                "pins",
                "Pin card: cut its windows out. Its flap goes over the edge that the page names, "
                f"front or rear, the title that reads right above; {LINE_SHOWS}. Crosses -1 to "
                f"+3: {BORE_CROSSES}. Tick the line.",
            ),
            f"Lay slide or plate on the drawing. {_PUNCHED} Compare left with right.",
            f"{_STOP} What is marked THROUGH is bored once, from one face. {_DONE}",
        ),
    ),
    "by-hand": GuideWords(
        title="HOLES BY HAND: KITS, LIFTS, BRACKETS",
        steps=(
            "Hold the part at its box: which edge is up, which face is drilled?",
            f"{_SET} Check each place against the leaflet; lay the hardware on the drawing.",
            None,
            f"{_PUNCHED} {_STOP} {_DONE}",
        ),
    ),
}
"""The guide of each kind of work, in the order in which a kitchen is drilled."""

FOLD_RIGHT, FOLD_BLACK, FOLD_WHITE = "RIGHT", "WRONG: black on the face", "WRONG: white on the edge"
"""What stands below the three folds."""
BLOCK, PAPER_FACE = "BLOCK", "paper on the face"
"""What is named on the right one."""
BOOK_RIGHT, BOOK_LEFT, BOOK_TOP, BOOK_STOP = "RIGHT SIDE", "LEFT SIDE", "TOP", "STOP"
BOOK_FRONT, BOOK_LINE = "FRONT EDGES TOUCH", "across both"
"""What is named on the picture of two sides."""
ON_LINE, PENCIL = "RIGHT: the line in both windows", "pencil line"
"""What is named on the picture of a card on its line."""


def works_of(view: FaceView) -> tuple[GuidedWork, ...]:
    """Give the kinds of work that a face wants, each once."""
    ranked = sorted(view.fittings, key=lambda fitting: rank_of(fitting.kind))
    return tuple(dict.fromkeys(map(work_of, ranked)))


def traits_of(view: FaceView) -> frozenset[Trait]:
    """Tell what a face is that not every one is."""
    traits: dict[Trait, bool] = {
        "rounded": view.rounded,
        "standing": view.state.stand,
        "partition": bool(view.partition),
        "marked": view.face == "box-front" and view.marks is not None,
        "pilots": view.face == "box-front" and view.marks is None,
        "pins": any(kind_of(fitting).on_crosses for fitting in view.fittings),
        "open": bool(view.open),
    }
    return frozenset(trait for trait, is_so in traits.items() if is_so)


def every_steps(traits: Collection[Trait]) -> tuple[str, ...]:
    """Give the steps that every card has, A to H, for parts with these traits."""
    rounded = f" {ROUNDED}" if "rounded" in traits else ""
    unsure = " OPEN on it: page 1." if "open" in traits else ""
    return (
        f"Measure both bars with a steel rule; wrong: page 1.{unsure} Do ID and code agree with "
        "the label?",
        "Write ID and TOP, on a side FRONT too, on the face you drill; painted: on tape. That face "
        "lies up, TOP away from you. Measure the part; fill in its page.",
        "Cut out the cards, their crossed corners and diamonds.",
        "Strike the lines that the page names with a sharp pencil. Set the card's edge, or its two "
        "diamonds, on them.",
        f"{FOLD}{rounded}",
        "Awl: lightly, look, then firmly.",
        "Lift the paper. Measure each mark; one that is not on its pencil line is punched anew.",
        "Tick; write DRILLED on the label.",
    )


def guide_steps(
    work: GuidedWork, traits: Collection[Trait], kinds: Iterable[FittingKind]
) -> tuple[str, ...]:
    """Give the steps of a guide for parts with these traits: each that holds for all or for some
    of them, and what the kinds of fitting among them want besides."""
    own = dict.fromkeys(
        f"{HOLE_WORDS[KINDS[kind].holes[0]].name}: {words_of(kind).lay}"
        for kind in by_rank(kinds)
        if words_of(kind).lay
    )
    steps: list[str] = []
    for step in GUIDES[work].steps:
        if step is None:
            steps += own
        elif isinstance(step, str):
            steps.append(step)
        elif step[0] in traits:
            steps.append(step[1])
    return tuple(steps)


def guide_line(view: FaceView, pages: Mapping[GuidedWork, int]) -> str:
    """Say on which pages the steps for a face stand: `STEPS: page 3`; "" where there are none."""
    found = sorted({pages[work] for work in works_of(view) if work in pages})
    if not found:
        return ""
    return f"STEPS: {'page' if len(found) == 1 else 'pages'} {' and '.join(map(str, found))}."
