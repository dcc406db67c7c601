"""A wall with its gaps: fronts bare with their IDs, each gap a line in its place, by verdict thin,
dashed or broad, with its sign and what it comes to at the least beside it.
"""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from jigs.box.parts import Layout
from jigs.ground.lengths import format_mm
from jigs.room.budget import Budget, Verdict
from jigs.room.elevation import Elevation, part_wall, see_walls
from jigs.room.reckoning import GapBudgets
from templates.elevations.elevation import LONG, SCALES, wall_words
from templates.elevations.elevationroom import GROUND, OFF, draw_ground, end_width
from templates.elevations.filenames import file_name
from templates.elevations.scale import Scale
from templates.page.dimensions import frame
from templates.page.marks import THIN, WIDE, Dash, Line, Mark, Outline, Page, Text
from templates.page.paper import Paper
from templates.page.space import Box, Space
from templates.page.typeface import shorten, text_width, wrap
from templates.words.budgetwords import (
    LEGEND,
    SIGNS,
    WORST_FIRST,
    count_words,
    drawing_words,
    unsaid_words,
)

LINES: dict[Verdict, tuple[float, Dash]] = {
    "holds": (0.35, ""), "marginal": (0.8, "dashed"), "rubs": (1.6, ""), "unknown": (0.35, "axis"),
}  # fmt: skip
"""How wide the line of a gap is, mm, and its pattern."""
_EDGE = 1.0
_TITLE = 16.0
_PITCH = 3.0
_SIDE = 8.0
"""Paper left free at both sides of what is drawn, mm."""
_SMALL = 1.8


class DrawnGaps(Struct, frozen=True, kw_only=True):
    """One page, and a name for its file."""

    page: Page
    name: str


def draw_gap_walls(layout: Layout, found: GapBudgets, paper: Paper) -> Iterator[DrawnGaps]:
    """Draw each wall that has a gap."""
    names: dict[str, int] = {}
    for elevation in see_walls(layout):
        room = paper.height - 2 * (_SIDE + OFF)
        stretches = part_wall(elevation, room * (LONG if elevation.placed else 20))
        for number, stretch in enumerate(stretches, start=1):
            fronts = {seen.front.id for box in stretch.boxes for seen in box.fronts}
            own = [b for b in found.budgets if b.gap.one.id in fronts]
            if own:
                yield DrawnGaps(
                    page=_draw(stretch, own, layout, found, paper),
                    name=file_name(stretch, number, len(stretches), names, "gaps"),
                )


def _draw(
    elevation: Elevation,
    budgets: Sequence[Budget],
    layout: Layout,
    found: GapBudgets,
    paper: Paper,
) -> Page:
    width, height = paper.height, paper.width
    notes = [
        line
        for note in (*drawing_words(), *unsaid_words(found, layout.job))
        for line in wrap(note, _SMALL, False, width - 2 * _EDGE - 4.0)
    ]
    foot = _EDGE + _TITLE + len(notes) * _PITCH + 2.0 + GROUND
    left, low, right, high = elevation.extent
    ends = OFF + max(end_width(elevation.ends_at("left")), end_width(elevation.ends_at("right")))
    for reduction in SCALES:
        free_x = width - 2 * (_SIDE + ends) - (right - left) / reduction
        free_y = height - foot - 2 * _SIDE - (high - low) / reduction
        if free_x >= 0 and free_y >= 0:
            break
    scale = Scale(
        reduction,
        _SIDE + ends + max(free_x, 0.0) / 2 - left / reduction,
        foot + _SIDE + max(free_y, 0.0) / 2 - low / reduction,
    )
    marks = [
        *_title(elevation, budgets, layout, reduction, width, height),
        *(
            Text(x=_EDGE + 2.0, y=_EDGE + _TITLE + 1.2 + row * _PITCH, text=note, size=_SMALL)
            for row, note in enumerate(reversed(notes))
        ),
        *draw_ground(elevation, scale),
    ]
    space = Space()
    space.add(*_draw_boxes(elevation, scale))
    for budget in budgets:
        space.add(_line(budget, scale))
    page: Box = (_EDGE, foot, width - _EDGE, height - _EDGE)
    for words in _ids(elevation, scale):
        space.add_where_free(words, page)
    for budget in sorted(budgets, key=lambda b: WORST_FIRST.index(b.verdict)):
        space.add_where_free(_figures(budget, scale), page)
    return Page(
        width=width, height=height, marks=(*marks, *space.marks), entry=wall_words(elevation)
    )


