"""`jigsheet order`: what is to be bought, for people, on paper, for a spreadsheet, or as data."""

from typing import Literal

import click

from cli.jobs import Asked
from cli.manners import Choice, command
from cli.options import (
    output_by_form,
    paper_for_pdf,
    paper_option,
    with_job,
)
from cli.output import write_bytes, write_text
from cli.terminal import mention, tell


@command(
    ("What to buy", "order kitchen.toml"),
    ("The same as a workbook", "order kitchen.toml --format xlsx"),
    ("The fronts alone, for their supplier", "order kitchen.toml --fronts -o fronts-to-order.csv"),
)
@with_job
@click.option(
    "--format",
    "form",
    type=Choice(["text", "pdf", "csv", "json", "xlsx"]),
    help="Tables for people, the same on paper with boxes to tick, rows for a spreadsheet, data, "
    "or a workbook.  [default: text]",
)
@paper_option
@click.option(
    "--fronts",
    is_flag=True,
    help="Only the fronts, as a CSV list for the supplier.",
)
@output_by_form("standard output; pdf, xlsx: order.pdf, order.xlsx")
def order(
    asked: Asked,
    form: Literal["text", "pdf", "csv", "json", "xlsx"] | None,
    paper: str,
    fronts: bool,
    output: str | None,
) -> None:
    """List what is to be bought for JOB.

    Fronts, drawer boxes, hardware, screws, band, paint.
    """
    from jigs.checks.rubbing import before_order
    from jigs.order.buying import make_order
    from templates.lists.orderlist import order_csv, order_json, order_sheets
    from templates.lists.ordertables import order_listing, order_text
    from templates.lists.supplierlist import fronts_csv
    from templates.words.orderwords import left_out_words

    if fronts and form not in (None, "csv"):
        raise click.UsageError(f"--fronts is a list as CSV ({form} given); leave --format out.")
    paper_for_pdf(form)
    target = output or (f"order.{form}" if form in ("pdf", "xlsx") else "-")
    layout, cut = asked.cut(target)
    layout = before_order(layout)
    needed = make_order(layout, cut)
    sources = layout.job.sources
    if form == "pdf":
        from cli.drawing import draw_lists, tell_lists

        data, pages = draw_lists(layout, [order_listing(needed, layout.job)], paper)
        write_bytes(target, data, sources=sources)
        tell_lists(target, pages)
    elif form == "xlsx":
        from templates.lists.workbook import write_workbook

        sheets = order_sheets(needed, layout.job)
        write_bytes(target, write_workbook(sheets), sources=sources)
        if target != "-":
            mention(f"{target}: {', '.join(sheets)}.")
    else:
        writers = {"csv": order_csv, "json": order_json, "text": order_text}
        write = fronts_csv if fronts else writers[form or "text"]
        write_text(target, write(needed, layout.job), sources=sources)
        if fronts and (left_out := left_out_words(needed)):
            tell(f"{left_out}.")
    if needed.unbuilt:
        tell(
            f"Not marked as built and measured: {', '.join(needed.unbuilt)}. Order fronts from "
            "finished boxes, not from the plan.",
        )
    asked.end(layout)
