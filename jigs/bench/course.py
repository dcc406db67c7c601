"""The course of every part: its steps in the order of the work, and what each of them waits for.

Fronts arrive, are bored, painted on the back, then on the face (unless they come painted), hung
and adjusted. Pieces are cut, banded, bored, assembled; a side whose box stands already is bored in
it. The spacer under a rollout's slide is cut before its side is bored, for it is bored with it, and
mounted as that is. Fillers, end panels and island backs are scribed dry, to a wall or the floor, at
boxes that stand, and cut before their first coat: a saw chips paint and leaves a bare edge. A
drawer box is put together from its pieces, or arrives; it is bored and set
on its slides. A pull whose screws go through the drawer box too is bored for when the front is on.
All common practice, no source.

Nothing is bored, painted or hung of what is held back; it may arrive, or be cut, meanwhile. What
nothing asks for is no step: a side without holes is not bored, nor is a door that came bored.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence

from msgspec import Struct, field

from jigs.bench.standing import Step, StepKind, Wait
from jigs.bench.station import Station, Work
from jigs.bench.tracked import Tracked
from jigs.box.drawerbox import AnyDrawer, DrawerBox
from jigs.box.parts import Front, Layout, Side
from jigs.cutlist.piece import DRAWER_KINDS, Piece, PieceKind
from jigs.given.job import FrontKind
from jigs.ground.grouped import grouped

ARRIVED, CUT, BANDED = Step(kind="arrived"), Step(kind="cut"), Step(kind="banded")
MOUNTED, ASSEMBLED = Step(kind="mounted"), Step(kind="assembled")
SCRIBED = Step(kind="scribed")
HUNG, FITTED, ADJUSTED = Step(kind="hung"), Step(kind="fitted"), Step(kind="adjusted")
ON_BOX = Step(kind="bored", work="fronts-on-boxes")

WHILE_HELD: frozenset[StepKind] = frozenset({"arrived", "cut", "banded"})
"""What may be done with a part that is held back."""
STILL: frozenset[FrontKind] = frozenset({"false-front", "panel"})
"""Fronts that neither swing nor run: they are fitted, and nothing adjusts them."""
AFTER_HANGING: frozenset[Work] = frozenset({"pulls-through"})
SEEN: frozenset[PieceKind] = frozenset({"filler", "end-panel", "island-back"})
"""Pieces that are painted and fitted as the fronts are."""


class Course(Struct, frozen=True, kw_only=True):
    """The steps of one part."""

    steps: tuple[Step, ...]
    """In order."""
    waits: Mapping[str, tuple[Wait, ...]] = field(default_factory=dict)
    """What steps wait for, by their keys."""
    given: frozenset[str] = frozenset()
    """The keys of those that the job itself says are done."""


def plan_courses(
    layout: Layout, parts: Sequence[Tracked], stations: Sequence[Station]
) -> Mapping[str, Course]:
    """Plan the courses of a job's parts by their IDs; `stations`: where they are bored."""
    planned = _Courses(layout, parts, stations)
    return {part.id: planned.of(part) for part in parts}


