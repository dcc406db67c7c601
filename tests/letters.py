"""The letters and strokes of a printed page by their boxes, mm: from the page read back, and from
the face's own table of advances."""

from collections.abc import Iterator
from functools import cache

import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

from templates.page.typeface import font_path
from tests.readback import EM_TO_CAPITAL, POINTS_TO_MM, Box, PrintedPage, Run, ends_of
from tests.readletters import LETTERS_OFF

Boxes = tuple[Box, ...]


@cache
def _face(bold: bool) -> tuple[dict[str, float], float]:
    """Give the advance of each character and the foot of the face below the base line, in ems."""
    font = TTFont(font_path(bold))
    em, advances = font["head"].unitsPerEm, font["hmtx"].metrics
    wide = {chr(code): advances[name][0] / em for code, name in font.getBestCmap().items()}
    return wide, font["hhea"].descent / em


def letters_of(page: PrintedPage) -> Boxes:
    """Give a page's letters but for spaces: one em high from the foot of the face, as wide as the
    next letter is away."""
    return tuple(letter for run in page.runs for letter in _letters(run))


def _letters(run: Run) -> Iterator[Box]:
    wide, foot = _face(run.bold)
    em = run.size / EM_TO_CAPITAL
    x0, y0, x1, y1 = run.box
    base = x0 + run.size if run.turned else y1 - run.size
    at, end = (y0, y1) if run.turned else (x0, x1)
    for letter in run.text:
        after = at + wide[letter] * em
        if not letter.isspace() and run.turned:
            yield base - (foot + 1) * em, at, base - foot * em, after
        elif not letter.isspace():
            yield at, base + foot * em, after, base + (foot + 1) * em
        at = after
    # The reader's box of a last letter takes in what of its ink stands over.
    off = LETTERS_OFF * POINTS_TO_MM + 0.02 * em
    assert at == pytest.approx(end, abs=off), run.text


def strokes_of(page: PrintedPage) -> Boxes:
    """Give the boxes of all strokes and outlines of a page but for upright rectangles."""
    rings = (
        (
            ring.x - ring.diameter / 2,
            ring.y - ring.height / 2,
            ring.x + ring.diameter / 2,
            ring.y + ring.height / 2,
        )
        for ring in page.rings
    )
    return (*rings, *page.middles, *(ends_of(stroke) for stroke in page.strokes))


def drawn_on(page: PrintedPage) -> Boxes:
    """Give the boxes of everything on a page but letters: strokes, outlines, black."""
    frames = (box for box, _, _ in page.frames)
    return (*strokes_of(page), *frames, *page.blacks)
