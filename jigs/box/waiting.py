"""What a front that is held back may still bring into the boards, and who waits for it.

A front is held back until something is settled; what is printed of the others in the meantime must
neither move nor meet its holes then. Where the holes are known they stand in the way already. A
door whose hand nobody stated may hang on either board: it is laid out for each. Where others keep
their places either way they are ready; where they do not, they wait with it. Where nothing at all
is known of the holes (no slide stated, no hinge) nobody else's stand at that height of the board.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.box.boards import FaceKey, across
from jigs.box.columns import Columns
from jigs.box.facework import DoorPlan, FaceWork, face_of, hang_door, hinge_of, slide_of
from jigs.box.fronts import PlacedFront
from jigs.given.job import Job
from jigs.ground.geometry import HANDS, Fitting

MOST_OPEN = 6
"""More doors than this without a hand at one board are not tried in every way: what stands at
their height waits for them (our own choice: 2 to the 6th ways)."""


class Shadow(Struct, frozen=True, kw_only=True):
    """A height of a face, from the box's bottom end in mm, where a front that is held back will
    have holes, nobody knows where. `rank`: its place among the fronts of the box, `moves_doors`:
    doors give way to it wherever they stand, `fixed`: its holes give way to nobody's."""

    front: str
    low: float
    high: float
    rank: int
    moves_doors: bool
    fixed: bool


class Prospect(Struct, frozen=True, kw_only=True):
    """What may still come into the faces of a box.

    `plates`: wherever the plates of a door may stand that is without a hand, or gives way to one.
    `waits`: the doors that would move or find no place, and those that each waits for.
    """

    plates: Mapping[FaceKey, tuple[Fitting, ...]] = field(default_factory=dict)
    shadows: Mapping[FaceKey, tuple[Shadow, ...]] = field(default_factory=dict)
    waits: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    def beside(self, key: FaceKey) -> Iterator[Shadow]:
        """Give the shadows on the other side of a partition."""
        yield from self.shadows.get(across(key), ())

    def spans(self, keys: Iterable[FaceKey]) -> tuple[tuple[float, float], ...]:
        """Give the heights of some faces, and of those behind them, that are in a shadow; mm."""
        return tuple(
            (shadow.low, shadow.high)
            for key in keys
            for shadow in (*self.shadows.get(key, ()), *self.beside(key))
        )


def is_open(front: PlacedFront) -> bool:
    """Tell whether a front is a door that will hang on one of two boards, nobody said which."""
    return front.kind == "door" and front.hinged is None and not front.spec.by_kit


def foresee(
    job: Job,
    columns: Columns,
    fronts: Sequence[PlacedFront],
    start: float,
    before: FaceWork,
    bands: Mapping[FaceKey, Sequence[tuple[float, float]]],
    doors: Mapping[str, DoorPlan],
) -> Prospect:
    """Find what the held fronts of a box may still bring into its boards.

    `before`: what is drilled there but for plates; `doors`: the plans of those whose hand is
    known.
    """
    shadows = _cast_shadows(job, fronts)
    plates: dict[FaceKey, dict[Fitting, None]] = {}
    waits: dict[str, tuple[str, ...]] = {}
    for board in _boards(len(columns.carcasses)):
        here = [
            replace(front, hinged=hand)
            for front in fronts
            for hand in HANDS
            if face_of(front, hand) in board and (front.hinged == hand or is_open(front))
        ]
        hinges = {front.id: hinge for front in here if (hinge := hinge_of(job, front))}
        open_ = [f.id for f in fronts if is_open(f) and f.id in hinges]
        if len(open_) > MOST_OPEN:
            for rank, front in enumerate(fronts):
                if front.id in open_:
                    _cast(shadows, board, front, rank, fixed=True)
            continue
        for count in range(1, len(open_) + 1):
            for chosen in combinations(open_, count):
                work = {key: list(before.get(key, ())) for key in board}
                for front in here:
                    if front.id not in hinges or (front.id in open_ and front.id not in chosen):
                        continue
                    key = face_of(front, front.hinged or "left")
                    plan, found = hang_door(
                        job, columns, front, hinges[front.id], start, work, bands
                    )
                    work[key].extend(found)
                    plates.setdefault(key, {}).update(dict.fromkeys(found))
                    if front.id in doors and not _agree(plan, doors[front.id]):
                        waits.setdefault(front.id, chosen)
    return Prospect(
        plates={key: tuple(found) for key, found in plates.items()},
        shadows={key: tuple(cast) for key, cast in shadows.items()},
        waits=waits,
    )


def _boards(columns: int) -> Iterator[tuple[FaceKey, ...]]:
    """Give the faces of each board of a box together, from the left."""
    yield ((1, "left"),)
    for column in range(1, columns):
        yield ((column, "right"), (column + 1, "left"))
    yield ((columns, "right"),)


def _agree(one: DoorPlan, other: DoorPlan) -> bool:
    """Tell whether a door hangs at the same places in both plans, and no worse in the first."""
    return one.plates == other.plates and (not one.against or bool(other.against))


def _cast_shadows(
    job: Job,
    fronts: Sequence[PlacedFront],
) -> dict[FaceKey, list[Shadow]]:
    shadows: dict[FaceKey, list[Shadow]] = {}
    for rank, front in enumerate(fronts):
        spec = front.spec
        if spec.by_kit:
            continue
        fixed = spec.boring.bored or bool(spec.hung.hinges_at)
        if front.kind == "door":
            for hand in HANDS:
                hung = replace(front, hinged=hand)
                if front.hinged not in (None, hand):
                    continue
                if hinge_of(job, hung) is None or (spec.boring.bored and not spec.hung.hinges_at):
                    _cast(shadows, (face_of(front, hand),), front, rank, fixed=fixed)
        elif front.kind in ("drawer", "pullout") and slide_of(job, front) is None:
            on_kit = front.kind == "pullout" and spec.holes
            for hand in () if on_kit else HANDS:
                _cast(shadows, (face_of(front, hand),), front, rank, fixed=True, slides=True)
    return shadows


def _cast(
    shadows: dict[FaceKey, list[Shadow]],
    faces: Iterable[FaceKey],
    front: PlacedFront,
    rank: int,
    *,
    fixed: bool,
    slides: bool = False,
) -> None:
    for hand in HANDS:
        key = face_of(front, hand)
        if key in faces:
            shadow = Shadow(
                front=front.id, low=front.place.y, high=front.top, rank=rank, moves_doors=slides,
                fixed=fixed,
            )  # fmt: skip
            shadows.setdefault(key, []).append(shadow)
