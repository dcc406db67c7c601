"""Do the rear hooks find wood? Their holes in a drawer box's back, beside and above its notches."""

from collections.abc import Sequence

from jigs.checks.finding import error
from jigs.geometry import SLACK, Fitting
from jigs.grid import WOOD_BETWEEN
from jigs.lengths import Unit, format_length
from jigs.problems import Problem


def check_hooks(
    part: str,
    also: Sequence[str],
    hooks: Sequence[Fitting],
    *,
    width: float,
    height: float,
    notch: tuple[float, float] | None,
    unit: Unit,
) -> tuple[Problem, ...]:
    """Find hook holes that leave the back of a drawer box, or fall into its notch; mm.

    Left and right are alike, so the left one speaks for both.
    """
    if not hooks:
        return ()
    hole, radius = hooks[0].holes[0], hooks[0].holes[0].diameter / 2
    low, high = hole.y - radius, hole.y + radius
    holes = (
        f"the holes for its slide's hooks, {format_length(2 * radius, unit)} wide and "
        f"{format_length(hole.y, unit)} above the underside"
    )
    if high > height - WOOD_BETWEEN + SLACK or hole.x + radius > width / 2 - WOOD_BETWEEN + SLACK:
        return (
            error(
                "hook-outside",
                part,
                f"{holes}, do not find {format_length(WOOD_BETWEEN, unit)} of wood round them: "
                f"the drawer box is {format_length(width, unit)} wide and "
                f"{format_length(height, unit)} high",
                "make the drawer box higher or wider, or correct hook_height and hook_inset",
                tuple(also),
            ),
        )
    inner = hooks[0].outline[0][1][0]
    if notch and low < notch[1] - SLACK and hole.x - radius < inner + notch[0] - SLACK:
        return (
            error(
                "hook-in-notch",
                part,
                f"{holes}, fall into the notch, which is {format_length(notch[1], unit)} high: "
                "no wood is there",
                "correct hook_height, or notch_height and notch_width, from the slide's leaflet",
                tuple(also),
            ),
        )
    return ()
