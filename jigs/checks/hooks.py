"""Do the rear hooks find wood? Their holes in a drawer box's back, beside and above its notches."""

from collections.abc import Sequence

from jigs.ground.finding import error, warning
from jigs.ground.geometry import SLACK, Fitting
from jigs.ground.grid import WOOD_BETWEEN
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem


def check_hooks(
    part: str,
    also: Sequence[str],
    hooks: Sequence[Fitting],
    *,
    width: float,
    height: float,
    notch: tuple[float, float] | None,
    board: float,
    depth: float | None,
    unit: Unit,
) -> tuple[Problem, ...]:
    """Find hook holes that leave the back of a drawer box, fall into its notch, or are asked
    deeper (`depth`) than its `board` is thick; mm.

    Left and right are alike, so the left one speaks for both.
    """
    if not hooks:
        return ()
    deep: tuple[Problem, ...] = ()
    if depth is not None and depth > board + SLACK:
        deep = (
            warning(
                "hook-through",
                part,
                f"the holes for its slide's hooks are to be {format_length(depth, unit)} deep, "
                f"and its back is {format_length(board, unit)} thick: they come out behind",
                "correct hook_depth from the slide's leaflet, or see that a hole right through "
                "serves the hook",
                tuple(also),
            ),
        )
    hole, radius = hooks[0].holes[0], hooks[0].holes[0].diameter / 2
    low, high = hole.y - radius, hole.y + radius
    holes = (
        f"the holes for its slide's hooks, {format_length(2 * radius, unit)} wide and "
        f"{format_length(hole.y, unit)} above the underside"
    )
    if high > height - WOOD_BETWEEN + SLACK or hole.x + radius > width / 2 - WOOD_BETWEEN + SLACK:
        return (
            *deep,
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
            *deep,
            error(
                "hook-in-notch",
                part,
                f"{holes}, fall into the notch, which is {format_length(notch[1], unit)} high: "
                "no wood is there",
                "correct hook_height, or notch_height and notch_width, from the slide's leaflet",
                tuple(also),
            ),
        )
    return deep
