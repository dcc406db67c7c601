"""What stands along a wall, end to end: widths that add up to its length.

Two rows, what stands on the floor and what hangs: fillers, end panels, boxes, appliances, and
what is open between them. Where two overlap there is no sum: that is an error of the job.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from jigs.cutlist.boxes import is_place
from jigs.ground.geometry import SLACK
from jigs.room.elevation import Elevation
from jigs.room.seen import SAME

StretchIs = Literal["box", "filler", "panel", "hidden", "appliance", "open"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """What takes a wall from `start` to `end`, mm; `id` of a box or an appliance."""

    start: float
    end: float
    stands: StretchIs
    id: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Along:
    """A row of a wall from its left end to its right end. `known`: the wall's length is stated,
    and the last stretch, where it is open, is what is to spare."""

    hangs: bool
    stretches: tuple[Stretch, ...]
    known: bool

    @property
    def spare(self) -> float:
        """What is open at the right end of a wall whose length is stated; mm."""
        last = self.stretches[-1]
        return last.end - last.start if self.known and last.stands == "open" else 0.0


def rows_along(elevation: Elevation) -> tuple[Along, ...]:
    """Give the rows of a wall whose widths can be added up, what stands first."""
    if not elevation.placed:
        return ()
    found = (_row(elevation, hangs) for hangs in (False, True))
    return tuple(row for row in found if row is not None)


def spaces_of(elevation: Elevation) -> tuple[Stretch, ...]:
    """Give what is left open for appliances, from the left: their places, and they themselves."""
    return tuple(
        each
        for each in sorted((*_taken(elevation, False), *_taken(elevation, True)), key=_start)
        if each.stands == "appliance"
    )


def _row(elevation: Elevation, hangs: bool) -> Along | None:
    taken = sorted(_taken(elevation, hangs), key=_start)
    if not any(each.stands == "box" for each in taken):
        return None
    at = min(0.0, taken[0].start)
    made: list[Stretch] = []
    for each in taken:
        if each.start < at - SAME - SLACK:
            return None
        if each.start > at + SAME + SLACK:
            made.append(Stretch(start=at, end=each.start, stands="open"))
        made.append(each)
        at = each.end
    length = elevation.spec.length if elevation.spec else None
    known = length is not None and length >= at - SAME - SLACK
    if known and length is not None and length > at + SAME + SLACK:
        made.append(Stretch(start=at, end=length, stands="open"))
    return Along(hangs=hangs, stretches=tuple(made), known=known)


def _taken(elevation: Elevation, hangs: bool) -> Iterator[Stretch]:
    for seen in elevation.boxes:
        if seen.hangs != hangs:
            continue
        place = is_place(seen.box)
        yield Stretch(
            start=seen.x, end=seen.right, stands="appliance" if place else "box", id=seen.box.id
        )
        for strip in seen.strips:
            yield Stretch(start=strip.x, end=strip.x + strip.width, stands=strip.kind)
    for each in elevation.appliances:
        if each.hangs == hangs:
            yield Stretch(start=each.x, end=each.x + each.width, stands="appliance", id=each.id)


def _start(stretch: Stretch) -> float:
    return stretch.start
