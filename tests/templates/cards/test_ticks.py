"""What a card says that serves several parts."""

from templates.cards.ticks import MOST_ON_CARD, Member, tick_boxes
from templates.faces.faceview import FaceView
from templates.page.marks import Outline, Text
from templates.page.typeface import text_box


def member(part: str, serves: str = "") -> Member:
    view = FaceView(
        part=part, code="K7Q2", face="inside", width=584.2, height=774.7, thickness=18.3,
        fittings=(),
    )  # fmt: skip
    return Member(view=view, serves=serves, dx=0.0, dy=0.0)


def test_each_part_has_a_box_its_name_and_its_code() -> None:
    """In rows within the width, nothing on anything."""
    members = [member(f"B{row}-SIDE-L", f"B{row}-2") for row in range(MOST_ON_CARD)]
    block = tick_boxes(members, 66.0)
    texts = [mark for mark in block.marks if isinstance(mark, Text)]
    assert sum(isinstance(mark, Outline) for mark in block.marks) == MOST_ON_CARD
    for each in members:
        assert [text.bold for text in texts if text.text == each.part] == [True]
    assert [text.text for text in texts].count("K7Q2") == MOST_ON_CARD
    assert "for B3-2" in [text.text for text in texts]
    boxes = [text_box(text) for text in texts]
    for row, a in enumerate(boxes):
        assert a[0] >= 0.0
        assert a[2] <= 66.0
        assert a[1] >= -block.height
        for b in boxes[row + 1 :]:
            assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]


def test_a_card_for_one_part_has_none() -> None:
    """Nor any room for them."""
    assert tick_boxes([], 66.0).height == 0.0
