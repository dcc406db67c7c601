"""`jigsheet stations`: as its user meets it; its pages are tested in tests/templates/stations."""

import json
import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from cli.main import main
from tests.cli.conftest import SMALL, Run
from tests.readback import read_pages
from tests.stationholes import compare, listed_in
from tests.templates.stations.stationreading import holes_of

CLOSING = re.compile(
    r"stations\.pdf: (\d+) pages, (\d+) cards to cut, (\d+) folds, (\d+) lines to strike\. "
    r"Print at 100 %; measure the bars on page 1 first\."
)


@dataclass(frozen=True, slots=True)
class Made:
    """What the command makes of the small job, once for all tests here."""

    job: Path
    told: str
    pages: tuple[str, ...]
    data: dict[str, Any]


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Made:
    """Run the command for paper and for data."""
    folder = tmp_path_factory.mktemp("stations")
    job, out = folder / "small.toml", folder / "stations.pdf"
    job.write_text(SMALL, encoding="utf-8")
    printed = CliRunner().invoke(main, ["stations", str(job), "-o", str(out)])
    data = CliRunner().invoke(main, ["stations", str(job), "--format", "json"])
    return Made(job, printed.stderr, words_of(out), json.loads(data.stdout))


def data_of(run: Run, *words: str | Path) -> dict[str, Any]:
    """Give the data that a command writes to standard output."""
    result = run(*words, "--format", "json")
    assert result.exit_code == 0, result.output
    data: dict[str, Any] = json.loads(result.stdout)
    return data


def words_of(path: Path) -> tuple[str, ...]:
    return tuple(page.text for page in read_pages(path.read_bytes()))


def test_the_closing_line_counts_what_is_printed(made: Made) -> None:
    """Pages as they are in the file, cards and folds as in the data."""
    told = CLOSING.search(made.told)
    assert told
    cards = [card for each in made.data["stations"] for card in each["cards"]]
    folds = [edge for card in cards for edge in card["edges"] if edge["by"] == "fold"]
    assert [int(count) for count in told.groups()[:3]] == [len(made.pages), len(cards), len(folds)]


def test_pages_in_the_data_are_those_of_the_file(made: Made) -> None:
    """Page 1 lists each station with its page; its title stands there, and in the data."""
    assert "PRINT THIS ONE OR THE OTHER" in made.pages[0]
    for station in made.data["stations"]:
        title = station["name"].replace("-", " ").upper()
        assert title in made.pages[station["page"] - 1]
        assert f"{station['page']} {title}" in made.pages[0]


def test_every_hole_of_the_list_comes_out_once(made: Made, run: Run) -> None:
    """From what the command writes alone, to 0.05 mm; drawer fronts are marked."""
    wanted = listed_in(data_of(run, "holes", made.job))
    assert wanted
    assert compare(wanted, holes_of(made.data)) == ([], [])
    assert any("marks" in row for station in made.data["stations"] for row in station["rows"])


@pytest.mark.parametrize("job", ["small", pytest.param("demo_job", marks=pytest.mark.slow)])
def test_with_pilots_those_of_drawer_fronts_come_out_too(
    job: str, run: Run, request: pytest.FixtureRequest
) -> None:
    """Nothing is marked through a box then."""
    path = request.getfixturevalue(job)
    wanted = listed_in(data_of(run, "holes", path), pilots=True)
    data = data_of(run, "stations", path, "--pilots")
    assert compare(wanted, holes_of(data)) == ([], [])
    assert not any("marks" in row for station in data["stations"] for row in station["rows"])


@pytest.mark.slow
def test_every_hole_of_the_demo_comes_out_once(run: Run, demo_job: Path) -> None:
    """As of the small job."""
    wanted = listed_in(data_of(run, "holes", demo_job))
    assert compare(wanted, holes_of(data_of(run, "stations", demo_job))) == ([], [])


