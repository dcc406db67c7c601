"""The drilled faces of a part, exactly as the driller sees them.

Nothing is left for the user to mirror: the back of a front is turned over here, and a box side
is seen lying inside face up with its top end away.
"""

from collections.abc import Iterable

from msgspec.structs import replace

from jigs.bench.benchpart import Marks, marked_holes, marks_of
from jigs.box.drawerbox import AnyDrawer, DrawerBox
from jigs.box.parts import Front, Side
from jigs.given.confirming import resting
from jigs.ground.geometry import Face, Fitting, Hole, mirror_x, other_hand, turned_over
from jigs.ground.lengths import MM_PER_INCH, Unit
from templates.faces.faceview import BoardState, FaceView

INDEX_STEP: dict[Unit, float] = {"in": MM_PER_INCH, "mm": 10.0}
"""Round figures that a tape shows: whole inches, whole 10 mm."""


def _on_face(fittings: Iterable[Fitting], face: Face) -> tuple[Fitting, ...]:
    """The fittings, or parts of them, that are drilled from one face."""
    kept: list[Fitting] = []
    for fitting in fittings:
        holes: tuple[Hole, ...] = tuple(hole for hole in fitting.holes if hole.face == face)
        if holes:
            kept.append(fitting if len(holes) == len(fitting.holes) else _part(fitting, holes))
    return tuple(kept)


def _part(fitting: Fitting, holes: tuple[Hole, ...]) -> Fitting:
    return replace(fitting, holes=holes, outline=())


def views_of_front(front: Front, unit: Unit, *, pilots: bool = False) -> tuple[FaceView, ...]:
    """Give the faces of a front that have holes: the back first, since cups are bored first.

    In place of the holes that are marked through its drawer box, both lower corners of the box
    stand on the back; with `pilots` these holes stand there themselves, but for those of a box
    that its maker bored.
    """
    views = (_back_of_front(front, unit, pilots), _face_of_front(front, unit))
    return tuple(view for view in views if view.fittings)


def _back_of_front(front: Front, unit: Unit, pilots: bool) -> FaceView:
    """Give the back of a front, whether it has holes or not."""
    hinged = front.hinged if front.kind == "door" else None
    back = tuple(turned_over(each, front.width) for each in _on_face(front.fittings, "back"))
    marks = marks_of(front, pilots=pilots)
    if marks is not None:
        back = (*_corners(front, marks), *_unmarked(back, marked_holes(front), front.width))
    return replace(
        _face_of_front(front, unit),
        face="back",
        fittings=back,
        open=resting(front.open, "back"),
        marks=marks,
        hinge_edge=None if hinged is None else other_hand(hinged),
        ladder=hinged is not None and front.make.bevel is None,
        reversible=front.reversible if hinged and not front.bored else None,
        drawer_outline=_drawer_outline(front.drawer, front.width) if front.drawer else (),
    )


def _face_of_front(front: Front, unit: Unit) -> FaceView:
    return FaceView(
        part=front.id,
        kind=front.kind,
        code=front.code,
        face="front",
        width=front.width,
        height=front.height,
        thickness=front.make.thickness,
        fittings=_on_face(front.fittings, "front"),
        open=resting(front.open, "front"),
        hinge_edge=front.hinged if front.kind == "door" else None,
        reversible=None,
        opening=front.make.frame.opening if front.make.frame else (),
        rounded=front.make.edge_radius > 0.0,
        bevel=front.make.bevel,
        step=INDEX_STEP[unit],
    )


def _corners(front: Front, marks: Marks) -> tuple[Fitting, ...]:
    """Give both lower corners of the drawer box that stands on a front, as seen from the back."""
    return tuple(
        Fitting(
            kind="front-fixing",
            index=index,
            count=len(marks.corners),
            part=front.id,
            record=None,
            holes=(),
            stands=corner,
        )
        for index, corner in enumerate(marks.corners, 1)
    )


def _unmarked(
    back: Iterable[Fitting], marked: tuple[Hole, ...], width: float
) -> tuple[Fitting, ...]:
    """Leave out of the fittings of a back, as seen, the holes that are marked through a box."""
    seen = {(mirror_x(hole.x, width), hole.y) for hole in marked}
    kept: list[Fitting] = []
    for fitting in back:
        holes = tuple(
            hole
            for hole in fitting.holes
            if hole.purpose != "front-fixing" or (hole.x, hole.y) not in seen
        )
        if holes:
            kept.append(replace(fitting, holes=holes))
    return tuple(kept)


def view_of_side(side: Side, unit: Unit) -> FaceView | None:
    """Give the inside face of a box side lying with its top end away; None without holes."""
    if not side.fittings:
        return None
    fittings = (
        side.fittings
        if side.side == "left"
        else tuple(turned_over(fitting, side.depth) for fitting in side.fittings)
    )
    left = side.side == "left"
    return FaceView(
        part=side.board,
        code=side.code,
        face="inside",
        open=resting(side.open, "inside"),
        width=side.depth,
        height=side.height,
        thickness=side.thickness,
        fittings=fittings,
        front_edge="left" if left else "right",
        state=_state_of(side),
        column=side.column,
        side=side.side,
        partition=side.partition,
        ends=side.ends,
        on_legs=side.legs > 0.0,
        step=INDEX_STEP[unit],
    )


def _state_of(side: Side) -> BoardState:
    return BoardState(
        panel=None if side.assembled or side.partition else side.bottom,
        stand=side.assembled,
        low=side.bottom if side.assembled else 0.0,
        band=0.0 if side.band_state == "on" else side.band,
        raw=side.band_state == "later" and side.band > 0.0,
    )


def view_of_drawer_box(
    drawer: DrawerBox, thickness: float, unit: Unit, marks: Marks | None = None
) -> FaceView | None:
    """Give the front of a drawer box as seen from the room; None without holes. `marks`: how it
    stands on the front that is marked through it."""
    if not drawer.fittings:
        return None
    return FaceView(
        part=drawer.id,
        code=drawer.code,
        face="box-front",
        width=drawer.width,
        height=drawer.height,
        thickness=thickness,
        fittings=drawer.fittings,
        open=resting(drawer.open, "box-front"),
        marks=marks,
        step=INDEX_STEP[unit],
    )


def view_of_drawer_back(part: str, code: str, box: AnyDrawer, unit: Unit) -> FaceView | None:
    """Give the back of a drawer box, or of a rollout, as seen from behind; None without holes."""
    if not box.rear:
        return None
    return FaceView(
        part=part,
        code=code,
        face="box-back",
        width=box.width,
        height=box.height,
        thickness=box.side,
        fittings=tuple(turned_over(fitting, box.width) for fitting in box.rear),
        open=resting(box.open, "box-back"),
        step=INDEX_STEP[unit],
    )


def _drawer_outline(drawer: DrawerBox, width: float) -> tuple[tuple[float, float], ...]:
    left, right = mirror_x(drawer.x + drawer.width, width), mirror_x(drawer.x, width)
    bottom, top = drawer.y, drawer.y + drawer.height
    return ((left, bottom), (right, bottom), (right, top), (left, top))
