"""What --changed-since prints: what an edit has made stale in a pack that is at the bench.

A page takes the place of the old one of its name, so that it is printed whole.
"""

from collections.abc import Collection
from pathlib import Path
from typing import TYPE_CHECKING

from cli.madefrom import check_same_job, make_from, read_pack
from cli.terminal import tell

if TYPE_CHECKING:
    from jigs.box.parts import Layout
    from jigs.changes.comparing import Changes


def changes_since(pack: Path, layout: "Layout", reach: float = 0.0) -> "Changes":
    """Tell what is stale in a pack; `reach`: what stations are planned with now, mm, where they are
    printed. That the pack had a delivered list which the job has not is said. Raises Failure for
    what is no pack, or one of another job."""
    from jigs.changes.comparing import compare
    from templates.words.changewords import uneven_words

    read = read_pack(pack)
    if read.delivered and layout.job.delivered is None:
        tell(uneven_words(read.delivered, "", packs=(True, False)))
    was = read.made
    now = make_from(layout, reach or was.reach)
    check_same_job(was, now, str(pack))
    return compare(was, now)


def stale_among(
    changes: "Changes", names: Collection[str], chosen: Collection[str] | None
) -> frozenset[str]:
    """Give those of the stale parts that were chosen: by their own ID, that of a front whose drawer
    box they belong to, of a box, or by a wall."""
    parts = changes.new.parts
    return frozenset(
        name
        for name in names
        if chosen is None
        or not {
            name, parts[name].front, parts[name].wall.upper(), *parts[name].boxes
        }.isdisjoint(chosen)
    )  # fmt: skip


def nothing_stale(pack: Path, chosen: Collection[str] | None) -> str:
    """Say that nothing is printed."""
    what = "Of what was chosen nothing" if chosen is not None else "Nothing of this"
    return f"{what} is stale since '{pack}'. No file is written."
