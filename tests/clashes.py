"""Where marks or print run into each other, or off the page; in words, nothing where all is clear.

Nothing may touch a text, and nothing may lie outside the page. Lines may cross lines.
"""

import numpy as np
from numpy.typing import NDArray

from templates.page.marks import Area, Circle, Line, Outline, Page, Qr, Text
from templates.page.typeface import text_box
from templates.writers.qr import QUIET, qr_matrix
from tests.readback import Box, PrintedPage

SHAVE = 0.15
"""Boxes allow for letters that are not there; this much of them may touch, mm."""

Segments = list[tuple[float, float, float, float]]


def clashes_of_marks(page: Page) -> list[str]:
    """Find the clashes of a page's marks, texts taken by the width of their letters."""
    texts = [mark for mark in page.marks if isinstance(mark, Text)]
    segments: Segments = []
    solids: list[Box] = []
    circles: list[tuple[float, float, float]] = []
    for mark in page.marks:
        match mark:
            case Line():
                segments.append((mark.x1, mark.y1, mark.x2, mark.y2))
            case Outline():
                ends = (*mark.points[1:], mark.points[0])
                segments += [(*a, *b) for a, b in zip(mark.points, ends, strict=True)]
            case Area():
                xs, ys = zip(*mark.points, strict=True)
                solids.append((min(xs), min(ys), max(xs), max(ys)))
            case Circle():
                circles.append((mark.x, mark.y, mark.diameter / 2))
            case Qr():
                side, quiet = len(qr_matrix(mark.text)) * mark.module, QUIET * mark.module
                solids.append(
                    (mark.x - quiet, mark.y - quiet, mark.x + side + quiet, mark.y + side + quiet)
                )
    return _clashes(
        (page.width, page.height),
        [text.text for text in texts],
        [_shaved(text_box(text)) for text in texts],
        segments,
        solids,
        circles,
    )


def clashes_of_print(page: PrintedPage) -> list[str]:
    """Find the clashes of a page as it was read back, texts taken by the boxes of their ink."""
    segments: Segments = [(s.x1, s.y1, s.x2, s.y2) for s in page.strokes]
    for x0, y0, x1, y1 in [frame for frame, _, _ in page.frames]:
        segments += [(x0, y0, x1, y0), (x1, y0, x1, y1), (x1, y1, x0, y1), (x0, y1, x0, y0)]
    for x0, y0, x1, y1 in page.middles:
        x, y = (x0 + x1) / 2, (y0 + y1) / 2
        segments += [(x0, y, x, y1), (x, y1, x1, y), (x1, y, x, y0), (x, y0, x0, y)]
    return _clashes(
        (page.width, page.height),
        [run.text for run in page.runs],
        [run.box for run in page.runs],
        segments,
        list(page.blacks),
        [(ring.x, ring.y, ring.diameter / 2) for ring in page.rings],
    )


def _shaved(box: Box) -> Box:
    return box[0] + SHAVE, box[1] + SHAVE, box[2] - SHAVE, box[3] - SHAVE


def _clashes(
    size: tuple[float, float],
    names: list[str],
    texts: list[Box],
    segments: Segments,
    solids: list[Box],
    circles: list[tuple[float, float, float]],
) -> list[str]:
    if not texts:
        return _outside(size, names, texts, segments, solids, circles)
    boxes = np.array(texts)
    found = _outside(size, names, texts, segments, solids, circles)
    pairs = np.argwhere(np.triu(_meet(boxes, boxes), 1))
    found += [f"{names[a]!r} on {names[b]!r}" for a, b in pairs]
    if solids:
        found += [f"{names[a]!r} on black" for a, _ in np.argwhere(_meet(boxes, np.array(solids)))]
    if segments:
        found += [
            f"{names[a]!r} struck by a line {[round(v, 1) for v in segments[b]]}"
            for a, b in np.argwhere(_crossed(boxes, np.array(segments)))
        ]
    for x, y, radius in circles:
        across = np.stack([boxes[:, 0] - x, boxes[:, 2] - x])
        along = np.stack([boxes[:, 1] - y, boxes[:, 3] - y])
        near = np.hypot(_least(across), _least(along))
        far = np.hypot(np.abs(across).max(axis=0), np.abs(along).max(axis=0))
        found += [
            f"{names[a]!r} on a hole" for (a,) in np.argwhere((near <= radius) & (radius <= far))
        ]
    return found


def _outside(
    size: tuple[float, float],
    names: list[str],
    texts: list[Box],
    segments: Segments,
    solids: list[Box],
    circles: list[tuple[float, float, float]],
) -> list[str]:
    rings = [(x - r, y - r, x + r, y + r) for x, y, r in circles]
    lines = [(min(a, c), min(b, d), max(a, c), max(b, d)) for a, b, c, d in segments]
    named = [
        *zip(names, texts, strict=True),
        *(("black", box) for box in solids),
        *(("a line", box) for box in lines),
        *(("a hole", box) for box in rings),
    ]
    return [
        f"{name!r} outside the page"
        for name, box in named
        if box[0] < -0.001
        or box[1] < -0.001
        or box[2] > size[0] + 0.001
        or box[3] > size[1] + 0.001
    ]


def _least(ends: NDArray[np.float64]) -> NDArray[np.float64]:
    """The least distance from 0 of a stretch between two ends."""
    low, high = ends
    return np.where((low <= 0) & (high >= 0), 0.0, np.minimum(np.abs(low), np.abs(high)))


def _meet(a: NDArray[np.float64], b: NDArray[np.float64]) -> NDArray[np.bool_]:
    a, b = a[:, None, :], b[None, :, :]
    meet: NDArray[np.bool_] = (
        (a[..., 0] < b[..., 2])
        & (b[..., 0] < a[..., 2])
        & (a[..., 1] < b[..., 3])
        & (b[..., 1] < a[..., 3])
    )
    return meet


def _crossed(boxes: NDArray[np.float64], lines: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Which boxes a straight line crosses: its ends do not lie beyond one side of the box, and
    the box's corners do not all lie on one side of the line (separating axes)."""
    low = np.minimum(lines[:, :2], lines[:, 2:])
    high = np.maximum(lines[:, :2], lines[:, 2:])
    near = _meet(boxes, np.concatenate([low - 1e-9, high + 1e-9], axis=1))
    dx, dy = lines[:, 2] - lines[:, 0], lines[:, 3] - lines[:, 1]
    sides = np.stack(
        [
            dx * (boxes[:, None, y] - lines[:, 1]) - dy * (boxes[:, None, x] - lines[:, 0])
            for x in (0, 2)
            for y in (1, 3)
        ]
    )
    crossed: NDArray[np.bool_] = near & (sides.min(axis=0) <= 0) & (sides.max(axis=0) >= 0)
    return crossed
