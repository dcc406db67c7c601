"""`changes`, and --changed-since: what is stale, what is spoilt, and that alone printed."""

import csv
import io
import json
import tempfile
from functools import cache
from pathlib import Path

import pytest
from click.testing import CliRunner

from cli.main import main
from cli.serving.store import open_store
from tests.cli.conftest import Run


@pytest.fixture
def edited(small: Path) -> Path:
    """Give the small job with its drawer front 1/4 in higher, beside it."""
    text = small.read_text("utf-8").replace('height = "6"', 'height = "6 1/4"')
    path = small.with_name("edited.toml")
    path.write_text(text, encoding="utf-8")
    return path


@cache
def pack_of(name: str, text: str) -> dict[str, bytes]:
    """Make the pack of a job; kept for all tests that begin with one."""
    with tempfile.TemporaryDirectory() as folder:
        job, pack = Path(folder) / name, Path(folder) / "pack"
        job.write_text(text, encoding="utf-8")
        words = ["pack", str(job), "-o", str(pack)]
        assert CliRunner().invoke(main, words, prog_name="jigsheet").exit_code == 0
        return {path.name: path.read_bytes() for path in pack.iterdir()}


def packed(job: Path) -> Path:
    """Put the pack of a job beside it."""
    folder = job.with_name("pack")
    folder.mkdir()
    for name, data in pack_of(job.name, job.read_text(encoding="utf-8")).items():
        (folder / name).write_bytes(data)
    return folder


def contents(pack: Path) -> dict[str, object]:
    data = json.loads((pack / "contents.json").read_text("utf-8"))
    assert isinstance(data, dict)
    return data


def test_nothing_is_stale_of_a_job_and_its_own_pack(run: Run, small: Path) -> None:
    """Whichever stands first; nothing is written."""
    pack = packed(small)
    for words in ((small, small), (pack, small), (small, pack), (pack, pack)):
        result = run("changes", *words)
        assert result.exit_code == 0
        assert result.stdout.endswith("\nNothing is stale.\n")
        assert "EDITED" not in result.stdout
    for command in ("stations", "sheets", "labels"):
        result = run(command, small, "--changed-since", pack)
        assert result.exit_code == 0
        assert "No file is written." in result.stderr
    assert list(Path().iterdir()) == []


def test_an_edit_is_told_by_what_is_to_be_done(run: Run, small: Path, edited: Path) -> None:
    """In the order of the work, with its cause; 1/4 in is 6.35 mm."""
    result = run("changes", small, edited)
    assert result.exit_code == 0
    said = result.stdout
    assert "front B1-1: height 152.4 -> 158.75" in said
    titles = ["EDITED", "PRINT ANEW", "CUT ANEW", "BORE ANEW", "ORDER", "SPOILT IF"]
    assert sorted(titles, key=said.index) == titles
    assert "B1-1: too small by 6.4 mm in height, order it anew" in " ".join(said.split())
    assert "B1-2" in said
    assert "SPOILT, by what is marked" not in said


def test_marks_say_what_is_spoilt_for_sure(run: Run, small: Path, edited: Path) -> None:
    """What was bored by the code of before is; what was bored since is not; the rest may be."""
    codes = contents(packed(small))["parts"]
    assert isinstance(codes, dict)
    new = json.loads(run("holes", edited, "--format", "json").stdout)
    right = next(side["code"] for side in new["sides"] if side["side"] == "right")
    with open_store(edited) as store:
        store.mark("B1-SIDE-L", "bored-sides", codes["B1-SIDE-L"])
        store.mark("B1-SIDE-R", "bored-sides", right)
    data = json.loads(run("changes", small, edited, "--format", "json").stdout)
    tasks = {(task["do"], task["part"]): task for task in data["tasks"]}
    task = tasks["spoilt", "B1-SIDE-L"]
    assert task["marked"]["by"] == "before"
    assert task["holes"][0]["by_mm"] == pytest.approx(6.35)
    assert not any(part == "B1-SIDE-R" for _, part in tasks)
    assert ("spoilt-if", "B1-2") in tasks
    text = run("changes", small, edited).stdout
    assert "SPOILT, by what is marked as done\n  B1-SIDE-L, bored (marked " in text


def test_a_spreadsheet_has_one_thing_a_line(run: Run, small: Path, edited: Path) -> None:
    """The same things."""
    rows = list(
        csv.DictReader(io.StringIO(run("changes", small, edited, "--format", "csv").stdout))
    )
    assert {row["do"] for row in rows} == {"print", "cut", "bore", "order", "spoilt-if"}
    printed = {row["name"] for row in rows if row["what"] == "sheet"}
    assert printed == {"B1-1", "B1-1-BOX", "B1-2", "B1-SIDE-L", "B1-SIDE-R"}


