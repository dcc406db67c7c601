"""A drawer box comes before the front that is marked through it."""

from templates.binding.jobsheets import Sheets, make_sheets
from templates.binding.pageorder import in_order_of_work
from templates.page.paper import PAPERS
from templates.sheets.sheet import Plan
from tests.jobtexts import box_text
from tests.templates.printed import laid_out

DRAWERS = "".join(
    box_text(name, "drawer", 'kind = "drawer"\nheight = 190', 'kind = "drawer"\nheight = 250',
             'kind = "drawer"')
    for name in ("B1", "B2")
)  # fmt: skip


def sheets() -> Sheets:
    return make_sheets(laid_out(DRAWERS), PAPERS["common"], each=True)


def too_early(plans: list[Plan]) -> set[str]:
    """Give the fronts that stand before their boxes, and the parts that go on before they begin."""
    faces = [
        (row, spot.field.words) for row, plan in enumerate(plans) for spot in plan.spots
    ]  # fmt: skip
    bored = {
        words.view.part: row for row, words in reversed(faces) if words.view.face == "box-front"
    }
    begun = {(words.view.part, words.view.face): row for row, words in faces if words.first}
    return {
        words.view.part
        for row, words in faces
        if (words.view.marks and words.view.face == "back" and row < bored[words.view.marks.box])
        or row < begun[words.view.part, words.view.face]
    }


def test_a_front_comes_after_its_box_however_pages_were_shared() -> None:
    """Even where they were planned the other way round; no page is lost, and those that wait for
    none keep their order."""
    planned = list(sheets().told)
    assert too_early(planned) == set()
    turned = planned[::-1]
    assert too_early(turned)
    ordered = in_order_of_work(turned)
    assert too_early(ordered) == set()
    assert sorted(map(id, ordered)) == sorted(map(id, turned))
    assert in_order_of_work(ordered) == ordered


def test_the_sheets_of_a_part_are_counted_in_the_order_of_the_pages() -> None:
    """1/2 before 2/2, rows among another part's words too; one alone is not counted."""
    told: dict[str, list[str]] = {}
    for plan in sheets().told:
        for spot in plan.spots:
            for words in (spot.field.words, *spot.field.words.also):
                told.setdefault(words.view.part, []).append(words.sheet)
    for said in told.values():
        assert said == (
            [f"sheet {row}/{len(said)}" for row in range(1, len(said) + 1)]
            if len(said) > 1
            else [""]
        )
    assert max(map(len, told.values())) > 1
