"""Elevations: each wall of a job as it is seen from the room, to scale, on one sheet.

They are what a person checks the job against: boxes, fronts with ID and size, which edge each
turns on, pulls, openings, floor and toe, and chains of dimensions. The scale is the largest
recommended one (ISO 5455) that the paper holds; a wall too long even for 1:50 goes on several
sheets. Nothing is drilled from them.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.frontgaps import measure_gaps
from jigs.box.parts import Layout
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit
from jigs.room.elevation import Elevation, levels, part_wall, see_walls
from jigs.room.seen import Seen
from templates.elevations.chains import ABOVE, Chain, Length, named
from templates.elevations.elevationbox import draw_boxes
from templates.elevations.elevationheld import HOLD
from templates.elevations.elevationroom import (
    GROUND,
    OFF,
    draw_ground,
    draw_room,
    end_width,
    room_notes,
)
from templates.elevations.elevationtitle import TITLE_HIGH, TitleBlock, draw_title
from templates.elevations.filenames import file_name
from templates.elevations.scale import ROOMY, Scale, Style
from templates.page.marks import Mark, Page, Text
from templates.page.paper import Paper
from templates.page.typeface import wrap
from templates.words.cautions import cautions_of
from templates.words.findings import before_cutting
from templates.words.gapwords import gap_words
from templates.words.wallwords import wall_title

SCALES = (10, 20, 50, 100, 200)
"""Reductions recommended by ISO 5455:1979; a wall is parted before it goes below 1:50."""
LONG = 50
"""The reduction at which a wall that is still too long is parted."""
MOST_LEVELS = 7
"""More heights than this are not dimensioned at the right: only those of the last boxes."""

BEFORE = 5
"""Findings that a sheet tells in full before boards are cut: more would leave no room to draw."""
_EDGE = 2.5
"""Paper left free inside the frame, mm."""
_ROW = 7.0
"""From one dimension line to the next, mm."""
_NAMES = 6.4
"""The row of box IDs, mm."""
_NOTE = 2.7
"""Line pitch of notes, mm."""


class Drawn(Struct, frozen=True, kw_only=True):
    """One sheet: its page, the wall that it shows, and a name for its file."""

    page: Page
    elevation: Elevation
    reduction: int
    name: str

    @property
    def box_ids(self) -> frozenset[str]:
        """The IDs of the boxes that it shows."""
        return frozenset(seen.box.id for seen in self.elevation.boxes)


class _Plan(Struct, frozen=True, kw_only=True):
    """What a stretch of wall needs at one scale; chains are still at the origin. mm."""

    elevation: Elevation
    reduction: int
    unit: Unit
    notes: tuple[str, ...]

    def chains(self, scale: Scale) -> dict[str, Chain]:
        """Give the chains, each at 0 across."""
        shown = self.elevation
        standing, hanging = shown.standing, shown.hanging
        found = {
            "bottom": _widths(standing, scale, self.unit, "below", self._beside),
            "top": _widths(hanging, scale, self.unit, "above", self._corner),
            "fronts": _fronts(_first(shown), scale, self.unit),
            "left": _heights(_first_levels(shown), scale, self.unit, "above"),
            "right": _heights(_all_levels(shown), scale, self.unit, "below"),
        }
        for row in ("bottom", "top"):
            chain = found[row]
            if len(chain.lengths) > 1 and shown.placed:
                ends = chain.ends
                whole = Length(ends[0], ends[-1], (ends[-1] - ends[0]) * self.reduction)
                found[f"{row}-all"] = replace(chain, lengths=(whole,))
        return {name: chain for name, chain in found.items() if chain.lengths}

    @property
    def _corner(self) -> tuple[float, ...] | None:
        """Where what stands on the floor begins: what hangs is measured from there too."""
        shown = self.elevation
        if not shown.placed:
            return None
        return (*shown.row_ends(True), *sorted(shown.row_ends(False))[:1])

    @property
    def _beside(self) -> tuple[float, ...] | None:
        """The ends of what stands on the floor."""
        return self.elevation.row_ends(False) if self.elevation.placed else None

    def margins(self, scale: Scale) -> tuple[float, float, float, float]:
        """Give the room needed left, below, right and above of what is drawn, mm."""
        chains = self.chains(scale)
        left = _EDGE + OFF + end_width(self.elevation.ends_at("left"))
        if "left" in chains:
            left += chains["left"].reach + 1.5
        if "fronts" in chains:
            left += chains["fronts"].reach + 1.5
        right = _EDGE + end_width(self.elevation.ends_at("right"))
        if "right" in chains:
            right += OFF + ABOVE + chains["right"].reach
        below = _EDGE + GROUND
        if "bottom" in chains:
            below += _NAMES + ABOVE + chains["bottom"].reach
        if "bottom-all" in chains:
            below += _ROW - 1.3
        above = _EDGE
        if "top" in chains:
            above += _NAMES + 1.5 + chains["top"].reach
        if "top-all" in chains:
            above += _ROW - 1.3
        return left, below + TITLE_HIGH + len(self.notes) * _NOTE + 1.3, right, above


def draw_elevations(layout: Layout, paper: Paper) -> Iterator[Drawn]:
    """Draw each wall of a job on its sheets, in the job's order."""
    names: dict[str, int] = {}
    gaps = gap_words(measure_gaps(layout), layout.job.units)
    for elevation in see_walls(layout):
        room = paper.height - 2 * _EDGE - 45.0
        stretches = part_wall(elevation, room * (LONG if elevation.placed else 20))
        for number, stretch in enumerate(stretches, start=1):
            sheet = TitleBlock(
                wall=wall_words(stretch),
                job=layout.job.name,
                unit=layout.job.units,
                number=number,
                count=len(stretches),
            )
            page, reduction = _draw(stretch, layout, paper, sheet, gaps)
            yield Drawn(
                page=page, elevation=stretch, reduction=reduction,
                name=file_name(stretch, number, len(stretches), names),
            )  # fmt: skip


