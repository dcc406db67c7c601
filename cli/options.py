"""The arguments and options that several commands share."""

from collections.abc import Callable, Sequence
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal, TypeVar

import click

from cli.completing import offer_papers, offer_parts, offer_printers, offer_stocks
from cli.jobs import Asked
from cli.manners import Choice

if TYPE_CHECKING:
    from jigs.given.listspec import ListSpec

CommandT = TypeVar("CommandT", bound=Callable[..., Any])


class PaperName(click.ParamType[str]):
    """A paper by its name, a roll by its width or a sheet by its sizes, in small letters.

    What it stands for is looked up only when the option is used.
    """

    name = "name"

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """Give the name; one that stands for no paper is wrong usage."""
        from jigs.ground.errors import LengthError
        from templates.page.ownpaper import named_paper

        try:
            return named_paper(value).name
        except LengthError as error:
            self.fail(str(error), param, ctx)


def read_columns(
    ctx: click.Context, param: click.Parameter, lines: tuple[str, ...]
) -> "ListSpec | None":
    """Read what is stated of the columns of a list, as often as it is given, as one line; what is
    wrong in it is wrong usage. None where it is not given."""
    if not lines:
        return None
    from jigs.ground.errors import JigsheetError
    from jigs.reading.listgiven import parse_columns

    try:
        return parse_columns(",".join(lines))
    except JigsheetError as error:
        raise click.BadParameter(str(error), ctx, param) from None


def columns_option(command: CommandT) -> CommandT:
    """Take --columns: what a front list does not say of its columns and cells."""
    return click.option(
        "--columns",
        multiple=True,
        callback=read_columns,
        metavar="KEY=WHAT,...",
        help="Where a front list's columns stand, by letter, number or heading, and how its cells "
        "are meant: width=C,height=D,box=Schrank,order=width-first,empty_box=above. "
        "Given twice, both hold.",
    )(command)


def with_job(command: Callable[..., None]) -> Callable[..., None]:
    """Take JOB, a job file or a bare front list, --units, --delivered and --columns, as one value:
    the command's first argument. Whether the job can be read, its reader says."""

    @click.argument("job", metavar="JOB", type=click.Path(path_type=Path))
    @click.option(
        "--units",
        type=Choice(["mm", "in"]),
        help="Unit of a bare number where the job file does not say; the unit shown first.",
    )
    @click.option(
        "--delivered",
        metavar="LIST",
        type=click.Path(path_type=Path),
        help="The fronts that have arrived, with their measured sizes (.csv, .xlsx, ...).",
    )
    @columns_option
    @wraps(command)
    def run(
        job: Path,
        units: Literal["mm", "in"] | None,
        delivered: Path | None,
        columns: "ListSpec | None",
        **options: Any,
    ) -> None:
        command(Asked(path=job, units=units, delivered=delivered, columns=columns), **options)

    return run


def format_option(forms: Sequence[str], help: str) -> Callable[[CommandT], CommandT]:
    """Take --format; without it the first of the forms."""
    return click.option(
        "--format", "form", type=Choice(forms), default=forms[0], show_default=True, help=help
    )


def only_of(kinds: str) -> Callable[[CommandT], CommandT]:
    """Take --only, as often as wanted; `kinds`: what it names."""
    return click.option(
        "--only",
        multiple=True,
        metavar="ID",
        shell_complete=offer_parts,
        help=f"Only this {kinds}; may be repeated.",
    )


def only_option(command: CommandT) -> CommandT:
    """Take --only with the names of parts, boxes and walls."""
    return only_of("part, box or wall")(command)


def changed_option(command: CommandT) -> CommandT:
    """Take --changed-since: the pack whose paper is at the bench."""
    return click.option(
        "--changed-since",
        "since",
        metavar="PACK",
        type=click.Path(path_type=Path),
        help="Only what is stale in this pack, the folder that 'pack' wrote; 'jigsheet changes' "
        "says why.",
    )(command)


