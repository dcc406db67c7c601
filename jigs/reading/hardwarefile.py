"""The hardware file: records of one's own that several jobs share.

A job names it with `hardware_file = "my-hardware.toml"`; it holds `[hinge.NAME]`, `[slide.NAME]`
and `[pull.NAME]` as a job file does, under the same rules. Its bare numbers are read in its own
`units`, else in the job's. A name stands in one of the two files alone.
"""

from dataclasses import dataclass
from pathlib import Path

from jigs.ground.errors import Fault
from jigs.ground.lengths import Unit
from jigs.reading.tomlindex import index_lines
from jigs.reading.tomltables import FaultBook, Table
from jigs.reading.tomltext import parse_toml, read_text


@dataclass(frozen=True, slots=True, kw_only=True)
class HardwareFile:
    """The tables of a hardware file, None for a kind it does not hold."""

    path: Path
    book: FaultBook
    hinges: Table | None
    slides: Table | None
    pulls: Table | None

    @property
    def faults(self) -> list[Fault]:
        """The faults noted so far, in the order of the lines."""
        return [fault for _, fault in sorted(self.book.faults, key=lambda item: item[0])]


def read_hardware_file(path: Path, units: Unit) -> HardwareFile:
    """Open a hardware file; `units` for one without its own. Its records are read with the job's.

    Raises ReadingError for a file that cannot be read at all.
    """
    text = read_text(path)
    book = FaultBook(file=str(path), lines=index_lines(text))
    top = Table(parse_toml(text, str(path)), (), book, units)
    top.unit = top.choice("units", ("mm", "in")) or units
    if top.pick("schema") not in (None, 1):
        top.note("schema", f"not known ({top.given('schema')} given); 1 is allowed")
    opened = HardwareFile(
        path=path,
        book=book,
        hinges=top.table("hinge"),
        slides=top.table("slide"),
        pulls=top.table("pull"),
    )
    top.close()
    return opened
