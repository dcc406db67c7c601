"""How every command behaves: its examples, --quiet, lines as wide as the terminal, and what may
have been meant by a choice that there is not."""

import os
import sys
from collections.abc import Callable, Sequence
from typing import Any

import click
from click.core import ParameterSource

from cli.terminal import keep_quiet, terminal_width

FILES = ("pdf", "csv", "json", "xlsx")
"""The forms that are one file each, and that its name says."""
Example = tuple[str, str]
"""When it is of use, and the line as it is typed behind `jigsheet`."""


class Choice(click.Choice[str]):
    """One of a few words; what may be meant by another is said."""

    def get_invalid_choice_message(self, value: Any, ctx: click.Context | None) -> str:
        """Say the value, what is allowed, and what may be meant."""
        from jigs.ground.nearest import suggest_near

        near = suggest_near(str(value), map(str, self.choices))
        said = super().get_invalid_choice_message(value, ctx)
        return f"{said} {near[0].upper()}{near[1:]}" if near else said


class Command(click.Command):
    """A command with examples, that can be told to be quiet."""

    def __init__(self, *args: Any, examples: Sequence[Example] = (), **more: Any) -> None:
        super().__init__(*args, **more)
        self.examples = tuple(examples)
        quiet = click.Option(
            ["-q", "--quiet"],
            is_flag=True,
            expose_value=False,
            is_eager=True,
            callback=lambda ctx, _, given: keep_quiet(ctx) if given else None,
            help="Tell only what is wrong, held back or open; not what was read and written.",
        )
        self.params.append(quiet)

    def format_epilog(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Write the examples, each under what it is of use for."""
        if not self.examples:
            return
        with formatter.section("Examples"):
            for when, line in self.examples:
                formatter.write_text(f"{when}:")
                formatter.write(f"{'':{formatter.current_indent}}  jigsheet {line}\n")

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command; what it says on a terminal is set as wide as that is. A file has its
        own width, wherever it is written from."""
        from templates.words.textlines import as_wide

        self._name_form(ctx)
        shown = ctx.params.get("output") in (None, "-") and sys.stdout.isatty()
        with as_wide(terminal_width(sys.stdout) if shown else None):
            return super().invoke(ctx)

    def _name_form(self, ctx: click.Context) -> None:
        """Let the name of a file say its form where no --format does: a text that is called
        plan.pdf would open nowhere."""
        ending = os.path.splitext(ctx.params.get("output") or "")[1].lower().removeprefix(".")
        forms = [param.type for param in self.params if param.name == "form"]
        known = any(isinstance(form, click.Choice) and ending in form.choices for form in forms)
        unsaid = ctx.get_parameter_source("form") is ParameterSource.DEFAULT
        if known and unsaid and ending in FILES:
            ctx.params["form"] = ending


def command(*examples: Example) -> Callable[[Callable[..., None]], Command]:
    """Make a function a command, with its examples."""
    return click.command(cls=Command, examples=examples)


def may_colour() -> bool:
    """Tell whether anybody wants colours: not in a file, on a terminal that has none, or where
    NO_COLOR stands (no-color.org, from memory)."""
    plain = os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
    return not plain and sys.stdout is not None and sys.stdout.isatty()
