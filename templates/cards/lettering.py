"""Figures and words on a card: distances with their references, the card's own heading.

A distance is written in mm, large, to a tenth, and in inches, small, to the nearest 1/32 with
`+` or `-` where the true value is more or less by over 0.1 mm.
"""

from msgspec import Struct
from msgspec.structs import replace

from jigs.ground.geometry import SLACK, End, Hole
from jigs.ground.lengths import format_inches, format_mm
from templates.cards.ticks import NO_TICKS, OWN_CODES, Member, set_name
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.bars import bar_of_50, box_of_50, up_arrow
from templates.page.marks import Mark, Text
from templates.page.pieces import MarkBlock, moved
from templates.page.space import Box
from templates.page.typeface import PITCH, shorten, text_width, wrap
from templates.words.facewords import drilled_words, edge_words

LARGE, PLAIN = 3.5, 2.5


class Label(Struct, frozen=True, kw_only=True):
    """A distance: mm and inches on the first line, what it is measured from below."""

    mm: str
    inches: str
    small: tuple[str, ...] = ()
    turned: bool = False

    @property
    def width(self) -> float:
        """Width over all, mm."""
        first = text_width(self.mm, LARGE, True)
        if self.inches:
            first += 1.2 + text_width(self.inches, PLAIN)
        return max([first, *(text_width(line, PLAIN) for line in self.small)])

    @property
    def height(self) -> float:
        """Height over all, ascenders and descenders allowed for, mm."""
        return 5.2 + (0.0 if not self.small else 0.4 + (len(self.small) - 1) * PITCH + 3.7)

    def marks(self, left: float, top: float) -> tuple[Mark, ...]:
        """Give the texts with the label's upper left corner at (left, top)."""
        base = top - 3.85
        marks: list[Mark] = [Text(x=left, y=base, text=self.mm, size=LARGE, bold=True)]
        if self.inches:
            after = left + text_width(self.mm, LARGE, True) + 1.2
            marks.append(Text(x=after, y=base, text=self.inches))
        for row, line in enumerate(self.small):
            marks.append(Text(x=left, y=base - 4.5 - row * PITCH, text=line))
        return tuple(marks)

    def turned_marks(self, centre: float, bottom: float) -> tuple[Mark, ...]:
        """Give the first line alone, read from the right, on a vertical centre line."""
        x = centre + LARGE / 2
        marks: list[Mark] = [Text(x=x, y=bottom, text=self.mm, size=LARGE, bold=True, angle=90)]
        if self.inches:
            after = bottom + text_width(self.mm, LARGE, True) + 1.2
            marks.append(Text(x=x, y=after, text=self.inches, angle=90))
        return tuple(marks)


def axis_label(
    reference: Reference,
    distance: float,
    *,
    edge_name: str,
    panel: float | None,
    band: float,
    raw: bool = False,
    named: bool = True,
) -> Label:
    """Label a hole's distance along one axis.

    `distance` runs inward from the reference line, mm. `panel`, of a distance from the bottom
    end, adds the height above the bottom panel, for boxes already assembled; `band` the distance
    from the raw edge, where edge band is still to come; with `raw` the large figure is that one,
    and the small one from the edge once it is banded. `named`: the label says what it is measured
    from, which one of a row does for all.
    """
    name = edge_name.lower()
    small: list[str] = []
    if reference.kind == "middle":
        value = abs(distance)
        small += ["from middle"] if named else []
    else:
        value = reference.value + distance
        small += [f"from {name}"] if named else []
        if reference.kind == "index":
            small.append(f"{format_mm(distance)} from line")
    if panel is not None and value > panel:
        small.append(f"{format_mm(value - panel)} over panel")
    if raw and band > 0.0:
        small.append(f"{format_mm(value + band)} once banded")
    elif band > 0.0:
        small.append(f"{format_mm(value - band)} raw{' edge' if named else ''}")
    return Label(mm=format_mm(value), inches=f'{format_inches(value)}"', small=tuple(small))


def label_on(
    view: FaceView,
    reference: Reference,
    distance: float,
    stated_from: End | None = None,
    *,
    named: bool = True,
) -> Label:
    """Label a distance on a face, `distance` inward from its reference line, mm.

    `stated_from`: the end that the heights of holes by hand were stated from; where they are not
    counted from that very end, the figure as it was stated stands beside. `named` as above.
    """
    upward = reference.axis == "y"
    label = axis_label(
        reference,
        distance,
        edge_name=edge_words(view, reference.edge),
        panel=view.state.panel if upward and reference.edge == "bottom" else None,
        band=view.state.band if reference.edge == view.front_edge else 0.0,
        raw=view.state.raw,
        named=named,
    )
    if not upward or stated_from is None:
        return label
    return replace(label, small=(*label.small, *_as_stated(view, reference, distance, stated_from)))


