"""The hardware of a job file: `[hinge.NAME]`, `[slide.NAME]`, `[pull.NAME]`.

A record is `like` a generic one, or `like` another of the same job, and gives the numbers that
its leaflet or the caliper says. A pull without `like` is a bar if it has `centers`, else a knob.
"""

from collections.abc import Callable, Mapping
from itertools import pairwise
from types import MappingProxyType
from typing import Any, Generic

from msgspec import Struct

from jigs.given.catalogue import (
    RecordType,
    derive,
    generic_hinges,
    generic_pulls,
    generic_slides,
    solve_constant,
)
from jigs.given.hardware import HOOK_KEYS, NO_PULL, HingeRecord, PullRecord, SlideRecord
from jigs.ground.believable import FRONT_BOARD, PLATE, TAB, Range
from jigs.ground.geometry import SLACK
from jigs.ground.keys import keys_of
from jigs.ground.nearest import suggest_near, suggest_record
from jigs.reading.fieldkeys import numbers_of, read_confirmed, read_keys
from jigs.reading.tomltables import TomlTable

OVERLAY = Range(-30, 30, least=0.5)
"""How far a door covers a side, in a leaflet's table."""
CELLS = ("overlay_at", "overlay_measured")
"""A tab, a plate and the overlay they give, in place of the constant."""


class Shelf(Struct, Generic[RecordType], frozen=True, kw_only=True):
    """All records of one kind that a job may name: its own, then the generic ones."""

    kind: str
    own: Mapping[str, RecordType]
    generic: Mapping[str, RecordType]
    broken: frozenset[str] = frozenset()

    def find(self, name: str) -> RecordType | None:
        """Give a record by name."""
        return self.own.get(name) or self.generic.get(name)

    @property
    def names(self) -> tuple[str, ...]:
        """All names, the job's own first."""
        return (*self.own, *self.generic)

    def take_name(self, table: TomlTable, key: str, *, words: tuple[str, ...] = ()) -> str | None:
        """Take the name of one of the records, or one of some `words`, from a table."""
        name = table.text(key)
        if name is None or self.knows(table, key, name, words=words):
            return name
        return None

    def knows(self, table: TomlTable, key: str, name: str, *, words: tuple[str, ...] = ()) -> bool:
        """Tell whether a name at a key is one of a record, or of some `words`; note it if not."""
        if name in words or name in self.broken or self.find(name):
            return True
        near = suggest_record(name, (*self.names, *words))
        table.note(key, f"unknown {self.kind} ('{name[:40]}' given); {near}")
        return False


def take_hinges(table: TomlTable, shelf: Shelf[HingeRecord]) -> tuple[str, ...]:
    """Take the names at `hinge`: one record, or a list of one for each way that a door hangs.

    Two of one kind are a fault: nothing would say which of them a door hangs on.
    """
    value = table.peek("hinge")
    if not isinstance(value, list):
        name = shelf.take_name(table, "hinge")
        return () if name is None else (name,)
    table.pick("hinge")
    if not value or not all(isinstance(name, str) for name in value):
        given = table.given("hinge")
        table.note("hinge", f"not a list of names ({given} given); names of hinges are allowed")
        return ()
    names = tuple(name.strip() for name in value)
    found = [record for name in names if shelf.knows(table, "hinge", name)
             for record in [shelf.find(name)] if record is not None]  # fmt: skip
    for kind in ("full", "half", "inset"):
        alike = [record.name for record in found if record.kind == kind]
        if len(alike) > 1:
            table.note(
                "hinge",
                f"several of the kind {kind} ({', '.join(alike)} given); one of each kind is "
                "allowed: full, half, inset",
            )
    return names


def read_hinges(table: TomlTable | None, shared: TomlTable | None = None) -> Shelf[HingeRecord]:
    """Read all `[hinge.NAME]` tables, of the job and of the hardware file it shares."""
    return _read_shelf("hinge", (table, shared), generic_hinges(), _read_hinge)


def read_slides(table: TomlTable | None, shared: TomlTable | None = None) -> Shelf[SlideRecord]:
    """Read all `[slide.NAME]` tables, of the job and of the hardware file it shares."""
    return _read_shelf("slide", (table, shared), generic_slides(), _read_slide)


