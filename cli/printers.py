"""The user's printers: where their settings lie, and the one that `--printer` names."""

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from cli.failures import Failure

if TYPE_CHECKING:
    from jigs.given.job import Job
    from jigs.given.printer import Printer
    from templates.page.paper import Paper


def settings_file() -> Path:
    """Give the file of the user's printers, whether or not it is there yet."""
    from platformdirs import user_config_path

    return user_config_path("jigsheet", appauthor=False) / "printers.toml"


def stored_printers() -> Mapping[str, "Printer"]:
    """Give the printers of the user's settings by name. Settings that cannot be read are a
    Failure that says the way out."""
    from jigs.ground.errors import ReadingError
    from jigs.reading.jobprinters import read_printer_file

    file = settings_file()
    if not file.is_absolute():  # no home is known: there are no settings
        return {}
    try:
        return read_printer_file(file)
    except ReadingError as error:
        raise Failure(
            f"{error}\nThese are your own settings, the printers you measured. Mend that line; or "
            "move the file away, and record each printer again with 'jigsheet calibrate'."
        ) from error


def known_before(name: str, job: "Path | None") -> "Printer":
    """Give what was recorded of a printer before, in the job or in the settings, or a new one."""
    from jigs.given.printer import Printer

    if job is None:
        return stored_printers().get(name, Printer(name=name))
    from jigs.reading.inputs import read_job

    return read_job(job, None).printers.get(name, Printer(name=name))


def printer_words(printer: "Printer") -> str:
    """Say what is known of a printer."""
    words = []
    if printer.corrected:
        words.append(f"x {printer.scale_across:.4f} across, x {printer.scale_along:.4f} along")
    if printer.dots:
        words.append(f"{printer.dots} dots per inch")
    if printer.labels_right or printer.labels_up:
        right, up = printer.labels_right, printer.labels_up
        words.append(f"labels moved {right:g} mm to the right, {up:g} mm up")
    return "; ".join(words) or "labels not moved"


def find_printer(name: str | None, job: "Job | None") -> "Printer | None":
    """Give the printer that was asked for, the job's own first; an unknown name is wrong usage."""
    from jigs.ground.nearest import suggest

    if name is None:
        return None
    if job is not None and name in job.printers:
        return job.printers[name]
    known = {**stored_printers(), **(job.printers if job else {})}
    if name not in known:
        names = suggest(name, sorted(known)) if known else "none is calibrated yet"
        raise click.BadParameter(
            f"no printer is called {name!r}; {names}. 'jigsheet calibrate' prints the test page.",
            param_hint="'--printer'",
        )
    return known[name]


def find_paper(paper: str, printer: str | None, job: "Job | None" = None) -> "Paper":
    """Give a paper by its name, corrected for a printer where one is asked for."""
    from templates.page.ownpaper import named_paper

    found, sheet = find_printer(printer, job), named_paper(paper)
    return sheet if found is None else sheet.corrected(found)
