"""`jigsheet new`: asked, unattended, from a list, stopped and gone on with."""

import json
from collections.abc import Sequence
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from cli.main import main
from jigs.reading.inputs import read_job
from templates.words.textlines import counted
from tests.cli.conftest import Run

LIST = """\
box,kind,width (in),height (in),count,hinged
B1,drawer,17 7/8,6,1,
B1,door,17 7/8,24 3/16,1,left
B2,drawer,23 7/8,6,1,
B2,drawer,23 7/8,12 1/32,2,
B3,pair,17 7/8,30 5/16,1,
W1,door,17 7/8,29 7/8,1,right
"""
"""An invented list: three boxes round a corner, and one that hangs."""

TALK = (
    "in", "1/16", "edge", "", "23", "12 1/2", "W1 wall", "", "4", "54",
    "Küche: B1 range=30x36 B2 W1; ost: B3", "96", "36", "1 1/2", "wall", "1 5/8", "corner",
    "2 1/2", "-", "2 1/2", "open", "5'", "2", "1", "18.3 mm", "3/4", "mdf", "6 mm", "0", "-",
    "leaflet", "5 mm; 0 mm; 20 mm", "0 mm; 3 mm", "45 mm", "9.5 mm", "12.8 mm", "under", "-",
    "160 mm", "knob", "measured", "", "2", "",
)  # fmt: skip
"""An answer to each of its questions."""


@pytest.fixture
def fronts(tmp_path: Path) -> Path:
    path = tmp_path / "work" / "Fronten.csv"
    path.parent.mkdir(exist_ok=True)
    path.write_text(LIST, encoding="utf-8")
    return path


def talk(*words: str | Path, said: Sequence[str] = ()) -> Result:
    result = CliRunner().invoke(
        main, ["new", *map(str, words)], input="".join(f"{line}\n" for line in said),
        prog_name="jigsheet",
    )  # fmt: skip
    assert "Traceback" not in result.output
    return result


def test_a_corner_kitchen_from_a_list(run: Run, fronts: Path) -> None:
    """Asked from a pipe, it makes a job that names the list, and whose check holds nothing back."""
    result = talk("küche.toml", "--fronts", "Fronten.csv", said=TALK)
    assert result.exit_code == 0, result.output
    assert result.stdout == ""
    job = read_job(Path("küche.toml"))
    assert [(box.id, box.kind, box.wall) for box in job.boxes] == [
        ("B1", "base", "Küche"), ("B2", "drawer", "Küche"), ("W1", "wall", "Küche"),
        ("B3", "base", "ost"),
    ]  # fmt: skip
    assert job.walls[1].left.meets == "Küche"
    assert [len(box.fronts) for box in job.boxes] == [2, 3, 1, 1]
    assert [box.height for box in job.boxes] == pytest.approx([774.7, 774.7, 762, 774.7])
    assert "Still open: [material] drawer_side; [slide.mine] length" in result.stderr
    assert "Next: jigsheet check 'küche.toml'" in result.stderr
    assert fronts.read_text("utf-8") == LIST
    assert sorted(path.name for path in Path.cwd().iterdir()) == ["Fronten.csv", "küche.toml"]
    checked = run("check", "küche.toml")
    assert checked.exit_code == 0, checked.output


def test_a_list_in_millimetres_in_a_job_in_inches(run: Run, fronts: Path) -> None:
    """What the list means is written beside its name, and its boxes come out as they were."""
    fronts.write_text(
        "Schrank;Art;C;D;Anzahl;Anschlag\nU1;drawer;597;140;1;\nU1;Klappe;597;573;1;\n", "utf-8"
    )
    result = talk(
        "job.toml", "--fronts", fronts, "--usual", "--units", "in", "--reveal", "1.5 mm",
        "--columns", "width=C,height=D,kinds.Klappe=lift",
    )  # fmt: skip
    assert result.exit_code == 0, result.output
    text = Path("job.toml").read_text("utf-8")
    assert "[list]" in text
    assert 'units = "mm"' in text
    job = read_job(Path("job.toml"))
    [box] = job.boxes
    assert (job.units, box.id, box.width) == ("in", "U1", 597 + 2 * 1.5)
    assert [front.kind for front in box.fronts] == ["drawer", "lift"]


