"""Room on a drawing: where marks already stand, and whether a new one would touch them.

Text must never touch another text or a line. What must be written is placed by construction;
what may be left out, or moved, asks here first.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from templates.page.marks import Area, Circle, Dash, Line, Mark, Outline, Qr, Text
from templates.page.typeface import text_box

Box = tuple[float, float, float, float]
"""Lower left and upper right corner: x0, y0, x1, y1 in mm."""


def boxes_meet(a: Box, b: Box, margin: float = 0.0) -> bool:
    """Say whether two boxes come nearer to each other than `margin` mm in both directions."""
    return (
        a[0] < b[2] + margin
        and b[0] < a[2] + margin
        and a[1] < b[3] + margin
        and b[1] < a[3] + margin
    )


def segment_meets(x1: float, y1: float, x2: float, y2: float, box: Box, margin: float) -> bool:
    """Say whether a straight line touches a box widened by `margin` mm (Liang-Barsky clipping)."""
    x0, y0, x3, y3 = box[0] - margin, box[1] - margin, box[2] + margin, box[3] + margin
    if (x1 < x0 and x2 < x0) or (x1 > x3 and x2 > x3):  # nearly all lines lie beyond one side
        return False
    if (y1 < y0 and y2 < y0) or (y1 > y3 and y2 > y3):
        return False
    start, end = 0.0, 1.0
    for step, low, high in ((x2 - x1, x0 - x1, x3 - x1), (y2 - y1, y0 - y1, y3 - y1)):
        if step == 0.0:
            if low > 0.0 or high < 0.0:
                return False
            continue
        a, b = sorted((low / step, high / step))
        start, end = max(start, a), min(end, b)
        if start > end:
            return False
    return True


def circle_meets(x: float, y: float, radius: float, box: Box, margin: float) -> bool:
    """Say whether a circle's line touches a box widened by `margin` mm."""
    across = (box[0] - margin - x, box[2] + margin - x)
    along = (box[1] - margin - y, box[3] + margin - y)
    near_x = 0.0 if across[0] <= 0.0 <= across[1] else min(abs(across[0]), abs(across[1]))
    near_y = 0.0 if along[0] <= 0.0 <= along[1] else min(abs(along[0]), abs(along[1]))
    far_x, far_y = max(abs(across[0]), abs(across[1])), max(abs(along[0]), abs(along[1]))
    return near_x**2 + near_y**2 <= radius**2 <= far_x**2 + far_y**2


def _reaches(
    x1: float, y1: float, x2: float, y2: float, circle: tuple[float, float, float], margin: float
) -> bool:
    """Say whether a straight line comes nearer to a circle's area than `margin` mm."""
    x, y, radius = circle
    dx, dy = x2 - x1, y2 - y1
    square = dx * dx + dy * dy
    along = ((x - x1) * dx + (y - y1) * dy) / square if square else 0.0
    along = min(1.0, max(0.0, along))
    return math.hypot(x1 + along * dx - x, y1 + along * dy - y) < radius + margin


