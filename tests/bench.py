"""The budgets, measured: `python tests/bench.py [PYTHON]`. Prints ratios; no test needs them.

Figures drift from machine to machine; the ratios hold. Each is printed beside its budget. Times
are the processor's own, so that a busy machine measures nearly as an idle one.
PYTHON is the interpreter of an environment where the project is installed as its user has it:
the tests' own libraries (numpy) make the units library slower to load.
"""

import gc
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
PYTHON = sys.argv[1] if len(sys.argv) > 1 else sys.executable
# Run as a plain script, tests/ stands first on the path, and its jigs/ hides the real one.
if Path(sys.path[0]).resolve() == ROOT / "tests":
    sys.path[0] = str(ROOT)
JIGSHEET = (PYTHON, "-c", "from cli.main import main; main()")

FRONT = """
  [[box.front]]
  kind = "drawer"
  height = "6"
  [[box.front]]
  kind = "door"
  hinged = "left"
"""
BOX = """
[[box]]
id = "B{number}"
wall = "north"
kind = "base"
width = "{width} mm"
height = "30 1/2"
depth = "23"
"""
PARTS_OF_BOX = 14
"""Parts with a label, at the least: two fronts, a drawer box of four pieces, seven of the box."""
HEAD = 'schema = 1\nname = "A long terrace"\nunits = "in"\n'


def environment() -> dict[str, str]:
    # A shell that keeps Python from writing compiled modules would time the compiler.
    kept = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
    return {**kept, "PYTHONPATH": str(ROOT)}


