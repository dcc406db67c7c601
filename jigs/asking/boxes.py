"""The boxes: worked out from a list and looked at, or asked one by one; how deep they are, how high
they stand, what shelves are in them."""

import re
from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from jigs.asking.draft import BoxDraft, BoxPlace, DraftLine, DraftTable, FrontDraft
from jigs.asking.forms import CountForm, LengthForm, TypedLength, as_read, figure, given
from jigs.asking.notation import BoxForm, Fix, FixesForm
from jigs.asking.question import Asking, Question, ask
from jigs.given.job import BoxKind, BoxSpec, Reveal
from jigs.ground.believable import Range
from jigs.ground.lengths import Unit
from jigs.reading.fieldkeys import BOXES
from jigs.reading.frontlist import FrontList
from jigs.reading.jobboxes import ABOVE_FLOOR, ASSUMED_DEPTH
from jigs.reading.jobinside import MOST_SHELVES
from jigs.reading.listedboxes import infer_boxes

STANDING: BoxKind = "base"
HANGING: BoxKind = "wall"
ROWS = {"": STANDING, "wall_": HANGING}
"""Boxes on the floor, and those that hang, by how the keys of their questions begin."""
LIKELY: Mapping[str, Range] = {
    "": Range(30, 300, zero=True),
    "wall_": Range(900, 2200),
}
"""How high the boxes of a row stand, mm (common practice, no source)."""
SHELVED: tuple[BoxKind, ...] = ("wall", "tall", "base")
"""Boxes that are asked for shelves, where doors hang before them."""

Floor = Mapping[str, TypedLength | None]
"""How high the boxes of each row stand above the floor; None where it is not known."""


def ask_boxes(
    unit: Unit, front_list: FrontList | None, reveal: Reveal, *, looked: bool
) -> Asking[tuple[BoxDraft, ...]]:
    """Ask for the boxes: those of a list are looked at, if anybody looks, else they are asked one
    by one."""
    if front_list is None:
        boxes = yield from _ask_each(unit)
    else:
        said = {row.box for row in front_list.rows if row.box_kind}
        specs = [
            _as_named(spec, reveal) if spec.id not in said else spec
            for spec in infer_boxes(front_list, reveal)
        ]
        drafted = tuple(_listed(spec, unit, unseen=not looked) for spec in specs)
        boxes = yield from _look_at(unit, drafted, specs, reveal)
    return (yield from _settle_depths(unit, boxes, {}))


_HANGS = re.compile(r"W[- ]?\d.*|WALL.*")
"""What a box that hangs on a wall is often called: W1, WALL-2."""


def _as_named(spec: BoxSpec, reveal: Reveal) -> BoxSpec:
    """Give a box that was taken for a base box by its fronts, as a wall box where its ID says so
    and doors alone hang before it: most kitchens name them so (common practice, no source)."""
    doors = all(front.kind in ("door", "pair", "lift") for front in spec.fronts)
    if spec.kind != STANDING or not doors or not _HANGS.fullmatch(spec.id):
        return spec
    stack = spec.height - reveal.top_of(spec.kind)
    return replace(spec, kind=HANGING, height=stack + reveal.top_of(HANGING))


Depths = dict[str, TypedLength | None]
"""How deep the boxes of each row are that do not say it; None where it is not known."""


def _settle_depths(
    unit: Unit, boxes: tuple[BoxDraft, ...], depths: Depths
) -> Asking[tuple[BoxDraft, ...]]:
    """Ask how deep the boxes of a row are that do not say; once a row, kept in `depths`."""
    for row, kind in ROWS.items():
        if row in depths or all(box.depth or _row(box) != row for box in boxes):
            continue
        depths[row] = yield from ask(
            Question(
                key=f"{row}depth", form=LengthForm(BOXES[kind].depth, unit), may_open=True,
                figures={"usual": figure(ASSUMED_DEPTH[kind], unit)},
            )
        )  # fmt: skip
    return tuple(box if box.depth else _as_deep(box, depths[_row(box)], unit) for box in boxes)