def wall_words(elevation: Elevation) -> str:
    """Name a wall: `NORTH WALL`."""
    if not elevation.placed:
        return "BOXES"
    return wall_title(elevation.wall)


def _draw(
    elevation: Elevation, layout: Layout, paper: Paper, sheet: TitleBlock, gaps: str
) -> tuple[Page, int]:
    width, height = paper.height, paper.width
    room = width - 2 * _EDGE - 4.0
    *notes, last = tuple(_notes(elevation, layout, gaps)) or ("",)
    # The cautions go on in the last note's line: each line more makes less room for the wall.
    care = " ".join((last, *cautions_of(b.box.kind for b in elevation.boxes))).strip()
    names = {sheet.wall, elevation.wall}
    for box in elevation.boxes:
        names |= {box.box.id, *(seen.front.id for seen in box.fronts)}
    first = before_cutting(layout, names)
    if len(first) > BEFORE:
        more = f"BEFORE YOU CUT: {len(first) - BEFORE + 1} more: run 'jigsheet check'."
        first = (*first[: BEFORE - 1], more)
    told = (
        *[line for note in first for line in wrap(note, 1.8, False, room)],
        *[line for note in notes for line in wrap(note, 1.8, False, room)][:4],
        *wrap(care, 1.8, False, room),
    )
    # A ceiling that would make all else smaller is said in words alone.
    for reduction, shown in ((n, one) for n in SCALES for one in with_and_without(elevation)):
        plan = _Plan(elevation=shown, reduction=reduction, unit=layout.job.units, notes=told)
        left, low, right, high = shown.extent
        margins = plan.margins(Scale(reduction, 0.0, 0.0))
        free_x = width - margins[0] - margins[2] - (right - left) / reduction
        free_y = height - margins[1] - margins[3] - (high - low) / reduction
        if free_x >= 0 and free_y >= 0:
            break
    elevation = plan.elevation
    scale = Scale(
        reduction,
        margins[0] + max(free_x, 0.0) / 2 - left / reduction,
        margins[1] + max(free_y, 0.0) / 2 - low / reduction,
    )
    marks = [
        *draw_title(replace(sheet, reduction=reduction), width, height),
        *_write_notes(plan.notes),
        *draw_ground(elevation, scale),
        *draw_room(elevation, scale),
        *(
            mark
            for boxes in elevation.clear_of_each_other()
            for mark in draw_boxes(boxes, Style(scale, layout.job.units))
        ),
        *_draw_chains(plan, scale),
    ]
    return Page(width=width, height=height, marks=tuple(marks), entry=sheet.wall), reduction


