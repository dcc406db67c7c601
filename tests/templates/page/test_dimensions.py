"""Dimensions as drafting has them."""

from templates.page.dimensions import across, hatching, upward
from templates.page.marks import Area, Line, Text


def lines(marks: list[object]) -> list[Line]:
    return [mark for mark in marks if isinstance(mark, Line)]


def test_a_value_stands_above_its_line_where_there_is_room() -> None:
    """ISO 129-1: above the dimension line and parallel to it; arrows point outwards."""
    marks = across(0.0, 40.0, -10.0, "d 40", from1=0.0, from2=0.0)
    [text] = [mark for mark in marks if isinstance(mark, Text)]
    assert (text.x, text.anchor) == (20.0, "middle")
    assert text.y > -10.0
    tips = [mark.points[0] for mark in marks if isinstance(mark, Area)]
    assert tips == [(0.0, -10.0), (40.0, -10.0)]


def test_a_narrow_one_goes_outside() -> None:
    """The value stands beside the extension lines, on the side asked for."""
    for beside in ("left", "right"):
        marks = across(0.0, 3.0, 5.0, "K 3", from1=0.0, from2=0.0, beside=beside)
        [text] = [mark for mark in marks if isinstance(mark, Text)]
        assert (text.x < 0.0) == (beside == "left")
        assert abs(text.x) > 3.0


def test_an_upright_one_reads_from_the_right() -> None:
    """Its text is turned and stands left of the line."""
    marks = upward(0.0, 40.0, 8.0, "a 40", from1=0.0, from2=0.0)
    [text] = [mark for mark in marks if isinstance(mark, Text)]
    assert (text.angle, text.y) == (90, 20.0)
    assert text.x < 8.0


def test_hatching_stays_in_the_board_at_45_degrees() -> None:
    """Two boards side by side share their lines (ISO 128)."""
    drawn = lines(list(hatching(0.0, 0.0, 20.0, 10.0)))
    assert drawn
    for line in drawn:
        assert round(line.x2 - line.x1, 6) == round(line.y2 - line.y1, 6)
        assert 0.0 <= line.x1 <= line.x2 <= 20.0
        assert -1e-9 <= line.y1 <= line.y2 <= 10.0 + 1e-9
