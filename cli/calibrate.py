"""`jigsheet calibrate`: the test page of a printer, and what was measured on it."""

import re
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click
from msgspec.structs import replace

from cli.failures import Failure
from cli.manners import Choice, command
from cli.options import dots_option, paper_option
from cli.output import Unwritable, change_file, make_folder, write_bytes, write_text
from cli.printers import known_before, printer_words, settings_file, stored_printers
from cli.terminal import mention

if TYPE_CHECKING:
    from jigs.given.printer import Printer

Bars = Literal["mm", "in"]


@command(
    ("The page to print and measure", "calibrate"),
    (
        "What its bars measured, under a name for the printer",
        "calibrate garage --across 179.6 --along 199.5",
    ),
    ("Which printers are known", "calibrate --list"),
)
@click.argument("name", metavar="[NAME]", required=False)
@click.option("--across", metavar="LENGTH", help="The bar across the paper, as measured.")
@click.option("--along", metavar="LENGTH", help="The bar along the paper, as measured.")
@click.option(
    "--bars",
    type=Choice(["mm", "in"]),
    default="mm",
    show_default=True,
    help="Which bars these are: 180 and 200 mm, or 7 and 8 in; the unit of a bare number.",
)
@click.option(
    "--diagonals",
    nargs=2,
    metavar="LENGTH LENGTH",
    help="Both diagonals of the frame, as measured.",
)
@click.option(
    "--labels-right",
    metavar="LENGTH",
    help="How far labels are to be moved to the right, as read on a stock's test page.",
)
@click.option("--labels-up", metavar="LENGTH", help="How far labels are to be moved up.")
@dots_option
@click.option("--tray", default="", metavar="TEXT", help="The tray the paper came from.")
@click.option("--job", type=click.Path(path_type=Path), metavar="JOB", help="Keep it in JOB.")
@click.option("--list", "listed", is_flag=True, help="List the printers of your settings.")
@paper_option
@click.option(
    "-o",
    "--output",
    metavar="FILE",
    help="Where to write the test page; - for standard output.  [default: calibrate.pdf]",
)
def calibrate(
    name: str | None,
    across: str | None,
    along: str | None,
    bars: Bars,
    diagonals: tuple[str, str] | None,
    labels_right: str | None,
    labels_up: str | None,
    dots: int | None,
    tray: str,
    job: Path | None,
    listed: bool,
    paper: str,
    output: str | None,
) -> None:
    """Print a printer's test page, or record what it measures.

    With NAME, --across and --along it is recorded. The lengths go into your own settings, or with
    --job into the job file. A label printer may be recorded by its --dots, and by how far its
    labels are to be moved, alone.
    """
    if listed:
        _list()
        return
    if name is None:
        if any((across, along, job, diagonals, tray, labels_right, labels_up, dots)):
            raise click.UsageError(
                "the printer wants a NAME: jigsheet calibrate NAME --across LENGTH --along LENGTH."
            )
        _print_page(paper, output or "calibrate.pdf")
        return
    moved = labels_right, labels_up
    bars_wanted = dots is None and moved == (None, None)
    if (across is None) != (along is None) or (across is None and bars_wanted):
        raise click.UsageError(
            "both --across and --along are needed, as measured on the test page; "
            "without NAME it is printed."
        )
    if across is None and (diagonals or tray):
        raise click.UsageError("--diagonals and --tray go with --across and --along.")
    if output is not None:
        raise click.UsageError("-o is for the test page; it goes without NAME.")
    if job is not None:
        _check_job(job)
    faults = _name_faults(name)
    printer = known_before(name, job)
    if across is not None and along is not None:
        printer = _measured(printer, (across, along), bars, diagonals, faults)
        printer = replace(printer, tray=_line("--tray", tray, faults), paper=paper)
    printer = _moved(printer, moved, bars, faults)
    printer = replace(printer, dots=dots or printer.dots)
    unread = across is not None and None in (printer.across, printer.along)
    _record(_without_fault(printer, faults, unread=unread), job)


def _print_page(paper: str, target: str) -> None:
    from templates.binding.calibration import calibration_page
    from templates.page.ownpaper import named_paper
    from templates.writers.pdf import write_pdf

    page = calibration_page(named_paper(paper))
    write_bytes(target, write_pdf([page], title="Test page"), sources=())
    if target != "-":
        mention(
            f"{target}: print at 100 % and measure its bars. Then\n"
            "  jigsheet calibrate NAME --across LENGTH --along LENGTH"
        )


def _name_faults(name: str) -> list[str]:
    from jigs.reading.jobprinters import NAME, NAME_RULE

    return (
        [] if re.fullmatch(NAME, name) else [f"not a printer's name ({name!r} given); {NAME_RULE}"]
    )


def _line(option: str, text: str, faults: list[str]) -> str:
    """Give a text as a line of a file keeps it; what no line keeps is added to the faults."""
    from jigs.reading.tomltables import LONGEST_TEXT

    text = text.strip()
    if len(text) > LONGEST_TEXT or not text.isprintable():
        faults.append(
            f"{option}: not one short line ({len(text)} characters given); at most {LONGEST_TEXT} "
            "printable characters are allowed"
        )
    return text