def _as_deep(box: BoxDraft, depth: TypedLength | None, unit: Unit) -> BoxDraft:
    """Give a box with the depth of its row, as usual where nobody knows it."""
    usual = given(ASSUMED_DEPTH[box.kind], unit)
    return replace(box, depth=depth or usual, usual_depth=depth is None)


def _row(box: BoxDraft) -> str:
    return "wall_" if box.hung else ""


def _listed(spec: BoxSpec, unit: Unit, *, unseen: bool) -> BoxDraft:
    fronts = tuple(
        FrontDraft(
            kind=front.kind,
            height=None if front.height is None else given(front.height, unit),
            hinged=front.hinged,
            pull=front.opened_by.pull or "",
        )
        for front in spec.fronts
    )
    return BoxDraft(
        id=spec.id, kind=spec.kind, width=given(spec.width, unit),
        height=given(spec.height, unit), fronts=fronts, listed=True, unseen=unseen,
    )  # fmt: skip


def _look_at(
    unit: Unit,
    boxes: tuple[BoxDraft, ...],
    specs: Sequence[BoxSpec],
    reveal: Reveal,
) -> Asking[tuple[BoxDraft, ...]]:
    """Show the boxes that were worked out until nothing is otherwise."""
    stacks = {spec.id: spec.height - reveal.top_of(spec.kind) for spec in specs}
    known = [box.id for box in boxes]
    depths: Depths = {}
    sized: set[str] = set()
    number = 1
    while True:
        boxes = yield from _settle_depths(unit, boxes, depths)
        fixes = yield from ask(
            Question(
                key=f"boxes.{number}", topic="boxes", form=FixesForm(unit, known), may_open=True,
                boxes=boxes, unit=unit,
            )
        )  # fmt: skip
        if not fixes:
            return boxes
        for fix in fixes:
            sized |= {fix.id} if fix.sizes else set()
            boxes = tuple(
                _fixed(box, fix, stacks, None if box.id in sized else reveal, unit)
                if box.id == fix.id
                else box
                for box in boxes
            )
        number += 1


def _fixed(
    box: BoxDraft,
    fix: Fix,
    stacks: Mapping[str, float],
    reveal: Reveal | None,
    unit: Unit,
) -> BoxDraft:
    """Give a box with what is otherwise of it; `reveal` where its height is worked out still."""
    if fix.kind:
        box = replace(box, unseen=False)
    if fix.kind and fix.kind != box.kind:
        hung = box.hung
        box = replace(box, kind=fix.kind)
        if box.hung != hung:  # it is as deep as those of its row
            box = replace(box, depth=None)
        if reveal:
            box = replace(box, height=given(stacks[box.id] + reveal.top_of(fix.kind), unit))
    if fix.turned:
        box = replace(box, fronts=box.fronts[::-1], turned=not box.turned)
    if fix.sizes:
        box = replace(box, width=fix.sizes[0], height=fix.sizes[1])
    if len(fix.sizes) > 2:
        box = replace(box, depth=fix.sizes[2], usual_depth=False)
    return box


def _ask_each(unit: Unit) -> Asking[tuple[BoxDraft, ...]]:
    """Ask for one box after the other, until there is none any more."""
    boxes: list[BoxDraft] = []
    while True:
        taken = frozenset(box.id for box in boxes)
        box = yield from ask(
            Question(
                key=f"box.{len(boxes) + 1}", topic="box", form=BoxForm(unit, taken),
                default="-" if boxes else "", may_open=bool(boxes), boxes=tuple(boxes[-1:]),
                unit=unit,
            )
        )  # fmt: skip
        if box is None:
            return tuple(boxes)
        boxes.append(box)


