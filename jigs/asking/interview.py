"""The interview: which questions make a job, in their order, and what its file will say.

A list comes first, or the boxes one by one, for all that follows hangs on them: no hinge is asked
for where no door hangs. What is not known stays open: its key stands in the file to be filled in.
"""

from collections.abc import Callable, Collection, Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.asking.boxes import ask_boxes, ask_floor, ask_shelves, box_sections
from jigs.asking.draft import RUNNING, BoxDraft, Draft, DraftLine, DraftTable
from jigs.asking.forms import (
    ChoiceForm,
    LengthForm,
    LengthsForm,
    TypedLength,
    as_read,
    figure,
    given,
    write_length,
)
from jigs.asking.hardware import ask_hardware
from jigs.asking.question import Asking, Question, ask, need
from jigs.asking.walls import ask_walls
from jigs.given.job import Material, Reveal
from jigs.ground.believable import Range
from jigs.ground.keys import keys_of
from jigs.ground.lengths import Unit
from jigs.reading.frontlist import FrontList
from jigs.reading.jobdefaults import usual_reveal
from jigs.reading.jobfile import SCHEMA, UNITS

EDGE = "edge"
"""The reveal is a front's edge to its own box's outside edge."""
LIKELY_TOP = Range(2.5, 25)
"""Less than that above a front rubs under a counter, mm (common practice, no source)."""
GAP = "gap"
"""The reveal is the whole gap between two fronts that stand side by side."""


class GivenList(Struct, frozen=True, kw_only=True):
    """A front list that the job is made from."""

    name: str
    """How the job file names it."""
    front_list: FrontList
    """The list, as it was read."""
    table: Callable[[Unit, Collection[str]], str]
    """Gives the `[list]` table that a job in this unit needs, so that the list reads so there, with
    the rows of some boxes turned; "" for none."""


def interview(name: str, listed: GivenList | None = None, *, looked: bool = True) -> Asking[Draft]:
    """Ask all that a job needs; `name` is the job's. `looked`: whether a person sees what was
    worked out."""
    usual: Unit = listed.front_list.unit if listed else "mm"
    said = yield from need(Question(key="units", form=ChoiceForm(UNITS), default=usual))
    unit: Unit = "in" if said == "in" else "mm"
    reveal, reveal_lines = yield from _ask_reveal(unit)
    boxes = yield from ask_boxes(unit, listed.front_list if listed else None, reveal, looked=looked)
    floor = yield from ask_floor(unit, boxes)
    walls, places = yield from ask_walls(unit, boxes, floor)
    shelves = yield from ask_shelves(boxes)
    material, back = yield from _ask_material(unit, boxes)
    hardware = yield from ask_hardware(unit, boxes, back)
    top = [DraftLine("schema", SCHEMA), DraftLine("name", name), DraftLine("units", unit)]
    if listed:
        top.append(DraftLine("fronts_file", listed.name))
    sections = (
        DraftTable(name="", lines=tuple(top)),
        DraftTable(name="material", lines=material),
        DraftTable(name="reveal", lines=reveal_lines),
        *hardware,
        *walls,
        *box_sections(unit, boxes, places, floor, shelves),
    )
    turned = [box.id for box in boxes if box.turned]
    return Draft(sections=sections, listed_by=listed.table(unit, turned) if listed else "")


def reveals(amount: float, meaning: str) -> tuple[float, float]:
    """Give what a reveal makes, by what is meant with it: a front's edge to its own box's outside,
    and the gap between two fronts; mm.

    >>> reveals(1.5, EDGE), reveals(3.0, GAP)
    ((1.5, 3.0), (1.5, 3.0))
    """
    return (amount, 2 * amount) if meaning == EDGE else (amount / 2, amount)


