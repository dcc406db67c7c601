"""Programs that judge what is printed, each from a package of Debian; none is the project's own.

The tests that need one are slow tests, and fail where it is missing: a check that did not run
has held nothing.
"""

import shutil
import subprocess
from collections.abc import Mapping
from pathlib import Path

PACKAGES = {
    "gs": "ghostscript",
    "pdftoppm": "poppler-utils",
    "rsvg-convert": "librsvg2-bin",
    "pdftopdf": "cups-filters",
    "chromium-headless-shell": "chromium-headless-shell",
}
"""Program and package."""

_FILTERS = "/usr/lib/cups/filter"
"""Where a printing system keeps its filters: not on the path."""


class ToolMissing(AssertionError):
    """A program is not installed; the message says how to get it."""


def tool(name: str) -> str:
    """Find a program of `PACKAGES`. Raises ToolMissing."""
    found = shutil.which(name) or shutil.which(name, path=_FILTERS)
    if found is None:
        raise ToolMissing(
            f"{name} is not installed; it is in Debian's {PACKAGES[name]}: "
            f"apt-get install {' '.join(sorted(set(PACKAGES.values())))}"
        )
    return found


def run(name: str, *words: str | Path, environment: Mapping[str, str] | None = None) -> bytes:
    """Run a program and give what it writes; what it says of an error fails the test."""
    done = subprocess.run(
        [tool(name), *map(str, words)], capture_output=True, env=environment, check=False
    )
    assert done.returncode == 0, done.stderr.decode(errors="replace")
    return done.stdout
