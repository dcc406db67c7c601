"""Workbooks (.xlsx, .xls, .ods) as tables. Sizes are looked at before anything is unpacked, and the
sheets are read by a process with a limit on its memory (`workbook_reader.py`).
"""

import io
import json
import subprocess
import sys
import zipfile
from collections.abc import Iterator
from itertools import islice
from pathlib import Path

from jigs.ground.errors import refusal
from jigs.reading.listtable import MOST_CELLS, MOST_ROWS, ListTable, trim_row

SAVED = "open it in its own program and save it again, or as .csv"
"""What to do about a workbook that cannot be read."""
MOST_UNPACKED_BYTES = 100_000_000
MOST_ENTRIES = 5_000
WORKBOOK_SECONDS = 15.0


def read_workbook(path: Path, data: bytes) -> Iterator[ListTable]:
    """Read each visible sheet of a workbook. Raises ReadingError."""
    if data.startswith(b"PK"):
        _check_archive(path, data)
    reader = Path(__file__).with_name("workbook_reader.py")
    try:
        # -P: this folder's modules must not stand in for the standard library's.
        done = subprocess.run(
            [sys.executable, "-P", str(reader), str(MOST_ROWS), str(MOST_CELLS)],
            input=data,
            capture_output=True,
            timeout=WORKBOOK_SECONDS,
            check=False,
        )
        answer = json.loads(done.stdout)
    except subprocess.TimeoutExpired as error:
        raise refusal(path, "takes too long to read; save the list alone, as .csv") from error
    except (OSError, ValueError) as error:
        raise refusal(
            path, "too large for a front list, or damaged; save the list alone, as .csv"
        ) from error
    if "error" in answer:
        raise refusal(path, f"cannot be read as a workbook ({answer['error']}); {SAVED}")
    for sheet in answer["sheets"]:
        trimmed = (trim_row(number, cells) for number, cells in enumerate(sheet["rows"], 1))
        yield ListTable(
            rows=tuple(row for row in islice(trimmed, MOST_ROWS) if row.cells),
            sheet=sheet["name"],
            workbook=True,
            hidden=frozenset(sheet["hidden"]),
            hidden_columns=frozenset(sheet["hidden_columns"]),
            merged=frozenset((row, column) for row, column in sheet["merged"]),
            struck=frozenset(sheet["struck"]),
            remarked=tuple((row, column) for row, column in sheet["remarked"]),
        )


def _check_archive(path: Path, data: bytes) -> None:
    """Refuse an archive that would unpack to more than a front list can need."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            entries = archive.infolist()
    except Exception as error:  # arbitrary bytes raise arbitrary errors in there
        raise refusal(path, f"a damaged workbook ({error}); {SAVED}") from error
    # What is declared may be too little; the reading process has its own limit for that.
    if len(entries) > MOST_ENTRIES or sum(e.file_size for e in entries) > MOST_UNPACKED_BYTES:
        raise refusal(
            path, f"unpacks to more than {MOST_UNPACKED_BYTES // 1_000_000} MB, which is allowed"
        )
