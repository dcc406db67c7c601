"""Shared options: the names in their help are the names there are; --only takes three sorts."""

import json
import re
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest

from templates.page.paper import PAPERS
from tests.cli.conftest import Run


@pytest.mark.parametrize("command", ["sheets", "pack", "elevations", "hardware"])
def test_the_help_names_what_there_is(command: str, run: Run) -> None:
    """A new paper is added to the help too."""
    words = set(re.findall(r"[a-z0-9-]+", run(command, "--help").stdout))
    assert set(PAPERS) <= words


@pytest.mark.parametrize(
    ("only", "parts"),
    [
        (["b1-2"], {"B1-2"}),
        (["B1-2", "B1-1"], {"B1-1", "B1-1-BOX", "B1-2"}),
        (["B1-SIDE-L"], {"B1-SIDE-L"}),
        (["B1"], {"B1-1", "B1-1-BOX", "B1-2", "B1-SIDE-L", "B1-SIDE-R"}),
        (["North"], {"B1-1", "B1-1-BOX", "B1-2", "B1-SIDE-L", "B1-SIDE-R"}),
    ],
    ids=("front", "two-fronts", "side", "box", "wall"),
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


@pytest.mark.slow
def test_units_change_nothing_that_is_drilled(run: Run, small: Path, held: Path) -> None:
    """Sheets, stations, heights, labels, hole lists: byte for byte the same, whatever is shown.
    The printed parts and order alone show the asked unit first, and the contents tell its sum."""
    for job in (small, held):
        made, lists = [], []
        for units in ([], ["--units", "mm"], ["--units", "in"]):
            csv = run("holes", job, "--format", "csv", *units).stdout
            run("pack", job, "-o", "made", *units)
            files = {path.name: path.read_bytes() for path in Path("made").iterdir()}
            assert {"sheets.pdf", "stations.pdf", "heights.pdf", "labels.pdf"} < files.keys()
            listed = sha256(files["lists.pdf"]).hexdigest().encode()
            assert files["contents.json"].count(listed) == 1
            files["contents.json"] = files["contents.json"].replace(listed, b"")
            lists.append(files.pop("lists.pdf"))
            made.append((csv, files))
        assert made[0] == made[1] == made[2]
        assert lists[0] == lists[2] != lists[1]


def test_units_leave_the_jobs_own_unit_alone(run: Run, small: Path) -> None:
    """Data say what the job is built in; findings are worded in what is shown."""
    deep = small.with_name("deep.toml")
    deep.write_text(small.read_text().replace('depth = "23"', 'depth = "8"'))
    data = json.loads(run("holes", deep, "--format", "json", "--units", "mm").stdout)
    assert data["units"] == "in"
    (text,) = [p["text"] for p in data["problems"] if p["code"] == "slide-too-long"]
    assert " mm (" in text


def test_only_tells_of_the_chosen_parts_alone(run: Run, held: Path) -> None:
    """The door held back is no concern of the drawer over it."""
    chosen = run("sheets", held, "--only", "B1-1")
    assert chosen.exit_code == 0
    assert "B1-2" not in chosen.stderr
    assert run("sheets", held).exit_code == 1


def test_an_unknown_part_is_named_as_it_was_typed(run: Run, small: Path) -> None:
    """The nearest as the job has it."""
    result = run("sheets", small, "--only", "b1_side-l")
    assert result.exit_code == 2
    assert "is called 'b1_side-l'; the nearest: B1-SIDE-L" in " ".join(result.stderr.split())


def test_only_what_is_held_draws_nothing(run: Run, held: Path) -> None:
    """No file that might pass for its sheets, and the reason."""
    result = run("sheets", held, "--only", "B1-2")
    assert result.exit_code == 1
    assert "Nothing to draw: B1-2 is held back. No file is written." in result.stderr
    assert "hand" in result.stderr
    assert not list(Path().iterdir())


def test_only_what_has_no_holes_draws_nothing(run: Run, small: Path) -> None:
    """A plain line, and no error: there is nothing wrong with it."""
    plain = small.with_name("plain.toml")
    plain.write_text(small.read_text().replace('height = "6"', 'height = "6"\n  pull = "none"')
                     .replace('"drawer"', '"panel"'))  # fmt: skip
    result = run("sheets", plain, "--only", "B1-SIDE-R")
    assert result.exit_code == 0, result.output
    assert "Nothing to draw: B1-SIDE-R has no holes. No file is written." in result.stderr
    assert not list(Path().iterdir())


@pytest.mark.slow
@pytest.mark.parametrize("paper", ["roll-610", "24x60in"])
def test_every_command_that_prints_takes_large_paper(paper: str, run: Run, small: Path) -> None:
    """A roll or a sheet of one's own is a paper like any other."""
    for words in (["sheets"], ["sheets", "--stick"], ["elevations"], ["pack"]):
        result = run(*words[:1], small, *words[1:], "--paper", paper)
        assert result.exit_code == 0, result.output
    assert run("calibrate", "--paper", paper).exit_code == 0
    assert run("hardware", "--bench", "--paper", paper).exit_code == 0
    data = json.loads(run("sheets", small, "--paper", paper, "--format", "json").stdout)
    assert data["paper"] == paper


def test_pages_with_a_unit_of_their_own_are_told(run: Run, small: Path) -> None:
    """Over 200 in a program that does not know UserUnit prints too small."""
    told = "Pages over 200 in (5080 mm) count in a unit of their own"
    assert told in run("sheets", small, "--paper", "610x6000mm").stderr
    assert told not in run("sheets", small, "--paper", "610x5000mm").stderr


def test_strips_take_the_holes_along_their_edge_and_cards_the_others(run: Run, small: Path) -> None:
    """As data, each hole once; what joins add is told where there are any."""
    plain = json.loads(run("sheets", small, "--format", "json").stdout)["cards"]
    strips = json.loads(run("sheets", small, "--strip", "--format", "json").stdout)["cards"]

    def holes(cards: list[dict[str, Any]]) -> list[tuple[str, str, str, float]]:
        return sorted(
            (card["part"], card["face"], hole["purpose"], hole["diameter_mm"])
            for card in cards
            for hole in card["holes"]
        )

    assert holes(strips) == holes(plain)
    pieces = [card["strip"] for card in strips if card["part"] == "B1-2" and "strip" in card]
    assert pieces == [{"piece": n, "pieces": 3} for n in (1, 2, 3)]
    assert not any("strip" in card for card in plain)


def test_what_joins_add_is_told(run: Run, small: Path) -> None:
    """In pieces, in one piece off a roll, and where there is no strip at all."""
    for words, told in (
        (["--only", "B1-2"], "Each join may add 0.3 mm: check every hole by its written distance"),
        (["--only", "B1-2", "--paper", "roll-610"], "In one piece: check every hole"),
        (["--only", "B1-1"], "No strip: it wants two fittings near the hinge edge"),
    ):
        result = run("sheets", small, "--strip", *words)
        assert result.exit_code == 0
        assert told in result.stderr
    assert "trip" not in run("sheets", small).stderr


def test_holes_of_chosen_parts_alone(run: Run, small: Path) -> None:
    """Those of the front or the box named, as the whole list has them; an unknown one is told."""
    whole = run("holes", small, "--format", "csv").stdout.splitlines()
    parts = list(dict.fromkeys(row.split(",")[0] for row in whole[1:]))
    side = next(part for part in parts if "SIDE" in part)
    front = parts[0]
    for name in (front, side):
        found = run("holes", small, "--format", "csv", "--only", name.lower()).stdout.splitlines()
        own = [row for row in whole if row.startswith(f"{name},")]
        assert own
        assert [row for row in found if row.startswith(f"{name},")] == own
        assert 1 + len(own) <= len(found) < len(whole)
    wrong = run("holes", small, "--only", "B99")
    assert wrong.exit_code == 2
    assert "B99" in wrong.stderr
