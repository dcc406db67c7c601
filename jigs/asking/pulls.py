"""The pulls: of the job's drawers and doors, and those that a list names; where they stand."""

from collections.abc import Collection, Iterator, Mapping, Sequence

from jigs.asking.draft import HUNG, RUNNING, BoxDraft, DraftLine, DraftTable, FrontDraft
from jigs.asking.forms import ChoiceForm, Form, LengthForm, TypedLength, WordOrLength, given
from jigs.asking.question import OPEN, Asking, Question, ask
from jigs.given.catalogue import generic_pulls
from jigs.given.hardware import NO_PULL, PullRecord
from jigs.ground.keys import keys_of
from jigs.ground.lengths import Unit
from jigs.reading.fieldkeys import CONFIRMED
from jigs.reading.jobdefaults import DEFAULT_PULL

MINE = "mine"
"""What the person's own record is called."""
KNOB = "knob"
GROUPS = {"drawer": RUNNING, "door": HUNG}
"""Fronts that are asked for a pull together."""
ON_DRAWERS = ("drawer",)
ON_DOORS = ("door_inset", "door_corner", "tall_height")
"""Where a pull stands, on drawers and on doors."""

Pulled = str | TypedLength | None
"""A pull: its screws' distance, a knob, none, or not known."""


def ask_pulls(
    unit: Unit, boxes: Sequence[BoxDraft]
) -> Asking[tuple[list[DraftTable], list[DraftLine]]]:
    """Ask what opens drawers and doors, and where it stands on them."""
    fronts = [front for box in boxes for front in box.fronts]
    within = keys_of(PullRecord)["centers"].within
    answers = yield from _ask_groups(unit, fronts)
    named: dict[str, Pulled] = {}
    for name in _unknown(fronts):
        named[name] = yield from ask(
            Question(
                key=f"pull.{name}.centers", topic="pull.named", may_open=True,
                form=WordOrLength((KNOB,), LengthForm(within, unit)), figures={"name": name},
            )
        )  # fmt: skip
    if not answers and not named:
        return [], []
    confirmed = None
    if any(isinstance(answer, TypedLength) for answer in (*answers.values(), *named.values())):
        confirmed = yield from ask(
            Question(key="pull.confirmed", form=ChoiceForm(CONFIRMED), may_open=True)
        )
    places = yield from _ask_places(unit, boxes, answers)
    alike = len({*answers.values()} - {NO_PULL}) == 1
    sections: dict[str, DraftTable] = {}
    use: list[DraftLine] = []
    for group, answer in answers.items():
        name = _free(MINE if alike else f"{group}s", named)
        use.append(DraftLine(f"{group}_pull", NO_PULL if answer == NO_PULL else name))
        if answer != NO_PULL:
            keys = (*ON_DRAWERS, *ON_DOORS) if alike else _keys_on(group)
            sections[name] = _pull(name, answer, confirmed, [p for p in places if p.key in keys])
    sections |= {name: _pull(name, each, confirmed, places) for name, each in named.items()}
    return list(sections.values()), use


def _keys_on(group: str) -> tuple[str, ...]:
    return ON_DRAWERS if group == "drawer" else ON_DOORS


def _free(name: str, taken: Collection[str]) -> str:
    """Give a name that a list's own pull does not have."""
    while name in taken:
        name = f"my-{name}"
    return name


def _unknown(fronts: Sequence[FrontDraft]) -> Iterator[str]:
    """Give the pulls that a list names and that do not ship with the tool, each once."""
    known = {name.lower() for name in (*generic_pulls(), NO_PULL)}
    for front in fronts:
        if front.pull and front.pull.lower() not in known:
            known.add(front.pull.lower())
            yield front.pull


def _ask_groups(unit: Unit, fronts: Sequence[FrontDraft]) -> Asking[dict[str, Pulled]]:
    """Ask what opens the fronts that name no pull themselves."""
    form = WordOrLength((KNOB, NO_PULL), LengthForm(keys_of(PullRecord)["centers"].within, unit))
    answers: dict[str, Pulled] = {}
    for group, kinds in GROUPS.items():
        if not any(front.kind in kinds and not front.pull for front in fronts):
            continue
        said = next(iter(answers.values()), None)
        default = said.text if isinstance(said, TypedLength) else said
        answers[group] = yield from ask(
            Question(key=f"{group}_pull", form=form, may_open=True, default=default or OPEN)
        )
    return answers


def _ask_places(
    unit: Unit, boxes: Sequence[BoxDraft], answers: Mapping[str, Pulled]
) -> Asking[list[DraftLine]]:
    """Ask where pulls stand on the fronts that have some."""
    lines: list[DraftLine] = []
    for name in _wanted(boxes, answers):
        field = keys_of(PullRecord)[name]
        length = LengthForm(field.within, unit)
        form: Form[str | TypedLength] = (
            WordOrLength(field.allowed, length) if field.allowed else length
        )
        usual = str(field.default)
        if isinstance(field.default, float):
            usual = given(field.default, "mm").text
        answer = yield from ask(
            Question(key=f"pull.{name}", form=form, may_open=True, figures={"usual": usual})
        )
        text = answer.text if isinstance(answer, TypedLength) else answer
        lines.append(DraftLine(name, text or usual, open=answer is None))
    return lines


def _wanted(boxes: Sequence[BoxDraft], answers: Mapping[str, Pulled]) -> Iterator[str]:
    for group, kinds in GROUPS.items():
        pulled = [
            box
            for box in boxes
            for front in box.fronts
            if front.kind in kinds
            and (front.pull.lower() if front.pull else answers.get(group, NO_PULL)) != NO_PULL
        ]
        for key in _keys_on(group) if pulled else ():
            if key != "tall_height" or any(box.kind == "tall" for box in pulled):
                yield key


def _pull(
    name: str, answer: Pulled, confirmed: str | None, places: Sequence[DraftLine]
) -> DraftTable:
    lines = [DraftLine("like", KNOB if answer == KNOB else DEFAULT_PULL)]
    if answer != KNOB:
        centers = generic_pulls()[DEFAULT_PULL].centers
        assert centers is not None, "it is a bar"
        usual = given(centers, "mm").text
        text = answer.text if isinstance(answer, TypedLength) else usual
        known = isinstance(answer, TypedLength)
        lines += [
            DraftLine("centers", text, open=not known, wanted=not known),
            DraftLine("confirmed", confirmed or CONFIRMED[-1], open=not (known and confirmed),
                 wanted=known and not confirmed),
        ]  # fmt: skip
    return DraftTable(name="pull", own=name, lines=(*lines, *places))
