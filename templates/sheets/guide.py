"""Guide pages: what is done with every card, then the steps of each kind of work, once, in good
reading type, in front of the sheets whose pages point to them.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence

from msgspec import Struct, field

from jigs.ground.geometry import FittingKind
from templates.faces.faceview import FaceView
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Mark, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import MarkBlock, moved, paragraph, stacked
from templates.page.typeface import text_width
from templates.sheets.guidedraw import PICTURES, fold_picture
from templates.words.fittingwords import GuidedWork, work_of
from templates.words.guidewords import (
    EVERY,
    GUIDES,
    LETTERS,
    Picture,
    Trait,
    every_steps,
    guide_steps,
    traits_of,
    works_of,
)

COLUMN, BETWEEN = 56.0, 6.0
"""Width of pictures, and between them and the steps; mm."""
WIDEST = 155.0
"""The longest lines that are easily read, mm."""
SIZE = 3.5
"""Lettering of the steps."""
APART = 1.6
"""Between two steps, mm."""
BELOW = 6.0
"""Between two guides, mm."""


class Wanted(Struct):
    """What one kind of work is asked for: its traits and its kinds of fitting."""

    traits: set[Trait] = field(default_factory=set)
    kinds: set[FittingKind] = field(default_factory=set)


class Guides(Struct, frozen=True, kw_only=True):
    """The guides of some faces on pages of a document, the first of them page `first`."""

    wanted: Mapping[GuidedWork, Wanted]
    first: int
    paper: Paper

    @property
    def at(self) -> dict[GuidedWork, int]:
        """Give the page of each kind of work."""
        pages = enumerate(self._shared(), start=self.first)
        return {work: number for number, page in pages for work in page if work is not None}

    def pages(self) -> tuple[Page, ...]:
        """Draw the pages."""
        pages = enumerate(self._shared(), start=self.first)
        return tuple(self._draw(page, number) for number, page in pages)

    def _shared(self) -> list[dict[GuidedWork | None, MarkBlock]]:
        """Share the guides among pages, as many in order as each has room for; None: what every
        card wants."""
        room = (self.paper.longest or self.paper.height) - EDGE - BOTTOM_STRIP
        pages: list[dict[GuidedWork | None, MarkBlock]] = []
        left = 0.0
        for work, block in self._blocks() if self.wanted else ():
            if not pages or block.height > left:
                pages.append({})
                left = room
            pages[-1][work] = block
            left -= block.height
        return pages

    def _blocks(self) -> Iterator[tuple[GuidedWork | None, MarkBlock]]:
        traits = {trait for each in self.wanted.values() for trait in each.traits}
        yield None, _guide(self.paper, EVERY, "ABCDEFGH", every_steps(traits), fold_picture())
        letters = LETTERS.format(self.first)
        for work, wanted in self.wanted.items():
            words, steps = GUIDES[work], guide_steps(work, wanted.traits, wanted.kinds)
            beside = stacked([PICTURES[each]() for each in words.pictures])
            numbers = [str(row) for row, _ in enumerate(steps, start=1)]
            yield work, _guide(self.paper, words.title, numbers, steps, beside, letters)

    def _draw(self, blocks: Mapping[GuidedWork | None, MarkBlock], number: int) -> Page:
        work = next(iter(blocks))
        entry = EVERY if work is None else GUIDES[work].title
        return _page(self.paper, blocks.values(), number, entry)


def guide_page(
    title: str,
    steps: Sequence[str],
    pictures: Iterable[Picture],
    paper: Paper,
    number: int,
    below: Callable[[float, float], MarkBlock | None],
) -> Page:
    """Draw a page with one guide: numbered steps, pictures beside them; `below` gives what stands
    below them in a width and a room, mm."""
    numbers = [str(row) for row, _ in enumerate(steps, start=1)]
    beside = stacked([PICTURES[each]() for each in pictures])
    guide = _guide(paper, title, numbers, steps, beside)
    room = paper.height - EDGE - BOTTOM_STRIP - guide.height
    more = below(paper.width - LEFT_STRIP - EDGE, room)
    return _page(paper, [guide, *([more] if more is not None else [])], number, title)


def _guide(
    paper: Paper,
    title: str,
    numbers: Iterable[str],
    steps: Iterable[str],
    beside: MarkBlock,
    letters: str = "",
) -> MarkBlock:
    """Set one guide: title, numbered steps, what stands beside them; `letters`: where the lettered
    steps stand."""
    across = paper.width - LEFT_STRIP - EDGE
    width = min(across - (COLUMN + BETWEEN if beside.marks else 0.0), WIDEST)
    head = paragraph(title, across - text_width(letters, SIZE), size=5.0, bold=True)
    where = Text(x=across, y=-5.6, text=letters, size=SIZE, anchor="end")
    lines = [
        paragraph(step, width, size=SIZE, hang=number)
        for number, step in zip(numbers, steps, strict=True)
    ]
    text = stacked([MarkBlock(height=e.height + APART, marks=e.marks) for e in lines])
    down = head.height + 2.0
    marks = (
        *head.marks,
        *([where] if letters else []),
        *moved(text.marks, 0.0, -down),
        *moved(beside.marks, width + BETWEEN, -down),
    )
    return MarkBlock(height=down + max(text.height, beside.height) + BELOW, marks=marks)


def _page(paper: Paper, blocks: Collection[MarkBlock], number: int, entry: str) -> Page:
    """Draw a page of guides, one below the other."""
    height = paper.height
    if paper.longest is not None:
        height = max(height, sum(block.height for block in blocks) + EDGE + BOTTOM_STRIP)
    marks: list[Mark] = border_marks(paper.width, height, paper, number, holes=True)
    top = height - EDGE
    for block in blocks:
        marks += moved(block.marks, LEFT_STRIP, top)
        top -= block.height
    return Page(width=paper.width, height=height, marks=tuple(marks), entry=entry.capitalize())


def guides_for(views: Iterable[FaceView], first: int, paper: Paper) -> Guides:
    """Give the guides of the kinds of work that some faces want, from page `first` on."""
    found: dict[GuidedWork, Wanted] = {work: Wanted() for work in GUIDES}
    for view in views:
        for work in works_of(view):
            found[work].traits |= traits_of(view)
            found[work].kinds |= {f.kind for f in view.fittings if work_of(f) == work}
    wanted = {work: each for work, each in found.items() if each.kinds}
    return Guides(wanted=wanted, first=first, paper=paper)