def _as_stated(view: FaceView, reference: Reference, distance: float, end: End) -> tuple[str, ...]:
    """Give the height of a hole by hand as it was stated, unless the card counts it so itself."""
    height = reference.at + reference.inward * distance
    value = view.height - height if end == "top" else height
    beyond = view.ends.below if end == "top" else view.ends.base
    of_sides = beyond > SLACK or view.state.stand
    if reference.edge == end and not of_sides:
        return ()
    name = f"{end} of the sides" if of_sides else edge_words(view, end).lower()
    return (f"{format_mm(value + beyond)} from {name}",)


def short_mm(value: float) -> str:
    """Write a diameter or depth as short as it is true to a tenth: `35`, `2.5`."""
    return format_mm(value).removesuffix(".0")


def bit_note(hole: Hole) -> str:
    """Say a hole's diameter: `35 dia`."""
    return f"{short_mm(hole.diameter)} dia"


def hole_note(hole: Hole) -> str:
    """Say a hole's diameter and depth in one line: `35 dia, 13 deep` or `5 dia, THROUGH`."""
    depth = "THROUGH" if hole.depth is None else f"{short_mm(hole.depth)} deep"
    return f"{bit_note(hole)}, {depth}"


class CardHeading(Struct, frozen=True, kw_only=True):
    """A card's own words, so that a loose card cannot be mistaken: mm."""

    width: float
    lines: tuple[tuple[str, float, bool], ...]
    beside: tuple[str, ...]
    body: tuple[str, ...]
    with_bar: bool
    code: str = ""
    ticks: MarkBlock = NO_TICKS

    @property
    def height(self) -> float:
        """Height over all, mm."""
        return self._words + self.ticks.height

    @property
    def _words(self) -> float:
        """How far down all but the boxes to tick reaches, mm."""
        return max(self._names + len(self.body) * PITCH, len(self.beside) * PITCH)

    @property
    def _names(self) -> float:
        """How far down arrow, names and bar reach, mm."""
        return 15.5 + (6.5 if self.with_bar else 0.8)

    def marks(self, left: float, top: float, number: int = 0) -> tuple[Mark, ...]:
        """Draw it with its upper left corner at (left, top): arrow, names, the card's number where
        it has one, bar of 50, words, boxes to tick."""
        marks: list[Mark] = [*up_arrow(left + 4.0, top - 15.0, 14.5)]
        numbered = ((f"card {number}, {self.code}", 2.5, False),) if number else ()
        y = top
        for text, size, bold in (*self.lines, *numbered):
            y -= size * 1.12
            marks.append(Text(x=left + 10.0, y=y, text=text, size=size, bold=bold))
            y -= size * 0.48
        if self.with_bar:
            marks += bar_of_50(*self._bar(left, top))
        for row, text in enumerate(self.body):
            marks.append(Text(x=left, y=top - self._names - 2.8 - row * PITCH, text=text))
        for row, text in enumerate(self.beside):
            marks.append(Text(x=left + 72.0, y=top - 2.8 - row * PITCH, text=text))
        marks += moved(self.ticks.marks, left, top - self._words)
        return tuple(marks)

    def bar_box(self, left: float, top: float) -> Box | None:
        """Give what its bar of 50 takes, ticks included; None without one."""
        return box_of_50(*self._bar(left, top)) if self.with_bar else None

    def _bar(self, left: float, top: float) -> tuple[float, float]:
        return left + 1.0, top - 19.0


def block(
    view: FaceView,
    name: str,
    words: tuple[str, ...],
    width: float,
    *,
    with_bar: bool,
    short: str = "",
    members: tuple[Member, ...] = (),
    ticked: MarkBlock | None = None,
) -> CardHeading:
    """Lay out a card's heading `width` mm wide; wide ones take the words beside the names.

    `short` is a shorter name, for where `name` finds no room; `members` are the parts that the
    card serves, where they are several, `ticked` their boxes to tick, where they stand here.
    """
    wide = width >= 132.0
    names = min(width, 70.0) - 10.0
    part = set_name([member.part for member in members]) if members else view.part
    title = f"{part}  {name}"
    lines: list[tuple[str, float, bool]] = []
    if text_width(title, 3.5, True) <= names:
        lines.append((title, 3.5, True))
    else:
        # The ID is never cut: smaller letters rather than a name that might be another part's.
        lines.append((part, min(3.5, names / text_width(part, 1.0, True)), True))
        # Which end a card is for must be read in full: the face in capitals stands below it.
        fits = text_width(name, 2.5, True) <= names
        lines.append((name if fits else shorten(short or name, 2.5, True, names), 2.5, True))
    lines.append((shorten(drilled_words(view), 2.5, True, names), 2.5, True))
    room = width - 72.0 if wide else width
    wrapped = tuple(line for text in words for line in wrap(text, 2.5, False, room))
    return CardHeading(
        width=width,
        lines=tuple(lines),
        beside=wrapped if wide else (),
        body=() if wide else wrapped,
        with_bar=with_bar,
        code=OWN_CODES if members else f"code {view.code}",
        ticks=ticked or NO_TICKS,
    )
