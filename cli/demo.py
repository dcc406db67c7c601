"""`jigsheet demo`: an invented galley to look at, as a job file and its pack."""

from pathlib import Path

import click

from cli.failures import Failure
from cli.jobs import Asked
from cli.manners import command
from cli.output import make_folder, write_bytes
from cli.terminal import typed_line


@command(
    ("A kitchen to look at, with all its pages", "demo"),
    ("The same in a folder of your own name", "demo try-out"),
)
@click.argument("folder", metavar="[DIR]", default="jigsheet-demo", type=click.Path(path_type=Path))
def demo(folder: Path) -> None:
    """Write an invented galley, its job file and its pack.

    They are DIR/job.toml and DIR/pack. DIR is 'jigsheet-demo' unless you name another. Its job file
    explains each key: copy it and make it your own kitchen. A job file there that you have changed
    is left alone.
    """
    from cli.pack import make_pack
    from templates.demo import demo_files

    files = demo_files()
    changed = [name for name, data in files.items() if _differs(folder / name, data)]
    if changed:
        raise Failure(
            f"'{folder / changed[0]}' is there already and is not the demo's: it may hold your "
            "own work, so it is left alone.\n"
            f"Name another folder, or make its pack with {typed_line('pack', folder / 'job.toml')}."
        )
    make_folder(folder)
    for name, data in files.items():
        write_bytes(str(folder / name), data, sources=())
    make_pack(Asked(path=folder / "job.toml"), "common", None, folder / "pack")


def _differs(path: Path, data: bytes) -> bool:
    """Tell whether something else already stands at a path."""
    try:
        return path.exists() and (not path.is_file() or path.read_bytes() != data)
    except OSError:
        return True
