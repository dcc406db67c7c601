"""The command `jigsheet` itself: it knows the names of its commands and loads the one asked for.

Nothing but click is imported here, so that `--version` and `--help` answer at once.
"""

import atexit
import gc
import os
import sys
from functools import partial
from importlib import import_module
from typing import Any

import click

from cli.failures import end_plainly, told_plainly
from cli.manners import may_colour
from cli.terminal import typed_line
from jigs import __version__

STAGES: dict[str, tuple[str, ...]] = {
    "To begin": ("demo", "new", "hardware"),
    "Before anything is ordered": ("check", "gaps", "elevations", "order"),
    "Before anything is cut": ("parts", "labels"),
    "At the drill": ("stations", "sheets", "holes"),
    "At the wall": ("hang",),
    "All along": ("plan", "pack", "serve", "book", "progress", "changes"),
    "For your printer": ("calibrate", "stocks"),
}
"""When each command is of use, in the order of the work. It stands in the module of its name."""
COMMANDS = tuple(name for names in STAGES.values() for name in names)

JOBS = (".toml", ".csv", ".tsv", ".xlsx", ".xls", ".ods")
"""How the name of what a job is read from ends."""
LOOKED_THROUGH = 1_000_000
"""After so many new values they are looked through for rings that nothing holds: values are frozen
and hardly ever make one, so that memory stays as it is, and looking takes its time."""


class Commands(click.Group):
    """A group that imports a command's module only when that command is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Name the commands in the order of the work."""
        return list(COMMANDS)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Write the commands under when they are of use, their words in one column."""
        width = max(map(len, COMMANDS))
        limit = formatter.width - width - 6
        for stage, names in STAGES.items():
            with formatter.section(stage):
                for name in names:
                    command = self.get_command(ctx, name)
                    assert command is not None
                    said = command.get_short_help_str(limit)
                    formatter.write(f"  {name:{width}}  {said}\n")

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Load one command, None for a name that is not ours."""
        if cmd_name not in COMMANDS:
            return None
        command = getattr(import_module(f"cli.{cmd_name}"), cmd_name)
        assert isinstance(command, click.Command)
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Find the command of a line; of one that there is not, say which may be meant."""
        name = args[0]
        if name not in COMMANDS and not name.startswith("-") and not ctx.resilient_parsing:
            from jigs.ground.nearest import suggest_near

            if os.path.splitext(name)[1].lower() in JOBS:
                line = typed_line("check", name)
                ctx.fail(f"{name!r} is no command; one comes before it, such as {line}.")
            near, known = suggest_near(name, COMMANDS), f"there are {', '.join(COMMANDS)}."
            ctx.fail(f"there is no command {name!r}; {near or known}")
        return super().resolve_command(ctx, args)

    def main(self, *args: Any, **extra: Any) -> Any:
        """Run the command line and end with its exit code, whatever becomes of the streams."""
        gc.set_threshold(LOOKED_THROUGH)
        # What is left goes with the process: to look it through first takes a pack's twelfth part.
        atexit.register(gc.freeze)
        # With a colour only where somebody wants it; click itself looks at the terminal alone.
        manners = {"standalone_mode": False, "color": None if may_colour() else False}
        sys.exit(end_plainly(partial(super().main, *args, **{**extra, **manners})))

    def invoke(self, ctx: click.Context) -> object:
        """Run the command; what goes wrong is told in plain words."""
        with told_plainly():
            return super().invoke(ctx)


@click.command(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, message="%(prog)s %(version)s", prog_name="jigsheet")
def main() -> None:
    """Drilling templates at full scale, hole lists and labels for frameless kitchen fronts.

    JOB is a job file (.toml) or a bare front list (.csv, .tsv, .xlsx, .xls, .ods). Begin with
    'jigsheet demo'; each command shows examples of itself: 'jigsheet check --help'.
    """
