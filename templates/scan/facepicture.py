"""The picture of a drilled face as the driller sees it, each hole with its two distances.

Distances stand beside the face and below it, one for each height and each line down that has holes;
of many shelf pins at even steps the first, the last and the step (the table has them all). Heights
count from the bottom, those of holes by hand from the end that their leaflet counts from; on boards
all depths from the front edge, else each from the nearer end. An arrow before the figure says which
way it is counted.
"""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from msgspec import Struct

from jigs.ground.geometry import SLACK, FaceEdge, Fitting, rectangle
from jigs.ground.lengths import Unit
from templates.faces.faceview import FaceView
from templates.page.marks import Area, Circle, Line, Mark, Outline, Text
from templates.scan.markup import Html, tag
from templates.words.facewords import edge_words
from templates.words.pagewords import figure_words
from templates.writers.inlinesvg import draw_inline

WIDE = 360.0
"""The drawing's width, in its own unit: a pixel of a telephone held upright."""
MOST_HIGH = 520.0
RIGHT, TOP = 34.0, 20.0
"""Room beside the face for the arrow, and above it for a word."""
FIGURE = 8.6
"""Height of a figure's capitals."""
SIGN = 0.84
"""The width of a sign, of the height of a capital: a wide sans has 0.64 em for a figure."""
FIGURE_ROW = 16.0
"""From one figure to the next."""
LEAST_HOLE = 5.0
"""Least diameter of a hole as it is drawn."""
ROW = 4
"""So many shelf pins at even steps, and more, have figures for the first and the last alone."""
SAME = 0.05
"""Places nearer to each other than this have one figure, mm: they read the same."""
UP, DOWN, FROM_LEFT, FROM_RIGHT = "↑", "↓", "→", "←"


class Distance(Struct, frozen=True, kw_only=True):
    """A figure at the face: where it is on it, what is counted to it and which way; mm."""

    at: float
    value: float
    way: str


def heights_of(view: FaceView) -> tuple[Distance, ...]:
    """Give the heights of a face's holes, each once, from below."""
    found = {y: up(view, y, each) for each in view.fittings for _, y in each.places}
    return tuple(found[y] for y in _distinct(found))


def depths_of(view: FaceView) -> tuple[Distance, ...]:
    """Give how far a face's holes lie from its front edge, or from the nearer end."""
    return tuple(across(view, x) for x in _distinct(x for x, _ in places_on(view)))


def up(view: FaceView, y: float, fitting: Fitting) -> Distance:
    """Say how high a place of a fitting lies: above the bottom edge, in a box that is together its
    panel; or how far below the top edge."""
    if view.from_top(fitting):
        return Distance(at=y, value=view.height - y, way=DOWN)
    return Distance(at=y, value=y - view.datums.get("bottom", 0.0), way=UP)


def across(view: FaceView, x: float) -> Distance:
    """Say how far a place lies from the front edge of a board, else from the nearer end."""
    edge: FaceEdge = "left" if x <= view.width / 2 + SLACK else "right"
    if view.front_edge in ("left", "right"):
        edge = view.front_edge
    inside = view.datums.get(edge, 0.0)
    if edge == "left":
        return Distance(at=x, value=x - inside, way=FROM_LEFT)
    return Distance(at=x, value=view.width - x - inside, way=FROM_RIGHT)


def places_on(view: FaceView) -> list[tuple[float, float]]:
    """Give the centres of a face's holes, and the corners of a drawer box that stands there."""
    return [place for fitting in view.fittings for place in fitting.places]


def _distinct(values: Iterable[float]) -> list[float]:
    found: list[float] = []
    for value in sorted(values):
        if not found or value - found[-1] > SAME:
            found.append(value)
    return found


def distance_words(distance: Distance, unit: Unit) -> str:
    """Write a distance with the way it is counted: `→ 22.5 (7/8+")`."""
    return f"{distance.way} {figure_words(distance.value, unit)}"


def beside(view: FaceView, unit: Unit) -> list[tuple[float, str]]:
    """Give what is written beside a face, from below, each with its height on it, mm."""
    others = [y for each in view.fittings if each.kind != "shelf" for _, y in each.places]
    rows: list[list[Distance]] = []
    for each in heights_of(view):
        row = rows[-1] if rows else []
        pin = all(abs(each.at - y) > SAME for y in others)
        steps = [after.at - before.at for before, after in pairwise([*row, each])]
        if pin and row and all(abs(step - steps[0]) <= SAME for step in steps):
            row.append(each)
        else:
            rows.append([each])
        if not pin:
            rows.append([])
    said: list[tuple[float, str]] = []
    for row in filter(None, rows):
        if len(row) < ROW:
            said += ((each.at, distance_words(each, unit)) for each in row)
            continue
        low, high = row[0], row[-1]
        step = figure_words((high.at - low.at) / (len(row) - 1), unit)
        said.append((low.at, distance_words(low, unit)))
        said.append(((low.at + high.at) / 2, f"every {step}"))
        said.append((high.at, distance_words(high, unit)))
    return said


