"""Every hole of a job as a list: for people, for a spreadsheet, and as data.

All three list the same holes in the axes of their parts (a front and a drawer box as seen from the
room, a box side back from its finished front edge): fronts, then sides, then drawer boxes, in the
job's order. A part that is held back is named and has no holes.
"""

import json
from collections.abc import Collection, Iterable, Iterator, Sequence
from typing import Any

from jigs.bench.marking import marked_holes
from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.fittings.hinge import HingeChoice
from jigs.fittings.kinds import kind_of
from jigs.given.confirming import OpenNumber, rests_on
from jigs.ground.geometry import Fitting, Hole, collect_holes, other_hand
from jigs.ground.lengths import Unit, format_inches, format_mm, format_sizes, in_both
from templates.lists.cells import csv_text, in_mm, number
from templates.words.findings import held_words, problems_data
from templates.words.holewords import LIST_LEGEND
from templates.words.openwords import STAMP, open_cell, open_data, open_words
from templates.words.textlines import columned
from templates.words.wording import FRONT_WORDS, side_words

COLUMNS = (
    "part", "box", "kind", "code", "purpose", "face", "serves",
    "x_mm", "y_mm", "diameter_mm", "depth_mm", "open", "assumed",
)  # fmt: skip
"""The columns of the CSV list; an empty depth means right through. `open`: the open numbers that
decide the hole, each as `hinge.main.constant`."""


HEAD = ("purpose", "face", "x", "y", "dia", "deep")


