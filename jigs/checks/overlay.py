"""Does the hinge bring the door over its side? Its kind, the overlay it reaches, its constant."""

from collections.abc import Iterator, Sequence

from jigs.box.fronts import PlacedFront
from jigs.fittings.hinge import (
    BELIEVABLE_CONSTANTS,
    OVERLAY_LIMIT,
    USUAL_CONSTANTS,
    HingeChoice,
    cup_from_edge,
)
from jigs.given.hardware import HingeRecord
from jigs.given.job import Overlay
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length, format_mm
from jigs.ground.problems import Problem, error, warning

HUNG_WORDS: dict[Overlay, str] = {
    "full": "it lies over the whole side",
    "half": "it shares the board it hangs on with a neighbour",
    "inset": "it stands inside its box",
}
"""How a door hangs, in words."""


def check_overlay(
    front: PlacedFront, record: HingeRecord, choice: HingeChoice, unit: Unit
) -> Iterator[Problem]:
    """Find a hinge of the wrong kind, or an overlay that no tab and plate reach."""
    reached = abs(choice.error) <= OVERLAY_LIMIT + SLACK
    # A plate that somebody has may bring a full hinge to half an overlay; one not listed does not.
    brought = reached and choice.plate_stated and "inset" not in (record.kind, front.hung)
    if record.kind != front.hung and not brought:
        yield error(
            "hinge-kind",
            front.id,
            f"{HUNG_WORDS[front.hung]}, but hinge '{record.name}' is of the kind {record.kind}",
            f"name a hinge of the kind {front.hung} beside it: "
            f'hinge = ["{record.name}", "cup35-{front.hung}"], or one of your own with '
            f'like = "cup35-{front.hung}"',
        )
        return
    if reached:
        return
    inset = front.hung == "inset"
    needed = format_length(abs(front.lap), unit)
    more = "more" if (choice.error > 0) is not inset else "less"
    yield error(
        "overlay",
        front.id,
        f"{'a gap' if inset else 'an overlay'} of {needed} is needed; the nearest, tab "
        f"{choice.tab:g} mm with plate {choice.plate:g} mm, is "
        f"{format_length(abs(choice.error), unit)} {more}",
        "list the plates that can be had, or take a hinge with another constant",
    )


def check_tab(front: PlacedFront, record: HingeRecord, choice: HingeChoice) -> Iterator[Problem]:
    """Say where the search for the overlay moved the cups, and why: a wrong constant does so."""
    if choice.instead is None:
        return
    usual, miss = choice.instead
    cups = format_mm(cup_from_edge(record, choice.tab))
    reached = f", with {format_mm(choice.tab)} by {format_mm(abs(choice.error))}"
    if choice.next_best is not None and choice.next_best[0] != usual:
        tab, error_of_it = choice.next_best
        reached += f", with {format_mm(tab)}, the next best, by {format_mm(abs(error_of_it))}"
    yield warning(
        "tab-moved",
        front.id,
        f"cups at {cups} mm from the hinge edge, tab {format_mm(choice.tab)}: with "
        f"{format_mm(usual)} the overlay misses by {format_mm(abs(miss))} (plates "
        f"{_heights(record.plates)}){reached}",
        f"is the constant of hinge '{record.name}' right? {record.kind} overlay is usually "
        f'{_usual_constant(record)}; a tab that you state stands: tab = "{usual:g} mm"',
    )


def check_constant(
    front: PlacedFront, record: HingeRecord, choice: HingeChoice
) -> Iterator[Problem]:
    """Ask about a constant that hinges of its kind do not have, and one that wants a plate lower
    than none."""
    low, high = BELIEVABLE_CONSTANTS[record.kind]
    if not low - SLACK <= record.constant <= high + SLACK:
        text = (
            f"the constant of hinge '{record.name}' is {record.constant:g} mm; a hinge of the kind "
            f"{record.kind} has {low:g} to {high:g}"
        )
    elif record.kind == front.hung and not choice.plate_stated and choice.plate < -SLACK:
        text = (
            f"a constant of {record.constant:g} mm wants a plate of {format_mm(choice.plate)} mm "
            f"for hinge '{record.name}': none is lower than 0"
        )
    else:
        return
    yield warning(
        "unlikely-number",
        front.id,
        text,
        f"read it again in its leaflet: usually it is {_usual_constant(record)}; or measure "
        "the overlay on a scrap door and write overlay_measured",
    )


def _usual_constant(record: HingeRecord) -> str:
    """Say what a constant of a hinge's kind usually is; mm."""
    low, high = USUAL_CONSTANTS[record.kind]
    return f"about {low:g}" if low == high else f"{low:g} to {high:g}"


def _heights(plates: Sequence[float]) -> str:
    return ", ".join(f"{plate:g}" for plate in plates)
