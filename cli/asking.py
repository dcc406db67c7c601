"""Asking a person: each question on standard error, its answer kept beside the job as it is given,
so that an interview that ends early goes on where it stopped."""

import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
from msgspec import Struct, field

from cli.failures import Failure
from cli.output import drop_file, make_folder, write_text
from cli.terminal import fitted, plain, tell

if TYPE_CHECKING:
    from jigs.asking.draft import Draft
    from jigs.asking.question import Asking, Question

ENDING = ".answers"
"""How the name of the file ends that keeps the answers, beside the job."""
SCHEMA = 1
AGAIN = "="
"""The answer that stood before the person went back."""


class KeptAnswers(Struct):
    """The answers so far, in the order of their questions, and the list that they are about."""

    path: Path
    fronts: str = ""
    columns: str = ""
    """How that is read, as --columns has it."""
    answers: dict[str, str] = field(default_factory=dict)
    taken_back: dict[str, str] = field(default_factory=dict)
    """What was answered before the person went back, by the keys of the questions."""

    @classmethod
    def beside(cls, job: Path) -> "KeptAnswers":
        """Give what an earlier interview has left for this job; nothing if there was none."""
        path = job.with_name(f"{job.name}{ENDING}")
        if not path.exists():
            return cls(path)
        try:
            said = json.loads(path.read_bytes())
            if said["schema"] != SCHEMA:
                raise ValueError
            answers = {str(key): str(text) for key, text in said["answers"].items()}
            return cls(path, str(said["fronts"]), str(said["columns"]), answers)
        except (OSError, ValueError, KeyError, TypeError, AttributeError) as error:
            raise Failure(
                f"'{path}' keeps the answers of an interview, and cannot be read. Take it away to "
                "begin anew."
            ) from error

    def save(self) -> None:
        """Keep them."""
        said = {
            "schema": SCHEMA,
            "fronts": self.fronts,
            "columns": self.columns,
            "answers": self.answers,
        }
        make_folder(self.path.parent)
        text = json.dumps(said, ensure_ascii=False, indent=1)
        write_text(str(self.path), f"{text}\n", sources=())

    def drop(self) -> None:
        """Take the file away: there is a job now."""
        drop_file(self.path)


class _Back(Exception):
    """The person wants the question before once more."""


def hold_interview(
    start: "Callable[[], Asking[Draft]]", kept: KeptAnswers
) -> "tuple[Draft, list[str]]":
    """Put all questions that are not answered; give what came of it, and the keys of all.

    Raises ReadingError for a wrong answer out of a file or a pipe, which nobody can be asked again:
    whatever follows it may be meant for another question.
    """
    while True:
        try:
            return _go_through(start(), kept)
        except _Back:
            continue


def _go_through(asking: "Asking[Draft]", kept: KeptAnswers) -> "tuple[Draft, list[str]]":
    put: list[str] = []
    try:
        question = next(asking)
        while True:
            put.append(question.key)
            text = kept.answers.get(question.key)
            if text is None or _fault_of(question, text):
                text = _ask(question, put, kept)
            question = asking.send(question.settle(text))
    except StopIteration as end:
        draft: Draft = end.value
        return draft, put


def _fault_of(question: "Question[Any]", text: str) -> str:
    """Say what is wrong with an answer; "" where nothing is."""
    from jigs.ground.errors import JigsheetError

    try:
        question.read(question.settle(text))
    except JigsheetError as error:
        return str(error)
    return ""


def _ask(question: "Question[Any]", put: list[str], kept: KeptAnswers) -> str:
    """Put one question until its answer can be read, and keep that."""
    from jigs.ground.errors import Fault, ReadingError
    from templates.words.questionwords import (
        BACK,
        MORE,
        box_lines,
        more_lines,
        prompt_of,
        question_lines,
    )

    for line in question_lines(question, len(put)):
        tell(line)
    for line in box_lines(question.boxes, question.unit):
        tell(line)
    before = kept.taken_back.get(question.key, "")
    if before:
        tell(f"   You had answered: {before}")
        tell(f"   {AGAIN} takes it again; what you type stands in its place.")
    doubted = ""
    while True:
        # The last line alone is the prompt: what edits it takes it for as long as it stands there.
        *lines, prompt = fitted(f"{plain(prompt_of(question))}: ", sys.stderr).splitlines()
        for line in lines:
            tell(line)
        text: str = click.prompt(
            prompt.removesuffix(" ").removesuffix(":"), default="", show_default=False, err=True
        ).strip()
        if text == AGAIN and before:
            text = before
        if text == MORE:
            for line in more_lines(question):
                tell(line)
            continue
        if text == BACK:
            if len(put) < 2:
                tell("   This is the first question.")
                continue
            for key in put[-2:]:
                if key in kept.answers:
                    kept.taken_back[key] = kept.answers.pop(key)
            raise _Back
        text = question.settle(text)
        fault = _fault_of(question, text)
        if not fault and on_terminal() and text != doubted and (doubt := question.doubt(text)):
            tell(f"   {doubt}; type it again if it is so.")
            doubted = text
            continue
        if not fault:
            kept.answers[question.key] = text
            kept.save()
            return text
        if on_terminal():
            tell(f"   {fault}")
            continue
        raise ReadingError([Fault(question.key, fault)])


def on_terminal() -> bool:
    """Tell whether a person answers, who can be asked again."""
    return sys.stdin.isatty()
