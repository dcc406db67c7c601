"""One part before and after an edit: what of its paper is stale, what is to be cut and bored anew.

Its paper is stale where a figure, a name or a code on it is another one, or where it is silent of
something that is open or assumed now. That it calls open what is confirmed now misleads nobody.
"""

from collections.abc import Collection
from typing import Literal

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.changes.boring import HoleChange
from jigs.changes.causing import Edit, newly
from jigs.changes.made import MadeHole, MadePart, MadeRow, Unsure
from jigs.changes.sizing import SizeChange, Trim, compare_sizes, compare_trimmed, sawn

Lot = Literal["changed", "new", "gone", "renamed"]
"""What became of a part: it is another one under its ID; there is one more; it is no more; it is
the same under another ID."""

NOT_ON_LABEL = frozenset(
    {"holes", "frame", "in_hand", "joined", "stuff", "drilled_for", "front", "unsure"}
)
"""Fields of a part that its label does not say; its code tells of most."""
NOT_ON_SHEET = frozenset({"count", "in_hand", "said", "stations", "cut", "band", "unsure", "front"})
"""Fields that its sheet does not say."""


class PartChange(Struct, frozen=True, kw_only=True):
    """What became of a part."""

    lot: Lot
    before: MadePart | None = None
    after: MadePart | None = None
    label: bool = False
    """Whether its label is printed anew."""
    sheet: bool = False
    """Whether its sheet is; what is held back has none."""
    stopped: bool = False
    """Whether it is held back now and was not: nothing is known of its holes, and nothing is
    done with it before it is released."""
    waits: tuple[str, ...] = ()
    """The parts for which it was bored that are held back now: where their holes come to be nobody
    says."""
    sizes: tuple[SizeChange, ...] = ()
    holes: tuple[HoleChange, ...] = ()
    trim: Trim | None = None
    """How it is cut down, where it has become smaller and holes stay right by it."""
    edits: tuple[Edit, ...] = field(default=())
    """By which edits, as far as they can be traced."""

    @property
    def part(self) -> MadePart:
        """The part as it is now, or as it was."""
        found = self.after or self.before
        assert found is not None, "a change is of a part"
        return found

    @property
    def freed(self) -> bool:
        """Whether it was held back and no longer is."""
        return bool(self.before and self.before.held and self.after and not self.after.held)

    @property
    def id(self) -> str:
        """What it is called now, or was."""
        return self.part.id


def compare_part(
    before: MadePart,
    after: MadePart,
    was: list[MadeRow],
    now: list[MadeRow],
    held: Collection[str] = (),
) -> PartChange | None:
    """Tell what became of a part that there was and is; `was`, `now`: its rows at the stations,
    `held`: the parts that are held back now. None where nothing did."""
    stopped = bool(after.held) and not before.held
    # Of what is held back nobody says where its holes are: none of them is gone for that.
    trim, holes = (None, ()) if stopped else compare_trimmed(before, after, held)
    if after.ready and not before.ready:
        holes = tuple(map(_kept, holes))
    sizes = () if stopped else compare_sizes(before, after)
    waits = tuple(dict.fromkeys(hole.serves for hole in before.holes if hole.serves in held))
    silent = newly(before.unsure.open, after.unsure.open) or newly(
        before.unsure.assumed, after.unsure.assumed
    )
    label = silent or _differ(before, after, NOT_ON_LABEL)
    drawn = is_drawn(after) or (is_drawn(before) and not after.held)
    sheet = drawn and (silent or _differ(before, after, NOT_ON_SHEET) or _set(was) != _set(now))
    if not (label or sheet or holes or sizes or stopped):
        return None
    renamed = before.id != after.id
    return PartChange(
        lot="renamed" if renamed else "changed", before=before, after=after,
        label=label or renamed, sheet=sheet, stopped=stopped, waits=waits, sizes=sizes,
        holes=holes, trim=trim if holes or sizes else None,
    )  # fmt: skip


def _kept(change: HoleChange) -> HoleChange:
    """Say of a door that is bored now of its cups that they stay: no sheet asks for them."""
    if change.kind != "gone" or change.hole.purpose not in ("cup", "cup-fixing"):
        return change
    return replace(change, kind="done", cure="stays")


def part_gone(before: MadePart) -> PartChange:
    """Say of a part that there is no more what is spoilt with it."""
    sizes = (SizeChange(kind="gone", before=sawn(before)),) if sawn(before) else ()
    return PartChange(lot="gone", before=before, sizes=sizes)


def part_new(after: MadePart) -> PartChange:
    """Say of a part that there was not what it asks for."""
    sizes = (SizeChange(kind="new", after=sawn(after)),) if sawn(after) else ()
    holes = tuple(HoleChange(kind="new", after=hole, cure="bore") for hole in after.holes)
    return PartChange(
        lot="new", after=after, label=True, sheet=is_drawn(after), sizes=sizes, holes=holes
    )


def is_drawn(part: MadePart) -> bool:
    """Tell whether a part has a sheet: there is something to drill, or to stand on it."""
    return bool(part.stations) and not part.held


def is_same_make(before: MadePart, after: MadePart) -> bool:
    """Tell whether a part that was made as one serves as the other: all but its name and place."""
    return before.code == after.code != "" and not _differ(_bare(before), _bare(after), frozenset())


def _bare(part: MadePart) -> MadePart:
    return replace(
        part, id="", boxes=(), wall="", said=(), stations=(), front="",
        drilled_for=replace(part.drilled_for, records=()), unsure=Unsure(),
        holes=tuple(replace(hole, serves="", work="") for hole in part.holes),
    )  # fmt: skip


def _differ(before: MadePart, after: MadePart, left_out: frozenset[str]) -> bool:
    return any(
        (one := getattr(before, name)) != (other := getattr(after, name))
        and _plain(one) != _plain(other)
        for name in MadePart.__struct_fields__
        if name not in left_out
    )


def _plain(value: object) -> object:
    """Leave out of holes at which station they are bored."""
    if isinstance(value, tuple):
        return tuple(_plain(each) for each in value)
    return replace(value, work="") if isinstance(value, MadeHole) else value


def _set(rows: list[MadeRow]) -> list[tuple[object, ...]]:
    """Give what rows say but for the letters of their cards."""
    return [(row.serves, row.settings, row.figures) for row in rows]
