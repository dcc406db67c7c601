"""Texts of a job with characters that the printed face lacks: these print as `?`.

The face has Latin, Greek and Cyrillic letters. A kitchen named in another script is still drawn,
and its person is told which words will not be read on paper.
"""

from collections.abc import Iterator

from jigs.box.parts import Layout
from templates.page.typeface import known, missing


def unprintable(layout: Layout) -> tuple[str, ...]:
    """Say of each text with lacking characters what it is and which they are, one line a text."""
    lines: dict[str, None] = {}
    for what, text in _texts(layout):
        lacking = sorted(sign for sign in missing(text) if known(sign) == "?")
        if lacking:
            shown = text if len(text) <= 40 else text[:39] + "…"
            lines[
                f"{what} '{shown}': the printed face lacks {' '.join(lacking[:12])}"
                f"{' ...' if len(lacking) > 12 else ''}; each prints as ?"
            ] = None
    return tuple(lines)


def _texts(layout: Layout) -> Iterator[tuple[str, str]]:
    """Give the texts that the person wrote and that are printed, each with what it is."""
    job = layout.job
    yield "job", job.name
    for box in layout.boxes:
        yield "wall", box.wall
        # An opening is no front of the layout, but its note stands on the elevations.
        for spec in box.fronts:
            if spec.kind == "opening":
                yield f"note of {spec.id}", spec.words.note
    for front in layout.fronts:
        yield f"finish of {front.id}", front.make.finish
        yield f"note of {front.id}", front.make.note
    for kind, names in (("hinge", job.hinges), ("slide", job.slides), ("pull", job.pulls)):
        for name in names:
            yield kind, name
