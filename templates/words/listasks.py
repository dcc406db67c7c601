"""What is said where a list is asked one thing at a time.

>>> from jigs.ground.errors import AskedBack
>>> asked = AskedBack("Which column is the width?", (("C 'Br'", "width=C"), ("D 'Ho'", "width=D")))
>>> list_question_lines(asked, 1, 2)[1:]
['1. The list: Which column is the width? (2 questions are left)', "   1  C 'Br'", "   2  D 'Ho'"]
"""

from collections.abc import Sequence

from jigs.ground.errors import AskedBack, Fault
from templates.words.textlines import wrapped

NO_ANSWER = "   back, to answer otherwise, or what --columns takes"
ALLOWED_LINES = (
    "   An answer is needed: the number of one of them. ? says more; the list is read when all is "
    "answered.",
)


def list_question_lines(asked: AskedBack, number: int, left: int) -> list[str]:
    """Write a question with its answers, numbered."""
    more = f" ({left} questions are left)" if left > 1 else ""
    lines = ["", *wrapped(f"{number}. The list: {asked.words}{more}", "", "   ")]
    for place, (words, _) in enumerate(asked.choices, start=1):
        lines += wrapped(f"{place}  {words}", "   ", "      ")
    return lines


def more_lines(fault: Fault | None) -> list[str]:
    """Write what "?" shows: where it is, and how a line says it that nobody sits before."""
    if fault is None or fault.asked is None:
        return list(ALLOWED_LINES)
    lines = wrapped(f"{fault.where}: {fault.what}.", "   ", "   ")
    return [*lines, "   back: to the question before."]


def fault_lines(faults: Sequence[Fault]) -> list[str]:
    """Write the faults that no answer mends."""
    return [
        "",
        *(line for fault in faults for line in wrapped(str(fault), "", "   ")),
        "   No answer mends that: mend the list, or answer otherwise.",
    ]


def next_time_line(columns: str) -> str:
    """Say how the list is read without a question."""
    quote = "'" if "'" not in columns else '"'
    return f"The list is read so; next time: --columns {quote}{columns}{quote}"
