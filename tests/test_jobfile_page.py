"""The page about the job file names every key that the tool reads; the README's job is one."""

import re
from itertools import chain
from pathlib import Path

import pytest

from jigs.given.printer import Printer
from jigs.ground.keys import keys_of
from jigs.reading.inputs import read_job
from jigs.reading.tomltables import TomlTable
from tests.jobfilepage import PAGE, RECORDS, VALUES, docstrings, write_page
from tests.pages import run

ROOT = Path(__file__).parents[1]
DEMO = ROOT / "templates" / "demo"

NAMED = {"hinge", "slide", "pull", "printer", "stock"}
"""Tables whose keys are names that the person gives."""

FURTHER = """
[paint]
coats = 2

[printer.garage]
across = "179.5 mm"
along = "199.4 mm"

[stock.tape]
roll = true
label_width = "54 mm"
label_height = "30 mm"

[[box]]
id = "X1"
kind = "base"
width = "30"
height = "30 1/2"
depth = "23"
columns = [{width = "12"}, {share = 2}]
  [[box.shelf]]
  at = "300 mm"
"""
"""What the demo has no need of, so that its keys are asked for too."""


def asked(folder: Path, monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """Give every key that the reader asks for in a job that has every table, but names."""
    found: set[str] = set()
    take = TomlTable._take

    def note(table: TomlTable, key: str) -> object:
        if not set(table.path) <= NAMED or len(table.path) != 1:
            found.add(key)
        return take(table, key)

    monkeypatch.setattr(TomlTable, "_take", note)
    for name in ("fronts.csv", "delivered.csv"):
        (folder / name).write_bytes((DEMO / name).read_bytes())
    job = folder / "job.toml"
    job.write_text((DEMO / "job.toml").read_text(encoding="utf-8") + FURTHER, encoding="utf-8")
    read_job(job)
    return found


def test_every_key_stands_on_the_page(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each key that is read is named in code type, alone or in a line of the file."""
    spans = re.findall(r"`([^`\n]+)`", PAGE.read_text(encoding="utf-8"))
    named = {word for span in spans for word in re.findall(r"[a-z_]+", span)}
    keys = asked(tmp_path, monkeypatch)
    assert len(keys) > 150
    assert keys - named == set()


def test_its_tables_are_what_the_fields_say() -> None:
    """Keys, words, ranges and defaults stand beside the fields; the page repeats them."""
    text = PAGE.read_text(encoding="utf-8")
    assert write_page(text) == text, "write them anew: python -m tests.jobfilepage"


def test_each_field_has_its_line() -> None:
    """No key is left without words."""
    for values in (*RECORDS.values(), *chain(*VALUES.values()), Printer):
        stated = {key for key, field in keys_of(values).items() if field.key.stated}
        assert stated - docstrings(values).keys() == set()


def test_the_readmes_job_is_one(tmp_path: Path) -> None:
    """The job that stands in the README can be checked, and nothing of it is held back."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    block = re.search(r"^```toml\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)
    assert block is not None
    job = tmp_path / "job.toml"
    job.write_text(block[1], encoding="utf-8")
    assert "Nothing is held back." in run("jigsheet check job.toml", tmp_path)
