"""What `plan` is told is done: marks as those of the pages of 'serve', kept in the same place.

All that a line names is marked, or nothing is.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING

import click
from msgspec import Struct

from cli.failures import Failure
from cli.jobs import Asked
from cli.selection import unknown_name
from cli.serving.store import open_store
from cli.terminal import mention

if TYPE_CHECKING:
    from jigs.bench.jobplan import JobPlan
    from jigs.bench.kept import Kept
    from jigs.bench.tracked import Tracked

MOST_NAMED = 8
"""Parts that one line names; of more it says how many they are."""


def names_of_parts(parts: "Iterable[Tracked]") -> dict[str, list[str]]:
    """Give what each name means: a part itself, a box and a wall their parts; the parts first. A
    part's own name means it alone, whatever else is called so."""
    parts = tuple(parts)
    names = {part.id: [part.id] for part in parts}
    of_more: dict[str, list[str]] = {}
    for part in parts:
        for name in dict.fromkeys([*part.boxes, *([part.wall.upper()] if part.wall else [])]):
            of_more.setdefault(name, []).append(part.id)
    return {**names, **{name: ids for name, ids in of_more.items() if name not in names}}


class Ticks(Struct, frozen=True, kw_only=True):
    """What a line says is done: steps of parts, boxes or walls, whole days; and what is not."""

    done: tuple[tuple[str, str], ...] = ()
    days: tuple[int, ...] = ()
    back: tuple[tuple[str, str], ...] = ()

    def __bool__(self) -> bool:
        return bool(self.done or self.days or self.back)


Act = tuple[str, str]
"""A part and the key of its step."""


class _Ticking:
    """Finds what the words of a line mean, and what keeps it from being marked."""

    def __init__(self, plan: "JobPlan", kept: "Mapping[str, Kept]") -> None:
        from jigs.bench.kept import NOTHING_KEPT, done_of

        self.plan = plan
        self.kept = kept
        self.done = {
            part: set(done_of(course, kept.get(part, NOTHING_KEPT)))
            for part, course in plan.courses.items()
        }
        """The steps that are done of each part, by their keys, what this line marks among them."""
        self.marks: list[Act] = []
        self.back: list[Act] = []
        self.unknown: list[str] = []
        self.refused: dict[str, list[str]] = {}
        """Why parts cannot be marked, each with those of which it is true."""
        self.held: list[str] = []
        """Parts of a box, a wall or a day that are left out, since they are held back."""
        self.said: list[str] = []

    def parts_of(self, name: str, option: str) -> list[str]:
        """Give the parts that a name means: itself, those of a box, those of a wall."""
        wanted = name.strip().upper()
        if wanted in self.kept:
            return [wanted]
        names = names_of_parts(self.plan.parts.values())
        if wanted not in names:
            known = tuple(names)
            self.unknown.append(f"{option}: {unknown_name(name, known, 'part, box or wall')}")
        return names.get(wanted, [])

    def mark(self, name: str, key: str) -> None:
        """Mark a step of all that a name means."""
        from jigs.bench.marking import find_step

        parts = self.parts_of(name, "--done")
        courses = self.plan.courses
        gone = [part for part in parts if part not in courses]
        if gone:
            self._refuse(gone[0], "no longer in the job; what was kept of it stays")
            return
        having = [part for part in parts if find_step(courses[part], key)]
        if parts and not having:
            self._no_step(name, key, parts, "--done")
        for part in having:
            self._mark_one(part, key, alone=len(parts) == 1)

    def _no_step(self, name: str, key: str, parts: Sequence[str], option: str) -> None:
        steps = dict.fromkeys(step.key for part in parts for step in self.plan.courses[part].steps)
        called = name.strip().upper()
        here = f"{called} has no" if len(parts) == 1 else f"nothing of {called} has a"
        self.unknown.append(f"{option}: {here} step {key!r}; its steps: {', '.join(steps)}.")

    def _mark_one(self, part: str, key: str, *, alone: bool) -> None:
        from jigs.bench.marking import find_step, left_before, waits_for_release
        from templates.words.stepwords import step_done

        course = self.plan.courses[part]
        step = find_step(course, key)
        assert step is not None, "only steps that the part has are marked"
        if key in self.done[part]:
            return
        if waits_for_release(course, step):
            if alone:
                self._refuse(
                    part,
                    "held back, or waits for a part that is: nothing more is done with it until "
                    "the job says what is missing ('jigsheet check')",
                )
            else:
                self.held.append(part)
        elif before := left_before(course, step, self.done[part]):
            said = ((each.key, step_done(each)) for each in before)
            names = ", ".join(key if key == words else f"{key} ({words})" for key, words in said)
            self._refuse(part, f"not so far yet; mark first what comes before: {names}")
        else:
            self.done[part].add(key)
            self.marks.append((part, key))

    def _refuse(self, part: str, why: str) -> None:
        self.refused.setdefault(why, []).append(part)

    def mark_day(self, number: int) -> None:
        """Mark what is done on a day: of what is bored at several stations on several days, what is
        finished there."""
        days = self.plan.days
        if not 1 <= number <= len(days):
            self.unknown.append(f"--day-done: there is no day {number}; days 1 to {len(days)}.")
            return
        later = {
            (task.part, task.step.key) for day in days[number:] for task in day.tasks if task.step
        }
        acts = [
            (task.part, task.step.key) for task in days[number - 1].tasks if task.step is not None
        ]
        if not acts:
            self.said.append(f"Of day {number} nothing is marked: what comes after it shows it.")
        for part, key in acts:
            if (part, key) not in later:
                self._mark_one(part, key, alone=False)

    def take_back(self, name: str, key: str) -> None:
        """Take the marks of a step back, of all that a name means; of what the job no longer has
        too."""
        parts = self.parts_of(name, "--undone")
        marked = [part for part in parts if part in self.kept and key in self.kept[part].marks]
        courses = self.plan.courses
        if parts and not marked:
            known = any(
                step.key == key for part in parts if part in courses for step in courses[part].steps
            )
            if known:
                self.said.append(f"{name.strip().upper()}: {key} was not marked.")
            elif any(part in courses for part in parts):
                self._no_step(name, key, [part for part in parts if part in courses], "--undone")
            else:
                marks = ", ".join(self.kept[parts[0]].marks) or "nothing"
                self.unknown.append(f"--undone: of {parts[0]} is marked: {marks}.")
        for part in marked:
            self.done.get(part, set()).discard(key)
            self.back.append((part, key))


