"""A fixed shelf's height: told wherever its boards are set out, and always from where it counts."""

import pytest
from msgspec.structs import replace

from jigs.bench.boxtable import box_tables
from jigs.bench.stations import plan_stations
from jigs.bench.storystick import find_sticks
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_list
from jigs.given.job import FrontSpec, ShelfSpec
from templates.elevations.elevation import draw_elevations
from templates.labels.piecewords import words_of_piece_label
from templates.lists.heighttables import heights_listing
from templates.lists.listtext import listing_text
from templates.page.marks import Line, Outline, Text
from templates.page.paper import PAPERS
from templates.words.boardfacts import side_facts
from templates.words.piecenotes import note_words
from tests.jigs.sample import MATERIAL, box, lay

AT = 372.0


def shelved(*, assembled: bool = False) -> Layout:
    """Lay out a door hung on the left, before a shelf: nothing is bored in the right side."""
    door = FrontSpec(id="B1-1", kind="door", hinged="left")
    return lay(replace(box(door), shelves=(ShelfSpec(at=AT),), assembled=assembled))


@pytest.mark.parametrize("assembled", [False, True])
def test_it_stands_on_both_boards_wherever_these_are_set_out(assembled: bool) -> None:
    """From the sides' ends; over the bottom panel in a box that is together."""
    layout = shelved(assembled=assembled)
    up = f"{AT - (MATERIAL.side if assembled else 0.0):.1f} ("
    text = listing_text(heights_listing(box_tables(plan_stations(layout)), layout))
    assert f"FIXED SHELF: strike its UPPER FACE too, on both boards {up}" in " ".join(text.split())
    for side in layout.sides:
        facts = " ".join(fact.text for fact in side_facts(layout, side))
        assert f"UPPER FACE too, on the {side.side.upper()} board {up}" in facts
    (stick,) = find_sticks(layout)
    (line,) = (line for line in stick.lines if line.kind == "fixed-shelf")
    assert line.y == pytest.approx(AT)
    assert line.boards == ("B1-SIDE-L", "B1-SIDE-R")


def test_its_piece_and_its_label_say_from_where() -> None:
    """Each wording, the shortest too, names the end that it counts from."""
    layout = shelved()
    (piece,) = (piece for piece in cut_list(layout) if piece.kind == "fixed-shelf")
    assert note_words(piece.notes) == f"upper face {AT:.1f} above the sides' bottom end"
    (line,) = (
        line for line in words_of_piece_label(layout, piece).lines if f"{AT:.1f}" in line.ways[0]
    )
    assert line.ways[0] == f"UPPER FACE {AT:.1f} FROM SIDES' BOTTOM END"
    assert all("BOTTOM END" in way and f"{AT:.1f}" in way for way in line.ways)


def test_it_is_drawn_on_its_wall_dashed_behind_a_front() -> None:
    """Along its upper face, from board to board of its column; under an opening it is seen."""
    door, gap = FrontSpec(id="B1-1", kind="door", hinged="left"), FrontSpec(id="O", kind="opening")
    shelf = (ShelfSpec(at=AT),)
    for fronts, dash in (((door,), "dashed"), ((), "")):
        layout = lay(replace(box(*fronts), shelves=shelf))
        (drawn,) = draw_elevations(layout, PAPERS["common"])
        marks = drawn.page.marks
        lines = [m for m in marks if isinstance(m, Line) and m.layer == "shelf"]
        (body,) = [m for m in marks if isinstance(m, Outline) and m.layer == "box"]
        (x0, y0), _, (x1, _), _ = body.points
        assert lines
        for line in lines:
            assert line.dash == dash
            assert line.y1 == line.y2 == pytest.approx(y0 + AT / drawn.reduction)
        inner = (x0 + MATERIAL.side / drawn.reduction, x1 - MATERIAL.side / drawn.reduction)
        assert (lines[0].x1, lines[-1].x2) == pytest.approx(inner)
        told = " ".join(mark.text for mark in marks if isinstance(mark, Text))
        assert ("A level dashed line is the upper face of a fixed shelf." in told) == bool(dash)
    above = lay(box(replace(gap, height=300.0), door))
    (drawn,) = draw_elevations(above, PAPERS["common"])
    (line,) = [m for m in drawn.page.marks if isinstance(m, Line) and m.layer == "shelf"]
    (opening,) = [m for m in drawn.page.marks if isinstance(m, Outline) and m.layer == "opening"]
    assert line.dash == ""
    assert line.y1 == pytest.approx(min(y for _, y in opening.points))
