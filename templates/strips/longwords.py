"""What is said beside a strip, or beside a whole face, besides what is said of its cards."""

from collections.abc import Iterator

from jigs.ground.geometry import SLACK
from jigs.ground.lengths import format_inches, format_mm
from templates.page.scales import SLIP
from templates.strips.strip import Strip
from templates.words.facewords import edge_words

WHOLE = (
    "Paper grows, the more the longer: measure the long bar too. Fold at the edges that say so; "
    "where a second check is off by over 0.5, set each hole out by its written distance."
)
"""What is to be done with a whole face."""


def strip_words(strip: Strip, *, joined: bool) -> Iterator[str]:
    """Say how a strip is joined, if it is, and last what is not to be trusted."""
    inches = abs(strip.view.step - 10.0) > SLACK
    length = format_mm(strip.length) + (f" ({format_inches(strip.length)} in)" if inches else "")
    end = f" its end must stand at {length};" if strip.to_end else ""
    tape = (
        f"Lay a steel tape along it:{end} the scale, in {'inches' if inches else 'mm'}, must agree."
    )
    if not joined:
        origin = edge_words(strip.view, strip.up.edge)
        yield (
            f"{tape} Paper grows, the more the "
            f"longer: check every hole by its written distance from the {origin}."
        )
        return
    yield (
        "Cut the pieces out, the crossed notches too. Glue each on the tab of the one before, one "
        "straight line along the edge: its foot on the JOIN line, the long marks of the little "
        f"scales in one line; the next pair in line shows a slip of {SLIP:g} mm."
    )
    yield "Or trust no join: set each piece by itself, on a line struck at its foot's figure."
    yield (
        f"{tape} Each join may add {SLIP:g} mm: check every hole by its written distance before "
        "drilling."
    )