def holes_json(layout: Layout) -> str:
    """Give all parts with their holes and findings as JSON text, numbers to 0.0001 mm."""
    data = {
        "schema": 1,
        "job": layout.job.name,
        "units": layout.job.units,
        "fronts": [_front_data(front) for front in layout.fronts],
        "sides": [_side_data(side) for side in layout.sides],
        "boxes": [_box_data(box) for box in layout.drawers],
        **(
            {"rollouts": [_rollout_data(rollout) for rollout in layout.rollouts]}
            if layout.rollouts
            else {}
        ),
        "problems": problems_data(layout.problems),
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


_Listed = tuple[tuple[str, ...], tuple[Fitting, ...], tuple[OpenNumber, ...], tuple[str, ...]]
"""A part as its rows name it, its fittings, its open numbers, and what is assumed in it."""


def holes_csv(layout: Layout) -> str:
    """Give all holes as CSV text, one a line; no cell is ever taken for a formula."""
    parts: list[_Listed] = [
        ((front.id, front.box, front.kind, front.code), front.fittings, front.open, front.assumed)
        for front in layout.fronts
    ]
    parts += [
        (
            (side.board, side.box, _side_kind(side), side.code),
            side.fittings,
            side.open,
            side.assumed,
        )
        for side in layout.sides
    ]
    parts += [
        ((box.id, box.box, _box_kind(box), box.code), box.bored, box.open, _assumed_in(box))
        for box in layout.drawers
    ]
    return csv_text(COLUMNS, (row for part in parts for row in _rows(*part)))


def holes_text(layout: Layout) -> str:
    """Give all holes as tables for people, places in the unit shown first."""
    unit = layout.job.shown
    blocks = [_front_block(front, unit) for front in layout.fronts]
    blocks += [_side_block(side, unit) for side in layout.sides if side.holes]
    held = {front.id for front in layout.fronts if front.withheld}
    blocks += [_box_block(box, held, unit) for box in layout.drawers]
    return "\n".join([*blocks, LIST_LEGEND]) + "\n"


def _side_kind(side: Side) -> str:
    """Name a box side, or one face of a partition, as data: `left-side`."""
    if not side.partition:
        return f"{side.side}-side"
    face = other_hand(side.side)
    return f"{face}-face-of-partition-{side.partition}"


def _depth(hole: Hole) -> float | None:
    return None if hole.depth is None else number(hole.depth)


def _hinge_data(hinge: HingeChoice) -> dict[str, Any]:
    """Give a door's tab and plate; where its record lists no plates, the height it wants."""
    data: dict[str, Any] = {
        "record": hinge.record,
        **in_mm(tab=hinge.tab, plate=hinge.plate, overlay_error=hinge.error),
    }
    if not hinge.plate_stated:
        data |= {"plate_mm": None, "overlay_error_mm": None, "plate_wanted_mm": number(hinge.plate)}
    return data


def _hole_data(hole: Hole) -> dict[str, Any]:
    return {
        "purpose": hole.purpose,
        "face": hole.face,
        **in_mm(x=hole.x, y=hole.y, diameter=hole.diameter, depth=hole.depth),
    }


def _front_data(front: Front) -> dict[str, Any]:
    hinge = front.hinge
    return {
        "id": front.id,
        "box": front.box,
        "kind": front.kind,
        "hinged": front.hinged,
        "code": front.code,
        "withheld": front.withheld,
        **in_mm(
            width=front.width,
            height=front.height,
            thickness=front.make.thickness,
            x=front.place.x,
            y=front.place.y,
        ),
        "hinge": None if hinge is None else _hinge_data(hinge),
        "holes": _front_holes(front),
        "open": open_data(front.open),
        "assumed": list(front.assumed),
    }


def _front_holes(front: Front) -> list[dict[str, Any]]:
    """Give a front's holes; those marked through its drawer box say so."""
    marked = marked_holes(front)
    through = {"marked_from": front.drawer.id if front.drawer else ""}
    return [_hole_data(hole) | (through if hole in marked else {}) for hole in front.holes]


def _side_data(side: Side) -> dict[str, Any]:
    return {
        "box": side.box,
        "column": side.column,
        "side": side.side,
        "board": side.board,
        "code": side.code,
        **in_mm(height=side.height, depth=side.depth),
        # A partition is counted from its own bottom end, which stands so high in the box.
        **({"bottom_mm": number(side.ends.base)} if side.partition else {}),
        "holes": [
            {
                "purpose": hole.purpose,
                "part": fitting.part,
                **in_mm(x=hole.x, y=hole.y, diameter=hole.diameter, depth=hole.depth),
            }
            for fitting in side.fittings
            for hole in fitting.holes
        ],
        "open": open_data(side.open),
        "assumed": list(side.assumed),
    }


def _box_data(box: DrawerBox | Rollout) -> dict[str, Any]:
    return {
        "part": box.id,
        "front": box.front if isinstance(box, DrawerBox) else None,
        "code": box.code,
        **_sizes_data(box),
        "holes": [_hole_data(hole) for hole in collect_holes(box.bored)],
        "open": open_data(box.open),
        "assumed": list(_assumed_in(box)),
    }


def _sizes_data(box: DrawerBox | Rollout) -> dict[str, float | None]:
    """Give a drawer box's three sizes; null where it came to none."""
    sizes = box.size
    keys = ("width_mm", "height_mm", "length_mm")
    return dict(zip(keys, map(number, sizes), strict=True)) if sizes else dict.fromkeys(keys)


def _box_kind(box: DrawerBox | Rollout) -> str:
    return "drawer-box" if isinstance(box, DrawerBox) else "rollout"


def _rollout_data(rollout: Rollout) -> dict[str, Any]:
    return {
        "id": rollout.id,
        "box": rollout.box,
        "column": rollout.column,
        "behind": list(rollout.behind),
        "slide": rollout.slide,
        "code": rollout.code,
        "withheld": rollout.withheld,
        **_sizes_data(rollout),
        **in_mm(x=rollout.x, y=rollout.y),
        "spacer_left_mm": number(rollout.spacer_left),
        "spacer_right_mm": number(rollout.spacer_right),
    }


def _assumed_in(box: DrawerBox | Rollout) -> tuple[str, ...]:
    return box.assumed if isinstance(box, DrawerBox) else ()


def _rows(
    part: tuple[str, ...],
    fittings: Iterable[Fitting],
    numbers: Sequence[OpenNumber],
    assumed: Sequence[str],
) -> Iterator[tuple[str | float | None, ...]]:
    for fitting in fittings:
        kind = kind_of(fitting).record
        for hole in fitting.holes:
            decide = [
                number
                for number in numbers
                if number.kind == kind
                and fitting.record in (None, number.record)
                and rests_on(number, hole.face)
            ]
            yield (
                *part,
                hole.purpose,
                hole.face,
                fitting.part or "",
                number(hole.x),
                number(hole.y),
                number(hole.diameter),
                _depth(hole),
                open_cell(decide),
                "; ".join(assumed),
            )


def _front_block(front: Front, unit: Unit) -> str:
    words = FRONT_WORDS[front.kind]
    if front.hinged:
        words += f", hinges {front.hinged}"
    head = (
        f"{front.id}  {words}, {format_sizes((front.width, front.height), unit)}, code {front.code}"
    )
    if front.withheld:
        return f"{head}\n  HELD: {held_words(front)}\n"
    if not front.holes:
        return f"{head}\n  no holes\n"
    rows = [(hole.purpose, hole.face, *_places(hole, unit)) for hole in front.holes]
    return f"{head}\n{_stamps(front.open, front.assumed)}{_table(HEAD, rows)}"


def _side_block(side: Side, unit: Unit) -> str:
    head = (
        f"{side.board}  {'' if side.partition else 'inside of the '}{side_words(side)}, "
        f"{format_sizes((side.depth, side.height), unit)}, code {side.code}"
    )
    rows = [
        (hole.purpose, fitting.part or "", *_places(hole, unit))
        for fitting in side.fittings
        for hole in fitting.holes
    ]
    return (
        f"{head}\n{_stamps(side.open, side.assumed)}{_table(('purpose', 'for', *HEAD[2:]), rows)}"
    )


def _box_block(box: DrawerBox | Rollout, held: Collection[str], unit: Unit) -> str:
    """Give a drawer box's holes; `held`: the fronts that are held back, and their boxes with
    them."""
    sizes = box.size
    size = f", {format_sizes(sizes, unit)}, code {box.code}" if sizes else ""
    head = f"{box.id}  {_box_kind(box).replace('-', ' ')}{size}"
    if isinstance(box, DrawerBox) and box.front in held:
        return f"{head}\n  HELD with {box.front}\n"
    if isinstance(box, Rollout) and box.held:
        return f"{head}\n  HELD: {held_words(box)}\n"
    if not box.bored:
        return f"{head}\n  no holes\n"
    rows = [(hole.purpose, hole.face, *_places(hole, unit)) for hole in collect_holes(box.bored)]
    return f"{head}\n{_stamps(box.open, _assumed_in(box))}{_table(HEAD, rows)}"


def _stamps(numbers: Sequence[OpenNumber], assumed: Sequence[str]) -> str:
    said = [f"{STAMP}: {words}" for words in open_words(numbers)]
    said += [f"ASSUMED: {'; '.join(assumed)}"] if assumed else []
    return "".join(f"  {words}\n" for words in said)


def _places(hole: Hole, unit: Unit) -> tuple[str, str, str, str]:
    return (
        _place(hole.x, unit),
        _place(hole.y, unit),
        f"{hole.diameter:g}",
        "through" if hole.depth is None else f"{hole.depth:g}",
    )


def _place(value: float, unit: Unit) -> str:
    return in_both(format_mm(value), f"{format_inches(value)} in", unit)


def _table(head: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> str:
    """Set rows in columns: words to the left, figures to the right."""
    return "\n".join(columned([head, *rows], right=range(2, len(head)))) + "\n"
