"""The list of open numbers: each with the line to write, and beside it where it is drawn, once for
those that are drawn alike."""

from jigs.box.bypart import open_in
from jigs.given.confirming import rests_on
from templates.binding.openlist import WHERE, open_list
from templates.page.marks import Line, Text
from templates.words.openwords import line_to_write
from tests.jobtexts import box_text
from tests.templates.printed import laid_out

WIDTH = 188.8
DRAWER = 'kind = "drawer"\nslide = "undermount-533"'
DOOR = 'kind = "door"\nhinged = "left"\nhinge = "cup35-full"'
"""Records of the list, which nobody has confirmed."""


def test_beside_each_number_stands_where_it_is_drawn() -> None:
    """At its own height, or at the top of the rule that runs along it and those like it."""
    layout = laid_out(box_text("B1", "base", DRAWER, DOOR))
    block = open_list(layout, WIDTH, 200.0)
    assert block is not None
    texts = [mark for mark in block.marks if isinstance(mark, Text)]
    rules = [mark for mark in block.marks if isinstance(mark, Line)]
    words = {"", *WHERE.values()}
    said = [mark for mark in texts if {*mark.text.split(", ")} <= words]
    shared = 0
    for number in open_in(layout):
        (line,) = [mark for mark in texts if mark.text == line_to_write(number)]
        beside = [rule for rule in rules if rule.y2 < line.y + 1 and line.y < rule.y1 + 1]
        beside = [rule for rule in beside if 0 < rule.x1 - line.x < WIDTH / 2]
        top = beside[0].y1 if beside else line.y + 1
        here = [mark for mark in said if 0 < mark.x - line.x < WIDTH / 2 and mark.y < top]
        where = max(here, key=lambda mark: mark.y)
        shared += bool(beside)
        wanted = dict.fromkeys(word for rests, word in WHERE.items() if rests_on(number, rests))
        assert where.text == ", ".join(wanted), number.key
    assert shared > len(rules) > 0
