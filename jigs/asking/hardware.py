"""The hardware: what a leaflet or a caliper says of hinges and slides, and what nobody knows yet.
Which numbers differ from make to make stands beside the keys (`jigs.given.hardware`)."""

from collections.abc import Iterable, Mapping, Sequence

from jigs.asking.draft import HUNG, RUNNING, BoxDraft, DraftLine, DraftTable, DraftValue
from jigs.asking.forms import (
    CellForm,
    ChoiceForm,
    Form,
    LengthForm,
    LengthsForm,
    TypedLength,
    given,
)
from jigs.asking.pulls import MINE, ask_pulls
from jigs.asking.question import Asking, Question, ask, need
from jigs.given.catalogue import (
    DEFAULT_HINGES,
    SIDE_SERIES,
    SLIDE_SERIES,
    generic_hinges,
    generic_slides,
)
from jigs.given.confirming import Record
from jigs.given.hardware import (
    HINGE_RESTS,
    HOOK_KEYS,
    SIDE_ALONE,
    SLIDE_RESTS,
    UNDER_ALONE,
    HingeRecord,
    SlideRecord,
)
from jigs.ground.believable import PLATE, TAB
from jigs.ground.keys import FieldKey, keys_of
from jigs.ground.lengths import Unit
from jigs.reading.fieldkeys import CONFIRMED
from jigs.reading.jobdefaults import longest_fitting
from jigs.reading.jobhardware import OVERLAY

OPTIONAL = frozenset({"carry_at"})
"""Numbers that not every make has."""


def ask_hardware(
    unit: Unit, boxes: Sequence[BoxDraft], back: float
) -> Asking[tuple[DraftTable, ...]]:
    """Ask for the hardware that the boxes' fronts need; `back` is the back's thickness, mm."""
    use: list[DraftLine] = []
    sections: list[DraftTable] = []
    if any(box.holds(*HUNG) for box in boxes):
        sections.append((yield from _ask_hinge(unit)))
        use.append(DraftLine("hinge", MINE))
    running = [box for box in boxes if box.holds(*RUNNING)]
    if running:
        slide = yield from _ask_slide(unit, running, back)
        sections.append(slide)
        use.append(DraftLine("slide", MINE, open=slide.open))
    pulls, pull_use = yield from ask_pulls(unit, boxes)
    use += pull_use
    tables = (*sections, *pulls)
    return (DraftTable(name="use", lines=tuple(use)), *tables) if use else tables


def _ask_hinge(unit: Unit) -> Asking[DraftTable]:
    name = DEFAULT_HINGES["full"]
    record, keys = generic_hinges()[name], keys_of(HingeRecord)
    cell = CellForm(
        LengthForm(keys["constant"].within, unit), LengthForm(TAB, unit), LengthForm(PLATE, unit),
        LengthForm(OVERLAY, unit),
    )  # fmt: skip
    lines = yield from _ask_record("hinge", unit, record, HINGE_RESTS, {"constant": cell})
    return DraftTable(name="hinge", own=MINE, lines=(DraftLine("like", name), *lines))


def _ask_slide(unit: Unit, boxes: Sequence[BoxDraft], back: float) -> Asking[DraftTable]:
    keys = keys_of(SlideRecord)
    mount = yield from need(
        Question(key="slide.mount", form=ChoiceForm(keys["mount"].allowed), default="under")
    )
    depths = [box.depth.mm for box in boxes if box.depth]
    series = SLIDE_SERIES[unit] if mount == "under" else SIDE_SERIES[unit]
    depth = max(depths, key=lambda mm: (depths.count(mm), mm))
    name = longest_fitting(series, depth, back)
    alien = SIDE_ALONE if mount == "under" else UNDER_ALONE
    wanted = ["length", *(key for key in SLIDE_RESTS if key not in alien and key not in HOOK_KEYS)]
    lines = yield from _ask_record("slide", unit, generic_slides()[name], wanted, {})
    unknown = mount == "under" and all(line.open for line in lines)
    return DraftTable(name="slide", own=MINE, lines=(DraftLine("like", name), *lines), open=unknown)


def _ask_record(
    kind: str,
    unit: Unit,
    record: Record,
    names: Iterable[str],
    forms: dict[str, CellForm],
) -> Asking[list[DraftLine]]:
    """Ask where the numbers of a record are from, and then for each; else all stay open."""
    values: type = type(record)
    fields, length = keys_of(values), _length(record)
    confirmed = yield from ask(
        Question(key=f"{kind}.confirmed", form=ChoiceForm(CONFIRMED), may_open=True)
    )
    lines: list[DraftLine] = []
    for name in names:
        usual = _usual(record, name)
        if confirmed is None:
            lines.append(DraftLine(name, usual, open=True, wanted=name not in OPTIONAL))
            continue
        form = forms.get(name) or _form(fields[name], unit, length)
        answer = yield from ask(
            Question(
                key=f"{kind}.{name}", form=form, may_open=True, figures={"usual": _shown(usual)}
            )
        )
        lines.append(_number(name, answer, usual))
        if name == "length" and isinstance(answer, TypedLength):
            length = answer.mm
    lines.append(DraftLine("confirmed", confirmed or CONFIRMED[0], open=confirmed is None))
    return lines


def _length(record: Record) -> float | None:
    return record.length if isinstance(record, SlideRecord) else None


def _form(
    field: FieldKey, unit: Unit, length: float | None
) -> Form[TypedLength | tuple[TypedLength, ...]]:
    """Give the form of a number; none of a slide of this length, mm, lies beyond it."""
    if field.holds == "lengths":
        return LengthsForm(field.within, unit, up_to=length)
    return LengthForm(field.within, unit)


def _number(name: str, answer: object, usual: DraftValue) -> DraftLine:
    match answer:
        case None:
            return DraftLine(name, usual, open=True, wanted=name not in OPTIONAL)
        case TypedLength():
            return DraftLine(name, answer.text)
        case (TypedLength() as tab, TypedLength() as plate, TypedLength() as overlay) if (
            name == "constant"
        ):
            cell = {"tab": tab.text, "plate": plate.text, "overlay": overlay.text}
            return DraftLine("overlay_at", cell)
        case tuple():
            return DraftLine(name, tuple(each.text for each in answer))
    raise AssertionError(f"no form gives {answer!r}")


EXAMPLES: Mapping[str, DraftValue] = {"plates": ("0 mm", "3 mm"), "carry_at": ("165 mm",)}
"""What stands in the place of numbers that no generic record has."""


def _usual(record: Record, name: str) -> DraftValue:
    value = getattr(record, name)
    if isinstance(value, tuple):
        return tuple(given(each, "mm").text for each in value) or EXAMPLES[name]
    return given(value, "mm").text


def _shown(value: DraftValue) -> str:
    return "; ".join(value) if isinstance(value, tuple) else str(value)