def test_cups_that_a_plate_answers_may_stay(run: Run, small: Path) -> None:
    """The lines for the job are such that the tool takes them: the door has those cups then."""
    text = small.read_text("utf-8").replace(
        "[[box]]",
        '[use]\nhinge = "mine"\n[hinge.mine]\nlike = "cup35-full"\nplates = ["0 mm", "3 mm"]\n'
        'tabs = ["3 mm", "5 mm"]\nconstant = "15 mm"\n[[box]]',
        1,
    )
    small.write_text(text, encoding="utf-8")
    other = small.with_name("other.toml")
    other.write_text(
        text.replace('hinged = "left"', 'hinged = "left"\nhinges_at = ["150 mm", "500 mm"]'),
        "utf-8",
    )
    said = " ".join(run("changes", small, other).stdout.split())
    lines = said.partition("Or keep its cups: write ")[2].partition(" at front B1-2")[0]
    kept = small.with_name("kept.toml")
    keys = lines.replace('", h', '"\nh').replace("true, b", "true\nb")
    kept.write_text(text.replace('hinged = "left"', f'hinged = "left"\n{keys}'), "utf-8")
    assert run("check", kept).exit_code == 0
    data = json.loads(run("changes", small, kept, "--format", "json").stdout)
    moved = [hole["change"] for task in data["tasks"] for hole in task["holes"]]
    assert "moved" not in moved


SECOND = """\
[[box]]
id = "W1"
wall = "north"
kind = "wall"
width = "15"
height = "30"
depth = "12"
  [[box.front]]
  kind = "door"
  hinged = "right"
"""


def test_only_what_is_stale_is_printed(run: Run, small: Path) -> None:
    """A wall box 3 mm higher: its own parts, and each station of its door with all its rows."""
    small.write_text(small.read_text("utf-8") + SECOND, "utf-8")
    pack = packed(small)
    small.write_text(
        small.read_text("utf-8").replace('height = "30"', 'height = "765 mm"'), "utf-8"
    )
    data = json.loads(run("changes", pack, small, "--format", "json").stdout)
    assert data["edits"] == [
        {"of": "box", "name": "W1", "key": "height", "was": 762.0, "now": 765.0}
    ]
    labels, sheets = data["print"]["labels"], data["print"]["sheets"]
    assert {"W1-1", "W1-SIDE-L", "W1-SIDE-R", "W1-BACK"} <= set(labels)
    assert not any(name.startswith("B1") for name in (*labels, *sheets))
    told = run("labels", small, "--changed-since", pack).stderr
    assert f": {len(labels)} labels on 1 sheet" in told
    cards = json.loads(run("sheets", small, "--changed-since", pack, "--format", "json").stdout)
    drawn = {card["part"] for card in cards["cards"] if "part" in card}
    assert drawn == set(sheets) == {"W1-1", "W1-SIDE-R"}
    found = run("stations", small, "--changed-since", pack, "--format", "json").stdout
    stations = {each["name"]: len(each["rows"]) for each in json.loads(found)["stations"]}
    assert list(stations) == [s["name"] for s in data["print"]["stations"] if s["state"] != "gone"]
    whole = json.loads(run("stations", small, "--format", "json").stdout)["stations"]
    rows = {each["name"]: len(each["rows"]) for each in whole}
    assert stations == {name: rows[name] for name in stations}
    assert set(stations) < set(rows)
    assert any(row["part"].startswith("B1") for s in json.loads(found)["stations"]
               for row in s["rows"])  # fmt: skip
    some = run("sheets", small, "--changed-since", pack, "--only", "B1", "-o", "b1.pdf")
    assert some.exit_code == 0
    assert "Of what was chosen nothing is stale" in some.stderr
    assert not Path("b1.pdf").exists()


def test_a_part_that_is_no_more_is_spoilt_if_it_was_worked_on(run: Run, small: Path) -> None:
    """By its marks, whatever the code."""
    text = small.read_text("utf-8")
    small.write_text(text + SECOND, "utf-8")
    pack = packed(small)
    with open_store(small) as store:
        store.mark("W1-1", "bored-cups", str(contents(pack)["parts"]["W1-1"]))  # type: ignore[index]
    small.write_text(text, "utf-8")
    said = run("changes", pack, small).stdout
    assert "W1-1 is no more" in said
    assert "W1-1, cups bored (marked " in said.partition("SPOILT, by what is marked")[2]
    assert "box W1: no more" in said


