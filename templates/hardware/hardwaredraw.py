"""A hardware record drawn with its letters dimensioned, at full scale where the page has room.

A hinge: the section through side, door and plate as seen from above, and the back of the door
with its cup. A slide: the section across the box, and the places of its holes. A pull: the
corner of a door. The job's boards, or some that stand in, show the record in its place; hardware
laid on a drawing of 1:1 must agree with it. Millimetres.
"""

from msgspec import Struct

from jigs.fittings.hinge import choose_tab_and_plate, cup_from_edge, overlay_got
from jigs.fittings.slide import hole_above_drawer
from jigs.given.confirming import Record, record_kind
from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.given.job import Material, Overlay, Reveal
from jigs.ground.geometry import rectangle
from templates.hardware.pulldraw import pull_corner, pull_on_drawer
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.dimensions import SCALES, across, frame, hatching, sized, upward
from templates.page.marks import MEDIUM, WIDE, Circle, Line, Mark, Outline, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import moved, paragraph
from templates.words.hardwarewords import described, legend, lettered, numbers


class Boards(Struct, frozen=True, kw_only=True):
    """The boards and gaps that hardware is drawn with: a job's, or usual ones that stand in."""

    material: Material
    reveal: Reveal

    def wanted(self, kind: Overlay) -> float:
        """Give the overlay that a hinge of this kind is drawn for; mm."""
        match kind:
            case "full":
                return self.material.side - self.reveal.side
            case "half":
                return (self.material.side - self.reveal.between) / 2
            case "inset":
                return -self.reveal.inset


STAND_IN = Boards(material=Material(), reveal=Reveal())


def hardware_page(record: Record, paper: Paper, boards: Boards = STAND_IN) -> Page:
    """Draw one record, on these boards, with its numbers below it."""
    across_ = paper.width - LEFT_STRIP - EDGE
    top = paper.height - EDGE
    marks = border_marks(paper.width, paper.height, paper, 1)
    for piece in (
        paragraph(f"{record_kind(record).upper()} {record.name}", across_, size=5.0, bold=True),
        paragraph(f"{described(record).capitalize()}. {_stands_in(record, boards)}", across_),
    ):
        marks += moved(piece.marks, LEFT_STRIP, top)
        top -= piece.height + 1.0
    match record:
        case HingeRecord():
            marks += moved(tuple(_hinge_section(record, boards)), 32.0, top - 73.0)
            marks += moved(tuple(_cup_plan(record, boards)), 122.0, top - 55.0)
            top -= 130.0
            room = top - 10.0 - 5.0 * len(numbers(record)) - BOTTOM_STRIP
            marks += moved(tuple(_plate_plan(record, room)), 32.0, BOTTOM_STRIP + room / 2)
        case SlideRecord():
            top -= _section_top(record) + 22.0
            marks += moved(tuple(_slide_section(record, boards)), 46.0, top)
            marks += moved(tuple(_slide_places(record)), 20.0, top - 70.0)
            top -= 91.0
        case PullRecord():
            marks += moved(tuple(pull_corner(record, 100.0)), 30.0, top - 114.0)
            top -= 142.0
            marks += moved(tuple(pull_on_drawer(record)), 30.0, top - 28.0)
            top -= 46.0
    return Page(
        width=paper.width,
        height=paper.height,
        marks=(*marks, *_table(record, top)),
        entry=record.name,
    )


def _stands_in(record: Record, boards: Boards) -> str:
    material = boards.material
    sizes = (material.side, material.front, material.drawer_side)
    side, door, drawer = (f"{round(size, 1):g}" for size in sizes)
    match record:
        case HingeRecord():
            return (
                f"Drawn at 1:1 with a side of {side} and a door of {door} mm: lay the hinge "
                "on it; what does not agree is to be measured. "
                "Overlay = constant + tab - plate height."
            )
        case SlideRecord():
            return (
                f"The section at 1:1, with a box side of {side} and a drawer side of "
                f"{drawer} mm: set the slide's front end on it. The rest is reduced."
            )
        case PullRecord():
            return (
                "Above: the corner of a door from the room, its free edge on the right. Below: a "
                "drawer front."
            )


