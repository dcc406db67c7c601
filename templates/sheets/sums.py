"""Sums that close: distances along a part that add up, as printed, to its size.

Whoever measures them on the part has checked the paper, the part and the punch marks at once.
"""

from collections.abc import Iterator

from jigs.given.kinds import KINDS, by_rank
from templates.faces.faceview import FaceView
from templates.words.facewords import edge_words
from templates.words.holewords import HOLE_WORDS
from templates.words.markingwords import marks_words
from templates.words.sumwords import closing_words, punches_words


def sums(view: FaceView) -> list[str]:
    """The sums that close, for the rule: up the part, and across it where holes are paired."""
    kinds = {fitting.kind for fitting in view.fittings}
    result: list[str] = []
    holes = [hole for fitting in view.fittings for hole in fitting.holes]
    if "hinge" in kinds:
        cups = sorted(hole.y for hole in holes if hole.purpose == "cup")
        text = f"{closing_words(cups, view.height, steps=True)}."
        if len(cups) > 1:
            text += f" Punch to punch {punches_words(cups)}."
        return [text, *_beside_cups(view)]
    if view.face == "inside":
        lines = _distinct([hole.y for hole in holes])
        low = view.state.low
        from_low = closing_words([line - low for line in lines], view.height - low)
        where = f" from the {edge_words(view, 'bottom').lower()}" if view.state.stand else ""
        return [f"Up{where}: {from_low}."]
    if view.marks is not None and view.face == "back":
        result.append(f"Its box: {marks_words(view.marks)}")
    across, up = _distinct([hole.x for hole in holes]), _distinct([hole.y for hole in holes])
    if len(across) > 1:
        result.append(f"Across: {closing_words(across, view.width, steps=True)}.")
    if len(up) > 1 or (up and len(across) == 1):
        result.append(f"Up: {_up(view, up)}.")
    return result


def _beside_cups(view: FaceView) -> Iterator[str]:
    """Sum what stands on a door's back beside its cups, each kind under its name."""
    for kind in by_rank(fitting.kind for fitting in view.fittings if fitting.kind != "hinge"):
        holes = [hole for each in view.fittings if each.kind == kind for hole in each.holes]
        name = HOLE_WORDS[KINDS[kind].holes[0]].name
        across, up = _distinct([hole.x for hole in holes]), _distinct([hole.y for hole in holes])
        yield f"{name}, across: {closing_words(across, view.width, steps=True)}."
        yield f"{name}, up: {_up(view, up)}."


def _up(view: FaceView, places: list[float]) -> str:
    """Sum heights; where some count down from the top end, the rest is not what takes the rounding
    of the steps."""
    return closing_words(places, view.height, steps=not any(map(view.from_top, view.fittings)))


def _distinct(values: list[float]) -> list[float]:
    kept: list[float] = []
    for value in sorted(values):
        if not kept or value - kept[-1] > 0.05:
            kept.append(value)
    return kept
