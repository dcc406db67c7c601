"""What of a job is drilled: part after part, with its words and the faces that have holes."""

from collections.abc import Collection, Iterator

from msgspec import Struct
from msgspec.structs import replace

from jigs.bench.benchpart import Marks, marks_of
from jigs.box.bypart import parts_of_box
from jigs.box.parts import Front, Layout
from jigs.ground.shared import Shared
from templates.faces.faceview import FaceView
from templates.faces.views import (
    view_of_drawer_back,
    view_of_drawer_box,
    view_of_side,
    views_of_front,
)
from templates.sheets.panel import PartWords
from templates.sheets.partwords import (
    words_of_drawer_box,
    words_of_front,
    words_of_rollout,
    words_of_side,
)

Views = tuple[PartWords, tuple[FaceView | None, ...]]
"""A part's words, and its faces; None for one without holes."""


class Drilled(Struct, frozen=True, kw_only=True):
    """A part with holes: its cabinet box, its words, its drilled faces."""

    box: str
    words: PartWords
    views: tuple[FaceView, ...]


def drilled_parts(
    layout: Layout, only: Collection[str] | None = None, *, pilots: bool = False
) -> Iterator[Drilled]:
    """Give the parts in the order of the job: fronts, drawer boxes, rollouts, sides, box by box.

    `only` names the parts, boxes or walls wanted; None for all. A front brings its drawer box,
    which comes before it where it is marked through that; `pilots`: none is. What an error holds
    back is left out.
    """
    unit, shared = layout.job.units, Shared()
    wishes = None if only is None else {wish.upper() for wish in only}

    def wanted(*names: str) -> bool:
        return wishes is None or not wishes.isdisjoint(name.upper() for name in names)

    for box in layout.boxes:
        parts = parts_of_box(layout, box.id)
        found: list[Views] = []
        for front in parts.fronts:
            if front.withheld:
                continue
            own = wanted(front.id, front.box, front.wall)
            marks = None if pilots else marks_of(front)
            here: list[Views] = []
            if own:
                faces = views_of_front(front, unit, pilots=pilots)
                here.append((words_of_front(layout, front), faces))
            if front.drawer is not None and (own or wanted(front.drawer.id)):
                # Where the front is marked through it, the box is bored first.
                here.insert(0 if marks else len(here), _drawer_box(layout, front, marks))
            found += here
        for rollout in layout.rollouts:
            names = (rollout.id, rollout.box, rollout.wall)
            if rollout.box == box.id and not rollout.withheld and wanted(*names):
                view = view_of_drawer_back(rollout.id, rollout.code, rollout, unit)
                found.append((words_of_rollout(layout, rollout), (view,)))
        for side in parts.sides:
            if side.fittings and wanted(side.board, side.box, side.wall):
                found.append((words_of_side(layout, side), (view_of_side(side, unit),)))
        for words, views in found:
            if drilled := tuple(view for view in views if view is not None):
                yield Drilled(box=box.id, words=_share(shared, words), views=drilled)


def _share(shared: Shared, words: PartWords) -> PartWords:
    """Give a part's words that share with other parts' what they say alike."""
    facts = {face: shared.one(facts) for face, facts in words.facts.items()}
    own = replace(words, facts=facts)
    return shared.fields(own, "kind", "code", "measure", "notes", "face_notes")


def _drawer_box(
    layout: Layout, front: Front, marks: Marks | None
) -> tuple[PartWords, tuple[FaceView | None, ...]]:
    drawer, unit = front.drawer, layout.job.units
    assert drawer is not None, "asked for a front with a drawer box"
    return words_of_drawer_box(layout, drawer, front), (
        view_of_drawer_box(drawer, drawer.side, unit, marks),
        view_of_drawer_back(drawer.id, drawer.code, drawer, unit),
    )