def read_pulls(table: TomlTable | None, shared: TomlTable | None = None) -> Shelf[PullRecord]:
    """Read all `[pull.NAME]` tables, of the job and of the hardware file it shares."""
    return _read_shelf("pull", (table, shared), generic_pulls(), _read_pull, basis=_pull_basis)


def _pull_basis(table: TomlTable) -> str:
    """Name what a pull without `like` starts from."""
    return "bar-160" if "centers" in table else "knob"


def _read_shelf(
    kind: str,
    files: tuple[TomlTable | None, TomlTable | None],
    generic: Mapping[str, RecordType],
    read: Callable[[TomlTable], dict[str, Any]],
    basis: Callable[[TomlTable], str] | None = None,
) -> Shelf[RecordType]:
    """Read the records of one kind, each after the one it is like; from the job's own tables
    and from those of its hardware file, of which none may bear a name twice."""
    own_tables, shared = (table.named_tables() if table else {} for table in files)
    for name in own_tables:
        if name in shared:
            place = shared[name].book.place(shared[name].path)
            own_tables[name].book.note(
                own_tables[name].path,
                f"the name is taken ('{name[:40]}' given; also {place}); "
                "give one of the two another name",
            )
    tables: dict[str, TomlTable] = {**shared, **own_tables}
    given: dict[str, dict[str, Any]] = {}
    like: dict[str, str] = {}
    for name, record in tables.items():
        _check_name(record, name, generic)
        if "like" not in record and basis is None:
            record.book.note(
                record.path,
                f"like is missing; name the generic {kind} that comes nearest, "
                f"such as '{next(iter(generic))}'",
            )
        text = record.text("like") or (basis(record) if basis else "")
        if text and text not in tables and text not in generic:
            others: list[str] = [other for other in tables if other != name]
            near: str = suggest_record(text, (*others, *generic))
            record.note("like", f"unknown {kind} ('{text[:40]}' given); {near}")
        shown = text if text in generic else next(iter(generic))
        record.hint(numbers_of(type(generic[shown])), f" ('jigsheet hardware {shown}' draws it)")
        like[name], given[name] = text, read(record)
        record.close()
    own: dict[str, RecordType] = {}
    for name in tables:
        _derive_chain(name, tables, like, given, generic, own)
    for slide_name, made in own.items():
        if isinstance(made, SlideRecord):
            _check_places(made, tables[slide_name])
            _check_hooks(made, tables[slide_name])
    return Shelf(
        kind=kind,
        own=MappingProxyType({name: own[name] for name in tables if name in own}),
        generic=generic,
        broken=frozenset(tables) - frozenset(own),
    )


def _derive_chain(
    name: str,
    tables: Mapping[str, TomlTable],
    like: Mapping[str, str],
    given: Mapping[str, dict[str, Any]],
    generic: Mapping[str, RecordType],
    own: dict[str, RecordType],
) -> None:
    """Derive a record after all those it is like, one after the other; note a circle."""
    start = name
    chain: list[str] = []
    while name in tables and name not in own:
        if name in chain:
            circle = " -> ".join([*chain[chain.index(name) :], name])
            if name == start == min(chain):
                tables[name].note(
                    "like", f"goes round in a circle ({circle} given); end at a generic record"
                )
            return
        chain.append(name)
        name = like[name]
    record = own.get(name) or generic.get(name)
    if record is None:
        return
    for step in reversed(chain):
        record = derive(record, name=step, given=given[step])
        own[step] = record


def _check_name(record: TomlTable, name: str, generic: Mapping[str, object]) -> None:
    if name in generic or name == NO_PULL:
        record.book.note(
            record.path, f"the name is taken ('{name}' given); give your own record another name"
        )
    elif not (name.isprintable() and 0 < len(name.strip()) <= 40):
        record.book.note(record.path, "a record's name is 1 to 40 printable characters")


def _read_hinge(table: TomlTable) -> dict[str, Any]:
    given = read_keys(table, HingeRecord)
    _put(given, "least_reveal", _read_least_reveal(table))
    rest = ["constant", *CELLS]
    for key in CELLS:
        rest.remove(key)
        _put(given, "constant", _read_cell(table, key, beside=rest))
    same = {cell: "constant" for cell in CELLS if cell in table}
    given["confirmed"] = read_confirmed(table, numbers_of(HingeRecord), given, same=same)
    if "overlay_measured" in table:
        given["confirmed"] = {**given["confirmed"], "constant": "measured"}
    return given