def _draw_boxes(elevation: Elevation, scale: Scale) -> Iterator[Mark]:
    for box in elevation.boxes:
        for strip in box.strips:
            place = scale.area(strip.x, strip.y, strip.width, strip.height)
            dash: Dash = "dashed" if box.is_behind(strip) else ""
            yield Outline(points=place, dash=dash, layer=strip.kind)
        for opening in box.openings:
            place = scale.area(opening.x, opening.y, opening.width, opening.height)
            yield Outline(points=place, dash="dashed", layer="opening")
        for seen in box.fronts:
            front = seen.front
            place = scale.area(seen.x, seen.y, front.width, front.height)
            yield Outline(points=place, width=THIN, layer="front", name=front.id)
    for each in elevation.appliances:
        place = scale.area(each.x, each.y, each.width, each.height)
        yield Outline(points=place, dash="dashed", layer="appliance", name=each.id)


def _line(budget: Budget, scale: Scale) -> Line:
    gap = budget.gap
    wide, dash = LINES[budget.verdict]
    half = gap.length / 2
    dx, dy = (0.0, half) if gap.axis == "x" else (half, 0.0)
    return Line(
        x1=scale.across(gap.x - dx), y1=scale.up(gap.y - dy),
        x2=scale.across(gap.x + dx), y2=scale.up(gap.y + dy),
        width=wide, dash=dash, layer=budget.verdict,
    )  # fmt: skip


def _figures(budget: Budget, scale: Scale) -> list[Text]:
    """Give the places where a gap's sign and least may stand: beside its line, from its middle
    outwards."""
    gap = budget.gap
    text = f"{SIGNS[budget.verdict]} {format_mm(budget.left.low)}".strip()
    bold = budget.verdict == "rubs"
    wide = text_width(text, _SMALL, bold)
    off = LINES[budget.verdict][0] / 2 + 0.7
    places: list[tuple[float, float]] = []
    for share in (0.0, 0.3, -0.3, 0.15, -0.15, 0.42, -0.42):
        x, y = scale.across(gap.x), scale.up(gap.y)
        if gap.axis == "x":
            y += share * gap.length / scale.reduction - _SMALL / 2
            places += [(x + off, y), (x - off - wide, y)]
        else:
            x += share * gap.length / scale.reduction - wide / 2
            places += [(x, y - off - _SMALL), (x, y + off)]
    return [Text(x=x, y=y, text=text, size=_SMALL, bold=bold) for x, y in places]


def _ids(elevation: Elevation, scale: Scale) -> Iterator[list[Text]]:
    """Give, of each front, the places where its ID may stand."""
    for box in elevation.boxes:
        for seen in box.fronts:
            front = seen.front
            room = front.width / scale.reduction - 1.2
            middle = scale.across(seen.x + front.width / 2)
            yield [
                Text(
                    x=middle - text_width(front.id, size, False) / 2,
                    y=scale.up(seen.y + front.height * share) - size / 2,
                    text=front.id,
                    size=size,
                )
                for size in (3.5, 2.5, _SMALL)
                for share in (0.5, 0.35, 0.65)
                if text_width(front.id, size, False) <= room * 0.7
                and size <= front.height / scale.reduction * 0.45
            ]


def _title(
    elevation: Elevation,
    budgets: Sequence[Budget],
    layout: Layout,
    reduction: int,
    width: float,
    height: float,
) -> Iterator[Mark]:
    high = _EDGE + _TITLE
    yield frame(_EDGE, _EDGE, width - _EDGE, height - _EDGE, WIDE)
    yield Line(x1=_EDGE, y1=high, x2=width - _EDGE, y2=high, width=WIDE)
    legend = width * 0.52
    yield Line(x1=legend, y1=_EDGE, x2=legend, y2=high)
    room = legend - _EDGE - 4.0
    name = shorten(f"{wall_words(elevation)}: GAPS", 5.0, True, room)
    yield Text(x=_EDGE + 2.0, y=_EDGE + 9.4, text=name, size=5.0, bold=True)
    said = f"{layout.job.name}. {count_words(budgets)} Scale 1:{reduction}."
    yield Text(x=_EDGE + 2.0, y=_EDGE + 3.2, text=shorten(said, 2.5, False, room))
    for row, (verdict, words) in enumerate(LEGEND.items()):
        y = high - 3.4 - row * 3.6
        wide, dash = LINES[verdict]
        yield Line(x1=legend + 2.0, y1=y, x2=legend + 14.0, y2=y, width=wide, dash=dash)
        sign = SIGNS[verdict]
        if sign:
            yield Text(x=legend + 16.0, y=y - 0.9, text=sign, size=_SMALL, bold=True)
        yield Text(x=legend + 19.5, y=y - 0.9, text=words, size=_SMALL)
