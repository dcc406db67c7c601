"""The order of pages: a drawer box is bored before its front is marked through it, and what is said
first of a part stands before what goes on."""

from collections.abc import Hashable, Iterator, Sequence

from templates.faces.faceview import FaceView
from templates.sheets.sheet import Plan


def in_order_of_work(plans: Sequence[Plan]) -> list[Plan]:
    """Put each page behind those with the cards of the drawer boxes that its fronts are marked
    through, and behind the first page of a face those on which it goes on; else as they are given.
    Of pages that wait for each other the first stays in front."""
    bored: dict[str, list[int]] = {}
    begun: dict[Hashable, list[int]] = {}
    for row, plan in enumerate(plans):
        for view in _views(plan):
            if view.face == "box-front":
                bored.setdefault(view.part, []).append(row)
        for words in (spot.field.words for spot in plan.spots):
            if words.first:
                begun.setdefault((words.view.part, words.view.key), []).append(row)
    order: dict[int, None] = {}
    asked: set[int] = set()

    def put(row: int) -> None:
        if row in asked:
            return
        asked.add(row)
        for view in _views(plans[row]):
            if view.face == "back" and view.marks is not None:
                for before in bored.get(view.marks.box, ()):
                    put(before)
        for words in (spot.field.words for spot in plans[row].spots):
            if not words.first:
                for before in begun.get((words.view.part, words.view.key), ()):
                    put(before)
        order[row] = None

    for row in range(len(plans)):
        put(row)
    return [plans[row] for row in order]


def _views(plan: Plan) -> Iterator[FaceView]:
    """Give the faces that a page has words or cards for."""
    for spot in plan.spots:
        yield spot.field.words.view
    for placed in plan.cards:
        yield placed.card.view
        yield from (member.view for member in placed.card.members)
