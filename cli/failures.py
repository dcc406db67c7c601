"""What went wrong, told to the person: the one place where an error becomes a message.

Exit codes: 0 done; 1 faults in the job, parts held back, or a file that could not be written;
2 wrong usage. Nobody is ever shown a traceback, unless JIGSHEET_TRACEBACK is set.
"""

import errno
import io
import os
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import IO

import click

from cli.terminal import abandon, open_closed, tell, why
from jigs.ground.errors import JigsheetError, ReadingError

_OUTPUT_FAILS = (errno.ENOSPC, errno.EDQUOT, errno.EBADF, errno.EIO)


class Failure(click.ClickException):
    """A message that stands alone on standard error; exit 1."""

    def show(self, file: IO[str] | None = None) -> None:
        """Write the message to standard error, or to `file`."""
        click.echo(self.format_message(), file=file, err=True)


def end_plainly(run: Callable[[], object]) -> int:
    """Run the whole command line and give its exit code, whatever becomes of the streams."""
    open_closed()
    try:
        code = run()
        sys.stdout.flush()
    except click.ClickException as error:
        shown = io.StringIO()
        error.show(shown)
        tell(shown.getvalue(), nl=False)
        return error.exit_code
    except click.Abort:
        tell("Aborted!")
        return 1
    except OSError as error:
        abandon(sys.stdout)
        if error.errno != errno.EPIPE:  # who reads no further wants no more words
            tell(f"standard output could not be written: {why(error)}.")
        return 1
    return code if isinstance(code, int) else 0


@contextmanager
def told_plainly() -> Iterator[None]:
    """Turn what the tool says, and what it did not foresee, into a click error."""
    try:
        with _ended_in_order():
            yield
    except ReadingError as error:
        count = len(error.faults)
        closing = f"{count} {'fault' if count == 1 else 'faults'}; nothing was made."
        told = f"{error.told}\n" if error.told else ""
        ahead = f"{said}\n" if error.ahead and (said := error.ahead()) else ""
        raise Failure(f"{told}{error}\n{ahead}{closing}") from error
    except JigsheetError as error:
        raise Failure(str(error)) from error
    except (click.exceptions.Exit, click.Abort, click.ClickException, BrokenPipeError):
        raise
    except Exception as error:
        if isinstance(error, OSError) and error.errno in _OUTPUT_FAILS and not error.filename:
            raise  # a stream: help is written by click itself
        if os.environ.get("JIGSHEET_TRACEBACK"):
            raise
        import traceback  # loaded for what nobody foresaw alone

        frame = traceback.extract_tb(error.__traceback__)[-1]
        place = f"{os.path.basename(frame.filename)}:{frame.lineno}"
        raise Failure(
            f"jigsheet stumbled over its own feet at {place}: {type(error).__name__}: {error}\n"
            "This is a fault of the tool, not of your job. Set JIGSHEET_TRACEBACK=1, run the same"
            " command again and report what it prints."
        ) from error


@contextmanager
def _ended_in_order() -> Iterator[None]:
    """Let a request to end clear away what is half written; exit 128 + the signal's number."""

    def end(number: int, _: object) -> None:
        raise SystemExit(128 + number)

    if threading.current_thread() is not threading.main_thread():
        yield
        return
    import signal  # what only shows help or the version does without

    before = signal.signal(signal.SIGTERM, end)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)
