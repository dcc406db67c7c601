"""The job file: a kitchen's materials, reveals, hardware, boxes and fronts, in TOML.

A fault in reading makes nothing: all faults are raised together, each with its line. A number
that is not given and has a default takes it, and is stamped ASSUMED where it is used.
"""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from jigs.given.delivery import DeliveredList
from jigs.given.hardware import NO_PULL
from jigs.given.ids import find_clashes
from jigs.given.job import (
    ACCEPTED,
    Grid,
    Job,
    Use,
)
from jigs.ground.believable import Range
from jigs.ground.errors import Fault
from jigs.ground.lengths import Unit
from jigs.reading.faceframe import refuse_frame_keys
from jigs.reading.hardwarefile import read_hardware_file
from jigs.reading.jobboxes import Shelves, read_boxes
from jigs.reading.jobbuild import read_build, read_material, read_paint, read_reveal
from jigs.reading.jobdefaults import (
    Given,
    complete_job,
    usual_reveal,
)  # fmt: skip
from jigs.reading.jobhardware import read_hinges, read_pulls, read_slides, take_hinges
from jigs.reading.joblist import hang_list
from jigs.reading.jobprinters import read_printers
from jigs.reading.jobstocks import read_stocks
from jigs.reading.jobunits import doubt_units
from jigs.reading.jobwalls import read_walls
from jigs.reading.stream import folder_of, name_of
from jigs.reading.tomlindex import index_lines
from jigs.reading.tomltables import FaultBook, Table
from jigs.reading.tomltext import parse_toml, read_text

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
    text = read_text(path)
    values = parse_toml(text, str(path))
    book = FaultBook(file=str(path), lines=index_lines(text), top=TOP_KEYS)
    return _read_job(values, book, path, units, delivered)


def _read_job(
    values: Mapping[str, object],
    book: FaultBook,
    path: Path,
    units: Unit | None,
    delivered: Path | None,
) -> Job:
    folder = folder_of(path)
    top = Table(values, (), book, "mm")
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
    if fronts:
        fronts.close()
    grid = _read_grid(top.table("grid"))
    build = read_build(top.table("build"))
    paint = read_paint(top.table("paint"))
    printers = read_printers(top.table("printer"))
    stocks = read_stocks(top.table("stock"))
    hardware_file = top.text("hardware_file")
    shared = read_hardware_file(folder / hardware_file, top.unit) if hardware_file else None
    shelves = Shelves(
        hinges=read_hinges(top.table("hinge"), shared.hinges if shared else None),
        slides=read_slides(top.table("slide"), shared.slides if shared else None),
        pulls=read_pulls(top.table("pull"), shared.pulls if shared else None),
    )
    use = _read_use(top.table("use"), shelves)
    read = read_boxes(top, shelves)
    walls = read_walls(top, read.boxes)
    refuse_frame_keys(top)
    fronts_file = top.text("fronts_file")
    delivered_file = top.text("delivered_file")
    if delivered is None and delivered_file:
        delivered = folder / delivered_file
    top.close()
    if not read.boxes and "box" not in top and "fronts_file" not in top:
        book.note((), "a job without a box or a front; write [[box]], or name a fronts_file")
    clashes = find_clashes(read.claims)
    boxes = read.boxes
    more: list[Fault] = []
    hardware_faults = shared.faults if shared else []
    if fronts_file:
        boxes, more = hang_list(
            folder / fronts_file,
            top.unit,
            # Fronts that are at fault already are not held against the list as well.
            [replace(box, fronts=()) for box in boxes] if clashes or book.faults else boxes,
            shelves.pulls,
        )
    arrived = _read_arrived(delivered, top.unit) if delivered else None
    faults = [*hardware_faults, *clashes, *more]
    if arrived and (faults or book.faults):
        faults += arrived.faults
    book.raise_noted(faults)
    job = complete_job(
        Given(
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
            printers=printers,
            stocks=stocks,
            use=use,
            shelves=shelves,
            boxes=boxes,
            walls=walls,
            doubts=(*book.doubts, *(shared.book.doubts if shared else ())),
            assumed=frozenset({*open_material, *open_reveal, *read.assumed}),
        )
    )
    if arrived is None:
        return job
    return replace(job, delivered=arrived, sources=(*job.sources, arrived.file))


def _read_arrived(path: Path, unit: Unit) -> DeliveredList:
    # Imported here: few jobs have such a list.
    from jigs.reading.deliveredlist import read_delivered

    return read_delivered(path, unit)


def _check_schema(top: Table) -> None:
    value = top.pick("schema")
    if value is None:
        top.book.note((), f"schema is missing; write schema = {SCHEMA} in the first line")
    elif value != SCHEMA or isinstance(value, bool) or not isinstance(value, int):
        top.note("schema", f"not known ({top.given('schema')} given); {SCHEMA} is allowed")


def _or_else(given: float | None, standard: float) -> float:
    return standard if given is None else given


def _read_grid(table: Table | None) -> Grid:
    if table is None:
        return Grid()
    hinges, slides = table.flag("hinges"), table.flag("slides")
    start = table.pick("start")
    free = start is None or start == "balanced"
    at = None if free else table.measure("start", start, Range(5, 120))
    table.close()
    return Grid(hinges=True if hinges is None else hinges, slides=slides or False, start=at)


def _read_use(table: Table | None, shelves: Shelves) -> Use:
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
