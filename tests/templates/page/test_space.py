"""Room on a drawing."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from templates.page.marks import Area, Circle, Line, Outline, Qr, Text
from templates.page.space import Space, boxes_meet, circle_meets, clip, segment_meets, spread
from templates.page.typeface import text_box

BOX = (10.0, 10.0, 20.0, 14.0)


@pytest.mark.parametrize(
    ("other", "margin", "meet"),
    [
        ((15.0, 12.0, 30.0, 30.0), 0.0, True),
        ((20.5, 10.0, 30.0, 14.0), 0.0, False),
        ((20.5, 10.0, 30.0, 14.0), 0.6, True),
        ((20.5, 15.0, 30.0, 20.0), 0.6, False),  # near in one direction only
    ],
)
def test_boxes_meet_only_where_they_are_near_in_both_directions(
    other: tuple[float, float, float, float], margin: float, meet: bool
) -> None:
    """Two boxes side by side meet only within the margin."""
    assert boxes_meet(BOX, other, margin) is meet


@pytest.mark.parametrize(
    ("segment", "meets"),
    [
        ((0.0, 12.0, 30.0, 12.0), True),
        ((15.0, 0.0, 15.0, 30.0), True),
        ((12.0, 11.0, 13.0, 12.0), True),  # wholly inside
        ((0.0, 0.0, 9.0, 30.0), False),
        ((0.0, 15.0, 30.0, 15.0), False),
        ((16.0, 22.0, 28.0, 10.0), False),  # past the corner, though its own box meets
        ((16.0, 16.0, 22.0, 10.0), True),  # across the corner
    ],
)
def test_a_line_meets_a_box_only_where_it_crosses_it(
    segment: tuple[float, float, float, float], meets: bool
) -> None:
    """A slanting line past a corner is clear of it."""
    assert segment_meets(*segment, BOX, 0.0) is meets


@pytest.mark.parametrize(
    ("x", "y", "radius", "meets"),
    [
        (15.0, 12.0, 3.0, True),  # its line passes through
        (15.0, 12.0, 17.5, False),  # the box stands free inside the circle
        (40.0, 12.0, 10.0, False),
        (40.0, 12.0, 21.0, True),
    ],
)
def test_a_circle_is_only_its_line(x: float, y: float, radius: float, meets: bool) -> None:
    """A note may stand inside a cup's circle."""
    assert circle_meets(x, y, radius, BOX, 0.0) is meets


def test_text_gives_way_to_every_kind_of_mark() -> None:
    """A spot is free only of texts, lines, circles, outlines and areas."""
    text = Text(x=0.0, y=0.0, text="97.8")
    x0, y0, x1, y1 = text_box(text)
    middle = (y0 + y1) / 2
    for mark in (
        Text(x=2.0, y=1.0, text="22.5"),
        Line(x1=x0 - 5, y1=middle, x2=x1 + 5, y2=middle),
        Circle(x=x0, y=middle, diameter=2.0),
        Outline(points=((x0, -9.0), (x1, -9.0), (x1, 9.0))),
        Area(points=((x0, 0.0), (x1, 0.0), (x1, 2.0))),
    ):
        space = Space()
        space.add(mark)
        within = (x0 - 1, y0 - 1, x1 + 1, y1 + 1)
        assert not space.add_where_free((text,), within)
        assert space.marks == [mark]
    empty = Space()
    assert empty.add_where_free((text,), (x0, y0, x1, y1))
    assert not Space().add_where_free((text,), (x0 + 0.1, y0, x1, y1))


def test_a_card_has_no_symbol() -> None:
    """The QR symbol belongs to the sheet."""
    with pytest.raises(TypeError, match="no QR symbol"):
        Space().add(Qr(x=0.0, y=0.0, text="B1-1"))


def test_an_outline_spares_the_words_it_would_strike_through() -> None:
    """It is cut away 0.8 mm before a text and taken up after it, and clipped to the card."""
    space = Space()
    text = Text(x=40.0, y=-1.25, text="35 dia")
    space.add(text)
    space.add_between_texts(((-50.0, 0.0), (150.0, 0.0)), (0.0, -10.0, 100.0, 10.0), "dashed", 0.18)
    x0, _, x1, _ = text_box(text)
    lines = [mark for mark in space.marks if isinstance(mark, Line)]
    assert [(line.x1, line.x2) for line in lines] == [
        (0.0, pytest.approx(x0 - 0.8)),
        (pytest.approx(x1 + 0.8), 100.0),
    ]
    assert {line.dash for line in lines} == {"dashed"}


def test_a_stump_of_a_line_is_left_out() -> None:
    """Under 2 mm nothing is seen of a dashed line."""
    space = Space()
    space.add_between_texts(((0.0, 0.0), (1.9, 0.0)), (0.0, -1.0, 9.0, 1.0), "dashed", 0.18)
    assert space.marks == []


def test_clipping_keeps_what_lies_inside() -> None:
    """Outside a box nothing is left."""
    assert clip(-5.0, 5.0, 15.0, 5.0, (0.0, 0.0, 10.0, 10.0)) == (0.0, 5.0, 10.0, 5.0)
    assert clip(-5.0, 11.0, 15.0, 11.0, (0.0, 0.0, 10.0, 10.0)) is None
    assert clip(11.0, -5.0, 11.0, 15.0, (0.0, 0.0, 10.0, 10.0)) is None
    assert clip(0.0, 12.0, 12.0, 24.0, (0.0, 0.0, 10.0, 10.0)) is None


any_labels = st.lists(st.tuples(st.floats(0, 300), st.floats(1, 30)), min_size=1, max_size=8)


@given(any_labels, st.floats(-10, 100))
@settings(max_examples=50)
def test_spread_labels_never_overlap(labels: list[tuple[float, float]], low: float) -> None:
    """They keep their order, stay above the limit, and stand where wanted if there is room."""
    check_spread(labels, low)


@pytest.mark.slow
@given(any_labels, st.floats(-10, 100))
@settings(max_examples=100)
def test_many_spread_labels_never_overlap(labels: list[tuple[float, float]], low: float) -> None:
    """The same, at length."""
    check_spread(labels, low)


def check_spread(labels: list[tuple[float, float]], low: float) -> None:
    """Spread labels from a limit up."""
    wanted = sorted(centre for centre, _ in labels)
    sizes = [size for _, size in labels]
    centres = spread(wanted, sizes, low)
    assert len(centres) == len(wanted)
    assert centres[0] - sizes[0] / 2 >= low - 1e-6
    for k in range(len(centres) - 1):
        assert centres[k + 1] - centres[k] >= (sizes[k] + sizes[k + 1]) / 2 - 1e-6


def test_labels_with_room_stand_where_they_are_wanted() -> None:
    """Nothing is moved without need."""
    assert spread([20.0, 60.0], [10.0, 10.0], 0.0) == [20.0, 60.0]


def test_a_note_keeps_its_distance_from_what_stands_beside_it() -> None:
    """A text 1 mm before another reads as one with it: at 2 mm it is refused, at none taken."""
    other, within = Text(x=20.0, y=0.0, text="120.0"), (0.0, -10.0, 60.0, 10.0)
    note = Text(x=19.0 - text_box(Text(x=0.0, y=0.0, text="5 dia"))[2], y=0.0, text="5 dia")
    for beside, taken in ((2.0, False), (0.0, True)):
        space = Space()
        space.add(other)
        assert space.add_where_free([note], within, beside=beside) is taken
