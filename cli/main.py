"""The command `jigsheet` itself: it knows the names of its commands and loads the one asked for.

Nothing but click is imported here, so that `--version` and `--help` answer at once.
"""

import atexit
import gc
import sys
from functools import partial
from importlib import import_module
from typing import Any

import click

from cli.failures import end_plainly, told_plainly
from jigs import __version__

COMMANDS: tuple[str, ...] = (
    "demo",
    "check",
    "holes",
    "stations",
    "sheets",
    "labels",
    "parts",
    "elevations",
    "gaps",
    "order",
    "hang",
    "book",
    "pack",
    "serve",
    "progress",
    "hardware",
    "stocks",
    "calibrate",
)
"""Each command stands in the module of its name, in the order of the work."""

LOOKED_THROUGH = 1_000_000
"""After so many new values they are looked through for rings that nothing holds: values are frozen
and hardly ever make one, so that memory stays as it is, and looking takes its time."""


class Commands(click.Group):
    """A group that imports a command's module only when that command is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Name the commands in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Load one command, None for a name that is not ours."""
        if cmd_name not in COMMANDS:
            return None
        command = getattr(import_module(f"cli.{cmd_name}"), cmd_name)
        assert isinstance(command, click.Command)
        return command

    def main(self, *args: Any, **extra: Any) -> Any:
        """Run the command line and end with its exit code, whatever becomes of the streams."""
        gc.set_threshold(LOOKED_THROUGH)
        # What is left goes with the process: to look it through first takes a pack's twelfth part.
        atexit.register(gc.freeze)
        sys.exit(end_plainly(partial(super().main, *args, **{**extra, "standalone_mode": False})))

    def invoke(self, ctx: click.Context) -> object:
        """Run the command; what goes wrong is told in plain words."""
        with told_plainly():
            return super().invoke(ctx)


@click.command(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, message="%(prog)s %(version)s", prog_name="jigsheet")
def main() -> None:
    """Drilling templates at full scale, hole lists and labels for frameless kitchen fronts.

    JOB is a job file (.toml) or a bare front list (.csv, .tsv, .xlsx, .xls, .ods). Begin with
    'jigsheet demo'.
    """