def face_picture(view: FaceView, unit: Unit, alt: str) -> Html:
    """Draw a face with its holes and their distances; `alt` says in words what it is."""
    heights, depths = heights_of(view), depths_of(view)
    named = beside(view, unit)
    left = _room(words for _, words in named)
    widest = (WIDE - left - RIGHT) / view.width
    scale = min(max(MOST_HIGH, len(named) * FIGURE_ROW) / view.height, widest)
    wide, high = view.width * scale, view.height * scale
    ends = _spread([at * scale for at, _ in named])
    # Where heights are many, their figures stand out under the face and over it.
    foot = max(
        _room(distance_words(each, unit) for each in depths), FIGURE_ROW - min(ends, default=0.0)
    )
    height = foot + max(high + TOP, max(ends, default=0.0) + FIGURE_ROW)
    marks = _face_marks(view, left, foot, scale)
    places = places_on(view)
    for each in heights:
        far, y = max(x for x, y in places if abs(y - each.at) <= SAME), foot + each.at * scale
        marks.append(Line(x1=left, y1=y, x2=left + far * scale, y2=y, layer="aim"))
    for each in depths:
        far, x = max(y for x, y in places if abs(x - each.at) <= SAME), left + each.at * scale
        marks.append(Line(x1=x, y1=foot, x2=x, y2=foot + far * scale, layer="aim"))
    for fitting in view.fittings:
        for hole in fitting.holes:
            marks.append(
                Circle(x=left + hole.x * scale, y=foot + hole.y * scale,
                       diameter=max(hole.diameter * scale, LEAST_HOLE), layer="hole")
            )  # fmt: skip
    figures: list[Mark] = []
    of_lines = {each.at for each in heights}
    for (level, words), end in zip(named, ends, strict=True):
        y, at = foot + end, foot + level * scale
        if level in of_lines:
            marks.append(Line(x1=left - 12.0, y1=y, x2=left - 2.0, y2=at, layer="lead"))
        figures.append(Text(x=left - 15.0, y=y - FIGURE / 2, text=words, size=FIGURE, anchor="end"))
    ends = _spread([left + each.at * scale for each in depths])
    for each, x in zip(depths, ends, strict=True):
        at = left + each.at * scale
        marks.append(Line(x1=x, y1=foot - 12.0, x2=at, y2=foot - 2.0, layer="lead"))
        words = distance_words(each, unit)
        figures.append(
            Text(x=x + FIGURE / 2, y=foot - 15.0, text=words, size=FIGURE, anchor="end", angle=90)
        )
    marks += figures
    marks += up_marks(left + wide + 20.0, foot + high / 2, min(46.0, max(high, 30.0)))
    return drawing(marks, WIDE, height, "face", alt)


def _room(words: Iterable[str]) -> float:
    """Give the room that figures take beside a face, whatever face a telephone has."""
    return 22.0 + max(map(len, words), default=2) * FIGURE * SIGN


def _spread(wanted: Sequence[float]) -> list[float]:
    """Move figures apart that would stand on each other, each group as little as may be.

    >>> _spread([0.0, 100.0]), _spread([10.0, 10.0, 60.0])
    ([0.0, 100.0], [2.0, 18.0, 60.0])
    """
    groups: list[tuple[float, int]] = []  # the sum of (wanted - own offset), and how many
    for at in wanted:
        groups.append((at, 1))
        while len(groups) > 1:
            (before, count), (last, more) = groups[-2:]
            if last / more - before / count >= FIGURE_ROW * (count + more) / 2:
                break
            # Where its middle is wanted, a group's figures stand evenly about it.
            groups[-2:] = [(before + last, count + more)]
    found: list[float] = []
    for total, count in groups:
        start = total / count - FIGURE_ROW * (count - 1) / 2
        found += [start + FIGURE_ROW * number for number in range(count)]
    return found


def _face_marks(view: FaceView, left: float, foot: float, scale: float) -> list[Mark]:
    """Draw the outline of a face, what lies on it, and the edge it is known by."""
    wide, high = view.width * scale, view.height * scale
    marks: list[Mark] = [
        Outline(points=rectangle(left, foot, left + wide, foot + high), layer="edge")
    ]
    for polygon in (view.opening, view.drawer_outline):
        if polygon:
            points = tuple((left + x * scale, foot + y * scale) for x, y in polygon)
            marks.append(Outline(points=points, layer="hidden"))
    edge = view.hinge_edge or view.front_edge
    if edge in ("left", "right"):
        marks.append(band(edge, left, foot, wide, high))
        words, y = edge_words(view, edge), foot + high + 6.0
        if edge == "left":
            marks.append(Text(x=left, y=y, text=words, size=FIGURE))
        else:
            marks.append(Text(x=left + wide, y=y, text=words, size=FIGURE, anchor="end"))
    return marks


def band(edge: FaceEdge, left: float, foot: float, wide: float, high: float) -> Area:
    """Draw the band along the edge that a part is known by: the hinge edge, the front edge."""
    x = left - 4.0 if edge == "left" else left + wide
    return Area(points=rectangle(x, foot, x + 4.0, foot + high), layer="solid")


def up_marks(x: float, y: float, length: float, word: str = "UP", turns: int = 1) -> list[Mark]:
    """Draw an arrow about (x, y) with its word at its foot; `turns` -1: pointing down."""
    half, head = 9.0, 14.0
    tip, tail = y + turns * length / 2, y - turns * length / 2
    neck = tip - turns * head
    points = (
        (x, tip), (x - half, neck), (x - 3.5, neck), (x - 3.5, tail), (x + 3.5, tail),
        (x + 3.5, neck), (x + half, neck),
    )  # fmt: skip
    at = tail - FIGURE - 5.0 if turns > 0 else tail + 5.0
    return [
        Area(points=points, layer="solid"),
        Text(x=x, y=at, text=word, size=FIGURE, anchor="middle", layer="strong"),
    ]


def drawing(marks: Iterable[Mark], wide: float, high: float, kind: str, alt: str) -> Html:
    """Make a picture of marks."""
    return tag(
        "svg", Html(draw_inline(marks, high)), viewBox=f"0 0 {wide:.0f} {high:.0f}",
        width=round(wide), height=round(high), class_=kind, role="img", aria_label=alt,
    )  # fmt: skip
