"""The README and the pages it links: each of their commands runs and prints what stands there.

A line `$ jigsheet ...` in a console block is followed by what the terminal shows; a line `...`
stands for lines left out. `$ cat FILE` shows a file: one that is not there is written as it is
shown. The commands of a page run in order in one folder. The two lines that install are run word
for word by .ci/run. `python -m tests.test_readme` writes the outputs of all pages anew.
"""

import re
import shlex
import tempfile
from collections.abc import Iterator
from contextlib import chdir
from pathlib import Path

import pytest
from click.testing import CliRunner

from cli.main import COMMANDS, main
from cli.serving.links import PORT
from tests.pages import PAGES, README, anchors, links, pictures
from tests.served import served

BLOCK = re.compile(r"^```console\n(.*?)^```$", re.MULTILINE | re.DOTALL)
LEFT_OUT = "..."
CAT = "cat "
HEAD, TAIL = 14, 4
"""Lines kept at both ends of a long output when it is written anew."""


def commands(text: str) -> Iterator[tuple[str, str]]:
    """Give each command with the output that stands below it."""
    for block in BLOCK.findall(text):
        for piece in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
            line, _, output = piece.partition("\n")
            yield line, output


def run(line: str, folder: Path) -> str:
    """Run a `jigsheet` line and give what a terminal would show. In this process: the libraries
    are loaded once."""
    words = shlex.split(line, comments=True)
    assert words[0] == "jigsheet"
    if words[1] == "serve":
        # On any port that is free: another program may listen on the usual one.
        with served(folder, *words[2:], "--port", "0") as server:
            told = "".join(server.told).replace(f":{server.port}/", f":{PORT}/")
            return re.sub(r"\?k=\S+", "?k=KEY", told)
    with chdir(folder):
        done = CliRunner().invoke(main, words[1:], prog_name="jigsheet")
    assert done.exit_code == 0, done.output
    return done.output


def agrees(shown: str, printed: str) -> bool:
    """Compare an output with what was printed; `...` stands for any lines."""
    pieces = [
        re.escape(piece) for piece in re.split(rf"^{re.escape(LEFT_OUT)}\n", shown, flags=re.M)
    ]
    return re.fullmatch("(?:.*\n)*".join(pieces), printed) is not None


def ours(text: str) -> list[tuple[str, str]]:
    return [(line, output) for line, output in commands(text) if line.startswith(("jigsheet", CAT))]


def show(line: str, shown: str, folder: Path) -> str:
    """Give what a line prints: of `cat` the file, which is made of what is shown if it is not
    there."""
    if not line.startswith(CAT):
        return run(line, folder)
    file = folder / line.removeprefix(CAT)
    if not file.exists():
        file.write_text(shown, encoding="utf-8")
    return file.read_text(encoding="utf-8")


@pytest.mark.slow
@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_each_command_prints_what_its_page_shows(page: Path, tmp_path: Path) -> None:
    """A reader who types along sees the same."""
    for line, shown in ours(page.read_text(encoding="utf-8")):
        printed = show(line, shown, tmp_path)
        assert agrees(shown, printed), f"{line}\n{printed}"


def test_every_command_is_on_a_page() -> None:
    """No command is left for the reader to find out."""
    told = [line for page in PAGES for line, _ in ours(page.read_text(encoding="utf-8"))]
    assert {shlex.split(line)[1] for line in told if not line.startswith(CAT)} >= set(COMMANDS)


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_each_link_leads_somewhere(page: Path) -> None:
    """To a file of the project, and to a heading that it has; the README reaches every page."""
    for _, to in links(page):
        name, _, anchor = to.partition("#")
        file = (page.parent / name).resolve() if name else page
        assert file.is_file(), to
        assert not anchor or anchor in anchors(file), to
    assert page == README or page in {(README.parent / to).resolve() for _, to in links(README)}
    assert all(file.suffix == ".png" for file in pictures(page))


def test_the_readme_installs_by_two_commands() -> None:
    """One runs the demo, one the tests; .ci/run takes them from here."""
    others = [line for line, _ in commands(README.read_text(encoding="utf-8"))
              if not line.startswith(("jigsheet", CAT))]  # fmt: skip
    assert len(others) == 2
    assert "jigsheet demo" in others[0]
    assert "pytest" in others[1]


def test_the_comparison_can_fail() -> None:
    """Lines left out are any lines; a wrong line is none."""
    assert agrees("a\n...\nd\n", "a\nb\nc\nd\n")
    assert agrees("a\n...\nd\n", "a\nd\n")
    assert not agrees("a\n...\nd\n", "a\nb\n")
    assert not agrees("a.c\n", "abc\n")


def write_outputs(page: Path) -> None:
    """Write what the commands print into a page."""
    text = page.read_text(encoding="utf-8")
    with tempfile.TemporaryDirectory() as folder:
        for line, shown in ours(text):
            said = show(line, shown, Path(folder))
            if agrees(shown, said):
                continue  # what somebody chose to show of it still holds
            lines = said.splitlines()
            if len(lines) > HEAD + TAIL + 1:
                lines = [*lines[:HEAD], LEFT_OUT, *lines[-TAIL:]]
            printed = "".join(f"{each}\n" for each in lines)
            text = text.replace(f"$ {line}\n{shown}", f"$ {line}\n{printed}", 1)
    page.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    for each in PAGES:
        write_outputs(each)