def test_what_is_held_back_now_is_neither_spoilt_nor_bored(run: Run, small: Path) -> None:
    """A door without a hand: wait, and send no hinge back; a hole that is no more is no task for
    the drill."""
    other = small.with_name("other.toml")
    text = small.read_text("utf-8")
    assert 'hinged = "left"' in text
    other.write_text(text.replace('hinged = "left"', ""), "utf-8")
    said = run("changes", small, other).stdout
    first = said.index(
        "HELD BACK NOW\n  B1-2: a single door, and nobody said on which side it hangs. Say hinged"
    )
    waits = said.index("Until a part is released")
    assert first < waits < said.index("EDITED") < said.index("PRINT ANEW")
    assert "send nothing back before it is" in said
    assert "SPOILT" not in said
    assert "BORE ANEW" not in said
    other.write_text(text.replace('hinged = "left"', 'hinged = "right"'), "utf-8")
    tasks = json.loads(run("changes", small, other, "--format", "json").stdout)["tasks"]
    cups = [task for task in tasks if "cup hole" in task["text"]]
    assert {(task["do"], task["holes"][0]["change"]) for task in cups} == {
        ("bore", "new"), ("spoilt-if", "gone"),
    }  # fmt: skip


def test_a_pack_of_before_tells_codes_alone(run: Run, small: Path, edited: Path) -> None:
    """It says so, and names the parts."""
    pack = packed(small)
    data = contents(pack)
    del data["made"]
    (pack / "contents.json").write_text(json.dumps(data), "utf-8")
    same = " ".join(run("changes", pack, small).stdout.split())
    assert "kept nothing but the codes of its parts: all are the same" in same
    said = " ".join(run("changes", pack, edited).stdout.split())
    assert "what has changed it cannot say" in said
    assert "B1-SIDE-L" in said
    assert "CUT ANEW" not in said


def test_what_is_no_pack_of_this_job_is_refused(run: Run, small: Path, tmp_path: Path) -> None:
    """Another job's, none at all, a damaged one: exit 1 and nothing written."""
    pack = packed(small)
    other = tmp_path / "other.toml"
    other.write_text(small.read_text("utf-8").replace("scullery", "pantry"), "utf-8")
    empty = tmp_path / "empty"
    empty.mkdir()
    damaged = tmp_path / "damaged"
    damaged.mkdir()
    data = contents(pack)
    data["made"]["reach"] = 1.0  # type: ignore[index]
    (damaged / "contents.json").write_text(json.dumps(data), "utf-8")
    for job, since, told in (
        (other, pack, 'is the pack of the job "Lock-keeper\'s scullery"'),
        (small, empty, "is no pack"),
        (small, small, "is no pack"),
        (small, damaged, "is not what a pack wrote: it was edited, or is damaged"),
    ):
        for words in (["sheets", job, "--changed-since", since], ["changes", since, job]):
            if since == small and words[0] == "changes":
                continue  # a job is compared with itself
            result = run(*words)
            assert result.exit_code == 1, words
            assert told.replace('"', "'") in result.stderr.replace('"', "'"), result.stderr
    assert list(Path().iterdir()) == []


def test_faults_of_either_are_told(run: Run, small: Path, faulty: Path) -> None:
    """By file and line; exit 1."""
    for words in ((small, faulty), (faulty, small)):
        result = run("changes", *words)
        assert result.exit_code == 1
        assert "faulty.toml:" in result.stderr
        assert result.stdout == ""


def test_sizes_as_delivered_make_paper_stale_and_no_wood(run: Run, small: Path) -> None:
    """What is measured is as it is: nothing is cut, and nothing is too small."""
    pack = packed(small)
    arrived = small.with_name("arrived.csv")
    arrived.write_text("id,width,height\nB1-2,454.8 mm,614.4 mm\n", "utf-8")
    words = ["changes", pack, small, "--delivered", arrived, "--format", "json"]
    data = json.loads(run(*words).stdout)
    # The sheet of the drawer front above it says the gap between the two.
    assert data["print"]["sheets"] == ["B1-1", "B1-2"]
    assert {task["do"] for task in data["tasks"]} <= {"bore"}
    assert run("changes", small, pack, "--delivered", arrived).exit_code == 2