def test_a_part_or_a_station_alone_keeps_letters_and_codes(made: Made, run: Run) -> None:
    """Paper printed for one part fits the cards that are there; rows are those of the part."""
    whole = {each["name"]: each for each in made.data["stations"]}
    (cups,) = [name for name in whole if name.startswith("cups")]
    chosen = data_of(run, "stations", made.job, "--only", cups.upper())["stations"]
    assert [each["name"] for each in chosen] == [cups]
    assert chosen[0]["rows"] == whole[cups]["rows"]
    part = data_of(run, "stations", made.job, "--only", "b1-1")["stations"]
    assert {row["part"] for each in part for row in each["rows"]} == {"B1-1", "B1-1-BOX"}
    for each in (*chosen, *part):
        assert each["code"] == whole[each["name"]]["code"]
        known = {(card["card"], card["code"]) for card in whole[each["name"]]["cards"]}
        assert {(card["card"], card["code"]) for card in each["cards"]} <= known


def test_a_held_part_alone_draws_nothing(run: Run, held: Path) -> None:
    """It is said why, and no file is written."""
    result = run("stations", held, "--only", "B1-2")
    assert result.exit_code == 1
    assert "Nothing to draw: B1-2 is held back" in result.stderr
    assert list(Path().iterdir()) == []


def test_a_door_without_a_hand_is_on_page_1_alone(run: Run, held: Path) -> None:
    """Nobody knows yet at which station it will be."""
    assert run("stations", held).exit_code == 1
    first, *others = words_of(Path("stations.pdf"))
    assert "HOLD" in first
    assert "B1-2: hand not stated" in first
    assert not any("cups" in page.lower() for page in others)


@pytest.mark.slow
def test_the_first_of_each_station(run: Run, demo_job: Path) -> None:
    """Each station has few rows, those that are tried together; the page after the one on cards
    says what must be true."""
    whole = {each["name"]: each for each in data_of(run, "stations", demo_job)["stations"]}
    first = data_of(run, "stations", demo_job, "--first")["stations"]
    assert [each["name"] for each in first] == list(whole)
    for each in first:
        rows = whole[each["name"]]["rows"]
        assert 0 < len(each["rows"]) <= len(rows)
        assert all(row["part"] in {other["part"] for other in rows} for row in each["rows"])
    parts = {row["part"] for each in first for row in each["rows"]}
    assert {"B1-2", "B1-SIDE-L"} <= parts  # a door and its side: together they close on each other
    assert run("stations", demo_job, "--first").exit_code == 0
    _, cards, words, *_ = words_of(Path("stations.pdf"))
    assert "EVERY CARD, AT EVERY STATION" in cards
    assert "THE FIRST OF EACH STATION" in words
    assert "DOOR B1-2 with B1-SIDE-L" in words


def test_the_first_of_one_station(made: Made, run: Run) -> None:
    """With --only: its first row; a side with the one across from it."""
    alone = data_of(run, "stations", made.job, "--first", "--only", "drawer-boxes")["stations"]
    assert [each["name"] for each in alone] == ["drawer-boxes"]
    assert [row["part"] for row in alone[0]["rows"]] == ["B1-1-BOX"]
    sides = data_of(run, "stations", made.job, "--first", "--only", "sides")["stations"]
    assert {row["part"] for row in sides[0]["rows"]} == {"B1-SIDE-L", "B1-SIDE-R"}


@pytest.mark.parametrize("form", ["svg", "dxf"])
def test_each_card_is_a_plate_in_a_file_of_its_own(form: str, made: Made, run: Run) -> None:
    """Named by station and card; a printer's correction is refused, the same bytes come again."""
    result = run("stations", made.job, "--format", form, "--only", "drawer-boxes")
    assert result.exit_code == 0, result.output
    folder = Path(f"stations-{form}")
    (station,) = [each for each in made.data["stations"] if each["name"] == "drawer-boxes"]
    letters = {card["card"] for card in station["cards"]}
    names = {path.name for path in folder.iterdir()}
    assert names == {f"drawer-boxes-card-{letter}.{form}" for letter in letters}
    assert re.search(rf"{folder}: {len(names)} plates?\. 1 unit is 1 mm", result.stderr)
    assert run("stations", made.job, "--format", form, "-o", "again").exit_code == 0
    for name in names:
        assert (folder / name).read_bytes() == (Path("again") / name).read_bytes()
    refused = run("stations", made.job, "--format", form, "--printer", "garage")
    assert refused.exit_code == 2
    assert "--printer corrects what is printed" in refused.stderr
