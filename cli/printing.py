"""What is printed or cut, wherever it comes from: where it goes, and what is said of it then.

Drawings that are a folder of files are all drawn, then written aside, then appear together.
"""

from collections.abc import Callable, Iterable
from contextlib import ExitStack
from pathlib import Path
from typing import IO

import click

from cli.output import alone_in, guard, make_folder, set_aside, told, write_bytes
from cli.terminal import mention, tell

HELD = 1_000_000
"""So many bytes of a long PDF are held in memory until it is whole; more go to a file aside."""
PRINT = "Print at 100 %; measure the bars on page 1 first."


def find_target(form: str, output: str | None, file: str) -> tuple[str, bool]:
    """Give where a form goes, and whether it is a folder: without -o the `file` for a PDF,
    standard output for data, else a folder of the file's name and the form's."""
    folder = form not in ("pdf", "json")
    usual = {"pdf": file, "json": "-"}
    target = output or usual.get(form, f"{Path(file).stem}-{form}")
    if folder and target == "-":
        raise click.BadParameter(
            f"--format {form} makes a folder of files; give its name.", param_hint="'-o'"
        )
    return target, folder


def refuse_printer(form: str, printer: str | None) -> None:
    """A drawing that is cut knows no printer: wrong usage."""
    if printer:
        raise click.UsageError(
            f"--printer corrects what is printed; --format {form} is drawn true, without it."
        )


def write_pdf_file(
    target: str, data: bytes | IO[bytes], said: str, sources: Iterable[Path]
) -> None:
    """Write a PDF, its bytes or a file of them, and tell what it asks for."""
    write_bytes(target, data, sources=sources)
    if target != "-":
        mention(f"{target}: {said}. {PRINT}")


def write_folder(
    target: str,
    files: Iterable[tuple[str, bytes]],
    said: Callable[[int], str],
    sources: Iterable[Path],
) -> None:
    """Write files into a folder; tell what is said of so many, and what of their kind lay there
    before and was not written now: it may show a part as it no longer is."""
    folder = Path(target)
    make_folder(folder)
    written = dict(files)
    with told(f"'{folder}'"), alone_in(folder), ExitStack() as undo:
        aside = []
        for name, data in written.items():
            guard(str(folder / name), sources)
            aside.append(set_aside(folder / name, data))
            undo.callback(aside[-1].drop)
        for file in aside:
            file.put()
    mention(f"{target}: {said(len(written))}")
    kinds = {Path(name).suffix for name in written}
    older = sorted(
        path.name
        for path in folder.iterdir()
        if path.suffix in kinds and path.name not in written and not path.name.startswith(".")
    )
    if older:
        tell(f"Of an earlier run, not of this one: {', '.join(older)}.")
