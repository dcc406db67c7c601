"""Which parts depend on hardware whose numbers nobody has confirmed yet?"""

from collections.abc import Sequence

from jigs.checks.finding import warning
from jigs.confirming import numbers_that_matter, open_names, open_numbers, open_words
from jigs.hardware import HingeRecord, SlideRecord
from jigs.parts import DrawerBox
from jigs.problems import Problem


def check_hinge_confirmed(front: str, record: HingeRecord, board: str) -> tuple[Problem, ...]:
    """Find a door hung on an unconfirmed hinge; its side is concerned too."""
    if not open_numbers(record):
        return ()
    return (
        warning(
            "unconfirmed-hinge",
            front,
            _what_is_open("hinge", record),
            "measure it or read its leaflet, say so with confirmed; or try a scrap door first",
            (board,),
        ),
    )


def check_slide_confirmed(
    front: str, record: SlideRecord, boards: Sequence[str], drawer: DrawerBox | None
) -> tuple[Problem, ...]:
    """Find a drawer that runs on an unconfirmed slide; both sides are concerned too."""
    if not open_numbers(record):
        return ()
    return (
        warning(
            "unconfirmed-slide",
            front,
            _what_is_open("slide", record),
            "set it on a flat board, measure, say so with confirmed",
            (*boards, *((drawer.id,) if drawer else ())),
        ),
    )


def _what_is_open(kind: str, record: HingeRecord | SlideRecord) -> str:
    """Say the whole record where no number that matters is confirmed, else the numbers."""
    if len(open_numbers(record)) == len(numbers_that_matter(record)):
        return f"{kind} '{record.name}' is not confirmed: {open_words(record)}"
    verb = f"{open_names(record)} not confirmed"
    return f"{kind} '{record.name}': {verb} ({open_words(record)})"
