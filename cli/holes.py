"""`jigsheet holes`: every hole, in words, for a spreadsheet, or as data."""

from typing import Literal

from cli.jobs import Asked
from cli.manners import command
from cli.options import format_option, only_option, output_option, with_job
from cli.output import write_text
from cli.selection import narrow, select


@command(
    ("Every hole of one door", "holes kitchen.toml --only B1-2"),
    (
        "The holes of a wall, for a spreadsheet",
        "holes kitchen.toml --only north --format csv -o north.csv",
    ),
    ("A front list alone, with no job file", "holes fronts.csv --units in"),
)
@with_job
@only_option
@format_option(
    ("text", "csv", "json"),
    "Tables for people, one hole a line for a spreadsheet, or everything as data.",
)
@output_option("-")
def holes(
    asked: Asked,
    only: tuple[str, ...],
    form: Literal["text", "csv", "json"],
    output: str,
) -> None:
    """List every hole of JOB with its place, diameter and depth."""
    from templates.lists.holelist import holes_csv, holes_json, holes_text

    whole = asked.lay_out(output)
    layout = narrow(whole, select(whole, only))
    text = {"text": holes_text, "csv": holes_csv, "json": holes_json}[form](layout)
    write_text(output, text, sources=layout.job.sources)
    asked.end(layout)
