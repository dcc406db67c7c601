"""Weights and densities with units of their own, and when the units library is loaded."""

import subprocess
import sys
from pathlib import Path

import pytest

from jigs.ground.quantities import parse_quantity
from tests.jigs.jobtext import faults_of, read
from tests.jobtexts import HEAD

ROOT = Path(__file__).parents[3]
DEMO = ROOT / "templates" / "demo" / "job.toml"


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        # NIST SP 811 (2008), Appendix B.8: pound and ounce (avoirdupois), pound per cubic foot.
        ("1 lb", "kg", 0.4535924),
        ("16 oz", "kg", 16 * 0.02834952),
        ("1 lb/ft3", "kg/m3", 16.01846),
        ("0,75 g/cm3", "kg/m3", 750.0),
        ("30kg", "kg", 30.0),
    ],
)
def test_a_unit_is_worth_what_is_published(text: str, unit: str, value: float) -> None:
    """To the figures that are printed there."""
    assert parse_quantity(text, unit) == pytest.approx(value, rel=1e-6)


@pytest.mark.parametrize("text", ["", "lb", "1 1/2 lb", "-3 lb", "3 ft", "1 lb lb", "nan kg"])
def test_what_is_no_weight_is_none(text: str) -> None:
    """The library never sees what a person typed."""
    assert parse_quantity(text, "kg") is None


def test_a_slide_bears_pounds(tmp_path: Path) -> None:
    """And a word that is no load is a fault."""
    slide = '[slide.mine]\nlike = "undermount-533"\nload = {}\n'
    made = read(tmp_path, HEAD + slide.format('"100 lb"') + BOX)
    assert made.slides["mine"].load == pytest.approx(45.359237)
    (fault,) = faults_of(tmp_path, HEAD + slide.format('"100 mm"') + BOX)
    assert "not a number over 0, up to 500" in fault


BOX = '[[box]]\nid = "B1"\nkind = "base"\nwidth = 450\nheight = 720\ndepth = 560\n'


def load_units(*jobs: Path) -> list[str]:
    """Read jobs and lay them out, one after the other in a process of its own; tell of each
    whether the library is loaded then."""
    code = (
        "import sys; from pathlib import Path; from cli.jobs import read_in_hand\n"
        "from jigs.layout.layout import lay_out\n"
        "for job in sys.argv[1:]:\n"
        "    lay_out(read_in_hand(Path(job))); print('pint' in sys.modules)"
    )
    return subprocess.run(
        [sys.executable, "-c", code, *jobs], check=True, text=True, stdout=subprocess.PIPE
    ).stdout.split()


def test_the_units_library_is_loaded_by_another_unit_alone(tmp_path: Path) -> None:
    """It costs more than the rest of a short command; the demo does without."""
    job = tmp_path / "job.toml"
    assert "front_density = 720" in HEAD
    head = HEAD.replace("front_density = 720", "front_density = '45 lb/ft3'")
    job.write_text(head + BOX, encoding="utf-8")
    assert load_units(DEMO, job) == ["False", "True"]
