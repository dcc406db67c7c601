"""What is to be done now, list by list in the order of the work."""

from jigs.bench.agenda import due
from jigs.bench.course import ARRIVED, CUT, HUNG, MOUNTED
from jigs.bench.standing import Standing, Step, Wait

CUPS, PULLS = Step(kind="bored", work="cups"), Step(kind="bored", work="pulls")
DOOR = (ARRIVED, CUPS, PULLS, HUNG)


def test_parts_stand_together_by_their_next_step() -> None:
    """What is bored is one list whatever the station; what is done, or is gone, in none; what
    waits stands apart."""
    found = due(
        [
            Standing(part="B1-2", steps=DOOR, done=frozenset({"arrived"})),
            Standing(part="B2-2", steps=DOOR, done=frozenset({"arrived", "bored-cups"})),
            Standing(part="B3-2", steps=DOOR),
            Standing(
                part="B4-2", steps=DOOR, done=frozenset(step.key for step in DOOR[:3]),
                waits=(Wait(part="B4-SIDE-L", step=MOUNTED),),
            ),
            Standing(part="B5-2", steps=DOOR, done=frozenset(step.key for step in DOOR)),
            Standing(part="B6-BACK", steps=(CUT,)),
            Standing(part="B9-9", steps=(), done=frozenset({"cut"}), vanished=True),
        ]
    )  # fmt: skip
    assert [(each.key, each.ready, each.waiting) for each in found] == [
        ("arrived", ("B3-2",), ()),
        ("cut", ("B6-BACK",), ()),
        ("bored", ("B1-2", "B2-2"), ()),
        ("hung", (), ("B4-2",)),
    ]
