"""Small parts of one box on one page, each in a field of its own."""

from collections import Counter
from collections.abc import Iterable

import pytest
from hypothesis import HealthCheck, given, settings

from jigs.given.job import Job
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import make_sheets
from templates.page.marks import WIDE, Line, Qr, Text
from templates.page.paper import PAPERS, Paper
from templates.sheets.sheet import Sheet
from templates.words.facewords import drilled_words
from tests.clashes import clashes_of_marks
from tests.jobs import jobs, papers
from tests.templates.worked import worked_layout

Box = tuple[float, float, float, float]


def fields_of(sheet: Sheet) -> list[Box]:
    """The frames of a page, read from its wide lines: each is drawn low, right, top, left."""
    lines = [m for m in sheet.page.marks if isinstance(m, Line) and m.width == 2 * WIDE]
    return [
        (low.x1, low.y1, right.x2, right.y2)
        for low, right in zip(lines[::4], lines[1::4], strict=True)
    ]


def inside(x: float, y: float, box: Box) -> bool:
    return box[0] <= x <= box[2] and box[1] <= y <= box[3]


def holes_of(sheets: Iterable[Sheet]) -> Counter[tuple[object, ...]]:
    return Counter(
        (placed.card.view.part, drilled_words(placed.card.view), hole)
        for sheet in sheets
        for placed in sheet.cards
        for hole in placed.card.holes
    )


def check_fields(sheet: Sheet) -> int:
    """Each field has one symbol, one face's name, and cards of that part and face alone; give
    their number."""
    fields = fields_of(sheet)
    for field in fields:
        marks = sheet.page.marks
        (symbol,) = [m for m in marks if isinstance(m, Qr) and inside(m.x, m.y, field)]
        (face,) = [
            m.text for m in marks
            if isinstance(m, Text) and m.text.startswith("DRILL THIS FACE")
            and inside(m.x, m.y, field)
        ]  # fmt: skip
        mine = [
            placed.card for placed in sheet.cards
            if inside(placed.card.box[0] + placed.dx, placed.card.box[1] + placed.dy, field)
        ]  # fmt: skip
        assert mine
        for card in mine:
            assert symbol.text.split()[0] == card.view.part
            assert face.startswith(f"DRILL THIS FACE: {drilled_words(card.view)}"[:30])
        for placed in sheet.cards:
            if placed.card in mine:
                x, y = placed.card.box[2] + placed.dx, placed.card.box[3] + placed.dy
                assert inside(x, y, field)
    for row, a in enumerate(fields):
        for b in fields[:row]:
            assert a[2] < b[0] or b[2] < a[0] or a[3] < b[1] or b[3] < a[1]
    return len(fields)


@pytest.mark.parametrize("paper", ["common", "a3"])
def test_each_field_is_one_face_of_one_part(paper: str) -> None:
    """Nothing overlaps, every hole stands where it stood, and there are fewer pages."""
    layout = worked_layout("in")
    usual = list(make_sheets(layout, PAPERS[paper]))
    sheets = list(make_sheets(layout, PAPERS[paper], tight=True))
    found = [check_fields(sheet) for sheet in sheets]
    assert all(clashes_of_marks(sheet.page) == [] for sheet in sheets)
    assert holes_of(sheets) == holes_of(usual)
    assert len(usual) - len(sheets) == sum(count - 1 for count in found if count)
    if paper == "a3":
        assert len(sheets) <= len(usual) - 3
    boxes = {part.id: part.box for part in layout.fronts}
    for sheet in sheets:
        if fields_of(sheet):
            assert len({boxes[p.card.view.part] for p in sheet.cards
                        if p.card.view.part in boxes}) <= 1  # fmt: skip


def test_what_a_box_would_save_is_counted() -> None:
    """Without drawing a page."""
    sheets = make_sheets(worked_layout("in"), PAPERS["a3"], tight=True)
    assert sheets.count() == len(list(sheets))
    assert sheets.count_other() == len(list(make_sheets(worked_layout("in"), PAPERS["a3"])))


def check_job(job: Job, paper: Paper) -> None:
    layout = lay_out(job)
    sheets = list(make_sheets(layout, paper, tight=True))
    for sheet in sheets:
        assert clashes_of_marks(sheet.page) == [], sheet.page.entry
        check_fields(sheet)
    assert holes_of(sheets) == holes_of(make_sheets(layout, paper))


@pytest.mark.slow
@given(jobs(), papers)
@settings(
    max_examples=25, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow]
)
def test_fields_of_many_jobs(job: Job, paper: Paper) -> None:
    """No text touches anything, each hole stands once, no field has another part's card."""
    check_job(job, paper)
