"""What becomes of a part after an edit, in words: on the saw, at the drill, and how wood that was
worked on by the figures of before is saved.
"""

from collections.abc import Mapping, Sequence
from typing import assert_never

from jigs.bench.standing import Step
from jigs.changes.boring import HoleChange, HoleCure
from jigs.changes.cups import KeptCups
from jigs.changes.deeds import Deed
from jigs.changes.parting import PartChange
from jigs.changes.sizing import SizeChange, face_of, is_front
from jigs.ground.lengths import Unit, format_mm, format_sizes
from templates.words.holewords import HOLE_WORDS, bare_mm
from templates.words.stepwords import BORED, DONE, key_words
from templates.words.textlines import counted

_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun",
           "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")  # fmt: skip

_BORED: dict[HoleCure, str] = {
    "bore": "bore it",
    "bore-on": "where it is bored, bore on",
    "bore-out": "where it is bored, bore it out",
    "leave": "where it is bored, leave it",
    "by-hand": "no hand drills truer: where it is bored, leave it",
    "beside": "plug the old one where it shows or where no fitting covers it, bore the new one "
    "clear of it",
    "plug": "the new one cuts into the old one: glue in a plug, let it dry through, bore anew",
    "shows": "the old one is seen on the face: fill, sand and paint, or let a pull cover it",
    "stays": "the front is said to be bored, so they stay where they are",
}
"""What is done where the hole of before is there."""


def size_words(change: SizeChange, part: PartChange, unit: Unit) -> tuple[str, str]:
    """Say what becomes of a part on the saw, or at the supplier's: its figures, "" where they stand
    in what is done, and what is done."""
    many = 3 if change.kind in ("board", "new") else 2
    now, was = (
        format_sizes(each[:many], unit) if each else "" for each in (change.after, change.before)
    )
    front = is_front(part.part)
    match change.kind:
        case "new":
            return "", f"{'order' if front else 'cut'} it: {now}"
        case "gone":
            return "", "there is no such part any more: mark it, and keep it as scrap"
        case "more" | "fewer":
            return "", f"{change.count} of it now, {now}"
        case "down":
            off = " and ".join(
                f"{format_mm(each)} mm off its {where}"
                for each, where in zip(change.less, _ways(front=front), strict=True)
                if each > 0.05
            )
            band, trim = "", _trim(part)
            if part.part.band and change.less[1] > 0.05:
                one = len(part.part.band) == 1
                band = ", at the edge without band" if one else "; band the sawn edge anew"
                band = "" if one and trim else band
            paint = "; paint the sawn edge anew" if front else ""
            there = "here" if front else "cut"
            names, are = " and ".join(part.waits), "is" if len(part.waits) == 1 else "are"
            wait = f"; if it is bored, not before {names} {are} released" if names else ""
            done = f"if it is {there}, saw {off}{trim}{band}{paint}{wait}"
            return f"{now}, was {was}", done
        case "anew":
            return f"{now}, was {was}", lost_words(change, part)
        case "board" | "box":
            return f"{now}, was {was}", lost_words(change, part)
        case "thick":
            return (
                f"{format_mm(change.after[2])} mm thick, was {format_mm(change.before[2])} mm",
                "measure it; of another board it is made anew",
            )
        case "band":
            edges = ", ".join(part.part.band) or "none"
            thick = f", {bare_mm(part.part.banding)} mm" if part.part.band else ""
            return "", f"its band is another one: {edges}{thick}"
        case "joints":
            return (
                "",
                "grooves, notches or pocket screws are elsewhere: compare it with the cut list",
            )
    assert_never(change.kind)


def lost_words(change: SizeChange, part: PartChange) -> str:
    """Say of a part that is of no more use as it is why, and that it is made anew."""
    front = is_front(part.part)
    if change.kind == "board":
        return f"of another board, {_again(front=front)}"
    if change.kind == "box":
        return "another drawer box now: make or order it anew"
    lack = " and ".join(
        f"{format_mm(-each)} mm in {where}"
        for each, where in zip(change.less, _ways(front=front), strict=True)
        if each < -0.05
    )
    return f"too small by {lack}, {_again(front=front)}"


def _again(*, front: bool) -> str:
    return "order it anew" if front else "cut it anew"


def _ways(*, front: bool) -> tuple[str, str]:
    return ("width", "height") if front else ("length", "width")


def _trim(change: PartChange) -> str:
    """Say where a part is cut down so that its holes stay right."""
    trim = change.trim
    if trim is None or change.before is None or not change.before.holes:
        return ""
    side = not is_front(change.part)
    across, up = _off(change)
    edges = (
        (trim.left, across, "front edge" if side else "left edge"),
        (trim.bottom, up, "bottom end" if side else "bottom edge"),
    )
    # In the order of the sizes: a board's length, which stands upright, comes first.
    said = [
        f"{f'{format_mm(each)} mm' if each > 0.05 else 'none'} of it at its {edge}"
        for each, off, edge in (edges[::-1] if side else edges)
        if off > 0.05
    ]
    return f", {' and '.join(said)}{'' if side else ' as seen from the room'}, for its holes"


def _off(change: PartChange) -> tuple[float, float]:
    """Give what comes off a part's face across and up; mm."""
    assert change.before is not None, "it was"
    assert change.after is not None, "it is"
    was, now = face_of(change.before), face_of(change.after)
    return was[0] - now[0], was[1] - now[1]


