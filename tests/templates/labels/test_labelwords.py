"""The words on labels: kind, order in a stack, place, sizes."""

import pytest

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.given.stated import FrontWords
from templates.labels.labelwords import (
    LabelWords,
    words_of_drawer_box_label,
    words_of_front_label,
    words_of_side_label,
)
from templates.sheets.partwords import words_of_side
from templates.words.findings import check_text, closing_text, incomplete_words
from templates.words.labellines import place_line
from templates.words.scanwords import side_payload
from tests.jigs.sample import box, front_of, lay, side_of
from tests.templates.kitchens import galley


def stack() -> Layout:
    """Give the golden stack of four drawers (fronts 163.5, 188.8, 188.8, 220.8 from the top)."""
    heights = (163.5, 188.8, 188.8, 220.8)
    fronts = (
        FrontSpec(id=f"B1-{n}", kind="drawer", height=height)
        for n, height in enumerate(heights, start=1)
    )
    return lay(box(*fronts))


def fullest(words: LabelWords) -> list[str]:
    return [line.ways[0] for line in words.lines]


@pytest.mark.parametrize(
    ("part", "order"),
    [
        ("B1-1", "DRAWER FRONT, TOP OF 4"),
        ("B1-2", "DRAWER FRONT, 2 OF 4 FROM TOP"),
        ("B1-4", "DRAWER FRONT, LOWEST OF 4"),
    ],
)
def test_drawers_say_their_order(part: str, order: str) -> None:
    """Counted from the top of the stack, its ends by name."""
    layout = stack()
    assert fullest(words_of_front_label(layout, front_of(layout, part)))[0] == order


def test_a_drawer_front_says_how_high_its_box_stands() -> None:
    """Golden: 18.3 + 14 - 1.6 = 30.7 above the bottom edge. Over the top drawer's box there is
    163.5 - 30.7 - 101.6 = 31.2, more than below; over the lowest there is less."""
    layout = stack()
    top = fullest(words_of_front_label(layout, front_of(layout, "B1-1")))
    lowest = fullest(words_of_front_label(layout, front_of(layout, "B1-4")))
    assert top[-1] == "DRAWER BOX 30.7 ABOVE BOTTOM EDGE"
    assert lowest[-1] == "WIDE GAP BELOW, DRAWER BOX 30.7 ABOVE BOTTOM EDGE"


def test_a_drawer_box_is_named_by_its_front() -> None:
    """Its arrow points to the front; the label sticks under the bottom."""
    layout = stack()
    front = front_of(layout, "B1-1")
    assert front.drawer is not None
    words = words_of_drawer_box_label(layout, front.drawer, front)
    assert (words.part, words.arrow) == ("B1-1-BOX", "FRONT")
    assert "NORTH WALL, BOX B1, BEHIND B1-1" in fullest(words)


def test_a_side_says_which_face_is_out() -> None:
    """Of a box that is built nothing is sawn: its sides have their finished size alone."""
    layout = stack()
    words = words_of_side_label(layout, side_of(layout, "B1-SIDE-L"))
    assert fullest(words) == [
        "LEFT SIDE, THIS FACE OUT",
        "NORTH WALL, BOX B1",
        "FINISHED 774.7 x 584.2 WITH BAND",
        "FRONT EDGE BANDED",
        "STICK ON THE OUTSIDE, NEAR THE REAR TOP",
    ]


@pytest.mark.parametrize(
    ("part", "where"),
    [
        ("B3-1", "STICK ON THE BACK, WHERE THE BOX HIDES IT"),
        ("B3-2", "STICK ON THE BACK, HINGE EDGE, UNDER TAPE"),
        ("B9-1", "STICK ON THE BACK, UNDER TAPE"),
    ],
)
def test_a_front_says_where_its_label_is_stuck(part: str, where: str) -> None:
    """A drawer's where its box hides it, a door's at the hinge edge (common practice, no source);
    of a door without a hand nobody knows which edge that is."""
    layout = galley()
    assert where in fullest(words_of_front_label(layout, front_of(layout, part)))


def test_a_hand_is_never_without_the_room() -> None:
    """In each wording: from the back, left is right."""
    layout = galley()
    for front in layout.fronts:
        if front.hinged:
            first, *_ = words_of_front_label(layout, front).lines
            for way in first.ways:
                assert f"HINGES {front.hinged.upper()} FROM" in way.replace("\n", " ")
                assert way.endswith("ROOM")


