"""The pieces of a box: a box of our own, 18 x 30 1/2 x 23 in, and boxes put together."""

from pathlib import Path

import pytest

from jigs.box.parts import Layout
from jigs.cutlist.boxes import cut_box
from jigs.cutlist.piece import Piece
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests import uneven
from tests.templates.printed import laid_out

GOLDEN = """
schema = 1
units = "mm"
[material]
side = 18.3
front = 19.05
back = 6
band = 0.6
[[box]]
id = "B1"
kind = "base"
width = 457.2
height = 774.7
depth = 584.2
above_floor = 100
  [[box.shelf]]
  adjustable = true
  count = 2
  [[box.front]]
  kind = "door"
  hinged = "left"
"""
OPENING = 457.2 - 2 * 18.3
INSIDE = 584.2 - 19 - 6


def _pieces(text: str, folder: Path) -> dict[str, Piece]:
    job = folder / "job.toml"
    job.write_text(text, encoding="utf-8")
    layout: Layout = lay_out(read_job(job))
    found = [
        piece for box in layout.boxes for piece in cut_box(layout.job, box, layout.sides).pieces
    ]
    return {piece.id: piece for piece in found}


@pytest.mark.parametrize(
    ("name", "length", "width", "finished"),
    [
        # Derived; groove, play and what a shelf is short of: common practice, no source.
        ("B1-SIDE-L", 774.7, 584.2 - 0.6, (774.7, 584.2)),
        ("B1-SIDE-R", 774.7, 584.2 - 0.6, (774.7, 584.2)),
        ("B1-BOTTOM", OPENING, INSIDE - 0.6, (OPENING, INSIDE)),
        ("B1-STRETCHER-1", OPENING, 100.0, (OPENING, 100.6)),
        ("B1-STRETCHER-2", OPENING, 100.0, (OPENING, 100.0)),
        ("B1-BACK", 774.7, OPENING + 2 * 8 - 1, (774.7, 435.6)),
        ("B1-NAILER", OPENING, 100.0, (OPENING, 100.0)),
        ("B1-SHELF-1", OPENING - 3, INSIDE - 25, (417.6, 534.8)),
    ],
)
def test_golden_box_is_cut_to_the_notes_sizes(
    tmp_path: Path, name: str, length: float, width: float, finished: tuple[float, float]
) -> None:
    """Each piece of the golden box has its cut size, and its finished size with the band."""
    piece = _pieces(GOLDEN, tmp_path)[name]
    assert (piece.length, piece.width) == pytest.approx((length, width))
    assert (piece.finished_length, piece.finished_width) == pytest.approx(finished)


def test_golden_figures() -> None:
    """The figures of the worked example themselves."""
    figures = (OPENING, INSIDE - 0.6, OPENING + 15, INSIDE - 25)
    assert figures == pytest.approx((420.6, 558.6, 435.6, 534.2))


@pytest.mark.parametrize(
    ("name", "length", "width", "left", "low"),
    [
        ("B1-SIDE-L", 774.7, 584.2 - 0.6, 0.0, 0.0),
        ("B1-SIDE-R", 774.7, 584.2 - 0.6, 900 - 18.3, 0.0),
        ("B1-BOTTOM", 900 - 2 * 18.3, INSIDE - 0.6, 18.3, 0.0),
        ("B1-PARTITION-1", 774.7 - 2 * 18.3, INSIDE - 0.6, 18.3 + 400, 18.3),
        ("B1-STRETCHER-1", 900 - 2 * 18.3, 100.0, 18.3, 774.7 - 18.3),
        ("B1-BACK", 774.7, 900 - 2 * 18.3 + 2 * 8 - 1, 18.3 - 7.5, 0.0),
    ],
)
def test_the_uneven_box_is_cut_and_stands(
    name: str, length: float, width: float, left: float, low: float
) -> None:
    """The partition stands 400 from the left side, 445.1 from the right, on the bottom."""
    layout = laid_out(uneven.UNEVEN)
    pieces = cut_box(layout.job, layout.boxes[0], layout.sides).pieces
    (piece,) = (one for one in pieces if one.id == name)
    assert (piece.length, piece.width) == pytest.approx((length, width))
    assert (piece.blocks[0].x, piece.blocks[0].y) == pytest.approx((left, low))
    (shelf,) = (one for one in pieces if one.id == "B1-SHELF-1")
    assert shelf.length == pytest.approx(uneven.SECOND - 3)
    assert pytest.approx(445.1) == uneven.SECOND


def test_partition_stands_between_bottom_and_top(tmp_path: Path) -> None:
    """A partition of the golden box is 774.7 - 2 x 18.3 = 738.1 high."""
    text = GOLDEN.replace("above_floor = 100", "above_floor = 100\ncolumns = [{}, {}]").replace(
        'hinged = "left"',
        'hinged = "left"\n  [[box.front]]\n  kind = "door"\n  hinged = "right"\n  column = 2',
    )
    piece = _pieces(text, tmp_path)["B1-PARTITION-1"]
    assert (piece.length, piece.width) == pytest.approx((774.7 - 2 * 18.3, 558.6))


def test_place_of_an_appliance_has_nothing_to_cut(tmp_path: Path) -> None:
    """Where only an appliance's panel hangs, there is no box."""
    text = GOLDEN.replace('kind = "base"', 'kind = "open"').split("  [[box.shelf]]")[0]
    assert not _pieces(text + '  [[box.front]]\n  kind = "panel"\n  leaflet = "noted"\n', tmp_path)
