"""The gaps that the fronts' sizes make, in one line: shown wherever those sizes are, before they
are bought."""

from jigs.gapsmade import SAME, GapsMade
from jigs.geometry import SLACK
from jigs.lengths import Unit, format_length, telling_unit


def gap_words(gaps: GapsMade, unit: Unit) -> str:
    """Say the gaps between fronts of one box and of two; empty where no two fronts meet.

    >>> gap_words(GapsMade(one_box=(1.6, 1.6), two_boxes=(3.2, 3.2)), "mm")
    'Gaps: between fronts of one box 1.6 mm (1/16 in), of two boxes 3.2 mm (1/8 in): meant so?'
    """
    ends = [gap for found in (gaps.one_box, gaps.two_boxes) if found for gap in found]
    unit = telling_unit(unit, *ends)
    said = [
        f"of {which} {_range(found, unit)}"
        for which, found in (("one box", gaps.one_box), ("two boxes", gaps.two_boxes))
        if found is not None
    ]
    if not said:
        return ""
    return f"Gaps: between fronts {', '.join(said)}{': meant so?' if gaps.differ else '.'}"


def _range(found: tuple[float, float], unit: Unit) -> str:
    low, high = found
    if high - low <= SAME + SLACK:
        return format_length(low, unit)
    return f"{format_length(low, unit)} to {format_length(high, unit)}"
