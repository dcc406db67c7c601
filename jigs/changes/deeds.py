"""Whether a part was worked on already, and by which figures: by what was marked of it.

A mark carries the code that its part had then. By the part's code before the edit, what was done
is done to the figures of before; by its code now, to those that hold.
"""

from collections.abc import Mapping
from typing import Literal

from msgspec import Struct, field

from jigs.bench.kept import NOTHING_KEPT, Kept, done_before
from jigs.changes.boring import HoleChange
from jigs.changes.parting import PartChange
from jigs.changes.sizing import is_drawer_box, is_front

By = Literal["before", "now", "neither", "unknown", "not-marked", "nothing-kept"]
"""By which figures it was done: those of before the edit, those of now, some older ones; nobody can
say; it is not marked as done, though marks are kept; no marks are kept."""


class Deed(Struct, frozen=True, kw_only=True):
    """What is known of a step of the work on a part."""

    by: By
    key: str = ""
    """The step's key, where it is marked."""
    at: str = ""
    """When it was marked, UTC (ISO 8601); "" where nobody knows."""

    @property
    def sure(self) -> bool:
        """Whether it was surely done by the figures of before."""
        return self.by == "before"


class Deeds(Struct, frozen=True, kw_only=True):
    """What was marked of a job's parts."""

    kept: Mapping[str, Kept] | None = None
    """By their IDs; None where no marks are kept."""
    times: Mapping[tuple[str, str], str] = field(default_factory=dict)
    """When each part's steps were marked last, by ID and key; UTC."""

    def of_hole(self, change: PartChange, hole: HoleChange) -> Deed:
        """Say whether a hole of before is bored."""
        before = hole.before
        if before is None:
            return Deed(by="not-marked")
        return self._of(change, f"bored-{before.work}" if before.work else "bored")

    def of_size(self, change: PartChange) -> Deed:
        """Say whether a part is cut; a front, whether it is there; a drawer box, whether it is
        there, or put together."""
        if is_drawer_box(change.part):
            made = self._of(change, "assembled")
            return made if made.key else self._of(change, "arrived")
        return self._of(change, "arrived" if is_front(change.part) else "cut")

    def of_any(self, change: PartChange) -> Deed:
        """Say whether a part that is no more was worked on."""
        own = self._kept(change)
        for key in own.marks:
            return self._of(change, key)
        return Deed(by="nothing-kept" if self.kept is None else "not-marked")

    def _kept(self, change: PartChange) -> Kept:
        before = change.before.id if change.before else change.id
        return (self.kept or {}).get(before, NOTHING_KEPT)

    def _of(self, change: PartChange, key: str) -> Deed:
        """Say of a step, or of what is bored at any station, by which figures it was done."""
        if self.kept is None:
            return Deed(by="nothing-kept")
        own = self._kept(change)
        marked = [each for each in own.marks if each == key or each.startswith(f"{key}-")]
        if not marked:
            return Deed(by="not-marked")
        part = change.before.id if change.before else change.id
        before = change.before.code if change.before else ""
        said = {each: self._by(own, each, before, change) for each in marked}
        # What was done by the figures of before counts before what was not.
        first = min(marked, key=lambda each: said[each] != "before")
        return Deed(by=said[first], key=first, at=self.times.get((part, first), ""))

    def _by(self, kept: Kept, key: str, before: str, change: PartChange) -> By:
        now = change.after.code if change.after else ""
        code = kept.marks[key]
        if change.after is None or key not in done_before(kept, now):
            if code and code == now:
                return "now"
            return "before" if code and code == before else "unknown"
        return "before" if code == before else "neither"
