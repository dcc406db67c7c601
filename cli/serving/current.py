"""The job as it is now: read anew when one of its files has changed.

What is wrong in an edited file is said on top of the pages; the last layout that could be made
stays until it is mended.
"""

import os
import threading
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct
from msgspec.structs import replace

from cli.terminal import tell, why
from jigs.ground.errors import JigsheetError

if TYPE_CHECKING:
    from cli.jobs import Asked
    from cli.serving.store import Store
    from jigs.box.parts import Layout
    from templates.scan.scan import Scan

OLDER = "These pages are of the job as it was before; as it is now it cannot be shown"
Stamps = Mapping[Path, tuple[int, int, int] | None]
"""Of each file that a job is read from: when it was written, its length, which file it is."""


class Now(Struct, frozen=True):
    """A job ready to be shown."""

    scan: "Scan"
    faults: tuple[str, ...] = ()
    """What keeps the job as it is now from being shown, line by line; this one is older."""


class Current:
    """The job that is served."""

    def __init__(self, asked: "Asked", store: "Store", layout: "Layout") -> None:
        """Begin with the layout of the job as it was read first."""
        self._asked = asked
        self._store = store
        self._lock = threading.Lock()
        self._now = self._make(layout)
        self._stamps = self._stamp({})

    def now(self) -> Now:
        """Give it as its files are now."""
        with self._lock:
            stamps = self._stamp({})
            if stamps != self._stamps:
                try:
                    self._now = self._make(self._asked.lay_out(echo=False))
                except Exception as error:
                    self._now = replace(self._now, faults=(OLDER, *self._told(error)))
                # As the files were before they were read: one that was written meanwhile is read
                # once more.
                self._stamps = self._stamp(stamps)
            return self._now

    def _stamp(self, before: Stamps) -> Stamps:
        """Stamp the files that the job is read from, but for those that were stamped before."""
        delivered = (self._asked.delivered,) if self._asked.delivered else ()
        files = (self._asked.path, *delivered, *self._now.scan.layout.job.sources)
        return {file: before[file] if file in before else _stamp(file) for file in files}

    def _told(self, error: Exception) -> tuple[str, ...]:
        """Say why the job cannot be shown as it is now. Whatever it is, nobody may take what is
        shown for the job as it is; in which folder it lies is nobody's business."""
        if isinstance(error, JigsheetError):
            return tuple(str(error).replace(f"{self._asked.path.parent}{os.sep}", "").splitlines())
        if isinstance(error, OSError):
            return (f"{self._asked.path.name} cannot be read: {why(error)}.",)
        tell(f"The job cannot be laid out: {type(error).__name__}. See 'jigsheet check'.")
        return ("It cannot be laid out; 'check' tells why.",)

    def _make(self, layout: "Layout") -> Now:
        from templates.scan.scan import Scan

        scan = Scan(layout)
        self._store.saw({part.id: part.code for part in scan.tracked})
        return Now(scan)


def _stamp(file: Path) -> tuple[int, int, int] | None:
    try:
        found = os.stat(file)
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino
