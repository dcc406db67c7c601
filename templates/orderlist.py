"""The order: for people, for a spreadsheet, and as data.

The fronts come first, one a line, since each has its place; then drawer boxes by size, hardware,
screws, band and paint. `fronts_csv` is the list for the supplier alone; what arrives is checked
against the job with the same columns.
"""

import json
from typing import Any

from jigs.buying import DrawerBoxOrder, FrontOrder, Item, Order
from jigs.job import Job
from jigs.lengths import SQUARE_FEET, Unit, format_length, format_mm
from templates.cells import csv_text, number, safe_cell
from templates.wording import FRONT_WORDS

FRONT_COLUMNS = (
    "id", "box", "kind", "width (mm)", "height (mm)", "count", "thickness (mm)", "hinged",
    "stile", "finish", "description", "note",
)  # fmt: skip
"""The columns of the supplier's list: width before height, as the front hangs."""
ITEM_COLUMNS = ("what", "record", "size_mm", "needed", "spare", "buy", "note")

ITEM_WORDS = {
    "hinge": "hinge", "plate": "mounting plate", "slide": "pair of slides", "pull": "pull",
    "bumper": "bumper", "screw": "screw", "pin": "shelf pin",
}  # fmt: skip
SCREW_WORDS = {
    "cup": "for the cups of hinges", "plate": "for mounting plates, 5 mm holes",
    "slide": "for slides", "pull": "for pulls, from behind",
    "front-fixing": "for drawer fronts, pan or washer head",
}  # fmt: skip


def order_text(order: Order, job: Job) -> str:
    """Give the order in words and tables."""
    unit = job.shown
    lines: list[str] = []
    if order.unbuilt:
        lines += [
            f"NOT MEASURED YET: {', '.join(order.unbuilt)}.",
            "Fronts are ordered from finished boxes, not from the plan: build, measure, then say",
            "built = true in the box.",
            "",
        ]
    lines.append("Fronts, finished sizes: WIDTH x HEIGHT x thickness, height upright")
    if job.increment:
        lines[-1] += f", steps of {format_length(job.increment, unit)}"
    lines.append(f"  accepted within {format_length(job.tolerance, unit)} either way")
    rows = [_front_row(front, unit) for front in order.fronts]
    lines += _table(rows)
    lines += [f"  held back, not ordered: {name}" for name in order.held]
    if order.drawer_boxes:
        made = "made from the parts list" if order.boxes_made else (
            "unless you make them: drawer_boxes = \"made\" in [build]"
        )  # fmt: skip
        lines += ["", f"Drawer boxes, outside WIDTH x HEIGHT x LENGTH ({made})"]
        lines += _table([_drawer_row(box, unit) for box in order.drawer_boxes])
    lines += ["", "Hardware: needed, spare, to buy"]
    lines += _table(
        [
            (f"  {item.count}", f"+ {item.spare}", f"= {item.count + item.spare}", _item(item))
            for item in order.items
        ]
    )
    for band in order.banding:
        lines.append(
            f"  edge band {format_mm(band.band)} mm for the board of {format_mm(band.board)} mm: "
            f"{band.to_buy / 1000:.1f} m"
        )
    lines += ["", f"Paint, {job.paint.coats} coats, {job.paint.spread:g} m2 a litre and coat"]
    lines += _table(
        [
            (
                f"  {need.finish or 'no finish stated'}",
                f"{need.fronts} {'front' if need.fronts == 1 else 'fronts'}",
                f"{need.area:.2f} m2 ({need.area * SQUARE_FEET:.1f} sq ft)",
                f"{need.litres:.1f} litres",
            )
            for need in order.paint
        ]
    )
    return "\n".join(lines) + "\n"


