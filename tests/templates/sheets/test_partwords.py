"""A part's own words on its sheets."""

import json
from collections.abc import Iterable

import pytest
from msgspec.structs import replace

from jigs.box.parts import Front, Layout
from jigs.cutlist.cutlist import cut_job
from jigs.given.job import FrontSpec
from jigs.ground.problems import Problem, warning
from jigs.layout.layout import lay_out
from jigs.order.buying import make_order
from templates.lists.holelist import holes_json
from templates.lists.ordertables import order_text
from templates.sheets.partwords import (
    kind_of_front,
    neighbour_of,
    notes_for,
    place_of,
    words_of_drawer_box,
    words_of_front,
    words_of_side,
)
from templates.words.gapwords import has_job_reveals, job_reveals
from templates.words.sentence import Sentence
from tests.jigs.sample import HINGE, box, front_of, job, side_of
from tests.jobtexts import box_text
from tests.templates.printed import laid_out
from tests.templates.worked import worked_layout
from tests.uneven import PLAIN, UNEVEN


def front(name: str) -> Front:
    return front_of(worked_layout("in"), name)


def with_problems(*problems: Problem) -> Layout:
    return replace(worked_layout("in"), problems=problems)


def texts(sentences: Iterable[Sentence]) -> tuple[str, ...]:
    return tuple(sentence.text for sentence in sentences)


def test_a_door_is_named_with_its_hand() -> None:
    """A drawer front has none."""
    assert kind_of_front(front("B3-2")) == "DOOR, HINGES LEFT"
    assert kind_of_front(replace(front("B3-2"), hinged="right")) == "DOOR, HINGES RIGHT"
    assert kind_of_front(front("B3-1")) == "DRAWER FRONT"


@pytest.mark.parametrize(
    ("wall", "part", "place"),
    [
        ("north", "SINK-1", "NORTH WALL, BOX B3"),
        ("East Wall", "SINK-1", "EAST WALL, BOX B3"),
        ("north", "B3-1", "NORTH WALL"),
        ("", "B3-1", "BOX B3"),
    ],
)
def test_a_place_is_wall_and_box(wall: str, part: str, place: str) -> None:
    """WALL is said once; the box only where the part's ID does not say it."""
    assert place_of(wall, "B3", part) == place


def test_a_front_is_placed_by_the_one_above_it() -> None:
    """The uppermost by the one below it; one alone by nothing."""
    layout = worked_layout("in")
    assert neighbour_of(layout, front("B3-2")) == "under B3-1"
    assert neighbour_of(layout, front("B3-1")) == "over B3-2"
    alone = replace(layout, fronts=(front("B3-2"),))
    assert neighbour_of(alone, front("B3-2")) == ""


def test_a_door_says_what_to_mount() -> None:
    """Tab 5, plate 3."""
    words = words_of_front(worked_layout("in"), front("B3-2"))
    facts = " ".join(texts(words.facts["back"]))
    assert "Edge to cup 5.0" in facts
    assert "Plates 3.0 high" in facts
    assert words.place == "NORTH WALL, under B3-1"
    assert words.measure == "454.0 x 613.0."


@pytest.mark.parametrize(("through", "words"), [
    (False, "counterbore the back 12 dia, 4 deep, BEFORE fixing"),
    (True, "through front and drawer box"),
])  # fmt: skip
def test_a_drawer_front_says_which_way_its_pull_is_screwed(through: bool, words: str) -> None:
    """Before fixing, on the back, where it is bored; or after it, on both faces."""
    screws = replace(front("B3-1").screws, through_box=through)
    found = words_of_front(worked_layout("in"), replace(front("B3-1"), screws=screws))
    assert words in " ".join(texts(found.facts["back"]))
    assert (words in " ".join(texts(found.facts["front"]))) is through


@pytest.mark.parametrize(("head", "words"), [
    (None, "28.0 at most, pan or washer heads."),
    (9.2, "28.0 at most, pan heads, 9.2 across at most."),
])  # fmt: skip
def test_a_drawer_front_says_which_heads_pass(head: float | None, words: str) -> None:
    """A washer head strikes a drawer side that stands near."""
    screws = replace(front("B3-1").screws, head=head)
    found = words_of_front(worked_layout("in"), replace(front("B3-1"), screws=screws))
    assert f"Front screws {words}" in texts(found.facts["back"])


def test_the_wide_gap_tells_which_way_up() -> None:
    """Only where the gap below the box is the wider one, by what can be seen."""
    drawer = front("B3-1")
    assert drawer.drawer
    assert drawer.drawer.y < drawer.height - drawer.drawer.y - drawer.drawer.height
    low = words_of_front(worked_layout("in"), drawer).facts["back"]
    assert "WIDE GAP BELOW" not in " ".join(texts(low))
    raised = replace(drawer, drawer=replace(drawer.drawer, y=50.0))
    high = words_of_front(worked_layout("in"), raised).facts["back"]
    assert "WIDE GAP BELOW THE BOX." in texts(high)
    even = (drawer.height - drawer.drawer.height) / 2
    for more, told in ((1.0, False), (2.0, True)):  # 2 wider below, which no eye sees; 4 wider
        moved = replace(drawer, drawer=replace(drawer.drawer, y=even + more))
        facts = " ".join(texts(words_of_front(worked_layout("in"), moved).facts["back"]))
        assert ("WIDE GAP BELOW" in facts) is told


def test_a_side_says_which_plates_it_carries() -> None:
    """From which edge its figures count stands on its cards."""
    layout = worked_layout("in")
    side = side_of(layout, "B3-SIDE-L")
    facts = " ".join(texts(words_of_side(layout, side).facts["inside"]))
    assert "Plates 3.0 high for B3-2." in facts
    assert words_of_side(layout, side).measure == "774.7 x 584.2."


