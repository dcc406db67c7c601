"""What was given for a job, one value after the other, so that two jobs can be told apart by it.

The values are named as the job file names them; what only says how a job was read, or how it is
printed, is left out.
"""

from collections.abc import Iterator, Mapping

from msgspec import Struct
from msgspec.structs import asdict

from jigs.changes.made import Given, Value, steps
from jigs.given.job import BoxSpec, FrontSpec, Job

LEFT_OUT = frozenset({
    "name", "units", "boxes", "hinges", "slides", "pulls", "walls", "assumed",
    "shown_in", "sources", "delivered", "delivery", "printers", "stocks", "doubts", "list_told",
})  # fmt: skip
"""Of a job: what stands under keys of its own, and what makes no part another one."""
_PUT_TOGETHER = ("five_piece.", "boring.", "hung.", "opened_by.", "words.", "portion.", "edges.")
"""Values of a front that have keys of its own in the job file."""
_BESIDE = ("measured.", "left.", "right.")
"""What a key begins with there: `measured_width`, `left_filler`."""
_NOT_OF_A_BOX = frozenset({"id", "fronts", "read"})
_NOT_OF_A_FRONT = frozenset({"id", "row"})
_NOT_OF_A_RECORD = frozenset({"name", "confirmed", "written", "like", "standing"})


_MEASURES = ("measured", "thickness", "leaves", "note")
"""Values of a front that a delivered list gives (`jigs.order.matching`)."""


def is_measured(given: Given) -> bool:
    """Tell whether a value may be of a delivered list.

    >>> front = Given(kind="front", name="B1-1", key="measured_width", value=450.0)
    >>> is_measured(front)
    True
    """
    return given.kind == "front" and any(given.key.startswith(each) for each in _MEASURES)


def list_given(job: Job) -> tuple[Given, ...]:
    """List all that was given for a job, in its order."""
    return tuple(_given(job))


def _given(job: Job) -> Iterator[Given]:
    for key, value in _of(job, LEFT_OUT):
        yield Given(kind="job", name="", key=key, value=value)
    for wall in job.walls:
        for key, value in _of(wall, frozenset({"name"})):
            yield Given(kind="wall", name=wall.name, key=key, value=value)
    for box in job.boxes:
        yield from _of_box(box)
    for kind, records in job.records.items():
        for name, record in records.items():
            for key, value in _of(record, _NOT_OF_A_RECORD):
                yield Given(kind=kind, name=name, key=key, value=value)


def _of_box(box: BoxSpec) -> Iterator[Given]:
    for key, value in _of(box, _NOT_OF_A_BOX):
        yield Given(kind="box", name=box.id, key=key, value=value)
    front: FrontSpec
    for front in box.fronts:
        for key, value in _of(front, _NOT_OF_A_FRONT):
            yield Given(kind="front", name=front.id, key=key, value=value, box=box.id)


def _of(value: Struct, left_out: frozenset[str]) -> Iterator[tuple[str, Value]]:
    """Give each value of a struct under its key; what is None was not given."""
    for name, own in asdict(value).items():
        if name not in left_out:
            for key, plain in _flat(name, own):
                yield _written(key), plain


def _written(key: str) -> str:
    """Give a key as the job file has it.

    >>> _written("boring.bored_tab"), _written("measured.width"), _written("material.side")
    ('bored_tab', 'measured_width', 'material.side')
    """
    for group in _PUT_TOGETHER:
        key = key.removeprefix(group)
    for group in _BESIDE:
        if key.startswith(group):
            key = key.replace(".", "_", 1)
    return key


def _flat(key: str, value: object) -> Iterator[tuple[str, Value]]:
    match value:
        case None | () | "" | False:
            return
        case bool() | str():
            yield key, value
        case int() | float():
            yield key, steps(value)
        case tuple() if not any(isinstance(each, Struct) for each in value):
            yield key, tuple(_plain(each) for each in value)
        case tuple():
            for number, each in enumerate(value, 1):
                yield from _flat(f"{key} {number}", each)
        case frozenset():
            yield key, tuple(sorted(str(each) for each in value))
        case Mapping():
            for name, each in value.items():
                yield from _flat(f"{key}.{name}", each)
        case Struct():
            for name, each in _of(value, frozenset()):
                yield f"{key}.{name}", each
        case _:
            yield key, str(value)


def _plain(value: object) -> Value:
    match value:
        case bool() | str():
            return value
        case int() | float():
            return steps(value)
        case tuple():
            return tuple(_plain(each) for each in value)
    return str(value)
