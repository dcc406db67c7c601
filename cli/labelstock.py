"""The stock of labels that `--stock` names, and what the printer asks of it."""

from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from jigs.given.job import Job
    from jigs.given.labelstock import Stock
    from jigs.given.printer import Printer
    from jigs.ground.lengths import Unit
    from templates.page.raster import Raster


USUAL: dict["Unit", str] = {"mm": "a4-2x7", "in": "letter-2x5"}
"""The stock of a job that names none, by its units."""


def known_stocks(job: "Job | None") -> dict[str, "Stock"]:
    """Give all stocks by name, the job's own first."""
    from templates.labels.stocks import STOCKS

    own = dict(job.stocks) if job else {}
    return {**own, **{name: stock for name, stock in STOCKS.items() if name not in own}}


def find_stock(name: str | None, job: "Job | None", hint: str = "'--stock'") -> "Stock":
    """Give a stock by its name, the job's own first; an unknown name is wrong usage. Without a
    name that of the job's units."""
    from jigs.ground.nearest import suggest_near
    from templates.labels.stocks import list_text

    known = known_stocks(job)
    if name is None:
        name = USUAL[job.units if job else "in"]
    # The commands that take a job always have it; the list of stocks only when it is named.
    own = "" if job else " A stock of your own stands in a job: name it with --job JOB."
    if name.lower() not in known:
        near = suggest_near(name, known)
        may = f" {near[0].upper()}{near[1:]}" if near else ""
        raise click.BadParameter(
            f"no stock is called {name!r}.{may}{own} There are:\n\n{list_text(known.values())}",
            param_hint=hint,
        )
    return known[name.lower()]


def check_start(stock: "Stock", start: int) -> None:
    """Refuse a first place that a sheet does not have, and any but 1 on a roll."""
    if start <= stock.places:
        return
    has = (
        "a roll has one label after the other: leave --start out"
        if stock.roll
        else f"a sheet of {stock.name} has places 1 to {stock.places}"
    )
    raise click.BadParameter(f"{start} given; {has}.", param_hint="'--start'")


def raster_for(stock: "Stock", printer: "Printer | None", dots: int | None) -> "Raster":
    """Give what the printer asks for; --dots wins over the printer's, these over the stock's."""
    from templates.page.raster import raster_of

    return raster_of(printer, dots or (printer and printer.dots) or stock.dots)
