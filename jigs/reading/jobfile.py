"""The job file: a kitchen's materials, reveals, hardware, boxes and fronts, in TOML; and the
hardware file, records of one's own that several jobs share.

A fault in reading makes nothing: all faults are raised together, each with its line. A number
that is not given and has a default takes it, and is stamped ASSUMED where it is used. A whole job
written in another unit than its bare numbers are read in is told once; where single numbers are,
each is told by the range of its key (`jigs.ground.believable`).

>>> bare_number("31 1/2"), bare_number(31.5), bare_number("31.5 in")
(31.5, 31.5, None)

A job names a hardware file with `hardware_file = "my-hardware.toml"`; it holds `[hinge.NAME]`,
`[slide.NAME]` and `[pull.NAME]` as a job file does, under the same rules. Its bare numbers are read
in its own `units`, else in the job's. A name stands in one of the two files alone.
"""

import os
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TypeVar

from msgspec import Struct
from msgspec.structs import replace

from jigs.given.build import Exactness, GapSpec, Paint, RoomAir, Wood
from jigs.given.hardware import NO_PULL
from jigs.given.ids import find_clashes
from jigs.given.job import ACCEPTED, EXACT_WORDS, Grid, Job, Use
from jigs.given.measured import DeliveredList
from jigs.ground.believable import Range
from jigs.ground.errors import Fault, LengthError
from jigs.ground.lengths import Unit, is_bare, parse_value
from jigs.reading.fieldkeys import read_over
from jigs.reading.jobboxes import Shelves, read_boxes, with_slides
from jigs.reading.jobbuild import (
    read_build,
    read_material,
    read_reveal,
    refuse_frame_keys,
)
from jigs.reading.jobdefaults import complete_job, usual_reveal
from jigs.reading.jobhardware import read_hinges, read_pulls, read_slides, take_hinges
from jigs.reading.jobprinters import read_printers, read_stocks
from jigs.reading.jobwalls import read_walls
from jigs.reading.listedboxes import OpenedList, hang_list, open_list
from jigs.reading.listgiven import read_list_table
from jigs.reading.stream import folder_of, name_of
from jigs.reading.tomltables import FaultBook, TomlTable
from jigs.reading.tomltext import parse_toml, read_text

LEAST_BOX = 100.0
"""A job without a box that measures as much in mm is in another unit."""

MOST_INCHES = 200.0
"""No box is as large as 200 in, 5 m."""

MOST_SHOWN = 3

ValueT = TypeVar("ValueT")


def bare_number(value: object) -> float | None:
    """Give a length written without a unit, as it stands; None for any other value."""
    if not is_bare(value):
        return None
    try:
        return parse_value(value, "mm")
    except LengthError:
        return None


def doubt_units(values: Mapping[str, object], unit: Unit, *, stated: bool) -> str | None:
    """Say why a whole job is in another unit than its bare numbers are read in; None if it is not.

    `values` are the job's as they stand; `stated`: somebody has named the unit.
    """
    sizes = [[*_bare(box)] for box in _tables(values.get("box"))]
    if not sizes or not all(sizes):
        return None
    if unit == "in":
        if min(map(max, sizes)) <= MOST_INCHES:
            return None
        shown = ", ".join(f"{size:g}" for size in list(dict.fromkeys(map(max, sizes)))[:MOST_SHOWN])
        return (
            f"every box is over {MOST_INCHES:.0f} in ({shown} and the like): millimetres? "
            'write units = "mm"'
        )
    largest = max(map(max, sizes))
    if largest >= LEAST_BOX:
        return None
    fact = f"every box is under {LEAST_BOX:.0f} mm (largest size {largest:g}): inches?"
    missing = "" if stated else "units is missing and "
    return f'{missing}{fact} write units = "in"; centimetres? say so at each length, "60 cm"'


def _bare(box: Mapping[str, object]) -> Iterator[float]:
    """Give the bare width and height of a box as it stands in the file."""
    for key in ("width", "height"):
        size = bare_number(box.get(key))
        if size is not None:
            yield size


def _tables(value: object) -> list[Mapping[str, object]]:
    return [box for box in value if isinstance(box, dict)] if isinstance(value, list) else []


class HardwareFile(Struct, frozen=True, kw_only=True):
    """The tables of a hardware file, None for a kind it does not hold."""

    path: Path
    book: FaultBook
    hinges: TomlTable | None
    slides: TomlTable | None
    pulls: TomlTable | None

    @property
    def faults(self) -> list[Fault]:
        """The faults noted so far, in the order of the lines."""
        return [fault for _, fault in sorted(self.book.faults, key=lambda item: item[0])]


