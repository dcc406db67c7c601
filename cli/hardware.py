"""`jigsheet hardware`: the hardware records, as a list, drawn, or measured at the bench."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from cli.completing import offer_records
from cli.manners import command
from cli.options import paper_option, printer_option
from cli.output import guard, write_bytes, write_text
from cli.printers import find_paper
from cli.terminal import mention, tell

if TYPE_CHECKING:
    from jigs.given.confirming import Record
    from jigs.given.job import Job
    from templates.page.paper import Paper


@command(
    ("Which records there are", "hardware"),
    ("What the letters of one mean", "hardware undermount-533"),
    ("Gauges and blanks, to take your own numbers", "hardware --bench"),
    ("A record of your own job", "hardware runner --job kitchen.toml"),
)
@click.argument("name", metavar="[NAME]", required=False, shell_complete=offer_records)
@click.option(
    "--job", metavar="JOB", type=click.Path(path_type=Path), help="Take the records of JOB as well."
)
@click.option(
    "--bench", is_flag=True, help="Draw the bench sheet: gauges at full scale, blanks to fill."
)
@paper_option
@printer_option
@click.option(
    "-o",
    "--output",
    metavar="FILE",
    help="Where to write a drawing; - for standard output.  [default: NAME.pdf, bench.pdf]",
)
def hardware(
    name: str | None,
    job: Path | None,
    bench: bool,
    paper: str,
    printer: str | None,
    output: str | None,
) -> None:
    """List the hardware records, or draw one with its letters.

    NAME is a record; its drawing shows what each letter measures.
    """
    if bench:
        if name is not None or job is not None:
            raise click.UsageError("--bench goes without NAME and --job: it is for any hardware.")
        _draw_bench(find_paper(paper, printer), output or "bench.pdf")
        return
    from templates.words.hardwarewords import list_text, record_text

    read = _read(job)
    records, sources = find_records(read), read.sources if read else ()
    if name is None:
        write_text(output or "-", list_text(records.values()), sources=sources)
        return
    from jigs.ground.nearest import suggest_record
    from templates.hardware.hardwaredraw import STAND_IN, Boards, hardware_page
    from templates.writers.pdf import write_pdf

    record = records.get(name)
    if record is None:
        near = suggest_record(name, records)
        raise click.BadParameter(f"no record is called {name!r}; {near}", param_hint="'NAME'")
    target = output or f"{name}.pdf"
    guard(target, sources)
    sheet = find_paper(paper, printer)
    boards = Boards(material=read.material, reveal=read.reveal) if read else STAND_IN
    page = sheet.scaled(hardware_page(record, sheet, boards))
    data = write_pdf([page], title=f"Hardware: {name}")
    write_bytes(target, data, sources=sources)
    if target == "-":
        tell(record_text(record), nl=False)
    else:
        write_text("-", record_text(record), sources=())
        mention(f"{target}: print at 100 %; measure the bars first.")


def _draw_bench(paper: "Paper", target: str) -> None:
    from templates.hardware.bench import bench_pages
    from templates.writers.pdf import write_pdf

    pages = [paper.scaled(page) for page in bench_pages(paper)]
    write_bytes(target, write_pdf(pages, title="Bench sheet"), sources=())
    if target != "-":
        mention(f"{target}: {len(pages)} pages. Print at 100 %; measure the bars first.")


def _read(path: Path | None) -> "Job | None":
    from jigs.reading.inputs import read_job

    return None if path is None else read_job(path, None)


def find_records(job: "Job | None") -> dict[str, "Record"]:
    """Give the records by name, the job's own first."""
    from jigs.given.catalogue import generic_hinges, generic_pulls, generic_slides

    own: dict[str, Record] = {**job.hinges, **job.slides, **job.pulls} if job else {}
    return {**own, **generic_hinges(), **generic_slides(), **generic_pulls()}