def _table(record: Record, top: float) -> list[Mark]:
    marks: list[Mark] = []
    places = (LEFT_STRIP + 2.0, LEFT_STRIP + 14.0, LEFT_STRIP + 98.0, LEFT_STRIP + 132.0,
              LEFT_STRIP + 156.0)  # fmt: skip
    told = numbers(record)
    rows = [("", "number (mm)", "value", "standing", "confirmed")]
    rows += [(n.letter, n.name, n.value, n.standing, n.confirmed) for n in told]
    for row, cells in enumerate(rows):
        for column, (x, text) in enumerate(zip(places, cells, strict=True)):
            y = top - 4.0 - row * 5.0
            bold = row == 0 or (column == 4 and told[row - 1].open)
            marks.append(Text(x=x, y=y, text=text, bold=bold))
    below = top - 4.0 - len(rows) * 5.0
    return [*marks, Text(x=LEFT_STRIP + 2.0, y=below, text=legend())]


def _hinge_section(record: HingeRecord, boards: Boards) -> list[Mark]:
    """The section from above; (0, 0) is where the side's outer face meets the door's back."""
    side, door = boards.material.side, boards.material.front
    choice = choose_tab_and_plate(record, boards.wanted(record.kind))
    overlay = overlay_got(record, choice.tab, choice.plate)
    edge = side - overlay
    rim, far = edge + choice.tab, edge + choice.tab + record.cup_diameter
    face, line, end = side + choice.plate, record.plate_line, far + 10.0
    front = -door if record.kind == "inset" else 0.0
    under, start = -record.cup_depth, max(rim + 5.0, side + 1.0)
    marks: list[Mark] = [
        frame(0.0, front, side, line + 22.0),
        *hatching(0.0, front, side, line + 22.0),
        Outline(
            points=(
                (edge, -door), (end, -door), (end, 0.0), (far, 0.0), (far, under), (rim, under),
                (rim, 0.0), (edge, 0.0),
            ),
            width=MEDIUM,
        ),
        *hatching(edge, -door, rim, 0.0),
        *hatching(rim, -door, far, under),
        *hatching(far, -door, end, 0.0),
        Outline(
            points=(
                (start, 0.0), (start, 9.0), (face, 19.0), (face, line + 14),
                (face + 9, line + 14), (face + 9, 25.0), (far - 5, 12.0), (far - 5, 0.0),
            ),
            dash="dashed",
        ),
        Line(x1=-6.0, y1=line, x2=face + 16.0, y2=line, dash="axis"),
        *upward(0.0, line, -9.0, lettered(record, "plate_line", line),
                from1=min(0.0, edge), from2=-6.0),
        *upward(under, 0.0, end + 8.0, lettered(record, "cup_depth"), from1=far, from2=end),
    ]  # fmt: skip
    if choice.plate > 0.0:
        marks.append(frame(side, line - 12.0, face, line + 12.0))
        wanted = "" if record.plates else " wanted"  # nobody said that there is one
        marks += across(side, face, line + 30.0,
                        f'{lettered(record, "plates", choice.plate)}{wanted}',
                        from1=line + 22.0, from2=line + 12.0)  # fmt: skip
    y = -door - 8.0
    # The row of the one whose lines stand further left comes first: none crosses a value.
    tab_row, over_row = (y - 8.0, y) if edge > side else (y, y - 8.0)
    marks += across(edge, rim, tab_row, lettered(record, "tab", choice.tab),
                    from1=-door, from2=under, beside="left", outside=True)  # fmt: skip
    if abs(overlay) > 0.05:
        marks += across(min(edge, side), max(edge, side), over_row, sized("overlay", overlay),
                        from1=-door, from2=-door, beside="left", outside=True)  # fmt: skip
    if abs(face - rim) > 0.05:
        marks += across(min(rim, face), max(rim, face), y - 16.0, lettered(record, "constant"),
                        from1=under, from2=-door)  # fmt: skip
    marks += across(
        rim,
        far,
        y - 24.0,
        lettered(record, "cup_diameter"),
        from1=under,
        from2=under,
    )
    return marks


