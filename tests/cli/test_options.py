"""Shared options: the names in their help are the names there are; --only takes three sorts."""

import json
import re
from pathlib import Path

import pytest

from templates.paper import PAPERS
from templates.stocks import STOCKS
from tests.cli.conftest import Run


@pytest.mark.parametrize(
    ("command", "names"), [("sheets", PAPERS), ("labels", STOCKS), ("pack", {**PAPERS, **STOCKS})]
)
def test_the_help_names_what_there_is(command: str, names: dict[str, object], run: Run) -> None:
    """A new paper or stock is added to the help too."""
    words = set(re.findall(r"[a-z0-9-]+", run(command, "--help").stdout))
    assert set(names) <= words


@pytest.mark.parametrize(
    ("only", "parts"),
    [
        (["b1-2"], {"B1-2"}),
        (["B1-2", "B1-1"], {"B1-1", "B1-1-BOX", "B1-2"}),
        (["B1-SIDE-L"], {"B1-SIDE-L"}),
        (["B1"], {"B1-1", "B1-1-BOX", "B1-2", "B1-SIDE-L", "B1-SIDE-R"}),
        (["North"], {"B1-1", "B1-1-BOX", "B1-2", "B1-SIDE-L", "B1-SIDE-R"}),
    ],
    ids=" ".join,
)
def test_only_takes_a_part_a_box_or_a_wall(
    only: list[str], parts: set[str], run: Run, small: Path
) -> None:
    """It repeats, and does not mind small letters."""
    words = [word for name in only for word in ("--only", name)]
    result = run("sheets", small, "--format", "json", *words)
    assert {card["part"] for card in json.loads(result.stdout)["cards"]} == parts


def test_units_say_how_lengths_are_shown(run: Run, small: Path) -> None:
    """The job's own unit still says how its bare numbers are read."""
    assert "454.0 x 152.4 mm (17 7/8 x 6 in)" in run("holes", small, "--units", "mm").stdout
    assert "17 7/8 x 6 in (454.0 x 152.4 mm)" in run("holes", small).stdout
