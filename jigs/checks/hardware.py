"""Which parts depend on hardware whose numbers are open: neither looked up nor measured yet?"""

from collections.abc import Iterator, Sequence

from jigs.box.drawerbox import DrawerBox
from jigs.given.confirming import OpenNumber, Record, heading_of, number_words, open_numbers
from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.ground.keys import Rests
from jigs.ground.problems import Problem, warning

BORED: tuple[Rests, ...] = ("inside", "order")
"""What still rests on the hinge of a door whose cups are bored already."""


def check_hinge_confirmed(
    front: str, record: HingeRecord, board: str, *, bored: bool = False
) -> Iterator[Problem]:
    """Find a door hung on a hinge with open numbers; its side is concerned too."""
    numbers = open_numbers(record, *(BORED if bored else ()))
    if not numbers:
        return
    yield warning("unconfirmed-hinge", front, _fact(numbers), _remedy(record, numbers), (board,))


def check_slide_confirmed(
    front: str, record: SlideRecord, boards: Sequence[str], drawer: DrawerBox | None
) -> Iterator[Problem]:
    """Find a drawer that runs on a slide with open numbers; both sides are concerned too."""
    numbers = open_numbers(record)
    if not numbers:
        return
    also = (*boards, *((drawer.id,) if drawer else ()))
    yield warning("unconfirmed-slide", front, _fact(numbers), _remedy(record, numbers), also)


def check_pull_confirmed(front: str, record: PullRecord) -> Iterator[Problem]:
    """Find a front with a pull whose hole centres are open."""
    numbers = open_numbers(record)
    if not numbers:
        return
    yield warning("unconfirmed-pull", front, _fact(numbers), _remedy(record, numbers))


def by_memory(words: str, *, open: bool) -> str:
    """Say a figure that decides a finding; of one that nobody has looked up, that it is open."""
    return f"about {words} (open: the leaflet's own figure rules)" if open else words


def _fact(numbers: Sequence[OpenNumber]) -> str:
    first = numbers[0]
    noun = "an open number" if len(numbers) == 1 else "open numbers"
    return f"{first.kind} '{first.record}' has {noun}: {number_words(numbers)}"


def _remedy(record: Record, numbers: Sequence[OpenNumber]) -> str:
    """Say what to write, and where: a generic record takes none, so there in one of its own."""
    kind, keys = numbers[0].kind, [number.key for number in numbers]
    named = keys[0] if len(keys) == 1 else f"{', '.join(keys[:-1])} and {keys[-1]}"
    them = "it" if len(keys) == 1 else "them"
    own = heading_of(kind, record.name)
    if record.like is None:
        own = f'a [{kind}.NAME] of your own, like = "{record.name}",'
    return (
        f'write {named} in {own} as your leaflet has {them}, with confirmed = "leaflet" '
        '(or measure, and write "measured")'
    )
