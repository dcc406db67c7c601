"""`jigsheet labels`: a label for every part, on sheets of labels."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click
from msgspec.structs import replace

from cli.changedsince import changes_since, nothing_stale, stale_among
from cli.failures import Failure
from cli.jobs import Asked
from cli.labelstock import check_start, find_stock, raster_for
from cli.manners import Choice, command
from cli.options import (
    changed_option,
    dots_option,
    only_option,
    output_option,
    printer_option,
    stock_option,
    with_job,
)
from cli.output import write_bytes
from cli.printers import find_printer
from cli.selection import narrow, select
from cli.terminal import mention, tell, typed_line

if TYPE_CHECKING:
    from cli.serving.links import Link
    from jigs.given.labelstock import Stock
    from templates.labels.labelwords import LabelWords
    from templates.page.raster import Raster


@command(
    ("A label for every part", "labels kitchen.toml"),
    (
        "The rest of a sheet that was begun, from its sixth place",
        "labels kitchen.toml --only B1 --start 6",
    ),
    (
        "The pieces in the order of the saw, on another stock",
        "labels kitchen.toml --for pieces --order cut --stock a4-3x7",
    ),
)
@with_job
@only_option
@changed_option
@stock_option
@printer_option
@dots_option
@click.option(
    "--start",
    type=click.IntRange(min=1),
    default=1,
    show_default=True,
    metavar="N",
    help="First free place on a sheet that was begun, counted row by row from the top left.",
)
@click.option(
    "--copies",
    type=click.IntRange(1, 99),
    default=1,
    show_default=True,
    metavar="N",
    help="Labels for each part, one after the other.",
)
@click.option(
    "--for",
    "kinds",
    type=Choice(["all", "pieces", "fronts"]),
    default="all",
    show_default=True,
    help="Labels for every part, for what the boxes are built of (drawer boxes too), or for the "
    "fronts.",
)
@click.option(
    "--order",
    type=Choice(["box", "cut"]),
    default="box",
    show_default=True,
    help="Pieces in the order of assembly, wall by wall and box by box, or as they are cut: by "
    "thickness, then length.",
)
@click.option(
    "--payload",
    type=Choice(["text", "link"]),
    default="text",
    show_default=True,
    help="What a symbol says: its own text, which any telephone shows without a network, or the "
    "address of its part's page.",
)
@click.option(
    "--base",
    metavar="URL",
    help="What the links begin with, before /p/ID; else where 'jigsheet serve JOB --lan' is.",
)
@click.option(
    "--without-key",
    is_flag=True,
    help="Leave the key of the pages out of the links: for pages that are not served by jigsheet.",
)
@output_option("labels.pdf")
def labels(
    asked: Asked,
    only: tuple[str, ...],
    since: Path | None,
    stock: str | None,
    printer: str | None,
    dots: int | None,
    start: int,
    copies: int,
    kinds: Literal["all", "pieces", "fronts"],
    order: Literal["box", "cut"],
    payload: Literal["text", "link"],
    base: str | None,
    without_key: bool,
    output: str,
) -> None:
    """Print a label with a QR code for every part of JOB.

    The label of a part held back says HOLD. With a stock of cup tags it prints one for every door
    that has a cup.
    """
    from cli.drawing import draw_labels, draw_tags, tell_unprintable
    from jigs.bench.stations import plan_stations
    from jigs.cutlist.cutlist import cut_list
    from jigs.layout.layout import as_printed
    from templates.labels.labellist import list_labels

    base = _read_links(payload, base, without_key)
    layout = asked.lay_out(output)
    labels_of = find_stock(stock, layout.job)
    check_start(labels_of, start)
    raster = raster_for(labels_of, find_printer(printer, layout.job), dots)
    if labels_of.bore is not None and (kinds, order) not in (("all", "box"), ("fronts", "box")):
        raise click.UsageError(
            "--for pieces and --order are for labels; tags go into the cups of doors."
        )
    if labels_of.bore is not None and payload == "link":
        raise click.UsageError("--payload link is for labels: a tag is too small for a link.")
    pieces = cut_list(layout)
    chosen = select(layout, only, more=(piece.id for piece in pieces))
    stale = None
    if since is not None:
        changes = changes_since(since, layout)
        chosen = stale = stale_among(changes, changes.labels, chosen)
        if not stale:
            tell(nothing_stale(since, only or None))
            asked.end(narrow(layout, frozenset()))
    if labels_of.bore is not None:
        data, count, words = draw_tags(
            layout, labels_of, raster, start=start, copies=copies, only=chosen
        )
        told = f"{output}: tags for {count} door{'s' * (count != 1)}. Print at 100 %, cut out."
    else:
        words = []
        printed = as_printed(layout)
        stations = plan_stations(printed)
        listed = list_labels(printed, pieces, stations, order=order, kinds=kinds, only=chosen)
        if stale is not None:  # a front's name chooses what stands behind it too
            listed = tuple(words for words in listed if words.part in stale)
        if not listed:
            raise Failure(f"No label: {_none_of(kinds)}. No file is written.")
        if payload == "link":
            link = _find_link(asked, layout.job.name, base, without_key)
            listed = tuple(replace(words, link=link.of(words.part)) for words in listed)
            served = "" if base else f"; {typed_line('serve', asked.path, '--lan')} answers there"
            words = [
                f"Each symbol leads to {link.base}/p/ and its part's ID{served}.",
                *_hard_to_read(listed, labels_of, raster, link.base),
            ]
        data, pages = draw_labels(printed, listed, labels_of, raster, start=start, copies=copies)
        count = len(listed) * copies
        many = f"{count} label{'s' * (count != 1)}"
        if not labels_of.roll:
            many += f" on {pages} sheet{'s' * (pages != 1)}"
        told = f"{output}: {many}. Print at 100 % on {labels_of.name} labels."
    if data:
        write_bytes(output, data, sources=layout.job.sources)
    else:
        tell("No door has a cup for such a tag. No file is written.")
    if output != "-" and data:
        mention(told)
    for line in words:
        tell(line)
    concerned = narrow(layout, chosen)
    tell_unprintable(concerned)
    asked.end(concerned)


def _read_links(payload: str, base: str | None, without_key: bool) -> str | None:
    """Check what is said about links."""
    from cli.linkbase import read_base

    if payload != "link" and (base is not None or without_key):
        option = "--base" if base is not None else "--without-key"
        raise click.UsageError(f"{option} is for links: add --payload link.")
    if without_key and base is None:
        raise click.UsageError(
            "--without-key wants the address of your own pages, --base URL: those that jigsheet "
            "serves ask for the key."
        )
    if base is None:
        return None
    try:
        return read_base(base)
    except ValueError as error:
        raise click.BadParameter(f"{error}.", param_hint="'--base'") from error


def _find_link(asked: Asked, name: str, base: str | None, without_key: bool) -> "Link":
    """Give where the links lead, and the key that is kept beside the job."""
    from cli.serving.links import Link, printed_link
    from jigs.reading.stream import is_stream

    if base is not None and without_key:
        return Link(base, "")
    if is_stream(asked.path):
        raise Failure(
            f"'{asked.path}' is a stream: the key of its pages has no place beside it. Name a "
            "file, or give --base URL --without-key."
        )
    return printed_link(asked.path, name, base)


def _hard_to_read(
    listed: "Sequence[LabelWords]", stock: "Stock", raster: "Raster", base: str
) -> list[str]:
    """Say what is read off a good print alone. Raises Failure where a label has no room for its
    link."""
    from jigs.ground.dotpitch import READ
    from templates.labels.labels import module_on

    modules = [(module_on(words, stock, raster), words) for words in listed]
    if crowded := [words for module, words in modules if module is None]:
        longest = max(crowded, key=lambda words: len(words.link))
        raise Failure(
            f"A link of {len(longest.link)} characters makes too large a symbol for "
            f"{stock.name} labels ({longest.part}; {base} alone has {len(base)}): give a "
            "shorter address with --base, or take a larger stock. No file is written."
        )
    small = sum(module is not None and module < READ for module, _ in modules)
    if not small:
        return []
    return [
        f"{small} of the symbols have modules under {READ:g} mm: they are read off a good print "
        "alone. A shorter address (--base) or a larger stock has larger ones."
    ]


def _none_of(kinds: Literal["all", "pieces", "fronts"]) -> str:
    """Say what the chosen parts have none of."""
    if kinds == "all":
        return "what was chosen has no part"
    return f"what was chosen has no {kinds}; --for all takes every part"
