"""A door of a list whose words say that it is of glass."""

from pathlib import Path

import pytest

from jigs.given.listspec import ListSpec
from jigs.reading.frontlist import read_front_list
from tests.jigs.reading.test_frontlist import read


@pytest.mark.parametrize(
    ("kind", "note", "glass", "pane"),
    [
        ("Glass door", "", "", True),
        ("Glasdeur", "", "", True),
        ("lasiovi", "", "", True),
        ("porte vitrée", "", "", True),
        ("door", "mit Glas", "", True),
        ("Glass door", "", "no", False),
        ("door", "high gloss", "", False),
        ("Tür", "Hochglanz", "", False),
        ("door", "no glass", "", False),
        ("Tür", "ohne Glas", "", False),
        ("porte", "non vitrée", "", False),
        ("drawer", "glass sides", "", False),
    ],
)
def test_a_door_whose_words_say_glass_is_no_slab(
    tmp_path: Path, kind: str, note: str, glass: str, pane: bool
) -> None:
    """A pane is no board to drill: a frame without a stile is then asked for by the check."""
    hand = "" if kind == "drawer" else "left"
    found = read(
        tmp_path, f"kind,width,height,hinged,note,glass\n{kind},454,713,{hand},{note},{glass}\n"
    )
    assert found.rows[0].spec.five_piece.glass is pane
    assert ("Row 2: with a pane of glass" in found.told) is pane


def test_a_row_that_is_said_to_be_a_door_is_a_slab(tmp_path: Path) -> None:
    """Its word may be the name of a style; who says what the row is has looked."""
    path = tmp_path / "fronts.csv"
    path.write_text("kind,width,height,hinged\nGlass door,454,713,left\n", encoding="utf-8")
    for spec, pane in ((ListSpec(), True), (ListSpec(row={"2": "door"}), False)):
        assert read_front_list(path, listed=spec).rows[0].spec.five_piece.glass is pane
