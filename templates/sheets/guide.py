"""Guide pages: the steps of each kind of work, once, in good reading type, in front of the sheets
whose pages point to them.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from jigs.ground.geometry import FittingKind
from templates.faces.faceview import FaceView
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Mark, Page
from templates.page.paper import Paper
from templates.page.pieces import MarkBlock, moved, paragraph, stacked
from templates.sheets.guidedraw import PICTURES
from templates.words.fittingwords import Work, work_of
from templates.words.guidewords import CARES, GUIDES, Trait, guide_steps, traits_of, works_of

COLUMN, BETWEEN = 56.0, 6.0
"""Width of pictures and cautions, and between them and the steps; mm."""
WIDEST = 130.0
"""The longest lines that are easily read, mm."""
SIZES = (3.5, 2.5)
"""Lettering of the steps: the larger where the page holds it."""
APART = 1.6
"""Between two steps, mm."""


@dataclass(slots=True)
class Wanted:
    """What one kind of work is asked for: its traits and its kinds of fitting."""

    traits: set[Trait] = field(default_factory=set)
    kinds: set[FittingKind] = field(default_factory=set)


@dataclass(frozen=True, slots=True, kw_only=True)
class Guides:
    """The guide pages of some faces, each a page of a document, and on which page each stands."""

    wanted: Mapping[Work, Wanted]
    first: int

    @property
    def at(self) -> dict[Work, int]:
        """Give the page of each kind of work."""
        return {work: self.first + row for row, work in enumerate(self.wanted)}

    def pages(self, paper: Paper) -> tuple[Page, ...]:
        """Draw the pages."""
        return tuple(
            _draw(work, self.wanted[work], paper, number) for work, number in self.at.items()
        )


def guides_for(views: Iterable[FaceView], first: int) -> Guides:
    """Give the guides of the kinds of work that some faces want, from page `first` on."""
    found: dict[Work, Wanted] = {work: Wanted() for work in GUIDES}
    for view in views:
        for work in works_of(view):
            found[work].traits |= traits_of(view)
            found[work].kinds |= {f.kind for f in view.fittings if work_of(f) == work}
    return Guides(wanted={work: each for work, each in found.items() if each.kinds}, first=first)


def _draw(work: Work, wanted: Wanted, paper: Paper, number: int) -> Page:
    words = GUIDES[work]
    across = paper.width - LEFT_STRIP - EDGE
    width = min(across - COLUMN - BETWEEN, WIDEST)
    steps = guide_steps(work, wanted.traits, wanted.kinds)
    title = paragraph(words.title, across, size=5.0, bold=True)
    cares = paragraph(" ".join(CARES), COLUMN, size=2.5, bold=True)
    beside = stacked([*(PICTURES[each]() for each in words.pictures), cares])
    room = paper.height - EDGE - BOTTOM_STRIP - title.height - 4.0
    for size in SIZES:
        text = _text(steps, width, size)
        if text.height <= room:
            break
    used = max(text.height, beside.height)
    height = (
        paper.height if paper.longest is None else max(paper.height, paper.height + used - room)
    )
    top = height - EDGE
    below = top - title.height - 4.0
    marks: list[Mark] = border_marks(paper.width, height, paper, number, brief=True)
    marks += moved(title.marks, LEFT_STRIP, top)
    marks += moved(text.marks, LEFT_STRIP, below)
    marks += moved(beside.marks, LEFT_STRIP + width + BETWEEN, below)
    return Page(
        width=paper.width, height=height, marks=tuple(marks), entry=words.title.capitalize()
    )


def _text(steps: Iterable[str], width: float, size: float) -> MarkBlock:
    """Set the numbered steps."""
    lines = [paragraph(step, width, size=size, hang=str(row)) for row, step in enumerate(steps, 1)]
    return stacked([MarkBlock(height=line.height + APART, marks=line.marks) for line in lines])
