"""Cup tags: the name of a door, cut out of paper and laid into the bore of one of its cups.

No label survives sanding and paint. A tag goes into the bore under a piece of tape, and is there
when the door is to be hung (common practice, no source). It carries ID, arrow, code and symbol;
the hinge side too if it is round. Place and size do not fit: they stand on the door's label.
"""

import math
from collections.abc import Collection, Sequence
from functools import partial

from msgspec import Struct

from jigs.box.parts import Front, Layout
from jigs.given.labelstock import Stock
from jigs.ground.geometry import SLACK, rectangle
from templates.labels.labelmarks import arrow_width, draw_arrow
from templates.labels.labelplacing import LabelEntry, LabelField, place_labels
from templates.labels.labelwords import words_of_front_label
from templates.page.marks import THIN, Circle, Mark, Outline, Page, Text
from templates.page.pieces import moved
from templates.page.raster import Raster
from templates.page.typeface import EM_PER_CAP, text_width
from templates.words.openwords import STAMP
from templates.words.payload import LENGTHS
from templates.writers.qr import QUIET, qr_side

TAG_SAYS = {False: LENGTHS[3], True: LENGTHS[2]}
"""Characters of the symbol on a square tag (version 2-M) and a round one (version 3-M)."""
CUP_FROM = 20.0
"""A blind hole in the back from this diameter on is a cup's; mm (cups are 26, 35 or 40, from
memory; fixings are 10 at most)."""
_INSET = 0.8
"""White between the cut line and what is printed, mm."""
_SMALL = 2.5
_FOOT = EM_PER_CAP * 0.265
"""What a face's descenders reach below the base line, in capital heights (its `hhea` table)."""
_SEEN = "FROM ROOM"
"""What stands under the hinge side: it is told as for a door that hangs."""
_DOORS = ("door", "lift")


class Untagged(Struct, frozen=True):
    """Doors that no tag goes to, and why."""

    parts: tuple[str, ...]
    why: str


def find_tagged(
    layout: Layout, stock: Stock, only: Collection[str] | None = None
) -> tuple[tuple[Front, ...], tuple[Untagged, ...]]:
    """Give the fronts whose cups take a tag of this stock, and the doors that have none.

    `only` names parts, boxes or walls.
    """
    bore = stock.bore or 0.0
    tagged: list[Front] = []
    without: dict[str, list[str]] = {}
    for front in layout.fronts:
        if not _wanted(front, only):
            continue
        cups = _cups(layout, front)
        if cups and max(cups) >= bore - SLACK:
            tagged.append(front)
        elif cups:
            why = f"a cup of {max(cups):g} mm is smaller than the tag's bore of {bore:g} mm"
            without.setdefault(why, []).append(front.id)
        elif front.kind in _DOORS:
            why = "held back" if front.withheld else "no cup is bored in it"
            without.setdefault(why, []).append(front.id)
    return tuple(tagged), tuple(Untagged(tuple(ids), why) for why, ids in without.items())


def _cups(layout: Layout, front: Front) -> list[float]:
    """Give the diameters of the cup bores in a front's back: those of its hinges, bored here or
    by the supplier, or blind holes by hand that are as wide as a cup; mm."""
    cups = [
        hole.diameter
        for hole in front.holes
        if hole.face == "back" and hole.depth is not None and hole.diameter >= CUP_FROM
    ]
    if front.bored and front.hinge is not None and not front.withheld:
        cups.append(layout.job.hinges[front.hinge.record].cup_diameter)
    return cups


def tell_tags(tagged: Sequence[Front], without: Sequence[Untagged], stock: Stock) -> list[str]:
    """Say what the tags leave out, and which doors have none and why."""
    lines = [f"No tag for {', '.join(entry.parts)}: {entry.why}." for entry in without]
    if tagged:
        out = "Size and place do" if stock.round else "Hinge side, size and place do"
        lines.insert(0, f"{out} not fit on a tag: they stand on the door's label.")
    return lines


def tag_pages(
    layout: Layout,
    fronts: Sequence[Front],
    stock: Stock,
    raster: Raster,
    *,
    start: int = 1,
    copies: int = 1,
) -> tuple[Page, ...]:
    """Give the pages of tags of some fronts; `start` and `copies` as for labels."""
    draw = _round if stock.round else _square
    raster = Raster(
        dots=raster.dots, scale=raster.scale
    )  # on plain paper there is no place to miss
    entries = []
    for front in fronts:
        words = words_of_front_label(layout, front)
        tag = _Tag(
            name=front.id,
            code=f"code {words.code}{f' {STAMP}' if front.open else ''}",
            says=words.payload.fit(TAG_SAYS[stock.round]),
            hand=f"HINGES {front.hinged.upper()}" if front.hinged else "",
        )
        entries.append(LabelEntry(front.id, partial(draw, tag=tag, raster=raster)))
    head = _heading(stock)
    return tuple(place_labels(entries, stock, raster, start=start, copies=copies, always=head))


