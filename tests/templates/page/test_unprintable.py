"""Texts that the printed face cannot show are named, with their characters."""

from msgspec.structs import replace

from templates.page.unprintable import unprintable
from tests.templates.small_layout import small_layout


def test_a_name_in_another_script_is_named_with_its_characters() -> None:
    """Chinese and Hebrew letters are not in the face; what it knows, or has a sign for, is."""
    assert unprintable(small_layout(name="Küche Łódź, Ферма, Κουζίνα 9″ ✓")) == ()
    (line,) = unprintable(small_layout(name="厨房 2"))
    assert line == "job '厨房 2': the printed face lacks 厨 房; each prints as ?"
    (line,) = unprintable(small_layout(name="מטבח"))
    assert line.startswith("job 'מטבח': the printed face lacks ")


def test_walls_and_notes_count_too_and_each_is_named_once() -> None:
    """Whatever the person wrote and the paper carries."""
    layout = small_layout()
    walls = tuple(replace(box, wall="北") for box in layout.boxes * 2)
    first, *others = layout.fronts
    fronts = (replace(first, make=replace(first.make, note="烤箱")), *others)
    lines = unprintable(replace(layout, boxes=walls, fronts=fronts))
    assert [line.partition(":")[0] for line in lines] == ["wall '北'", "note of B1-1 '烤箱'"]
