"""A server of the pages as a process of its own, on this computer alone, for tests."""

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[1]
RUN = (
    "import signal; signal.signal(signal.SIGINT, signal.SIG_IGN); from cli.main import main; main()"
)
"""As a shell starts what a script leaves in the background."""


@dataclass(frozen=True, slots=True)
class Server:
    """A server that listens."""

    process: "subprocess.Popen[str]"
    told: list[str]
    """The addresses that it said, a line each."""

    @property
    def base(self) -> str:
        """Its address, without the key."""
        return self.told[0].partition("/?")[0]

    @property
    def key(self) -> str:
        return self.told[0].strip().partition("?k=")[2]

    @property
    def port(self) -> int:
        return int(self.base.rpartition(":")[2])

    def end(self, how: signal.Signals = signal.SIGINT) -> tuple[int, str]:
        """End it; give its exit code and what it told on standard error."""
        self.process.send_signal(how)
        _, told = self.process.communicate(timeout=20)
        return self.process.returncode, told


@contextmanager
def served(folder: Path, *words: str, python: str = sys.executable) -> Iterator[Server]:
    """Serve a job from a folder; it is ended in the end, if it runs still."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    process = subprocess.Popen(
        [python, "-c", RUN, "serve", *words], cwd=folder, env=environment, text=True,
        stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    )  # fmt: skip
    assert process.stdout is not None
    server = Server(process, [])
    try:
        server.told.append(process.stdout.readline())
        assert server.key, process.communicate(timeout=20)[1]
        yield server
    finally:
        if process.poll() is None:
            server.end()
