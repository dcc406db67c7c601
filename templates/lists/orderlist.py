"""The order for a spreadsheet and as data: what the text says, in rows.

One CSV list holds everything, a line each; the workbook has a sheet for each kind. The sizes of
what has them stand in columns of their own, width before height. The terms, which hold for the
whole order, are rows too.
"""

import json
from collections.abc import Iterator, Sequence
from typing import Any

from jigs.given.confirming import OpenNumber, rests_on
from jigs.given.job import Job
from jigs.ground.lengths import SQUARE_FEET, Unit
from jigs.order.buying import DrawerBoxOrder, FrontOrder, Order
from jigs.order.needed import Item
from templates.lists.cells import Cell, csv_text, in_mm, number
from templates.lists.supplierlist import FRONT_COLUMNS, front_rows
from templates.words.assumedwords import assumed_lines
from templates.words.cautions import PAINT, cautions_of
from templates.words.openwords import open_cell, open_data
from templates.words.orderwords import (
    RUBS,
    SCREW_WORDS,
    SPARES,
    STATE_WORDS,
    WANTED_PLATE,
    doors_words,
    drawer_words,
    item_name,
    length_words,
    making,
    said_of,
    terms,
)
from templates.words.saying import reasons_of
from templates.words.wording import nominal_words

COLUMNS = (
    "what", "part", "box", "record", "width_mm", "height_mm", "length_mm", "thickness_mm",
    "size_mm", "needed", "spare", "buy", "unit", "increment_mm", "tolerance_mm", "grain", "bored",
    "state", "note", "open",
)  # fmt: skip
"""The columns of the CSV list. `thickness_mm`: a front's, or a drawer box's sides; `size_mm`: a
plate's height, a slide's or a screw's length, a bumper's, a band's; `state`: what keeps a line
from being bought as it stands."""
DRAWER_COLUMNS = (
    "drawer_boxes", "outside_width_mm", "outside_height_mm", "outside_length_mm", "sides_mm",
    "bottom_up_mm", "notch_wide_mm", "notch_high_mm", "hook_diameter_mm", "hook_depth_mm",
    "hook_up_mm", "hook_from_ends_mm", "slide", "slide_length_mm", "needed", "buy", "open",
)  # fmt: skip
ITEM_COLUMNS = (
    "what", "record", "size_mm", "board_mm", "needed", "spare", "buy", "unit", "remark", "open",
)  # fmt: skip
HELD_COLUMNS = ("not_ordered", "of_box", "why")
TERM_COLUMNS = ("terms",)


def order_csv(order: Order, job: Job) -> str:
    """Give all that is to be bought as CSV text: terms, fronts with their sizes, the rest."""
    return csv_text(COLUMNS, ([row.get(column) for column in COLUMNS] for row in _rows(order, job)))


def order_sheets(
    order: Order, job: Job
) -> dict[str, tuple[Sequence[str], Sequence[Sequence[Cell]]]]:
    """Give the sheets of the workbook by name, each its heads and its rows."""
    return {
        "fronts": (FRONT_COLUMNS, front_rows(order, job)),
        "drawer boxes": (DRAWER_COLUMNS, [_drawer_row(b, order) for b in order.drawer_boxes]),
        "hardware": (ITEM_COLUMNS, item_rows(order, job)),
        "held back": (
            HELD_COLUMNS,
            [(h.id, h.box, "; ".join(reasons_of(h.why, job.shown))) for h in order.held],
        ),
        "terms": (TERM_COLUMNS, [(term,) for term in terms(order, job)]),
    }


