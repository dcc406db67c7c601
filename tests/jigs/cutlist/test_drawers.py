"""Drawer boxes as they are cut."""

import pytest

from jigs.box.drawerbox import DrawerShape
from jigs.cutlist.drawers import cut_drawer
from jigs.cutlist.piece import Piece
from jigs.given.build import Build
from templates.words.piecenotes import note_words
from tests import uneven

TD, H, L, W = 15.9, 101.6, 533.0, 409.6


def _cut(rows: tuple[float, ...] = (), **changed: object) -> dict[str, Piece]:
    values: dict[str, object] = {
        "id": "B1-1-BOX", "box": "B1", "x": 0.0, "y": 0.0, "code": "",
        "width": W, "height": H, "length": L, "side": TD, "notch": (38.0, 13.0),
    }  # fmt: skip
    shape = DrawerShape(**{**values, **changed})  # type: ignore[arg-type]
    pieces, unclear = cut_drawer(Build(), shape, "", (0.0, 0.0, 0.0), "B1-1", rows)
    assert not unclear
    return {piece.id: piece for piece in pieces}


@pytest.mark.parametrize(
    ("name", "count", "length", "width"),
    [
        # Front and back between the sides; bottom in grooves of 6 with 1 of play (common
        # practice, no source).
        ("B1-1-BOX-SIDE", 2, L, H),
        ("B1-1-BOX-FRONT", 1, W - 2 * TD, H),
        ("B1-1-BOX-BACK", 1, W - 2 * TD, H),
        ("B1-1-BOX-BOTTOM", 1, L - 2 * TD + 2 * 6 - 1, W - 2 * TD + 2 * 6 - 1),
    ],
)
def test_golden_drawer(name: str, count: int, length: float, width: float) -> None:
    """The golden box's drawer, 409.6 wide for 378.6 less rounding inside."""
    piece = _cut()[name]
    assert piece.count == count
    assert (piece.length, piece.width) == pytest.approx((length, width))


def test_the_uneven_boxs_drawer() -> None:
    """389 wide and 457 long: front and back 389 - 2 x 15.9, its bottom 5 more each way inside the
    grooves of 6."""
    pieces = _cut(width=uneven.BOX_WIDTH, length=457.0, height=140.0)
    sizes = {name.removeprefix("B1-1-BOX-"): (p.length, p.width) for name, p in pieces.items()}
    assert sizes == {
        "SIDE": (457.0, 140.0),
        "FRONT": (pytest.approx(389 - 2 * 15.9), 140.0),
        "BACK": (pytest.approx(389 - 2 * 15.9), 140.0),
        "BOTTOM": (pytest.approx(457 - 2 * 15.9 + 11), pytest.approx(389 - 2 * 15.9 + 11)),
    }


def test_undermount_back_is_notched_and_grooves_stand_at_the_recess() -> None:
    """38 wide and 13 high, in both lower corners."""
    pieces = _cut()
    back = pieces["B1-1-BOX-BACK"]
    assert [(c.dx, c.dy) for c in back.cutouts] == [(38.0, 13.0)] * 2
    notch = "notch both lower corners 38.0 wide by 13.0 high for the slides"
    assert note_words(back.notes) == notch
    assert all(p.groove is not None and p.groove.at == 13.0 for p in list(pieces.values())[:3])
    assert not _cut(notch=None)["B1-1-BOX-BACK"].cutouts


def test_screws_of_the_front_stand_above_the_groove_and_beside_the_front_screws() -> None:
    """12 at least from each screw that holds the drawer's front, and above the bottom."""
    front = _cut(rows=(32.0, 69.6))["B1-1-BOX-FRONT"]
    assert len(front.pockets) == 2
    assert all(13.0 + 6.0 < place < H for place in front.pockets)
    assert all(abs(place - row) >= 12 - 1e-6 for place in front.pockets for row in (32.0, 69.6))