def _cup_plan(record: HingeRecord, boards: Boards) -> list[Mark]:
    """The door's back, its hinge edge on the left; (0, 0) is on that edge, level with the cup."""
    tab = choose_tab_and_plate(record, boards.wanted(record.kind)).tab
    cup, half = cup_from_edge(record, tab), record.fixing_spacing / 2
    line, reach = cup + record.fixing_inboard, record.flange_length / 2
    left, right = line - record.flange_width / 2, line + record.flange_width / 2
    wide = max(right, cup + record.cup_diameter / 2) + 4.0
    outer = max(reach, half) + 4.0
    screw = record.fixing_diameter or 3.0
    return [
        Line(x1=0.0, y1=-outer, x2=0.0, y2=outer, width=WIDE),
        Circle(x=cup, y=0.0, diameter=record.cup_diameter),
        Circle(x=line, y=half, diameter=screw),
        Circle(x=line, y=-half, diameter=screw),
        Outline(
            points=rectangle(left, -reach, right, reach), dash="dashed"
        ),
        Line(x1=-4.0, y1=0.0, x2=wide, y2=0.0, dash="axis"),
        Line(x1=line, y1=-outer, x2=line, y2=outer, dash="axis"),
        *upward(-half, half, wide + 6.0, lettered(record, "fixing_spacing"),
                from1=line + screw, from2=line + screw),
        *across(cup, line, outer + 6.0, lettered(record, "fixing_inboard"), from1=0.0, from2=outer),
        *across(0.0, tab, -outer - 6.0, lettered(record, "tab", tab), from1=-outer, from2=0.0),
        *across(0.0, cup, -outer - 14.0, sized("tab, half the cup", cup), from1=-outer, from2=0.0),
    ]  # fmt: skip


def _plate_plan(record: HingeRecord, room: float) -> list[Mark]:
    """The side's inside with the plate's holes, its front edge on the left; (0, 0) is on that
    edge, level with the middle of the plate. It is no higher than `room`, mm."""
    scale = next((s for s in SCALES if record.plate_spacing / s + 13.0 <= room), SCALES[-1])
    half, line = record.plate_spacing / 2 / scale, record.plate_line / scale
    end = half + 5.0
    return [
        Line(x1=0.0, y1=-end, x2=0.0, y2=end, width=WIDE),
        *(Circle(x=line, y=y, diameter=5.0 / scale) for y in (-half, half)),
        *(Line(x1=line - 5.0, y1=y, x2=line + 5.0, y2=y) for y in (-half, half)),
        *(Line(x1=line, y1=y - 5.0, x2=line, y2=y + 5.0) for y in (-half, half)),
        *across(0.0, line, 0.0, lettered(record, "plate_line"), from1=half, from2=half - 5.0),
        *upward(-half, half, line + 16.0, lettered(record, "plate_spacing"),
                from1=line + 5.0, from2=line + 5.0),
        Text(x=line + 26.0, y=2.0, text="The plate's holes on the inside of the side, its front"),
        Text(x=line + 26.0, y=-2.0, text=f"edge on the left. SCALE 1:{scale}"),
    ]  # fmt: skip


