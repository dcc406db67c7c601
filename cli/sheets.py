"""`jigsheet sheets`: the drilling sheets, to be printed at 100 %."""

from collections.abc import Collection
from typing import TYPE_CHECKING, Literal

import click

from cli.jobs import Asked
from cli.options import (
    format_option,
    only_option,
    output_by_form,
    paper_option,
    pilots_option,
    printer_option,
    same_holes_option,
    tight_option,
    with_job,
)
from cli.output import write_bytes, write_text
from cli.printers import find_paper
from cli.printing import (
    PRINT,
    find_target,
    refuse_printer,
    write_folder,
    write_pdf_file,
)
from cli.selection import narrow, nothing_drawn, select, select_first
from cli.terminal import tell

if TYPE_CHECKING:
    from jigs.box.parts import Layout
    from templates.page.paper import Paper

SIZE = {
    "svg": PRINT,
    "outlines": "1 unit is 1 mm; each face as its driller sees it.",
    "dxf": "1 unit is 1 mm; each face as its driller sees it.",
}


@click.command()
@with_job
@only_option
@same_holes_option
@tight_option
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
    same_holes: bool,
    tight: bool,
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
    from jigs.layout.layout import as_printed
    from templates.binding.jobsheets import make_sheets

    if first and only:
        raise click.UsageError("--first chooses the parts itself; give it without --only.")
    if stick:
        _refuse_with_stick(form, first=first, strip=strip, same=same_holes, tight=tight)
    if form in ("outlines", "dxf"):
        _refuse_with_faces(form, strip=strip, same=same_holes, tight=tight, printer=printer)
    target, folder = find_target(form, output, "stick.pdf" if stick else "sheets.pdf")
    layout = asked.lay_out(*(() if folder else (target,)))
    sheet = find_paper(paper, printer, layout.job)
    chosen = select_first(layout) if first else select(layout, only)
    concerned = narrow(layout, chosen)
    bare = form in ("outlines", "dxf")
    drawn = make_sheets(
        as_printed(layout),
        sheet,
        only=chosen,
        first=first,
        same=same_holes,
        tight=tight,
        strip=strip,
        pilots=pilots,
    )
    if stick:
        boards = {side.board for side in concerned.sides}
        _draw_stick(layout, sheet, boards, target)
    elif (chosen or bare) and not make_sheets(concerned, sheet, only=chosen).any_part:
        tell(nothing_drawn(concerned))
    elif form == "json":
        from templates.binding.sheetdata import sheets_json

        write_text(target, sheets_json(drawn), sources=layout.job.sources)
    elif folder:
        from cli.sheetfiles import sheet_files
        from templates.words.findings import pages_words
        from templates.words.textlines import counted

        def said(count: int) -> str:
            files = counted(count, "file")
            if form == "svg":
                files = pages_words(
                    count, drawn.count_other(), same=same_holes, tight=tight, noun="file"
                )
            return f"{files}. {SIZE[form]}"

        write_folder(target, sheet_files(drawn, form), said, layout.job.sources)
    else:
        from cli.drawing import draw_sheets, tell_unprintable

        data, pages = draw_sheets(drawn)
        write_pdf_file(target, data, pages, layout.job.sources)
        tell_unprintable(concerned)
    asked.end(concerned)


def _refuse_with_stick(form: str, *, first: bool, strip: bool, same: bool, tight: bool) -> None:
    """Say what does not go with a story stick; UsageError."""
    if first or strip or form != "pdf":
        raise click.UsageError("--stick is drawn by itself, as a PDF.")
    if same:
        raise click.UsageError("One stick serves all equal sides already: no --same-holes.")
    if tight:
        raise click.UsageError("--stick has no cards that could share a page: no --tight.")


def _refuse_with_faces(
    form: str, *, strip: bool, same: bool, tight: bool, printer: str | None
) -> None:
    """Say what does not go with bare faces, a file for each; UsageError."""
    if same:
        raise click.UsageError(f"--format {form} is a file for each face: no --same-holes.")
    if tight:
        raise click.UsageError(f"--format {form} has no cards that could share a page: no --tight.")
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
        tell(
            f"{target}: {counted(pages, 'page')}. Print at 100 %; measure the joined stick with a "
            "steel tape.",
        )
