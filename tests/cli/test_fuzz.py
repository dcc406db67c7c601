"""Damaged input of every kind: no traceback, no hang, 0, 1 or 2, and no half-written file."""

import random
from pathlib import Path

import pytest

from cli.main import COMMANDS
from templates.demo import demo_files
from tests.cli.conftest import HELD, SMALL
from tests.fuzzing import (
    JOBLESS,
    NO_END,
    check_left,
    commands,
    job_text,
    list_file,
    options_of,
    run,
)
from tests.jobtexts import HEAD

SEED = 20261201
"""All damage follows from it and from the number of the run."""
DEMO = {name: data.decode() for name, data in demo_files().items()}
FRONTS = [
    ["id", "box", "kind", "width", "height", "hinged", "count", "note"],
    ["F1", "B1", "drawer", "454", "150", "", "", ""],
    ["F2", "B1", "door", "454", "610", "left", "", "tight"],
    ["F3", "B2", "pair", "397", "714", "", "", ""],
    ["F4", "B3", "drawer", "597", "251", "", "3", ""],
]
DELIVERED = [line.split(",") for line in DEMO["delivered.csv"].splitlines()]
GAPS = [
    ["front", "beside", "neighbour", "axis", "edge", "top_or_left_mm", "bottom_or_right_mm"],
    ["B1-1", "front", "B1-2", "y", "bottom", "3.2", "3.1"],
    ["B1-1", "counter", "", "y", "top", "2", ""],
]
JOBS = (
    SMALL,
    HELD,
    f'{SMALL}[[box.shelf]]\nadjustable = true\n[[wall]]\nname = "north"\nlength = "100"\n',
    f'{HEAD}[[box]]\nid = "D"\nkind = "drawer"\nwidth = 600\nheight = 700\ndepth = 560\n'
    + '[[box.front]]\nkind = "drawer"\n' * 3,
)
NAMES = ["B1", "B1-1", "b1-2", "north", "B1-SIDE-L", "nowhere", "undermount-533", "garage", "pdf"]


def damaged_job(dice: random.Random, folder: Path) -> list[str]:
    """A small job with damage in it, to any command."""
    path = folder / "job.toml"
    path.write_bytes(job_text(dice, dice.choice(JOBS)))
    return [commands(dice), str(path)]


def damaged_demo(dice: random.Random, folder: Path) -> list[str]:
    """The demo with damage in it, to a command that draws nothing."""
    for name, text in DEMO.items():
        (folder / name).write_text(text, encoding="utf-8")
    (folder / "job.toml").write_bytes(job_text(dice, DEMO["job.toml"]))
    return [dice.choice(("check", "check", "holes", "parts", "order")), str(folder / "job.toml")]


def damaged_fronts(dice: random.Random, folder: Path) -> list[str]:
    """A bare front list in any coding, or one that a job names."""
    path = list_file(dice, FRONTS, folder, "fronts")
    if dice.randrange(3):
        return [commands(dice, often="holes"), str(path), *dice.choice(([], ["--units", "in"]))]
    job = folder / "job.toml"
    job.write_text(f'schema = 1\nunits = "in"\nfronts_file = "{path.name}"\n', encoding="utf-8")
    return [commands(dice), str(job)]


def damaged_delivery(dice: random.Random, folder: Path) -> list[str]:
    """What was delivered, to the demo."""
    for name, text in DEMO.items():
        (folder / name).write_text(text, encoding="utf-8")
    path = list_file(dice, DELIVERED, folder, "came")
    return ["check", str(folder / "job.toml"), "--delivered", str(path)]


def damaged_gaps(dice: random.Random, folder: Path) -> list[str]:
    """Gaps as measured."""
    job = folder / "job.toml"
    job.write_text(SMALL, encoding="utf-8")
    path = list_file(dice, GAPS, folder, "gaps-now")
    form = dice.choice(("text", "csv", "json", "pdf"))
    return ["gaps", str(job), "--measured", str(path), "--format", form]


def odd_options(dice: random.Random, folder: Path) -> list[str]:
    """A good job, and options that are right or wrong, on every command."""
    job = folder / "job.toml"
    job.write_text(dice.choice((SMALL, HELD)), encoding="utf-8")
    name = dice.choice([name for name in COMMANDS if name not in (*NO_END, "demo")])
    given = [] if name in JOBLESS else [str(job)]
    if name in JOBLESS and dice.randrange(2):
        given = [dice.choice(NAMES)]
    return [name, *given, *options_of(dice, name, NAMES)]


def new_job(dice: random.Random, folder: Path) -> list[str]:
    """A list in any coding, or a box in a line, and answers right and wrong, to `new`."""
    job = str(folder / "new.toml")
    box = ["--box", dice.choice(("B1 base 600 x 720: drawer 140, door left", "B1 base 600", "x"))]
    listed = ["--fronts", str(list_file(dice, FRONTS, folder, "fronts"))]
    units = ["--units", dice.choice(("mm", "mm", "in", "ell"))]
    more = options_of(dice, "new", NAMES) if dice.randrange(3) == 0 else []
    given = [dice.choice((box, listed, listed)), units, more]
    return ["new", job, "--usual", *(word for words in given for word in words)]


KINDS = (
    damaged_job,
    damaged_fronts,
    damaged_gaps,
    odd_options,
    damaged_delivery,
    damaged_demo,
    new_job,
)


def try_one(kind: int, number: int, folder: Path) -> None:
    """Make one damaged input and run it, in a folder of its own."""
    dice = random.Random(SEED + 1000 * kind + 10_000 * number)
    words = KINDS[kind](dice, folder)
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    check_left(folder, before, run(words), words)


@pytest.mark.slow
@pytest.mark.parametrize("part", range(4))
@pytest.mark.parametrize("kind", range(len(KINDS)), ids=[kind.__name__ for kind in KINDS])
def test_whatever_is_given_is_answered_in_order(
    kind: int, part: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A quarter of the runs of one kind: each fault is told, nothing is lost or left behind."""
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "settings"))
    monkeypatch.delenv("JIGSHEET_TRACEBACK", raising=False)
    for number in range(part * 15, part * 15 + 15):
        folder = tmp_path / str(number)
        folder.mkdir()
        monkeypatch.chdir(folder)
        try_one(kind, number, folder)
