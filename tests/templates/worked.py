"""A worked example of our own: box B1 with four drawers, box B3 with a drawer
over a left-hung door 613 high; and the same job on paper, printed once for all tests. Beside it
the uneven box, without its lower drawer front."""

from functools import cache
from typing import Literal

from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import make_sheets
from templates.cards.card import Card
from templates.page.paper import PAPERS
from templates.sheets.sheet import Placed
from templates.writers.pdf import write_pdf
from tests.jigs.sample import SLIDE, box, job
from tests.readback import PrintedPage, read_pages
from tests.templates.drawnonce import DrawnOnce, draw_once
from tests.templates.printed import laid_out
from tests.uneven import UNEVEN

Example = Literal["in", "mm", "uneven"]
"""The worked example in inches and in millimetres, and the box that is alike to neither hand."""


@cache
def worked_layout(example: Example, /) -> Layout:
    """Lay it out: 18 x 30 1/2 x 23 in, sides 18.3, fronts 19.05, band 0.6, slides with a second
    hole and a third that no paper reaches.

    The fronts of the three upper drawers are left out: their slides stand in the sides, and on
    paper they would say nothing that the lowest does not.
    """
    if example == "uneven":
        layout = laid_out(UNEVEN)
        shown = tuple(front for front in layout.fronts if front.id != "B1-2")
        return replace(layout, fronts=shown)
    given = job(
        box(
            FrontSpec(id="B1-1", kind="drawer", height=163.5),
            FrontSpec(id="B1-2", kind="drawer", height=188.8),
            FrontSpec(id="B1-3", kind="drawer", height=188.8),
            FrontSpec(id="B1-4", kind="drawer", height=220.8),
            kind="drawer",
        ),
        box(
            FrontSpec(id="B3-1", kind="drawer", height=152.4),
            FrontSpec(id="B3-2", kind="door", height=613.0, hinged="left"),
            name="B3",
        ),
        units=example,
        slide=replace(SLIDE, fixing_at=(37.0, 165.0), carry_at=(261.0,)),
    )
    layout = lay_out(given)
    shown = tuple(front for front in layout.fronts if front.id in ("B1-4", "B3-1", "B3-2"))
    return replace(layout, fronts=shown)


@cache
def worked_sheets(example: Example, /) -> DrawnOnce:
    """Give its sheets on the common page, 198 x 267."""
    return draw_once(make_sheets(worked_layout(example), PAPERS["common"]))


@cache
def worked_pdf(example: Example, /) -> bytes:
    """Print them."""
    return write_pdf(worked_sheets(example).pages, title="Worked example")


@cache
def worked_pages(example: Example, /) -> tuple[PrintedPage, ...]:
    """Read them back."""
    return read_pages(worked_pdf(example))


def cards_of(part: str, face: str, example: Example = "in") -> list[tuple[int, Placed]]:
    """Give the cards of one face with their pages, as the sheets give them."""
    return [
        (page, placed)
        for page, placed in worked_sheets(example).cards
        if (placed.card.view.part, placed.card.view.face) == (part, face)
    ]


def only_cards(part: str, face: str, example: Example = "in") -> list[Card]:
    """Give the cards of one face, each for its part alone."""
    return [
        placed.card
        for placed in _each_alone(example)
        if (placed.card.view.part, placed.card.view.face) == (part, face)
    ]


@cache
def _each_alone(example: Example) -> tuple[Placed, ...]:
    sheets = make_sheets(worked_layout(example), PAPERS["common"], each=True)
    return tuple(placed for _, placed in sheets.cards)