def read_hardware_file(path: Path, units: Unit) -> HardwareFile:
    """Open a hardware file; `units` for one without its own. Its records are read with the job's.

    Raises ReadingError for a file that cannot be read at all.
    """
    text = read_text(path)
    book = FaultBook(file=str(path), text=text)
    top = TomlTable(parse_toml(text, str(path)), (), book, units)
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


SCHEMA = 1
UNITS: tuple[Unit, ...] = ("mm", "in")
TOP_KEYS = ("schema", "units", "name", "hardware_file", "fronts_file", "delivered_file")
"""Keys that stand above the first table: below one, TOML takes them for keys of that table."""


def read_job_file(path: Path, units: Unit | None = None, delivered: Path | None = None) -> Job:
    """Read a job file.

    `units` in the file says how its bare numbers are read; `units` here then only says how
    lengths are shown. A file without them is read in the units given here, else in mm.
    `delivered` is the list of what has arrived, in place of one that the file names. Raises
    ReadingError with every fault.
    """
    return read_job_text(read_text(path), path, units, delivered)


def read_job_text(
    text: str, path: Path, units: Unit | None = None, delivered: Path | None = None
) -> Job:
    """Read what a job file at `path` says, or would say."""
    values = parse_toml(text, str(path))
    book = FaultBook(file=str(path), text=text, top=TOP_KEYS)
    return _read_job(values, book, path, units, delivered)


def _read_job(
    values: Mapping[str, object],
    book: FaultBook,
    path: Path,
    units: Unit | None,
    delivered: Path | None,
) -> Job:
    folder = folder_of(path)
    top = TomlTable(values, (), book, "mm")
    if top.peek("units") == "cm":
        top.hint(("units",), '; centimetres stand at each length: "60 cm"')
    stated = top.choice("units", UNITS)
    top.unit = stated or units or "mm"
    if doubt := doubt_units(values, top.unit, stated=bool(stated or units)):
        book.note(("units",) if stated else (), doubt)
        book.raise_noted()
    _check_schema(top)
    name = top.text("name") or name_of(path)
    material, open_material = read_material(top.table("material"), top.peek("build"))
    reveal, open_reveal = read_reveal(top.table("reveal"), usual_reveal(top.unit))
    fronts = top.table("fronts")
    increment = fronts.length("increment", Range(0.3, 13)) if fronts else None
    tolerance = fronts.length("tolerance", Range(0.2, 5)) if fronts else None
    in_hand = fronts.flag("in_hand") if fronts else None
    if fronts:
        fronts.close()
    open_fronts = ["fronts.tolerance"] if tolerance is None else []
    grid = _read_grid(top.table("grid"))
    build = read_build(top.table("build"))
    paint = _read_values(top.table("paint"), Paint())
    exact, open_exact = _read_exact(top.table("gaps"))
    wood = _read_values(top.table("wood"), Wood())
    air = _read_air(top.table("room"))
    printers = read_printers(top.table("printer"))
    stocks = read_stocks(top.table("stock"))
    hardware_file = top.text("hardware_file")
    shared = None
    if hardware_file and _is_there(top, "hardware_file", folder / hardware_file):
        shared = read_hardware_file(folder / hardware_file, top.unit)
    shelves = Shelves(
        hinges=read_hinges(top.table("hinge"), shared.hinges if shared else None),
        slides=read_slides(top.table("slide"), shared.slides if shared else None),
        pulls=read_pulls(top.table("pull"), shared.pulls if shared else None),
    )
    use = _read_use(top.table("use"), shelves)
    fronts_file = top.text("fronts_file")
    listed = read_list_table(top.table("list"))
    opened = OpenedList()
    if fronts_file and _is_there(top, "fronts_file", folder / fronts_file):
        opened = open_list(folder / fronts_file, top.unit, listed)
    read = read_boxes(top, shelves, material.front, opened.named)
    walls = read_walls(top, read.boxes)
    refuse_frame_keys(top)
    delivered_file = top.text("delivered_file")
    if delivered is None and delivered_file:
        delivered = folder / delivered_file
        if not _is_there(top, "delivered_file", delivered):
            delivered = None
    top.close()
    if not read.boxes and "box" not in top and "fronts_file" not in top:
        book.note((), "a job without a box or a front; write [[box]], or name a fronts_file")
    clashes = find_clashes(read.claims)
    boxes = read.boxes
    more: list[Fault] = []
    told = ""
    hardware_faults = shared.faults if shared else []
    if fronts_file:
        boxes, more, told = hang_list(
            opened,
            # Fronts that are at fault already are not held against the list as well.
            [replace(box, fronts=()) for box in boxes] if clashes or book.faults else boxes,
            shelves.pulls,
        )
    arrived = _read_arrived(delivered, top.unit) if delivered else None
    faults = [*hardware_faults, *clashes, *more]
    if arrived and (faults or book.faults):
        faults += arrived.faults
    book.raise_noted(faults, told, opened.ahead)
    job = complete_job(
        Job(
            name=name,
            units=top.unit,
            shown_in=units,
            sources=(
                path,
                *(folder / name for name in (hardware_file, fronts_file) if name),
            ),
            material=material,
            reveal=reveal,
            increment=increment,
            tolerance=_or_else(tolerance, ACCEPTED),
            grid=grid,
            build=build,
            paint=paint,
            gaps=GapSpec(exact=exact, wood=wood, air=air, fronts_in_hand=bool(in_hand)),
            printers=printers,
            stocks=stocks,
            use=use,
            boxes=tuple(map(with_slides, boxes)),
            walls=walls,
            list_told=told,
            doubts=(*book.doubts, *(shared.book.doubts if shared else ())),
            assumed=frozenset(
                {*open_material, *open_reveal, *open_exact, *open_fronts, *read.assumed}
            ),
        ),
        shelves,
    )
    if arrived is None:
        return job
    return replace(job, delivered=arrived, sources=(*job.sources, arrived.file))


