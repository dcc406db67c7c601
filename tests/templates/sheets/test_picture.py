"""The small picture of a sheet."""

import math
from pathlib import Path

import pytest

import templates.demo
from cli.jobs import read_in_hand
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import make_sheets
from templates.page.marks import Area, Circle, Line, Outline, Text
from templates.page.paper import PAPERS
from templates.page.typeface import text_box
from templates.sheets.picture import picture
from tests.templates.worked import only_cards

DEMO = Path(templates.demo.__file__).with_name("job.toml")

FACES = [
    ("B3-2", "back", "HINGES", "right"),
    ("B3-2", "front", "HINGES", "left"),
    ("B1-SIDE-L", "inside", "FRONT", "left"),
    ("B1-SIDE-R", "inside", "FRONT", "right"),
]


@pytest.mark.parametrize(("part", "face", "words", "edge"), FACES)
def test_the_picture_shows_face_cards_and_holes(
    part: str, face: str, words: str, edge: str
) -> None:
    """The face in its own shape, its holes as dots in their places, the cards dashed, no circle;
    the edge that matters in black, on its own side."""
    cards = only_cards(part, face)
    view = cards[0].view
    piece = picture(view, tuple(cards), 66.0)
    solid, *dashed = [mark for mark in piece.marks if isinstance(mark, Outline)]
    xs, ys = zip(*solid.points, strict=True)
    w, h = max(xs) - min(xs), max(ys) - min(ys)
    assert w / h == pytest.approx(view.width / view.height)
    assert len(dashed) == len(cards)
    assert not [mark for mark in piece.marks if isinstance(mark, Circle)]
    assert {mark.width for mark in piece.marks if isinstance(mark, Line | Outline)} <= {0.18, 0.25}
    squares = [m for m in piece.marks if isinstance(m, Area) and len(m.points) == 4]
    boxes = [tuple(zip(*mark.points, strict=True)) for mark in squares]
    dots = [(sum(x) / 4, sum(y) / 4) for x, y in boxes if max(x) - min(x) == pytest.approx(0.7)]
    holes = [hole for fitting in view.fittings for hole in fitting.holes]
    assert dots == [
        (
            pytest.approx(min(xs) + hole.x * w / view.width),
            pytest.approx(min(ys) + hole.y * h / view.height),
        )
        for hole in holes
    ]
    (bar,) = [x for x, y in boxes if max(x) - min(x) == pytest.approx(1.0)]
    assert (min(bar) >= max(xs)) if edge == "right" else (max(bar) <= min(xs))
    if h > 20.0:
        assert words in [mark.text for mark in piece.marks if isinstance(mark, Text)]


def test_the_arrow_is_large() -> None:
    """25 mm, beside the face."""
    cards = only_cards("B3-2", "back")
    piece = picture(cards[0].view, tuple(cards), 66.0)
    arrow = next(m for m in piece.marks if isinstance(m, Area) and len(m.points) == 7)
    up = next(mark for mark in piece.marks if isinstance(mark, Text) and mark.text == "UP")
    assert max(y for _, y in arrow.points) - up.y == pytest.approx(25.0)


@pytest.mark.parametrize("part", ["T1-SIDE-L", "T1-SIDE-R", "S3-SIDE-R", "S3-2"])
def test_every_card_of_a_tall_part_is_numbered(part: str) -> None:
    """Beside the word at the hinge or front edge too, on either side."""
    layout = lay_out(read_in_hand(DEMO))
    for plan in make_sheets(layout, PAPERS["common"], only=[part]).plans:
        cards = tuple(placed.card for placed in plan.cards if placed.card.view.part == part)
        texts = [m.text for m in picture(cards[0].view, cards, 66.0).marks if isinstance(m, Text)]
        assert {str(card.number) for card in cards} <= set(texts)


@pytest.mark.parametrize(("part", "face"), [(part, face) for part, face, *_ in FACES])
def test_a_number_stands_in_its_own_cards_frame(part: str, face: str) -> None:
    """Or on a line that begins at that frame, where the frame is too small for it."""
    cards = tuple(only_cards(part, face))
    marks = picture(cards[0].view, cards, 66.0).marks
    _, *frames = [mark for mark in marks if isinstance(mark, Outline)]
    lines = [mark for mark in marks if isinstance(mark, Line)]
    for card, frame in zip(cards, frames, strict=True):
        xs, ys = zip(*frame.points, strict=True)
        (text,) = [m for m in marks if isinstance(m, Text) and m.text == str(card.number)]
        x0, y0, x1, y1 = text_box(text)
        if min(xs) < x0 and x1 < max(xs) and min(ys) < y0 and y1 < max(ys):
            continue
        assert any(
            min(xs) - 1e-9 <= line.x1 <= max(xs) + 1e-9
            and min(ys) - 1e-9 <= line.y1 <= max(ys) + 1e-9
            and math.hypot(line.x2 - (x0 + x1) / 2, line.y2 - (text.y + 1.25)) < 2.5
            for line in lines
        )
