"""Blocks of one width that flow down one page after the other, headed again where they go on."""

from collections.abc import Callable, Iterable

from msgspec import Struct, field

from templates.page.marks import Mark
from templates.page.pieces import GAP, MarkBlock, moved


class FlowedBlock(Struct, frozen=True, kw_only=True):
    """A block of a table; `again` goes before it where it begins a page. `entry`: the line in
    the outline for what begins with it."""

    block: MarkBlock
    again: MarkBlock | None = None
    entry: str = ""


class FlowedPage(Struct, kw_only=True):
    """A page as it is filled: its marks from its upper left corner down, how far down they reach
    (mm), and its line in the outline."""

    marks: list[Mark] = field(default_factory=list)
    used: float = 0.0
    entry: str = ""

    def add(self, block: MarkBlock) -> None:
        """Add a block below what stands there."""
        self.marks += moved(block.marks, 0.0, -self.used)
        self.used += block.height + GAP


def flow_pages(
    blocks: Iterable[FlowedBlock], height: float, head: Callable[[int], MarkBlock]
) -> list[FlowedPage]:
    """Let blocks flow down pages of a height (mm), each headed by `head` of its number, from 1. A
    block that is higher than a page stands alone on one."""
    pages: list[FlowedPage] = []
    named = False
    for each in blocks:
        if not pages or pages[-1].used + each.block.height > height:
            page = FlowedPage(entry=pages[-1].entry if pages else "")
            page.add(head(len(pages) + 1))
            if pages and each.again is not None:
                page.add(each.again)
            pages.append(page)
            named = False
        if each.entry and not named:
            pages[-1].entry = each.entry
            named = True
        pages[-1].add(each.block)
    return pages


def stacked(first: MarkBlock, *others: MarkBlock) -> MarkBlock:
    """Set blocks right below each other, never parted."""
    for block in others:
        first = MarkBlock(
            height=first.height + block.height,
            marks=(*first.marks, *moved(block.marks, 0.0, -first.height)),
        )
    return first
