"""How far a part is, as values: its steps, what they wait for, what has been noted of it.

A step is marked by its key, which says the same from one edit of the job to the next: `cut`,
`bored-cups` (the work of a station, never its letter), `front-2` (the second coat of that face).

>>> Step(kind="bored", work="cups").key, Step(kind="front", coat=2).key, Step(kind="hung").key
('bored-cups', 'front-2', 'hung')
"""

from typing import Literal

from msgspec import Struct

from jigs.bench.station import Work

StepKind = Literal[
    "cut", "banded", "arrived", "bored", "mounted", "assembled", "scribed", "back", "front", "hung",
    "fitted", "adjusted",
]  # fmt: skip
"""What is done with a part. `mounted`: plates and slides are screwed on it; `scribed`: held dry to
its place, drawn along the wall or the floor and cut to that line; `back`, `front`: a coat of paint
on that face; `hung`: a front at its place, on hinges or on its drawer box; `fitted`: what is set on
slides or pins, or screwed on."""


class Step(Struct, frozen=True, kw_only=True):
    """One thing that is done with a part."""

    kind: StepKind
    work: Work | None = None
    """Of what is bored: the work of the stations at which it is."""
    coat: int = 0
    """Of paint: which coat, from 1."""

    @property
    def key(self) -> str:
        """What a mark of it is kept and posted under."""
        return f"{self.kind}-{self.work or self.coat}" if self.work or self.coat else self.kind


class Wait(Struct, frozen=True, kw_only=True):
    """What has to be done before a step: a step of another part; without one, that part has to be
    released, as long as it is held back."""

    part: str
    step: Step | None = None


class Event(Struct, frozen=True, kw_only=True):
    """What was once done or noted of a part."""

    when: str
    """Local time, `2026-03-01 14:05`."""
    what: Literal["done", "undone", "note", "photo", "no-photo", "recoded"]
    step: str = ""
    """The key of the step; it may be one that the part no longer has."""


WORKED: frozenset[StepKind] = frozenset({"cut", "banded", "bored"})
"""What is done to a part by its figures: the rest stays done whatever its code becomes."""


class Standing(Struct, frozen=True, kw_only=True):
    """How far a part is. A book knows nothing done: `steps` alone, and `done` empty."""

    part: str
    steps: tuple[Step, ...]
    """In the order of the work."""
    done: frozenset[str] = frozenset()
    """The keys of the steps that are marked."""
    waits: tuple[Wait, ...] = ()
    """What its next step waits for, only what is not done."""
    note: str = ""
    photo: str = ""
    """Names the photo as it is asked for; "" without one."""
    last: Step | None = None
    """The step that was marked last, which undoing takes back; None when there is none."""
    stale: str = ""
    """The code that it had before, where it had another one: paper that carries it is stale."""
    outdated: frozenset[str] = frozenset()
    """The keys of the steps in which it was worked on by figures that it no longer has; one may be
    of a step that the part no longer has."""
    vanished: bool = False
    """Whether the job has the part no more."""
    history: tuple[Event, ...] = ()
    """The newest first."""

    @property
    def outdated_work(self) -> tuple[Step, ...]:
        """Those of the steps that it still has."""
        return tuple(step for step in self.steps if step.key in self.outdated)

    @property
    def next(self) -> Step | None:
        """The first step that is not done; None when all are."""
        return next((step for step in self.steps if step.key not in self.done), None)
