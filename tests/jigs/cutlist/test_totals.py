"""Edge band and board in all."""

import pytest

from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.piece import Piece, band_for
from jigs.cutlist.totals import add_banding, add_boards, band_to_buy, over_sheet
from jigs.given.job import FrontSpec
from tests.jigs.sample import box, lay


def _piece(**changed: object) -> Piece:
    values: dict[str, object] = {
        "id": "B1-BOTTOM", "kind": "bottom", "box": "B1", "length": 420.6, "width": 558.6,
        "thickness": 18.3, "band": band_for(0.6, 420.6),
    }  # fmt: skip
    return Piece(**{**values, **changed})  # type: ignore[arg-type]


def test_golden_banding() -> None:
    """(2 x 774.7 + 3 x 420.6 + 5 x 50) x 1.10 = 3.37 m (derived; 50 and a tenth: common
    practice)."""
    sides = _piece(count=2, band=band_for(0.6, 774.7))
    (band,) = add_banding([sides, _piece(count=3)])
    assert (band.edges, band.board, band.band) == (5, 18.3, 0.6)
    assert band.length == pytest.approx(2 * 774.7 + 3 * 420.6)
    assert band.to_buy == pytest.approx((2 * 774.7 + 3 * 420.6 + 5 * 50) * 1.1)
    assert round(band.to_buy / 1000, 2) == 3.37


def test_golden_box_has_no_other_banded_edges() -> None:
    """Two sides, the bottom and the front stretcher."""
    door = FrontSpec(id="B1-1", kind="door", hinged="left")
    (band,) = add_banding(cut_list(lay(box(door))))
    assert band.edges == 4
    assert band.to_buy == pytest.approx(band_to_buy(2 * 774.7 + 2 * 420.6, edges=4))


def test_areas_by_thickness() -> None:
    """Cut sizes times their number; a second board of the same stuff is counted apart."""
    pieces = [_piece(count=2), _piece(thickness=19.0), _piece(stuff="back", thickness=6.0)]
    boards = add_boards(pieces, "mm")
    assert [(b.stuff, b.thickness, b.pieces) for b in boards] == [
        ("side", 18.3, 2), ("side", 19.0, 1), ("back", 6.0, 1),
    ]  # fmt: skip
    assert boards[0].area == pytest.approx(2 * 420.6 * 558.6 / 1e6)


def test_sheets_are_a_lower_bound_by_area() -> None:
    """A whole sheet is one; a little more is two."""
    whole = _piece(length=2440.0, width=1220.0)
    assert add_boards([whole], "mm")[0].sheets == 1
    assert add_boards([whole, _piece(length=10.0, width=10.0)], "mm")[0].sheets == 2


def test_pieces_over_a_sheet_are_named() -> None:
    """8 ft are 2438.4."""
    long = _piece(length=2440.0)
    assert over_sheet([long, _piece()], "in") == (long,)
    assert over_sheet([long], "mm") == ()