def test_a_drawer_box_has_its_fronts_name_and_place() -> None:
    """And the size of its face."""
    drawer = front("B3-1").drawer
    assert drawer
    words = words_of_drawer_box(worked_layout("in"), drawer, front("B3-1"))
    assert words.kind == "DRAWER BOX"
    assert (words.part, words.place) == ("B3-1-BOX", "NORTH WALL")
    assert words.measure == "409.6 x 88.9."


def test_findings_stand_on_the_sheets_they_concern() -> None:
    """The part's own and those that name it also; what is open has a line of its own."""
    layout = with_problems(
        warning("no-shelf", "B3"),
        warning("not-delivered", "B3-2"),
        warning("unconfirmed-hinge", "B3-1", also=("B3-2",)),
    )
    notes = notes_for(layout, "B3-2", ("side thickness 18.0 mm",))
    assert texts(notes) == (
        "Not delivered yet; its sheets are for the size that was ordered.",
        "ASSUMED: side thickness 18.0 mm.",
    )
    assert notes_for(layout, "B1-1", ()) == ()


def test_what_concerns_hinges_stands_where_they_are_bored() -> None:
    """Not where the pull is; on all sheets of a front whose cups its maker bored, or that has
    none."""
    few = warning("least-reveal-unknown", "B3-2", thick=19.0)
    layout = with_problems(few, warning("push-latch", "B3-2"))
    words = words_of_front(layout, front("B3-2"))
    of_hinges, of_all = texts(words.notes)[-2:]
    assert of_hinges.startswith("The least reveal at the hinge edge")
    assert of_all.startswith("A push latch wants")
    assert words.face_notes is not None
    assert {of_hinges, of_all} & set(texts(words.face_notes)) == {of_all}
    pull = tuple(each for each in front("B3-2").fittings if each.kind == "pull")
    bored = words_of_front(layout, replace(front("B3-2"), fittings=pull))
    assert bored.face_notes == bored.notes


def test_a_note_and_a_finish_are_printed() -> None:
    """What the person said of a front stands on its sheets before the findings."""
    make = replace(front("B3-2").make, note="oven", finish="Sage green, satin.")
    given = replace(front("B3-2"), make=make)
    words = words_of_front(worked_layout("in"), given)
    assert texts(words.notes)[:2] == ("Note: oven.", "Finish: Sage green, satin.")
    silent = texts(words_of_front(worked_layout("in"), front("B3-2")).notes)
    assert not any(note.startswith(("Note", "Finish")) for note in silent)


def test_where_no_plates_are_listed_the_one_wanted_is_named() -> None:
    """A constant of 12 and a tab of 5 cover 16.7 on a plate of 12 + 5 - 16.7 = 0.3: on the door,
    on its side, on the order and in the lists, never as one that can be bought so."""
    doors = box(FrontSpec(id="B1-1", kind="door", hinged="right"))
    made = lay_out(job(doors, hinge=replace(HINGE, constant=12.0, plates=())))
    facts = words_of_front(made, made.fronts[0]).facts["back"]
    assert "Edge to cup 5.0. The plate wants to be 0.3 high, and none is listed: buy" in " ".join(
        texts(facts)
    )
    (inside,) = words_of_side(made, side_of(made, "B1-SIDE-R")).facts.values()
    assert "Plates 0.3 high wanted (none is listed) for B1-1." in texts(inside)
    text = order_text(make_order(made, cut_job(made)), made.job)
    assert (
        "mounting plate 0.3 mm high for 'mine': so high the plate wants to be, none is listed"
        in (" ".join(text.split()))
    )
    (front,) = json.loads(holes_json(made))["fronts"]
    assert front["hinge"] == {
        "record": "mine", "tab_mm": 5.0, "plate_mm": None, "overlay_error_mm": None,
        "plate_wanted_mm": 0.3,
    }  # fmt: skip


def test_a_front_whose_gaps_are_others_says_its_own_alone() -> None:
    """Drawers with 6.0 at their left, a door with 3.2 at the partition and the top; in the plain
    box the lower drawer alone has the job's gaps at each edge."""
    uneven, plain = laid_out(UNEVEN), laid_out(PLAIN)
    for layout, name, gaps in (
        (uneven, "B1-1", "left 6.0, right 3.2, top and bottom 3.2"),
        (uneven, "B1-3", "left 3.2, right 1.6, top 3.2, bottom 1.6"),
        (plain, "B1-1", "sides 1.6, top and bottom 3.2"),
        (plain, "B1-2", ""),
    ):
        found = words_of_front(layout, front_of(layout, name))
        said = [fact for fact in texts(found.facts["back"]) if fact.startswith("Gaps:")]
        assert said == ([f"Gaps: {gaps}."] if gaps else []), name


@pytest.mark.parametrize(("overlay", "own_told"), [("inset", True), ("half", False)])
def test_the_gaps_of_other_overlays_are_said_where_they_are_not_the_jobs(
    overlay: str, own_told: bool
) -> None:
    """A drawer over a pair; with 6.0 at its left it is not 2.0 all round, but what a half-overlay
    front leaves to the box's edge nobody told."""
    rows = ('kind = "drawer"\nheight = 200', 'kind = "pair"')
    more = f'overlay = "{overlay}"'
    even = laid_out(box_text("B1", "base", *rows, more=more))
    own = laid_out(box_text("B1", "base", f"{rows[0]}\nreveal_left = 6", rows[1], more=more))
    assert all(has_job_reveals(front, even) for front in even.fronts)
    first, *leaves = own.fronts
    assert has_job_reveals(first, own) is not own_told
    assert all(has_job_reveals(front, own) for front in leaves)
    assert ("2.0 all round an inset one" in job_reveals(even)) is (overlay == "inset")
