"""A delivered list whose column of IDs is headed otherwise: most of its cells decide."""

from pathlib import Path

import pytest

from jigs.given.measured import DeliveredList
from jigs.order.naming import with_ids
from jigs.reading.deliveredlist import read_delivered

KNOWN = ("B1-1", "B1-2", "B2-1")


def named(folder: Path, text: str) -> DeliveredList:
    path = folder / "came.csv"
    path.write_text(text, encoding="utf-8")
    return with_ids(read_delivered(path, "mm"), KNOWN)


@pytest.mark.parametrize("heading", ["Nr.", "No.", "Pos", "Artikelnr", "onze naam"])
def test_a_column_of_ids_is_one_whatever_its_heading(tmp_path: Path, heading: str) -> None:
    """As the supplier writes them, too; a piece without a size has arrived, unmeasured."""
    text = f"{heading};Breedte;Hoogte;Prijs\nB1-1;454;140;9\nb1.2;454;;9\nB2-1;;;9\n"
    came = named(tmp_path, text)
    assert [piece.id for piece in came.pieces] == ["B1-1", "B1-2", "B2-1"]
    assert came.faults == ()
    assert came.told.endswith(
        f"D 'Prijs'.\nA '{heading}' is taken for the IDs: 3 of its 3 cells are the job's. If it "
        "numbers rows alone, take it out, and pieces are matched by their sizes."
    )


def test_a_title_names_the_unit(tmp_path: Path) -> None:
    """As in any list, and that is told."""
    came = named(tmp_path, "Maten in cm\nID;Breedte;Hoogte\nB1-1;45,4;14\nB2-1;120;204\n")
    assert [piece.width for piece in came.pieces] == [(454.0,), (1200.0,)]
    assert "Sizes in cm, as 'Maten in cm' says above them." in came.told


def test_where_only_some_are_it_is_a_fault(tmp_path: Path) -> None:
    """Neither a match by size nor by ID is made of it."""
    came = named(tmp_path, "Nr.;Breedte;Hoogte\nB1-1;454;140\n2;454;570\n3;447;713\n")
    (fault,) = came.faults
    assert (
        "column A 'Nr.': 1 of its 3 cells are IDs of the job's fronts ('B1-1' here)" in fault.what
    )


def test_numbers_stay_numbers(tmp_path: Path) -> None:
    """They are left alone, and what misses a size by which it would be matched is a fault."""
    came = named(tmp_path, "Nr.;Breedte;Hoogte\n1;454;140\n2;454;\n")
    assert [piece.id for piece in came.pieces] == ["", ""]
    assert [fault.where.rpartition(": ")[2] for fault in came.faults] == ["row 3, column Hoogte"]
    assert came.told.endswith(": A 'Nr.'.")


def test_an_id_twice(tmp_path: Path) -> None:
    """It is told as in any column of IDs."""
    came = named(tmp_path, "Nr.;Breedte;Hoogte\nB1-1;454;140\nB1-1;454;140\n")
    assert "duplicate ID ('B1-1'" in came.faults[0].what


def test_a_column_that_is_headed_id_stands(tmp_path: Path) -> None:
    """A second one of other numbers is left alone."""
    came = named(tmp_path, "ID;Nr.;Breedte;Hoogte\nB1-1;B1-2;454;140\n")
    assert [piece.id for piece in came.pieces] == ["B1-1"]