def paper_option(command: CommandT) -> CommandT:
    """Take --paper: the page the sheets are drawn for."""
    return click.option(
        "--paper",
        type=PaperName(),
        shell_complete=offer_papers,
        default="common",
        show_default=True,
        metavar="NAME",
        help="common (prints true on A4 and letter), letter, a4, legal, tabloid or a3; a plotter's "
        "roll by its width (roll-610, roll-24in); a sheet of your own (610x1500mm, 24x60in).",
    )(command)


def paper_for_pdf(form: str | None) -> None:
    """Refuse --paper for a form that is on none, where a PDF alone is on paper."""
    _paper_for(form, ("pdf",))


def paper_for_drawings(form: str) -> None:
    """Refuse --paper for a form that is on none, where drawings are on paper too."""
    _paper_for(form, ("pdf", "svg"))


def _paper_for(form: str | None, drawn: Sequence[str]) -> None:
    given = click.get_current_context().get_parameter_source("paper")
    if given is not click.core.ParameterSource.DEFAULT and form not in drawn:
        said = " and ".join(drawn)
        raise click.UsageError(
            f"--paper is for --format {said} ({form or 'text'} given), which is on paper."
        )


def printer_option(command: CommandT) -> CommandT:
    """Take --printer: the calibrated printer that the pages are corrected for."""
    return click.option(
        "--printer",
        metavar="NAME",
        shell_complete=offer_printers,
        help="Correct the pages for this printer; 'jigsheet calibrate' measures it.",
    )(command)


def pilots_option(command: CommandT) -> CommandT:
    """Take --pilots: drawer fronts have pilots from paper instead of marks through their boxes."""
    return click.option(
        "--pilots",
        is_flag=True,
        help="Pilots of drawer fronts from paper too, which else are marked through their boxes.",
    )(command)


def each_option(command: CommandT) -> CommandT:
    """Take --each: no card serves two parts. Two options of earlier versions, now the rule, are
    answered."""
    for name in ("--same-holes", "--tight"):
        command = click.option(
            name, is_flag=True, hidden=True, expose_value=False, callback=_always_done
        )(command)
    return click.option(
        "--each",
        is_flag=True,
        help="Every part by itself: no card that is the same for several parts stands once for "
        "all.",
    )(command)


def _always_done(ctx: click.Context, param: click.Parameter, value: bool) -> None:
    if value:
        raise click.UsageError(
            f"{param.opts[0]}: always done now; --each prints every part by itself."
        )


def stock_option(command: CommandT) -> CommandT:
    """Take --stock: the sheet or roll of labels. Which there are, and the job's, is looked up
    once the job is read."""
    return click.option(
        "--stock",
        metavar="NAME",
        shell_complete=offer_stocks,
        help="Sheet or roll of labels; 'jigsheet stocks' lists them.  "
        "[default: a4-2x7 for a job in mm, letter-2x5 for one in inches]",
    )(command)


def dots_option(command: CommandT) -> CommandT:
    """Take --dots: the printer's dots per inch, on which QR modules are to fall."""
    return click.option(
        "--dots",
        type=Choice(["203", "300", "600"]),
        metavar="N",
        callback=lambda ctx, param, value: int(value) if value else None,
        help="The printer's dots per inch, 203, 300 or 600: QR modules fall on whole dots.",
    )(command)


def output_option(default: str) -> Callable[[CommandT], CommandT]:
    """Take -o: where the output goes; `default` is used without it."""
    shown = "standard output" if default == "-" else default
    return output_by_form(shown, default=default)


def output_by_form(
    shown: str, more: str = "", *, default: str | None = None
) -> Callable[[CommandT], CommandT]:
    """Take -o where its default hangs on the form, as `shown` says; `more`: what else is to be
    known of it."""
    help = f"Where to write; - for standard output.{more}  [default: {shown}]"
    return click.option("-o", "--output", default=default, metavar="FILE", help=help)
