"""Whether a change leaves every byte as it was: the demo, the sound kitchens, the planted mistakes
and 60 random kitchens, each through every command that writes, one hash a file.

`python -m tests.samebytes > before`, the change, `python -m tests.samebytes > after`, then
`diff before after`. With `--keep DIR` the files themselves stay in DIR, to be looked at.
"""

import argparse
import contextlib
import hashlib
import os
import tempfile
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from random import Random

from click.testing import CliRunner

from cli.main import main as jigsheet
from tests.jobtexts import HEAD

ROOT = Path(__file__).parents[1]
RANDOM_KITCHENS = 60
COMMANDS = (
    "check job.toml -o check.txt",
    "pack job.toml -o pack",
    "holes job.toml --format json -o holes.json",
    "holes job.toml --format text -o holes.txt",
    "sheets job.toml --format json -o sheets.json",
    "sheets job.toml --format dxf -o dxf",
    "sheets job.toml --format outlines -o outlines",
    "parts job.toml --format json -o parts.json",
    "parts job.toml --format text -o parts.txt",
    "order job.toml --format json -o order.json",
    "order job.toml --format text -o order.txt",
    "elevations job.toml --format svg -o walls",
)
"""What is run in each job's folder, its messages kept too."""


# --- random kitchens --------------------------------------------------------------------------

NAMES = ("Net loft", "Küche Łódź", "Κουζίνα", "Кухня")
KINDS = ("base", "base", "drawer", "sink", "wall", "tall", "base", "open")
OWN_HARDWARE = """
[hinge.half]
like = "cup35-half"
constant = 5.5
plates = [0, 3]
[hinge.inset]
like = "cup35-inset"
[slide.beside]
like = "sidemount-450"
[pull.button]
like = "knob"
"""


def write_kitchen(seed: int) -> str:
    """Write a job file of one to five boxes: all kinds, wide and narrow, sound or not."""
    random = Random(seed)
    walls = random.sample(("north", "east", "Süd"), random.randint(1, 2))
    head = HEAD.replace('"Trial"', f'"{random.choice(NAMES)} {seed}"')
    if random.random() < 0.3:
        head = head.replace('confirmed = "measured"\n', "", random.randint(1, 3))
    text = [head, OWN_HARDWARE]
    for number in range(1, random.randint(len(walls), 5) + 1):
        text += _write_box(random, f"B{number}", walls[number % len(walls)])
    for wall in walls:
        text.append(f'[[wall]]\nname = "{wall}"\nleft = "wall"\nleft_filler = 45')
        text += [f"ceiling = {random.randint(2300, 2700)}"] if random.random() < 0.5 else []
        text += ["counter = 910\ncounter_thickness = 38"] if random.random() < 0.5 else []
    return "\n".join(text) + "\n"


def _write_box(random: Random, name: str, wall: str) -> Iterator[str]:
    kind = random.choice(KINDS)
    height = {"tall": (1900, 2340), "wall": (500, 1000)}.get(kind, (600, 800))
    depth = (280, 360) if kind == "wall" else (540, 640)
    columns = random.choice((1, 1, 1, 2))
    width = random.randint(320, 640) * columns
    yield f'[[box]]\nid = "{name}"\nkind = "{kind}"\nwall = "{wall}"\nwidth = {width}'
    yield f"height = {random.randint(*height)}\ndepth = {random.randint(*depth)}"
    inset = random.random() < 0.1
    if inset:
        yield 'overlay = "inset"'
    if columns > 1:
        yield "columns = [{share = 1}, {share = 1.5}]"
    if random.random() < 0.12:
        yield "assembled = true"
    if random.random() < 0.12 and kind == "base":
        yield "legs = 100"
    if random.random() < 0.1:
        yield f"built = true\nmeasured_width = [{width}, {width + 1}]"
    if random.random() < 0.15:
        yield 'panel_left = "flush"'
    if random.random() < 0.3:
        yield f"shelf = [{{at = {random.randint(200, 400)}}}, {{adjustable = true}}]"
    if random.random() < 0.2 and kind in ("base", "tall"):
        yield "rollout = [{at = 60, height = 120}]"
    for column in range(1, columns + 1):
        yield from _write_fronts(random, kind, column, inset)


