"""A note that says the other way round how the fronts of a box hang."""

from pathlib import Path

import pytest

from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests.said import fact_of

JOB = """schema = 1
name = "note"
[[box]]
id = "H1"
kind = "tall"
width = 600
height = 2198.4
depth = 560
above_floor = 100
[[box.front]]
kind = "door"
hinged = "left"
height = 1396
note = "{}"
[[box.front]]
kind = "door"
hinged = "left"
note = "{}"
"""


@pytest.mark.parametrize(
    ("upper", "lower", "told"),
    [
        ("Vorrat unten", "oben", "'Vorrat unten' is noted of it, and it hangs above H1-2"),
        ("", "oben", "'oben' is noted of it, and it hangs below H1-1"),
        ("oben", "unten", ""), ("Griff unten", "", ""), ("", "", ""),
    ],
)  # fmt: skip
def test_the_note_and_the_order(tmp_path: Path, upper: str, lower: str, told: str) -> None:
    """Told before a cup is bored in the wrong door, of any job."""
    path = tmp_path / "job.toml"
    path.write_text(JOB.format(upper, lower), encoding="utf-8")
    problems = lay_out(read_job(path)).problems
    found = [fact_of(one) for one in problems if one.code == "order-against-note"]
    assert found == ([told] if told else [])
