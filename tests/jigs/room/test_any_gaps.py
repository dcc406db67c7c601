"""Whatever the job, its gaps are told once each, and can be written and drawn."""

import json

import pytest
from hypothesis import given, settings

from jigs.given.job import Job
from jigs.layout.layout import lay_out
from jigs.room.chance import chance_of
from jigs.room.even import even_rows
from jigs.room.reckoning import reckon_gaps
from templates.elevations.gapchart import draw_chart
from templates.elevations.wallgaps import draw_gap_walls
from templates.lists.gaplist import gaps_json, gaps_text
from templates.page.ownpaper import named_paper
from tests.jobs import jobs

PAPER = named_paper("common").for_drawings


@pytest.mark.slow
@settings(max_examples=40)
@given(job=jobs())
def test_made_up_jobs(job: Job) -> None:
    """No gap twice; the likely lies within the worst; a cure where one is wanted; no crash."""
    layout = lay_out(job)
    found = reckon_gaps(layout)
    told = [(*b.gap.names, b.gap.beside, b.gap.edge) for b in found.budgets]
    assert len(set(told)) == len(told)
    for budget in found.budgets:
        left = budget.left
        assert left.worst <= left.low + 1e-9 <= left.high + 2e-9 <= left.widest + 3e-9
        assert (budget.cure is None) == (budget.verdict in ("holds", "unknown"))
        assert budget.gap.length > 0
    chance, rows = (
        chance_of(found.budgets, job.reveal.between, trials=1000),
        even_rows(found.budgets),
    )
    assert len(json.loads(gaps_json(found, job, chance, rows))["gaps"]) == len(told)
    assert gaps_text(found, job, chance, rows)
    drawn = [each.name for each in draw_gap_walls(layout, found, PAPER)]
    assert bool(drawn) == bool(told)
    if told:
        assert draw_chart(found, chance, job.name, PAPER).page.marks
