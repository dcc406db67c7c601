"""Any input of a job: job file, bare list, a list that joins a job file."""

from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.given.listspec import ListSpec
from jigs.ground.errors import ReadingError
from jigs.layout.layout import summarise
from jigs.reading.inputs import read_job
from templates.words.assumedwords import assumed_lines
from tests.anytext import ANY

LIST = """\
id,box,kind,width,height,count,hinged,pull
,A,drawer,454,150,,,
,A,door,454,600,,left,
,B,pair,300,700,,,Knob
,,panel,598,715,,,none
"""
OWN = ListSpec(empty_box="own")
"""The last row has a box of its own."""

JOB = """\
schema = 1
fronts_file = "lists/fronts.csv"
[use]
door_pull = "mine"
[pull.mine]
centers = 96
[[box]]
id = "A"
kind = "base"
width = 457.2
height = 774.7
depth = 584.2
[[box]]
id = "B"
kind = "wall"
width = 600
height = 720
depth = 320
"""


def write(tmp_path: Path, job: str, rows: str) -> Path:
    """Write a job file and its front list beside it."""
    (tmp_path / "lists").mkdir(exist_ok=True)
    (tmp_path / "lists" / "fronts.csv").write_text(rows)
    path = tmp_path / "job.toml"
    path.write_text(job)
    return path


def faults_of(path: Path, listed: ListSpec | None = None) -> list[str]:
    """The faults of an input, without the folder."""
    with pytest.raises(ReadingError) as caught:
        read_job(path, listed=listed)
    return [str(fault).replace(f"{path.parent}/", "") for fault in caught.value.faults]


def test_a_bare_list_makes_a_job(tmp_path: Path) -> None:
    """A bare list is a job whose boxes are inferred and whose numbers are all assumed."""
    path = tmp_path / "galley.csv"
    path.write_text(LIST)
    job = read_job(path, listed=OWN)
    assert (job.name, job.units, len(job.boxes)) == ("galley", "mm", 3)
    assert job.boxes[0].width == pytest.approx(454 + 2 * 1.6)
    assert all(box.inferred for box in job.boxes)
    assert {"material.side", "reveal.between", "box.A.height", "use.hinge"} <= job.assumed
    assert "boxes A, B, B1: kind, width and height worked out from the fronts" in assumed_lines(job)
    assert job.boxes[1].fronts[0].opened_by.pull == "knob"
    assert job.hinges["cup35-full"].confirmed == {}
    # Inside depth 560 - 19 - 6 = 535; 500 + 16 goes in.
    assert job.use.slide == "undermount-500"


def test_a_bare_list_in_inches_gets_inch_slides(tmp_path: Path) -> None:
    """A job read in inches takes its slide from the inch series."""
    path = tmp_path / "galley.csv"
    path.write_text("kind,width (in),height (in)\ndrawer,17 7/8,6\n")
    job = read_job(path)
    assert (job.units, job.boxes[0].fronts[0].width) == ("in", 454.025)
    # Inside depth 535: 533 + 16 = 549 does not go in, 457 + 16 does.
    assert job.use.slide == "undermount-457"


def test_a_list_joins_the_boxes_of_a_job(tmp_path: Path) -> None:
    """The rows of a job's list hang on its boxes, read in the job's unit and with its pulls."""
    rows = "box,kind,width,height,pull\nA,drawer,,150,\nA,door,,,mine\nb,door,,,\n"
    job = read_job(write(tmp_path, JOB, rows))
    assert [[front.id for front in box.fronts] for box in job.boxes] == [["A-1", "A-2"], ["B-1"]]
    assert job.boxes[0].fronts[1].opened_by.pull == "mine"
    assert not any(box.inferred for box in job.boxes)


def test_a_list_is_read_in_the_unit_of_its_job(tmp_path: Path) -> None:
    """The bare numbers of a silent header are in the job's unit; a header that speaks wins."""
    inches = JOB.replace("schema = 1", 'schema = 1\nunits = "in"').replace("457.2", '"457.2 mm"')
    for size in ("96", "774.7", "584.2", "600", "720", "320"):
        inches = inches.replace(f"= {size}\n", f'= "{size} mm"\n')
    job = read_job(write(tmp_path, inches, "box,kind,height\nA,drawer,6\n"))
    assert job.boxes[0].fronts[0].height == 152.4
    job = read_job(write(tmp_path, inches, "box,kind,height (mm)\nA,drawer,150\n"))
    assert job.boxes[0].fronts[0].height == 150


def test_faults_of_the_job_and_its_list_come_together(tmp_path: Path) -> None:
    """A fault in the job file does not hide those of its list."""
    job = JOB.replace('kind = "wall"', 'kind = "well"')
    rows = "box,kind,height,pull\nA,drawer,150,\nA,door,,rod\nC,door,,\n"
    faults = faults_of(write(tmp_path, job, rows))
    assert faults[0].startswith("job.toml:15: box[2].kind: not known ('well' given)")
    assert any("row 4" in fault and "no such box ('C' given)" in fault for fault in faults)
    assert any("row 3, column pull" in fault and "'rod'" in fault for fault in faults)
    assert len(faults) == 3


def test_ids_of_the_job_and_its_list_may_not_clash(tmp_path: Path) -> None:
    """A row that is named like a front of the job file is a duplicate."""
    job = JOB + '[[box.front]]\nkind = "drawer"\n'
    faults = faults_of(write(tmp_path, job, "id,box,kind\nB-1-BOX,A,door\n"))
    assert len(faults) == 1
    assert "duplicate ID ('B-1-BOX'" in faults[0]


