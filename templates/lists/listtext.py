"""A list as text for a terminal: no line longer than it is wide, but for a table's own."""

from collections.abc import Iterator

from templates.lists.listing import Group, Listing, Section, Table, Words
from templates.words.textlines import columned, line_width, wrapped

LEAST_REST = 30
"""Least room that what runs on has where it begins anew, characters."""


def listing_text(listing: Listing) -> str:
    """Give a list as text, a blank line between its sections."""
    sections = ["".join(f"{line}\n" for line in _section(each)) for each in listing.sections]
    return "\n".join(text for text in sections if text)


def _section(section: Section) -> Iterator[str]:
    if section.title:
        yield from wrapped(section.title, "", "  ")
    for block in section.blocks:
        if isinstance(block, Words):
            first = " " * block.indent
            yield from wrapped(block.text, first, first + " " * block.hang)
        else:
            yield from _table(block)


def _table(table: Table) -> Iterator[str]:
    if not table.rows and not any(group.notes for group in table.groups):
        yield "  none"
        return
    own = any(group.title for group in table.groups)
    head, lines = _columned(table, "    " if own else "  ")
    for group in table.groups:
        if group.title:
            yield from wrapped(group.title, "  ", "  ")
        if head:
            yield head
            head = ""
        yield from _group(group, lines)


def _group(group: Group, lines: Iterator[tuple[str, str]]) -> Iterator[str]:
    """Give the lines of a group, its rows' own the next of `lines`."""
    for row in group.rows:
        lead, rest = next(lines)
        under = " " * min(len(lead), line_width() - LEAST_REST)
        yield from wrapped(rest, lead, under) if rest else [lead.rstrip()]
        if row.note:
            yield from wrapped(row.note, " " * 8, " " * 8)
    for note in group.notes:
        yield from wrapped(note.text, " " * 4, " " * 6)


def _columned(table: Table, indent: str) -> tuple[str, Iterator[tuple[str, str]]]:
    """Set a table in columns: its head, "" where none is shown, and of each row what stands in
    its columns and what runs on behind them."""
    shown = table.filled(paper=False)
    rows = [[str(row.cells[at]) for at in shown] for row in table.rows]
    rest = [""] * len(rows)
    if shown and table.columns[shown[-1]].runs_on:
        rest = [cells.pop() for cells in rows]
        shown = shown[:-1]
    if table.heads:
        rows.insert(0, [table.columns[at].head for at in shown])
    right = {place for place, at in enumerate(shown) if table.columns[at].right}
    lines = columned(rows, right=right, indent=indent) if rows else []
    wide = max(map(len, lines), default=0)
    head = lines.pop(0) if table.heads else ""
    return head, iter([(f"{line.ljust(wide)}  ", said)
                       for line, said in zip(lines, rest, strict=True)])  # fmt: skip