def test_what_a_list_does_not_say_is_asked_on_a_terminal(
    run: Run, fronts: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And kept with the answers; through a pipe it is a fault."""
    fronts.write_text("box,kind,A1,A2\nB1,drawer,597,140\n", "utf-8")
    assert talk("job.toml", "--fronts", fronts, "--usual").exit_code == 1
    monkeypatch.setattr("cli.asking.on_terminal", lambda: True)
    said = ["wide=C", "?", "-", "back", "9", "1", "height=D", "mm"]
    stopped = talk("job.toml", "--fronts", fronts, said=said)
    assert "no column or setting" in stopped.stderr
    assert "1. The list: Which column is the width?" in stopped.stderr
    assert "This is the first question." in stopped.stderr
    assert "Not one of them ('9' given)" in stopped.stderr
    assert "next time: --columns 'width=C,height=D'" in stopped.stderr
    assert "Stopped. 1 answer kept in" in stopped.stderr
    assert talk("job.toml", said=[""] * 30).exit_code == 0
    assert read_job(Path("job.toml")).boxes[0].width == pytest.approx(597 + 2 * 1.6)


def test_the_first_question_of_a_list_is_kept_and_taken_back(
    run: Run, fronts: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Stopped there it says where; what is refused is not kept; `back` takes an answer away."""
    fronts.write_text("box,kind,A1,A2\nB1,drawer,597,140\n", "utf-8")
    monkeypatch.setattr("cli.asking.on_terminal", lambda: True)
    stopped = talk("job.toml", "--fronts", fronts, said=["kinds.drawer=shelf", "1", "back", "2"])
    assert "kinds.drawer: not known" in stopped.stderr
    assert "What you said of the list is kept in 'job.toml.answers'" in stopped.stderr
    kept = Path("job.toml.answers").read_text("utf-8")
    assert "width=D" in kept and "shelf" not in kept  # noqa: PT018


def test_a_box_is_shown_from_the_top_and_turned(
    run: Run, fronts: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And a correction that was taken back can be taken again."""
    fronts.write_text("box,kind,w,h\nB1,drawer,597,140\nB1,drawer,597,284\n", "utf-8")
    monkeypatch.setattr("cli.asking.on_terminal", lambda: True)
    said = ["", "", "", "", "B1 turn", "back", "=", *[""] * 30]
    told = talk("job.toml", "--fronts", fronts, said=said)
    assert told.exit_code == 0, told.output
    assert "from the top: drawer 140 mm, drawer 284 mm" in told.stderr
    assert "from the top: drawer 284 mm, drawer 140 mm" in told.stderr
    assert "You had answered: B1 turn" in told.stderr
    [box] = read_job(Path("job.toml")).boxes
    assert [front.height for front in box.fronts] == [284, 140]


def test_a_length_that_is_far_from_usual_is_asked_twice(
    run: Run, fronts: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """At once, and not as an error later; typed again it is taken."""
    fronts.write_text("box,kind,w,h\nB1,drawer,597,140\nB1,drawer,597,284\n", "utf-8")
    monkeypatch.setattr("cli.asking.on_terminal", lambda: True)
    said = ["", "", "2", "2", "", "", "10 mm", "100", *[""] * 30]
    told = talk("job.toml", "--fronts", fronts, said=said)
    assert "2 is not usual, which is 2.5 to 25 mm; type it again if it is so." in told.stderr
    assert "10 mm is not usual, which is" in told.stderr
    job = read_job(Path("job.toml"))
    assert (job.reveal.top, job.boxes[0].above_floor) == (2, 100)


def test_a_row_without_a_box_is_a_fault(run: Run, fronts: Path) -> None:
    """The job joins the rows to its boxes by it; nothing is asked before."""
    fronts.write_text("kind,width,height\ndrawer,597,140\n", "utf-8")
    result = talk("job.toml", "--fronts", fronts)
    assert result.exit_code == 1
    assert "row 2: names no box; write a column box" in result.stderr


def test_stopped_at_every_question_it_goes_on_there(run: Run, fronts: Path) -> None:
    """What was answered is kept; the job comes out the same, and the answers are taken away."""
    talk("whole.toml", "--fronts", "Fronten.csv", said=TALK)
    whole = Path("whole.toml").read_text("utf-8")
    job = Path("piecemeal", "whole.toml")
    for count in range(1, len(TALK)):
        stopped = talk(job, "--fronts", "Fronten.csv", said=TALK[count - 1 : count])
        assert stopped.exit_code == 1
        assert f"{counted(count, 'answer')} kept in" in stopped.stderr
        assert [path.name for path in job.parent.iterdir()] == ["whole.toml.answers"]
    going_on = talk(job, said=TALK[-1:])
    assert going_on.exit_code == 0, going_on.output
    assert f"Going on after {counted(len(TALK) - 1, 'answer')} kept in" in going_on.stderr
    made = job.read_text("utf-8")
    assert made.replace('"../Fronten.csv"   ', '"Fronten.csv"      ') == whole
    assert [path.name for path in job.parent.iterdir()] == ["whole.toml"]


def test_unattended_from_options_alone(run: Run) -> None:
    """What is not said stays open, and is told."""
    result = run(
        "new", "job.toml", "--usual", "--units", "mm", "--reveal", "3 mm", "--reveal-is", "gap",
        "--box", "B1 base 600 x 720: drawer 140, door left", "--material-side", "18,2 mm",
        "--hinge-confirmed", "leaflet", "--hinge-cup-depth", "12.5",
    )  # fmt: skip
    assert result.exit_code == 0, result.output
    assert result.stdout == ""
    job = read_job(Path("job.toml"))
    assert (job.reveal.side, job.reveal.between, job.material.side) == (1.5, 3, 18.2)
    assert job.hinges["mine"].confirmed == {"cup_depth": "leaflet"}
    assert "material.front" in job.assumed
    assert "depth" in result.stderr.partition("[box]")[2]
    assert "# NOT MEASURED" in Path("job.toml").read_text("utf-8")
    assert [path.name for path in Path.cwd().iterdir()] == ["job.toml"]


def test_what_is_taken_of_the_reveals_is_told(run: Run, fronts: Path) -> None:
    """Which of two things one is, and the one at the top, which is another under a counter."""
    words = ("--fronts", fronts, "--usual", "--units", "in", "--reveal", "1/16")
    result = run("new", "k.toml", *words)
    said = " ".join(result.stderr.split())
    assert "Reveal 1/16: taken from a front's edge to its own box's edge" in said
    assert "1/8 is taken under a counter (base, drawer and sink boxes), 1/16 elsewhere" in said
    result = run("new", "m.toml", *words, "--reveal-is", "edge", "--reveal-top", "1/16")
    assert "Reveal" not in result.stderr


def test_the_questions_with_their_options(run: Run, fronts: Path) -> None:
    """Each names the option that answers it, and that is taken; nothing is written."""
    words = ("--fronts", fronts, "--walls", "north: B1 B2 B3; east: W1")
    listed = run("new", "k.toml", *words, "--questions")
    assert listed.exit_code == 0, listed.output
    assert not Path("k.toml").exists()
    options = [line.split("  ")[0] for line in listed.stdout.splitlines() if line[:2] == "--"]
    assert {"--reveal-top", "--answer wall.north.left=TEXT", "--boxes", "--slide-mount"} <= {
        *options
    }
    answers = [
        *(("--answer", f"{option.split()[1].removesuffix('=TEXT')}=-") for option in options
          if option.startswith("--answer")),
        *((option, "-") for option in options
          if option not in ("--walls", "--units", "--slide-mount", "--boxes")
          and not option.startswith("--answer")),
    ]  # fmt: skip
    result = run("new", "k.toml", *words, "--usual", *(word for pair in answers for word in pair))
    assert result.exit_code == 0, result.output
    said = run("new", "z.toml", "--questions")
    assert said.stdout.splitlines()[-1].startswith("What follows hangs on the last of them")


def test_of_walls_that_cannot_be_read_no_answer_is_called_strange(run: Run) -> None:
    """What hangs on them would be asked if they were read; what nothing hangs on is told."""
    words = ("new", "k.toml", "--usual", "--units", "in", "--ceiling", "96",
             "--box", "B1 base 18 x 30: door left")  # fmt: skip
    more = ("--answer", "wall.north.left=corner", "--wall-depth", "13", "--answer", "celing=90")
    bad = run(*words, "--walls", "north B1", *more)
    assert bad.exit_code == 1
    assert "walls: not a wall ('north B1' given)" in bad.stderr
    assert "ceiling: no such" not in bad.stderr
    assert "wall.north" not in bad.stderr
    assert "wall_depth: no such question here ('13' given); it is for boxes" in bad.stderr
    assert "celing: no such question here ('90' given); known" in bad.stderr
    assert "ceiling: no such question here ('96' given)" in run(*words).stderr


def test_unattended_all_faults_are_told_at_once(run: Run) -> None:
    """By the keys of their questions, and nothing is made."""
    result = run(
        "new", "job.toml", "--usual", "--units", "in", "--box", "B1 base 18 x 30: door left",
        "--material-side", "18.3", "--reveal", "1/16", "--reveal-is", "both",
        "--slide-mount", "under",
        "--answer", "wall.north.left=corner",
    )  # fmt: skip
    assert result.exit_code == 1
    assert "material.side: 18.3 in is 464.8 mm" in result.stderr
    assert "reveal_is: not one of the words ('both' given)" in result.stderr
    assert "slide.mount: no such question here" in result.stderr
    assert "wall.north.left: no such question here" in result.stderr
    assert "4 faults; nothing was made." in result.stderr
    assert list(Path.cwd().iterdir()) == []


def test_unattended_without_a_box_is_a_fault(run: Run) -> None:
    """A kitchen has no usual box."""
    result = run("new", "job.toml", "--usual")
    assert result.exit_code == 1
    assert "box.1: an answer is needed" in result.stderr


def test_a_wrong_answer_through_a_pipe_is_a_fault(run: Run) -> None:
    """Nobody can be asked again, and what follows may be meant for another question; what went
    before it is kept for the next time."""
    said = ["in", "1/16", "edge", "", "B1 base 18 x 30 x 23: door left", "", "ten", *[""] * 20]
    result = talk("job.toml", said=said)
    assert result.exit_code == 1
    assert "\nabove_floor: not a length ('ten' given)" in result.stderr
    assert not Path("job.toml").exists()
    kept = json.loads(Path("job.toml.answers").read_text("utf-8"))["answers"]
    assert list(kept) == ["units", "reveal", "reveal_is", "reveal_top", "box.1", "box.2"]
    assert talk("job.toml", said=["4", *[""] * 20]).exit_code == 0


def test_on_a_terminal_it_asks_again_says_more_and_goes_back(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A wrong answer is told with what is allowed."""
    monkeypatch.setattr("cli.asking.on_terminal", lambda: True)
    said = [
        "back", "ell", "in", "1/16", "?", "back", "3 mm", "gap", "", "B1 base 18 x 30 x 23: pair",
        "", *[""] * 30,
    ]  # fmt: skip
    result = talk("job.toml", "--hinge-plates", "0", said=said)
    assert result.exit_code == 0, result.output
    assert "This is the first question." in result.stderr
    assert "Not used: hinge.plates" in result.stderr
    assert "not one of the words ('ell' given); allowed: mm, in" in result.stderr
    assert "you measure between two fronts" in " ".join(result.stderr.split())
    assert read_job(Path("job.toml")).reveal.between == 3


def test_a_file_that_is_there_is_never_written_over(run: Run, small: Path) -> None:
    """Whatever it is."""
    before = small.read_bytes()
    result = run("new", small)
    assert result.exit_code == 1
    assert "is there already and is left alone" in result.stderr
    assert small.read_bytes() == before


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("job.txt",), "ends in .toml"),
        (("job.toml", "--answer", "units"), "no KEY=TEXT"),
        (("job.toml", "--fronts", "/dev/stdin"), "has to be a file"),
    ],
)
def test_wrong_usage_ends_with_2(run: Run, words: tuple[str, ...], said: str) -> None:
    """And leaves nothing."""
    result = run("new", *words)
    assert result.exit_code == 2
    assert said in result.stderr
    assert list(Path.cwd().iterdir()) == []


