"""How every command behaves: its help, its examples, what it says and what it leaves unsaid."""

import csv
import errno
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import click
import pytest

from cli.main import COMMANDS, STAGES, main
from cli.manners import Choice, Command
from tests.cli.conftest import SMALL, Run
from tests.cli.test_exit_codes import ON_A_JOB
from tests.cli.test_streams import JIGSHEET, environment

UNIX = pytest.mark.skipif(sys.platform == "win32", reason="shells and terminals of Unix")
EXAMPLES = [
    (name, line)
    for name in sorted(COMMANDS, key=lambda name: name != "calibrate")
    for _, line in getattr(main.get_command(click.Context(main), name), "examples", ())
]
"""What the help of each command shows; a printer is measured before one prints for it."""

KITCHEN = f"""{SMALL}[use]
slide = "runner"
[slide.runner]
like = "undermount-533"
"""


def command_of(name: str) -> Command:
    command = main.get_command(click.Context(main), name)
    assert isinstance(command, Command)
    return command


def helped(name: str) -> list[str]:
    command = command_of(name)
    context = click.Context(command, info_name=f"jigsheet {name}", terminal_width=80)
    return command.get_help(context).splitlines()


def test_help_tells_every_command_in_its_stage() -> None:
    """Each once, its words whole."""
    context = click.Context(main, info_name="jigsheet", terminal_width=80)
    text = main.get_help(context)
    for stage, names in STAGES.items():
        under = text.partition(f"{stage}:\n")[2].partition("\n\n")[0]
        assert [line.split()[0] for line in under.splitlines()] == list(names)
    assert len(set(COMMANDS)) == len(COMMANDS)
    assert "..." not in text.partition("Options:")[2]
    assert max(map(len, text.splitlines())) <= 80


@pytest.mark.parametrize("name", COMMANDS)
def test_help_fits_80_columns_and_says_every_default(name: str) -> None:
    """An option that has a default says it; each has a sentence."""
    lines = helped(name)
    assert max(map(len, lines)) <= 80
    command = command_of(name)
    for option in command.params:
        if not isinstance(option, click.Option) or option.hidden:
            continue
        assert option.help, option.name
        assert option.help.rstrip("]").endswith("." if "[" not in option.help else ""), option.name
        if option.default not in (None, False, (), "") and not option.is_flag and option.name:
            said = option.show_default or "[default: " in option.help
            # A sentinel of click's stands for none.
            assert said or not isinstance(option.default, str | int), (name, option.name)


@pytest.mark.parametrize("name", COMMANDS)
def test_help_shows_examples(name: str) -> None:
    """Each with when it is of use, and as it is typed."""
    command = command_of(name)
    assert command.examples
    text = "\n".join(helped(name)).partition("Examples:\n")[2]
    for when, line in command.examples:
        assert line.split()[0] == name
        assert f"  {when}:\n    jigsheet {line}" in text


@pytest.mark.parametrize(("name", "line"), EXAMPLES)
def test_examples_are_read(name: str, line: str, tmp_path: Path) -> None:
    """No option or choice in one that there is not."""
    context = command_of(name).make_context(name, line.split()[1:])
    assert context.params


def measure(gaps: Path) -> None:
    """Write what each gap was measured as, in mm, into the list of gaps."""
    with gaps.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    with gaps.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(rows[0]))
        writer.writeheader()
        writer.writerows({**row, "top_or_left_mm": "3.0"} for row in rows)