def test_the_wall_stays_longer_than_a_box_that_the_id_spells() -> None:
    """Of B3-2 nobody need be told that it belongs to B3; where not all finds room, the wall is the
    place, and what it hangs under only helps."""
    for wall, shown in (("Södra långväggen å é α", "SÖDRA LÅNGVÄGGEN Å É Α"), ("north", "NORTH")):
        layout = galley(wall=wall)
        *_, place = words_of_front_label(layout, front_of(layout, "B3-2")).lines[:3]
        assert place.ways[:5] == (
            f"{shown} WALL, BOX B3, UNDER DRAWER B3-1",
            f"{shown} WALL, BOX B3, UNDER B3-1",
            f"{shown}, BOX B3, UNDER B3-1",
            f"{shown} WALL, UNDER B3-1",
            f"{shown}, UNDER B3-1",
        )
        assert place.ways[5:7] == (f"{shown} WALL", shown)


def test_a_box_that_the_id_does_not_spell_stays() -> None:
    """A front with a name of its own is told its box to the last."""
    assert place_line("LARDER-2", "north", "B3", "UNDER B3-1").ways == (
        "NORTH WALL, BOX B3, UNDER B3-1",
        "NORTH, BOX B3, UNDER B3-1",
        "BOX B3, UNDER B3-1",
        "NORTH, BOX B3",
        "UNDER B3-1",
        "BOX B3",
    )
    assert place_line("B3-2", "", "B3", "").ways == ("BOX B3",)


def test_wordings_grow_shorter() -> None:
    """Of each line the next wording is no longer than the one before."""
    layout = stack()
    for front in layout.fronts:
        for line in words_of_front_label(layout, front).lines:
            lengths = [len(way) for way in line.ways]
            assert lengths == sorted(lengths, reverse=True)


def test_a_side_that_lacks_holes_says_so() -> None:
    """A door held back leaves both sides unfinished: its hand is not known."""
    layout = lay(box(FrontSpec(id="B1-1", kind="drawer"), FrontSpec(id="B1-2", kind="door")))
    side = side_of(layout, "B1-SIDE-L")
    assert side.missing == ("B1-2",)
    (line,) = [li for li in words_of_side_label(layout, side).lines if "TO COME" in li.ways[0]]
    assert line.ways == ("INCOMPLETE: B1-2 TO COME", "B1-2 TO COME", "HOLES TO COME", "TO COME")
    told = "INCOMPLETE: holes for B1-2 still to come. Bore the others; it is not finished."
    assert words_of_side(layout, side).notes[0].text == told
    assert "HOLES TO COME" in side_payload(layout, side).text
    assert incomplete_words(layout) == ("B1-SIDE-L, B1-SIDE-R: holes for B1-2 still to come",)
    for text in (check_text(layout), closing_text(layout, {"sheets.pdf": "1 page"}, 9, "a4-2x7")):
        assert "holes for B1-2 still to come" in " ".join(text.split())


def test_a_side_without_holes_says_so() -> None:
    """The side away from the hinges: nobody looks for holes that are not there."""
    layout = lay(box(FrontSpec(id="B1-1", kind="door", hinged="left")))
    bare, bored = side_of(layout, "B1-SIDE-R"), side_of(layout, "B1-SIDE-L")
    assert "NO HOLES" in fullest(words_of_side_label(layout, bare))
    assert "NO HOLES" not in fullest(words_of_side_label(layout, bored))
    assert " / NO HOLES / " in side_payload(layout, bare).text
    assert " / 2 PLATES / " in side_payload(layout, bored).text


def test_a_note_and_a_finish_go_first_where_room_is_short() -> None:
    """They stand last, and nothing is worth less."""
    layout = lay(
        box(
            FrontSpec(
                id="B1-1", kind="door", hinged="left", words=FrontWords(note="oven", finish="sage")
            )
        )
    )
    *others, told = words_of_front_label(layout, front_of(layout, "B1-1")).lines
    assert told.ways == ("Note: oven. Finish: sage", "oven; sage")
    assert told.worth < min(line.worth for line in others)


def test_a_front_held_back_says_its_size_as_planned() -> None:
    """So that it is told from others by tape; how its drawer box stands is not said."""
    layout = galley()
    front = front_of(layout, "B9-1")
    assert front.withheld
    words = words_of_front_label(layout, front)
    planned = f"{front.width:.1f} x {front.height:.1f} x {front.make.thickness:.1f}"
    assert words.hold
    assert planned in fullest(words)
