"""Standard streams that are full or closed, and what a terminal must never be sent."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from cli.main import COMMANDS
from cli.terminal import plain, typed
from tests.cli.conftest import Run
from tests.cli.test_streams import JIGSHEET, ROOT, environment

UNIX = pytest.mark.skipif(sys.platform == "win32", reason="shells and devices of Unix")


def shell(line: str, *words: str | Path, cwd: Path) -> subprocess.CompletedProcess[bytes]:
    """Run a shell's line; `jigsheet` in it is the command, $1, $2 ... are the words."""
    command = f"jigsheet() {{ {sys.executable} -c 'from cli.main import main; main()' \"$@\"; }}"
    done = subprocess.run(
        ["bash", "-c", f"{command}\n{line}", "bash", *map(str, words)],
        cwd=cwd,
        env=environment(),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        check=False,
        timeout=60,
    )
    for trouble in (b"Traceback", b"Exception ignored", b"stumbled"):
        assert trouble not in done.stderr, done.stderr
    return done


@UNIX
@pytest.mark.parametrize("to", ["> /dev/full", ">&-"])
@pytest.mark.parametrize(
    "words", ["--help", pytest.param("--version", marks=pytest.mark.slow), "stocks"]
)
def test_an_answer_that_cannot_be_written_ends_with_1(words: str, to: str, tmp_path: Path) -> None:
    """Help and lists too: one line says why."""
    done = shell(f"jigsheet {words} {to}", cwd=tmp_path)
    assert done.returncode == 1
    reason = b"the disk is full" if "full" in to else b"it is closed"
    assert done.stderr == b"standard output could not be written: " + reason + b".\n"


@pytest.mark.slow
@UNIX
@pytest.mark.parametrize("to", ["2> /dev/full", ">&- 2>&-"])
def test_where_nobody_listens_the_file_is_made(to: str, small: Path) -> None:
    """Words on the way are no part of the work: it is done, and its exit code stands."""
    done = shell(f'jigsheet sheets "$1" {to}', small, cwd=small.parent)
    assert done.returncode == 0
    assert (small.parent / "sheets.pdf").read_bytes().startswith(b"%PDF")


@UNIX
def test_help_into_a_pipe_that_closes_is_quiet(tmp_path: Path) -> None:
    """Who reads no further wants no more words."""
    done = shell("jigsheet --help | true", cwd=tmp_path)
    assert done.stderr == b""


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("B1\x1b[2J", r"B1\x1b[2J"),
        ("a\u202eb\u2066c\u200fd", r"a\u202eb\u2066c\u200fd"),
        ("over\rwritten\x07\x9b", r"over\x0dwritten\x07\x9b".replace(r"\x0d", r"\r")),
        ("a row\r\n\tand a tab\n", "a row\r\n\tand a tab\n"),
        ("\udce9t\u00e9", "\\udce9t\u00e9"),
    ],
)
def test_what_a_terminal_obeys_is_written_as_its_code(text: str, shown: str) -> None:
    """Line ends and tabs stay, letters of every script too."""
    assert plain(text) == shown


@pytest.mark.parametrize("command", sorted({*COMMANDS} - {"demo"}))
def test_a_name_cannot_steer_the_terminal(command: str, run: Run) -> None:
    """Neither an unknown option nor the name of a file reaches it raw."""
    for word in ("--\x1b[31mred\u202e", "\x1b[31mred\u202e.toml"):
        result = run(command, word)
        assert "\x1b" not in result.output
        assert "\u202e" not in result.output


def test_only_one_place_speaks_to_the_terminal() -> None:
    """Everything else goes through `tell` and `write_text`."""
    speaking = {
        path.name
        for path in (ROOT / "cli").rglob("*.py")
        if re.search(r"click\.s?echo|\bprint\(|std(out|err)\.write", path.read_text("utf-8"))
    }
    assert speaking == {"terminal.py", "failures.py"}


@UNIX
def test_a_drawing_is_not_sent_to_a_terminal(small: Path) -> None:
    """Its bytes would be obeyed; a list is shown, without what would be."""
    import pty

    ours, theirs = pty.openpty()
    done = subprocess.run(
        [*JIGSHEET, "sheets", str(small), "-o", "-"],
        env=environment(),
        stdin=subprocess.DEVNULL,
        stdout=theirs,
        stderr=subprocess.PIPE,
        check=False,
        timeout=60,
    )
    os.close(theirs)
    os.close(ours)
    assert done.returncode == 1
    assert b"standard output is a terminal" in done.stderr


def test_a_word_with_a_comma_stands_in_quotes_for_powershell(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """It would be cut apart there: one argument becomes a list of them."""
    monkeypatch.setattr(sys, "platform", "win32")
    assert typed("--columns", "width=C,height=D") == '--columns "width=C,height=D"'
    assert typed("check", "my job.toml", "a,b c") == 'check "my job.toml" "a,b c"'