def _slide_section(record: SlideRecord, boards: Boards) -> list[Mark]:
    """The section across the box; (0, 0) is where its side's inner face meets the floor line."""
    side, drawer_side = boards.material.side, boards.material.drawer_side
    under = record.mount == "under"
    gap = record.width_less / 2 - (drawer_side if under else 0.0)
    rise, wall = record.drawer_rise, gap + drawer_side
    hole = record.drawer_rise + hole_above_drawer(record)
    high = _section_top(record)
    panel = rise + (record.recess if under else 12.0)
    marks: list[Mark] = [
        frame(-side, 0.0, 0.0, high + 8.0),
        *hatching(-side, 0.0, 0.0, high + 8.0),
        frame(-side, -side, 70.0, 0.0),
        *hatching(-side, -side, 70.0, 0.0),
        frame(gap, rise, wall, high),
        *hatching(gap, rise, wall, high),
        frame(wall, panel, 70.0, panel + 12.0),
        *hatching(wall, panel, 70.0, panel + 12.0),
        Line(x1=-side - 4.0, y1=hole, x2=gap - 0.6, y2=hole, dash="axis"),
        *upward(0.0, rise, 78.0, lettered(record, "drawer_rise", rise),
                from1=70.0, from2=wall, beside="below"),
        *across(0.0, gap if not under else wall, high + 16.0,
                f"half of {lettered(record, 'width_less')}", from1=high + 8.0, from2=high),
    ]  # fmt: skip
    if under:
        body = ((0.4, 0.6), (wall + 24.0, 0.6), (wall + 24.0, panel - 0.8),
                (wall + 0.8, panel - 0.8),
                (wall + 0.8, rise - 0.6), (gap - 0.8, rise - 0.6), (gap - 0.8, hole + 6.0),
                (0.4, hole + 6.0))  # fmt: skip
        marks.append(Outline(points=body, dash="dashed"))
        marks += upward(
            0.0,
            hole,
            -side - 8.0,
            lettered(record, "fixing_height", hole),
            from1=-side,
            from2=-side - 4.0,
        )
        marks += upward(rise, panel, 88.0, lettered(record, "recess"), from1=wall, from2=70.0)
    else:
        reach = record.end_height / 2
        marks.append(
            Outline(
                points=((0.4, hole - reach), (gap - 0.4, hole - reach), (gap - 0.4, hole + reach),
                        (0.4, hole + reach)),
                dash="dashed",
            )
        )  # fmt: skip
        marks += upward(rise, hole, -side - 8.0, lettered(record, "centre_height"),
                        from1=gap, from2=-side - 4.0)  # fmt: skip
    marks.append(
        Text(x=18.0, y=-side - 5.0, text="SCALE 1:1. Floor line: the bottom's upper face.")
    )
    return marks


def _section_top(record: SlideRecord) -> float:
    """How far up the drawer's side is drawn."""
    hole = record.drawer_rise + hole_above_drawer(record)
    return max(hole + 16.0, record.drawer_rise + record.recess + 30.0)


def _slide_places(record: SlideRecord) -> list[Mark]:
    """The side from inside, reduced; (0, 0) is its finished front edge on the hole line."""
    scale = next((s for s in SCALES if record.length / s <= 155.0), SCALES[-1])
    length, hole = record.length / scale, 5.0 / scale
    places = [x for x in (*record.fixing_at, *record.carry_at) if x <= record.length]
    marks: list[Mark] = [
        Line(x1=0.0, y1=-8.0, x2=0.0, y2=10.0, width=WIDE),
        Outline(points=rectangle(0.4, -5.0, length, 5.0), dash="dashed"),
    ]
    for row, x in enumerate(places):
        at = x / scale
        if x in record.fixing_at:
            marks.append(Circle(x=at, y=0.0, diameter=hole))
        marks.append(Line(x1=at, y1=-3.0, x2=at, y2=3.0))
        key = "fixing_at" if x in record.fixing_at else "carry_at"
        marks += across(0.0, at, 14.0 + 7.0 * row, lettered(record, key, x), from1=10.0, from2=3.0)
    marks += across(0.0, length, -12.0, lettered(record, "length"), from1=-8.0, from2=-5.0)
    marks.append(Text(x=0.0, y=-18.0, text=f"SCALE 1:{scale}. From the finished front edge."))
    return marks
