"""`jigsheet parts`: the cut list, for people, on paper, for a spreadsheet, or as data."""

from typing import TYPE_CHECKING, Literal

from cli.jobs import Asked
from cli.manners import command
from cli.options import (
    format_option,
    only_option,
    output_by_form,
    paper_for_pdf,
    paper_option,
    with_job,
)
from cli.output import write_bytes, write_text

if TYPE_CHECKING:
    from jigs.cutlist.cutlist import PartsList


@command(
    ("What to cut, piece by piece", "parts kitchen.toml"),
    ("The same on paper, with boxes to tick", "parts kitchen.toml --format pdf"),
    ("One box, for a spreadsheet", "parts kitchen.toml --only B1 --format csv -o b1.csv"),
)
@with_job
@only_option
@format_option(
    ("text", "pdf", "csv", "json"),
    "Tables for people, the same on paper with boxes to tick, one piece a line for a "
    "spreadsheet, or everything as data.",
)
@paper_option
@output_by_form("standard output; pdf: parts.pdf")
def parts(
    asked: Asked,
    only: tuple[str, ...],
    form: Literal["text", "pdf", "csv", "json"],
    paper: str,
    output: str | None,
) -> None:
    """List every piece of JOB to be cut.

    Each with its true sizes, edge band, screws and grooves.
    """
    from templates.lists.partslist import parts_csv, parts_json
    from templates.lists.partstables import parts_listing, parts_text

    paper_for_pdf(form)
    target = output or ("parts.pdf" if form == "pdf" else "-")
    chosen = list_parts(asked, only, target)
    sources = chosen.layout.job.sources
    if form == "pdf":
        from cli.drawing import draw_lists, tell_lists

        data, pages = draw_lists(chosen.layout, [parts_listing(chosen)], paper)
        write_bytes(target, data, sources=sources)
        tell_lists(target, pages)
    else:
        text = {"text": parts_text, "csv": parts_csv, "json": parts_json}[form](chosen)
        write_text(target, text, sources=sources)
    asked.end(chosen.layout)


def list_parts(asked: Asked, only: tuple[str, ...], target: str) -> "PartsList":
    """Cut JOB into its pieces, and choose those that --only names."""
    from cli.selection import narrow, select
    from jigs.cutlist.cutlist import choose_parts

    layout, cut = asked.cut(target)
    names = select(layout, only, more=(piece.id for piece in cut.pieces))
    return choose_parts(narrow(layout, names), cut, names)
