"""A question as a value, and how an interview puts one.

>>> from jigs.asking.forms import ChoiceForm
>>> question = Question(key="units", form=ChoiceForm(("in", "mm")), default="mm")
>>> question.settle(""), question.read("i")
('mm', 'in')
"""

from collections.abc import Generator, Mapping
from typing import Any, Generic, TypeVar

from msgspec import Struct, field

from jigs.asking.draft import BoxDraft
from jigs.asking.forms import Form, LengthForm, LengthsForm, TypedLength
from jigs.ground.believable import Range
from jigs.ground.errors import JigsheetError
from jigs.ground.lengths import Unit

AnswerT = TypeVar("AnswerT")
MadeT = TypeVar("MadeT")
OPEN = "-"
"""The answer of who does not know it yet."""


class Question(Struct, Generic[AnswerT], frozen=True, kw_only=True):
    """One question."""

    key: str
    """What its answer is kept by: the job file's own key where there is one."""
    form: Form[AnswerT]
    """How its answer is read."""
    default: str = OPEN
    """The answer of who says nothing; "" where there is none."""
    may_open: bool = False
    """Whether it may stay open."""
    topic: str = ""
    """By what its words are found; "" for its key."""
    figures: Mapping[str, str] = field(default_factory=dict)
    """What its words name."""
    boxes: tuple[BoxDraft, ...] = ()
    """The boxes that are looked at before it is answered."""

    unit: Unit = "mm"
    """What these are shown in."""
    likely: Range | None = None
    """Where a length is believed here without asking again, if not wherever its form has it."""

    @property
    def words(self) -> str:
        """By what its words are found."""
        return self.topic or self.key

    def settle(self, text: str) -> str:
        """Give the answer that a text stands for."""
        return text.strip() or self.default

    def read(self, text: str) -> AnswerT | None:
        """Give what an answer means, None where it stays open. Raises JigsheetError."""
        if text == OPEN and self.may_open:
            return None
        if text in ("", OPEN):
            raise JigsheetError(f"an answer is needed; allowed: {self.form.allowed}")
        return self.form.read(text)

    def doubt(self, text: str) -> str:
        """Say what is strange in an answer that can be read, "" where nothing is: a length that is
        far from what is usual may be a slip of the finger, or of the unit."""
        if text == OPEN or not isinstance(self.form, LengthForm | LengthsForm):
            return ""
        within = self.likely or self.form.within
        read = self.form.read(text)
        first = read if isinstance(read, TypedLength) else read[0]
        if within.holds(first.mm):
            return ""
        return f"{text.strip()} is not usual, which is {within}"

    @property
    def unsaid(self) -> str:
        """The answer where the person says that all else stays as usual."""
        return OPEN if self.may_open else self.default


Asking = Generator[Question[Any], str, MadeT]
"""Puts questions, takes the answer to each as a text that it can read, and ends with what came of
them."""


def ask(question: Question[AnswerT]) -> Asking[AnswerT | None]:
    """Put a question; None where its answer stays open."""
    text = yield question
    return question.read(text)


def need(question: Question[AnswerT]) -> Asking[AnswerT]:
    """Put a question that does not stay open."""
    answer = yield from ask(question)
    assert answer is not None, "it may not stay open"
    return answer
