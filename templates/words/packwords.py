"""The files of a pack: what each is for, and when it is printed."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from jigs.bench.jobplan import Day
from jigs.bench.workplan import StageKind


class PackFile(NamedTuple):
    """What is said of a file: what it is for; the stages before whose first it is printed, () of
    what is never printed; and what else is to be said of its printing."""

    purpose: str
    before: tuple[StageKind, ...] = ()
    how: str = ""


EITHER = "THIS ONE OR THE OTHER, not both: their holes are the same."
FILES: dict[str, PackFile] = {
    "plan.pdf": PackFile("these pages: the order of all work, to tick off", ("before",)),
    "lists.pdf": PackFile("what to cut, what to buy", ("before",)),
    "elevations.pdf": PackFile("each wall drawn, to check the job by", ("before",)),
    "labels.pdf": PackFile("a label for each part", ("cut", "arrived"), "on label stock"),
    "stations.pdf": PackFile("a page for each setting of the drill", ("bored",), EITHER),
    "sheets.pdf": PackFile(
        "a sheet for each part: single parts, one replaced, a first front", ("bored",), EITHER
    ),
    "heights.pdf": PackFile("every line of each pair of sides, to strike or to check", ("bored",)),
    "holes.csv": PackFile("every hole, for a spreadsheet"),
    "parts.csv": PackFile("the cut list, for a spreadsheet"),
    "order.csv": PackFile("what to buy, for a spreadsheet"),
    "fronts.csv": PackFile("the fronts, for their supplier"),
    "contents.json": PackFile("what the pack holds: keep it beside the rest"),
}
"""Every file that a pack may hold, in the order in which they are wanted."""
FILES_TITLE = "The files of this pack, and when each is printed"
FILES_HOW = (
    "Print at 100 %, one-sided, and measure the bars on page 1 of what is drilled by. A file is "
    "printed when its day comes, not before: what is measured meanwhile changes it. Who drills by "
    "sheets.pdf keeps the order and the stops; its page 1 says where each part is."
)


def files_in_order(names: Iterable[str]) -> list[str]:
    """Put the names of files in the order in which they are wanted."""
    return sorted(names, key=[*FILES].index)


def printed_words(file: PackFile, days: Sequence[Day]) -> str:
    """Say when a file is printed: `day 5`; and how."""
    number = next(
        (day.number for day in days for stage in day.stages if stage.kind in file.before),
        None,
    )
    when = f"day {number}" if number is not None else "if wanted"
    return f"{when}, {file.how}" if file.how else when


def unprinted_words(names: Iterable[str], more: Mapping[str, str]) -> str:
    """Name the files that are for a screen alone: `Not printed: holes.csv (every hole)`; `more`:
    what else is to be said of some."""
    said = (
        f"{name} ({', '.join(filter(None, (FILES[name].purpose, more.get(name, ''))))})"
        for name in names
        if not FILES[name].before
    )
    return f"Not printed: {'; '.join(said)}."


def page_words(pages: Sequence[int]) -> str:
    """Name the pages of a station: `page 4`, `pages 4 to 6`."""
    if len(pages) == 1:
        return f"page {pages[0]}"
    return f"pages {pages[0]} to {pages[-1]}"


def front_pages_words(count: int) -> Iterator[str]:
    """Say what stands on the pages before the first station."""
    if count:
        yield "stations.pdf, page 1: measure its bars, read its cautions."
    if count > 2:
        yield f"stations.pdf, pages 2 to {count}: open numbers, how a card is used."
    elif count == 2:
        yield "stations.pdf, page 2: how a card is used."
