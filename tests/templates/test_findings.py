"""The words of findings: grouped by box, errors first, a fact and its remedy, a count."""

from dataclasses import replace

import pytest

from jigs.problems import Problem
from templates.findings import (
    WIDTH,
    check_text,
    closing_text,
    count_words,
    has_errors,
    held_text,
    unconfirmed_words,
)
from tests.templates.small_layout import small_layout


def problem(level: str, code: str, part: str | None, text: str = "it rubs") -> Problem:
    assert level in ("error", "warning")
    return Problem(
        level="error" if level == "error" else "warning",
        code=code,
        part=part,
        text=text,
        remedy="plane it",
    )


def test_a_finding_is_a_fact_and_its_remedy_on_a_line_of_its_own() -> None:
    """The code stands behind the fact, the remedy below it, further in."""
    layout = replace(small_layout(), problems=(problem("warning", "rub", "B1-2"),))
    assert check_text(layout).splitlines()[:4] == [
        layout.echo,
        "",
        "B1, base box, north wall",
        "  warning: B1-2: it rubs. [rub]",
    ]
    assert check_text(layout).splitlines()[4] == "      Plane it."


def test_errors_come_first_in_their_box() -> None:
    """What must be mended is read before what may be."""
    layout = replace(
        small_layout(),
        problems=(problem("warning", "rub", "B1-2"), problem("error", "stuck", "B1-1")),
    )
    text = check_text(layout)
    assert text.index("[stuck]") < text.index("[rub]")


def test_a_finding_that_boxes_share_is_said_once() -> None:
    """Twenty doors on one unconfirmed hinge are one paragraph."""
    layout = replace(
        small_layout(),
        problems=(problem("warning", "rub", "B1-2"), problem("warning", "rub", "B2-2")),
    )
    text = check_text(layout)
    assert text.count("it rubs") == 1
    assert "B1-2, B2-2: it rubs" in text
    assert "The whole job" in text


@pytest.mark.parametrize(
    ("levels", "words"),
    [
        ((), "Nothing found: every front can be drilled."),
        (("warning",), "1 warning. Nothing is held back."),
        (("error", "warning", "warning"), "1 error, 2 warnings. What an error names is held back."),
        (("error", "error"), "2 errors. What an error names is held back."),
    ],
)
def test_the_check_ends_with_a_count(levels: tuple[str, ...], words: str) -> None:
    """Errors and warnings are counted apart."""
    assert count_words(problem(level, "code", "B1-1") for level in levels) == words


def test_assumptions_are_listed_last() -> None:
    """What the job did not say stands at the end, each on a line."""
    layout = small_layout()
    job = replace(layout.job, assumptions=("side thickness 18.0 mm", "top reveal 1.6 mm"))
    text = check_text(replace(layout, job=job))
    assert text.endswith("  - side thickness 18.0 mm\n  - top reveal 1.6 mm\n")
    assert "ASSUMED" in text


def test_no_line_is_broken_late_or_in_a_word() -> None:
    """Lines fit a terminal, and codes and IDs stay whole."""
    long = "the reveal at the hinge-edge is " * 12
    layout = replace(small_layout(), problems=(problem("error", "hinge-edge", "B1-2", long),))
    for line in (check_text(layout) + held_text(layout)).splitlines()[1:]:
        assert len(line) <= WIDTH
    assert "hinge-\n" not in check_text(layout)


def test_the_pack_closes_with_what_the_person_needs() -> None:
    """Ready and held, pages, how to print, what is not confirmed."""
    layout = small_layout()
    held = replace(
        layout.fronts[1], fittings=(), held=("hand-not-stated: nobody said on which side",)
    )
    layout = replace(
        layout,
        fronts=(layout.fronts[0], held),
        problems=(problem("error", "hand-not-stated", held.id),),
    )
    assert closing_text(layout, "46 pages (31 with --same-holes)", 120, "letter-2x5") == (
        "1 front ready, 1 held: B1-2 hand not stated. 46 pages (31 with --same-holes).\n"
        "Print sheets.pdf at 100 %; measure the bars on page 1 first.\n"
        "labels.pdf: 120 labels, one for every front, drawer box and cut piece, "
        "on letter-2x5 labels.\n"
        "Not confirmed: hinge 'cup35-full' (constant, pattern); "
        "slide 'undermount-533' (fixing height, drawer rise).\n"
    )
    assert has_errors(layout)
    assert "B1-2" in held_text(layout)


def test_confirmed_hardware_is_not_named() -> None:
    """What the person confirmed is not brought up again."""
    layout = small_layout()
    hinges = {n: replace(r, confirmed="leaflet") for n, r in layout.job.hinges.items()}
    slides = {n: replace(r, confirmed="measured") for n, r in layout.job.slides.items()}
    job = replace(layout.job, hinges=hinges, slides=slides)
    assert unconfirmed_words(replace(layout, job=job)) == ()
