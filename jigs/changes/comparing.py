"""What two states of a job make, held against each other."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.changes.causing import Edit, causes_of, list_edits
from jigs.changes.given import is_measured
from jigs.changes.made import Made, MadeNeed, MadePart, MadeRow, MadeStation, MadeWall, Sizes
from jigs.changes.parting import (
    PartChange,
    compare_part,
    is_same_make,
    part_gone,
    part_new,
)
from jigs.ground.grouped import grouped


class StationChange(Struct, frozen=True, kw_only=True):
    """A station whose page is stale, and the parts by which it is; all of them where its cards
    are others."""

    station: MadeStation
    """As it is now, or was."""
    kind: Literal["changed", "new", "gone"]
    parts: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """Its name."""
        return self.station.name


class NeedChange(Struct, frozen=True, kw_only=True):
    """A line of the order of which more is bought, or less; of a front, also one that is bought in
    another size."""

    need: MadeNeed
    before: float
    after: float
    was: Sizes = ()
    """The sizes of a front that is bought in other ones now; mm."""


class Changes(Struct, frozen=True, kw_only=True):
    """All that is stale."""

    old: Made
    new: Made
    edits: tuple[Edit, ...] = ()
    parts: tuple[PartChange, ...] = ()
    recoded: tuple[str, ...] = ()
    """Of an older pack, which kept codes alone: the parts whose code is another one, or that are
    new."""
    stations: tuple[StationChange, ...] = ()
    needs: tuple[NeedChange, ...] = ()
    tables: tuple[str, ...] = ()
    """The boxes whose table of heights is stale."""
    hung: tuple[str, ...] = ()
    """The walls of which lines or places are others."""
    drawn: tuple[str, ...] = ()
    """The walls whose elevation is another one."""
    lists: tuple[str, ...] = ()
    """The files of lists that say something else."""
    confirmed: tuple[str, ...] = ()
    """The numbers that were open and are no more: paper that calls them open serves on."""

    @property
    def stopped(self) -> tuple[str, ...]:
        """The parts that are held back now and were not."""
        return tuple(each.id for each in self.parts if each.stopped)

    @property
    def labels(self) -> tuple[str, ...]:
        """The parts whose label is stale."""
        return self.recoded or tuple(each.id for each in self.parts if each.label)

    @property
    def sheets(self) -> tuple[str, ...]:
        """The parts whose sheet is stale."""
        parts = (self.new.parts[name] for name in self.recoded)
        recoded = tuple(part.id for part in parts if part.stations and not part.held)
        return recoded or tuple(each.id for each in self.parts if each.sheet)

    @property
    def pages(self) -> tuple[str, ...]:
        """The stations to print anew."""
        return tuple(each.name for each in self.stations if each.kind != "gone")

    @property
    def nothing(self) -> bool:
        """Whether nothing is stale; what was edited bears on nothing then."""
        return not (
            self.parts or self.recoded or self.stations or self.needs or self.tables
            or self.hung or self.drawn or self.lists
        )  # fmt: skip


def compare(old: Made, new: Made) -> Changes:
    """Hold what a job makes against what it made before."""
    if not old.whole or not new.whole:
        return _compare_codes(old, new)
    edits = list_edits(old, new)
    rows = (_rows(old), _rows(new))
    parts = tuple(
        replace(change, edits=causes_of(edits, change.before, change.after))
        for change in _parts(old.parts, new.parts, rows)
    )
    opened = [
        {name for part in made.parts.values() for name in part.unsure.open} for made in (old, new)
    ]
    found = Changes(
        old=old, new=new, edits=edits, parts=parts,
        stations=tuple(_stations(old.stations, new.stations)),
        needs=tuple(
            need
            for need in _needs(_renamed_needs(old.order, parts), new.order)
            if not (need.need.what == "front" and _is_not_ordered(new, need.need.name))
        ),
        tables=tuple(_tables(old, new)),
        hung=tuple(_walls(old.walls, new.walls, drawn=False)),
        drawn=tuple(_walls(old.walls, new.walls, drawn=True)),
        confirmed=tuple(sorted(opened[0] - opened[1])),
    )  # fmt: skip
    if found.nothing and found.confirmed:
        return found  # lists that call open what is confirmed now mislead nobody
    return replace(
        found, lists=tuple(name for name in new.lists if new.lists[name] != old.lists.get(name))
    )


def without_measures(changes: Changes) -> Changes:
    """Leave out of the edits what a delivered list says of fronts."""
    return replace(
        changes,
        edits=_unmeasured(changes.edits),
        parts=tuple(replace(part, edits=_unmeasured(part.edits)) for part in changes.parts),
    )


def _unmeasured(edits: Sequence[Edit]) -> tuple[Edit, ...]:
    return tuple(edit for edit in edits if not is_measured(edit.given))


def _compare_codes(old: Made, new: Made) -> Changes:
    """Compare by codes alone; what is no more is told, and of no other part more than that."""
    recoded = tuple(
        part.id
        for part in new.parts.values()
        if part.id not in old.parts or old.parts[part.id].code != part.code
    )
    gone = tuple(part_gone(part) for part in old.parts.values() if part.id not in new.parts)
    stale = set(recoded)
    stations = tuple(
        StationChange(station=station, kind="changed", parts=parts)
        for station in new.stations
        if (parts := tuple(dict.fromkeys(r.part for r in station.rows if r.part in stale)))
    )
    return Changes(old=old, new=new, recoded=recoded, parts=gone, stations=stations)


def _rows(made: Made) -> dict[str, list[MadeRow]]:
    return grouped((row.part, row) for station in made.stations for row in station.rows)


def _parts(
    old: Mapping[str, MadePart],
    new: Mapping[str, MadePart],
    rows: tuple[Mapping[str, list[MadeRow]], Mapping[str, list[MadeRow]]],
) -> Iterator[PartChange]:
    """Give what became of each part, in the order of the job, those that are no more last. A part
    that was made as another one is now is that one under another name."""
    renamed = _renamed(old, new)
    taken = set(renamed.values())
    held = {name for name, part in new.items() if part.held}
    for name, after in new.items():
        before = old.get(renamed.get(name, name))
        if before is None or (before.id in taken and renamed.get(name) != before.id):
            yield part_new(after)
        elif change := compare_part(
            before, after, rows[0].get(before.id, []), rows[1].get(name, []), held
        ):
            yield change
    for name, before in old.items():
        if name not in taken and (name not in new or name in renamed):
            yield part_gone(before)


def _renamed(old: Mapping[str, MadePart], new: Mapping[str, MadePart]) -> dict[str, str]:
    """Give what parts were called before, by what they are called now."""
    lost = [p for p in old.values() if p.id not in new or not is_same_make(p, new[p.id])]
    free = grouped((part.code, part) for part in lost if part.code)
    found: dict[str, str] = {}
    for after in new.values():
        if after.id in old and is_same_make(old[after.id], after):
            continue
        among = free.get(after.code, [])
        if before := next((part for part in among if is_same_make(part, after)), None):
            among.remove(before)
            found[after.id] = before.id
    return found


def _stations(old: Sequence[MadeStation], new: Sequence[MadeStation]) -> Iterator[StationChange]:
    was = {station.name: station for station in old}
    now = {station.name for station in new}
    for station in new:
        before = was.get(station.name)
        if before is None:
            yield StationChange(
                station=station, kind="new", parts=_of(row.part for row in station.rows)
            )
        elif before != station:
            kept = set(before.rows) & set(station.rows)
            changed = [r.part for r in (*station.rows, *before.rows) if r not in kept]
            same = (before.code, before.cards) == (station.code, station.cards)
            rows = changed if same and changed else [row.part for row in station.rows]
            yield StationChange(station=station, kind="changed", parts=_of(rows))
    for station in old:
        if station.name not in now:
            yield StationChange(
                station=station, kind="gone", parts=_of(row.part for row in station.rows)
            )


def _of(parts: Iterator[str] | Sequence[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(parts))


def _needs(old: Sequence[MadeNeed], new: Sequence[MadeNeed]) -> Iterator[NeedChange]:
    """Give each line of which more is bought, or less. Where the order has a line twice it counts
    once, with the sum."""
    was, now = _summed(old), _summed(new)
    sizes = {need.name: need.sizes for need in was if need.what == "front"}
    other = {need.name for need in now if need.what == "front"} & set(sizes)
    for key in dict.fromkeys([*now, *was]):
        before, after = was.get(key, 0.0), now.get(key, 0.0)
        need = replace(key, buy=after)
        if before == after:
            continue
        if key.what != "front" or key.name not in other:
            yield NeedChange(need=need, before=before, after=after)
        elif after:
            yield NeedChange(need=need, before=after, after=after, was=sizes[key.name])


def _is_not_ordered(made: Made, front: str) -> bool:
    """Tell whether a front is in hand, or held back: then its line in the order says nothing."""
    return front in made.parts and (made.parts[front].in_hand or bool(made.parts[front].held))


def _renamed_needs(needs: Sequence[MadeNeed], parts: Sequence[PartChange]) -> tuple[MadeNeed, ...]:
    """Give the order of before with fronts under the names that they have now."""
    names = {each.before.id: each.id for each in parts if each.lot == "renamed" and each.before}
    return tuple(
        replace(need, name=names.get(need.name, need.name)) if need.what == "front" else need
        for need in needs
    )


def _summed(needs: Sequence[MadeNeed]) -> dict[MadeNeed, float]:
    found = grouped((replace(need, buy=0.0), need.buy) for need in needs)
    return {key: round(sum(each), 4) for key, each in found.items()}


def _tables(old: Made, new: Made) -> Iterator[str]:
    """Give the boxes of which a row of a side is another one."""
    was, now = _by_box(old), _by_box(new)
    return (box for box in dict.fromkeys([*now, *was]) if was.get(box) != now.get(box))


def _by_box(made: Made) -> dict[str, list[tuple[object, ...]]]:
    return grouped(
        (box, (row.part, row.code, row.serves, row.settings, row.figures))
        for station in made.stations
        if station.work == "sides"
        for row in station.rows
        for box in made.parts[row.part].boxes
    )


def _walls(old: Sequence[MadeWall], new: Sequence[MadeWall], *, drawn: bool) -> Iterator[str]:
    was = {wall.name: wall for wall in old}
    for wall in new:
        before = was.get(wall.name)
        if before is None or _shown(before, drawn=drawn) != _shown(wall, drawn=drawn):
            yield wall.name


def _shown(wall: MadeWall, *, drawn: bool) -> tuple[object, ...]:
    return wall.drawn if drawn else (wall.lines, wall.boxes)