def with_and_without(elevation: Elevation) -> tuple[Elevation, ...]:
    """Give a wall with its ceiling and without, as far as it has one."""
    spec = elevation.spec
    if spec is None or spec.ceiling is None:
        return (elevation,)
    return elevation, replace(elevation, spec=replace(spec, ceiling=None))


def _draw_chains(plan: _Plan, scale: Scale) -> Iterator[Mark]:
    """Place the chains around what is drawn, the names of the boxes beside them."""
    shown, chains = plan.elevation, plan.chains(scale)
    left, _, right, top = shown.extent
    floor = scale.up(min(0.0, shown.extent[1])) - GROUND
    if "bottom" in chains:
        for box in shown.standing:
            yield from _name(box, floor - 4.6, scale)
        at = floor - _NAMES - ABOVE
        starts = [floor] * len(chains["bottom"].ends)
        yield from replace(chains["bottom"], at=at).marks(starts)
        if "bottom-all" in chains:
            at -= chains["bottom"].reach - 1.3 + _ROW
            yield from replace(chains["bottom-all"], at=at).marks([floor] * 2)
    if "top" in chains:
        roof = scale.up(top)
        for box in shown.hanging:
            yield from _name(box, roof + 1.8, scale)
        at = roof + _NAMES + 1.5
        tops = [_near(shown, end, scale) for end in chains["top"].ends]
        yield from replace(chains["top"], at=at).marks(tops)
        if "top-all" in chains:
            at += chains["top"].reach - ABOVE + _ROW
            yield from replace(chains["top-all"], at=at).marks([tops[0], tops[-1]])
    x = scale.across(left) - end_width(shown.ends_at("left"))
    start = x - OFF / 2
    x -= OFF
    if "fronts" in chains:
        yield from replace(chains["fronts"], at=x).marks([start] * len(chains["fronts"].ends))
        x -= chains["fronts"].reach + 1.5
    if "left" in chains:
        # A line that would run through a front's value begins behind it.
        fronts = chains["fronts"].lengths if "fronts" in chains else ()
        crowded = bool(fronts and chains["fronts"].crowded)
        inside = [(length.start + 0.5, length.end - 0.5) for length in fronts]
        starts = [
            x + 2.0 if crowded or any(low < end < high for low, high in inside) else start
            for end in chains["left"].ends
        ]
        yield from replace(chains["left"], at=x).marks(starts)
    if "right" in chains:
        x = scale.across(right) + end_width(shown.ends_at("right"))
        at = x + OFF + ABOVE
        starts = [x + OFF / 2] * len(chains["right"].ends)
        yield from replace(chains["right"], at=at).marks(starts)


def _name(box: Seen, y: float, scale: Scale) -> list[Mark]:
    middle = scale.across((box.x + box.right) / 2)
    room = box.box.width / scale.reduction - 1.2
    return named(box.box.id, middle, y, room, 4.0, 3.5 if scale.reduction <= ROOMY else 2.5)


def _near(shown: Elevation, at: float, scale: Scale) -> float:
    """Give where a line from above ends at a place along the page: at the top of the highest box
    that ends there, above all boxes if one would be struck; mm on the page."""
    tops = [
        scale.up(box.top)
        for box in shown.boxes
        if any(abs(scale.across(end) - at) < 1e-6 for end in (box.x, box.right))
    ]
    top = max(tops, default=scale.up(shown.extent[3]))
    struck = any(
        scale.across(box.x) < at < scale.across(box.right) and scale.up(box.top) > top
        for box in shown.boxes
    )
    return scale.up(shown.extent[3]) if struck else top