@pytest.mark.slow
def test_examples_do_what_they_say(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each ends with 0 in a folder that has the files it names; `serve`, and `new`, which asks,
    run in their own tests."""
    home = Path.cwd() / "home"
    monkeypatch.setenv("XDG_CONFIG_HOME", str(home))
    for name in ("kitchen.toml", "idea.toml"):
        Path(name).write_text(KITCHEN, encoding="utf-8")
    Path("fronts.csv").write_text("id,box,kind,width,height,hinged\nF1,B1,door,17 7/8,30 1/4,l\n")
    Path("fronts-measured.csv").write_text("id,width,height\nB1-1,17 7/8,6\nB1-2,17 7/8,24 1/8\n")
    for name, line in EXAMPLES:
        if "--measured" in line:
            measure(Path("gaps.csv"))
        if name not in ("serve", "new"):
            done = run(*line.split())
            assert done.exit_code == 0, (line, done.output)


@pytest.mark.parametrize("name", COMMANDS)
def test_every_choice_says_what_may_be_meant(name: str, run: Run) -> None:
    """The nearest of its words; where none is near, they are all there."""
    for option in command_of(name).params:
        if isinstance(option.type, click.Choice):
            assert isinstance(option.type, Choice)
            known = option.type.choices[0]
            said = run(name, option.opts[0], f"{known}x").stderr
            assert f"'{known}x' is not one of" in said
            if len(known) > 1:
                assert f"Did you mean '{known}'?" in said
            assert "mean" not in run(name, option.opts[0], "#").stderr


def test_names_say_what_may_be_meant(run: Run, small: Path) -> None:
    """Commands, options, papers, stocks and records, one letter beside."""
    for words, near in (
        (["shets"], "sheets"),
        (["sheets", small, "--papr", "a4"], "--paper"),
        (["sheets", small, "--paper", "leter"], "letter"),
        (["labels", small, "--stock", "leter-2x5"], "letter-2x5"),
        (["hardware", "undermont-533"], "undermount-533"),
    ):
        done = run(*words)
        assert done.exit_code == 2
        assert re.search(rf"[Dd]id you mean '{near}'", done.stderr.replace('"', "'")), done.stderr


def test_a_line_without_a_command_says_which_there_are(run: Run) -> None:
    """A job alone is told what comes before it."""
    done = run("my kitchen.toml")
    assert done.exit_code == 2
    assert "'my kitchen.toml' is no command; one comes before it, such as" in done.stderr
    assert "jigsheet check 'my kitchen.toml'" in done.stderr
    assert all(name in run("#").stderr for name in COMMANDS)


@pytest.mark.parametrize("name", ON_A_JOB)
def test_a_quiet_run_tells_only_what_is_wrong(name: str, run: Run, small: Path, held: Path) -> None:
    """Not what was read and written; what is held back, and how much is open, remains."""
    quiet = run(name, "--quiet", small)
    assert quiet.exit_code == 0
    assert "2 fronts:" not in quiet.stderr
    for written in ("pdf:", "html:", "pack:", "Print "):
        assert written not in quiet.stderr
        if name not in ("check", "hang"):
            assert written not in quiet.stdout
    if name != "check":
        assert "warnings: see 'jigsheet check" in quiet.stderr
    told = run(name, "-q", held)
    assert told.exit_code == 1
    assert "hand-not-stated" in told.output
    if name == "pack":
        assert "depend on open numbers" in quiet.stdout


def watched(words: list[str], columns: int, cwd: Path, **more: str) -> str:
    """Give what a command writes to a terminal of so many columns."""
    import fcntl
    import pty
    import struct
    import termios

    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
    settings = {**environment(TERM="xterm"), **more}
    settings.pop("COLUMNS", None)
    process = subprocess.Popen(
        [*JIGSHEET, *words], cwd=cwd, env=settings, stdin=theirs, stdout=theirs, stderr=theirs
    )
    os.close(theirs)
    seen = b"".join(_all_of(ours))
    os.close(ours)
    process.wait(60)
    return seen.decode(more.get("PYTHONIOENCODING", "utf-8"))


def _all_of(stream: int) -> Iterator[bytes]:
    while True:
        try:
            piece = os.read(stream, 65536)
        except OSError as error:  # how Linux says that the other end is closed
            if error.errno != errno.EIO:
                raise
            return
        if not piece:
            return
        yield piece


@pytest.mark.slow
@UNIX
@pytest.mark.parametrize("columns", [40, 64, 80])
def test_lines_fit_the_terminal(columns: int, small: Path) -> None:
    """Findings, tables and what is held; not a word is lost, and in a file nothing changes."""
    for words in (["check"], ["parts"]):
        seen = watched([*words, small.name], columns, small.parent)
        assert max(map(len, seen.splitlines())) < columns
        filed = subprocess.run(
            [*JIGSHEET, *words, small.name], cwd=small.parent, env=environment(), check=True,
            capture_output=True,
        ).stdout.decode()  # fmt: skip
        assert max(map(len, filed.splitlines())) > columns
        assert set(filed.split()) <= set(seen.split())


@pytest.mark.slow
@UNIX
def test_no_colour_and_no_bar_where_none_is_wanted(small: Path) -> None:
    """A dumb terminal obeys no codes: none is sent; nor with NO_COLOR, but for the bar's own."""
    assert "\x1b" not in watched(["labels", str(small)], 80, small.parent, TERM="dumb")
    seen = watched(["labels", str(small)], 80, small.parent, NO_COLOR="1")
    assert not re.search(r"\x1b\[[\d;]*m", seen)
    assert "Drawing" not in watched(["labels", "-q", str(small)], 80, small.parent)


@UNIX
@pytest.mark.parametrize("coding", ["ascii", pytest.param("latin-1", marks=pytest.mark.slow)])
def test_a_terminal_of_few_letters(coding: str, small: Path) -> None:
    """Names and signs that it lacks are shown by others, and nothing breaks."""
    text = small.read_text(encoding="utf-8").replace("Lock-keeper's", "Łódź 厨房")
    small.write_text(text, encoding="utf-8")
    seen = watched(["check", str(small)], 80, small.parent, PYTHONIOENCODING=coding)
    assert "warning" in seen
    assert "Traceback" not in seen
    assert "stumbled" not in seen


@pytest.mark.slow
@UNIX
def test_bash_completes(small: Path, tmp_path: Path) -> None:
    """Commands, options, choices, papers, and the parts of the job that is being typed."""
    script = tmp_path / "jigsheet"
    script.write_text(f"#!{sys.executable}\nfrom cli.main import main\nmain()\n")
    script.chmod(0o755)
    asked = (
        ("h", "hardware holes hang"),
        ("sheets --pil", "--pilots"),
        ("sheets --format d", "dxf"),
        (f"sheets {small} --paper le", "letter legal"),
        (f"sheets {small} --only b1-s", "B1-SIDE-L B1-SIDE-R"),
        (f"sheets {tmp_path}/no.toml --only b1-s", ""),
        (f"plan {small} --done b1-s", "B1-SIDE-L B1-SIDE-R B1-STRETCHER-1 B1-STRETCHER-2"),
        (f"plan {small} --done b1-side-l bo", "bored-sides"),
        (f"plan {small} --done B1-SIDE-L cut --undone B1-2 a", "arrived adjusted"),
        ("hardware bar-22", "bar-224"),
        ("stocks letter", "letter-3x10 letter-2x5"),
    )
    lines = ['eval "$(_JIGSHEET_COMPLETE=bash_source jigsheet)"']
    for line, _ in asked:
        words = line.split(" ")
        lines += [
            f"COMP_WORDS=(jigsheet {line}); COMP_CWORD={len(words)}; COMPREPLY=()",
            '_jigsheet_completion jigsheet; echo "${COMPREPLY[*]}"',
        ]
    done = subprocess.run(
        ["bash", "-c", "\n".join(lines)],
        env={**environment(), "PATH": f"{tmp_path}{os.pathsep}{os.environ['PATH']}"},
        capture_output=True, check=False, text=True, timeout=60,
    )  # fmt: skip
    assert done.stdout.splitlines() == [offered for _, offered in asked], done.stderr


@pytest.mark.parametrize("shell", ["zsh", "fish", "powershell"])
def test_other_shells_have_a_script(shell: str, tmp_path: Path) -> None:
    """What each of them is given names the command."""
    script = tmp_path / "jigsheet"
    script.write_text("from cli.main import main\nmain()\n")
    done = subprocess.run(
        [sys.executable, script], env=environment(_JIGSHEET_COMPLETE=f"{shell}_source"),
        capture_output=True, check=False, text=True, timeout=60,
    )  # fmt: skip
    assert f"{shell}_complete" in done.stdout
    assert "jigsheet" in done.stdout


@pytest.mark.parametrize(
    ("command", "name", "said", "begin"),
    [
        ("plan", "a.pdf", (), b"%PDF-"),
        ("parts", "A.PDF", (), b"%PDF-"),
        ("order", "a.xlsx", (), b"PK"),
        ("holes", "a.csv", (), b"part,box,"),
        ("stations", "a.json", (), b"{"),
        ("parts", "a.csv", ("--format", "json"), b"{"),
        ("holes", "a.pdf", (), b"B1-1 "),
    ],
)
def test_the_ending_of_a_file_says_its_form(
    run: Run, small: Path, command: str, name: str, said: tuple[str, ...], begin: bytes
) -> None:
    """Where no --format does, and the command has that form."""
    assert run(command, small, *said, "-o", name).exit_code == 0
    assert Path(name).read_bytes().startswith(begin)
