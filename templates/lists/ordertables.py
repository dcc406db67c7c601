"""The order for people: terms, fronts box by box, drawer boxes, hardware, paint."""

from collections.abc import Iterable

from jigs.given.job import Job
from jigs.ground.lengths import SQUARE_FEET, Unit, format_mm
from jigs.order.buying import DrawerBoxOrder, FrontOrder, HeldBack, Order
from templates.lists.listing import (
    Column,
    Group,
    Listing,
    Section,
    Shown,
    Table,
    TableRow,
    Words,
    shown,
    sizes_shown,
)
from templates.lists.listtext import listing_text
from templates.lists.orderlist import open_of_box, open_of_item
from templates.words.cautions import PAINT, cautions_of
from templates.words.openwords import STAMP
from templates.words.orderwords import (
    STATE_WORDS,
    doubtful_words,
    drawer_boxes_title,
    drawer_words,
    item_words,
    paint_title,
    said_of,
    settled_words,
)
from templates.words.saying import reasons_of
from templates.words.textlines import counted
from templates.words.wording import nominal_words

TICKS = (
    Column(head="ordered", paper=True, ticks="each"),
    Column(head="here", paper=True, ticks="each"),
)
"""What is ticked on paper as it is done."""
BLANK = shown("", "")
"""Their cells."""
SAID = Column(head="what", runs_on=True)
STAMPS = Column(head="stamp", paper=True)
"""What is bought on a number that nobody looked up yet."""


def order_text(order: Order, job: Job) -> str:
    """Give the order for a terminal."""
    return listing_text(order_listing(order, job))


def order_listing(order: Order, job: Job) -> Listing:
    """Give the order in words and tables, the job's unit first."""
    unit = job.shown
    sections = [
        Section(blocks=tuple(Words(text=text, stamp=True) for text in doubtful_words(order, job))),
        Section(title="Fronts, WIDTH x HEIGHT x THICKNESS", blocks=(_fronts(order, unit),)),
    ]
    if order.drawer_boxes:
        title = drawer_boxes_title(made=order.boxes_made)
        boxes = _drawer_boxes(order, unit)
        sections.append(Section(title=title, blocks=(boxes,)))
    sections += [
        Section(
            title="Hardware: needed + spare = to buy",
            blocks=(_hardware(order, unit), *_band(order)),
        ),
        *([_paints(order, job)] if job.paint.here else []),
        Section(
            blocks=tuple(
                Words(text=text)
                for text in (
                    *settled_words(order, job),
                    *cautions_of(box.kind for box in job.boxes),
                )
            )
        ),
    ]
    return Listing(title="Order", job=job.name, sections=tuple(sections))


def _paints(order: Order, job: Job) -> Section:
    caution = [Words(text=PAINT, indent=2, hang=0)] if order.paint else []
    return Section(title=paint_title(job), blocks=(_paint(order), *caution))


def _fronts(order: Order, unit: Unit) -> Table:
    """List the fronts under the box that each is ordered from, and those held back."""
    boxes: dict[str, list[FrontOrder]] = {}
    for front in order.fronts:
        boxes.setdefault(front.front.box, []).append(front)
    back: dict[str, list[HeldBack]] = {}
    for held in order.held:
        boxes.setdefault(held.box, [])
        back.setdefault(held.box, []).append(held)
    return Table(
        columns=(*TICKS, Column(head="front"), Column(head="size", measured=True), SAID),
        groups=tuple(
            Group(
                title=f"{box}: {STATE_WORDS[own[0].box_state]}" if own else box,
                rows=tuple(_front(front, unit) for front in own),
                notes=tuple(
                    Words(
                        text=f"{held.id}  HELD BACK: {'; '.join(reasons_of(held.why, unit))}",
                        stamp=True,
                    )
                    for held in back.get(box, ())
                ),
            )
            for box, own in boxes.items()
        ),
        heads=False,
    )


def _front(front: FrontOrder, unit: Unit) -> TableRow:
    size = sizes_shown((front.width, front.height, front.thickness), unit)
    return TableRow(
        cells=(*BLANK, Shown(front.front.id), size, Shown(", ".join(said_of(front, unit))))
    )


def _drawer_boxes(order: Order, unit: Unit) -> Table:
    """List the drawer boxes slide by slide: what they have in common is said once."""
    slides: dict[str, list[TableRow]] = {}
    made = order.boxes_made
    for box in order.drawer_boxes:
        cells = (
            *(() if made else BLANK),
            Shown(f"{len(box.parts):>2}"),
            sizes_shown((box.width, box.height, box.length), unit),
            *shown(STAMP if open_of_box(box, order) else "", ", ".join(box.parts)),
        )
        slides.setdefault(_slide_words(box, unit), []).append(TableRow(cells=cells))
    return Table(
        columns=(
            *(() if made else TICKS),
            Column(head="n", right=True),
            Column(head="size", measured=True),
            STAMPS,
            Column(head="for", runs_on=True),
        ),
        groups=tuple(Group(title=title, rows=tuple(rows)) for title, rows in slides.items()),
        heads=False,
    )


def _slide_words(box: DrawerBoxOrder, unit: Unit) -> str:
    return f"On slide '{box.slide}', {nominal_words(box.slide_length)}: {drawer_words(box, unit)}"


def _hardware(order: Order, unit: Unit) -> Table:
    return _plain(
        (
            Column(head="needed", right=True),
            Column(head="spare"),
            Column(head="buy", measured=True),
            STAMPS,
            SAID,
        ),
        (
            (
                str(item.count), f"+ {item.spare}", f"= {item.count + item.spare}",
                STAMP if open_of_item(item, order) else "", item_words(item, unit),
            )
            for item in order.items
        ),
    )  # fmt: skip


def _band(order: Order) -> tuple[Table, ...]:
    lines = [
        (
            f"edge band {format_mm(band.band)} mm for the board of {format_mm(band.board)} mm: "
            f"{band.to_buy / 1000:.1f} m",
        )
        for band in order.banding
    ]
    return (_plain((Column(head="band", runs_on=True),), lines),) if lines else ()


def _paint(order: Order) -> Table:
    return _plain(
        (
            Column(head="finish"),
            Column(head="fronts"),
            Column(head="area"),
            Column(head="paint", measured=True, runs_on=True),
        ),
        (
            (
                need.finish or "no finish stated",
                counted(need.fronts, "front"),
                f"{need.area:.2f} m2 ({need.area * SQUARE_FEET:.1f} sq ft)",
                f"{need.litres:.1f} litres",
            )
            for need in order.paint
        ),
    )


def _plain(columns: Iterable[Column], rows: Iterable[tuple[str, ...]]) -> Table:
    """Give a table of plain texts without titles, each line to be ticked on paper."""
    lines = tuple(TableRow(cells=(*BLANK, *shown(*row))) for row in rows)
    return Table(columns=(*TICKS, *columns), groups=(Group(rows=lines),), heads=False)
