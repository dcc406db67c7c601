"""The boxes of a front list: worked out from their fronts, or those of a job file; and the pulls
that any front list names.

A box that nobody described is as large as its fronts with their gaps and reveals. One with
nothing but drawers is a drawer box; one over 1500 mm high is tall; else it is a base box. It is
taken for a wall box where a row says so (`Oberschrank`), and with a false front for a sink's where
one says that. A front without a box is a box of its own.
"""

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from jigs.given.hardware import NO_PULL, PullRecord
from jigs.given.ids import find_clashes, name_boxes, name_fronts, name_parts, names_board
from jigs.given.job import BOX_KINDS, BoxKind, BoxSpec, FrontSpec, Reveal
from jigs.given.listspec import ListSpec, clear_width
from jigs.given.stated import BoxRead
from jigs.ground.errors import Ahead, Fault, ReadingError
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit
from jigs.ground.nearest import suggest, suggest_record
from jigs.reading.frontboxes import ListedFront
from jigs.reading.frontlist import FrontList, read_front_list
from jigs.reading.jobboxes import ABOVE_FLOOR, ASSUMED_DEPTH
from jigs.reading.jobhardware import Shelf
from jigs.reading.namedagain import RowFront

TALL_FROM = 1500.0
"""A box higher than this is taken for a tall one, mm (common practice, no source)."""

INFERRED_KEYS = ("kind", "width", "height", "depth", "above_floor")
"""What is assumed about a box that was worked out from its fronts."""


def infer_boxes(front_list: FrontList, reveal: Reveal) -> tuple[BoxSpec, ...]:
    """Work the boxes out from a bare list, in its order. Raises ReadingError."""
    stacks = _stack_rows(front_list.rows)
    named = {box: _name_stack(box, rows) for box, rows in stacks.items()}
    faults = _check_names(named, tuple(stacks))
    faults += [
        Fault(rows[0].where, f"box {box} has openings alone; give the width of one of them")
        for box, rows in stacks.items()
        if all(row.spec.width is None for row in rows)
    ]
    if faults:
        raise ReadingError(faults)
    return tuple(
        _infer_box(box, rows, [front for front, _ in named[box]], reveal)
        for box, rows in stacks.items()
    )


def join_fronts(front_list: FrontList, boxes: Sequence[BoxSpec]) -> tuple[BoxSpec, ...]:
    """Hang a list's fronts on the boxes of a job file, below those they have already.

    Raises ReadingError for a box that the job does not have, and for IDs that clash.
    """
    stacks = {box.id: [row for row in front_list.rows if row.box == box.id] for box in boxes}
    faults = [
        Fault(row.where, f"no such box ('{row.box}' given); {suggest(row.box, stacks)}")
        for row in front_list.rows
        if row.box not in stacks
    ]
    named = {
        box.id: [
            *((front, f"box {box.id}") for front in box.fronts),
            *_name_stack(box.id, stacks[box.id], above=len(box.fronts)),
        ]
        for box in boxes
    }
    faults += _check_names(named, tuple(stacks))
    if faults:
        raise ReadingError(faults)
    return tuple(replace(box, fronts=tuple(front for front, _ in named[box.id])) for box in boxes)


def check_boxes_named(front_list: FrontList) -> list[Fault]:
    """Find the rows that name no box: a job file joins them to its boxes by that."""
    return [
        Fault(
            row.where,
            "names no box; write a column box, that says which fronts hang on one box, from top "
            "to bottom",
        )
        for row in front_list.rows
        if not row.box
    ]


def list_inferred(boxes: Iterable[BoxSpec]) -> frozenset[str]:
    """Give the keys of everything assumed about the inferred ones among some boxes."""
    return frozenset(
        f"box.{box.id}.{key}" for box in boxes if box.inferred for key in INFERRED_KEYS
    )


def _stack_rows(rows: Sequence[ListedFront]) -> dict[str, list[ListedFront]]:
    """Gather the rows of each box; a front without one gets a box, and each of several its own."""
    names = name_boxes({*(row.box for row in rows), *(row.spec.id for row in rows)})
    stacks: dict[str, list[ListedFront]] = {}
    for row in rows:
        if row.box:
            stacks.setdefault(row.box, []).append(row)
        elif row.count == 1:
            stacks[next(names)] = [row]
        else:
            ids = name_fronts(row.spec.id, box="", place=0, count=row.count)
            for front in ids:
                spec = replace(row.spec, id=front if row.spec.id else "")
                stacks[next(names)] = [replace(row, spec=spec, count=1)]
    return stacks


def _name_stack(
    box: str, rows: Sequence[ListedFront], above: int = 0
) -> list[tuple[FrontSpec, str]]:
    """Give the fronts of a box with their IDs, each with its place in the file."""
    return [
        (replace(row.spec, id=front, row=replace(row.spec.row, alike=row.count)), row.where)
        for place, row in enumerate(rows, start=above + 1)
        for front in name_fronts(row.spec.id, box=box, place=place, count=row.count)
    ]