def test_answers_that_cannot_be_read_are_told(run: Run) -> None:
    """They are left alone."""
    Path("job.toml.answers").write_text("[1]", encoding="utf-8")
    result = run("new", "job.toml")
    assert result.exit_code == 1
    assert "cannot be read. Take it away" in result.stderr


def test_faults_of_the_list_are_told_first(run: Run, fronts: Path) -> None:
    """Nothing is asked of a list that cannot be read."""
    fronts.write_text(LIST.replace("24 3/16", "61/4"), encoding="utf-8")
    result = talk("job.toml", "--fronts", fronts)
    assert result.exit_code == 1
    assert "row 3, column" in result.stderr
    assert "Inches or millimetres" not in result.stderr


def test_what_nobody_has_looked_at_is_told(run: Run, fronts: Path) -> None:
    """No list says which boxes hang on the wall: unattended, a kind is not stated as if it were."""
    result = talk("a.toml", "--fronts", "Fronten.csv", "--usual", "--boxes", "W1 wall")
    assert result.exit_code == 0
    lines = Path("a.toml").read_text(encoding="utf-8").splitlines()
    kinds = [line for line in lines if line.startswith("kind")]
    assert [line.partition("#")[2].strip()[:10] for line in kinds] == [*["WORKED OUT"] * 3, ""]
    assert "[box] kind, depth" in " ".join(result.stderr.split())
    assert "a.toml is written, by 1 answer;" in result.stderr


