"""The pages a user reads, README.md and those that it links, and what their commands print.

A line `$ jigsheet ...` in a console block is followed by what the terminal shows; a line `...`
stands for lines left out. `$ cat FILE` shows a file: one that is not there is written as it is
shown. The commands of a page run in order in one folder.
"""

import re
import shlex
from collections.abc import Iterator
from contextlib import chdir
from pathlib import Path

from click.testing import CliRunner

from cli.main import main
from cli.serving.links import PORT
from tests.served import served

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
COMMANDS_PAGE = ROOT / "cli" / "COMMANDS.md"
GLOSSARY = ROOT / "templates" / "words" / "GLOSSARY.md"
PAGES = (README, COMMANDS_PAGE, ROOT / "jigs" / "JOBFILE.md", GLOSSARY)
BLOCK = re.compile(r"^```console\n(.*?)^```$", re.MULTILINE | re.DOTALL)
LEFT_OUT = "..."
CAT = "cat "
LINK = re.compile(r"(!?)\[[^\]]+\]\(([^)\s]+)\)")


def links(page: Path) -> list[tuple[bool, str]]:
    """Give each link of a page: whether it is a picture, and where it leads."""
    return [(bool(mark), to) for mark, to in LINK.findall(page.read_text(encoding="utf-8"))]


def pictures(page: Path) -> list[Path]:
    """Give the picture files that a page shows."""
    return [(page.parent / to).resolve() for shown, to in links(page) if shown]


def anchors(page: Path) -> set[str]:
    """Give the names by which a page's headings are linked: lower case, spaces as hyphens, other
    signs left out, as the usual writers of Markdown make them."""
    heads = re.findall(r"^#+ (.*)$", _without_blocks(page), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", head.lower()).replace(" ", "-") for head in heads}


def _without_blocks(page: Path) -> str:
    return re.sub(r"(?ms)^```.*?^```$", "", page.read_text(encoding="utf-8"))


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


def printed_by(line: str, shown: str, folder: Path) -> str:
    """Give what a line prints: of `cat` the file, which is made of what is shown if it is not
    there."""
    if not line.startswith(CAT):
        return run(line, folder)
    file = folder / line.removeprefix(CAT)
    if not file.exists():
        file.write_text(shown, encoding="utf-8")
    return file.read_text(encoding="utf-8")
