"""Interviews that are made up: each question is answered as its form allows, and what was meant
stands beside it."""

from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

from jigs.asking.draft import Draft
from jigs.asking.forms import (
    CellForm,
    ChoiceForm,
    CountForm,
    LengthForm,
    LengthsForm,
    NameForm,
    WordOrLength,
)
from jigs.asking.notation import BoxForm, FixesForm, WallsForm
from jigs.asking.question import OPEN, Asking, Question
from jigs.given.job import BOX_KINDS

Draw = Callable[[st.SearchStrategy[Any]], Any]
WALL_NAMES = ("north", "Küche Ost", "βορράς", 'the "long" one')
FRONTS = (
    "", "door left", "door right", "pair", "3 drawer", "drawer 140 mm, drawer",
    "drawer 140 mm, door left", "false-front 150 mm, pair", "pullout", "drawer 5 1/2 in; door R",
)  # fmt: skip


def hold(asking: Asking[Draft], answer: Callable[[Question[Any]], str]) -> Draft:
    """Go through an interview to its end."""
    try:
        question = next(asking)
        while True:
            question = asking.send(question.settle(answer(question)))
    except StopIteration as end:
        made: Draft = end.value
        return made


def length_in(draw: Draw, form: LengthForm, *, least: float = 0.0) -> str:
    """Write a length that is usual there, in mm, cm or inches."""
    low = max(form.within.low, least, form.within.least or 0.5)
    high = form.within.high if form.below is None else min(form.within.high, form.below - 1)
    mm = draw(st.integers(int(low * 10) + 1, int(high * 10) - 1)) / 10
    return str(draw(st.sampled_from([f"{mm:g} mm", f"{mm / 10:.2f} cm", f"{mm / 25.4:.4f} in"])))


def answer(draw: Draw, question: Question[Any]) -> str:
    """Make up an answer to a question."""
    if question.may_open and draw(st.integers(0, 4)) == 0:
        return OPEN
    match question.form:
        case LengthForm() as form:
            return length_in(draw, form)
        case ChoiceForm(words) | NameForm(words):
            return str(draw(st.sampled_from(words)))
        case CountForm():
            return str(draw(st.integers(0, 3)))
        case LengthsForm(within, unit, up_to, most):
            form = LengthForm(within, unit, below=up_to)
            texts = [length_in(draw, form) for _ in range(draw(st.integers(1, most or 3)))]
            by_size = {round(form.read(text).mm, 1): text for text in texts}
            return "; ".join(by_size[mm] for mm in sorted(by_size))
        case CellForm(constant, tab, plate, overlay):
            if draw(st.booleans()):
                return length_in(draw, constant, least=1)
            return "; ".join(length_in(draw, form, least=1) for form in (tab, plate, overlay))
        case WordOrLength(words, length):
            return str(draw(st.sampled_from([*words, length_in(draw, length)])))
        case BoxForm():
            return _box(draw, question)
        case FixesForm(_, known):
            if question.key != "boxes.1":
                return OPEN
            return f"{draw(st.sampled_from(known))} {draw(st.sampled_from(BOX_KINDS))}"
        case WallsForm(_, known):
            return _walls(draw, list(known))
    raise AssertionError(question)


def _box(draw: Draw, question: Question[Any]) -> str:
    number = int(question.key.partition(".")[2])
    if number > draw(st.integers(1, 4)):
        return OPEN
    kind = draw(st.sampled_from(BOX_KINDS))
    width, height = (draw(st.integers(low, high)) for low, high in ((300, 900), (650, 1100)))
    depth = draw(st.sampled_from(["", " x 560 mm", " x 23 in"]))
    return f"x{number} {kind} {width} mm x {height}mm{depth}: {draw(st.sampled_from(FRONTS))}"


def _walls(draw: Draw, known: list[str]) -> str:
    walls = []
    names = list(WALL_NAMES)
    while known:
        count = draw(st.integers(1, len(known)))
        here, known = known[:count], known[count:]
        if draw(st.booleans()):
            here.insert(draw(st.integers(0, count)), f"r{len(known)}=600mmx900mm")
        walls.append(f"{names.pop(0)}: {' '.join(here)}")
    return "; ".join(walls)
