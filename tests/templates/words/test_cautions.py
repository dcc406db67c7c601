"""The cautions."""

import re
from pathlib import Path

import pytest

from templates.words.cautions import CAUTIONS, NO_CODE


@pytest.mark.parametrize(
    "word",
    [
        "Clamp", "depth stop", "scrap", "eye and ear", "gloves", "dust", "respirator", "exhaust",
        "ignite", "closed can", "Punch lightly", "2 mm pilot", "backing block", "two people",
        "studs", "before you load", "Probe", "Gas", "circuits", "ducts", "local code",
    ],
)  # fmt: skip
def test_nothing_is_left_unsaid(word: str) -> None:
    """Every danger of the work is named once in full."""
    assert any(word in caution for caution in CAUTIONS)


def test_the_tool_says_that_it_does_not_check_code() -> None:
    """The last sentence of the list, and one to quote by itself."""
    assert CAUTIONS[-1] == NO_CODE
    assert NO_CODE.startswith("The tool does not check code")


@pytest.mark.parametrize("name", ["README.md", "templates/demo/job.toml"])
def test_readme_and_job_file_name_its_limits_once(name: str) -> None:
    """What is left to licensed trades and local code, to studs and to two people."""
    text = (Path(__file__).parents[3] / name).read_text(encoding="utf-8")
    own_words = re.sub(r"(?ms)^```.*?^```$", "", text)  # without what commands print
    said = [
        part
        for part in re.sub(r"(?m)^# ?", "", own_words).split("\n\n")
        if "code" in part and "licensed trades" in part
    ]
    assert len(said) == 1
    for word in ("instructions", "studs", "people", "before they are loaded"):
        assert word in " ".join(said[0].split())


def test_cautions_are_whole_sentences() -> None:
    """Each ends with a full stop."""
    assert all(c.endswith(".") for c in CAUTIONS)