def tick(ticks: Ticks, asked: Asked, plan: "JobPlan", kept: "Mapping[str, Kept]") -> bool:
    """Mark what a line says, beside the job; say what was, and tell whether there was anything.
    Raises BadParameter for what there is not, Failure for what cannot be marked; then nothing
    is."""
    ticking = _Ticking(plan, kept)
    for name, key in ticks.back:
        ticking.take_back(name, key.strip().lower())
    for number in sorted(set(ticks.days)):
        ticking.mark_day(number)
    for name, key in ticks.done:
        ticking.mark(name, key.strip().lower())
    if ticking.unknown:
        raise click.UsageError("\n".join(ticking.unknown))
    if ticking.refused:
        said = [f"{_named(parts)}: {why}." for why, parts in ticking.refused.items()]
        raise Failure("\n".join([*said, "Nothing was marked."]))
    codes = {part.id: part.code for part in plan.parts.values()}
    if ticking.marks or ticking.back:
        with open_store(asked.path) as store:
            store.saw(codes)
            store.mark_all(
                [(part, key, codes[part]) for part, key in ticking.marks],
                [(part, key, codes.get(part, "")) for part, key in ticking.back],
            )
    _tell(ticking, plan)
    return bool(ticking.marks or ticking.back)


def _tell(ticking: _Ticking, plan: "JobPlan") -> None:
    from templates.words.stepwords import key_words

    steps = [step for course in plan.courses.values() for step in course.steps]
    words = {key: key_words(steps, key) for _, key in (*ticking.marks, *ticking.back)}
    for title, acts in (("Taken back", ticking.back), ("Marked", ticking.marks)):
        for key, parts in _by_step(acts).items():
            mention(f"{title}: {words[key]}: {_named(parts)}.")
    for line in ticking.said:
        mention(line)
    if ticking.held:
        mention(f"Left open, held back: {_named(ticking.held)}.")
    if not (ticking.marks or ticking.back or ticking.said or ticking.held):
        mention("Nothing to mark: all of it is marked already.")


def _by_step(acts: Iterable[Act]) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for part, key in acts:
        found.setdefault(key, []).append(part)
    return found


def _named(parts: Iterable[str]) -> str:
    names = list(dict.fromkeys(parts))
    if len(names) <= MOST_NAMED:
        return ", ".join(names)
    return f"{', '.join(names[:MOST_NAMED])} and {len(names) - MOST_NAMED} more"