def _measured(
    printer: "Printer",
    measured: tuple[str, str],
    bars: Bars,
    diagonals: tuple[str, str] | None,
    faults: list[str],
) -> "Printer":
    """Give a printer with its bars as measured; what cannot be read is added to the faults."""
    from jigs.given.printer import skew_of

    across = _length("--across", measured[0], bars, faults)
    along = _length("--along", measured[1], bars, faults)
    if diagonals:
        both = [_length("--diagonals", text, bars, faults) for text in diagonals]
        if None not in both and (skew := skew_of((both[0] or 0.0, both[1] or 0.0))):
            faults.append(
                f"the diagonals differ by {skew:.1f} mm: the paper goes in askew, which nothing "
                "can correct; straighten its guides and print the test page again"
            )
    return replace(printer, across=across, along=along, bars=bars)


def _moved(
    printer: "Printer", moved: tuple[str | None, str | None], unit: Bars, faults: list[str]
) -> "Printer":
    """Give a printer with what its labels are to be moved by."""
    right, up = (
        None if text is None else _length(option, text, unit, faults, signed=True)
        for option, text in zip(("--labels-right", "--labels-up"), moved, strict=True)
    )
    return replace(
        printer,
        labels_right=printer.labels_right if right is None else right,
        labels_up=printer.labels_up if up is None else up,
    )


def _without_fault(printer: "Printer", faults: list[str], *, unread: bool) -> "Printer":
    """Give the printer, if nothing is wrong with it; all faults at once. `unread`: what its bars
    measure could not be read."""
    from jigs.given.printer import find_faults

    if not unread:
        faults = [*faults, *find_faults(printer)]
    if faults:
        raise Failure("\n".join([*faults, "Nothing was recorded."]))
    return printer


def _length(
    option: str, text: str, bars: Bars, faults: list[str], *, signed: bool = False
) -> float | None:
    from jigs.ground.errors import LengthError
    from jigs.ground.lengths import parse_length

    try:
        return parse_length(text, bars, signed=signed)
    except LengthError as error:
        faults.append(f"{option}: {error}")
        return None


def _check_job(job: Path) -> None:
    """Refuse what cannot keep a printer: a table of fronts, or what is no file."""
    if job.suffix.lower() != ".toml" or (job.exists() and not job.is_file()):
        raise Failure(
            f"{job}: only a job file (.toml) keeps a printer. Leave --job away: it is then kept "
            "in your own settings. Nothing was recorded."
        )


def _record(printer: "Printer", job: Path | None) -> None:
    target = _into_settings(printer) if job is None else _into_job(printer, job)
    again = "measure the sheets' own bars" if printer.corrected else "look at the labels"
    said = [
        f"{printer.name}: {printer_words(printer)}; kept in {target}.",
        f"Print with --printer {printer.name}, and {again} again.",
    ]
    if printer.uneven:
        said.append("The two differ by over 2 %: measure once more before you trust it.")
    _say(said)


def _into_settings(printer: "Printer") -> Path:
    from jigs.reading.jobprinters import printers_toml

    def changed(_: bytes) -> bytes:
        text = printers_toml({**stored_printers(), printer.name: printer})
        return _read_back(printer, text, target)

    target = settings_file()
    if not target.is_absolute():
        raise Failure(
            "No folder for settings is known on this machine (HOME is not set); keep the printer "
            "in a job: --job JOB. Nothing was recorded."
        )
    try:
        make_folder(target.parent)
        change_file(target, changed)
    except Unwritable as error:
        raise Failure(
            f"{error}\nKeep the printer in a job instead: --job JOB. Nothing was recorded."
        ) from error
    return target


def _into_job(printer: "Printer", job: Path) -> Path:
    from jigs.reading.inputs import read_job
    from jigs.reading.jobprinters import printer_toml

    def changed(old: bytes) -> bytes:
        if printer.name in read_job(job, None).printers:
            raise Failure(
                f"{job}: it has a [printer.{printer.name}] already; write into it:\n"
                f"{printer_toml(printer)}Nothing was recorded."
            )
        return _read_back(printer, f"{old.decode()}\n{printer_toml(printer)}", job)

    change_file(job, changed)
    return job


def _read_back(printer: "Printer", text: str, target: Path) -> bytes:
    """Give a file's new bytes, once the printer can be read out of them as it was recorded."""
    from jigs.ground.errors import ReadingError
    from jigs.reading.jobprinters import parse_printers, printer_toml

    try:
        read = parse_printers(text.removeprefix("\ufeff"), str(target))[printer.name]
        same = printer_toml(read) == printer_toml(printer)
    except (ReadingError, KeyError) as error:
        raise Failure(
            f"What was measured could not be read again if it were written at the end of {target}:"
            f"\n{error}\nWrite it in yourself:\n{printer_toml(printer)}Nothing was recorded."
        ) from error
    assert same, "a printer is read as it is written"
    return text.encode()


def _list() -> None:
    printers = stored_printers()
    said = []
    for name, printer in sorted(printers.items()):
        place = ", ".join(word for word in (printer.paper, printer.tray) if word)
        said.append(f"{name}: {printer_words(printer)}{f' ({place})' if place else ''}")
    _say(said or ["No printer is calibrated yet. 'jigsheet calibrate' prints the test page."])


def _say(lines: list[str]) -> None:
    write_text("-", "".join(f"{line}\n" for line in lines), sources=())
