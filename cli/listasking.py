"""Asking what a front list does not say: one question at a time in plain words, each answer settled
into what `--columns` takes. An answer after which the list has the same question still is not
kept."""

from typing import TYPE_CHECKING

import click

from cli import asking
from cli.asking import KeptAnswers
from cli.terminal import plain, tell

if TYPE_CHECKING:
    from jigs.ground.errors import Fault, ReadingError

OWN_BOX = "empty_box=own"
"""What a list that stands alone may answer, and none that a job names."""


class ListTalk:
    """The questions of one list: what was answered, so that `back` can take it away again."""

    def __init__(self, kept: KeptAnswers, *, usual: bool = False) -> None:
        """`usual`: nothing is asked."""
        self._kept = kept
        self._usual = usual
        self._before: list[str] = []
        self._told = ""
        self._last = ""

    def ask(self, error: "ReadingError") -> None:
        """Ask the first thing that the list asks, and keep the answer: out of a file or a pipe the
        next line of it. Raises the error again where nobody can be asked, where no line is left,
        or where no answer mends the list: each of its faults says which option answers it."""
        from jigs.ground.errors import ReadingError
        from templates.words.listasks import fault_lines, list_question_lines

        asked = [one for fault in error.faults if (one := _answerable(fault)).asked]
        if self._usual or not (asked or (self._before and asking.on_terminal())):
            raise error
        lines = f"{error.told}\n".splitlines()
        if not self._told and any(lines):
            tell("\n".join(lines))
            self._told = error.told
        if not asked:
            for line in fault_lines(error.faults):
                tell(line)
            if not self._kept.columns:
                raise error
            self._choose(None)
            return
        lasting = self._lasting(asked)
        if lasting:
            tell("   The list asks that still: the answer is not kept.")
            if not asking.on_terminal():
                raise error
        fault = asked[0]
        assert fault.asked is not None
        for line in list_question_lines(fault.asked, len(self._before) + 1, len(asked)):
            tell(line)
        try:
            self._choose(fault)
        except click.Abort:
            if asking.on_terminal():
                raise
            # What was understood is told.
            raise ReadingError(error.faults, ahead=error.ahead) from None

    def untold(self, told: str) -> str:
        """Give the lines of what was taken for what that were not told before the questions."""
        before = set(self._told.splitlines())
        return "\n".join(line for line in told.splitlines() if line not in before)

    def _lasting(self, asked: "list[Fault]") -> bool:
        """Take the last answer away where the question that it answered stands as before."""
        if not self._last or not self._before or all(one.what != self._last for one in asked):
            return False
        self._kept.columns = self._before.pop()
        self._kept.save()
        self._last = ""
        return True

    def _choose(self, fault: "Fault | None") -> None:
        from jigs.ground.errors import JigsheetError
        from templates.words.listasks import ALLOWED_LINES, NO_ANSWER, more_lines

        choices = fault.asked.choices if fault and fault.asked else ()
        while True:
            text: str = click.prompt(
                plain(NO_ANSWER if not choices else "   Number"), default="", show_default=False,
                err=True,
            ).strip()  # fmt: skip
            if text.lower() == "back":
                if not self._before:
                    tell("   This is the first question.")
                    continue
                self._kept.columns, self._last = self._before.pop(), ""
                self._kept.save()
                return
            if text in ("?", "-", ""):
                for line in more_lines(fault) if text == "?" else ALLOWED_LINES:
                    tell(line)
                continue
            said = _chosen(text, choices)
            if not said and "=" not in text:
                self._refuse(
                    fault, f"Not one of them ('{text[:40]}' given); 1 to {len(choices)} is allowed"
                )
                continue
            try:
                joined = join_columns(self._kept.columns, said or text)
            except JigsheetError as wrong:
                self._refuse(fault, str(wrong))
                continue
            self._before.append(self._kept.columns)
            self._last = fault.what if fault else ""
            self._kept.columns = joined
            self._kept.save()
            return

    def _refuse(self, fault: "Fault | None", what: str) -> None:
        """Tell what is wrong with an answer. Raises ReadingError out of a file or a pipe, which
        nobody can be asked again."""
        from jigs.ground.errors import refusal

        if asking.on_terminal() or fault is None or fault.asked is None:
            tell(f"   {what}.")
            return
        raise refusal(fault.where, f"{fault.asked.words} {what}")

    @property
    def asked(self) -> bool:
        """Whether anything was answered."""
        return bool(self._before)


def _answerable(fault: "Fault") -> "Fault":
    """Give a fault with the answers that a job can take: its fronts hang on boxes with a name."""
    if fault.asked is None:
        return fault
    choices = tuple(choice for choice in fault.asked.choices if choice[1] != OWN_BOX)
    return fault._replace(asked=fault.asked._replace(choices=choices))


def _chosen(text: str, choices: "tuple[tuple[str, str], ...]") -> str:
    """Give the choice that a number or its first letters name, "" for none."""
    if text.isascii() and text.isdigit():
        return choices[int(text) - 1][1] if 1 <= int(text) <= len(choices) else ""
    low = text.lower()
    begun = [said for words, said in choices if words.lower().startswith(low)]
    return begun[0] if len(begun) == 1 else ""


def join_columns(before: str, more: str) -> str:
    """Add what is said of a list to what was said; the later of two that say otherwise holds.
    Raises JigsheetError."""
    from jigs.reading.listgiven import join_specs, parse_columns, write_columns

    return write_columns(join_specs(parse_columns(before), parse_columns(more)))