def _cross(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    """Say whether two straight lines cross."""
    ax, ay, bx, by = a
    cx, cy, dx, dy = b

    def side(px: float, py: float, qx: float, qy: float, rx: float, ry: float) -> float:
        return (qx - px) * (ry - py) - (qy - py) * (rx - px)

    return (
        side(ax, ay, bx, by, cx, cy) * side(ax, ay, bx, by, dx, dy) < 0.0
        and side(cx, cy, dx, dy, ax, ay) * side(cx, cy, dx, dy, bx, by) < 0.0
    )


class Space:
    """The marks of one card as they are added, and the room between them."""

    def __init__(self) -> None:
        self.marks: list[Mark] = []
        self._boxes: list[Box] = []
        self._lines: list[tuple[float, float, float, float]] = []
        self._circles: list[tuple[float, float, float]] = []

    def add(self, *marks: Mark) -> None:
        """Add marks as they are."""
        for mark in marks:
            self.marks.append(mark)
            match mark:
                case Text():
                    self._boxes.append(text_box(mark))
                case Line():
                    self._lines.append((mark.x1, mark.y1, mark.x2, mark.y2))
                case Circle():
                    self._circles.append((mark.x, mark.y, mark.diameter / 2))
                case Outline():
                    self._lines.extend(_sides(mark.points))
                case Area():
                    xs, ys = zip(*mark.points, strict=True)
                    self._boxes.append((min(xs), min(ys), max(xs), max(ys)))
                case Qr():
                    raise TypeError("a card has no QR symbol of its own")

    def keep(self, box: Box) -> None:
        """Keep a box free as if a text stood there: outlines stop beside it."""
        self._boxes.append(box)

    def is_free(self, box: Box, margin: float = 0.6) -> bool:
        """Say whether no text, line, circle or area comes nearer to the box than `margin` mm."""
        x0, y0, x1, y1 = box
        right, top = x1 + margin, y1 + margin
        # boxes_meet() written out: a strip asks it millions of times
        for left, low, end, high in self._boxes:
            if x0 < end + margin and left < right and y0 < high + margin and low < top:
                return False
        left, low = x0 - margin, y0 - margin
        for a, b, c, d in self._lines:  # nearly all lie beyond one side
            if (a < left and c < left) or (a > right and c > right):
                continue
            if (b < low and d < low) or (b > top and d > top):
                continue
            if a == c or b == d or segment_meets(a, b, c, d, box, margin):
                return False
        return not any(circle_meets(*circle, box, margin) for circle in self._circles)

    def open_places(
        self,
        lefts: Sequence[float],
        tops: Sequence[float],
        size: tuple[float, float],
        margin: float,
    ) -> Iterator[tuple[float, float]]:
        """Give the upper left corners at which a box of a size comes nearer to no text, area, level
        or upright line than `margin` mm: of slanted lines and circles it is not known yet."""
        width, height = size
        straight = [(a, b, c, d) for a, b, c, d in self._lines if a == c or b == d]
        lines = [(min(a, c), min(b, d), max(a, c), max(b, d)) for a, b, c, d in straight]
        for top in tops:
            low, high = top - height, top + margin
            boxes = [(a, c + margin) for a, b, c, d in self._boxes if low < d + margin and b < high]
            rules = [(a, c) for a, b, c, d in lines if d >= low - margin and b <= high]
            for left in lefts:
                right, near = left + width + margin, left - margin
                for start, end in boxes:
                    if left < end and start < right:
                        break
                else:
                    for start, end in rules:
                        if end >= near and start <= right:
                            break
                    else:
                        yield left, top

    def line_is_free(
        self, x1: float, y1: float, x2: float, y2: float, margin: float = 0.4, *,
        crossing: bool = False,
    ) -> bool:  # fmt: skip
        """Say whether a straight line crosses no other, unless `crossing`, and comes to no text,
        area or circle."""
        return not (
            any(segment_meets(x1, y1, x2, y2, box, margin) for box in self._boxes)
            or any(_reaches(x1, y1, x2, y2, circle, margin) for circle in self._circles)
            or (not crossing and any(_cross((x1, y1, x2, y2), line) for line in self._lines))
        )

    def add_where_free(
        self, candidates: Iterable[Text], within: Box, *, beside: float = 0.0
    ) -> bool:
        """Add the first text that stands free and inside `within`; say whether one did.

        Another text stands at least `beside` mm before or behind it, so that they are not read
        as one.
        """
        for text in candidates:
            if self._stands_free(text, within, beside):
                self.add(text)
                return True
        return False

    def _stands_free(self, text: Text, within: Box, beside: float) -> bool:
        box = text_box(text)
        if box[0] < within[0] or box[1] < within[1] or box[2] > within[2] or box[3] > within[3]:
            return False
        wide = (box[0] - beside, box[1], box[2] + beside, box[3])
        return not any(boxes_meet(wide, other) for other in self._boxes) and self.is_free(box)

    def add_between_texts(
        self, points: Sequence[tuple[float, float]], within: Box, dash: Dash, width: float,
        least: float = 2.0,
    ) -> None:  # fmt: skip
        """Add an open or closed run of straight lines, clipped to `within` and left out where a
        text stands: a dashed outline may miss a dash, a word must not be struck through. Stumps
        under `least` mm are dropped."""
        for (x1, y1), (x2, y2) in pairwise(points):
            clipped = clip(x1, y1, x2, y2, within)
            if clipped is None:
                continue
            for piece in _free_pieces(clipped, self._boxes, least):
                self.add(
                    Line(x1=piece[0], y1=piece[1], x2=piece[2], y2=piece[3], width=width, dash=dash)
                )


def clip(
    x1: float, y1: float, x2: float, y2: float, box: Box
) -> tuple[float, float, float, float] | None:
    """Give the part of a straight line that lies inside a box, None where none does."""
    start, end = 0.0, 1.0
    for from_, step, low, high in ((x1, x2 - x1, box[0], box[2]), (y1, y2 - y1, box[1], box[3])):
        if step == 0.0:
            if not low <= from_ <= high:
                return None
            continue
        a, b = (low - from_) / step, (high - from_) / step
        if step < 0.0:
            a, b = b, a
        start, end = max(start, a), min(end, b)
    if start >= end:
        return None
    dx, dy = x2 - x1, y2 - y1
    return x1 + start * dx, y1 + start * dy, x1 + end * dx, y1 + end * dy


def covered(points: Sequence[tuple[float, float]], box: Box, margin: float) -> float:
    """Give the share of a run of straight lines within `margin` mm of a box."""
    widened = (box[0] - margin, box[1] - margin, box[2] + margin, box[3] + margin)
    whole = hidden = 0.0
    for (x1, y1), (x2, y2) in pairwise(points):
        whole += math.hypot(x2 - x1, y2 - y1)
        inside = clip(x1, y1, x2, y2, widened)
        if inside is not None:
            hidden += math.hypot(inside[2] - inside[0], inside[3] - inside[1])
    return hidden / whole if whole else 0.0


def _free_pieces(
    line: tuple[float, float, float, float], boxes: Sequence[Box], least: float
) -> list[tuple[float, float, float, float]]:
    """Cut away the stretches of a line within 0.8 mm of a box; drop stumps under `least`."""
    x1, y1, x2, y2 = line
    length = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
    left, right = (x1, x2) if x1 < x2 else (x2, x1)
    low_end, top = (y1, y2) if y1 < y2 else (y2, y1)
    spans: list[tuple[float, float]] = [(0.0, 1.0)]
    for box in boxes:
        widened = (box[0] - 0.8, box[1] - 0.8, box[2] + 0.8, box[3] + 0.8)
        if right < widened[0] or left > widened[2] or top < widened[1] or low_end > widened[3]:
            continue  # nearly all lie beyond one side
        hidden = clip(x1, y1, x2, y2, widened)
        if hidden is None or length == 0.0:
            continue
        low = ((hidden[0] - x1) ** 2 + (hidden[1] - y1) ** 2) ** 0.5 / length
        high = ((hidden[2] - x1) ** 2 + (hidden[3] - y1) ** 2) ** 0.5 / length
        spans = [
            piece
            for a, b in spans
            for piece in ((a, min(b, low)), (max(a, high), b))
            if piece[1] - piece[0] > 0.0
        ]
    return [
        (x1 + a * (x2 - x1), y1 + a * (y2 - y1), x1 + b * (x2 - x1), y1 + b * (y2 - y1))
        for a, b in spans
        if (b - a) * length >= least
    ]


def _sides(
    points: Sequence[tuple[float, float]],
) -> list[tuple[float, float, float, float]]:
    return [(*a, *b) for a, b in zip(points, (*points[1:], points[0]), strict=True)]


def spread(wanted: Sequence[float], sizes: Sequence[float], low: float) -> list[float]:
    """Place labels in a row, none overlapping and none below `low`, each as near to where it is
    wanted as the others allow.

    `wanted` are centres in ascending order, `sizes` the labels' extents; the result are centres.

    >>> spread([22.5, 32.0], [20.0, 20.0], 0.0)
    [17.25, 37.25]
    """
    groups: list[list[float]] = []  # centre wanted for its start, number, extent before each
    offsets: list[float] = []
    total = 0.0
    for size in sizes:
        offsets.append(total + size / 2)
        total += size
    starts = [centre - offset for centre, offset in zip(wanted, offsets, strict=True)]
    for start in starts:
        groups.append([start, 1.0])
        while len(groups) > 1 and groups[-2][0] > groups[-1][0]:
            last = groups.pop()
            before = groups[-1]
            count = before[1] + last[1]
            groups[-1] = [(before[0] * before[1] + last[0] * last[1]) / count, count]
    placed: list[float] = []
    for start, count in groups:
        placed.extend([max(start, low)] * int(count))
    return [start + offset for start, offset in zip(placed, offsets, strict=True)]
