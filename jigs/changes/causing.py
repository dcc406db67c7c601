"""By which edit of the job a part has changed, as far as it can be traced.

An edit bears on a part where it is of its box, of a front before that box, of hardware that it is
drilled or cut for, of its wall, or of the whole job. It is no proof: of several edits that bear on
one part all are named.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from jigs.changes.given import LEFT_OUT
from jigs.changes.made import Given, Made, MadePart, Value

RECORDS = ("hinge", "slide", "pull")


class Edit(Struct, frozen=True, kw_only=True):
    """A value of the job that is another one now; None where it is not given."""

    given: Given
    """Whose it is, under which key."""
    before: Value | None
    after: Value | None


def list_edits(old: Made, new: Made) -> tuple[Edit, ...]:
    """List what was edited, in the order of the job; of what came or went as a whole, a box, a
    front or a record, that alone."""
    was, now = _by_key(old), _by_key(new)
    known = {key[:2] for key in was} & {key[:2] for key in now}
    found: dict[tuple[str, ...], Edit] = {}
    for key in dict.fromkeys([*now, *was]):
        before, after = was.get(key), now.get(key)
        if before and after and before.value == after.value:
            continue
        either = after or before
        assert either is not None, "the key is of one of the two"
        if either.box and ("box", either.box) not in known:
            continue  # its box came, or went, and it with that
        if key[:2] in known:
            found[key] = Edit(
                given=either,
                before=before.value if before else None,
                after=after.value if after else None,
            )
        elif key[:2] not in found:
            whole = Given(kind=key[0], name=key[1], key="", value=True, box=either.box)
            found[key[:2]] = Edit(
                given=whole, before=True if before else None, after=True if after else None
            )
    return tuple(found.values())


def _by_key(made: Made) -> dict[tuple[str, str, str], Given]:
    """Give what was given by its key; an older pack may keep what is left out now."""
    return {
        (each.kind, each.name, each.key): each
        for each in made.given
        if each.kind != "job" or each.key not in LEFT_OUT
    }


def causes_of(
    edits: Sequence[Edit], before: MadePart | None, after: MadePart | None
) -> tuple[Edit, ...]:
    """Give the edits that bear on a part; a single edit of the job bears on all."""
    if len(edits) == 1:
        return tuple(edits)
    parts = [part for part in (before, after) if part is not None]
    return tuple(edit for edit in edits if any(_bears(edit, part) for part in parts))


def _bears(edit: Edit, part: MadePart) -> bool:
    given = edit.given
    if given.kind in RECORDS:
        return f"{given.kind} {given.name}" in part.drilled_for.records
    match given.kind:
        case "box":
            return given.name in part.boxes
        case "front":
            return given.box in part.boxes
        case "wall":
            return given.name == part.wall
    return True


def newly(before: Iterable[str], after: Iterable[str]) -> bool:
    """Tell whether something is said now that was not: a number that is open, an assumption."""
    return bool(set(after) - set(before))
