"""What may be marked of a part: its steps one after the other, as they are done, for what is hung
was bored; and none that waits for the part itself, or another, to be released.
"""

from collections.abc import Collection

from jigs.bench.course import Course
from jigs.bench.standing import Step


def find_step(course: Course, key: str) -> Step | None:
    """Find a step of a part by its key."""
    return next((step for step in course.steps if step.key == key), None)


def waits_for_release(course: Course, step: Step) -> bool:
    """Tell whether a step is kept from being done as long as a part is held back."""
    return any(wait.step is None for wait in course.waits.get(step.key, ()))


def left_before(course: Course, step: Step, done: Collection[str]) -> tuple[Step, ...]:
    """Give the steps before one that are still to be done; `done`: the keys of those that are."""
    before = course.steps[: course.steps.index(step)]
    return tuple(each for each in before if each.key not in done)
