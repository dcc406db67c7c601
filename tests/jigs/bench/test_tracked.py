"""What is kept track of: whatever has a label, each ID once."""

from hypothesis import given, settings

from jigs.bench.tracked import track
from jigs.cutlist.cutlist import cut_list
from jigs.given.job import Job
from jigs.layout.layout import as_printed, lay_out
from templates.labels.labellist import list_labels
from tests.jobs import jobs
from tests.templates.kitchens import galley


def check_every_label_has_its_part(job: Job) -> None:
    layout = as_printed(lay_out(job))
    pieces = cut_list(layout)
    labels = {words.part: words.code for words in list_labels(layout, pieces, ())}
    parts = track(layout, pieces)
    assert {part.id: part.code for part in parts} == labels
    assert len(parts) == len(labels)


def test_every_label_of_a_kitchen_has_its_part() -> None:
    """Scanned, each label finds one part, and its code is the one that it carries."""
    check_every_label_has_its_part(galley().job)


@given(jobs())
@settings(max_examples=12)
def test_every_label_has_its_part_whatever_a_kitchen_has(job: Job) -> None:
    """Built boxes, rollouts, walls without a name: none has a label that finds nothing."""
    check_every_label_has_its_part(job)
