"""The drilled face of a part, exactly as the driller sees it.

Nothing is left for the user to mirror: the back of a front is turned over here, and a box side
is seen lying inside face up with its top end away.
"""

from collections.abc import Iterable
from dataclasses import replace

from jigs.box.parts import DrawerBox, Front, Side
from jigs.given.confirming import OpenNumber, rests_on
from jigs.given.rolloutspec import Rollout
from jigs.ground.geometry import Face, Fitting, Hand, Hole, mirror_x
from jigs.ground.lengths import Unit
from templates.faces.faceview import FaceView
from templates.faces.reference import CardEdge
from templates.words.wording import FRONT_WORDS, face_across, side_words

INDEX_STEP: dict[Unit, float] = {"in": 25.4, "mm": 10.0}
"""Round figures that a tape shows: whole inches, whole 10 mm."""


def _turned(fitting: Fitting, width: float) -> Fitting:
    """The same fitting seen from the other face."""
    return replace(
        fitting,
        holes=tuple(replace(hole, x=mirror_x(hole.x, width)) for hole in fitting.holes),
        outline=tuple(
            tuple((mirror_x(x, width), y) for x, y in polygon) for polygon in fitting.outline
        ),
        carry=tuple(mirror_x(x, width) for x in fitting.carry),
    )


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


def _open(numbers: Iterable[OpenNumber], face: Face) -> tuple[OpenNumber, ...]:
    return tuple(number for number in numbers if rests_on(number, face))


def _edges_of_front(hinge_edge: Hand | None) -> dict[CardEdge, str]:
    """Name a front's edges as seen; `hinge_edge` is the one that carries the hinges."""
    if hinge_edge is None:
        sides = ("LEFT END", "RIGHT END")
    elif hinge_edge == "left":
        sides = ("HINGE EDGE", "FREE EDGE")
    else:
        sides = ("FREE EDGE", "HINGE EDGE")
    return {"left": sides[0], "right": sides[1], "bottom": "BOTTOM EDGE", "top": "TOP EDGE"}


def views_of_front(front: Front, unit: Unit) -> tuple[FaceView, ...]:
    """Give the faces of a front that have holes: the back first, since cups are bored first."""
    views: list[FaceView] = []
    words = FRONT_WORDS[front.kind]
    hinged = front.hinged if front.kind == "door" else None
    turned: dict[Hand | None, Hand | None] = {"left": "right", "right": "left", None: None}
    other = turned[hinged]
    reversible = front.reversible if hinged and not front.bored else None
    bare = FaceView(
        part=front.id,
        code=front.code,
        face="front",
        width=front.width,
        height=front.height,
        thickness=front.thickness,
        fittings=_on_face(front.fittings, "front"),
        open=_open(front.open, "front"),
        drilled="FRONT FACE",
        seen="You are looking at the face, as from the room.",
        edges=_edges_of_front(hinged),
        hinge_edge=hinged,
        reversible=None,
        opening=front.frame.opening if front.frame else (),
        rounded=front.edge_radius > 0.0,
        bevel=front.bevel,
        step=INDEX_STEP[unit],
    )
    if hinged:
        free = "RIGHT" if hinged == "left" else "LEFT"
        seen = (
            f"You are looking at the face, as from the room: hinges on the {hinged.upper()}, "
            f"the free edge on your {free}."
        )
        bare = replace(bare, seen=seen)
    back = _on_face(front.fittings, "back")
    if back:
        seen = (
            "You are looking at the back, the side that faces the box. "
            "Its right end is the LEFT end seen from the room."
        )
        if hinged and other:
            seen = (
                f"You are looking at the back: the hinge edge is on your {other.upper()}. "
                f"Hung and seen from the room, the hinges are on the {hinged.upper()}."
            )
        turned_over = replace(
            bare,
            face="back",
            fittings=tuple(_turned(fitting, front.width) for fitting in back),
            open=_open(front.open, "back"),
            drilled=f"BACK OF {words.upper()}",
            seen=seen,
            edges=_edges_of_front(other),
            hinge_edge=other,
            ladder=hinged is not None and front.bevel is None,
            reversible=reversible,
            drawer_outline=_drawer_outline(front.drawer, front.width) if front.drawer else (),
        )
        views.append(turned_over)
    if bare.fittings:
        views.append(bare)
    return tuple(views)