def all_holes_words(count: int) -> str:
    """Say of a part that is made anew what is bored into it."""
    return f"a new part: all its {counted(count, 'hole')}"


def holes_words(changes: Sequence[HoleChange]) -> str:
    """Say what became of holes that changed alike: `2 pull holes 1.6 mm elsewhere`."""
    first, count = changes[0], len(changes)
    hole = first.hole
    name = HOLE_WORDS[hole.purpose].name.lower()
    holes = counted(count, f"{name} hole")
    by = f"{format_mm(first.by)} mm"
    match first.kind:
        case "new":
            bore = f"{bare_mm(hole.diameter)} mm, {_deep(hole.depth)}"
            return f"{holes} more, {bore}"
        case "gone":
            return f"{holes} fewer"
        case "done":
            return f"{holes} no more to bore"
        case "moved":
            return f"{holes} {by} elsewhere"
        case "deeper" | "shallower" | "wider" | "narrower":
            size = hole.diameter if first.kind in ("wider", "narrower") else hole.depth or 0.0
            deep = ""
            if first.before and first.kind == "wider" and first.before.depth != hole.depth:
                deep = f", {_deep(hole.depth)}"
            return f"{holes} {first.kind} by {by}: {bare_mm(size)} mm{deep}"
        case "through":
            return f"{holes} right through"
        case "blind":
            return f"{holes} no more through: {_deep(hole.depth)}"
    assert_never(first.kind)


def _deep(depth: float | None) -> str:
    return "through" if depth is None else f"{bare_mm(depth)} mm deep"


def cure_words(changes: Sequence[HoleChange], part: PartChange) -> str:
    """Say what is done where the holes of before are there that changed alike."""
    first = changes[0]
    if first.cure == "leave" and first.kind == "gone":
        return "where it is bored, leave it, or plug it where it shows"
    if first.cure == "shows" and first.hole.purpose == "pull":
        said = "the old one is seen on the face: "
        if first.kind == "moved" and _as_one(changes, part):
            said += f"keep the pull there, {format_mm(first.by)} mm off, or "
        return f"{said}{_FILL}"
    return _BORED[first.cure]


def _as_one(changes: Sequence[HoleChange], part: PartChange) -> bool:
    """Tell whether all holes of the part for one thing went the same way, and not far."""
    ways = {
        (round(each.after.x - each.before.x, 1), round(each.after.y - each.before.y, 1))
        for each in changes
        if each.after and each.before
    }
    purpose = changes[0].hole.purpose
    all_of_it = sum(hole.purpose == purpose for hole in part.part.holes) == len(changes)
    return all_of_it and len(ways) == 1 and changes[0].by <= KEPT_WITHIN


KEPT_WITHIN = 10.0
"""A pull may as well stay that would stand no further off than this; mm (our choice)."""
_FILL = "fill, sand and paint, or take a pull that covers it"


def cups_words(kept: KeptCups) -> str:
    """Say how a door keeps its cups, or that it cannot."""
    at = ", ".join(f'"{bare_mm(each)} mm"' for each in kept.at)
    lines = f'bored = true, bored_tab = "{bare_mm(kept.tab)} mm", hinges_at = [{at}]'
    if not kept.answered:
        return (
            "Its cups cannot stay: no plate at hand answers them, or something stands in the way."
        )
    listed = "; ".join(f"{bare_mm(each)} mm" for each in kept.at)
    return (
        f"Or keep its cups: write {lines} at front {kept.spec}, and its plates answer them; where "
        f"it comes from a list, in its row: Bored yes, Bored tab {bare_mm(kept.tab)} mm, "
        f"Hinges at {listed}."
    )


def turned_words(*, pulls: bool) -> str:
    """Say that a door's cups serve when it is turned half round."""
    only = "its pull is not bored yet and " if pulls else ""
    return (
        "Turned half round, its bottom edge up, its cups serve, where "
        f"{only}nothing on it tells top from bottom"
    )


def deed_words(deed: Deed) -> str:
    """Say what is known of a step of the work: `cups bored (marked 3 Dec 2026)`."""
    when = f" (marked {_day(deed.at)})" if deed.at else " (marked)"
    match deed.by:
        case "before":
            return f"{_step(deed.key)}{when}"
        case "now":
            return f"{_step(deed.key)}{when} by the figures of now"
        case "neither":
            return f"{_step(deed.key)}{when} by still older figures: compare each with the part"
        case "unknown":
            return f"{_step(deed.key)}{when}, by which figures nobody can say"
        case "not-marked":
            return "not marked as done"
        case "nothing-kept":
            return ""
    assert_never(deed.by)


def _step(key: str) -> str:
    words: Mapping[str, str] = {
        **{f"bored-{work}": said for work, said in BORED.items()},
        **dict(DONE.items()),
    }
    return words.get(key) or key_words(_NO_STEPS, key)


_NO_STEPS: tuple[Step, ...] = ()


def _day(at: str) -> str:
    """Write a day: `2026-12-03T10:00:00Z` as `3 Dec 2026`."""
    year, month, day = at[:10].split("-")
    return f"{int(day)} {_MONTHS[int(month) - 1]} {year}"
