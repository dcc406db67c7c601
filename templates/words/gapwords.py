"""The gaps round fronts in words: those that their sizes make, wherever those sizes are shown
before they are bought; on the sheets those of the job or of a front."""

from jigs.box.bypart import parts_of_box
from jigs.box.frontgaps import SAME_GAP, GapsMade
from jigs.box.parts import Front, Layout
from jigs.ground.geometry import SLACK, Hand
from jigs.ground.lengths import Unit, format_length, format_mm, telling_unit


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
    if high - low <= SAME_GAP + SLACK:
        return format_length(low, unit)
    return f"{format_length(low, unit)} to {format_length(high, unit)}"


def gaps_here(front: Front, blind: Hand | None = None) -> str:
    """Say a front's own gaps: to the box's edge, or to the front beside it; none on the side where
    it laps a `blind` panel."""
    gaps = front.gaps
    left, right = map(_beside, (gaps.left, gaps.right))
    top, bottom = map(format_mm, (gaps.top, gaps.bottom))
    across = f"sides {left}" if left == right else f"left {left}, right {right}"
    if blind is not None:
        across = f"right {right}" if blind == "left" else f"left {left}"
    up = f"top and bottom {top}" if top == bottom else f"top {top}, bottom {bottom}"
    return f"Gaps: {across}, {up}."


def _beside(gap: float) -> str:
    """Write a gap beside a front; below 0 how far it reaches over an end panel."""
    return format_mm(gap) if gap >= 0 else f"{format_mm(-gap)} over the end panel"


def job_reveals(layout: Layout) -> str:
    """Say both meanings of the job's reveal, to the box's edge and between two fronts; an inset
    front has one gap all round."""
    reveal = layout.job.reveal
    inset = ""
    if any(front.place.overlay == "inset" for front in layout.fronts):
        inset = f"; {format_mm(reveal.inset)} all round an inset one"
    return (
        f"Reveals, mm: {format_mm(reveal.side)} to the box's own edge, "
        f"{format_mm(reveal.between)} between fronts of one box, "
        f"{format_mm(2 * reveal.side)} of two boxes{inset}."
    )


def has_job_reveals(front: Front, layout: Layout) -> bool:
    """Tell whether a front's gaps are all those of the job; what a half-overlay front leaves to
    the box's edge is nobody's reveal."""
    reveal = layout.job.reveal
    edge = {"full": reveal.side, "inset": reveal.inset, "half": None}[front.place.overlay]
    beside = [
        other
        for other in parts_of_box(layout, front.box).fronts
        if other.place.y < front.place.y + front.height
        and front.place.y < other.place.y + other.height
    ]
    gaps = (
        (front.gaps.left, any(other.place.x < front.place.x for other in beside)),
        (front.gaps.right, any(other.place.x > front.place.x for other in beside)),
        (front.gaps.top, front.place.row > 1),
        (front.gaps.bottom, front.place.row < front.place.rows),
    )
    wanted = ((gap, reveal.between if meets else edge) for gap, meets in gaps)
    return all(told is None or abs(gap - told) <= SAME_GAP + SLACK for gap, told in wanted)