class _Tag(Struct, frozen=True, kw_only=True):
    """What a tag says."""

    name: str
    code: str
    says: str
    hand: str


def _wanted(front: Front, only: Collection[str] | None) -> bool:
    if only is None:
        return True
    wishes = {wish.upper() for wish in only}
    return bool(wishes & {front.id.upper(), front.box.upper(), front.wall.upper()})


def _heading(stock: Stock) -> list[Mark]:
    bore = f"{stock.bore:g}"
    lines = (
        (f"CUP TAGS FOR BORES OF {bore} mm", 3.5, True),
        ("Cut on the lines. Lay a tag into a cup bore of its door, arrow up, under a piece of "
         "tape, before you sand and paint.", _SMALL, False),
    )  # fmt: skip
    y, marks = stock.sheet.height - 5.5, []
    for text, size, bold in lines:
        marks.append(Text(x=stock.left, y=y, text=text, size=size, bold=bold))
        y -= 5.0
    return list(marks)


def _square(field: LabelField, *, tag: _Tag, raster: Raster) -> list[Mark]:
    """Set a square tag: the ID across its top, the symbol lower right, code and arrow beside."""
    across, up = raster.module()
    wide, high = (qr_side(tag.says, module) + raster.slack for module in (across, up))
    left, right = field.left + _INSET, field.right - _INSET
    corner = field.right - wide + QUIET * across, field.bottom + QUIET * up
    strip = field.top - field.bottom - high
    size = min(
        5.0,
        (right - left) / text_width(tag.name, 1.0, True),
        (strip - _INSET) / (1 + _FOOT),
    )
    length = high - _INSET - 0.2
    letters = min(_SMALL, length / text_width(tag.code, 1.0))
    base = field.right - wide - _FOOT * letters
    head = min(3.0, field.right - wide - left - letters * EM_PER_CAP - 0.2)
    return [
        Outline(points=rectangle(field.left, field.bottom, field.right, field.top), width=THIN),
        Text(x=left, y=field.top - _INSET - size, text=tag.name, size=size, bold=True),
        raster.symbol(*corner, tag.says),
        Text(x=base, y=field.bottom + _INSET, text=tag.code, size=letters, angle=90),
        *_arrow(left + head / 2, field.bottom + _INSET, 13.0, head),
    ]


def _round(field: LabelField, *, tag: _Tag, raster: Raster) -> list[Mark]:
    """Set a round tag: the symbol in the middle, ID above it, arrow at the left, code at the
    right; the hinge side below, for either hand in the middle, since the tag lies in the back of
    its door, where right and left change places."""
    radius = field.width / 2
    middle = field.left + radius, field.bottom + radius
    across, up = raster.module()
    wide, high = (qr_side(tag.says, module) + raster.slack for module in (across, up))
    left, bottom = middle[0] - wide / 2, middle[1] - high / 2
    corner = left + QUIET * across, bottom + QUIET * up
    inner = radius - _INSET
    size = next(
        size / 10
        for size in range(45, 9, -1)
        if text_width(tag.name, size / 10, True)
        <= _chord(inner, high / 2 + (1 + _FOOT) * size / 10)
    )
    base = high / 2 + _FOOT * size
    at = wide / 2 + 0.4 + _SMALL
    length = min(high, _chord(inner, at + _FOOT * _SMALL))
    marks: list[Mark] = [
        Circle(x=middle[0], y=middle[1], diameter=field.width, width=THIN),
        Text(x=middle[0], y=middle[1] + base, text=tag.name, size=size, bold=True, anchor="middle"),
        raster.symbol(*corner, tag.says),
        Text(
            x=middle[0] + at, y=middle[1], text=tag.code, anchor="middle", angle=90,
            size=min(_SMALL, length / text_width(tag.code, 1.0)),
        ),
        *_arrow(left - 3.0, middle[1] - 7.0, 14.0, 4.0),
    ]  # fmt: skip
    depth = high / 2 + 0.1
    for text in (tag.hand, _SEEN) if tag.hand else ():
        letters = next(
            size / 10
            for size in range(18, 9, -1)
            if text_width(text, size / 10, True) <= _chord(inner, depth + EM_PER_CAP * size / 10)
            or size == 10
        )
        depth += EM_PER_CAP * letters
        marks.append(
            Text(
                x=middle[0], y=middle[1] - depth + _FOOT * letters, text=text, size=letters,
                bold=True, anchor="middle",
            )
        )  # fmt: skip
    return marks


def _chord(radius: float, off: float) -> float:
    """Give the length of a circle's chord that lies `off` from its middle."""
    return 2 * math.sqrt(max(0.0, radius**2 - off**2))


def _arrow(middle: float, bottom: float, height: float, head: float) -> list[Mark]:
    """Draw a slim arrow up, `UP` below it."""
    size = min(_SMALL, head / text_width("UP", 1.0, True))
    marks = draw_arrow("UP", "up", head, size, bottom, bottom + height)
    return moved(marks, middle - arrow_width("UP", "up", head, size) / 2, 0.0)