def test_a_missing_list_is_a_fault(tmp_path: Path) -> None:
    """A list that is not there is a reading fault at its own name."""
    path = tmp_path / "job.toml"
    path.write_text(JOB)
    assert any("lists/fronts.csv" in fault for fault in faults_of(path))


def test_an_unknown_pull_in_a_bare_list(tmp_path: Path) -> None:
    """A bare list may name generic pulls only, or none."""
    path = tmp_path / "list.csv"
    path.write_text(LIST.replace("Knob", "bar-161"))
    (fault,) = faults_of(path, OWN)
    assert fault.startswith("list.csv: row 4, column pull: unknown pull ('bar-161' given); did you")


@pytest.mark.parametrize("name", ["job.pdf", "job", "job.toml.bak"])
def test_other_endings_are_refused(tmp_path: Path, name: str) -> None:
    """What is neither a job file nor a list is refused, with what is allowed."""
    path = tmp_path / name
    path.write_text("fronts")
    (fault,) = faults_of(path)
    assert "allowed: .toml, .csv" in fault


@pytest.mark.parametrize("name", ["job.txt", "job", "job.toml.bak", "job.csv"])
def test_a_job_file_of_another_name_is_recognised(tmp_path: Path, name: str) -> None:
    """An editor that saves everything as .txt has only to be told."""
    path = tmp_path / name
    path.write_text("# my kitchen\n" + JOB)
    (fault,) = faults_of(path)
    assert fault == f"{name}: looks like a job file: name it {path.stem}.toml"


def test_a_folder_is_refused(tmp_path: Path) -> None:
    """A folder is a reading fault."""
    with pytest.raises(ReadingError, match="is a folder"):
        read_job(tmp_path)


def test_summary_of_a_bare_list(tmp_path: Path) -> None:
    """The echo counts fronts, a pair as two, by kind, and says that the boxes are inferred."""
    path = tmp_path / "list.csv"
    path.write_text(LIST)
    assert summarise(read_job(path, listed=OWN)) == (
        "5 fronts: 1 door, 1 pair, 1 drawer, 1 panel, on 3 boxes (inferred)"
    )


def test_summary_of_a_job_file(tmp_path: Path) -> None:
    """An opening is no front; plurals agree."""
    rows = (
        "box,kind,count,height\nA,drawer,2,100\nA,false-front,,100\nB,opening,,300\nB,door,2,200\n"
    )
    assert summarise(read_job(write(tmp_path, JOB, rows))) == (
        "5 fronts: 2 doors, 2 drawers, 1 false front, 1 opening, on 2 boxes"
    )


@settings(max_examples=60)
@given(
    st.lists(
        st.tuples(st.integers(0, len(LIST)), st.integers(0, 8), st.text(ANY, max_size=4)),
        min_size=1,
        max_size=3,
    )
)
def test_mutated_lists_raise_nothing_else(
    tmp_path: Path, changes: list[tuple[int, int, str]]
) -> None:
    """A front list cut and pasted at random is read, or is a reading fault."""
    text = LIST
    for at, cut, put in changes:
        text = text[:at] + put + text[at + cut :]
    path = tmp_path / "list.csv"
    path.write_bytes(text.encode("utf-8", "replace"))
    with suppress(ReadingError):
        assert read_job(path).boxes


def test_a_thickness_in_each_row_is_not_assumed(tmp_path: Path) -> None:
    """One row without it, and the default stands in for that one."""
    path = tmp_path / "fronts.csv"
    head = "box,kind,width,height,hinged,thickness\n"
    path.write_text(f"{head}A,drawer,454,150,,19\nA,door,454,600,left,22\n", encoding="utf-8")
    assert not any("front thickness" in text for text in assumed_lines(read_job(path)))
    path.write_text(f"{head}A,drawer,454,150,,19\nA,door,454,600,left,\n", encoding="utf-8")
    assert any("front thickness" in text for text in assumed_lines(read_job(path)))


def test_a_box_names_the_slide_of_its_listed_drawers(tmp_path: Path) -> None:
    """A list has no column for it, and one box may be shallower than the others."""
    job = JOB.replace('id = "A"\n', 'id = "A"\nslide = "undermount-305"\n', 1)
    assert job != JOB
    made = read_job(write(tmp_path, job, "box,kind,height\nA,drawer,150\nA,door,\n"))
    fronts = next(box for box in made.boxes if box.id == "A").fronts
    assert [front.slide for front in fronts] == ["undermount-305", None]
    wrong = job.replace("undermount-305", "undermount-306")
    faults = faults_of(write(tmp_path, wrong, "box,kind,height\nA,drawer,150\n"))
    assert any("slide: unknown slide ('undermount-306' given)" in fault for fault in faults)


def test_what_names_its_own_slide_keeps_it(tmp_path: Path) -> None:
    """The box's own is for those that say nothing, rollouts too."""
    rollout = "[[box.rollout]]\nat = 100\nheight = 90\n"
    own = f'{rollout}[[box.front]]\nkind = "drawer"\nslide = "undermount-381"\n'
    job = JOB.replace("depth = 584.2\n", f'depth = 584.2\nslide = "undermount-305"\n{own}', 1)
    box = read_job(write(tmp_path, job, "box,kind\nA,door\n")).boxes[0]
    assert [front.slide for front in box.fronts] == ["undermount-381", None]
    assert [each.slide for each in box.rollouts] == ["undermount-305"]