def _widths(
    boxes: Sequence[Seen], scale: Scale, unit: Unit, outside: str, also: Sequence[float] | None
) -> Chain:
    """Give the chain of a row's boxes, and of what stands open between them and `also`; of boxes
    that stand nowhere (`also` None) the widths alone. No box's width is parted."""
    spans: Iterable[tuple[float, float]] = ((box.x, box.right) for box in boxes)
    if also is not None:
        beside = (
            at for at in also if not any(box.x + SLACK < at < box.right - SLACK for box in boxes)
        )
        spans = pairwise(levels([*(end for box in boxes for end in box.ends), *beside]))
    return Chain(
        lengths=tuple(
            Length(scale.across(one), scale.across(other), other - one) for one, other in spans
        ),
        at=0.0,
        unit=unit,
        outside="above" if outside == "above" else "below",
    )


def _heights(heights: Sequence[float], scale: Scale, unit: Unit, outside: str) -> Chain:
    return Chain(
        lengths=tuple(
            Length(scale.up(one), scale.up(other), other - one) for one, other in pairwise(heights)
        ),
        at=0.0,
        unit=unit,
        lying=False,
        outside="above" if outside == "above" else "below",
    )


def _first(elevation: Elevation) -> Seen:
    return (elevation.standing or elevation.boxes)[0]


def _fronts(box: Seen, scale: Scale, unit: Unit) -> Chain:
    """Give the heights of the fronts and openings in a box's first column, gaps left out."""
    seen = [(f.y, f.front.height) for f in box.fronts if f.front.place.column == 1]
    seen += [(opening.y, opening.height) for opening in box.openings if opening.x - box.x < 60.0]
    lengths: list[Length] = []
    for y, height in sorted(seen):
        if height > SLACK and (not lengths or scale.up(y) > lengths[-1].end - SLACK):
            lengths.append(Length(scale.up(y), scale.up(y + height), height))
    return Chain(lengths=tuple(lengths), at=0.0, unit=unit, lying=False, outside="above")


def _first_levels(elevation: Elevation) -> tuple[float, ...]:
    box = _first(elevation)
    return levels([0.0, box.bottom, box.top])


def _all_levels(elevation: Elevation) -> tuple[float, ...]:
    """Give the heights dimensioned at the right: the last box on the floor, all that hang,
    the counter and the ceiling."""
    spec = elevation.spec
    room = [high for high in (spec.counter, spec.ceiling) if high is not None] if spec else []
    standing, hanging = elevation.standing, elevation.hanging
    last = [end for box in standing[-1:] for end in (box.bottom, box.top)]
    heights = levels(
        [0.0, *last, *room, *(end for box in hanging for end in (box.bottom, box.top))]
    )
    if len(heights) <= MOST_LEVELS:
        return heights
    return levels(
        [0.0, *last, *room, *(end for box in hanging[-1:] for end in (box.bottom, box.top))]
    )


def _notes(elevation: Elevation, layout: Layout, gaps: str) -> Iterator[str]:
    if not elevation.placed:
        yield "Where these boxes stand is not known: each is drawn by itself."
    assumed = layout.job.assumed
    heights = [b.box.id for b in elevation.boxes if f"box.{b.box.id}.above_floor" in assumed]
    if heights:
        yield f"ASSUMED: height above the floor of {', '.join(heights)}."
    # In one paragraph: a row more may cost a scale, and with it the IDs of small fronts.
    said = [*room_notes(elevation, layout.job.units, _all_levels(elevation))]
    if any(shelf.hidden for box in elevation.boxes for shelf in box.shelves):
        said.append("A level dashed line is the upper face of a fixed shelf.")
    if room := " ".join((*said, *([gaps] if gaps else []))):
        yield room
    held = [f.front.id for b in elevation.boxes for f in b.fronts if f.front.withheld]
    if held:
        yield f"{HOLD}, hatched: {', '.join(held)}: held back until 'check' finds no error in it."


def _write_notes(notes: Sequence[str]) -> Iterator[Mark]:
    for row, note in enumerate(reversed(notes)):
        yield Text(x=_EDGE + 1.0, y=_EDGE + TITLE_HIGH + 0.6 + row * _NOTE, text=note, size=1.8)
