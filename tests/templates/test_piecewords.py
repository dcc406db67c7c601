"""Labels of pieces without holes."""

from jigs.cutlist.piece import Piece
from templates.piecewords import piece_words


def piece(ident: str, length: float, thickness: float, count: int = 1) -> Piece:
    return Piece(
        id=ident, kind="shelf", box="B1", wall="North wall", length=length, width=300.0,
        thickness=thickness, count=count, band=("front",), band_thickness=0.6,
    )  # fmt: skip


def test_several_alike_have_a_label_each() -> None:
    """A piece of which there are two has two labels, each with its number."""
    labels = [words for words, _ in piece_words((piece("B1-SHELF-1", 500.0, 18.0, 2),), "box")]
    assert [words.lines[0].ways[0] for words in labels] == ["SHELF, 1 OF 2", "SHELF, 2 OF 2"]
    assert labels[0].payload == (
        "B1-SHELF-1 SHELF / NORTH BOX B1 / CUT 500X300X18 / 1 OF 2 / BAND FRONT"
    )


def test_the_order_of_cutting_goes_by_thickness_then_length() -> None:
    """The thickest and longest come first."""
    pieces = (piece("A", 400.0, 6.0), piece("B", 500.0, 18.0), piece("C", 700.0, 18.0))
    assert [words.part for words, _ in piece_words(pieces, "cut")] == ["C", "B", "A"]