def spend(words: tuple[str, ...], cwd: Path) -> tuple[float, float]:
    """Run a whole process; give the processor's time it took, in seconds, and its memory at
    most, in MB. A process that fails ends the bench: it would measure as a fast one."""
    process = subprocess.Popen(
        words, cwd=cwd, env=environment(), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise SystemExit(f"{' '.join(words)}: ended with {process.returncode}")
    return used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def times_click(words: tuple[str, ...], cwd: Path, runs: int) -> tuple[float, float]:
    """Run a process and `import click` in turn, so that both meet the same machine; give the ratio
    of their medians and that of their least times."""
    both = ((PYTHON, "-c", "import click"), words)
    for each in both:  # the first run compiles
        spend(each, cwd)
    click, ours = zip(
        *(tuple(spend(each, cwd)[0] for each in both) for _ in range(runs)), strict=True
    )
    return statistics.median(ours) / statistics.median(click), min(ours) / min(click)


def say(what: str, measured: float, budget: str) -> None:
    print(f"{what:<58} {measured:8.2f}   budget {budget}", flush=True)


def write_job(folder: Path, fronts: int) -> Path:
    """Write a job of so many fronts, two a box, no two boxes alike."""
    path = folder / f"job-{fronts}.toml"
    boxes = (BOX.format(number=n, width=450 + n % 97) + FRONT for n in range(fronts // 2))
    path.write_text(HEAD + "".join(boxes), encoding="utf-8")
    return path


def measure_start_up(folder: Path) -> None:
    subprocess.run([*JIGSHEET, "demo", "demo"], cwd=folder, env=environment(), check=True,
                   capture_output=True)  # fmt: skip
    job = "demo/job.toml"
    for words, runs, budget in (
        (("--version",), 15, "1.1 x import click"),
        (("holes", job), 9, "4 x"),
        (("pack", job), 11, "30 x"),
    ):
        medians, least = times_click((*JIGSHEET, *words), folder, runs)
        say(f"jigsheet {' '.join(words)}, times import click: medians", medians, budget)
        say("  least times", least, budget)


THROUGHPUT_ROUNDS = 5
"""So often the sheets are made, each time by a fresh process that remembers none."""


def draw_sheets(job: Path) -> tuple[int, float, float, float]:
    """Make the sheets of a job, from its file to the PDF, then write their pages once more, and
    draw the same marks with the bare library; give how many pages, and the seconds of each."""
    from cli.main import LOOKED_THROUGH
    from jigs.layout.layout import lay_out
    from jigs.reading.inputs import read_job
    from templates.binding.jobsheets import make_sheets
    from templates.page.paper import PAPERS
    from templates.writers.pdf import write_pdf
    from tests.bare import draw_bare

    gc.set_threshold(LOOKED_THROUGH)  # as the command sets it; the bare library has it too
    started = time.process_time()
    sheets = make_sheets(lay_out(read_job(job)), PAPERS["common"])
    write_pdf(sheets.pages)
    ours = time.process_time() - started
    pages = list(sheets.pages)
    started = time.process_time()
    write_pdf(pages)
    written = time.process_time() - started
    return len(pages), ours, written, draw_bare(pages)


def measure_throughput(folder: Path) -> None:
    """Measure sheets from the job file to the PDF against the bare library, to which the same marks
    are handed: what is read, laid out and planned is ours alone. One run strays by a fifth."""
    job = write_job(folder, 1000)
    with ProcessPoolExecutor(1, get_context("spawn"), max_tasks_per_child=1) as pool:
        runs = list(pool.map(draw_sheets, [job] * THROUGHPUT_ROUNDS))
    (pages, *_), *_ = runs
    ours, written, bare = (statistics.median(run[row] for run in runs) for row in (1, 2, 3))
    print(f"1000 fronts, {pages} pages: {pages / ours:.0f} pages/s, bare library "
          f"{pages / bare:.0f}; medians of {THROUGHPUT_ROUNDS}")  # fmt: skip
    say("sheets of 1000 fronts, part of the bare library's pages/s", bare / ours, "at least 1")
    each = [f"{bare / ours:.2f}" for _, ours, _, bare in runs]
    print(f"  run by run: {', '.join(each)}")
    say("  the writer alone, the same pages handed to it", bare / written, "at least 1")


def measure_labels(folder: Path) -> None:
    """Measure the labels of all parts against the bare library drawing the same marks."""
    from jigs.cutlist.cutlist import cut_list
    from jigs.layout.layout import lay_out
    from jigs.reading.inputs import read_job
    from templates.labels.labellist import list_labels
    from templates.labels.stocks import STOCKS
    from templates.writers.pdf import write_pdf
    from tests.bare import draw_bare
    from tests.templates.labelpages import label_pages

    started = time.process_time()
    layout = lay_out(read_job(write_job(folder, 1000)))
    words = list_labels(layout, cut_list(layout), ())
    pages = label_pages(layout, words, STOCKS["letter-2x5"])
    write_pdf(pages)
    ours = time.process_time() - started
    bare = draw_bare(pages)
    print(f"1000 fronts, {len(words)} labels: {len(words) / ours:.0f} labels/s, bare library "
          f"{len(words) / bare:.0f}")  # fmt: skip
    say("labels of 1000 fronts, part of the bare library's labels/s", bare / ours, "at least 1")


def measure_growth(folder: Path) -> None:
    """Measure whole processes, so that the memory is that of one job alone."""
    for command in ("check", "holes", "parts", "order"):
        costs = measure_fronts(folder, command, (100, 10_000))
        say(f"{command}: cost a front, 10000 against 100", costs[10_000] / costs[100], "0.9 to 1.1")
    for command in ("sheets", "stations"):
        costs = measure_fronts(folder, command, (100, 1000, 10_000))
        for few, many in ((100, 1000), (1000, 10_000)):
            ratio = costs[many] / costs[few]
            say(f"{command}: cost a front, {many} against {few}", ratio, "at most 1.1")


ROUNDS = 8
"""So often the short jobs are run before the long ones, and as often after them."""


def measure_fronts(folder: Path, command: str, sizes: tuple[int, ...]) -> dict[int, float]:
    """Give the time that each front takes in jobs of so many, in seconds, without what the command
    takes for a job of two; print it, and the memory at most.

    A long job meets whatever else the machine does meanwhile: so the short ones are run on both
    sides of it, and the median counts."""
    jobs = {fronts: write_job(folder, fronts) for fronts in (2, *sizes)}
    short = [fronts for fronts in jobs if fronts <= 100]
    long = [fronts for fronts in jobs if fronts > 100]
    spent: dict[int, list[tuple[float, float]]] = {fronts: [] for fronts in jobs}
    for fronts in (*short * ROUNDS, *long, *short * ROUNDS):
        spent[fronts].append(spend((*JIGSHEET, command, str(jobs[fronts])), folder))
    taken = {fronts: statistics.median(time for time, _ in runs) for fronts, runs in spent.items()}
    costs: dict[int, float] = {}
    for fronts in sizes:
        memory = max(memory for _, memory in spent[fronts])
        costs[fronts] = (taken[fronts] - taken[2]) / (fronts - 2)
        each = f"{costs[fronts] * 1000:.2f} ms a front"
        say(f"{command} of {fronts} fronts: {each}; MB at most", memory, memory_budget(fronts))
    return costs


def memory_budget(fronts: int) -> str:
    """Give the memory that a job of so many fronts may take, MB."""
    return "200" if fronts <= 1000 else "250"


def measure_scan(folder: Path) -> None:
    """Measure a server's own time, to its address and for each page of a part."""
    from http.client import HTTPConnection

    from tests.served import served

    parts, asked = 1000, 60
    job = write_job(folder, 2 * (parts // PARTS_OF_BOX))
    with served(folder, job.name, "--port", "0", python=PYTHON) as server:
        begun = processor_of(server.process.pid)
        line = HTTPConnection("127.0.0.1", server.port)
        for number in range(asked):
            line.request("GET", f"/p/B{number % 50}-2?k={server.key}")
            answer = line.getresponse()
            if answer.read() and answer.status != 200:
                raise SystemExit(f"B{number % 50}-2: answered with {answer.status}")
        line.close()
        taken = (processor_of(server.process.pid) - begun) / asked
    say(f"serve: s to its address, {parts} parts", begun, "1.00")
    say("serve: ms for a part's page", taken * 1000, "30")


def measure_gaps(folder: Path) -> None:
    """Measure the gap budget of 1000 fronts, with 100,000 kitchens drawn."""
    job = write_job(folder, 1000)
    seconds, memory = spend((*JIGSHEET, "gaps", job.name, "--format", "json"), folder)
    say("gaps: s for 1000 fronts and 100,000 kitchens", seconds, "12")
    say("gaps: MB at most", memory, "300")


def processor_of(process: int) -> float:
    """Give the processor's time that a process has taken till now, s (proc(5), from memory)."""
    fields = Path(f"/proc/{process}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def main() -> None:
    from cli.main import LOOKED_THROUGH

    # What is measured within this process has the collector as the command sets it, the bare
    # library too.
    gc.set_threshold(LOOKED_THROUGH)
    # Labels come last: a child's peak of memory begins with its parent's.
    parts: tuple[Callable[[Path], None], ...] = (
        measure_start_up,
        measure_scan,
        measure_growth,
        measure_gaps,
        measure_throughput,
        measure_labels,
    )
    with tempfile.TemporaryDirectory() as folder:
        for part in parts:
            part(Path(folder))


if __name__ == "__main__":
    main()
