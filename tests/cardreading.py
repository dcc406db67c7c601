"""Cards read as a person reads them, and compared with the layout they were made from.

Where white meets black is the edge of the part; without black, the cut edge stands where its
words say, or the diamonds stand on the middle. Nothing is taken from the values the sheets were
drawn from.
"""

import re
from dataclasses import dataclass
from itertools import pairwise

from jigs.box.drawerbox import AnyDrawer
from jigs.box.parts import Front, Layout
from jigs.ground.geometry import Face, Hand, Hole
from tests.pinreading import bore_pins, card_number
from tests.readback import PrintedCard, PrintedPage, Run, extent


class UnreadableError(ValueError):
    """A card that nobody could set on its part."""


_INDEX = re.compile(
    r"SET THIS EDGE (?:(?P<inches>\d+) in \([\d.]+\)|(?P<mm>[\d.]+) \([^)]*\)) FROM "
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ruler:
    """How a coordinate of the page is read along one axis: a place on the face lies
    `value` + (coordinate - at) from its left or bottom edge, `from_far` from the other one.

    `kind` is `edge`, `index` or `middle`; of a middle, `value` counts from the middle.
    """

    kind: str
    at: float
    value: float
    from_far: bool

    def place(self, coordinate: float, length: float) -> float:
        """Give the place on a face `length` mm long; mm from its left or bottom edge as seen."""
        if self.kind == "middle":
            return length / 2 + coordinate - self.at
        if self.from_far:
            return length - self.value - (self.at - coordinate)
        return self.value + coordinate - self.at


def ruler_across(card: PrintedCard) -> Ruler:
    """Read what a card is set on from left to right."""
    bands = [band for band in card.bands if extent(band)[0] < 3.5]
    if bands:
        band = min(bands)  # a whole face has one at each side
        far = band[0] - card.box[0] > card.box[2] - band[2]
        return Ruler(kind="edge", at=band[0] if far else band[2], value=0.0, from_far=far)
    if card.middles:
        ats = [(middle[0] + middle[2]) / 2 for middle in card.middles]
        if max(ats) - min(ats) > 0.001:
            raise UnreadableError("two diamonds that do not stand one over the other")
        return Ruler(kind="middle", at=ats[0], value=0.0, from_far=False)
    runs = sorted(
        (r for r in card.runs if r.turned and r.bold and r.size < 3.0), key=lambda run: run.base
    )
    if not runs:
        raise UnreadableError("a card without black, middle or index words at its sides")
    far = runs[0].box[0] - card.box[0] > card.box[2] - runs[-1].box[2]
    return _cut_edge(runs, card.box[2] if far else card.box[0], far)


def ruler_up(card: PrintedCard) -> Ruler:
    """Read what a card is set on from bottom to top."""
    bands = [band for band in card.bands if extent(band)[1] < 3.5]
    if bands:
        band = min(bands, key=lambda band: band[1])
        far = band[1] - card.box[1] > card.box[3] - band[3]
        return Ruler(kind="edge", at=band[1] if far else band[3], value=0.0, from_far=far)
    level = [r for r in card.runs if r.bold and not r.turned and r.size < 3.0]
    first = next((run for run in level if run.text.startswith("SET THIS EDGE")), None)
    if first is None:
        raise UnreadableError("a card without black below or above, and without index words")
    centre = (first.box[0] + first.box[2]) / 2
    runs = sorted(
        (r for r in level if abs((r.box[0] + r.box[2]) / 2 - centre) < 0.05),
        key=lambda run: -(run.box[1] + run.box[3]),
    )
    runs = runs[runs.index(first) :]
    far = first.box[1] - card.box[1] > card.box[3] - first.box[3]
    return _cut_edge(runs, card.box[3] if far else card.box[1], far)


def _cut_edge(runs: list[Run], at: float, far: bool) -> Ruler:
    words = " ".join(run.text for run in runs)
    if words.startswith("SET THIS EDGE ON THE MIDDLE"):
        return Ruler(kind="middle", at=at, value=0.0, from_far=False)
    found = _INDEX.match(words)
    if found is None:
        raise UnreadableError(f"a card that is set on nothing; its words are {words!r}")
    value = 25.4 * int(found["inches"]) if found["inches"] else float(found["mm"])
    return Ruler(kind="index", at=at, value=value, from_far=far)


Place = tuple[float, float, float]
"""x, y, diameter of a hole on the face as the driller sees it; mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """The face of a part and the holes wanted in it, as the driller sees them.

    `shift`: how much further right and up a hole lies than is read from the edges the cards
    name: heights from a bottom panel, distances from an edge without its band. `board`: the
    column and the side of it, of a box side's or a partition's face. `panel`: the bottom panel's
    upper face above a box side's bottom end. `ends`: how far in from the left and the right end,
    as seen, a drawer box stands on it; `corners`: both its lower corners, where the face is marked
    through it.
    """

    part: str
    face: Face
    words: str
    width: float
    height: float
    holes: tuple[Place, ...]
    shift: tuple[float, float] = (0.0, 0.0)
    board: tuple[int, Hand] | None = None
    panel: float | None = None
    ends: tuple[float, float] | None = None
    corners: tuple[tuple[float, float], ...] = ()

    def from_edge(self, ruler: Ruler, axis: str) -> float:
        """Give how far from the face's own edge the line lies that a card is set on, mm."""
        raw_far = self.shift[0] < 0
        if axis == "x":
            return ruler.value + (abs(self.shift[0]) if ruler.from_far is raw_far else 0.0)
        return ruler.value + (0.0 if ruler.from_far else self.shift[1])

    def place(self, x: float, y: float, across: Ruler, up: Ruler) -> tuple[float, float]:
        """Give where a point of the page lies on the face, mm.

        An edge without its band is the front one, and the bottom panel is below: what is read
        from the rear edge or from the top end is as it is.
        """
        raw_far = self.shift[0] < 0
        return (
            across.place(x, self.width) + (self.shift[0] if across.from_far is raw_far else 0.0),
            up.place(y, self.height) + (0.0 if up.from_far else self.shift[1]),
        )


def wanted_faces(layout: Layout, *, pilots: bool = False) -> dict[tuple[str, str], Wanted]:
    """Give every drilled face of a layout by its part and the words that name the face.

    A hole of a drawer front that has one of its drawer box behind it is marked through that, and
    stands on no paper, unless `pilots` are set too.

    Mirrored here, apart from the sheets: a front's back is turned over; a right side lies with
    its front edge on the right. A cup at 22.5 on a door 454 wide stands at 454 - 22.5 = 431.5
    as seen from the back (derived).
    """
    faces: list[Wanted] = []
    for front in layout.fronts:
        if front.withheld:
            continue
        names = {"drawer": "DRAWER FRONT", "pullout": "PULLOUT FRONT", "lift": "LIFT-UP DOOR"}
        name = names.get(front.kind, front.kind.replace("pair", "door").replace("-", " ").upper())
        through = [] if pilots else _marked(front)
        back = [
            (front.width - h.x, h.y, h.diameter)
            for h in front.holes
            if h.face == "back" and h not in through
        ]
        face = [(h.x, h.y, h.diameter) for h in front.holes if h.face == "front"]
        box = front.drawer
        ends = (front.width - box.x - box.width, box.x) if box is not None else None
        for where, words, holes in (
            ("back", f"BACK OF {name}", back),
            ("front", "FRONT FACE", face),
        ):
            faces.append(
                Wanted(
                    part=front.id,
                    face="back" if where == "back" else "front",
                    words=words,
                    width=front.width,
                    height=front.height,
                    holes=tuple(holes),
                    ends=ends if where == "back" else None,
                    corners=(
                        (front.width - box.x - box.width, box.y),
                        (front.width - box.x, box.y),
                    )
                    if box is not None and where == "back" and through
                    else (),
                )
            )
        if box is not None:
            faces.append(
                Wanted(
                    part=box.id,
                    face="box-front",
                    words="FRONT OF DRAWER BOX",
                    width=box.width,
                    height=box.height,
                    holes=tuple((h.x, h.y, h.diameter) for h in box.holes),
                )
            )
            faces.append(_back_of(box))
    faces += [_back_of(rollout) for rollout in layout.rollouts if not rollout.withheld]
    for side in layout.sides:
        right = side.side == "right"
        faces.append(
            Wanted(
                part=side.board,
                face="inside",
                # The board at the right of a column shows it its left face.
                words=f"{'LEFT' if right else 'RIGHT'} FACE OF PARTITION {side.partition}"
                if side.partition
                else f"INSIDE OF {side.side.upper()} SIDE",
                width=side.depth,
                height=side.height,
                holes=tuple(
                    (side.depth - h.x if right else h.x, h.y, h.diameter) for h in side.holes
                ),
                shift=(
                    (-side.band if right else side.band) if side.band_state == "later" else 0.0,
                    side.bottom if side.assembled else 0.0,
                ),
                board=(side.column, side.side),
                panel=None if side.partition else side.bottom,
            )
        )
    return {(each.part, each.words): each for each in faces if each.holes or each.corners}


def _marked(front: Front) -> list[Hole]:
    """The fixing holes of a front that have a clearance hole behind them."""
    box = front.drawer
    behind = [] if box is None else [(box.x + hole.x, box.y + hole.y) for hole in box.holes]
    return [
        hole
        for hole in front.holes
        if hole.purpose == "front-fixing"
        and any(max(abs(hole.x - x), abs(hole.y - y)) < 0.05 for x, y in behind)
    ]


def corners_of(card: PrintedCard) -> list[tuple[float, float]]:
    """Read the lower corners of a drawer box that is drawn to be stood on: a solid upright and a
    solid level line, 0.25 wide, begin there; mm on the page."""
    solid = [each for each in card.strokes if not each.dashed and abs(each.line - 0.25) < 0.01]
    feet = {(each.x1, min(each.y1, each.y2)) for each in solid if abs(each.x1 - each.x2) < 0.005}
    ends = {
        (x, each.y1) for each in solid if abs(each.y1 - each.y2) < 0.005 for x in (each.x1, each.x2)
    }
    found = {
        (round(foot[0], 4), round(foot[1], 4))
        for foot in feet
        if any(max(abs(foot[0] - x), abs(foot[1] - y)) < 0.005 for x, y in ends)
    }
    return sorted(found)


def _back_of(box: AnyDrawer) -> Wanted:
    """A drawer box's back, turned over: what stands at the left is seen at the right."""
    return Wanted(
        part=box.id,
        face="box-back",
        words="BACK OF DRAWER BOX",
        width=box.width,
        height=box.height,
        holes=tuple(
            (box.width - hole.x, hole.y, hole.diameter)
            for fitting in box.rear
            for hole in fitting.holes
        ),
    )


def face_of(field: PrintedPage, wanted: dict[tuple[str, str], Wanted]) -> Wanted | None:
    """Read which part and face a field of a page is for; None for one that drills nothing."""
    parts = {part for part, _ in wanted}
    bold = [run.text for run in field.runs if run.bold]
    # A very long name is broken over two lines.
    named = [name for run, after in pairwise([*bold, ""]) for name in (run, run + after)
             if name in parts]  # fmt: skip
    drill = [words for _, words in wanted if f"DRILL THIS FACE: {words}" in field.text]
    return wanted.get((named[0], max(drill, key=len))) if named and drill else None


def faces_on(card: PrintedCard, own: Wanted, wanted: dict[tuple[str, str], Wanted]) -> list[Wanted]:
    """Read for which parts a card is: those with a box to tick, or that of its field.

    A heading that is broken behind "for" names whose fitting it is, and stands at no box.
    """
    parts = {part for part, _ in wanted}
    bold = ["", *(run.text for run in card.runs if run.bold), ""]
    ticked = [
        name
        for before, first, second in zip(bold, bold[1:], bold[2:], strict=False)
        for name in dict.fromkeys((first, first + second))
        if name in parts and not before.endswith(" for")
    ]
    if len(ticked) < 2:
        return [own]
    return [wanted[name, own.words] for name in dict.fromkeys(ticked)]


def faults_on_paper(
    pages: tuple[PrintedPage, ...], layout: Layout, *, pilots: bool = False
) -> list[str]:
    """Compare what stands on paper with the layout; give what does not agree, in words.

    Both lower corners of a drawer box once, within 0.01 mm, where its front is marked through it,
    and no other corner. Every hole on exactly one card, within 0.01 mm of its place, at its true
    diameter; no circle that is not a hole. Of a card for several parts each circle is a hole of
    each.
    """
    wanted = wanted_faces(layout, pilots=pilots)
    pins = {number: card for page in pages for card in page.cards
            if (number := card_number(card)) is not None}  # fmt: skip
    left = {key: list(face.holes) for key, face in wanted.items()}
    corners = {key: list(face.corners) for key, face in wanted.items()}
    faults: list[str] = []
    for page in pages:
        for field in page.fields:
            found = face_of(field, wanted)
            if found is not None:
                unbored = bore_pins(
                    field, found.width, found.shift, pins, left[found.part, found.words]
                )
                faults += [f"page {page.number}: {found.part}: {fault}" for fault in unbored]
        rings = list(page.rings)
        if not rings and not any(map(corners_of, page.cards)):
            continue
        for own, card in [
            (face_of(field, wanted), card) for field in page.fields for card in field.cards
        ]:
            if own is None:
                faults.append(f"page {page.number}: circles, and no part or face named")
                continue
            if card_number(card) is not None:
                rings = [ring for ring in rings if ring not in card.rings]
                continue
            try:
                across, up = ruler_across(card), ruler_up(card)
            except UnreadableError as error:
                faults.append(f"page {page.number}: {error}")
                continue
            for spot in corners_of(card):
                for face in faces_on(card, own, wanted):
                    x, y = face.place(*spot, across, up)
                    unread = corners[face.part, face.words]
                    near = [c for c in unread if max(abs(c[0] - x), abs(c[1] - y)) < 0.01]
                    if near:
                        unread.remove(near[0])
                    else:
                        faults.append(
                            f"page {page.number}: {face.part}: no corner at {x:.2f}, {y:.2f}"
                        )
            for ring in card.rings:
                rings.remove(ring)
                for face in faces_on(card, own, wanted):
                    x, y = face.place(ring.x, ring.y, across, up)
                    holes = left[face.part, face.words]
                    match = [
                        hole for hole in holes
                        if max(abs(hole[0] - x), abs(hole[1] - y)) < 0.01
                        and abs(hole[2] - ring.diameter) < 0.01
                        and abs(hole[2] - ring.height) < 0.01
                    ]  # fmt: skip
                    if match:
                        holes.remove(match[0])
                    else:
                        faults.append(
                            f"page {page.number}: {face.part}, {face.words}: no hole of "
                            f"{ring.diameter:.2f} at {x:.2f}, {y:.2f}"
                        )
        faults += [f"page {page.number}: a circle on no card" for _ in rings]
    for (part, words), holes in left.items():
        faults += [f"{part}, {words}: hole {hole} is nowhere on paper" for hole in holes]
        unread = corners[part, words]
        faults += [f"{part}, {words}: corner {spot} is nowhere on paper" for spot in unread]
    return faults
