"""Boxes as they are in hand: assembled, with or without their band, on legs, parted, shelved."""

from pathlib import Path

import pytest

from tests.jigs.cases.kitchen import (
    DB,
    HB,
    TS,
    R,
    across,
    box,
    check,
    codes,
    front,
    heights,
    holes,
    lay,
    printed,
    side,
)

DRAWER = 'kind = "drawer"'
LEFT = 'kind = "door"\nhinged = "left"'
RIGHT = 'kind = "door"\nhinged = "right"'
TWO = "columns = [{share = 1}, {share = 1}]"


def test_an_assembled_box_is_set_out_from_its_bottom_panel(tmp_path: Path) -> None:
    """51.3 from the side's end is 51.3 - 18.3 = 33.0 from the upper face of the bottom panel
    (derived); the hole itself stays where it is."""
    loose, done = lay(tmp_path, box(DRAWER)), lay(tmp_path, box(DRAWER, more="assembled = true"))
    assert heights(side(done, "B1-SIDE-L"), "slide") == pytest.approx([51.3])
    assert side(done, "B1-SIDE-L").holes == side(loose, "B1-SIDE-L").holes
    words = printed(tmp_path, box(DRAWER, more="assembled = true"), only="B1-SIDE-L")
    assert "0 is the upper face of the BOTTOM PANEL" in words
    assert f"{51.3 - TS:.1f} " in words
    assert " 51.3 " not in words


def test_the_edge_band_is_taken_off(tmp_path: Path) -> None:
    """37.0 from the finished edge is 36.4 from the raw one, with 0.6 still to come; the side is
    584.2 - 0.6 = 583.6 deep until then (derived)."""
    layout = lay(tmp_path, box(LEFT))
    assert across(side(layout, "B1-SIDE-L"), "plate") == [37.0]
    later = printed(tmp_path, box(LEFT, more='band = "later"'), only="B1-SIDE-L")
    assert f"{37.0 - 0.6:.1f}" in later
    assert f"the side is {DB - 0.6:.1f} deep until then" in later
    on = printed(tmp_path, box(LEFT, more='band = "on"'), only="B1-SIDE-L")
    assert "36.4" not in on


def test_a_band_that_nobody_stated_is_said(tmp_path: Path) -> None:
    """No band is assumed, and that is said."""
    told = check(tmp_path, box(LEFT), head='schema = 1\nname = "X"\nunits = "mm"\n')
    assert "edge band 0.0 mm" in told.text


def test_sides_that_run_to_the_floor(tmp_path: Path) -> None:
    """On legs of 100 the lowest slide stands 100 higher above the side's end: 151.3 (derived)."""
    layout = lay(tmp_path, box(DRAWER, height=HB + 100, floor=0, more="legs = 100"))
    assert heights(side(layout, "B1-SIDE-L"), "slide") == pytest.approx([151.3])
    assert front(layout, "B1-1").place.y == pytest.approx(100 + R)


@pytest.mark.parametrize(("board", "through"), [(18.3, True), (25.0, False)])
def test_plates_back_to_back_on_one_partition(tmp_path: Path, board: float, through: bool) -> None:
    """2 x 12 + 1 = 25 of board keeps them apart; in a thinner one they are one hole, bored
    through once, and never two that meet (common practice, no source)."""
    parted = box(
        RIGHT, f"{LEFT}\ncolumn = 2", width=914.4, more=TWO,
    )  # fmt: skip
    half = '"measured"\n[hinge.half]\nlike = "cup35-half"\nconfirmed = "measured"'
    layout = lay(
        tmp_path,
        parted.replace("hinged", 'hinge = "half"\nhinged'),
        band=f"0.6\npartition = {board}",
        confirmed=half,
    )
    faces = [s for s in layout.sides if s.board == "B1-PARTITION-1"]
    assert len(faces) == 2
    assert {h.depth for face in faces for h in face.holes} == {None if through else 12.0}
    assert ("bored-through-once" in codes(layout, "B1-PARTITION-1")) is through
    assert not any(f.withheld for f in layout.fronts)


def test_slides_back_to_back_at_other_heights_are_refused(tmp_path: Path) -> None:
    """Slide lines 3 apart in the two faces of 18.3 of board run into each other."""
    parted = box(
        f"{DRAWER}\nheight = 200", DRAWER,
        f"{DRAWER}\ncolumn = 2\nheight = 203", f"{DRAWER}\ncolumn = 2",
        width=914.4, more=TWO, kind="drawer",
    )  # fmt: skip
    told = check(tmp_path, parted)
    assert told.status == 1
    assert "meets one from the other face" in told.text
    assert "[faces-meet]" in told.text
    assert check(tmp_path, parted.replace("203", "200")).status == 0


def test_hinges_keep_clear_of_a_fixed_shelf(tmp_path: Path) -> None:
    """35 from the faces of a shelf (common practice, no source)."""
    layout = lay(tmp_path, box(LEFT, more="[[box.shelf]]\nat = 150"))
    cups = [R + cup for cup in heights(front(layout, "B1-1"), "cup")]
    assert all(not 150 - TS - 35 < cup < 150 + 35 for cup in cups)


def test_shelf_pins_do_not_come_through_a_thin_side(tmp_path: Path) -> None:
    """Pins in sides of 12, holes of 5 x 12: told or bored less deep, never through."""
    pins = box(more="[[box.shelf]]\nadjustable = true", kind="open")
    layout = lay(tmp_path, pins, side="12")
    bored = [h for s in layout.sides for h in holes(s, "shelf")]
    assert bored
    assert all(h.depth is not None and h.depth <= 12 - 2 for h in bored)