@pytest.mark.parametrize(("upper", "serve"), [(514.3625, True), (514.1, True), (513.9, False)])
def test_a_door_that_hangs_on_its_other_edge_may_be_turned_half_round(
    upper: float, serve: bool, run: Run, small: Path
) -> None:
    """The door is 24 3/16 in high, 614.3625 mm: a cup 100 above its lower end serves 514.3625
    above the other one, within 0.3; and only while its pull is not bored."""
    hand = f'hinged = "left"\nhinges_at = ["100 mm", "{upper} mm"]'
    small.write_text(small.read_text("utf-8").replace('hinged = "left"', hand), "utf-8")
    other = small.with_name("other.toml")
    other.write_text(small.read_text("utf-8").replace('"left"', '"right"'), "utf-8")
    text = run("changes", small, other).stdout
    assert "hinged left -> right" in text
    said = "Turned half round, its bottom edge up, its cups serve, where its pull is not bored"
    assert (said in " ".join(text.split())) == serve
    listed = json.loads(run("holes", small, "--format", "json").stdout)
    code = next(front["code"] for front in listed["fronts"] if front["id"] == "B1-2")
    with open_store(other) as store:
        store.mark("B1-2", "bored-cups", code)
    text = run("changes", small, other).stdout
    assert "SPOILT, by what is marked as done\n  B1-2, cups bored" in text
    assert (said in " ".join(text.split())) == serve
    with open_store(other) as store:
        store.mark("B1-2", "bored-pulls", code)
    assert "Turned half round" not in run("changes", small, other).stdout


def test_what_is_held_back_has_no_sheet_to_print(run: Run, small: Path) -> None:
    """It stands under what is held back alone; the sides that it hangs on are printed."""
    other = small.with_name("other.toml")
    other.write_text(small.read_text("utf-8").replace('  hinged = "left"\n', ""), "utf-8")
    data = json.loads(run("changes", small, other, "--format", "json").stdout)
    assert "B1-2" not in data["print"]["sheets"]
    assert "B1-SIDE-L" in data["print"]["sheets"]
    assert {task["do"] for task in data["tasks"] if task["part"] == "B1-2"} == {"held"}
    told = run("sheets", other, "--format", "json").stdout
    assert "B1-2" not in {card.get("part") for card in json.loads(told)["cards"]}


CAME = "id,width,height\nB1-1,17 7/8,6\nB1-2,17 7/8,24 1/8\n"


def test_a_delivered_list_on_one_side_alone_is_said_first(run: Run, small: Path) -> None:
    """Its measures are no edits; given to both, nothing is stale."""
    came = small.with_name("came.csv")
    came.write_text(CAME, encoding="utf-8")
    folder = small.with_name("pack")
    assert run("pack", small, "--delivered", came, "-o", folder).exit_code == 0
    assert contents(folder)["delivered"] == "came.csv"
    result = run("changes", folder, small)
    assert result.exit_code == 0
    first = "small.toml The pack was made with came.csv: give it too, --delivered came.csv."
    assert first in " ".join(result.stdout.split()).partition("PRINT ANEW")[0]
    assert "EDITED" not in result.stdout
    assert "measured_" not in result.stdout
    result = run("changes", folder, small, "--delivered", came)
    assert result.stdout.endswith("\nNothing is stale.\n")
    assert "made with" not in result.stdout
    found = json.loads(run("changes", folder, small, "--format", "json").stdout)
    assert (found["first"].startswith("The pack was made with"), found["edits"]) == (True, [])
    listed = run("changes", folder, small, "--format", "csv").stdout
    assert next(csv.DictReader(io.StringIO(listed)))["do"] == "first"
    said = "The pack was made with came.csv: give it too, --delivered came.csv."
    since = ("labels", small, "--changed-since", folder, "-o", "labels.pdf")
    assert said in run(*since).stderr
    result = run(*since, "--delivered", came)
    assert said not in result.stderr
    assert "No file is written." in result.stderr


def test_a_list_that_came_since_the_pack_is_said_first_too(run: Run, small: Path) -> None:
    """What else was edited is told as ever; a pack that does not say what it has is no reason."""
    came = small.with_name("came.csv")
    came.write_text(CAME, encoding="utf-8")
    pack = packed(small)
    small.write_text(small.read_text("utf-8").replace('"18.3 mm"', '"18.2 mm"'), "utf-8")
    said = run("changes", pack, small, "--delivered", came).stdout
    first = "small.toml NEW has the fronts as came.csv measures them"
    assert first in " ".join(said.split()).partition("EDITED")[0]
    assert "material.side 18.3 -> 18.2" in said
    assert "measured_" not in said
    file = pack / "contents.json"
    data = contents(pack)
    del data["delivered"]
    file.write_text(json.dumps(data), encoding="utf-8")
    assert "measured_" in run("changes", pack, small, "--delivered", came).stdout
