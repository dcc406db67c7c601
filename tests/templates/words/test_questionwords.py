"""Each question has its words, and no words are of a question that nobody puts."""

from string import Formatter
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from cli.new import ASKED, REPEATED
from jigs.asking.interview import GivenList, interview
from jigs.asking.question import Question
from templates.words.questionwords import more_lines, prompt_of, question_lines, sentences
from tests.jigs.asking.talks import answer, hold

BY_KEY = (
    "wall.end",
    "wall.meets",
    "wall.reach",
    "wall.filler",
    "wall.length",
    "shelves",
    "pull.named",
)
"""Questions that are put of something: each has a key of its own for each."""


def test_every_question_has_an_option_or_is_told_by_its_key() -> None:
    """The options of the command are the questions; none is missing."""
    assert {*ASKED, *REPEATED, *BY_KEY} == {*sentences()}


@settings(max_examples=12)
@given(data=st.data())
def test_a_question_says_why_it_is_put(data: st.DataObject) -> None:
    """No slot in its words stays empty, and what Enter stands for is said."""
    listed: GivenList | None = None

    def answered(question: Question[Any]) -> str:
        lines = question_lines(question, 1) + more_lines(question)
        assert len(lines) > 4
        assert all(len(line) <= 96 for line in question_lines(question, 1))
        assert prompt_of(question).strip() or not question.default
        assert question.form.allowed
        return answer(data.draw, question)

    hold(interview("x", listed), answered)


def test_sentences_end_as_they_should() -> None:
    """A question asks or names what is wanted, why is a sentence; nothing else stands beside."""
    for key, said in sentences().items():
        assert {*said} <= {"ask", "why", "open", "more"}, key
        assert said["why"][-1] in ".t", key
        assert not said.get("open", "").endswith("."), key
        for text in said.values():
            assert all(name == name.strip() for _, name, _, _ in Formatter().parse(text) if name)