def _read_cell(table: TomlTable, key: str, *, beside: list[str]) -> float | None:
    """Read a tab, a plate and the overlay they give, of the leaflet's table (`overlay_at`) or of
    a scrap door, side screw at its middle (`overlay_measured`); give the constant, mm."""
    cell = table.table(key)
    if cell is None:
        return None
    tab, plate = cell.length("tab", TAB), cell.length("plate", PLATE)
    overlay = cell.length("overlay", OVERLAY)
    cell.require("tab", "plate", "overlay")
    cell.close()
    for other in beside:
        if other in table:
            table.note(key, f"stands beside {other}; give one of the two, it fixes the other")
    if tab is None or plate is None or overlay is None:
        return None
    return solve_constant(tab=tab, plate=plate, overlay=overlay)


def _read_least_reveal(table: TomlTable) -> tuple[tuple[float, float], ...] | None:
    """Read pairs of door thickness and least reveal: `[["19 mm", "0.9 mm"], ...]`."""
    value = table.pick("least_reveal")
    if value is None:
        return None
    if not isinstance(value, list) or not all(isinstance(r, list) and len(r) == 2 for r in value):
        table.note(
            "least_reveal",
            f"not a list of pairs ({table.given('least_reveal')} given); "
            'allowed: [["19 mm", "0.9 mm"], ...], door thickness and least reveal',
        )
        return None
    rows = []
    within = keys_of(HingeRecord)["least_reveal"].within
    for row in value:
        thickness = table.measure("least_reveal", row[0], FRONT_BOARD)
        reveal = table.measure("least_reveal", row[1], within)
        if thickness is None or reveal is None:
            return None
        rows.append((thickness, reveal))
    if not rows or any(b[0] <= a[0] for a, b in pairwise(rows)):
        table.note(
            "least_reveal",
            f"thickness does not rise from row to row ({table.given('least_reveal')} given)",
        )
        return None
    return tuple(rows)


def _read_slide(table: TomlTable) -> dict[str, Any]:
    given = read_keys(table, SlideRecord)
    for key in ("fixing_at", "carry_at"):
        if any(b <= a for a, b in pairwise(given.get(key, ()))):
            table.note(key, f"places do not rise from front to back ({table.given(key)} given)")
    given["confirmed"] = read_confirmed(table, numbers_of(SlideRecord), given)
    return given


def _check_places(slide: SlideRecord, table: TomlTable) -> None:
    """Note a fixing place, given by the person, that lies beyond the slide."""
    for key, places in (("fixing_at", slide.fixing_at), ("carry_at", slide.carry_at)):
        if key in table and places and places[-1] > slide.length + SLACK:
            table.note(
                key,
                f"lies beyond the slide ({places[-1]:.1f} mm given); "
                f"the slide is {slide.length:.1f} mm long",
            )


def _check_hooks(slide: SlideRecord, table: TomlTable) -> None:
    """Note hooks of which a number is missing, or that a side mount does not have."""
    given = [key for key in HOOK_KEYS if key in table]
    if given and slide.mount == "side":
        table.note(given[0], "stands at a side mount; hooks at the rear are an undermount slide's")
        return
    missing = [key for key in HOOK_KEYS if getattr(slide, key) is None and key not in table]
    if given and missing:
        table.note(
            given[0],
            f"stands without {', '.join(missing)}; a hook's hole takes all of "
            f"{', '.join(HOOK_KEYS)}",
        )


def _read_pull(table: TomlTable) -> dict[str, Any]:
    given = read_keys(table, PullRecord)
    where = keys_of(PullRecord)["drawer"]
    value = table.pick("drawer")
    if value in where.allowed:
        given["drawer"] = value
    elif isinstance(value, str) and not any(letter.isdigit() for letter in value):
        near = suggest_near(value, where.allowed)
        table.note(
            "drawer",
            f"not known ({table.given('drawer')} given); "
            f"{near + ' ' if near else ''}"
            "allowed: center, upper-third, or a length below the top edge",
        )
    elif value is not None:
        _put(given, "drawer", table.measure("drawer", value, where.within))
    given["confirmed"] = read_confirmed(table, numbers_of(PullRecord), given)
    return given


def _put(given: dict[str, Any], key: str, value: object) -> None:
    if value is not None:
        given[key] = value
