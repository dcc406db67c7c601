"""The words of findings: by rank, a fact and its remedy, a count."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.box.bypart import with_open
from jigs.given.job import FrontSpec
from jigs.ground.problems import Problem, error, warning
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from templates.words.findings import (
    check_text,
    closing_text,
    count_warnings,
    count_words,
    has_errors,
    held_text,
    problems_data,
)
from templates.words.textlines import WIDTH
from tests.jigs.sample import box, lay
from tests.templates.small_layout import small_layout


def problem(level: str, code: str, part: str | None) -> Problem:
    """State a finding that has no figures."""
    return (error if level == "error" else warning)(code, part)


def thick(level: str, part: str, made: float = 18.0) -> Problem:
    """State a finding that is an error of one front and a warning of another."""
    found = error if level == "error" else warning
    return found("thickness-differs", part, made=made, ordered=19.0)


def test_a_finding_is_a_fact_and_its_remedy_on_a_line_of_its_own() -> None:
    """The code stands behind the fact, the remedy below it, further in."""
    layout = replace(small_layout(), problems=(problem("warning", "no-shelf", "B1-2"),))
    assert check_text(layout).splitlines()[:5] == [
        layout.echo,
        "",
        "Worth a look",
        "  warning: B1-2: doors and no shelf: no pin holes are drilled in its sides. [no-shelf]",
        "      State [[box.shelf]] before the sides are drilled, or shelf = [] for none.",
    ]


def test_findings_stand_by_rank_over_the_whole_job() -> None:
    """What must be mended is read first, whatever box it is in; what is worth a look last."""
    layout = replace(
        small_layout(),
        problems=(
            problem("warning", "push-latch", "B1-2"),
            problem("warning", "opening-not-noted", "B1-1"),
            problem("error", "hinge-not-stated", "B2-1"),
        ),
    )
    text = check_text(layout)
    order = [
        "Errors",
        "[hinge-not-stated]",
        "What would spoil wood or money",
        "[opening-not-noted]",
        "Worth a look",
        "[push-latch]",
    ]
    assert sorted(order, key=text.index) == order


def test_a_finding_that_boxes_share_is_said_once() -> None:
    """Twenty doors on one unconfirmed hinge are one paragraph, and one in the count."""
    problems = tuple(problem("warning", "no-shelf", part) for part in ("B1-2", "B2-2"))
    text = check_text(replace(small_layout(), problems=problems))
    assert text.count("doors and no shelf") == 1
    assert "B1-2, B2-2: doors and no shelf" in text
    assert "1 warning. Nothing is held back." in text
    assert count_warnings(problems, "in") == 1


def test_data_keeps_one_entry_a_part_with_its_rank() -> None:
    """A program asks by part; an error has rank 1 whatever its code."""
    problems = [thick("warning", part) for part in ("B1-2", "B2-2")]
    data = problems_data([*problems, thick("error", "B1-1")], "in")
    assert [(entry["part"], entry["rank"]) for entry in data] == [
        ("B1-2", 2),
        ("B2-2", 2),
        ("B1-1", 1),
    ]


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
    """Errors and warnings are counted apart, each as often as it is said."""
    found = [thick(level, f"B1-{number}", 10.0 + number) for number, level in enumerate(levels)]
    assert count_words(found, "in") == words
    assert count_words(found * 2, "in") == words


def test_assumptions_are_listed_last() -> None:
    """What the job did not say stands at the end, each on a line."""
    layout = small_layout()
    job = replace(layout.job, assumed=frozenset({"material.side", "reveal.top"}))
    text = check_text(replace(layout, job=job))
    assert text.endswith("  - side thickness 18.3 mm\n  - top reveal 1.6 mm\n")
    assert "ASSUMED" in text


def test_no_line_is_broken_late_or_in_a_word() -> None:
    """Lines fit a terminal, and codes and IDs stay whole."""
    long = error(
        "hinge-no-room", "B1-2", panel=40.0, end=70.0, between=80.0, rollouts=True, rows=True,
        heights=("hinge-edge",) * 40,
    )  # fmt: skip
    layout = replace(small_layout(), problems=(long,))
    for line in (check_text(layout) + held_text(layout)).splitlines()[1:]:
        assert len(line) <= WIDTH
    assert "hinge-\n" not in check_text(layout)


COSTS = {"stations.pdf": "28 pages", "sheets.pdf": "70 pages"}


def test_the_pack_closes_with_what_the_person_needs() -> None:
    """Ready and held, pages, how to print, what is not confirmed."""
    layout = small_layout()
    why = error("hand-not-stated", layout.fronts[1].id, listed=False)
    held = replace(layout.fronts[1], fittings=(), held=(why,))
    layout = with_open(
        replace(layout, fronts=(layout.fronts[0], held), problems=(why,)),
    )
    assert closing_text(layout, COSTS, 120, "letter-2x5") == (
        "1 front has sheets, 1 held: B1-2 hand not stated. 0 depend on open numbers: hinge "
        "'cup35-full' (constant, plates); pull 'bar-160' (centers); slide 'undermount-533' "
        "(fixing_height, drawer_rise, width_less, depth_allowance, drawer_shorter, fixing_at).\n"
        "plan.pdf: the order of the work, and when each file is printed; print it first.\n"
        "stations.pdf: 28 pages. sheets.pdf: 70 pages.\n"
        "Print stations.pdf or sheets.pdf, not both, at 100 %; measure the bars on page 1 first.\n"
        "labels.pdf: 120 labels, one for every front, drawer box and cut piece, "
        "on letter-2x5 labels.\n"
        "Not checked, because nothing says it: ends and corners, ceiling, counter (no [[wall]]); "
        "rear hooks (no hook numbers of slide undermount-533); what slides bear (no load of slide "
        "undermount-533); paint between the fronts (no method and sizes in [paint]); the "
        "seasons (no dampest in [room]).\n"
    )
    assert has_errors(layout)
    assert "B1-2" in held_text(layout)


def test_confirmed_hardware_is_not_named() -> None:
    """What the person confirmed is not brought up again."""
    layout = lay(box(FrontSpec(id="B1-1", kind="door", hinged="left")))
    said = closing_text(layout, {"sheets.pdf": "2 pages"}, 3, "letter-2x5")
    assert "No number is open." in said
    assert "\nsheets.pdf: 2 pages.\nPrint sheets.pdf at 100 %;" in said


def test_what_a_list_cannot_hold_is_said_where_it_can_be(tmp_path: Path) -> None:
    """A lift of a list has no entry in the job that could take its holes, a door of a list says its
    hand there: the remedy names the way that there is.
    """
    path = tmp_path / "fronts.csv"
    path.write_text("box,kind,width,height\nW1,lift,597,397\nB1,door,397,717\n", encoding="utf-8")
    text = " ".join(check_text(lay_out(read_job(path))).split())
    assert "take its row out of the list" in text
    assert "[[box.front]] of its box with [[box.front.hole]]." in text
    assert "as seen from the room, in its row of the list." in text