def order_json(order: Order, job: Job) -> str:
    """Give the order as JSON text, numbers to 0.0001."""
    data: dict[str, Any] = {
        "schema": 1,
        "job": job.name,
        "units": job.units,
        "tolerance_mm": number(job.tolerance),
        "increment_mm": None if job.increment is None else number(job.increment),
        "not_measured": list(order.unbuilt),
        "held": list(order.held),
        "fronts": [
            {
                "id": f.front.id,
                "box": f.front.box,
                "kind": f.front.kind,
                "width_mm": number(f.width),
                "height_mm": number(f.height),
                "thickness_mm": number(f.front.thickness),
                "finish": f.front.finish,
                "bored": f.bored,
                "cups_at_mm": [number(y) for y in f.cups_at],
                "tab_mm": None if f.tab is None else number(f.tab),
                "made": _making(f),
            }
            for f in order.fronts
        ],
        "drawer_boxes": [
            {
                "parts": list(b.parts),
                "count": len(b.parts),
                "width_mm": number(b.width),
                "height_mm": number(b.height),
                "length_mm": number(b.length),
                "side_mm": number(b.side),
                "recess_mm": number(b.recess),
                "notch_mm": [number(n) for n in b.notch] if b.notch else None,
            }
            for b in order.drawer_boxes
        ],
        "hardware": [
            {
                "what": i.group,
                "record": i.name,
                "size_mm": None if i.size is None else number(i.size),
                "needed": i.count,
                "spare": i.spare,
            }
            for i in order.items
        ],
        "band": [
            {
                "board_mm": number(b.board),
                "band_mm": number(b.band),
                "to_buy_m": number(b.to_buy / 1000),
            }
            for b in order.banding
        ],
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
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def front_rows(order: Order) -> list[tuple[str | float, ...]]:
    """Give the supplier's rows, in the order of FRONT_COLUMNS."""
    return [
        (
            safe_cell(f.front.id),
            safe_cell(f.front.box),
            f.front.kind,
            number(f.width),
            number(f.height),
            1,
            number(f.front.thickness),
            f.front.hinged or "",
            "" if f.front.frame is None else number(f.front.frame.stile),
            safe_cell(f.front.finish),
            safe_cell(", ".join(_making(f))),
            safe_cell(f.front.note),
        )
        for f in order.fronts
    ]


def item_rows(order: Order) -> list[tuple[str | float, ...]]:
    """Give the rows of all that is not a front, in the order of ITEM_COLUMNS."""
    rows: list[tuple[str | float, ...]] = []
    for box in order.drawer_boxes:
        size = f"{number(box.width)} x {number(box.height)} x {number(box.length)}"
        count = len(box.parts)
        rows.append(("drawer box", size, "", count, 0, count, " ".join(box.parts)))
    for item in order.items:
        size_mm: str | float = "" if item.size is None else number(item.size)
        note = SCREW_WORDS.get(item.name, "") if item.group == "screw" else ""
        record = "" if item.group == "screw" else safe_cell(item.name)
        rows.append(
            (
                ITEM_WORDS[item.group], record, size_mm, item.count, item.spare,
                item.count + item.spare, note,
            )
        )  # fmt: skip
    for band in order.banding:
        metres = number(band.to_buy / 1000)
        rows.append(("edge band, m", "", number(band.band), metres, 0, metres, ""))
    for need in order.paint:
        litres = number(need.litres)
        rows.append(("paint, litres", safe_cell(need.finish), "", litres, 0, litres, ""))
    return rows


def order_csv(order: Order) -> str:
    """Give all that is to be bought as CSV text: fronts with their sizes, then the rest."""
    fronts = [
        ("front", row[0], f"{row[3]} x {row[4]} x {row[6]}", 1, 0, 1, row[10])
        for row in front_rows(order)
    ]
    return csv_text(ITEM_COLUMNS, [*fronts, *item_rows(order)])


def fronts_csv(order: Order) -> str:
    """Give the supplier's list of fronts as CSV text; a delivered list has the same columns."""
    return csv_text(FRONT_COLUMNS, front_rows(order))


def _front_row(order: FrontOrder, unit: Unit) -> tuple[str, ...]:
    front = order.front
    size = " x ".join(
        format_length(length, unit) for length in (order.width, order.height, front.thickness)
    )
    said = (word for word in (front.finish, front.note) if word)
    return f"  {front.id}", size, ", ".join([FRONT_WORDS[front.kind], *_making(order), *said])


def _making(order: FrontOrder) -> list[str]:
    """Say how a front is made: its frame, its edges, its boring."""
    front, frame = order.front, order.front.frame
    words = []
    if frame is not None:
        panel = "glass" if frame.glass else f"panel {format_mm(frame.panel)}"
        words.append(
            f"five-piece: stiles {format_mm(frame.stile)}, rails {format_mm(frame.rail)}, "
            f"{panel} mm"
        )
    if front.edge_radius:
        words.append(f"edges rounded, R {format_mm(front.edge_radius)} mm")
    if front.bevel is not None:
        words.append(f"{front.bevel} edge bevelled for the fingers")
    if not order.bored:
        return [*words, "not bored"]
    heights = " ".join(format_mm(y) for y in order.cups_at)
    rims = "" if order.tab is None else f", rims {format_mm(order.tab)} mm from the hinge edge"
    return [*words, f"bored by the supplier: cups {heights} mm from the bottom edge{rims}"]


def _drawer_row(box: DrawerBoxOrder, unit: Unit) -> tuple[str, ...]:
    size = " x ".join(format_length(s, unit) for s in (box.width, box.height, box.length))
    words = f"sides {format_length(box.side, unit)}"
    if box.recess:
        words += f", bottom {format_length(box.recess, unit)} up"
    if box.notch:
        words += f", notches {format_mm(box.notch[0])} x {format_mm(box.notch[1])} mm at the back"
    return f"  {len(box.parts)}", size, words, ", ".join(box.parts)


def _item(item: Item) -> str:
    words = ITEM_WORDS[item.group]
    if item.group == "screw":
        long = f" {format_mm(item.size)} mm long" if item.size else ""
        return f"{words}{long} {SCREW_WORDS[item.name]}"
    if item.group == "plate":
        return f"{words} {format_mm(item.size or 0.0)} mm high for '{item.name}'"
    if item.group == "bumper":
        return f"{words} {format_mm(item.size or 0.0)} mm"
    return f"{words} '{item.name}'" if item.name else words


def _table(rows: list[tuple[str, ...]]) -> list[str]:
    """Set rows in columns; the last one runs on."""
    if not rows:
        return ["  none"]
    wide = [max(len(row[n]) for row in rows) for n in range(len(rows[0]) - 1)]
    return [
        "  ".join([*(cell.ljust(w) for cell, w in zip(row, wide, strict=False)), row[-1]]).rstrip()
        for row in rows
    ]
