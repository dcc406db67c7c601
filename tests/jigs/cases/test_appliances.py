"""Appliances: panels by their own sheet, openings, narrow pullouts."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.layout.layout import lay_out
from tests.jigs.cases.kitchen import (
    HB,
    TS,
    G,
    R,
    across,
    box,
    check,
    codes,
    front,
    heights,
    holes,
    lay,
    side,
)

PANEL = 'kind = "panel"\nheight = 720'
PLACE = {"name": "DW1", "kind": "open", "width": 600.0, "height": 820.0, "depth": 570.0}


def test_a_dishwashers_panel_without_its_sheet_is_held(tmp_path: Path) -> None:
    """No sheet noted, no template."""
    told = check(tmp_path, box(PANEL, **PLACE))  # type: ignore[arg-type]
    assert told.status == 1
    assert "[leaflet-not-noted]" in told.text
    assert 'say leaflet = "noted"' in told.text


def test_a_dishwashers_panel_by_its_sheet(tmp_path: Path) -> None:
    """Holes as the sheet gives them, no pull of ours, and the reminder that the sheet rules."""
    hole = '[[box.front.hole]]\nx = 80\ny = 640\ndiameter = 3\ndepth = 12\nface = "back"'
    noted = f'{PANEL}\nwidth = 594\nreveal_top = 3\nreveal_bottom = 97\nleaflet = "noted"\n{hole}'
    layout = lay(tmp_path, box(noted, **PLACE))  # type: ignore[arg-type]
    panel = front(layout, "DW1-1")
    assert [(h.purpose, h.x, h.y) for h in panel.holes] == [("manual", 80.0, 640.0)]
    assert (panel.width, panel.place.y) == pytest.approx((594, 97))
    assert codes(layout, "DW1-1") <= {"unlikely-number"}  # 97 is no usual reveal
    assert not panel.withheld


def test_an_ovens_opening(tmp_path: Path) -> None:
    """A height without a front: 2133.6 - 2 x 1.6 of tall box, oven 736.6, drawers 280 and 380.

    The doors above keep their hinges 35 from the fixed shelf that the oven stands on, and the
    drawer below it keeps 10 from that shelf (common practice, no source).
    """
    fronts = (
        'kind = "pair"', 'kind = "opening"\nheight = 736.6\nnote = "oven"',
        'kind = "drawer"\nheight = 280', 'kind = "drawer"\nheight = 380\nreveal_bottom = 1.6',
    )  # fmt: skip
    layout = lay(tmp_path, box(*fronts, kind="tall", width=600, height=2133.6))
    low, high = front(layout, "B1-4"), front(layout, "B1-3")
    shelf = high.place.y + high.height + G - TS
    assert high.drawer is not None
    assert high.place.y + high.drawer.y + high.drawer.height <= shelf - 10
    assert low.drawer is not None
    leaf = front(layout, "B1-1L")
    assert leaf.place.y == pytest.approx(high.place.y + high.height + G + 736.6 + G)
    assert all(leaf.place.y + cup >= leaf.place.y + 35 for cup in heights(leaf, "cup"))
    assert {f.id for f in layout.fronts} == {"B1-1L", "B1-1R", "B1-3", "B1-4"}
    boards = heights(side(layout, "B1-SIDE-L"), "plate")
    assert boards[0] + 16 == pytest.approx(leaf.place.y + heights(leaf, "cup")[0])


@pytest.mark.parametrize(("width", "upright"), [(150.0, True), (300.0, False)])
def test_a_narrow_pullout(tmp_path: Path, width: float, upright: bool) -> None:
    """Narrower than centres and 50, its pull stands upright: 160 + 50 = 210 (common practice)."""
    kit = '[[box.front.hole]]\nx = 50\ny = 100\ndiameter = 5\ndepth = 12\nface = "back"'
    layout = lay(tmp_path, box(f'kind = "pullout"\n{kit}', width=width))
    made = front(layout, "B1-1")
    assert made.width == pytest.approx(width - 2 * R)
    assert ("pull-upright" in codes(layout, "B1-1")) is upright
    pulls = holes(made, "pull")
    assert len(across(made, "pull")) == (1 if upright else 2)
    middle = sum(h.x for h in pulls) / 2
    assert middle == pytest.approx(made.width / 2)
    assert made.height < HB
    assert not made.withheld


def test_a_pullout_without_slide_or_kit(tmp_path: Path) -> None:
    """A job that names no slide is given a generic one, ASSUMED, and the pullout runs on it; where
    there is none at all and no hole group either, nothing can be set out and it is held."""
    head = (
        'schema = 1\nname = "X"\nunits = "mm"\n[material]\nside = 18\n[use]\nhinge = "cup35-full"\n'
    )
    told = check(tmp_path, box('kind = "pullout"'), head=head)
    assert told.status == 0
    assert "ASSUMED" in told.text
    assert "slide 'undermount-500'" in told.text
    assert "[slide-not-stated]" not in told.text
    given = lay(tmp_path, box('kind = "pullout"')).job
    bare = lay_out(replace(given, use=replace(given.use, slide=None)))
    assert codes(bare, "B1-1") >= {"slide-not-stated"}
    assert front(bare, "B1-1").withheld
    assert not front(bare, "B1-1").holes
    assert not side(bare, "B1-SIDE-L").holes
