"""How far a part is by what is kept of it: done, next, waiting; what outlives an edit."""

from collections.abc import Mapping

from jigs.bench.course import ARRIVED, CUT, FITTED, HUNG, MOUNTED, SCRIBED, Course
from jigs.bench.kept import Kept, stand
from jigs.bench.standing import Standing, Step, Wait
from jigs.bench.tracked import Tracked

CUPS = Step(kind="bored", work="cups")
DOOR = Tracked(id="B1-2", code="Q8RD", wall="north", boxes=("B1",))
SIDE = Tracked(id="B1-SIDE-L", code="M2QX", wall="north", boxes=("B1",))
COURSES = {
    "B1-2": Course(
        steps=(ARRIVED, CUPS, HUNG),
        waits={HUNG.key: (Wait(part="B1-SIDE-L", step=MOUNTED),)},
    ),
    "B1-SIDE-L": Course(steps=(MOUNTED,)),
}


def marks(*steps: str, code: str = "Q8RD") -> Kept:
    return Kept(marks=dict.fromkeys(steps, code))


def door(kept: Mapping[str, Kept]) -> Standing:
    return stand((DOOR, SIDE), COURSES, kept)["B1-2"]


def test_the_next_step_is_the_first_that_is_not_done() -> None:
    """One that was passed over comes up again; all done, nothing does."""
    assert door({}).next == ARRIVED
    assert door({"B1-2": marks("arrived")}).next == CUPS
    passed = door({"B1-2": marks("arrived", "hung")})
    assert (passed.next, passed.done) == (CUPS, frozenset({"arrived", "hung"}))
    assert door({"B1-2": marks("arrived", "bored-cups", "hung")}).next is None


def test_undoing_takes_back_what_was_marked_last() -> None:
    """Whatever its place in the order; what the part has no more is no button."""
    assert door({}).last is None
    assert door({"B1-2": marks("hung", "arrived")}).last == ARRIVED
    assert door({"B1-2": marks("arrived", "bored-pulls")}).last == ARRIVED


def test_it_waits_until_the_other_part_is_done() -> None:
    """A door waits for its plates; a part that the job no longer has keeps nobody waiting."""
    own = {"B1-2": marks("arrived", "bored-cups")}
    assert door(own).waits == (Wait(part="B1-SIDE-L", step=MOUNTED),)
    assert door(own | {"B1-SIDE-L": marks("mounted", code="M2QX")}).waits == ()
    assert door({"B1-2": marks("arrived")}).waits == ()
    assert stand((DOOR,), COURSES, own)["B1-2"].waits == ()


def test_what_was_in_its_place_before_there_was_such_a_step_is_scribed() -> None:
    """Painted alone it is not: it is scribed yet. What has no such step has it no more for that."""
    coat = Step(kind="front", coat=1)
    steps = {"B1-SIDE-L": Course(steps=(CUT, SCRIBED, coat, FITTED))}

    def panel(*done: str, courses: Mapping[str, Course] = steps) -> Standing:
        return stand((SIDE,), courses, {"B1-SIDE-L": marks(*done)})["B1-SIDE-L"]

    assert panel("cut", "front-1").next == SCRIBED
    assert panel("cut", "front-1", "fitted").next is None
    assert panel("cut", "front-1", "fitted").last == FITTED
    plain = {"B1-SIDE-L": Course(steps=(CUT, FITTED))}
    assert panel("cut", "fitted", courses=plain).done == {"cut", "fitted"}
    assert panel("cut", "scribed", courses=plain).next == FITTED


def test_what_is_held_back_waits_whatever_was_marked() -> None:
    """HOLD is lifted by the job alone."""
    held = {"B1-2": Course(steps=(HUNG,), waits={"hung": (Wait(part="B1-2"),)})}
    assert stand((DOOR,), held, {"B1-2": marks("arrived")})["B1-2"].waits == (Wait(part="B1-2"),)


def test_a_changed_code_makes_paper_stale_and_marks_doubtful() -> None:
    """Of what was done before, that alone which figures rule: a front has arrived all the same."""
    old, now = dict.fromkeys(("arrived", "bored-cups", "bored-pulls", "hung"), "7K4F"), "Q8RD"
    own = Kept(marks=old, codes=("7K4F", now))
    assert (door({"B1-2": own}).stale, door({"B1-2": own}).outdated) == (
        "7K4F",
        frozenset({"bored-cups", "bored-pulls"}),  # holes that the part has no more are in it too
    )
    assert door({"B1-2": own}).outdated_work == (CUPS,)
    same = Kept(marks={"bored-cups": now}, codes=(now,))
    assert (door({"B1-2": same}).stale, door({"B1-2": same}).outdated) == ("", frozenset())


def test_what_the_job_says_is_done_is_done_and_not_to_be_undone() -> None:
    """A front on the delivered list has arrived."""
    course = {"B1-2": Course(steps=(ARRIVED, HUNG), given=frozenset({"arrived"}))}
    found = stand((DOOR,), course, {})["B1-2"]
    assert (found.next, found.last) == (HUNG, None)


def test_nothing_is_lost_of_a_part_that_is_gone() -> None:
    """It is named after the parts of the job, with its note; one that was only seen is not."""
    kept = {
        "B9-1": Kept(marks={"hung": "Q8RD"}, note="the short one"),
        "B9-2": Kept(codes=("Q8RD",)),
    }
    found = stand((DOOR, SIDE), COURSES, kept)
    assert [*found] == ["B1-2", "B1-SIDE-L", "B9-1"]
    gone = found["B9-1"]
    assert (gone.vanished, gone.done, gone.note) == (True, frozenset({"hung"}), "the short one")
