"""The demo job: an invented galley, as a job file that teaches its keys, a front list, and a
list of the fronts that have arrived."""

from pathlib import Path

FILES = ("job.toml", "fronts.csv", "delivered.csv")


def demo_files() -> dict[str, bytes]:
    """Give the demo's files by name, as they are written beside each other."""
    return {name: Path(__file__).with_name(name).read_bytes() for name in FILES}