def test_the_top_under_a_counter_and_elsewhere(run: Run, fronts: Path) -> None:
    """Two lengths in one answer: 1/8 where a counter lies, 1/16 on the wall."""
    words = ("--fronts", "Fronten.csv", "--usual", "--boxes", "W1 wall")
    assert talk("a.toml", *words, "--reveal-top", "1/8; 1/16").exit_code == 0
    job = read_job(Path("a.toml"))
    assert job.reveal.top_of("base") == pytest.approx(25.4 / 8)
    assert job.reveal.top_of("wall") == pytest.approx(25.4 / 16)
    assert not {"reveal.top", "reveal.under_counter"} & job.assumed
    result = talk("b.toml", *words, "--reveal-top", "1/8; 1/16; 1/4")
    assert result.exit_code == 1
    assert "more than 2 lengths ('1/8; 1/16; 1/4' given)" in result.stderr


def test_a_folder_is_made_for_a_job_alone(run: Run, fronts: Path) -> None:
    """Where there is a fault none is left behind, and the list is told by a plain path."""
    Path("bad.csv").write_text("kind,width,height\ndoor,450,720\n", encoding="utf-8")
    result = talk("new one/Küche.toml", "--fronts", "bad.csv", "--usual")
    assert result.exit_code == 1
    assert "\nbad.csv: row 2" in result.stderr
    assert not Path("new one").exists()
    assert talk("new one/Küche.toml", "--fronts", "Fronten.csv", "--usual").exit_code == 0
    assert read_job(Path("new one/Küche.toml")).boxes
