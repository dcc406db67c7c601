"""The order as tables for people: terms, fronts box by box, drawer boxes, hardware, paint."""

from collections.abc import Iterator, Sequence

from jigs.given.cautions import PAINT, cautions_of
from jigs.given.job import Job
from jigs.ground.lengths import SQUARE_FEET, Unit, format_mm, format_sizes
from jigs.order.buying import DrawerBoxOrder, FrontOrder, HeldBack, Order
from templates.words.orderwords import (
    STATE_WORDS,
    doubtful_words,
    drawer_words,
    item_words,
    said_of,
    settled_words,
)
from templates.words.textlines import columned, counted, wrapped
from templates.words.wording import nominal_words


def order_text(order: Order, job: Job) -> str:
    """Give the order in words and tables, no line longer than a terminal is wide."""
    unit = job.shown
    lines: list[str] = []
    for words in doubtful_words(order, job):
        lines += _hung("", words, "  ")
    lines += [*([""] if lines else []), "Fronts, WIDTH x HEIGHT x THICKNESS"]
    lines += _fronts(order, unit)
    if order.drawer_boxes:
        made = "made as the parts list says, not bought" if order.boxes_made else "to be bought"
        lines += ["", f"Drawer boxes, {made}; outside WIDTH x HEIGHT x LENGTH"]
        lines += _drawer_boxes(order.drawer_boxes, unit)
    lines += ["", "Hardware: needed + spare = to buy"]
    lines += _table(
        [
            (
                str(item.count), f"+ {item.spare}", f"= {item.count + item.spare}",
                item_words(item, unit),
            )
            for item in order.items
        ],
        right=(0,),
    )  # fmt: skip
    for band in order.banding:
        lines.append(
            f"  edge band {format_mm(band.band)} mm for the board of {format_mm(band.board)} mm: "
            f"{band.to_buy / 1000:.1f} m"
        )
    lines += ["", f"Paint, {job.paint.coats} coats, {job.paint.spread:g} m2 a litre and coat"]
    lines += _table(
        [
            (
                need.finish or "no finish stated",
                counted(need.fronts, "front"),
                f"{need.area:.2f} m2 ({need.area * SQUARE_FEET:.1f} sq ft)",
                f"{need.litres:.1f} litres",
            )
            for need in order.paint
        ]
    )
    if order.paint:
        lines += _hung("  ", PAINT, "  ")
    lines.append("")
    for words in (*settled_words(order, job), *cautions_of(box.kind for box in job.boxes)):
        lines += _hung("", words, "  ")
    return "\n".join(lines) + "\n"


def _fronts(order: Order, unit: Unit) -> Iterator[str]:
    """Give the fronts under the box that each is ordered from, and those held back."""
    boxes: dict[str, list[FrontOrder]] = {}
    for front in order.fronts:
        boxes.setdefault(front.front.box, []).append(front)
    back: dict[str, list[HeldBack]] = {}
    for held in order.held:
        boxes.setdefault(held.box, [])
        back.setdefault(held.box, []).append(held)
    if not boxes:
        yield "  none"
    rows = [
        (f.front.id, format_sizes((f.width, f.height, f.thickness), unit)) for f in order.fronts
    ]
    leads = dict(zip((name for name, _ in rows), _leads(rows, "    "), strict=True))
    for box, own in boxes.items():
        state = f": {STATE_WORDS[own[0].box_state]}" if own else ""
        yield f"  {box}{state}"
        for front in own:
            lead = leads[front.front.id]
            yield from _hung(lead, ", ".join(said_of(front)), " " * min(len(lead), 66))
        for held in back.get(box, ()):
            yield from _hung(f"    {held.id}  ", f"HELD BACK: {'; '.join(held.why)}", " " * 6)


def _drawer_boxes(boxes: Sequence[DrawerBoxOrder], unit: Unit) -> Iterator[str]:
    """Give the drawer boxes slide by slide: what they have in common is said once."""
    heads = {box: _slide_words(box, unit) for box in boxes}
    rows = [(f"{len(box.parts):>2}", format_sizes(_outside(box), unit)) for box in boxes]
    leads = _leads(rows, "    ")
    for head in dict.fromkeys(heads.values()):
        yield from _hung("  ", head, "  ")
        for box, lead in zip(boxes, leads, strict=True):
            if heads[box] == head:
                yield from _hung(lead, ", ".join(box.parts), " " * min(len(lead), 62))


def _slide_words(box: DrawerBoxOrder, unit: Unit) -> str:
    return f"On slide '{box.slide}', {nominal_words(box.slide_length)}: {drawer_words(box, unit)}"


def _outside(box: DrawerBoxOrder) -> tuple[float, float, float]:
    return box.width, box.height, box.length


def _hung(lead: str, text: str, rest: str) -> list[str]:
    """Break a text after its lead into lines, the further ones under `rest`."""
    return wrapped(text, lead, rest) or [lead.rstrip()]


def _table(rows: Sequence[tuple[str, ...]], right: tuple[int, ...] = ()) -> list[str]:
    """Set rows in columns; the last one runs on, broken under itself."""
    if not rows:
        return ["  none"]
    leads = _leads([row[:-1] for row in rows], "  ", right)
    return [
        line
        for lead, row in zip(leads, rows, strict=True)
        for line in _hung(lead, row[-1], " " * len(lead))
    ]


def _leads(rows: Sequence[tuple[str, ...]], indent: str, right: tuple[int, ...] = ()) -> list[str]:
    """Set what stands before the text of each row in columns, all equally wide."""
    lines = columned(rows, right=right, indent=indent)
    wide = max(map(len, lines), default=0)
    return [f"{line.ljust(wide)}  " for line in lines]
