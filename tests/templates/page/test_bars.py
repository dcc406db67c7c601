"""Check bars, and the arrow that shows which way is up."""

from templates.page.bars import bar, bar_of_50, up_arrow
from templates.page.marks import Area, Line, Text
from templates.page.typeface import text_box


def test_bars_are_as_long_as_they_say() -> None:
    """The line itself; the ticks stand across its ends."""
    lines = [mark for mark in bar(3.0, 2.0, 150.0) if isinstance(mark, Line)]
    assert (lines[0].x2 - lines[0].x1, lines[0].y1) == (150.0, lines[0].y2)
    assert {(tick.x1, tick.x2) for tick in lines[1:]} == {(3.0, 3.0), (153.0, 153.0)}
    down = [mark for mark in bar(2.0, 200.0, 100.0, down=True) if isinstance(mark, Line)]
    assert (down[0].y1, down[0].y2, down[0].x1) == (200.0, 100.0, down[0].x2)
    (words,) = [mark for mark in bar_of_50(0.0, 0.0) if isinstance(mark, Text)]
    assert words.text == "50.0"


def test_the_arrow_points_up() -> None:
    """Its tip is its highest point, on its middle; UP stands below its shaft."""
    area, words = up_arrow(6.0, 10.0, 25.0)
    assert isinstance(area, Area)
    assert isinstance(words, Text)
    tip = max(area.points, key=lambda point: point[1])
    assert tip == (6.0, 10.0 + 25.0)
    assert [point for point in area.points if point[1] == tip[1]] == [tip]
    assert words.text == "UP"
    assert text_box(words)[3] <= min(y for _, y in area.points) + 0.5