def _write_fronts(random: Random, kind: str, column: int, inset: bool) -> Iterator[str]:
    doors = ("door", "pair", "lift") if kind == "wall" else ("door", "pair", "door", "pullout")
    rows = ["drawer"] * random.randint(2, 4) if kind == "drawer" else [random.choice(doors)]
    if kind in ("base", "sink", "tall") and random.random() < 0.6:
        rows.insert(0, random.choice(("drawer", "false-front", "opening", "drawer")))
    for place, row in enumerate(rows):
        yield f'[[box.front]]\nkind = "{row}"\ncolumn = {column}'
        if place < len(rows) - 1:
            yield f"height = {random.randint(110, 220)}"
        if row in ("door", "pair"):
            yield f'hinge = "{"inset" if inset else random.choice(("mine",) * 9 + ("half",))}"'
        if row == "door" and random.random() < 0.95:
            yield f'hinged = "{random.choice(("left", "right"))}"'
        if row in ("drawer", "pullout") and random.random() < 0.2:
            yield 'slide = "beside"'
        if random.random() < 0.15:
            yield f"stile = {random.randint(50, 80)}\npanel = 9"
        if random.random() < 0.15:
            yield 'pull = "button"'
        if random.random() < 0.08:
            yield "reveal_left = 5"
        if row != "opening" and (random.random() < 0.08 or row == "lift"):
            yield "hole = [{x = 40, y = 50, diameter = 8, depth = 11, face = 'back'}]"


# --- every command, every file ----------------------------------------------------------------


def list_jobs() -> dict[str, dict[str, str | bytes]]:
    """Give every job by its name: the files of its folder."""
    from tests.mistakes.bores import BORES
    from tests.mistakes.room import ROOM
    from tests.mistakes.sizes import SIZES

    found: dict[str, dict[str, str | bytes]] = {
        "demo": {p.name: p.read_bytes() for p in (ROOT / "templates/demo").glob("*.[tc]*[lv]")}
    }
    for path in sorted((ROOT / "tests/sound").glob("*.toml")):
        found[f"sound-{path.stem}"] = {"job.toml": path.read_bytes()}
    for place, row in enumerate((*SIZES, *BORES, *ROOM)):
        if row.file == "job.toml":
            found[f"mistake-{place:02}"] = {"job.toml": row.job}
    for seed in range(RANDOM_KITCHENS):
        found[f"random-{seed:02}"] = {"job.toml": write_kitchen(seed)}
    return found


def run_job(folder: Path, files: dict[str, str | bytes]) -> list[str]:
    """Run every command on one job in an empty folder; give a line for each file there."""
    folder.mkdir(parents=True)
    for name, content in files.items():
        (folder / name).write_bytes(content.encode() if isinstance(content, str) else content)
    with contextlib.chdir(folder):
        for number, command in enumerate(COMMANDS):
            ended = CliRunner().invoke(jigsheet, command.split())
            said = f"exit {ended.exit_code}\n{ended.output}"
            Path(f"said-{number:02}.txt").write_text(said, encoding="utf-8")
    return [
        f"{hashlib.sha256(path.read_bytes()).hexdigest()[:16]}  {path.relative_to(folder.parent)}"
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    ]


def main() -> None:
    """Print a hash and a name for each file of each job."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--keep", type=Path, help="an empty folder for the files themselves")
    parser.add_argument("--only", default="", help="jobs whose name begins so")
    asked = parser.parse_args()
    jobs = {name: files for name, files in list_jobs().items() if name.startswith(asked.only)}
    with tempfile.TemporaryDirectory() as aside, ProcessPoolExecutor(os.cpu_count()) as pool:
        room = (asked.keep or Path(aside)).resolve()
        for lines in pool.map(run_job, [room / name for name in jobs], jobs.values()):
            print("\n".join(lines), flush=True)


if __name__ == "__main__":
    main()