def _is_there(top: TomlTable, key: str, path: Path) -> bool:
    """Tell whether a file that a job names is there; note it where it is not."""
    if os.path.lexists(path):
        return True
    top.note(
        key, f"no such file ({top.given(key)} given); it is looked for in the folder of the job"
    )
    return False


def _read_arrived(path: Path, unit: Unit) -> DeliveredList:
    # Imported here: few jobs have such a list.
    from jigs.reading.deliveredlist import read_delivered

    return read_delivered(path, unit)


def _check_schema(top: TomlTable) -> None:
    value = top.pick("schema")
    if value is None:
        top.book.note((), f"schema is missing; write schema = {SCHEMA} in the first line")
    elif value != SCHEMA or isinstance(value, bool) or not isinstance(value, int):
        top.note("schema", f"not known ({top.given('schema')} given); {SCHEMA} is allowed")


def _or_else(given: float | None, standard: float) -> float:
    return standard if given is None else given


def _read_values(table: TomlTable | None, standard: ValueT) -> ValueT:
    """Read a table whose keys all stand beside the fields of a value."""
    if table is None:
        return standard
    value = read_over(table, standard)
    table.close()
    return value


def _read_air(table: TomlTable | None) -> RoomAir:
    """Read how damp the room becomes."""
    if table is None:
        return RoomAir()
    air = read_over(table, RoomAir())
    if air.driest is not None and air.dampest is not None and air.driest > air.dampest:
        table.note("driest", f"damper than dampest ({table.given('driest')} given)")
    table.close()
    return air


def _read_exact(table: TomlTable | None) -> tuple[Exactness, set[str]]:
    """Read how true boxes and joints come out. Gives also the keys of the defaults."""
    unsaid = {key for key in EXACT_WORDS if table is None or key.partition(".")[2] not in table}
    return _read_values(table, Exactness()), unsaid


def _read_grid(table: TomlTable | None) -> Grid:
    if table is None:
        return Grid()
    hinges, slides = table.flag("hinges"), table.flag("slides")
    start = table.pick("start")
    free = start is None or start == "balanced"
    table.hint(("start",), '; "balanced" is allowed too: as far from one end as from the other')
    at = None if free else table.measure("start", start, Range(5, 120))
    table.close()
    return Grid(hinges=True if hinges is None else hinges, slides=slides or False, start=at)


def _read_use(table: TomlTable | None, shelves: Shelves) -> Use:
    if table is None:
        return Use()
    hinges = take_hinges(table, shelves.hinges)
    use = Use(
        hinge=hinges[0] if hinges else None,
        other_hinges=hinges[1:],
        slide=shelves.slides.take_name(table, "slide"),
        drawer_pull=shelves.pulls.take_name(table, "drawer_pull", words=(NO_PULL,)),
        door_pull=shelves.pulls.take_name(table, "door_pull", words=(NO_PULL,)),
    )
    table.close()
    return use
