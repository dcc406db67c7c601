"""Any input of a job: a job file, or a bare front list with everything else assumed."""

from pathlib import Path

from msgspec.structs import replace

from jigs.given.job import EXACT_WORDS, MATERIAL_WORDS, REVEAL_WORDS, Job
from jigs.given.listspec import ListSpec
from jigs.ground.errors import ReadingError, refusal
from jigs.ground.lengths import Unit
from jigs.reading.frontlist import read_front_list
from jigs.reading.jobboxes import Shelves
from jigs.reading.jobdefaults import (
    complete_job,
    usual_reveal,
)  # fmt: skip
from jigs.reading.jobfile import read_job_file
from jigs.reading.jobhardware import read_hinges, read_pulls, read_slides
from jigs.reading.listedboxes import check_pull_names, infer_boxes, list_inferred, settle_pull_names
from jigs.reading.stream import is_stream, looks_like_job, name_of
from jigs.reading.tables import TABLE_FILES, check_there

JOB_FILE = ".toml"


def read_job(
    path: Path,
    units: Unit | None = None,
    delivered: Path | None = None,
    listed: ListSpec | None = None,
) -> Job:
    """Read a job file (.toml) or a bare front list (a table), by the ending of its name.

    `units`: what a bare number is read in where the file does not say; it overrules a list's
    header, and changes only how a job file with units of its own is shown. `delivered`: the list
    of what has arrived, if it is known; it is read, and not yet matched with the fronts. `listed`:
    what is stated of a bare list; a job file says the same in `[list]`. Raises ReadingError.
    """
    ending = path.suffix.lower()
    check_there(path)
    if is_stream(path):
        if not looks_like_job(path):
            return _read_bare_list(path, units, delivered, listed)
        return _read_file(path, units, delivered, listed)
    if ending == JOB_FILE or path.is_dir():
        return _read_file(path, units, delivered, listed)
    if looks_like_job(path):
        raise refusal(path, f"looks like a job file: name it {path.stem}{JOB_FILE}")
    if ending in TABLE_FILES:
        return _read_bare_list(path, units, delivered, listed)
    given = f"it ends in '{ending[:12]}'" if ending else "it has no ending"
    raise refusal(
        path,
        f"neither a job file nor a front list, by its name ({given}); allowed: "
        f"{', '.join((JOB_FILE, *TABLE_FILES))}",
    )


def _read_file(
    path: Path, units: Unit | None, delivered: Path | None, listed: ListSpec | None
) -> Job:
    if listed is not None:
        raise refusal(path, "a job file says in [list] how its list is read, not --columns")
    return read_job_file(path, units, delivered)


def _read_bare_list(
    path: Path, units: Unit | None, delivered: Path | None, listed: ListSpec | None
) -> Job:
    """Make a job of a list that stands alone: its boxes are inferred, all else is assumed."""
    front_list = read_front_list(path, units, listed=listed)
    shelves = Shelves(hinges=read_hinges(None), slides=read_slides(None), pulls=read_pulls(None))
    faults = check_pull_names(front_list, shelves.pulls)
    if faults:
        raise ReadingError(faults, front_list.told)
    reveal = usual_reveal(front_list.unit)
    try:
        boxes = settle_pull_names(infer_boxes(front_list, reveal), shelves.pulls)
    except ReadingError as error:
        raise ReadingError(error.faults, front_list.told) from error
    job = complete_job(
        Job(
            name=name_of(path),
            sources=(path,),
            units=front_list.unit,
            list_told=front_list.told,
            reveal=reveal,
            boxes=boxes,
            assumed=frozenset(
                {
                    *MATERIAL_WORDS,
                    *REVEAL_WORDS,
                    *EXACT_WORDS,
                    "fronts.tolerance",
                    *list_inferred(boxes),
                }
            ),
        ),
        shelves,
    )
    if delivered is None:
        return job
    # Imported here: few jobs have such a list.
    from jigs.reading.deliveredlist import read_delivered

    return replace(job, delivered=read_delivered(delivered, job.units), sources=(path, delivered))
