"""What every command does with JOB: read it, lay it out, tell what was understood and held."""

import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click
from msgspec import Struct

from cli.output import guard
from cli.terminal import is_quiet, mention, tell, terminal_width, typed_line

if TYPE_CHECKING:
    from jigs.box.parts import Layout
    from jigs.cutlist.cutlist import Cut
    from jigs.given.job import Job
    from jigs.given.listspec import ListSpec
    from jigs.ground.lengths import Unit
    from jigs.room.reckoning import GapBudgets


def read_in_hand(
    path: Path,
    units: "Unit | None" = None,
    delivered: Path | None = None,
    listed: "ListSpec | None" = None,
) -> "Job":
    """Read a job (`jigs.reading.inputs`), its fronts as they are in hand where it has a list of
    what has arrived. Raises ReadingError."""
    from jigs.order.matching import with_delivery
    from jigs.reading.inputs import read_job

    job = read_job(path, units, delivered, listed)
    return job if job.delivered is None else with_delivery(job, job.delivered)


class Asked(Struct, frozen=True, kw_only=True):
    """The job that a command was given."""

    path: Path
    units: Literal["mm", "in"] | None = None
    """What a bare number is read in where the job does not say, and what is shown."""
    delivered: Path | None = None
    """A list of what has arrived, in place of one that the job names."""

    columns: "ListSpec | None" = None
    """What is stated of the columns of a bare list."""

    def lay_out(self, *targets: str, echo: bool = True) -> "Layout":
        """Read the job and lay it out, with all that 'check' says of it."""
        return self._work(targets, echo=echo)[0]

    def cut(self, *targets: str, echo: bool = True) -> "tuple[Layout, Cut]":
        """Read the job, lay it out so and cut it."""
        return self._work(targets, echo=echo)[:2]

    def reckon(self, *targets: str) -> "tuple[Layout, GapBudgets]":
        """Read the job, lay it out so and reckon its gaps."""
        layout, _, found = self._work(targets)
        return layout, found

    def _work(
        self, targets: Sequence[str], *, echo: bool = True
    ) -> "tuple[Layout, Cut, GapBudgets]":
        """Read the job, lay it out, cut it, reckon its gaps; its echo line goes to standard error.

        `targets` are what will be written: none may be what the job is read from. Raises
        ReadingError with all faults of the job.
        """
        from jigs.checks.cutting import with_cutting
        from jigs.checks.rubbing import with_rubbing
        from jigs.layout.layout import lay_out
        from jigs.reading.inputs import JOB_FILE

        read = read_in_hand(self.path, self.units, self.delivered, self.columns)
        for target in targets:
            guard(target, read.sources)
        layout, cut = with_cutting(lay_out(read))
        # How a list was read stands for a job file in 'check' alone, for a bare list in every run.
        if echo and read.list_told and self.path.suffix.lower() != JOB_FILE:
            mention(read.list_told)
        if echo and layout.echo:
            mention(layout.echo)
        layout, found = with_rubbing(layout)
        return layout, cut, found

    def end(self, layout: "Layout", *faults: str, told: bool = False) -> None:
        """Tell on standard error what is held back, and how much else the check would say, if that
        is not told already, and other faults; end the command: 1 if there are any or anything is
        held back, else 0."""
        from jigs.reading.listgiven import write_columns
        from templates.words.findings import count_warnings, has_errors, held_text
        from templates.words.textlines import as_wide, counted

        if not told:
            with as_wide(terminal_width(sys.stderr)):
                held = held_text(layout)
            tell(held, nl=False)
            if warnings := count_warnings(layout.problems, layout.job.shown):
                same = ("--columns", write_columns(self.columns)) if self.columns else ()
                line = typed_line("check", self.path, *same)
                tell(f"{counted(warnings, 'warning')}: see {line}.")
        for fault in faults:
            tell(fault)
        click.get_current_context().exit(1 if faults or has_errors(layout) else 0)


def on_terminal() -> bool:
    """Tell whether a person watches standard error, so that a progress bar is of use."""
    return sys.stderr.isatty() and os.environ.get("TERM") != "dumb" and not is_quiet()
