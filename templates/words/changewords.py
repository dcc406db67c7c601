"""What an edit has made stale, in words: what was edited, what is cut, bored and ordered anew, and
how wood that was worked on by the figures of before is saved.
"""

from collections.abc import Iterable, Sequence
from typing import assert_never

from jigs.changes.causing import Edit
from jigs.changes.comparing import Changes, NeedChange
from jigs.changes.made import MadeNeed, Value
from jigs.changes.parting import PartChange
from jigs.ground.grouped import grouped
from jigs.ground.lengths import Unit, format_sizes
from templates.words.orderwords import ITEM_WORDS, SCREW_WORDS

NOTHING = "Nothing is stale."
EDITED = "EDITED (lengths in mm)"
PRINT = "PRINT ANEW"
CUT = "CUT ANEW"
BORE = "BORE ANEW"
ORDER = "ORDER"
LABEL = "LABEL ANEW, all else is the same"
CAME = "NEW, AND NO MORE"
HELD = "HELD BACK NOW"
HELD_WHY = "'jigsheet check' says why"
HELD_NOW = (
    "Until a part is released nothing of it is cut, bored or ordered, and nothing is plugged or "
    "thrown away."
)
FREE = "FREE AGAIN"
FREE_NOW = "no longer held back; throw its HOLD label away. What is to be bored of it stands below"
BORE_NO_MORE = "BORE NO MORE"
HELD_NEEDS = (
    "An order leaves out what is held back, its hardware too: send nothing back before it is "
    "released."
)
SPOILT = "SPOILT, by what is marked as done"
SPOILT_IF = "SPOILT IF IT IS DONE ALREADY"
REPLACES = (
    "Each new page replaces the old page of its name whole, rows that stayed and all: throw the "
    "old ones away, and stick each label over the old one."
)
AS_IT_WAS = "No wood is concerned: nothing is cut, bored or ordered anew."
CODES_ALONE = (
    "The pack is of another jigsheet and kept nothing but the codes of its parts: where a code "
    "differs the holes or the size do, and what has changed it cannot say, nor what has changed "
    "beside. Print these anew, and compare every figure with the part before you go on."
)
SAME_CODES = (
    "The pack is of another jigsheet and kept nothing but the codes of its parts: all are the "
    "same, so that holes and sizes are; what has changed beside it cannot say."
)
REWORK_CARE = "On scrap first; eye and ear protection, the part clamped."


def title_words(changes: Changes, names: tuple[str, str]) -> str:
    """Say what is compared: which two of which job, and by which versions, where they differ."""
    old, new = changes.old, changes.new
    job = new.job if old.job == new.job else f"{old.job} -> {new.job}"
    tool = "" if old.tool == new.tool else f", jigsheet {old.tool} -> {new.tool}"
    return f"{job}: {names[0]} -> {names[1]}{tool}"


def uneven_words(old: str | None, new: str | None, *, packs: tuple[bool, bool]) -> str:
    """Say that one of the two, packs or jobs, is told from a delivered list, `old` or `new`, and
    the other from none."""
    if new:
        return (
            f"NEW has the fronts as {new} measures them, OLD has no delivered list: what is stale "
            "may be by those measures alone. That is right if they came since."
        )
    if packs[1]:
        return f"OLD has {old}, the pack NEW was made without it: write the pack anew with it."
    made = "The pack was made with" if packs[0] else "OLD names"
    return (
        f"{made} {old}: give it too, --delivered {old}. Without it all that was measured is told "
        "as stale."
    )


def edits_words(edits: Sequence[Edit]) -> list[str]:
    """Say what was edited, of several alike once; of very much the first."""
    alike = grouped(((e.given.kind, e.given.key, _change(e)), e.given.name) for e in edits)
    said = [
        _edit_words(kind, [name for name in names if name], key, change)
        for (kind, key, change), names in alike.items()
    ]
    if len(said) > MOST_EDITS:
        more = len(said) - MOST_EDITS
        said[MOST_EDITS:] = [f"and {more} more: --format json has all"]
    return said