def _ask_reveal(unit: Unit) -> Asking[tuple[Reveal, tuple[DraftLine, ...]]]:
    """Ask what the reveal is, and which of two things is meant with it."""
    keys, reveal = keys_of(Reveal), usual_reveal(unit)
    amount = yield from ask(
        Question(
            key="reveal", form=LengthForm(keys["side"].within, unit), may_open=True,
            figures={"usual": figure(reveal.side, unit)},
        )
    )  # fmt: skip
    if amount:
        side, between = yield from _ask_meaning(unit, amount.mm)
        reveal = replace(reveal, side=side, bottom=side, between=between)
    under, elsewhere = reveal.under_counter or reveal.top, reveal.top
    tops = yield from ask(
        Question(
            key="reveal_top", form=LengthsForm(keys["top"].within, unit, most=2), may_open=True,
            likely=LIKELY_TOP,
            figures={"under": figure(under, unit), "else": figure(elsewhere, unit)},
        )
    )  # fmt: skip
    if tops:
        own = tops[0].mm if len(tops) > 1 else None
        reveal = replace(reveal, top=tops[-1].mm, under_counter=own)
    unsaid = amount is None
    shown = {
        key: as_read(given(getattr(reveal, key), unit), unit, keys[key].within)
        for key in ("side", "bottom", "between")
    }
    lines = (
        DraftLine("side", shown["side"], unsaid, unsaid),
        *_top_lines(tops, elsewhere, under, unit),
        DraftLine("bottom", shown["bottom"], unsaid, unsaid),
        DraftLine("between", shown["between"], unsaid, unsaid),
    )
    return reveal, lines


def _top_lines(
    tops: Sequence[TypedLength] | None, elsewhere: float, under: float, unit: Unit
) -> Iterator[DraftLine]:
    """Say the top reveals: one of every box, or that of boxes under a counter apart (mm where they
    are not said)."""
    yield DraftLine(
        "top", tops[-1].text if tops else write_length(elsewhere, unit), open=tops is None
    )
    if tops is None:
        yield DraftLine("under_counter", write_length(under, unit), open=True)
    elif len(tops) > 1:
        yield DraftLine("under_counter", tops[0].text)


def _ask_meaning(unit: Unit, amount: float) -> Asking[tuple[float, float]]:
    """Ask which of two things a reveal is (mm); give what it makes, as `reveals` does."""
    figures = {"reveal": figure(amount, unit)}
    for meaning in (EDGE, GAP):
        side, between = reveals(amount, meaning)
        figures |= {
            f"{meaning}_side": figure(side, unit),
            f"{meaning}_between": figure(between, unit),
        }
    said = yield from need(
        Question(key="reveal_is", form=ChoiceForm((EDGE, GAP)), default=EDGE, figures=figures)
    )
    return reveals(amount, said)


BOARDS = ("side", "front", "front_kind", "back", "band", "drawer_side")
"""What is asked of the boards: what a caliper says, and what the fronts are of."""


def _ask_material(
    unit: Unit, boxes: Sequence[BoxDraft]
) -> Asking[tuple[tuple[DraftLine, ...], float]]:
    """Ask how thick the boards are. Gives also the back's thickness, mm."""
    back = Material().back
    lines: list[DraftLine] = []
    keys = keys_of(Material)
    for name in BOARDS:
        if name == "drawer_side" and not any(box.holds(*RUNNING) for box in boxes):
            continue
        key = keys[name]
        if key.holds == "choice":
            word = yield from ask(
                Question(key=f"material.{name}", form=ChoiceForm(key.allowed), may_open=True,
                         figures={"usual": str(key.default)})
            )  # fmt: skip
            lines.append(_line(name, word, str(key.default)))
            continue
        assert isinstance(key.default, float)
        usual = given(key.default, "mm").text
        length = yield from ask(
            Question(key=f"material.{name}", form=LengthForm(key.within, unit), may_open=True,
                     figures={"usual": usual})
        )  # fmt: skip
        lines.append(_line(name, length.text if length else None, usual))
        if name == "back" and length:
            back = length.mm
    return tuple(lines), back


def _line(key: str, answer: str | None, usual: str) -> DraftLine:
    return DraftLine(
        key, usual if answer is None else answer, open=answer is None, wanted=answer is None
    )
