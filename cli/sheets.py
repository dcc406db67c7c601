"""`jigsheet sheets`: the drilling sheets, to be printed at 100 %."""

from collections.abc import Collection
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from cli.changedsince import changes_since, nothing_stale, stale_among
from cli.jobs import Asked
from cli.manners import command
from cli.options import (
    changed_option,
    each_option,
    format_option,
    only_option,
    output_by_form,
    paper_option,
    pilots_option,
    printer_option,
    with_job,
)
from cli.output import write_bytes, write_text
from cli.printers import find_paper
from cli.printing import (
    HELD,
    PRINT,
    find_target,
    refuse_printer,
    write_folder,
    write_pdf_file,
)
from cli.selection import narrow, nothing_drawn, select, select_first
from cli.terminal import mention, tell

if TYPE_CHECKING:
    from jigs.box.parts import Layout
    from templates.page.paper import Paper

SIZE = {
    "svg": PRINT,
    "outlines": "1 unit is 1 mm; each face as its driller sees it.",
    "dxf": "1 unit is 1 mm; each face as its driller sees it.",
}


@command(
    ("One box, part by part", "sheets kitchen.toml --only B1"),
    (
        "One door and one drawer of each hardware, to try on scrap",
        "sheets kitchen.toml --first -o first.pdf",
    ),
    (
        "The hinge edges in one piece, off a plotter's roll",
        "sheets kitchen.toml --strip --paper roll-610",
    ),
    ("Every face for a laser", "sheets kitchen.toml --format dxf -o faces"),
)
@with_job
@only_option
@changed_option
@each_option
@click.option(
    "--first",
    is_flag=True,
    help="Only what it takes to try one door and one drawer of each hardware on scrap.",
)
@click.option(
    "--stick",
    is_flag=True,
    help="The story stick of each family of equal sides instead, and its spacer boards.",
)
@click.option(
    "--strip",
    is_flag=True,
    help="One long template along the hinge edge of doors and the front edge of box sides, in "
    "pieces to join.",
)
@pilots_option
@paper_option
@printer_option
@format_option(
    ("pdf", "json", "svg", "outlines", "dxf"),
    "A file to print, or the cards as data; a folder of pages (svg), or of bare faces at full "
    "size (outlines are SVG).",
)
@output_by_form(
    "sheets.pdf, stick.pdf; json: standard output; sheets-svg, sheets-outlines, sheets-dxf",
    " svg, outlines, dxf: a folder.",
)
def sheets(
    asked: Asked,
    only: tuple[str, ...],
    since: Path | None,
    each: bool,
    first: bool,
    stick: bool,
    strip: bool,
    pilots: bool,
    paper: str,
    printer: str | None,
    form: Literal["pdf", "json", "svg", "outlines", "dxf"],
    output: str | None,
) -> None:
    """Draw the drilling sheets of JOB at full scale."""
    from jigs.bench.firstarticle import trial
    from jigs.layout.layout import as_printed
    from templates.binding.drilled import drilled_parts
    from templates.binding.jobsheets import make_sheets
    from templates.words.costwords import cost_words, no_room_words
    from templates.words.textlines import counted

    if first and (only or since):
        option = "--only" if only else "--changed-since"
        raise click.UsageError(f"--first chooses the parts itself; give it without {option}.")
    if stick and since:
        raise click.UsageError("One stick serves all equal sides: it is drawn whole.")
    if stick:
        _refuse_with_stick(form, first=first, strip=strip, each=each)
    if form in ("outlines", "dxf"):
        _refuse_with_faces(form, strip=strip, each=each, printer=printer)
    target, folder = find_target(form, output, "stick.pdf" if stick else "sheets.pdf")
    layout = asked.lay_out(*(() if folder else (target,)))
    sheet = find_paper(paper, printer, layout.job)
    chosen = select_first(layout) if first else select(layout, only)
    if since is not None:
        changes = changes_since(since, layout)
        stale = stale_among(changes, changes.sheets, chosen)
        if not stale:
            tell(nothing_stale(since, chosen))
            asked.end(narrow(layout, frozenset()))
        chosen = stale
    concerned = narrow(layout, chosen)
    bare = form in ("outlines", "dxf")
    faults: tuple[str, ...] = ()
    printed = as_printed(layout)

    def said(count: int) -> str:
        return f"{counted(count, 'file')}. {SIZE[form]}"

    if stick:
        boards = {side.board for side in concerned.sides}
        _draw_stick(layout, sheet, boards, target)
    elif (chosen or bare) and next(drilled_parts(concerned, chosen, pilots=pilots), None) is None:
        tell(nothing_drawn(concerned))
    elif bare:
        from cli.sheetfiles import face_files

        parts = drilled_parts(trial(printed) if first else printed, chosen, pilots=pilots)
        files = face_files((view for part in parts for view in part.views), form)
        write_folder(target, files, said, layout.job.sources)
    else:
        drawn = make_sheets(
            printed, sheet, only=chosen, first=first, each=each, strip=strip, pilots=pilots
        )
        faults = no_room_words(drawn.no_room, sheet.name)
        if form == "json":
            from templates.binding.sheetdata import sheets_json

            write_text(target, sheets_json(drawn), sources=layout.job.sources)
        elif form == "svg":
            from cli.sheetfiles import page_files

            write_folder(target, page_files(drawn), said, layout.job.sources)
        else:
            from tempfile import SpooledTemporaryFile

            from cli.drawing import draw_sheets, tell_unprintable

            words = cost_words(drawn.cost)
            with SpooledTemporaryFile(HELD) as file:
                draw_sheets(drawn, file)
                write_pdf_file(target, file, words, layout.job.sources)
            tell_unprintable(concerned)
    asked.end(concerned, *faults)


def _refuse_with_stick(form: str, *, first: bool, strip: bool, each: bool) -> None:
    """Say what does not go with a story stick; UsageError."""
    if first or strip or form != "pdf":
        raise click.UsageError("--stick is drawn by itself, as a PDF.")
    if each:
        raise click.UsageError("One stick serves all equal sides: no --each.")


def _refuse_with_faces(form: str, *, strip: bool, each: bool, printer: str | None) -> None:
    """Say what does not go with bare faces, a file for each; UsageError."""
    if each:
        raise click.UsageError(f"--format {form} is a file for each face already: no --each.")
    refuse_printer(form, printer)
    if strip:
        raise click.UsageError(
            f"--strip is drawn on pages; --format {form} has each face in one piece, without it."
        )


def _draw_stick(layout: "Layout", paper: "Paper", boards: Collection[str], target: str) -> None:
    from cli.drawing import draw_sticks
    from templates.words.textlines import counted

    data, pages = draw_sticks(layout, paper, boards)
    if not pages:
        tell("No side among these has a hole: there is nothing for a stick.")
        return
    write_bytes(target, data, sources=layout.job.sources)
    if target != "-":
        mention(
            f"{target}: {counted(pages, 'page')}. Print at 100 %; measure the joined stick with a "
            "steel tape.",
        )
