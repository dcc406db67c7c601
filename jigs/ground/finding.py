"""How a finding is worded: short ways to state an error or a warning, and its figures."""

from jigs.ground.problems import Problem


def error(
    code: str, part: str | None, text: str, remedy: str, also: tuple[str, ...] = ()
) -> Problem:
    """State a finding that withholds its part."""
    return Problem(level="error", code=code, part=part, text=text, remedy=remedy, also=also)


def warning(
    code: str, part: str | None, text: str, remedy: str, also: tuple[str, ...] = ()
) -> Problem:
    """State a finding that is printed on the sheets it concerns."""
    return Problem(level="warning", code=code, part=part, text=text, remedy=remedy, also=also)
