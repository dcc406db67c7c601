"""The page of pass marks: what a door and a drawer of scrap are measured for, and what then."""

from collections.abc import Iterable, Iterator, Sequence

from jigs.bench.firstarticle import FirstArticle, PassMark
from jigs.bench.station import Station, Work
from jigs.given.confirming import heading_of, open_numbers
from jigs.given.hardware import HingeRecord
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Line, Mark, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import MarkBlock, moved, paragraph
from templates.words.firstwords import (
    BEFORE_SECOND,
    FIRST_HEADING,
    FIRST_HOW,
    PASS_WORDS,
    in_the_box,
    pass_figure,
)
from templates.words.stationwords import station_title

TITLE = "First article: pass marks"
_COLUMNS = (0.0, 0.55, 0.67, 0.86)
"""Where measure, wanted, allowed and yours begin, in parts of the width."""


def first_pages(articles: Sequence[FirstArticle], paper: Paper, number: int) -> Iterator[Page]:
    """Draw the pages of pass marks, numbered from `number`."""
    across = paper.width - LEFT_STRIP - EDGE
    yield from _pages(
        [_opening(across), *(_block(each, across) for each in articles)], paper, number
    )


def first_of_station_pages(
    stations: Iterable[Station], articles: Sequence[FirstArticle], paper: Paper, number: int
) -> Iterator[Page]:
    """Draw the pages of what must be true of each station's first part before the second, numbered
    from `number`; `articles` are tried with these very parts."""
    across = paper.width - LEFT_STRIP - EDGE
    opening = [
        paragraph(FIRST_HEADING, across, size=5.0, bold=True),
        paragraph(FIRST_HOW, across),
    ]
    works: dict[Work, list[Station]] = {}
    for station in stations:
        works.setdefault(station.work, []).append(station)
    blocks = [
        _stack(opening),
        *(_stack(_of_work(work, alike, across)) for work, alike in works.items()),
        *(_block(article, across) for article in articles),
    ]
    yield from _pages(blocks, paper, number)


def _of_work(work: Work, stations: Sequence[Station], across: float) -> Iterator[MarkBlock]:
    """Say what is made first at stations of one kind, and what must be true of it then."""
    named = (
        f"{station_title(station)}: {', '.join(dict.fromkeys(row.part.id for row in station.rows))}"
        for station in stations
    )
    yield paragraph("; ".join(named), across, size=3.5, bold=True)
    standing = dict.fromkeys(
        row.part.box
        for station in stations
        for row in station.rows
        if row.part.board is not None and row.part.board.assembled
    )
    if standing:
        yield paragraph(in_the_box(standing), across, bold=True)
    yield paragraph(BEFORE_SECOND[work], across)


def _pages(blocks: Sequence[MarkBlock], paper: Paper, number: int) -> Iterator[Page]:
    """Set blocks below each other, on as many pages as they take."""
    blocks = list(blocks)
    while blocks:
        top = paper.height - EDGE
        marks: list[Mark] = border_marks(paper.width, paper.height, paper, number)
        while blocks and (top - blocks[0].height > BOTTOM_STRIP + 2.0):
            block = blocks.pop(0)
            marks += moved(block.marks, LEFT_STRIP, top)
            top -= block.height + 5.0
        yield Page(width=paper.width, height=paper.height, marks=tuple(marks), entry=TITLE)
        number += 1


def _stack(pieces: Iterable[MarkBlock]) -> MarkBlock:
    marks: list[Mark] = []
    down = 0.0
    for piece in pieces:
        marks += moved(piece.marks, 0.0, -down)
        down += piece.height + 0.6
    return MarkBlock(height=down, marks=tuple(marks))


def _opening(across: float) -> MarkBlock:
    return _stack(
        [
            paragraph("FIRST ARTICLE: TRY IT ON SCRAP", across, size=5.0, bold=True),
            paragraph(
                "Make one door and one drawer of scrap with these sheets, before a good board is "
                "drilled: boards of the true thickness, the very hinges, plates and slides, the "
                "same bits and stops. Measure, write it down, compare. mm. Pulls and the holes of "
                "other fronts are left out of these sheets: they are for the trial alone.",
                across,
            ),
        ]
    )


def _block(article: FirstArticle, across: float) -> MarkBlock:
    front, record = article.front, article.record
    kind = article.kind
    what = "DOOR" if kind == "hinge" else "DRAWER"
    heading = f"{what} {front.id} with {', '.join(article.boards)}: {kind} '{record.name}'"
    return _stack(
        [
            paragraph(heading, across, size=3.5, bold=True),
            _row(("measure", "wanted", "allowed", "yours"), across, bold=True),
            *(_row(_cells(mark), across) for mark in article.marks),
            *(paragraph(text, across, hang="-") for text in _then(article)),
        ]
    )


def _cells(mark: PassMark) -> tuple[str, str, str, str]:
    return (
        PASS_WORDS[mark.what],
        pass_figure(mark.wanted),
        f"{pass_figure(mark.least)} to {pass_figure(mark.most)}",
        "",
    )


def _row(cells: tuple[str, str, str, str], across: float, *, bold: bool = False) -> MarkBlock:
    first = paragraph(cells[0], across * _COLUMNS[1] - 3.0, bold=bold)
    marks: list[Mark] = list(first.marks)
    for share, text in zip(_COLUMNS[1:], cells[1:], strict=True):
        if text:
            marks.append(Text(x=across * share, y=-2.8, text=text, bold=bold))
        else:
            marks.append(Line(x1=across * share, y1=-3.8, x2=across * share + 22.0, y2=-3.8))
    return MarkBlock(height=max(first.height, 4.3) + 1.6, marks=tuple(marks))


def _then(article: FirstArticle) -> tuple[str, ...]:
    """What to do with the result."""
    front, record = article.front, article.record
    if isinstance(record, HingeRecord):
        assert front.hinge is not None, "a door on a hinge has a plate"
        sign = "-____" if front.place.overlay == "inset" else "____"
        plate = f"{front.hinge.plate:g}" if front.hinge.plate_stated else "____"
        return (
            _all_within(article),
            "Overlay not as wanted: measure it with the side screw at its middle and write, in "
            f'place of constant: overlay_measured = {{ tab = "{front.hinge.tab:g} mm", '
            f'plate = "{plate} mm", overlay = "{sign} mm" }}. It solves the '
            "constant. Draw the pages again: tab or plate may change.",
            "Cup and plate do not meet, or the screws miss: check fixing_spacing and "
            "fixing_inboard on the bench sheet, and both bars.",
        )
    measured = (
        "measure centre_height on the drawer, from its underside to the slide's centre line"
        if record.mount == "side"
        else "set the slide on a flat board, measure fixing_height and drawer_rise again"
    )
    return (
        _all_within(article),
        f"Front or box too high or too low: {measured}, write it down, and draw the pages again.",
        "It binds, or has play: measure the drawer box and the opening, and read width_less in "
        "the leaflet.",
    )


def _all_within(article: FirstArticle) -> str:
    """Say what to do where every figure is within its limits."""
    kind, name = article.kind, article.record.name
    if not open_numbers(article.record):
        return f"All within: the numbers of {kind} '{name}' hold; go on to the second part."
    return (
        f"All within: write the {kind}'s open numbers (page 1) below {heading_of(kind, name)} and "
        'confirmed = "measured" under them (a record of the list: make your own, like it).'
    )
