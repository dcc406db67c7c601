"""Advice: what stands outside published ranges, by the job's own units."""

from dataclasses import replace

import pytest

from jigs.checks.advice import EN_1116, KCMA, advise
from jigs.given.build import Build
from jigs.given.job import BoxSpec
from jigs.ground.lengths import Unit
from jigs.layout.layout import lay_out
from templates.words.advicewords import advice_words
from templates.words.findings import check_text
from tests.jigs.sample import box, job, lay


def told(*boxes: BoxSpec, units: Unit = "mm") -> tuple[str, ...]:
    """Give the advice on these boxes."""
    return advice_words(advise(lay(*boxes, units=units)), units)


# Ranges: EN 1116, KCMA A161.1 (both second hand).
EN_ROWS = [
    (box(height=720.0, above_floor=100.0), None),
    (box(height=770.0, above_floor=100.0), None),
    (box(height=820.0, above_floor=100.0), None),
    (box(height=750.0, above_floor=100.0), "850.0 mm (33 15/32- in) high above the floor"),
    (box(height=770.0, above_floor=50.0), "a plinth 50.0 mm"),
    (replace(box(height=820.0, above_floor=0.0), legs=100.0), None),
    (replace(box(height=820.0, above_floor=0.0), legs=80.0), "a plinth 80.0 mm"),
    (box(height=720.0, above_floor=100.0, depth=560.0), None),
    (box(height=720.0, above_floor=100.0, depth=500.0), f"stand out {600 - 500 - 19.05:.1f} mm"),
    (box(kind="wall", depth=400.0, above_floor=1400.0), None),
    (box(kind="wall", depth=420.0, above_floor=1400.0), "420.0 mm (16 17/32+ in) deep; wall"),
]  # fmt: skip


@pytest.mark.parametrize(("made", "words"), EN_ROWS)
def test_a_metric_job_against_en_1116(made: BoxSpec, words: str | None) -> None:
    """What is inside a range is not spoken of, what is outside is named with the range."""
    found = told(made)
    if words is None:
        assert found == ()
    else:
        assert any(words in text and text.endswith(f"({EN_1116}).") for text in found)


@pytest.mark.parametrize(
    ("made", "words"),
    [
        (box(above_floor=76.2), None),
        (box(above_floor=76.0), "a toe 3- in (76.0 mm) high"),
        (box(kind="wall", depth=900.0, above_floor=10.0), None),
    ],
)
def test_a_job_in_inches_against_kcma(made: BoxSpec, words: str | None) -> None:
    """The toe space is at least 3 in high; nothing of EN 1116 is said."""
    found = told(made, units="in")
    assert bool(found) is (words is not None)
    for text in found:
        assert text.startswith("B1: ")
        assert text.endswith(f"({KCMA}).")
        assert words is not None
        assert words in text


def test_a_shallow_toe_space_in_inches() -> None:
    """At least 2 in deep, said once for all boxes on the platform."""
    boxes = box(name="B1"), box(name="B2"), replace(box(name="B3"), legs=80.0)
    shallow = replace(job(*boxes), build=Build(toe_back=50.0))
    (one,) = advice_words(advise(lay_out(shallow)), "in")
    assert one.startswith("B1, B2: ")
    assert "behind the front edges; the least is 2 in (50.8 mm)" in one
    assert advise(lay_out(replace(shallow, build=Build(toe_back=50.8)))) == ()


def test_a_height_that_nobody_gave_is_not_judged() -> None:
    """Advice on a default would be advice to ourselves; nor are boxes of a bare list judged."""
    low = replace(job(box(above_floor=20.0), units="mm"), assumed=frozenset({"box.B1.above_floor"}))
    assert advise(lay_out(low)) == ()
    assert told(box(above_floor=20.0, inferred=True)) == ()


def test_alike_boxes_are_named_together() -> None:
    """Two boxes of one height share a line."""
    found = told(box(name="B1", height=750.0, above_floor=100.0),
                 box(name="B2", height=750.0, above_floor=100.0, x=600.0))  # fmt: skip
    assert [text.partition(":")[0] for text in found] == ["B1, B2"]


def test_the_check_ends_with_the_advice_and_does_not_count_it() -> None:
    """The block stands last, after the count, and only where there is advice."""
    text = check_text(lay(box(height=750.0, above_floor=100.0), units="mm"))
    heading = "Advice (published ranges, not rules for your kitchen):"
    assert heading in text
    assert text.index(heading) > text.index("Nothing")
    assert "850" not in text[: text.index(heading)]
    assert heading not in check_text(lay(box(height=770.0, above_floor=100.0), units="mm"))