def _check_names(
    named: Mapping[str, Sequence[tuple[FrontSpec, str]]], boxes: Sequence[str]
) -> list[Fault]:
    fronts = [pair for stack in named.values() for pair in stack]
    taken = frozenset(boxes)
    return [
        *find_clashes(
            [
                *((box, f"box {box}") for box in boxes),
                *((p, where) for front, where in fronts for p in name_parts(front.id, front.kind)),
            ]
        ),
        *(
            Fault(
                where,
                f"duplicate ID ('{front.id}' given); it reads like a part of a box: choose another",
            )
            for front, where in fronts
            if names_board(front.id, taken)
        ),
    ]


def _infer_box(
    box: str, rows: Sequence[ListedFront], fronts: Sequence[FrontSpec], reveal: Reveal
) -> BoxSpec:
    """Make the box that fits its fronts: their sum plus gaps and reveals."""
    width = max(clear_width(row.spec, reveal.between) or 0.0 for row in rows)
    stack = sum(front.height or 0.0 for front in fronts) + (len(fronts) - 1) * reveal.between
    kind: BoxKind = "base"
    if all(front.kind == "drawer" for front in fronts):
        kind = "drawer"
    elif stack + reveal.top + reveal.bottom > TALL_FROM + SLACK:
        kind = "tall"
    named = {row.box_kind for row in rows if row.box_kind}
    fixed = any(front.kind == "false-front" for front in fronts)
    if named == {"wall"} or (named == {"sink"} and fixed and kind == "base"):
        [kind] = [one for one in BOX_KINDS if one in named]
    return BoxSpec(
        id=box,
        kind=kind,
        width=width + 2 * reveal.side,
        height=stack + reveal.top_of(kind) + reveal.bottom,
        depth=ASSUMED_DEPTH[kind],
        above_floor=ABOVE_FLOOR[kind],
        fronts=tuple(fronts),
        read=BoxRead(inferred=True),
    )


class OpenedList(Struct, frozen=True, kw_only=True):
    """A job's list as far as it could be read: None with its faults; what was taken for what."""

    fronts: FrontList | None = None
    faults: tuple[Fault, ...] = ()
    told: str = ""
    ahead: Ahead | None = None
    """Finds what it asks besides."""

    @property
    def named(self) -> dict[str, RowFront]:
        """Its fronts, by the IDs that it alone gives them."""
        rows = self.fronts.rows if self.fronts else ()
        return {front.id: front for front in name_rows_alone(rows)}


def open_list(path: Path, unit: Unit, listed: ListSpec | None = None) -> OpenedList:
    """Read the list that a job names. Bare numbers are in `unit` where its header does not say
    otherwise."""
    try:
        fronts = read_front_list(path, listed=listed, bare=False, unstated=unit)
    except ReadingError as error:
        return OpenedList(faults=error.faults, told=error.told, ahead=error.ahead)
    return OpenedList(fronts=fronts, told=fronts.told)


def name_rows_alone(rows: Sequence[ListedFront]) -> tuple[RowFront, ...]:
    """Name the fronts of a list as if the job's boxes had no others."""
    places: dict[str, int] = {}
    found: list[RowFront] = []
    for row in rows:
        places[row.box] = place = places.get(row.box, 0) + 1
        found += [
            RowFront(
                id=name,
                box=row.box,
                kind=row.spec.kind,
                where=row.where,
                own=bool(row.spec.id),
                alike=row.count,
            )
            for name in name_fronts(row.spec.id, box=row.box, place=place, count=row.count)
        ]
    return tuple(found)


def hang_list(
    opened: OpenedList, boxes: Sequence[BoxSpec], pulls: Shelf[PullRecord]
) -> tuple[tuple[BoxSpec, ...], list[Fault], str]:
    """Hang the fronts of a list on a job's boxes. Gives also the list's faults, and what was taken
    for what in it."""
    if opened.fronts is None:
        return tuple(boxes), list(opened.faults), opened.told
    faults = check_pull_names(opened.fronts, pulls)
    try:
        return settle_pull_names(join_fronts(opened.fronts, boxes), pulls), faults, opened.told
    except ReadingError as error:
        return tuple(boxes), [*faults, *error.faults], opened.told


def check_pull_names(front_list: FrontList, pulls: Shelf[PullRecord]) -> list[Fault]:
    """Find the rows whose pull is neither a record nor `none`."""
    known = (*pulls.names, NO_PULL)
    return [
        Fault(
            f"{row.where}, column pull",
            f"unknown pull ('{name[:40]}' given); {suggest_record(name, known)}",
        )
        for row in front_list.rows
        if (name := row.spec.opened_by.pull) and _find(name, pulls) is None
    ]


def settle_pull_names(boxes: Sequence[BoxSpec], pulls: Shelf[PullRecord]) -> tuple[BoxSpec, ...]:
    """Give the fronts the pulls' names as the records write them: a list may write `Knob`."""
    return tuple(
        replace(
            box,
            fronts=tuple(
                replace(
                    front,
                    opened_by=replace(front.opened_by, pull=_find(front.opened_by.pull, pulls)),
                )
                if front.opened_by.pull
                else front
                for front in box.fronts
            ),
        )
        for box in boxes
    )


def _find(name: str, pulls: Shelf[PullRecord]) -> str | None:
    known = (*pulls.names, *pulls.broken, NO_PULL)
    if name in known:
        return name
    return next((word for word in known if word.lower() == name.lower()), None)