class _Courses:
    """The courses of one job."""

    def __init__(
        self, layout: Layout, parts: Sequence[Tracked], stations: Sequence[Station]
    ) -> None:
        self._job = layout.job
        self._works = _works(stations)
        self._together = {box.id for box in layout.boxes if box.built or box.assembled}
        self._late = {box.id for box in layout.boxes if box.band == "later"}
        self._of_drawer = grouped(
            (part.piece.id.rpartition("-")[0], part.piece)
            for part in parts
            if part.piece is not None and part.piece.kind in DRAWER_KINDS
        )
        self._carrying = grouped(
            (fitting.part, side.board)
            for side in layout.sides
            for fitting in side.fittings
            if fitting.part is not None and fitting.kind in ("plate", "slide")
        )
        # A spacer is bored with the slide's holes of its side.
        self._spaced = grouped(
            (side.board, part.piece)
            for part in parts
            if part.piece is not None and part.piece.kind == "spacer"
            for side in layout.sides
            if side.side == part.piece.hand
            and any(part.piece.id.startswith(f"{each.part}-") for each in side.fittings)
        )
        self._pinned = grouped(
            (side.box, side.board)
            for side in layout.sides
            if any(fitting.kind == "shelf" for fitting in side.fittings)
        )

    def of(self, part: Tracked) -> Course:
        """Plan the course of one part."""
        if part.drawer is not None:
            return self._drawer(part.drawer, part.held)
        if part.front is not None:
            return self._front(part.front)
        if part.faces:
            return self._board(part.id, part.faces, part.piece)
        assert part.piece is not None, "what is neither front, drawer box nor board is cut"
        return self._piece(part.piece)

    def _front(self, front: Front) -> Course:
        bored = self._bored(front.id)
        last = FITTED if front.kind in STILL else HUNG
        steps = (
            ARRIVED,
            *(step for step in bored if step.work not in AFTER_HANGING),
            *(self._painted() if self._job.paint.here else ()),
            last,
            *(step for step in bored if step.work in AFTER_HANGING),
            *(() if front.kind in STILL else (ADJUSTED,)),
        )
        waits = {last.key: self._carried(front.id)}
        if front.drawer is not None:
            *before, run = self._drawer_steps(front.drawer)
            waits[last.key] = [Wait(part=front.drawer.id, step=run)]
            waits[ON_BOX.key] = [Wait(part=front.drawer.id, step=before[-1])]
        came = self._job.delivery is not None and front.id in self._job.delivery.arrivals
        return _course(
            steps, waits, held=(front.id,) if front.held else (),
            given=(ARRIVED.key,) if came else (),
        )  # fmt: skip

    def _board(self, board: str, sides: Sequence[Side], piece: Piece | None) -> Course:
        box = sides[0].box
        carries = any(each.kind in ("plate", "slide") for side in sides for each in side.fittings)
        bored = (*self._bored(board), *((MOUNTED,) if carries else ()))
        if box in self._together or piece is None:
            steps: tuple[Step, ...] = bored
        elif box in self._late:
            steps = (CUT, *bored, *_banded(piece), ASSEMBLED)
        else:
            steps = (CUT, *_banded(piece), *bored, ASSEMBLED)
        missing = dict.fromkeys(part for side in sides for part in side.missing)
        spacers = [
            Wait(part=spacer.id, step=(CUT, *_banded(spacer))[-1])
            for spacer in self._spaced.get(board, ())
        ]
        waits = {step.key: spacers for step in self._bored(board) if step.work == "sides"}
        return _course(steps, waits, held=tuple(missing))

    def _piece(self, piece: Piece) -> Course:
        together = piece.box in self._together and piece.kind not in DRAWER_KINDS
        if piece.kind == "spacer":
            return _course((CUT, *_banded(piece), MOUNTED), {})
        if piece.kind in SEEN:
            scribed = (SCRIBED,) if piece.scribed else ()
            return _course((CUT, *_banded(piece), *scribed, *self._painted(), FITTED), {})
        if piece.kind == "shelf":
            pins = [
                Wait(part=board, step=step)
                for board in dict.fromkeys(self._pinned.get(piece.box or "", ()))
                for step in self._bored(board)
            ]
            return _course((CUT, *_banded(piece), FITTED), {FITTED.key: pins})
        return _course(() if together else (CUT, *_banded(piece), ASSEMBLED), {})

    def _drawer(self, box: AnyDrawer, held: Collection[object]) -> Course:
        steps = self._drawer_steps(box)
        served = box.front if isinstance(box, DrawerBox) else box.id
        made = [
            Wait(part=piece.id, step=(CUT, *_banded(piece))[-1])
            for piece in self._of_drawer.get(box.id, ())
        ]
        waits = {FITTED.key: self._carried(served), ASSEMBLED.key: made}
        return _course(steps, waits, held=(served,) if held else ())

    def _drawer_steps(self, box: AnyDrawer) -> tuple[Step, ...]:
        ordered = self._job.build.drawer_boxes == "ordered"
        return (ARRIVED if ordered else ASSEMBLED, *self._bored(box.id), FITTED)

    def _bored(self, part: str) -> tuple[Step, ...]:
        return self._works.get(part, ())

    def _painted(self) -> tuple[Step, ...]:
        faces: tuple[StepKind, StepKind] = ("back", "front")
        coats = range(1, self._job.paint.coats + 1)
        return tuple(Step(kind=face, coat=coat) for face in faces for coat in coats)

    def _carried(self, part: str) -> list[Wait]:
        """Give the boards whose plates or slides carry a part."""
        boards = dict.fromkeys(self._carrying.get(part, ()))
        return [Wait(part=board, step=MOUNTED) for board in boards]


def _works(stations: Sequence[Station]) -> Mapping[str, tuple[Step, ...]]:
    """Say of each part what is bored into it, in the order of the work."""
    found: dict[str, dict[Step, None]] = {}
    for station in stations:
        for row in station.rows:
            if not row.withheld and not row.bored:
                found.setdefault(row.part.id, {})[Step(kind="bored", work=station.work)] = None
    return {part: tuple(steps) for part, steps in found.items()}


def _banded(piece: Piece) -> tuple[Step, ...]:
    return (BANDED,) if piece.band else ()


def _course(
    steps: tuple[Step, ...],
    waits: Mapping[str, Iterable[Wait]],
    *,
    held: Collection[str] = (),
    given: Iterable[str] = (),
) -> Course:
    """Give a course; `held`: the parts that are to be released before it goes on."""
    released = [Wait(part=part) for part in held]
    said = {
        step.key: (*(() if step.kind in WHILE_HELD else released), *waits.get(step.key, ()))
        for step in steps
    }
    return Course(
        steps=steps,
        waits={key: each for key, each in said.items() if each},
        given=frozenset(given),
    )
