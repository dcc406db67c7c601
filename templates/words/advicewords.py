"""The words of advice: what stands outside a published range, once for all boxes that share it."""

from collections.abc import Iterable

from jigs.checks.advice import Advice
from jigs.ground.grouped import grouped
from jigs.ground.lengths import Unit, format_length


def advice_words(advice: Iterable[Advice], unit: Unit) -> tuple[str, ...]:
    """Say each advice in a sentence, with its boxes and its source."""
    alike = grouped((f"{_fact(each, unit)} ({each.source}).", each.box) for each in advice)
    return tuple(f"{', '.join(boxes)}: {words}" for words, boxes in alike.items())


def _fact(advice: Advice, unit: Unit) -> str:
    published = ", ".join(format_length(each, unit) for each in advice.published)
    figure, *more = (format_length(each, unit) for each in advice.figures)
    match advice.what:
        case "height":
            return f"{figure} high above the floor; base units come {published} high"
        case "plinth" | "toe":
            where = " at the floor's high point" if advice.high_point else ""
            return f"a {advice.what} {figure} high{where}; the least is {published}"
        case "toe-depth":
            return f"the toe stands {figure} behind the front edges; the least is {published}"
        case "worktop":
            return (
                f"a worktop is at least {published} deep, and would stand out {figure} before the "
                f"fronts of boxes {more[0]} deep"
            )
        case "wall-depth":
            return f"{figure} deep; wall units are at most {published} deep"