def view_of_side(side: Side, unit: Unit) -> FaceView | None:
    """Give the inside face of a box side lying with its top end away; None without holes."""
    if not side.fittings:
        return None
    fittings = (
        side.fittings
        if side.side == "left"
        else tuple(_turned(fitting, side.depth) for fitting in side.fittings)
    )
    left = side.side == "left"
    raw = side.band_state == "later" and side.band > 0.0
    front = "RAW FRONT EDGE" if raw else "FRONT EDGE"
    name = side_words(side).upper()
    lying = f"this face, towards column {side.column}," if side.partition else "inside face"
    how = f"It lies {lying} up"
    if side.assembled:
        how = f"The BOX lies {f'with {lying} up' if side.partition else 'on this side'}"
    below = "PANEL BELOW" if side.partition else "BOTTOM PANEL"
    return FaceView(
        part=side.board,
        code=side.code,
        face="inside",
        open=_open(side.open, "inside"),
        width=side.depth,
        height=side.height,
        thickness=side.thickness,
        fittings=fittings,
        drilled=name if side.partition else f"INSIDE OF {name}",
        seen=(f"{how}, its top end away from you: the FRONT edge is on your {side.side.upper()}."),
        edges={
            "left": front if left else "REAR EDGE",
            "right": "REAR EDGE" if left else front,
            "bottom": below if side.assembled else "BOTTOM END",
            "top": "TOP END",
        },
        front_edge="left" if left else "right",
        panel=None if side.assembled or side.partition else side.bottom,
        low=side.bottom if side.assembled else 0.0,
        stand=side.assembled,
        column=side.column,
        side=side.side,
        partition=side.partition,
        base=side.base,
        below=side.below,
        mate=face_across(side).upper(),
        raised=side.raised,
        on_legs=side.legs > 0.0,
        band=0.0 if side.band_state == "on" else side.band,
        raw=raw,
        step=INDEX_STEP[unit],
    )


def view_of_drawer_box(drawer: DrawerBox, thickness: float, unit: Unit) -> FaceView | None:
    """Give the front of a drawer box as seen from the room; None without holes."""
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
        open=_open(drawer.open, "box-front"),
        drilled="FRONT OF DRAWER BOX",
        seen=(
            "You are looking at the outside of the drawer box's front, as from the room, "
            "the box standing on its bottom."
        ),
        edges={
            "left": "LEFT END",
            "right": "RIGHT END",
            "bottom": "UNDERSIDE",
            "top": "TOP EDGE",
        },
        step=INDEX_STEP[unit],
    )


def view_of_drawer_back(
    part: str, code: str, box: DrawerBox | Rollout, unit: Unit
) -> FaceView | None:
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
        fittings=tuple(_turned(fitting, box.width) for fitting in box.rear),
        open=_open(box.open, "box-back"),
        drilled="BACK OF DRAWER BOX",
        seen=(
            "You are looking at the outside of the drawer box's back, the box standing on its "
            "bottom. Its right end is the LEFT end seen from the room."
        ),
        edges={
            "left": "LEFT END",
            "right": "RIGHT END",
            "bottom": "UNDERSIDE",
            "top": "TOP EDGE",
        },
        step=INDEX_STEP[unit],
    )


def _drawer_outline(drawer: DrawerBox, width: float) -> tuple[tuple[float, float], ...]:
    left, right = mirror_x(drawer.x + drawer.width, width), mirror_x(drawer.x, width)
    bottom, top = drawer.y, drawer.y + drawer.height
    return ((left, bottom), (right, bottom), (right, top), (left, top))
