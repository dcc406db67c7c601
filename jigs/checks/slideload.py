"""Do the slides bear the drawer? Asked only where a record says what the pair bears."""

from jigs.fittings.slideload import KG_PER_POUND, expected_load
from jigs.given.hardware import SlideRecord
from jigs.ground.finding import warning
from jigs.ground.geometry import SLACK
from jigs.ground.problems import Problem


def check_slide_load(
    part: str, record: SlideRecord, width: float, length: float
) -> tuple[Problem, ...]:
    """Find a drawer or rollout, its box `width` by `length` mm, too large for its slides' load."""
    expected = expected_load(width, length)
    if record.load is None or expected <= record.load + SLACK:
        return ()
    return (
        warning(
            "slide-load",
            part,
            f"full, it is reckoned to carry {_weight(expected)} (15 lb/ft2 of its area, KCMA "
            f"A161.1, second hand; the box itself comes on top); slide '{record.name}' bears "
            f"{_weight(record.load)}",
            "take slides that bear more, or keep light things in it",
        ),
    )


def _weight(kg: float) -> str:
    return f"{kg:.1f} kg ({kg / KG_PER_POUND:.0f} lb)"
