"""What an interview says: each question with why it matters, the boxes that it shows, how it ends.

The sentences are data, in `questions.toml`, by the key of their question.
"""

import tomllib
from collections.abc import Collection, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any

from jigs.asking.draft import BoxDraft, Draft, FrontDraft
from jigs.asking.forms import size_words
from jigs.asking.question import OPEN, Question
from jigs.ground.lengths import Unit
from templates.words.textlines import counted, wrapped

BACK = "back"
MORE = "?"


@cache
def sentences() -> Mapping[str, Mapping[str, str]]:
    """Give what is said of each question."""
    text = Path(__file__).with_name("questions.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def question_lines(question: Question[Any], number: int) -> list[str]:
    """Write a question with why it matters, and what Enter stands for."""
    said = sentences()[question.words]
    lines = ["", *wrapped(f"{number}. {said['ask'].format(**question.figures)}", "", "   ")]
    lines += wrapped(said["why"].format(**question.figures), "   ", "   ")
    return lines


def prompt_of(question: Question[Any]) -> str:
    """Write what stands before the answer: what Enter says."""
    if question.default == "":
        return "   "
    if question.default != OPEN:
        return f"   [{question.default}]"
    said = sentences()[question.words]
    return f"   [Enter: {said['open'].format(**question.figures)}]"


def more_lines(question: Question[Any]) -> list[str]:
    """Write what "?" shows."""
    said = sentences()[question.words]
    lines = wrapped(f"Allowed: {question.form.allowed}.", "   ", "   ")
    if "more" in said:
        lines = wrapped(said["more"].format(**question.figures), "   ", "   ") + lines
    if question.may_open:
        lines += wrapped(
            f"{OPEN} where you do not know it: {said['open'].format(**question.figures)}.",
            "   ",
            "   ",
        )
    return [*lines, f"   {BACK}: to the question before."]


def box_lines(boxes: Sequence[BoxDraft], unit: Unit) -> list[str]:
    """Write boxes as they are understood, one a line."""
    wide = max((len(box.id) for box in boxes), default=0)
    return [f"   {box.id:<{wide}}  {box_words(box, unit)}" for box in boxes]


def box_words(box: BoxDraft, unit: Unit) -> str:
    """Say what a box is: kind, width x height x depth, what stands in it.

    >>> from jigs.asking.forms import given
    >>> front = FrontDraft(kind="door", hinged="left")
    >>> box = BoxDraft(id="B1", kind="base", width=given(457.2, "in"), height=given(774.7, "in"),
    ...                depth=given(584.2, "in"), fronts=(FrontDraft(kind="drawer"), front))
    >>> box_words(box, "in")
    'base    18 x 30 1/2 x 23 in; from the top: drawer, door left'
    """
    sizes = [box.width.mm, box.height.mm, *([box.depth.mm] if box.depth else [])]
    fronts = ", ".join(_front_words(front) for front in box.fronts)
    many = len(box.fronts) > 1 or any(front.count > 1 for front in box.fronts)
    top = "from the top: " if many else ""
    return f"{box.kind:<6}  {size_words(sizes, unit)}; {top}{fronts or 'no front'}"


def _front_words(front: FrontDraft) -> str:
    many = f"{front.count} " if front.count > 1 else ""
    hand = front.hinged or ("HAND NOT SAID" if front.kind == "door" else "")
    height = front.height.text if front.height else ""
    return " ".join(filter(None, (f"{many}{front.kind}", hand, height)))


def asked_lines(question: Question[Any], option: str, answer: str) -> list[str]:
    """Write a question with the option that answers it, what is allowed, and what holds where
    nobody says it, or what was answered (`answer`)."""
    said = sentences()[question.words]
    if answer:
        unsaid = f"Answered: {answer}"
    elif question.may_open and "open" in said:
        unsaid = f"Not said: {said['open'].format(**question.figures)}"
    elif question.unsaid:
        unsaid = f"Not said: {question.unsaid}"
    else:
        unsaid = "An answer is needed"
    return [
        *wrapped(f"{option}  {said['ask'].format(**question.figures)}", "", "    "),
        *wrapped(f"Allowed: {question.form.allowed}. {unsaid}.", "    ", "    "),
    ]


def asked_end_lines(*, whole: bool) -> list[str]:
    """Say what the list of questions leaves out."""
    if whole:
        more = (
            "Some answers bring questions of their own (a wall, how a slide is mounted): give "
            "them, and ask for the list again."
        )
        return ["", *wrapped(more, "", "")]
    return ["", "What follows hangs on the last of them: answer it, and ask for the list again."]


def written_lines(path: str, answers: int, check: str, pack: str) -> list[str]:
    """Say what was written and what comes next: the lines that check and pack it."""
    by = f", by {counted(answers, 'answer')}" if answers else ""
    return [
        f"{path} is written{by}; each key says what it is.",
        f"Next: {check}",
        f"then: {pack}",
    ]


def reveal_lines(draft: Draft, said: Collection[str]) -> list[str]:
    """Say what is taken of the reveals where nobody said it: which of two things one is, and that
    at the top; `said`: the keys of the answers that were given."""
    lines: list[str] = []
    table = next((each for each in draft.sections if each.name == "reveal"), None)
    values = {line.key: line for line in table.lines} if table else {}
    if "reveal" in said and "reveal_is" not in said:
        side, between = values["side"].value, values["between"].value
        lines += wrapped(
            f"Reveal {side}: taken from a front's edge to its own box's edge, so that two fronts "
            f"stand {between} apart. If it is the whole gap between two: --reveal-is gap.",
            "", "  ",
        )  # fmt: skip
    if "top" in values and values["top"].open:
        under, top = values["under_counter"].value, values["top"].value
        lines += wrapped(
            f"Reveal at the top not said: {under} is taken under a counter (base, drawer and sink "
            f"boxes), {top} elsewhere. --reveal-top, or top and under_counter in [reveal], says "
            "otherwise.",
            "", "  ",
        )  # fmt: skip
    return lines


def open_lines(draft: Draft) -> list[str]:
    """Say what somebody has to look up or measure still; nothing where all is known."""
    tables: dict[str, list[str]] = {}
    for key in draft.still_open:
        table, _, name = key.rpartition(".")
        tables.setdefault(table, []).append(name)
    if not tables:
        return []
    shown = "; ".join(
        f"[{table}] {', '.join(dict.fromkeys(names))}" for table, names in tables.items()
    )
    return wrapped(f"Still open: {shown}. Write each there, without a #.", "", "  ")
