"""Which assumptions touch which part: the defaults that stand in for numbers nobody gave.

Every sheet of a part is stamped with them. A part is touched by the default of a number that
its size or a place on it is computed from. How they are said: `templates/words/standinwords.py`.
"""

from collections.abc import Iterable, Sequence
from functools import lru_cache

from jigs.box.fronts import PlacedFront
from jigs.fittings.fivepiece import stand_ins_of_frame
from jigs.given.confirming import StandIn
from jigs.given.job import (
    COUNTER_BOXES,
    BoxSpec,
    FrontKind,
    FrontSpec,
    Job,
)
from jigs.given.kinds import KINDS, by_rank, kind_of
from jigs.ground.geometry import Fitting, FittingKind

INSET = ("reveal.between", "reveal.inset", "material.side", "material.front")
REVEALS = ("reveal.side", "reveal.top", "reveal.bottom", "reveal.between")
HINGED = ("material.side", "material.front", "material.front_kind")
RUNNING = ("material.side", "material.back", "material.drawer_side")
FALSE = ("material.side", "material.drawer_side")
SIDES = ("material.side", "material.band")
BOX_SIZE = ("kind", "width", "height")


def assumed_in_front(
    job: Job, box: BoxSpec, front: PlacedFront, *, pull: str | None, hinge: str | None
) -> tuple[StandIn, ...]:
    """List what nobody gave of what a front rests on; `pull` and `hinge`: the records that it
    has."""
    spec = front.spec
    keys = keys_of_front(spec, front.kind, box, pull)
    frame = (_stand_in(f"five_piece.{name}", size) for name, size in stand_ins_of_frame(spec))
    return (*list_assumed(job, keys, slide=spec.slide, hinge=hinge, box=box), *frame)


def assumed_in_drawer(job: Job, box: BoxSpec, front: PlacedFront) -> tuple[StandIn, ...]:
    """List what nobody gave of what the drawer box behind a front rests on."""
    spec = front.spec
    return list_assumed(job, keys_of_drawer(spec, box), slide=spec.slide, box=box)


def assumed_in_side(job: Job, box: BoxSpec, fittings: Sequence[Fitting]) -> tuple[StandIn, ...]:
    """List what nobody gave of what a board with these fittings rests on."""
    hinges = [f.record for f in fittings if kind_of(f).record == "hinge" and f.record]
    keys = keys_of_side(box, (fitting.kind for fitting in fittings))
    return list_assumed(job, keys, hinge=", ".join(dict.fromkeys(hinges)), box=box)


def keys_of_front(
    spec: FrontSpec, kind: FrontKind, box: BoxSpec, pull: str | None
) -> tuple[str, ...]:
    """Give the keys that a front's size and holes are computed from; `pull`: its pull's record.

    `kind` is `door` for a leaf of a pair, whose spec is the pair's. A front with a thickness of
    its own has nothing of the job's.
    """
    overlay = spec.overlay or box.overlay
    keys = [*(INSET if overlay == "inset" else _reveals(box))]
    keys += [f"box.{box.id}.{key}" for key in BOX_SIZE]
    keys += ["material.side"] if overlay == "half" else []
    match kind:
        case _ if spec.by_kit:
            pass
        case "door":
            keys += HINGED
            keys += [] if spec.hung.hinge else ["use.hinge"]
        case "drawer" | "pullout":
            keys += keys_of_drawer(spec, box)
        case "false-front":
            keys += FALSE
        case _:
            pass
    keys += ["material.front"]
    if spec.thickness is not None:
        keys = [key for key in keys if key != "material.front"]
    if pull is not None:
        hung = kind in ("door", "lift")
        keys += [] if spec.opened_by.pull else [f"use.{'door' if hung else 'drawer'}_pull"]
        keys += [f"pull.{pull}.{key}" for key in _pull_keys(kind, box)]
        if "tall_height" in _pull_keys(kind, box):
            keys += [f"box.{box.id}.above_floor"]
    return tuple(keys)


def _reveals(box: BoxSpec) -> tuple[str, ...]:
    """Give the keys of the reveals of a box's fronts: under a counter the top one is its own."""
    if box.kind not in COUNTER_BOXES:
        return REVEALS
    return tuple("reveal.under_counter" if key == "reveal.top" else key for key in REVEALS)


def keys_of_drawer(spec: FrontSpec, box: BoxSpec) -> tuple[str, ...]:
    """Give the keys that the drawer box behind a front is computed from.

    An inset front's thickness sets it back.
    """
    inset = (spec.overlay or box.overlay) == "inset" and spec.thickness is None
    # The default slide goes by the box's depth and stands in the front itself.
    slide = (*RUNNING, f"box.{box.id}.depth", "use.slide")
    return (*slide, "material.front") if inset else slide


def keys_of_side(box: BoxSpec, kinds: Iterable[FittingKind]) -> tuple[str, ...]:
    """Give the keys that a box side's size and holes are computed from.

    `kinds` are the kinds of the fittings it carries.
    """
    keys = [
        *SIDES,
        *_reveals(box),
        *(INSET if box.overlay == "inset" else ()),
        *(f"box.{box.id}.{key}" for key in (*BOX_SIZE, "depth")),
    ]
    rests = [key for kind in by_rank(kinds) for key in KINDS[kind].rests]
    keys += [key if "." in key else f"box.{box.id}.{key}" for key in rests]
    return tuple(keys)


def _pull_keys(kind: FrontKind, box: BoxSpec) -> tuple[str, ...]:
    match kind:
        case "door" if box.kind == "tall":
            return ("door_inset", "door_corner", "tall_height")
        case "door":
            return ("door_inset", "door_corner")
        case "drawer":
            return ("drawer", "two_from", "screws")
        case "false-front":
            return ("drawer", "two_from")
        case _:
            return ("door_corner",)


def list_assumed(
    job: Job,
    keys: Iterable[str],
    slide: str | None = None,
    hinge: str | None = None,
    box: BoxSpec | None = None,
) -> tuple[StandIn, ...]:
    """Give the defaults among `keys`; `slide` and `hinge` are the records a front
    really runs or hangs on, `box` is the one whose keys are among them."""
    figures = {"use.slide": slide, "use.hinge": hinge}
    return tuple(
        _stand_in(key, figures.get(key) or _figure(job, key, box))
        for key in sorted(set(keys) & job.assumed)
    )


@lru_cache(maxsize=4096)  # rests in every part alike; so all hold one value
def _stand_in(key: str, figure: float | str | None) -> StandIn:
    return StandIn(key, figure)


def _figure(job: Job, key: str, box: BoxSpec | None) -> float | str | None:
    """Give the value that stands behind a key, None where it is not a plain one."""
    table, _, rest = key.partition(".")
    name, _, field = rest.rpartition(".")
    value = getattr(_holder(job, table, name, box), field, None)
    return value if isinstance(value, float | str) else None


def _holder(job: Job, table: str, name: str, box: BoxSpec | None) -> object:
    """Give what a table of the job was read into; None where there is nothing."""
    match table:
        case "material":
            return job.material
        case "reveal":
            return job.reveal
        case "use":
            return job.use
        case "box":
            return box
        case "hinge" | "slide" | "pull":
            return job.records[table].get(name)
        case _:
            return None
