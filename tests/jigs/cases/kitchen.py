"""Job files of a few lines for the cases of a kitchen, and what comes of them.

All of them stand on hardware that is stated and confirmed, in millimetres: sides 18.3, fronts
19.05, reveals 1.6 (3.2 under the counter), 3.2 between fronts: a box of our own, 18 in wide.
"""

from dataclasses import dataclass
from pathlib import Path

from click.testing import CliRunner

from cli.main import main
from jigs.box.parts import Front, Layout, Side
from jigs.ground.geometry import Hole
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests.jobtexts import HEAD
from tests.readback import read_pages

TS, T, R, TOP, G = 18.3, 19.05, 1.6, 3.2, 3.2
"""Side, front, reveal, top reveal, gap between fronts; mm."""
WB, HB, DB = 457.2, 774.7, 584.2
"""The golden box; mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What `jigsheet check` said of a job, in one line of words, and its exit status."""

    status: int
    text: str


def box(
    *fronts: str,
    name: str = "B1",
    kind: str = "base",
    width: float = WB,
    height: float = HB,
    depth: float = DB,
    floor: float = 100,
    more: str = "",
) -> str:
    """Write a box of the north wall, its fronts from the top, each the body of its table."""
    rows = "".join(f"[[box.front]]\n{front}\n" for front in fronts)
    return (
        f'[[box]]\nid = "{name}"\nkind = "{kind}"\nwall = "north"\nwidth = {width}\n'
        f"height = {height}\ndepth = {depth}\nabove_floor = {floor}\n{more}\n{rows}"
    )


def job(*boxes: str, head: str = HEAD, **changed: str) -> str:
    """Write a job of these boxes; `changed` are lines of its head by key (the first of that
    name): `plates="[0]"`."""
    lines = head.splitlines()
    for key, value in changed.items():
        places = [n for n, line in enumerate(lines) if line.startswith(f"{key} =")]
        assert places, key
        lines[places[0]] = f"{key} = {value}"
    return "\n".join([*lines, *boxes])


def lay(folder: Path, *boxes: str, **changed: str) -> Layout:
    """Read a job of these boxes from its file, and lay it out."""
    path = folder / "job.toml"
    path.write_text(job(*boxes, **changed), encoding="utf-8")
    return lay_out(read_job(path))


def check(folder: Path, *boxes: str, **changed: str) -> Told:
    """Run `jigsheet check` on a job of these boxes."""
    path = folder / "job.toml"
    path.write_text(job(*boxes, **changed), encoding="utf-8")
    result = CliRunner().invoke(main, ["check", str(path)], prog_name="jigsheet")
    assert result.exception is None or isinstance(result.exception, SystemExit)
    return Told(status=result.exit_code, text=" ".join(result.output.split()))


def page_words(folder: Path, *boxes: str, only: str, **changed: str) -> list[str]:
    """Print the sheets of a part or a box, and read the words of each page."""
    path, out = folder / "job.toml", folder / "sheets.pdf"
    path.write_text(job(*boxes, **changed), encoding="utf-8")
    words = ["sheets", str(path), "--only", only, "-o", str(out)]
    result = CliRunner().invoke(main, words, prog_name="jigsheet")
    assert result.exit_code == 0, result.output
    return [page.text for page in read_pages(out.read_bytes())]


def printed(folder: Path, *boxes: str, only: str, **changed: str) -> str:
    """Print the sheets of a part or a box, and read their words."""
    return " ".join(page_words(folder, *boxes, only=only, **changed))


def front(layout: Layout, name: str) -> Front:
    """Find a front by its ID."""
    return next(each for each in layout.fronts if each.id == name)


def side(layout: Layout, board: str) -> Side:
    """Find a drilled face by its board's ID."""
    return next(each for each in layout.sides if each.board == board)


def holes(part: Front | Side, purpose: str) -> list[Hole]:
    """Give a part's holes of one purpose, from the bottom up."""
    return sorted((h for h in part.holes if h.purpose == purpose), key=lambda h: (h.y, h.x))


def heights(part: Front | Side, purpose: str) -> list[float]:
    """Give the heights of a part's holes of one purpose, each once, from the bottom up."""
    return sorted({round(hole.y, 6) for hole in holes(part, purpose)})


def across(part: Front | Side, purpose: str) -> list[float]:
    """Give the places across of a part's holes of one purpose, each once, from the left."""
    return sorted({round(hole.x, 6) for hole in holes(part, purpose)})


def codes(layout: Layout, part: str) -> set[str]:
    """Give the codes of the findings at a part."""
    return {problem.code for problem in layout.problems if problem.part == part}
