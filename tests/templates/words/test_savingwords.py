"""Where a part is cut down, in words: an edge that is named wrongly is a part that is lost."""

import pytest
from msgspec.structs import replace

from jigs.changes.made import MadeHole, MadePart
from jigs.changes.parting import PartChange, compare_part
from templates.words.savingwords import holes_words, size_words

SLIDE = MadeHole(purpose="slide", face="inside", side="left", x=37.0, y=151.3, diameter=5, depth=12)
SIDE = MadePart(
    id="B1-SIDE-L", kind="side", code="M2QX", size=(774.7, 584.2, 18.3), stuff="side",
    cut=(774.7, 584.2, 18.3), holes=(SLIDE, replace(SLIDE, x=165.0)),
)  # fmt: skip
ARM = MadeHole(purpose="manual", face="back", x=440.0, y=610.0, diameter=5, depth=12)
LIFT = MadePart(
    id="W3-1", kind="lift", code="7K4F", size=(500.0, 700.0, 19.0), holes=(ARM, replace(ARM, y=578))
)


def smaller(part: MadePart, off: tuple[float, float], moved: tuple[float, float]) -> PartChange:
    """Cut a part down by so much of its first two sizes; its holes come so much nearer to the left
    (a side: front) edge, and to the bottom."""
    size = (part.size[0] - off[0], part.size[1] - off[1], part.size[2])
    after = replace(
        part, size=size, cut=size if part.cut else (),
        holes=tuple(replace(hole, x=hole.x - moved[0], y=hole.y - moved[1]) for hole in part.holes),
    )  # fmt: skip
    found = compare_part(part, after, [], [])
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("part", "off", "moved", "said"),
    [
        # 20 shorter and 15 shallower: the slide's holes keep their 37 and 151.3.
        (SIDE, (20, 15), (0, 0), "20.0 mm off its length and 15.0 mm off its width, none of it at "
         "its bottom end and none of it at its front edge, for its holes"),
        # The bottom end moved up by 20, and the front edge back by 4 of 15.
        (SIDE, (20, 15), (4, 20), "20.0 mm off its length and 15.0 mm off its width, 20.0 mm of it "
         "at its bottom end and 4.0 mm of it at its front edge, for its holes"),
        (SIDE, (0, 15), (15, 0), "saw 15.0 mm off its width, 15.0 mm of it at its front edge, for"),
        # 13 narrower, 10 of it at the left; 24 lower, none of it at the bottom.
        (LIFT, (13, 24), (10, 0), "13.0 mm off its width and 24.0 mm off its height, 10.0 mm of it "
         "at its left edge and none of it at its bottom edge as seen from the room, for its holes"),
        (LIFT, (0, 24), (0, 24), "saw 24.0 mm off its height, 24.0 mm of it at its bottom edge as"),
    ],
)  # fmt: skip
def test_the_edge_that_is_sawn_is_the_one_that_spares_the_holes(
    part: MadePart, off: tuple[float, float], moved: tuple[float, float], said: str
) -> None:
    """By hand arithmetic, alike to no edge; a board's first size stands upright."""
    change = smaller(part, off, moved)
    assert change.holes == ()
    [size] = change.sizes
    assert said in ": ".join(size_words(size, change, "mm"))


def test_what_is_bored_for_a_held_part_is_cut_when_that_is_released() -> None:
    """Nobody knows yet which end spares its holes."""
    served = replace(SIDE, holes=tuple(replace(hole, serves="B1-1") for hole in SIDE.holes))
    after = replace(served, size=(754.7, 584.2, 18.3), cut=(754.7, 584.2, 18.3), holes=())
    change = compare_part(served, after, [], [], {"B1-1"})
    assert change is not None
    [size] = change.sizes
    assert size_words(size, change, "mm")[1].endswith("if it is bored, not before B1-1 is released")
    assert "for its holes" not in size_words(size, change, "mm")[1]


def test_a_hole_that_is_wider_and_deeper_says_both() -> None:
    """The bit and the stop are others."""
    was = replace(SIDE, holes=(SLIDE,))
    change = compare_part(was, replace(was, holes=(replace(SLIDE, diameter=8, depth=14),)), [], [])
    assert change is not None
    assert holes_words(change.holes) == "1 slide hole wider by 3.0 mm: 8 mm, 14 mm deep"