def order_json(order: Order, job: Job) -> str:
    """Give the order as JSON text, numbers to 0.0001."""
    data: dict[str, Any] = {
        "schema": 1,
        "job": job.name,
        "units": job.units,
        "terms": list(terms(order, job)),
        "size_order": ["width", "height", "thickness"],
        **in_mm(tolerance=job.tolerance, increment=job.increment),
        "spares": SPARES,
        "not_measured": list(order.unbuilt),
        "built_unmeasured": list(order.unmeasured),
        "built_differing": list(order.differing),
        "built": list(order.built),
        "open": open_data(order.open),
        "not_checked": [{"subject": one.subject, "of": list(one.names)} for one in order.unchecked],
        "assumed": list(assumed_lines(job)),
        "delivered": list(order.arrived),
        "held": [
            {"id": h.id, "box": h.box, "why": list(reasons_of(h.why, job.shown))}
            for h in order.held
        ],
        "fronts": [_front_data(front, job.shown) for front in order.fronts],
        "drawer_boxes_made": order.boxes_made,
        "drawer_boxes": [_drawer_data(box, order) for box in order.drawer_boxes],
        "hardware": [_item_data(item, order, job) for item in order.items],
        "band": [
            {
                **in_mm(board=b.board, band=b.band),
                "to_buy_m": number(b.to_buy / 1000),
            }
            for b in order.banding
        ],
        "coats": job.paint.coats,
        "spread_m2_per_litre": number(job.paint.spread),
        "paint": [
            {
                "finish": n.finish,
                "fronts": n.fronts,
                "area_m2": number(n.area),
                "area_sq_ft": number(n.area * SQUARE_FEET),
                "litres": number(n.litres),
            }
            for n in order.paint
        ],
        "cautions": [
            *([PAINT] if order.paint else []),
            *cautions_of(box.kind for box in job.boxes),
        ],
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def item_rows(order: Order, job: Job) -> list[tuple[Cell, ...]]:
    """Give the rows of hardware, band and paint, in the order of ITEM_COLUMNS."""
    rows: list[tuple[Cell, ...]] = [
        (
            item_name(item), _record(item), _size(item.size), _size(item.board),
            item.count, item.spare, item.count + item.spare, _unit(item), _remark(item, job),
            open_cell(open_of_item(item, order)),
        )
        for item in order.items
    ]  # fmt: skip
    for band in order.banding:
        metres = number(band.to_buy / 1000)
        size, board = number(band.band), number(band.board)
        rows.append(("edge band", "", size, board, metres, 0, metres, "m", "", ""))
    for need in order.paint:
        litres, words = number(need.litres), _area_words(need.area, job)
        rows.append(("paint", need.finish, "", "", litres, 0, litres, "litre", words, ""))
    return rows


def _rows(order: Order, job: Job) -> Iterator[dict[str, Cell | None]]:
    for term in terms(order, job):
        yield {"what": "terms", "note": term}
    limits = {
        **in_mm(increment=job.increment, tolerance=job.tolerance),
    }
    for f in order.fronts:
        yield {
            "what": "front", "part": f.front.id, "box": f.front.box,
            "width_mm": number(f.width), "height_mm": number(f.height),
            "thickness_mm": number(f.thickness), "needed": 1, "spare": 0, "buy": 1,
            "unit": "piece", **limits, "grain": _grain(f), "bored": "yes" if f.bored else "no",
            "state": _state(f), "note": ", ".join(said_of(f, job.shown)),
        }  # fmt: skip
    for held in order.held:
        yield {
            "what": "front or rollout", "part": held.id, "box": held.box,
            "needed": 1, "spare": 0, "buy": 0, "unit": "piece",
            "state": f"held back: {'; '.join(reasons_of(held.why, job.shown))}",
        }  # fmt: skip
    for box in order.drawer_boxes:
        count = len(box.parts)
        yield {
            "what": "drawer box", "part": " ".join(box.parts),
            "record": box.slide, "width_mm": number(box.width),
            "height_mm": number(box.height), "length_mm": number(box.length),
            "thickness_mm": number(box.side), "needed": count, "spare": 0,
            "buy": 0 if order.boxes_made else count, "unit": "piece",
            "state": "made from the parts list" if order.boxes_made else "",
            "note": _drawer_note(box),
            "open": open_cell(open_of_box(box, order)),
        }  # fmt: skip
    for row in item_rows(order, job):
        said = dict(zip(ITEM_COLUMNS, row, strict=True))
        yield {**said, "thickness_mm": said["board_mm"], "note": said["remark"]}


def _drawer_note(box: DrawerBoxOrder) -> str:
    slide = nominal_words(box.slide_length)
    return f"outside sizes; {drawer_words(box, 'mm')}; slide of {slide}"


def _front_data(order: FrontOrder, unit: Unit) -> dict[str, Any]:
    front = order.front
    return {
        "id": front.id,
        "box": front.box,
        "kind": front.kind,
        "hinged": front.hinged,
        **in_mm(width=order.width, height=order.height, thickness=order.thickness),
        "grain": _grain(order) or None,
        "finish": front.make.finish,
        "note": front.make.note,
        "bored": order.bored,
        "cups_at_mm": [number(y) for y in order.cups_at],
        "tab_mm": None if order.tab is None else number(order.tab),
        "made": making(order),
        "box_state": order.box_state,
        "again": list(reasons_of(order.again, unit)),
        "rubs": order.rubs,
    }


def _drawer_data(box: DrawerBoxOrder, order: Order) -> dict[str, Any]:
    return {
        "parts": list(box.parts),
        "needed": len(box.parts),
        "buy": 0 if order.boxes_made else len(box.parts),
        **in_mm(
            width=box.width, height=box.height, length=box.length, side=box.side, recess=box.recess
        ),
        "notch_mm": [number(n) for n in box.notch] if box.notch else None,
        "hook": _hook_data(box),
        "slide": box.slide,
        "slide_length_mm": number(box.slide_length),
        "open": open_data(open_of_box(box, order)),
    }


def _hook_data(box: DrawerBoxOrder) -> dict[str, float | None] | None:
    hole = box.hook
    if hole is None:
        return None
    return in_mm(diameter=hole.diameter, depth=hole.depth, up=hole.y, from_ends=hole.x)


def _drawer_row(box: DrawerBoxOrder, order: Order) -> tuple[Cell, ...]:
    wide, high = (number(n) for n in box.notch) if box.notch else ("", "")
    hook = [""] * 4 if box.hook is None else [_size(v) for v in (_hook_data(box) or {}).values()]
    count = len(box.parts)
    return (
        " ".join(box.parts), number(box.width), number(box.height), number(box.length),
        number(box.side), number(box.recess), wide, high, *hook,
        box.slide,
        number(box.slide_length), count, 0 if order.boxes_made else count,
        open_cell(open_of_box(box, order)),
    )  # fmt: skip


def _item_data(item: Item, order: Order, job: Job) -> dict[str, Any]:
    return {
        "what": item.name if item.group == "fitting" else item.group,
        "record": _record(item) or None,
        "use": item.name if item.group == "screw" else None,
        **in_mm(size=item.size, board=item.board),
        "needed": item.count,
        "spare": item.spare,
        "buy": item.count + item.spare,
        "remark": _remark(item, job),
        "open": open_data(open_of_item(item, order)),
    }


def open_of_item(item: Item, order: Order) -> list[OpenNumber]:
    """Give the open numbers that a piece of hardware is bought on; a plate's are its hinge's."""
    kind = "hinge" if item.group == "plate" else item.group
    return [
        number
        for number in order.open
        if (number.kind, number.record) == (kind, item.name) and rests_on(number, "order")
    ]


def open_of_box(box: DrawerBoxOrder, order: Order) -> list[OpenNumber]:
    """Give the open numbers of its slide that a drawer box is made by."""
    return [
        number
        for number in order.open
        if (number.kind, number.record) == ("slide", box.slide)
        and rests_on(number, "cut", "box-back")
    ]


def _record(item: Item) -> str:
    return "" if item.group in ("screw", "fitting") else item.name


def _size(value: float | None) -> Cell:
    return "" if value is None else number(value)


def _unit(item: Item) -> str:
    return "pair" if item.group == "slide" else "piece"


def _remark(item: Item, job: Job) -> str:
    if not item.stated:
        return WANTED_PLATE
    if item.group != "screw":
        return doors_words(item)
    return f"{SCREW_WORDS[item.name]}{length_words(item, job.units)}"


def _area_words(area: float, job: Job) -> str:
    return (
        f"{area:.2f} m2 ({area * SQUARE_FEET:.1f} sq ft), {job.paint.coats} coats, "
        f"{job.paint.spread:g} m2 a litre and coat"
    )


def _grain(order: FrontOrder) -> str:
    return "height" if order.grained else ""


def _state(order: FrontOrder) -> str:
    box = "" if order.box_state == "measured" else f"box {STATE_WORDS[order.box_state]}"
    return "; ".join(filter(None, (box, RUBS if order.rubs else "")))
