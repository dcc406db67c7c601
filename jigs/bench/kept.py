"""What is kept of a part from one day to the next, and how far that makes it.

It outlives every edit of the job: a mark of a step that the part no longer has stays, a part that
is gone stays with all that was said of it.
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct, field

from jigs.bench.course import FITTED, SCRIBED, Course
from jigs.bench.standing import WORKED, Standing, Wait
from jigs.bench.tracked import Tracked


class Kept(Struct, frozen=True, kw_only=True):
    """What is kept of a part."""

    marks: Mapping[str, str] = field(default_factory=dict)
    """The steps that are marked, by their keys in the order in which they were, and the code that
    the part had then."""
    codes: tuple[str, ...] = ()
    """Every code it was seen with, the latest last."""
    note: str = ""
    photo: str = ""
    """Names its photo, "" where there is none."""


NOTHING_KEPT = Kept()
"""What is kept of a part of which nothing was ever said."""


def stand(
    parts: Sequence[Tracked], courses: Mapping[str, Course], kept: Mapping[str, Kept]
) -> Mapping[str, Standing]:
    """Say of every part how far it is, by its ID: those of the job in its order, then those of
    which something is kept and which the job no longer has."""
    done = {part.id: done_of(courses[part.id], kept.get(part.id, NOTHING_KEPT)) for part in parts}
    found = {
        part.id: _stand(part, courses[part.id], kept.get(part.id, NOTHING_KEPT), done)
        for part in parts
    }
    for part, own in kept.items():
        if part not in found and (own.marks or own.note or own.photo):
            found[part] = Standing(
                part=part, steps=(), done=frozenset(own.marks), note=own.note, photo=own.photo,
                vanished=True,
            )  # fmt: skip
    return found


def _stand(
    part: Tracked, course: Course, kept: Kept, done: Mapping[str, frozenset[str]]
) -> Standing:
    own = done[part.id]
    following = next((step for step in course.steps if step.key not in own), None)
    waits = course.waits.get(following.key, ()) if following is not None else ()
    steps = {step.key: step for step in course.steps}
    # A part that is held back has no code: nothing can be said to be stale.
    before = [code for code in kept.codes if code != part.code] if part.code else []
    return Standing(
        part=part.id,
        steps=course.steps,
        done=own,
        waits=tuple(wait for wait in waits if _lasts(wait, done)),
        note=kept.note,
        photo=kept.photo,
        last=next((steps[key] for key in reversed([*kept.marks]) if key in steps), None),
        stale=before[-1] if before else "",
        outdated=frozenset(
            key for key in done_before(kept, part.code) if key.partition("-")[0] in WORKED
        ),
    )


def done_before(kept: Kept, code: str) -> Mapping[str, str]:
    """Give the steps that were marked when a part had other figures than those of its code now, by
    their keys, each with the code of then. Of a part that is held back, or of a mark made while it
    was, nobody can say."""
    return {key: before for key, before in kept.marks.items() if code and before not in ("", code)}


def done_of(course: Course, kept: Kept) -> frozenset[str]:
    """Give the keys of what is done of a part. What is at its place was scribed, though nobody
    marked it: jobs had no such step once."""
    done = course.given | kept.marks.keys()
    scribed = SCRIBED in course.steps and FITTED.key in done
    return done | {SCRIBED.key} if scribed else done


def _lasts(wait: Wait, done: Mapping[str, frozenset[str]]) -> bool:
    """Tell whether something is still to be waited for: what the job no longer has is not."""
    return wait.step is None or (wait.part in done and wait.step.key not in done[wait.part])
