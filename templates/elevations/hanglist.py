"""How a wall's boxes are set, and how a job's fronts are hung, as lists: for a screen as they are,
on paper beside the drawing."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from jigs.box.parts import Layout
from jigs.ground.lengths import Unit
from jigs.room.hanging import BoxInTurn, Furnished, Hanging, furnish_boxes
from templates.lists.listing import (
    Column,
    Group,
    Listing,
    Section,
    Table,
    TableRow,
    Words,
    shown,
    sizes_shown,
)
from templates.words.cautions import APPLIANCES
from templates.words.hanghow import (
    ADJUST,
    ADJUST_HOW,
    AGAIN,
    BOXES,
    CARE_TITLE,
    EACH,
    FRONTS,
    SCREWS,
    box_steps,
    care_lines,
    front_steps,
    fronts_words,
    held_words,
)
from templates.words.hangwords import (
    CLOSES,
    LINES,
    NO_SUM,
    NOT_SAID,
    ORDER,
    SCREW_HOW,
    SCREWED,
    SUMS,
    begin_words,
    filler_words,
    floor_line,
    from_words,
    legs_words,
    line_words,
    meaning_words,
    nailed_words,
    not_said,
    platform_words,
    room_words,
    setting_words,
    space_words,
    spare_words,
    strike_words,
    sum_words,
    turn_words,
    unplaced_words,
)
from templates.words.hingenames import hinge_words
from templates.words.wallwords import wall_title


def wall_name(hanging: Hanging) -> str:
    """Name a wall, or the boxes that stand at none."""
    return wall_title(hanging.elevation.wall) if hanging.elevation.placed else "BOXES"


def lines_section(hanging: Hanging, unit: Unit, title: str = LINES) -> Section:
    """List the lines of a wall from below."""
    rows = tuple(
        TableRow(cells=(sizes_shown((line.up,), unit), *shown(strike_words(*serves))))
        for line in hanging.strikes
        for serves in line.serves
    )
    columns = (Column(measured=True), Column(runs_on=True))
    table = Table(columns=columns, groups=(Group(rows=rows),), heads=False)
    return Section(title=title, blocks=(table, floor_words(hanging, unit)))


def floor_words(hanging: Hanging, unit: Unit) -> Words:
    """Say what the heights of a wall count from, and what its lines mean."""
    said = floor_line(hanging.elevation, unit), meaning_words(hanging.strikes)
    return Words(text=" ".join(said))


def wall_sections(hanging: Hanging, unit: Unit, first: Sequence[str]) -> Iterator[Section]:
    """Give what is to be known of a wall besides its lines; `first`: what must be settled before
    boards are cut."""
    if first:
        yield Section(blocks=tuple(Words(text=text, stamp=True) for text in first))
    yield Section(title=ORDER, blocks=tuple(_order(hanging, unit)))
    sums = [sum_words(row) for row in hanging.rows]
    if hanging.begin is not None:
        rows = {setting.seen.hangs for setting in hanging.order}
        none = [NO_SUM] if len(sums) < len(rows) else []
        said = filter(None, (*sums, *none, spare_words(hanging)))
        yield Section(title=SUMS, blocks=tuple(Words(text=text) for text in said))
    closes = [*platform_words(hanging.platforms, unit)]
    if legs := [seen.box.id for seen in hanging.elevation.standing if seen.box.legs]:
        closes.append(legs_words(legs))
    closes += [filler_words(piece) for piece in hanging.scribed]
    closes += room_words(hanging.elevation, unit)
    if closes:
        yield Section(title=CLOSES, blocks=tuple(Words(text=text) for text in closes))
    if hanging.nailed:
        bands = [Words(text=nailed_words(each)) for each in hanging.nailed]
        yield Section(title=SCREWED, blocks=(Words(text=SCREW_HOW, stamp=True), *bands))
    if lacking := tuple(not_said(hanging.elevation)):
        yield Section(blocks=(Words(text=NOT_SAID.format("; ".join(lacking))),))


def _order(hanging: Hanging, unit: Unit) -> Iterator[Table | Words]:
    if hanging.begin is None:
        yield Words(text=unplaced_words())
        return
    groups = tuple(
        Group(
            title=line_words(hanging, unit, hung=hung),
            rows=tuple(_turn(hanging, setting, unit) for setting in settings),
        )
        for hung, settings in groupby(
            hanging.order, lambda setting: setting.seen.box.kind == "wall"
        )
    )
    columns = (
        Column(ticks="each", right=True), Column(head="box"), Column(head="from", measured=True),
        Column(head="to", measured=True), Column(runs_on=True),
    )  # fmt: skip
    yield Table(columns=columns, groups=groups)
    yield Words(text=" ".join(filter(None, (begin_words(hanging.begin),
                                            turn_words(hanging.order)))))  # fmt: skip
    yield Words(text=from_words(hanging, unit))
    spaces = [space_words(hanging, space, unit) for space in hanging.spaces]
    if spaces:
        yield Words(text=" ".join((*spaces, APPLIANCES)))


def _turn(hanging: Hanging, setting: BoxInTurn, unit: Unit) -> TableRow:
    """Give the row of a box in its turn."""
    return TableRow(
        cells=(
            *shown(f"{setting.number}", setting.seen.box.id),
            *(sizes_shown((end,), unit, named=False) for end in hanging.place_of(setting.seen)),
            *shown(setting_words(setting)),
        )
    )


def wall_listing(hanging: Hanging, layout: Layout, first: Sequence[str]) -> Listing:
    """List all of a wall, its lines too."""
    unit = layout.job.shown
    name = wall_name(hanging)
    sections = (
        lines_section(hanging, unit, f"{name}. {LINES}"),
        *wall_sections(hanging, unit, first),
    )
    return Listing(title=name, job=layout.job.name, sections=sections)


def how_listing(layout: Layout, hangings: Sequence[Hanging]) -> Listing:
    """List how boxes are set and fronts are hung, of what these walls have."""
    furnished = [(hanging, furnish_boxes(layout, hanging)) for hanging in hangings]
    boxes = [each for _, found in furnished for each in found]
    names = {seen.box.id for hanging in hangings for seen in hanging.elevation.boxes}
    fronts = [front for front in layout.fronts if front.box in names]
    steps = box_steps(
        layout.job.material.side,
        hung=any(seen.hangs for hanging in hangings for seen in hanging.elevation.boxes),
        toe=any(hanging.platforms for hanging in hangings),
        tall=any(s.box.kind == "tall" for hanging in hangings for s in hanging.elevation.boxes),
        scribed=any(hanging.scribed for hanging in hangings),
    )
    after = front_steps(
        drawers=any(each.drawers for each in boxes),
        doors=any(front.kind == "door" for front in fronts),
        fronts=any(each.fronts for each in boxes),
        lifts=any(front.kind == "lift" for front in fronts),
        pulls=any(front.pull is not None for front in fronts),
    )
    sections = [
        Section(title=BOXES, blocks=_numbered(steps)),
        Section(title=FRONTS, blocks=_numbered(after)),
    ]
    if any(front.kind == "door" for front in fronts):
        sections.append(Section(title=ADJUST, blocks=_adjusting()))
    sections.append(
        Section(title=CARE_TITLE, blocks=tuple(Words(text=text) for text in care_lines()))
    )
    if boxes:
        sections.append(Section(title=EACH, blocks=tuple(_each_box(layout, furnished))))
    kept = tuple(section for section in sections if section.blocks)
    return Listing(title="Setting and hanging", job=layout.job.name, sections=kept)


def _numbered(steps: Iterable[str]) -> tuple[Words, ...]:
    return tuple(Words(text=f"{number} {text}") for number, text in enumerate(steps, start=1))


def _adjusting() -> tuple[Table | Words, ...]:
    columns = (Column(head="screw"), Column(head="moves"), Column(runs_on=True))
    rows = tuple(TableRow(cells=shown(*row)) for row in SCREWS)
    table = Table(columns=columns, groups=(Group(rows=rows),))
    return Words(text=ADJUST_HOW), table, Words(text=AGAIN)


def _doors(layout: Layout, doors: Iterable[str]) -> str:
    """Name the doors of a box, those in a row on one hinge with it where the job has several."""
    runs = [
        (hinge, ", ".join(run)) for hinge, run in groupby(doors, lambda d: hinge_words(layout, [d]))
    ]
    return "; ".join(f"{names} ({hinge})" if hinge else names for hinge, names in runs)


def _each_box(
    layout: Layout,
    furnished: Sequence[tuple[Hanging, Sequence[Furnished]]],
) -> Iterator[Table | Words]:
    columns = (
        Column(head="box"),
        Column(head="drawer boxes, from below", ticks="filled"),
        Column(head="doors", ticks="filled"),
        Column(head="other fronts, from below", ticks="filled", runs_on=True),
    )
    groups = tuple(
        Group(
            title=wall_name(hanging),
            rows=tuple(
                TableRow(cells=shown(each.box, ", ".join(each.drawers), _doors(layout, each.doors),
                                fronts_words(each.fronts)))
                for each in found
            ),
            notes=tuple(Words(text=text, stamp=True) for text in held_words(found)),
        )
        for hanging, found in furnished
    )  # fmt: skip
    yield Table(columns=columns, groups=groups)
