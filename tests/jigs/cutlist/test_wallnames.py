"""Short names of walls."""

import pytest

from jigs.cutlist.trimmings import LONGEST_TAG, name_wall_piece, wall_tags


@pytest.mark.parametrize(
    ("walls", "taken", "tags"),
    [
        (("north", "south"), (), ["NORTH", "SOUTH"]),
        (("",), (), [""]),
        (("Fensterwand Süd", "Fensterwand Nord"), (), ["FENSTE", "FENST2"]),
        (("Βόρειος τοίχος", "Северная стена"), (), ["VOREIO", "SEVERN"]),
        (("北の壁", "north", "南の壁"), (), ["WALL1", "NORTH", "WALL3"]),
        (("Øst é", "ścianka łazienki", "Æbleø"), (), ["OSTE", "SCIANK", "AEBLEO"]),
        (("north",), ("NORTH",), ["NORTH2"]),
        (("north wall", "northw"), (), ["NORTHW", "NORTH2"]),
    ],
)
def test_tags(walls: tuple[str, ...], taken: tuple[str, ...], tags: list[str]) -> None:
    """Capitals A-Z and digits, six at most, no two alike, none that is a box."""
    made = wall_tags(walls, taken)
    assert list(made.values()) == tags
    assert all(len(tag) <= LONGEST_TAG for tag in tags)


def test_names() -> None:
    """The tag, then the piece; without a wall the piece alone."""
    assert name_wall_piece("NORTH", "TOE", "1", "FRONT") == "NORTH-TOE-1-FRONT"
    assert name_wall_piece("", "TOE", "1") == "TOE-1"


def test_a_walls_own_id_goes_before_the_others() -> None:
    """No name made by the tool takes it."""
    given = {"Βόρεια": "NORTH"}
    assert wall_tags(("north", "Βόρεια"), (), given) == {"north": "NORTH2", "Βόρεια": "NORTH"}
