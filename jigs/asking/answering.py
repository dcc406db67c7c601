"""An interview with answers that are there already: what comes of it, or all that is wrong."""

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from jigs.asking.draft import Draft
from jigs.asking.question import Asking, Question
from jigs.ground.errors import Fault, JigsheetError


class Answered(Struct, frozen=True, kw_only=True):
    """What came of an interview that nobody sat through."""

    draft: Draft | None
    """None where a question without a usual answer had none."""
    faults: tuple[Fault, ...]
    """The answers that cannot be read, each by the key of its question."""
    questions: tuple[Question[Any], ...]
    """The questions that were put."""

    @property
    def asked(self) -> tuple[str, ...]:
        """Their keys."""
        return tuple(question.key for question in self.questions)


def answer_all(asking: Asking[Draft], answers: Mapping[str, str]) -> Answered:
    """Go through an interview; what is not answered stays as usual."""
    faults: list[Fault] = []
    questions: list[Question[Any]] = []
    draft = None
    try:
        question = next(asking)
        while True:
            questions.append(question)
            text = question.settle(answers[question.key]) if question.key in answers else None
            try:
                question.read(question.unsaid if text is None else text)
            except JigsheetError as error:
                faults.append(Fault(question.key, str(error)))
                text = None
            if text is None and not question.unsaid:
                break
            question = asking.send(question.unsaid if text is None else text)
    except StopIteration as end:
        draft = end.value
    return Answered(draft=draft, faults=tuple(faults), questions=tuple(questions))
