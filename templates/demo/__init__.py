"""The demo job: an invented galley, as a job file that teaches its keys, a front list, and a
list of the fronts that have arrived."""

from importlib.resources import files

FILES = ("job.toml", "fronts.csv", "delivered.csv")


def demo_files() -> dict[str, bytes]:
    """Give the demo's files by name, as they are written beside each other."""
    return {name: (files("templates.demo") / name).read_bytes() for name in FILES}