MOST_EDITS = 15


def edit_words(edit: Edit) -> str:
    """Say what was edited: `box B3: width 450 -> 448`."""
    given = edit.given
    return _edit_words(given.kind, [given.name] if given.name else [], given.key, _change(edit))


def _edit_words(kind: str, names: Sequence[str], key: str, change: str) -> str:
    whose = f"{kind} {', '.join(names)}" if names else kind
    return f"{whose}: {key} {change}" if key else f"{whose}: {change}"


def _change(edit: Edit) -> str:
    if not edit.given.key:
        return "new" if edit.after is not None else "no more"
    return f"{_value(edit.before)} -> {_value(edit.after)}"


def _value(value: Value | None) -> str:
    match value:
        case None:
            return "not given"
        case bool():
            return "yes" if value else "no"
        case float():
            return f"{value:.8g}"
        case str():
            return value
    return ", ".join(_value(each) for each in value)


def cause_words(edits: Sequence[Edit]) -> str:
    """Say by which edits something is; "" where none can be named, or so many that it says
    nothing."""
    return "; ".join(map(edit_words, edits)) if len(edits) <= MOST_CAUSES else ""


MOST_CAUSES = 3
MANY_PARTS = 12
"""Of more parts with one thing to do it is said how many they are."""


def parts_words(parts: Sequence[str]) -> str:
    """Name the parts with which the same is to be done."""
    names = ", ".join(parts)
    return f"{names} ({len(parts)} parts)" if len(parts) > MANY_PARTS else names


def needs_words(changes: Iterable[NeedChange], unit: Unit) -> list[str]:
    """Say how much more is bought of everything, how much is too much, and which fronts are bought
    in other sizes, those alike together."""
    said = grouped((_need_words(each, unit), each.need.name) for each in changes)
    return [
        f"front {', '.join(names)}: {words}" if front else words
        for (front, words), names in said.items()
    ]


def _need_words(change: NeedChange, unit: Unit) -> tuple[bool, str]:
    """Say so of one line, and whether it is of a front, whose name stands before it."""
    need, off = change.need, round(change.after - change.before, 4)
    if need.what == "front":
        now = format_sizes(need.sizes, unit)
        if change.was:
            return True, f"{now}, no more {format_sizes(change.was, unit)}"
        return True, f"{'order it' if off > 0 else 'no more'}, {now}"
    pieces = need.unit in ("piece", "sheet")
    amount = f"{abs(off):g}{'' if pieces else f' {need.unit}'}"
    far = "more" if off > 0 else "too many" if pieces else "too much"
    said = f" ({change.after:g} in all)" if change.before and change.after else ""
    return False, f"{amount} {far}: {_called(need, unit)}{said}"


def _called(need: MadeNeed, unit: Unit) -> str:
    size = format_sizes(need.sizes, unit) if need.sizes else ""
    names = {
        **ITEM_WORDS, "screw": f"screw {SCREW_WORDS.get(need.name, need.name)}",
        "drawer-box": "drawer box for slide", "band": "edge band", "paint": "paint",
        "board": "sheet of board for", "fitting": "fitting",
    }  # fmt: skip
    name = "" if need.what == "screw" else f" {need.name}" if need.name else ""
    return f"{names[need.what]}{name}{f', {size}' if size else ''}"


def lot_words(change: PartChange) -> str:
    """Say of a part that came or went, or has another name, what it is; "" of others."""
    match change.lot:
        case "renamed":
            assert change.before is not None, "it had a name"
            return f"{change.id} was {change.before.id}"
        case "new":
            return f"{change.id} is new"
        case "gone":
            return f"{change.id} is no more"
        case "changed":
            return ""
    assert_never(change.lot)


def confirmed_words(changes: Changes) -> Iterable[str]:
    """Say what is no longer open."""
    if changes.confirmed:
        yield (
            f"No longer open: {', '.join(changes.confirmed)}. Paper that still says OPEN of them "
            "serves on, where it is not named above."
        )