def ask_floor(unit: Unit, boxes: Sequence[BoxDraft]) -> Asking[Floor]:
    """Ask how high the boxes of each row stand above the floor."""
    floor: dict[str, TypedLength | None] = {}
    for row, kind in ROWS.items():
        if not any(_row(box) == row for box in boxes):
            continue
        floor[row] = yield from ask(
            Question(
                key=f"{row}above_floor", form=LengthForm(BOXES[kind].above_floor, unit),
                likely=LIKELY[row], may_open=True,
                figures={"usual": figure(ABOVE_FLOOR[kind], unit)},
            )
        )  # fmt: skip
    return floor


def ask_shelves(boxes: Sequence[BoxDraft]) -> Asking[Mapping[BoxKind, int | None]]:
    """Ask how many adjustable shelves are in the boxes of each kind behind doors."""
    counts: dict[BoxKind, int | None] = {}
    for kind in SHELVED:
        named = [box.id for box in boxes if box.kind == kind and _is_shelved(box)]
        if named:
            counts[kind] = yield from ask(
                Question(
                    key=f"shelves.{kind}", topic="shelves", form=CountForm(MOST_SHELVES),
                    may_open=True, figures={"kind": kind, "boxes": ", ".join(named)},
                )
            )  # fmt: skip
    return counts


def _is_shelved(box: BoxDraft) -> bool:
    return box.kind in SHELVED and box.holds("door", "pair", "lift")


def box_sections(
    unit: Unit,
    boxes: Sequence[BoxDraft],
    places: Mapping[str, BoxPlace],
    floor: Floor,
    shelves: Mapping[BoxKind, int | None],
) -> tuple[DraftTable, ...]:
    """Give the tables of the boxes, along their walls."""
    by_id = {box.id: box for box in boxes}
    ordered = [by_id[name] for name in places] if places else list(boxes)
    sections: list[DraftTable] = []
    for box in ordered:
        sections += _sections(unit, box, places.get(box.id), floor.get(_row(box)), shelves)
    return tuple(sections)


def _sections(
    unit: Unit,
    box: BoxDraft,
    place: BoxPlace | None,
    above: TypedLength | None,
    shelves: Mapping[BoxKind, int | None],
) -> list[DraftTable]:
    assert box.depth is not None, "it was settled with the boxes"
    sizes = BOXES[box.kind]
    lines = [DraftLine("id", box.id)]
    if place:
        lines.append(DraftLine("wall", place.wall))
    lines += [
        DraftLine("kind", box.kind, wanted=box.unseen, topic="unseen_kind" if box.unseen else ""),
        DraftLine("width", as_read(box.width, unit, sizes.width)),
        DraftLine("height", as_read(box.height, unit, sizes.height)),
        DraftLine("depth", as_read(box.depth, unit, sizes.depth), wanted=box.usual_depth,
             topic="usual_depth" if box.usual_depth else ""),
        DraftLine("above_floor", as_read(above, unit, sizes.above_floor)) if above
        else DraftLine("above_floor", given(ABOVE_FLOOR[box.kind], "mm").text, open=True),
    ]  # fmt: skip
    if place and place.x:
        lines.append(DraftLine("x", place.x))
    count = shelves.get(box.kind) if _is_shelved(box) else None
    if count == 0:
        lines.append(DraftLine("shelf", ()))
    sections = [DraftTable(name="box", many=True, lines=tuple(lines))]
    if not box.listed:
        sections += [_front(front) for front in box.fronts]
    if count:
        made = (DraftLine("adjustable", True), DraftLine("count", count))
        sections.append(DraftTable(name="box.shelf", many=True, lines=made))
    return sections


def _front(front: FrontDraft) -> DraftTable:
    lines = [DraftLine("kind", front.kind)]
    if front.height:
        lines.append(DraftLine("height", front.height.text))
    if front.hinged:
        lines.append(DraftLine("hinged", front.hinged))
    elif front.kind == "door":
        lines.append(DraftLine("hinged", "left", open=True))
    if front.count > 1:
        lines.append(DraftLine("count", front.count))
    return DraftTable(name="box.front", many=True, lines=tuple(lines))
