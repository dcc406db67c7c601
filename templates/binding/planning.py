"""Which way the sheets of a face are planned, and how each is drawn."""

from dataclasses import replace

from templates.page.paper import Paper
from templates.sheets.pattern import SheetWords
from templates.sheets.sheet import Plan, Sheet, draw_plan, plan_face
from templates.strips.longpage import LongPlan, draw_long, plan_roll, plan_whole
from templates.strips.strip import INNERMOST
from templates.strips.strippage import StripPlan, plan_strip

AnyPlan = Plan | LongPlan


def plan_view(words: SheetWords, paper: Paper, *, strip: bool = False) -> list[AnyPlan]:
    """Plan the sheets of one face: whole on large paper that holds it, else in cards; off a roll
    one page takes all of them. With `strip` a strip takes what lies along its edge, and the rest
    is planned as before."""
    if strip:
        found = [plan for plan in (plan_strip(words, paper, reach) for reach in INNERMOST) if plan]
        ways = [(plan.parted, _with_rest(plan, words, paper)) for plan in found]
        if ways:
            return min(ways, key=lambda way: (way[0], len(way[1])))[1]
    whole = plan_whole(words, paper) if paper.large else None
    if whole is not None:
        return [*whole]
    if paper.longest is not None:
        return [*plan_roll(words, paper)]
    return [*plan_face(words, paper)]


def _with_rest(strip: StripPlan, words: SheetWords, paper: Paper) -> list[AnyPlan]:
    """Plan a strip's pages, and those for what is not on it."""
    rest = strip.rest
    if rest is None:
        return [*strip.pages]
    return [*strip.pages, *plan_view(replace(words, view=rest), paper)]


def draw_any(plan: AnyPlan, paper: Paper, number: int, sheet: str) -> Sheet:
    """Draw one page, page `number` of the document; `sheet` says which of its part's it is."""
    if isinstance(plan, LongPlan):
        return draw_long(plan, sheet, paper, number)
    return draw_plan(plan, paper, number, sheet)
